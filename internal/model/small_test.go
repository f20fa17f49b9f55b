package model

import (
	"strings"
	"testing"

	"duskweight/internal/model/load"
	"duskweight/internal/model/reason"
	"duskweight/internal/model/sun"
	"duskweight/internal/model/unit"
)

// A name with words behind it is two hundred letters at the most, counted as letters and not as bytes; a short one stays whole.
func TestNameIsNoLongerThanAName(t *testing.T) {
	for _, x := range []struct {
		letters int
		want    int
	}{{10, 10}, {194, 194}, {195, 195}, {196, 195}, {500, 195}} {
		got := FitName(strings.Repeat("ä", x.letters), " copy")
		if n := len([]rune(got)); n != x.want+5 || !strings.HasSuffix(got, "ä copy") {
			t.Errorf("%d letters become %d with the words", x.letters, n)
		}
	}
	full, over := make([]Variant, MaxVariants), make([]Variant, MaxVariants+1)
	at := func(ps Problems) bool {
		for _, p := range ps {
			if p.Path == "variants" {
				return true
			}
		}
		return false
	}
	if at(Check(Document{Variants: full})) || !at(Check(Document{Variants: over})) {
		t.Error("forty variants are allowed, one more is not")
	}
}

// Of several weather files the coldest hour of all counts, 10 K less, at both ends; of twelve means −15 °C is not yet under −15 °C.
func TestColdestOfSeveralFiles(t *testing.T) {
	air := func(coldest float64) []float64 {
		out := make([]float64, sun.YearHours)
		out[77] = coldest
		return out
	}
	g := Ground{Project: Project{Place: sun.Place{Sky: sun.SkyFiles}, Weather: &sun.Series{TAir: air(-3)}, Weathers: []*sun.Series{{TAir: air(-21)}, {TAir: air(-9)}}}, Sky: &sun.Sky{TAir: air(-3)}}
	if best, worst := g.coldest(); best != -31 || worst != -31 {
		t.Errorf("%g to %g", best, worst)
	}
	g.Project.Place.Sky = sun.SkyFile
	if best, worst := g.coldest(); best != -13 || worst != -13 {
		t.Errorf("of one file %g to %g", best, worst)
	}
}

// What waits has to fit into its hours: 100 W over four hours give 1.44 MJ a day, and not a joule more; hours of the clock are whole.
func TestWaitingFitsIntoItsHours(t *testing.T) {
	problems := func(energy, from float64) string {
		a := load.Appliance{Power: unit.Of[unit.Power](100), Count: unit.Of[unit.Count](1), DayEnergy: unit.Of(unit.Energy(energy)), From: unit.Of(unit.Duration(from)), To: unit.Of[unit.Duration](14 * 3600)}
		var ps Problems
		checkWaiting(&ps, a, func(field string) string { return field })
		var out []string
		for _, p := range ps {
			out = append(out, p.Path)
		}
		return strings.Join(out, " ")
	}
	for _, x := range []struct {
		energy, from float64
		want         string
	}{{1.44e6, 10 * 3600, ""}, {1.4401e6, 10 * 3600, "energy_j_day"}, {1e6, 10 * 3600, ""}, {1e6, 10*3600 + 1, "from_s"}, {1e6, 10*3600 + 1800, "from_s"}} {
		if got := problems(x.energy, x.from); got != x.want {
			t.Errorf("%g J from %g s: %q, want %q", x.energy, x.from, got, x.want)
		}
	}
}

// Half a watt runs through the inverter, none does not; 12 and 12.8 V are one class, 12 % apart and no more.
func TestOfTheInverter(t *testing.T) {
	for ac, want := range map[float64]bool{0: false, 0.5: true, 300: true} {
		r := &VariantResult{}
		r.Peak.AC = ac
		if got := throughInverter(judgement{result: r}); got != want {
			t.Errorf("%g W: %v", ac, got)
		}
		devices := loadDevices(*r)
		if got := len(devices) > 0 && devices[0].Kind == Inverter; got != want {
			t.Errorf("%g W: the inverter is drawn %v", ac, got)
		}
	}
	for v, want := range map[unit.Voltage]bool{12: false, 12.8: false, 13.44: false, 13.45: true, 10.56: false, 10.55: true, 24: true} {
		if off(v, 12, classOff) != want {
			t.Errorf("%g V on a line of 12 V is off: %v", float64(v), !want)
		}
	}
	// Lamps and devices are drawn where one runs, or where a reason is about one.
	var r VariantResult
	if len(loadDevices(r)) != 0 {
		t.Error("nothing runs, and something is drawn")
	}
	r.Because = []reason.Reason{{Path: "load.appliances[2].power_w"}}
	if d := loadDevices(r); len(d) != 1 || d[0].Kind != Devices {
		t.Errorf("a reason about a lamp: %v", d)
	}
	r.Because, r.Peak.Run.On = nil, []int{0}
	if d := loadDevices(r); len(d) != 1 || d[0].Kind != Devices {
		t.Errorf("a lamp that is on: %v", d)
	}
}

// What the stores hold is that of the kind of the first one of which that is told; the battery beside a lift is told where there is none.
func TestWhatTheStoresHold(t *testing.T) {
	j := func(x float64) unit.Known[unit.Energy] { return unit.Of(unit.Energy(x)) }
	told, silent := cellsKind, hoistKind
	for _, k := range kinds {
		if k.Holds.Say == "" {
			silent = k
		} else {
			told = k
		}
	}
	for _, x := range []struct {
		stores []StoreResult
		kind   *Kind
		want   unit.Known[unit.Energy]
	}{
		{nil, kinds[0], unit.Known[unit.Energy]{}},
		{[]StoreResult{{Kind: told, Capacity: j(5)}}, told, j(5)}, {[]StoreResult{{Kind: told, Capacity: j(5)}, {Kind: told, Capacity: j(7)}, {Kind: told}}, told, j(12)},
		{[]StoreResult{{Kind: silent, Capacity: j(100)}, {Kind: told, Capacity: j(7)}}, told, j(7)},
	} {
		if silent.Holds.Say != "" && len(x.stores) > 0 && x.stores[0].Kind == silent {
			continue // every kind tells what it holds
		}
		if k, gives := (VariantResult{Stores: x.stores}).Holds(); k != x.kind || gives != x.want {
			t.Errorf("%v: %s, %v", x.stores, k.Key, gives)
		}
	}
	f := Facts{NightBattery: unit.Of[unit.Charge](3600)}
	if q, ok := f.BatteryBeside(); !ok || q != 3600 {
		t.Errorf("beside no battery: %v, %v", q, ok)
	}
	f.banks = 1
	if _, ok := f.BatteryBeside(); ok {
		t.Error("beside a battery one is told")
	}
	f = Facts{NightAppliances: j(10), NightStanding: j(3)}
	if e, ok := f.nightNeed(); !ok || e != 13 {
		t.Errorf("10 and 3 J are %v", e)
	}
	if e, ok := (Facts{NightStanding: j(3)}).nightNeed(); ok || e != 0 {
		t.Errorf("a night that is not known needs %v", e)
	}
}
