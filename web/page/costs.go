package page

import (
	"fmt"
	"net/url"
	"slices"
	"strings"

	"duskweight/internal/model"
	"duskweight/internal/model/cost"
	"duskweight/internal/model/unit"
	"duskweight/internal/store"
	"duskweight/web/form"
)

// Cost over the years: what all parts of a variant have cost by the end of each year, with what is bought again as steps.

// Bill is one variant's money over the years.
type Bill struct {
	id       int64
	Name     string
	Currency string
	Cost     cost.Result
	Parts    []cost.Part
	Color    string // of its line
}

// CostsView is the chart with what it says, or why there is none.
type CostsView struct {
	Chart ChartView
	Drawn bool
	Says  []string // which crosses which
	Lacks []string // variants that cannot be drawn, each with why
}

func BillsOf(results []model.VariantResult, vs []store.Saved[model.Variant], currency string) []Bill {
	out := make([]Bill, len(results))
	for i, r := range results {
		out[i] = Bill{id: vs[i].ID, Name: r.Name, Currency: currency, Cost: r.Cost, Parts: vs[i].Value.Parts, Color: LineColor(r)}
	}
	return out
}

// LineColor is the colour of a variant's first store.
func LineColor(r model.VariantResult) string {
	if len(r.Stores) == 0 {
		return "--ink"
	}
	return "--" + r.Stores[0].Kind.Look
}

// dashes tell lines apart without colour.
var dashes = []string{"solid", "dashed", "dotted", "solid"}

