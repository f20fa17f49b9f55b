package web

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"duskweight/internal/draw"
	"duskweight/internal/model"
	"duskweight/internal/model/lift"
	"duskweight/internal/model/lift/path"
	"duskweight/internal/model/unit"
)

// hoistView is the answer of one hoist, ready to print.
type hoistView struct {
	Headline string
	More     []string
	Facts    []factView
	First    string // the part that gives way first, in words; empty when none does
	Flags    []flagView
	Checks   []checkView
	Up       []pairView
	Down     []pairView
	Heat     []pairView
	Trouble  []troubleView // when it goes wrong
	Direct   *directView   // the panel straight on the motor
	Motor    motorView
	URL      string // of the page; what follows the answer has its own under it
	Fits     string // where other parts are tried in it; empty for none
	MayOpen  []string
	Cures    []string
	Missing  []linkView
	Round    []questionView
	Keep     []pairView // drop and keep-out
	Cautions []string
	Order    []string
	Wiring   wiringView
	Drawing  string // SVG
}

// flagView is one thing said in words, with the field it is about.
type flagView struct {
	Say   string
	Bad   bool
	Links []linkView // to the fields it is about
}

// questionView is one of the questions with its answer.
type questionView struct {
	Ask, Answer, Say string
	Worse            bool
}

// hoistViewOf prints store i of a variant.
func hoistViewOf(r model.VariantResult, i int, sys unit.System, labels map[string]string, page string) hoistView {
	r = retold(r, sys)
	h := r.Stores[i].Hoist
	d := h.Drive
	at := model.StorePath(i, "hoist")
	v := hoistView{Facts: factsOf(r, sys), Checks: checkViews(h.Checks, at, sys, labels, page), MayOpen: d.Lowering.MayOpen, Order: h.Hazards.SwitchOrder}
	v.Headline, v.More = headlineOf(r)
	if len(v.Checks) > 0 && v.Checks[0].Class == "bad" {
		gives := " gives way first. "
		if strings.HasPrefix(v.Checks[0].Part, "The two ") {
			gives = " give way first. "
		}
		v.First = v.Checks[0].Part + gives + v.Checks[0].Say
	}
	for _, f := range d.Flags {
		v.Flags = append(v.Flags, flagView{f.Say, f.Bad, []linkView{flagLink(at, f.Path, labels, page)}})
	}
	v.Flags = saidOnce(v.Flags)
	slices.SortStableFunc(v.Flags, func(a, b flagView) int { return cmp.Compare(badness(b), badness(a)) })
	v.Up, v.Down, v.Heat, v.Trouble = raisingRows(d, h.Direct, sys), loweringRows(d, sys), heatRows(d, sys), troublesOf(h, sys)
	v.Direct, v.Motor = directViewOf(h.Direct, sys, page), motorViewOf(h, sys, at, page)
	for _, c := range d.Lowering.Cures {
		v.Cures = append(v.Cures, c.Say)
	}
	for _, m := range r.Missing {
		if model.Within(m.Path, at) {
			l := fieldLink(m.Path, labels, page)
			l.Text += ": " + m.Wants
			v.Missing = append(v.Missing, l)
		}
	}
	v.Round = roundOf(h)
	for _, c := range h.Hazards.Cautions {
		v.Cautions = append(v.Cautions, c.Say)
	}
	v.Keep = keepRows(h, sys)
	v.Wiring = wiringOf(h)
	var clashes []string
	v.Drawing, clashes = drawingOf(h, sys)
	for _, say := range clashes {
		v.Flags = append(v.Flags, flagView{Say: say, Bad: true})
	}
	v.URL = page
	return v
}

// saidOnce joins flags of the same words, one for each gear stage, say; their links are told apart by a number.
func saidOnce(flags []flagView) (out []flagView) {
	for _, f := range flags {
		i := slices.IndexFunc(out, func(o flagView) bool { return o.Say == f.Say && o.Bad == f.Bad })
		if i < 0 {
			out = append(out, f)
			continue
		}
		for _, l := range f.Links {
			if n := len(out[i].Links); l.Text == out[i].Links[0].Text {
				l.Text += " " + itoa(n+1)
			}
			out[i].Links = append(out[i].Links, l)
		}
	}
	return out
}

