package model

import (
	"math"
	"slices"

	"duskweight/internal/model/lift"
	"duskweight/internal/model/trial"
	"duskweight/internal/model/unit"
	"duskweight/internal/say"
)

// Measured is what the records of a hoist say of it.
type Measured struct {
	Gears     trial.Gears
	FirstPush trial.Value
	KnowPush  bool
	Warmth    trial.Warmth
	Lack      []say.Sentence // records or inputs that are missing
	Runs      []TrialRun
	Changes   []MeasuredChange
	Design    lift.Hoist // with the measured values in it; as it was where there are none
}

// TrialRun is one record beside what the plan foretells for the same mass, travel and volts.
type TrialRun struct {
	Down                 bool
	Date                 string
	Mass                 unit.Known[unit.Mass]
	Current, PlanCurrent unit.Known[unit.Current]
	Time, PlanTime       unit.Known[unit.Duration]
}

// MeasuredChange is one value of the design that the records change; Was and Is in SI.
type MeasuredChange struct {
	Path string // inside the hoist
	What string
	Was  unit.Known[unit.Ratio]
	Is   trial.Value
}

// MeasuredOf fits the records of a hoist. The torque at the drum is that of the design: what the pulleys lose more or
// less than planned shows up in the gears' numbers.
func MeasuredOf(h lift.Hoist) Measured {
	m := Measured{Design: h}
	d := lift.Compute(h)
	m.runs(h)
	if !d.Machine.K.Is {
		m.Lack = append(m.Lack, say.Words("The constant K of the motor is not known: without K, the torque cannot be worked out from the amps."))
		return m
	}
	k := float64(d.Machine.K.Val)
	lifts, ways, whole := torquesOf(h, k)
	if !whole {
		m.Lack = append(m.Lack, say.Words("The torque at the drum cannot be told for every record. Give drum, rope, pulleys and gear ratios."))
	}
	m.Gears = trial.FitGears(lifts, ways)
	m.Lack = append(m.Lack, m.Gears.Lack...)
	up, back := lossShares(h, d, upward), lossShares(h, d, downward)
	m.push(h, back)
	m.warmth(h, d)
	m.adopt(h, d, up, back)
	return m
}

// ideal is the torque that a mass would put on the motor through gears without loss, N·m, in the fullest layer of its
// travel.
func ideal(h lift.Hoist, mass unit.Mass, travel unit.Known[unit.Length], down bool) (float64, bool) {
	if mass == 0 {
		return 0, true
	}
	if travel.Is {
		h.Travel = travel
	}
	d := driveOf(h, mass)
	t := d.DrumTorqueUp
	if down {
		t = d.DrumTorqueDown
	}
	if !t.Is || !d.Ratio.Is || d.Ratio.Val <= 0 {
		return 0, false
	}
	return float64(t.Val) / float64(d.Ratio.Val), true
}

// idealLow is the same for a mass close to the ground that wants to come down: the rope is off the drum but for its
// first layer, which helps it least.
func idealLow(h lift.Hoist, mass unit.Mass) (float64, bool) {
	if mass == 0 {
		return 0, true
	}
	d := driveOf(h, mass)
	if !d.RopeDown.Is || !d.Winding.RadiusFirst.Is || !d.Ratio.Is || d.Ratio.Val <= 0 {
		return 0, false
	}
	t := float64(d.RopeDown.Val)*float64(d.Winding.RadiusFirst.Val) - float64(h.Drum.Friction.Or(0))
	return t / float64(d.Ratio.Val), true
}

// driveOf is the drive with another mass. Of the gears only the ratio is read: an efficiency that is not known must not
// hide it.
func driveOf(h lift.Hoist, mass unit.Mass) lift.Drive {
	h.Mass = []lift.Piece{{Mass: unit.Of(mass)}}
	h.Train.Stages = slices.Clone(h.Train.Stages)
	for i := range h.Train.Stages {
		if s := &h.Train.Stages[i]; !s.Efficiency.Is {
			s.Efficiency = unit.Of[unit.Ratio](0.8)
		}
	}
	return lift.Compute(h)
}

