// Package compare shows variants side by side (/projects/{project}/compare): what they give, what they cost over the
// years, what was put in; and the terms of the money (/projects/{project}/money).
package compare

import (
	"context"
	"fmt"
	"net/http"
	"slices"
	"strings"

	"github.com/go-chi/chi/v5"

	"duskweight/internal/model"
	"duskweight/internal/model/unit"
	"duskweight/internal/store"
	"duskweight/web/form"
	"duskweight/web/page"
)

// Pages are the pages of this room.
type Pages struct{ *page.Site }

// Routes hangs the pages at their addresses.
func (s *Pages) Routes(r chi.Router) {
	r.Get("/projects/{project}/compare", s.Page(s.showCompare))
	r.Post("/projects/{project}/compare/copy", s.Page(s.copyInput))
	r.Get("/projects/{project}/compare/costs.csv", s.Page(s.sendCompareCSV))
	page.EditorAt(r, s.Site, "/projects/{project}/money", s.moneyEditor)
}

// compareView is the comparison, ready to print.
type compareView struct {
	URL       string
	Rocks     string // address of the page that weighs rocks, water and cells
	Choices   []page.CompareChoice
	Names     []form.LinkView
	States    []page.BandView // of the same variants
	IDs       []string        // of the same variants
	Variants  string          // where a copy is asked for
	Axes      axesView
	Differ    []compareGroup // answers that differ and that no axis shows
	Money     []compareGroup // those about money
	Inputs    []compareGroup // inputs that differ
	Copy      copyView
	Folded    []compareGroup // answers that are the same, those that an axis shows, and with AllInputs the inputs that are the same
	More      string         // the heading of what is folded
	AllInputs bool           // inputs that are the same too
	Empty     string
	Costs     page.CostsView
	Range     page.RangeView
	Average   string // how the average year differs from a usual one
	Terms     string
}

type compareGroup struct {
	Title string
	Rows  []compareRow
}

// compareRow is one line: a value for each variant.
type compareRow struct {
	Name    string
	Sense   string // "highest" or "lowest" is best; other words as they are; empty: neither
	Cells   []compareCell
	Differs bool
	OnAxis  bool // stands above on one scale

	key      string   // of an input: its name in the form that copies it
	at       []string // its path in each variant; empty where the variant has none
	labelled bool     // it is read on a part
}

// senseInWords says which value is the better one.
func (r compareRow) senseInWords() string {
	if r.Sense == "highest" || r.Sense == "lowest" {
		return r.Sense + " is best"
	}
	return r.Sense
}

type compareCell struct {
	Text string
	told string // of an input, as it is read beside others
	Best bool
}

func (s *Pages) showCompare(w http.ResponseWriter, r *http.Request) error {
	p, all, chosen, err := s.Chosen(r)
	if err != nil {
		return err
	}
	sys, err := s.Units(r.Context())
	if err != nil {
		return err
	}
	url := page.ProjectURL(p.ID) + "/compare"
	f, err := s.ProjectFrame(r.Context(), p, "Compare", url)
	if err != nil {
		return err
	}
	f.Style = "compare.css"
	v, err := s.compareOf(r.Context(), p, all, chosen, r.URL.Query()["rows"], sys, url)
	if err != nil {
		return err
	}
	return s.Show(w, r, http.StatusOK, f, comparePage(v))
}

