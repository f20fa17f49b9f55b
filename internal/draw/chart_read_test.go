package draw

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"duskweight/internal/model/unit"
)

// drawn is a picture as text.
func drawn(t *testing.T, draw func(*strings.Builder) error) string {
	t.Helper()
	var b strings.Builder
	if err := draw(&b); err != nil {
		t.Fatal(err)
	}
	return b.String()
}

// bell is a clear day's sun, W: half a sine from 6 to 18 h.
func bell(most float64) []float64 {
	v := make([]float64, 24)
	for h := range v {
		v[h] = math.Max(0, most*math.Sin(math.Pi*(float64(h)+0.5-6)/12))
	}
	return v
}

func week(day []float64) (out []float64) {
	for range 7 {
		out = append(out, day...)
	}
	return out
}

func aDay() TypicalDay {
	d := TypicalDay{Name: "A day", Sun: bell(148), Load: make([]float64, 24), Stored: make([]float64, 24)}
	for h := range d.Stored {
		d.Load[h] = float64(h % 7)
		d.Stored[h] = 3600 * float64(10+h)
	}
	return d
}

func aWorstWeek() WorstWeek {
	d := WorstWeek{Name: "The worst week", Days: []string{"27 Dec", "28", "29", "30", "31", "1 Jan", "2"}, Sun: week(bell(95)), Look: "mass"}
	for h := range 168 {
		d.Load = append(d.Load, float64(10+h%20))
		d.Missing = append(d.Missing, float64(h%10))
		d.Stored = append(d.Stored, 3600*float64(h))
	}
	return d
}

func aWeek() Week {
	d := Week{Global: week(bell(640)), Diffuse: week(bell(210))}
	for h := range 168 {
		d.Air = append(d.Air, -7+float64(h)/12)
	}
	return d
}

func someStates() States {
	s := States{Name: "Battery"}
	for d := range 365 {
		s.Most = append(s.Most, 0.6+0.4*math.Cos(float64(d)/58))
		s.Least = append(s.Least, 0.2*s.Most[d])
	}
	return s
}

func someBurns() Burns {
	b := Burns{Name: "21 December"}
	for h := range 24 {
		b.Dark[h] = h < 8 || h >= 16
	}
	lamp, pump := Burn{Name: "Lamp"}, Burn{Name: "Pump"}
	for h := range 24 {
		if h >= 17 && h < 22 {
			lamp.Hours[h] = 7
		}
		pump.Hours[h] = 40 + 5*float64(h)
	}
	b.Each = []Burn{lamp, pump}
	return b
}

var (
	flatSun  = [12]float64{0.6, 1.2, 2.5, 3.9, 5, 5.4, 5.2, 4.4, 3, 1.6, 0.8, 0.5}
	panelSun = [12]float64{1, 2, 3.2, 4.3, 4.9, 5, 5, 4.7, 3.8, 2.4, 1.3, 0.9}
)

func someMass() MassAgainstHeight {
	wh := func(e float64) unit.Energy { return unit.Energy(e * 3600) }
	return MassAgainstHeight{Mass: unit.Of(unit.Mass(240)), Height: unit.Of(unit.Length(3.8)),
		Lines: []Energies{{wh(74), "a night: 74 Wh", true}, {wh(1000), "1 kWh", false}, {wh(2), "2 Wh", false}}}
}

