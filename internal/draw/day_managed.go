package draw

import (
	"io"

	"duskweight/internal/model/unit"
	"duskweight/internal/say"
)

// ManagedDay is a day of 24 hours in which something waited, was switched off or helped out: W in each hour, and the charge at
// the end of each hour, 0 to 1.
type ManagedDay struct {
	Name   string
	Sun    []float64
	Runs   []float64 // all that ran
	Waited []float64 // of it, devices that may wait
	Asked  []float64 // devices that asked and did not run
	Off    []float64 // kept off by a level
	Backup []float64 // nil without one
	Charge []float64
	Marks  []ChargeMark // charges at which something happens
}

// ChargeMark is a charge with what happens there.
type ChargeMark struct {
	At  float64
	Say string
}

// Draw draws four strips over the same hours: sun, what ran, the backup, the charge with its marks.
func (d ManagedDay) Draw(out io.Writer) error {
	const w, left, right, strip, gap = 380.0, 46.0, 22.0, 62.0, 30.0
	rows := 3.0
	if d.Backup != nil {
		rows = 4
	}
	p := open(out, "day managed", w, 14+rows*(strip+gap), d.Name, d.reading().String())
	x := axis{lo: 0, hi: 24, a: left, b: w - right}
	y := axis{a: gap + strip - 6, b: gap - 6}
	next := func() { y.a, y.b = y.a+strip+gap, y.b+strip+gap }
	upTo := func(lists ...[]float64) axis {
		most := 0.0
		for _, v := range lists {
			most = max(most, peak(v))
		}
		y.lo, y.hi = 0, niceTop(most)
		return y
	}
	p.strip(x, upTo(d.Sun), "sun", d.Sun, attrs{"fill", sunColour, "fill-opacity", ".5"})
	next()
	on := upTo(d.Runs, plusAll(d.Runs, d.Asked, d.Off))
	p.strip(x, on, "what runs", d.Runs, attrs{"fill", loadColour, "fill-opacity", ".45"})
	p.notRun(x, on, d.Runs, d.Asked, stroke(loadColour, 1.4, "4 3"))
	p.notRun(x, on, plusAll(d.Runs, d.Asked), d.Off, stroke(failColour, 1.6, "2 2"))
	if d.Backup != nil {
		next()
		p.strip(x, upTo(d.Backup), "backup", d.Backup, attrs{"fill", ink, "fill-opacity", ".7"})
	}
	next()
	y.lo, y.hi = 0, 1
	p.charge(x, y, d)
	p.hours(x, y.a)
	return p.close()
}

// strip draws one list as steps, with its name and its greatest value.
func (p *pen) strip(x, y axis, name string, v []float64, look attrs) {
	p.text(x.a, y.b-6, name, small, "start", 0, attrs{"font-weight", "600"})
	p.text(x.a-6, y.b+4, tick(y.hi)+" W", small, "end", 0)
	p.path(append(append([]float64{x.a, y.a}, steps(v, x, y)...), x.b, y.a), true, look)
	p.line(x.a, y.a, x.b, y.a, stroke(ink, 1, ""))
}

// notRun draws what did not run as empty boxes on top of what did.
func (p *pen) notRun(x, y axis, ran, held []float64, look attrs) {
	for h, w := range held {
		if w > 0 {
			top, foot := y.at(ran[h]+w), y.at(ran[h])
			p.rect(x.at(float64(h)), top, x.at(1)-x.at(0), foot-top, look)
		}
	}
}

// charge draws how full the stores were, with the charges at which something happens.
func (p *pen) charge(x, y axis, d ManagedDay) {
	p.text(x.a, y.b-6, "charge of the stores", small, "start", 0, attrs{"font-weight", "600"})
	p.text(x.a-6, y.b+4, "100 %", small, "end", 0)
	pts := []float64{}
	for h, v := range d.Charge {
		pts = append(pts, x.at(float64(h+1)), y.at(finite(v)))
	}
	p.path(append(append([]float64{pts[0], y.a}, pts...), x.b, y.a), true, attrs{"fill", cellColour, "fill-opacity", ".2"})
	p.path(pts, false, stroke(cellColour, 2, ""))
	for i, m := range d.Marks { // names to the right and to the left in turn: two marks may lie close together
		p.line(x.a, y.at(m.At), x.b, y.at(m.At), stroke(ink, 0.8, "4 3"))
		at := y.at(m.At) - 3
		for _, o := range d.Marks { // under its line where another runs close above it
			if up := y.at(m.At) - y.at(o.At); up > 0 && up < small+2 && at+small+2 < y.a {
				at = y.at(m.At) + small - 1
			}
		}
		if i%2 == 0 {
			p.text(x.b, at, m.Say, small, "end", 0)
		} else {
			p.text(x.a+3, at, m.Say, small, "start", 0)
		}
	}
	p.line(x.a, y.a, x.b, y.a, stroke(ink, 1, ""))
}

// plusAll adds lists up, hour by hour.
func plusAll(lists ...[]float64) []float64 {
	out := make([]float64, 24)
	for _, v := range lists {
		for h, w := range v {
			out[h] += w
		}
	}
	return out
}

// reading reads the picture.
func (d ManagedDay) reading() say.Sentence {
	energy := func(v []float64) unit.Energy {
		sum := 0.0
		for _, w := range v {
			sum += w * 3600
		}
		return unit.Energy(sum)
	}
	s := say.That("%s: the sun brings %s, and devices use %s.", d.Name, say.Energy(energy(d.Sun)), say.Energy(energy(d.Runs)))
	for _, one := range []struct {
		v    []float64
		says string
	}{{d.Waited, "Devices that may wait used %s."}, {d.Off, "A low charge switches off %s (dotted boxes)."}, {d.Backup, "The backup gives %s."}} {
		if e := energy(one.v); e > 0 {
			s = say.Join(s, say.That(one.says, say.Energy(e)))
		}
	}
	if energy(d.Asked) > 0 {
		s = say.Join(s, say.That("Dashed boxes are devices that wait."))
	}
	return s
}

// Say reads the picture in the reader's units.
func (d ManagedDay) Say(sys unit.System) string { return d.reading().In(sys) }

// percent is a charge as it stands at a mark.
func percent(v float64) string { return unit.WholePercent(v) }

// Goes is the mark of a level at which something goes off.
func Goes(at float64) ChargeMark { return ChargeMark{at, "below " + percent(at) + ": off"} }

// Starts is the mark at which a backup starts.
func Starts(at float64) ChargeMark {
	return ChargeMark{at, "below " + percent(at) + ": backup may start"}
}