func (s *Pages) compareOf(ctx context.Context, p store.Saved[model.Project], all, chosen []store.Saved[model.Variant], rows []string, sys unit.System, url string) (compareView, error) {
	v := compareView{Rocks: page.ProjectURL(p.ID) + "/rocks", URL: url, Variants: page.ProjectURL(p.ID) + "/variants", AllInputs: slices.Contains(rows, "all")}
	for _, a := range all {
		v.Choices = append(v.Choices, page.CompareChoice{ID: fmt.Sprint(a.ID), Name: a.Value.Name, Chosen: slices.ContainsFunc(chosen, func(c store.Saved[model.Variant]) bool { return c.ID == a.ID })})
	}
	if len(chosen) < 2 {
		v.Empty = "Choose at least two variants. Copy one on the overview, change it, and compare."
		return v, nil
	}
	results := s.Results.All(p, chosen)
	for i, c := range chosen {
		v.Names = append(v.Names, form.LinkView{Text: c.Value.Name, URL: page.VariantURL(p.ID, c.ID)})
		v.IDs = append(v.IDs, fmt.Sprint(c.ID))
		v.States = append(v.States, page.VariantBand(results[i], sys, nil))
	}
	groups := answerGroups(results, p.Value.Currency, sys)
	groups = slices.Insert(groups, len(groups)-1, managedGroup(results, sys)...) // money stays the last
	years, err := s.Years.Of(ctx, p, chosen, results)
	if err != nil {
		return v, err
	}
	v.years(groups, years, results)
	names := make([]string, len(v.Names))
	for i, n := range v.Names {
		names[i] = form.Clip(n.Text, page.PaperName)
	}
	v.Axes = axesOf(names, results, years, p.Value.Currency)
	money := &groups[len(groups)-1]
	money.Rows = append(money.Rows, compareRow{Name: "Needed by the plan, not on its list"})
	for i, c := range chosen {
		_, open := model.Matched(c.Value.Parts, model.Needs(c.Value, results[i]))
		row := &money.Rows[len(money.Rows)-1]
		row.Cells = append(row.Cells, compareCell{Text: page.Counted(len(open), "part")})
	}
	for i := range groups {
		markDifferent(&groups[i])
	}
	inputs := inputGroups(s.Tables, chosen, v.AllInputs, sys)
	v.lay(groups, inputs)
	v.copyOf(inputs, chosen, url+"/copy?"+page.NamingChosen(chosen).Encode())
	v.Terms = page.ProjectURL(p.ID) + "/money"
	if g := s.Grounds.Of(p); g.Sky != nil && g.Load.ApplianceYear > 0 {
		v.Range = page.RangeLater(p.ID, chosen)
		v.Range.Follow += "&pairs=yes"
		v.Range.Room += " pairs"
	}
	v.Costs, err = page.CostsOf(page.BillsOf(results, chosen, p.Value.Currency), p.ID, sys)
	return v, err
}

func markDifferent(g *compareGroup) {
	for i, row := range g.Rows {
		for _, c := range row.Cells[1:] {
			if c.Text != row.Cells[0].Text {
				g.Rows[i].Differs = true
			}
		}
	}
}

// lay puts each row in its place: what differs in sight, what is the same or stands on an axis into one fold.
func (v *compareView) lay(answers, inputs []compareGroup) {
	folded := func(r compareRow) bool { return r.OnAxis || !r.Differs }
	same := func(r compareRow) bool { return !r.Differs }
	last := len(answers) - 1
	v.Differ, v.Money, v.Inputs = without(answers[:last], folded), without(answers[last:], folded), without(inputs, same)
	v.Folded = append(without(answers, func(r compareRow) bool { return !folded(r) }), without(inputs, func(r compareRow) bool { return !same(r) })...)
	n := 0
	for _, g := range v.Folded {
		n += len(g.Rows)
	}
	v.More = page.Counted(n, "row") + " more, the same or shown above"
}

// without are groups without some of their rows; a group that is left without any goes too.
func without(groups []compareGroup, gone func(compareRow) bool) (out []compareGroup) {
	for _, g := range groups {
		if g.Rows = slices.DeleteFunc(slices.Clone(g.Rows), gone); len(g.Rows) > 0 {
			out = append(out, g)
		}
	}
	return out
}

// onAxis marks a row that a scale on top of the page shows.
func onAxis(r compareRow) compareRow {
	r.OnAxis = true
	return r
}

