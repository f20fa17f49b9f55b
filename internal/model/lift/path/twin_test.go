package path

import (
	"bytes"
	"encoding/json"
	"math"
	"math/rand/v2"
	"os/exec"
	"testing"

	"duskweight/internal/model/lift"
	"duskweight/internal/model/unit"
)

// twinLine is one line of the second calculation: each case is demand, capacity, wanted, good.
type twinLine struct {
	ID    string       `json:"id"`
	Cases [][4]float64 `json:"cases"`
}

// TestTwin holds every line of what breaks first against a second calculation of the same equations in another language,
// over random designs with every input known: several layers of rope, pulleys, loads, all kinds of stage, beams and posts
// of four kinds under three supports, tripods, every ending, hub and hold. Both are sums of a few terms: 1e-9.
func TestTwin(t *testing.T) {
	python, err := exec.LookPath("python3")
	if err != nil {
		t.Skip("python3 is not on this machine: the second calculation of the load path was NOT compared")
	}
	d := dice{rand.New(rand.NewPCG(5, 8))}
	var designs []lift.Hoist
	var drives []lift.Drive
	for len(designs) < 800 {
		h := d.hoist()
		x := lift.Compute(h)
		if x.Raising.Known && !x.Raising.Stalls && x.Lowering.Steady && x.Lowering.RunsBack != "no" {
			designs, drives = append(designs, h), append(drives, x)
		}
	}
	body, err := json.Marshal(designs)
	if err != nil {
		t.Fatal(err)
	}
	cmd := exec.CommandContext(t.Context(), python, "../../../../testdata/twin/path.py")
	cmd.Stdin = bytes.NewReader(body)
	var complaint bytes.Buffer
	cmd.Stderr = &complaint
	out, err := cmd.Output()
	if err != nil {
		t.Fatalf("the second calculation failed: %v\n%s", err, complaint.String())
	}
	var twins [][]twinLine
	if err := json.Unmarshal(out, &twins); err != nil {
		t.Fatal(err)
	}
	lines, words, cases := map[string]int{}, map[Word]int{}, map[string]int{}
	for i, h := range designs {
		got, want := map[string][]Check{}, map[string][]twinLine{}
		for _, c := range Checks(h, drives[i]) {
			got[c.ID] = append(got[c.ID], c)
			words[c.Word]++
			for _, k := range c.Cases {
				cases[k.Name]++
			}
		}
		for _, l := range twins[i] {
			want[l.ID] = append(want[l.ID], l)
		}
		for _, id := range closedList {
			if len(got[id]) != len(want[id]) {
				t.Errorf("design %d: %d lines of %s, the twin has %d", i, len(got[id]), id, len(want[id]))
				continue
			}
			for j, c := range got[id] {
				lines[id]++
				sameLine(t, i, c, want[id][j])
			}
		}
		if t.Failed() {
			b, _ := json.Marshal(h)
			t.Fatalf("design %d: %s", i, b)
		}
	}
	t.Log(lines, words)
	for _, id := range closedList {
		if id != "set_screw" && lines[id] < 50 { // a set screw alone may not hold: nothing is worked out
			t.Errorf("only %d lines of %s: the random designs are too tame", lines[id], id)
		}
	}
	for _, w := range []Word{Holds, Tight, GivesWay} {
		if words[w] < 500 {
			t.Errorf("only %d lines are %s", words[w], w)
		}
	}
	for _, name := range []string{burstCase, stallCase, "slack caught", "brake catches", "working, washer on the wood", "free at the foot", "at rest, bending beside the hole"} {
		if cases[name] < 50 {
			t.Errorf("only %d cases of %q", cases[name], name)
		}
	}
}

// sameLine compares the cases of a line and the word that follows from the twin's.
func sameLine(t *testing.T, i int, c Check, want twinLine) {
	t.Helper()
	if len(c.Missing) > 0 || c.Word == NotKnown {
		t.Errorf("design %d, %s: %s, %v", i, c.Part, c.Word, c.Missing)
		return
	}
	if len(c.Cases) != len(want.Cases) {
		t.Errorf("design %d, %s: %d cases %v, the twin has %d %v", i, c.Part, len(c.Cases), c.Cases, len(want.Cases), want.Cases)
		return
	}
	word := Holds
	for j, k := range c.Cases {
		for f, x := range []float64{k.Demand.Val, k.Capacity.Val, float64(k.Wanted), float64(k.OK)} {
			if y := want.Cases[j][f]; math.Abs(float64(x)-y) > 1e-9*math.Max(math.Abs(y), 1e-9) {
				t.Errorf("design %d, %s, %s: figure %d is %.15g, the twin has %.15g", i, c.Part, k.Name, f, float64(x), y)
			}
		}
		had := want.Cases[j][1] / want.Cases[j][0]
		switch {
		case had*(1+1e-9) < want.Cases[j][2]:
			word = GivesWay
		case had*(1+1e-9) < want.Cases[j][3] && word == Holds:
			word = Tight
		}
	}
	if c.Word != word {
		t.Errorf("design %d, %s: %s, by the twin's figures %s", i, c.Part, c.Word, word)
	}
}

