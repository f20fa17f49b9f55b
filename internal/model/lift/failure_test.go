package lift

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"duskweight/internal/model/unit"
	"duskweight/internal/say"
)

// plain is a sentence in metric units with plain spaces.
func plain(s say.Sentence) string { return strings.ReplaceAll(s.String(), unit.Space, " ") }

func isBad(d Drive, words string) bool {
	for _, f := range d.Flags {
		if f.Bad && strings.Contains(plain(f.Say), words) {
			return true
		}
	}
	return false
}

// A motor that stands only a small part of the current that the lift asks for is not told to take more volts. With the
// gears that are named, and no more than that current, it starts with the wanted margin.
func TestStallAsksForGears(t *testing.T) {
	h := worked()
	h.Mass[0].Mass, h.Machine.MaxCurrent = known[unit.Mass](700), known[unit.Current](6)
	d := Compute(h)
	var ratio float64
	_, after, _ := strings.Cut(plain(d.Raising.Say), "It needs gears of about ")
	if _, err := fmt.Sscanf(strings.Replace(after, " ", "", 1), "%f:1", &ratio); err != nil || !strings.Contains(plain(d.Raising.Say), "More volts would overheat it") {
		t.Fatal(d.Raising.Say, err)
	}
	h.Train.Stages[0].Ratio, h.Raise.CurrentLimit = known[unit.Ratio](unit.Ratio(ratio)), known[unit.Current](6)
	if m := float64(Compute(h).Raising.Margin); math.Abs(m-wantedMargin) > 0.01*wantedMargin { // the ratio is told with three figures
		t.Errorf("with %g:1 the margin is %g", ratio, m)
	}
}

