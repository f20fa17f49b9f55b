package hoist

import (
	"strings"

	"duskweight/internal/model/lift"
	"duskweight/internal/model/unit"
	"duskweight/web/form"
	"duskweight/web/page"
	"duskweight/web/typical"
)

// usual is what is usual of the numbers of a hoist, for the guide.
func usual() []page.UsualPage {
	h := &lift.Hoist{Mass: make([]lift.Piece, 1)}
	h.Reeving.Sheaves, h.Train.Stages, h.Lower.Loads = make([]lift.Sheave, 1), make([]lift.Stage, 1), make([]lift.DCLoad, 1)
	h.Structure.Posts, h.Holds.Holds = make([]lift.Post, 1), make([]lift.Hold, 1)
	return []page.UsualPage{{Title: "Lifted mass", Rows: form.UsualsOf(HoistForm(), h)}, {Title: "Gears and loads by their kind", Rows: usualByKind()}}
}

// usualByKind lists what is usual of a gear stage and of a load for each kind of it.
func usualByKind() []form.UsualOf {
	var rows []form.UsualOf
	for kind := range strings.SplitSeq(form.TagOf[lift.Stage]("kind").Get("enum"), "|") {
		s := lift.Stage{Kind: lift.StageKind(kind)}
		if kind != "" {
			rows = append(rows, form.UsualOf{Label: form.SentenceCase(form.WordFor(kind)) + ": ratio", Usual: typical.StageRatio(&s).Usually(unit.GearRatios)},
				form.UsualOf{Label: form.SentenceCase(form.WordFor(kind)) + ": efficiency", Usual: typical.StageEfficiency(&s).Usually(unit.Percents)})
		}
	}
	for _, kind := range []string{"string", "cell", "clamp"} {
		l := lift.DCLoad{Kind: lift.LoadKind(kind)}
		rows = append(rows, form.UsualOf{Label: form.SentenceCase(form.WordFor(kind)) + ": begins at", Usual: typical.LoadBegins(&l).Usually(unit.Voltages)},
			form.UsualOf{Label: form.SentenceCase(form.WordFor(kind)) + ": slope", Usual: typical.LoadSlope(&l).Usually(unit.Resistances)})
	}
	return rows
}
