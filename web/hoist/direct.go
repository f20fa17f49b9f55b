package hoist

import (
	"fmt"
	"strings"

	"duskweight/internal/model"
	"duskweight/internal/model/unit"
	"duskweight/internal/say"
	"duskweight/web/form"
	"duskweight/web/page"
)

// panelCurve is the panels' curve in three lights with the motor's line: held it is V_b + I·R, turning it takes one
// current at every voltage.
func (s sketch) panelCurve() page.Plot {
	volts, amps := page.ScaleOf(unit.Voltages, s.sys), page.ScaleOf(unit.Currents, s.sys)
	p := page.Plot{Id: "panel", Title: "The panel and the motor on it", X: volts.Axis("voltage"), Y: []string{amps.Axis("current")}}
	x := s.h.Direct
	if !x.Known {
		p.Say = "Not drawn yet: " + x.WhyNot.In(s.sys) + "."
		return p
	}
	for i, g := range []unit.Irradiance{1000, 600, 200} {
		l := page.PlotLine{Name: unit.Irradiances.Format(float64(g), s.sys), Unit: amps.Unit, Color: "--ink", Dash: []string{"solid", "dashed", "dotted"}[i], Area: i == 0}
		const steps = 60
		for n := range steps + 1 {
			// closer together where the curve bends
			u := float64(x.Open) * (1 - float64((steps-n)*(steps-n))/(steps*steps))
			l.Points = append(l.Points, [2]float64{volts.Of(u), amps.Of(float64(x.Current(g, unit.Voltage(u))))})
		}
		p.Lines = append(p.Lines, l)
	}
	d := s.h.Drive
	loop, vb := float64(d.Machine.R.Val+d.Raising.Wire), float64(d.Machine.BrushDrop)
	bend := vb + float64(x.Run)*loop
	motor := page.PlotLine{Name: "motor that lifts", Unit: amps.Unit, Color: "--mass", Dash: "solid",
		Points: [][2]float64{{volts.Of(vb), 0}, {volts.Of(bend), amps.Of(float64(x.Run))}, {volts.Of(max(bend, float64(x.Open))), amps.Of(float64(x.Run))}}}
	push := page.PlotLine{Name: "first push", Unit: amps.Unit, Color: "--fail", Dash: "dashed", Points: [][2]float64{{0, amps.Of(float64(x.Start))}, {volts.Of(float64(x.Open)), amps.Of(float64(x.Start))}}}
	p.Lines = append(p.Lines, motor, push)
	p.Head = []string{"Sun on the panels", "Turns", "Voltage", "Current", "Speed of the mass", "Power"}
	here := page.PlotLine{Name: "where it works", Unit: amps.Unit, Color: "--mass", Dash: "solid", Mark: "circle"}
	for _, at := range x.Points {
		speed := "–"
		if at.Turns {
			speed = unit.SlowSpeeds.Format(float64(at.Speed), s.sys)
		}
		if at.Light == 1000 || at.Light == 600 || at.Light == 200 {
			here.Points = append(here.Points, [2]float64{volts.Of(float64(at.Volts)), amps.Of(float64(at.Current))})
		}
		p.Rows = append(p.Rows, []string{unit.Irradiances.Format(float64(at.Light), s.sys), yesNo(at.Turns), unit.Voltages.Format(float64(at.Volts), s.sys),
			unit.Currents.Format(float64(at.Current), s.sys), speed, unit.Powers.Format(float64(at.Power), s.sys)})
	}
	p.Lines = append(p.Lines, here)
	p.Say = x.Say[0].In(s.sys) + " They work where the panel's curve meets the motor's line. On the slope the motor is at rest; on the level part it turns."
	return p
}