// torquesOf lists the runs that have mass and amps. Readings of the motor that turns the empty gears count as lifts of
// nothing; a mass that just goes on after a push, lamps off, as a way down without current.
func torquesOf(h lift.Hoist, k float64) (up, down []trial.Torques, whole bool) {
	whole = true
	add := func(to *[]trial.Torques, mass unit.Known[unit.Mass], travel unit.Known[unit.Length], amps unit.Known[unit.Current], isDown bool) {
		if !mass.Is || !amps.Is {
			return
		}
		x, ok := ideal(h, mass.Val, travel, isDown)
		if !ok {
			whole = false
			return
		}
		*to = append(*to, trial.Torques{Ideal: x, Motor: k * float64(amps.Val)})
	}
	for _, r := range h.Trials.Raises {
		add(&up, r.Mass, r.Travel, r.Current, false)
	}
	for _, r := range h.Trials.Lowers {
		add(&down, r.Mass, r.Travel, r.Current, true)
	}
	if h.Machine.I0WithGear == unit.Yes {
		for _, b := range h.Machine.BenchI0 {
			if b.Current.Is {
				up = append(up, trial.Torques{Motor: k * math.Abs(float64(b.Current.Val))})
			}
		}
	}
	if l := h.Trials.Least; l.Push.Is {
		limit := trial.Threshold(float64(l.Push.Val), float64(l.PushStays.Val), l.PushStays.Is)
		if x, ok := idealLow(h, unit.Mass(limit.Val)); ok {
			down = append(down, trial.Torques{Ideal: x})
		} else {
			whole = false
		}
	}
	return up, down, whole
}

// lossShares is the share of each stage, and of each stage inside a gearbox, in the loss of the train as designed, one
// way: of gives a stage's efficiency that way. A train in which some stage has none is shared out by the way up.
func lossShares(h lift.Hoist, d lift.Drive, of func(lift.StageResult) unit.Ratio) (shares [][]float64) {
	logs, sum := make([]float64, len(h.Train.Stages)), 0.0
	for _, s := range d.Stages {
		if of(s) <= 0 {
			of = upward
		}
	}
	for i := range logs {
		logs[i] = 1
		if len(d.Stages) == len(logs) {
			logs[i] = math.Max(-math.Log(float64(of(d.Stages[i]))), 1e-6)
		}
		sum += logs[i]
	}
	for i, s := range h.Train.Stages {
		inside := max(1, int(s.InStages.Or(1)))
		one := make([]float64, inside)
		for j := range one {
			one[j] = logs[i] / sum / float64(inside)
		}
		shares = append(shares, one)
	}
	return shares
}

func upward(s lift.StageResult) unit.Ratio { return s.Forward }

func downward(s lift.StageResult) unit.Ratio { return s.Backward }

// push finds the first push from the smallest mass that comes down by itself.
func (m *Measured) push(h lift.Hoist, shares [][]float64) {
	l := h.Trials.Least
	if !l.Alone.Is {
		m.Lack = append(m.Lack, say.Words("The smallest mass that comes down by itself was not tried: the first push stays as planned."))
		return
	}
	hi, ok := idealLow(h, l.Alone.Val)
	lo, ok2 := idealLow(h, l.AloneStays.Val)
	if !ok || l.AloneStays.Is && !ok2 {
		return
	}
	b, ok := m.Gears.FirstPush(trial.Threshold(hi, lo, l.AloneStays.Is), slices.Concat(shares...))
	switch {
	case !ok:
		m.Lack = append(m.Lack, say.Words("The first push needs the gears' numbers on the way down first."))
	case b.Val < 1 || b.Val > 5:
		m.Lack = append(m.Lack, say.That("The first push comes out as %s times the running loss, which cannot be right. Try the smallest mass again.", say.Times(unit.Ratio(b.Val)).To(2)))
	default:
		m.FirstPush, m.KnowPush = b, true
	}
}

func (m *Measured) warmth(h lift.Hoist, d lift.Drive) {
	c := d.Machine
	if len(h.Trials.Warmth) == 0 || !c.R.Is || !c.I0.Is {
		m.Lack = append(m.Lack, say.Words("Readings of the motor's temperature are missing: one at minute 0, then at least three more."))
		return
	}
	var readings []trial.Reading
	for i, r := range h.Trials.Warmth {
		first := len(readings) == 0 || r.At.Val <= h.Trials.Warmth[i-1].At.Val
		if !r.At.Is || !r.Warm.Is || !r.Air.Is || !first && !r.Current.Is || !first && r.Current.Val > 0 && !r.Voltage.Is {
			m.Lack = append(m.Lack, say.That("Reading %s of the motor's temperature needs time, motor, air, amps and, while it runs, volts.", i+1))
			return
		}
		readings = append(readings, trial.Reading{At: float64(r.At.Val), Warm: float64(r.Warm.Val), Air: float64(r.Air.Val), Current: float64(r.Current.Val), Voltage: float64(r.Voltage.Val)})
	}
	m.Warmth = trial.FitWarmth(trial.Motor{K: float64(c.K.Val), R: float64(c.R.Val), I0: float64(c.I0.Val), Brush: float64(c.BrushDrop), Alpha: lift.Alpha}, readings)
	m.Lack = append(m.Lack, m.Warmth.Lack...)
}

