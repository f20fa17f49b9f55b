package web

import (
	"fmt"
	"net/http"
	"slices"
	"strings"

	"duskweight/internal/model"
	"duskweight/internal/model/unit"
	"duskweight/internal/store"
)

// The page Compare: /projects/{project}/compare?v=1&v=2. Two to four variants side by side.

const mostCompared = 4

// compareView is the comparison, ready to print.
type compareView struct {
	URL       string
	Choices   []compareChoice
	Names     []linkView
	IDs       []string // of the same variants
	Variants  string   // where a copy is asked for
	Groups    []compareGroup
	OnlyDiff  bool
	AllInputs bool // inputs that are the same too
	Empty     string
	Costs     costsView
	Range     rangeView
	Terms     string
}

type compareChoice struct {
	ID, Name string
	Chosen   bool
}

type compareGroup struct {
	Title string
	Rows  []compareRow
}

// compareRow is one line: a value for each variant.
type compareRow struct {
	Name    string
	Sense   string // "highest" or "lowest" is best; empty: neither
	Cells   []compareCell
	Differs bool
}

type compareCell struct {
	Text string
	Best bool
}

func (s *Site) showCompare(w http.ResponseWriter, r *http.Request) error {
	p, all, chosen, err := s.chosen(r)
	if err != nil {
		return err
	}
	sys, err := s.units(r.Context())
	if err != nil {
		return err
	}
	url := projectURL(p.ID) + "/compare"
	f, err := s.projectFrame(r.Context(), p, "Compare", url)
	if err != nil {
		return err
	}
	v, err := s.compareOf(p, all, chosen, r.URL.Query()["rows"], sys, url)
	if err != nil {
		return err
	}
	return s.show(w, r, http.StatusOK, f, comparePage(v))
}

// chosenVariants picks the variants of the address, at most four; the first four where it names none.
func chosenVariants(all []store.Saved[model.Variant], ids []string) []store.Saved[model.Variant] {
	var out []store.Saved[model.Variant]
	for _, v := range all {
		if len(ids) == 0 || slices.Contains(ids, fmt.Sprint(v.ID)) {
			out = append(out, v)
		}
	}
	return out[:min(len(out), mostCompared)]
}

func (s *Site) compareOf(p store.Saved[model.Project], all, chosen []store.Saved[model.Variant], rows []string, sys unit.System, url string) (compareView, error) {
	v := compareView{URL: url, Variants: projectURL(p.ID) + "/variants", OnlyDiff: slices.Contains(rows, "differ"), AllInputs: slices.Contains(rows, "all")}
	for _, a := range all {
		v.Choices = append(v.Choices, compareChoice{fmt.Sprint(a.ID), a.Value.Name, slices.ContainsFunc(chosen, func(c store.Saved[model.Variant]) bool { return c.ID == a.ID })})
	}
	if len(chosen) < 2 {
		v.Empty = "Choose at least two variants. Copy one on the overview, change it, and compare."
		return v, nil
	}
	g := s.grounds.of(p)
	results := make([]model.VariantResult, len(chosen))
	for i, c := range chosen {
		results[i] = g.Evaluate(c.Value)
		v.Names = append(v.Names, linkView{c.Value.Name, variantURL(p.ID, c.ID)})
		v.IDs = append(v.IDs, fmt.Sprint(c.ID))
	}
	v.Groups = answerGroups(results, p.Value.Currency, sys)
	money := &v.Groups[len(v.Groups)-1]
	money.Rows = append(money.Rows, compareRow{Name: "Asked for by the plan, not on its list"})
	for i, c := range chosen {
		_, open := model.Matched(c.Value.Parts, model.Needs(c.Value, results[i]))
		row := &money.Rows[len(money.Rows)-1]
		row.Cells = append(row.Cells, compareCell{Text: counted(len(open), "part")})
	}
	for i := range v.Groups {
		markDifferent(&v.Groups[i], v.OnlyDiff)
	}
	v.Groups = append(slices.DeleteFunc(v.Groups, func(g compareGroup) bool { return len(g.Rows) == 0 }), inputGroups(s.tables, chosen, v.AllInputs, sys)...)
	v.Terms = projectURL(p.ID) + "/money"
	if g.Sky != nil && g.Load.ApplianceYear > 0 {
		v.Range = rangeLater(p.ID, chosen)
		v.Range.Follow += "&pairs=yes"
		v.Range.Room += " pairs"
	}
	var err error
	v.Costs, err = costsOf(billsOf(results, chosen, p.Value.Currency), p.ID, sys)
	return v, err
}

