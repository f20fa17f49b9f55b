package catalog

import (
	"math"

	"duskweight/internal/model/lift"
	"duskweight/internal/model/unit"
)

// Rope is a rope by material and diameter, with its least breaking load when new. What the reel says counts: the load is
// copied into a design only from a table that gives the least, and else only with the user's word that the reel says so.
type Rope struct {
	From
	Name         string
	Kind         lift.RopeKind // the word of the design: "polyester", "wire"
	Diameter     unit.Length
	BreakingLoad unit.Force
}

// Take copies the row into a design. What belonged to a rope of another material or size goes with it.
func (r Rope) Take(into *lift.Rope, wasRead bool) Taken {
	var t Taken
	if into.Kind != r.Kind {
		gone(&t, &into.KnotFactor, "knot_factor") // a share of another material's strength
	}
	if into.Kind != r.Kind || into.Diameter != unit.Of(r.Diameter) {
		gone(&t, &into.Stiffness, "stiffness_ea_n")
	}
	copied(&t, &into.Kind, r.Kind, "kind")
	copied(&t, &into.Diameter, unit.Of(r.Diameter), "diameter_m")
	strength(&t, r.From, wasRead, &into.BreakingLoad, unit.Of(r.BreakingLoad), "breaking_load_n")
	return t
}

const kilonewton unit.Force = 1000

// ropeTable is one published table: loads by diameter.
type ropeTable struct {
	from     From
	name     string
	kind     lift.RopeKind
	diameter []unit.Length
	load     []unit.Force // kN
}

func millimetres(v ...float64) (out []unit.Length) {
	for _, x := range v {
		out = append(out, unit.Length(x)*unit.Millimetre)
	}
	return out
}

// byCoefficient returns c·d² kN (d in mm) for the diameters, in kN to the tenth.
func byCoefficient(c float64, d []unit.Length) (out []unit.Force) {
	for _, x := range d {
		mm := float64(x / unit.Millimetre)
		out = append(out, unit.Force(math.Round(10*c*mm*mm)/10))
	}
	return out
}

func ropeTables() []ropeTable {
	metric := millimetres(6, 8, 10, 12, 16)
	seven := millimetres(6, 8, 10, 12, 14, 16, 18)
	inches := []unit.Length{unit.Inch / 4, unit.Inch * 3 / 8, unit.Inch / 2, unit.Inch * 5 / 8}
	mean := "Probably the mean of many tests, not the least: the label of your rope may say a fifth less."
	even := "The table sets {12 mm} equal to half an inch. A rope of true {12 mm} may carry a tenth less."
	creeps := "It creeps under a load that hangs all day, and sun makes it brittle."
	wet := " A wet rope loses 5 to 25 % of its strength."
	return []ropeTable{
		{readNote("strength table of polyester rope, three and eight strands (makers' figures)", even), "Polyester, three strands", lift.RopePolyester,
			seven, []unit.Force{5.85, 9.1, 12.9, 22.6, 28.6, 34.8, 49.8}},
		{readNote("strength table of polyester–polyolefin rope, three strands (makers' figures)", even), "Polyester on polyolefin, three strands", lift.RopePolyester,
			seven, []unit.Force{5.34, 8.3, 12.0, 19.6, 23.1, 27.1, 37.4}},
		{rememberedOf("ISO 1141, polyester ropes, 0.155 d² kN, ± 10 %", ""), "Polyester, three strands, by the standard", lift.RopePolyester, metric, byCoefficient(0.155, metric)},
		{labelled("cordage makers' table in pounds, older edition", mean), "Polyester, inch sizes", lift.RopePolyester, inches[1:], []unit.Force{16.5, 28.5, 44}},
		{readNote("strength table of nylon rope, three and eight strands (makers' figures)", even+wet), "Nylon, three strands", lift.RopeNylon,
			seven, []unit.Force{6.61, 10.2, 14.4, 25.2, 32.0, 39.6, 56.8}},
		{rememberedOf("ISO 1140, polyamide ropes, 0.20 d² kN, ± 10 %", "A wet rope loses 5 to 25 % of its strength."), "Nylon, three strands, by the standard", lift.RopeNylon, metric, byCoefficient(0.20, metric)},
		{labelled("cordage makers' table in pounds, older edition", mean+wet), "Nylon, inch sizes", lift.RopeNylon, inches, []unit.Force{7.3, 16.5, 28.5, 46}},
		{readNote("strength table of polypropylene rope, three strands (makers' figures)", even+" "+creeps), "Polypropylene, three strands", lift.RopePolypropylene,
			metric, []unit.Force{5.0, 7.6, 10.8, 16.8, 24.8}},
		{rememberedOf("ISO 1346, polypropylene ropes, 0.14 d² kN, ± 10 %", creeps), "Polypropylene, three strands, by the standard", lift.RopePolypropylene, metric, byCoefficient(0.14, metric)},
		{labelled("makers' sheets of 12-strand high-modulus polyethylene; the lower of two that differ by half", "Never knot it: a knot costs 50 to 75 % of its strength. It is slippery: leave five turns on the drum, and anchor its end."), "High-modulus polyethylene, 12 strands", lift.RopeHMPE,
			[]unit.Length{unit.Inch / 4}, []unit.Force{35.6}},
		{read("API Specification 9A / ISO 10425, annex C.1: 6×7 with fibre core, grade 1770, 0.332 d²·R"), "Wire 6×7, fibre core", lift.RopeWire, metric, []unit.Force{21.2, 37.6, 58.8, 84.6, 150}},
		{read("strength table of wire rope 6×19, fibre core, improved plow steel"), "Wire 6×19, fibre core", lift.RopeWire, millimetres(6.4, 9.5, 13), []unit.Force{24.4, 54.3, 95.2}},
		{labelled("D. L. Hall, load tests of 1/8 inch 7×19 galvanized cable, 2008: the mean with one crimp", "Rated {8900 N}. Rope without a maker's name broke at up to 15 % less."), "Wire 7×19, galvanized, 1/8 inch", lift.RopeWire, []unit.Length{unit.Inch / 8}, []unit.Force{7.63}},
	}
}

// Ropes returns the ropes, by table and then by diameter.
func Ropes() []Rope {
	var out []Rope
	for _, t := range ropeTables() {
		for i, d := range t.diameter {
			out = append(out, Rope{From: t.from, Name: t.name, Kind: t.kind, Diameter: d, BreakingLoad: t.load[i] * kilonewton})
		}
	}
	return out
}
