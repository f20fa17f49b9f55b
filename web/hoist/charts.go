package hoist

import (
	"cmp"
	"fmt"
	"net/http"
	"slices"
	"strings"

	"github.com/go-chi/chi/v5"

	"duskweight/internal/model"
	"duskweight/internal/model/lift"
	"duskweight/internal/model/unit"
	"duskweight/web/form"
	"duskweight/web/page"
)

// The pictures of the page Lifted mass. Each is a sentence, lines, a table and a CSV file of its numbers; where an input
// is missing it is a sentence that names the input.

// sketch is what a picture is drawn from.
type sketch struct {
	h      *model.HoistResult
	course lift.Course
	sys    unit.System
	labels map[string]string
	at     string // path of the hoist in its variant
}

// hoistPlots makes the pictures of a hoist.
func hoistPlots(h *model.HoistResult, sys unit.System, labels map[string]string, at string) []page.Plot {
	s := sketch{h, lift.CourseOf(h.Design), sys, labels, at}
	plots := []page.Plot{}
	if h.Direct != nil {
		plots = append(plots, s.panelCurve(), s.realDay())
	}
	return append(plots, s.motorLines(), s.settling(), s.descent(), s.warming("raise"), s.warming("lower"))
}

// hoistCharts makes them ready to print; url is the page's.
func hoistCharts(h *model.HoistResult, sys unit.System, labels map[string]string, at, url string) ([]page.ChartView, error) {
	var out, bare []page.ChartView // those that are only a sentence come last
	for _, p := range hoistPlots(h, sys, labels, at) {
		c, err := p.View(url + "/" + p.Id + ".csv")
		if err != nil {
			return nil, err
		}
		if len(c.Option) == 0 {
			bare = append(bare, c)
		} else {
			out = append(out, c)
		}
	}
	return append(out, bare...), nil
}

// showPictures is a page of the pictures of the hoist as it is saved.
func (s *Pages) showPictures(w http.ResponseWriter, r *http.Request) error {
	h, err := s.hoistOf(r)
	if err != nil {
		return err
	}
	charts, err := h.charts(h.Saved.Value)
	if err != nil {
		return err
	}
	f, err := h.Frame()
	if err != nil {
		return err
	}
	f.Title = "Pictures of the hoist"
	return s.Show(w, r, http.StatusOK, f, hoistPicturesPage(ofTab(charts, r.URL.Query().Get(nameShow)), form.LinkView{Text: "Back to the lifted mass", URL: h.Url}))
}

// tryPictures makes the pictures for the form as it is typed; they follow the answer.
func (s *Pages) tryPictures(w http.ResponseWriter, r *http.Request) error {
	h, err := s.hoistOf(r)
	if err != nil {
		return err
	}
	h.Answer = func(v model.Variant) (page.Answer, error) {
		charts, err := h.charts(v)
		if tab := r.URL.Query().Get(nameShow); tab != "" {
			return page.Answer{Body: tabPictures(ofTab(charts, tab))}, err
		}
		return page.Answer{Body: pictures(charts)}, err
	}
	return page.TryEditor(s.Site, w, r, h.Editor)
}

// tabCharts are the pictures of each tab of the answer.
var tabCharts = map[string][]string{"lifting": {"motor", "panel", "day"}, "down": {"settling", "descent"}, "heat": {"heat-up", "heat-down"}}

// ofTab keeps the pictures of a tab; all for none.
func ofTab(charts []page.ChartView, tab string) []page.ChartView {
	ids, ok := tabCharts[tab]
	if !ok {
		return charts
	}
	var out []page.ChartView
	for _, c := range charts {
		if slices.Contains(ids, c.ID) {
			out = append(out, c)
		}
	}
	return out
}

func (p hoistPage) charts(v model.Variant) ([]page.ChartView, error) {
	return hoistCharts(p.result(v), p.sys, p.labels, model.HoistPath(p.i), p.Url)
}

// sendHoistCSV sends the numbers of one picture, of the hoist as it is saved.
func (s *Pages) sendHoistCSV(w http.ResponseWriter, r *http.Request) error {
	p, v, i, sys, err := s.StoreOf(r, page.IsHoist)
	if err != nil {
		return err
	}
	result := s.Results.Of(p, v)
	if chi.URLParam(r, "picture") == "checks" {
		return page.SendCSV(w, checkNumbers(model.HoistOf(result.Stores[i]), sys))
	}
	for _, p := range hoistPlots(model.HoistOf(result.Stores[i]), sys, nil, model.HoistPath(i)) {
		if p.Id == chi.URLParam(r, "picture") && len(p.Lines) > 0 {
			return page.SendCSV(w, p.Numbers())
		}
	}
	return page.ErrNotFound
}

