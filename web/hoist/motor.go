package hoist

import (
	"fmt"
	"net/http"
	"net/url"

	"duskweight/internal/model"
	"duskweight/internal/model/lift"
	"duskweight/internal/model/unit"
	"duskweight/internal/say"
	"duskweight/web/form"
	"duskweight/web/page"
)

// motorView is "Know your motor": three measurements, what each set of numbers gives, and what contradicts.
type motorView struct {
	Open    bool // something of the motor is not known yet
	Steps   []benchStep
	Sets    [][]string // constant, from the user, the bench, the label, used
	Reasons []string
	Gear    []string // a label whose speed is behind a gearbox
	Plate   plateView
	Box     boxView
}

// plateView is the plate of a motor at full load, as typed, and what it gives.
type plateView struct {
	Fields  []plateField
	Problem string
	Rows    []page.PairView
	To      string // the first of the fields that take it
}

type plateField struct{ Name, Label, Typed string }

// plateOf reads the four numbers of a motor's plate from the address and works out what they give. Nothing is saved.
func plateOf(typed url.Values, sys unit.System, to string) plateView {
	v := plateView{To: to}
	asked := []struct {
		name, label string
		q           unit.Quantity
	}{
		{"volts", "Volts", unit.Voltages}, {"watts", "Watts at the shaft", unit.Powers}, {"turns", "Turns a minute at full load", unit.RotationSpeeds}, {"amps", "Amps at full load", unit.Currents},
	}
	var si [4]float64
	given := 0
	for i, a := range asked {
		text := form.Clip(typed.Get(a.name), 40)
		v.Fields = append(v.Fields, plateField{"plate-" + a.name, a.label, text})
		x, known, err := a.q.Parse(text, sys)
		switch {
		case err != nil:
			v.Problem = a.label + ": " + form.Sentence(say.Why(err).In(sys))
		case known:
			given++
		}
		si[i] = x
	}
	if given < len(asked) || v.Problem != "" {
		if given > 0 && v.Problem == "" {
			v.Problem = "All four numbers are needed."
		}
		return v
	}
	k, r, free, err := lift.FromPlate(lift.Plate{Voltage: unit.Voltage(si[0]), Power: unit.Power(si[1]), Speed: unit.AngularSpeed(si[2]), Current: unit.Current(si[3])})
	if err != nil {
		v.Problem = form.Sentence(say.Why(err).In(sys))
		return v
	}
	v.Rows = []page.PairView{{Name: "Constant K", Value: unit.MachineConstants.Format(float64(k), sys)}, {Name: "Resistance between the wires", Value: unit.Resistances.Format(float64(r), sys)}, {Name: "Current without load", Value: unit.Currents.Format(float64(free), sys)}}
	return v
}

// benchStep is one measurement with its picture.
type benchStep struct {
	ID, Title string
	Do        []string
	Gives     string
	Link      form.LinkView // the list where the readings go
	Count     string        // readings given so far
}

// showMotor is a page to take to the bench: how to measure the motor, and what its numbers give so far.
func (s *Pages) showMotor(w http.ResponseWriter, r *http.Request) error {
	h, err := s.hoistOf(r)
	if err != nil {
		return err
	}
	f, err := h.Frame()
	if err != nil {
		return err
	}
	f.Title = "Know your motor"
	v := motorViewOf(h.result(h.Saved.Value), h.sys, model.HoistPath(h.i), h.Url)
	v.Plate = plateOf(r.URL.Query(), h.sys, page.FieldURL(h.Url, model.HoistPath(h.i)+".machine.k_vs_rad"))
	v.Box = boxOf(h.result(h.Saved.Value), h.sys, h.Url, h.Saved.Revision)
	return s.Show(w, r, http.StatusOK, f, motorPage(v, form.LinkView{Text: "Back to the lifted mass", URL: h.Url}))
}

// motorSets are the three constants in the order of the table.
var motorSets = []struct {
	what, name string
	show       unit.Quantity
}{
	{"resistance", "Resistance R", unit.Resistances},
	{"current without load", "Current without load", unit.Currents},
	{"machine constant", "Constant K", unit.MachineConstants},
}

