package form

import (
	"fmt"
	"strings"

	"duskweight/internal/model/unit"
	"duskweight/web/typical"
)

// InputText is one input in words, with its place inside its form: as it stands in its field, by which two can be told apart, and
// as it is read beside others.
type InputText struct {
	Path, Label, Text, Told string
	Labelled                bool // a strength or a rating, which is read on the part itself
}

// TextsOf are all inputs of a form in words; those of a list's row are told by the list and the row's number.
func TextsOf[T any](parts []Part[T], t T, sys unit.System) []InputText {
	out := []InputText{}
	f := Form[T]{Parts: parts}
	labels := f.Labels(t)
	f.Walk(parts, &t, func(in *Input[T]) {
		label := in.Label
		if list, row, ok := strings.Cut(in.Path, "["); ok && labels[list] != "" {
			var n int
			if _, err := fmt.Sscanf(row, "%d]", &n); err == nil {
				label = fmt.Sprintf("%s, %d: %s", labels[list], n+1, label)
			}
		}
		one := InputText{Path: in.Path, Label: label, Text: in.Text(&t, sys), Told: in.Told(&t, sys)}
		if in.Usual != nil {
			why := in.Usual(&t).Why
			one.Labelled = why == typical.WhyStrength || why == typical.WhyLabel
		}
		out = append(out, one)
	})
	return out
}