// pictures are ordinary pictures of each sort.
func pictures(t *testing.T) map[string]string {
	nights := make([]int8, 365)
	for i := range nights {
		nights[i] = []int8{Served, Served, Dark, PartlyServed, NotCounted}[i*i%5]
	}
	out := map[string]string{
		"a day":           drawn(t, func(b *strings.Builder) error { return Day(aDay(), b) }),
		"the worst week":  drawn(t, func(b *strings.Builder) error { return aWorstWeek().Draw(b) }),
		"the first week":  drawn(t, func(b *strings.Builder) error { return aWeek().Draw(b) }),
		"states":          drawn(t, func(b *strings.Builder) error { return someStates().Draw(b) }),
		"what burns":      drawn(t, func(b *strings.Builder) error { return someBurns().Draw(b) }),
		"sun of months":   drawn(t, func(b *strings.Builder) error { return SunMonths(flatSun, panelSun, b) }),
		"mass and height": drawn(t, func(b *strings.Builder) error { return MassHeight(someMass(), b) }),
		"nights":          drawn(t, func(b *strings.Builder) error { return Nights(nights, b) }),
		"flow": drawn(t, func(b *strings.Builder) error {
			return Flow{Name: "Where it went", Whole: FlowPart{Name: "sun on the panels", Energy: 36e6}, Parts: []FlowPart{
				{"lamps", 18e6, ToLight}, {"wires and boxes", 9e6, ToHeat}, {"nobody took it", 9e6, ToNobody}}}.Draw(b)
		}),
	}
	for _, narrow := range []bool{false, true} {
		out[fmt.Sprintf("plans, narrow %v", narrow)] = someFront().Draw(narrow)
		out[fmt.Sprintf("years, narrow %v", narrow)] = someYears().Draw(narrow)
	}
	out["skyline"], out["a month"], out["no month"] = someSky().Draw(), someMonth().Draw(), MonthSky{}.Draw()
	out["cubes"] = drawn(t, func(b *strings.Builder) error { return someCubes().Draw(b) })
	out["a managed day"] = drawn(t, func(b *strings.Builder) error { return someManaged().Draw(b) })
	for _, is := range []float64{0, 3, 70, 400} {
		out[fmt.Sprintf("bar %g", is)] = drawn(t, func(b *strings.Builder) error {
			return Bar{Is: unit.Energy(is), Top: 100, Piece: 7, Look: "mass"}.Draw(b)
		})
	}
	for _, deep := range []float64{0.2, 1, 3} {
		for _, head := range []float64{3, 12, 60} {
			w := Water{Volume: 10, Head: unit.Length(head), Surface: unit.Of(unit.Area(10 / deep)), Tower: head > 12, VolumeText: "10 m³", HeadText: "12 m"}
			out[fmt.Sprintf("water %g m deep, %g m up", deep, head)] = drawn(t, func(b *strings.Builder) error { return w.Draw(b) })
		}
	}
	for lead := range 4 {
		for parts := 1; parts <= 3; parts++ {
			h := hoist()
			h.Reeving.LeadSheaves, h.Reeving.RopeParts = unit.Of(unit.Count(lead)), unit.Of(unit.Count(parts))
			out[fmt.Sprintf("a hoist with %d pulleys and %d ropes", lead, parts)] = drawn(t, func(b *strings.Builder) error {
				return SVG(Make(Plan{Hoist: h, KeepOut: unit.Of(unit.Length(2))}), b)
			})
		}
	}
	return out
}

// Whatever is drawn lies on its paper, no text lies on another, and no letter is smaller than the smallest that the look
// allows: 9 units.
func TestPicturesAreReadable(t *testing.T) {
	for name, svg := range pictures(t) {
		r := parse(t, svg)
		paper := box{0, 0, r.w, r.h}
		outside := func(b box) bool {
			return b.x0 < paper.x0-0.01 || b.y0 < paper.y0-0.01 || b.x1 > paper.x1+0.01 || b.y1 > paper.y1+0.01
		}
		for i, x := range r.texts {
			if outside(x.box) {
				t.Errorf("%s: %q runs out of the paper: %v of %v × %v", name, x.text, x.box, r.w, r.h)
			}
			if x.size < 9 {
				t.Errorf("%s: %q in letters of %g", name, x.text, x.size)
			}
			for _, o := range r.texts[:i] {
				if x.meets(o.box) && !strings.HasPrefix(name, "mass") { // turned by any angle there
					t.Errorf("%s: %q lies on %q", name, x.text, o.text)
				}
			}
		}
		for _, list := range [][]mark{r.lines, r.rects, r.paths, r.circles} {
			for _, m := range list {
				if outside(m.bounds()) {
					t.Errorf("%s: a shape runs out of the paper: %v of %v × %v, %v", name, m.bounds(), r.w, r.h, m.look)
				}
			}
		}
	}
}

