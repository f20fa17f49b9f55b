package catalog

import (
	"math"
	"slices"
	"strings"
	"testing"

	"duskweight/internal/model/lift"
	"duskweight/internal/model/unit"
)

func kindOf(t *testing.T, word string) Kind {
	t.Helper()
	k, ok := KindOf(word)
	if !ok {
		t.Fatalf("no kind %q", word)
	}
	return k
}

// full is a hoist with one of everything that a row may go into, and strengths of other parts in all of it.
func full() lift.Hoist {
	n := unit.Of[unit.Force](99e3)
	h := lift.Hoist{
		Rope:      lift.Rope{BreakingLoad: n, KnotFactor: unit.Of[unit.Ratio](0.99), AgeFactor: unit.Of[unit.Ratio](0.99)},
		Container: lift.Container{Rating: n, EyeRating: n, Factor: unit.Of[unit.Ratio](9)},
		Drum:      lift.Drum{ShaftYield: unit.Of(999 * unit.Megapascal)},
		Structure: lift.Structure{HangerRating: n, Beam: lift.Beam{Class: "C30", Yield: unit.Of(999 * unit.Megapascal)}, Posts: []lift.Post{{Class: "C30", Yield: unit.Of(999 * unit.Megapascal)}}},
	}
	h.Train.Stages = []lift.Stage{{Ratio: unit.Of[unit.Ratio](5), Rated: unit.Of[unit.Torque](99), Tooth: lift.Tooth{Strength: unit.Of(999 * unit.Megapascal)}}}
	h.Reeving.Sheaves = []lift.Sheave{{Diameter: unit.Of(30 * unit.Millimetre), Rating: n, RatingOf: "hook_load"}}
	h.Lower.Loads = []lift.DCLoad{{}}
	return h
}

// ropeFor is a rope that an ending may be taken into.
func ropeFitting(h *lift.Hoist, r Row) {
	if h.Rope.Kind = "polyester"; r.Group == "Wire rope" {
		h.Rope.Kind = "wire"
	}
}

// strengths are the values of a hoist that a check takes for strength.
func strengths(h lift.Hoist) map[string]bool {
	out := map[string]bool{
		"rope.breaking_load_n": h.Rope.BreakingLoad.Is, "rope.knot_factor": h.Rope.KnotFactor.Is, "rope.age_factor": h.Rope.AgeFactor.Is,
		"container.safety_factor": h.Container.Factor.Is, "container.eye_working_load_n": h.Container.EyeRating.Is, "container.working_load_n": h.Container.Rating.Is,
		"drum.shaft_yield_pa": h.Drum.ShaftYield.Is, "structure.hanger_working_load_n": h.Structure.HangerRating.Is,
		"structure.beam.class": h.Structure.Beam.Class != "", "structure.beam.yield_pa": h.Structure.Beam.Yield.Is,
		"structure.posts[0].class": h.Structure.Posts[0].Class != "", "structure.posts[0].yield_pa": h.Structure.Posts[0].Yield.Is,
		"train.stages[0].tooth.strength_pa": h.Train.Stages[0].Tooth.Strength.Is, "train.stages[0].rated_torque_nm": h.Train.Stages[0].Rated.Is,
		"reeving.sheaves[0].working_load_n": h.Reeving.Sheaves[0].Rating.Is,
	}
	return out
}