// dice makes random hoists with every input known.
type dice struct{ *rand.Rand }

func (d dice) even(lo, hi float64) float64 { return lo + (hi-lo)*d.Float64() }

func some[T any](d dice, xs ...T) T { return xs[d.IntN(len(xs))] }

func (d dice) hoist() lift.Hoist {
	const mm, mpa = 1e-3, 1e6
	h := whole()
	h.Mass[0].Mass = of[unit.Mass](d.even(10, 250))
	h.Travel = of[unit.Length](d.even(1, 6))
	h.Rope.Kind, h.Rope.Ending = lift.RopeKind(some(d, "polyester", "nylon", "polypropylene", "hmpe", "wire")), lift.Ending(some(d, "splice", "bowline", "figure_eight", "other_knot", "swaged"))
	h.Rope.Diameter, h.Rope.BreakingLoad = of[unit.Length](d.even(4, 14)*mm), of[unit.Force](d.even(5e3, 80e3))
	h.Rope.Stiffness, h.Rope.Length = of[unit.Force](d.even(2e4, 1e6)), of[unit.Length](d.even(30, 60))
	h.Rope.Outdoors, h.Site.Outdoors = unit.Answer(some(d, "yes", "no")), unit.Answer(some(d, "yes", "no"))
	if d.IntN(2) == 0 {
		h.Rope.AgeFactor, h.Rope.KnotFactor = unit.Known[unit.Ratio]{}, unit.Known[unit.Ratio]{}
	}
	if !KnotRead(h.Rope.Kind, h.Rope.Ending) && !h.Rope.KnotFactor.Is { // no published share: not known without the user's own
		h.Rope.KnotFactor = of[unit.Ratio](.45)
	}
	d.rig(&h)
	h.Drum.Diameter, h.Drum.Width, h.Drum.Flange = of[unit.Length](d.even(60, 200)*mm), of[unit.Length](d.even(60, 400)*mm), of[unit.Length](d.even(250, 420)*mm)
	h.Drum.DeadWraps, h.Drum.Grooved, h.Drum.FleetAngle = unit.Of(unit.Count(1+d.IntN(5))), unit.Answer(some(d, "yes", "no")), unit.Of(unit.Angle(d.even(0.2, 5))*unit.Degree)
	h.Drum.HubFit, h.Drum.HubMaterial, h.Drum.Coupling = lift.HubFit(some(d, "cross_pin", "key")), lift.HubMaterial(some(d, "steel", "aluminium", "printed", "wood")), lift.Coupling(some(d, "yes", "none"))
	h.Drum.ShaftDiameter, h.Drum.HubAllow = of[unit.Length](d.even(15, 40)*mm), of[unit.Stress](d.even(30, 300)*mpa)
	h.Drum.KeyWidth, h.Drum.KeyLength, h.Drum.KeyYield = of[unit.Length](d.even(4, 10)*mm), of[unit.Length](d.even(20, 60)*mm), of[unit.Stress](d.even(200, 400)*mpa)
	if d.IntN(3) == 0 {
		h.Drum.BearingSpan = unit.Known[unit.Length]{}
	}
	d.drive(&h)
	d.frame(&h)
	h.Base.Mass, h.Base.WeightsFixed, h.Base.LoosePart = of[unit.Mass](d.even(100, 900)), unit.Answer(some(d, "yes", "no")), of[unit.Mass](d.even(0, 90))
	h.Base.Friction, h.Base.Ground = of[unit.Ratio](d.even(.2, .7)), lift.Ground(some(d, "clay", "sand", "rock"))
	if h.Base.RopeAngle = of[unit.Angle](d.even(0, .6)); d.IntN(3) == 0 && h.Reeving.LeadSheaves.Val == 1 {
		h.Base.RopeAngle = unit.Known[unit.Angle]{}
	}
	h.Container = lift.Container{Kind: lift.ContainerKind(some(d, "cage", "bag")), Rating: of[unit.Force](d.even(500, 8000)), EyeRating: of[unit.Force](d.even(500, 8000)),
		Factor: of[unit.Ratio](some(d, 5.0, 6, 8)), Age: unit.Of(unit.Duration(d.even(1, 500)) * unit.Day)}
	h.Holds.Class, h.Holds.RoomAbove, h.Holds.BrakeDelay = lift.HoistClass(some(d, "", "", "HC1", "HC2", "HC3", "HC4")), of[unit.Length](d.even(.05, .8)), of[unit.Duration](d.even(0, .6))
	if d.IntN(4) == 0 {
		h.Holds.Factor = of[unit.Ratio](d.even(1, 2.5))
	}
	h.Holds.Holds = []lift.Hold{{Kind: "spring_brake", OnDrum: "yes", Torque: of[unit.Torque](d.even(20, 300))}, {Kind: "rated_prop", OnDrum: "no", Force: of[unit.Force](d.even(300, 4000))}}[:1+d.IntN(2)]
	h.Holds.UpperStops = []lift.Stop{{Kind: "limit_switch", Path: unit.Answer(some(d, "yes", "no"))}, {Kind: lift.StopKind(some(d, "mechanical", "timer")), Path: unit.Answer(some(d, "yes", "no"))}}
	return h
}

