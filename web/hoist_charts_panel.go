package web

import (
	"fmt"
	"strings"

	"duskweight/internal/model"
	"duskweight/internal/model/unit"
)

// panelCurve is the panels' curve in three lights with the motor's line: held it is V_b + I·R, turning it takes one
// current at every voltage.
func (s sketch) panelCurve() plot {
	volts, amps := scaleOf(unit.Voltages, s.sys), scaleOf(unit.Currents, s.sys)
	p := plot{id: "panel", title: "The panel and the motor on it", x: volts.axis("voltage"), y: []string{amps.axis("current")}}
	x := s.h.Direct
	if !x.Known {
		p.say = "Not drawn yet: " + x.WhyNot + "."
		return p
	}
	for i, g := range []unit.Irradiance{1000, 600, 200} {
		l := plotLine{name: unit.Irradiances.Format(float64(g), s.sys), unit: amps.unit, color: "--ink", dash: []string{"solid", "dashed", "dotted"}[i], area: i == 0}
		const steps = 60
		for n := range steps + 1 {
			// closer together where the curve bends
			u := float64(x.Open) * (1 - float64((steps-n)*(steps-n))/(steps*steps))
			l.points = append(l.points, [2]float64{volts.of(u), amps.of(float64(x.Current(g, unit.Voltage(u))))})
		}
		p.lines = append(p.lines, l)
	}
	d := s.h.Drive
	loop, vb := float64(d.Machine.R.Val+d.Raising.Wire), float64(d.Machine.BrushDrop)
	bend := vb + float64(x.Run)*loop
	motor := plotLine{name: "motor that lifts", unit: amps.unit, color: "--mass", dash: "solid",
		points: [][2]float64{{volts.of(vb), 0}, {volts.of(bend), amps.of(float64(x.Run))}, {volts.of(max(bend, float64(x.Open))), amps.of(float64(x.Run))}}}
	push := plotLine{name: "first push", unit: amps.unit, color: "--fail", dash: "dashed", points: [][2]float64{{0, amps.of(float64(x.Start))}, {volts.of(float64(x.Open)), amps.of(float64(x.Start))}}}
	p.lines = append(p.lines, motor, push)
	p.head = []string{"Sun on the panels", "Turns", "Voltage", "Current", "Speed of the mass", "Power"}
	here := plotLine{name: "where it works", unit: amps.unit, color: "--mass", dash: "solid", mark: "circle"}
	for _, at := range x.Points {
		speed := "–"
		if at.Turns {
			speed = unit.SlowSpeeds.Format(float64(at.Speed), s.sys)
		}
		if at.Light == 1000 || at.Light == 600 || at.Light == 200 {
			here.points = append(here.points, [2]float64{volts.of(float64(at.Volts)), amps.of(float64(at.Current))})
		}
		p.rows = append(p.rows, []string{unit.Irradiances.Format(float64(at.Light), s.sys), yesNo(at.Turns), unit.Voltages.Format(float64(at.Volts), s.sys),
			unit.Currents.Format(float64(at.Current), s.sys), speed, unit.Powers.Format(float64(at.Power), s.sys)})
	}
	p.lines = append(p.lines, here)
	p.say = strings.Join(x.Say[:1], " ") + " Where the panel's curve meets the motor's line, there they work: on the slope it stands still, on the level it turns."
	return p
}

// realDay is a day of the project's own light with the height gained in it.
func (s sketch) realDay() plot {
	light, height := scaleOf(unit.Irradiances, s.sys), scaleOf(unit.Lengths, s.sys)
	p := plot{id: "day", title: "Height gained on a real day", x: "hour of the day, h", y: []string{light.axis("sun"), height.axis("height")}}
	x := s.h.Direct
	if !x.Known || x.Year == nil {
		p.say = "Not drawn yet: the curve of the panel or the year of light is not known."
		return p
	}
	y := x.Year
	sun := plotLine{name: "sun on the panels", unit: light.unit, color: "--ink", dash: "dashed", area: true}
	gained := plotLine{name: "height gained so far", unit: height.unit, color: "--mass", dash: "solid", scale: 1, points: [][2]float64{{0, 0}}}
	sum := 0.0
	p.head = []string{"Hour", "Sun", "Gained in it", "So far"}
	for c := range 24 {
		sum += float64(y.Gain[c])
		sun.points = append(sun.points, [2]float64{float64(c) + 0.5, light.of(float64(y.Light[c]))})
		gained.points = append(gained.points, [2]float64{float64(c) + 1, height.of(sum)})
		if y.Light[c] > 0 {
			p.rows = append(p.rows, []string{fmt.Sprintf("%d to %d", c, c+1), unit.Irradiances.Format(float64(y.Light[c]), s.sys), unit.Lengths.Format(float64(y.Gain[c]), s.sys), unit.Lengths.Format(sum, s.sys)})
		}
	}
	p.lines = []plotLine{sun, gained}
	p.say = fmt.Sprintf("%s, the day nearest to the mean of the year: %s of height if the mass could go on rising. The year's sums count only what the travel has room for.",
		dayName(y.Day), unit.Lengths.Format(sum, s.sys))
	return p
}

// dayName names a day of the year, from 0.
func dayName(day int) string {
	for m, n := range monthDays {
		if day < n {
			return fmt.Sprintf("%d %s", day+1, monthNames[m])
		}
		day -= n
	}
	return ""
}

// directView is the panel straight on the motor, ready to print.
type directView struct {
	Say  []string
	Rows []pairView
	Link linkView // where the missing input is; empty when none is
}

func directViewOf(x *model.Direct, sys unit.System, page string) *directView {
	if x == nil {
		return nil
	}
	v := &directView{Say: x.Say, Rows: directRows(x, sys)}
	if variant, _, ok := strings.Cut(page, "/hoist"); ok && len(x.Missing) > 0 {
		v.Link = linkView{"Panels and controller are on the page of the variant", variant + "#" + fieldID(x.Missing[0].Path)}
	}
	return v
}

// directRows is the panel straight on the motor in numbers.
func directRows(x *model.Direct, sys unit.System) []pairView {
	if !x.Known {
		return []pairView{{"Starts", "not known: " + x.WhyNot}}
	}
	never := "at no sun"
	light := func(k unit.Known[unit.Irradiance]) string {
		if !k.Is {
			return never
		}
		return unit.Irradiances.Format(float64(k.Val), sys)
	}
	rows := []pairView{{"Current of the first push", unit.Currents.Format(float64(x.Start), sys)}, {"Current while it lifts", unit.Currents.Format(float64(x.Run), sys)},
		{"The panels give at most", unit.Currents.Format(float64(x.Short), sys) + ", " + unit.Voltages.Format(float64(x.Open), sys)},
		{"Starts when the sun reaches", light(x.StartLight)}, {"Stalls when it falls under", light(x.StallLight)}}
	if y := x.Year; y != nil {
		rows = append(rows, pairView{"Height gained on a mean day", unit.Lengths.Format(float64(y.HeightDay), sys)}, pairView{"… in lifts", unit.Rounded(float64(y.LiftsDay), 3)},
			pairView{"Turns in a year", itoa(y.Hours) + " hours"})
	}
	rows = append(rows, pairView{"With a step-down converter it starts at", light(x.Converter.StartLight)})
	if h, ok := x.Converter.HeightDay.Value(); ok {
		rows = append(rows, pairView{"… and gains on a mean day", unit.Lengths.Format(float64(h), sys)})
	}
	return rows
}
