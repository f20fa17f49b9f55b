package draw

import (
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"
	"testing"

	"duskweight/internal/model/unit"
)

func someFront() Front {
	return Front{Needed: 340, Nights: 365, Unit: "EUR", Say: "Cost against nights.", Today: FrontPlan{Nights: 305, Low: 700, Cost: 800, High: 950}, Plans: []FrontPlan{
		{Name: "A small battery", Nights: 300, Low: 400, Cost: 500, High: 600}, {Name: "Two", Nights: 320, Low: 600, Cost: 700, High: 800},
		{Name: "Three", Nights: 345, Low: 900, Cost: 1000, High: 1200, Best: true}, {Name: "Four", Nights: 360, Low: 1500, Cost: 1700, High: 1900}}}
}

func someYears() YearNights {
	one := NightsOfYears{Name: "A battery", Say: "Said.", Drawn: true, Real: []float64{320, 310, 330}, RealNames: []string{"2012", "2011", "2015"}, Ring: 325, Bad: 312, Usual: 322, Good: 331}
	for i := range 80 {
		one.Made = append(one.Made, 305+float64(i*i%30))
	}
	two := one
	two.Name, two.Real, two.Ring = "A mass", nil, 0
	return YearNights{Low: 300, High: 340, Each: []NightsOfYears{one, two, {Name: "Water", Say: "No year is counted."}}}
}

// A ridge 20° high all round, with the sun up to 60° in the south.
func someSky() Skyline {
	var s Skyline
	var path []SkyPoint
	for i := range 13 {
		s.Outline = append(s.Outline, SkyPoint{-math.Pi + 2*math.Pi*float64(i)/12, math.Pi / 9})
		e := -math.Pi/2 + math.Pi*float64(i)/12
		path = append(path, SkyPoint{e, math.Pi / 3 * math.Cos(e)})
	}
	s.Points = []SkyPoint{{-1, math.Pi / 9}, {1, math.Pi / 9}}
	s.Days = []SkyDay{{"June", path}}
	return s
}

func someMonth() MonthSky {
	s := someSky()
	return MonthSky{Path: s.Days[0].Path, Outline: s.Outline, Mean: 3, Low: 1, High: 4, Top: 6, Value: "3 kWh", Night: 12, Known: true}
}

func someCubes() Cubes {
	return Cubes{Title: "x", Desc: "y", Each: []Cube{{2.4, "rock", "rock", "14 m³"}, {1.2, "water", "water", "1.7 m³"}, {0.01, "cells", "battery", "1 l"}}}
}

func someManaged() ManagedDay {
	d := ManagedDay{Name: "A day", Sun: bell(300), Runs: make([]float64, 24), Waited: make([]float64, 24), Asked: make([]float64, 24), Off: make([]float64, 24), Backup: make([]float64, 24)}
	for h := range 24 {
		d.Runs[h] = 50 + 5*float64(h%4)
		d.Charge = append(d.Charge, 0.2+0.6*math.Abs(math.Sin(float64(h)/7)))
	}
	d.Waited[3], d.Asked[5], d.Off[20], d.Backup[21] = 20, 40, 30, 100
	d.Marks = []ChargeMark{Goes(0.3), Starts(0.25)}
	return d
}

