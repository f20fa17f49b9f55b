package load

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"duskweight/internal/draw"
	"duskweight/internal/model"
	"duskweight/internal/model/load"
	"duskweight/internal/model/unit"
	"duskweight/web/form"
	"duskweight/web/page"
)

// loadView is what the nights want, ready to print.
type loadView struct {
	Headline string
	Facts    []page.FactView
	Once     onceView
	Flags    []page.FlagView
	Each     [][]string
	Pictures []page.PictureView
	Day      []dayRow
	Chosen   string // a third day beside the two; empty for none
	Missing  []form.LinkView
	Backups  []form.LinkView // the page Backup of each variant
}

// dayRow is one clock hour of a winter and a summer day.
type dayRow struct{ Clock, Winter, Summer, Chosen string }

func loadViewOf(g model.Ground, sys unit.System, labels map[string]string, here string) loadView {
	l, known := g.Nights()
	if !known {
		return withoutNights(g, sys)
	}
	wh := func(e unit.Energy) string { return unit.Energies.Format(float64(e), sys) }
	v := loadView{Headline: nightHeadline(l, g.Project.Load, sys)}
	v.Facts = []page.FactView{
		{ID: "appliances", Label: "Lamps and devices, a mean night", Value: wh(l.MeanNight), Note: "the longest: " + wh(l.MaxNight),
			How: &page.HowView{Formula: "Σ power × number × share on, over the night's hours", Source: "summed over the year's 8\u00a0760 hours", Topic: "night"}},
		{ID: "standing", Label: "All the time, in a mean night", Value: wh(l.StandingNight), Note: unit.Powers.Format(float64(l.StandingPower), sys) + " day and night, without controller and stores",
			How: &page.HowView{Formula: "standing power × night hours", Source: "the same in all variants; each variant adds its own", Topic: "night"}},
		{ID: "year", Label: "Lamps and devices, a year", Value: unit.BigEnergies.Format(float64(l.ApplianceYear), sys), Note: fmt.Sprintf("%d nights count", l.Nights)},
	}
	v.Flags = whyNoSun(g, sys)
	if l.StandingNight > l.MeanNight && l.MeanNight > 0 {
		v.Flags = append(v.Flags, page.FlagView{Say: "What is always on uses more than all lamps and devices. Switching it off saves more than any store gives."})
	}
	for _, f := range l.Flags {
		v.Flags = append(v.Flags, page.FlagView{Say: f.Say.In(sys)})
	}
	for _, e := range l.Each {
		row := []string{page.OrUnnamed(e.Name), wh(e.Night), unit.BigEnergies.Format(float64(e.Year), sys)}
		if e.Refused != "" {
			row = []string{page.OrUnnamed(e.Name), "refused", e.Refused}
		}
		v.Each = append(v.Each, row)
	}
	v.Day = dayRows(l, sys)
	if l.ApplianceYear > 0 && g.Sky != nil {
		v.Pictures = []page.PictureView{burnsPicture(g, "21 December", load.Winter, func(e load.ApplianceYear) [24]float64 { return e.Winter }),
			burnsPicture(g, "21 June", load.Summer, func(e load.ApplianceYear) [24]float64 { return e.Summer })}
		for i := range v.Pictures {
			v.Pictures[i].CSV = here + "/" + v.Pictures[i].ID + ".csv"
		}
	}
	for _, m := range l.Missing {
		link := page.FieldLink("load."+m.Path, labels, here)
		link.Text += ": " + m.Wants
		v.Missing = append(v.Missing, link)
	}
	return v
}

// nightHeadline says what a mean night needs: at least so much, while the time, the power or the number of a device is not known.
func nightHeadline(l load.Year, of load.Load, sys unit.System) string {
	least := slices.ContainsFunc(l.Missing, func(m load.Missing) bool { return strings.HasPrefix(m.Path, "appliances[") })
	needs, because := "A mean night needs ", ""
	if least {
		needs += "at least "
	}
	for _, s := range of.Uncounted()[:min(1, len(of.Uncounted()))] {
		because = form.Sentence(s.In(sys))
	}
	if l.MeanNight <= 0 {
		return cmp.Or(because, "Nothing is asked of the night yet.")
	}
	return strings.TrimSpace(needs + unit.Energies.Format(float64(l.MeanNight+l.StandingNight), sys) + ", before controller and stores. " + because)
}

