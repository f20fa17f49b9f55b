package cell

import (
	"math"

	"duskweight/internal/model/reservoir"
	"duskweight/internal/model/source"
	"duskweight/internal/model/unit"
)

// Resolved is a bank with every value in hand: the user's own, or the typical value of the kind. Without a label's
// capacity and voltage there is nothing to reduce; WhyNot says so.
type Resolved struct {
	Name   string
	Kind   Kind
	WhyNot string // why it cannot be computed; empty if it can

	Series, Parallel int
	Charge           unit.Charge  // of the whole bank, on the label
	Voltage          unit.Voltage // of the whole bank, nominal
	Energy           unit.Energy  // Charge·Voltage
	RatedTime        unit.Duration

	Depth      float64
	ChargeEff  float64 // η_c
	DrawEff    float64 // η_d
	Peukert    float64 // k
	ChargeMost unit.Power
	DrawMost   unit.Power
	ChargeMin  unit.Celsius
	ChargeMax  unit.Celsius
	Leak       float64 // 1/s
	CycleLife  float64
	CycleDepth float64
	CycleSlope float64
	Calendar   unit.Duration
	Standing   unit.Power

	Typical []Taken   // values taken from the kind, by path inside the bank
	Missing []Missing // inputs that are not known and have no typical value
	bank    Bank
}

// Taken is a typical value in use.
type Taken struct {
	Path   string
	Value  float64 // SI
	Source source.Ref
}

// Missing is an input that is not known, by its path inside the bank, and what it keeps from being computed.
type Missing struct {
	Path  string
	Wants string
}

// Month is the mean length of a month.
const Month = 365.25 / 12 * unit.Day

// Year is the length of a year of 365 days.
const Year = 365 * unit.Day

// Resolve puts the typical values of the kind where the user's are not known.
func (b Bank) Resolve() Resolved {
	k, ok := KindOf(b.Kind)
	r := Resolved{Name: b.Name, Kind: k, bank: b}
	if !ok {
		r.WhyNot = "The kind of cells is not known."
		r.Missing = append(r.Missing, Missing{"kind", "anything about the battery"})
		return r
	}
	r.Series = int(b.Series.Or(1))
	r.Parallel = int(b.Parallel.Or(1))
	r.label(b)
	r.RatedTime = unit.Duration(take(&r, "rated_time_s", b.RatedHours, k.RatedHours, float64(unit.Hour)))
	r.Depth = take(&r, "usable_depth", b.Depth, k.Depth, 1)
	r.efficiency(b, k)
	r.Peukert = take(&r, "peukert", b.Peukert, k.Peukert, 1)
	e := float64(r.Energy) / 3600
	r.ChargeMost = unit.Power(e * take(&r, "charge_rate_per_h", b.ChargeRate, k.ChargeRate, 1))
	r.DrawMost = unit.Power(e * take(&r, "draw_rate_per_h", b.DrawRate, k.DrawRate, 1))
	r.ChargeMin = unit.Celsius(take(&r, "charge_min_c", b.ChargeMin, k.ChargeMin, 1))
	r.ChargeMax = unit.Celsius(take(&r, "charge_max_c", b.ChargeMax, k.ChargeMax, 1))
	r.Leak = -math.Log1p(-take(&r, "leak_per_month", b.Leak, k.Leak, 1)) / float64(Month)
	r.CycleLife = take(&r, "cycle_life", b.CycleLife, k.CycleLife, 1)
	r.CycleDepth = take(&r, "cycle_life_depth", b.CycleDepth, k.CycleDepth, 1)
	r.CycleSlope = take(&r, "cycle_life_slope", b.CycleSlope, k.CycleSlope, 1)
	r.Calendar = unit.Duration(take(&r, "calendar_life_s", b.Calendar, k.Calendar, float64(Year)))
	if v, ok := b.Standing.Value(); ok {
		r.Standing = v
	} else {
		r.Missing = append(r.Missing, Missing{"standing_w", "what its electronics use all the time"})
	}
	return r
}

// label adds up the label's capacity and voltage over the bank.
func (r *Resolved) label(b Bank) {
	c, cIs := b.Capacity.Value()
	v, vIs := b.Voltage.Value()
	if !cIs {
		r.Missing = append(r.Missing, Missing{"block_capacity_c", "how much the battery stores"})
	}
	if !vIs {
		r.Missing = append(r.Missing, Missing{"block_voltage_v", "how much the battery stores"})
	}
	switch {
	case !cIs && !vIs:
		r.WhyNot = "The capacity and the voltage on the label are not known."
	case !cIs:
		r.WhyNot = "The capacity on the label is not known."
	case !vIs:
		r.WhyNot = "The voltage on the label is not known."
	}
	r.Charge = c * unit.Charge(r.Parallel)
	r.Voltage = v * unit.Voltage(r.Series)
	r.Energy = unit.Energy(float64(r.Charge) * float64(r.Voltage))
}

// efficiency: η_c = η_d = √(round trip) unless both are known.
func (r *Resolved) efficiency(b Bank, k Kind) {
	if b.ChargeEff.Is && b.DrawEff.Is {
		r.ChargeEff, r.DrawEff = float64(b.ChargeEff.Val), float64(b.DrawEff.Val)
		return
	}
	r.ChargeEff = math.Sqrt(take(r, "round_trip", b.RoundTrip, k.RoundTrip, 1))
	r.DrawEff = r.ChargeEff
}

// take returns the user's value, or the typical one, which it books; factor brings the typical value to SI.
func take[T ~float64](r *Resolved, path string, own unit.Known[T], typical Typical, factor float64) float64 {
	if v, ok := own.Value(); ok {
		return float64(v)
	}
	v := typical.Value * factor
	r.Typical = append(r.Typical, Taken{path, v, typical.Source})
	return v
}

// Reduce makes the reservoir of the bank. t is the temperature of the cells; mean is the mean current in the hours of
// drawing, for Peukert. It returns nil when WhyNot is set. The state is the joules above the deepest discharge that is used: X = C·V·f_P, 0 … d·X.
func (r Resolved) Reduce(t Temperature, mean unit.Current) *reservoir.Reservoir {
	if r.WhyNot != "" {
		return nil
	}
	out := reservoir.Reservoir{
		Name:     r.Name,
		Capacity: unit.Energy(float64(r.Energy) * float64(r.Rated(mean)) * r.Depth),
		FillMax:  r.ChargeMost, FillGain: r.ChargeEff,
		DrawMax: r.DrawMost, DrawGain: 1 / r.DrawEff,
		Standing: r.Standing,
		Leak:     r.Leak,
	}
	out.FillMax, out.AcceptFrom, out.AcceptEnd = r.acceptance()
	if len(t.hours) > 0 {
		out.NoFill, out.Locked = r.cold(t)
	}
	return &out
}

// AcceptEnd is the share of the greatest charging power that full cells still take.
const AcceptEnd = 1.0 / 20

// acceptance turns "from state of charge s_t on the power falls straight to a twentieth" into shares of the usable
// state: a share a of d·X is a state of charge of 1 − d·(1 − a). Cells of which so little is used that they never come
// under s_t begin on the falling line.
func (r Resolved) acceptance() (most unit.Power, from, end float64) {
	st := r.Kind.AcceptFrom.Value
	from = 1 - (1-st)/r.Depth
	if from >= 0 {
		return r.ChargeMost, from, AcceptEnd
	}
	atBottom := 1 - (1-AcceptEnd)*(1-r.Depth-st)/(1-st)
	return r.ChargeMost * unit.Power(atBottom), 0, AcceptEnd / atBottom
}