// realDay is a day of the project's own light with the height gained in it.
func (s sketch) realDay() page.Plot {
	light, height := page.ScaleOf(unit.Irradiances, s.sys), page.ScaleOf(unit.Lengths, s.sys)
	p := page.Plot{Id: "day", Title: "Height gained on a real day", X: "hour of the day, h", Y: []string{light.Axis("sun"), height.Axis("height")}}
	x := s.h.Direct
	if !x.Known || x.Year == nil {
		p.Say = "Not drawn yet: the curve of the panel or the year of light is not known."
		return p
	}
	y := x.Year
	sun := page.PlotLine{Name: "sun on the panels", Unit: light.Unit, Color: "--ink", Dash: "dashed", Area: true}
	gained := page.PlotLine{Name: "height gained so far", Unit: height.Unit, Color: "--mass", Dash: "solid", Scale: 1, Points: [][2]float64{{0, 0}}}
	sum := 0.0
	p.Head = []string{"Hour", "Sun", "Gained in it", "So far"}
	for c := range 24 {
		sum += float64(y.Gain[c])
		sun.Points = append(sun.Points, [2]float64{float64(c) + 0.5, light.Of(float64(y.Light[c]))})
		gained.Points = append(gained.Points, [2]float64{float64(c) + 1, height.Of(sum)})
		if y.Light[c] > 0 {
			p.Rows = append(p.Rows, []string{fmt.Sprintf("%d to %d", c, c+1), unit.Irradiances.Format(float64(y.Light[c]), s.sys), unit.Lengths.Format(float64(y.Gain[c]), s.sys), unit.Lengths.Format(sum, s.sys)})
		}
	}
	p.Lines = []page.PlotLine{sun, gained}
	p.Say = fmt.Sprintf("%s, the day nearest to the mean of the year: %s of height if the mass could go on rising. The year's sums count only what the travel has room for.",
		dayName(y.Day), unit.Lengths.Format(sum, s.sys))
	return p
}

// dayName names a day of the year, from 0.
func dayName(day int) string {
	for m, n := range page.MonthDays {
		if day < n {
			return fmt.Sprintf("%d %s", day+1, form.MonthNames[m])
		}
		day -= n
	}
	return ""
}

// directView is the panel straight on the motor, ready to print.
type directView struct {
	Say  []string
	Rows []page.PairView
	Link form.LinkView // where the missing input is; empty when none is
}

func directViewOf(x *model.Direct, sys unit.System, page string) *directView {
	if x == nil {
		return nil
	}
	v := &directView{Say: say.All(x.Say, sys), Rows: directRows(x, sys)}
	if variant, _, ok := strings.Cut(page, "/hoist"); ok && len(x.Missing) > 0 {
		v.Link = form.LinkView{Text: "Panels and controller are on the page of the variant", URL: variant + "#" + form.FieldID(x.Missing[0].Path)}
	}
	return v
}

// directRows is the panel straight on the motor in numbers.
func directRows(x *model.Direct, sys unit.System) []page.PairView {
	if !x.Known {
		return []page.PairView{{Name: "Starts", Value: "not known: " + x.WhyNot.In(sys)}}
	}
	never := "at no sun"
	light := func(k unit.Known[unit.Irradiance]) string {
		if !k.Is {
			return never
		}
		return unit.Irradiances.Format(float64(k.Val), sys)
	}
	rows := []page.PairView{{Name: "Current of the first push", Value: unit.Currents.Format(float64(x.Start), sys)}, {Name: "Current while it lifts", Value: unit.Currents.Format(float64(x.Run), sys)},
		{Name: "The panels give at most", Value: unit.Currents.Format(float64(x.Short), sys) + ", " + unit.Voltages.Format(float64(x.Open), sys)},
		{Name: "Starts when the sun reaches", Value: light(x.StartLight)}, {Name: "Stalls when it falls under", Value: light(x.StallLight)}}
	if y := x.Year; y != nil {
		rows = append(rows, page.PairView{Name: "Height gained on a mean day", Value: unit.Lengths.Format(float64(y.HeightDay), sys)}, page.PairView{Name: "… in lifts", Value: unit.Rounded(float64(y.LiftsDay), 3)},
			page.PairView{Name: "Turns in a year", Value: page.Counted(y.Hours, "hour")})
	}
	rows = append(rows, page.PairView{Name: "With a step-down converter it starts at", Value: light(x.Converter.StartLight)})
	if h, ok := x.Converter.HeightDay.Value(); ok {
		rows = append(rows, page.PairView{Name: "… and gains on a mean day", Value: unit.Lengths.Format(float64(h), sys)})
	}
	return rows
}