// Plans are read back by the axes of their own picture: each at its nights with its cost, its bar from low to high, the ring
// of today, the goal; the stair joins the plans.
func TestFrontReadBack(t *testing.T) {
	for _, narrow := range []bool{false, true} {
		f := someFront()
		r := parse(t, f.Draw(narrow))
		y := r.upright(t, 0, r.h)
		foot := looking(r.lines, "class", "line-ink")[0].pts[0].Y
		near(t, "costs begin at nothing", y.value(foot), 0, 1e-6)
		if lowest := 9.0; foot > r.h-lowest {
			t.Errorf("the axis stands at %g of %g", foot, r.h)
		}
		var x scale
		var at, v []float64
		for _, text := range r.texts {
			if n, err := strconv.ParseFloat(text.text, 64); err == nil && text.y0 > foot {
				at, v = append(at, (text.x0+text.x1)/2), append(v, n)
			}
		}
		if len(at) < 2 {
			t.Fatalf("narrow %v: %d numbers across", narrow, len(at))
		}
		x = scale{at[0], v[0], at[len(at)-1], v[len(v)-1]}
		if at[0] < y0Right(r) || v[0] != 300 {
			t.Errorf("narrow %v: the nights begin with %g at %g", narrow, v[0], at[0])
		}
		dots := looking(r.circles, "class", "cells")
		var stair mark
		for _, m := range looking(r.paths, "class", "line-grid") {
			stair = m
		}
		if len(dots) != 4 || len(stair.pts) < 4 {
			t.Fatalf("narrow %v: %d plans, a stair of %d", narrow, len(dots), len(stair.pts))
		}
		for i, one := range f.Plans {
			p := dots[i].pts[0]
			near(t, "nights", x.value(p.X), one.Nights, 0.02)
			near(t, "cost", y.value(p.Y), one.Cost, 0.5)
			near(t, "the stair", math.Hypot(stair.pts[i].X-p.X, stair.pts[i].Y-p.Y), 0, 0.01)
			if want := map[bool]float64{false: 4.5, true: 8}[one.Best]; dots[i].r != want {
				t.Errorf("%s: a dot of %g", one.Name, dots[i].r)
			}
			lows, highs := 0, 0
			for _, l := range append(looking(r.lines, "class", "line-soft"), looking(r.lines, "class", "line-ink")...) {
				a, b := l.pts[0], l.pts[1]
				switch {
				case a.X == b.X && math.Abs(a.X-p.X) < 0.01:
					near(t, "low", y.value(a.Y), one.Low, 0.5)
					near(t, "high", y.value(b.Y), one.High, 0.5)
				case a.Y == b.Y && math.Abs(a.X+b.X-2*p.X) < 0.02 && b.X-a.X == 10:
					if math.Abs(y.value(a.Y)-one.Low) < 0.5 {
						lows++
					}
					if math.Abs(y.value(a.Y)-one.High) < 0.5 {
						highs++
					}
				}
			}
			if lows != 1 || highs != 1 {
				t.Errorf("%s: %d lower and %d upper ends of its bar", one.Name, lows, highs)
			}
		}
		ring := looking(r.circles, "class", "line-ink")[0]
		near(t, "today's nights", x.value(ring.pts[0].X), 305, 0.02)
		near(t, "today's cost", y.value(ring.pts[0].Y), 800, 0.5)
		today := r.text(t, "today")
		if gap := today.x0 - ring.pts[0].X; gap < 5 || gap > 15 || today.y0 < ring.pts[0].Y || today.y0 > ring.pts[0].Y+20 {
			t.Errorf("today's word stands at %v, its ring at %v", today.box, ring.pts[0])
		}
		goal := looking(r.lines, "class", "goal")[0].pts
		near(t, "the goal", x.value(goal[0].X), 340, 0.02)
		near(t, "upright", goal[0].X, goal[1].X, 0.01)
		near(t, "from the axis", goal[0].Y, foot, 0.01)
		said := r.text(t, "340 nights")
		if said.x1 > goal[0].X || said.x1 < goal[0].X-8 || math.Abs(said.y1-goal[1].Y) > 3 {
			t.Errorf("the goal's words stand at %v, its line ends at %v", said.box, goal[1])
		}
		name := map[bool]string{false: "Best: Three", true: "Best"}[narrow]
		best := r.text(t, name)
		if best.y1 > dots[2].pts[0].Y || best.x1 > dots[2].pts[0].X || best.x1 < dots[2].pts[0].X-16 {
			t.Errorf("narrow %v: the best plan's name stands at %v, its dot at %v", narrow, best.box, dots[2].pts[0])
		}
		if n := strings.Contains(f.Draw(narrow), "A small battery"); n == narrow {
			t.Errorf("narrow %v: the cheapest plan has its name: %v", narrow, n)
		}
	}
}

// y0Right is where the numbers of the upright axis end.
func y0Right(r readBack) float64 {
	right := 0.0
	for _, text := range r.texts {
		if text.text == "0" && text.x1 < r.w/4 {
			right = math.Max(right, text.x1)
		}
	}
	return right
}

