package form

import (
	"cmp"
	"fmt"
	"slices"
	"strconv"
	"strings"

	"duskweight/internal/document"
	"duskweight/internal/model/unit"
)

// Section is what the line of a closed part of a form says: what is inside, how much of it is known, how much is only
// typical.
type Section struct {
	ID      string // "s-rope-and-pulleys"
	Brief   string // "polyester, 12 mm"
	Count   string // "14 of 16 known"
	Typical int
}

// headLine is what the line of a section says after a save.
type headLine struct {
	Brief   string `json:"brief"`
	Count   string `json:"count"`
	Typical int    `json:"typical"`
}

// Heads are the lines of all sections of a form, by their ids.
func (f Form[T]) Heads(t T, sys unit.System) map[string]headLine {
	out := map[string]headLine{}
	t = document.Clone(t) // walking a form makes empty rows
	for _, p := range f.View(&t, nil, nil, sys).Parts {
		s := Section{}
		switch {
		case p.Group != nil:
			s = p.Group.Section
		case p.List != nil:
			s = p.List.Section
		}
		if s.ID != "" {
			out[s.ID] = headLine{s.Brief, s.Count, s.Typical}
		}
	}
	return out
}

// sectionOf reads a section off its fields.
func sectionOf(title string, parts []PartView, tell ...string) Section {
	var n tally
	n.count(parts, true)
	say := briefly(parts)
	if len(tell) > 0 {
		say = say[:0]
		for _, one := range tell {
			path, words, _ := strings.Cut(one, "|")
			if told := toldAt(parts, path); told != "" {
				say = append(say, strings.Replace(cmp.Or(words, "%s"), "%s", told, 1))
			}
		}
	}
	return Section{ID: sectionID(title), Brief: strings.Join(say, ", "), Count: n.say(), Typical: n.typical}
}

// sectionID is the id of a section's element.
func sectionID(title string) string { return "s-" + FileName(title) }

// openFirst opens the first section of a form.
func openFirst(parts []PartView) {
	for _, p := range parts {
		switch {
		case p.Group != nil:
			p.Group.Open = true
			return
		case p.List != nil:
			p.List.Open = true
			return
		}
	}
}

// anyProblem reports whether a part holds a problem: such a part is shown open.
func anyProblem(parts []PartView) bool {
	for _, p := range parts {
		switch {
		case p.Field != nil && p.Field.Problem != "",
			p.Group != nil && anyProblem(p.Group.Parts),
			p.List != nil && (p.List.Problem != "" || slices.ContainsFunc(p.List.Rows, func(r rowView) bool { return anyProblem(r.Parts) })):
			return true
		}
	}
	return false
}

// AnyOffer reports whether a part offers a typical value or has one.
func AnyOffer(parts []PartView) bool {
	return slices.ContainsFunc(parts, func(p PartView) bool {
		switch {
		case p.Field != nil:
			return p.Field.Offer != "" || p.Field.Origin == "typical"
		case p.Group != nil:
			return AnyOffer(p.Group.Parts)
		}
		return p.List != nil && slices.ContainsFunc(p.List.Rows, func(r rowView) bool { return AnyOffer(r.Parts) })
	})
}

// tally counts the inputs of a section: those that are asked for, those of them with a value, and all that are typical.
// Words are not counted, nor what stands folded, nor what may stay empty and does.
type tally struct{ all, known, typical int }

func (n *tally) count(parts []PartView, open bool) {
	for _, p := range parts {
		switch {
		case p.Field != nil:
			n.field(*p.Field, open)
		case p.Group != nil:
			n.count(p.Group.Parts, open && !p.Group.Fold)
		case p.List != nil:
			for _, r := range p.List.Rows {
				n.count(r.Parts, open)
			}
		}
	}
}

func (n *tally) field(f FieldView, open bool) {
	if f.Origin == "typical" {
		n.typical++
	}
	switch {
	case !open || f.Kind == asText || f.Kind == AsLong:
	case f.Value != "":
		n.all++
		n.known++
	case !f.Spare:
		n.all++
	}
}

func (n *tally) say() string {
	switch {
	case n.all == 0:
		return ""
	case n.known == n.all:
		return "all known"
	case n.known == 0:
		return "nothing known yet"
	}
	return fmt.Sprintf("%d of %d known", n.known, n.all)
}

// MostBrief is how many values the line of a closed section tells.
const MostBrief = 3

// briefly tells the first values of a section that say something without their label, and how many rows its lists have.
func briefly(parts []PartView) []string {
	var out []string
	for _, p := range parts {
		if len(out) >= MostBrief {
			break
		}
		switch {
		case p.Field != nil:
			if say := tells(*p.Field); say != "" {
				out = append(out, say)
			}
		case p.List != nil && len(p.List.Rows) > 0:
			out = append(out, ManyOf(len(p.List.Rows), p.List.One))
		}
	}
	return out
}

// toldAt tells the value, or counts the rows, at one path.
func toldAt(parts []PartView, path string) string {
	for _, p := range parts {
		switch {
		case p.Field != nil && p.Field.Path == path && p.Field.Kind == asText:
			return Clip(p.Field.Value, 40)
		case p.Field != nil && p.Field.Path == path:
			return tells(*p.Field)
		case p.List != nil && p.List.Path == path && len(p.List.Rows) > 0:
			return ManyOf(len(p.List.Rows), p.List.One)
		case p.Group != nil:
			if say := toldAt(p.Group.Parts, path); say != "" {
				return say
			}
		}
	}
	return ""
}

// tells is a value that can be understood without its label: a quantity with its unit, or a word that is no plain yes.
func tells(f FieldView) string {
	switch {
	case f.Value == "" || f.Problem != "":
		return ""
	case f.Told != "" && !f.Unsaved:
		return f.Told
	case f.Kind == AsNumber && f.Unit != "" && f.Unit != "%":
		return shortNumber(f.Value) + " " + f.Unit
	case f.Kind == AsChoice && f.Value != "yes" && f.Value != "no":
		return WordFor(f.Value)
	}
	return ""
}

// shortNumber rounds what has more digits than a glance takes in.
func shortNumber(text string) string {
	if v, err := strconv.ParseFloat(text, 64); err == nil && len(text) > 5 {
		return unit.Rounded(v, 3)
	}
	return unit.Apart(text)
}

// ManyOf counts rows by the name of one: "2 pieces", "3 groups of panels", "4 lamps or devices".
func ManyOf(n int, one string) string {
	if n == 1 {
		return "1 " + one
	}
	words := strings.Fields(one)
	for i, w := range words {
		if i == 0 || i > 0 && words[i-1] == "or" {
			words[i] = w + "s"
		}
	}
	return fmt.Sprintf("%d %s", n, strings.Join(words, " "))
}

// shortSource is a source in at most a line.
func shortSource(s string) string {
	if first, _, cut := strings.Cut(s, ";"); cut && len(s) > 70 {
		return Clip(first, 70)
	}
	return Clip(s, 70)
}
