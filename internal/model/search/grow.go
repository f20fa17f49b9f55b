package search

import (
	"slices"

	"duskweight/internal/model"
	"duskweight/internal/model/unit"
	"duskweight/internal/say"
)

// size is one lever of a kind of which the variant has a store.
type size struct {
	model.Lever
	of *model.Kind
}

// sizes are the levers of a variant's stores: those listed before panels and load, and those after.
func sizes(v model.Variant) (early, late []size) {
	for _, k := range model.Kinds() {
		if growing(v, k) < 0 {
			continue
		}
		for _, l := range k.Levers {
			if l.Late {
				late = append(late, size{l, k})
			} else {
				early = append(early, size{l, k})
			}
		}
	}
	return early, late
}

// growing is the place of the store of a kind that grows: the first for the night, else the first; −1 for none.
func growing(v model.Variant, k *model.Kind) int {
	first := -1
	for i, s := range v.Stores {
		switch {
		case !k.Is(s):
		case s.Design().ForNight():
			return i
		case first < 0:
			first = i
		}
	}
	return first
}

// grown returns the variant with this size of its store times f; as it is where it has no such store.
func (s size) grown(v model.Variant, f float64) model.Variant {
	if i := growing(v, s.of); i >= 0 {
		v.Stores = slices.Clone(v.Stores)
		v.Stores[i] = s.Grow(v.Stores[i], f)
	}
	return v
}

// Grown returns the variant with what the lever of that name changes times f: its mass grown along with its gears, its
// battery.
func Grown(v model.Variant, what string, f float64) model.Variant {
	early, late := sizes(v)
	for _, s := range slices.Concat(early, late) {
		if s.What == what {
			v = s.grown(v, f)
		}
	}
	return v
}

// take searches the smallest factor of the size, and says what the store comes to with it, or what stops it.
func (s size) take(q *quest, have bool) Take {
	t, at := q.find(s.What, have, func(f float64) model.Variant { return s.grown(q.v, f) })
	t.Lever = &s.Lever
	if t.Found {
		t.Grown = s.Tell(at.Stores[growing(q.v, s.of)].Part, t.Factor)
		return t
	}
	asked := unit.Power(q.g.Load.MostAtNight()) + q.now.StandingPower
	for _, one := range q.now.Stores {
		if one.Kind != s.of {
			continue
		}
		if t.WhyNot, t.Open = s.Stops(one, asked); !t.WhyNot.IsZero() || !t.Open.IsZero() {
			return t
		}
	}
	t.WhyNot = say.That(s.Never)
	return t
}
