package web

import (
	"fmt"
	"strings"

	"duskweight/internal/model"
	"duskweight/internal/model/cost"
	"duskweight/internal/model/source"
	"duskweight/internal/model/unit"
	"duskweight/internal/store"
)

// partsView is the bill of a variant, ready to print.
type partsView struct {
	Headline string
	More     []string
	Facts    []factView
	Lacks    string // what the plan asks for and the list lacks
	Unfit    string // why nothing should be bought yet, empty where the plan gives way nowhere
	Variant  string // the page that says why
	Rows     []partLine
	Money    []figureRow
	Again    []pairView // what is bought again, and when
	Prints   string
	Assumed  []string
	Costs    costsView
	Terms    string
	Market   string
	Making   string
	Free     bool // something at hand has no price yet
}

// partLine is one part of the list.
type partLine struct {
	Name, Get, Number, Look string
	Price                   string
	Known                   bool   // the number is the whole answer
	Short                   string // the plan's own part has less on it
	Safety                  bool
}

func partsViewOf(r model.VariantResult, v model.Variant, needs []model.Need, p store.Saved[model.Project], at string, sys unit.System) (partsView, error) {
	c, currency := r.Cost, p.Value.Currency
	of, open := model.Matched(v.Parts, needs)
	view := partsView{Headline: fmt.Sprintf("%d of %s priced.", c.Priced, counted(c.Parts, "part")), Terms: projectURL(p.ID) + "/money", Market: at + "/parts/market", Making: at + "/parts/making"}
	if c.Parts == 0 {
		view.Headline = "No parts on the list yet."
		view.More = []string{"Take those that the plan asks for, and give each your own price."}
	}
	if n := len(open); n > 0 && c.Parts > 0 {
		view.Headline = fmt.Sprintf("%d of %s priced; %d more are asked for by the plan.", c.Priced, counted(c.Parts, "listed part"), n)
	}
	if r.Ready == "no" && hasHoist(r) {
		view.Unfit = "Do not buy by this list yet. The plan sheet says do not hang: mend that first, and the numbers change with it."
		view.Variant = at
	}
	view.Lacks = lackSay(needs, open)
	view.Facts = moneyFacts(c, currency)
	for i, part := range v.Parts {
		line := partLineOf(part, currency)
		if n := of[i]; n >= 0 {
			line.number(needs[n], sys)
		}
		view.Rows = append(view.Rows, line)
		view.Free = view.Free || (part.Get == "have" || part.Get == "borrow") && !part.Price.Is
	}
	view.Money = moneyRowsOf(r, currency)
	view.Again = againRows(c, currency)
	view.Prints = printSay(c, sys)
	view.Assumed = c.Assumed
	one := []bill{{name: r.Name, currency: currency, cost: c, parts: v.Parts, color: lineColor(r)}}
	var err error
	view.Costs, err = costsOf(one, p.ID, sys)
	view.Costs.Chart.CSV = at + "/parts/costs.csv"
	return view, err
}

// lackSay names what the plan asks for and the list lacks, safety first.
func lackSay(needs []model.Need, open []int) string {
	if len(open) == 0 {
		return ""
	}
	safety := 0
	for _, n := range open {
		if needs[n].Of == "safety" {
			safety++
		}
	}
	say := fmt.Sprintf("The plan asks for %s that the list lacks", counted(len(open), "part"))
	if safety > 0 {
		say += fmt.Sprintf(", %d of them for safety", safety)
	}
	return say + ". The sums count the list only."
}

func partLineOf(p cost.Part, currency string) partLine {
	l := partLine{Name: orUnnamed(p.Name), Get: wordFor(p.Get), Number: p.Number, Known: true, Price: "not known", Safety: p.Of == "safety"}
	n := int(p.Count.Or(1))
	if n != 1 {
		l.Name = fmt.Sprintf("%d × %s", n, l.Name)
	}
	if v, ok := p.Price.Value(); ok {
		l.Price = moneyText(v*unit.Money(n), currency)
	}
	if p.Spent == "yes" {
		l.Price += ", bought"
	}
	return l
}