// Hours read off the picture: each name stands in the middle under its stroke; the last one is pushed to the left.
func hoursOf(t *testing.T, r readBack, from, to float64, first int) scale {
	t.Helper()
	var at, v []float64
	for h := 0; h < 24; h += 6 {
		name := fmt.Sprintf("%02d:00", (h+first)%24)
		for _, x := range r.texts {
			if x.text != name || x.y0 < from || x.y1 > to || len(at) > 0 && x.x0 < at[len(at)-1] || h > 0 && (x.x0+x.x1)/2 < r.w/4 {
				continue
			}
			for _, l := range r.lines {
				if a, b := l.pts[0], l.pts[1]; a.X == b.X && math.Abs(a.X-(x.x0+x.x1)/2) < 0.1 && b.Y < x.y0 && x.y0-b.Y < 10 && b.Y-a.Y > 2 && b.Y-a.Y < 8 {
					at, v = append(at, a.X), append(v, float64(h))
					break
				}
			}
			break
		}
	}
	if len(at) != 4 {
		t.Fatalf("hours at %v", at)
	}
	s := scale{at[0], v[0], at[3], v[3]}
	for i := range at {
		near(t, "hours in equal steps", s.value(at[i]), v[i], 0.01)
	}
	return s
}

// Each hour of a day is read back from the picture by its own axes, within the hundredth of a unit that is written.
func TestDayReadBack(t *testing.T) {
	d := aDay()
	r := parse(t, drawn(t, func(b *strings.Builder) error { return Day(d, b) }))
	watts, wh := r.upright(t, 0, 180), r.upright(t, 180, 312)
	hours, below := hoursOf(t, r, 160, 200, 0), hoursOf(t, r, 270, 312, 0)
	near(t, "both strips with the same hours", below.p0, hours.p0, 1e-9)
	sun := looking(looking(r.paths, "fill", sunColour), "fill-opacity", ".5")[0]
	load := looking(r.paths, "stroke", loadColour)[0]
	stored := looking(r.paths, "stroke", cellColour)[0]
	shade := looking(looking(r.paths, "fill", cellColour), "fill-opacity", ".15")[0]
	for h := range 24 {
		x := hours.p0 + (float64(h)+0.5)*(hours.p1-hours.p0)/18
		near(t, fmt.Sprintf("sun at %d", h), watts.value(sun.height(t, x)), d.Sun[h], 0.02)
		near(t, fmt.Sprintf("load at %d", h), watts.value(load.height(t, x)), d.Load[h], 0.02)
		end := hours.p0 + float64(h+1)*(hours.p1-hours.p0)/18
		near(t, fmt.Sprintf("stored at the end of %d", h), wh.value(stored.height(t, end)), d.Stored[h]/3600, 0.02)
		near(t, "its shade", shade.height(t, end-0.1), stored.height(t, end-0.1), 0.02)
	}
	near(t, "the night before", wh.value(stored.pts[0].Y), d.Stored[23]/3600, 0.02)
	near(t, "the sun stands on nothing", watts.value(sun.pts[0].Y), 0, 0.01)
	near(t, "the axis is long enough", watts.v1, 150, 50)
	r.legend(t, "sun on the panels, after losses", "fill", sunColour)
	r.legend(t, "what is needed", "stroke", loadColour)
	d.Look = "mass"
	if r = parse(t, drawn(t, func(b *strings.Builder) error { return Day(d, b) })); len(looking(r.paths, "stroke", massColour)) != 1 {
		t.Error("a mass is not drawn in its colour")
	}
	d.Stored = nil
	if r = parse(t, drawn(t, func(b *strings.Builder) error { return Day(d, b) })); len(looking(r.paths, "stroke", massColour)) != 0 || r.h > 230 {
		t.Errorf("room for a store that is not there: %v high", r.h)
	}
	// Means of hours are what a day comes to: 12 hours of 2 W are 24 Wh, however many values they come in.
	if got := (TypicalDay{Sun: []float64{2, 0}, Load: []float64{1}}).reading(); !strings.Contains(got, "24\u00a0Wh in the day; up to 1\u00a0W and 24\u00a0Wh") {
		t.Error(got)
	}
}

