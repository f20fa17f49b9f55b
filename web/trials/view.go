package trials

import (
	"fmt"
	"slices"
	"strings"

	"duskweight/internal/model"
	"duskweight/internal/model/lift"
	"duskweight/internal/model/lift/path"
	"duskweight/internal/model/reason"
	"duskweight/internal/model/trial"
	"duskweight/internal/model/unit"
	"duskweight/internal/say"
	"duskweight/web/form"
	"duskweight/web/page"
)

// trialsView is what the records come to, ready to print.
type trialsView struct {
	URL, Revision string
	Headline      string
	Why           string // the page that says what stands in the way; empty where nothing does
	Reason        string // the first reason of the judge, which the band says too
	More          []string
	Steps         []rung
	Beside        []besideRow
	Values        [][]string // as designed, as measured
	Effects       [][]string // what changes with the measured values
	MayUse        bool
	Absurd        string
	Lack          []string
	Held          []string
	Runs          [][]string
	Chart         page.ChartView
	Charted       bool
	Records       []recordRow
	Proofs        []proofView
	Fallen        string // what fell last; empty for nothing
	Owed          int    // parts to look at since then
	Form          form.FormView
	Adds, AddTo   string // the button that writes down a fall, and where it posts
}

func trialsViewOf(g model.Ground, v model.Variant, now model.VariantResult, i int, at trialsAt, f form.FormView, today reason.Day, sys unit.System) (trialsView, error) {
	h, result := *v.Stores[i].Hoist, model.HoistOf(now.Stores[i])
	m := v.Measured(i)
	hoist := model.HoistPath(i)
	out := trialsView{URL: at.url, Revision: f.Revision, Lack: say.All(m.Lack, sys), Absurd: m.Gears.Absurd.In(sys), Form: f}
	out.headline(h, result, sys)
	if result.Ready.Worse(reason.Proven) {
		out.Why = strings.Replace(at.url, "/trials/", "/hoist/", 1) + "#breaks"
	}
	out.Steps = stairsOf(result).rungs(at, hoist, f, today, sys)
	out.Held = heldLines(h.Trials.Held, result.Drive.Mass, sys)
	out.Beside = besideRows(m, sys)
	out.Records = recordRows(h.Trials, hoist, at)
	out.Proofs = proofViews(result, sys)
	out.Adds, out.AddTo = "add:"+hoist+".trials.failures", strings.TrimSuffix(at.card("failures"), "#card")
	if n := len(h.Trials.Failures); n > 0 {
		last := h.Trials.Failures[n-1]
		out.Fallen, out.Owed = strings.TrimPrefix(datedOr(last.Date)+": "+form.Clip(last.What, 120), "–: "), page.LooksOwed(result.Checks)
	}
	for _, c := range m.Changes {
		out.Values = append(out.Values, []string{c.What, changeText(c.Path, c.Was, sys), measuredText(c.Path, c.Is, sys)})
	}
	if next, ok := model.AsMeasured(v, i); ok {
		out.MayUse = len(model.CheckVariant(next)) == 0
		out.Effects = effectRows(now, g.Evaluate(next), i, sys)
	}
	for _, r := range m.Runs {
		out.Runs = append(out.Runs, []string{wayOf(r), datedOr(r.Date), page.Known(r.Mass, unit.Masses, sys), page.Known(r.Current, unit.Currents, sys), page.Known(r.PlanCurrent, unit.Currents, sys), page.Known(r.Time, unit.Durations, sys), page.Known(r.PlanTime, unit.Durations, sys)})
	}
	var err error
	out.Chart, out.Charted, err = trialsChart(m, at.url, sys)
	return out, err
}

func datedOr(s string) string {
	if s == "" {
		return "–"
	}
	return dayOf(s)
}

// headline says what stands in the way first: a fall, then a step that failed, then the next step.
func (v *trialsView) headline(h lift.Hoist, r *model.HoistResult, sys unit.System) {
	owed, falls := page.LooksOwed(r.Checks), 0
	for _, f := range h.Trials.Failures {
		if f.Shaken() {
			falls++
		}
	}
	if parts := foundDamaged(h.Trials.Seen()); len(parts) > 0 {
		v.Headline = "Hang nothing: " + strings.Join(parts, ", ") + " found damaged."
		v.More = []string{"Renew it, then choose “renewed” beside that part. Until then the plan sheet says do not hang."}
		if owed > 0 {
			v.More = append(v.More, page.Counted(owed, "part")+" still to look at.")
		}
		return
	}
	if owed > 0 {
		v.Headline = "Hang nothing yet: after the fall or shock not every part was looked at."
		v.More = []string{page.Counted(owed, "part") + " still to look at. Until then the plan sheet is not ready."}
		return
	}
	if failed := failedStep(h.Trials.Steps); failed != "" {
		v.Headline = "The step " + failed + " did not pass. Write down what moved or broke, and mend it first."
		return
	}
	v.Headline = map[string]string{"yes": "Every part is strong enough. Load the hoist step by step.", "not_known": "The plan is not ready: do only the first step, at most " + page.FirstLift(sys) + " off the ground.", "no": "Do not hang it."}[string(r.Ready)]
	if r.Ready == reason.Proven {
		v.Headline = proven(r, sys)
	}
	if r.Ready.Worse(reason.Proven) && len(r.Because) > 0 {
		v.Reason = r.Because[0].Text().In(sys)
	}
	if falls > 0 {
		v.More = append(v.More, "Every part was looked at after "+page.Counted(falls, "fall or shock")+". The load steps begin again from there.")
	}
}

