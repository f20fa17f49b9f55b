package hoist

import (
	"encoding/json"
	"math"
	"math/rand/v2"
	"strings"
	"testing"
	"time"

	"duskweight/internal/catalog"
	"duskweight/internal/model"
	"duskweight/internal/model/lift"
	"duskweight/internal/model/panel"
	"duskweight/internal/model/unit"
	"duskweight/web/page"
)

// StraightDoc is the sample's mended hoist with its panel straight on the motor.
func StraightDoc() model.Document {
	doc := catalog.Sample()
	v := doc.Variants[2]
	v.Stores = v.Stores[:1]
	v.Controller = panel.Controller{Kind: "direct"}
	v.Panels[0].Sheet = &panel.Sheet{Isc: unit.Of[unit.Current](5.96), Voc: unit.Of[unit.Voltage](22.4), Imp: unit.Of[unit.Current](5.56), Vmp: unit.Of[unit.Voltage](18)}
	v.Stores[0].Hoist.Raise.Feed = "panel"
	doc.Variants = []model.Variant{v}
	return doc
}

func straightHoist() *model.HoistResult {
	return model.HoistOf(model.Evaluate(StraightDoc(), "").Variants[0].Stores[0])
}

// Each picture has a sentence, axis titles with units, a table, at most 400 points a line and 20 KB; all of a page's are
// made in moments.
func TestHoistPictures(t *testing.T) {
	h := straightHoist()
	var took time.Duration
	for _, sys := range []unit.System{unit.Metric, unit.Imperial} {
		began := time.Now()
		charts, err := hoistCharts(h, sys, nil, "stores[0].hoist", "/x")
		took = time.Since(began)
		if err != nil || len(charts) != 7 {
			t.Fatalf("%d pictures, %v", len(charts), err)
		}
		size := 0
		for _, c := range charts {
			size += len(c.Option)
			if c.Say == "" || len(c.Rows) == 0 || c.CSV != "/x/"+c.ID+".csv" || len(c.Option) > 20<<10 {
				t.Errorf("%s: %q, %d rows, %s, %d bytes", c.ID, c.Say, len(c.Rows), c.CSV, len(c.Option))
			}
			var m struct {
				XAxis, YAxis []struct{ Name string }
				Series       []struct {
					Name string
					Data [][2]float64
				}
			}
			if err := json.Unmarshal(c.Option, &m); err != nil {
				t.Fatal(err)
			}
			for _, a := range append(m.XAxis, m.YAxis...) {
				if !strings.Contains(a.Name, ", ") && a.Name != "V and W" {
					t.Errorf("%s: axis %q has no unit", c.ID, a.Name)
				}
			}
			for _, l := range m.Series {
				if l.Name == "" || len(l.Data) == 0 || len(l.Data) > page.MostPoints {
					t.Errorf("%s: %q has %d points", c.ID, l.Name, len(l.Data))
				}
			}
		}
		if size > 30<<10 {
			t.Errorf("all pictures of the page: %d bytes", size)
		}
		t.Logf("%d bytes in %v", size, took)
	}
}

// A picture in imperial units has the same points in other units, by hand: 1 N·m is 1000 mN·m or
// 1/(0.45359237·9.80665·0.0254/16) = 141.6119 ozf·in; 1 m is 3.280840 ft, so 1 mm/s is 0.1968504 ft/min; °F = 1.8 °C + 32.
func TestImperialPictures(t *testing.T) {
	h := straightHoist()
	metric := map[string][][2]float64{}
	for _, p := range hoistPlots(h, unit.Metric, nil, "") {
		for _, l := range p.Lines {
			metric[p.Id+" "+l.Name] = l.Points
		}
	}
	seen := 0
	for _, p := range hoistPlots(h, unit.Imperial, nil, "") {
		for _, l := range p.Lines {
			zero, per := 0.0, 1.0
			switch l.Unit {
			case "ozf·in":
				per = 0.1416119
			case "ft/min":
				per = 0.1968504
			case "ft":
				per = 3.280840
			case "°F":
				zero, per = 32, 1.8
			case "lb", "in", "lbf·ft":
				t.Errorf("%s, %s: how much is one %s?", p.Id, l.Name, l.Unit)
			default:
				continue
			}
			seen++
			for i, at := range l.Points {
				want := zero + per*metric[p.Id+" "+l.Name][i][1]
				if math.Abs(at[1]-want) > 1e-6*math.Abs(want)+1e-9 {
					t.Errorf("%s, %s, point %d: %v %s, want %v", p.Id, l.Name, i, at[1], l.Unit, want)
					break
				}
			}
		}
	}
	if seen < 4 {
		t.Errorf("%d lines are in imperial units", seen)
	}
}

