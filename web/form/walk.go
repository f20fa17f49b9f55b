package form

// Walk visits every input, in the rows that t has.
func (f Form[T]) Walk(parts []Part[T], t *T, visit func(*Input[T])) {
	for _, p := range parts {
		switch {
		case p.Input != nil:
			visit(p.Input)
		case p.Group != nil:
			f.Walk(p.Group.Parts, t, visit)
		case p.List != nil:
			for i := range p.List.Count(t) {
				f.Walk(p.List.Row(i), t, visit)
			}
		}
	}
}

// Labels gives the label of every input by its path.
func (f Form[T]) Labels(t T) map[string]string {
	out := map[string]string{}
	f.Walk(f.Parts, &t, func(in *Input[T]) { out[in.Path] = in.Label })
	titles(f.Parts, &t, out)
	return out
}

// titles adds the names of the lists, by their paths: a list can be missing too.
func titles[T any](parts []Part[T], t *T, out map[string]string) {
	for _, p := range parts {
		switch {
		case p.Group != nil:
			titles(p.Group.Parts, t, out)
		case p.List != nil:
			out[p.List.Path] = p.List.Title
			for i := range p.List.Count(t) {
				titles(p.List.Row(i), t, out)
			}
		}
	}
}
