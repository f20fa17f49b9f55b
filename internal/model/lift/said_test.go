package lift

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"duskweight/internal/model/unit"
)

// saidOf are the words of all flags of one place.
func saidOf(d Drive, path string) string {
	var out []string
	for _, f := range d.Flags {
		if f.Path == path {
			out = append(out, plain(f.Say))
		}
	}
	return strings.Join(out, " ")
}

func lacks(d Drive, path string) bool {
	return slices.ContainsFunc(d.Missing, func(m Missing) bool { return m.Path == path })
}

// Each caution stands on one side of its border and not on the other. The worked hoist turns its motor at 9 V plus what the winding
// takes, over 0.0327 V·s/rad.
func TestCautionsAtTheirBorders(t *testing.T) {
	for _, c := range []struct {
		what, words string
		change      func(h *Hoist)
		told        bool
	}{
		{"60 V at the lamps", "is above 60 V direct current", func(h *Hoist) { h.Lower.Loads[0].Threshold = known[unit.Voltage](60) }, false},
		{"61 V at the lamps", "is above 60 V direct current", func(h *Hoist) { h.Lower.Loads[0].Threshold = known[unit.Voltage](61) }, true},
		{"a train of 1000", "is a great deal", func(h *Hoist) { h.Train.Stages[0].Ratio = known[unit.Ratio](1000) }, false},
		{"a train of 1001", "is a great deal", func(h *Hoist) { h.Train.Stages[0].Ratio = known[unit.Ratio](1001) }, true},
		{"measured with the gears on", "holds their idle torque too", func(h *Hoist) { h.Machine.I0WithGear = unit.Yes }, true},
		{"measured without gears", "holds their idle torque too", func(h *Hoist) { h.Machine.I0WithGear = unit.No }, false},
		{"not said how it was measured", "holds their idle torque too", func(h *Hoist) {}, false},
		{"a label of 1001 turns a minute", "is slow for a motor's own shaft", func(h *Hoist) { h.Machine.SheetSpeed = known(1001 * unit.RevPerMinute) }, false},
		{"a label of 999 turns a minute", "is slow for a motor's own shaft", func(h *Hoist) { h.Machine.SheetSpeed = known(999 * unit.RevPerMinute) }, true},
		{"a label of 999 after a gearbox", "is slow for a motor's own shaft", func(h *Hoist) {
			h.Machine.SheetSpeed, h.Machine.SheetGear = known(999*unit.RevPerMinute), known[unit.Ratio](3)
		}, false},
		{"no load as much as held", "is not smaller than the current with the shaft held", func(h *Hoist) { h.Machine.SheetStall = known[unit.Current](0.3364) }, true},
		{"no load less than held", "is not smaller than the current with the shaft held", func(h *Hoist) { h.Machine.SheetStall = known[unit.Current](0.34) }, false},
		{"flange of 66 mm", "does not fit on the drum", func(h *Hoist) { h.Drum.Flange = known[unit.Length](0.066) }, false},
		{"flange of 65 mm", "it needs flanges of at least 66 mm", func(h *Hoist) { h.Drum.Flange = known[unit.Length](0.065) }, true}, // 2·30 mm and a rope of 6
		{"drum as thick as its rope", "thinner than its rope", func(h *Hoist) { h.Drum.Diameter = known[unit.Length](0.006) }, false},
		{"drum thinner than its rope", "thinner than its rope", func(h *Hoist) { h.Drum.Diameter = known[unit.Length](0.005) }, true},
		{"drum narrower than its rope", "narrower than its rope", func(h *Hoist) { h.Drum.Width = known[unit.Length](0.0059) }, true},
		{"drum of one turn a layer", "narrower than its rope", func(h *Hoist) { h.Drum.Width = known[unit.Length](0.006) }, false},
		{"one layer", "The rope lies in", func(h *Hoist) {}, false},
		{"several layers", "The rope lies in 3 layers", func(h *Hoist) { h.Drum.Width = known[unit.Length](0.09) }, true}, // 12 turns of 0.188 m, 15 of 0.221 m, and the rest of 6 m
		{"a current of its own", "the motor withstands", func(h *Hoist) { h.Machine.MaxCurrent = known[unit.Current](5.5) }, false},
		{"more than its own current", "the motor withstands", func(h *Hoist) { h.Machine.MaxCurrent = known[unit.Current](5.4) }, true}, // 5.44 A up
		{"a worm that cannot drive", "cannot drive at all", func(h *Hoist) {
			h.Train.Stages = []Stage{{Kind: StageWorm, Ratio: known[unit.Ratio](50), LeadAngle: known[unit.Angle](1.55), Friction: known[unit.Ratio](0.1)}}
		}, true},
		{"backward better than forward", "hardly ever runs better backward", func(h *Hoist) { h.Train.Stages[0].Backward = known[unit.Ratio](0.76) }, true},
		{"backward as good as forward", "hardly ever runs better backward", func(h *Hoist) { h.Train.Stages[0].Backward = known[unit.Ratio](0.75) }, false},
		{"idle torque not known", "The idle torque is not known", func(h *Hoist) { h.Train.Stages[0].IdleTorque = unit.Known[unit.Torque]{} }, true},
		{"idle torque of none", "The idle torque is not known", func(h *Hoist) {}, false},
	} {
		h := worked()
		c.change(&h)
		if d := Compute(h); mentions(d, c.words) != c.told {
			t.Errorf("%s: %q said %v: %v", c.what, c.words, !c.told, d.Flags)
		}
	}
}