// CostsOf makes the chart of some bills of a project.
func CostsOf(bills []Bill, project int64, sys unit.System) (CostsView, error) {
	var v CostsView
	drawn := slices.DeleteFunc(slices.Clone(bills), func(b Bill) bool { return len(b.Cost.Years) == 0 })
	for _, b := range bills {
		if len(b.Cost.Years) == 0 {
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
	v.Chart, err = costPlot(drawn).View(ProjectURL(project) + "/compare/costs.csv?" + q.Encode())
	v.Chart.Wide = true
	return v, err
}

// notPriced says which parts miss a price.
func notPriced(b Bill) string {
	if b.Cost.Parts == 0 {
		return fmt.Sprintf("“%s” is not drawn: it has no parts on its list yet.", OrUnnamed(b.Name))
	}
	const few = 4
	var names []string
	for _, i := range b.Cost.Without[:min(few, len(b.Cost.Without))] {
		names = append(names, form.Clip(OrUnnamed(b.Parts[i].Name), 50))
	}
	say := strings.Join(names, "; ")
	if more := len(b.Cost.Without) - few; more > 0 {
		say += fmt.Sprintf("; and %d more", more)
	}
	return fmt.Sprintf("“%s” is not drawn. No price yet for: %s.", OrUnnamed(b.Name), say)
}

// crossingsOf tells for each pair in which year one costs more than the other, the dearer one of the beginning first.
func crossingsOf(bills []Bill) []string {
	var out []string
	for i, a := range bills {
		for _, b := range bills[i+1:] {
			out = append(out, pairCost(a, b))
		}
	}
	return out
}

func pairCost(a, b Bill) string {
	names := [2]string{"“" + OrUnnamed(a.Name) + "”", "“" + OrUnnamed(b.Name) + "”"}
	horizon := len(a.Cost.Years) - 1
	cross := cost.Crossings(a.Cost.Years, b.Cost.Years)
	var say []string
	for i, c := range cross {
		if i == 3 {
			say = append(say, fmt.Sprintf("They cross %d times in all.", len(cross)))
			break
		}
		say = append(say, fmt.Sprintf("%s costs more than %s in year %d.", names[c.Dearer], names[1-c.Dearer], c.Year))
	}
	if len(say) > 0 {
		return strings.Join(say, " ")
	}
	end := float64(a.Cost.Years[horizon].Total - b.Cost.Years[horizon].Total)
	switch {
	case end > 0:
		return fmt.Sprintf("%s always costs more than %s: the two lines never cross in the %d years.", names[0], names[1], horizon)
	case end < 0:
		return fmt.Sprintf("%s always costs more than %s: the two lines never cross in the %d years.", names[1], names[0], horizon)
	}
	return fmt.Sprintf("%s and %s cost the same after %d years.", names[0], names[1], horizon)
}

// LineName is a variant's name as a chart may show it: with its number in front, so that no two are the same and none is
// read as anything but a name.
func LineName(i int, name string) string {
	return fmt.Sprintf("%d %s", i+1, form.Clip(OrUnnamed(name), 26))
}

// costPlot draws the bills, each as steps: what is paid in a year is paid at its end.
func costPlot(bills []Bill) Plot {
	currency := bills[0].Currency
	p := Plot{Id: "costs", Title: "Cost up to each year", X: "years from the start", Y: []string{"cost so far, " + OrElse(currency, "money")}, Head: []string{"At the end of year"}}
	for i, b := range bills {
		l := PlotLine{Name: LineName(i, b.Name), Unit: currency, Color: b.Color, Dash: dashes[i%len(dashes)]}
		if i > 0 && slices.ContainsFunc(bills[:i], func(o Bill) bool { return o.Color == b.Color }) && i == len(dashes)-1 {
			l.Color = "--ink"
		}
		before := 0.0
		for t, y := range b.Cost.Years {
			if t > 0 {
				l.Points = append(l.Points, [2]float64{float64(t), before})
			}
			before = float64(y.Total)
			l.Points = append(l.Points, [2]float64{float64(t), before})
		}
		p.Lines = append(p.Lines, l)
		p.Head = append(p.Head, l.Name)
	}
	for t := range bills[0].Cost.Years {
		row := []string{Itoa(t)}
		for _, b := range bills {
			row = append(row, MoneyText(b.Cost.Years[t].Total, currency))
		}
		p.Rows = append(p.Rows, row)
	}
	p.crossings(bills)
	p.Say = costSay(bills)
	return p
}

// crossings marks where two lines cross.
func (p *Plot) crossings(bills []Bill) {
	marks := PlotLine{Name: "crossing", Unit: bills[0].Currency, Color: "--fail", Dash: "solid", Mark: "diamond"}
	for i, a := range bills {
		for _, b := range bills[i+1:] {
			for _, c := range cost.Crossings(a.Cost.Years, b.Cost.Years) {
				low := min(a.Cost.Years[c.Year].Total, b.Cost.Years[c.Year].Total)
				marks.Points = append(marks.Points, [2]float64{float64(c.Year), float64(low)})
			}
		}
	}
	if len(marks.Points) > 0 && len(marks.Points) <= MostPoints {
		slices.SortFunc(marks.Points, func(a, b [2]float64) int { return int(a[0] - b[0]) })
		p.Lines = append(p.Lines, marks)
	}
}

// costSay is the sentence that reads the picture.
func costSay(bills []Bill) string {
	horizon := len(bills[0].Cost.Years) - 1
	var says []string
	for i, b := range bills {
		says = append(says, fmt.Sprintf("%s: %s at the start, %s after %s.", LineName(i, b.Name), MoneyText(b.Cost.Years[0].Total, b.Currency), MoneyAbout(b.Cost.Years[horizon].Total, b.Currency), Counted(horizon, "year")))
	}
	return strings.Join(says, " ")
}

func CostNumbers(bills []Bill) SheetOfNumbers {
	t := SheetOfNumbers{Name: "costs", Head: []string{"end of year"}}
	for i, b := range bills {
		name := LineName(i, b.Name)
		t.Head = append(t.Head, name+": paid in the year, "+b.Currency, name+": cost so far, "+b.Currency)
	}
	for year := range bills[0].Cost.Years {
		row := []any{year}
		for _, b := range bills {
			row = append(row, float64(b.Cost.Years[year].Paid), float64(b.Cost.Years[year].Total))
		}
		t.Rows = append(t.Rows, row)
	}
	return t
}
