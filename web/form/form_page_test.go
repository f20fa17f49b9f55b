package form_test

import (
	"math"
	"net/url"
	"strings"
	"testing"

	"duskweight/internal/document"
	"duskweight/internal/model"
	"duskweight/internal/model/unit"
	"duskweight/web/form"
	"duskweight/web/formtest"
)

// What a page shows for a design, sent back unchanged, changes not one bit of it, in either system of units.
func TestUnchangedFormChangesNothing(t *testing.T) {
	f := formtest.PanelForm()
	for _, sys := range []unit.System{unit.Metric, unit.Imperial} {
		v := formtest.OneVariant()
		v.Panels[0].Power = unit.Of(unit.Power(100.0 / 3))
		v.Panels[0].Gamma = unit.Of(unit.PerKelvin(math.Nextafter(-0.004, 0)))
		want := formtest.Dump(v)
		if ps := f.Read(formtest.SentBack(f, v, sys), &v, sys); len(ps) > 0 {
			t.Errorf("system %d: %v", sys, ps)
		}
		if got := formtest.Dump(v); got != want {
			t.Errorf("system %d:\n%s\n%s", sys, want, got)
		}
	}
}

func TestReadTypedValues(t *testing.T) {
	f := formtest.PanelForm()
	v := formtest.OneVariant()
	typed := formtest.SentBack(f, v, unit.Metric)
	typed.Set("panels[0].count", " 3 ")
	typed.Set("panels[1].panel_w", "0,06 kW")
	typed.Set("panels[1].gamma_per_k", "")
	if ps := f.Read(typed, &v, unit.Metric); len(ps) > 0 {
		t.Fatal(ps)
	}
	if got := v.Panels[0].Count; got != unit.Of[unit.Count](3) {
		t.Errorf("count is %v", got)
	}
	if got := v.Panels[1].Power; got != unit.Of[unit.Power](60) {
		t.Errorf("power is %v", got)
	}
	if v.Panels[1].Gamma.Is {
		t.Error("an empty field is known")
	}
	if len(v.Origins) != 0 {
		t.Errorf("typed values still have an origin: %v", v.Origins)
	}
}

// Any text in any field: refused or taken, never a panic, never a value that is not a number, and every problem at once.
func TestAnyText(t *testing.T) {
	f := formtest.PanelForm()
	for _, text := range []string{
		"0", "-1", "NaN", "Inf", "-inf", "1e999", "1e400 W", "1e9", "999999999999", "abc", "0x10", "1_000", "1,500", "½", "٣",
		"1.5.5", "--3", "12 V", "5 furlongs", strings.Repeat("novel ", 20000), "\x00", "\xff\xfe", "<script>", "' OR 1=1", "1\n2", "\u202e12",
	} {
		v := formtest.OneVariant()
		typed := formtest.SentBack(f, v, unit.Metric)
		for name := range typed {
			if !strings.HasSuffix(name, form.RowsSuffix) {
				typed.Set(name, text)
			}
		}
		ps := f.Read(typed, &v, unit.Metric)
		for _, a := range v.Panels {
			for _, x := range []float64{float64(a.Power.Val), float64(a.Gamma.Val)} {
				if math.IsNaN(x) || math.IsInf(x, 0) {
					t.Errorf("%.20q: %v is in the design", text, x)
				}
			}
		}
		view := f.View(&v, typed, ps, unit.Metric)
		if len(ps) > 0 && len(view.Problems) != len(ps) {
			t.Errorf("%.20q: %d problems, %d in the summary", text, len(ps), len(view.Problems))
		}
	}
}

func TestRefusedTextComesBack(t *testing.T) {
	f := formtest.PanelForm()
	v := formtest.OneVariant()
	typed := formtest.SentBack(f, v, unit.Metric)
	typed.Set("panels[0].count", "two")
	typed.Set("panels[1].panel_w", "6,0 V")
	typed.Set("panels[1].count", "2.5")
	ps := f.Read(typed, &v, unit.Metric)
	if len(ps) != 3 {
		t.Fatalf("%d problems, want 3: %v", len(ps), ps)
	}
	view := f.View(&v, typed, ps, unit.Metric)
	for i, want := range []string{"Group of panels 1: How many", "Group of panels 2: How many", "Group of panels 2: Power of one"} {
		if got := view.Problems[i]; got.Label != want || !strings.HasSuffix(got.Say, ".") {
			t.Errorf("problem %d: %+v", i, got)
		}
	}
	row := view.Parts[1].List.Rows[0]
	if got := row.Parts[1].Field; got.Value != "two" || got.Problem == "" || got.Saved != "2" {
		t.Errorf("%+v", got)
	}
}

