package path

import (
	"math"

	"duskweight/internal/model/lift"
	"duskweight/internal/model/unit"
)

// loads is what hangs on the path: the static tensions by rope part, the factor for jerks, and what is missing where
// they are not known. Where only the pulleys' efficiency is missing the tensions without friction stand in: the least
// the rope can pull, enough to say "gives way" and never enough to say "holds".
type loads struct {
	h lift.Hoist
	d lift.Drive

	m       float64 // kg; 0 when not known
	n, k    int     // rope parts at the mass, pulleys before it
	reeved  bool    // n and k are known
	up      []float64
	down    []float64
	missing []string // what keeps the tensions from being known; up and down are then the least values, or empty

	massMissing []string // of these, what keeps the mass from being known

	phi float64
	why string
}

func newLoads(h lift.Hoist, d lift.Drive) *loads {
	t := &loads{h: h, d: d}
	t.phi, t.why = Phi(h, d)
	t.mass()
	n, okN := h.Reeving.RopeParts.Value()
	k, okK := h.Reeving.LeadSheaves.Value()
	t.reeved = okN && okK && n >= 1 && k >= 0 && n <= 1000 && k <= 1000
	if !okN {
		t.missing = append(t.missing, "reeving.rope_parts")
	}
	if !okK {
		t.missing = append(t.missing, "reeving.lead_sheaves")
	}
	if t.reeved {
		t.n, t.k = int(n), int(k)
	}
	t.tensions()
	return t
}

func (t *loads) mass() {
	if m, ok := t.d.Mass.Value(); ok && m > 0 {
		t.m = float64(m)
		return
	}
	for i, p := range t.h.Mass {
		if !p.Mass.Is {
			t.massMissing = append(t.massMissing, at("mass", i, "mass_kg"))
		}
	}
	if len(t.massMissing) == 0 {
		t.massMissing = []string{"mass"}
	}
	t.missing = append(t.missing, t.massMissing...)
}

func (t *loads) tensions() {
	parts := t.n + t.k
	if t.reeved && len(t.d.Tensions) == parts {
		for _, p := range t.d.Tensions {
			t.up = append(t.up, float64(p.Up))
			t.down = append(t.down, float64(p.Down))
		}
		return
	}
	if !t.reeved || t.m == 0 {
		return
	}
	if !t.h.Reeving.Efficiency.Is {
		t.missing = append(t.missing, "reeving.sheave_efficiency")
	} else {
		t.missing = append(t.missing, "")
	}
	least := t.m * unit.G / float64(t.n)
	for range parts {
		t.up = append(t.up, least)
		t.down = append(t.down, least)
	}
}

// known reports whether there is any tension to work with, exact or least.
func (t *loads) known() bool { return len(t.up) > 0 }

// weight is m·g, N.
func (t *loads) weight() float64 { return t.m * unit.G }

// greatest is the larger of the raising and lowering tension of part j, N.
func (t *loads) greatest(j int) float64 { return math.Max(t.up[j], t.down[j]) }

// deadEnd is the part that is made fast.
func (t *loads) deadEnd() int { return len(t.up) - 1 }

// stiffness is k_m of the rope and beam, N/m at the mass: 1/k_m = L_rope/(n²·EA) + 1/k_beam. With the mass at its
// lowest the rope that counts is the n·h between mass and pulleys and, where the head height is known, the line to the
// drum; at the top it is that line and the n parts over the room above the upper stop, at least a hand's breadth each. A
// beam of unknown stiffness counts as rigid, the stiffest.
func (t *loads) stiffness(top bool) (float64, []string) {
	var miss []string
	ea, okEA := t.h.Rope.Stiffness.Value()
	h, okH := t.h.Travel.Value()
	if !okEA {
		miss = append(miss, "rope.stiffness_ea_n")
	}
	if !okH {
		miss = append(miss, "travel_m")
	}
	if !t.reeved {
		miss = append(miss, "reeving.rope_parts", "reeving.lead_sheaves")
	}
	line, okL := t.h.Structure.HeadHeight.Value()
	if top && t.k > 0 && !okL {
		miss = append(miss, "structure.head_height_m")
	}
	if len(miss) > 0 {
		return 0, miss
	}
	n := float64(t.n)
	length := n * float64(h)
	if top {
		length = n * math.Max(handBreadth, float64(t.h.Holds.RoomAbove.Or(0)))
	}
	if t.k > 0 {
		length += float64(line)
	}
	return 1 / (length/(n*n*float64(ea)) + beamCompliance(t.h.Structure.Beam)), nil
}

// grip is what the turns that stay on the drum divide the rope's pull by, e^(2π·μ·turns), μ = .15, .05 for slippery
// high-modulus rope (from memory). Turns that are not known count as none.
func (t *loads) grip() float64 {
	mu := 0.15
	if t.h.Rope.Kind == lift.RopeHMPE {
		mu = 0.05
	}
	turns := min(float64(t.h.Drum.DeadWraps.Or(0)), 100)
	return Capstan(mu, max(0, turns))
}

// Capstan is the ratio of pulls over turns of rope on a drum, e^(2π·μ·n) (Euler, Eytelwein).
func Capstan(mu, turns float64) float64 { return math.Exp(2 * math.Pi * mu * turns) }
