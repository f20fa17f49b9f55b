package page

import (
	"slices"
	"strconv"
	"strings"

	"duskweight/internal/model"
	"duskweight/internal/model/lift/path"
	"duskweight/internal/model/unit"
	"duskweight/internal/say"
	"duskweight/web/form"
)

// Results are printed here once and shown by the pages: strings ready to read, nothing computed in a template.

// HowView is what stands behind "how": formula, inputs with units, source.
type HowView struct {
	Formula string
	Inputs  []PairView
	Source  string
	Also    []string // further sources of its numbers
	Topic   string   // page of the guide
}

// PairView is a name and a value ready to print.
type PairView struct{ Name, Value string }

// FigureRow is one figure with what stands behind it.
type FigureRow struct {
	ID, Name, Value string
	How             HowView
}

// FactView is one large figure.
type FactView struct {
	ID, Label, Value, Note string
	How                    *HowView
}

// CheckView is one line of "what breaks first".
type CheckView struct {
	ID                string
	Part, Case        string
	Pulls, PullsSI    string
	May, MaySI        string
	Use               string
	Over              bool
	Counted           bool    // pieces: so many are wanted, so many are there
	Bar               float64 // share of the bar that is filled, 0 … 1
	Sign, Word, Class string
	Say               string
	How               HowView
	Cases             [][]string
	Missing           []form.LinkView
}

var CheckWords = map[path.Word]struct{ sign, Word, class string }{
	path.GivesWay: {"✕", "gives way", "bad"},
	path.Tight:    {"!", "tight", "tight"},
	path.Holds:    {"✓", "strong enough", "good"},
	path.NotKnown: {"?", "not known", "unk"},
}

// CheckViews prints the checks of the hoist at one place of its variant.
func CheckViews(checks []path.Check, at string, sys unit.System, labels map[string]string, hoistURL string) []CheckView {
	out := make([]CheckView, len(checks))
	for i, c := range checks {
		w := CheckWords[c.Word]
		v := CheckView{ID: c.ID, Part: form.SentenceCase(c.Part), Case: c.Case, Sign: w.sign, Word: w.Word, Class: w.class, Say: c.Say.In(sys),
			How: HowView{Formula: c.Formula, Source: c.Source.String(), Also: alsoOf(c), Topic: "breaks"}}
		v.Pulls, v.PullsSI = loadText(c.Demand, sys, unit.Nearest)
		v.May, v.MaySI = loadText(c.Allowed(), sys, unit.Down)
		if c.Demand.In == unit.Pieces && c.Capacity.Is { // counted, not pulled: so many are wanted, so many are there
			v.Counted = true
			v.Pulls, v.May = unit.Rounded(float64(c.Wanted)*c.Demand.Val, 3)+" needed", unit.Rounded(c.Capacity.Val, 3)+" there"
		}
		if u, ok := c.Use.Value(); ok {
			v.Use, v.Over = UseText(float64(u)), u > 1
			v.Bar = min(float64(u)/1.6, 1) // the border of 1 stands at 5/8 of the bar, so that "too much" has room
		} else {
			v.Use = "–"
		}
		for _, in := range c.Inputs {
			v.How.Inputs = append(v.How.Inputs, PairView{in.Name, inputText(in, sys)})
		}
		for _, k := range c.Cases {
			v.Cases = append(v.Cases, []string{k.Name, caseText(k.Demand, sys, unit.Nearest), caseText(k.Capacity, sys, unit.Down), unit.Rounded(float64(k.Wanted), 3), useOr(k.Use)})
		}
		for _, m := range c.Missing {
			v.Missing = append(v.Missing, FieldLink(at+"."+m, labels, hoistURL))
		}
		out[i] = v
	}
	return out
}

// alsoOf names the further sources of a check's numbers, each once.
func alsoOf(c path.Check) (all []string) {
	for _, r := range c.Also {
		if s := r.String(); s != c.Source.String() && !slices.Contains(all, s) {
			all = append(all, s)
		}
	}
	return all
}

func useOr(k unit.Known[unit.Ratio]) string {
	if u, ok := k.Value(); ok {
		return UseText(float64(u))
	}
	return "–"
}

// Weak counts the checks that do not simply hold; they stand first.
func Weak(checks []CheckView) int {
	for i, c := range checks {
		if c.Class == "good" {
			return i
		}
	}
	return len(checks)
}

// UseText says how much of the strength is asked for, with two digits and rounded up, as the sentence of the check says it.
func UseText(u float64) string {
	digits := 2
	if u < 0.1 {
		digits = 1
	}
	switch text := unit.RoundedTo(u, digits, unit.Up); {
	case u > 1000:
		return "over 1\u00a0000 ×"
	case u > 0 && u < 0.01:
		return "under 0.01 ×"
	case text == "1" && u < 1: // rounding brings no part to its limit
		return "just under 1 ×"
	default:
		return text + " ×"
	}
}

// loadText gives a force first as the mass whose weight it is, and in newtons beside it; other units as the sentence of the check
// tells them. What is there is rounded down. A pound and the force of its weight have the same figure, so that is told once.
func loadText(a unit.Amount, sys unit.System, dir unit.Round) (first, beside string) {
	if !a.Is {
		return "–", ""
	}
	if a.In == unit.Newtons && sys == unit.Metric {
		beside = forceText(a.Val, sys, dir)
	}
	return path.Told(a).Toward(dir).In(sys), beside
}

