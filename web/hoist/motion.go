package hoist

import (
	"encoding/json"
	"fmt"
	"io"
	"net/http"
	"slices"

	"duskweight/internal/draw"
	"duskweight/internal/model"
	"duskweight/internal/model/lift"
	"duskweight/internal/model/reason"
	"duskweight/internal/model/unit"
	"duskweight/web/form"
	"duskweight/web/page"
)

// The page In motion: /projects/{p}/variants/{v}/motion/{i}: one lift, a short hold and one way down of a hoist, drawn, with
// curves over time. It moves on a press alone; without scripts it is its table.

// faster is how many times faster than in the yard it is shown (our own judgement).
const faster = 20

// motionView is the page, ready to print.
type motionView struct {
	Bands  []page.BandView
	Why    string // instead of a picture
	Where  string // the page of the hoist
	Scene  string // SVG
	Figs   []page.PairView
	Curves []curveView
	Ticks  []string
	Data   string // for the script: the moments, in words
	Last   string // of the slider, s
	Sum    []string
	page.PictureView
}

// curveView is one curve with what its axis spans.
type curveView struct{ Name, Span, SVG string }

// phaseWords say what a hoist does.
var phaseWords = map[lift.Phase]string{lift.PhaseUp: "lifting", lift.PhaseHold: "held at the top", lift.PhaseDown: "coming down, lamps on"}

func (s *Pages) showMotion(w http.ResponseWriter, r *http.Request) error {
	p, v, i, sys, err := s.StoreOf(r, page.IsHoist)
	if err != nil {
		return err
	}
	here := page.StoreURL(p.ID, v.ID, i, "motion")
	f, err := s.VariantFrame(r.Context(), p, v, "In motion", here)
	if err != nil {
		return err
	}
	f.Style, f.Script = "motion.css", "motion.js"
	result := s.Results.Of(p, v)
	view := motionOf(result, i, here, sys)
	view.Where = page.StoreURL(p.ID, v.ID, i, "hoist")
	view.Bands = page.StoreBands(result, i, sys, s.LinksOf(p, v.Value, v.ID).To)
	return s.Show(w, r, http.StatusOK, f, motionPage(view))
}

func (s *Pages) sendMotion(w http.ResponseWriter, r *http.Request) error {
	p, v, i, sys, err := s.StoreOf(r, page.IsHoist)
	if err != nil {
		return err
	}
	view := motionOf(s.Results.Of(p, v), i, "", sys)
	if view.Numbers == nil {
		return page.ErrNotFound
	}
	return page.SendCSV(w, view.Numbers())
}

// motionOf prints the trip of store i.
func motionOf(r model.VariantResult, i int, url string, sys unit.System) motionView {
	h := model.HoistOf(r.Stores[i])
	v := motionView{PictureView: page.PictureView{ID: "motion", Title: fmt.Sprintf("One lift and one way down, %d times as fast", faster)}}
	if h.Ready == reason.No {
		v.Title += ", once the mass may hang"
	}
	beats := lift.CourseOf(h.Design).Trip()
	if beats == nil {
		v.Why = whyStill(h.Drive, sys)
		return v
	}
	b := trip{beats, sys}
	v.Scene = page.SvgOf(func(w io.Writer) error { return draw.Trip{Scene: page.SceneOf(h, sys)}.Draw(w) })
	v.Figs = []page.PairView{{Name: "Height", Value: b.height(0)}, {Name: "Speed", Value: b.speed(0)}, {Name: "Motor", Value: b.volts(0)}, {Name: "Winding", Value: b.winding(0)}}
	v.Curves, v.Data = b.curves(), b.data()
	last := float64(beats[len(beats)-1].Time)
	v.Last = fmt.Sprintf("%.1f", last)
	for k := range 5 {
		v.Ticks = append(v.Ticks, clockOf(last*float64(k)/4))
	}
	v.Sum = b.sum(h.Drive)
	v.Head = []string{"Moment", "Time", "Height", "Speed", "Volts", "Amps", "Winding"}
	v.Rows, v.CSV, v.Numbers = b.rows(), url+"/motion.csv", b.numbers
	return v
}

// whyStill says why there is nothing to show.
func whyStill(d lift.Drive, sys unit.System) string {
	ra, lo := d.Raising, d.Lowering
	switch {
	case ra.Known && ra.Stalls, !ra.Known && !ra.Say.IsZero():
		return ra.Say.In(sys)
	case !ra.Known:
		return "How it lifts is not known yet."
	case lo.RunsBack == "" || !lo.Known:
		return "How it comes down is not known yet."
	case lo.RunsBack == lift.DownNo, !lo.Say.IsZero():
		return lo.Say.In(sys)
	}
	return "Nothing keeps its speed low on the way down. The mass runs away."
}

// trip prints the moments of a trip.
type trip struct {
	beats []lift.Beat
	sys   unit.System
}

func (t trip) height(i int) string { return unit.Heights.Format(float64(t.beats[i].Height), t.sys) }
func (t trip) volts(i int) string  { return unit.Voltages.Format(float64(t.beats[i].Volts), t.sys) }
func (t trip) speed(i int) string  { return unit.SlowSpeeds.Format(float64(t.beats[i].Speed), t.sys) }
func (t trip) winding(i int) string {
	return page.Known(t.beats[i].Winding, unit.Temperatures, t.sys)
}

