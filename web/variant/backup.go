package variant

import (
	"cmp"
	"net/http"
	"slices"
	"strconv"

	"duskweight/internal/draw"
	"duskweight/internal/model"
	"duskweight/internal/model/load"
	"duskweight/internal/model/unit"
	"duskweight/web/form"
	"duskweight/web/page"
)

// The page Backup: /projects/{project}/variants/{variant}/backup: what helps out when the stores hold little, and who goes
// first.

func (s *Pages) backupEditor(r *http.Request) (page.Editor[model.Variant], error) {
	p, v, sys, err := s.VariantIn(r)
	if err != nil {
		return page.Editor[model.Variant]{}, err
	}
	url := page.VariantURL(p.ID, v.ID) + "/backup"
	e := s.VariantEditor(r.Context(), p, v, sys, url, "Backup")
	e.Form.Parts = backupForm()
	month := monthAsked(r)
	if month >= 0 {
		e.Query = "?month=" + strconv.Itoa(month+1)
	}
	e.Answer = func(w model.Variant) (page.Answer, error) {
		g := s.Grounds.Of(p)
		r, links := s.Results.Typed(p, v, w), s.LinksOf(p, w, v.ID)
		view := backupViewOf(g, w, r, p.Value.Currency, month, url, sys)
		view.Load = page.ProjectURL(p.ID) + "/load"
		if len(view.Sentences) == 0 {
			view.Sentences = []string{"This variant has no backup, and no device waits or switches off by itself."}
		}
		return page.Answer{First: view.Sentences[0], Bands: []page.BandView{page.VariantBand(r, sys, links.To)}, Body: backupResults(view)}, nil
	}
	return e, nil
}

// monthAsked is the month that the address names, 0 for January; −1 where it names none.
func monthAsked(r *http.Request) int {
	if m, err := strconv.Atoi(r.URL.Query().Get("month")); err == nil && m >= 1 && m <= 12 {
		return m - 1
	}
	return -1
}

// sendBackupCSV sends the numbers of the day as it is saved.
func (s *Pages) sendBackupCSV(w http.ResponseWriter, r *http.Request) error {
	p, v, sys, err := s.VariantIn(r)
	if err != nil {
		return err
	}
	url := page.VariantURL(p.ID, v.ID) + "/backup"
	view := backupViewOf(s.Grounds.Of(p), v.Value, s.Results.Of(p, v), p.Value.Currency, monthAsked(r), url, sys)
	return page.SendPicture(w, r, view.Pictures)
}

// backupView is what the page says, ready to print.
type backupView struct {
	Sentences []string
	Cautions  []page.FlagView
	Order     []page.PairView // who goes first
	Pictures  []page.PictureView
	Load      string // address of the page Night load
}

func backupViewOf(g model.Ground, v model.Variant, r model.VariantResult, currency string, month int, url string, sys unit.System) backupView {
	out := backupView{Sentences: page.ManagedSays(g, v, r, currency, sys), Order: orderOf(g, v, sys)}
	for _, say := range page.BackupCautions(v) {
		out.Cautions = append(out.Cautions, page.FlagView{Say: say, Bad: true})
	}
	if r.YearKnown && r.Year.Hourly != nil {
		if month < 0 {
			month = page.PoorestMonth(r)
		}
		out.Pictures = []page.PictureView{managedPicture(g, v, r, month, url, sys)}
	}
	return out
}

// orderOf says who goes first, the same order in every hour.
func orderOf(g model.Ground, v model.Variant, sys unit.System) (rows []page.PairView) {
	share := func(f float64) string { return unit.Percents.Format(f, sys) }
	if !g.Load.Managed() && !v.Backup.Runs() {
		return nil
	}
	rows = append(rows, page.PairView{Name: "Everything else", Value: "as it comes; what is essential before what is nice to have"})
	levels := slices.Clone(g.Load.Levels)
	slices.SortFunc(levels, func(a, b load.Level) int { return cmp.Compare(b.Below, a.Below) })
	for _, l := range levels {
		rows = append(rows, page.PairView{Name: page.OffAt(g, l.Below), Value: "off below " + share(l.Below) + ", on again at " + share(l.Back)})
	}
	for _, w := range g.Load.Waiting {
		say := "waits: " + page.Clock(float64(w.From)) + " to " + page.Clock(float64(w.To)) + ", at a charge of " + share(w.RunAbove) + " or on sun that is left over"
		if w.Must {
			say += "; in its last hours anyway"
		}
		rows = append(rows, page.PairView{Name: page.OrUnnamed(w.Name), Value: say})
	}
	if b := v.Backup; b.Runs() {
		rows = append(rows, page.PairView{Name: form.SentenceCase(form.WordFor(string(b.Kind))), Value: "starts below " + share(float64(b.Start.Val)) + ", stops at " + share(float64(b.Stop.Val))})
	}
	return rows
}

