package parts

import (
	"fmt"
	"strings"

	"duskweight/internal/model"
	"duskweight/internal/model/cost"
	"duskweight/internal/model/reason"
	"duskweight/internal/model/source"
	"duskweight/internal/model/unit"
	"duskweight/internal/say"
	"duskweight/internal/store"
	"duskweight/web/form"
	"duskweight/web/page"
)

// partsView is the bill of a variant, ready to print.
type partsView struct {
	Headline string
	More     []string
	Facts    []page.FactView
	Lacks    string // what the plan asks for and the list lacks
	Unfit    string // why nothing should be bought yet, empty where the plan gives way nowhere
	Variant  string // the page that says why
	Rows     []partLine
	Money    []page.FigureRow
	Again    []page.PairView // what is bought again, and when
	Prints   string
	Assumed  []string
	Costs    page.CostsView
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
	view := partsView{Headline: fmt.Sprintf("%d of %s priced.", c.Priced, page.Counted(c.Parts, "part")), Terms: page.ProjectURL(p.ID) + "/money", Market: at + "/parts/market", Making: at + "/parts/making"}
	if c.Parts == 0 {
		view.Headline = "The list has no parts yet."
		view.More = []string{"Add the parts that the plan needs, and give each your own price."}
	}
	if n := len(open); n > 0 && c.Parts > 0 {
		view.Headline = fmt.Sprintf("%d of %s priced; the plan needs %d more.", c.Priced, page.Counted(c.Parts, "listed part"), n)
	}
	if r.Ready == reason.No && r.Facts.Lifts {
		view.Unfit = "Do not buy from this list yet. The plan sheet says DO NOT HANG. Mend that first: the numbers change with it."
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
		view.Free = view.Free || (part.Get == cost.GetHave || part.Get == cost.GetBorrow) && !part.Price.Is
	}
	view.Money = moneyRowsOf(r, currency)
	view.Again = againRows(c, currency)
	view.Prints = printSay(c, sys)
	view.Assumed = say.All(c.Assumed, sys)
	one := []page.Bill{{Name: r.Name, Currency: currency, Cost: c, Parts: v.Parts, Color: page.LineColor(r)}}
	var err error
	view.Costs, err = page.CostsOf(one, p.ID, sys)
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
		if needs[n].Of == cost.OfSafety {
			safety++
		}
	}
	say := fmt.Sprintf("The plan needs %d parts that are not on the list", len(open))
	if len(open) == 1 {
		say = "The plan needs 1 part that is not on the list"
	}
	switch {
	case safety == len(open):
		say += ", for safety"
	case safety > 0:
		say += fmt.Sprintf(", %d of them for safety", safety)
	}
	return say + ". The sums count the list only."
}

func partLineOf(p cost.Part, currency string) partLine {
	l := partLine{Name: page.OrUnnamed(p.Name), Get: form.WordFor(string(p.Get)), Number: p.Number, Known: true, Price: "not known", Safety: p.Of == cost.OfSafety}
	n := int(p.Count.Or(1))
	if n != 1 {
		l.Name = fmt.Sprintf("%d × %s", n, l.Name)
	}
	if v, ok := p.Price.Value(); ok {
		l.Price = page.MoneyText(v*unit.Money(n), currency)
	}
	if p.Spent == unit.Yes {
		l.Price += ", bought"
	}
	return l
}

// number puts the plan's own number in front of what was typed.
func (l *partLine) number(n model.Need, sys unit.System) {
	typed := l.Number
	l.Number, l.Known = page.WantText(n, sys)
	l.Look = n.Look.In(sys)
	if len(n.Want) > 0 && n.Want[0].Short() {
		l.Short = "The plan says " + page.ShortText(n.Want[0], sys) + ": too little."
	}
	if typed != "" {
		l.Look = strings.TrimPrefix(l.Look+"; "+typed, "; ")
	}
}

// moneyFacts are the large figures: what is priced, what is spent, what all comes to, what a stored kWh costs.
func moneyFacts(c cost.Result, currency string) []page.FactView {
	open := c.Parts - c.Priced
	note := "every part has a price"
	if c.Parts == 0 {
		note = "no parts on the list"
	}
	if open > 0 {
		note = page.Counted(open, "part") + " without a price"
	}
	return []page.FactView{
		{ID: "priced", Label: "Priced so far", Value: page.MoneyText(c.Listed, currency), Note: note,
			How: &page.HowView{Formula: "Σ price × number, of the parts with a price", Inputs: []page.PairView{{Name: "parts with a price", Value: fmt.Sprintf("%d of %d", c.Priced, c.Parts)}}, Source: "your own prices; none ships", Topic: "money"}},
		{ID: "spent", Label: "Paid so far", Value: page.MoneyText(c.Spent, currency), Note: "of the parts marked as bought",
			How: &page.HowView{Formula: "Σ price × number, of the parts that are bought already", Source: "your own prices", Topic: "money"}},
		{ID: "levelised", Label: "One stored kWh, over its life", Value: page.MoneyOr(c.Levelised, currency), Note: levelisedNote(c),
			How: levelisedHow(c, currency)},
	}
}

