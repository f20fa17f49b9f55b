package cell

import (
	"math"

	"duskweight/internal/model/unit"
)

// Resting voltage over nominal voltage, full-charge voltage of a cell, and the usual internal resistance times capacity over
// voltage, by kind. From memory, ± 50 % for the resistance; that of nickel–iron is our own judgement.
var (
	restShare   = map[Chemistry]float64{FloodedLead: 1.017, SealedLead: 1.017, LFP: 1, NickelIron: 1, NMC: 0.96, SodiumIon: 0.96}
	fullCell    = map[Chemistry]float64{FloodedLead: 2.4, SealedLead: 2.4, LFP: 3.6, NMC: 4.2, NickelIron: 1.65, SodiumIon: 3.95}
	ohmLead     = 0.04 // Ω·Ah/V
	ohmOfBoards = 0.05 // with a management board in the way
)

// CutShare is the share of the nominal voltage at which an inverter switches off where its sheet is not known (common
// practice).
const CutShare = 0.875

// Rest is the voltage of the bank at rest, half empty.
func (r Resolved) Rest() unit.Voltage { return r.Voltage * unit.Voltage(restShare[r.Kind.Key]) }

// Full is the voltage at which the bank is charged full.
func (r Resolved) Full() unit.Voltage {
	return unit.Voltage(math.Round(float64(r.Voltage)/r.Kind.CellVoltage.Value) * fullCell[r.Kind.Key])
}

// Internal is the internal resistance of the whole bank: of its blocks in series over the strings in parallel, or the usual
// one of its kind.
func (r Resolved) Internal() unit.Resistance {
	if ohm, ok := r.bank.Internal.Value(); ok {
		return ohm * unit.Resistance(r.Series) / unit.Resistance(r.Parallel)
	}
	usual := ohmOfBoards
	if r.Kind.Lead {
		usual = ohmLead
	}
	return unit.Resistance(usual * float64(r.Voltage) / r.Charge.AmpereHours())
}

// CableOhm is the resistance of the cable from the bank to the line, there and back, warm; 0 where it is not known.
func (r Resolved) CableOhm() unit.Resistance {
	l, long := r.bank.CableLength.Value()
	a, thick := r.bank.CableArea.Value()
	if !long || !thick {
		return 0
	}
	return unit.Resistance(Drop(l, 1, a, HotCable))
}

// Sag returns current and voltage at which a source of resting voltage rest behind resistance r gives power p:
// I = (rest − √(rest² − 4 r p))/(2 r). It is false where the line cannot carry that power; the current is then rest/(2 r), at
// which it gives the most it can, and the voltage half of rest.
func Sag(rest unit.Voltage, r unit.Resistance, p unit.Power) (unit.Current, unit.Voltage, bool) {
	v, ohm := float64(rest), float64(r)
	if ohm <= 0 {
		return unit.Current(float64(p) / v), rest, true
	}
	left := v*v - 4*ohm*float64(p)
	if left < 0 {
		return unit.Current(v / (2 * ohm)), rest / 2, false
	}
	i := 2 * float64(p) / (v + math.Sqrt(left)) // the same root, without the loss of digits at small power
	return unit.Current(i), unit.Voltage(v - i*ohm), true
}

// ShortCircuit is the current of the bank into a short at its terminals.
func (r Resolved) ShortCircuit() unit.Current {
	return unit.Current(float64(r.Voltage) / float64(r.Internal()))
}
