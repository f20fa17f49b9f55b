package cells

import (
	"duskweight/internal/model"
	"duskweight/internal/model/unit"
	"duskweight/internal/say"
	"duskweight/web/form"
	"duskweight/web/page"
)

// cellsView is the answer of one battery, ready to print.
type cellsView struct {
	Headline string
	More     []string
	Facts    []page.FactView
	Against  page.ReasonsView
	Flags    []page.FlagView
	Year     []page.FigureRow
	Life     []page.FigureRow
	Line     []page.FigureRow
	Air      []page.FigureRow
	Sizing   []page.FigureRow
	NoSizing form.LinkView // where the days without sun are asked for
	Differ   []string
	Typical  []typicalView
	Missing  []form.LinkView
}

// typicalView is one value taken from the kind of cells.
type typicalView struct {
	Link          form.LinkView
	Value, Source string
}

func cellsViewOf(r model.VariantResult, i int, sys unit.System, labels map[string]string, here string) cellsView {
	st := r.Stores[i]
	c := model.CellsOf(st)
	v := cellsView{Facts: page.FactsOf(r, sys)}
	v.Headline, v.More = page.HeadlineAndGiven(r, sys)
	for _, f := range c.Cautions {
		flag := page.FlagView{Say: f.Say.In(sys), Bad: f.Bad}
		if f.Path != "" {
			flag.Links = []form.LinkView{page.FieldLink(model.CellsPath(i)+"."+f.Path, labels, here)}
		}
		v.Flags = append(v.Flags, flag)
	}
	if st.WhyNot != "" {
		v.Flags = append([]page.FlagView{{Say: st.WhyNot}}, v.Flags...)
	}
	at := model.CellsPath(i)
	v.Year, v.Life = cellsYear(st, sys), cellsLife(c, sys)
	if st.InYear {
		v.Line = lineRows(c, sys)
		for _, f := range c.Line.Flags {
			v.Flags = append(v.Flags, page.FlagView{Say: f.Say.In(sys), Bad: f.Bad})
		}
	}
	v.Air = airRows(c, sys)
	if c.SizingSet {
		v.Sizing, v.Differ = sizingRows(c.Sizing, sys), say.All(c.Differ, sys)
	} else if st.WhyNot == "" {
		v.NoSizing = page.FieldLink(at+".autonomy_days", labels, here)
	}
	for _, t := range c.Resolved.Typical {
		v.Typical = append(v.Typical, typicalView{page.FieldLink(at+"."+t.Path, labels, here), cellsValue(t.Path, t.Value, sys), t.Source.String()})
	}
	for _, m := range c.Line.Missing {
		l := page.FieldLink(at+"."+m.Path, labels, here)
		l.Text += ": " + m.Wants
		v.Missing = append(v.Missing, l)
	}
	for _, m := range r.Missing {
		if model.Within(m.Path, at) {
			l := page.FieldLink(m.Path, labels, here)
			l.Text += ": " + m.Wants.In(sys)
			v.Missing = append(v.Missing, l)
		}
	}
	return v
}

// cellsValue prints a typical value in the unit of its field.
func cellsValue(path string, v float64, sys unit.System) string {
	switch path {
	case "usable_depth", "round_trip", "charge_efficiency", "discharge_efficiency", "leak_per_month", "cycle_life_depth":
		return unit.Percents.Format(v, sys)
	case "charge_min_c", "charge_max_c":
		return unit.Temperatures.Format(v, sys)
	case "calendar_life_s":
		return unit.Years.Format(v, sys)
	case "rated_time_s":
		return unit.Hours.Format(v, sys)
	case "charge_rate_per_h", "draw_rate_per_h":
		return unit.PerHours.Format(v, sys)
	case "standing_w":
		return unit.Powers.Format(v, sys)
	}
	return unit.Rounded(v, 3)
}
