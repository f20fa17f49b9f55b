// Package cell is a store of chemical cells: equal blocks in series and parallel, reduced to a reservoir; how long
// they live; what to beware of; and the trade's own sizing beside it (model, section 4).
//
// What is left out: the voltage that falls while they empty, the balance between blocks, the warming by their own
// current, self-discharge that changes with temperature, and the capacity that fades within one year.
package cell

import (
	"duskweight/internal/model/source"
)

// Typical is a value that stands in where the user's is not known, with its source.
type Typical struct {
	Value  float64
	Source source.Ref
}

// Kind is a chemistry with its typical values.
type Kind struct {
	Key  Chemistry // the word in the document: "lfp"
	Name string

	CellVoltage Typical // V
	Depth       Typical // usable share
	RoundTrip   Typical
	Peukert     Typical // exponent
	RatedHours  Typical // h, of the label
	ChargeRate  Typical // 1/h, power over energy
	DrawRate    Typical // 1/h
	ChargeMin   Typical // °C
	ChargeMax   Typical // °C
	Leak        Typical // a month, at 25 °C
	CycleLife   Typical // cycles to 80 % at CycleDepth
	CycleDepth  Typical
	CycleSlope  Typical
	Calendar    Typical // years at 25 °C
	AcceptFrom  Typical // state of charge above which it takes less and less

	Ages  Ageing   // on the shelf
	Cold  Capacity // capacity over temperature
	Gas   Gas      // for ventilation
	Lead  bool     // lead–acid: sulphation, freezing acid, strings
	Ion   bool     // lithium and sodium: wants a management board
	Notes []string // plain sentences
}

// Capacity is the share of capacity at temperature T: A + B·T + C·T², T in °C, at most 1.
type Capacity struct {
	A, B, C float64
	Source  source.Ref
}

// Gas is the current that makes gas in charging, mA for each Ah of rated capacity.
type Gas struct {
	Boost, Float float64
	Source       source.Ref
}

var (
	leadCold = Capacity{0.711009126, 0.0138667895, -0.0000933332591, source.IEEE485.At("fit to table 1")}
	ionCold  = Capacity{0.848, 0.01206, -0.000226, source.LFPCold.Whole()}

	memory = source.TypicalCells.Whole()
	bu410  = source.BatteryBU410.At("table 1")
	habit  = source.CommonPractice.Whole()
)

func typ(v float64) Typical { return Typical{v, memory} }

