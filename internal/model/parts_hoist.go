package model

import (
	"fmt"
	"math"
	"strings"

	"duskweight/internal/model/cost"
	"duskweight/internal/model/lift"
	"duskweight/internal/model/lift/path"
	"duskweight/internal/model/unit"
	"duskweight/internal/say"
)

// hoistNeeds are the parts of a lifted mass: what hangs, what carries it, what drives it, what keeps people safe. at is
// its place in the variant.
func hoistNeeds(r HoistResult, at string) []Need {
	h := r.Design
	labels := path.Labels(h, r.Drive)
	out := []Need{massNeed(r)}
	for _, l := range labels {
		out = append(out, labelNeed(l, h, r.Drive, at)...)
	}
	out = append(out, madeNeeds(h)...)
	out = append(out, driveNeeds(h, r.Drive)...)
	return append(out, safetyNeeds(r)...)
}

func massNeed(r HoistResult) Need {
	n := Need{As: cost.AsMass, Name: "Mass", Of: cost.OfStore, Count: 1}
	var names []string
	for _, p := range r.Design.Mass {
		if p.Name != "" {
			names = append(names, p.Name)
		}
	}
	if len(names) > 0 {
		n.Name += ": " + strings.Join(names, ", ")
	}
	n.Want = []Want{{Least: ratio(r.Drive.Mass), Unit: unit.Kilograms, Where: say.Words("on the scale, all together")}}
	return n
}

// labelWords are the words for each label that the checks ask for.
var labelWords = map[string]struct {
	as    cost.As
	of    cost.PartOf
	where string
}{
	"container":       {cost.AsContainer, cost.OfStore, "on its label"},
	"rope":            {cost.AsRope, cost.OfStore, "breaking load, printed on the reel"},
	"head_sheave":     {cost.AsPulley, cost.OfStore, "on its label, as the load on its hook"},
	"redirect_sheave": {cost.AsPulley, cost.OfStore, "on its label, as the load on its hook"},
	"fixing":          {cost.AsHanger, cost.OfStore, "working load of the fastening"},
	"hanger":          {cost.AsHanger, cost.OfStore, "working load, stamped on it"},
	"base_uplift":     {cost.AsBaseWeight, cost.OfStore, "in all, fastened to the base"},
	"coupling":        {cost.AsCoupling, cost.OfStore, "rated torque"},
	"gear_tooth":      {cost.AsGear, cost.OfStore, "rated torque at its output"},
	"holds":           {cost.AsHold, cost.OfSafety, "holding torque at the drum"},
}

func labelNeed(l path.Label, h lift.Hoist, d lift.Drive, at string) []Need {
	w := labelWords[l.ID]
	n := Need{As: w.as, At: Join(at, l.Path), Name: thing(l.Part), Of: w.of, Count: 1}
	want := Want{Least: l.Least, Unit: l.Unit, Where: say.Words(w.where), None: l.None, Open: l.Open, Stated: l.Stated}
	for _, m := range l.Missing {
		want.Missing = append(want.Missing, Join(at, m))
	}
	switch l.ID {
	case "rope":
		n.Sizes = ropeSizes(h, d)
	case "head_sheave", "redirect_sheave":
		n.Sizes = pulleySizes(l.Path, h)
		n.Look = say.Words("with a keeper, so that the rope cannot jump off")
	case "hanger":
		n.Name = map[lift.HangerKind]string{lift.HangerShoulderEyebolt: "Eye bolt with a shoulder", lift.HangerPlainEyebolt: "Eye bolt", lift.HangerShackle: "Shackle", lift.HangerHook: "Hook with a latch", lift.HangerRatedSling: "Rated sling"}[h.Structure.HangerKind]
		n.Name = orElse(n.Name, "Hook, eye or shackle for the top pulley")
		if l.None {
			want.Where = say.Words("it may not be pulled this far off its own axis")
		}
	case "base_uplift":
		n.Name = "Weights on the base"
	case "holds":
		if l.Unit == unit.Newtons {
			want.Where = say.Words("that it supports, the mass and a quarter more")
		}
	}
	n.Want = []Want{want}
	return []Need{n}
}

func ropeSizes(h lift.Hoist, d lift.Drive) []Size {
	s := []Size{{Name: "thickness", Value: ratio(h.Rope.Diameter), Unit: unit.Metres}}
	if h.Rope.Kind != "" {
		s = append(s, Size{Name: "material", Text: string(h.Rope.Kind)})
	}
	switch {
	case h.Rope.Length.Is:
		s = append(s, Size{Name: "length", Value: ratio(h.Rope.Length), Unit: unit.Metres})
	case d.Winding.RopeNeeded.Is:
		s = append(s, Size{Name: "length, at least", Value: ratio(d.Winding.RopeNeeded), Unit: unit.Metres})
	}
	return s
}

// pulleySizes reads the pulley that a label's path names.
func pulleySizes(at string, h lift.Hoist) []Size {
	var i int
	if n, err := fmt.Sscanf(at, "reeving.sheaves[%d]", &i); n != 1 || err != nil || i >= len(h.Reeving.Sheaves) {
		return nil
	}
	return []Size{{Name: "across the groove", Value: ratio(h.Reeving.Sheaves[i].Diameter), Unit: unit.Metres, Tape: true}}
}

