package catalog

import (
	"math"
	"strings"
	"testing"
)

// from collects the sources of all rows.
func from() map[string][]From {
	out := map[string][]From{}
	for _, r := range Ropes() {
		out["rope "+r.Name] = append(out["rope "+r.Name], r.From)
	}
	for _, r := range Eyebolts() {
		out["eyebolt "+r.Size] = append(out["eyebolt "+r.Size], r.From)
	}
	for _, r := range Shackles() {
		out["shackle "+r.Size] = append(out["shackle "+r.Size], r.From)
	}
	for _, r := range Pulleys() {
		out["pulley "+r.Name] = append(out["pulley "+r.Name], r.From)
	}
	for _, r := range Materials() {
		out["material "+r.Name] = append(out["material "+r.Name], r.From)
	}
	for _, r := range TimberClasses() {
		out[string("timber "+r.Class)] = append(out[string("timber "+r.Class)], r.From)
	}
	for _, r := range Motors() {
		out["motor "+r.Name] = append(out["motor "+r.Name], r.From)
	}
	for _, r := range Stages() {
		out["stage "+r.Name] = append(out["stage "+r.Name], r.From)
	}
	for _, k := range Kinds() {
		for _, r := range k.Rows {
			out[k.Word+" "+r.ID] = append(out[k.Word+" "+r.ID], r.From)
		}
	}
	for _, r := range Lamps() {
		out["lamp "+r.Name] = append(out["lamp "+r.Name], r.From)
	}
	return out
}

// Every row names its source, and a row that says "from memory" is marked so unless a part of it was read.
func TestEveryRowHasASource(t *testing.T) {
	for name, rows := range from() {
		for _, f := range rows {
			if f.Source == "" {
				t.Errorf("%s has no source", name)
			}
			if strings.Contains(f.Source, "://") || strings.Contains(f.Source, "www.") {
				t.Errorf("%s cites a web address: %s", name, f.Source)
			}
			if strings.HasPrefix(f.Source, "from memory") && !f.Memory {
				t.Errorf("%s is from memory and not marked", name)
			}
		}
	}
}

// The published rows, as the tables print them.
func TestPublishedRows(t *testing.T) {
	load := func(name string, mm float64) float64 {
		for _, r := range Ropes() {
			if r.Name == name && math.Abs(float64(r.Diameter)*1000-mm) < 0.01 {
				return float64(r.BreakingLoad) / 1000
			}
		}
		return math.NaN()
	}
	for _, c := range []struct {
		what      string
		got, want float64
		within    float64
		source    string
	}{
		// 0.332·d²·R/1000 with R = 1770 MPa: 12 mm 84.6, 16 mm 150 (printed to three figures)
		{"wire 6×7, 6 mm", load("Wire 6×7, fibre core", 6), 0.332 * 36 * 1.77, 0.06, "API 9A, annex C.1"},
		{"wire 6×7, 12 mm", load("Wire 6×7, fibre core", 12), 0.332 * 144 * 1.77, 0.06, "API 9A, annex C.1"},
		{"wire 6×7, 16 mm", load("Wire 6×7, fibre core", 16), 0.332 * 256 * 1.77, 0.6, "API 9A, annex C.1"},
		{"wire 6×19, 3/8 in", load("Wire 6×19, fibre core", 9.5), 54.3, 0, "table of 6×19 rope"},
		{"polyester–polyolefin, 12 mm", load("Polyester on polyolefin, three strands", 12), 19.6, 0, "table of polyester–polyolefin rope"},
		// 1650 lb and 3700 lb in kN
		{"nylon, 1/4 in", load("Nylon, inch sizes", 6.35), 1650 * 0.45359237 * 9.80665e-3, 0.05, "cordage table in pounds"},
		{"polyester, 3/8 in", load("Polyester, inch sizes", 9.525), 3700 * 0.45359237 * 9.80665e-3, 0.05, "cordage table in pounds"},
		{"polyester, 5/8 in", load("Polyester, inch sizes", 15.875), 10000 * 0.45359237 * 9.80665e-3, 0.5, "cordage table in pounds"},
		{"eye bolt M16", float64(Eyebolts()[3].Straight), 700 * 9.80665, 1e-9, "DIN 580, table A.1"},
		{"eye bolt M20 at 45°", float64(Eyebolts()[4].At45), 860 * 9.80665, 1e-9, "DIN 580, table A.1"},
		{"shackle 5/8 in", float64(Shackles()[4].Straight), 3250 * 9.80665, 1e-9, "shackle table"},
		// nylon 14400 N at 10 mm = 3240 lbf, polyester 22600 N at 12 mm = 5085 lbf: both columns of the tables agree to 0.3 %
		{"nylon, 10 mm", load("Nylon, three strands", 10), 3240 * 0.45359237 * 9.80665e-3, 0.02, "table of nylon rope, in pounds"},
		{"polyester, 12 mm", load("Polyester, three strands", 12), 5085 * 0.45359237 * 9.80665e-3, 0.03, "table of polyester rope, in pounds"},
		{"polyester, 16 mm", load("Polyester, three strands", 16), 7825 * 0.45359237 * 9.80665e-3, 0.03, "table of polyester rope, in pounds"},
		{"polypropylene, 12 mm", load("Polypropylene, three strands", 12), 3780 * 0.45359237 * 9.80665e-3, 0.03, "table of polypropylene rope, in pounds"},
		{"C27, mean density", float64(TimberClasses()[6].Dense), 430, 0, "EN 338:2016, table 1"},
		{"D40, mean density", float64(TimberClasses()[10].Dense), 660, 0, "EN 338:2016, table 3"},
		{"S355 up to 16 mm, MPa", float64(Steels()[2].Yield) / 1e6, 355, 0, "EN 10025-2, table 7"},
		{"bag for several trips", float64(Bags()[1].Factor), 6, 0, "ISO 21898"},
		// 1/1.09 = 0.9174
		{"pulley on plain bearings", float64(Pulleys()[6].Efficiency), 1 / 1.09, 5e-4, "Wire Rope Users Manual, 1.09"},
		// a tonne of loose gravel takes up 0.6579 m³, a cube of 0.87 m
		{"a tonne of gravel", float64(Materials()[1].TakePiece(0.6579).Mass.Val), 1000, 0.1, "table of densities"},
	} {
		if !(math.Abs(c.got-c.want) <= c.within) {
			t.Errorf("%s: %g, want %g (%s)", c.what, c.got, c.want, c.source)
		}
	}
}