// A drum straight on the motor is one stage of ratio 1 and efficiency 1, and gears may make it turn slower than the motor too.
func TestStageOfRatioOne(t *testing.T) {
	for _, r := range []unit.Ratio{0.5, 1, 2} {
		h := worked()
		h.Train.Stages[0].Ratio, h.Train.Stages[0].Efficiency = known(r), known[unit.Ratio](1)
		d := Compute(h)
		if d.Ratio != known(r) || d.Forward != known[unit.Ratio](1) || d.Backward != known[unit.Ratio](1) {
			t.Errorf("ratio %g: %v, %v, %v", float64(r), d.Ratio, d.Forward, d.Backward)
		}
	}
}

// What may open, by the kind of load: a plug of whatever is not wired for good, one lamp of a row, the electronics of a converter,
// the board of a battery.
func TestWhatMayOpen(t *testing.T) {
	plug, lamp, board, off := "its plug, switch or fuse", "one lamp of the row", "management board cuts it off", "its electronics switch off"
	for kind, want := range map[LoadKind][]string{
		LoadResistor: {plug}, LoadString: {plug, lamp}, LoadCell: {plug, board}, LoadConstantPower: {plug, off}, LoadGoverned: {plug, off}, LoadClamp: {plug},
	} {
		for _, permanent := range []unit.Answer{"", unit.No, unit.Yes} {
			h := worked()
			h.Lower.Loads = []DCLoad{{Kind: kind, Name: "It", Permanent: permanent}}
			all := strings.Join(Compute(h).Lowering.MayOpen, "; ")
			for _, words := range []string{plug, lamp, board, off} {
				told := slices.Contains(want, words) && (words != plug || permanent != unit.Yes)
				if strings.Contains(all, "It: "+words) != told && strings.Contains(all, words) != told {
					t.Errorf("%s, wired for good %q: %q said %v: %s", kind, permanent, words, !told, all)
				}
			}
			if n := strings.Count(all, "; "); n < 3 {
				t.Errorf("%s: the wire, the brush, the fuse and the cut-out of the motor may open too: %s", kind, all)
			}
		}
	}
}

