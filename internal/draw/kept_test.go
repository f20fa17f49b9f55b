package draw

import (
	"fmt"
	"maps"
	"math"
	"slices"
	"strings"
	"testing"

	"duskweight/internal/model/lift"
	"duskweight/internal/model/lift/parts"
	"duskweight/internal/model/lift/path"
	"duskweight/internal/model/reason"
	"duskweight/internal/model/unit"
	"duskweight/internal/say"
	"duskweight/internal/witness"
)

// DUSKWEIGHT_PICTURES=write writes the kept pictures anew.
const writePictures = "DUSKWEIGHT_PICTURES"

// The pictures in testdata/kept are what this package drew when somebody last looked at them. The test sees that a picture has
// changed, to the last digit; it cannot say whether it is right. That is for the eye, and for the tests beside it, which
// read numbers, places and laws back from a picture. Together the files run through nearly every line that draws, each as few
// times as it takes: what changes on purpose is then looked at in a few files.
//
// A file holds one picture or several small ones, a line for each element, and names the style sheets of the pages (pages.css
// beside it), so that a browser shows it as the pages do.
func TestKeptPictures(t *testing.T) {
	files := map[string]string{}
	for name, picture := range keptPictures(t) {
		files[name+".svg"] = picture
	}
	witness.Files(t, writePictures, "Look at both pictures in a browser before you keep the new one.", files)
}

// shown is a picture with the room that it gets in a file.
type shown struct {
	svg        string
	wide, high float64
}

// album puts pictures side by side into one file, in rows of so many units.
func album(wide float64, each ...shown) string {
	var b strings.Builder
	x, y, row := 0.0, 0.0, 0.0
	for _, one := range each {
		if x > 0 && x+one.wide > wide {
			x, y, row = 0, y+row, 0
		}
		place := fmt.Sprintf(`<svg x="%g" y="%g" width="%g" height="%g" `, x+4, y+4, one.wide-8, one.high-8)
		b.WriteString(strings.Replace(one.svg, "<svg ", place, 1))
		x, row = x+one.wide, max(row, one.high)
	}
	all := fmt.Sprintf(`<?xml-stylesheet href="pages.css"?><svg xmlns="http://www.w3.org/2000/svg" width="%g" height="%g"><g class="first current years front">%s</g></svg>`, wide, y+row, b.String())
	return strings.ReplaceAll(all, "><", ">\n<") + "\n"
}

// sized is a picture at a scale of its own paper.
func sized(t *testing.T, svg string, scale float64) shown {
	t.Helper()
	m := viewSize.FindStringSubmatch(svg)
	if m == nil {
		t.Fatalf("a picture without a size: %.80s", svg)
	}
	size := numbers(t, m[1:])
	return shown{svg, size[0]*scale + 8, size[1]*scale + 8}
}

// alone is a file with one picture.
func alone(t *testing.T, svg string) string {
	t.Helper()
	one := sized(t, svg, 2)
	return album(one.wide, one)
}

// together is a file with several, in rows.
func together(t *testing.T, wide, scale float64, svgs ...string) string {
	t.Helper()
	var each []shown
	for _, svg := range svgs {
		each = append(each, sized(t, svg, scale))
	}
	return album(wide, each...)
}

func keptPictures(t *testing.T) map[string]string {
	t.Helper()
	out := map[string]string{}
	keptHoists(t, out)
	keptPlaces(t, out)
	keptSmall(t, out)
	keptCharts(t, out)
	return out
}