// Every failure that a builder meets is said in words, with what would mend it; what stops the hoist from hanging is
// bad, the rest is a caution.
func TestEveryFailureIsSaid(t *testing.T) {
	for _, c := range []struct {
		what   string
		change func(*Hoist)
		words  []string
		bad    bool
	}{
		{"a worm that locks", func(h *Hoist) { h.Train.Stages[0].Efficiency = known[unit.Ratio](0.42) },
			[]string{"will not come down by itself", "stage 1 locks", "above 55 %"}, true},
		{"too light for the motor's friction", func(h *Hoist) { h.Mass[0].Mass = known[unit.Mass](9) },
			[]string{"will not come down by itself", "motor's own friction", " kg", "drum of", "gears of"}, true},
		{"idle torque eats it", func(h *Hoist) { h.Train.Stages[0].IdleTorque = known[unit.Torque](0.2) },
			[]string{"will not come down by itself", "idle torque of gear stage 1"}, true},
		{"stiff bearings of the drum", func(h *Hoist) { h.Drum.Friction = known[unit.Torque](12) },
			[]string{"will not come down by itself", "drum's bearings"}, true},
		{"a push wanted", func(h *Hoist) { h.Mass[0].Mass = known[unit.Mass](20) },
			[]string{"only with a push", "would start by itself", " kg"}, false},
		{"a stage that is not sure", func(h *Hoist) {
			h.Train.Stages[0].Efficiency = known[unit.Ratio](0.54)
			h.Mass[0].Mass = known[unit.Mass](400)
			h.Raise.Voltage = known[unit.Voltage](24)
		}, []string{"only with a push", "54 %", "not sure"}, false},
		{"a motor that stalls", func(h *Hoist) { h.Mass[0].Mass = known[unit.Mass](700) },
			[]string{"motor stalls", "N·m", "gears of about", "V"}, true},
		{"a supply that gives too little", func(h *Hoist) { h.Raise.CurrentLimit = known[unit.Current](5) },
			[]string{"motor stalls", "supply"}, true},
		{"hardly starts", func(h *Hoist) { h.Raise.CurrentLimit = known[unit.Current](7.5) },
			[]string{"hardly starts", "1.3 times is needed"}, false},
		{"idle torque not known", func(h *Hoist) { h.Train.Stages[0].IdleTorque = unit.Known[unit.Torque]{} },
			[]string{"The idle torque is not known"}, false},
		{"a whole gearbox", func(h *Hoist) { h.Train.Stages[0].InStages = unit.Known[unit.Count]{} },
			[]string{"how many stages are inside"}, false},
		{"too fast for the motor", func(h *Hoist) { h.Machine.MaxSpeed = known[unit.AngularSpeed](280) },
			[]string{"Its highest speed is", "flies apart before that"}, true},
		{"too much current", func(h *Hoist) { h.Machine.MaxCurrent = known[unit.Current](1) },
			[]string{"Coming down the motor carries", "Lifting needs"}, true},
		{"lamps near their rating", func(h *Hoist) {
			h.Lower.Loads = []DCLoad{row12(8, 1)}
			h.Lower.Loads[0].MaxCurrent = known[unit.Current](2)
		}, []string{"they share the current"}, false},
		{"lamps that never light", func(h *Hoist) {
			h.Lower.Loads = []DCLoad{row12(30, 1), {Kind: "clamp", Threshold: known[unit.Voltage](14), Slope: known[unit.Resistance](0.3)}}
		}, []string{"The lamps stay dark: the voltage settles at"}, false},
		{"a battery without a diode", func(h *Hoist) {
			h.Lower.Loads = []DCLoad{{Kind: "cell", Threshold: known[unit.Voltage](12.8), Slope: known[unit.Resistance](0.05)}}
		}, []string{"there is no diode in front of it"}, true},
		{"a clamp wired for good that burns out when the lamps are off", func(h *Hoist) {
			h.Lower.Loads = append(h.Lower.Loads, DCLoad{Kind: "clamp", Threshold: known[unit.Voltage](14), Slope: known[unit.Resistance](0.3), MaxCurrent: known[unit.Current](1), Permanent: "yes"})
		}, []string{"The clamp: with the lamps unplugged"}, true},
		{"a shunt that is said and not there", func(h *Hoist) { h.Lower.Shunt = "yes" }, []string{"it is not among the loads"}, false},
		{"more than half of the stall current", func(h *Hoist) { h.Machine.R = known[unit.Resistance](1.3) }, []string{"more than half of all that the motor can pull"}, false},
		{"lamps over their rating", func(h *Hoist) {
			h.Lower.Loads = []DCLoad{row12(8, 1)}
			h.Lower.Loads[0].MaxCurrent = known[unit.Current](1.5)
		}, []string{"It burns out, and then nothing holds the mass"}, true},
		{"electronics over their voltage", func(h *Hoist) { h.Lower.Loads[0].MaxVoltage = known[unit.Voltage](8) },
			[]string{"it gets 9 V and withstands 8 V", "A runaway makes up to"}, true},
		{"above 60 V when let go", func(h *Hoist) { h.Travel = known[unit.Length](40) },
			[]string{"Above 60 V a shock can kill"}, false},
		{"nothing holds it back", func(*Hoist) {}, []string{"If this circuit breaks anywhere, the mass runs away"}, false},
		{"a brake coil that eats it", func(h *Hoist) { h.Lower.Auxiliary = known[unit.Power](20) },
			[]string{"Nothing reaches the lamps"}, false},
		{"a drum thinner than its rope", func(h *Hoist) { h.Drum.Diameter = known[unit.Length](0.005) },
			[]string{"thinner than its rope"}, false},
		{"more rope than the drum holds", func(h *Hoist) { h.Drum.Width, h.Drum.Flange = known[unit.Length](0.02), known[unit.Length](0.08) },
			[]string{"does not fit on the drum", "layers"}, false},
		{"a rope too short", func(h *Hoist) { h.Rope.Length = known[unit.Length](5) },
			[]string{"rope is too short"}, false},
		{"teeth that cannot be put together", func(h *Hoist) {
			h.Train.Stages[0] = Stage{Kind: "planetary", SunTeeth: known[unit.Count](12), PlanetTeeth: known[unit.Count](18), RingTeeth: known[unit.Count](47), Planets: known[unit.Count](3), MeshEff: known[unit.Ratio](0.96)}
		}, []string{"cannot be put together"}, false},
		{"a sheet that contradicts itself", func(h *Hoist) {
			h.Machine.SheetVolts, h.Machine.SheetSpeed, h.Machine.SheetStall = known[unit.Voltage](12), known[unit.AngularSpeed](362), known[unit.Current](20)
		}, []string{"resistance is 0.346 Ω by your own number and 0.6 Ω by the sheet"}, false},
		{"pulleys that eat half", func(h *Hoist) {
			h.Reeving.Efficiency, h.Reeving.RopeParts = known[unit.Ratio](0.82), known[unit.Count](4)
		}, []string{"The pulleys alone use"}, false},
	} {
		h := worked()
		c.change(&h)
		d := Compute(h)
		for _, words := range c.words {
			if !mentions(d, words) {
				t.Errorf("%s: %q is not said: %+v", c.what, words, d.Flags)
			}
		}
		if c.bad != isBad(d, c.words[0]) {
			t.Errorf("%s: bad is %v", c.what, !c.bad)
		}
		if c.bad && (d.Raising.Stalls || d.Lowering.RunsBack != "yes" || !d.Lowering.Steady) && (d.Reservoir != nil || d.WhyNot == "") {
			t.Errorf("%s: it is a store all the same", c.what)
		}
	}
}

