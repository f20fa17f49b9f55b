package lift

import (
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
	if !g.BreaksUpFirst || !mentions(d, "breaks up first") {
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
