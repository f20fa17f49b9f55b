package catalog

import (
	"fmt"
	"strings"
	"unicode"

	"duskweight/internal/model/lift"
	"duskweight/internal/model/unit"
)

// From says where the numbers of a row come from. Rows from memory are marked: they may be shown as typical where that
// is allowed, and never pass a check of strength without the user's own statement.
type From struct {
	Source string // original publication, ready to print
	Memory bool   // from memory, not re-read
	Label  bool   // published, but the part's own label decides: a mean, one maker's figure, a class that is stamped
	Note   string // what to beware of, in plain words, its figures marked (say.Marked); may be empty
}

// Stands reports whether a strength of this row may be copied as it is. Where it may not, it stays not known until the
// user has read it on the part.
func (f From) Stands() bool { return !f.Memory && !f.Label }

func read(source string) From           { return From{Source: source} }
func readNote(source, note string) From { return From{Source: source, Note: note} }
func labelled(source, note string) From { return From{Source: source, Note: note, Label: true} }
func fromMemory(note string) From {
	return From{Source: "from memory, not re-read", Memory: true, Note: note}
}
func typicalOf(what, note string) From {
	return From{Source: what + ": from memory, ± 30 %", Memory: true, Note: note}
}
func rememberedOf(source, note string) From {
	return From{Source: source + ": from memory", Memory: true, Note: note}
}

// Row is one row of a kind, ready to be shown and taken.
type Row struct {
	From
	ID    string // unique in its kind: "nylon-three-strands-8-mm"
	Group string // rows of one table stand together
	Name  string // its figures marked (say.Marked)

	put func(*lift.Hoist, Choice) (Taken, error)
}

// Take copies the row into a hoist. An error is a sentence for its reader; the hoist is then not to be used.
func (r Row) Take(into *lift.Hoist, c Choice) (Taken, error) { return r.put(into, c) }

// Choice is what the user says while taking a row.
type Choice struct {
	At     string                  // one of the kind's places
	Read   bool                    // "I have read this on my part's label or paper"
	Ratio  unit.Known[unit.Ratio]  // stages: turns in for one turn out
	Rated  unit.Known[unit.Torque] // stages: rated torque at the output, from the label
	Volume unit.Known[unit.Volume] // materials
	Series unit.Known[unit.Count]  // lamps in one row; not known counts as 1
	Rows   unit.Known[unit.Count]  // rows of lamps side by side; not known counts as 1
}

// Taken is what taking a row did: paths inside the hoist, "rope.kind".
type Taken struct {
	Copied []string // set to the row's value
	Own    []string // set by the user's own statement
	Open   []string // strengths that the row may not give: not known now
	Gone   []string // values and lists of what stood there before: they went with it

	Stages int // gear stages put in before the first (1), or taken out there (-1)
}

// within puts the paths under a part of the hoist.
func (t Taken) within(part string) Taken {
	for _, list := range []*[]string{&t.Copied, &t.Own, &t.Open, &t.Gone} {
		out := make([]string, len(*list))
		for i, p := range *list {
			out[i] = part + "." + p
		}
		*list = out
	}
	return t
}

func (t *Taken) add(more Taken) {
	t.Copied, t.Own = append(t.Copied, more.Copied...), append(t.Own, more.Own...)
	t.Open, t.Gone = append(t.Open, more.Open...), append(t.Gone, more.Gone...)
	t.Stages += more.Stages
}

// copied sets a value from a row.
func copied[X any](t *Taken, at *X, v X, path string) {
	*at = v
	t.Copied = append(t.Copied, path)
}

// own sets a value by the user's own statement.
func own[X any](t *Taken, at *X, v X, path string) {
	*at = v
	t.Own = append(t.Own, path)
}

// gone empties what belonged to the part that stood there before.
func gone[X any](t *Taken, at *X, path string) {
	var none X
	*at = none
	t.Gone = append(t.Gone, path)
}

// strength sets a strength: the user's own where the user has read it, the row's where its source stands behind it, and
// else not known, also where another part's strength stood before.
func strength[X any](t *Taken, f From, wasRead bool, at *X, v X, path string) {
	switch {
	case wasRead:
		own(t, at, v, path)
	case f.Stands():
		copied(t, at, v, path)
	default:
		var none X
		*at = none
		t.Open = append(t.Open, path)
	}
}

// slug is a name as a part of an address.
func slug(parts ...string) string {
	var b strings.Builder
	for _, r := range strings.ToLower(strings.Join(parts, " ")) {
		switch {
		case unicode.IsLetter(r) || unicode.IsDigit(r):
			b.WriteRune(r)
		case b.Len() > 0 && !strings.HasSuffix(b.String(), "-"):
			b.WriteByte('-')
		}
	}
	return strings.TrimSuffix(b.String(), "-")
}

// sizeName is a diameter as a marked figure in the name of a row.
func sizeName(d unit.Length) string { return fmt.Sprintf("{%.4g mm}", float64(d/unit.Millimetre)) }
