package draw

import (
	"fmt"
	"math/rand/v2"
	"strings"
	"sync"
	"testing"

	"duskweight/internal/model/lift/parts"
	"duskweight/internal/model/lift/path"
	"duskweight/internal/model/unit"
)

// sketches are the pictures that are no charts, in many of their states.
func sketches(t *testing.T) map[string]string {
	t.Helper()
	sketched.Do(func() { sketchbook = sketch(t) })
	return sketchbook
}

// They are drawn once, and only read.
var (
	sketched   sync.Once
	sketchbook map[string]string
)

func sketch(t *testing.T) map[string]string {
	t.Helper()
	out := map[string]string{"house": House()}
	for stages := range 7 {
		for _, worm := range []bool{false, true} {
			for _, share := range []float64{0, 0.5, 1} {
				out[fmt.Sprintf("chain %d %v %g", stages, worm, share)] = drawn(t, func(b *strings.Builder) error {
					return ChainSketch{Stages: stages, Worm: worm, Motor: share, Drum: share}.Draw(b)
				})
			}
		}
	}
	for k := range spareParts {
		out["shelf "+string(k)] = drawn(t, func(b *strings.Builder) error { return k.Draw(b) })
	}
	for key := range applianceLines {
		out["appliance "+key] = Appliance(key)
	}
	words := []path.Word{path.Holds, path.Tight, path.GivesWay, path.NotKnown}
	for _, w := range words {
		out["sign "+string(w)] = Sign(w)
	}
	r := rand.New(rand.NewPCG(3, 5))
	h := hoist()
	scene := Make(Plan{Hoist: h})
	places := map[parts.Place][]Spot{}
	for _, p := range parts.All(h) {
		places[p.Place] = append(places[p.Place], Spot{ID: p.ID, Name: p.Name, Subs: []string{"a word"}, Href: "#", Around: p.Place == parts.Around, Word: words[r.IntN(4)]})
	}
	out["circuit"] = drawn(t, func(b *strings.Builder) error {
		return CircuitSketch{Foot: "a line", Spots: places[parts.Circuit]}.Draw(b)
	})
	for stages := range 6 {
		out[fmt.Sprintf("drive %d", stages)] = drawn(t, func(b *strings.Builder) error {
			return DriveSketch{Stages: stages, Title: "x", Spots: places[parts.Drive]}.Draw(b)
		})
	}
	var spots []Spot
	for id := range batterySpots {
		spots = append(spots, Spot{ID: id, Name: id, Href: "#", Word: path.Holds})
	}
	for n := range 32 {
		is := func(bit int) bool { return n>>bit&1 == 1 }
		s := BatterySketch{Blocks: n % 10, Panels: n % 3, Board: is(0), Inverter: is(1), Lamps: is(2), Over60: is(3), Volts: "12.8 V", Near: "10 cm", Spots: spots}
		out[fmt.Sprintf("battery %d", n)] = drawn(t, func(b *strings.Builder) error { return s.Draw(b) })
	}
	for n := range 8 {
		is := func(bit int) bool { return n>>bit&1 == 1 }
		p := Paper{Scene: scene, Wide: 188, High: 133, Drive: DriveBox{Stages: 1 + n%5, Brake: is(0), Ratchet: is(1), Lines: []Line{{Text: "motor"}, {Text: "gears"}}},
			Switch: SwitchBox{Fused: is(0), Shunt: is(1), Day: []string{"Panel", "24 V"}, Night: []string{"Lamps", "11.7 V"}, Lines: []Line{{Text: "fuse"}}},
			Notes:  []Note{{Part: "mass", Head: "Mass 240 kg"}, {Part: "rope", Head: "Rope 12 mm", Text: "reel 2 000 kg", Bad: is(2)}, {Part: "beam", Head: "Beam"}}}
		out[fmt.Sprintf("paper %d", n)] = drawn(t, func(b *strings.Builder) error { return p.Draw(b) })
	}
	for _, share := range []float64{0.25, 0.5, 1, 1.25} {
		out[fmt.Sprintf("hung %g", share)] = Hung(share, share < 1)
	}
	for _, nights := range []int{1, 5, 14, 40} {
		out[fmt.Sprintf("spell %d", nights)] = Spell(nights, 7)
	}
	for lead := range 4 {
		for of := 1; of <= 3; of++ {
			h := hoist()
			h.Reeving.LeadSheaves, h.Reeving.RopeParts = unit.Of(unit.Count(lead)), unit.Of(unit.Count(of))
			name, s := fmt.Sprintf("%d pulleys, %d ropes", lead, of), Make(Plan{Hoist: h})
			out["trip "+name] = drawn(t, func(b *strings.Builder) error { return Trip{s}.Draw(b) })
			out["hoist "+name] = drawn(t, func(b *strings.Builder) error { return SVG(s, b) })
			out["touch "+name] = drawn(t, func(b *strings.Builder) error { return Touch(s, places[parts.Side], b) })
		}
	}
	for _, tower := range []bool{false, true} {
		for _, head := range []float64{3, 12, 60} {
			w := Water{Volume: 10, Head: unit.Length(head), Inner: unit.Of(unit.Length(0.05)), Tower: tower, VolumeText: "10 m³", HeadText: "12 m"}
			out[fmt.Sprintf("water %v %g", tower, head)] = drawn(t, func(b *strings.Builder) error { return w.Draw(b) })
		}
	}
	return out
}