// The points are those of the numbers beside them.
func TestPicturesSayTheNumbers(t *testing.T) {
	h := straightHoist()
	d := h.Drive
	at := func(id, line string) [][2]float64 {
		for _, p := range hoistPlots(h, unit.Metric, nil, "") {
			for _, l := range p.Lines {
				if p.Id == id && l.Name == line {
					return l.Points
				}
			}
		}
		t.Fatalf("no line %q in %q", line, id)
		return nil
	}
	same := func(what string, got, want float64) {
		t.Helper()
		if math.Abs(got-want) > 1e-6*math.Abs(want)+1e-9 {
			t.Errorf("%s: %v, want %v", what, got, want)
		}
	}
	const rpm, mm, mNm = 30 / math.Pi, 1000, 1000
	same("lifting, rpm", at("motor", "lifting")[0][0], float64(d.Raising.Rotor)*rpm)
	same("lifting, torque", at("motor", "lifting")[0][1], float64(d.AtMotorUp.Val)*mNm)
	same("coming down, A", at("motor", "coming down")[0][1], float64(d.Lowering.Current))
	same("settles at", at("settling", "settles here")[0][0], float64(d.Lowering.Voltage))
	fall := at("descent", "speed of the mass")
	same("descent ends", fall[len(fall)-1][1], float64(d.Lowering.Speed)*mm)
	warm := at("heat-up", "winding")
	same("cold", warm[0][1], 15)
	same("after one lift", warm[4][1], float64(d.HeatUp.Winding))
	day := at("day", "height gained so far")
	sum := 0.0
	for _, g := range h.Direct.Year.Gain {
		sum += float64(g)
	}
	same("height", day[24][1], sum)
	same("start", at("panel", "first push")[0][1], float64(h.Direct.Start))
	// the loads' line passes the settling point: between two of its points, in a straight line for a row of lamps
	line := at("settling", "the loads use")
	for n := 1; n < len(line); n++ {
		if a, b := line[n-1], line[n]; a[1] <= float64(d.Lowering.Current) && b[1] > float64(d.Lowering.Current) {
			same("crossing", a[0]+(float64(d.Lowering.Current)-a[1])*(b[0]-a[0])/(b[1]-a[1]), float64(d.Lowering.Voltage))
		}
	}
}

// What is missing is named by its label, and nothing is drawn of it.
func TestPicturesNameWhatIsMissing(t *testing.T) {
	doc := catalog.Sample()
	v := doc.Variants[0]
	h := v.Stores[0].Hoist
	h.Machine.R, h.Lower.Loads = unit.Known[unit.Resistance]{}, nil
	labels := map[string]string{"stores[0].hoist.machine.r_ohm": "Winding resistance", "stores[0].hoist.lower.loads": "Loads on the motor's wires"}
	r := model.HoistOf(model.Ground{}.Evaluate(v).Stores[0])
	charts, err := hoistCharts(r, unit.Metric, labels, "stores[0].hoist", "/x")
	if err != nil || len(charts) != 5 {
		t.Fatal(len(charts), err)
	}
	for _, c := range charts {
		if len(c.Option) > 0 || c.CSV != "" || !strings.Contains(c.Say, "“Winding resistance” is not known") {
			t.Errorf("%s: %q", c.ID, c.Say)
		}
	}
	h.Machine.R = unit.Of[unit.Resistance](0.8)
	r = model.HoistOf(model.Ground{}.Evaluate(v).Stores[0])
	charts, _ = hoistCharts(r, unit.Metric, labels, "stores[0].hoist", "/x")
	for _, c := range charts {
		if drawn := len(c.Option) > 0; drawn != (c.ID == "motor" || c.ID == "heat-up") {
			t.Errorf("%s: %q", c.ID, c.Say)
		}
	}
	for _, p := range hoistPlots(&model.HoistResult{}, unit.Metric, nil, "") {
		if len(p.Lines) > 0 || p.Say == "" {
			t.Errorf("%s of nothing: %q", p.Id, p.Say)
		}
	}
}

