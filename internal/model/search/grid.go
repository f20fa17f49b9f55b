package search

import (
	"math"
	"slices"

	"duskweight/internal/model"
	"duskweight/internal/model/cost"
	"duskweight/internal/model/panel"
	"duskweight/internal/model/unit"
)

// grid is what is tried of a variant.
type grid struct {
	ground model.Ground
	v      model.Variant
	base   int // common divisor of the numbers of strings: whole strings are added, in the proportion in which they are
	total  int // panels
	owners []int

	counted, sized int // places of the stores that change; −1 for none
	panels         []int
	blocks         []int
	factors        []float64
	tilts          []turn
}

// turn is one tilt that is tried.
type turn struct {
	angle  unit.Angle
	turned bool
}

// mostCounts is how many numbers of panels and of blocks are tried.
const mostCounts = 12

// gridOf says what is tried of a variant whose own year is now.
func gridOf(g model.Ground, v model.Variant, now model.VariantResult) *grid {
	t := &grid{ground: g, v: v, counted: -1, sized: -1, blocks: []int{0}, factors: []float64{1}, owners: model.Owners(v, now)}
	for _, a := range v.Panels {
		n := int(a.Count.Or(0))
		t.total += n
		if n > 0 {
			t.base = divisor(t.base, stringsOf(a, n))
		}
	}
	if t.total == 0 {
		return t
	}
	for _, n := range counts(t.base, 3*t.base) {
		t.panels = append(t.panels, t.total/t.base*n)
	}
	t.stores()
	t.turns()
	return t
}

// stringsOf is the number of strings of an array, or its panels where it is not known how they are joined.
func stringsOf(a panel.Array, n int) int {
	per, known := a.InSeries()
	if !known || per < 1 || n%per != 0 {
		per = 1
	}
	return divisor(n/per, int(a.Strings.Or(0)))
}

func divisor(a, b int) int {
	for b != 0 {
		a, b = b, a%b
	}
	return a
}

// counts are at most twelve numbers from 1 to most, evenly spread, now among them.
func counts(now, most int) (out []int) {
	n := min(most, mostCounts)
	near := 0
	for i := 1; i <= n; i++ {
		out = append(out, int(math.Round(float64(i*most)/float64(n))))
		if last := len(out) - 1; math.Abs(float64(out[last]-now)) < math.Abs(float64(out[near]-now)) {
			near = last
		}
	}
	out[near] = now
	return out
}

// stores finds the store that changes by its blocks and the one that changes by its size: of each kind the one that grows where
// it is for the night.
func (t *grid) stores() {
	for _, k := range model.Kinds() {
		i := growing(t.v, k)
		if i < 0 || !t.v.Stores[i].Design().ForNight() {
			continue
		}
		switch {
		case k.Counted != nil && t.counted < 0:
			t.counted = i
			n, step := k.Counted.Blocks(t.v.Stores[i])
			t.blocks = nil
			for _, strings := range counts(n/step, max(mostCounts, min(3*n/step, 100))) {
				t.blocks = append(t.blocks, step*strings)
			}
		case k.Counted == nil && t.sized < 0:
			t.sized, t.factors = i, []float64{0, 0.5, 1, 2}
		}
	}
}

// turns are the tilts that are tried: as it is, the latitude and 15° to each side of it, and upright.
func (t *grid) turns() {
	own := t.v.Panels[0].Tilt.Val
	same := !slices.ContainsFunc(t.v.Panels, func(a panel.Array) bool { return a.TiltBy != nil || a.Tilt.Val != own })
	t.tilts = []turn{{own, false}}
	at := math.Abs(float64(t.ground.Sky.Geometry.Latitude))
	const side, upright = 15 * math.Pi / 180, math.Pi / 2
	for _, x := range []float64{at - side, at, at + side, upright} {
		x = min(max(0, x), upright)
		there := func(o turn) bool { return math.Abs(float64(o.angle)-x) < 1e-6 && (o.turned || same) }
		if !slices.ContainsFunc(t.tilts, there) {
			t.tilts = append(t.tilts, turn{unit.Angle(x), true})
		}
	}
}

// now is the variant as it is.
func (t *grid) now() Choice {
	c := Choice{Panels: t.total, Factor: 1, Tilt: t.tilts[0].angle}
	if t.counted >= 0 {
		c.Blocks, _ = t.countedBy().Blocks(t.v.Stores[t.counted])
	}
	return c
}

func (t *grid) countedBy() *model.Counted { return t.v.Stores[t.counted].Kind().Counted }

// has reports whether the grid has a choice.
func (t *grid) has(c Choice) bool {
	return slices.Contains(t.panels, c.Panels) && slices.Contains(t.blocks, c.Blocks) && slices.Contains(t.factors, c.Factor) &&
		slices.Contains(t.tilts, turn{c.Tilt, c.Turned})
}