// kinds are the six, in the order in which they are offered. It is never written after start.
var kinds = []Kind{
	{
		Key: FloodedLead, Name: "Lead–acid, flooded", Lead: true,
		CellVoltage: typ(2), Depth: typ(0.5), RoundTrip: typ(0.78), Peukert: typ(1.20), RatedHours: Typical{20, habit},
		ChargeRate: typ(0.13), DrawRate: typ(0.2), ChargeMin: Typical{-20, bu410}, ChargeMax: Typical{50, bu410}, Leak: typ(0.05),
		CycleLife: typ(750), CycleDepth: typ(0.5), CycleSlope: typ(2.0), Calendar: typ(6), AcceptFrom: typ(0.80),
		Ages: Ageing{Halves: Typical{10, habit}, Least: 0.8, Cap: 10, Bend: 1},
		Cold: leadCold, Gas: Gas{20, 5, source.IEC62485.At("table 1, vented lead–acid")},
		Notes: []string{"This battery needs air while it charges, and water from time to time."},
	},
	{
		Key: SealedLead, Name: "Lead–acid, sealed (AGM or gel)", Lead: true,
		CellVoltage: typ(2), Depth: typ(0.5), RoundTrip: typ(0.83), Peukert: typ(1.12), RatedHours: Typical{20, habit},
		ChargeRate: typ(0.2), DrawRate: typ(0.3), ChargeMin: Typical{-20, bu410}, ChargeMax: Typical{50, bu410}, Leak: typ(0.02),
		CycleLife: typ(500), CycleDepth: typ(0.5), CycleSlope: typ(1.8), Calendar: typ(7), AcceptFrom: typ(0.80),
		Ages: Ageing{Halves: Typical{8, source.IEEE1188.Whole()}, Least: 0.8, Cap: 8, Bend: 1},
		Cold: leadCold, Gas: Gas{8, 1, source.IEC62485.At("table 1, valve-regulated lead–acid")},
	},
	{
		Key: LFP, Name: "Lithium iron phosphate", Ion: true,
		CellVoltage: typ(3.2), Depth: typ(0.8), RoundTrip: typ(0.93), Peukert: typ(1.03), RatedHours: Typical{5, habit},
		ChargeRate: typ(0.5), DrawRate: typ(1), ChargeMin: Typical{0, bu410}, ChargeMax: Typical{45, bu410}, Leak: Typical{0.025, source.LFPCold.Whole()},
		CycleLife: typ(4000), CycleDepth: typ(0.8), CycleSlope: typ(1.2), Calendar: typ(12), AcceptFrom: typ(0.95), Cold: ionCold,
		Ages: Ageing{Activation: phosphateActivation, Charge: byCube, Least: 0.5, Cap: 15, Bend: 0.5},
	},
	{
		Key: NMC, Name: "Lithium nickel–manganese–cobalt", Ion: true,
		CellVoltage: typ(3.65), Depth: typ(0.8), RoundTrip: typ(0.94), Peukert: typ(1.03), RatedHours: Typical{5, habit},
		ChargeRate: typ(0.5), DrawRate: typ(1), ChargeMin: Typical{0, bu410}, ChargeMax: Typical{45, bu410}, Leak: typ(0.02),
		CycleLife: typ(1500), CycleDepth: typ(0.8), CycleSlope: typ(1.5), Calendar: typ(9), AcceptFrom: typ(0.95), Cold: judged(ionCold),
		Ages: Ageing{Activation: cobaltActivation, Charge: byVoltage, Least: 0.5, Cap: 12, Bend: 0.75},
	},
	{
		Key: NickelIron, Name: "Nickel–iron",
		CellVoltage: typ(1.2), Depth: typ(0.8), RoundTrip: typ(0.60), Peukert: typ(1.15), RatedHours: Typical{5, habit},
		ChargeRate: typ(0.2), DrawRate: typ(0.25), ChargeMin: Typical{0, bu410}, ChargeMax: Typical{45, bu410}, Leak: typ(0.20),
		CycleLife: typ(8000), CycleDepth: typ(0.8), CycleSlope: typ(1), Calendar: typ(25), AcceptFrom: typ(0.9), Cold: judged(leadCold),
		Ages:  Ageing{Least: 1, Cap: 40, Bend: 1},
		Gas:   Gas{50, 5, source.IEC62485.At("table 1, vented nickel–cadmium, taken for nickel–iron")},
		Notes: []string{"This battery needs air while it charges, and water from time to time."},
	},
	{
		Key: SodiumIon, Name: "Sodium-ion", Ion: true,
		CellVoltage: typ(3.0), Depth: typ(0.9), RoundTrip: typ(0.90), Peukert: typ(1.03), RatedHours: Typical{5, habit},
		ChargeRate: typ(0.5), DrawRate: typ(1), ChargeMin: typ(-20), ChargeMax: typ(45), Leak: typ(0.03),
		CycleLife: typ(2500), CycleDepth: typ(0.8), CycleSlope: typ(1.3), Calendar: typ(10), AcceptFrom: typ(0.95), Cold: judged(ionCold),
		Ages: Ageing{Activation: phosphateActivation, Charge: byCube, Least: 0.5, Cap: 15, Bend: 0.5},
	},
}

// judged is the capacity curve of another kind, taken as a cautious guess.
func judged(c Capacity) Capacity {
	c.Source = source.Judgement.At("the curve of a near kind, taken as cautious")
	return c
}

// KindOf returns the kind with that key.
func KindOf(key Chemistry) (Kind, bool) {
	for _, k := range kinds {
		if k.Key == key {
			return k, true
		}
	}
	return Kind{}, false
}
