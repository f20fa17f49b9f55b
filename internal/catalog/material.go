package catalog

import "duskweight/internal/model/unit"

// Material is what a mass can be made of. Volume × density is a guess to ± 10 %: weigh it.
type Material struct {
	From
	Name      string
	Low, High unit.Density // the same where one value is given
}

// Volume returns the room that m takes at the middle density.
func (a Material) Volume(m unit.Mass) unit.Volume {
	return unit.Volume(float64(m) / (float64(a.Low+a.High) / 2))
}

// Materials returns what makers hang.
func Materials() []Material {
	table := func(note string) From { return readNote("bulk densities, engineers' table", note) }
	return []Material{
		{table("Wet it is 15 to 20 % heavier: weigh it, and let rain out."), "Sand, dry", 1520, 1680},
		{table("Wet it is heavier: weigh it."), "Gravel, loose", 1520, 1520},
		{table("Wet it is heavier: weigh it."), "Gravel with sand", 1920, 1920},
		{table(""), "Crushed stone", 1600, 1600},
		{table(""), "Concrete", 2400, 2400},
		{table(""), "Brick", 1920, 1920},
		{table("Wet it is heavier: weigh it."), "Earth, packed", 1520, 1520},
		{table(""), "Cast iron", 7208, 7208},
		{fromMemory("No open water where children come near."), "Water", 1000, 1000},
		{fromMemory(""), "Steel", 7850, 7850},
		{fromMemory(""), "Granite", 2700, 2700},
	}
}

// Timber is a strength class that a beam or post may be stamped with. The strengths themselves stand with the checks.
type Timber struct {
	From
	Class string
	Bend  unit.Stress // characteristic bending strength
	Dense unit.Density
}

// TimberClasses returns the classes of EN 338, and one of glued timber. Which one a beam is, its stamp says.
func TimberClasses() []Timber {
	soft := func(memory bool) From {
		return From{Source: "EN 338:2016, table 1", Memory: memory, Note: "Only by its stamp: an old or unmarked beam has no class."}
	}
	hard := rememberedOf("EN 338:2016, table 3", "Only by its stamp: an old or unmarked beam has no class.")
	return []Timber{
		{soft(true), "C14", 14 * unit.Megapascal, 350},
		{soft(false), "C16", 16 * unit.Megapascal, 370},
		{soft(true), "C18", 18 * unit.Megapascal, 380},
		{soft(true), "C20", 20 * unit.Megapascal, 400},
		{soft(true), "C22", 22 * unit.Megapascal, 410},
		{soft(false), "C24", 24 * unit.Megapascal, 420},
		{soft(true), "C27", 27 * unit.Megapascal, 430},
		{soft(true), "C30", 30 * unit.Megapascal, 460},
		{hard, "D24", 24 * unit.Megapascal, 580},
		{hard, "D30", 30 * unit.Megapascal, 640},
		{hard, "D40", 40 * unit.Megapascal, 660},
		{rememberedOf("EN 14080:2013, table 5", ""), "GL24h", 24 * unit.Megapascal, 420},
	}
}