func markDifferent(g *compareGroup, only bool) {
	for i, row := range g.Rows {
		for _, c := range row.Cells[1:] {
			if c.Text != row.Cells[0].Text {
				g.Rows[i].Differs = true
			}
		}
	}
	if only {
		g.Rows = slices.DeleteFunc(g.Rows, func(r compareRow) bool { return !r.Differs })
	}
}

// answerGroups are the answers, with the best of each row in words.
func answerGroups(rs []model.VariantResult, currency string, sys unit.System) []compareGroup {
	money := func(v float64) string { return moneyText(unit.Money(v), currency) }
	year := func(f func(model.VariantResult) float64) func(model.VariantResult) (float64, bool) {
		return func(r model.VariantResult) (float64, bool) {
			if !r.YearKnown || r.Open != "" {
				return 0, false
			}
			return f(r), true
		}
	}
	energy := func(v float64) string { return unit.BigEnergies.Format(v, sys) }
	count := func(v float64) string { return unit.Rounded(v, 3) }
	return []compareGroup{
		{"Verdict", []compareRow{
			textRow("Verdict", rs, func(r model.VariantResult) string { return orNotKnown(r.Verdict) }),
			textRow("Plan sheet", rs, func(r model.VariantResult) string { return readyOf(r) }),
		}},
		{"Nights", []compareRow{
			numberRow("Nights with light", "highest", rs, year(func(r model.VariantResult) float64 { return float64(r.Year.NightsServed) }), count),
			numberRow("Nights that count", "", rs, year(func(r model.VariantResult) float64 { return float64(r.Year.Nights) }), count),
			numberRow("Longest time without, hours", "lowest", rs, year(func(r model.VariantResult) float64 { return float64(r.Year.LongestOutage.Hours) }), count),
			numberRow("Share of lamps and devices served", "highest", rs, func(r model.VariantResult) (float64, bool) {
				return float64(r.Year.ServedShare.Val), r.Year.ServedShare.Is
			},
				func(v float64) string { return unit.Percents.Format(v, sys) }),
		}},
		{"Energy, a year", []compareRow{
			numberRow("Out of stores", "highest", rs, year(func(r model.VariantResult) float64 { return float64(r.Year.Delivered) }), energy),
			numberRow("Uses power all the time", "lowest", rs, year(func(r model.VariantResult) float64 {
				return float64(r.Year.Standing.Wanted + r.Year.StoreStanding.Wanted)
			}), energy),
			numberRow("Sun not used", "", rs, year(func(r model.VariantResult) float64 { return float64(r.Year.Spilled) }), energy),
			numberRow("Wanted and not there", "lowest", rs, year(func(r model.VariantResult) float64 { return float64(r.Year.Unmet) }), energy),
		}},
		{"Stores", []compareRow{
			textRow("Stores", rs, storeNames),
			textRow("Give from full", rs, func(r model.VariantResult) string {
				return eachStore(r, func(s model.StoreResult) string { return known(s.Capacity, unit.Energies, sys) })
			}),
			textRow("Of what goes in comes back", rs, func(r model.VariantResult) string {
				return eachStore(r, func(s model.StoreResult) string { return known(s.RoundTrip, unit.Percents, sys) })
			}),
			textRow("Breaks first", rs, breaksFirst),
		}},
		{"Money", []compareRow{
			textRow("Parts priced", rs, func(r model.VariantResult) string { return fmt.Sprintf("%d of %d", r.Cost.Priced, r.Cost.Parts) }),
			numberRow("Cost of the listed parts", "lowest", rs, func(r model.VariantResult) (float64, bool) { return float64(r.Cost.Capital.Val), r.Cost.Capital.Is }, money),
			numberRow("Spent so far", "", rs, func(r model.VariantResult) (float64, bool) { return float64(r.Cost.Spent), r.Cost.Parts > 0 }, money),
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
	if sense == "" || n < 2 {
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

func storeNames(r model.VariantResult) string {
	return eachStore(r, func(s model.StoreResult) string { return orUnnamed(s.Name) })
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

func breaksFirst(r model.VariantResult) string {
	for _, s := range r.Stores {
		if s.Hoist != nil && len(s.Hoist.Checks) > 0 {
			c := s.Hoist.Checks[0]
			return c.Part + ": " + checkWords[c.Word].word
		}
	}
	return "nothing hangs"
}
