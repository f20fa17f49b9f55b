package path

import (
	"duskweight/internal/model/lift"
	"duskweight/internal/model/source"
	"duskweight/internal/model/unit"
)

// hubBorders: metal twice on yield, four times for OK; printed five times and ten (10 MPa still and 5 MPa repeated, for
// a plastic of 51 MPa); wood and others as printed (our own judgement).
func hubBorders(material lift.HubMaterial) (wanted, ok float64) {
	switch material {
	case lift.HubSteel, lift.HubAluminium:
		return 2, 4
	}
	return 5, 10
}

// hubChecks looks at the wall of the drum's hub by the way it sits on the shaft: pressed by a cross pin
// 4·T/(d·(Do² − D²)) or by a key 4·T/(D·t·l); a hub that is pressed on, glued or held by a screw stays not known.
func hubChecks(t *loads) []*Check {
	d := t.h.Drum
	l := newLine("drum_hub", "the drum's hub", "4·T/(d·(Do² − D²)) ≤ strength / 2 (printed / 5)", source.FromMemory.At("pinned hubs"))
	q, okQ, miss := t.torque()
	l.miss(miss...)
	for _, x := range []struct {
		is   bool
		path string
	}{{d.HubFit != "", "drum.hub_fit"}, {d.HubMaterial != "", "drum.hub_material"}, {d.HubAllow.Is, "drum.hub_strength_pa"}, {d.ShaftDiameter.Is, "drum.shaft_diameter_m"}} {
		if !x.is {
			l.miss(x.path)
		}
	}
	mend := change("Use a wider hub, a thicker pin, or a hub of metal.")
	ready := okQ && d.HubAllow.Is && d.ShaftDiameter.Is && d.HubMaterial != ""
	switch d.HubFit {
	case lift.FitCrossPin:
		if !d.HubOuter.Is {
			l.miss("drum.hub_outer_diameter_m")
		}
		if !d.PinDiameter.Is {
			l.miss("drum.pin_diameter_m")
		}
		if ready && d.HubOuter.Is && d.PinDiameter.Is {
			t.hubCases(l, PinHub(q, float64(d.PinDiameter.Val), float64(d.ShaftDiameter.Val), float64(d.HubOuter.Val)))
		}
	case lift.FitKey:
		l.c.Formula, l.c.Source = "4·T/(D·t·l) ≤ strength / 2 (printed / 5)", source.Shigley.At("ex. 7-6, keys")
		if !d.KeyWidth.Is {
			l.miss("drum.key_width_m")
		}
		if !d.KeyLength.Is {
			l.miss("drum.key_length_m")
		}
		if ready && d.KeyWidth.Is && d.KeyLength.Is {
			t.hubCases(l, KeyCrush(q, float64(d.ShaftDiameter.Val), float64(d.KeyWidth.Val), float64(d.KeyLength.Val)))
		}
	case lift.FitPress, lift.FitGlue, lift.FitSetScrew:
		l.miss("")
		mend = always("How much a hub holds that is pressed on, glued or clamped by a screw cannot be worked out. Put a pin through hub and shaft.")
	}
	c := l.verdict()
	tell(c, bends, mend)
	out := []*Check{c}
	if d.HubFit == lift.FitKey {
		out = append(out, t.keyCheck(q, okQ, miss))
	}
	return out
}

// hubCases adds the working case and the events for a pressure at rest. A metal yields, wood and plastic break.
func (t *loads) hubCases(l *line, pressure float64) {
	d := t.h.Drum
	wanted, ok := hubBorders(d.HubMaterial)
	allow := float64(d.HubAllow.Val)
	l.in("pressure at rest", pressure, unit.Pascals)
	l.in("strength of the hub", allow, unit.Pascals)
	l.in("factor for jerks φ", t.phi, unit.Pieces)
	l.add("working, hub pressed", unit.Pascals, t.phi*pressure, allow, wanted, ok)
	if wanted == 2 {
		t.addEvents(l, unit.Pascals, pressure, allow, 1, 1.25)
	} else {
		t.addEvents(l, unit.Pascals, pressure, allow, 2, 2.5)
	}
}

// KeyShear is the shear stress of a key of width w and length l in a shaft of diameter D, Pa: 2·T/(D·w·l).
func KeyShear(q, D, w, l float64) float64 { return 2 * q / (D * w * l) }

// KeyCrush is the pressure on half the height of a square key, Pa: 4·T/(D·w·l).
func KeyCrush(q, D, w, l float64) float64 { return 4 * q / (D * w * l) }

// keyCheck is the key itself, sheared and pressed.
func (t *loads) keyCheck(q float64, okQ bool, miss []string) *Check {
	d := t.h.Drum
	l := newLine("drum_hub", "the key", "2·T/(D·w·l) ≤ .577·yield/2, and 4·T/(D·w·l) ≤ yield/2", source.Shigley.At("ex. 7-6, keys"))
	l.miss(miss...)
	for _, x := range []struct {
		is   bool
		path string
	}{{d.KeyWidth.Is, "drum.key_width_m"}, {d.KeyLength.Is, "drum.key_length_m"}, {d.KeyYield.Is, "drum.key_yield_pa"}, {d.ShaftDiameter.Is, "drum.shaft_diameter_m"}} {
		if !x.is {
			l.miss(x.path)
		}
	}
	if okQ && d.KeyWidth.Is && d.KeyLength.Is && d.KeyYield.Is && d.ShaftDiameter.Is {
		D, w, n, yield := float64(d.ShaftDiameter.Val), float64(d.KeyWidth.Val), float64(d.KeyLength.Val), float64(d.KeyYield.Val)
		l.in("torque at the drum, raising", q, unit.NewtonMetres)
		l.in("yield strength of the key", yield, unit.Pascals)
		l.add("working, sheared", unit.Pascals, t.phi*KeyShear(q, D, w, n), shearShare*yield, 2, 4)
		l.add("working, pressed", unit.Pascals, t.phi*KeyCrush(q, D, w, n), yield, 2, 4)
		t.addEvents(l, unit.Pascals, KeyCrush(q, D, w, n), yield, 1, 1.25)
	}
	c := l.verdict()
	tell(c, bends, change("Use a longer key or a thicker shaft."))
	return c
}
