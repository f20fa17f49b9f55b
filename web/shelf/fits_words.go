package shelf

import (
	"reflect"
	"strings"

	"duskweight/internal/model"
	"duskweight/internal/model/lift"
	"duskweight/internal/model/search"
	"duskweight/internal/model/unit"
	"duskweight/web/form"
	"duskweight/web/page"
)

// partsSaid names the parts of a combination that come from the shelf; of rope and pulleys only where several kinds lie there.
func partsSaid(c model.Combination, s model.Shelf) string {
	return named(c, s, stagesSaid(c.Stages, s))
}

// briefly names the same with more than two kinds of stage as how many there are; gearsSaid names them then.
func briefly(c model.Combination, s model.Shelf) string {
	stages := stagesSaid(c.Stages, s)
	if len(stages) > 2 {
		stages = []string{page.Counted(len(c.Stages), "stage")}
	}
	return named(c, s, stages)
}

func named(c model.Combination, s model.Shelf, stages []string) string {
	var names []string
	if c.Motor != model.Own {
		names = append(names, nameOr(s.Motors[c.Motor].Name, "Motor", c.Motor))
	}
	names = append(names, stages...)
	if c.Drum != model.Own {
		names = append(names, nameOr(s.Drums[c.Drum].Name, "Drum", c.Drum))
	}
	if c.Rope != model.Own && len(s.Ropes) > 1 {
		names = append(names, nameOr(s.Ropes[c.Rope].Name, "Rope", c.Rope))
	}
	if c.Pulley != model.Own && len(s.Pulleys) > 1 {
		names = append(names, nameOr(s.Pulleys[c.Pulley].Name, "Pulley", c.Pulley))
	}
	if len(names) == 0 {
		return "The hoist's own parts"
	}
	return strings.Join(names, ", ")
}

// stagesSaid names the stages from the motor on, those that follow on each other together: "2 × Planetary 5:1".
func stagesSaid(stages []int, s model.Shelf) (names []string) {
	for i := 0; i < len(stages); {
		alike := 1
		for i+alike < len(stages) && stages[i+alike] == stages[i] {
			alike++
		}
		name := nameOr(s.Stages[stages[i]].Name, "Stage", stages[i])
		if alike > 1 {
			name = page.Itoa(alike) + " × " + name
		}
		names = append(names, name)
		i += alike
	}
	return names
}

// gearsSaid is the whole ratio, the stages where they are asked for and the name only counts them, and in how many other orders
// they do too.
func gearsSaid(f search.Fit, s model.Shelf, stages bool) string {
	say := ""
	if r, ok := f.Ratio.Value(); ok {
		say = unit.GearRatios.Format(float64(r), unit.Metric) + " : 1"
	}
	if names := stagesSaid(f.Stages, s); stages && len(names) > 2 {
		say += " by " + strings.Join(names, "; ")
	}
	if f.Orders > 0 {
		say += "; also in " + page.Counted(f.Orders, "other order")
	}
	return say
}

// timesSaid is how much of what it may carry a part carries.
func timesSaid(use unit.Known[unit.Ratio]) string {
	if u, ok := use.Value(); ok {
		return unit.Rounded(float64(u), 2) + " ×"
	}
	return "not known"
}

// whySaid is why a combination nearly does.
func whySaid(m search.Miss, sys unit.System) string {
	say := strings.TrimSuffix(m.Why.In(sys), ".")
	if u, ok := m.Use.Value(); ok {
		say += ", " + unit.Rounded(float64(u), 2) + " times what it may carry"
	}
	return form.Sentence(say)
}

// curesSaid are the cures of a near miss, each alone.
func curesSaid(m search.Miss, sys unit.System) (out []string) {
	for _, c := range m.Cures {
		out = append(out, cureSaid(c, sys))
	}
	return out
}