// caseText is a value of one load case; one that is not known is told as none.
func caseText(a unit.Amount, sys unit.System, dir unit.Round) string {
	return path.Told(a).Toward(dir).In(sys)
}

func forceText(n float64, sys unit.System, dir unit.Round) string {
	if sys == unit.Metric && (n >= 1000 || n <= -1000) {
		return unit.RoundedTo(n/1000, 3, dir) + " kN"
	}
	return unit.Forces.FormatTo(n, sys, 3, dir)
}

// ByUnit is the quantity of each measure that the model names.
var ByUnit = map[unit.Measure]unit.Quantity{
	unit.Newtons: unit.Loads, unit.Pascals: unit.Stresses, unit.NewtonMetres: unit.Torques, unit.Metres: unit.SmallLengths, unit.Kilograms: unit.Masses,
	unit.Watts: unit.Powers, unit.Amperes: unit.Currents, unit.Volts: unit.Voltages, unit.Ohms: unit.Resistances, unit.Radians: unit.Angles, unit.SquareMetres: unit.Areas, unit.MetresASecond: unit.Speeds,
	unit.NewtonsAMetre: unit.Stiffnesses, unit.CubicMetres: unit.SectionModuli, unit.MetresFourth: unit.SecondMoments,
}

// CSVUnit is how numbers of the model in one of its measures stand in a file for other programs: as they are in metric units,
// else in the imperial unit of their quantity, a force in lbf.
func CSVUnit(u unit.Measure, sys unit.System) Scaled {
	q, ok := ByUnit[u]
	if u == unit.Newtons {
		q = unit.Forces
	}
	if !ok || sys == unit.Metric || q.Symbol(sys) == q.Symbol(unit.Metric) {
		return Scaled{unit.Scale{Per: 1}, string(u)}
	}
	return ScaleOf(q, sys)
}

func Amount(v float64, u unit.Measure, sys unit.System) string {
	if u == unit.Metres {
		return lengthText(unit.Length(v), sys)
	}
	if q, ok := ByUnit[u]; ok {
		return q.Format(v, sys)
	}
	if u == unit.Pieces || u == "" {
		return unit.Rounded(v, 3)
	}
	return unit.Rounded(v, 3) + " " + string(u)
}

func inputText(in path.Input, sys unit.System) string {
	switch in.Value.In {
	case unit.Newtons:
		return forceText(in.Value.Val, sys, unit.Nearest)
	case unit.Kilograms:
		return unit.Masses.Fine().Format(in.Value.Val, sys)
	case unit.Metres:
		if l := unit.Length(in.Value.Val); l >= 1 {
			return unit.Heights.Format(in.Value.Val, sys)
		}
	}
	return Amount(in.Value.Val, in.Value.In, sys)
}

// NameAsked marks a form that asks one thing beside the form of the page: its fields stand there too.
const NameAsked = "asked"

// NameField is the query of the input that a page of cards opens with.
const NameField = "field"

// FieldURL is the address of an input: its page, with its name where the page shows one card of its form at a time (the lifted
// mass, its tests, the battery, the night load, the place) and its address does not ask for all.
func FieldURL(page, at string) string {
	cards := strings.Contains(page, "/hoist/") || strings.Contains(page, "/cells/") || strings.Contains(page, "/trials/") || strings.HasSuffix(page, "/load") || strings.HasSuffix(page, "/place")
	if cards && !strings.Contains(page, "?") {
		page += "?" + NameField + "=" + at // letters, digits, dots and brackets, which a query takes as they are
	}
	return page + "#" + form.FieldID(at)
}

// FieldLink leads to the field of a path, by its label. A row that is not there yet is named by its list, and the link
// leads to the page.
func FieldLink(at string, labels map[string]string, page string) form.LinkView {
	if _, rest, ok := strings.Cut(at, ".hoist.trials."); ok && labels[at] == "" {
		_, look, _ := strings.Cut(rest, ".looked.")
		return form.LinkView{Text: "look at: " + form.OrNotKnown(look), URL: FieldURL(strings.Replace(page, "/hoist/", "/trials/", 1), at)}
	}
	if text := labels[at]; text != "" {
		return form.LinkView{Text: text, URL: FieldURL(page, at)}
	}
	list, _, _ := strings.Cut(at[strings.LastIndex(at, "[")+1:], "]")
	n, err := strconv.Atoi(list)
	title := labels[at[:max(0, strings.LastIndex(at, "["))]]
	if err != nil || title == "" {
		return form.LinkView{Text: "a value of this page", URL: page}
	}
	return form.LinkView{Text: title + ", number " + Itoa(n+1), URL: FieldURL(page, at[:strings.LastIndex(at, "[")])}
}

// HeadlineOf joins the sentences of a verdict.
func HeadlineOf(r model.VariantResult, sys unit.System) (first string, rest []string) {
	if len(r.Headline) == 0 {
		return "Not known yet.", nil
	}
	return r.Headline[0].In(sys), say.All(r.Headline[1:], sys)
}

// barWidth is the filled part of a bar of 64, as an SVG attribute.
func barWidth(share float64) string { return strconv.FormatFloat(64*share, 'f', 1, 64) }