// number puts the plan's own number in front of what was typed.
func (l *partLine) number(n model.Need, sys unit.System) {
	typed := l.Number
	l.Number, l.Known = wantText(n, sys)
	l.Look = n.Look
	if len(n.Want) > 0 && n.Want[0].Short() {
		l.Short = "The plan says " + shortText(n.Want[0], sys) + ": too little."
	}
	if typed != "" {
		l.Look = strings.TrimPrefix(l.Look+"; "+typed, "; ")
	}
}

// wantText is the one number to look for, and whether it is the whole answer.
func wantText(n model.Need, sys unit.System) (text string, known bool) {
	if len(n.Want) == 0 {
		return "", true
	}
	w := n.Want[0]
	switch {
	case w.None:
		return "none would do: " + w.Where, false
	case w.Known():
		return leastText(float64(w.Least.Val), w.Unit, sys) + " " + w.Where, true
	case w.Least.Is && w.Least.Val > 0:
		return "not known yet; more than " + leastText(float64(w.Least.Val), w.Unit, sys) + " " + w.Where, false
	}
	return "not known yet: " + w.Where, false
}

// shortText prints what stands on the plan's own part, which is too little: rounded down, never up.
func shortText(w model.Want, sys unit.System) string {
	return labelText(float64(w.Stated.Val), w.Unit, sys, unit.Down)
}

// leastText prints what a label must say at least: rounded up, never down.
func leastText(v float64, u string, sys unit.System) string { return labelText(v, u, sys, unit.Up) }

// labelText prints a value of a label, of an SI unit u, rounded to three digits in a direction in the reader's unit. Forces are
// told as the weight of a mass.
func labelText(v float64, u string, sys unit.System, dir unit.Round) string {
	q, ok := byUnit[u]
	switch u {
	case "C":
		q, ok = unit.Charges, true
	case "Ω":
		q, ok = unit.Resistances, true
	case "m²":
		q = unit.SmallAreas
	case "m":
		q, ok = lengthUnit(unit.Length(v)), true
	}
	if !ok {
		return strings.TrimSpace(unit.RoundedTo(v, 3, dir) + unit.Space + strings.TrimPrefix(u, "1"))
	}
	return q.FormatTo(v, sys, 3, dir)
}

func moneyOr(k unit.Known[unit.Money], currency string) string {
	if v, ok := k.Value(); ok {
		return moneyText(v, currency)
	}
	return "not known"
}

// moneyFacts are the large figures: what is priced, what is spent, what all comes to, what a stored kWh costs.
func moneyFacts(c cost.Result, currency string) []factView {
	open := c.Parts - c.Priced
	note := "every part has a price"
	if c.Parts == 0 {
		note = "no parts on the list"
	}
	if open > 0 {
		note = counted(open, "part") + " without a price"
	}
	return []factView{
		{ID: "priced", Label: "Priced so far", Value: moneyText(c.Listed, currency), Note: note,
			How: &howView{Formula: "Σ price × number, of the parts with a price", Inputs: []pairView{{"parts with a price", fmt.Sprintf("%d of %d", c.Priced, c.Parts)}}, Source: "your own prices; none ships", Topic: "money"}},
		{ID: "spent", Label: "Spent so far", Value: moneyText(c.Spent, currency), Note: "of what is marked as bought",
			How: &howView{Formula: "Σ price × number, of the parts that are bought already", Source: "your own prices", Topic: "money"}},
		{ID: "levelised", Label: "One stored kWh, over its life", Value: moneyOr(c.Levelised, currency), Note: levelisedNote(c),
			How: levelisedHow(c, currency)},
	}
}

func levelisedNote(c cost.Result) string {
	switch {
	case c.Levelised.Is:
		return "the sun that fills it is left over, and free"
	case c.Parts == 0:
		return "no parts on the list"
	case c.NPV.Is:
		return "the store gives nothing back"
	}
	return "a part of the store has no price"
}

