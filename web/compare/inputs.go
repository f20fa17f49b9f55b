package compare

import (
	"fmt"
	"slices"
	"strings"

	"duskweight/internal/model"
	"duskweight/internal/model/unit"
	"duskweight/internal/store"
	"duskweight/web/form"
	"duskweight/web/page"
)

// Inputs of variants side by side: the variant's own, then each store, the first lifted mass beside the first lifted
// mass, the first battery beside the first battery.

// inputGroups are the inputs that differ, or all of them. What only one of the variants has is not a difference in its
// inputs: its row of stores says it.
func inputGroups(of page.Tables, vs []store.Saved[model.Variant], all bool, sys unit.System) []compareGroup {
	var titles []string
	byTitle := map[string][]inputsOf{} // by variant
	put := func(i int, title, at string, texts []form.InputText) {
		if byTitle[title] == nil {
			titles = append(titles, title)
			byTitle[title] = make([]inputsOf, len(vs))
		}
		byTitle[title][i] = inputsOf{at, texts}
	}
	for i, v := range vs {
		put(i, "Panels and what is always on", "", ownTexts(of, v.Value, sys))
	}
	for i, v := range vs {
		count := map[string]int{}
		for n, s := range v.Value.Stores {
			k := of.Stores.Of(s.Kind())
			kind, texts := k.Row.Title, k.Inputs.Texts(s, sys)
			if count[kind]++; count[kind] > 1 {
				kind = fmt.Sprintf("%s %d", kind, count[kind])
			}
			put(i, kind, s.Kind().Path(n), texts)
		}
	}
	var out []compareGroup
	for _, t := range titles {
		g := compareGroup{Title: "Inputs: " + strings.ToLower(t), Rows: inputRows(byTitle[t], t)}
		if !all {
			g.Rows = slices.DeleteFunc(g.Rows, func(r compareRow) bool { return !r.Differs })
		}
		if len(g.Rows) > 0 {
			out = append(out, g)
		}
	}
	return out
}

// inputsOf are the inputs of one form of a variant, and where it stands in the variant; no inputs where it has no such store.
type inputsOf struct {
	at    string
	texts []form.InputText
}

// inputRows lays the inputs of one group side by side. No cell stays blank: a store that is not there, a row of a list
// that is not there, and a value that is not known are different things.
func inputRows(by []inputsOf, title string) []compareRow {
	absent := "no " + strings.ToLower(title)
	var rows []compareRow
	at := map[string]int{}
	for i, one := range by {
		for _, in := range one.texts {
			n, ok := at[in.Path]
			if !ok {
				n = len(rows)
				at[in.Path] = n
				rows = append(rows, compareRow{Name: in.Label, Cells: make([]compareCell, len(by)), key: title + "/" + in.Path, at: make([]string, len(by)), labelled: in.Labelled})
				for j := range by {
					rows[n].Cells[j].Text = "none"
					if by[j].texts == nil {
						rows[n].Cells[j].Text = absent
					}
				}
			}
			rows[n].Cells[i].Text, rows[n].Cells[i].told = form.OrNotKnown(in.Text), form.OrNotKnown(in.Told)
			rows[n].at[i] = model.Join(one.at, in.Path)
		}
	}
	for i := range rows {
		first := ""
		for _, c := range rows[i].Cells {
			if c.Text == absent {
				continue
			}
			rows[i].Differs = rows[i].Differs || first != "" && c.Text != first
			first = c.Text
		}
		rows[i].tellShort()
	}
	return slices.DeleteFunc(rows, func(r compareRow) bool { // nobody gave it
		return !slices.ContainsFunc(r.Cells, func(c compareCell) bool { return c.Text != "not known" && c.Text != absent && c.Text != "none" })
	})
}

// tellShort tells each value with the digits of its quantity, unless two that differ would read the same.
func (r *compareRow) tellShort() {
	for i, a := range r.Cells {
		for _, b := range r.Cells[:i] {
			if a.told != "" && a.told == b.told && a.Text != b.Text {
				return
			}
		}
	}
	for i := range r.Cells {
		if told := r.Cells[i].told; told != "" {
			r.Cells[i].Text = told
		}
	}
}

// ownTexts are the inputs of a variant without its name.
func ownTexts(of page.Tables, v model.Variant, sys unit.System) []form.InputText {
	return slices.DeleteFunc(form.TextsOf(of.Variant(), v, sys), func(in form.InputText) bool {
		return in.Path == "name"
	})
}