// Hoists that share as little as may be: over a foot pulley and through a hole; with the drive aside and three ropes, in feet as
// on a tape; with a cut travel on a cantilever; with the drum over the mass; low and wide between joists; with nothing known; and one
// that is refused wherever it can be.
func someHoists() map[string]Plan {
	foot := hoist()
	foot.Reeving.DeadEnd = lift.DeadEndMass
	aside := hoist()
	aside.Travel, aside.Structure.HeadHeight = of(6096), of(9144)
	aside.Reeving = lift.Reeving{RopeParts: unit.Of(unit.Count(3)), LeadSheaves: unit.Of(unit.Count(1)), DeadEnd: lift.DeadEndBeam, Sheaves: []lift.Sheave{{Diameter: of(152.4)}, {Diameter: of(127)}, {Diameter: of(101.6)}}}
	aside.Structure.LeadAngle = unit.Of(unit.Angle(0.35))
	aside.Structure.Beam = lift.Beam{Depth: of(203.2), Span: of(3048), From: of(1219.2)}
	aside.Site.LoadWidth, aside.Site.LoadHeight = of(914.4), of(609.6)
	cut := hoist()
	cut.Mass = []lift.Piece{{Mass: unit.Of(unit.Mass(400))}, {Mass: unit.Of(unit.Mass(350))}}
	cut.Travel, cut.Structure.HeadHeight = of(60000), of(50000)
	cut.Reeving = lift.Reeving{RopeParts: unit.Of(unit.Count(2)), LeadSheaves: unit.Of(unit.Count(3)), Sheaves: []lift.Sheave{{Diameter: of(140), OnBase: unit.Yes}, {OnBase: unit.No}, {Diameter: of(200)}}}
	cut.Structure.Beam = lift.Beam{Depth: of(200), Span: of(1200), Support: lift.BeamCantilever}
	over := hoist()
	over.Reeving = lift.Reeving{RopeParts: unit.Of(unit.Count(1)), LeadSheaves: unit.Of(unit.Count(0))}
	over.Structure.RestsOn, over.Structure.Posts = lift.RestsOnRoofTruss, nil
	over.Structure.Beam.Support = lift.BeamCantilever
	low := hoist()
	low.Travel, low.Structure.HeadHeight, low.Site.LoadWidth, low.Site.LoadHeight = of(500), of(2400), of(900), of(350)
	low.Reeving = lift.Reeving{RopeParts: unit.Of(unit.Count(2)), LeadSheaves: unit.Of(unit.Count(1)), DeadEnd: lift.DeadEndMass, Sheaves: []lift.Sheave{{Diameter: of(200)}, {Diameter: of(200)}}}
	low.Structure.RestsOn, low.Structure.Posts, low.Structure.LeadAngle = lift.RestsOnJoists, nil, unit.Of(unit.Angle(0.2))
	low.Structure.Beam = lift.Beam{Width: of(120), Span: of(2000), From: of(3000)}
	low.Base.PullOffset, low.Base.PullHeight = of(250), of(450)
	all := map[string]Plan{
		"low":     {Hoist: low, KeepOut: unit.Of(unit.Length(1.2))},
		"foot":    {Hoist: foot, KeepOut: unit.Of(unit.Length(2))},
		"aside":   {Hoist: aside, KeepOut: unit.Of(unit.Length(4.572)), Units: unit.Imperial, Tape: true},
		"cut":     {Hoist: cut, KeepOut: unit.Of(unit.Length(90))},
		"over":    {Hoist: over},
		"nothing": {Hoist: lift.Hoist{}},
	}
	bad := all["aside"]
	for _, id := range []string{"rope", "hanger", "beam", "post", "container", "redirect_sheave", "base_uplift", "shaft"} {
		bad.Checks = append(bad.Checks, path.Check{ID: id, Word: path.GivesWay})
	}
	for _, r := range [][2]string{
		{"geometry_height", ""}, {"geometry_posts", ""}, {"geometry_rope", ""}, {"geometry_width", ""}, {"holds", ""}, {"motor_hot", ""}, {"stops", ""},
		{"contradiction", "structure.frame_height_m"}, {"contradiction", "mass"}, {"keep_out", ""}, {"overspeed", "site.closed"}, {"free_drum", "holds"},
	} {
		bad.Because = append(bad.Because, reason.Reason{ID: r[0], Path: r[1], Word: reason.No, Say: say.That("%s is refused.", strings.TrimSpace(r[0]+" "+r[1]))})
	}
	all["refused"] = bad
	return all
}