// No row that does not stand by itself gives a strength: not from an empty hoist, and not by leaving that of the part
// that stood there before. With the user's word it does.
func TestMemoryGivesNoStrength(t *testing.T) {
	marked := 0
	for _, k := range Kinds() {
		for _, r := range k.Rows {
			h := full()
			for _, at := range append(k.Places(&h), Place{}) {
				if at.At == "" && len(k.Places(&h)) > 0 || at.At == "new" {
					continue
				}
				h := full()
				ropeFitting(&h, r)
				c := Choice{At: at.At, Volume: unit.Of[unit.Volume](1)}
				got, err := r.Take(&h, c)
				if err != nil {
					t.Errorf("%s %s: %v", k.Word, r.ID, err)
					continue
				}
				have := strengths(h)
				for _, path := range got.Open {
					marked++
					if is, ok := have[path]; !ok || is {
						t.Errorf("%s %s: %s is open and known (%v)", k.Word, r.ID, path, ok)
					}
				}
				if !r.Stands() {
					for _, path := range got.Copied {
						if _, is := have[path]; is {
							t.Errorf("%s %s: copies the strength %s", k.Word, r.ID, path)
						}
					}
				}
				h, c.Read = full(), true
				ropeFitting(&h, r)
				mine, err := r.Take(&h, c)
				if err != nil {
					t.Error(err)
				}
				for _, path := range got.Open {
					if path != "container.working_load_n" && (!slices.Contains(mine.Own, path) || !strengths(h)[path]) {
						t.Errorf("%s %s: %s is read and not the user's own", k.Word, r.ID, path)
					}
				}
				if slices.Contains(mine.Own, "container.working_load_n") || k.Word == "bag" && h.Container.Rating.Is {
					t.Error("no row knows what a bag carries")
				}
			}
		}
	}
	if marked < 60 {
		t.Errorf("only %d marked strengths were looked at", marked)
	}
}

// Every ID finds its row, and a kind has its rows but once.
func TestRowsAreFound(t *testing.T) {
	for _, k := range Kinds() {
		seen := map[string]bool{}
		if len(k.Rows) == 0 {
			t.Errorf("%s has no rows", k.Word)
		}
		for _, r := range k.Rows {
			if got, ok := k.Row(r.ID); !ok || got.Name != r.Name || seen[r.ID] || r.ID == "" {
				t.Errorf("%s %q", k.Word, r.ID)
			}
			seen[r.ID] = true
		}
	}
	if _, ok := kindOf(t, "rope").Row("none"); ok {
		t.Error("a row that is not there")
	}
	if _, ok := KindOf("none"); ok {
		t.Error("a kind that is not there")
	}
}

func take(t *testing.T, h *lift.Hoist, word, id string, c Choice) Taken {
	t.Helper()
	r, ok := kindOf(t, word).Row(id)
	if !ok {
		t.Fatalf("no row %s %s", word, id)
	}
	got, err := r.Take(h, c)
	if err != nil {
		t.Fatal(err)
	}
	return got
}

func TestTakeRope(t *testing.T) {
	h := lift.Hoist{Rope: lift.Rope{Kind: "nylon", Diameter: unit.Of(12 * unit.Millimetre), KnotFactor: unit.Of[unit.Ratio](0.7), Stiffness: unit.Of[unit.Force](1e5), Length: unit.Of[unit.Length](16), Ending: "splice"}}
	got := take(t, &h, "rope", "polyester-three-strands-12-mm", Choice{})
	if h.Rope.Kind != "polyester" || math.Abs(float64(h.Rope.BreakingLoad.Val)-22600) > 1e-9 || h.Rope.Diameter.Val != 12*unit.Millimetre {
		t.Errorf("%+v", h.Rope)
	}
	if h.Rope.KnotFactor.Is || h.Rope.Stiffness.Is || h.Rope.Ending != "splice" || !h.Rope.Length.Is {
		t.Errorf("what belonged to the nylon went, the rest stays: %+v", h.Rope)
	}
	if !slices.Equal(got.Copied, []string{"rope.kind", "rope.diameter_m", "rope.breaking_load_n"}) {
		t.Error(got)
	}
	take(t, &h, "rope", "nylon-three-strands-by-the-standard-12-mm", Choice{})
	if h.Rope.Kind != "nylon" || h.Rope.BreakingLoad.Is {
		t.Errorf("from memory: %+v", h.Rope)
	}
}

