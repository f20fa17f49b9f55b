package page

import (
	"slices"

	"duskweight/internal/model"
	"duskweight/internal/model/lift/path"
	"duskweight/internal/model/unit"
	"duskweight/web/form"
)

// Retold is a result whose sentences are in the units of the page.
func Retold(r model.VariantResult, sys unit.System) model.VariantResult {
	if sys == unit.Metric {
		return r
	}
	r.Headline = form.RetellAll(r.Headline, sys)
	r.Stores = slices.Clone(r.Stores)
	for i := range r.Stores {
		st := &r.Stores[i]
		st.WhyNot = form.Retell(st.WhyNot, sys)
		if st.Hoist != nil {
			h := retoldHoist(*st.Hoist, sys)
			st.Hoist = &h
		}
		if st.Cells != nil {
			c := *st.Cells
			c.Cautions = slices.Clone(c.Cautions)
			for j := range c.Cautions {
				c.Cautions[j].Say = form.Retell(c.Cautions[j].Say, sys)
			}
			st.Cells = &c
		}
	}
	return r
}

func retoldHoist(h model.HoistResult, sys unit.System) model.HoistResult {
	h.Checks = slices.Clone(h.Checks)
	for i := range h.Checks {
		h.Checks[i].Say = form.Retell(h.Checks[i].Say, sys)
	}
	d := &h.Drive
	d.Flags, d.Lowering.Cures = slices.Clone(d.Flags), slices.Clone(d.Lowering.Cures)
	for i := range d.Flags {
		d.Flags[i].Say = form.Retell(d.Flags[i].Say, sys)
	}
	for i := range d.Lowering.Cures {
		d.Lowering.Cures[i].Say = form.Retell(d.Lowering.Cures[i].Say, sys)
	}
	d.Raising.Say, d.Lowering.Say = form.Retell(d.Raising.Say, sys), form.Retell(d.Lowering.Say, sys)
	z := &h.Hazards
	z.Cautions = slices.Clone(z.Cautions)
	for i := range z.Cautions {
		z.Cautions[i].Say = form.Retell(z.Cautions[i].Say, sys)
	}
	for _, qs := range []*[]path.Question{&z.Questions, &z.Round} {
		*qs = slices.Clone(*qs)
		for i := range *qs {
			(*qs)[i].Say = form.Retell((*qs)[i].Say, sys)
		}
	}
	if h.Direct != nil {
		x := *h.Direct
		x.Say, x.WhyNot = form.RetellAll(x.Say, sys), form.Retell(x.WhyNot, sys)
		h.Direct = &x
	}
	return h
}