// What is wired for good beside other loads has to stand the whole current when they are unplugged: 1.9198 A through 5 Ω. Its rating is
// asked for where nothing tells it, and where it is all that hangs there it is judged as the load that it is.
func TestWiredForGoodHoldsAlone(t *testing.T) {
	shunt := func(rated unit.Known[unit.Current]) DCLoad {
		l := resistor(5)
		l.MaxCurrent = rated
		return l
	}
	lamps := row12(8, 2)
	lamps.MaxCurrent = known[unit.Current](5)
	for _, c := range []struct {
		what        string
		loads       []DCLoad
		lack, burns bool
	}{
		{"a clamp that idles beside lamps, not rated", []DCLoad{lamps, {Kind: LoadClamp, Permanent: unit.Yes, Threshold: known[unit.Voltage](14), Slope: known[unit.Resistance](0.1)}}, true, false},
		{"the same not wired for good", []DCLoad{lamps, {Kind: LoadClamp, Threshold: known[unit.Voltage](14), Slope: known[unit.Resistance](0.1)}}, false, false},
		{"beside lamps, rated enough", []DCLoad{lamps, shunt(known[unit.Current](1.93))}, false, false},
		{"beside lamps, rated too low", []DCLoad{lamps, shunt(known[unit.Current](1.91))}, false, true},
		{"a clamp beside lamps, rated too low", []DCLoad{lamps, {Kind: LoadClamp, Permanent: unit.Yes, Threshold: known[unit.Voltage](14), Slope: known[unit.Resistance](0.1), MaxCurrent: known[unit.Current](1.91)}}, false, true},
		{"alone, rated enough", []DCLoad{shunt(known[unit.Current](1.93))}, false, false},
		{"two that share it", []DCLoad{lamps, shunt(known[unit.Current](1)), shunt(known[unit.Current](1))}, false, false},
	} {
		d := Compute(with(c.loads...))
		if said := mentions(d, "with the lamps unplugged"); said != c.burns {
			t.Errorf("%s: burns out %v: %v", c.what, said, d.Flags)
		}
		lack := slices.ContainsFunc(d.Missing, func(m Missing) bool { return strings.Contains(fmt.Sprint(m), "holds the mass alone") })
		if lack != c.lack {
			t.Errorf("%s: asked for %v: %v", c.what, lack, d.Missing)
		}
	}
	stuck := with(lamps, shunt(known[unit.Current](1e-3)))
	stuck.Train.Stages[0].Efficiency = known[unit.Ratio](0.4)
	if d := Compute(stuck); d.Lowering.RunsBack != DownNo || mentions(d, "with the lamps unplugged") {
		t.Errorf("a mass that stays up burns a resistor: %v", d.Flags)
	}
	light := with(lamps, shunt(known[unit.Current](0.5)))
	light.Mass[0].Mass = known[unit.Mass](45)
	if d := Compute(light); d.Lowering.Current > 1 || d.Lowering.Current < 0.5 || !mentions(d, "with the lamps unplugged") {
		t.Errorf("%g A through what stands half an ampere: %v", float64(d.Lowering.Current), d.Flags)
	}
}

// A motor that needs no rest is told none, and how often a day it may run is not capped; one that needs some may run as often as run
// and rest go into a day, and the store is filled as much.
func TestRestCapsTheDay(t *testing.T) {
	for _, c := range []struct {
		rth  float64
		rest bool
	}{{0.5, false}, {8, true}} {
		h := worked()
		h.Machine.RthWinding, h.Machine.TauWinding, h.Machine.MaxWinding = known(unit.ThermalResistance(c.rth)), known[unit.Duration](200), known[unit.Celsius](90)
		d := Compute(h)
		rest, ok := d.HeatUp.Rest.Value()
		if !ok || (rest > 0) != c.rest || d.HeatUp.TooHot {
			t.Fatalf("%g K/W: %+v", c.rth, d.HeatUp)
		}
		if told := strings.Contains(saidOf(d, "machine.max_winding_c"), "After that the motor must rest"); told != c.rest {
			t.Errorf("%g K/W: rest told %v", c.rth, told)
		}
		want := 0.0
		if c.rest {
			want = 86400 / float64(d.Raising.Time+rest) * 80 * unit.G * 3
		}
		if math.Abs(float64(d.Reservoir.FillCap)-want) > 1e-6*want {
			t.Errorf("%g K/W: filled %g J a day at most, want %g", c.rth, float64(d.Reservoir.FillCap), want)
		}
	}
}