// badness puts what must not be before what is only said.
func badness(f flagView) int {
	if f.Bad {
		return 1
	}
	return 0
}

// flagLink leads to the field that a flag is about, to the row of a list, or to the first field of a part of the hoist.
func flagLink(at, path string, labels map[string]string, page string) linkView {
	switch path {
	case "raise":
		path = "raise.voltage_v"
	case "lower":
		path = "lower.loads"
	case "machine":
		path = "machine.k_vs_rad"
	}
	whole := model.Join(at, path)
	link := fieldLink(whole, labels, page)
	if labels[whole] == "" && strings.HasSuffix(path, "]") {
		link.URL = page + "#" + fieldID(whole) // the row
	}
	var stage int
	if n, _ := fmt.Sscanf(path, "train.stages[%d].", &stage); n == 1 && labels[whole] != "" {
		link.Text += ", stage " + itoa(stage+1)
	}
	return link
}

// roundOf are all questions round a hoist with their answers.
func roundOf(h *model.HoistResult) []questionView {
	return append(questionViews(h.Hazards.Questions), questionViews(h.Hazards.Round)...)
}

func questionViews(qs []path.Question) []questionView {
	out := make([]questionView, len(qs))
	for i, q := range qs {
		out[i] = questionView{q.Ask, q.Answer, q.Say, q.Worse}
	}
	return out
}

func raisingRows(d lift.Drive, direct *model.Direct, sys unit.System) []pairView {
	r := d.Raising
	if !r.Known {
		return []pairView{{"Lifting", "not known yet"}}
	}
	var rows []pairView
	if direct != nil && direct.Known {
		rows = []pairView{{"Figures are those of", "full sun, " + unit.Irradiances.Format(1000, sys)}}
	}
	rows = append(rows, []pairView{{"Lifts", yesNo(!r.Stalls && r.Starts)}, {"Pull of the rope at the drum", forceBoth(d.RopeUp, sys)}, {"Torque at the drum", known(d.DrumTorqueUp, unit.Torques, sys)},
		{"Gear ratio in all", known(d.Ratio, unit.GearRatios, sys)}, {"Current", unit.Currents.Format(float64(r.Current), sys)}}...)
	if r.Speed > 0 {
		rows = append(rows, pairView{"Speed of the mass", unit.SlowSpeeds.Format(float64(r.Speed), sys)}, pairView{"Time for one lift", model.Lasting(r.Time)},
			pairView{"Energy for one lift", unit.Energies.Format(float64(r.EnergyIn), sys)}, pairView{"Start: torque it has over torque it needs", unit.Rounded(float64(r.Margin), 3) + " (1.3 wanted)"})
	}
	return rows
}

func loweringRows(d lift.Drive, sys unit.System) []pairView {
	l := d.Lowering
	if l.RunsBack == "" {
		return []pairView{{"Coming down", "not known yet"}}
	}
	rows := []pairView{{"Comes down by itself", map[string]string{"yes": "yes", "nudge": "only with a push", "no": "no"}[l.RunsBack]},
		{"Pull of the rope at the drum", forceBoth(d.RopeDown, sys)}}
	if l.Current <= 0 { // it stays stuck
		return rows
	}
	rows = append(rows, pairView{"Current, whatever the lamps do", unit.Currents.Format(float64(l.Current), sys)})
	if !l.Known {
		return rows
	}
	if !l.Steady { // no speed, no time, no energy: nothing holds it
		return append(rows, pairView{"Settles", "no"}, pairView{"A path that nothing can open", yesNo(l.Shunt)})
	}
	if l.Short { // volts, time and energy are those of a longer way
		return append(rows, pairView{"Settles", "not within this travel"}, pairView{"It arrives at", "up to " + unit.Speeds.Format(float64(l.EndSpeed), sys)},
			pairView{"Motor speed", "up to " + unit.RotationSpeeds.Format(float64(l.EndRotor), sys)}, pairView{"A path that nothing can open", yesNo(l.Shunt)})
	}
	return append(rows, pairView{"Voltage that the lamps set", unit.Voltages.Format(float64(l.Voltage), sys)}, pairView{"Settles", yesNo(l.Steady)},
		pairView{"Speed of the mass", unit.SlowSpeeds.Format(float64(l.Speed), sys)}, pairView{"Motor speed", unit.RotationSpeeds.Format(float64(l.Rotor), sys)},
		pairView{"Time for one way down", model.Lasting(l.Time)}, pairView{"Power at the lamps", unit.Powers.Format(float64(l.Power), sys)},
		pairView{"Energy at the lamps", unit.Energies.Format(float64(l.EnergyOut), sys)}, pairView{"A path that nothing can open", yesNo(l.Shunt)})
}