func keptHoists(t *testing.T, out map[string]string) {
	t.Helper()
	all := someHoists()
	for name, p := range all {
		out["hoist-"+name] = alone(t, drawn(t, func(b *strings.Builder) error { return SVG(Make(p), b) }))
	}
	wall := hoist()
	wall.Base.Where = lift.BaseOnWall
	wall.Reeving.Sheaves = wall.Reeving.Sheaves[1:]
	wall.Reeving.LeadSheaves = unit.Of(unit.Count(1))
	var trips []string
	for _, h := range []Plan{all["aside"], {Hoist: wall}} {
		trips = append(trips, drawn(t, func(b *strings.Builder) error { return Trip{Make(h)}.Draw(b) }))
	}
	out["trips"] = together(t, 1000, 1, trips...)
	var moments []string
	for i, share := range []float64{0, 0.5, 1} {
		m := Moment{Scene: Make(all[[]string{"foot", "aside", "over"}[i]]), Title: "A moment", Share: share, Going: 1 - i, Sun: i == 0, Lamps: i == 2}
		moments = append(moments, drawn(t, func(b *strings.Builder) error { return m.Draw(b) }))
	}
	out["moments"] = together(t, 1000, 2, moments...)

	words := []path.Word{path.Holds, path.Tight, path.GivesWay, path.NotKnown, Missing}
	var touched []string
	for _, name := range []string{"foot"} {
		var spots []Spot
		for i, p := range parts.All(all[name].Hoist) {
			if p.Place == parts.Side || p.Place == parts.Around {
				spots = append(spots, Spot{ID: p.ID, Name: p.Name, Subs: []string{strings.Repeat("far too long ", 3), "1.9 of 2.0"}, Href: "?part=" + p.ID, Say: "opens its card", Word: words[i%5], Here: i == 3, Around: p.Place == parts.Around})
			}
		}
		touched = append(touched, drawn(t, func(b *strings.Builder) error { return Touch(Make(all[name]), spots, b) }))
	}
	out["touch"] = together(t, 1400, 1.5, touched...)
	keptPapers(t, out, all)
}

func keptPapers(t *testing.T, out map[string]string, all map[string]Plan) {
	t.Helper()
	notes := []Note{{Part: "beam", Head: "Beam 100 × 160\u00a0mm", Text: "timber C24"}, {Part: "posts", Head: "2 posts 100 × 100\u00a0mm"}, {Part: "mass", Head: "240\u00a0kg", Text: "sand in bags, twelve of 20 kg each"},
		{Part: "stop-1", Head: "2 upper stops", Text: "room above 250\u00a0mm"}, {Part: "rope", Head: "Rope polyester 8\u00a0mm", Text: "reel 1\u00a0200\u00a0kg, 16\u00a0m", Bad: true}, {Part: "weights", Head: "Base 500\u00a0kg"}, {Part: "no such part", Head: "Somewhere"}}
	p := Paper{Scene: Make(all["foot"]), Wide: 188, High: 133, Notes: notes, Numbers: nil,
		Drive:  DriveBox{Stages: 2, Brake: true, Ratchet: true, Lines: []Line{{"Motor 24\u00a0V, 250\u00a0W", true}, {"Gears 625 to 1, of two stages", false}}},
		Switch: SwitchBox{Fused: true, Shunt: true, Day: []string{"Panel", "24\u00a0V"}, Night: []string{"Lamps", "11.7\u00a0V"}, Lines: []Line{{"Fuse 15\u00a0A", false}}},
		Foot:   []Line{{"Keep-out\u00a02\u00a0m", true}}}
	out["paper-foot"] = alone(t, drawn(t, func(b *strings.Builder) error { return p.Draw(b) }))
	many := append(notes[:6:6], Note{Part: "board", Head: "Board"}, Note{Part: "slack", Head: "Slack switch"})
	for i := range 12 {
		many = append(many, Note{Part: fmt.Sprintf("pulley-%d", i+1), Head: fmt.Sprintf("Pulley %d, 120\u00a0mm", i+1), Text: "rated 500\u00a0kg"})
	}
	twelve := all["foot"]
	twelve.Hoist.Reeving = lift.Reeving{RopeParts: unit.Of(unit.Count(1)), LeadSheaves: unit.Of(unit.Count(12))}
	p = Paper{Scene: Make(twelve), Wide: 194, High: 124, Notes: many, Foot: []Line{{"Nobody within 2\u00a0m of the middle of the mass while it is up", false}}}
	out["paper-many"] = alone(t, drawn(t, func(b *strings.Builder) error { return p.Draw(b) }))
	p = Paper{Scene: Make(all["cut"]), Wide: 194, High: 124, Notes: many[:10], Drive: DriveBox{Stages: 5}, Switch: SwitchBox{Day: []string{"Supply"}, Night: []string{"Lamps, a radio and a small refrigerator"}}}
	out["paper-cut"] = alone(t, drawn(t, func(b *strings.Builder) error { return p.Draw(b) }))
	p = Paper{Scene: Make(all["refused"]), Wide: 194, High: 124, Notes: notes[:3], Numbers: []string{"3", "1"}}
	out["paper-refused"] = alone(t, drawn(t, func(b *strings.Builder) error { return p.Draw(b) }))
}