// A motor's no-load point follows from its own constants: V = K·ω_0 + R·I_0 within the ± 30 % of the table, and within
// 1.5 % where a sheet was read (the brushed 65 mm motor's own numbers differ by 1.3 %).
func TestMotorsAgreeWithThemselves(t *testing.T) {
	for _, m := range Motors() {
		v := float64(m.K)*float64(m.NoLoad)*float64(m.Gear) + float64(m.R)*float64(m.I0)
		within := 0.3
		if !m.Memory {
			within = 0.015
		}
		if math.Abs(v/float64(m.Voltage)-1) > within {
			t.Errorf("%s: its constants give %.2f V without load, not %g V", m.Name, v, m.Voltage)
		}
		if m.MaxCurrent <= m.I0 || float64(m.MaxCurrent) > 0.4*float64(m.Voltage)/float64(m.R) {
			t.Errorf("%s: %g A all day is not between no load and stall", m.Name, m.MaxCurrent)
		}
	}
}

func TestLampsInRows(t *testing.T) {
	// Four white lamps in a row, three rows: 4·2.75 V, 4·0.7/3 Ω, 1.05 A.
	l := Lamps()[0].InRows(4, 3)
	if l.Threshold.Val != 11 || math.Abs(float64(l.Slope.Val)-2.8/3) > 1e-12 || math.Abs(float64(l.MaxCurrent.Val)-1.05) > 1e-12 {
		t.Errorf("%+v", l)
	}
}

// The words of the rows are words of the design.
func TestWordsOfTheDesign(t *testing.T) {
	words := func(list string) map[string]bool {
		out := map[string]bool{}
		for w := range strings.SplitSeq(list, "|") {
			out[w] = true
		}
		return out
	}
	ropes := words("polyester|nylon|polypropylene|hmpe|other_fibre|wire")
	for _, r := range Ropes() {
		if !ropes[string(r.Kind)] {
			t.Errorf("rope kind %q", r.Kind)
		}
	}
	stages := words("planetary|spur|bevel|worm|belt|chain|strain_wave|cycloid|box")
	for _, s := range Stages() {
		if !stages[string(s.Kind)] || s.Low > s.Efficiency || s.Efficiency > s.High {
			t.Errorf("stage %+v", s)
		}
	}
	loads := words("resistor|string|cell|constant_power|governed|clamp")
	for _, l := range Lamps() {
		if !loads[string(l.Kind)] {
			t.Errorf("load kind %q", l.Kind)
		}
	}
}