func TestTakeMotor(t *testing.T) {
	bench := []lift.Bench{{Voltage: unit.Of[unit.Voltage](1)}}
	h := lift.Hoist{Machine: lift.Machine{Name: "Old", BenchK: bench, SheetSpeed: unit.Of[unit.AngularSpeed](300), SheetGear: unit.Of[unit.Ratio](20), BrushDrop: unit.Of[unit.Voltage](1)}}
	h.Train.Stages = []lift.Stage{{Kind: "planetary", Ratio: unit.Of[unit.Ratio](5)}}
	got := take(t, &h, "motor", "car-wiper-motor-12-v-with-its-worm", Choice{})
	if h.Machine.BenchK != nil || h.Machine.BrushDrop.Is || !slices.Equal(got.Gone, []string{"machine.brush_drop_v", "machine.bench_driven"}) {
		t.Errorf("the old motor's readings stay: %+v %v", h.Machine, got.Gone)
	}
	if h.Machine.SheetSpeed != unit.Of[unit.AngularSpeed](300) || h.Machine.SheetGear != unit.Of[unit.Ratio](20) {
		t.Errorf("the label that was typed is gone: %+v", h.Machine)
	}
	if got.Stages != 1 || len(h.Train.Stages) != 2 || h.Train.Stages[0].Kind != "worm" || h.Train.Stages[0].Ratio.Val != 60 || h.Train.Stages[1].Kind != "planetary" {
		t.Errorf("%d %+v", got.Stages, h.Train.Stages)
	}
	// The label's 45 turns a minute at 12 V: K·60·ω + R·I_0 = .037·60·4.712 + .4·2.5 = 11.46 V
	if v := 0.037*60*45*2*math.Pi/60 + 0.4*2.5; math.Abs(v-float64(h.Machine.K.Val)*float64(h.Train.Stages[0].Ratio.Val)*4.71239-float64(h.Machine.R.Val)*float64(h.Machine.I0.Val)) > 1e-4 {
		t.Error(v)
	}
	if again := take(t, &h, "motor", "car-wiper-motor-12-v-with-its-worm", Choice{}); len(h.Train.Stages) != 2 || again.Stages != 0 {
		t.Errorf("its worm is put in twice: %+v", h.Train.Stages)
	}
	if plain := take(t, &h, "motor", "57-mm-servo-type-motor-12-v", Choice{}); plain.Stages != -1 || len(h.Train.Stages) != 1 || h.Train.Stages[0].Kind != "planetary" {
		t.Errorf("the worm stays without its motor: %+v", h.Train.Stages)
	}
	if h.Machine.RthCase.Is || h.Machine.TauCase.Is || h.Machine.K.Val != 0.0327 {
		t.Errorf("%+v", h.Machine)
	}
}

func TestTakeStage(t *testing.T) {
	h := full()
	h.Train.Stages[0] = lift.Stage{Kind: "worm", Ratio: unit.Of[unit.Ratio](5), LeadAngle: unit.Of[unit.Angle](0.1), Friction: unit.Of[unit.Ratio](0.05), Backward: unit.Of[unit.Ratio](0.1), Rated: unit.Of[unit.Torque](9)}
	take(t, &h, "stage", "planetary-metal", Choice{At: "0"})
	s := h.Train.Stages[0]
	if s.Kind != "planetary" || s.Ratio.Val != 5 || s.LeadAngle.Is || s.Friction.Is || s.Backward.Is || s.Rated.Is || s.IdleTorque.Is || s.Efficiency.Val != 0.95 {
		t.Errorf("%+v", s)
	}
	// 0.475 N·m at the output of 5:1 at 0.95 is 0.1 N·m at the input; 2 % of it turns the stage empty
	got := take(t, &h, "stage", "planetary-metal", Choice{At: "new", Ratio: unit.Of[unit.Ratio](5), Rated: unit.Of[unit.Torque](0.475)})
	s = h.Train.Stages[1]
	if math.Abs(float64(s.IdleTorque.Val)-0.002) > 1e-15 || !slices.Contains(got.Own, "train.stages[1].rated_torque_nm") || h.Train.Breakaway.Is {
		t.Errorf("%+v %+v", s, got)
	}
	take(t, &h, "stage", "printed-spur-wheels-greased", Choice{At: "new"})
	if h.Train.Breakaway.Val != 1.6 {
		t.Errorf("the first push of printed wheels is above the usual: %v", h.Train.Breakaway)
	}
	for _, at := range []string{"", "9", "-1", "x"} {
		r, _ := kindOf(t, "stage").Row("planetary-metal")
		if _, err := r.Take(&h, Choice{At: at}); err == nil {
			t.Errorf("place %q is taken", at)
		}
	}
}