// The battery, the drive, the circuit and the tanks.
func keptPlaces(t *testing.T, out map[string]string) {
	t.Helper()
	words := []path.Word{path.Holds, path.Tight, path.GivesWay, path.NotKnown, Missing}
	var spots []Spot
	for i, id := range []string{"panels", "panel_cable", "controller", "fuse", "cable", "battery", "board", "place", "inverter", "loads"} {
		spots = append(spots, Spot{ID: id, Name: strings.ReplaceAll(id, "_", " "), Subs: []string{"a word of it"}, Href: "?part=" + id, Say: "opens its card", Word: words[i%5], Here: id == "fuse"})
	}
	full := BatterySketch{Titled: "From the panels to the lamps", Blocks: 4, Panels: 2, Board: true, Inverter: true, Lamps: true, Volts: "12.8 V", Line: "the 12.8 V line", Flow: "sun 7.8 A · night 6.9 A", Row: "2 in a row", Near: "10 cm", Spots: spots}
	bare := BatterySketch{Titled: "Nothing yet"}
	high := BatterySketch{Titled: "One panel", Blocks: 12, Panels: 1, Over60: true, Flow: strings.Repeat("no room for this ", 3)}
	out["battery"] = together(t, 1000, 1, drawn(t, func(b *strings.Builder) error { return full.Draw(b) }), drawn(t, func(b *strings.Builder) error { return bare.Draw(b) }), drawn(t, func(b *strings.Builder) error { return high.Draw(b) }))

	h := hoist()
	for range 3 {
		h.Holds.Holds = append(h.Holds.Holds, lift.Hold{Kind: lift.HoldOverspeedCatch})
	}
	places := map[parts.Place][]Spot{}
	for i, p := range parts.All(h) {
		places[p.Place] = append(places[p.Place], Spot{ID: p.ID, Name: p.Name, Subs: []string{"a word"}, Href: "?part=" + p.ID, Say: "opens its card", Word: words[i%5]})
	}
	out["drive"] = together(t, 1240, 1.5,
		drawn(t, func(b *strings.Builder) error {
			return DriveSketch{Stages: 2, Title: "The drive, larger: 625 to 1", Spots: places[parts.Drive]}.Draw(b)
		}),
		drawn(t, func(b *strings.Builder) error {
			return CircuitSketch{Foot: "Up 24\u00a0V 2.2 A, 2.9 min. Down 11.7\u00a0V 0.71 A, 5.2 min.", Spots: places[parts.Circuit]}.Draw(b)
		}),
		drawn(t, func(b *strings.Builder) error { return DriveSketch{}.Draw(b) }),
		drawn(t, func(b *strings.Builder) error { return Progress(7, 2, 3, 14, "7 of 14 parts are settled", b) }))

	var tanks []string
	for _, w := range []Water{
		{Volume: 10, Head: 12, Surface: unit.Of(unit.Area(5)), Inner: unit.Of(unit.Length(0.05)), VolumeText: "10 m³", HeadText: "12 m"},
		{Volume: 10, Head: 6, Surface: unit.Of(unit.Area(5)), Inner: unit.Of(unit.Length(0.1)), Tower: true, VolumeText: "10 m³", HeadText: "6 m"},
		{Volume: 1, Head: 60, Tower: true, VolumeText: "1 m³", HeadText: "60 m"},
	} {
		tanks = append(tanks, drawn(t, func(b *strings.Builder) error { return w.Draw(b) }))
	}
	out["water"] = together(t, 1400, 1.2, tanks...)
	out["house"] = alone(t, House())
}

