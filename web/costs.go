package web

import (
	"fmt"
	"net/http"
	"net/url"
	"slices"
	"strings"

	"duskweight/internal/model"
	"duskweight/internal/model/cost"
	"duskweight/internal/model/unit"
	"duskweight/internal/store"
)

// Cost over the years: what all parts of a variant have cost by the end of each year, with what is bought again as steps.

// bill is one variant's money over the years.
type bill struct {
	id       int64
	name     string
	currency string
	cost     cost.Result
	parts    []cost.Part
	color    string // of its line
}

// costsView is the chart with what it says, or why there is none.
type costsView struct {
	Chart chartView
	Drawn bool
	Says  []string // which crosses which
	Lacks []string // variants that cannot be drawn, each with why
}

func billsOf(results []model.VariantResult, vs []store.Saved[model.Variant], currency string) []bill {
	out := make([]bill, len(results))
	for i, r := range results {
		out[i] = bill{id: vs[i].ID, name: r.Name, currency: currency, cost: r.Cost, parts: vs[i].Value.Parts, color: lineColor(r)}
	}
	return out
}

// lineColor is the colour of a variant's first store.
func lineColor(r model.VariantResult) string {
	switch {
	case len(r.Stores) == 0:
		return "--ink"
	case r.Stores[0].Hoist != nil:
		return "--mass"
	}
	return "--cells"
}

// dashes tell lines apart without colour.
var dashes = []string{"solid", "dashed", "dotted", "solid"}

// costsOf makes the chart of some bills of a project.
func costsOf(bills []bill, project int64, sys unit.System) (costsView, error) {
	var v costsView
	drawn := slices.DeleteFunc(slices.Clone(bills), func(b bill) bool { return len(b.cost.Years) == 0 })
	for _, b := range bills {
		if len(b.cost.Years) == 0 {
			v.Lacks = append(v.Lacks, notPriced(b))
		}
	}
	if len(drawn) == 0 {
		return v, nil
	}
	v.Says = crossingsOf(drawn)
	v.Drawn = true
	q := url.Values{}
	for _, b := range drawn {
		q.Add("v", fmt.Sprint(b.id))
	}
	var err error
	v.Chart, err = costPlot(drawn).view(projectURL(project) + "/compare/costs.csv?" + q.Encode())
	v.Chart.Wide = true
	return v, err
}

// notPriced says which parts miss a price.
func notPriced(b bill) string {
	if b.cost.Parts == 0 {
		return fmt.Sprintf("“%s” is not drawn: it has no parts on its list yet.", orUnnamed(b.name))
	}
	const few = 4
	var names []string
	for _, i := range b.cost.Without[:min(few, len(b.cost.Without))] {
		names = append(names, clip(orUnnamed(b.parts[i].Name), 50))
	}
	say := strings.Join(names, "; ")
	if more := len(b.cost.Without) - few; more > 0 {
		say += fmt.Sprintf("; and %d more", more)
	}
	return fmt.Sprintf("“%s” is not drawn. No price yet for: %s.", orUnnamed(b.name), say)
}

// crossingsOf tells for each pair in which year one becomes dearer than the other, the dearer one of the beginning first.
func crossingsOf(bills []bill) []string {
	var out []string
	for i, a := range bills {
		for _, b := range bills[i+1:] {
			out = append(out, pairCost(a, b))
		}
	}
	return out
}

func pairCost(a, b bill) string {
	names := [2]string{"“" + orUnnamed(a.name) + "”", "“" + orUnnamed(b.name) + "”"}
	horizon := len(a.cost.Years) - 1
	cross := cost.Crossings(a.cost.Years, b.cost.Years)
	var say []string
	for i, c := range cross {
		if i == 3 {
			say = append(say, fmt.Sprintf("They cross %d times in all.", len(cross)))
			break
		}
		say = append(say, fmt.Sprintf("%s becomes dearer than %s in year %d.", names[c.Dearer], names[1-c.Dearer], c.Year))
	}
	if len(say) > 0 {
		return strings.Join(say, " ")
	}
	end := float64(a.cost.Years[horizon].Total - b.cost.Years[horizon].Total)
	switch {
	case end > 0:
		return fmt.Sprintf("%s stays dearer than %s: they never cross in the %d years.", names[0], names[1], horizon)
	case end < 0:
		return fmt.Sprintf("%s stays dearer than %s: they never cross in the %d years.", names[1], names[0], horizon)
	}
	return fmt.Sprintf("%s and %s cost the same after %d years.", names[0], names[1], horizon)
}

