package takes

import (
	"cmp"
	"fmt"
	"strings"

	"duskweight/internal/model"
	"duskweight/internal/model/search"
	"duskweight/internal/model/unit"
	"duskweight/web/page"
)

// seasonView is what the next season asks for: months without enough, parts at their end, the change with most effect.
type seasonView struct {
	Months []string // with nights without light
	Ends   []page.PairView
	Best   string
	Levers [][]string
	Look   string // what to look at before the first lift; empty without a hoist
	Plenty string // said where no month is short, or all are
}

// tried reports whether there is a year in which a variant can be changed and looked at.
func tried(r model.VariantResult) bool { return r.YearKnown && r.Year.Nights > 0 && r.Open.IsZero() }

// seasonOf prints the next season of a variant from its answer, and from what small changes add to it.
func seasonOf(kinds page.Kinds, v model.Variant, r model.VariantResult, levers []search.Lever, sys unit.System) seasonView {
	s := seasonView{Ends: endsOf(kinds, r, v)}
	if r.Facts.Lifts {
		s.Look = "Before the first lift of a season, look at rope, knots, pulleys, pins, bag or cage, and base, one by one. Set the mass on its blocks first."
	}
	if !r.YearKnown || r.Year.Nights == 0 {
		s.Best = "No year can be tried yet, so no month is known: " + r.WhyNoYear.In(sys) + "."
		return s
	}
	if !r.Open.IsZero() {
		s.Best = "Not known yet: " + r.Open.In(sys) + "."
		return s
	}
	for _, row := range page.NightsByMonth(r) {
		if row[3] != "0" {
			s.Months = append(s.Months, fmt.Sprintf("%s: %s of %s nights %s not full", row[0], row[3], row[2], map[bool]string{true: "is", false: "are"}[row[3] == "1"]))
		}
	}
	if r.Year.NightsServed == 0 {
		s.Months, s.Plenty = nil, "No month is enough: no night is full."
	} else if len(s.Months) == 0 {
		s.Plenty = "In the average year every night is full."
	}
	for _, l := range levers {
		s.Levers = append(s.Levers, []string{leverName(l), signed(l.Nights), unit.Energies.Format(float64(l.Energy), sys)})
	}
	s.Best = bestLever(levers, r)
	return s
}

// leverName is what was changed.
func leverName(l search.Lever) string { return cmp.Or(l.Say, leverNames[l.What]) }

var leverNames = map[string]string{"panels": "A quarter more panel", "load": "A fifth less for the lamps"}

// bestLever names the one change with most effect.
func bestLever(levers []search.Lever, r model.VariantResult) string {
	if len(levers) == 0 || r.Last.NightsFull == r.Last.Nights {
		return ""
	}
	l := levers[0]
	name := leverName(l)
	if l.Nights <= 0 {
		return "No change this small adds a full night. A large one is needed: see above."
	}
	return fmt.Sprintf("The one change with most effect: %s. It adds %s a year.", strings.ToLower(name[:1])+name[1:], page.Counted(l.Nights, "full night"))
}

func signed(n int) string {
	switch {
	case n < 0:
		return "−" + page.Itoa(-n)
	case n == 0:
		return "0"
	}
	return "+" + page.Itoa(n)
}

// endsOf lists the parts whose end is computed or was told, the first first as they stand in the design.
func endsOf(kinds page.Kinds, r model.VariantResult, v model.Variant) []page.PairView {
	var out []page.PairView
	for _, s := range r.Stores {
		k := kinds.Of(s.Kind)
		if k.Year.End == nil {
			continue
		}
		name := s.Name
		if name == "" {
			name = k.Row.Title
		}
		out = append(out, page.PairView{Name: name, Value: k.Year.End(s)})
	}
	for _, p := range v.Parts {
		if life, ok := p.Life.Value(); ok {
			out = append(out, page.PairView{Name: p.Name, Value: "replaced after " + unit.Years.Format(float64(life), unit.Metric) + " (your entry)"})
		}
	}
	return out
}
