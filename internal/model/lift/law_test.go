package lift

import (
	"math"
	"strings"
	"testing"

	"duskweight/internal/model/unit"
)

func mentions(d Drive, words string) bool {
	for _, f := range d.Flags {
		if strings.Contains(plain(f.Say), words) {
			return true
		}
	}
	return false
}

// ideal is a hoist without any loss: e = η = 1, next to no resistance, no friction.
func ideal() Hoist {
	h := worked()
	h.Reeving.Efficiency = known[unit.Ratio](1)
	h.Train.Stages[0].Efficiency = known[unit.Ratio](1)
	h.Machine.R, h.Machine.I0 = known[unit.Resistance](1e-12), known[unit.Current](0)
	return h
}

// Nothing lost: what goes in is m·g·h, and all of it comes back, in one layer or in many, but for the motion that mass and
// rotor carry into the lower stop, and what heats the winding when a thinner layer begins too fast: the constant voltage brakes
// it from v' = v·√(M/M') to ω/c', and ½·M'·(v' − ω/c')² turns to heat however small the resistance, M = m + J·c².
func TestIdealLosesNothing(t *testing.T) {
	for _, width := range []unit.Length{0.4, 0.031, 0.0125} {
		h := ideal()
		h.Drum.Width = known(width)
		w := compute(h)
		d := *w.d
		mgh := float64(d.RaiseEnergyMech.Val)
		if d.Reservoir == nil {
			t.Fatal(d.WhyNot)
		}
		const rotor = 9 / 0.0327 // rad/s at 9 V
		heat := 0.0
		for k := range len(w.layers) - 1 {
			c, before := w.gearing(w.layers[k]), w.gearing(w.layers[k+1])
			mass := 80 + 2.1e-5*c*c
			fast := rotor / before * math.Sqrt((80+2.1e-5*before*before)/mass)
			heat += mass * (fast - rotor/c) * (fast - rotor/c) / 2
		}
		kept := (heat + float64(d.Lowering.Left)) / mgh
		rt := d.Reservoir.RoundTrip(d.Reservoir.DrawMax)
		for what, x := range map[string]float64{"in": float64(d.Raising.EnergyIn) / mgh, "out": float64(d.Lowering.EnergyOut)/mgh + kept, "round trip": rt + kept} {
			if math.Abs(x-1) > 1e-9 {
				t.Errorf("%d layers: %s is %.12f of m·g·h, want 1", d.Winding.Layers, what, x)
			}
		}
	}
}

// The limits that need no book.
func TestExactLimits(t *testing.T) {
	for n := 1; n <= 6; n++ {
		for k := 0; k <= 3; k++ {
			es := make([]float64, n+k-1)
			for i := range es {
				es[i] = 0.87
			}
			up, down := Tensions(1000, n, k, es)
			if got, want := float64(down[0]/up[0]), math.Pow(0.87, float64(2*k+n-1)); math.Abs(got/want-1) > 1e-12 {
				t.Errorf("n %d, k %d: down over up %.15g, want %.15g", n, k, got, want)
			}
			var carried unit.Force
			for _, f := range down[k:] {
				carried += f
			}
			if math.Abs(float64(carried)-1000) > 1e-9 {
				t.Errorf("the parts carry %g of 1000", float64(carried))
			}
			for i := range es {
				es[i] = 1
			}
			up, _ = Tensions(1000, n, k, es)
			if math.Abs(float64(up[0])*float64(n)-1000) > 1e-9 {
				t.Errorf("without friction each part carries 1/%d", n)
			}
		}
	}
	h := worked()
	h.Machine.J, h.Machine.I0 = known[unit.Inertia](0), known[unit.Current](0)
	d := Compute(h)
	if math.Abs(float64(d.LetGo.Acceleration)-unit.G) > 1e-12 || math.Abs(float64(d.LetGo.OpenSpeed/d.LetGo.FreeFall)-1) > 1e-12 {
		t.Errorf("without inertia and friction it falls with g, got %g m/s²", float64(d.LetGo.Acceleration))
	}
	if d := Compute(worked()); !(d.LetGo.OpenSpeed < d.LetGo.Frictionless && d.LetGo.Frictionless < d.LetGo.FreeFall) {
		t.Error("let go with friction is slower than without, and that slower than free fall")
	}
}

// For any design: energy is never made, the fall is never faster than free fall, and filling and drawing at full power
// take the energies and times of one travel.
func TestEnergyIsNeverMade(t *testing.T) {
	d := newDice(3)
	lifts := 0
	for range 6000 {
		h := d.hoist()
		r := Compute(h)
		mgh := float64(r.RaiseEnergyMech.Val)
		if r.QUp.Val > 1+1e-12 || r.QDown.Val > 1+1e-12 {
			t.Fatalf("pulleys make force: %g, %g", float64(r.QUp.Val), float64(r.QDown.Val))
		}
		if r.Raising.Known && !r.Raising.Stalls && float64(r.Raising.EnergyIn) < mgh*(1-1e-12) {
			t.Fatalf("%g J lift what takes %g", float64(r.Raising.EnergyIn), mgh)
		}
		if float64(r.Lowering.EnergyOut) > mgh*(1+1e-12) {
			t.Fatalf("%g J come out of %g", float64(r.Lowering.EnergyOut), mgh)
		}
		if r.LetGo.OpenSpeed > r.LetGo.FreeFall*(1+1e-12) {
			t.Fatalf("it falls at %g, free fall is %g", float64(r.LetGo.OpenSpeed), float64(r.LetGo.FreeFall))
		}
		s := r.Reservoir
		if s == nil {
			continue
		}
		lifts++
		units := float64(h.Units.Val)
		full := float64(s.Capacity) / (s.FillGain*float64(s.FillMax) - float64(s.FillLoss))
		if math.Abs(full/(units*float64(r.Raising.Time))-1) > 1e-9 {
			t.Fatalf("filling takes %g s, lifting %g", full, units*float64(r.Raising.Time))
		}
		if out := float64(s.Drawn(s.DrawMax)); h.Lower.Loads[0].Kind != "governed" && r.Lowering.EnergyOut > 0 && math.Abs(out/(units*float64(r.Lowering.EnergyOut))-1) > 1e-9 {
			t.Fatalf("drawing gives %g J, lowering %g", out, units*float64(r.Lowering.EnergyOut))
		}
		if rt := s.RoundTrip(s.DrawMax); rt >= 1 || s.FillLoss < 0 || s.DrawLoss < 0 {
			t.Fatalf("round trip %g, losses %g and %g", rt, float64(s.FillLoss), float64(s.DrawLoss))
		}
	}
	if lifts < 100 {
		t.Fatalf("only %d designs lift and come down", lifts)
	}
}