func TestTakeTheRest(t *testing.T) {
	h := full()
	take(t, &h, "pulley", "fibre-rope-pulley-of-50-mm", Choice{At: "0"})
	if s := h.Reeving.Sheaves[0]; s.Efficiency.Val != 0.87 || s.Diameter.Val != 50*unit.Millimetre || s.Rating.Is || s.RatingOf != "" {
		t.Errorf("a pulley of another size has no label yet: %+v", s)
	}
	take(t, &h, "eyebolt", "m16", Choice{At: "hanger"})
	if h.Structure.HangerKind != "shoulder_eyebolt" || math.Abs(float64(h.Structure.HangerRating.Val)-700*unit.G) > 1e-9 {
		t.Errorf("%+v", h.Structure)
	}
	take(t, &h, "shackle", "3-8-inch", Choice{At: "hanger"})
	if h.Structure.HangerKind != "shackle" || h.Structure.HangerRating.Is {
		t.Errorf("a shackle without a stamp: %+v", h.Structure)
	}
	take(t, &h, "shackle", "3-8-inch", Choice{At: "eye", Read: true})
	if math.Abs(float64(h.Container.EyeRating.Val)-1000*unit.G) > 1e-9 {
		t.Errorf("%+v", h.Container)
	}
	// half a cubic metre of dry sand: .5·1600 kg hung, .5·1520 kg on the base
	take(t, &h, "material", "sand-dry", Choice{At: "mass", Volume: unit.Of[unit.Volume](0.5)})
	if p := h.Mass[len(h.Mass)-1]; p.Mass.Val != 800 || p.Weighed != "volume" {
		t.Errorf("%+v", p)
	}
	h.Base.Mass = unit.Of[unit.Mass](40)
	take(t, &h, "material", "sand-dry", Choice{At: "base", Volume: unit.Of[unit.Volume](0.5)})
	if h.Base.Mass.Val != 800 {
		t.Errorf("%v", h.Base.Mass) // 40 + 760
	}
	take(t, &h, "lamp", "white-lamp-of-1-w-350-ma", Choice{At: "0", Series: unit.Of[unit.Count](4), Rows: unit.Of[unit.Count](3)})
	if l := h.Lower.Loads[0]; l.Threshold.Val != 11 || !strings.HasSuffix(l.Name, "4 × 3") {
		t.Errorf("%+v", l)
	}
	take(t, &h, "steel", "s235", Choice{At: "beam", Read: true})
	if b := h.Structure.Beam; b.Kind != "steel_tube" || b.Class != "" || b.Yield.Val != 235*unit.Megapascal {
		t.Errorf("%+v", b)
	}
	take(t, &h, "timber", "softwood-c24", Choice{At: "0", Read: true})
	if p := h.Structure.Posts[0]; p.Kind != "timber" || p.Class != "C24" || p.Yield.Is {
		t.Errorf("%+v", p)
	}
}

// The share of a wire ending in fibre rope, and the other way, is no share at all.
func TestEndingsFitTheirRope(t *testing.T) {
	wire, _ := kindOf(t, "ending").Row("wire-rope-swaged")
	fibre, _ := kindOf(t, "ending").Row("fibre-rope-figure-of-eight")
	for _, c := range []struct {
		kind string
		row  Row
		ok   bool
	}{{"polyester", wire, false}, {"wire", fibre, false}, {"wire", wire, true}, {"polyester", fibre, true}, {"", wire, true}} {
		h := lift.Hoist{Rope: lift.Rope{Kind: lift.RopeKind(c.kind)}}
		_, err := c.row.Take(&h, Choice{Read: c.kind == ""})
		if (err == nil) != c.ok {
			t.Errorf("%s in %q: %v", c.row.ID, c.kind, err)
		}
		if c.kind == "" && h.Rope.KnotFactor.Is {
			t.Error("a share in a rope of unknown material")
		}
	}
}