func heatRows(d lift.Drive, sys unit.System) []pairView {
	var rows []pairView
	for _, h := range []struct {
		name string
		lift.Heat
	}{{"after one lift", d.HeatUp}, {"after one way down", d.HeatDown}} {
		if !h.Known {
			rows = append(rows, pairView{"Winding " + h.name, "not known"})
			continue
		}
		rows = append(rows, pairView{"Winding " + h.name, unit.Temperatures.Format(float64(h.Winding), sys)})
		if h.Run.Is {
			rows = append(rows, pairView{"May run for, from cold", model.Lasting(h.Run.Val)})
		} else {
			rows = append(rows, pairView{"May run for", "as long as you like"})
		}
		if n, ok := h.Row.Value(); ok {
			rows = append(rows, pairView{"Times in a row, from cold", itoa(int(n))})
		}
		switch {
		case h.Rest.Is && h.Rest.Val > 0:
			rows = append(rows, pairView{"Must rest between", model.Lasting(h.Rest.Val)})
		case h.Rest.Is:
			rows = append(rows, pairView{"Must rest between", "needs no rest"})
		}
	}
	return rows
}

func keepRows(h *model.HoistResult, sys unit.System) []pairView {
	z := h.Hazards
	keep := known(z.KeepOut, unit.Lengths, sys)
	if z.AtLeast && z.KeepOut.Is {
		keep = "at least " + keep + ": a size is missing"
	}
	rows := []pairView{{"Keep out, all round", keep}, {"Circle under the mass", known(z.DropCircle, unit.Lengths, sys)}, {"If the frame falls over", known(z.ToppleRadius, unit.Lengths, sys)},
		{"A breaking rope whips", known(z.RecoilLine, unit.Lengths, sys)}, {"How it comes down without power", z.ComesDown}}
	if z.UnderFloor != "" {
		rows = append(rows, pairView{"Under the floor", z.UnderFloor})
	}
	return rows
}

func forceBoth(f unit.Known[unit.Force], sys unit.System) string {
	n, ok := f.Value()
	if !ok {
		return "not known"
	}
	first, beside := loadText(unit.Of(unit.Ratio(n)), "N", sys)
	if beside != "" {
		beside = " (" + beside + ")"
	}
	return first + beside
}

func yesNo(b bool) string {
	if b {
		return "yes"
	}
	return "no"
}

// drawingOf draws the hoist as SVG.
func drawingOf(h *model.HoistResult, sys unit.System) (svg string, clashes []string) {
	var b strings.Builder
	scene := draw.Make(draw.Plan{
		Hoist: h.Design, Drive: h.Drive, Checks: h.Checks, KeepOut: h.Hazards.KeepOut,
		Length: func(l unit.Length) string { return lengthText(l, sys) },
		Mass:   func(m unit.Mass) string { return unit.Masses.Format(float64(m), sys) },
	})
	if err := draw.SVG(scene, &b); err != nil {
		return "", nil // a strings.Builder takes everything
	}
	return b.String(), scene.Clashes
}

// lengthText gives a length in the unit that its size suits.
func lengthText(l unit.Length, sys unit.System) string { return lengthUnit(l).Format(float64(l), sys) }

// lengthUnit is the quantity that a length is told as: in millimetres under a metre.
func lengthUnit(l unit.Length) unit.Quantity {
	if l < 1 && l > -1 {
		return unit.SmallLengths
	}
	return unit.Lengths
}