// daysOf reads the days off the picture: each name in the middle between two strokes.
func daysOf(t *testing.T, r readBack, names []string, from, to float64) scale {
	t.Helper()
	var at []float64
	for _, name := range names {
		for _, x := range r.texts {
			if x.text == name && x.y0 > from && x.y1 < to {
				at = append(at, (x.x0+x.x1)/2)
			}
		}
	}
	if len(at) != 7 {
		t.Fatalf("%d of 7 days", len(at))
	}
	s := scale{at[0], 12, at[6], 156}
	for i := range at {
		near(t, "days in equal steps", s.value(at[i]), float64(24*i+12), 0.1)
		before, after := false, false
		for _, l := range r.lines {
			if a, b := l.pts[0], l.pts[1]; a.X == b.X && a.Y > from-20 && b.Y < to && b.Y-a.Y < 8 {
				before = before || math.Abs(s.value(a.X)-float64(24*i)) < 0.1
				after = after || math.Abs(s.value(a.X)-float64(24*i+24)) < 0.1
			}
		}
		if !before || !after {
			t.Errorf("day %d does not stand between its strokes", i)
		}
	}
	return s
}

// Each hour of a week is read back, within half a unit of the paper: this picture is written in whole units.
func TestWorstWeekReadBack(t *testing.T) {
	d := aWorstWeek()
	r := parse(t, drawn(t, func(b *strings.Builder) error { return d.Draw(b) }))
	watts, wh := r.upright(t, 0, 180), r.upright(t, 180, 312)
	hours := daysOf(t, r, d.Days, 170, 200)
	daysOf(t, r, d.Days, 278, 312)
	one := math.Abs((watts.v1 - watts.v0) / (watts.p1 - watts.p0))
	oneWh := math.Abs((wh.v1 - wh.v0) / (wh.p1 - wh.p0))
	sun, missing := looking(r.paths, "fill", sunColour)[0], looking(r.paths, "fill", failColour)[0]
	load, stored := looking(looking(r.paths, "stroke", loadColour), "fill", "none")[0], looking(r.paths, "fill", massColour)[0]
	for h := range 168 {
		x := hours.p0 + (float64(h)+0.5-12)*(hours.p1-hours.p0)/144
		near(t, fmt.Sprintf("sun at %d", h), watts.value(sun.height(t, x)), d.Sun[h], 0.51*one)
		near(t, fmt.Sprintf("missing at %d", h), watts.value(missing.height(t, x)), d.Missing[h], 0.51*one)
		near(t, fmt.Sprintf("load at %d", h), watts.value(load.height(t, x)), d.Load[h], 0.51*one)
		near(t, fmt.Sprintf("stored at %d", h), wh.value(stored.height(t, x)), d.Stored[h]/3600, 0.51*oneWh)
	}
	r.legend(t, "sun on the panels", "fill", sunColour)
	r.legend(t, "needed", "stroke", loadColour)
	r.legend(t, "missing", "fill", failColour)
	d.Stored, d.Look = nil, ""
	if r = parse(t, drawn(t, func(b *strings.Builder) error { return d.Draw(b) })); len(looking(r.paths, "fill", cellColour))+len(looking(r.paths, "fill", massColour)) > 0 || r.h > 230 {
		t.Error("a store is drawn that is not there")
	}
}

// Each hour of the first week is read back, light and air.
func TestWeekReadBack(t *testing.T) {
	d := aWeek()
	r := parse(t, drawn(t, func(b *strings.Builder) error { return d.Draw(b) }))
	light := r.upright(t, 0, 170)
	hours := daysOf(t, r, firstDays[:], 160, 190)
	daysOf(t, r, firstDays[:], 262, 292)
	global, diffuse := looking(looking(r.paths, "fill", sunColour), "fill-opacity", ".5")[0], looking(r.paths, "stroke", loadColour)[0]
	for h := range 168 {
		x := hours.p0 + (float64(h)+0.5-12)*(hours.p1-hours.p0)/144
		near(t, fmt.Sprintf("light at %d", h), light.value(global.height(t, x)), d.Global[h], 0.1)
		near(t, fmt.Sprintf("diffuse at %d", h), light.value(diffuse.height(t, x)), d.Diffuse[h], 0.1)
	}
	// The air goes from −7 to 6.9 °C, so its axis from −10 to 10: by fives, the warmest under its top.
	cold, warm := r.text(t, unit.Minus+"10"), r.text(t, "10")
	air := scale{(cold.y0 + cold.y1 - 1.1) / 2, -10, (warm.y0 + warm.y1 - 1.1) / 2, 10}
	var line mark
	for _, m := range r.paths {
		if len(m.pts) == 168 {
			line = m
		}
	}
	for h, p := range line.pts {
		near(t, fmt.Sprintf("air at %d", h), air.value(p.Y), d.Air[h], 0.3)
		near(t, fmt.Sprintf("hour of %d", h), hours.value(p.X), float64(h)+0.5, 0.1)
	}
	r.legend(t, "light on the flat", "fill", sunColour)
	r.legend(t, "of it diffuse", "stroke", loadColour)
}