func TestRows(t *testing.T) {
	f := formtest.PanelForm()
	v := formtest.OneVariant()
	typed := formtest.SentBack(f, v, unit.Metric)
	typed.Set("panels[1].name", "typed wall")
	typed.Set(form.NameDo, "remove:panels[0]")
	if ps := f.Read(typed, &v, unit.Metric); len(ps) > 0 {
		t.Fatal(ps)
	}
	if len(v.Panels) != 1 || v.Panels[0].Name != "typed wall" || v.Panels[0].Gamma != unit.Of[unit.PerKelvin](-0.004) {
		t.Errorf("%+v", v.Panels)
	}
	if o, ok := v.Origins["panels[0].gamma_per_k"]; len(v.Origins) != 1 || !ok || o.Source != "x" {
		t.Errorf("origins did not move with their row: %v", v.Origins)
	}

	typed = formtest.SentBack(f, v, unit.Metric)
	typed.Set(form.NameDo, "add:panels")
	if ps := f.Read(typed, &v, unit.Metric); len(ps) > 0 {
		t.Fatal(ps)
	}
	if len(v.Panels) != 2 || v.Panels[1].Name != "new" {
		t.Errorf("%+v", v.Panels)
	}
	for _, do := range []string{"remove:panels[7]", "remove:panels[-1]", "remove:panels[x]", "remove:panels", "remove:nothing[0]", "add:nothing", "add:", "typical:nothing", "typical:panels[9].gamma_per_k", "steal:panels", ":"} {
		typed = formtest.SentBack(f, v, unit.Metric)
		typed.Set(form.NameDo, do)
		want := formtest.Dump(v)
		f.Read(typed, &v, unit.Metric)
		if got := formtest.Dump(v); got != want {
			t.Errorf("%s changed the design", do)
		}
	}
	for _, n := range []string{"4", "-1", "1000000000", "x"} {
		if ps := f.Read(url.Values{"panels[]": {n}}, &v, unit.Metric); len(ps) == 0 {
			t.Errorf("%s rows are taken", n)
		}
	}
}

// A typical value is taken with its source and stays marked until it is confirmed or typed over.
func TestTypicalUntilConfirmed(t *testing.T) {
	f := formtest.PanelForm()
	v := formtest.OneVariant()
	const path = "panels[0].gamma_per_k"
	typed := formtest.SentBack(f, v, unit.Metric)
	typed.Set(form.NameDo, "typical:"+path)
	if ps := f.Read(typed, &v, unit.Metric); len(ps) > 0 {
		t.Fatal(ps)
	}
	if v.Panels[0].Gamma != unit.Of[unit.PerKelvin](-0.004) || v.Origins[path].Kind != "typical" || v.Origins[path].Source == "" {
		t.Errorf("%v %v", v.Panels[0].Gamma, v.Origins)
	}
	typed = formtest.SentBack(f, v, unit.Metric)
	if f.Read(typed, &v, unit.Metric); v.Origins[path].Kind != "typical" {
		t.Error("it lost its mark without a word")
	}
	typed.Set(form.NameConfirm, path)
	if f.Read(typed, &v, unit.Metric); v.Origins[path].Kind != "" {
		t.Error("it keeps its mark after it was confirmed")
	}
}

func TestClone(t *testing.T) {
	v := formtest.OneVariant()
	c := document.Clone(v)
	want := formtest.Dump(v)
	c.Panels[0].Name = "changed"
	c.Origins["x"] = model.Origin{}
	if formtest.Dump(v) != want {
		t.Error("the copy shares memory with what was copied")
	}
}

func FuzzRead(f *testing.F) {
	f.Add("panels[0].count", "2", "add:panels")
	f.Add("panels[]", "3", "remove:panels[1]")
	f.Add("panels[1].panel_w", "1e999", "typical:panels[0].gamma_per_k")
	table := formtest.PanelForm()
	f.Fuzz(func(t *testing.T, name, text, do string) {
		v := formtest.OneVariant()
		typed := formtest.SentBack(table, v, unit.Metric)
		typed.Set(name, text)
		typed.Set(form.NameDo, do)
		ps := table.Read(typed, &v, unit.Metric)
		if len(v.Panels) > 3 {
			t.Errorf("%d rows", len(v.Panels))
		}
		table.View(&v, typed, ps, unit.Metric)
		table.Differences(formtest.OneVariant(), v, unit.Imperial)
	})
}