// proven says up to which mass and until when the load tests of a hoist stand.
func proven(r *model.HoistResult, sys unit.System) string {
	_, until, _ := page.Proof(r.Because)
	mass := mayHang(r)
	return say.That("Proven by test up to %s, until %s. Load it step by step, up to that mass.", say.Mass(mass.Val).Down(), page.DayText(until)).In(sys)
}

// mayHang is the mass of the plan, or the mass that a load test proved where that is less.
func mayHang(r *model.HoistResult) unit.Known[unit.Mass] {
	if up, _, ok := page.Proof(r.Because); ok && up.Is && r.Ready == reason.Proven && up.Val < r.Drive.Mass.Or(up.Val) {
		return up
	}
	return r.Drive.Mass
}

// foundDamaged names what was found damaged after a fall or a shock and is not renewed yet.
func foundDamaged(failures []lift.Failure) (parts []string) {
	for _, f := range failures {
		l := f.Look
		for _, p := range []page.PairView{{Name: "rope", Value: string(l.Rope)}, {Name: "knots", Value: string(l.Knots)}, {Name: "pulleys", Value: string(l.Pulleys)}, {Name: "pins or drum", Value: string(l.Pins)}, {Name: "what holds the mass together", Value: string(l.Container)}, {Name: "base or beam", Value: string(l.Base)}} {
			if p.Value == "damaged" && !slices.Contains(parts, p.Name) {
				parts = append(parts, p.Name)
			}
		}
	}
	return parts
}

func failedStep(s lift.LoadSteps) string {
	for _, one := range s.Named() {
		if one.Step.Done == unit.No {
			return one.Name
		}
	}
	return ""
}

// heldLines say what the tests with dead weight show of the 125 % that each hold must carry.
func heldLines(tests []lift.HeldTrial, mass unit.Known[unit.Mass], sys unit.System) []string {
	var out []string
	for _, t := range tests {
		hung, okH := t.Mass.Value()
		m, okM := mass.Value()
		what := form.SentenceCase(form.OrNotKnown(form.WordFor(string(t.What))))
		switch need := 1.25 * float64(m); {
		case t.Held == unit.No:
			out = append(out, what+" did not hold. Mend it before anything hangs.")
		case t.Held != unit.Yes || !okH || !okM:
			out = append(out, what+": mass or outcome is not known, so it shows nothing.")
		case float64(hung) < need*0.99:
			out = append(out, fmt.Sprintf("%s held %s. Wanted is 125 %% of the load, %s.", what, unit.Masses.Format(float64(hung), sys), page.TestMass(unit.Mass(need), sys)))
		default:
			out = append(out, what+" held "+unit.Masses.Format(float64(hung), sys)+", 125 % of the load or more.")
		}
	}
	return out
}

// quantityAt is what a measured value of the design is shown in.
func quantityAt(at string) unit.Quantity {
	switch at {
	case "train.breakaway":
		return unit.Ratios
	case "train.stages[0].idle_torque_nm":
		return unit.SmallTorques
	case "machine.rth_winding_k_w", "machine.rth_case_k_w":
		return unit.ThermalResistances
	case "machine.tau_winding_s", "machine.tau_case_s":
		return unit.Minutes
	}
	return unit.Percents
}

func changeText(at string, v unit.Known[unit.Ratio], sys unit.System) string {
	return page.Known(v, quantityAt(at), sys)
}

func measuredText(at string, v trial.Value, sys unit.System) string {
	q := quantityAt(at)
	if !v.Sure {
		return q.Format(v.Val, sys) + ", how sure is not known"
	}
	return q.Format(v.Val, sys) + " ± " + q.Format(page.RoundTo(v.Err, 2), sys)
}