func levelisedNote(c cost.Result) string {
	switch {
	case c.Levelised.Is:
		return "the sun that fills this store is left over, and free"
	case c.Parts == 0:
		return "no parts on the list"
	case c.NPV.Is:
		return "the store gives nothing back"
	}
	return "a part of the store has no price yet"
}

func levelisedHow(c cost.Result, currency string) *page.HowView {
	return &page.HowView{Formula: "present worth of the store / Σ kWh given back ÷ (1 + i)^t, t = 1 … n", Topic: "money", Source: source.EngineeringEconomy.At("present worth and annuity").String(),
		Inputs: []page.PairView{{Name: "present worth of the store", Value: page.MoneyOr(c.NPV, currency)}, {Name: "kWh that the stores give in a year", Value: unit.Rounded(c.Delivered.WattHours()/1000, 3)}, {Name: "years n", Value: page.Itoa(c.Horizon)}, {Name: "interest i", Value: unit.Rounded(100*c.Rate, 3) + " % a year"}}}
}

// moneyRowsOf are the rest of the figures, each with how.
func moneyRowsOf(r model.VariantResult, currency string) []page.FigureRow {
	c := r.Cost
	years := []page.PairView{{Name: "years n", Value: page.Itoa(c.Horizon)}, {Name: "interest i", Value: unit.Rounded(100*c.Rate, 3) + " % a year"}}
	from := source.EngineeringEconomy.At("present worth and annuity").String()
	nights, perNight := "not known", page.MoneyOr(c.PerNight, currency)
	if r.YearKnown {
		nights = page.Itoa(r.Year.NightsServed)
		if r.Year.NightsServed == 0 {
			perNight = "no night is full"
		}
	}
	return []page.FigureRow{
		{ID: "capital", Name: "All parts, at the start", Value: page.MoneyRange(c.Low.Capital, c.Capital, c.High.Capital, currency), How: page.HowView{Formula: "Σ price × number", Inputs: []page.PairView{{Name: "parts with a price", Value: fmt.Sprintf("%d of %d", c.Priced, c.Parts)}}, Source: "your own prices", Topic: "money"}},
		{ID: "npv", Name: "The store over the years, in today's money", Value: page.MoneyAboutRange(c.Low.NPV, c.NPV, c.High.NPV, currency), How: page.HowView{Formula: "Σ Cₜ ÷ (1 + i)^t − left over ÷ (1 + i)^n, without panels and lamps", Inputs: years, Source: from, Topic: "money"}},
		{ID: "whole", Name: "All parts over the years, in today's money", Value: page.MoneyAboutRange(c.Low.Whole, c.Whole, c.High.Whole, currency), How: page.HowView{Formula: "Σ Cₜ ÷ (1 + i)^t − left over ÷ (1 + i)^n; low: the lowest prices and the longest lives, high: the reverse", Inputs: years, Source: from, Topic: "money"}},
		{ID: "pernight", Name: "One full night", Value: perNight, How: page.HowView{Formula: "present worth × i(1 + i)^n / ((1 + i)^n − 1) / full nights", Inputs: append([]page.PairView{{Name: "full nights", Value: nights}}, years...), Source: from, Topic: "money"}},
		{ID: "salvage", Name: "Worth at the end", Value: page.MoneyOr(c.Salvage, currency), How: page.HowView{Formula: "Σ price × share of the life that is left", Inputs: years[:1], Source: "straight line over the life", Topic: "money"}},
	}
}

// againRows tell what is bought again, one row for each part.
func againRows(c cost.Result, currency string) []page.PairView {
	var out []page.PairView
	at := map[string]int{}
	for _, a := range c.Replaced {
		i, ok := at[a.Name]
		if !ok {
			i = len(out)
			at[a.Name] = i
			out = append(out, page.PairView{Name: page.OrUnnamed(a.Name), Value: "year " + page.Itoa(a.Year)})
			continue
		}
		if n := strings.Count(out[i].Value, ","); n < 5 {
			out[i].Value += ", " + page.Itoa(a.Year)
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
		row := askedRow{As: string(need.As), Name: need.Name, Look: need.Look.In(sys)}
		if need.Count > 1 {
			row.Name = fmt.Sprintf("%d × %s", need.Count, row.Name)
		}
		row.Number, _ = page.WantText(need, sys)
		if need.Of == cost.OfSafety {
			row.Why = "safety"
		}
		out.Rows = append(out.Rows, row)
	}
	out.All = len(open) > 1
	return out
}
