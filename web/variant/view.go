package variant

import (
	"fmt"

	"duskweight/internal/model"
	"duskweight/internal/model/unit"
	"duskweight/web/form"
	"duskweight/web/page"
)

// variantView is a variant's answer, ready to print.
type variantView struct {
	Headline string
	More     []string
	Verdict  string
	Against  page.ReasonsView
	States   []page.BandView // of each store, where one differs from the variant
	Managed  []string        // what helped out, went off and waited
	Cautions []page.FlagView // of the backup
	URL      string
	Sure     string // address of the second answer, 100 years
	Facts    []page.FactView
	Flags    []page.FlagView
	Stores   [][]string
	Wasted   []string // of stores that gave back much less than they can
	Today    []string
	Money    []page.PairView
	Parts    string // address of the page Buy and make
	Missing  []missingGroup
	missing  []model.Missing
	Pictures []page.PictureView
}

// storesHead is the head of the table of a variant's stores.
var storesHead = [...]string{"Store", "Energy from full", "Comes back", "Put in", "Given back", "Lost"}

// flowView is one part of where the year's energy went; Share is of what the panels brought or the load wanted.
type flowView struct{ Name, Value, Share string }

// variantViewOf prints the answer of a variant that stands on ground g. month, 0 for January, is the one whose day is
// shown; url is the page.
func variantViewOf(kinds page.Kinds, g model.Ground, r model.VariantResult, currency string, month int, url string, sys unit.System) variantView {
	v := variantView{Verdict: r.Verdict, Facts: page.FactsOf(r, sys), Money: moneyRows(r, currency), Parts: url + "/parts", Sure: url + "/sure"}
	v.Headline, v.More = page.HeadlineOf(r, sys)
	for _, s := range r.Stores {
		v.Stores = append(v.Stores, []string{page.OrUnnamed(s.Name), page.Known(s.Capacity, unit.Energies, sys), page.Known(s.RoundTrip, unit.Percents, sys),
			yearOf(s, sys, s.Year.Taken), yearOf(s, sys, s.Year.Delivered), yearOf(s, sys, s.Year.Loss)})
		if k := kinds.Of(s.Kind); k.Year.Wasted != nil {
			v.Wasted = append(v.Wasted, said(k.Year.Wasted(s, sys))...)
		}
	}
	if r.YearKnown {
		for _, remark := range r.Bus.Remarks {
			v.Flags = append(v.Flags, page.FlagView{Say: form.Sentence(remark.In(sys))})
		}
		v.Today = todayOf(kinds, g, r, month)
		v.Pictures = picturesOf(kinds, g, r, month, url, sys)
	}
	v.missing, v.URL = r.Missing, url
	return v
}

// said is a sentence as a list; none where it is empty.
func said(say string) []string {
	if say == "" {
		return nil
	}
	return []string{say}
}

// todayOf says what to do on a usual day of a month (0 is January) with the first store that asks for it.
func todayOf(kinds page.Kinds, g model.Ground, r model.VariantResult, month int) []string {
	for _, s := range r.Stores {
		if k := kinds.Of(s.Kind); k.Year.Today != nil {
			return k.Year.Today(g, r, s, month)
		}
	}
	return nil
}

func yearOf(s model.StoreResult, sys unit.System, e unit.Energy) string {
	if !s.InYear {
		return "–"
	}
	return unit.BigEnergies.Format(float64(e), sys)
}

// flowOf says where the year's energy went.
func flowOf(r model.VariantResult, sys unit.System) []flowView {
	y := r.Year
	row := func(name string, e, of unit.Energy) flowView {
		f := flowView{name, unit.BigEnergies.Format(float64(e), sys), "–"}
		if of > 0 {
			f.Share = page.Share(float64(e)/float64(of), sys)
		}
		return f
	}
	rows := []flowView{row("The panels bring to the line", y.Bus, y.Bus), row("… used at once", y.Direct, y.Bus), row("… put into stores", y.Taken, y.Bus), row("… sun not used", y.Spilled, y.Bus),
		row("The load needs", y.Load, y.Load), row("… of it all the time", y.Standing.Wanted+y.StoreStanding.Wanted, y.Load), row("… out of stores", y.Delivered, y.Load), row("… missing", y.Unmet, y.Load)}
	for _, s := range r.Stores {
		if s.InYear {
			rows = append(rows, row("Lost in "+page.OrUnnamed(s.Name), s.Year.Loss, y.Bus))
		}
	}
	return rows
}

// moneyRows are the few figures of money on the page of the variant; the page Buy and make has the rest.
func moneyRows(r model.VariantResult, currency string) []page.PairView {
	c := r.Cost
	if c.Parts == 0 {
		return []page.PairView{{Name: "Parts on the list", Value: "none yet"}}
	}
	return []page.PairView{{Name: "Parts with a price", Value: fmt.Sprintf("%d of %d", c.Priced, c.Parts)}, {Name: "Priced so far", Value: page.MoneyText(c.Listed, currency)}, {Name: "Paid so far", Value: page.MoneyText(c.Spent, currency)},
		{Name: "Cost of the listed parts", Value: page.MoneyOr(c.Capital, currency)}, {Name: "One stored kWh over its life", Value: page.MoneyOr(c.Levelised, currency)}, {Name: "One full night", Value: page.MoneyOr(c.PerNight, currency)}}
}