// rig sets the way of the rope; with the drum on the beam there may be no pulley before the mass.
func (d dice) rig(h *lift.Hoist) {
	n, k := 1+d.IntN(3), 1+d.IntN(2)
	h.Base.Where = "on_ground"
	if d.IntN(6) == 0 {
		h.Base.Where, k = "on_beam", d.IntN(2)
	}
	h.Reeving.RopeParts, h.Reeving.LeadSheaves = unit.Of(unit.Count(n)), unit.Of(unit.Count(k))
	h.Reeving.Efficiency = of[unit.Ratio](d.even(.82, .98))
	h.Reeving.Sheaves = nil
	for range n + k - 1 {
		h.Reeving.Sheaves = append(h.Reeving.Sheaves, lift.Sheave{Diameter: of[unit.Length](d.even(.03, .2)), Rating: of[unit.Force](d.even(1e3, 2e4)), RatingOf: lift.RatingOf(some(d, "rope_pull", "hook_load", "")),
			Angle: of[unit.Angle](d.even(0, 1)), OnBase: "no", Fixing: of[unit.Force](d.even(1e3, 2e4))})
	}
	if k == 2 {
		h.Reeving.Sheaves[0].OnBase = unit.Answer(some(d, "yes", "no", ""))
	}
	h.Structure.LeadAngle = of[unit.Angle](d.even(0, .5))
	h.Structure.SidePull = of[unit.Force](d.even(100, 3000))
	if k >= 1 && d.IntN(2) == 0 {
		h.Reeving.Sheaves[k-1].Angle = unit.Known[unit.Angle]{}
	}
}

// drive sets motor, gears and lamps so that most designs lift some amperes' worth.
func (d dice) drive(h *lift.Hoist) {
	h.Machine.K, h.Machine.R, h.Machine.I0, h.Machine.J = of[unit.MachineConstant](.05), of[unit.Resistance](.3), of[unit.Current](.3), of[unit.Inertia](d.even(1e-5, 3e-4))
	h.Machine.I0WithGear = "no"
	h.Train.Stages = nil
	const mm = 1e-3
	torque := float64(h.Mass[0].Mass.Val) * unit.G / float64(h.Reeving.RopeParts.Val) * float64(h.Drum.Diameter.Val)
	ratio, count := math.Max(2, torque/(.05*d.even(3, 9))), 2+d.IntN(2)
	for i := range count {
		s := lift.Stage{Kind: lift.StageKind(some(d, "spur", "planetary", "belt", "worm", "bevel", "box")), Ratio: of[unit.Ratio](math.Max(1, math.Pow(ratio, 1/float64(count)))), Efficiency: of[unit.Ratio](d.even(.88, .99)),
			IdleTorque: of[unit.Torque](d.even(0, 1e-3))}
		if s.Kind == "planetary" && d.IntN(2) == 0 {
			s.Ratio, s.Efficiency = unit.Known[unit.Ratio]{}, unit.Known[unit.Ratio]{}
			s.SunTeeth, s.PlanetTeeth, s.MeshEff = unit.Of(unit.Count(12+d.IntN(9))), unit.Of(unit.Count(12+d.IntN(20))), of[unit.Ratio](d.even(.93, .99))
		}
		s.Tooth = lift.Tooth{Module: of[unit.Length](d.even(.8, 4) * mm), Teeth: unit.Of(unit.Count(8 + d.IntN(90))), FaceWidth: of[unit.Length](d.even(8, 50) * mm), Meshes: unit.Of(unit.Count(1 + d.IntN(3))),
			Material: lift.ToothMaterial(some(d, "steel", "brass", "cast_iron", "pom", "printed")), Strength: of[unit.Stress](d.even(40, 500) * 1e6), Layers: lift.PrintLayers(some(d, "in_plane", "across", ""))}
		if i == 0 && d.IntN(3) == 0 || s.Kind == "belt" {
			s.Rated, s.Tooth = of[unit.Torque](d.even(1, 100)), lift.Tooth{}
		}
		h.Train.Stages = append(h.Train.Stages, s)
	}
	h.Raise.Feed, h.Raise.Voltage, h.Raise.CurrentLimit = "drive", of[unit.Voltage](24), of[unit.Current](d.even(10, 40))
	h.Lower.Loads = []lift.DCLoad{{Kind: "string", Threshold: of[unit.Voltage](d.even(6, 12)), Slope: of[unit.Resistance](d.even(.3, 2))}}
	if d.IntN(2) == 0 {
		h.Lower.Loads = append(h.Lower.Loads, lift.DCLoad{Kind: "clamp", Threshold: of[unit.Voltage](14), Slope: of[unit.Resistance](.3), Permanent: "yes"})
	}
}

