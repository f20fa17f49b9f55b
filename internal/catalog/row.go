package catalog

// From says where the numbers of a row come from. Rows from memory are marked: they may be shown as typical where that
// is allowed, and never pass a check of strength without the user's own statement.
type From struct {
	Source string // original publication, ready to print
	Memory bool   // from memory, not re-read
	Note   string // what to beware of, in plain words; may be empty
}

func read(source string) From           { return From{Source: source} }
func readNote(source, note string) From { return From{Source: source, Note: note} }
func fromMemory(note string) From {
	return From{Source: "from memory, not re-read", Memory: true, Note: note}
}
func typicalOf(what, note string) From {
	return From{Source: what + ": from memory, ± 30 %", Memory: true, Note: note}
}
func rememberedOf(source, note string) From {
	return From{Source: source + ": from memory", Memory: true, Note: note}
}