// At a voltage the motor turns at what winding and wires leave: (12 − 5.438·(0.3459 + 0.2))/0.0327 rad/s with wires of 0.2 Ω, and not at
// all where they leave nothing.
func TestRaisePointBehindWires(t *testing.T) {
	h := worked()
	h.Raise.WireR = known[unit.Resistance](0.2)
	d := Compute(h)
	i, rotor, speed := d.RaisePoint(12)
	if want := (12 - float64(i)*(0.3459+0.2)) / 0.0327; math.Abs(float64(rotor)-want) > 1e-9*want || math.Abs(float64(rotor)-float64(d.Raising.Rotor)) > 1e-9*want {
		t.Errorf("%g rad/s, want %g; the lift's %g", float64(rotor), want, float64(d.Raising.Rotor))
	}
	if want := float64(rotor) / 6666.6667; math.Abs(float64(speed)-want) > 1e-6*want {
		t.Errorf("%g m/s, want %g", float64(speed), want)
	}
	if _, rotor, speed := d.RaisePoint(1); rotor != 0 || speed != 0 {
		t.Errorf("one volt turns it at %g rad/s", float64(rotor))
	}
	if i, rotor, speed := Compute(Hoist{}).RaisePoint(12); i != 0 || rotor != 0 || speed != 0 {
		t.Errorf("nothing known: %g A, %g rad/s, %g m/s", float64(i), float64(rotor), float64(speed))
	}
}

// Between two thresholds the loads take a + b·U + p/U. Both roots of that being i satisfy it; the greater one is steady, for the sum
// rises there, the smaller is not. Neither is told outside of its two thresholds.
func TestBothRoots(t *testing.T) {
	const a, b, p, i = -1.5, 0.2, 0.7, 2.0
	sum := func(u float64) float64 { return a + b*u + p/u }
	u, g, ok := steady(a, b, p, i, 0, 100)
	low := unsteady(a, b, p, i, 0, 100)
	if !ok || math.Abs(sum(u)-i) > 1e-12 || math.Abs(sum(low)-i) > 1e-12 || !(low < u) || low <= 0 {
		t.Fatalf("steady %g, %v, unsteady %g", u, ok, low)
	}
	if rise := (sum(u+1e-6) - sum(u-1e-6)) / 2e-6; math.Abs(g-rise) > 1e-6 || rise <= 0 || sum(low+1e-6) >= i {
		t.Errorf("slope %g, by difference %g", g, rise)
	}
	for _, c := range []struct {
		lo, hi    float64
		high, low bool
	}{{u + 0.01, 100, false, false}, {low + 0.01, u - 0.01, false, false}, {0, low - 0.01, false, false}, {low - 0.01, u - 0.01, false, true}, {low + 0.01, u + 0.01, true, false}} {
		if _, _, ok := steady(a, b, p, i, c.lo, c.hi); ok != c.high {
			t.Errorf("between %g and %g the steady root is told %v", c.lo, c.hi, ok)
		}
		if got := unsteady(a, b, p, i, c.lo, c.hi) > 0; got != c.low {
			t.Errorf("between %g and %g the other root is told %v", c.lo, c.hi, got)
		}
	}
	if _, _, ok := steady(0, 0.2, 6, 2, 0, 100); ok || unsteady(0, 0.2, 6, 2, 0, 100) != 0 { // 4·0.2·6 is more than 2²
		t.Error("loads that always take more than the machine gives have a root")
	}
	if _, _, ok := steady(3, 0.2, 0.1, 2, 0, 100); ok || unsteady(3, 0.2, 0.1, 2, 0, 100) != 0 {
		t.Error("loads that take more at no voltage have a root")
	}
}

// On its way down a row of lamps takes (U − 8)/2 amperes; brake coil and controller take their watts of what reaches it, and what is
// left is never less than nothing.
func TestPowerOnTheWayDown(t *testing.T) {
	h := with(row12(8, 2))
	h.Lower.Auxiliary = known[unit.Power](3)
	none, some := 0, 0
	for _, m := range CourseOf(h).Descent(60) {
		u := float64(m.Volts)
		want := math.Max(0, u*math.Max(0, u-8)/2-3)
		if math.Abs(float64(m.Power)-want) > 1e-9 {
			t.Errorf("%g V: %g W, want %g", u, float64(m.Power), want)
		}
		if want == 0 {
			none++
		} else {
			some++
		}
	}
	if none < 3 || some < 3 {
		t.Errorf("%d moments without power, %d with", none, some)
	}
}