func keptSmall(t *testing.T, out map[string]string) {
	t.Helper()
	var small []string
	for _, k := range []SparePart{"motors", "stages", "drums", "ropes", "pulleys", "panels", "batteries", ""} {
		small = append(small, drawn(t, func(b *strings.Builder) error { return k.Draw(b) }))
	}
	for _, c := range []ChainSketch{{}, {Stages: 1, Motor: 0.4, Drum: 1}, {Stages: 3, Motor: 1, Drum: 0.5}, {Stages: 7, Motor: 2, Drum: 2}, {Stages: 1, Worm: true, Motor: 0.7, Drum: 0.2}} {
		small = append(small, drawn(t, func(b *strings.Builder) error { return c.Draw(b) }))
	}
	for _, share := range []float64{0, 0.25, 1, 1.25} {
		small = append(small, Hung(share, share < 1))
	}
	for _, ratio := range []float64{1, 1.07, 0.85, 1.5, 0.4} {
		small = append(small, Beside(ratio))
	}
	small = append(small, Spell(3, 7), Spell(20, 7), Spell(0, 0))
	for _, s := range []Span{{}, {Low: 3, Usual: 4, High: 6, Top: 10, Limit: 8, Known: true}, {Low: 5, Usual: 11, High: 14, Top: 10, Bad: true, Known: true}, {Low: 5, Usual: 5, High: 5, Top: 10, Known: true}} {
		small = append(small, s.Draw())
	}
	var day, nothing Sum
	for h := range 24 {
		day.Always[h], day.Rest[h], day.Dark[h] = 5, float64(h%6), h < 7 || h > 17
	}
	day.Rest[19] = 90
	small = append(small, day.Draw(), nothing.Draw())
	out["small"] = together(t, 1000, 1.4, small...)
	var stamps []string
	for i, thing := range slices.Sorted(maps.Keys(thingLines)) {
		s := Stamp{Thing: thing, Title: "What to read", Lines: []StampLine{{"WLL 500 kg", "working load"}, {"⌀ 75 mm", "diameter of the wheel"}, {"24 V DC", "voltage"}, {"6 A", "most current"}}[:1+i%4]}
		stamps = append(stamps, drawn(t, func(b *strings.Builder) error { return s.Draw(b) }))
	}
	for _, input := range []string{"ending", "rope_parts", "lead_sheaves"} {
		for _, answer := range []string{"splice", "figure_eight", "bowline", "other_knot", "swaged", "clips", "thimble_clamp", "0", "1", "2", "3", "4"} {
			if one := Choice(input, answer); one != "" {
				stamps = append(stamps, strings.Replace(one, "<svg ", `<svg width="40" height="40" `, 1))
			}
		}
	}
	out["stamps"] = together(t, 1200, 1, stamps...)

	var icons []shown
	for _, key := range []string{"lamp", "phone", "computer", "router", "radio", "fan", "fridge", "freezer", "pump", "kettle", "television", "microwave", "washer", "drill", "saw", "own", "unheard of"} {
		icons = append(icons, shown{Appliance(key), 100, 100})
	}
	for _, w := range []path.Word{path.Holds, path.Tight, path.GivesWay, path.NotKnown, Missing} {
		icons = append(icons, shown{Sign(w), 60, 60})
	}
	out["icons"] = album(900, icons...)

	var bars []string
	for _, b := range []Bar{
		{Is: 3600, Top: 7200, Piece: 360, Look: "mass"}, {Is: 9000, Top: 7200, Look: "night"}, {Is: 5000, Top: 7200, Look: "sun"}, {Is: 1, Top: 7200, Look: "water"}, {Top: 7200}, {Is: 7000, Top: 7200, Piece: 10, Look: "cells"},
	} {
		b.Title = "A bar"
		bars = append(bars, drawn(t, func(w *strings.Builder) error { return b.Draw(w) }))
	}
	for _, v := range []Curve{
		{Title: "Height", X: []float64{0, 60, 120, 180}, Y: []float64{0, 1.2, 2.6, 3.8}, FromZ: true, Look: "mass"}, {Title: "Power", X: []float64{0, 60, 120, 180}, Y: []float64{52, 48, 49, 50}, Look: "sun"},
		{Title: "Nothing", Look: "night"}, {Title: "Level", X: []float64{0, 60}, Y: []float64{7, 7}, Look: "night"},
	} {
		bars = append(bars, drawn(t, func(w *strings.Builder) error { return v.Draw(w) }))
	}
	flows := Scale{Unit: "A", Title: "Currents", Flows: []ScaleMark{{Say: "7.8 A from the sun", Value: 7.8, Look: "sun"}, {Say: "39 A at night, all at once, for a moment", Value: 39, Look: "night", Pale: true}},
		Ends: []ScaleMark{{Say: "fuse 15\u00a0A", Value: 15}, {Say: "cable 40 A", Value: 40}, {Say: "no room before its line and none behind it", Value: 41}}}
	bars = append(bars, drawn(t, func(w *strings.Builder) error { return flows.Draw(w) }))
	out["bars"] = together(t, 850, 1, bars...)
}

