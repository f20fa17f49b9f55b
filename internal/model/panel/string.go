package panel

import (
	"math"

	"duskweight/internal/model/unit"
)

// Values that stand in where a sheet says nothing.
const (
	noSheetVoltage unit.Voltage   = 50      // open voltage of one panel; our own cautious judgement
	typicalBetaHot unit.PerKelvin = -0.0042 // change of the best voltage with temperature; from memory
	usualFuse      unit.Current   = 15      // largest series fuse of a panel; from memory
	usualLead      unit.Area      = 4e-6    // cross-section of a panel's lead; common practice
	HotCell        unit.Celsius   = 70      // cell on a hot day; our own judgement
	coldOver       float64        = 1.25    // short-circuit current over the sheet's in bright sun (source.NEC690, 690.8)
)

// coldFactors are open voltage over the sheet's for silicon, down to each temperature, °C (source.NEC690, table 690.7(A),
// from memory).
var coldFactors = []struct{ down, factor float64 }{
	{20, 1.02}, {15, 1.04}, {10, 1.06}, {5, 1.08}, {0, 1.10}, {-5, 1.12}, {-10, 1.14}, {-15, 1.16},
	{-20, 1.18}, {-25, 1.20}, {-30, 1.21}, {-35, 1.23},
}

// ColdFactor returns open voltage over the sheet's at temperature t where the sheet gives no coefficient; 1.25 below −35 °C,
// and 1 at 25 °C and above.
func ColdFactor(t unit.Celsius) float64 {
	if t >= 25 {
		return 1
	}
	for _, c := range coldFactors {
		if float64(t) >= c.down {
			return c.factor
		}
	}
	return 1.25
}

// InSeries is the number of panels in a string: the sheet's, or the panels over the strings. It is 1 and false where several
// panels stand there and nothing says how they are joined: they may all be in series.
func (a Array) InSeries() (int, bool) {
	n, known := a.Count.Value()
	strings, side := a.Strings.Value()
	switch {
	case a.Sheet != nil && a.Sheet.Series.Is:
		return int(a.Sheet.Series.Val), true
	case known && n <= 1:
		return 1, true
	case known && side && strings > 0:
		return int(math.Ceil(float64(n) / float64(strings))), true
	}
	return 1, false
}

// OpenCold returns the open voltage of a string of n panels at temperature t: n·V_oc(1 + β(t − 25)), or by the cold factor
// where the sheet gives no coefficient. Without a sheet a panel counts as 50 V. Source: IEC 62548, NEC 690.7.
func (a Array) OpenCold(n int, t unit.Celsius) unit.Voltage {
	if a.Sheet == nil || !a.Sheet.Voc.Is {
		return noSheetVoltage * unit.Voltage(float64(n)*ColdFactor(t))
	}
	factor := ColdFactor(t)
	if beta, ok := a.Sheet.Beta.Value(); ok {
		factor = 1 + float64(beta)*(float64(t)-25)
	}
	return a.Sheet.Voc.Val * unit.Voltage(float64(n)*factor)
}

// BestHot returns the best voltage of a string of n panels on a hot day; false without a sheet.
func (a Array) BestHot(n int) (unit.Voltage, bool) {
	if a.Sheet == nil || !a.Sheet.Vmp.Is {
		return 0, false
	}
	beta := a.Sheet.Beta.Or(typicalBetaHot)
	return a.Sheet.Vmp.Val * unit.Voltage(float64(n)*(1+float64(beta)*float64(HotCell-25))), true
}

// SideBySide returns the least and the greatest number of strings that share one cable: the user's number; else every string
// may have a cable of its own, or all of them one.
func (a Array) SideBySide() (least, most int) {
	if s, ok := a.Strings.Value(); ok {
		return int(s), int(s)
	}
	n := int(a.Count.Or(1))
	if a.Sheet != nil {
		n = int(math.Ceil(float64(n) / float64(max(1, a.Sheet.Series.Or(1)))))
	}
	return min(1, n), n
}

// Short returns the short-circuit current of a number of strings in bright sun, 1.25·n·I_sc; false without a sheet.
func (a Array) Short(n int) (unit.Current, bool) {
	if a.Sheet == nil || !a.Sheet.Isc.Is {
		return 0, false
	}
	return a.Sheet.Isc.Val * unit.Current(coldOver*float64(n)), true
}

// SeriesFuse is the largest fuse that the panel allows in its string.
func (a Array) SeriesFuse() unit.Current {
	if a.Sheet == nil {
		return usualFuse
	}
	return a.Sheet.Fuse.Or(usualFuse)
}

// Lead is the cross-section of the panels' cable.
func (a Array) Lead() unit.Area { return a.CableArea.Or(usualLead) }

// cable returns the share of the power that the panels' cable loses at full power, 2LIρ/A over V with the strings side by side
// on it; false where cable or sheet is not known.
func (a Array) cable() (share float64, known bool) {
	if a.Sheet == nil || !a.Sheet.Complete() || !a.CableLen.Is || !a.CableArea.Is || !a.Count.Is || a.Count.Val == 0 {
		return 0, false
	}
	series := float64(a.Sheet.Series.Or(1))
	strings := float64(a.Strings.Or(unit.Count(math.Ceil(float64(a.Count.Val) / series))))
	drop := copper * 2 * float64(a.CableLen.Val) * strings * float64(a.Sheet.Imp.Val) / float64(a.CableArea.Val)
	return drop / (series * float64(a.Sheet.Vmp.Val)), true
}

// CableDrop returns the volts that the panels' cable loses at full power, and as a share of the panels' best voltage.
func (a Array) CableDrop() (volts unit.Voltage, share float64, known bool) {
	share, known = a.cable()
	if !known {
		return 0, 0, false
	}
	return unit.Voltage(share*float64(a.Sheet.Series.Or(1))) * a.Sheet.Vmp.Val, share, true
}

// copper is the resistivity of copper at 40 °C, Ω·m (source.CopperIEC: 0.017241 Ω·mm²/m at 20 °C, 0.00393/K).
const copper = 0.017241e-6 * (1 + 0.00393*20)

// Charge is the most current that the panels bring to a line of voltage v: no more than the controller's rated power and
// current, with pulse width no more than the panels' short-circuit current. limited reports whether a limit is named.
func Charge(arrays []Array, c Controller, v unit.Voltage) (i unit.Current, limited bool) {
	var watts, short float64
	sheets := true
	for _, a := range arrays {
		watts += float64(a.Nominal().Or(0))
		_, n := a.SideBySide()
		s, ok := a.Short(n)
		short, sheets = short+float64(s)/coldOver, sheets && ok
	}
	amps := watts / float64(v)
	if c.Kind == ControllerPulseWidth && sheets {
		amps = short
	}
	if p, ok := c.Power.Value(); ok {
		amps, limited = min(amps, float64(p)/float64(v)), true
	}
	if most, ok := c.MaxCharge.Value(); ok {
		amps, limited = min(amps, float64(most)), true
	}
	return unit.Current(amps), limited
}

// Clipped is the power of the panels' labels beyond what the controller's most current carries at the line; not known where
// that current is not.
func Clipped(arrays []Array, c Controller) unit.Known[unit.Power] {
	most, ok := c.MaxCharge.Value()
	if !ok {
		return unit.Known[unit.Power]{}
	}
	var watts unit.Power
	for _, a := range arrays {
		watts += a.Nominal().Or(0)
	}
	return unit.Of(max(0, watts-unit.Power(most)*unit.Power(c.Line())))
}

// Line is the voltage of the line.
func (c Controller) Line() unit.Voltage { return c.BusVolts.Or(typicalBus) }
