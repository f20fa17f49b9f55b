package model

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"duskweight/internal/model/lift"
	"duskweight/internal/model/load"
	"duskweight/internal/model/panel"
	"duskweight/internal/model/reason"
	"duskweight/internal/model/sun"
	"duskweight/internal/model/trial"
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

// A motor's readings need time, motor and air each; after the first of a run the amps, and while it runs the volts.
func TestReadingsThatAreWhole(t *testing.T) {
	read := func(change func(r *lift.WarmthTrial)) string {
		var h lift.Hoist
		for i := range 4 {
			h.Trials.Warmth = append(h.Trials.Warmth, lift.WarmthTrial{At: unit.Of(unit.Duration(600 * i)), Warm: unit.Of(unit.Celsius(20 + 10*i)), Air: unit.Of[unit.Celsius](20), Current: unit.Of[unit.Current](5), Voltage: unit.Of[unit.Voltage](12)})
		}
		h.Trials.Warmth[0].Current, h.Trials.Warmth[0].Voltage = unit.Known[unit.Current]{}, unit.Known[unit.Voltage]{}
		change(&h.Trials.Warmth[2])
		var d lift.Drive
		d.Machine = lift.Constants{K: unit.Of[unit.MachineConstant](0.1), R: unit.Of[unit.Resistance](1), I0: unit.Of[unit.Current](0.3)}
		var m Measured
		m.warmth(h, d)
		return strings.ReplaceAll(fmt.Sprint(m.Lack), unit.Space, " ")
	}
	for what, x := range map[string]struct {
		change func(r *lift.WarmthTrial)
		lacks  bool
	}{
		"whole": {func(*lift.WarmthTrial) {}, false}, "no time": {func(r *lift.WarmthTrial) { r.At.Is = false }, true}, "no motor": {func(r *lift.WarmthTrial) { r.Warm.Is = false }, true}, "no air": {func(r *lift.WarmthTrial) { r.Air.Is = false }, true},
		"no amps": {func(r *lift.WarmthTrial) { r.Current.Is = false }, true}, "no volts": {func(r *lift.WarmthTrial) { r.Voltage.Is = false }, true},
		"standing, no volts": {func(r *lift.WarmthTrial) { r.Current.Val, r.Voltage.Is = 0, false }, false},
	} {
		if got := read(x.change); strings.Contains(got, "Reading 3 of") != x.lacks {
			t.Errorf("%s: %s", what, got)
		}
	}
}

// Where the case was measured its way to the air is taken over when the way from winding to case is known, and nothing else is; where the
// winding was, both are.
func TestWhichWarmthIsTakenOver(t *testing.T) {
	for _, x := range []struct {
		what          string
		at            lift.WarmAt
		winding, cas  bool
		toWinding, to bool
	}{
		{"winding", lift.WarmWinding, false, false, true, false}, {"case, all known", lift.WarmCase, true, true, false, true}, {"case, winding not known", lift.WarmCase, false, true, false, false}, {"case, its own not known", lift.WarmCase, true, false, false, false},
	} {
		h := lift.Hoist{}
		h.Trials.WarmAt = x.at
		h.Machine.RthWinding, h.Machine.RthCase = unit.Known[unit.ThermalResistance]{Val: 3, Is: x.winding}, unit.Known[unit.ThermalResistance]{Val: 4, Is: x.cas}
		m := Measured{Design: h}
		m.Warmth.Rth, m.Warmth.Tau = trial.Value{Val: 9}, trial.Value{Val: 700}
		m.adoptWarmth(h)
		if got := m.Design.Machine.RthWinding.Val == 9; got != x.toWinding {
			t.Errorf("%s: the winding becomes %v", x.what, m.Design.Machine.RthWinding)
		}
		if got := m.Design.Machine.RthCase.Val == 9 && m.Design.Machine.RthCase.Is; got != x.to {
			t.Errorf("%s: the case becomes %v", x.what, m.Design.Machine.RthCase)
		}
		if lacks := len(m.Lack) > 0; lacks == (x.toWinding || x.to) {
			t.Errorf("%s: %v", x.what, m.Lack)
		}
	}
}

