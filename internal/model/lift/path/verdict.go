package path

import (
	"math"

	"duskweight/internal/model/source"
	"duskweight/internal/model/unit"
)

// line builds one Check: cases are added, inputs named, missing paths collected, and verdict decides the word once.
// Cases that stand beside missing inputs must be optimistic (the least demand, the most capacity), because the only
// word they can then lead to is "gives way".
type line struct {
	c     Check
	cases []Case
}

func newLine(id, part, formula string, src source.Ref) *line {
	return &line{c: Check{ID: id, Part: part, Formula: formula, Source: src}}
}

// of says where the hoist names what is checked.
func (l *line) of(path string) *line {
	l.c.Of = path
	return l
}

// add adds a load case: demand and capacity in u, and the two borders of had = capacity/demand.
func (l *line) add(name string, u unit.Measure, demand, capacity, wanted, ok float64) {
	l.cases = append(l.cases, Case{Name: name, Demand: unit.Amount{Val: demand, In: u, Is: true}, Capacity: unit.Amount{Val: capacity, In: u, Is: true},
		Wanted: unit.Ratio(wanted), OK: unit.Ratio(ok)})
}

// also names further sources of the line's numbers.
func (l *line) also(refs ...source.Ref) { l.c.Also = append(l.c.Also, refs...) }

func (l *line) in(name string, value float64, u unit.Measure) {
	if finite(value) {
		l.c.Inputs = append(l.c.Inputs, Input{name, unit.Amount{Val: value, In: u, Is: true}})
	}
}

func (l *line) miss(paths ...string) {
	for _, p := range paths {
		if !contains(l.c.Missing, p) {
			l.c.Missing = append(l.c.Missing, p)
		}
	}
}

// verdict decides: the case with the largest use leads; gives way when a use is over 1; not known when an input is
// missing; holds when every case is at or over its OK border; tight between. A capacity of nothing under a demand has
// no finite use: Had is 0, Use is not known, and the word is "gives way".
func (l *line) verdict() *Check {
	c := &l.c
	lead, over, ok := -1, false, true
	leadUse := -1.0
	for i := range l.cases {
		k := &l.cases[i]
		if !finite(k.Demand.Val) || !finite(k.Capacity.Val) {
			l.miss("") // a figure that does not compute decides nothing
			k.Demand.Val, k.Capacity.Val = 0, 0
			continue
		}
		use := useOf(*k)
		if !math.IsInf(use, 1) {
			k.Use = unit.Of(unit.Ratio(use))
		}
		over = over || use > 1+1e-12
		ok = ok && use*float64(k.OK) <= float64(k.Wanted)*(1+1e-12)
		if use > leadUse {
			lead, leadUse = i, use
		}
	}
	c.Cases = l.cases
	switch {
	case over:
		c.Word = GivesWay
	case len(c.Missing) > 0 || lead < 0:
		c.Word = NotKnown
	case ok:
		c.Word = Holds
	default:
		c.Word = Tight
	}
	c.Missing = deleteEmpty(c.Missing)
	if lead < 0 {
		return c
	}
	k := l.cases[lead]
	c.Case, c.Wanted, c.OK = k.Name, k.Wanted, k.OK
	c.Demand.In, c.Capacity.In = k.Demand.In, k.Capacity.In
	if c.Word == NotKnown {
		return c
	}
	c.Demand, c.Capacity, c.Use = k.Demand, k.Capacity, k.Use
	if had := k.Capacity.Val / k.Demand.Val; finite(had) {
		c.Had = unit.Of(unit.Ratio(had))
	}
	return c
}

// useOf is wanted/had; 0 where nothing is asked, +Inf where nothing is there to bear what is asked.
func useOf(k Case) float64 {
	d, c := k.Demand.Val, k.Capacity.Val
	switch {
	case d <= 0:
		return 0
	case c <= 0:
		return math.Inf(1)
	}
	u := float64(k.Wanted) * (d / c)
	if math.IsNaN(u) {
		return math.Inf(1)
	}
	return u
}

func finite(x float64) bool { return !math.IsNaN(x) && !math.IsInf(x, 0) }

func contains[S ~string](list []S, s S) bool {
	for _, x := range list {
		if x == s {
			return true
		}
	}
	return false
}

func deleteEmpty(list []string) []string {
	var out []string
	for _, x := range list {
		if x != "" {
			out = append(out, x)
		}
	}
	return out
}
