package web

import (
	"cmp"
	"fmt"
	"math"
	"net/http"
	"slices"

	"duskweight/internal/model/search"
	"duskweight/internal/model/unit"
)

// The page Panel and store together: /projects/{project}/variants/{variant}/sweep.

// sweepView is the table of nights, ready to print.
type sweepView struct {
	Say, Best, Why string
	Store          string // over the names of the rows
	Panels         []string
	Rows           []sweepRow
	Back           linkView
	CSV            string
	Missing        string     // where what is missing stands
	Lines          *chartView // which pairs have so many nights with light; nil where no border runs through the table
}

type sweepRow struct {
	Name  string
	Cells []sweepCell
}

// sweepCell is one pair: its nights, the class of its band, and a sign that says the same without colour.
type sweepCell struct {
	Nights, Sign, Band, Cost string
	Today, Best              bool
}

func (s *Site) showSweep(w http.ResponseWriter, r *http.Request) error {
	p, v, sys, err := s.variantIn(r)
	if err != nil {
		return err
	}
	back := variantURL(p.ID, v.ID) + "/takes"
	f, err := s.variantFrame(r.Context(), p, v, "Panel and store together", back)
	if err != nil {
		return err
	}
	sweep, err := search.SweepOf(r.Context(), s.grounds.of(p), v.Value)
	if err != nil {
		return err
	}
	view := sweepViewOf(sweep, p.Value.Currency, sys)
	view.Back = linkView{"Back to what it would take", back}
	view.Missing = variantURL(p.ID, v.ID) + "#missing"
	view.CSV = variantURL(p.ID, v.ID) + "/sweep.csv"
	if lines := contours(sweep, sys); len(lines.lines) > 0 {
		c, err := lines.view(variantURL(p.ID, v.ID) + "/sweep-lines.csv")
		if err != nil {
			return err
		}
		c.Wide = true
		view.Lines = &c
	}
	return s.show(w, r, http.StatusOK, f, sweepPage(view))
}

// sendSweepCSV sends the nights of every pair.
func (s *Site) sendSweepCSV(w http.ResponseWriter, r *http.Request) error {
	sweep, _, err := s.sweepAt(r)
	if err != nil {
		return err
	}
	store := map[string]string{"battery": "store, Ah", "mass": "store, kg"}[sweep.Store]
	t := sheetOfNumbers{Name: "panel-and-store", Head: []string{"panels, W", store, "nights with light", "of", "all parts"}}
	for _, row := range sweep.Cells {
		for _, c := range row {
			t.Rows = append(t.Rows, []any{c.Panel * float64(sweep.Power), storeIn(sweep, c.Size), c.Nights, c.Of, orNone(c.Cost)})
		}
	}
	return sendCSV(w, t)
}

// sendContoursCSV sends the points of the lines of equal nights.
func (s *Site) sendContoursCSV(w http.ResponseWriter, r *http.Request) error {
	sweep, sys, err := s.sweepAt(r)
	if err != nil {
		return err
	}
	lines := contours(sweep, sys)
	if len(lines.lines) == 0 {
		return errNotFound
	}
	return sendCSV(w, lines.numbers())
}

// sweepAt is the sweep of the variant of the address.
func (s *Site) sweepAt(r *http.Request) (search.Sweep, unit.System, error) {
	p, v, sys, err := s.variantIn(r)
	if err != nil {
		return search.Sweep{}, sys, err
	}
	sweep, err := search.SweepOf(r.Context(), s.grounds.of(p), v.Value)
	if err == nil && len(sweep.Cells) == 0 {
		err = errNotFound
	}
	return sweep, sys, err
}

// storeIn is the size of the store times f: Ah of a battery, kg of a mass.
func storeIn(s search.Sweep, f float64) float64 {
	if s.Store == "battery" {
		return f * float64(s.Charge.Val) / 3600
	}
	return f * float64(s.Mass.Val)
}

func orNone[T unit.Number](k unit.Known[T]) float64 {
	if !k.Is {
		return math.NaN()
	}
	return float64(k.Val)
}

// contours are the lines along which so many nights have light. With more panel or more store there are hardly ever fewer,
// so a line falls from left to right; between two pairs of the table it is where the nights cross when they grow evenly with
// the logarithm of panel or store, as the table is spaced.
func contours(s search.Sweep, sys unit.System) plot {
	watts, store, name, colour := scaleOf(unit.Powers, sys), scaleOf(unit.Charges, sys), "battery", "--cells"
	size := float64(s.Charge.Val)
	if s.Store == "mass" {
		store, name, colour, size = scaleOf(unit.Masses, sys), "mass, with its gears", "--mass", float64(s.Mass.Val)
	}
	p := plot{id: "contours", title: "Panel and store that together have so many nights with light", x: watts.axis("panels"), y: []string{store.axis(name)},
		say: "Above a line at least so many nights have light. Where a line stands upright, a larger store adds nothing; where it lies flat, more panels add nothing."}
	if len(s.Cells) == 0 || size <= 0 {
		return p
	}
	p.head = []string{"Line", watts.axis("panels"), store.axis(name)}
	for i, b := range sweepBands[:len(sweepBands)-1] {
		l := plotLine{name: sentenceCase(b.say), unit: store.unit, color: []string{"--ink", "--ink", "--ink", "--soft"}[i], dash: []string{"solid", "dashed", "dotted", "solid"}[i]}
		for _, at := range border(s, b.share) {
			l.points = append(l.points, [2]float64{watts.of(at[0] * float64(s.Power)), store.of(at[1] * size)})
		}
		if len(l.points) < 2 {
			continue
		}
		p.lines = append(p.lines, l)
		for _, at := range l.points {
			p.rows = append(p.rows, []string{l.name, unit.Rounded(at[0], 3), unit.Rounded(at[1], 3)})
		}
	}
	if len(p.lines) == 0 {
		return p
	}
	p.wide = watts.of(1.25 * float64(s.Power))
	p.lines = append(p.lines, plotLine{name: "As it is", unit: store.unit, color: colour, mark: "diamond", points: [][2]float64{{watts.of(float64(s.Power)), store.of(size)}}})
	if s.Best != nil {
		p.lines = append(p.lines, plotLine{name: "Cheapest with 95 %", unit: store.unit, color: "--ink", mark: "circle",
			points: [][2]float64{{watts.of(s.Best.Panel * float64(s.Power)), store.of(s.Best.Size * size)}}})
	}
	return p
}

