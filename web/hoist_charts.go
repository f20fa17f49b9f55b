package web

import (
	"fmt"
	"net/http"
	"strings"

	"github.com/go-chi/chi/v5"

	"duskweight/internal/model"
	"duskweight/internal/model/lift"
	"duskweight/internal/model/unit"
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
func hoistPlots(h *model.HoistResult, sys unit.System, labels map[string]string, at string) []plot {
	s := sketch{h, lift.CourseOf(h.Design), sys, labels, at}
	plots := []plot{}
	if h.Direct != nil {
		plots = append(plots, s.panelCurve(), s.realDay())
	}
	return append(plots, s.motorLines(), s.settling(), s.descent(), s.warming("raise"), s.warming("lower"))
}

// hoistCharts makes them ready to print; url is the page's.
func hoistCharts(h *model.HoistResult, sys unit.System, labels map[string]string, at, url string) ([]chartView, error) {
	var out, bare []chartView // those that are only a sentence come last
	for _, p := range hoistPlots(h, sys, labels, at) {
		c, err := p.view(url + "/" + p.id + ".csv")
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
func (s *Site) showPictures(w http.ResponseWriter, r *http.Request) error {
	h, err := s.hoistOf(r)
	if err != nil {
		return err
	}
	charts, err := h.charts(h.saved.Value)
	if err != nil {
		return err
	}
	f, err := h.frame()
	if err != nil {
		return err
	}
	f.Title = "Pictures of the hoist"
	return s.show(w, r, http.StatusOK, f, hoistPicturesPage(charts, linkView{"Back to the lifted mass", h.url}))
}

// tryPictures makes the pictures for the form as it is typed; they follow the answer.
func (s *Site) tryPictures(w http.ResponseWriter, r *http.Request) error {
	h, err := s.hoistOf(r)
	if err != nil {
		return err
	}
	h.answer = func(v model.Variant) (answer, error) {
		charts, err := h.charts(v)
		return answer{body: pictures(charts)}, err
	}
	return tryEditor(s, w, r, h.editor)
}

func (p hoistPage) charts(v model.Variant) ([]chartView, error) {
	return hoistCharts(p.result(v), p.sys, p.labels, model.StorePath(p.i, "hoist"), p.url)
}

// sendHoistCSV sends the numbers of one picture, of the hoist as it is saved.
func (s *Site) sendHoistCSV(w http.ResponseWriter, r *http.Request) error {
	p, v, i, sys, err := s.storeOf(r, isHoist)
	if err != nil {
		return err
	}
	result := s.grounds.of(p).Evaluate(v.Value)
	if chi.URLParam(r, "picture") == "checks" {
		return sendCSV(w, checkNumbers(result.Stores[i].Hoist))
	}
	for _, p := range hoistPlots(result.Stores[i].Hoist, sys, nil, model.StorePath(i, "hoist")) {
		if p.id == chi.URLParam(r, "picture") && len(p.lines) > 0 {
			return sendCSV(w, p.numbers())
		}
	}
	return errNotFound
}

// checkNumbers is every check, each number in its own unit of the SI.
func checkNumbers(h *model.HoistResult) sheetOfNumbers {
	t := sheetOfNumbers{Name: "what-breaks-first", Head: []string{"check", "part", "when", "demand", "capacity", "unit", "use", "word"}}
	for _, c := range h.Checks {
		t.Rows = append(t.Rows, []any{c.ID, c.Part, c.Case, orNone(c.Demand), orNone(c.Capacity), c.Unit, orNone(c.Use), string(c.Word)})
	}
	return t
}

// empty is a picture that cannot be drawn, with the input that is missing: the first whose path begins like one of these.
func (s sketch) empty(p plot, otherwise string, paths ...string) plot {
	p.say = otherwise
	for _, want := range paths {
		for _, m := range s.h.Drive.Missing {
			if !strings.HasPrefix(m.Path, want) {
				continue
			}
			label := s.labels[s.at+"."+m.Path]
			if label == "" {
				label = m.Path
			}
			p.say = fmt.Sprintf("Not drawn yet: “%s” is not known.", label)
			return p
		}
	}
	return p
}

// machinePaths are the inputs that current and torque hang on, in the order in which they are asked for.
var machinePaths = []string{"mass", "reeving", "rope.diameter_m", "drum.diameter_m", "travel_m", "train", "machine.k", "machine.r_ohm", "machine.i0"}

// motorLines is torque and current of the motor over its speed, with the points at which it lifts and comes down.
func (s sketch) motorLines() plot {
	d, c := s.h.Drive, s.h.Drive.Machine
	turns, torques, amps := scaleOf(unit.RotationSpeeds, s.sys), scaleOf(unit.SmallTorques, s.sys), scaleOf(unit.Currents, s.sys)
	p := plot{id: "motor", title: "Torque and current of the motor over its speed", x: turns.axis("motor speed"), y: []string{torques.axis("torque"), amps.axis("current")}}
	if !d.Raising.Known || !d.AtMotorUp.Is {
		return s.empty(p, "Not drawn yet: what the motor takes is not known.", append(machinePaths, "raise.voltage")...)
	}
	torque := plotLine{name: "torque", unit: torques.unit, color: "--mass", dash: "solid"}
	current := plotLine{name: "current", unit: amps.unit, color: "--ink", dash: "dashed", scale: 1}
	p.head = []string{"Motor speed", "Torque", "Current"}
	line := s.supply()
	for i, at := range line {
		t := max(0, float64(c.K.Val)*(at[1]-float64(c.I0.Val)))
		torque.points = append(torque.points, [2]float64{turns.of(at[0]), torques.of(t)})
		current.points = append(current.points, [2]float64{turns.of(at[0]), amps.of(at[1])})
		if len(line) < 10 || i%(len(line)/8) == 0 {
			p.rows = append(p.rows, s.motorRow("supply", at[0], t, at[1]))
		}
	}
	p.lines = append(p.lines, torque, current)
	r := d.Raising
	need := unit.SmallTorques.Format(float64(d.AtMotorUp.Val), s.sys)
	if !r.Stalls && r.Rotor > 0 {
		p.lines = append(p.lines, mark("lifting", "--mass", "circle", torques.unit, 0, turns.of(float64(r.Rotor)), torques.of(float64(d.AtMotorUp.Val))))
		p.rows = append(p.rows, s.motorRow("lifting", float64(r.Rotor), float64(d.AtMotorUp.Val), float64(r.Current)))
		p.say = fmt.Sprintf("Lifting asks for %s, and the motor has that at %s. Held still it has %s times what the first push takes.", need,
			unit.RotationSpeeds.Format(float64(r.Rotor), s.sys), unit.Rounded(float64(r.Margin), 3))
	} else {
		p.lines = append(p.lines, mark("lifting needs this", "--fail", "rect", torques.unit, 0, 0, torques.of(float64(d.AtMotorUp.Val))))
		p.say = fmt.Sprintf("Lifting asks for %s, and the line does not reach that: the motor stalls.", need)
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
	at := func(i float64) [2]float64 { return [2]float64{max(0, (v-vb-i*loop)/k), i} }
	most := max(0, v-vb) / loop
	if limit, ok := raise.CurrentLimit.Value(); ok && float64(limit) < most {
		most = float64(limit)
		out = append(out, [2]float64{0, most})
	}
	const steps = 8
	for n := range steps + 1 {
		out = append(out, at(most+(min(i0, most)-most)*float64(n)/steps))
	}
	return out
}

func (s sketch) motorRow(what string, rotor, torque, current float64) []string {
	name := unit.RotationSpeeds.Format(rotor, s.sys)
	if what != "supply" {
		name += " (" + what + ")"
	}
	return []string{name, unit.SmallTorques.Format(torque, s.sys), unit.Currents.Format(current, s.sys)}
}

// loweringLine adds what the lamps take over the motor's speed, and the point at which it comes down.
func (s sketch) loweringLine(p *plot, turns, amps scaled) {
	d, c := s.h.Drive, s.h.Drive.Machine
	lo := d.Lowering
	if !s.course.LoadsKnown() || !lo.Known || lo.Current <= 0 {
		return
	}
	k, vb, r := float64(c.K.Val), float64(c.BrushDrop), float64(c.R.Val)
	lamps := plotLine{name: "current of the lamps", unit: amps.unit, color: "--night", dash: "dotted", scale: 1}
	for _, at := range s.loadsLine() {
		if at[1] > 1.5*float64(lo.Current) {
			if lo.Steady && at[0] > float64(lo.Voltage) {
				break // past the point where it comes down
			}
			lamps.points = nil // a constant power comes down from far above
			continue
		}
		lamps.points = append(lamps.points, [2]float64{turns.of((at[0] + vb + at[1]*r) / k), amps.of(at[1])})
	}
	if len(lamps.points) == 0 {
		return
	}
	p.lines = append(p.lines, lamps)
	if lo.Steady {
		p.lines = append(p.lines, mark("coming down", "--night", "triangle", amps.unit, 1, turns.of(float64(lo.Rotor)), amps.of(float64(lo.Current))))
		p.rows = append(p.rows, s.motorRow("coming down", float64(lo.Rotor), float64(d.AtMotorDown.Val), float64(lo.Current)))
		p.say += fmt.Sprintf(" Coming down it turns at %s and makes %s.", unit.RotationSpeeds.Format(float64(lo.Rotor), s.sys), unit.Currents.Format(float64(lo.Current), s.sys))
	}
}

// mark is a single point.
func mark(name, color, symbol, u string, scale int, x, y float64) plotLine {
	return plotLine{name: name, unit: u, color: color, dash: "solid", mark: symbol, scale: scale, points: [][2]float64{{x, y}}}
}
