package web

import (
	"math"
	"net/url"
	"strings"
	"testing"

	"duskweight/internal/document"
	"duskweight/internal/model"
	"duskweight/internal/model/panel"
	"duskweight/internal/model/unit"
)

// panelForm is a small form of a variant, with a list, a fold, a choice and a typical value.
func panelForm() form[model.Variant] {
	gamma := func(a *panel.Array) *unit.Known[unit.PerKelvin] { return &a.Gamma }
	return form[model.Variant]{
		parts: []part[model.Variant]{
			text("name", "Name", func(v *model.Variant) *string { return &v.Name }),
			rows("panels", "Panels", "group of panels", 3, func(v *model.Variant) *[]panel.Array { return &v.Panels }, panel.Array{Name: "new"},
				text("name", "Where", func(a *panel.Array) *string { return &a.Name }),
				number("count", "How many", unit.Counts, func(a *panel.Array) *unit.Known[unit.Count] { return &a.Count }),
				number("panel_w", "Power of one", unit.Powers, func(a *panel.Array) *unit.Known[unit.Power] { return &a.Power }),
				folded("Heat", "",
					number("gamma_per_k", "Change with temperature", unit.PerKelvins, gamma),
					word("cell_temperature", "Temperature by", func(a *panel.Array) *string { return &a.Cell }))),
		},
		origins: func(v *model.Variant) *model.Origins { return &v.Origins },
		check:   model.CheckVariant,
	}
}

func oneVariant() model.Variant {
	return model.Variant{
		Name: "A", Controller: panel.Controller{Kind: "tracking"},
		Panels: []panel.Array{
			{Name: "roof", Count: unit.Of[unit.Count](2), Power: unit.Of[unit.Power](100), Cell: "faiman"},
			{Name: "wall", Count: unit.Of[unit.Count](1), Power: unit.Of[unit.Power](50), Gamma: unit.Of[unit.PerKelvin](-0.004), Cell: "faiman"},
		},
		Origins: model.Origins{"panels[1].gamma_per_k": {Kind: "typical", Source: "x"}, "panels[0].count": {Kind: "typical"}},
	}
}

// What a page shows for a design, sent back unchanged, changes not one bit of it, in either system of units.
func TestUnchangedFormChangesNothing(t *testing.T) {
	f := panelForm()
	for _, sys := range []unit.System{unit.Metric, unit.Imperial} {
		v := oneVariant()
		v.Panels[0].Power = unit.Of(unit.Power(100.0 / 3))
		v.Panels[0].Gamma = unit.Of(unit.PerKelvin(math.Nextafter(-0.004, 0)))
		want := dump(v)
		if ps := f.read(sentBack(f, v, sys), &v, sys); len(ps) > 0 {
			t.Errorf("system %d: %v", sys, ps)
		}
		if got := dump(v); got != want {
			t.Errorf("system %d:\n%s\n%s", sys, want, got)
		}
	}
}

// sentBack is what a browser sends when nobody typed anything.
func sentBack(f form[model.Variant], v model.Variant, sys unit.System) url.Values {
	typed := url.Values{}
	var collect func([]partView)
	collect = func(parts []partView) {
		for _, p := range parts {
			switch {
			case p.Field != nil:
				typed.Set(p.Field.Path, p.Field.Value)
			case p.Group != nil:
				collect(p.Group.Parts)
			case p.List != nil:
				typed.Set(p.List.Path+rowsSuffix, itoa(p.List.Count))
				for _, r := range p.List.Rows {
					collect(r.Parts)
				}
			}
		}
	}
	collect(f.view(&v, nil, nil, sys).Parts)
	return typed
}

