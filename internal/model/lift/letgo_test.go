package lift

import (
	"math"
	"testing"

	"duskweight/internal/model/source"
	"duskweight/internal/model/unit"
)

// What goes wrong with the worked hoist and a brake that takes half a second, by hand: F_down = 784.532/(1/0.96 +
// 1/0.9216) = 368.890 N, T = 368.890·0.03·0.6667/100 = 0.073778 N·m, c = 100·2/0.03 = 6666.67 rad/m,
// m·q_d = 2·368.890/g·0.6667 = 50.155 kg, J·c² = 933.333 kg.
func TestWorkedMishaps(t *testing.T) {
	h := worked()
	h.Holds.BrakeDelay = known[unit.Duration](0.5)
	h.Machine.MaxSpeed = known[unit.AngularSpeed](5000)
	d := Compute(h)
	g := d.LetGo
	by := source.Derivation.At
	check(t, []row{
		{"gathers speed", float64(g.Acceleration), 0.425544, 1e-5, by("6666.67·(0.073778 − 0.0327·0.3364)/983.489")},
		{"end speed", float64(g.OpenSpeed), 1.59789, 1e-5, by("√(2·0.425544·3)")},
		{"rotor", float64(g.OpenRotor), 10652.6, 1e-5, by("6666.67·1.59789")},
		{"voltage", float64(g.OpenVoltage), 348.34, 1e-5, by("0.0327·10652.6")},
		{"without friction", float64(g.Frictionless), 2.15529, 1e-5, by("√(2·3·784.532/1013.333)")},
		{"rope gone", float64(g.FreeFall), 7.67071, 1e-5, by("√(2·g·3)")},
		{"joined", float64(g.JoinedSpeed.Val), 0.0030462, 1e-4, by("1.91981·0.3459/0.0327/6666.67")},
		{"burst", float64(g.BurstForce.Val), 8749.7, 1e-4, by("a = 6666.67·0.0327·348.34/0.3459/983.489 − 0.4255 = 222.80; 368.890·(1 + 222.80/g)")},
		{"falls before the brake", float64(g.BrakeFall.Val), 0.075358, 1e-4, by("0.0443306·0.5 + 0.425544·0.125")},
		{"speed at the brake", float64(g.BrakeSpeed.Val), 0.257103, 1e-4, by("0.0443306 + 0.425544·0.5")},
		{"past the upper stop", float64(d.Overtravel.Val), 0.0246014, 1e-4, by("0.0464196·0.5 + 0.0464196²/(2·784.532/1013.333)")},
		{"rotor as a mass", float64(d.ReflectedMass.Val), 933.333, 1e-5, by("2.1e-5·6666.67²")},
		{"stalled motor pulls", float64(d.StallRopePull.Val), 2808.58, 1e-4, by("0.0327·(12/0.3459 − 0.3364)·75/0.03")},
	})
	if !g.BreaksUpFirst || !mentions(d, "flies apart before that") {
		t.Error("10,650 rad/s is more than twice 5,000")
	}
	// without the rotor's inertia the burst is the torque through the whole train: 0.0327·K·ω/R·100/0.6667/0.03 and F_down's own pull less what friction held
	h.Machine.J = known[unit.Inertia](0)
	h.Machine.I0 = known[unit.Current](0)
	g = Compute(h).LetGo
	tb := 0.0327 * float64(g.OpenVoltage) / 0.3459
	check(t, []row{{"burst without inertia", float64(g.BurstForce.Val), tb * 100 / (2.0 / 3) / 0.03, 1e-9, by("torque through the train")}})
}

// Friction that holds it lets nothing run away.
func TestHeldByFriction(t *testing.T) {
	h := worked()
	h.Mass[0].Mass = known[unit.Mass](8)
	g := Compute(h).LetGo
	if !g.Known || g.Acceleration != 0 || g.OpenSpeed != 0 || g.BurstForce.Is || g.JoinedSpeed.Is {
		t.Errorf("%+v", g)
	}
}