// A constant power never looks as if it crossed the motor's line going up.
func TestUnsteadyPicture(t *testing.T) {
	doc := catalog.Sample()
	v := doc.Variants[2]
	v.Stores[0].Hoist.Lower.Loads = []lift.DCLoad{{Kind: "constant_power", Power: unit.Of[unit.Power](8)}}
	h := model.HoistOf(model.Ground{}.Evaluate(v).Stores[0])
	for _, p := range hoistPlots(h, unit.Metric, nil, "") {
		switch p.Id {
		case "settling":
			if !strings.Contains(p.Say, "never settles") {
				t.Error(p.Say)
			}
			for n := 1; n < len(p.Lines[0].Points); n++ {
				if p.Lines[0].Points[n][1] > p.Lines[0].Points[n-1][1] {
					t.Fatalf("rises at %v", p.Lines[0].Points[n])
				}
			}
		case "descent":
			if len(p.Lines) > 0 {
				t.Error("a descent that does not settle is drawn")
			}
		}
	}
}

// Whatever the design, every picture is a chart without a number that is none.
func TestPicturesOfAnything(t *testing.T) {
	for seed := range uint64(150) {
		r := rand.New(rand.NewPCG(seed, 9))
		any := func(x float64) float64 { return x * math.Pow(10, 3*r.Float64()-1.5) }
		v := StraightDoc().Variants[0]
		if r.IntN(2) == 0 {
			v = catalog.Sample().Variants[2]
		}
		h := v.Stores[0].Hoist
		h.Mass[0].Mass = unit.Of(unit.Mass(any(100)))
		h.Machine.K, h.Machine.R, h.Machine.I0 = unit.Of(unit.MachineConstant(any(0.07))), unit.Of(unit.Resistance(any(0.8))), unit.Of(unit.Current(any(0.2)))
		h.Machine.RthWinding, h.Machine.BrushDrop = unit.Of(unit.ThermalResistance(any(5))), unit.Of(unit.Voltage(r.Float64()))
		h.Lower.Loads = nil
		for range 1 + r.IntN(3) {
			h.Lower.Loads = append(h.Lower.Loads, []lift.DCLoad{
				{Kind: "resistor", Resistance: unit.Of(unit.Resistance(any(10)))},
				{Kind: "string", Threshold: unit.Of(unit.Voltage(any(10))), Slope: unit.Of(unit.Resistance(any(1)))},
				{Kind: "cell", Threshold: unit.Of(unit.Voltage(any(10)))},
				{Kind: "clamp", Threshold: unit.Of(unit.Voltage(any(10)))},
				{Kind: "constant_power", Power: unit.Of(unit.Power(any(10))), MinVoltage: unit.Of(unit.Voltage(any(3)))},
				{Kind: "governed", Speed: unit.Of(unit.AngularSpeed(any(200)))},
			}[r.IntN(6)])
		}
		result := model.HoistOf(model.Ground{}.Evaluate(v).Stores[0])
		charts, err := hoistCharts(result, unit.System(r.IntN(2)), nil, "", "/x")
		if err != nil {
			t.Fatalf("seed %d: %v", seed, err)
		}
		for _, c := range charts {
			if c.Say == "" || strings.Contains(c.Say, "NaN") || strings.Contains(c.Say, "Inf") {
				t.Errorf("seed %d: %s: %q", seed, c.ID, c.Say)
			}
		}
	}
}

// Texts that a program for tables would run are guarded; numbers stay numbers, below zero too.
func TestCSVCells(t *testing.T) {
	for cell, want := range map[any]string{"=1+1": "'=1+1", "+a": "'+a", "-a": "'-a", "@x": "'@x", "\tx": "'\tx", "plain": "plain", "": "", -1.5: "-1.5", 1e-7: "1e-07", 3: "3", math.Inf(1): "", 0.1: "0.1"} {
		if got := page.CsvCell(cell); got != want {
			t.Errorf("%v: %q, want %q", cell, got, want)
		}
	}
}