func levelisedHow(c cost.Result, currency string) *howView {
	return &howView{Formula: "present worth of the store / Σ kWh given back ÷ (1 + i)^t, t = 1 … n", Topic: "money", Source: source.EngineeringEconomy.At("present worth and annuity").String(),
		Inputs: []pairView{{"present worth of the store", moneyOr(c.NPV, currency)}, {"kWh that the stores give in a year", unit.Rounded(c.Delivered.WattHours()/1000, 3)}, {"years n", itoa(c.Horizon)}, {"interest i", unit.Rounded(100*c.Rate, 3) + " % a year"}}}
}

// moneyRowsOf are the rest of the figures, each with how.
func moneyRowsOf(r model.VariantResult, currency string) []figureRow {
	c := r.Cost
	years := []pairView{{"years n", itoa(c.Horizon)}, {"interest i", unit.Rounded(100*c.Rate, 3) + " % a year"}}
	from := source.EngineeringEconomy.At("present worth and annuity").String()
	nights, perNight := "not known", moneyOr(c.PerNight, currency)
	if r.YearKnown {
		nights = itoa(r.Year.NightsServed)
		if r.Year.NightsServed == 0 {
			perNight = "no night has light"
		}
	}
	return []figureRow{
		{"capital", "All parts, at the start", moneyOr(c.Capital, currency), howView{Formula: "Σ price × number", Inputs: []pairView{{"parts with a price", fmt.Sprintf("%d of %d", c.Priced, c.Parts)}}, Source: "your own prices", Topic: "money"}},
		{"npv", "The store over the years, at today's worth", moneyOr(c.NPV, currency), howView{Formula: "Σ Cₜ ÷ (1 + i)^t − left over ÷ (1 + i)^n, without panels and lamps", Inputs: years, Source: from, Topic: "money"}},
		{"pernight", "One night with light", perNight, howView{Formula: "present worth × i(1 + i)^n / ((1 + i)^n − 1) / nights with light", Inputs: append([]pairView{{"nights with light", nights}}, years...), Source: from, Topic: "money"}},
		{"salvage", "Still worth at the end", moneyOr(c.Salvage, currency), howView{Formula: "Σ price × share of the life that is left", Inputs: years[:1], Source: "straight line over the life", Topic: "money"}},
	}
}

// againRows tell what is bought again, one row for each part.
func againRows(c cost.Result, currency string) []pairView {
	var out []pairView
	at := map[string]int{}
	for _, a := range c.Replaced {
		i, ok := at[a.Name]
		if !ok {
			i = len(out)
			at[a.Name] = i
			out = append(out, pairView{orUnnamed(a.Name), "year " + itoa(a.Year)})
			continue
		}
		if n := strings.Count(out[i].Value, ","); n < 5 {
			out[i].Value += ", " + itoa(a.Year)
		} else if !strings.HasSuffix(out[i].Value, "…") {
			out[i].Value += ", …"
		}
	}
	return out
}

func printSay(c cost.Result, sys unit.System) string {
	if c.PrintTime <= 0 && c.PrintMass <= 0 {
		return ""
	}
	var says []string
	if c.PrintTime > 0 {
		says = append(says, unit.Hours.Format(float64(c.PrintTime), sys)+" on the printer")
	}
	if c.PrintMass > 0 {
		says = append(says, unit.SmallMasses.Format(float64(c.PrintMass), sys)+" of material")
	}
	return "Printed parts: " + strings.Join(says, " and ") + ", where you gave it."
}

// askedView is what the plan asks for and the list lacks, with a button each.
type askedView struct {
	Rows []askedRow
	All  bool
}

type askedRow struct{ As, Name, Number, Look, Why string }

func askedOf(v model.Variant, needs []model.Need, sys unit.System) askedView {
	_, open := model.Matched(v.Parts, needs)
	var out askedView
	for _, n := range open {
		need := needs[n]
		row := askedRow{As: need.As, Name: need.Name, Look: need.Look}
		if need.Count > 1 {
			row.Name = fmt.Sprintf("%d × %s", need.Count, row.Name)
		}
		row.Number, _ = wantText(need, sys)
		if need.Of == "safety" {
			row.Why = "safety"
		}
		out.Rows = append(out.Rows, row)
	}
	out.All = len(open) > 1
	return out
}
