package path

import (
	"duskweight/internal/model/lift"
	"duskweight/internal/model/source"
	"duskweight/internal/model/unit"
)

// strength factors of the rope, each a share of the breaking load of the new rope.

// bendPoint is one row of the strength left in wire rope on a pulley of D/d rope diameters.
type bendPoint struct{ ratio, share float64 }

func bendTable() []bendPoint {
	return []bendPoint{{1, .50}, {2, .65}, {4, .75}, {6, .79}, {8, .83}, {10, .86}, {15, .89}, {20, .91}, {30, .93}, {40, .95}}
}

// BendShare is the share of strength left in a rope that bends over a pulley of D/d rope diameters: the maker's table
// for wire rope, straight lines between its rows, .95 above the last. Fibre rope is softer and loses less; for it too
// the table is used, the cautious reading.
func BendShare(ratio float64) float64 {
	rows := bendTable()
	if !(ratio > rows[0].ratio) {
		return rows[0].share * max(0, min(1, ratio))
	}
	for i := 1; i < len(rows); i++ {
		a, b := rows[i-1], rows[i]
		if ratio <= b.ratio {
			return a.share + (b.share-a.share)*(ratio-a.ratio)/(b.ratio-a.ratio)
		}
	}
	return rows[len(rows)-1].share
}

// AgeShare is the share of strength left after sun, wet and wear where the user gives none: worn .8; a year outdoors
// .8, polypropylene .5; wet nylon .85 (all from memory). Outdoors not known counts as outdoors. Of a rope of unknown
// kind it is the most that may be left.
func AgeShare(kind lift.RopeKind, outdoors bool) float64 {
	s := 0.8
	if !outdoors || kind == lift.RopeWire || kind == "" {
		return s
	}
	switch kind {
	case lift.RopePolypropylene:
		return s * 0.5
	case lift.RopeNylon:
		return s * 0.8 * 0.85
	}
	return s * 0.8
}

// KnotShare is the share of strength left at an ending, the cautious end of what is published: CI 1401 says that a knot
// may cost half, an overhand knot costs 55 %, a figure of eight about 35 %, a splice keeps 90 %; of wire a pressed sleeve
// keeps 92.5 %, clips 80 %, a hand-tucked splice 86 % (source.WireEndings): .9, .8 and .8 here. A knot in slippery high-modulus rope and a bare knot in wire count as nothing. Of a rope of unknown kind it is the
// most that may be left. The second value is false where the ending is not known.
func KnotShare(kind lift.RopeKind, ending lift.Ending) (float64, bool) {
	slippery := kind == lift.RopeWire || kind == lift.RopeHMPE
	switch ending {
	case lift.EndingSplice:
		if kind == lift.RopeWire {
			return 0.8, true
		}
		return 0.9, true
	case lift.EndingFigureEight, lift.EndingBowline, lift.EndingOtherKnot:
		if slippery {
			return 0, true
		}
		return map[lift.Ending]float64{lift.EndingFigureEight: 0.65, lift.EndingBowline: 0.5, lift.EndingOtherKnot: 0.45}[ending], true
	case lift.EndingSwaged, lift.EndingClips, lift.EndingThimbleClamp:
		switch {
		case (kind == lift.RopeWire || kind == "") && ending == lift.EndingSwaged:
			return 0.9, true
		case kind == lift.RopeWire || kind == "":
			return 0.8, true
		case kind == lift.RopeHMPE:
			return 0, true // pressed and clamped endings slip on it
		}
		return 0.45, true
	}
	return 0, false
}

// KnotRead reports whether a published source stands behind KnotShare. Clips and clamps on fibre rope have none: their
// share is for "gives way" only, until the user gives one.
func KnotRead(kind lift.RopeKind, ending lift.Ending) bool {
	pressed := ending == lift.EndingSwaged || ending == lift.EndingClips || ending == lift.EndingThimbleClamp
	return !pressed || kind == lift.RopeWire || kind == lift.RopeHMPE || kind == ""
}