// The seven contradictory or half known ways into a machine's constants.
func TestMachineConstants(t *testing.T) {
	bench := func(v, i, s float64) Bench {
		return Bench{Voltage: known(unit.Voltage(v)), Current: known(unit.Current(i)), Speed: known(unit.AngularSpeed(s))}
	}
	var h Hoist
	h.Machine = Machine{
		BenchR:  []Bench{bench(1, 2, 0), bench(1.04, 2, 0), bench(0.96, 2, 0), bench(1, 2, 0), bench(1, 2, 0)},
		BenchI0: []Bench{bench(12, 0.4, 300)},
		BenchK:  []Bench{bench(10, 0, 250), bench(-10, 0, -250)},
	}
	m := Compute(h).Machine
	if m.From != "bench" || math.Abs(float64(m.R.Val)-0.5) > 1e-12 || m.I0.Val != 0.4 || m.K.Val != 0.04 || len(m.Contradictions) > 0 {
		t.Errorf("bench: %+v", m)
	}
	// a label with the speed behind a gearbox of 50: 12 V, 4 rad/s, stall 5 A, 0.2 A: R = 2.4, K = (12 − 0.48)/200 = 0.0576
	h.Machine = Machine{SheetVolts: known[unit.Voltage](12), SheetSpeed: known[unit.AngularSpeed](4), SheetStall: known[unit.Current](5), SheetGear: known[unit.Ratio](50), I0: known[unit.Current](0.2)}
	m = Compute(h).Machine
	if m.From != "sheet" || math.Abs(float64(m.R.Val)-2.4) > 1e-12 || math.Abs(float64(m.K.Val)-0.0576) > 1e-12 {
		t.Errorf("sheet: %+v", m)
	}
	// with a brush drop of 1 V the machine must still do what its sheet says: 200 rad/s without load, 5 A held
	h.Machine.BrushDrop = known[unit.Voltage](1)
	m = Compute(h).Machine
	if w := MotorSpeed(12, 1, 0.2, m.R.Val, m.K.Val); math.Abs(float64(w)-200) > 1e-9 {
		t.Errorf("without load %g rad/s, the sheet says 200", float64(w))
	}
	if i := Available(12, 1, m.R.Val, unit.Known[unit.Current]{}); math.Abs(float64(i)-5) > 1e-9 {
		t.Errorf("held %g A, the sheet says 5", float64(i))
	}
	h.Machine.I0 = known[unit.Current](6)
	if m = Compute(h).Machine; len(m.Contradictions) == 0 || m.K.Is {
		t.Errorf("a current without load above the stall current passes: %+v", m)
	}
	// the same label with the ratio left out, beside a drill test of the bare motor, K = 0.0576: each set is told, the
	// label's K is 50 times the bench's (to what R·I_0 leaves of it), and that is a contradiction
	h.Machine = Machine{SheetVolts: known[unit.Voltage](12), SheetSpeed: known[unit.AngularSpeed](4), SheetStall: known[unit.Current](5), I0: known[unit.Current](0.2), BenchK: []Bench{bench(5.76, 0, 100)}}
	m = Compute(h).Machine
	var ks []Found
	for _, f := range m.Found {
		if f.What == "machine constant" {
			ks = append(ks, f)
		}
	}
	if len(ks) != 2 || ks[0].From != "bench" || !ks[0].Used || ks[1].Used || math.Abs(ks[1].Value/ks[0].Value-50) > 1e-9 || len(m.Contradictions) == 0 {
		t.Errorf("each set: %+v %v", ks, m.Contradictions)
	}
	h.Machine = Machine{K: known[unit.MachineConstant](0.05)}
	if d := Compute(h); d.Machine.R.Is || d.Machine.I0.Is || !d.Machine.K.Is {
		t.Errorf("half known: %+v", d.Machine)
	}
}

// What is known is computed, however much is not: tensions without a motor, torque without gears, coming down without
// lamps.
func TestPartlyKnown(t *testing.T) {
	h := worked()
	h.Machine = Machine{}
	if d := Compute(h); !d.AtMotorUp.Is || !d.RotorPerMetre.Is || d.Raising.Known {
		t.Error("torque at the motor does not need the motor")
	}
	h.Train.Stages = nil
	if d := Compute(h); !d.DrumTorqueUp.Is || d.AtMotorUp.Is {
		t.Error("torque at the drum does not need the gears")
	}
	h.Drum.Diameter = unit.Known[unit.Length]{}
	if d := Compute(h); !d.RopeUp.Is || len(d.Tensions) != 3 || d.DrumTorqueUp.Is {
		t.Error("the pull of the rope does not need the drum")
	}
	h = with()
	d := Compute(h)
	if d.Lowering.Known || d.Lowering.RunsBack != "yes" || !d.LetGo.JoinedSpeed.Is || d.Reservoir != nil {
		t.Errorf("without lamps: %+v", d.Lowering)
	}
	h.Mass = append(h.Mass, Piece{Name: "the box"})
	if d := Compute(h); d.Mass.Is || d.RopeUp.Is {
		t.Error("one piece that was not weighed makes the mass not known")
	}
}

// A panel straight on the motor has its drawing side and says what it needs of the sun.
func TestPanelOnTheMotor(t *testing.T) {
	h := worked()
	h.Raise = Raise{Feed: "panel"}
	d := Compute(h)
	if d.Reservoir != nil || d.Draining == nil || d.WhyNot == "" || d.Draining.DrawMax <= 0 {
		t.Fatalf("%v %q", d.Draining, d.WhyNot)
	}
	want := Compute(worked())
	i, rotor, v := d.RaisePoint(12)
	if i != want.Raising.Current || rotor != want.Raising.Rotor || v != want.Raising.Speed {
		t.Errorf("at 12 V: %g A, %g rad/s, %g m/s", float64(i), float64(rotor), float64(v))
	}
	if _, rotor, _ := d.RaisePoint(1); rotor != 0 {
		t.Error("at 1 V it does not turn")
	}
}
