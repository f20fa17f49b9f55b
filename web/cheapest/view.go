package cheapest

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"duskweight/internal/draw"
	"duskweight/internal/model"
	"duskweight/internal/model/search"
	"duskweight/internal/model/unit"
	"duskweight/web/form"
	"duskweight/web/page"
)

// view is the answer, ready to print.
type view struct {
	URL          string
	Done         bool
	Title, Under string
	Lacks        []form.LinkView
	Wide, Narrow string // the picture
	Read         string
	Best         *planView
	Facts        []page.FactView
	More         string // what one step more would cost
	Plans        []planView
	Costs        bool
	CSV          string
	Tried        []string
	Not          string // why the lifted mass is not ready
}

// planView is one plan and the fields of its button.
type planView struct {
	Name, Nights, Bad, Cost, Range string
	Best, Today                    bool
	Fields                         []page.PairView
}

// words says what the stores of a choice are.
func (a asked) words(c search.Choice) (stores []string) {
	for _, k := range model.Kinds() {
		for _, s := range a.variant.Value.Stores {
			if !k.Is(s) {
				continue
			}
			switch {
			case k.Counted != nil && c.Blocks > 0:
				stores = append(stores, fmt.Sprintf("%d %s", c.Blocks, plural(c.Blocks, k.Counted.One, k.Counted.Many)))
			case k.Counted == nil:
				stores = append(stores, sized(k, c.Factor))
			}
			break
		}
	}
	return stores
}

// sized says how large a store is that changes as a whole.
func sized(k *model.Kind, f float64) string {
	switch what := k.Levers[0].What; f {
	case 0:
		return "no " + strings.ToLower(k.Title)
	case 1:
		return "the " + what + " as it is"
	case 0.5:
		return "half the " + what
	default:
		return unit.Rounded(f, 2) + " times the " + what
	}
}

func plural(n int, one, many string) string {
	if n == 1 {
		return one
	}
	return many
}

// planName says what a plan is: "4 panels and 2 batteries, at 60°"; a tilt that is as it is goes without saying.
func planName(stores []string, c search.Choice) string {
	all := append([]string{fmt.Sprintf("%d %s", c.Panels, plural(c.Panels, "panel", "panels"))}, stores...)
	name := all[0]
	if last := len(all) - 1; last > 0 {
		name = strings.Join(all[:last], ", ") + " and " + all[last]
	}
	if c.Turned {
		name += ", at " + unit.Whole(float64(c.Tilt)*180/math.Pi) + "°"
	}
	return name
}

// costSaid is the cost with what it lies between; where that has no width or is not known, the cost alone.
func (v planView) costSaid() string {
	if v.Range == v.Cost {
		return v.Cost
	}
	return v.Cost + " (" + v.Range + ")"
}

func (a asked) plan(p search.Plan, currency string) planView {
	v := planView{Name: planName(a.words(p.Choice), p.Choice), Nights: page.Itoa(p.Nights), Bad: "not known", Cost: "not known", Range: "not known"}
	if p.Bad.Is {
		v.Bad = page.Itoa(int(p.Bad.Val))
	}
	if p.Cost.Is {
		v.Cost = page.MoneyAbout(p.Cost.Val, currency)
		v.Range = v.Cost
	}
	if from, to := about(p.Low.Val), about(p.High.Val); p.Low.Is && p.High.Is && from != to {
		v.Range = from + " to " + to
	}
	turned := "no"
	if p.Turned {
		turned = "yes"
	}
	v.Fields = []page.PairView{{Name: "panels", Value: page.Itoa(p.Panels)}, {Name: "blocks", Value: page.Itoa(p.Blocks)}, {Name: "factor", Value: exact(p.Factor)},
		{Name: "tilt", Value: exact(float64(p.Tilt))}, {Name: "turned", Value: turned}}
	return v
}

// tableSays is the line over the table of plans.
func tableSays(n int) string {
	if n == 1 {
		return "The plan as a table; it can become a variant"
	}
	return "The " + page.Counted(n, "plan") + " as a table; each can become a variant"
}