// ropeBorders are the check/stop and OK borders of the safety factor: fibre 7 and 12, wire 5 and 7.
func ropeBorders(kind lift.RopeKind) (wanted, ok float64) {
	if kind == lift.RopeWire {
		return 5, 7
	}
	return 7, 12
}

// bendBorders are the borders of D/d: wire 12 and 20, fibre 4 and 8.
func bendBorders(kind lift.RopeKind) (wanted, ok float64) {
	if kind == lift.RopeWire {
		return 12, 20
	}
	return 4, 8
}

func (t *loads) age() (float64, bool) {
	if a, ok := t.h.Rope.AgeFactor.Value(); ok {
		return float64(a), true
	}
	return AgeShare(t.h.Rope.Kind, t.outdoors()), false
}

// outdoors takes the worse reading of the rope's and the site's answers.
func (t *loads) outdoors() bool { return worseYes(t.h.Rope.Outdoors, t.h.Site.Outdoors) }

// worseYes is false only where one says no and none says yes.
func worseYes(a, b unit.Answer) bool { return a == unit.Yes || b == unit.Yes || (a == "" && b == "") }

// bend is the D/d at pulley j, 0 for the drum, and whether it is known. Where it is not, the smallest that the check of
// the bending ratio lets pass stands in, so that the two lines together are complete.
func (t *loads) bend(j int) (float64, bool) {
	least, _ := bendBorders(t.h.Rope.Kind)
	d, ok := t.h.Rope.Diameter.Value()
	D := t.h.Drum.Diameter
	if j > 0 {
		D = t.pulley(j).Diameter
	}
	if !ok || !D.Is || d <= 0 {
		return least, false
	}
	return float64(D.Val) / float64(d), true
}

func ropeChecks(t *loads) []*Check {
	l := newLine("rope", "the rope", "had = breaking load · bend · age / (φ · tension)", source.CI1401.At("working load limits"))
	l.also(source.SheaveTable.At("bends"), source.FromMemory.At("share left after sun, wet and wear"))
	t.phiSource(l)
	l.miss(t.missing...)
	mbs, okM := t.h.Rope.BreakingLoad.Value()
	if !okM {
		l.miss("rope.breaking_load_n")
	}
	if t.h.Rope.Kind == "" {
		l.miss("rope.kind")
	}
	age, _ := t.age()
	if okM {
		l.in("breaking load of the new rope", float64(mbs), unit.Newtons)
	}
	l.in("share left after sun, wet and wear", age, unit.Pieces)
	l.in("factor for jerks φ", t.phi, unit.Pieces)
	if t.known() {
		t.ropeCases(l, float64(mbs), age, okM)
		t.burstCase(l)
	}
	c := l.verdict()
	mend := change("Use a rope with a higher breaking load, or less mass.")
	if !okM && t.known() {
		w, _ := ropeBorders(t.h.Rope.Kind)
		mend = always("At work it is pulled with up to %s; for that alone its label must say %s. Its ending and a runaway need more: the market list has the number.",
			heavy(t.phi*t.most()), heavy(w*t.phi*t.most()/(age*BendShare(8))))
	}
	tell(c, pulls, mend)
	return []*Check{c}
}

// ropeCases adds one case for each place where the rope bends, the drum first.
func (t *loads) ropeCases(l *line, mbs, age float64, okM bool) {
	wanted, okB := ropeBorders(t.h.Rope.Kind)
	if t.h.Rope.Kind == "" {
		wanted, okB = 5, 12
	}
	if !okM {
		return
	}
	for j := range t.up {
		T := t.greatest(j)
		if j > 0 {
			T = max(T, t.greatest(j-1))
		}
		ratio, known := t.bend(j)
		name := "over " + t.pulleyName(j)
		if j == 0 {
			name = "on the drum"
		}
		if !known {
			name += ", pulley size not known"
		}
		l.in("D/d "+name, ratio, unit.Pieces)
		l.add("working, "+name, unit.Newtons, t.phi*T, mbs*age*BendShare(ratio), wanted, okB)
	}
}