// variant is the variant with a choice. Panels grow in whole strings, and with them what is rated for them: the controller and
// the cross-section of their cable. Parts are bought by count.
func (t *grid) variant(c Choice) model.Variant {
	v := t.v
	f := float64(c.Panels) / float64(t.total)
	v.Panels = slices.Clone(v.Panels)
	for i := range v.Panels {
		a := &v.Panels[i]
		a.Count.Val = unit.Count(math.Round(float64(a.Count.Val) * f))
		a.Strings.Val = unit.Count(math.Round(float64(a.Strings.Val) * f))
		a.CableArea.Val *= unit.Area(f)
		if c.Turned {
			a.Tilt, a.TiltBy = unit.Of(c.Tilt), nil
		}
	}
	v.Controller.Power.Val *= unit.Power(f)
	v.Controller.MaxCharge.Val *= unit.Current(f)
	v.Controller.MaxInputA.Val *= unit.Current(f)
	v.Stores = slices.Clone(v.Stores)
	if t.counted >= 0 {
		v.Stores[t.counted] = t.countedBy().With(v.Stores[t.counted], c.Blocks)
	}
	v.Parts = t.parts(c)
	if t.sized >= 0 && c.Factor > 0 && c.Factor != 1 {
		v.Stores[t.sized] = v.Stores[t.sized].Kind().Levers[0].Grow(v.Stores[t.sized], c.Factor)
	}
	if t.sized >= 0 && c.Factor == 0 {
		v.Stores = slices.Delete(v.Stores, t.sized, t.sized+1)
	}
	return v
}

// owner is the store for which alone a part is on the list; −1 where it is not known.
func (t *grid) owner(i int) int {
	if t.owners[i] < 0 && t.v.Parts[i].Of == cost.OfStore && len(t.v.Stores) == 1 {
		return 0
	}
	return t.owners[i]
}

// times is how many times a part of the list is bought with a choice, and whether that is a number of pieces.
func (t *grid) times(i int, c Choice) (f float64, pieces bool) {
	p := t.v.Parts[i]
	grows := func(at int) bool { return slices.Contains(t.v.Stores[at].Kind().Lines, p.As) }
	switch at := t.owner(i); {
	case p.Of == cost.OfPanel:
		return float64(c.Panels) / float64(t.total), p.As == cost.AsPanel
	case at >= 0 && at == t.sized && c.Factor == 0:
		return 0, true
	case at >= 0 && at == t.sized && grows(at):
		return c.Factor, false
	case at >= 0 && at == t.counted && grows(at):
		return float64(c.Blocks) / float64(t.now().Blocks), true
	}
	return 1, true
}

// parts is the list of parts with a choice: more pieces where that comes out even, else a price in proportion.
func (t *grid) parts(c Choice) (out []cost.Part) {
	for i, p := range t.v.Parts {
		f, pieces := t.times(i, c)
		if f == 0 {
			continue
		}
		n := float64(p.Count.Or(1)) * f
		if pieces && n == math.Round(n) {
			if f != 1 {
				p.Count = unit.Of(unit.Count(n))
			}
		} else {
			for _, price := range []*unit.Known[unit.Money]{&p.Price, &p.Low, &p.High, &p.Upkeep} {
				price.Val *= unit.Money(f)
			}
		}
		out = append(out, p)
	}
	return out
}

// origins are those of the variant after a choice: what a store had that is left out is gone, and what the search set is marked.
func (t *grid) origins(c Choice) model.Origins {
	o := model.Origins{}
	for path, origin := range t.v.Origins {
		o[path] = origin
	}
	for i := len(t.v.Parts) - 1; i >= 0; i-- {
		if f, _ := t.times(i, c); f == 0 {
			o = o.Without("parts", i)
		}
	}
	if t.sized >= 0 && c.Factor == 0 {
		o = o.Without("stores", t.sized)
	}
	return o
}

// Lack is a part that has no price, or that the list does not have at all, or another input of the variant without which no
// cost is known.
type Lack struct {
	Part int     // its place in the list; −1 where it is not there
	As   cost.As // what is not there
	Path string  // the input; empty where a part is missing
}

// lacks are what keeps the cost of the plans from being known.
func (t *grid) lacks() (out []Lack) {
	for i, p := range t.v.Parts {
		if !p.Price.Is {
			out = append(out, Lack{Part: i})
		}
	}
	if !slices.ContainsFunc(t.v.Parts, func(p cost.Part) bool { return p.Of == cost.OfPanel && p.As == cost.AsPanel }) {
		out = append(out, Lack{Part: -1, As: cost.AsPanel})
	}
	for _, at := range []int{t.counted, t.sized} {
		if at < 0 {
			continue
		}
		lines, listed := t.v.Stores[at].Kind().Lines, false
		for i, p := range t.v.Parts {
			listed = listed || t.owner(i) == at && slices.Contains(lines, p.As)
		}
		if !listed && len(lines) > 0 {
			out = append(out, Lack{Part: -1, As: lines[0]})
		}
	}
	if path := t.v.Backup.Unpriced(); path != "" {
		out = append(out, Lack{Part: -1, Path: path})
	}
	return out
}
