package cells

import (
	"duskweight/internal/model"
	"duskweight/internal/model/cell"
	"duskweight/internal/model/unit"
	"duskweight/internal/say"
	"duskweight/web/form"
	"duskweight/web/page"
)

// Kind is what the pages about all stores need of batteries.
func Kind() page.Kind {
	return page.Kind{
		Row: model.CellsKind(), Add: "Add a battery",
		New:    func() model.Store { return model.Store{Cells: &cell.Bank{Name: "Battery", Kind: cell.LFP}} },
		Inputs: page.InputsOf(func(st model.Store) *cell.Bank { return st.Cells }, usual, CellsForm),
		Idea:   page.IdeaOf{Is: inNumbers},
		Year:   page.YearOf{End: end},
		Sheet:  page.SheetOf{Order: order, Set: set, Beside: beside},
	}
}

// inNumbers is what a battery is, all its blocks together: its voltage and its charge.
func inNumbers(s model.StoreResult, sys unit.System) (name, numbers string) {
	b := model.CellsOf(s).Design
	b.Voltage.Val *= unit.Voltage(b.Series.Or(1))
	b.Capacity.Val *= unit.Charge(b.Parallel.Or(1))
	return page.OrUnnamed(s.Name), page.Clauses(" ", page.IfKnown(b.Voltage, unit.Voltages, sys, "%s"), page.IfKnown(b.Capacity, unit.Charges, sys, "%s"))
}

// usual is what is usual of the numbers of a battery, for the guide.
func usual() []page.UsualPage {
	of := func(kind cell.Chemistry) []form.UsualOf { return form.UsualsOf(CellsForm(), &cell.Bank{Kind: kind}) }
	return []page.UsualPage{{Title: "Battery, iron phosphate", Rows: of(cell.LFP)}, {Title: "Battery, sealed lead", Rows: of(cell.SealedLead)}}
}

// end is when a battery is worn.
func end(s model.StoreResult) string {
	switch life := model.CellsOf(s).Life; {
	case life.Years.Is:
		return "down to 80 % of its capacity in about " + unit.Rounded(float64(life.Years.Val), 2) + " years"
	case life.Known:
		return "nothing wears it"
	}
	return "not known"
}

// set is what is set at a battery of a variant without a hoist.
func set(s model.StoreResult, sys unit.System) []page.PairView {
	c := model.CellsOf(s)
	b := c.Design
	rows := []page.PairView{{Name: form.Clip(page.OrUnnamed(s.Name), 40), Value: "gives " + page.Known(s.Capacity, unit.Energies, sys) + " from full"},
		{Name: "Fuse close to it, for direct current", Value: fuseText(*c, sys)},
		{Name: "Cable, one way", Value: cableText(*c, sys)},
		{Name: "Place of the battery", Value: form.OrNotKnown(form.WordFor(string(b.Indoors)))},
		{Name: "State of the cells", Value: form.OrNotKnown(form.WordFor(string(b.Origin)))}}
	if c.Resolved.Kind.Ion {
		rows = append(rows, page.PairView{Name: "Board that stops charging in the cold", Value: form.OrNotKnown(form.WordFor(string(b.Board)))})
	}
	if air := c.Air; air.Boost > 0 {
		rows = append(rows, page.PairView{Name: "Opening for air, low down and near the top", Value: "each " + say.Opening(air.Opening).To(2).Up().In(sys)})
	}
	return rows
}

// beside is the same in short, on the sheet of a hoist: its own page has the rest.
func beside(s model.StoreResult, sys unit.System) page.PairView {
	c := *model.CellsOf(s)
	return page.PairView{Name: "Battery", Value: form.Clip(page.OrUnnamed(s.Name), 30) + ": fuse " + fuseText(c, sys) + "; cable " + cableText(c, sys)}
}

// cableText is the cable of a battery, or the one to take.
func cableText(c model.CellsResult, sys unit.System) string {
	b := c.Design
	return page.Clauses(" of ", page.IfKnown(b.CableLength, unit.Lengths, sys, "%s"), page.OrTake(b.CableArea, c.Line.AreaTake, unit.WireAreas, sys))
}

// fuseText is the fuse of a battery, or the one to take.
func fuseText(c model.CellsResult, sys unit.System) string {
	say := page.OrTake(c.Design.Fuse, c.Line.FuseTake, unit.Currents, sys)
	if f, ok := c.Design.Fuse.Value(); ok && f < c.Line.FuseLeast && c.Line.FuseTake.Is {
		say += ", may blow; use " + page.Known(c.Line.FuseTake, unit.Currents, sys)
	}
	return say
}

// order is how a battery, its controller and the panels are joined and taken apart: the controller finds the battery's
// voltage before the sun reaches it (common practice; the controller's own paper comes first).
var order = []string{"First take the fuse out, and cover or unplug the panels.", "Connect the battery to the controller, then put the fuse in.", "Connect the lamps to the line, and the panels last.",
	"To disconnect: panels first, then lamps, the fuse, the battery. What the controller’s own paper says comes first."}
