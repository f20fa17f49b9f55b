package trial

import (
	"math"

	"duskweight/internal/say"
)

// Torques is one steady run. Ideal is the torque that the motor would feel through gears without loss, drum torque over
// ratio; Motor is K·I. Both in N·m.
type Torques struct{ Ideal, Motor float64 }

// Gears is what the records say of the gears: efficiency up and back, and the torque that motor and gears take with
// nothing on the rope (N·m at the motor, the motor's own friction in it).
type Gears struct {
	Up, Back, Idle          Value
	KnowUp, KnowBack, Known bool // which of the three are determined; Known is for Idle
	Lack                    []say.Sentence
	Absurd                  say.Sentence // why the records cannot be right; nothing where they can

	cov [2][2]float64 // of Back and Idle
}

// FitGears solves, over all runs at once,
//
//	up:   K·I = T_idle + x/η        down: K·I = η_back·x − T_idle
//
// Lifts of one mass alone do not tell efficiency from idle torque; ways down need the idle torque, or two masses. Two
// masses that are almost alike, with no run to spare that would tell the scatter, count as one.
func FitGears(up, down []Torques) Gears {
	var g Gears
	useUp, useDown := len(up) > 0, len(down) > 0
	s := solveGears(up, down)
	switch {
	case s.ok:
	case useUp && useDown: // one side may stand alone
		if a := solveGears(up, nil); a.ok {
			s, useDown = a, false
		} else if a := solveGears(nil, down); a.ok {
			s, useUp = a, false
		}
	}
	if !s.ok {
		useUp, useDown = false, false
	} else {
		g.read(s, useUp, useDown)
	}
	if !useUp {
		g.Lack = append(g.Lack, lackOf(up, "lift"))
	}
	if !useDown {
		g.Lack = append(g.Lack, lackOf(down, "way down"))
	}
	g.judge()
	return g
}

func lackOf(runs []Torques, what string) say.Sentence {
	if len(runs) == 0 {
		return say.That("One %s with mass, volts and amps is missing.", what)
	}
	return say.That("One more %s with another mass is missing: runs with one mass alone do not tell losses from idle torque.", what)
}

func solveGears(up, down []Torques) solution {
	var rows [][]float64
	var y []float64
	for _, r := range up {
		rows, y = append(rows, columns(up, down, 1, r.Ideal, 0)), append(y, r.Motor)
	}
	for _, r := range down {
		rows, y = append(rows, columns(up, down, -1, 0, r.Ideal)), append(y, r.Motor)
	}
	s := linear(rows, y)
	s.ok = s.ok && (s.cov != nil || apart(up) || apart(down))
	return s
}

// leastSpread is how far the greatest torque must stand above the smallest where no run is to spare (our own judgement:
// under that a few per cent of the reading of amps turn the line over, and nothing would show it).
const leastSpread = 1.2

func apart(runs []Torques) bool {
	low, high := math.Inf(1), 0.0
	for _, r := range runs {
		low, high = math.Min(low, r.Ideal), math.Max(high, r.Ideal)
	}
	return len(runs) > 1 && high > leastSpread*low
}

// columns leaves out the column of a side that has no run.
func columns(up, down []Torques, idle, x, back float64) []float64 {
	row := []float64{idle}
	if len(up) > 0 {
		row = append(row, x)
	}
	if len(down) > 0 {
		row = append(row, back)
	}
	return row
}

func (g *Gears) read(s solution, useUp, useDown bool) {
	g.Idle, g.Known = s.value(0), true
	last := 0
	if useUp {
		last++
		v := s.value(last) // 1/η
		g.Up, g.KnowUp = Value{1 / v.Val, v.Err / (v.Val * v.Val), v.Sure}, true
	}
	if useDown {
		last++
		g.Back, g.KnowBack = s.value(last), true
		if s.cov != nil {
			g.cov = [2][2]float64{{s.cov.At(last, last), s.cov.At(0, last)}, {s.cov.At(0, last), s.cov.At(0, 0)}}
		}
	}
}

// judge says what cannot be: gears that give more than they get, or a push from nothing.
func (g *Gears) judge() {
	switch {
	case g.KnowUp && !(g.Up.Val > 0 && g.Up.Val <= 1), g.KnowBack && !(g.Back.Val > 0 && g.Back.Val <= 1):
		g.Absurd = say.Words("These records would mean gears that give more than they get. Check amps, masses, drum and ratio.")
	case g.Known && g.Idle.Val < 0:
		g.Absurd = say.Words("These records would mean a motor that is pushed by its own friction. Check amps and masses.")
	}
}

// Threshold is the mass limit between what moved and what stayed, as torque without loss at the motor. With both known
// it is their middle, with the standard error of a value that may lie anywhere between.
func Threshold(moved, stayed float64, both bool) Value {
	if !both {
		return Value{Val: moved}
	}
	return Value{Val: (moved + stayed) / 2, Err: math.Abs(moved-stayed) / math.Sqrt(12), Sure: true}
}

// FirstPush finds b, how much more loss there is at rest: the limit that comes down by itself obeys
//
//	x·Π(1 − b·(1 − η_i)) = b·T_idle,  η_i = η_back^share_i
//
// over the stages with their shares of the loss. Not ok where no b of 1 or more does.
func (g Gears) FirstPush(x Value, shares []float64) (Value, bool) {
	if !g.KnowBack || !g.Known || !g.Absurd.IsZero() || x.Val <= 0 {
		return Value{}, false
	}
	b, ok := firstPush(g.Back.Val, g.Idle.Val, x.Val, shares)
	if !ok {
		return Value{}, false
	}
	v := Value{Val: b, Sure: x.Sure && g.Back.Sure}
	if v.Sure {
		slope := func(back, idle, at float64) float64 {
			c, _ := firstPush(back, idle, at, shares)
			return c
		}
		const h = 1e-4
		byBack := (slope(g.Back.Val*(1+h), g.Idle.Val, x.Val) - slope(g.Back.Val*(1-h), g.Idle.Val, x.Val)) / (2 * h * g.Back.Val)
		byX := (slope(g.Back.Val, g.Idle.Val, x.Val*(1+h)) - slope(g.Back.Val, g.Idle.Val, x.Val*(1-h))) / (2 * h * x.Val)
		byIdle := 0.0
		if g.Idle.Val > 0 {
			byIdle = (slope(g.Back.Val, g.Idle.Val*(1+h), x.Val) - slope(g.Back.Val, g.Idle.Val*(1-h), x.Val)) / (2 * h * g.Idle.Val)
		}
		v.Err = math.Sqrt(math.Max(0, byBack*byBack*g.cov[0][0]+2*byBack*byIdle*g.cov[0][1]+byIdle*byIdle*g.cov[1][1]+byX*byX*x.Err*x.Err))
	}
	return v, true
}

func firstPush(back, idle, x float64, shares []float64) (float64, bool) {
	spare := func(b float64) float64 {
		p := x
		for _, w := range shares {
			p *= math.Max(0, 1-b*(1-math.Pow(back, w)))
		}
		return p - b*idle
	}
	lo, hi := 0.2, 1.0 // under 1 is looked at too, so that slopes near 1 can be told
	if spare(lo) <= 0 {
		return 0, false
	}
	for spare(hi) > 0 {
		if hi *= 2; hi > 1e3 {
			return 0, false
		}
	}
	for range 200 {
		if mid := (lo + hi) / 2; spare(mid) > 0 {
			lo = mid
		} else {
			hi = mid
		}
	}
	return hi, true
}