// managedPicture is a day with little sun of a month, with a link to each of the others.
func managedPicture(g model.Ground, v model.Variant, r model.VariantResult, month int, url string, sys unit.System) page.PictureView {
	day := page.PoorDay(r, month)
	m, date := page.DateOf(day)
	d := managedDay(g, v, r, day)
	d.Name = "A poor day: " + strconv.Itoa(date) + " " + form.MonthNames[m]
	out := page.PictureView{ID: "day", Title: d.Name, Say: d.Say(sys), SVG: page.SvgOf(d.Draw), Head: []string{"From", "Sun", "Runs", "Waits", "Switched off", "Backup", "Charge at the end"}, CSV: url + "/day.csv?month=" + strconv.Itoa(month+1)}
	watts := func(list []float64, h int) string {
		if list == nil || list[h] <= 0 {
			return "–"
		}
		return unit.Powers.Format(cents(list[h]), sys)
	}
	for h := range 24 {
		out.Rows = append(out.Rows, []string{page.Clock(float64(h)), watts(d.Sun, h), watts(d.Runs, h), watts(d.Asked, h), watts(d.Off, h), watts(d.Backup, h), unit.Percents.Format(d.Charge[h], sys)})
	}
	out.Numbers = func() page.SheetOfNumbers {
		t := page.SheetOfNumbers{Name: "poor-day-" + page.Itoa(month+1), Head: []string{"from hour", "sun at the line, W", "runs, W", "waits, W", "kept off, W", "backup, W", "charge at the end"}}
		for h := range 24 {
			backup := 0.0
			if d.Backup != nil {
				backup = d.Backup[h]
			}
			t.Rows = append(t.Rows, []any{h, d.Sun[h], d.Runs[h], d.Asked[h], d.Off[h], backup, d.Charge[h]})
		}
		return t
	}
	for i, name := range form.MonthNames {
		out.Links = append(out.Links, page.Tab{Text: name[:3], URL: url + "?month=" + strconv.Itoa(i+1) + "#day", Here: i == month})
	}
	return out
}

// managedDay reads a day of the year, counted from 0.
func managedDay(g model.Ground, v model.Variant, r model.VariantResult, day int) draw.ManagedDay {
	y, d := r.Year.Hourly, draw.ManagedDay{}
	room := func() []float64 { return make([]float64, 24) }
	d.Sun, d.Runs, d.Waited, d.Asked, d.Off, d.Charge = room(), room(), room(), room(), room(), room()
	if v.Backup.Runs() {
		d.Backup = room()
		d.Marks = append(d.Marks, draw.Starts(float64(v.Backup.Start.Val)))
	}
	for _, l := range g.Load.Levels {
		d.Marks = append(d.Marks, draw.Goes(l.Below))
	}
	own := float64(r.StandingPower - g.Load.StandingPower)
	for c := range 24 {
		h := 24*day + c
		for i := range y.Run {
			d.Waited[c] += y.Run[i][h] / 3600
			d.Asked[c] += y.Asks[i][h] / 3600
		}
		d.Sun[c] = r.Bus.Power[h]
		if y.Shed != nil {
			d.Off[c] = y.Shed[h] / 3600
		}
		d.Runs[c] = max(0, g.Load.Standing[h]+g.Load.Essential[h]+g.Load.Nice[h]+own+d.Waited[c]-y.Unmet[h]/3600)
		if d.Backup != nil {
			d.Backup[c] = (y.Direct[h] + y.Charge[h]) / 3600
		}
		d.Charge[c] = chargeAt(r, h)
	}
	return d
}

// chargeAt is how full the stores of the night are at the end of an hour.
func chargeAt(r model.VariantResult, h int) float64 {
	have, hold, n := 0.0, 0.0, 0
	for _, s := range r.Stores {
		if !s.InYear {
			continue
		}
		if !s.Reservoir.Aside {
			have += r.Year.Hourly.State[n][h]
			hold += float64(s.Year.Capacity)
		}
		n++
	}
	if hold <= 0 {
		return 0
	}
	return have / hold
}
