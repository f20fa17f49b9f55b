package form

import "duskweight/web/typical"

// UsualOf is what is usual of one number, with its label.
type UsualOf struct {
	Label string
	Usual typical.Usual
}

// UsualsOf are those of every number of a form that has one, in the rows that t has.
func UsualsOf[T any](parts []Part[T], t *T) (out []UsualOf) {
	var visit func([]Part[T], string)
	visit = func(parts []Part[T], under string) {
		for _, p := range parts {
			switch {
			case p.Group != nil && p.Group.Shape == ShapeMonths: // twelve of one kind
			case p.Group != nil:
				visit(p.Group.Parts, p.Group.Title)
			case p.List != nil:
				for i := range p.List.Count(t) {
					visit(p.List.Row(i), SentenceCase(p.List.One))
				}
			case p.Input.Usual != nil:
				label := p.Input.Label
				if under != "" {
					label = under + ": " + label
				}
				out = append(out, UsualOf{label, p.Input.Usual(t)})
			}
		}
	}
	visit(parts, "")
	return out
}
