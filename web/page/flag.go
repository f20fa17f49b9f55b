package page

import (
	"fmt"
	"slices"
	"strings"

	"duskweight/internal/model"
	"duskweight/web/form"
)

// FlagView is one thing said in words, with the field it is about.
type FlagView struct {
	Say   string
	Bad   bool
	Links []form.LinkView // to the fields it is about
}

// SaidOnce joins flags of the same words, one for each gear stage, say; their links are told apart by a number.
func SaidOnce(flags []FlagView) (out []FlagView) {
	for _, f := range flags {
		i := slices.IndexFunc(out, func(o FlagView) bool { return o.Say == f.Say && o.Bad == f.Bad })
		if i < 0 {
			out = append(out, f)
			continue
		}
		for _, l := range f.Links {
			if n := len(out[i].Links); l.Text == out[i].Links[0].Text {
				l.Text += " " + Itoa(n+1)
			}
			out[i].Links = append(out[i].Links, l)
		}
	}
	return out
}

// Badness puts what must not be before what is only said.
func Badness(f FlagView) int {
	if f.Bad {
		return 1
	}
	return 0
}

// FlagLink leads to the field that a flag is about, to the row of a list, or to the first field of a part of the hoist.
func FlagLink(at, path string, labels map[string]string, page string) form.LinkView {
	switch path {
	case "raise":
		path = "raise.voltage_v"
	case "lower":
		path = "lower.loads"
	case "machine":
		path = "machine.k_vs_rad"
	}
	whole := model.Join(at, path)
	link := FieldLink(whole, labels, page)
	if labels[whole] == "" && strings.HasSuffix(path, "]") {
		link.URL = FieldURL(page, whole) // the row
	}
	var stage int
	if n, _ := fmt.Sscanf(path, "train.stages[%d].", &stage); n == 1 && labels[whole] != "" {
		link.Text += ", stage " + Itoa(stage+1)
	}
	return link
}