// The years are read back by the axis under them: each level at its number with its words beside it, each file a stroke, the
// ring at its nights, each dot in the column of its nights.
func TestYearsReadBack(t *testing.T) {
	for _, narrow := range []bool{false, true} {
		n := someYears()
		r := parse(t, n.Draw(narrow))
		grounds := looking(r.lines, "class", "line-ink")
		if len(grounds) != 2 {
			t.Fatalf("%d strips", len(grounds))
		}
		var at, v []float64
		for _, l := range looking(r.lines, "class", "line-grid") {
			for _, text := range r.texts {
				if k, err := strconv.ParseFloat(text.text, 64); err == nil && math.Abs((text.x0+text.x1)/2-l.pts[0].X) < 0.1 && text.y0 > l.pts[1].Y && text.y0 < l.pts[1].Y+12 {
					at, v = append(at, l.pts[0].X), append(v, k)
				}
			}
		}
		if len(at) < 3 {
			t.Fatalf("narrow %v: %d numbers at the axis", narrow, len(at))
		}
		x := scale{at[0], v[0], at[len(at)-1], v[len(v)-1]}
		levels := looking(r.lines, "class", "level")
		for i, want := range []float64{312, 331, 322, 312, 331, 322} {
			near(t, "a level", x.value(levels[i].pts[0].X), want, 0.02)
			near(t, "upright", levels[i].pts[0].X, levels[i].pts[1].X, 1e-9)
			near(t, "on its ground", levels[i].pts[0].Y, grounds[i/3].pts[0].Y, 1e-9)
		}
		for _, w := range []struct {
			text     string
			at, side float64
		}{{"bad 312", 312, -1}, {"331 good", 331, 1}, {"322 usual", 322, 0}} {
			text := r.text(t, w.text)
			var level mark
			for _, l := range levels[:3] {
				if math.Abs(x.value(l.pts[0].X)-w.at) < 0.1 {
					level = l
				}
			}
			x0 := level.pts[0].X
			switch {
			case w.side < 0 && (text.x1 > x0 || text.x1 < x0-8), w.side > 0 && (text.x0 < x0 || text.x0 > x0+8), w.side == 0 && math.Abs(text.x0+text.x1-2*x0) > 0.2:
				t.Errorf("narrow %v: %q stands at %v, its line at %g", narrow, w.text, text.box, x0)
			}
			if text.y1 > grounds[0].pts[0].Y || text.y0 > level.pts[1].Y+6 || text.y1 < level.pts[1].Y-8 {
				t.Errorf("narrow %v: %q stands at %v, its line ends at %g", narrow, w.text, text.box, level.pts[1].Y)
			}
		}
		ring := r.circles[0]
		near(t, "the typical file's year", x.value(ring.pts[0].X), 325, 0.02)
		var strokes []float64
		for _, m := range looking(r.paths, "class", "line-ink") {
			near(t, "upright", m.pts[0].X, m.pts[1].X, 1e-9)
			if m.pts[0].Y < grounds[0].pts[0].Y || m.pts[0].Y > grounds[0].pts[0].Y+8 || m.pts[1].Y-m.pts[0].Y != 12 {
				t.Errorf("a file from %v to %v under the ground %v", m.pts[0], m.pts[1], grounds[0].pts[0])
			}
			strokes = append(strokes, math.Round(x.value(m.pts[0].X)))
		}
		if !slices.Equal(strokes, []float64{320, 310, 330}) {
			t.Errorf("files at %v", strokes)
		}
		for name, nights := range map[string]float64{"2011": 310, "2015": 330} {
			text := r.text(t, name)
			near(t, "the name of a file", x.value((text.x0+text.x1)/2), nights, 0.1)
			if text.y0 < grounds[0].pts[0].Y+16 || text.y1 > grounds[0].pts[0].Y+18+18 {
				t.Errorf("%s stands at %v, the ground at %g", name, text.box, grounds[0].pts[0].Y)
			}
		}
		// Each column of dots stands over its nights: of 305 to 330, the remainders of squares by 30, none further than half a column's width off.
		lo, hi := math.Inf(1), math.Inf(-1)
		for _, m := range looking(r.paths, "class", "made") {
			lo, hi = math.Min(lo, x.value(m.pts[0].X)), math.Max(hi, x.value(m.pts[0].X))
			if g := grounds[0].pts[0].Y; m.pts[0].Y > g && m.pts[0].Y > grounds[1].pts[0].Y || math.Min(math.Abs(m.pts[0].Y-g), math.Abs(m.pts[0].Y-grounds[1].pts[0].Y)) > 80 {
				t.Errorf("a dot at %v", m.pts[0])
			}
		}
		if lo < 303 || lo > 307 || hi < 328 || hi > 332 {
			t.Errorf("narrow %v: dots from %g to %g", narrow, lo, hi)
		}
		said := r.text(t, "No year is counted.")
		if said.y0 < grounds[1].pts[0].Y || said.y0 < r.text(t, "Water").y1 {
			t.Error("what has no strip does not stand last")
		}
	}
}