// free are the ends of strokes that stand on nothing, and the shapes that touch nothing ("alone"), counted by hand in each
// sort of picture: least and most of them over its states. What is not listed touches something, at both ends.
var free = map[string][]struct {
	what        string
	least, most int
	why         string
}{
	"battery": {
		{"alone circle sunf", 1, 1, "the sun"}, {"alone path sunl", 7, 7, "its rays, the eighth touches the beam"},
		{"alone path 1.2", 0, 2, "dashed: panels that are not there"}, {"line 0.7", 14, 14, "the ground, hatched"},
		{"line 1.6", 2, 3, "the ground's end, the line's, and between two panels that of their wire"}, {"path 1.6", 0, 1, "the wire back"},
		{"line lead", 0, 2, "to what is not there"}, {"path dim", 8, 8, "two lines of a measure and its four barbs"},
	},
	"circuit": {{"alone circle nightl", 3, 3, "lamps, a gap between each"}, {"line lead", 1, 1, "to the lamps"}, {"path 1.2", 2, 2, "before the lamps, and in the battery's side of the switch"}},
	"drive":   {{"alone rect steel", 1, 1, "the spring over its brake"}, {"line 2", 1, 1, "the shaft's end"}, {"line 3", 2, 2, "the key of the shaft"}, {"line lead", 1, 1, "to the key"}},
	"chain":   {{"path shaft", 1, 3, "the shaft's end and those of a worm"}, {"line thin", 0, 10, "turns of the worm"}},
	"house":   {{"alone line 2.4", 5, 5, "rays of the sun"}, {"alone path 0.8", 3, 3, "panels over the roof"}, {"line 2", 1, 1, "the floor of the drive"}, {"path 2.4", 2, 2, "the eaves"}},
	"hung":    {{"line 0.6", 5, 5, "the ground, hatched"}, {"line 1.4", 2, 3, "the ground's ends, and the rope's upper one where the mass is low"}},
	"shelf":   {{"line shaft", 0, 4, "ends of shafts, a plus"}, {"path shaft", 0, 2, "feet, a hook"}, {"line rope", 0, 2, "a rope over a pulley"}},
	"trip":    {{"alone line 1", 2, 2, "the stops"}, {"line 1.2", 2, 3, "the cross on the drum, longer than a small drum is wide"}, {"line 1.6", 2, 2, "the ground's ends"}},
	"hoist":   {{"line 1.6", 1, 1, "the ground's end"}, {"line 2.4", 2, 3, "the cross of a mark"}},
	"touch":   {{"line 1.6", 1, 1, "the ground's end"}},
	"paper":   {{"line 1", 4, 4, ""}, {"line 1.6", 2, 2, "the ground's ends"}, {"line 2.4", 2, 2, "the cross of a mark"}},
	"water":   {{"line 0.8", 1, 2, "the ground's ends"}, {"path 1.6", 4, 4, "the rims of the tanks"}, {"limbs", 0, 2, "hands"}},
}

// Nothing in a picture hangs in the air: each shape touches another, and each stroke stands on something at both its ends: a
// wire at what it joins, a rope at its wheel, a post on the ground. Those that do not are counted. And all of it lies on the
// paper.
func TestNothingHangsInTheAir(t *testing.T) {
	for name, svg := range sketches(t) {
		p := flatten(t, svg)
		sort := strings.Fields(name)[0]
		counted := sort != "appliance" && sort != "sign" && sort != "spell"
		small := (p.paper.x1 - p.paper.x0) * (p.paper.y1 - p.paper.y0) / 10
		got := map[string]int{}
		for i, s := range p.shapes {
			if b := s.bounds(); b.x0 < p.paper.x0-1.5 || b.y0 < p.paper.y0-1.5 || b.x1 > p.paper.x1+1.5 || b.y1 > p.paper.y1+1.5 {
				t.Errorf("%s: %v lies outside of the paper %v: %v", name, b, p.paper, s.look)
			}
			if counted && s.look["class"] != "hit" {
				alone, ends := p.free(i, small)
				what := s.of + " " + s.look["class"] + s.look["stroke-width"]
				if sort == "water" && s.of == "path" && len(s.pts) == 3 {
					what = "limbs" // as wide as the person is tall
				}
				if alone {
					got["alone "+what]++
				} else if w := s.look["stroke-width"]; (w > "0.6" || w == "" || sort == "hung") && s.look["stroke-dasharray"] == "" && !strings.Contains(s.look["d"], "c") && s.look["transform"] == "" {
					got[what] += ends
				}
			}
		}
		for _, f := range free[sort] {
			if n := got[f.what]; n < f.least || n > f.most {
				t.Errorf("%s: %d × %s is free, not %d to %d: %s", name, n, f.what, f.least, f.most, f.why)
			}
			delete(got, f.what)
		}
		for what, n := range got {
			if n > 0 {
				t.Errorf("%s: %d × %s hangs in the air", name, n, what)
			}
		}
	}
}

// free reports whether a shape touches no other, and how many of its ends stand on nothing.
func (p picture) free(i int, small float64) (alone bool, ends int) {
	const near = 2.1 // a line of a part begins two units inside of its box
	s := p.shapes[i]
	alone = true
	on := [2]bool{s.shut, s.shut}
	for k, o := range p.shapes {
		if k == i {
			continue
		}
		alone = alone && !s.meets(o, near)
		b := o.bounds()
		for e, at := range []Point{s.pts[0], s.pts[len(s.pts)-1]} {
			on[e] = on[e] || o.from(at) <= near || (b.x1-b.x0)*(b.y1-b.y0) < small && o.holds(at)
		}
	}
	for _, is := range on {
		if !is {
			ends++
		}
	}
	return alone, ends
}