// checkNumbers is every check, each number in its own unit: of the SI, or imperial.
func checkNumbers(h *model.HoistResult, sys unit.System) page.SheetOfNumbers {
	t := page.SheetOfNumbers{Name: "what-breaks-first", Head: []string{"check", "part", "when", "demand", "capacity", "unit", "use", "word"}}
	for _, c := range h.Checks {
		in := page.CSVUnit(c.Demand.In, sys)
		t.Rows = append(t.Rows, []any{c.ID, c.Part, c.Case, in.Of(page.OrNone(c.Demand.Known())), in.Of(page.OrNone(c.Capacity.Known())), in.Unit, page.OrNone(c.Use), string(c.Word)})
	}
	return t
}

// empty is a picture that cannot be drawn, with the input that is missing: the first whose path begins like one of these.
func (s sketch) empty(p page.Plot, otherwise string, paths ...string) page.Plot {
	p.Say = otherwise
	for _, want := range paths {
		for _, m := range s.h.Drive.Missing {
			if !strings.HasPrefix(m.Path, want) {
				continue
			}
			label := s.labels[s.at+"."+m.Path]
			if label == "" { // a row that is not there yet
				label = cmp.Or(labelsOfNew()[blankRow(m.Path)], m.Path)
			}
			p.Say = fmt.Sprintf("Not drawn yet: “%s” is not known.", label)
			return p
		}
	}
	return p
}

// machinePaths are the inputs that current and torque hang on, in the order in which they are asked for.
var machinePaths = []string{"mass", "reeving", "rope.diameter_m", "drum.diameter_m", "travel_m", "train", "machine.k", "machine.r_ohm", "machine.i0"}

// motorLines is torque and current of the motor over its speed, with the points at which it lifts and comes down.
func (s sketch) motorLines() page.Plot {
	d, c := s.h.Drive, s.h.Drive.Machine
	turns, torques, amps := page.ScaleOf(unit.RotationSpeeds, s.sys), page.ScaleOf(unit.SmallTorques, s.sys), page.ScaleOf(unit.Currents, s.sys)
	p := page.Plot{Id: "motor", Title: "Torque and current of the motor over its speed", X: turns.Axis("motor speed"), Y: []string{torques.Axis("torque"), amps.Axis("current")}}
	if !d.Raising.Known || !d.AtMotorUp.Is {
		return s.empty(p, "Not drawn yet: what the motor uses is not known.", append(machinePaths, "raise.voltage")...)
	}
	torque := page.PlotLine{Name: "torque", Unit: torques.Unit, Color: "--mass", Dash: "solid"}
	current := page.PlotLine{Name: "current", Unit: amps.Unit, Color: "--ink", Dash: "dashed", Scale: 1}
	p.Head = []string{"Motor speed", "Torque", "Current"}
	line := s.supply()
	for i, at := range line {
		t := max(0, float64(c.K.Val)*(at[1]-float64(c.I0.Val)))
		torque.Points = append(torque.Points, [2]float64{turns.Of(at[0]), torques.Of(t)})
		current.Points = append(current.Points, [2]float64{turns.Of(at[0]), amps.Of(at[1])})
		if len(line) < 10 || i%(len(line)/8) == 0 {
			p.Rows = append(p.Rows, s.motorRow("supply", at[0], t, at[1]))
		}
	}
	p.Lines = append(p.Lines, torque, current)
	r := d.Raising
	need := unit.SmallTorques.Format(float64(d.AtMotorUp.Val), s.sys)
	if !r.Stalls && r.Rotor > 0 {
		p.Lines = append(p.Lines, mark("lifting", "--mass", "circle", torques.Unit, 0, turns.Of(float64(r.Rotor)), torques.Of(float64(d.AtMotorUp.Val))))
		p.Rows = append(p.Rows, s.motorRow("lifting", float64(r.Rotor), float64(d.AtMotorUp.Val), float64(r.Current)))
		p.Say = fmt.Sprintf("Lifting needs %s, and the motor gives that at %s. Held still, the motor gives %s times what the first push needs.", need,
			unit.RotationSpeeds.Format(float64(r.Rotor), s.sys), unit.Rounded(float64(r.Margin), 3))
	} else {
		p.Lines = append(p.Lines, mark("lifting needs this", "--fail", "rect", torques.Unit, 0, 0, torques.Of(float64(d.AtMotorUp.Val))))
		p.Say = fmt.Sprintf("Lifting needs %s, more than the motor can give: it stalls.", need)
	}
	s.loweringLine(&p, turns, amps)
	return p
}