// effectRows set the plan as designed beside the plan with the measured values, where they differ.
func effectRows(was, is model.VariantResult, i int, sys unit.System) [][]string {
	var rows [][]string
	add := func(what, a, b string) {
		if a != b {
			rows = append(rows, []string{what, a, b})
		}
	}
	first := func(r model.VariantResult) string { s, _ := page.HeadlineOf(r, sys); return s }
	add("Verdict", first(was), first(is))
	add("Plan sheet", readyWord(string(was.Ready)), readyWord(string(is.Ready)))
	a, b := model.HoistOf(was.Stores[i]), model.HoistOf(is.Stores[i])
	down := map[string]string{"yes": "yes", "nudge": "only with a push", "no": "no", "": "not known"}
	add("Comes down by itself", down[string(a.Drive.Lowering.RunsBack)], down[string(b.Drive.Lowering.RunsBack)])
	add("Amps, lifting", ampsOr(a.Drive.Raising.Current, sys), ampsOr(b.Drive.Raising.Current, sys))
	add("Amps, coming down", ampsOr(a.Drive.Lowering.Current, sys), ampsOr(b.Drive.Lowering.Current, sys))
	add("One full lift gives back", page.Worked(was.Facts.OneLiftOut, sys), page.Worked(is.Facts.OneLiftOut, sys))
	before := map[string]path.Word{}
	for _, c := range a.Checks {
		before[c.ID+c.Part] = c.Word
	}
	for _, c := range b.Checks {
		if w, ok := before[c.ID+c.Part]; ok {
			add("Check: "+c.Part, page.CheckWords[w].Word, page.CheckWords[c.Word].Word)
		}
	}
	return rows
}

func ampsOr(i unit.Current, sys unit.System) string {
	if i <= 0 {
		return "–"
	}
	return unit.Currents.Format(float64(i), sys)
}

func readyWord(r string) string {
	return map[string]string{"yes": "ready", "not_known": "not ready", "proven": "proven by test", "no": "do not hang"}[r]
}

// trialsChart draws amps against mass, measured and planned.
func trialsChart(m model.Measured, url string, sys unit.System) (page.ChartView, bool, error) {
	mass, amps := page.ScaleOf(unit.Masses, sys), page.ScaleOf(unit.Currents, sys)
	lines := []page.PlotLine{{Name: "up, measured", Color: "--mass", Mark: "triangle", Unit: amps.Unit}, {Name: "up, planned", Color: "--mass", Mark: "emptyCircle", Unit: amps.Unit},
		{Name: "down, measured", Color: "--night", Mark: "diamond", Unit: amps.Unit}, {Name: "down, planned", Color: "--night", Mark: "emptyRect", Unit: amps.Unit}}
	for _, r := range m.Runs {
		k := 0
		if r.Down {
			k = 2
		}
		if kg, ok := r.Mass.Value(); ok {
			for j, amp := range []unit.Known[unit.Current]{r.Current, r.PlanCurrent} {
				if a, ok := amp.Value(); ok {
					lines[k+j].Points = append(lines[k+j].Points, [2]float64{mass.Of(float64(kg)), amps.Of(float64(a))})
				}
			}
		}
	}
	p := page.Plot{Id: "trials", Title: "Trials against plan", Say: strings.TrimSpace("Amps of the motor by mass, measured and planned. " + against(m.Runs)), X: mass.Axis("Mass"), Y: []string{amps.Axis("Motor")}}
	for _, l := range lines {
		if len(l.Points) > 0 {
			p.Lines = append(p.Lines, l)
		}
	}
	if len(p.Lines) == 0 {
		return page.ChartView{}, false, nil
	}
	v, err := p.View(url + "/records.csv")
	return v, err == nil, err
}

// against tells the last measured way up and way down beside the plan: "The last way up took 37 % more current than
// planned, and 64 % more time than planned."
func against(runs []model.TrialRun) string {
	var out []string
	for _, way := range []struct {
		down bool
		say  string
	}{{false, "The last way up"}, {true, "The last way down"}} {
		var parts []string
		for _, r := range slices.Backward(runs) {
			if r.Down != way.down {
				continue
			}
			if say := besidePlan(r.Current, r.PlanCurrent, "more current"); say != "" {
				parts = append(parts, say)
			}
			if say := besidePlan(r.Time, r.PlanTime, "more time"); say != "" {
				parts = append(parts, say)
			}
			break
		}
		if len(parts) > 0 {
			out = append(out, way.say+" took "+strings.Join(parts, ", and ")+".")
		}
	}
	return strings.Join(out, " ")
}

// besidePlan says by how much a measured value is apart from the planned one, to a hundredth; "" where either is not known. what
// begins with "more".
func besidePlan[T unit.Number](is, plan unit.Known[T], what string) string {
	if !is.Is || !plan.Is || plan.Val <= 0 {
		return ""
	}
	switch by := float64(is.Val)/float64(plan.Val) - 1; {
	case by >= 0.01:
		return unit.Rounded(100*by, 2) + unit.Space + "% " + what + " than planned"
	case by <= -0.01:
		return unit.Rounded(-100*by, 2) + unit.Space + "% " + strings.Replace(what, "more", "less", 1) + " than planned"
	}
	return "as much" + strings.TrimPrefix(what, "more") + " as planned"
}