// answerGroups are the answers, with the best of each row in words.
func answerGroups(rs []model.VariantResult, currency string, sys unit.System) []compareGroup {
	money := func(v float64) string { return page.MoneyText(unit.Money(v), currency) }
	year := func(f func(model.VariantResult) float64) func(model.VariantResult) (float64, bool) {
		return func(r model.VariantResult) (float64, bool) {
			if !r.YearKnown || !r.Open.IsZero() {
				return 0, false
			}
			return f(r), true
		}
	}
	energy := func(v float64) string { return unit.BigEnergies.Format(v, sys) }
	count := func(v float64) string { return unit.Rounded(v, 3) }
	return []compareGroup{
		{"Verdict", []compareRow{
			onAxis(textRow("Verdict", rs, func(r model.VariantResult) string { return form.OrNotKnown(r.Verdict) })),
			onAxis(textRow("Plan sheet", rs, func(r model.VariantResult) string { return page.ReadyOf(r, sys) })),
		}},
		{nightsTitle, []compareRow{
			numberRow("Full nights, average year", "highest", rs, year(func(r model.VariantResult) float64 { return float64(r.Last.NightsFull) }), count),
			numberRow("Nights that count", "", rs, year(func(r model.VariantResult) float64 { return float64(r.Year.Nights) }), count),
			numberRow("Longest time without, average year, hours", "lowest", rs, year(func(r model.VariantResult) float64 { return float64(r.Last.LongestOutage) }), count),
			onAxis(numberRow("Share of lamps and devices served, average year", "highest", rs, func(r model.VariantResult) (float64, bool) {
				return float64(r.Year.ServedShare.Val), r.Year.ServedShare.Is
			},
				func(v float64) string { return page.Share(v, sys) })),
		}},
		{"Energy, a year", []compareRow{
			numberRow("Out of stores", "highest", rs, year(func(r model.VariantResult) float64 { return float64(r.Year.Delivered) }), energy),
			numberRow("Always on", "lowest", rs, year(func(r model.VariantResult) float64 {
				return float64(r.Year.Standing.Wanted + r.Year.StoreStanding.Wanted)
			}), energy),
			numberRow("Sun not used", "no harm: sun is free", rs, year(func(r model.VariantResult) float64 { return float64(r.Year.Spilled) }), energy),
			numberRow("Needed and missing", "lowest", rs, year(func(r model.VariantResult) float64 { return float64(r.Year.Unmet) }), energy),
		}},
		{"Stores", []compareRow{
			textRow("Stores", rs, storeNames),
			textRow("Energy from full", rs, func(r model.VariantResult) string {
				return eachStore(r, func(s model.StoreResult) string { return page.Known(s.Capacity, unit.Energies, sys) })
			}),
			textRow("You get back", rs, func(r model.VariantResult) string {
				return eachStore(r, func(s model.StoreResult) string { return page.Known(s.RoundTrip, unit.Percents, sys) })
			}),
			onAxis(textRow("Breaks first", rs, page.BreaksFirst)),
		}},
		{"Money", []compareRow{
			textRow("Parts priced", rs, func(r model.VariantResult) string { return fmt.Sprintf("%d of %d", r.Cost.Priced, r.Cost.Parts) }),
			onAxis(numberRow("Cost of the listed parts", "lowest", rs, func(r model.VariantResult) (float64, bool) { return float64(r.Cost.Capital.Val), r.Cost.Capital.Is }, money)),
			rangeRow("All parts over the years, in today's money", rs, func(r model.VariantResult) string {
				return page.MoneyAboutRange(r.Cost.Low.Whole, r.Cost.Whole, r.Cost.High.Whole, currency)
			}, func(r model.VariantResult) (float64, bool) { return float64(r.Cost.Whole.Val), r.Cost.Whole.Is }, money),
			numberRow("Paid so far", "", rs, func(r model.VariantResult) (float64, bool) { return float64(r.Cost.Spent), r.Cost.Parts > 0 }, money),
			numberRow("One stored kWh over its life", "lowest", rs, func(r model.VariantResult) (float64, bool) { return float64(r.Cost.Levelised.Val), r.Cost.Levelised.Is }, money),
		}},
	}
}

func textRow(name string, rs []model.VariantResult, of func(model.VariantResult) string) compareRow {
	row := compareRow{Name: name}
	for _, r := range rs {
		row.Cells = append(row.Cells, compareCell{Text: of(r)})
	}
	return row
}

// numberRow marks the best where at least two are known and they are not all the same.
func numberRow(name, sense string, rs []model.VariantResult, of func(model.VariantResult) (float64, bool), show func(float64) string) compareRow {
	row := compareRow{Name: name, Sense: sense}
	best, n := -1, 0
	values := make([]float64, len(rs))
	for i, r := range rs {
		v, ok := of(r)
		if !ok {
			row.Cells = append(row.Cells, compareCell{Text: "not known"})
			continue
		}
		values[i] = v
		n++
		row.Cells = append(row.Cells, compareCell{Text: show(v)})
		if best < 0 || sense == "highest" && v > values[best] || sense == "lowest" && v < values[best] {
			best = i
		}
	}
	if sense != "highest" && sense != "lowest" || n < 2 {
		return row
	}
	others := 0
	for i := range row.Cells {
		if row.Cells[i].Text != row.Cells[best].Text && row.Cells[i].Text != "not known" {
			others++
		}
	}
	for i := range row.Cells {
		if others > 0 && row.Cells[i].Text == row.Cells[best].Text {
			row.Cells[i].Best = true
		}
	}
	return row
}

// rangeRow is a row of sums, the lowest marked, that are told with what they lie between.
func rangeRow(name string, rs []model.VariantResult, say func(model.VariantResult) string, of func(model.VariantResult) (float64, bool), show func(float64) string) compareRow {
	row := numberRow(name, "lowest", rs, of, show)
	for i, r := range rs {
		row.Cells[i].Text = say(r)
	}
	return row
}

func storeNames(r model.VariantResult) string {
	return eachStore(r, func(s model.StoreResult) string { return page.OrUnnamed(s.Name) })
}

func eachStore(r model.VariantResult, of func(model.StoreResult) string) string {
	if len(r.Stores) == 0 {
		return "none"
	}
	var parts []string
	for _, s := range r.Stores {
		parts = append(parts, of(s))
	}
	return strings.Join(parts, "; ")
}