// motorViewOf prints what is known of a hoist's motor. at is the path of the hoist, here the address of its page.
func motorViewOf(h *model.HoistResult, sys unit.System, at, here string) motorView {
	m, c := h.Design.Machine, h.Drive.Machine
	v := motorView{Open: !c.K.Is || !c.R.Is || !c.I0.Is, Reasons: say.All(c.Contradictions, sys)}
	for _, s := range motorSets {
		row := []string{s.name, "–", "–", "–", "not known"}
		for _, f := range c.Found {
			if f.What != s.what {
				continue
			}
			text := s.show.Format(f.Value, sys)
			row[map[string]int{"yours": 1, "bench": 2, "sheet": 3}[string(f.From)]] = text
			if f.Used {
				row[4] = text
			}
		}
		v.Sets = append(v.Sets, row)
	}
	v.Gear = gearWords(c.Found, m)
	link := func(field, text string) form.LinkView {
		return form.LinkView{Text: text, URL: page.FieldURL(here, at+".machine."+field)}
	}
	typicalAmps := "a tenth to a quarter of the current that the motor withstands all day"
	if i, ok := m.MaxCurrent.Value(); ok {
		typicalAmps = fmt.Sprintf("%s to %s, a tenth to a quarter of what it withstands all day", unit.Currents.Format(0.1*float64(i), sys), unit.Currents.Format(0.25*float64(i), sys))
	}
	v.Steps = []benchStep{
		{"held", "1. Hold the shaft", []string{
			"Hold the shaft so that it cannot turn. Take the gears off if you can.",
			"Feed the motor from a supply that limits the current. Set it to " + typicalAmps + ". Do this for some seconds only.",
			"Read volts at the motor's own wires, and amperes, at the same moment.",
			"Turn the shaft a little and read again: five positions.",
		}, "R is volts over amperes, the mean of the five.", link("bench_resistance", "Type the five readings"), readings(m.BenchR, 5)},
		{"free", "2. Let it turn freely", []string{
			"Leave nothing on the shaft, no gears. Fasten the motor: it jumps when it starts.",
			"Feed it with about the voltage of your supply, and wait until amperes are steady.",
			"Read volts and amperes.",
		}, "The current without load is what the motor's own friction uses. If you can only measure with the gears on, say so in the form.", link("bench_no_load", "Type the reading"), readings(m.BenchI0, 1)},
		{"driven", "3. Turn it with a drill", []string{
			"Connect nothing to its wires but a voltmeter. Couple the shaft to a drill with a piece of hose or a socket.",
			"Turn it at a speed that you know: from the drill's label under light load, or with a turn counter.",
			"Read volts and speed. Then turn the other way and read again; type that speed with a minus.",
		}, "K is volts over speed, the mean of both ways. The two may differ by a few per cent: brushes can sit off the middle.", link("bench_driven", "Type the two readings"), readings(m.BenchK, 2)},
	}
	return v
}

func readings(list []lift.Bench, wanted int) string {
	switch n := len(list); {
	case n == 0:
		return fmt.Sprintf("no reading yet, %d needed", wanted)
	case n == 1 && wanted == 1:
		return "one reading"
	case n < wanted:
		return fmt.Sprintf("%d of %d readings", n, wanted)
	default:
		return fmt.Sprintf("%d readings", n)
	}
}

// gearWords helps with a label whose speed is that of a shaft behind a gearbox. Where the motor itself was measured too,
// the ratio is the label's K over the measured one.
func gearWords(found []lift.Found, m lift.Machine) []string {
	var sheet, other float64
	for _, f := range found {
		switch {
		case f.What != "machine constant":
		case f.From == lift.FromSheet:
			sheet = f.Value
		case other == 0:
			other = f.Value
		}
	}
	had := float64(m.SheetGear.Or(1))
	if sheet > 1.5*other && other > 0 {
		return []string{fmt.Sprintf("The label's K is %s times the measured one. So the label's speed is most likely that of a shaft behind a gearbox of about %s : 1. Put that into “Gearbox before that speed”.",
			unit.Rounded(sheet/other, 3), unit.Rounded(had*sheet/other, 3))}
	}
	if m.SheetGear.Is || !m.SheetSpeed.Is {
		return nil
	}
	return []string{
		"The label's speed counts as the speed of the motor's own shaft. If there is a gearbox on it, find the gearbox's ratio: mark both shafts, turn the motor's by hand and count its turns for ten of the other.",
		"If the motor's own shaft cannot be reached, do test 3 at the slow shaft and leave the ratio open. Then motor and gearbox are one machine with a large K. Add its gearbox as a stage of ratio 1 with its efficiency, for its losses are not in K.",
	}
}

// benchAlt is what a picture of the bench shows, in words.
func benchAlt(id string) string {
	switch id {
	case "held":
		return "A supply feeds the motor through an ammeter. A voltmeter sits at the motor's wires. The shaft is clamped."
	case "free":
		return "A supply feeds the motor through an ammeter. A voltmeter sits at the motor's wires. The shaft turns freely."
	}
	return "A drill turns the motor's shaft. Only a voltmeter sits on the motor's wires."
}