// The sky is 90° over 138 units and 360° over 440: a ridge of 20° stands 30.67 high, the sun of 60° 92 high in the middle, and
// 20°, 40° and 60° have their lines. East is a quarter from the left.
func TestSkyReadBack(t *testing.T) {
	r := parse(t, someSky().Draw())
	floor := looking(r.lines, "class", "floor")[0].pts[0].Y
	for i, l := range looking(r.lines, "class", "line-grid") {
		near(t, "a line of height", floor-l.pts[0].Y, 138*float64(20*(i+1))/90, 0.01)
		text := r.text(t, fmt.Sprintf("%d°", 20*(i+1)))
		near(t, "its number", (text.y0+text.y1-0.1*text.size)/2, l.pts[0].Y, 1)
		if text.x1 > l.pts[0].X || l.pts[1].X < r.w-1 {
			t.Errorf("%q ends at %g, its line goes from %g to %g", text.text, text.x1, l.pts[0].X, l.pts[1].X)
		}
	}
	for _, p := range looking(r.paths, "class", "hill")[0].pts[1:13] {
		near(t, "the ridge", floor-p.Y, 30.67, 0.06)
	}
	for i, c := range looking(r.circles, "class", "point") {
		near(t, "a point", floor-c.pts[0].Y, 30.67, 0.06)
		near(t, "a point, across", c.pts[0].X, 220+440/(2*math.Pi)*float64(2*i-1), 0.06)
	}
	top := box{y0: math.Inf(1)}
	for _, m := range looking(r.paths, "class", "seen") {
		if b := m.bounds(); b.y0 < top.y0 {
			top = b
		}
	}
	near(t, "noon", floor-top.y0, 92, 0.1)
	near(t, "noon stands in the south", (top.x0+top.x1)/2, 220, 0.2)
	june := r.text(t, "June")
	if math.Abs((june.x0+june.x1)/2-220) > 0.2 || june.y1 > top.y0 || june.y1 < top.y0-6 {
		t.Errorf("June stands at %v, its noon at %g", june.box, top.y0)
	}
	for i, word := range []string{"east", "south", "west"} {
		text := r.text(t, word)
		near(t, word, (text.x0+text.x1)/2, 110*float64(i+1), 0.2)
		if text.y0 < floor || text.y1 > r.h {
			t.Errorf("%s stands at %v", word, text.box)
		}
	}
}

// A month of 3 kWh on a scale to 6, from 1 to 4, with a night of 12 hours: the bar is half as high as the scale's 54, its spread
// goes from a sixth to two thirds, and the night takes half of the day's strip, in its middle.
func TestMonthReadBack(t *testing.T) {
	r := parse(t, someMonth().Draw())
	bar := looking(r.rects, "class", "sun")[0].bounds()
	floors := looking(r.lines, "class", "floor")
	near(t, "a mean of 3 of 6", bar.y1-bar.y0, 27, 0.01)
	near(t, "on its floor", bar.y1, floors[1].pts[0].Y, 0.01)
	near(t, "in the middle", (bar.x0+bar.x1)/2, 50, 0.01)
	spread := looking(r.paths, "class", "spread")[0].bounds()
	near(t, "from 1 of 6", floors[1].pts[0].Y-spread.y1, 9, 0.01)
	near(t, "to 4 of 6", floors[1].pts[0].Y-spread.y0, 36, 0.01)
	day, night := looking(r.rects, "class", "whole-day")[0].bounds(), looking(r.rects, "class", "night")[0].bounds()
	near(t, "half of the day is night", (night.x1-night.x0)/(day.x1-day.x0), 0.5, 1e-6)
	near(t, "night in the middle", night.x0-day.x0, day.x1-night.x1, 1e-6)
	near(t, "one strip", night.y0-day.y0+night.y1-day.y1, 0, 1e-6)
	near(t, "as far from both edges", day.x0, r.w-day.x1, 1e-6)
	for _, f := range floors {
		if f.pts[0].X != 0 || f.pts[1].X != r.w {
			t.Errorf("a floor from %g to %g", f.pts[0].X, f.pts[1].X)
		}
	}
	value := r.text(t, "3 kWh")
	if math.Abs(value.x0+value.x1-100) > 0.2 || value.y0 < floors[1].pts[0].Y || value.y1 > day.y0 {
		t.Errorf("the mean stands at %v", value.box)
	}
	noon := math.Inf(1)
	for _, m := range looking(r.paths, "class", "seen") {
		noon = math.Min(noon, m.bounds().y0)
	}
	near(t, "60 of 90 degrees", (floors[0].pts[0].Y-noon)/50, 60.0/90, 0.005)
	// What is not known has its three frames in the same places, dashed, and nothing else.
	none := parse(t, MonthSky{}.Draw())
	if frames := looking(none.rects, "class", "unknown"); len(frames) != 3 || len(none.lines)+len(none.paths) > 0 {
		t.Errorf("%d frames", len(frames))
	} else {
		for i, want := range [][2]float64{{8, 58}, {70, 124}, {day.y0, day.y1}} {
			b := frames[i].bounds()
			near(t, "a frame", b.y0, want[0], 0.01)
			near(t, "a frame", b.y1, want[1], 0.01)
			near(t, "across", b.x0+b.x1, 100, 0.01)
		}
	}
}