// frame sets what holds the top pulley, the beam, and posts: upright ones, or the legs of a tripod.
func (d dice) frame(h *lift.Hoist) {
	const mm, mpa = 1e-3, 1e6
	s := &h.Structure
	s.HangerKind, s.HangerFixing, s.Washer = lift.HangerKind(some(d, "shackle", "shoulder_eyebolt", "hook")), lift.HangerFixing(some(d, "bolted_through_wood", "threaded_into_metal")), of[unit.Length](d.even(20, 100)*mm)
	s.HangerAngle, s.HangerRating, s.HeadHeight = unit.Of(unit.Angle(d.even(0, 60))*unit.Degree), of[unit.Force](d.even(1e3, 2e4)), of[unit.Length](d.even(3, 7))
	member := func() (kind lift.MemberKind, class lift.TimberClass, width, depth, wall unit.Known[unit.Length], yield unit.Known[unit.Stress]) {
		kind = lift.MemberKind(some(d, "timber", "round_pole", "steel_tube", "steel_round_tube"))
		class = lift.TimberClass(some(d, "C16", "C24"))
		width, depth = of[unit.Length](d.even(50, 160)*mm), of[unit.Length](d.even(80, 240)*mm)
		wall, yield = of[unit.Length](d.even(2, 6)*mm), of[unit.Stress](some(d, 235.0, 355)*mpa)
		return
	}
	b := &s.Beam
	b.Kind, b.Class, b.Width, b.Depth, b.Wall, b.Yield = member()
	b.Span, b.Support, b.Bearing = of[unit.Length](d.even(.8, 4)), lift.BeamSupport(some(d, "two_supports", "both_ends_fixed")), of[unit.Length](d.even(40, 200)*mm)
	if b.From = of[unit.Length](d.even(.1, .75)); d.IntN(3) == 0 {
		b.From = unit.Known[unit.Length]{}
	}
	if b.Hole = of[unit.Length](d.even(0, 40) * mm); d.IntN(3) == 0 {
		b.Hole = of[unit.Length](0)
	}
	if d.IntN(2) == 0 {
		b.OwnMass = unit.Known[unit.Mass]{}
	}
	s.Posts = nil
	if d.IntN(4) == 0 { // a wall bears it, as somebody confirmed
		b.Support, s.RestsOn, s.RestsOnOK = "cantilever", "engineered_steel", "yes"
		return
	}
	lean := d.IntN(3) == 0
	for range 2 + d.IntN(2) {
		p := lift.Post{Height: of[unit.Length](d.even(2, 6)), Fixing: lift.PostFixing(some(d, "free_top", "pinned_both", "fixed_foot_pinned_top", "braced")), Share: of[unit.Ratio](d.even(.34, 1)),
			FootArea: of[unit.Area](d.even(.01, .3)), Soil: lift.Ground(some(d, "clay", "sand", "gravel", "rock"))}
		p.Kind, p.Class, p.Width, p.Depth, p.Wall, p.Yield = member()
		if lean {
			p.Lean, p.Tied = unit.Of(unit.Angle(d.even(5, 35))*unit.Degree), unit.Answer(some(d, "yes", "no"))
		}
		s.Posts = append(s.Posts, p)
	}
}