// The bars of the months are read back; those of a month lie side by side over its name.
func TestSunMonthsReadBack(t *testing.T) {
	r := parse(t, drawn(t, func(b *strings.Builder) error { return SunMonths(flatSun, panelSun, b) }))
	axis := r.upright(t, 0, 200)
	filled := looking(r.rects, "fill", sunColour)
	var open []mark
	for _, m := range r.rects {
		if m.look["fill"] == "" {
			open = append(open, m)
		}
	}
	bars := func(list []mark) (out []mark) { // without the key
		for _, m := range list {
			if math.Abs(axis.value(m.bounds().y1)) < 0.01 {
				out = append(out, m)
			}
		}
		return out
	}
	a, b := bars(open), bars(filled)
	if len(a) != 12 || len(b) != 12 {
		t.Fatalf("%d and %d bars", len(a), len(b))
	}
	for m := range 12 {
		near(t, "on the flat in "+monthNames[m], axis.value(a[m].bounds().y0), flatSun[m], 0.001)
		near(t, "on the panel in "+monthNames[m], axis.value(b[m].bounds().y0), panelSun[m], 0.001)
		name := r.text(t, monthNames[m])
		near(t, "the pair over "+monthNames[m], (a[m].bounds().x0+b[m].bounds().x1)/2, (name.x0+name.x1)/2, 0.5)
		near(t, "of one width", a[m].bounds().x1-a[m].bounds().x0, b[m].bounds().x1-b[m].bounds().x0, 0.02)
		if a[m].bounds().x1 > b[m].bounds().x0 || m > 0 && b[m-1].bounds().x1 > a[m].bounds().x0 {
			t.Errorf("bars of %s lie on one another", monthNames[m])
		}
	}
	r.legend(t, "on the flat", "stroke", ink)
	r.legend(t, "on the panel", "fill", sunColour)
}

// The band is read back day by day in whole hundredths; the months stand under their days (30 September is day 272,
// counted from nought).
func TestStatesReadBack(t *testing.T) {
	s := someStates()
	r := parse(t, drawn(t, func(b *strings.Builder) error { return s.Draw(b) }))
	axis := r.upright(t, 0, 140)
	band := looking(r.paths, "fill", cellColour)[0]
	left := band.pts[0].X
	n := len(band.pts)
	back := n
	for i := 1; i < n; i++ { // where it turns
		if band.pts[i].X < band.pts[i-1].X {
			back = i
			break
		}
	}
	top, bottom := mark{pts: band.pts[:back-1]}, mark{pts: band.pts[back-1:]}
	for d := range 364 {
		x := left + float64(d)
		near(t, fmt.Sprintf("most on day %d", d), axis.value(top.height(t, x+0.001)), 100*s.Most[d], 0.6)
		near(t, fmt.Sprintf("least on day %d", d), axis.value(bottom.height(t, x+0.001)), 100*s.Least[d], 0.6)
	}
	days := 0
	for m, n := range []int{31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31} {
		name := r.text(t, monthNames[m])
		near(t, "middle of "+monthNames[m], (name.x0+name.x1)/2-left, float64(days)+float64(n)/2, 0.1)
		begins := false
		for _, l := range r.lines {
			if a, b := l.pts[0], l.pts[1]; a.X == b.X && math.Abs(a.X-left-float64(days)) < 0.1 && a.Y >= 122 && b.Y < name.y0 {
				begins = true
			}
		}
		if !begins {
			t.Errorf("no stroke where %s begins", monthNames[m])
		}
		days += n
	}
	// Full from 99.5 % on and empty down to 0.5 %, what the whole hundredths of the band show as 100 and 0.
	e := States{Least: []float64{0.004, 0.006, 0.006}, Most: []float64{0.994, 0.996, 1}}
	if got, want := e.reading(), "The store gets full on 2 days of the year and empty on 1."; got != want {
		t.Errorf("%q, want %q", got, want)
	}
}