// cureWords are a cure by what changes; %to and %from stand for the value that cures and that there is, %nth for its place.
var cureWords = map[search.What]string{
	search.WhatMass:     "hang %to in place of %from.",
	search.WhatVolts:    "feed the motor with %to in place of %from.",
	search.WhatLimit:    "a supply that gives %to in place of %from.",
	search.WhatLoad:     "a resistor of %to in place of %from, number %nth in the list of loads.",
	search.WhatTravel:   "a travel of %to in place of %from.",
	search.WhatDrum:     "a drum of %to across in place of %from.",
	search.WhatWidth:    "a drum %to wide in place of %from.",
	search.WhatShaft:    "a drum shaft of %to in place of %from.",
	search.WhatPin:      "a cross pin of %to in place of %from.",
	search.WhatKey:      "a key %to long in place of %from.",
	search.WhatRopeLong: "%to of rope in place of %from.",
	search.WhatRope:     "a rope whose label says %to or more, in place of %from.",
	search.WhatPulley:   "a pulley whose label says %to or more, in place of %from.",
	search.WhatRatio:    "%to : 1 in place of %from : 1 in stage %nth, counted from the motor.",
	search.WhatTeeth:    "teeth %to wide in place of %from in stage %nth, counted from the motor.",
	search.WhatGear:     "a stage %nth, counted from the motor, whose label says %to or more, in place of %from.",
	search.WhatLead:     "a worm with a lead angle of %to in place of %from in stage %nth.",
}

func cureSaid(c search.Cure, sys unit.System) string {
	to := c.Of.Format(c.To, sys)
	if c.Buy {
		to = c.Of.FormatTo(c.To, sys, 3, unit.Up)
	}
	return strings.NewReplacer("%to", to, "%from", c.Of.Format(c.From, sys), "%nth", page.Itoa(c.Nth+1)).Replace(cureWords[c.What])
}

// sameParts reports whether two hoists have the same motor, gears, drum, rope and pulleys.
func sameParts(a, b lift.Hoist) bool {
	a.Machine.I0WithGear, b.Machine.I0WithGear = "", ""
	return reflect.DeepEqual(a.Machine, b.Machine) && reflect.DeepEqual(a.Train.Stages, b.Train.Stages) && a.Drum == b.Drum && a.Rope == b.Rope && reflect.DeepEqual(a.Reeving.Sheaves, b.Reeving.Sheaves)
}

// leftWords say what is wanting of a part, by the end of the path.
var leftWords = map[string]string{
	"r_ohm": "its resistance, or its current with the shaft held", "i0_a": "its current without load", "k_vs_rad": "its machine constant, or its speed without load",
	"ratio": "its ratio", "efficiency": "its efficiency", "diameter_m": "its diameter",
}

// left says which parts were left out, what is wanting of each, and where to fill it in.
func (a fitsAsked) left(list []search.Left) (out []leftView) {
	s, at := a.project.Value.Shelf, page.ProjectURL(a.project.ID)+"/shelf"
	labels := form.Form[model.Project]{Parts: form.Within("shelf", func(p *model.Project) *model.Shelf { return &p.Shelf }, ShelfForm()...)}.Labels(a.project.Value)
	for _, l := range list {
		v := leftView{Say: spareName(s, l.List, l.At) + " is left out: "}
		if l.List == "pulleys" {
			v.Say += "there are " + page.Itoa(int(s.Pulleys[l.At].Count.Or(1))) + ", and the rope of this hoist passes " + page.Itoa(model.PulleysOf(a.at.Variant.Value.HoistAt(a.at.I).Reeving)) + "."
		} else {
			v.Say += form.Sentence(wantingSaid(l.Wants))
		}
		for _, path := range l.Wants {
			v.Links = append(v.Links, form.LinkView{Text: labels[path], URL: page.FieldURL(at, path)})
		}
		out = append(out, v)
	}
	return out
}

// wantingSaid says what is not known: "its ratio and its efficiency are not known".
func wantingSaid(paths []string) string {
	var names []string
	for _, p := range paths {
		name := leftWords[p[strings.LastIndex(p, ".")+1:]]
		if name == "" {
			name = "one of its numbers"
		}
		names = append(names, name)
	}
	switch len(names) {
	case 0:
		return "too little is known of it"
	case 1:
		return names[0] + " is not known"
	}
	return strings.Join(names[:len(names)-1], "; ") + " and " + names[len(names)-1] + " are not known"
}

// spareName is the name of a part on the shelf.
func spareName(s model.Shelf, list string, i int) string {
	switch list {
	case "motors":
		return nameOr(s.Motors[i].Name, "Motor", i)
	case "stages":
		return nameOr(s.Stages[i].Name, "Stage", i)
	case "drums":
		return nameOr(s.Drums[i].Name, "Drum", i)
	case "ropes":
		return nameOr(s.Ropes[i].Name, "Rope", i)
	case "panels":
		return nameOr(s.Panels[i].Name, "Panel", i)
	case "batteries":
		return nameOr(s.Cells[i].Name, "Battery", i)
	}
	return nameOr(s.Pulleys[i].Name, "Pulley", i)
}