// runs sets every record beside the plan for the same mass, travel and volts.
func (m *Measured) runs(h lift.Hoist) {
	for _, r := range h.Trials.Raises {
		m.Runs = append(m.Runs, raised(h, r))
	}
	for _, r := range h.Trials.Lowers {
		m.Runs = append(m.Runs, lowered(h, r))
	}
}

// raised is a lift beside the plan.
func raised(h lift.Hoist, r lift.RaiseTrial) TrialRun {
	run := TrialRun{Date: r.Date, Mass: r.Mass, Current: r.Current, Time: r.Time}
	if !r.Mass.Is || r.Mass.Val <= 0 {
		return run
	}
	p := alike(h, r.Mass, r.Travel)
	p.Raise = lift.Raise{Feed: lift.FeedRelay, Voltage: r.Voltage}
	if d := lift.Compute(p).Raising; d.Current > 0 {
		run.PlanCurrent = unit.Of(d.Current)
		if d.Known && d.Speed > 0 && r.Travel.Is {
			run.PlanTime = unit.Of(d.Time)
		}
	}
	return run
}

// lowered is a way down beside the plan.
func lowered(h lift.Hoist, r lift.LowerTrial) TrialRun {
	run := TrialRun{Down: true, Date: r.Date, Mass: r.Mass, Current: r.Current, Time: r.Time}
	if !r.Mass.Is {
		return run
	}
	p := alike(h, r.Mass, r.Travel)
	p.Lower.Loads = []lift.DCLoad{{Kind: lift.LoadCell, Threshold: r.Voltage, Slope: unit.Of[unit.Resistance](0)}}
	if d := lift.Compute(p).Lowering; d.RunsBack != "" && d.Current > 0 {
		run.PlanCurrent = unit.Of(d.Current)
		if d.Known && d.Steady && d.Time > 0 && r.Travel.Is {
			run.PlanTime = unit.Of(d.Time)
		}
	}
	return run
}

// How far the last run may lie beside the plan, either way, before the plan is in doubt (own judgement: friction and a
// stopwatch explain less).
const (
	doubtCurrent = 1.5
	doubtTime    = 2
)

// doubts says that the last lift or the last way down was so far beside the plan that plan or reading is wrong.
func doubts(h lift.Hoist) (out []say.Sentence) {
	var runs []TrialRun
	if n := len(h.Trials.Raises); n > 0 {
		runs = append(runs, raised(h, h.Trials.Raises[n-1]))
	}
	if n := len(h.Trials.Lowers); n > 0 {
		runs = append(runs, lowered(h, h.Trials.Lowers[n-1]))
	}
	for _, r := range runs {
		way, took := map[bool]string{false: "The last lift", true: "The last way down"}[r.Down], [2]say.Amount{}
		switch {
		case apart(r.Current, r.PlanCurrent, doubtCurrent):
			took = [2]say.Amount{say.Current(r.Current.Val), say.Current(r.PlanCurrent.Val)}
		case apart(r.Time, r.PlanTime, doubtTime):
			took = [2]say.Amount{say.Time(r.Time.Val).To(2), say.Time(r.PlanTime.Val).To(2)}
		default:
			continue
		}
		out = append(out, say.That("%s took %s, and the plan says %s. Mass, gears, motor or a reading is wrong. Find out which before you load more.", way, took[0], took[1]))
	}
	return out
}

func apart[T unit.Number](a, b unit.Known[T], most float64) bool {
	if !a.Is || !b.Is || b.Val <= 0 {
		return false
	}
	x := float64(a.Val) / float64(b.Val)
	return x > most || x < 1/most
}

func alike(h lift.Hoist, mass unit.Known[unit.Mass], travel unit.Known[unit.Length]) lift.Hoist {
	h.Mass = []lift.Piece{{Mass: mass}}
	if travel.Is {
		h.Travel = travel
	}
	return h
}