// A room over the year is a cosine through the middles of the months: warmest in the middle of the month that is named, coldest half a year
// later, its mean in between, and its mean over the year.
func TestRoomOverTheYear(t *testing.T) {
	for _, warmest := range []float64{1, 7, 12} {
		air := indoorAir(sun.Indoor{Mean: 16, Swing: 5, Warmest: unit.Count(warmest)})
		at := func(month float64) float64 { return air[int(math.Mod((month-0.5)/12+1, 1)*sun.Hours)] }
		sum := 0.0
		for _, x := range air {
			sum += x / sun.Hours
		}
		for what, pair := range map[string][2]float64{"warmest": {at(warmest), 21}, "coldest": {at(warmest + 6), 11}, "between": {at(warmest + 3), 16}, "mean": {sum, 16}} {
			if math.Abs(pair[0]-pair[1]) > 0.01 {
				t.Errorf("month %g, %s: %g °C, want %g", warmest, what, pair[0], pair[1])
			}
		}
	}
}

// The shelf counts its parts of every sort; sizes that are given are kept, one that is text alone too, and one at the least.
func TestShelfAndSizes(t *testing.T) {
	s := Shelf{Motors: make([]lift.Machine, 1), Stages: make([]SpareStage, 2), Drums: make([]SpareDrum, 4), Ropes: make([]SpareRope, 8), Pulleys: make([]SparePulley, 16)}
	if got := s.Parts(); got != 31 {
		t.Errorf("%d parts on the shelf", got)
	}
	none, given, text := Size{Name: "none"}, Size{Name: "given", Value: unit.Of[unit.Ratio](1)}, Size{Name: "text", Text: "oak"}
	for _, x := range []struct {
		in   []Size
		want string
	}{{[]Size{none, given, text}, "given text"}, {[]Size{none, none}, "none"}, {[]Size{text}, "text"}, {[]Size{given, none}, "given"}} {
		var got []string
		for _, y := range sized(x.in...) {
			got = append(got, y.Name)
		}
		if strings.Join(got, " ") != x.want {
			t.Errorf("%v: %v", x.in, got)
		}
	}
	// A lift that moves has a time and an energy; one that stalls has none.
	up := lift.Raising{Known: true, Speed: 0.05, Time: 60, EnergyIn: 4000}
	if a := raiseAnswer(up); a.Time != unit.Of[unit.Duration](60) || a.EnergyIn != unit.Of[unit.Energy](4000) {
		t.Errorf("%+v", a)
	}
	up.Speed = 0
	if a := raiseAnswer(up); a.Time.Is || a.EnergyIn.Is || !a.Speed.Is {
		t.Errorf("%+v", a)
	}
	// One lift that gives nothing is as good as no battery; half a joule is one.
	for e, want := range map[unit.Energy]bool{0: false, 0.5: true} {
		f := Facts{OneLiftOut: unit.Of(e)}
		f.fillLift(unit.Known[unit.Mass]{}, unit.Known[unit.Length]{})
		if f.SameBattery.Is != want {
			t.Errorf("%g J: %v", float64(e), f.SameBattery)
		}
	}
	if (&Direct{}).account([]float64{0, 0.1}, []float64{0, 1}, []panel.Light{{Plane: []float64{0, 0}}}).LiftsDay != 0 {
		t.Error("lifts a day over no travel")
	}
	d := &Direct{motor: motor{travel: 2}}
	if y := d.account(append(make([]float64, 23), 0.1), make([]float64, 24), []panel.Light{{Plane: make([]float64, 24)}}); math.Abs(float64(y.LiftsDay)-0.1*3600/365/2) > 1e-12 || y.Hours != 1 {
		t.Errorf("%g lifts a day, %g hours", float64(y.LiftsDay), float64(y.Hours))
	}
}

// Four panels in two strings of two are whole; five are a contradiction, and what is not told contradicts nothing.
func TestPanelsInTheirStrings(t *testing.T) {
	count := func(x float64) unit.Known[unit.Count] { return unit.Of(unit.Count(x)) }
	none := unit.Known[unit.Count]{}
	for _, x := range []struct {
		n, series, strings unit.Known[unit.Count]
		want               bool
	}{{count(4), count(2), count(2), false}, {count(5), count(2), count(2), true}, {count(3), count(2), count(2), true}, {none, count(2), count(2), false}, {count(5), none, count(2), false}, {count(5), count(2), none, false}} {
		v := Variant{Panels: []panel.Array{{Count: x.n, Strings: x.strings, Sheet: &panel.Sheet{Series: x.series}}}}
		got := false
		for _, r := range panelsMixed(judgement{variant: v, result: &VariantResult{}}) {
			got = got || strings.HasSuffix(r.Path, ".strings")
		}
		if got != x.want {
			t.Errorf("%v panels, %v in series, %v strings: a contradiction %v", x.n, x.series, x.strings, got)
		}
	}
}
