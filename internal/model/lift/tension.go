package lift

import (
	"fmt"
	"math"

	"duskweight/internal/model/unit"
	"duskweight/internal/say"
)

// Tensions returns the static tension of every rope part, the first at the drum, raising and lowering, of a load that
// hangs in n parts behind k pulleys of the lead line (the top pulley included). efficiency holds one value for each of
// the k + n − 1 pulleys, counted from the drum.
//
//	raising T_j = T_{j−1}·e_j, lowering T_j = T_{j−1}/e_j, and T_k + … + T_{k+n−1} = m·g
//
// With n = 1, k = 0 both are the weight. With equal pulleys lowering over raising at the drum is e^(2k+n−1).
// Nil for a count of pulleys that does not fit.
func Tensions(weight unit.Force, n, k int, efficiency []float64) (up, down []unit.Force) {
	if n < 1 || k < 0 || len(efficiency) != k+n-1 {
		return nil, nil
	}
	return spread(weight, n, k, efficiency, func(t, e float64) float64 { return t * e }),
		spread(weight, n, k, efficiency, func(t, e float64) float64 { return t / e })
}

// spread sets the parts in proportion by one step for each pulley, then scales them to carry the weight.
func spread(weight unit.Force, n, k int, efficiency []float64, step func(t, e float64) float64) []unit.Force {
	t := make([]float64, k+n)
	t[0] = 1
	for j, e := range efficiency {
		t[j+1] = step(t[j], e)
	}
	carried := 0.0
	for _, x := range t[k:] {
		carried += x
	}
	parts := make([]unit.Force, len(t))
	for j, x := range t {
		parts[j] = unit.Force(float64(weight) * (x / carried))
	}
	return parts
}

// PulleyPull returns the pull of one pulley on what it hangs from, with the two rope parts a and b at an angle:
// √(a² + b² + 2·a·b·cos θ). 0 means that they run side by side.
func PulleyPull(a, b unit.Force, angle unit.Angle) unit.Force {
	x, y := float64(a), float64(b)
	return unit.Force(math.Sqrt(max(0, x*x+y*y+2*x*y*math.Cos(float64(angle)))))
}

// rope fills mass, tensions and what the pulleys cost.
func (w *work) rope() {
	h, d := w.h, w.d
	w.mass()
	n, okN := h.Reeving.RopeParts.Value()
	k, okK := h.Reeving.LeadSheaves.Value()
	if !okN {
		w.lack("reeving.rope_parts", "the pull in the rope")
	}
	if !okK {
		w.lack("reeving.lead_sheaves", "the pull in the rope")
	}
	if !okN || !okK {
		return
	}
	w.n, w.k = int(n), int(k)
	e, ok := w.pulleys(w.n + w.k - 1)
	if !ok || !d.Mass.Is {
		return
	}
	up, down := Tensions(d.Mass.Val.Weight(), w.n, w.k, e)
	for j := range up {
		if !finite(float64(up[j]), float64(down[j])) || down[j] <= 0 {
			w.caution("reeving.sheave_efficiency", beyond)
			return
		}
	}
	for j := range up {
		d.Tensions = append(d.Tensions, Tension{Part: j, Up: up[j], Down: down[j]})
	}
	weight := w.m * unit.G
	w.fUp, w.fDown, w.haveRope = float64(up[0]), float64(down[0]), true
	d.RopeUp, d.RopeDown = unit.Of(up[0]), unit.Of(down[0])
	d.QUp = unit.Of(unit.Ratio(weight / (float64(w.n) * w.fUp)))
	d.QDown = unit.Of(unit.Ratio(float64(w.n) * w.fDown / weight))
	w.flagRopeLoss()
}

// mass adds the pieces up; one piece that was not weighed makes the sum not known.
func (w *work) mass() {
	if len(w.h.Mass) == 0 {
		w.lack("mass", "every answer: how much hangs is not known")
		return
	}
	sum, all := 0.0, true
	for i, p := range w.h.Mass {
		if !p.Mass.Is {
			w.lack(fmt.Sprintf("mass[%d].mass_kg", i), "everything: one piece has no mass")
			all = false
		}
		sum += float64(p.Mass.Val)
	}
	if all {
		w.m = sum
		w.d.Mass = unit.Of(unit.Mass(sum))
	}
}

// pulleys returns the efficiency of each of the pulleys from the drum, and whether all are known.
func (w *work) pulleys(count int) ([]float64, bool) {
	e := make([]float64, count)
	common, have := w.h.Reeving.Efficiency.Value()
	for i := range e {
		e[i] = float64(common)
		own := false
		if i < len(w.h.Reeving.Sheaves) {
			if v, ok := w.h.Reeving.Sheaves[i].Efficiency.Value(); ok {
				e[i], own = float64(v), true
			}
		}
		if !own && !have {
			w.lack("reeving.sheave_efficiency", "the pull in the rope")
			return nil, false
		}
	}
	if len(w.h.Reeving.Sheaves) > count {
		w.caution("reeving.sheaves", "%s pulleys are described, but this way of the rope has %s. The rest is not used.", len(w.h.Reeving.Sheaves), count)
	}
	return e, true
}

// flagRopeLoss says what many small pulleys cost.
func (w *work) flagRopeLoss() {
	if both := float64(w.d.QUp.Val * w.d.QDown.Val); both < 0.6 {
		w.caution("reeving.rope_parts", "The pulleys alone use %s of the energy, up and down together. Fewer or better pulleys lose less.", say.Share(unit.Ratio(1-both)))
	}
}
