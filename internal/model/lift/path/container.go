package path

import (
	"duskweight/internal/model/lift"
	"duskweight/internal/model/source"
	"duskweight/internal/model/unit"
)

const (
	day  = 86400.0
	year = 365 * day
)

// containerChecks sets the load against the rating of what holds the mass together, and of its eye. A bag must carry at
// most its working load and holds with room at half of it; its factor must be 5 or more and 6 or more for daily use:
// the type test of a bag for a single trip is 30 lifts, a hoist lifts it 365 times a year (ISO 21898).
func containerChecks(t *loads) []*Check {
	k := t.h.Container
	l := newLine("container", "the container of the mass", "φ·m·g ≤ working load", source.FIBC.At("factors and type test"))
	if t.m == 0 {
		l.miss(t.massMissing...)
	}
	l.in("weight of the mass", t.weight(), unit.Newtons)
	l.in("factor for jerks φ", t.phi, unit.Pieces)
	mend := change("Use a stronger container, or less mass.")
	rating, okR := k.Rating.Value()
	eye, okE := k.EyeRating.Value()
	switch k.Kind {
	case "":
		l.miss("container.kind")
		mend = always("Choose the container of the mass.")
	case lift.ContainerNoneOneBlock:
		if !okE {
			l.miss("container.eye_working_load_n")
			mend = always("The eye or lug on the block needs a rating.")
		}
	case lift.ContainerHomeSewn:
		l.miss("")
		mend = always("What a home-sewn bag carries is not known. Use a bag, drum or cage with a rating.")
	default:
		if !okR {
			l.miss("container.working_load_n")
			mend = always("Look for the working load on its label. Without a label it stays not known.")
		}
		if k.Kind != lift.ContainerBag && !okE { // a bag hangs by its own loops, which its label counts
			l.miss("container.eye_working_load_n")
			mend = mend.and(always("The eye or lug that the rope is hooked to needs a rating of its own."))
		}
	}
	if t.m > 0 && okR && k.Kind != lift.ContainerNoneOneBlock {
		l.add("working", unit.Newtons, t.phi*t.weight(), float64(rating), 1, 2)
		t.addCaught(l, t.weight(), float64(rating))
	}
	if t.m > 0 && okE {
		l.add("working, the eye on the mass", unit.Newtons, t.phi*t.weight(), float64(eye), 1, 1.25)
		t.addCaught(l, t.weight(), float64(eye))
	}
	if k.Kind == lift.ContainerBag {
		mend = t.bag(l, mend)
	}
	c := l.verdict()

	tell(c, carries, mend)
	return []*Check{c}
}

// bag adds the factor on the label and the age as cases.
func (t *loads) bag(l *line, mend remedy) remedy {
	k := t.h.Container
	f, okF := k.Factor.Value()
	age, okA := k.Age.Value()
	if !okF {
		l.miss("container.safety_factor")
	} else {
		l.add("safety factor on its label", unit.Pieces, 1, float64(f), 5, 6)
	}
	single := okF && f < 6
	outdoors := t.h.Site.Outdoors != unit.No
	switch {
	case !okA && (single || outdoors):
		l.miss("container.in_use_s")
	case okA && single:
		l.add("days in use, one lift a day, against the 30 lifts of its type test", unit.Pieces, float64(age)/day, 30, 1, 1)
		mend = mend.and(always("A bag for a single trip is tested for 30 lifts."))
	case okA && outdoors:
		l.add("years in sun and rain, of the one it may have", unit.Pieces, float64(age)/year, 1, 1, 1)
		mend = mend.and(always("Replace a bag after 12 months in the sun."))
	}
	return mend
}