// Cubes and the person have one scale: a person of 1.7 m, cubes of 2.4 and 1.2 m, each on the ground over its own words; one of
// a centimetre is still seen. What is next stands clear of it.
func TestCubesToScale(t *testing.T) {
	r := parse(t, drawn(t, func(b *strings.Builder) error { return someCubes().Draw(b) }))
	ground := r.lines[0].pts[0].Y
	unitsPerMetre := (r.rects[0].bounds().y1 - r.rects[0].bounds().y0) / 2.4
	if h := 2.4 * unitsPerMetre; h < 80 || h > 170 {
		t.Errorf("the largest cube is %g high", h)
	}
	head := r.circles[0]
	near(t, "a person of 1.7 m", (ground-head.pts[0].Y+head.r)/unitsPerMetre, 1.7, 0.01)
	before := 0.0
	for i, one := range someCubes().Each {
		b := r.rects[i].bounds()
		near(t, "as wide as high", b.x1-b.x0, b.y1-b.y0, 0.02)
		near(t, "on the ground", b.y1, ground, 0.01)
		near(t, one.Name, b.y1-b.y0, math.Max(1.2, float64(one.Side)*unitsPerMetre), 0.02)
		for k, word := range []string{one.Name, one.Value} {
			text := r.text(t, word)
			near(t, "words under their cube", (text.x0+text.x1)/2, (b.x0+b.x1)/2, 0.2)
			if text.y0 < ground || text.y1 > ground+24+19*float64(k) || text.y1 < ground+12+19*float64(k) {
				t.Errorf("%q stands at %v, the ground at %g", word, text.box, ground)
			}
		}
		if b.x0 < before {
			t.Errorf("%s begins at %g, what is before it ends at %g", one.Name, b.x0, before)
		}
		before = b.x1
	}
	said := r.text(t, "a person")
	near(t, "the person's words", (said.x0+said.x1)/2, head.pts[0].X, 0.2)
	near(t, "as much room at both ends", said.x0, r.w-r.text(t, "battery").x1, 0.5)
}

// The body of the person, by the measures of a grown one: the head's middle at 0.92 of the height, the hips at 0.45, the
// shoulders at 0.78 (our own judgement); legs and arms the same on both sides.
func TestPersonStands(t *testing.T) {
	r := parse(t, drawn(t, func(b *strings.Builder) error { return someCubes().Draw(b) }))
	ground, head := r.lines[0].pts[0].Y, r.circles[0]
	tall := ground - head.pts[0].Y + head.r
	var limbs []mark
	for _, m := range r.paths {
		if len(m.pts) == 3 {
			limbs = append(limbs, m)
		}
	}
	if len(limbs) != 2 {
		t.Fatalf("%d pairs of limbs", len(limbs))
	}
	for _, m := range limbs {
		near(t, "the same on both sides", m.pts[0].X+m.pts[2].X, 2*m.pts[1].X, 0.03)
		near(t, "under the head", m.pts[1].X, head.pts[0].X, 0.01)
		if w := m.pts[2].X - m.pts[0].X; w < 0.2*tall || w > 0.4*tall {
			t.Errorf("limbs %g apart of %g", w, tall)
		}
	}
	near(t, "feet on the ground", limbs[0].pts[0].Y, ground, 0.01)
	near(t, "hips", (ground-limbs[0].pts[1].Y)/tall, 0.45, 0.005)
	near(t, "shoulders", (ground-limbs[1].pts[1].Y)/tall, 0.78, 0.005)
	near(t, "hands", (ground-limbs[1].pts[0].Y)/tall, 0.5, 0.005)
	back := r.lines[1]
	near(t, "the back ends at the hips", back.pts[1].Y, limbs[0].pts[1].Y, 0.01)
	near(t, "and begins under the head", back.pts[0].Y, head.pts[0].Y+head.r, 0.02)
	near(t, "upright", back.pts[0].X, back.pts[1].X, 0.01)
}