// burstCase sets the rope where it is weakest against the jerk of wires joined while it runs away: the pull at the drum, more
// at the far end by what the pulleys hold back; an event, wanted 2 on breaking.
func (t *loads) burstCase(l *line) {
	f, ok := t.burst()
	if !ok || !t.h.Rope.BreakingLoad.Is || t.down[0] <= 0 {
		return
	}
	left, miss := t.weakest()
	l.miss(miss...)
	l.add(burstCase, unit.Newtons, f*t.down[t.deadEnd()]/t.down[0], left, 2, 2.5)
}

// most is the largest static tension anywhere, N.
func (t *loads) most() float64 {
	x := 0.0
	for j := range t.up {
		x = max(x, t.greatest(j))
	}
	return x
}

// knotChecks looks at the fastened ends: the dead end, and the drum's end behind the turns that stay on, each turn of
// which takes off e^(2πμ), μ = .15 (.05 for slippery high-modulus rope).
func knotChecks(t *loads) []*Check {
	r := t.h.Rope
	l := newLine("knot", "the rope's ending", "had = breaking load · ending · age / (φ · tension at the ending)", source.CI1401.At("knots"))
	if r.Kind == lift.RopeWire {
		l.c.Source = source.WireEndings.At("table 4, terminal efficiencies")
	}
	l.also(source.FromMemory.At("share left after sun, wet and wear"), source.EulerRope.At("turns that stay on"))
	t.phiSource(l)
	l.miss(t.missing...)
	mbs, okM := r.BreakingLoad.Value()
	if !okM {
		l.miss("rope.breaking_load_n")
	}
	if r.Kind == "" {
		l.miss("rope.kind")
	}
	share, okS := t.knot()
	if !okS {
		l.miss("rope.ending")
		share = 0.9 // the best there is: enough for "gives way" only
	}
	if okS && !r.KnotFactor.Is && !KnotRead(r.Kind, r.Ending) {
		l.miss("rope.knot_factor")
	}
	age, _ := t.age()
	if okM {
		l.in("breaking load of the new rope", float64(mbs), unit.Newtons)
	}
	l.in("share left at the ending", share, unit.Pieces)
	l.in("share left after sun, wet and wear", age, unit.Pieces)
	l.in("factor for jerks φ", t.phi, unit.Pieces)
	if t.known() && okM {
		w, ok := t.knotBorders()
		cap := float64(mbs) * share * age
		l.add("working, at the far end", unit.Newtons, t.phi*t.greatest(t.deadEnd()), cap, w, ok)
		l.add("working, on the drum behind the turns that stay on", unit.Newtons, t.phi*t.up[0]/t.grip(), cap, w, ok)
	}
	c := l.verdict()
	mend := change("Splice it, or use a stronger rope.")
	if okS && share == 0 {
		mend = always("This ending counts as nothing in this rope: wire is swaged or clipped, high-modulus rope is spliced.")
	}
	tell(c, pulls, mend)
	return []*Check{c}
}

// knot is the share left at the ending: the user's own, but never more than nothing for a knot in wire or in
// high-modulus rope.
func (t *loads) knot() (float64, bool) {
	r := t.h.Rope
	share, ok := KnotShare(r.Kind, r.Ending)
	if f, is := r.KnotFactor.Value(); is && !(ok && share == 0) {
		return float64(f), true
	}
	return share, ok
}

// knotBorders: with a splice 10 is enough for OK.
func (t *loads) knotBorders() (wanted, ok float64) {
	wanted, ok = ropeBorders(t.h.Rope.Kind)
	if t.h.Rope.Kind == "" {
		wanted = 5
	}
	if t.h.Rope.Ending == lift.EndingSplice && t.h.Rope.Kind != lift.RopeWire {
		ok = 10
	}
	return wanted, ok
}