// Numbers of a plate that do not belong together give no number at all.
func TestRefusedPlateGivesNothing(t *testing.T) {
	for _, p := range []Plate{{}, {24, 325, 277, 13.5}, {24, 300, 277, 13.7}} { // 300 W of 328.8 are 24.5 V·(1 − 0.138)
		if k, r, free, err := FromPlate(p); err == nil || k != 0 || r != 0 || free != 0 {
			t.Errorf("%+v: %g, %g, %g, %v", p, float64(k), float64(r), float64(free), err)
		}
	}
}

// Pieces that weigh nothing hang nothing; a tenth of a kilogram hangs.
func TestHangsSomething(t *testing.T) {
	for m, want := range map[unit.Mass]bool{0: false, 0.1: true} {
		if got := (Hoist{Mass: []Piece{{Mass: known(m)}}}).Hangs(); got.Is != want || want && got.Val != m {
			t.Errorf("%g kg: %v", float64(m), got)
		}
	}
	if (Hoist{}).Hangs().Is || (Hoist{Mass: []Piece{{Mass: known[unit.Mass](1)}, {}}}).Hangs().Is {
		t.Error("no piece, or one of which nobody knows the mass, is a mass")
	}
}

// Half of a range of the brushes' drop that the user gives is his word, and no longer not known.
func TestHalfARangeIsGiven(t *testing.T) {
	for _, c := range []struct {
		low, high unit.Known[unit.Voltage]
		open      bool
	}{{open: true}, {low: known[unit.Voltage](1)}, {high: known[unit.Voltage](1.2)}, {low: known[unit.Voltage](1), high: known[unit.Voltage](1.2)}} {
		m := Machine{I0: known[unit.Current](2.7), SheetVolts: known[unit.Voltage](12), SheetSpeed: known[unit.AngularSpeed](558.156), SheetStall: known[unit.Current](131.055), BrushLow: c.low, BrushHigh: c.high}
		if got := mentions(Compute(Hoist{Machine: m}), "loses at its brushes is not known"); got != c.open {
			t.Errorf("%v to %v: told not known %v", c.low, c.high, got)
		}
	}
}

// In the hold nothing moves and nothing flows.
func TestHoldStandsStill(t *testing.T) {
	n := 0
	for _, b := range CourseOf(warm(resistor(5))).Trip() {
		if b.Phase == PhaseHold {
			n++
			if b.Speed != 0 || b.Volts != 0 || b.Current != 0 || b.Height != 3 {
				t.Errorf("%+v", b)
			}
		}
	}
	if n < 2 {
		t.Errorf("%d moments of the hold", n)
	}
}