func keptCharts(t *testing.T, out map[string]string) {
	t.Helper()
	draw := func(do func(*strings.Builder) error) string { return drawn(t, do) }
	water, bare := aDay(), aDay()
	water.Look, bare.Stored = "water", nil
	managed, plain := someManaged(), someManaged()
	plain.Backup = nil
	worst, short := aWorstWeek(), aWorstWeek()
	short.Days, short.Sun, short.Load, short.Missing, short.Stored = short.Days[:1], bell(95), bell(40), nil, nil
	out["days"] = together(t, 1560, 1, draw(func(b *strings.Builder) error { return Day(water, b) }), draw(func(b *strings.Builder) error { return Day(bare, b) }),
		draw(func(b *strings.Builder) error { return managed.Draw(b) }), draw(func(b *strings.Builder) error { return plain.Draw(b) }))
	feet := Week{Global: bell(640), Diffuse: bell(210), Air: []float64{-7, -3, 1, 4, 2}, Units: unit.Imperial}
	half := States{Name: "Mass", Look: "mass"}
	for d := range 120 {
		half.Most = append(half.Most, 0.5+float64(d%3)/4)
		half.Least = append(half.Least, 0.25)
	}
	none := Week{Global: []float64{0, 600, 900, 0}}
	out["weeks"] = together(t, 1560, 1, draw(func(b *strings.Builder) error { return worst.Draw(b) }), draw(func(b *strings.Builder) error { return short.Draw(b) }), draw(func(b *strings.Builder) error { return feet.Draw(b) }),
		draw(func(b *strings.Builder) error { return none.Draw(b) }), draw(func(b *strings.Builder) error { return someStates().Draw(b) }), draw(func(b *strings.Builder) error { return half.Draw(b) }),
		draw(func(b *strings.Builder) error { return States{Name: "None"}.Draw(b) }), draw(func(b *strings.Builder) error { return SunMonths(flatSun, panelSun, b) }))

	burns := someBurns()
	for i := range 11 {
		one := Burn{Name: fmt.Sprintf("A device with a rather long name, number %d", i+1)}
		one.Hours[(i*5)%24], one.Hours[(i*7)%24] = float64(1+i)*3.21, 0.5
		burns.Each = append(burns.Each, one)
	}
	burns.Each[3].Hours = [24]float64{}
	flow := Flow{Name: "Where it went", Whole: FlowPart{Name: "sun on the panels", Energy: 36e6}, Parts: []FlowPart{{"lamps", 18e6, ToLight}, {"wires and boxes", 8.99e6, ToHeat}, {"gears", 1e4, ToHeat}, {"nobody took it", 9e6, ToNobody}}}
	heavy, feetHigh := someMass(), someMass()
	heavy.Mass, heavy.Height, heavy.Lines = unit.Of(unit.Mass(90000)), unit.Of(unit.Length(0.4)), append(heavy.Lines, Energies{3600 * 80, "80 Wh", false}, Energies{0, "nothing", false}, Energies{1e15, "too much", false})
	feetHigh.Units = unit.Imperial
	out["energies"] = together(t, 1240, 1, draw(func(b *strings.Builder) error { return someBurns().Draw(b) }), draw(func(b *strings.Builder) error { return burns.Draw(b) }), draw(func(b *strings.Builder) error { return flow.Draw(b) }),
		draw(func(b *strings.Builder) error { return Flow{Name: "Nothing"}.Draw(b) }), draw(func(b *strings.Builder) error { return MassHeight(heavy, b) }), draw(func(b *strings.Builder) error { return MassHeight(feetHigh, b) }))

	nights := make([]int8, 350)
	for i := range nights {
		nights[i] = []int8{Served, Served, Served, Dark, PartlyServed, Served, NotCounted}[(i/3+i*i%5)%7]
	}
	front, cheap := someFront(), someFront()
	cheap.Plans[3].Best, cheap.Plans[2].Best, cheap.Today.Nights, cheap.Needed = true, false, 355, 500
	years := someYears()
	years.Each[0].Name = "A battery with a name that is far too long for the room that is left beside its figures in the wide picture of all the years"
	for i := range 240 {
		years.Each[1].Made = append(years.Each[1].Made, 310+float64(i%7))
	}
	slim := YearNights{Low: 300, High: 340, Each: years.Each[:1]}
	years.Each = append(years.Each, NightsOfYears{Name: "Little", Say: "Said.", Drawn: true, Made: []float64{301, 302}, Real: []float64{301, 302}, RealNames: []string{"a", "b"}, Bad: 301, Usual: 301.5, Good: 302})
	out["nights"] = together(t, 1020, 1, draw(func(b *strings.Builder) error { return Nights(nights, b) }), front.Draw(true), slim.Draw(true), front.Draw(false), cheap.Draw(false), years.Draw(false))

	south, sky := someSky(), someMonth()
	south.North, south.Points = true, nil
	south.Days = append(south.Days, SkyDay{"December", []SkyPoint{{-1, 0}, {-0.5, math.Pi / 6}, {0, math.Pi / 5}, {0.5, math.Pi / 6}, {1, 0}}}, SkyDay{Name: "never"})
	sky.Sky = SkyScale{2, 1.2}
	open := sky
	open.Outline, open.Low, open.High = nil, 0, 0
	dark := MonthSky{Known: true, Outline: sky.Outline, Top: 6, Night: 24, Value: "0 kWh", Sky: wholeSky}
	out["sky"] = together(t, 1020, 2.2, someSky().Draw(), south.Draw(), sky.Draw(), open.Draw(), dark.Draw(), MonthSky{}.Draw(), draw(func(b *strings.Builder) error { return someCubes().Draw(b) }))
}
