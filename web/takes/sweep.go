package takes

import (
	"cmp"
	"context"
	"fmt"
	"math"
	"net/http"
	"slices"

	"duskweight/internal/model"
	"duskweight/internal/model/search"
	"duskweight/internal/model/unit"
	"duskweight/internal/store"
	"duskweight/web/form"
	"duskweight/web/page"
)

// The page Panel and store together: /projects/{project}/variants/{variant}/sweep.

// sweepView is the table of nights, ready to print.
type sweepView struct {
	Say, Best, Why string
	Store          string // over the names of the rows
	Panels         []string
	Rows           []sweepRow
	Back           form.LinkView
	CSV            string
	Missing        string          // where what is missing stands
	Lines          *page.ChartView // which pairs have so many full nights; nil where no border runs through the table
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

func (s *Pages) showSweep(w http.ResponseWriter, r *http.Request) error {
	p, v, sys, err := s.VariantIn(r)
	if err != nil {
		return err
	}
	back, here := page.VariantURL(p.ID, v.ID)+"/takes", page.VariantURL(p.ID, v.ID)+"/sweep"
	f, err := s.VariantFrame(r.Context(), p, v, "Panel and store together", here)
	if err != nil {
		return err
	}
	sweep, err := s.sweepOf(r, p, v)
	if err != nil {
		return page.LeftOr(r, err)
	}
	view := sweepViewOf(sweep, p.Value.Currency, sys)
	view.Back = form.LinkView{Text: "Back to what it would take", URL: back}
	view.Missing = page.VariantURL(p.ID, v.ID) + "#missing"
	view.CSV = page.VariantURL(p.ID, v.ID) + "/sweep.csv"
	if lines := contours(sweep, sys); len(lines.Lines) > 0 {
		c, err := lines.View(page.VariantURL(p.ID, v.ID) + "/sweep-lines.csv")
		if err != nil {
			return err
		}
		c.Wide = true
		view.Lines = &c
	}
	return s.Show(w, r, http.StatusOK, f, sweepPage(view))
}

// sendSweepCSV sends the nights of every pair.
func (s *Pages) sendSweepCSV(w http.ResponseWriter, r *http.Request) error {
	sweep, sys, err := s.sweepAt(r)
	if err != nil {
		return page.LeftOr(r, err)
	}
	store := page.ScaleOf(sweep.Lever.Quantity, sys)
	t := page.SheetOfNumbers{Name: "panel-and-store", Head: []string{"panels, W", store.Axis("store"), "full nights", "of", "all parts"}}
	for _, row := range sweep.Cells {
		for _, c := range row {
			t.Rows = append(t.Rows, []any{c.Panel * float64(sweep.Power), store.Of(c.Size * float64(sweep.Size.Val)), c.Nights, c.Of, page.OrNone(c.Cost)})
		}
	}
	return page.SendCSV(w, t)
}

// sendContoursCSV sends the points of the lines of equal nights.
func (s *Pages) sendContoursCSV(w http.ResponseWriter, r *http.Request) error {
	sweep, sys, err := s.sweepAt(r)
	if err != nil {
		return page.LeftOr(r, err)
	}
	lines := contours(sweep, sys)
	if len(lines.Lines) == 0 {
		return page.ErrNotFound
	}
	return page.SendCSV(w, lines.Numbers())
}

// sweepAt is the sweep of the variant of the address.
func (s *Pages) sweepAt(r *http.Request) (search.Sweep, unit.System, error) {
	p, v, sys, err := s.VariantIn(r)
	if err != nil {
		return search.Sweep{}, sys, err
	}
	sweep, err := s.sweepOf(r, p, v)
	if err == nil && len(sweep.Cells) == 0 {
		err = page.ErrNotFound
	}
	return sweep, sys, err
}

// sweepOf is the sweep of a saved variant, worked out once for the page, its table and its picture.
func (s *Pages) sweepOf(r *http.Request, p store.Saved[model.Project], v store.Saved[model.Variant]) (search.Sweep, error) {
	return s.swept.Of(r.Context(), s.Results.Key(p, v), func(ctx context.Context) (search.Sweep, error) {
		return search.SweepOf(ctx, s.Grounds.Of(p), v.Value)
	})
}

// contours are the lines along which so many nights have light. With more panel or more store there are hardly ever fewer,
// so a line falls from left to right; between two pairs of the table it is where the nights cross when they grow evenly with
// the logarithm of panel or store, as the table is spaced.
func contours(s search.Sweep, sys unit.System) page.Plot {
	if s.Lever == nil {
		return page.Plot{}
	}
	watts, store, name, colour := page.ScaleOf(unit.Powers, sys), page.ScaleOf(s.Lever.Quantity, sys), s.Lever.Name, "--"+s.Look
	size := float64(s.Size.Val)
	p := page.Plot{Id: "contours", Title: "Sizes of panel and store, with their full nights", X: watts.Axis("panels"), Y: []string{store.Axis(name)},
		Say: "Above each line, at least the number of nights that it names is full. Where a line is upright, a larger store adds nothing. Where it is level, more panels add nothing."}
	if len(s.Cells) == 0 || size <= 0 {
		return p
	}
	p.Head = []string{"Line", watts.Axis("panels"), store.Axis(name)}
	for i, b := range sweepBands[:len(sweepBands)-1] {
		l := page.PlotLine{Name: form.SentenceCase(b.say), Unit: store.Unit, Color: []string{"--ink", "--ink", "--ink", "--soft"}[i], Dash: []string{"solid", "dashed", "dotted", "solid"}[i]}
		for _, at := range border(s, b.share) {
			l.Points = append(l.Points, [2]float64{watts.Of(at[0] * float64(s.Power)), store.Of(at[1] * size)})
		}
		if len(l.Points) < 2 {
			continue
		}
		p.Lines = append(p.Lines, l)
		for _, at := range l.Points {
			p.Rows = append(p.Rows, []string{l.Name, unit.Rounded(at[0], 3), unit.Rounded(at[1], 3)})
		}
	}
	if len(p.Lines) == 0 {
		return p
	}
	p.Wide = watts.Of(1.25 * float64(s.Power))
	p.Lines = append(p.Lines, page.PlotLine{Name: "As it is", Unit: store.Unit, Color: colour, Mark: "diamond", Points: [][2]float64{{watts.Of(float64(s.Power)), store.Of(size)}}})
	if s.Best != nil {
		p.Lines = append(p.Lines, page.PlotLine{Name: "Cheapest with 95 %", Unit: store.Unit, Color: "--ink", Mark: "circle",
			Points: [][2]float64{{watts.Of(s.Best.Panel * float64(s.Power)), store.Of(s.Best.Size * size)}}})
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

// sweepBands are the bands of full nights, from the best: at least this share, its class and its sign.
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
	out := sweepView{Say: "Full nights in the average year, in which every month is at its mean. Panels grow with their controller; all else stays as it is."}
	if len(s.Cells) == 0 {
		out.Why = "There is no year to try yet: a place, a night load, panels and a store are needed."
		return out
	}
	out.Store = form.SentenceCase(s.Lever.Name)
	for _, c := range s.Cells[0] {
		out.Panels = append(out.Panels, panelPower(s, c.Panel, sys))
	}
	for _, cells := range s.Cells {
		row := sweepRow{Name: storeSize(s, cells[0].Size, sys)}
		for i := range cells {
			c := cells[i]
			cell := sweepCell{Nights: page.Itoa(c.Nights), Today: c.Today, Best: s.Best != nil && c == *s.Best}
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
		return "No pair here has 95 % full nights."
	case s.Best != nil:
		return fmt.Sprintf("The cheapest pair with 95 %% full nights is %s of panel with %s: %s for all parts.",
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
	return page.Known(grown(s.Size, f), s.Lever.Quantity, sys)
}

func grown[T unit.Number](k unit.Known[T], f float64) unit.Known[T] {
	k.Val *= T(f)
	return k
}
