package web

import (
	"fmt"
	"reflect"
	"slices"
	"strings"

	"duskweight/internal/model"
	"duskweight/internal/model/cell"
	"duskweight/internal/model/cost"
	"duskweight/internal/model/load"
	"duskweight/internal/model/unit"
	"duskweight/internal/store"
)

// value is one value of a thing in words, or a list of rows of them.
type value struct {
	key         string // its place inside the row or the thing
	label, text string
	one         string    // of a list: what one row is called
	rows        [][]value // of a list
	names       []string  // of a list: what each row is called, where it has a name of its own
}

// valuesOf tells a thing in the order of its form. at is the place of what the parts are inside of.
func valuesOf[T any](parts []part[T], t *T, at string, sys unit.System) (out []value) {
	for _, p := range parts {
		switch {
		case p.input != nil:
			out = append(out, value{key: strings.TrimPrefix(p.input.path, at), label: p.input.label, text: p.input.text(t, sys)})
		case p.group != nil:
			for _, v := range valuesOf(p.group.parts, t, at, sys) {
				if p.group.shape == "" && slices.ContainsFunc(monthNames[:], func(m string) bool { return m == v.label }) {
					v.label = p.group.title + ", " + v.label
				}
				out = append(out, v)
			}
		default:
			l := value{key: strings.TrimPrefix(p.list.path, at), label: p.list.title, one: p.list.one}
			for i := range p.list.count(t) {
				l.rows = append(l.rows, valuesOf(p.list.row(i), t, fmt.Sprintf("%s[%d]", p.list.path, i), sys))
				l.names = append(l.names, "")
			}
			out = append(out, l)
		}
	}
	return out
}

// changesOf tells what a change changed, value by value: "Rope diameter: 6 mm → 8 mm".
func changesOf(c store.Chapter, of Tables, sys unit.System) []string {
	var out []string
	switch {
	case c.ProjectWas != nil && c.ProjectIs != nil:
		out = differ(projectValues(c.ProjectWas, of, sys), projectValues(c.ProjectIs, of, sys), "")
	case c.VariantWas != nil && c.VariantIs != nil:
		out = differ(variantValues(c.VariantWas, of, sys), variantValues(c.VariantIs, of, sys), "")
	}
	if len(out) == 0 {
		out = append(untold(reflect.ValueOf(c.ProjectWas), reflect.ValueOf(c.ProjectIs), ""), untold(reflect.ValueOf(c.VariantWas), reflect.ValueOf(c.VariantIs), "")...)
	}
	if c.OtherYear {
		out = append(out, "Weather file: another one")
	}
	return out
}

func projectValues(p *model.Project, of Tables, sys unit.System) []value {
	out := valuesOf(of.Place(p), p, "", sys)
	out = append(out, valuesOf(within("load", func(p *model.Project) *load.Load { return &p.Load }, of.Load()...), p, "", sys)...)
	out = append(out, valuesOf(within("shelf", func(p *model.Project) *model.Shelf { return &p.Shelf }, of.Shelf()...), p, "", sys)...)
	return append(out, valuesOf(within("money", func(p *model.Project) *cost.Terms { return &p.Money }, of.Money()...), p, "", sys)...)
}

// variantValues are those of the variant's own form, and its stores as a list, each with those of its page.
func variantValues(v *model.Variant, of Tables, sys unit.System) []value {
	out := append(valuesOf(of.Variant(), v, "", sys), valuesOf(of.Parts(), v, "", sys)...)
	stores := value{key: "stores", one: "store"}
	for _, st := range v.Stores {
		switch {
		case st.Hoist != nil:
			stores.rows = append(stores.rows, append(valuesOf(of.Hoist(), st.Hoist, "", sys), valuesOf(of.Trials(), st.Hoist, "", sys)...))
			stores.names = append(stores.names, st.Hoist.Name)
		case st.Cells != nil:
			stores.rows = append(stores.rows, valuesOf[cell.Bank](of.Cells(), st.Cells, "", sys))
			stores.names = append(stores.names, st.Cells.Name)
		}
	}
	return append(out, stores)
}

// untold names what differs and has no field, by its meaning in the document. Where a value comes from is none of it.
func untold(was, is reflect.Value, say string) (out []string) {
	switch {
	case was.Kind() != is.Kind() || was.Type() == reflect.TypeFor[model.Origins]():
	case was.Kind() == reflect.Pointer:
		if !was.IsNil() && !is.IsNil() {
			return untold(was.Elem(), is.Elem(), say)
		}
	case was.Kind() == reflect.Struct && !was.FieldByName("Is").IsValid():
		for i := range was.NumField() {
			if f := was.Type().Field(i); f.IsExported() {
				out = append(out, untold(was.Field(i), is.Field(i), f.Tag.Get("say"))...)
			}
		}
	case !reflect.DeepEqual(was.Interface(), is.Interface()) && say != "":
		say, _, _ = strings.Cut(say, ";")
		return []string{say + ": changed"}
	}
	return out
}

// differ tells what differs between two versions; where is the row that they are in, "Panel 2, ".
func differ(was, is []value, where string) (out []string) {
	old := map[string]value{}
	for _, v := range was {
		old[v.key] = v
	}
	for _, v := range is {
		b := old[v.key]
		delete(old, v.key)
		switch {
		case v.one != "" || b.one != "":
			out = append(out, differRows(b, v, where)...)
		case b.text != v.text:
			out = append(out, where+v.label+": "+short(orNotKnown(b.text))+" → "+short(orNotKnown(v.text)))
		}
	}
	for _, v := range was {
		if b, gone := old[v.key]; gone && b.text != "" && b.one == "" {
			out = append(out, where+b.label+": "+short(b.text)+" → not known")
		}
	}
	return out
}

// differRows tells what differs between two lists. Rows that are alike at the beginning and at the end are paired; what
// lies between them was added, taken out or changed.
func differRows(was, is value, where string) (out []string) {
	a, b := was.rows, is.rows
	same := func(x, y []value) bool { return len(differ(x, y, "")) == 0 && len(x) == len(y) }
	first := 0
	for first < len(a) && first < len(b) && same(a[first], b[first]) {
		first++
	}
	endA, endB := len(a), len(b)
	for endA > first && endB > first && same(a[endA-1], b[endB-1]) {
		endA--
		endB--
	}
	for i := first; i < max(endA, endB); i++ {
		switch {
		case i >= endA:
			out = append(out, where+rowName(is, i)+" added"+rowInBrief(b[i]))
		case i >= endB:
			out = append(out, where+rowName(was, i)+" taken out"+rowInBrief(a[i]))
		default:
			name := where + rowName(is, i) + ", "
			if is.one == "store" && len(a) == 1 && len(b) == 1 {
				name = where // the only store needs no name
			}
			out = append(out, differ(a[i], b[i], name)...)
		}
	}
	return out
}

func rowName(l value, i int) string {
	if l.names[i] != "" {
		return clip(l.names[i], 40)
	}
	return fmt.Sprintf("%s %d", sentenceCase(l.one), i+1)
}

// rowInBrief is the first values of a row in brackets.
func rowInBrief(row []value) string {
	var told []string
	for _, v := range row {
		if v.text != "" && v.one == "" && v.text != "not known" && len(told) < mostBrief {
			told = append(told, short(v.text))
		}
	}
	if len(told) == 0 {
		return ""
	}
	return " (" + strings.Join(told, ", ") + ")"
}