// about is a sum in as many digits as prices and lives support.
func about(m unit.Money) string { return page.MoneyAbout(m, "") }

// view says what was found.
func (s *Pages) view(a asked, c search.Cheapest) view {
	v := view{URL: a.url(), Done: true, CSV: a.url() + ".csv", Costs: len(c.Lacks) == 0}
	if !c.WhyNot.IsZero() {
		v.Title, v.CSV = "No plan can be tried yet: "+c.WhyNot.In(a.sys)+".", ""
		return v
	}
	currency := a.project.Value.Currency
	now := s.Results.Of(a.project, a.variant)
	c.Front, c.Best = shown(c)
	for i, p := range c.Front {
		one := a.plan(p, currency)
		one.Best = i == c.Best
		one.Today = p.Choice == c.Today.Choice
		v.Plans = append(v.Plans, one)
	}
	v.title(a, c)
	v.lacks(a, c)
	v.Tried = a.tried(c)
	if c.Best >= 0 {
		v.best(a, c)
	}
	if v.Costs {
		v.picture(c, currency)
	}
	for _, st := range now.Stores {
		if st.Kind == c.Sized && len(st.Because) > 0 {
			v.Not = st.Name + " is not ready: " + form.Sentence(st.Because[0].Say.In(a.sys)) + " Cost and nights on this page count as if it worked as planned."
		}
	}
	return v
}

// shown are the plans of the front that the page lists, and the place of the best among them: of those that differ in their tilt
// alone the one with most nights, and always the best. The file of the numbers has all.
func shown(c search.Cheapest) (plans []search.Plan, best int) {
	best = -1
	for i, p := range c.Front {
		alike := func(o search.Plan) bool { return o.Panels == p.Panels && o.Blocks == p.Blocks && o.Factor == p.Factor }
		if i != c.Best && i+1 < len(c.Front) && slices.ContainsFunc(c.Front[i+1:], alike) {
			continue
		}
		if i == c.Best {
			best = len(plans)
		}
		plans = append(plans, p)
	}
	return plans, best
}

// title is the sentence over the page.
func (v *view) title(a asked, c search.Cheapest) {
	p := a.project.Value
	years := page.Counted(int(p.Money.Horizon.Or(20)), "year")
	switch {
	case c.Best >= 0:
		best := c.Front[c.Best]
		v.Title = fmt.Sprintf("%d full nights of %d cost least with %s: %s.", best.Nights, c.Nights, v.Plans[c.Best].Name, v.Plans[c.Best].costSaid())
		v.Under = fmt.Sprintf("The cost is that of %s, with what wears out replaced. %s plans were tried. The list shows those that give more full nights than every cheaper one.",
			years, unit.Thousands(c.Tried))
	case c.Most < c.Needed:
		v.Title = fmt.Sprintf("None of %s plans reaches %d full nights; the best has %d of %d.", unit.Thousands(c.Tried), c.Needed, c.Most, c.Nights)
		v.Under = "More panels, a larger store or a smaller load is needed."
	default:
		v.Title = fmt.Sprintf("%d full nights of %d need %s. What is cheapest is not known.", c.Front[0].Nights, c.Nights, v.Plans[0].Name)
		v.Under = fmt.Sprintf("%s plans were tried. The list shows those with enough full nights and the fewest panels for each size of the stores.", unit.Thousands(c.Tried))
	}
}