// curves are speed, volts and winding over time.
func (t trip) curves() []curveView {
	var out []curveView
	add := func(name, look string, q unit.Quantity, fromZero bool, of func(lift.Beat) float64) {
		c := draw.Curve{Title: name, FromZ: fromZero, Look: look}
		for _, b := range t.beats {
			c.X, c.Y = append(c.X, float64(b.Time)), append(c.Y, of(b))
		}
		lo, hi := c.Ends()
		out = append(out, curveView{name, q.Number(lo, t.sys) + " to " + q.Format(hi, t.sys), page.SvgOf(func(w io.Writer) error { return c.Draw(w) })})
	}
	add("Speed of the mass", "mass", unit.SlowSpeeds, true, func(b lift.Beat) float64 { return float64(b.Speed) })
	add("Volts at the motor", "night", unit.Voltages, true, func(b lift.Beat) float64 { return float64(b.Volts) })
	if t.beats[0].Winding.Is {
		add("Winding of the motor, from cold", "sun", unit.Temperatures, false, func(b lift.Beat) float64 { return float64(b.Winding.Val) })
	}
	return out
}

// data is what the script moves by: the moments, and what the figures say at each.
func (t trip) data() string {
	top := 0.0
	for _, b := range t.beats {
		top = max(top, float64(b.Height))
	}
	var d struct {
		Times  []float64  `json:"t"`
		Shares []float64  `json:"z"`
		Lit    []bool     `json:"lit"`
		Says   [][]string `json:"say"`
	}
	for i, b := range t.beats {
		d.Times = append(d.Times, page.RoundTo(float64(b.Time), 6))
		d.Shares = append(d.Shares, page.RoundTo(float64(b.Height)/top, 4))
		d.Lit = append(d.Lit, b.Phase == lift.PhaseDown && b.Speed > 0)
		d.Says = append(d.Says, []string{t.height(i), t.speed(i), t.volts(i), t.winding(i), phaseWords[b.Phase]})
	}
	text, err := json.Marshal(d)
	if err != nil {
		return "" // finite numbers and words alone
	}
	return string(text)
}

// rows are the moments that the table tells: the middle and the end of each phase.
func (t trip) rows() [][]string {
	var out [][]string
	row := func(name string, i int) {
		b := t.beats[i]
		out = append(out, []string{name, clockOf(float64(b.Time)), t.height(i), t.speed(i), t.volts(i), unit.Currents.Format(float64(b.Current), t.sys), t.winding(i)})
	}
	at := func(p lift.Phase) (first, last int) {
		first = slices.IndexFunc(t.beats, func(b lift.Beat) bool { return b.Phase == p })
		for last = first; last+1 < len(t.beats) && t.beats[last+1].Phase == p; last++ {
		}
		return first, last
	}
	first, last := at(lift.PhaseUp)
	row("Lifting begins", first)
	row("Lifting, halfway", (first+last)/2)
	row("At the top", last)
	_, held := at(lift.PhaseHold)
	row("Held", held)
	first, last = at(lift.PhaseDown)
	row("Coming down, halfway", t.halfway(first, last))
	row("Arrives at the bottom", last)
	return out
}

// halfway is the moment of a way down at which half of the height is left.
func (t trip) halfway(first, last int) int {
	for i := first; i < last; i++ {
		if 2*t.beats[i].Height <= t.beats[first].Height {
			return i
		}
	}
	return last
}

// numbers are all moments, in the units of the page.
func (t trip) numbers() page.SheetOfNumbers {
	z, v, temp := page.ScaleOf(unit.Lengths, t.sys), page.ScaleOf(unit.SlowSpeeds, t.sys), page.ScaleOf(unit.Temperatures, t.sys)
	out := page.SheetOfNumbers{Name: "in-motion", Head: []string{"time, s", "what it does", z.Axis("height"), v.Axis("speed"), "voltage, V", "current, A", temp.Axis("winding")}}
	for _, b := range t.beats {
		warm := any("")
		if b.Winding.Is {
			warm = temp.Of(float64(b.Winding.Val))
		}
		out.Rows = append(out.Rows, []any{float64(b.Time), phaseWords[b.Phase], z.Of(float64(b.Height)), v.Of(float64(b.Speed)), float64(b.Volts), float64(b.Current), warm})
	}
	return out
}

// sum says the trip in sentences.
func (t trip) sum(d lift.Drive) []string {
	ra, lo := d.Raising, d.Lowering
	return []string{
		fmt.Sprintf("The mass goes up in %s and uses %s.", form.Lasting(ra.Time), unit.Energies.Format(float64(ra.EnergyIn), t.sys)),
		fmt.Sprintf("The mass comes down in %s and gives %s to the lamps.", form.Lasting(lo.Time), unit.Energies.Format(float64(lo.EnergyOut), t.sys)),
		fmt.Sprintf("Here the mass waits at the top for %s only. In use it waits until dusk.", form.Lasting(lift.TripHold)),
	}
}

// clockOf writes seconds as minutes and seconds.
func clockOf(seconds float64) string {
	n := int(seconds + 0.5)
	return fmt.Sprintf("%d:%02d", n/60, n%60)
}
