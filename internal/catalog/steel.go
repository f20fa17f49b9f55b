package catalog

import (
	"duskweight/internal/model/lift"
	"duskweight/internal/model/unit"
)

// Steel is a grade of structural steel with its least yield strength up to 16 mm thick.
type Steel struct {
	From
	Grade string
	Yield unit.Stress
}

// TakeBeam makes the beam a steel tube of this grade; a round tube stays one.
func (s Steel) TakeBeam(into *lift.Beam, wasRead bool) Taken {
	var t Taken
	if into.Kind != lift.MemberSteelRoundTube {
		copied(&t, &into.Kind, lift.MemberSteelTube, "kind")
	}
	gone(&t, &into.Class, "class")
	strength(&t, s.From, wasRead, &into.Yield, unit.Of(s.Yield), "yield_pa")
	return t
}

// TakePost does the same to a post.
func (s Steel) TakePost(into *lift.Post, wasRead bool) Taken {
	var t Taken
	if into.Kind != lift.MemberSteelRoundTube {
		copied(&t, &into.Kind, lift.MemberSteelTube, "kind")
	}
	gone(&t, &into.Class, "class")
	strength(&t, s.From, wasRead, &into.Yield, unit.Of(s.Yield), "yield_pa")
	return t
}

// TakeShaft gives the drum's shaft this yield strength.
func (s Steel) TakeShaft(into *lift.Drum, wasRead bool) Taken {
	var t Taken
	strength(&t, s.From, wasRead, &into.ShaftYield, unit.Of(s.Yield), "shaft_yield_pa")
	return t
}

// Steels returns the usual grades.
func Steels() []Steel {
	from := labelled("EN 10025-2, Hot rolled structural steels, table 7", "Up to {16 mm} thick. Trust only its stamp or paper: scrap has no grade.")
	return []Steel{{from, "S235", 235 * unit.Megapascal}, {from, "S275", 275 * unit.Megapascal}, {from, "S355", 355 * unit.Megapascal}}
}

// Tooth is what gear teeth are made of: yield strength of a metal, tensile strength of a plastic.
type Tooth struct {
	From
	Name     string
	Material lift.ToothMaterial // the word of the design: "printed"
	Strength unit.Stress
}

// Take copies the row into the teeth of a stage. Teeth of another material have no print layers of the old one.
func (m Tooth) Take(into *lift.Tooth, wasRead bool) Taken {
	var t Taken
	if into.Material != m.Material {
		gone(&t, &into.Layers, "layers")
	}
	copied(&t, &into.Material, m.Material, "material")
	strength(&t, m.From, wasRead, &into.Strength, unit.Of(m.Strength), "strength_pa")
	return t
}

// Teeth returns what gear teeth are made of. Printed strength is that of one maker's test bar, never that of a print.
func Teeth() []Tooth {
	bar := "The value is along the layers. Across them about a third of it is left. Your own print may be weaker: break a bar of it."
	handbook := labelled("engineers' tables of moulded plastics", "The value is for dry plastic at {23 °C}. Warm plastic has less.")
	grade := labelled("EN 10025-2, Hot rolled structural steels, table 7", "Yield strength, up to {16 mm} thick. Trust only its paper.")
	return []Tooth{
		{labelled("a filament maker's technical data sheet of PLA, version 1.1", bar), "PLA, printed", lift.ToothPrinted, 51 * unit.Megapascal},
		{rememberedOf("PETG, printed", "Printed bars have {45 MPa} to {50 MPa}. "+bar), "PETG, printed", lift.ToothPrinted, 45 * unit.Megapascal},
		{rememberedOf("ABS, printed", "Printed bars have {35 MPa} to {45 MPa}. "+bar), "ABS, printed", lift.ToothPrinted, 35 * unit.Megapascal},
		{rememberedOf("PA12, printed", "Printed bars have {45 MPa} to {50 MPa}. "+bar), "Nylon (PA12), printed", lift.ToothPrinted, 45 * unit.Megapascal},
		{handbook, "Acetal (POM), moulded", lift.ToothPOM, 60 * unit.Megapascal},
		{handbook, "Nylon (PA66), moulded", lift.ToothNylon, 77 * unit.Megapascal},
		{grade, "Steel S235", lift.ToothSteel, 235 * unit.Megapascal},
		{grade, "Steel S355", lift.ToothSteel, 355 * unit.Megapascal},
	}
}