// The bars of a row are read back against its own greatest value; noon stands at the left, and the hours without sun are
// grey from dusk to dawn.
func TestBurnsReadBack(t *testing.T) {
	b := someBurns()
	r := parse(t, drawn(t, func(w *strings.Builder) error { return b.Draw(w) }))
	hours := hoursOf(t, r, 0, r.h, 12)
	grey := looking(looking(r.rects, "fill", ink), "fill-opacity", ".12")
	if len(grey) != 1 {
		t.Fatalf("%d grey pieces", len(grey))
	}
	near(t, "dusk", hours.value(grey[0].bounds().x0), 4, 0.01)  // 16:00
	near(t, "dawn", hours.value(grey[0].bounds().x1), 20, 0.01) // 08:00
	bars := looking(r.rects, "fill", loadColour)
	if len(bars) != 5+24 {
		t.Fatalf("%d bars", len(bars))
	}
	for row, one := range b.Each {
		of := bars[:5]
		if row == 1 {
			of = bars[5:]
		}
		floor, tall := of[0].bounds().y1, 0.0
		for _, m := range of {
			tall = math.Max(tall, m.bounds().y1-m.bounds().y0)
		}
		name := r.text(t, one.Name)
		if mid := (name.y0 + name.y1) / 2; mid < floor-22 || mid > floor || name.x1 >= hours.p0 {
			t.Errorf("%s stands beside another row", one.Name)
		}
		for _, m := range of {
			x := m.bounds()
			h := (int(math.Round(hours.value(x.x0))) + 12) % 24
			near(t, "begins on the hour", hours.value(x.x0), math.Round(hours.value(x.x0)), 0.01)
			near(t, "lasts an hour", hours.value(x.x1)-hours.value(x.x0), 1, 0.1)
			near(t, one.Name+" at its hour", (x.y1-x.y0)/tall, one.Hours[h]/peak(one.Hours[:]), 0.01)
			near(t, "one floor", x.y1, floor, 0.01)
		}
		end := r.text(t, tick(round3(peak(one.Hours[:]))))
		near(t, "its watts at the end of the row", (end.y0+end.y1)/2, (name.y0+name.y1)/2, 1)
	}
	if bars[0].bounds().y1 > bars[5].bounds().y0 {
		t.Error("one row lies on the next")
	}
	// A value of a thousandth is still seen, as a bar of the same least height.
	b.Each[0].Hours[3] = 0.007
	r = parse(t, drawn(t, func(w *strings.Builder) error { return b.Draw(w) }))
	small := looking(r.rects, "fill", loadColour)[:6]
	least := math.Inf(1)
	for _, m := range small {
		least = math.Min(least, m.bounds().y1-m.bounds().y0)
	}
	if least < 2 || least > 5 {
		t.Errorf("a small value is %v high", least)
	}
}

// decadesOf reads an axis of powers of ten off the picture.
func decadesOf(t *testing.T, r readBack, up bool) scale {
	t.Helper()
	var at, v []float64
	for e := -1; e <= 6; e++ {
		for _, x := range r.texts {
			mid := (x.x0 + x.x1) / 2
			if up {
				mid = (x.y0 + x.y1 - 0.1*x.size) / 2
			}
			if x.text != tick(math.Pow(10, float64(e))) || up != (x.x1 < 60 && x.y0 < r.h-50) {
				continue
			}
			for _, l := range r.lines {
				a, b := l.pts[0], l.pts[1]
				if up && a.Y == b.Y && math.Abs(a.Y-mid) < 1 && b.X-a.X > 200 && a.X > x.x1 && a.X < x.x1+8 {
					at, v = append(at, a.Y), append(v, float64(e))
				}
				if !up && a.X == b.X && math.Abs(a.X-mid) < 1 && a.Y-b.Y > 200 && a.Y < x.y0 && a.Y > x.y0-8 {
					at, v = append(at, a.X), append(v, float64(e))
				}
			}
		}
	}
	if len(at) < 3 {
		t.Fatalf("%d powers of ten", len(at))
	}
	s := scale{at[0], v[0], at[len(at)-1], v[len(v)-1]}
	for i := range at {
		near(t, "powers of ten in equal steps", s.value(at[i]), v[i], 0.001)
	}
	return s
}