// border is where the nights of a table cross a share of those that count: factors of panel and store, from the least
// panel on.
func border(s search.Sweep, share float64) (at [][2]float64) {
	short := func(c search.SweepCell) float64 { return float64(c.Nights) - share*float64(c.Of) }
	cross := func(a, b search.SweepCell) {
		if x, y := short(a), short(b); x < 0 && y >= 0 {
			t := x / (x - y)
			at = append(at, [2]float64{a.Panel * math.Pow(b.Panel/a.Panel, t), a.Size * math.Pow(b.Size/a.Size, t)})
		}
	}
	for i, row := range s.Cells {
		for k, c := range row {
			if k > 0 {
				cross(row[k-1], c)
			}
			if i > 0 {
				cross(s.Cells[i-1][k], c)
			}
		}
	}
	slices.SortFunc(at, func(a, b [2]float64) int { return cmp.Or(cmp.Compare(a[0], b[0]), cmp.Compare(b[1], a[1])) })
	return slices.Compact(at)
}

// sweepBands are the bands of nights with light, from the best: at least this share, its class and its sign.
var sweepBands = []struct {
	share            float64
	class, sign, say string
}{
	{search.Target, "band-4", "●", "at least 95 % of the nights"},
	{0.75, "band-3", "◕", "at least 75 %"},
	{0.5, "band-2", "◑", "at least half"},
	{0.1, "band-1", "◔", "at least a tenth"},
	{0, "band-0", "○", "less"},
}

func sweepViewOf(s search.Sweep, currency string, sys unit.System) sweepView {
	out := sweepView{Say: "Nights with light in a usual year. Panels grow with their controller; all else stays as it is."}
	if len(s.Cells) == 0 {
		out.Why = "There is no year to try yet: it takes a place, a night load, panels and a store."
		return out
	}
	out.Store = map[string]string{"battery": "Battery", "mass": "Mass, with its gears"}[s.Store]
	for _, c := range s.Cells[0] {
		out.Panels = append(out.Panels, panelPower(s, c.Panel, sys))
	}
	for _, cells := range s.Cells {
		row := sweepRow{Name: storeSize(s, cells[0].Size, sys)}
		for i := range cells {
			c := cells[i]
			cell := sweepCell{Nights: itoa(c.Nights), Today: c.Today, Best: s.Best != nil && c == *s.Best}
			for _, b := range sweepBands {
				if float64(c.Nights) >= b.share*float64(c.Of) {
					cell.Band, cell.Sign = b.class, b.sign
					break
				}
			}
			if c.Cost.Is {
				cell.Cost = unit.Rounded(float64(c.Cost.Val), 3) + " " + currency
			}
			row.Cells = append(row.Cells, cell)
		}
		out.Rows = append(out.Rows, row)
	}
	out.Best = bestPair(s, currency, sys)
	return out
}

func bestPair(s search.Sweep, currency string, sys unit.System) string {
	met, priced := false, false
	for _, row := range s.Cells {
		for _, c := range row {
			met, priced = met || c.Meets, priced || c.Cost.Is
		}
	}
	switch {
	case !met:
		return "No pair here has light in 95 % of the nights."
	case s.Best != nil:
		return fmt.Sprintf("The cheapest pair with light in 95 %% of the nights: %s of panel with %s, %s for all parts.",
			panelPower(s, s.Best.Panel, sys), storeSize(s, s.Best.Size, sys), unit.Rounded(float64(s.Best.Cost.Val), 3)+" "+currency)
	case !priced:
		return "Which pair is cheapest is not known: the panels or another part have no price in the list of parts."
	}
	return ""
}

// panelPower is the power of all panels times f.
func panelPower(s search.Sweep, f float64, sys unit.System) string {
	return unit.Powers.Format(f*float64(s.Power), sys)
}

// storeSize is the size of the store that grows, times f.
func storeSize(s search.Sweep, f float64, sys unit.System) string {
	if s.Store == "battery" {
		return known(grown(s.Charge, f), unit.Charges, sys)
	}
	return known(grown(s.Mass, f), unit.Masses, sys)
}

func grown[T unit.Number](k unit.Known[T], f float64) unit.Known[T] {
	k.Val *= T(f)
	return k
}