// driveNeeds are motor, supply, gears and what hangs on the terminals. Currents are those of lifting and lowering.
func driveNeeds(h lift.Hoist, d lift.Drive) []Need {
	most, first := math.Inf(-1), math.Inf(-1)
	if d.Raising.Current > 0 {
		most, first = float64(d.Raising.Current), max(float64(d.Raising.Current), float64(d.Raising.FirstPush))
	}
	if d.Lowering.Current > 0 {
		most = max(most, float64(d.Lowering.Current))
	}
	amps := func(x float64, where string) []Want {
		return []Want{{Least: known(x, x > 0 && !math.IsInf(x, 0)), Unit: unit.Amperes, Where: say.Words(where)}}
	}
	out := []Need{{As: cost.AsMotor, Name: orElse(h.Machine.Name, "Motor"), Of: cost.OfStore, Count: 1, Want: amps(most, "that it withstands all day"),
		Sizes: []Size{{Name: "between its wires", Value: ratio(d.Machine.R), Unit: unit.Ohms}}}}
	switch h.Raise.Feed {
	case lift.FeedDrive:
		out = append(out, Need{As: cost.AsDrive, Name: "Step-down drive for the motor", Of: cost.OfStore, Count: 1, Want: amps(first, "that it gives, for the first push"),
			Sizes: []Size{{Name: "highest voltage", Value: ratio(h.Raise.Voltage), Unit: unit.Volts}}})
	case lift.FeedRelay:
		out = append(out, Need{As: cost.AsDrive, Name: "Relay for the motor", Of: cost.OfStore, Count: 1, Look: say.Words("made to switch direct current"), Want: amps(first, "that it switches")})
	}
	both := max(first, most)
	shunt := Need{As: cost.AsShunt, Name: "Resistor or clamp straight on the motor", Of: cost.OfSafety, Count: 1, Look: say.Words("on metal, no fuse, no switch, no plug")}
	if l := d.Lowering; l.Known && l.Current > 0 && l.Voltage > 0 {
		shunt.Want = []Want{{Least: unit.Of(unit.Ratio(float64(l.Current) * float64(l.Voltage))), Unit: unit.Watts, Where: say.Words("that it may turn into heat without a break")}}
	}
	return append(out, shunt,
		Need{As: cost.AsChangeover, Name: "Changeover switch, off in the middle", Of: cost.OfSafety, Count: 1, Look: say.Words("made for direct current: sun or lamps, never both"), Want: amps(both, "for direct current")})
}

// safetyNeeds are the parts that only keep people safe: as much of a hoist's bill as the rope.
func safetyNeeds(r HoistResult) []Need {
	h := r.Design
	amps := float64(max(r.Drive.Raising.Current, r.Drive.Raising.FirstPush))
	out := []Need{
		{As: cost.AsUpperStop, Name: "Stops at the top, each by a path of its own", Of: cost.OfSafety, Count: max(2, len(h.Holds.UpperStops)), Look: say.Words("two kinds, so that one fault cannot disable both"),
			Want: []Want{{Least: known(amps, amps > 0), Unit: unit.Amperes, Where: say.Words("for direct current, where they cut the motor")}}},
		{As: cost.AsSlackSwitch, Name: "Switch that stops the drum when the rope goes slack", Of: cost.OfSafety, Count: 1},
		{As: cost.AsStopButton, Name: "Stop button within reach, which sets the brake", Of: cost.OfSafety, Count: 1},
	}
	if held := h.Holds.Holds; !hasHold(held, lift.HoldRatedProp) && !hasHold(held, lift.HoldLockingPin) {
		weight := r.Drive.Mass
		prop := Need{As: cost.AsProp, Name: "Rated prop or pin, to support the mass while hands are near", Of: cost.OfSafety, Count: 1}
		prop.Want = []Want{{Least: known(propFactor*float64(weight.Val)*unit.G, weight.Is), Unit: unit.Newtons, Where: say.Words("that it supports, the mass and a quarter more")}}
		out = append(out, prop)
	}
	keep := Need{As: cost.AsFence, Name: "Fence or rope, and a sign", Of: cost.OfSafety, Count: 1, Want: []Want{{Least: ratio(r.Hazards.KeepOut), Unit: unit.Metres, Where: say.Words("from the mass, all round")}}}
	if r.Hazards.AtLeast {
		keep.Look = say.Words("at least this far: a size is missing")
	}
	pad := Need{As: cost.AsLanding, Name: "Soft landing under the mass", Of: cost.OfSafety, Count: 1, Want: []Want{{Least: ratio(h.Site.PadDepth), Unit: unit.Metres, Where: say.Words("deep")}}}
	return append(out, pad, keep, Need{As: cost.AsGloves, Name: "Gloves, shoes with caps, eye protection", Of: cost.OfSafety, Count: 1, Look: say.Words("for everyone who works on it")})
}

// propFactor is what a hold bears over the mass it holds (as for the holds of the drum).
const propFactor = 1.25

func hasHold(held []lift.Hold, kind lift.HoldKind) bool {
	for _, x := range held {
		if x.Kind == kind {
			return true
		}
	}
	return false
}
