package web

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
)

// typicalPage is the list of one form's numbers for the guide.
type typicalPage struct {
	Title string
	Rows  []typicalRow
}

// typicalRow is one number: what is typical of it, what is usual, and the source or the reason for having none.
type typicalRow struct{ Label, Typical, Usual, Source string }

// typicalPages lists what is usual for every number that has a typical value, and for those without one why not.
func typicalPages(of Tables, sys unit.System) []typicalPage {
	h := &lift.Hoist{Mass: make([]lift.Piece, 1)}
	h.Reeving.Sheaves, h.Train.Stages, h.Lower.Loads = make([]lift.Sheave, 1), make([]lift.Stage, 1), make([]lift.DCLoad, 1)
	h.Structure.Posts, h.Holds.Holds = make([]lift.Post, 1), make([]lift.Hold, 1)
	return []typicalPage{
		{"Place and sun", typicalRows(of.Place(&model.Project{}), &model.Project{Place: sun.Place{Horizon: make([]sun.Horizon, 1)}}, sys)},
		{"Night load", typicalRows(of.Load(), &load.Load{Appliances: make([]load.Appliance, 1), Standing: make([]load.Standing, 1)}, sys)},
		{"Panels and controller", typicalRows(of.Variant(), &model.Variant{Panels: make([]panel.Array, 1)}, sys)},
		{"Lifted mass", typicalRows(of.Hoist(), h, sys)},
		{"Gears and loads by their kind", typicalByKind(sys)},
		{"Battery, iron phosphate", typicalRows(of.Cells(), &cell.Bank{Kind: "lfp"}, sys)},
		{"Battery, sealed lead", typicalRows(of.Cells(), &cell.Bank{Kind: "sealed_lead"}, sys)},
		{"Parts and money", append(typicalRows(of.Parts(), &model.Variant{Parts: make([]cost.Part, 1)}, sys), typicalRows(of.Money(), &cost.Terms{}, sys)...)},
	}
}

func typicalRows[T any](parts []part[T], t *T, sys unit.System) []typicalRow {
	var rows []typicalRow
	var visit func([]part[T], string)
	visit = func(parts []part[T], under string) {
		for _, p := range parts {
			switch {
			case p.group != nil && p.group.shape == shapeMonths: // twelve of one kind
			case p.group != nil:
				visit(p.group.parts, p.group.title)
			case p.list != nil:
				for i := range p.list.count(t) {
					visit(p.list.row(i), sentenceCase(p.list.one))
				}
			case p.input.usual != nil:
				rows = append(rows, typicalRowOf(p.input.usual(t), under+": "+p.input.label, sys))
			}
		}
	}
	visit(parts, "")
	return rows
}

func typicalRowOf(u usual, label string, sys unit.System) typicalRow {
	row := typicalRow{Label: retell(label, sys), Typical: "none", Usual: cmp.Or(u.between(sys), "–"), Source: u.why}
	if u.why == whyStrength {
		row.Usual = "–"
	}
	if u.typical() {
		row.Typical, row.Source = u.quantity.Format(u.take, sys), retell(u.source().String(), sys)
	}
	return row
}

// typicalByKind lists what is usual of a gear stage and of a load for each kind of it.
func typicalByKind(sys unit.System) []typicalRow {
	var rows []typicalRow
	for kind := range strings.SplitSeq(tagOf[lift.Stage]("kind").Get("enum"), "|") {
		s := lift.Stage{Kind: kind}
		if kind != "" {
			rows = append(rows, typicalRowOf(stageRatio(&s).usually(unit.GearRatios), sentenceCase(wordFor(kind))+": ratio", sys),
				typicalRowOf(stageEfficiency(&s).usually(unit.Percents), sentenceCase(wordFor(kind))+": efficiency", sys))
		}
	}
	for _, kind := range []string{"string", "cell", "clamp"} {
		l := lift.DCLoad{Kind: kind}
		rows = append(rows, typicalRowOf(loadBegins(&l).usually(unit.Voltages), sentenceCase(wordFor(kind))+": begins at", sys),
			typicalRowOf(loadSlope(&l).usually(unit.Resistances), sentenceCase(wordFor(kind))+": slope", sys))
	}
	return rows
}