// Mass against height is read back by its own axes: today's design stands where it is, and each line has the same m·g·h
// at both ends: 74 Wh are 266,400 J.
func TestMassHeightReadBack(t *testing.T) {
	m := someMass()
	r := parse(t, drawn(t, func(b *strings.Builder) error { return MassHeight(m, b) }))
	x, y := decadesOf(t, r, false), decadesOf(t, r, true)
	today := looking(r.circles, "stroke", massColour)[0].pts[0]
	near(t, "height", math.Pow(10, x.value(today.X)), 3.8, 0.005)
	near(t, "mass", math.Pow(10, y.value(today.Y)), 240, 0.5)
	for _, l := range looking(r.lines, "stroke", massColour) {
		if l.pts[0].X == l.pts[1].X || l.pts[0].Y == l.pts[1].Y { // the cross of today
			near(t, "the cross", (l.pts[0].X+l.pts[1].X)/2, today.X, 0.01)
			near(t, "the cross", (l.pts[0].Y+l.pts[1].Y)/2, today.Y, 0.01)
			continue
		}
		for _, p := range l.pts {
			near(t, "a night, J", math.Pow(10, x.value(p.X)+y.value(p.Y))*9.80665/266400, 1, 0.002)
		}
	}
	faint := looking(r.lines, "stroke-dasharray", "6 3")
	if len(faint) != 2 {
		t.Fatalf("%d other lines", len(faint))
	}
	for i, e := range []float64{3.6e6, 7200} {
		for _, p := range faint[i].pts {
			near(t, "another energy, J", math.Pow(10, x.value(p.X)+y.value(p.Y))*9.80665/e, 1, 0.002)
		}
	}
	for _, s := range []string{"mass, kg", "height of travel, m", "a night: 74 Wh", "1 kWh", "2 Wh", "today"} {
		r.text(t, s)
	}
	// The small strokes between the powers are twice, three times … nine times.
	small := 0
	for _, l := range r.paths {
		if len(l.pts) != 2 {
			continue
		}
		if a, b := l.pts[0], l.pts[1]; a.X == b.X && a.Y-b.Y > 0 && a.Y-b.Y < 8 {
			v := math.Pow(10, x.value(a.X))
			k := v / math.Pow(10, math.Floor(math.Log10(v)+1e-9))
			near(t, "a small stroke", k, math.Round(k), 0.01)
			small++
		}
	}
	if small < 8*2 {
		t.Errorf("%d small strokes", small)
	}
	// A design far out widens the axes until it lies inside.
	m.Mass, m.Height = unit.Of(unit.Mass(4e6)), unit.Of(unit.Length(0.02))
	r = parse(t, drawn(t, func(b *strings.Builder) error { return MassHeight(m, b) }))
	if p := looking(r.circles, "stroke", massColour)[0].pts[0]; p.X < 60 || p.X > r.w-16 || p.Y < 14 || p.Y > r.h-44 {
		t.Errorf("a design far out stands at %v", p)
	}
	// Without a mass there is no design to mark.
	m.Mass.Is = false
	if r = parse(t, drawn(t, func(b *strings.Builder) error { return MassHeight(m, b) })); len(r.circles) != 0 {
		t.Error("a design is marked that is not known")
	}
	if m.reading() == someMass().reading() || strings.Contains(m.reading(), "Today") {
		t.Error(m.reading())
	}
	// In feet and pounds the same picture in other numbers: 240 kg are 529 lb, 3.8 m 12.47 ft.
	m = someMass()
	m.Units = unit.Imperial
	r = parse(t, drawn(t, func(b *strings.Builder) error { return MassHeight(m, b) }))
	x, y = decadesOf(t, r, false), decadesOf(t, r, true)
	today = looking(r.circles, "stroke", massColour)[0].pts[0]
	near(t, "height, ft", math.Pow(10, x.value(today.X)), 12.47, 0.02)
	near(t, "mass, lb", math.Pow(10, y.value(today.Y)), 529.1, 1)
}