// Lifted water is read back by the person of 1.7 m beside it: 10 m³ on 10 m² are 1 m deep and 3.16 m long; the middle of the
// water stands 12 m over the turbine; the tower's posts stand on the ground; the dimension is 12 m long.
func TestWaterToScale(t *testing.T) {
	for _, tower := range []bool{true, false} {
		w := Water{Volume: 10, Head: 12, Surface: unit.Of(unit.Area(10)), Inner: unit.Of(unit.Length(0.05)), Tower: tower, VolumeText: "10 m³", HeadText: "12 m"}
		r := parse(t, drawn(t, func(b *strings.Builder) error { return w.Draw(b) }))
		var head mark
		for _, c := range looking(r.circles, "fill", ink) {
			head = c
		}
		var ground, dim mark
		for _, l := range looking(r.lines, "stroke-width", "0.8") {
			if b := l.bounds(); b.x1-b.x0 > 100 {
				ground = l
			} else if b.x0 == b.x1 {
				dim = l
			}
		}
		g := ground.pts[0].Y
		k := (g - head.pts[0].Y + head.r) / 1.7
		near(t, "the height that is measured", (dim.bounds().y1-dim.bounds().y0)/k, 12, 0.05)
		tanks := looking(r.rects, "class", "water")
		if len(tanks) != 2 {
			t.Fatalf("%d tanks", len(tanks))
		}
		for _, m := range tanks {
			b := m.bounds()
			near(t, "as long as √10 m", (b.x1-b.x0)/k, math.Sqrt(10), 0.02)
			near(t, "a metre deep", (b.y1-b.y0)/k, 1, 0.02)
		}
		up, low := tanks[0].bounds(), tanks[1].bounds()
		near(t, "the middle of the water", (g-(up.y0+up.y1)/2)/k, 12, 0.05)
		near(t, "the water below lies in the ground", low.y0, g, 0.01)
		pump := looking(r.circles, "class", "mark")[0]
		if pump.pts[0].X < up.x1 || pump.pts[0].X+pump.r > low.x0 || math.Abs(pump.pts[0].Y+pump.r-g) > 0.01 {
			t.Errorf("the pump stands at %v", pump)
		}
		if head.pts[0].X < low.x1 || dim.pts[0].X > up.x0 {
			t.Errorf("person at %g, tanks to %g, dimension at %g", head.pts[0].X, low.x1, dim.pts[0].X)
		}
		if tower {
			posts := 0
			for _, l := range looking(r.lines, "stroke-width", "1.6") {
				b := l.bounds()
				if b.x0 == b.x1 && b.x0 > up.x0 && b.x1 < up.x1 && math.Abs(b.y1-g) < 0.01 && math.Abs(b.y0-up.y1) < 0.01 {
					posts++
				}
			}
			if posts != 2 {
				t.Errorf("%d posts carry the tank", posts)
			}
		}
		texts := map[string]textBox{"10 m³": r.text(t, "10 m³"), "12 m": r.text(t, "12 m"), "pump and turbine": r.text(t, "pump and turbine")}
		if b := texts["10 m³"]; b.y1 > up.y0 || b.y1 < up.y0-16 || math.Abs(b.x0-up.x0) > 0.01 {
			t.Errorf("the volume stands at %v, its tank at %v", b.box, up)
		}
		if b := texts["12 m"]; b.x1 > dim.pts[0].X || b.x1 < dim.pts[0].X-14 || math.Abs((b.y0+b.y1)/2-(dim.pts[0].Y+dim.pts[1].Y)/2) > 0.2 {
			t.Errorf("the height stands at %v, its line at %v", b.box, dim.bounds())
		}
		if b := texts["pump and turbine"]; b.y0 < g || b.x1 > low.x0 {
			t.Errorf("the pump's name stands at %v, the water below at %v", b.box, low)
		}
	}
}
