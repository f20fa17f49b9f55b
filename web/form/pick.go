package form

import "slices"

// Pick keeps the inputs of a form that keep names, flat where they stood in groups, and of a list the rows in which an
// input is left. Only a list that whole names may get more rows. The rest of the form is not shown and stays as it is.
func Pick[T any](parts []Part[T], keep func(path string) bool, whole func(list string) bool) []Part[T] {
	var out []Part[T]
	for _, p := range parts {
		switch {
		case p.Input != nil:
			if keep(p.Input.Path) {
				out = append(out, p)
			}
		case p.Group != nil:
			out = append(out, Pick(p.Group.Parts, keep, whole)...)
		case p.List != nil:
			l := *p.List
			l.picked, l.fixed = true, !whole(l.Path)
			l.Row = func(i int) []Part[T] { return Pick(p.List.Row(i), keep, whole) }
			out = append(out, Part[T]{List: &l})
		}
	}
	return out
}

// Kept shows the rows that a form's lists have, each by its name where there are several: none can be added or taken away.
func Kept[T any](parts []Part[T], called func(t *T, i int) string) []Part[T] {
	out := slices.Clone(parts)
	for i, p := range out {
		if p.List != nil {
			l := *p.List
			l.picked, l.fixed, l.called = true, true, called
			out[i].List = &l
		}
	}
	return out
}

// Only keeps of a form row i of one list, whole and with its groups. The rest of the form is not shown and stays as it is.
func Only[T any](parts []Part[T], path string, i int) []Part[T] {
	for _, p := range parts {
		if p.List == nil || p.List.Path != path {
			continue
		}
		l := *p.List
		l.picked, l.fixed = true, true
		l.Row = func(k int) []Part[T] {
			if k != i {
				return nil
			}
			return p.List.Row(k)
		}
		return []Part[T]{{List: &l}}
	}
	return nil
}

// Paths are the paths of all inputs for a thing, in the order of the form, each with whether it is given or may stay
// empty.
func (f Form[T]) Paths(t *T) (paths []string, given map[string]bool) {
	given = map[string]bool{}
	f.Walk(f.Parts, t, func(in *Input[T]) {
		paths = append(paths, in.Path)
		given[in.Path] = in.Spare || in.Kind == asText || in.Kind == AsLong || in.Show(t, 0) != ""
	})
	return paths, given
}

// Grow gives every list that a path goes through the row that the path names.
func (f Form[T]) Grow(t *T, paths ...string) {
	for _, path := range paths {
		for at := range path {
			if path[at] != ']' {
				continue
			}
			list, i, ok := SplitRow(path[:at+1])
			if l := findList(f.Parts, t, list); ok && l != nil && l.Count(t) <= i && i < l.most {
				l.Resize(t, i+1)
			}
		}
	}
}