func TestReadTypedValues(t *testing.T) {
	f := panelForm()
	v := oneVariant()
	typed := sentBack(f, v, unit.Metric)
	typed.Set("panels[0].count", " 3 ")
	typed.Set("panels[1].panel_w", "0,06 kW")
	typed.Set("panels[1].gamma_per_k", "")
	if ps := f.read(typed, &v, unit.Metric); len(ps) > 0 {
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
	f := panelForm()
	for _, text := range []string{
		"0", "-1", "NaN", "Inf", "-inf", "1e999", "1e400 W", "1e9", "999999999999", "abc", "0x10", "1_000", "1,500", "½", "٣",
		"1.5.5", "--3", "12 V", "5 furlongs", strings.Repeat("novel ", 20000), "\x00", "\xff\xfe", "<script>", "' OR 1=1", "1\n2", "\u202e12",
	} {
		v := oneVariant()
		typed := sentBack(f, v, unit.Metric)
		for name := range typed {
			if !strings.HasSuffix(name, rowsSuffix) {
				typed.Set(name, text)
			}
		}
		ps := f.read(typed, &v, unit.Metric)
		for _, a := range v.Panels {
			for _, x := range []float64{float64(a.Power.Val), float64(a.Gamma.Val)} {
				if math.IsNaN(x) || math.IsInf(x, 0) {
					t.Errorf("%.20q: %v is in the design", text, x)
				}
			}
		}
		view := f.view(&v, typed, ps, unit.Metric)
		if len(ps) > 0 && len(view.Problems) != len(ps) {
			t.Errorf("%.20q: %d problems, %d in the summary", text, len(ps), len(view.Problems))
		}
	}
}

func TestRefusedTextComesBack(t *testing.T) {
	f := panelForm()
	v := oneVariant()
	typed := sentBack(f, v, unit.Metric)
	typed.Set("panels[0].count", "two")
	typed.Set("panels[1].panel_w", "6,0 V")
	typed.Set("panels[1].count", "2.5")
	ps := f.read(typed, &v, unit.Metric)
	if len(ps) != 3 {
		t.Fatalf("%d problems, want 3: %v", len(ps), ps)
	}
	view := f.view(&v, typed, ps, unit.Metric)
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
	f := panelForm()
	v := oneVariant()
	typed := sentBack(f, v, unit.Metric)
	typed.Set("panels[1].name", "typed wall")
	typed.Set(nameDo, "remove:panels[0]")
	if ps := f.read(typed, &v, unit.Metric); len(ps) > 0 {
		t.Fatal(ps)
	}
	if len(v.Panels) != 1 || v.Panels[0].Name != "typed wall" || v.Panels[0].Gamma != unit.Of[unit.PerKelvin](-0.004) {
		t.Errorf("%+v", v.Panels)
	}
	if o, ok := v.Origins["panels[0].gamma_per_k"]; len(v.Origins) != 1 || !ok || o.Source != "x" {
		t.Errorf("origins did not move with their row: %v", v.Origins)
	}

	typed = sentBack(f, v, unit.Metric)
	typed.Set(nameDo, "add:panels")
	if ps := f.read(typed, &v, unit.Metric); len(ps) > 0 {
		t.Fatal(ps)
	}
	if len(v.Panels) != 2 || v.Panels[1].Name != "new" {
		t.Errorf("%+v", v.Panels)
	}
	for _, do := range []string{"remove:panels[7]", "remove:panels[-1]", "remove:panels[x]", "remove:panels", "remove:nothing[0]", "add:nothing", "add:", "typical:nothing", "typical:panels[9].gamma_per_k", "steal:panels", ":"} {
		typed = sentBack(f, v, unit.Metric)
		typed.Set(nameDo, do)
		want := dump(v)
		f.read(typed, &v, unit.Metric)
		if got := dump(v); got != want {
			t.Errorf("%s changed the design", do)
		}
	}
	for _, n := range []string{"4", "-1", "1000000000", "x"} {
		if ps := f.read(url.Values{"panels[]": {n}}, &v, unit.Metric); len(ps) == 0 {
			t.Errorf("%s rows are taken", n)
		}
	}
}

// A typical value is taken with its source and stays marked until it is confirmed or typed over.
func TestTypicalUntilConfirmed(t *testing.T) {
	f := panelForm()
	v := oneVariant()
	const path = "panels[0].gamma_per_k"
	typed := sentBack(f, v, unit.Metric)
	typed.Set(nameDo, "typical:"+path)
	if ps := f.read(typed, &v, unit.Metric); len(ps) > 0 {
		t.Fatal(ps)
	}
	if v.Panels[0].Gamma != unit.Of[unit.PerKelvin](-0.004) || v.Origins[path].Kind != "typical" || v.Origins[path].Source == "" {
		t.Errorf("%v %v", v.Panels[0].Gamma, v.Origins)
	}
	typed = sentBack(f, v, unit.Metric)
	if f.read(typed, &v, unit.Metric); v.Origins[path].Kind != "typical" {
		t.Error("it lost its mark without a word")
	}
	typed.Set(nameConfirm, path)
	if f.read(typed, &v, unit.Metric); v.Origins[path].Kind != "" {
		t.Error("it keeps its mark after it was confirmed")
	}
}

// In the other system a value is shown in that system's unit, in short; by hand: 240/0.45359237 = 529.1, 1 in = 25.4 mm.
func TestShownInTheChosenSystem(t *testing.T) {
	for _, one := range []struct {
		q    unit.Quantity
		si   float64
		sys  unit.System
		want string
	}{
		{unit.Masses, 240, unit.Metric, "240"},
		{unit.Masses, 240, unit.Imperial, "529"},
		{unit.Masses, 529 * 0.45359237, unit.Imperial, "529"},
		{unit.SmallLengths, 0.0254, unit.Imperial, "1"},
		{unit.Angles, float64(30 * unit.Degree), unit.Imperial, "30"},
		{unit.Powers, 100.0 / 3, unit.Metric, "33.3333"},
		{unit.ClockTimes, 18*3600 + 30*60, unit.Metric, "18:30"},
	} {
		if got := typedForm(one.q, one.si, one.sys); got != one.want {
			t.Errorf("%g is %s, want %s", one.si, got, one.want)
		}
	}
}

func TestTableMistakesStopTheProgram(t *testing.T) {
	defer func() {
		if recover() == nil {
			t.Error("a path that does not exist is taken")
		}
	}()
	text("nmae", "Name", func(v *model.Variant) *string { return &v.Name })
}

func TestClone(t *testing.T) {
	v := oneVariant()
	c := document.Clone(v)
	want := dump(v)
	c.Panels[0].Name = "changed"
	c.Origins["x"] = model.Origin{}
	if dump(v) != want {
		t.Error("the copy shares memory with what was copied")
	}
}

func FuzzRead(f *testing.F) {
	f.Add("panels[0].count", "2", "add:panels")
	f.Add("panels[]", "3", "remove:panels[1]")
	f.Add("panels[1].panel_w", "1e999", "typical:panels[0].gamma_per_k")
	table := panelForm()
	f.Fuzz(func(t *testing.T, name, text, do string) {
		v := oneVariant()
		typed := sentBack(table, v, unit.Metric)
		typed.Set(name, text)
		typed.Set(nameDo, do)
		ps := table.read(typed, &v, unit.Metric)
		if len(v.Panels) > 3 {
			t.Errorf("%d rows", len(v.Panels))
		}
		table.view(&v, typed, ps, unit.Metric)
		table.differences(oneVariant(), v, unit.Imperial)
	})
}