// What must grow or fall with what.
func TestMonotone(t *testing.T) {
	d := newDice(4)
	tried := map[string]int{}
	for range 6000 {
		h := d.hoist()
		a := Compute(h)
		try := func(name string, change func(*Hoist), never func(a, b Drive) bool) {
			g := h
			g.Mass = append([]Piece{}, h.Mass...)
			g.Train.Stages = append([]Stage{}, h.Train.Stages...)
			change(&g)
			tried[name]++
			if b := Compute(g); never(a, b) {
				t.Errorf("%s: %+v becomes %+v", name, a.Lowering, b.Lowering)
			}
		}
		if a.Reservoir == nil {
			continue
		}
		slack := unit.Energy(1e-9) * a.RaiseEnergyMech.Val
		kind := h.Lower.Loads[0].Kind
		if len(h.Lower.Loads) == 1 && (kind == "resistor" || kind == "string" || kind == "cell") && h.Lower.Loads[0].Efficiency.Or(1) > 0 {
			try("more mass never gives less", func(g *Hoist) { g.Mass[0].Mass.Val *= 1.05 }, func(a, b Drive) bool {
				return b.Raising.Known && !b.Raising.Stalls && b.Lowering.EnergyOut < a.Lowering.EnergyOut-slack
			})
		}
		try("worse pulleys never cost less", func(g *Hoist) { g.Reeving.Efficiency.Val *= 0.98 }, func(a, b Drive) bool {
			return b.Raising.Known && !b.Raising.Stalls && b.Raising.EnergyIn < a.Raising.EnergyIn-slack
		})
		try("a harder first push never starts better", func(g *Hoist) { g.Train.Breakaway = known(unit.Ratio(2.5)) }, func(a, b Drive) bool {
			return b.Raising.Margin > a.Raising.Margin || b.Lowering.BreakawayCurrent > a.Lowering.BreakawayCurrent
		})
		try("longer wires never lift faster", func(g *Hoist) { g.Raise.WireR = known(g.Raise.WireR.Val + 0.05) }, func(a, b Drive) bool {
			return b.Raising.Speed > a.Raising.Speed || b.Raising.Margin > a.Raising.Margin
		})
		try("a heavier rotor never falls faster", func(g *Hoist) { g.Machine.J = known(g.Machine.J.Val*2 + 1e-6) }, func(a, b Drive) bool {
			return b.LetGo.OpenSpeed > a.LetGo.OpenSpeed
		})
	}
	for name, n := range tried {
		if n < 100 {
			t.Errorf("%q was tried %d times only", name, n)
		}
	}
}

// The smallest mass, the smallest drum and the greatest ratio that are named do come down by themselves, and a little
// short of them does not.
func TestNeedsAreEnough(t *testing.T) {
	d := newDice(5)
	tried := 0
	for range 4000 {
		h := d.hoist()
		h.Drum.Width = unit.Known[unit.Length]{} // one layer: the drum's size does not move it to another one
		a := Compute(h).Lowering
		for i, by := range []float64{1.001, 0.999} {
			starts := func(g Hoist) bool { return Compute(g).Lowering.BreakawayCurrent > 0 }
			if v, ok := a.NeedsMass.Value(); ok && v > 0 {
				g := h
				g.Mass = []Piece{{Mass: known(v * unit.Mass(by))}}
				if starts(g) != (i == 0) {
					t.Fatalf("mass × %g of %g: starts %v", by, float64(v), i != 0)
				}
				tried++
			}
			if v, ok := a.NeedsDrum.Value(); ok && v > 0 {
				g := h
				g.Drum.Diameter = known((v+h.Rope.Diameter.Val)*unit.Length(by) - h.Rope.Diameter.Val)
				if g.Drum.Diameter.Val > 0 && starts(g) != (i == 0) {
					t.Fatalf("drum × %g of %g: starts %v", by, float64(v), i != 0)
				}
			}
			if v, ok := a.NeedsRatio.Value(); ok && h.Train.Stages[0].Ratio.Is && !h.Train.Stages[0].MeshEff.Is {
				g := h
				g.Train.Stages = append([]Stage{}, h.Train.Stages...)
				g.Train.Stages[0].Ratio.Val *= v / Compute(h).Ratio.Val / unit.Ratio(by)
				if starts(g) != (i == 0) {
					t.Fatalf("ratio / %g of %g: starts %v", by, float64(v), i != 0)
				}
			}
		}
	}
	if tried < 1000 {
		t.Fatalf("tried %d times only", tried)
	}
}