// lacks asks for the prices that are missing, each with a link to its field.
func (v *view) lacks(a asked, c search.Cheapest) {
	list := page.VariantURL(a.project.ID, a.variant.ID) + "/parts"
	for _, l := range c.Lacks {
		if l.Path != "" {
			v.Lacks = append(v.Lacks, form.LinkView{Text: "Price of the backup’s fuel or grid energy", URL: page.FieldURL(page.VariantURL(a.project.ID, a.variant.ID)+"/backup", l.Path)})
			continue
		}
		if l.Part < 0 {
			v.Lacks = append(v.Lacks, form.LinkView{Text: "The list of parts has no " + form.WordFor(string(l.As)) + ". Add it with its price", URL: list})
			continue
		}
		v.Lacks = append(v.Lacks, form.LinkView{Text: "Price of " + page.OrUnnamed(a.variant.Value.Parts[l.Part].Name), URL: page.FieldURL(list, fmt.Sprintf("parts[%d].price", l.Part))})
	}
}

// best tells the best plan beside the variant as it is.
func (v *view) best(a asked, c search.Cheapest) {
	p, currency := c.Front[c.Best], a.project.Value.Currency
	v.Best = &v.Plans[c.Best]
	against := fmt.Sprintf("%+d nights", p.Nights-c.Today.Nights)
	more := ""
	if c.Today.Cost.Is {
		d := float64(p.Cost.Val - c.Today.Cost.Val)
		more = "costs " + about(unit.Money(max(d, -d))) + unit.Space + currency + map[bool]string{true: " more", false: " less"}[d >= 0]
	}
	between := ""
	if v.Best.Range != v.Best.Cost {
		between = v.Best.Range
	}
	v.Facts = []page.FactView{
		{ID: "nights", Label: "Full nights", Value: v.Best.Nights, Note: "of an average year, batteries in their last year"},
		{ID: "bad", Label: "In a bad year", Value: v.Best.Bad, Note: "one year of ten is worse"},
		{ID: "cost", Label: "Cost", Value: v.Best.Cost, Note: between},
		{ID: "against", Label: "Against today", Value: against, Note: more},
	}
	if next := c.Best + 1; next < len(c.Front) {
		v.More = fmt.Sprintf("The next better plan: %s, %s nights for %s.", v.Plans[next].Name, v.Plans[next].Nights, v.Plans[next].Cost)
	}
}

// tried says what was tried, and how far it goes.
func (a asked) tried(c search.Cheapest) []string {
	out := []string{fmt.Sprintf("We tried %d to %s at %s. The controller and the panel cable grow with the panels.", c.Panels[0], page.Counted(c.Panels[1], "panel"), page.Counted(c.Tilts, "tilt"))}
	if c.Counted != nil {
		out = append(out, fmt.Sprintf("We tried %d to %d %s.", c.Blocks[0], c.Blocks[1], c.Counted.Counted.Many))
	}
	if c.Sized != nil {
		out = append(out, c.Sized.Title+": left out, half, as it is, and twice the "+c.Sized.Levers[0].What+". The price of what holds it grows in proportion.")
	}
	return append(out, fmt.Sprintf("Goal: %d of %d full nights. Nights are those of an average year, with batteries in the last year of their life. A bad year comes from 20 made years.", c.Needed, c.Nights))
}

// picture draws cost against nights.
func (v *view) picture(c search.Cheapest, currency string) {
	point := func(p search.Plan, name string) draw.FrontPlan {
		return draw.FrontPlan{Name: name, Nights: float64(p.Nights), Low: float64(p.Low.Val), Cost: float64(p.Cost.Val), High: float64(p.High.Val)}
	}
	f := draw.Front{Needed: c.Needed, Nights: c.Nights, Unit: currency, Today: point(c.Today, "today")}
	for i, p := range c.Front {
		one := point(p, v.Plans[i].Name)
		one.Best = i == c.Best
		f.Plans = append(f.Plans, one)
	}
	first, last := v.Plans[0], v.Plans[len(v.Plans)-1]
	f.Say = fmt.Sprintf("Plans go from %s, %s nights, %s, to %s, %s nights, %s. Today: %d nights, %s %s.", first.Name, first.Nights, first.Cost, last.Name, last.Nights, last.Cost, c.Today.Nights, about(c.Today.Cost.Val), currency)
	v.Wide, v.Narrow, v.Read = f.Draw(false), f.Draw(true), f.Say
}
