package hoist

import (
	"slices"
	"strings"

	"duskweight/internal/draw"
	"duskweight/internal/model/lift"
	"duskweight/web/form"
	"duskweight/web/page"
)

// read are the parts whose numbers are printed on something, or measured on it, by their ids without a number.
var read = map[string]page.Reading{
	"mass": page.Read("scale", "What to weigh", "Weigh every piece, and say that it is weighed. Measure the travel with a tape, from the lowest to the highest place of the mass.",
		page.Line("38.5 kg", "85 lb", "mass of one piece")),
	"cage": page.Read("bag", "What to read on a bag or a cage", "Without a label, the strength stays not known. A container with a label or a proof by test is the way out.",
		page.Line("SWL 500 kg", "SWL 1100 lb", "working load"), page.Alike("SF 6:1", "safety factor of a bag")),
	"rope": page.Read("reel", "What to read on the reel", "Without a reel or a tag, the strength stays not known. Buy a rope whose strength is printed. One that only looks like it is not enough.",
		page.Alike("Polyester", "material"), page.Line("⌀ 12 mm", "⌀ 1/2 in", "diameter"), page.Line("MBL 24 kN", "MBL 5400 lb", "load at which it breaks")),
	"pulley": page.Read("pulley", "What to read on the pulley", "Measure the diameter in the groove, where the rope lies. Without a printed load, the strength stays not known.",
		page.Line("WLL 500 kg", "WLL 1100 lb", "working load"), page.Line("⌀ 75 mm", "⌀ 3 in", "diameter of the wheel")),
	"eye": page.Read("eye", "What to read on the hook or eye", "Without a stamp, the strength stays not known. An eye from a box of screws often has none.",
		page.Line("WLL 340 kg", "WLL 750 lb", "working load"), page.Line("M12", "1/2-13", "thread, not a strength")),
	"beam": page.Read("timber", "What to read on the beam", "Measure width, depth and the free length between the supports. Timber without a stamp has a class that is not known.",
		page.Alike("C24", "class of the timber")),
	"drum": page.Read("drum", "What to measure on the drum", "Measure also the width between the flanges, and the flanges across.",
		page.Line("34.6 cm", "13.6 in", "once around, with a tape"), page.Alike("÷ 3.14", "gives the diameter")),
	"shaft": page.Read("bolt", "What to read on a pin or bolt", "Measure shaft and pin with a calliper. The yield strength of steel without a class stays not known.",
		page.Alike("8.8", "class of its steel")),
	"motor": page.Read("motor", "What to read on the motor", "Without a label, three readings describe the motor. A battery, a meter and a drill are enough for them.",
		page.Alike("24 V DC", "voltage"), page.Alike("3000 rpm", "speed without load"), page.Alike("4 A", "current all day")),
	"feed": page.Read("supply", "What to read on the supply", "Without a label, measure the voltage at its terminals before anything is connected.",
		page.Alike("24 V DC", "voltage"), page.Alike("6 A", "most current that it gives")),
	"lamps": page.Read("lamp", "What to read on a lamp", "Without a label, feed one lamp and measure its volts and amperes.",
		page.Alike("12 V DC", "voltage"), page.Alike("5 W", "power; ÷ volts = amperes")),
	"hold": page.Read("brake", "What to read on a brake", "Without a printed torque, the brake stays not known until a test with weights proves it.",
		page.Alike("24 V DC", "voltage that opens it"), page.Line("8 N·m", "6 lb·ft", "torque that it holds")),
	"weights": page.Read("scale", "What to weigh", "Weigh one of each kind. Count only weights that are fastened to the base.",
		page.Line("25 kg", "55 lb", "one bag or block"), page.Alike("× 20", "how many")),
}

// The gears depend on what they are. The diameter over the teeth of a wheel of standard teeth is its module multiplied by the
// number of teeth and two more (ISO 21771-1, tip diameter without profile shift).
var (
	boxReading = page.Read("gearbox", "What to read on the gearbox", "Without a label, turn the input by hand. Its turns for one turn of the output are the ratio.",
		page.Alike("i = 50", "ratio, 50 to 1"), page.Line("20 N·m", "15 lb·ft", "torque that it may give"))
	wheelReading = page.Read("wheel", "What to count and measure on wheels", "The ratio of two wheels is the teeth of the large one divided by the teeth of the small one.",
		page.Alike("48 teeth", "counted"), page.Line("⌀ 100 mm", "⌀ 3.94 in", "measured over the teeth"), page.Alike("÷ (48 + 2)", "gives the module"))
)

// bought are the stages that come with a label.
var bought = []lift.StageKind{lift.StageBox, lift.StageStrainWave, lift.StageCycloid, lift.StageWorm}

// readingOf is what is read on a part of a hoist.
func readingOf(id string, h lift.Hoist) (page.Reading, bool) {
	if id == "gears" {
		if len(h.Train.Stages) == 0 || slices.ContainsFunc(h.Train.Stages, func(s lift.Stage) bool { return slices.Contains(bought, s.Kind) }) {
			return boxReading, true
		}
		return wheelReading, true
	}
	kind, _, _ := strings.Cut(id, "-")
	if i := strings.TrimPrefix(id, "hold-"); i != id {
		if n := int(i[0] - '1'); n < len(h.Holds.Holds) && h.Holds.Holds[n].Kind != "" && h.Holds.Holds[n].Kind != lift.HoldSpringBrake {
			return page.Reading{}, false // nothing is printed on a ratchet
		}
	}
	r, ok := read[kind]
	return r, ok
}

// pictured gives a field its answers as pictures, where they have some; not where its value is none of them. The number of
// ropes and of pulleys may be any: the card of all inputs asks for it as a number.
func pictured(f *form.FieldView) {
	input := f.Path[strings.LastIndexByte(f.Path, '.')+1:]
	options := answers[input]
	if f.Kind == form.AsChoice {
		options = f.Options
	}
	var tiles []form.TileView
	drawn, chosen := false, false
	for _, o := range options {
		t := form.TileView{Value: o.Value, Word: o.Word, Picture: draw.Choice(input, o.Value), Chosen: o.Value == f.Value}
		drawn, chosen = drawn || t.Picture != "", chosen || t.Chosen
		if o.Value == "" {
			t.Picture = draw.Thing("unknown")
		}
		tiles = append(tiles, t)
	}
	if i := slices.IndexFunc(tiles, func(t form.TileView) bool { return t.Value == "" }); i >= 0 { // the last answer
		tiles = append(append(tiles[:i:i], tiles[i+1:]...), tiles[i])
	}
	if drawn && chosen {
		f.Tiles = tiles
	}
}

// answers are the usual answers to inputs that are numbers.
var answers = map[string][]form.OptionView{
	"rope_parts":   {{Value: "1", Word: "one"}, {Value: "2", Word: "two"}, {Value: "3", Word: "three"}, {Value: "4", Word: "four"}, {Value: "", Word: "not known"}},
	"lead_sheaves": {{Value: "1", Word: "one, at the top"}, {Value: "2", Word: "two, one at the foot"}, {Value: "0", Word: "none: drum above"}, {Value: "", Word: "not known"}},
}
