package web

import (
	"fmt"
	"strings"

	"duskweight/internal/model"
	"duskweight/internal/model/reason"
	"duskweight/internal/model/unit"
)

// variantView is a variant's answer, ready to print.
type variantView struct {
	Headline string
	More     []string
	Verdict  string
	Ready    string
	Sure     string // address of the second answer, 100 years
	Facts    []factView
	Flags    []flagView
	Stores   [][]string
	Wasted   []string // of stores that gave back much less than they can
	Today    []string
	Money    []pairView
	Parts    string // address of the page Buy and make
	Missing  []missingGroup
	missing  []model.Missing
	Pictures []pictureView
}

// pictureView is an SVG of ours with its title, the sentence that reads it, links to its likes, and its numbers.
type pictureView struct {
	ID, Title, Say, SVG string
	Links               []tab
	Head                []string
	Rows                [][]string
	CSV                 string                // address of its numbers
	Numbers             func() sheetOfNumbers // what stands there
}

// storesHead is the head of the table of a variant's stores.
var storesHead = [...]string{"Store", "Gives from full", "Comes back", "Put in", "Given back", "Lost"}

// flowView is one part of where the year's energy went; Share is of what the panels brought or the load wanted.
type flowView struct{ Name, Value, Share string }

// variantViewOf prints the answer of a variant that stands on ground g. month, 0 for January, is the one whose day is
// shown; url is the page.
func variantViewOf(g model.Ground, r model.VariantResult, currency string, month int, url string, sys unit.System) variantView {
	r = retold(r, sys)
	v := variantView{Verdict: r.Verdict, Facts: factsOf(r, sys), Money: moneyRows(r, currency), Parts: url + "/parts", Sure: url + "/sure"}
	v.Headline, v.More = headlineOf(r)
	v.Ready = readyOf(r)
	for _, b := range r.Because {
		v.Flags = append(v.Flags, flagView{Say: b.Text().In(sys), Bad: b.Word == reason.No})
	}
	for _, s := range r.Stores {
		v.Stores = append(v.Stores, []string{orUnnamed(s.Name), known(s.Capacity, unit.Energies, sys), known(s.RoundTrip, unit.Percents, sys),
			yearOf(s, sys, s.Year.Taken), yearOf(s, sys, s.Year.Delivered), yearOf(s, sys, s.Year.Loss)})
		if say := wastedBy(s, sys); say != "" {
			v.Wasted = append(v.Wasted, say)
		}
	}
	if r.YearKnown {
		for _, say := range r.Bus.Remarks {
			v.Flags = append(v.Flags, flagView{Say: sentence(say)})
		}
		v.Today = todayOf(g, r, month)
		v.Pictures = picturesOf(g, r, month, url, sys)
	}
	v.missing = r.Missing
	return v
}

// wastedBy says why a lifted mass gave back less than half of what it gives from full: it comes down at its own power, and
// what was wanted was less.
func wastedBy(s model.StoreResult, sys unit.System) string {
	if s.Hoist == nil || s.Reservoir == nil || !s.InYear || !s.RoundTrip.Is || s.Reservoir.DrawMin <= 0 || float64(s.Year.Delivered) >= 0.5*float64(s.RoundTrip.Val)*float64(s.Year.Taken) {
		return ""
	}
	return "“" + orUnnamed(s.Name) + "” comes down at " + unit.Powers.Format(float64(s.Reservoir.DrawMin), sys) + " or more. Mostly less was wanted: what uses power all the time brings it down for nothing."
}

// readyOf says what the plan sheet will say.
func readyOf(r model.VariantResult) string {
	if r.Ready == "no" {
		return strings.ToLower(doNot(r))
	}
	return map[string]string{"yes": "ready", "not_known": "not ready: something is not known"}[string(r.Ready)]
}

// doNot is what a plan that is not to be built says: nothing is hung where a hoist is the reason, and else the battery is
// not used.
func doNot(r model.VariantResult) string {
	for _, s := range r.Stores {
		if s.Hoist != nil && s.Hoist.Ready == "no" {
			return "DO NOT HANG"
		}
	}
	return "DO NOT USE"
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
			f.Share = unit.Percents.Format(float64(e)/float64(of), sys)
		}
		return f
	}
	rows := []flowView{row("The panels bring to the line", y.Bus, y.Bus), row("… used at once", y.Direct, y.Bus), row("… put into stores", y.Taken, y.Bus), row("… sun not used", y.Spilled, y.Bus),
		row("The load wants", y.Load, y.Load), row("… of it all the time", y.Standing.Wanted+y.StoreStanding.Wanted, y.Load), row("… out of stores", y.Delivered, y.Load), row("… not there", y.Unmet, y.Load)}
	for _, s := range r.Stores {
		if s.InYear {
			rows = append(rows, row("Lost in "+orUnnamed(s.Name), s.Year.Loss, y.Bus))
		}
	}
	return rows
}

// nightsByMonth counts the nights with light, by the month in which each night begins.
func nightsByMonth(r model.VariantResult) [][]string {
	var out [][]string
	d := 0
	for m, days := range monthDays {
		served, of := 0, 0
		for range days {
			if n := r.Year.NightLog[d]; n.Counted {
				of++
				if n.Served {
					served++
				}
			}
			d++
		}
		out = append(out, []string{monthNames[m], itoa(served), itoa(of), itoa(of - served)})
	}
	return out
}

// moneyRows are the few figures of money on the page of the variant; the page Buy and make has the rest.
func moneyRows(r model.VariantResult, currency string) []pairView {
	c := r.Cost
	if c.Parts == 0 {
		return []pairView{{"Parts on the list", "none yet"}}
	}
	return []pairView{{"Parts with a price", fmt.Sprintf("%d of %d", c.Priced, c.Parts)}, {"Priced so far", moneyText(c.Listed, currency)}, {"Spent so far", moneyText(c.Spent, currency)},
		{"Cost of the listed parts", moneyOr(c.Capital, currency)}, {"One stored kWh over its life", moneyOr(c.Levelised, currency)}, {"One night with light", moneyOr(c.PerNight, currency)}}
}