// lineName is a variant's name as a chart may show it: with its number in front, so that no two are the same and none is
// read as anything but a name.
func lineName(i int, name string) string { return fmt.Sprintf("%d %s", i+1, clip(orUnnamed(name), 26)) }

// costPlot draws the bills, each as steps: what is paid in a year is paid at its end.
func costPlot(bills []bill) plot {
	currency := bills[0].currency
	p := plot{id: "costs", title: "Cost up to each year", x: "years from the start", y: []string{"cost so far, " + orElse(currency, "money")}, head: []string{"At the end of year"}}
	for i, b := range bills {
		l := plotLine{name: lineName(i, b.name), unit: currency, color: b.color, dash: dashes[i%len(dashes)]}
		if i > 0 && slices.ContainsFunc(bills[:i], func(o bill) bool { return o.color == b.color }) && i == len(dashes)-1 {
			l.color = "--ink"
		}
		before := 0.0
		for t, y := range b.cost.Years {
			if t > 0 {
				l.points = append(l.points, [2]float64{float64(t), before})
			}
			before = float64(y.Total)
			l.points = append(l.points, [2]float64{float64(t), before})
		}
		p.lines = append(p.lines, l)
		p.head = append(p.head, l.name)
	}
	for t := range bills[0].cost.Years {
		row := []string{itoa(t)}
		for _, b := range bills {
			row = append(row, moneyText(b.cost.Years[t].Total, currency))
		}
		p.rows = append(p.rows, row)
	}
	p.crossings(bills)
	p.say = costSay(bills)
	return p
}

// crossings marks where two lines cross.
func (p *plot) crossings(bills []bill) {
	marks := plotLine{name: "crossing", unit: bills[0].currency, color: "--fail", dash: "solid", mark: "diamond"}
	for i, a := range bills {
		for _, b := range bills[i+1:] {
			for _, c := range cost.Crossings(a.cost.Years, b.cost.Years) {
				low := min(a.cost.Years[c.Year].Total, b.cost.Years[c.Year].Total)
				marks.points = append(marks.points, [2]float64{float64(c.Year), float64(low)})
			}
		}
	}
	if len(marks.points) > 0 && len(marks.points) <= mostPoints {
		slices.SortFunc(marks.points, func(a, b [2]float64) int { return int(a[0] - b[0]) })
		p.lines = append(p.lines, marks)
	}
}

// costSay is the sentence that reads the picture.
func costSay(bills []bill) string {
	horizon := len(bills[0].cost.Years) - 1
	var says []string
	for i, b := range bills {
		says = append(says, fmt.Sprintf("%s: %s at the start, %s after %s.", lineName(i, b.name), moneyText(b.cost.Years[0].Total, b.currency), moneyText(b.cost.Years[horizon].Total, b.currency), counted(horizon, "year")))
	}
	return strings.Join(says, " ")
}

// moneyText writes an amount with the label of the currency: to the hundredth below a thousand, whole above.
func moneyText(m unit.Money, currency string) string {
	v := roundTo(float64(m), 12)
	text := fmt.Sprintf("%.2f", v)
	if v >= 1000 || v <= -1000 {
		text = fmt.Sprintf("%.0f", v)
	}
	if v >= 1e9 || v <= -1e9 {
		text = unit.Rounded(v, 4)
	}
	text = strings.TrimSuffix(text, ".00")
	return strings.TrimSpace(text + "\u00a0" + currency)
}

// sendCompareCSV sends the yearly totals of the variants of the address.
func (s *Site) sendCompareCSV(w http.ResponseWriter, r *http.Request) error {
	p, _, chosen, err := s.chosen(r)
	if err != nil {
		return err
	}
	g := s.grounds.of(p)
	results := make([]model.VariantResult, len(chosen))
	for i, v := range chosen {
		results[i] = g.Evaluate(v.Value)
	}
	bills := slices.DeleteFunc(billsOf(results, chosen, p.Value.Currency), func(b bill) bool { return len(b.cost.Years) == 0 })
	if len(bills) == 0 {
		return errNotFound
	}
	return sendCSV(w, costNumbers(bills))
}

func costNumbers(bills []bill) sheetOfNumbers {
	t := sheetOfNumbers{Name: "costs", Head: []string{"end of year"}}
	for i, b := range bills {
		name := lineName(i, b.name)
		t.Head = append(t.Head, name+": paid in the year, "+b.currency, name+": cost so far, "+b.currency)
	}
	for year := range bills[0].cost.Years {
		row := []any{year}
		for _, b := range bills {
			row = append(row, float64(b.cost.Years[year].Paid), float64(b.cost.Years[year].Total))
		}
		t.Rows = append(t.Rows, row)
	}
	return t
}