// A travel too short for the steady speed, by hand: straight drive (100:1 becomes 4:1 at 95 %) of 120 kg on one rope over
// three pulleys of 0.87, drum 60 mm and rope 8 mm, K = 0.068 V·s/rad, I_0 = 1.8 A, J = 2.5e-4 kg·m². F_down =
// 1176.798·0.87³ = 774.923 N; the stage gives 2 − 1/0.95 = 0.947368 back, so T = 774.923·0.034·0.947368/4 = 6.24016 N·m,
// less 0.068·1.8 = 0.1224. c = 4/0.034 = 117.647 rad/m. Moving: 774.923/9.80665·0.947368 + 2.5e-4·117.647² = 74.8612 +
// 3.46021 = 78.3216 kg. I* = 6.11783/0.068 = 89.9674 A, a = 117.647·6.11783/78.3216 = 9.18954 m/s². The lamps begin at
// v_0 = 11/(0.068·117.647) = 1.375 m/s, after 0.149627 s and 0.102868 m. From there τ = (0.17 + 0.93)·78.3216/(0.068·117.647)²
// = 1.346153 s to v_∞ = 1.375 + a·τ = 13.7455 m/s, which 2.2 m do not make: v_∞·T − a·τ²·(1 − e^(−T/τ)) = 2.097132 m gives
// T = 0.571894 s, x = e^(−T/τ) = 0.653879, v = 13.7455 − 12.3705·x = 5.65672 m/s, E = 11·I*·(T − τ·(1 − x)) +
// 0.93·I*²·(T − 2τ·(1 − x) + τ·(1 − x²)/2) = 295.493 J, and (120 + 3.46021)·5.65672²/2 = 1975.27 J go into the stop.
func TestTravelTooShortForSteadySpeed(t *testing.T) {
	h := worked()
	h.Mass[0].Mass, h.Travel = known[unit.Mass](120), known[unit.Length](2.2)
	h.Rope.Diameter, h.Drum.Diameter = known[unit.Length](0.008), known[unit.Length](0.06)
	h.Reeving.RopeParts, h.Reeving.LeadSheaves, h.Reeving.Efficiency = known[unit.Count](1), known[unit.Count](3), known[unit.Ratio](0.87)
	h.Train.Stages[0].Kind, h.Train.Stages[0].Ratio, h.Train.Stages[0].Efficiency = "chain", known[unit.Ratio](4), known[unit.Ratio](0.95)
	h.Machine.K, h.Machine.R = known[unit.MachineConstant](0.068), known[unit.Resistance](0.17)
	h.Machine.I0, h.Machine.J = known[unit.Current](1.8), known[unit.Inertia](2.5e-4)
	h.Lower.Loads = []DCLoad{{Kind: "string", Threshold: known[unit.Voltage](11), Slope: known[unit.Resistance](0.93)}}
	h.Raise.Voltage, h.Raise.CurrentLimit = known[unit.Voltage](48), unit.Known[unit.Current]{}
	d := Compute(h)
	lo := d.Lowering
	by := source.Derivation.At
	check(t, []row{
		{"arrives at", float64(lo.Fastest()), 5.65672, 1e-5, by("13.7455 − 12.3705·x")},
		{"rotor", float64(lo.FastestRotor()), 665.497, 1e-5, by("5.65672·117.647")},
		{"steady", float64(lo.Speed), 13.7455, 1e-5, by("1.375 + 9.18954·1.346153")},
		{"time", float64(lo.Time), 0.721521, 1e-5, by("0.149627 + 0.571894")},
		{"energy", float64(lo.EnergyOut), 295.493, 1e-5, by("5.12")},
		{"into the stop", float64(lo.Left), 1975.27, 1e-5, by("123.460·5.65672²/2")},
	})
	if !lo.Short || !mentions(d, "too short for a steady speed") || !mentions(d, "as if dropped from 1.63 m") {
		t.Errorf("steady %.3g m/s, flags %v", float64(lo.Speed), d.Flags)
	}
	if d.Reservoir == nil || math.Abs(float64(d.Reservoir.Drawn(d.Reservoir.DrawMax)/lo.EnergyOut)-1) > 1e-12 {
		t.Errorf("the store gives other than %v J: %s", lo.EnergyOut, d.WhyNot)
	}
	if lo = Compute(worked()).Lowering; lo.Short || lo.Fastest() != lo.Speed || lo.FastestRotor() != lo.Rotor {
		t.Error("the worked hoist settles within its travel")
	}
}
