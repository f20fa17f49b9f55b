package lift

import (
	"math"
	"testing"

	"duskweight/internal/model/unit"
)

func known[T unit.Number](v T) unit.Known[T] { return unit.Of(v) }

// worked is a whole small hoist: 80 kg over 3 m in two parts behind one head pulley 0.96, drum radius 30 mm, one stage
// 100:1 of 75 %, a 12 V machine of the published data sheet Pittman 14203S010 (k 0.0327, R 0.3459, I_0 0.3364,
// J 2.1e-5), lamps that hold 9 V.
func worked() Hoist {
	var h Hoist
	h.Mass = []Piece{{Name: "sand", Mass: known[unit.Mass](80)}}
	h.Travel = known[unit.Length](3)
	h.Rope.Diameter = known[unit.Length](0.006)
	h.Reeving.RopeParts, h.Reeving.LeadSheaves = known[unit.Count](2), known[unit.Count](1)
	h.Reeving.Efficiency = known[unit.Ratio](0.96)
	h.Drum.Diameter = known[unit.Length](0.054)
	h.Drum.Width, h.Drum.DeadWraps = known[unit.Length](0.3), known[unit.Count](3)
	h.Drum.Flange = known[unit.Length](0.12)
	h.Train.Stages = []Stage{{Kind: "box", Ratio: known[unit.Ratio](100), Efficiency: known[unit.Ratio](0.75), InStages: known[unit.Count](1), IdleTorque: known[unit.Torque](0)}}
	h.Machine.K, h.Machine.R = known[unit.MachineConstant](0.0327), known[unit.Resistance](0.3459)
	h.Machine.I0, h.Machine.J = known[unit.Current](0.3364), known[unit.Inertia](2.1e-5)
	h.Raise = Raise{Feed: "relay", Voltage: known[unit.Voltage](12), Auxiliary: known[unit.Power](0)}
	h.Lower.Loads = []DCLoad{{Kind: "cell", Name: "lamps at 9 V", Threshold: known[unit.Voltage](9), Slope: known[unit.Resistance](0)}}
	h.Lower.Auxiliary = known[unit.Power](0)
	return h
}

// The worked chain, by hand from the formulas with g = 9.81 (here 9.80665, which is 0.034 % less and within the printed
// digits' tolerance of 0.5 %). The rope lies in one layer.
func TestWorkedChain(t *testing.T) {
	d := Compute(worked())
	for _, c := range []struct {
		what      string
		got, want float64
	}{
		{"rope up N", float64(d.RopeUp.Val), 417.1},
		{"rope down N", float64(d.RopeDown.Val), 369.0},
		{"motor torque up", float64(d.AtMotorUp.Val), 0.1668},
		{"current up", float64(d.Raising.Current), 5.438},
		{"time up", float64(d.Raising.Time), 64.6},
		{"energy in", float64(d.Raising.EnergyIn), 4218},
		{"motor torque down", float64(d.AtMotorDown.Val), 0.0738},
		{"current down", float64(d.Lowering.Current), 1.921},
		{"time down", float64(d.Lowering.Time), 67.7},
		{"energy out", float64(d.Lowering.EnergyOut), 1170},
		{"share up", float64(d.Raising.Share), 0.558},
		{"share down", float64(d.Lowering.EnergyOut) / float64(d.RaiseEnergyMech.Val), 0.497},
		{"round trip", float64(d.Lowering.EnergyOut) / float64(d.Raising.EnergyIn), 0.277},
	} {
		if math.Abs(c.got/c.want-1) > 0.005 {
			t.Errorf("%s: got %.5g, want %.5g", c.what, c.got, c.want)
		}
	}
	if d.Lowering.RunsBack != "yes" || !d.Lowering.Steady || d.Reservoir == nil {
		t.Errorf("runs back %q, steady %v, %q", d.Lowering.RunsBack, d.Lowering.Steady, d.WhyNot)
	}
}
