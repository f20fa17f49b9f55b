package catalog

import (
	"math"
	"testing"

	"duskweight/internal/model/unit"
)

// The first drive by the laws of its motor, for loads and lamps of any size. A gear of n stages passes on η^n on the way up and
// (2 − 1/η)^n on the way down, for it wastes the same there; the motor's torque is K·I and its own drag K·I_0.
func TestGearsByTheLawsOfTheMotor(t *testing.T) {
	bound := map[string]int{}
	for _, m := range startMotors {
		for _, up := range []float64{0.3, 1, 6, 20, 90, 400} {
			for _, slowest := range []float64{3, 8, 20, 60, 900, 20000} {
				for _, lamps := range []float64{0, 0.4, 2, 9, 40} {
					down := up * 0.87 * 0.87
					n, ratio := m.gears(up, down, slowest, lamps)
					of := func(n int) (lift, feed float64) {
						lift = up / (math.Pow(0.95, float64(n)) * m.k * (0.75*m.icont - m.i0))
						feed = down * math.Pow(2-1/0.95, float64(n)) / (m.k * (math.Max(lamps, m.i0) + m.i0))
						return lift, feed
					}
					lift, feed := of(n)
					// what lifts with three quarters of the current of all day, its drag in it: never a smaller ratio
					if amps := up/(ratio*m.k*math.Pow(0.95, float64(n))) + m.i0; amps > 0.75*m.icont*(1+1e-9) {
						t.Errorf("%s, %g N·m: %g A to lift", m.name, up, amps)
					}
					gives := m.gives(down, n, ratio)
					if want := down*math.Pow(2-1/0.95, float64(n))/(ratio*m.k) - m.i0; math.Abs(gives-want) > 1e-12*math.Abs(want) {
						t.Errorf("%s: gives %g A, by its torque %g", m.name, gives, want)
					}
					switch {
					case ratio > lift+0.1 && feed < slowest: // as large as the lamps leave it, to the tenth
						bound["lamps"]++
						if least := math.Max(lamps, m.i0); gives < least*(1-1e-9) || (ratio+0.1) < feed {
							t.Errorf("%s, %g N·m: gives %g A for lamps of %g A with a gear of %g", m.name, up, gives, lamps, ratio)
						}
					case ratio > lift+0.1:
						bound["time"]++
						if ratio > slowest || ratio+0.1 < slowest {
							t.Errorf("%s, %g N·m: a gear of %g, the slowest is %g", m.name, up, ratio, slowest)
						}
					default:
						bound["lift"]++
						if ratio < lift*(1-1e-9) {
							t.Errorf("%s, %g N·m: a gear of %g does not lift, %g does", m.name, up, ratio, lift)
						}
					}
					if n < 8 && ratio > math.Pow(5, float64(n)) {
						t.Errorf("%s: %d stages of %g", m.name, n, ratio)
					}
					if n > 1 { // one stage fewer would not do
						lift, feed := of(n - 1)
						if fewer := math.Max(lift, math.Min(feed, slowest)); fewer < math.Pow(5, float64(n-1))-0.1 {
							t.Errorf("%s: %d stages, a gear of %g in one fewer would do", m.name, n, fewer)
						}
					}
				}
			}
		}
	}
	if min(bound["lamps"], bound["time"], bound["lift"]) < 5 {
		t.Errorf("%v: one of the three bounds is hardly met", bound)
	}
}

// With its slowest gear the motor lifts in ten minutes: at three quarters of its current of all day it turns with
// (V − R·I)/K, and the rope comes in by r for each radian of the drum.
func TestSlowestGearTakesTenMinutes(t *testing.T) {
	for _, m := range startMotors {
		for _, height := range []float64{0.5, 2, 15} {
			const r = 0.036
			turns := (m.volts - m.r*0.75*m.icont) / m.k
			if s := height / (r * turns / m.slowest(r, height)); math.Abs(s-600) > 1e-9 {
				t.Errorf("%s, %g m: %g s", m.name, height, s)
			}
		}
	}
}

// The motor is the smallest that lifts in time and gives the lamps four fifths of what they draw; where none does, the smallest that
// lifts in time. Those who come later keep the first one's place, and a motor whose drag is more than what the lamps draw takes it not.
func TestSmallestMotorThatDoes(t *testing.T) {
	took := map[string]int{}
	for _, mass := range []unit.Mass{5, 40, 200, 1000} {
		for _, height := range []unit.Length{1, 4, 15} {
			for _, watts := range []unit.Power{1, 10, 60, 300} {
				a := Answers{Mass: mass, Height: height, Lamps: 1, LampPower: watts}
				const e, r = 0.87, 0.036
				got, _, _ := startDrive(a, e, r)
				took[got.name]++
				up, down := float64(mass)*unit.G/e*r, float64(mass)*unit.G*e*r
				does := func(m startMotor) (inTime, feeds bool) {
					slowest := (m.volts - m.r*0.75*m.icont) / m.k * r * 600 / float64(height)
					n, ratio := m.gears(up, down, slowest, float64(watts)/12.5)
					return ratio <= slowest, m.gives(down, n, ratio) >= 0.8*float64(watts)/12.5
				}
				inTime, feeds := does(got)
				for _, m := range startMotors {
					if m.name == got.name {
						break
					}
					early, gave := does(m)
					if early && gave {
						t.Errorf("%v kg, %v m, %v W: %s would do before %s", mass, height, watts, m.name, got.name)
					}
					if early && !(inTime && feeds) {
						t.Errorf("%v kg, %v m, %v W: %s lifts in time, and %s does no better", mass, height, watts, m.name, got.name)
					}
				}
			}
		}
	}
	if len(took) != len(startMotors) {
		t.Errorf("not every motor is taken: %v", took)
	}
}
