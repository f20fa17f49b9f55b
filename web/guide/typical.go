package guide

import (
	"cmp"
	"strings"

	"duskweight/internal/model"
	"duskweight/internal/model/cell"
	"duskweight/internal/model/cost"
	"duskweight/internal/model/lift"
	"duskweight/internal/model/load"
	"duskweight/internal/model/panel"
	"duskweight/internal/model/sun"
	"duskweight/internal/model/unit"
	"duskweight/web/form"
	"duskweight/web/page"
	"duskweight/web/typical"
)

// typicalPage is the list of one form's numbers for the guide.
type typicalPage struct {
	Title string
	Rows  []typicalRow
}

// typicalRow is one number: what is typical of it, what is usual, and the source or the reason for having none.
type typicalRow struct{ Label, Typical, Usual, Source string }

// typicalPages lists what is usual for every number that has a typical value, and for those without one why not.
func typicalPages(of page.Tables, sys unit.System) []typicalPage {
	h := &lift.Hoist{Mass: make([]lift.Piece, 1)}
	h.Reeving.Sheaves, h.Train.Stages, h.Lower.Loads = make([]lift.Sheave, 1), make([]lift.Stage, 1), make([]lift.DCLoad, 1)
	h.Structure.Posts, h.Holds.Holds = make([]lift.Post, 1), make([]lift.Hold, 1)
	return []typicalPage{
		{"Place and sun", typicalRows(of.Place(&model.Project{}), &model.Project{Place: sun.Place{Horizon: make([]sun.Horizon, 1)}}, sys)},
		{"Night load", typicalRows(of.Load(), &load.Load{Appliances: make([]load.Appliance, 1), Standing: make([]load.Standing, 1)}, sys)},
		{"Panels and controller", typicalRows(of.Variant(), &model.Variant{Panels: make([]panel.Array, 1)}, sys)},
		{"Lifted mass", typicalRows(of.Hoist(), h, sys)},
		{"Gears and loads by their kind", typicalByKind(sys)},
		{"Battery, iron phosphate", typicalRows(of.Cells(), &cell.Bank{Kind: cell.LFP}, sys)},
		{"Battery, sealed lead", typicalRows(of.Cells(), &cell.Bank{Kind: cell.SealedLead}, sys)},
		{"Parts and money", append(typicalRows(of.Parts(), &model.Variant{Parts: make([]cost.Part, 1)}, sys), typicalRows(of.Money(), &cost.Terms{}, sys)...)},
	}
}

func typicalRows[T any](parts []form.Part[T], t *T, sys unit.System) []typicalRow {
	var rows []typicalRow
	var visit func([]form.Part[T], string)
	visit = func(parts []form.Part[T], under string) {
		for _, p := range parts {
			switch {
			case p.Group != nil && p.Group.Shape == form.ShapeMonths: // twelve of one kind
			case p.Group != nil:
				visit(p.Group.Parts, p.Group.Title)
			case p.List != nil:
				for i := range p.List.Count(t) {
					visit(p.List.Row(i), form.SentenceCase(p.List.One))
				}
			case p.Input.Usual != nil:
				rows = append(rows, typicalRowOf(p.Input.Usual(t), under+": "+p.Input.Label, sys))
			}
		}
	}
	visit(parts, "")
	return rows
}

func typicalRowOf(u typical.Usual, label string, sys unit.System) typicalRow {
	row := typicalRow{Label: form.Retell(label, sys), Typical: "none", Usual: cmp.Or(u.Between(sys), "–"), Source: u.Why}
	if u.Why == typical.WhyStrength {
		row.Usual = "–"
	}
	if u.Typical() {
		row.Typical, row.Source = u.Quantity.Format(u.Take, sys), form.Retell(u.Source().String(), sys)
	}
	return row
}

// typicalByKind lists what is usual of a gear stage and of a load for each kind of it.
func typicalByKind(sys unit.System) []typicalRow {
	var rows []typicalRow
	for kind := range strings.SplitSeq(form.TagOf[lift.Stage]("kind").Get("enum"), "|") {
		s := lift.Stage{Kind: lift.StageKind(kind)}
		if kind != "" {
			rows = append(rows, typicalRowOf(typical.StageRatio(&s).Usually(unit.GearRatios), form.SentenceCase(form.WordFor(kind))+": ratio", sys),
				typicalRowOf(typical.StageEfficiency(&s).Usually(unit.Percents), form.SentenceCase(form.WordFor(kind))+": efficiency", sys))
		}
	}
	for _, kind := range []string{"string", "cell", "clamp"} {
		l := lift.DCLoad{Kind: lift.LoadKind(kind)}
		rows = append(rows, typicalRowOf(typical.LoadBegins(&l).Usually(unit.Voltages), form.SentenceCase(form.WordFor(kind))+": begins at", sys),
			typicalRowOf(typical.LoadSlope(&l).Usually(unit.Resistances), form.SentenceCase(form.WordFor(kind))+": slope", sys))
	}
	return rows
}
