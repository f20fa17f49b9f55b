package trials

import (
	"duskweight/internal/draw"
	"duskweight/internal/model"
	"duskweight/internal/model/lift"
	"duskweight/internal/model/lift/path"
	"duskweight/internal/model/reason"
	"duskweight/internal/model/unit"
	"duskweight/web/form"
	"duskweight/web/page"
)

// How long the mass hangs still in a load step (our own judgement: long enough to walk round it once and look at each part).
const stepMinutes = 10

// shareOf is how much of the mass hangs in a load step.
var shareOf = map[string]float64{"at_25": 0.25, "at_50": 0.5, "at_75": 0.75, "at_100": 1, "at_125": 1.25}

// rung is one load step, ready to print.
type rung struct {
	Sign, Picture string
	Mass, Share   string
	Say, More     string
	Class         string    // "ok", "no", "now", "later"
	Open          string    // its card; empty where nothing may hang yet
	Form          *rungForm // where it may be done now
}

// rungForm asks whether a step passed.
type rungForm struct {
	Path        string // of the step in the variant
	Unit        string
	Mass, Today string // what the fields begin with
	Form        form.FormView
}

// stairs are the load steps of a hoist and how far they may be climbed.
type stairs struct {
	steps  lift.LoadSteps
	mass   unit.Known[unit.Mass] // all that hangs at 100 %
	ready  reason.Word
	barred bool // not even the first step
	keep   unit.Known[unit.Length]
}

func stairsOf(h *model.HoistResult) stairs {
	s := stairs{steps: h.Design.Trials.Steps, mass: mayHang(h), ready: h.Ready, barred: h.Ready == reason.No, keep: h.Hazards.KeepOut}
	for _, r := range h.Because {
		s.barred = s.barred || r.Forbids
	}
	return s
}

// step is how far one load step is.
type step struct {
	lift.NamedStep
	need   unit.Known[unit.Mass]
	passed bool
	light  bool   // it was passed with less than today's plan asks for
	before string // the step under it
	after  string // the lowest step that did not pass yet, where it is under this one
	now    bool
}

// climb says of each step whether it passed, and which is next. A step that was passed with less than today's plan asks for
// is to be done again, and so are those after it.
func (s stairs) climb() []step {
	var out []step
	open, before := "", ""
	for i, n := range s.steps.Named() {
		one := step{NamedStep: n, before: before, after: open}
		before = n.Name
		if m, ok := s.mass.Value(); ok {
			one.need = unit.Of(unit.Mass(float64(m) * shareOf[n.Key]))
		}
		hung, weighed := n.Step.Mass.Value()
		const tolerance = 0.99 // of a household scale
		one.light = n.Step.Done == unit.Yes && weighed && one.need.Is && float64(hung) < tolerance*float64(one.need.Val)
		one.passed = n.Step.Done == unit.Yes && !one.light && open == ""
		if !one.passed && open == "" {
			open = n.Name
			one.now = !s.barred && (s.ready != reason.NotKnown || i == 0)
		}
		out = append(out, one)
	}
	return out
}

// said is what a step came to.
func (s step) said(sys unit.System) string {
	text := "Not done yet"
	_, weighed := s.Step.Mass.Value()
	switch {
	case s.Step.Done == unit.No:
		text = "Did not pass"
	case s.light:
		return "Passed with " + page.Known(s.Step.Mass, unit.Masses, sys) + " only: do it again"
	case s.Step.Done == unit.Yes && s.after != "":
		return "Passed before: do it again after the step " + s.after
	case s.Step.Done == unit.Yes && !weighed:
		text = "Passed, but the mass that hung is not known"
	case s.Step.Done == unit.Yes:
		text = "Passed"
	}
	if s.Step.Date != "" && s.Step.Done != "" {
		text += ", " + dayOf(s.Step.Date)
	}
	return text
}

// rungs prints the steps. f is what every form of the page sends besides its fields.
func (s stairs) rungs(at trialsAt, hoist string, f form.FormView, today reason.Day, sys unit.System) []rung {
	var out []rung
	for _, one := range s.climb() {
		r := rung{Mass: testMass(one.need, sys), Share: one.Name, Say: one.said(sys), Class: "later", Picture: draw.Hung(shareOf[one.Key], one.passed || one.now)}
		if one.Step.Done != "" || one.Step.Note != "" {
			r.More, r.Open = one.hung(sys), at.card(one.Key)
		}
		switch {
		case one.passed:
			r.Class, r.Sign = "ok", draw.Sign(path.Holds)
		case one.Step.Done == unit.No:
			r.Class, r.Sign = "no", draw.Sign(path.GivesWay)
		default:
			r.Sign = draw.Sign(path.NotKnown)
		}
		switch {
		case one.now:
			s.offer(&r, one, hoist, f, today, sys)
		case one.before != "" && one.after != "" && one.Step.Done == "":
			r.Say = "After " + one.before
			if one.Key == "at_125" {
				r.More = "Lift it once, then remove the extra mass again."
			}
		case !one.passed && s.barred:
			r.Say = "Hang nothing now"
		case !one.passed && one.after == "" && s.ready == reason.NotKnown:
			r.Say = "Not until the plan is ready"
		}
		out = append(out, r)
	}
	return out
}

// offer gives the step that is next its form.
func (s stairs) offer(r *rung, one step, hoist string, f form.FormView, today reason.Day, sys unit.System) {
	if r.Class == "later" {
		r.Class = "now"
	}
	was := r.Say
	r.Say = "Now: hang " + r.Mass + ", " + page.FirstLift(sys) + " off the ground, for " + page.Counted(stepMinutes, "minute") + "."
	r.More = "Let nobody inside the keep-out, " + page.Known(s.keep, unit.Heights, sys) + " all round. Then lift it once, up and down."
	if !s.keep.Is {
		r.More = "Let nobody inside the keep-out. Then lift it once, up and down."
	}
	if one.Step.Done != "" {
		r.More = was + ". " + r.More
	}
	r.Form = &rungForm{Path: hoist + ".trials.steps." + one.Key, Unit: unit.Masses.Symbol(sys), Today: string(today), Form: f}
	if one.need.Is {
		r.Form.Mass = unit.Typed(unit.Masses.NumberTo(float64(one.need.Val), sys, 3, unit.Up))
	}
}

func testMass(m unit.Known[unit.Mass], sys unit.System) string {
	if v, ok := m.Value(); ok {
		return page.TestMass(v, sys)
	}
	return "not known"
}

// dayOf is a day in words; what is no day stays as it was typed.
func dayOf(typed string) string {
	if day, ok := reason.DayOf(typed); ok {
		return page.DayText(day)
	}
	return form.Clip(typed, 20)
}

// hung says what hung and what was seen.
func (s step) hung(sys unit.System) string {
	text := "Not weighed."
	if s.Step.Mass.Is {
		text = page.Known(s.Step.Mass, unit.Masses, sys) + " hung."
	}
	if s.Step.Note != "" {
		text += " “" + form.Clip(s.Step.Note, 80) + "”"
	}
	return text
}
