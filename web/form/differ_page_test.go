package form_test

import (
	"fmt"
	"math"
	"reflect"
	"strings"
	"testing"

	"duskweight/internal/document"
	"duskweight/internal/model"
	"duskweight/internal/model/unit"
	"duskweight/web/form"
	"duskweight/web/formtest"
)

// One list of differences serves the line of a save, the history and the two columns of a conflict. A row that is gone is one
// difference of the row, though what stood after it moves up; a value names its row and its field.
func TestDifferences(t *testing.T) {
	f := formtest.PanelForm()
	was := formtest.OneVariant()
	gone, more := document.Clone(was), document.Clone(was)
	gone.Panels = gone.Panels[1:]
	more.Panels = append(more.Panels, more.Panels[0])
	more.Panels[0].Count = unit.Of[unit.Count](5)
	for name, c := range map[string]struct {
		diffs []form.Difference
		want  []string // path; field; line; the two sides
	}{
		"a row gone": {f.Differences(was, gone, unit.Metric), []string{"panels[0]; ; Group of panels 1 taken out (roof, 2, 100 W); there (roof, 2, 100 W) | not there"}},
		"a row more and a value": {f.Differences(was, more, unit.Metric), []string{
			"panels[0].count; panels[0].count; Group of panels 1, How many: 2 → 5; 2 | 5",
			"panels[2]; ; Group of panels 3 added (roof, 2, 100 W); not there | there (roof, 2, 100 W)",
		}},
		"nothing": {f.Differences(was, document.Clone(was), unit.Imperial), nil},
	} {
		var got []string
		for _, d := range c.diffs {
			old, new := d.Sides()
			got = append(got, strings.ReplaceAll(fmt.Sprintf("%s; %s; %s; %s | %s", d.Path, d.Field(), d, old, new), unit.Space, " "))
		}
		if strings.Join(got, "\n") != strings.Join(c.want, "\n") {
			t.Errorf("%s:\n%s\nwant\n%s", name, strings.Join(got, "\n"), strings.Join(c.want, "\n"))
		}
	}
}

// What is left out because it is the same makes no difference to what is told: after a change of any number, known or not, in a
// row or beside the rows, the whole of both versions printed and compared says the same.
func TestDifferencesOfEachNumber(t *testing.T) {
	f := formtest.PanelForm()
	was := formtest.OneVariant()
	changes := 0
	var count int
	formtest.EachKnown(reflect.ValueOf(&was).Elem(), func(_, _ reflect.Value, _ reflect.StructTag) { count++ }, "")
	for n := range count {
		is, at := document.Clone(was), 0
		formtest.EachKnown(reflect.ValueOf(&is).Elem(), func(value, known reflect.Value, _ reflect.StructTag) {
			if at++; at-1 != n {
				return
			}
			if known.SetBool(true); value.CanInt() {
				value.SetInt(value.Int() + 1)
			} else if value.CanFloat() && value.Float() != 0 {
				value.SetFloat(math.Nextafter(value.Float(), 1e9))
			} else if value.CanFloat() {
				value.SetFloat(0.5)
			} else {
				known.SetBool(false)
			}
		}, "")
		got := f.Differences(was, is, unit.Metric)
		a, b := document.Clone(was), document.Clone(is)
		want := form.Differ(allOf(f.Parts, &a), allOf(f.Parts, &b), "")
		if fmt.Sprint(got) != fmt.Sprint(want) {
			t.Errorf("number %d: %v, want %v", n, got, want)
		}
		changes += len(got)
	}
	more := document.Clone(was)
	more.Panels = append(more.Panels, more.Panels[1])
	if got := f.Differences(was, more, unit.Metric); len(got) != 1 {
		t.Errorf("a row at the end: %v", got)
	}
	if count < 20 || changes < 4 {
		t.Errorf("%d numbers, %d differences: the test is blind", count, changes)
	}
}

// allOf prints a version whole.
func allOf(parts []form.Part[model.Variant], v *model.Variant) []form.Value {
	all, _ := form.Told(parts, v, nil, unit.Metric)
	return all
}

// A row that was added with a value far from what is usual is remarked on as a changed value is: 40 kW are no single panel.
func TestRemarksInAddedRow(t *testing.T) {
	f := formtest.PanelForm()
	was := formtest.OneVariant()
	is := document.Clone(was)
	is.Panels = append(is.Panels, is.Panels[0])
	is.Panels[2].Power = unit.Of[unit.Power](40e3)
	said := f.Remarks(is, f.Differences(was, is, unit.Metric), unit.Metric)
	if len(said) != 1 || said[form.FieldID("panels[2].panel_w")] == "" {
		t.Errorf("%q", said)
	}
}
