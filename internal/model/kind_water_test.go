package model_test

import (
	"math"
	"strings"
	"testing"

	"duskweight/internal/catalog"
	"duskweight/internal/model"
	"duskweight/internal/model/reason"
	"duskweight/internal/model/unit"
	"duskweight/internal/model/water"
)

// pond is the first variant of the worked example with 10 m³ of water at 12 m in the place of its stores.
func pond() model.Document {
	doc := catalog.Sample()
	doc.Variants = doc.Variants[:1]
	doc.Variants[0].Stores = []model.Store{{Water: &water.Water{Name: "Pond",
		Volume: unit.Of[unit.Volume](10), Head: unit.Of[unit.Length](12),
		Pump:    water.Pump{Rated: unit.Of[unit.Power](200), Efficiency: unit.Of[unit.Ratio](0.4)},
		Turbine: water.Turbine{Flow: unit.Of[unit.Flow](0.0012), Efficiency: unit.Of[unit.Ratio](0.4), Kind: water.Valve},
		Pipe:    water.Pipe{Length: unit.Of[unit.Length](40), Inner: unit.Of[unit.Length](0.05), Rated: unit.Of[unit.Stress](1e6), Wave: unit.Of[unit.Speed](450)},
		Covered: unit.Yes, Stands: water.OnGround, Lower: water.LowerTank}}}
	doc.Variants[0].Origins = nil
	return doc
}

// Over a settled year the volume balances: what the pump lifted is what the turbine let through, what dried up and what is there
// more than at the start. In own joules: a_f·taken = a_d·drawn + dried + change, so without a leak, with a turbine that never
// gives less than three tenths, taken·a_f is at least delivered·a_d, and nothing more comes out than ρ·g·V·h a draw.
func TestWaterBalancesOverAYear(t *testing.T) {
	doc := pond()
	r := model.Evaluate(doc, on).Variants[0]
	s := r.Stores[0]
	if !r.YearKnown || !s.InYear || s.Year.Taken <= 0 || s.Year.Delivered <= 0 {
		t.Fatalf("no year: %v %+v", r.WhyNoYear, s.Year)
	}
	if got, want := float64(s.Capacity.Val), 456686.855; math.Abs(got-want) > 1e-6*want {
		t.Errorf("a full tank gives %g J, want %g", got, want) // of the second calculation in another language
	}
	y := s.Year
	if off := float64(y.Taken - y.Delivered - y.Loss - y.Change); math.Abs(off) > 1e-9*float64(y.Taken) {
		t.Errorf("taken %g, given %g, lost %g, change %g", float64(y.Taken), float64(y.Delivered), float64(y.Loss), float64(y.Change))
	}
	lifted := s.Reservoir.FillGain * float64(y.Taken)  // ρ·g·h for each m³ that was pumped
	ran := s.Reservoir.DrawGain * float64(y.Delivered) // for each that ran down usefully
	if ran > lifted-float64(y.Change)+1e-6*lifted {
		t.Errorf("%g J of water were lifted and %g ran down", lifted, ran)
	}
	highest := 0.0
	for _, x := range r.Year.Hourly.State[0] {
		highest = max(highest, x)
	}
	if most := 998.2 * unit.G * 10 * 12; highest > most*(1+1e-12) {
		t.Errorf("%g J stand in a tank for %g", highest, most)
	}
}

// A tank that stands below its turbine, and a pipe shorter than its climb, are refused with the reason.
func TestWaterThatCannotBeIsRefused(t *testing.T) {
	for what, c := range map[string]struct {
		change func(w *water.Water)
		path   string
		say    string
	}{
		"below":  {func(w *water.Water) { w.Head = unit.Of[unit.Length](-3) }, "stores[0].water.head_m", "water does not run up"},
		"short":  {func(w *water.Water) { w.Pipe.Length = unit.Of[unit.Length](11.9) }, "stores[0].water.pipe.length_m", "shorter than the height"},
		"volume": {func(w *water.Water) { w.Volume = unit.Of[unit.Volume](0) }, "stores[0].water.volume_m3", ""},
	} {
		v := pond().Variants[0]
		c.change(v.Stores[0].Water)
		said := ""
		for _, p := range model.CheckVariant(v) {
			if p.Path == c.path {
				said += p.Say.String() + "; "
			}
		}
		if said == "" || !strings.Contains(said, c.say) {
			t.Errorf("%s: %q", what, said)
		}
	}
	if ps := model.CheckVariant(pond().Variants[0]); len(ps) > 0 {
		t.Error(ps)
	}
}

// Frost locks the store: where the mean of a day is below freezing all winter, nothing is drawn then; the facts say so.
func TestWaterInFrost(t *testing.T) {
	doc := pond()
	r := model.Evaluate(doc, on)
	w := model.WaterOf(r.Variants[0].Stores[0])
	mean, frozen, drawn := 0.0, 0, 0.0
	air, given := r.Ground.Sky.TAir, r.Variants[0].Year.Hourly.Delivered[0]
	for h := range air {
		mean = 0
		for j := range 24 {
			mean += air[(h-j+len(air))%len(air)] / 24
		}
		if mean < -1e-9 {
			frozen++
			drawn += float64(given[h])
		}
	}
	if frozen == 0 || w.Frozen != frozen || drawn != 0 {
		t.Errorf("%d hours of frost, counted %d, in which %g J came", frozen, w.Frozen, drawn)
	}
}

// Without a lower water it gives nothing, and what is open forbids readiness by its own id.
func TestWaterReadiness(t *testing.T) {
	for what, c := range map[string]struct {
		change func(w *water.Water)
		id     string
		word   reason.Word
	}{
		"open":     {func(w *water.Water) { w.Covered = unit.No; w.Surface = unit.Of[unit.Area](5) }, "drowning", reason.No},
		"unsaid":   {func(w *water.Water) { w.Covered = "" }, "drowning", reason.NotKnown},
		"tower":    {func(w *water.Water) { w.Stands = water.OnTower }, "tank_base", reason.NotKnown},
		"roof":     {func(w *water.Water) { w.Stands = water.OnBuilding }, "tank_base", reason.NotKnown},
		"weak":     {func(w *water.Water) { w.Pipe.Rated = unit.Of[unit.Stress](2e5) }, "pipe_pressure", reason.No},
		"no name":  {func(w *water.Water) { w.Pipe.Rated.Is = false }, "pipe_pressure", reason.NotKnown},
		"below":    {func(w *water.Water) { w.Lower = "" }, "lower_water", reason.NotKnown},
		"none":     {func(w *water.Water) { w.Lower = water.LowerNone }, "not_computed", reason.NotKnown},
		"signed":   {func(w *water.Water) { w.Stands, w.Signed = water.OnTower, unit.Of[unit.Volume](10) }, "", reason.Yes},
		"as it is": {func(w *water.Water) {}, "", reason.Yes},
	} {
		doc := pond()
		c.change(doc.Variants[0].Stores[0].Water)
		s := model.Evaluate(doc, on).Variants[0].Stores[0]
		if s.Ready != c.word {
			t.Errorf("%s: %q, want %q: %v", what, s.Ready, c.word, reasonsSaid(s.Because))
		}
		if c.id != "" && (len(s.Because) != 1 || s.Because[0].ID != c.id) {
			t.Errorf("%s: want %s alone: %v", what, c.id, reasonsSaid(s.Because))
		}
		if c.id == "not_computed" && (s.Capacity.Is || s.Reservoir != nil) {
			t.Errorf("%s: it gives %v", what, s.Capacity)
		}
	}
}