// The year of nights is read back: the square of each night in its month's row over its day, of the state's look, none on
// another, and what stands in it lies in it; the count at the end of each row.
func TestNightsReadBack(t *testing.T) {
	state := make([]int8, 365)
	for i := range state {
		state[i] = []int8{Served, Dark, PartlyServed, NotCounted}[(i*i+i/3)%4]
	}
	r := parse(t, drawn(t, func(b *strings.Builder) error { return Nights(state, b) }))
	looks := map[int8][]mark{Served: looking(r.paths, "fill", loadColour), Dark: looking(r.paths, "stroke", failColour), PartlyServed: looking(r.paths, "stroke", loadColour)}
	marks := map[int8][]mark{Served: looking(r.paths, "stroke", "#fff"), Dark: looking(looking(r.paths, "stroke", failColour), "stroke-width", "1.3"),
		PartlyServed: looking(looking(r.paths, "fill", loadColour), "fill-opacity", ".7"), NotCounted: looking(r.paths, "stroke-width", "2")}
	dayX := func(d int) float64 { // between the names of day 1 and of day 31
		a, b := r.text(t, "1"), r.text(t, "31")
		return (a.x0+a.x1)/2 + float64(d)*((b.x0+b.x1)/2-(a.x0+a.x1)/2)/30
	}
	for _, d := range []int{6, 11, 16, 21, 26} {
		x := r.text(t, fmt.Sprint(d))
		near(t, fmt.Sprintf("day %d", d), (x.x0+x.x1)/2, dayX(d-1), 0.1)
	}
	day := 0
	var last box
	for m, n := range []int{31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31} {
		name := r.text(t, monthNames[m])
		mid := (name.y0 + name.y1 - 0.1*name.size) / 2
		lit, all := 0, 0
		for d := range n {
			s := state[day+d]
			at := Point{dayX(d), mid}
			in := func(list []mark) (box, bool) {
				for _, m := range list {
					if b := m.bounds(); math.Abs((b.x0+b.x1)/2-at.X) < 1.2 && math.Abs((b.y0+b.y1)/2-at.Y) < 1.5 {
						return b, true
					}
				}
				return box{}, false
			}
			sign, ok := in(marks[s])
			if !ok {
				t.Fatalf("no sign of state %d on day %d of %s", s, d+1, monthNames[m])
			}
			if s == Served {
				lit++
			}
			if s == NotCounted {
				near(t, "a dot", sign.x1-sign.x0, 2, 0.01)
				continue
			}
			all++
			square, ok := in(looks[s])
			if !ok {
				t.Fatalf("no square of state %d on day %d of %s", s, d+1, monthNames[m])
			}
			near(t, "as wide as high", square.x1-square.x0, square.y1-square.y0, 0.01)
			if square.x1-square.x0 > 11 || square.x1-square.x0 < 8 || last.meets(square) {
				t.Errorf("day %d of %s: %v lies on %v", d+1, monthNames[m], square, last)
			}
			if sign.x0 < square.x0-0.01 || sign.x1 > square.x1+0.01 || sign.y0 < square.y0-0.01 || sign.y1 > square.y1+0.01 {
				t.Errorf("day %d of %s: its sign %v lies outside of %v", d+1, monthNames[m], sign, square)
			}
			last = square
		}
		day += n
		count := fmt.Sprintf("%d/%d", lit, all)
		found := false
		for _, x := range r.texts {
			found = found || x.text == count && math.Abs((x.y0+x.y1)/2-(name.y0+name.y1)/2) < 1
		}
		if !found {
			t.Errorf("%s: no %s at the end of its row", monthNames[m], count)
		}
	}
	for s, say := range map[int8]string{Served: "full night", PartlyServed: "essential only", Dark: "hours without power", NotCounted: "no night"} {
		x := r.text(t, say)
		beside := false
		for _, m := range marks[s] {
			b := m.bounds()
			beside = beside || x.x0-b.x1 > 1 && x.x0-b.x1 < 12 && math.Abs((b.y0+b.y1)/2-(x.y0+x.y1)/2) < 3
		}
		if !beside {
			t.Errorf("no sign before %q", say)
		}
	}
	all := make([]int8, 365)
	for i := range all {
		all[i] = Dark
	}
	if r = parse(t, drawn(t, func(b *strings.Builder) error { return Nights(all, b) })); len(looking(r.paths, "stroke", "#fff")) > 0 {
		t.Error("a sign is explained that does not occur")
	}
}
