package load

import (
	"math"
	"slices"

	"duskweight/internal/model/unit"
)

// Together is what may be on in one moment: every appliance whose hours cover it, however seldom it really runs. Powers in W
// at the appliances, without what the inverter loses and without what uses power all the time.
type Together struct {
	Hour     int   // clock hour, 0 … 23
	Month    int   // 1 … 12
	On       []int // appliances, by their place in the list
	DC, AC   float64
	Apparent float64 // of those through the inverter, VA: power over power factor
	// Start is the greatest power of a start beyond running: one motor starts at a time (common practice).
	Start     float64
	Starts    int     // which appliance that is; -1 for none
	StartTime float64 // how long it takes, s
	StartAC   bool    // it goes through the inverter
}

// Run is what runs, W.
func (t Together) Run() float64 { return t.DC + t.AC }

// StartPower is what is used in the moment of the start, W.
func (t Together) StartPower() float64 { return t.Run() + t.Start }

// ACStart is what the inverter has to give in that moment, W.
func (t Together) ACStart() float64 {
	if t.StartAC {
		return t.AC + t.Start
	}
	return t.AC
}

// unknownStart is how long a start takes that nobody timed, s: up to ten seconds, our own cautious judgement.
const unknownStart = 9.999

// Peaks returns the distinct combinations of what may be on together, over all hours of a year and every second in them at
// which something goes on. sunDown and dusk as in Hours. A time, power or number that is not known adds nothing.
func Peaks(l Load, sunDown []bool, dusk []int) []Together {
	m := newMoments(l)
	var all []Together
	for h := range HoursInYear {
		for _, t := range m.begins[h%24] {
			if on := m.at(h, t, sunDown, dusk); on != nil {
				all = append(all, together(l, on, h))
			}
		}
	}
	return all
}

// PeaksAnywhere is Peaks where the place is not known: whatever waits for dusk may be on at any hour.
func PeaksAnywhere(l Load) []Together {
	down := make([]bool, HoursInYear)
	for h := range down {
		down[h] = true
	}
	return Peaks(l, down, make([]int, HoursInYear))
}

// moments finds what is on in a moment, each combination once.
type moments struct {
	list   []Appliance
	may    []int         // those that can be on at all
	begins [24][]float64 // seconds within each clock hour at which something goes on, and its start
	seen   map[string]bool
	on     []int
	key    []byte
}

func newMoments(l Load) *moments {
	m := &moments{list: l.Appliances, seen: map[string]bool{}}
	for hour := range m.begins {
		m.begins[hour] = []float64{0}
	}
	for i, a := range l.Appliances {
		if _, no := Refused(a); no || a.all() == 0 || !a.Running().Is || !a.Count.Is {
			continue
		}
		m.may = append(m.may, i)
		from := math.Mod(float64(a.From.Or(0)), 86400)
		hour, second := int(from)/3600, math.Mod(from, 3600)
		if !slices.Contains(m.begins[hour], second) {
			m.begins[hour] = append(m.begins[hour], second)
		}
	}
	return m
}

// at lists what is on at second t of hour h of the year; nil for nothing, and for what was there before.
func (m *moments) at(h int, t float64, sunDown []bool, dusk []int) []int {
	m.on, m.key = m.on[:0], m.key[:0]
	for _, i := range m.may {
		if m.list[i].covers(h, t, sunDown, dusk) {
			m.on = append(m.on, i)
			m.key = append(m.key, byte(i), byte(i>>8))
		}
	}
	if len(m.on) == 0 || m.seen[string(m.key)] {
		return nil
	}
	m.seen[string(m.key)] = true
	return m.on
}

// covers reports whether second t of hour h of the year lies in the hours of an appliance.
func (a *Appliance) covers(h int, t float64, sunDown []bool, dusk []int) bool {
	if len(a.Months) > 0 && !a.inMonth(h) {
		return false
	}
	if n, ok := a.FromDusk.Value(); ok && !a.MayWait() {
		return dusk[h] >= 0 && float64(n) > float64(dusk[h])*3600+t
	}
	if a.AfterDusk == unit.Yes && !sunDown[h] && !a.MayWait() {
		return false
	}
	from, fromIs := a.From.Value()
	to, toIs := a.To.Value()
	if !fromIs || !toIs {
		return a.AfterDusk == unit.Yes && !fromIs && !toIs
	}
	return within(float64(h%24)*3600+t, float64(from), float64(to))
}

// Timed reports whether something says when an appliance may be on: hours before or after dusk, or from when to when. One of
// which only the beginning or the end is known may be on at any hour.
func (a Appliance) Timed() bool {
	if a.MayWait() {
		return a.From.Is && a.To.Is
	}
	return a.FromDusk.Is || a.From.Is && a.To.Is || a.AfterDusk == unit.Yes && !a.From.Is && !a.To.Is
}

// together adds up the appliances that are on in hour h.
func together(l Load, on []int, h int) Together {
	t := Together{Hour: h % 24, Month: MonthOf(h), Starts: -1}
	alone := -1 // of those that never run with another such: the largest
	for _, i := range on {
		a := l.Appliances[i]
		if a.AtOnce == unit.No && (alone < 0 || a.all() > l.Appliances[alone].all()) {
			alone = i
		}
	}
	for _, i := range on {
		a := l.Appliances[i]
		if a.AtOnce == unit.No && i != alone {
			continue
		}
		t.On = append(t.On, i)
		t.add(i, a)
	}
	return t
}

// all is the power of all pieces of an appliance, W.
func (a Appliance) all() float64 { return float64(a.Running().Val) * float64(a.Count.Val) }

func (t *Together) add(i int, a Appliance) {
	ac := a.Supply == SupplyInverter
	if ac {
		t.AC += a.all()
		t.Apparent += a.all() / float64(a.PowerFact.Or(1))
	} else {
		t.DC += a.all()
	}
	if more := a.SurgePower() - float64(a.Running().Val); more > t.Start {
		t.Start, t.Starts, t.StartAC = more, i, ac
		t.StartTime = float64(a.SurgeTime.Or(unknownStart))
	}
}