// supply is the motor's current over its speed at its supply, A over rad/s: a straight line under the supply's limit, or
// what the panels give in full sun.
func (s sketch) supply() [][2]float64 {
	d, raise := s.h.Drive, s.h.Design.Raise
	k, vb := float64(d.Machine.K.Val), float64(d.Machine.BrushDrop)
	loop, i0 := float64(d.Machine.R.Val+d.Raising.Wire), float64(d.Machine.I0.Val)
	var out [][2]float64
	if x := s.h.Direct; x != nil && x.Known {
		const steps = 80
		for n := range steps + 1 {
			u := float64(x.Open) * float64(n) / steps
			i := float64(x.Current(1000, unit.Voltage(u)))
			if rotor := (u - vb - i*loop) / k; rotor >= 0 && i >= i0 {
				out = append(out, [2]float64{rotor, i})
			}
		}
		return out
	}
	v := float64(raise.Voltage.Val)
	at := func(i float64) [2]float64 {
		rotor := (v - vb - i*loop) / k
		if rotor < 1e-9*v/k { // held still, but for what rounding leaves
			rotor = 0
		}
		return [2]float64{rotor, i}
	}
	most := max(0, v-vb) / loop
	if limit, ok := raise.CurrentLimit.Value(); ok && float64(limit) < most {
		most = float64(limit)
		out = append(out, [2]float64{0, most})
	}
	const steps = 8
	least := min(i0, most)
	for n := range steps {
		out = append(out, at(most+(least-most)*float64(n)/steps))
	}
	return append(out, at(least))
}

func (s sketch) motorRow(what string, rotor, torque, current float64) []string {
	name := unit.RotationSpeeds.Format(rotor, s.sys)
	if what != "supply" {
		name += " (" + what + ")"
	}
	return []string{name, unit.SmallTorques.Format(torque, s.sys), unit.Currents.Format(current, s.sys)}
}

// loweringLine adds what the lamps take over the motor's speed, and the point at which it comes down.
func (s sketch) loweringLine(p *page.Plot, turns, amps page.Scaled) {
	d, c := s.h.Drive, s.h.Drive.Machine
	lo := d.Lowering
	if !s.course.LoadsKnown() || !lo.Known || lo.Current <= 0 {
		return
	}
	k, vb, r := float64(c.K.Val), float64(c.BrushDrop), float64(c.R.Val)
	lamps := page.PlotLine{Name: "current of the lamps", Unit: amps.Unit, Color: "--night", Dash: "dotted", Scale: 1}
	for _, at := range s.loadsLine() {
		if at[1] > 1.5*float64(lo.Current) {
			if lo.Steady && at[0] > float64(lo.Voltage) {
				break // past the point where it comes down
			}
			lamps.Points = nil // a constant power comes down from far above
			continue
		}
		lamps.Points = append(lamps.Points, [2]float64{turns.Of((at[0] + vb + at[1]*r) / k), amps.Of(at[1])})
	}
	if len(lamps.Points) == 0 {
		return
	}
	p.Lines = append(p.Lines, lamps)
	if lo.Steady {
		p.Lines = append(p.Lines, mark("coming down", "--night", "triangle", amps.Unit, 1, turns.Of(float64(lo.Rotor)), amps.Of(float64(lo.Current))))
		p.Rows = append(p.Rows, s.motorRow("coming down", float64(lo.Rotor), float64(d.AtMotorDown.Val), float64(lo.Current)))
		p.Say += fmt.Sprintf(" Coming down it turns at %s and makes %s.", unit.RotationSpeeds.Format(float64(lo.Rotor), s.sys), unit.Currents.Format(float64(lo.Current), s.sys))
	}
}

// mark is a single point.
func mark(name, color, symbol, u string, scale int, x, y float64) page.PlotLine {
	return page.PlotLine{Name: name, Unit: u, Color: color, Dash: "solid", Mark: symbol, Scale: scale, Points: [][2]float64{{x, y}}}
}
