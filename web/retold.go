package web

import (
	"regexp"
	"slices"
	"strconv"
	"strings"

	"duskweight/internal/model"
	"duskweight/internal/model/lift/path"
	"duskweight/internal/model/unit"
)

// The sentences of the model name their figures in metric units. On pages in imperial units they are told again in those.

// figure is a number with a metric unit in a sentence.
var figure = regexp.MustCompile(`([−-]?\d[\d\x{00a0}]*(?:\.\d+)?)[ \x{00a0}](kg|kN|N·m|N|mm|cm²|m²|m³|m/s|m|MPa|kPa|°C)([^\pL\pN²³·/]|$)`)

// retoldUnits are the quantities of those units, with the size of one in SI.
var retoldUnits = map[string]struct {
	in  unit.Quantity
	one float64
}{
	"kg": {unit.Masses, 1}, "kN": {unit.Forces, 1000}, "N": {unit.Forces, 1}, "N·m": {unit.Torques, 1}, "mm": {unit.SmallLengths, 1e-3}, "m": {unit.Lengths, 1},
	"cm²": {unit.Openings, 1e-4}, "m²": {unit.Areas, 1}, "m³": {unit.Volumes, 1}, "m/s": {unit.Speeds, 1}, "MPa": {unit.Stresses, 1e6}, "kPa": {unit.Stresses, 1e3},
	"°C": {unit.Temperatures, 1},
}

// retell tells a sentence in the units of the page.
func retell(say string, sys unit.System) string {
	if sys == unit.Metric || !strings.ContainsAny(say, "0123456789") {
		return say
	}
	return figure.ReplaceAllStringFunc(say, func(f string) string {
		m := figure.FindStringSubmatch(f)
		v, err := strconv.ParseFloat(strings.NewReplacer(unit.Space, "", unit.Minus, "-").Replace(m[1]), 64)
		q, ok := retoldUnits[m[2]]
		if err != nil || !ok {
			return f
		}
		return q.in.Format(v*q.one, sys) + m[3]
	})
}

func retellAll(says []string, sys unit.System) []string {
	out := slices.Clone(says)
	for i := range out {
		out[i] = retell(out[i], sys)
	}
	return out
}

// retold is a result whose sentences are in the units of the page.
func retold(r model.VariantResult, sys unit.System) model.VariantResult {
	if sys == unit.Metric {
		return r
	}
	r.Headline = retellAll(r.Headline, sys)
	r.Stores = slices.Clone(r.Stores)
	for i := range r.Stores {
		st := &r.Stores[i]
		st.WhyNot = retell(st.WhyNot, sys)
		if st.Hoist != nil {
			h := retoldHoist(*st.Hoist, sys)
			st.Hoist = &h
		}
		if st.Cells != nil {
			c := *st.Cells
			c.Cautions = slices.Clone(c.Cautions)
			for j := range c.Cautions {
				c.Cautions[j].Say = retell(c.Cautions[j].Say, sys)
			}
			st.Cells = &c
		}
	}
	return r
}

func retoldHoist(h model.HoistResult, sys unit.System) model.HoistResult {
	h.Checks = slices.Clone(h.Checks)
	for i := range h.Checks {
		h.Checks[i].Say = retell(h.Checks[i].Say, sys)
	}
	d := &h.Drive
	d.Flags, d.Lowering.Cures = slices.Clone(d.Flags), slices.Clone(d.Lowering.Cures)
	for i := range d.Flags {
		d.Flags[i].Say = retell(d.Flags[i].Say, sys)
	}
	for i := range d.Lowering.Cures {
		d.Lowering.Cures[i].Say = retell(d.Lowering.Cures[i].Say, sys)
	}
	d.Raising.Say, d.Lowering.Say = retell(d.Raising.Say, sys), retell(d.Lowering.Say, sys)
	z := &h.Hazards
	z.Cautions = slices.Clone(z.Cautions)
	for i := range z.Cautions {
		z.Cautions[i].Say = retell(z.Cautions[i].Say, sys)
	}
	for _, qs := range []*[]path.Question{&z.Questions, &z.Round} {
		*qs = slices.Clone(*qs)
		for i := range *qs {
			(*qs)[i].Say = retell((*qs)[i].Say, sys)
		}
	}
	if h.Direct != nil {
		x := *h.Direct
		x.Say, x.WhyNot = retellAll(x.Say, sys), retell(x.WhyNot, sys)
		h.Direct = &x
	}
	return h
}