// What the drive lacks is named where it is not known, and not where it is.
func TestWhatTheDriveLacks(t *testing.T) {
	whole := worked()
	whole.Machine.MaxSpeed = known[unit.AngularSpeed](5000)
	whole.Holds.BrakeDelay = known[unit.Duration](0.1)
	whole.Lower.Loads[0].MaxCurrent = known[unit.Current](5)
	for path, take := range map[string]func(h *Hoist){
		"machine.i0_a":            func(h *Hoist) { h.Machine.I0.Is = false },
		"machine.r_ohm":           func(h *Hoist) { h.Machine.R.Is = false },
		"machine.k_vs_rad":        func(h *Hoist) { h.Machine.K.Is = false },
		"machine.max_speed_rad_s": func(h *Hoist) { h.Machine.MaxSpeed.Is = false },
		"machine.j_kg_m2":         func(h *Hoist) { h.Machine.J.Is = false },
		"drum.diameter_m":         func(h *Hoist) { h.Drum.Diameter.Is = false },
		"drum.width_m":            func(h *Hoist) { h.Drum.Width.Is = false },
		"drum.dead_wraps":         func(h *Hoist) { h.Drum.DeadWraps.Is = false },
		"rope.diameter_m":         func(h *Hoist) { h.Rope.Diameter.Is = false },
		"travel_m":                func(h *Hoist) { h.Travel.Is = false },
		"train.stages":            func(h *Hoist) { h.Train.Stages = nil },
		"train.stages[0].ratio":   func(h *Hoist) { h.Train.Stages[0].Ratio.Is = false },
		"raise.feed":              func(h *Hoist) { h.Raise.Feed = "" },
		"raise.voltage_v":         func(h *Hoist) { h.Raise.Voltage.Is = false },
		"raise.auxiliary_w":       func(h *Hoist) { h.Raise.Auxiliary.Is = false },
		"lower.auxiliary_w":       func(h *Hoist) { h.Lower.Auxiliary.Is = false },
		"holds.brake_delay_s":     func(h *Hoist) { h.Holds.BrakeDelay.Is = false },
		"raise.drive_efficiency":  func(h *Hoist) { h.Raise.Feed = FeedDrive },

		"lower.loads[0].rated_current_a": func(h *Hoist) { h.Lower.Loads[0].MaxCurrent.Is = false },
	} {
		if lacks(Compute(whole), path) {
			t.Errorf("%s is missing in a hoist that has it", path)
		}
		h := whole
		h.Train.Stages, h.Lower.Loads = slices.Clone(whole.Train.Stages), slices.Clone(whole.Lower.Loads)
		take(&h)
		if d := Compute(h); !lacks(d, path) {
			t.Errorf("%s is not missing where nobody knows it: %v", path, d.Missing)
		}
	}
}

// A load at its ratings stands, past them it breaks or does not work: lamps on 9 V at 1.92 A.
func TestLoadsAtTheirRatings(t *testing.T) {
	row := func(change func(l *DCLoad)) Drive {
		l := DCLoad{Kind: LoadString, Threshold: known[unit.Voltage](9), Slope: known[unit.Resistance](0.01), MaxCurrent: known[unit.Current](5)}
		change(&l)
		return Compute(with(l))
	}
	u := float64(row(func(*DCLoad) {}).Lowering.Voltage)
	for _, c := range []struct {
		what, words string
		change      func(l *DCLoad)
		told        bool
	}{
		{"rated over it", "It burns out", func(l *DCLoad) { l.MaxCurrent = known[unit.Current](1.93) }, false},
		{"rated under it", "It burns out", func(l *DCLoad) { l.MaxCurrent = known[unit.Current](1.91) }, true},
		{"at 79 % of its rating", "they share the current", func(l *DCLoad) { l.MaxCurrent = known[unit.Current](2.43) }, false},
		{"at 81 % of its rating", "they share the current", func(l *DCLoad) { l.MaxCurrent = known[unit.Current](2.37) }, true},
		{"as many volts as it stands", "It breaks", func(l *DCLoad) { l.MaxVoltage = known(unit.Voltage(u)) }, false},
		{"more volts than it stands", "It breaks", func(l *DCLoad) { l.MaxVoltage = known(unit.Voltage(u - 0.01)) }, true},
		{"as many volts as it needs", "to work", func(l *DCLoad) { l.MinVoltage = known(unit.Voltage(u)) }, false},
		{"fewer volts than it needs", "to work", func(l *DCLoad) { l.MinVoltage = known(unit.Voltage(u + 0.01)) }, true},
	} {
		if d := row(c.change); mentions(d, c.words) != c.told {
			t.Errorf("%s: %q said %v: %v", c.what, c.words, !c.told, d.Flags)
		}
	}
	battery := func(diode unit.Known[unit.Voltage]) Drive {
		return Compute(with(DCLoad{Kind: LoadCell, Threshold: known[unit.Voltage](9), Slope: known[unit.Resistance](0), MaxCurrent: known[unit.Current](5), Diode: diode}))
	}
	if !mentions(battery(unit.Known[unit.Voltage]{}), "there is no diode") || !mentions(battery(known[unit.Voltage](0)), "there is no diode") || mentions(battery(known[unit.Voltage](0.4)), "there is no diode") {
		t.Error("a battery wants a diode of more than no drop")
	}
}