// withoutNights is what is known of a load at no place: what its appliances use in a year, where all of them keep to the clock.
func withoutNights(g model.Ground, sys unit.System) loadView {
	v := loadView{Headline: "What a night needs is not known yet: its length depends on the place.", Flags: whyNoSun(g, sys)}
	year, waits := g.Appliances()
	if e, ok := year.Value(); ok && e > 0 {
		v.Facts = []page.FactView{{ID: "year", Label: "Lamps and devices, a year", Value: unit.BigEnergies.Format(float64(e), sys), Note: "all of them keep to the clock"}}
	}
	for _, p := range waits {
		v.Flags = append(v.Flags, page.FlagView{Say: form.Sentence(p.Say.In(sys))})
	}
	return v
}

// whyNoSun says why the light of the place is not known; nothing where it is.
func whyNoSun(g model.Ground, sys unit.System) (flags []page.FlagView) {
	for _, p := range g.WhyNot {
		flags = append(flags, page.FlagView{Say: form.Sentence(p.Say.In(sys))})
	}
	return flags
}

// burnsPicture draws what burns when on one day.
func burnsPicture(g model.Ground, name string, day int, hours func(load.ApplianceYear) [24]float64) page.PictureView {
	b := draw.Burns{Name: name}
	for h := range b.Dark {
		b.Dark[h] = g.Sky.Geometry.Down[24*day+h]
	}
	for _, e := range g.Load.Each {
		if e.Refused == "" {
			b.Each = append(b.Each, draw.Burn{Name: page.OrUnnamed(e.Name), Hours: hours(e)})
		}
	}
	return page.PictureView{ID: fmt.Sprintf("burns-%d", day), Title: "What is switched on, hour by hour, " + name, Say: mostAt(b), SVG: page.SvgOf(b.Draw), Numbers: func() page.SheetOfNumbers { return burnsNumbers(b) }}
}

// burnsNumbers is the power of each appliance by the hour.
func burnsNumbers(b draw.Burns) page.SheetOfNumbers {
	t := page.SheetOfNumbers{Name: "what-burns-when", Head: []string{"from hour"}}
	for _, one := range b.Each {
		t.Head = append(t.Head, one.Name+", W")
	}
	for h := range 24 {
		row := []any{h}
		for _, one := range b.Each {
			row = append(row, one.Hours[h])
		}
		t.Rows = append(t.Rows, row)
	}
	return t
}

// mostAt tells the hour in which the most burns.
func mostAt(b draw.Burns) string {
	var sums [24]float64
	for _, one := range b.Each {
		for h, w := range one.Hours {
			sums[h] += w
		}
	}
	most := slices.Max(sums[:])
	if most <= 0 {
		return "Nothing burns on this day."
	}
	return "The most from " + page.Clock(float64(slices.Index(sums[:], most))) + ": " + unit.Powers.Format(most, unit.Metric) + "; in the whole day " + unit.Energies.Format(page.Sum(sums[:])*3600, unit.Metric) + "."
}

// dayRows is the load by clock hour on 21 December and on 21 June.
func dayRows(l load.Year, sys unit.System) []dayRow {
	const december, june = load.Winter * 24, load.Summer * 24
	at := func(h int) string {
		return unit.Powers.Format(l.Standing[h]+l.Essential[h]+l.Nice[h], sys)
	}
	rows := make([]dayRow, 24)
	for h := range rows {
		rows[h] = dayRow{Clock: fmt.Sprintf("%02d:00", h), Winter: at(december + h), Summer: at(june + h)}
	}
	return rows
}

// choose adds the day whose strips are shown to the table, where it is neither of the two that always stand there.
func (v *loadView) choose(g model.Ground, month int, sys unit.System) {
	l, known := g.Nights()
	day, name := dayIn(g, month)
	if !known || len(v.Day) == 0 || day == load.Winter || day == load.Summer {
		return
	}
	v.Chosen = name
	for h := range v.Day {
		i := 24*day + h
		v.Day[h].Chosen = unit.Powers.Format(l.Standing[i]+l.Essential[i]+l.Nice[i], sys)
	}
}
