package path

import (
	"math"
	"math/rand/v2"
	"reflect"
	"strings"
	"testing"

	"duskweight/internal/model/lift"
	"duskweight/internal/model/unit"
)

var closedList = strings.Fields(`rope knot head_sheave hanger beam post container redirect_sheave base_uplift base_sliding
base_overturning base_board ground shaft cross_pin set_screw coupling drum_hub drum_capacity dead_wraps fleet_angle
bend_ratio gear_tooth case_fasteners holds stops overhoist slack brake_catch`)

func TestWholeHoistHolds(t *testing.T) {
	h := whole()
	checks := Checks(h, drive(h))
	seen := map[string]bool{}
	for _, c := range checks {
		seen[c.ID] = true
		if c.Word != Holds && c.Word != Tight {
			t.Errorf("%s, %s: %s. %s %v", c.ID, c.Part, c.Word, c.Say, c.Missing)
		}
	}
	for _, id := range closedList {
		if id != "set_screw" && id != "redirect_sheave" && !seen[id] {
			t.Errorf("%s is left out", id)
		}
	}
	if state := worst(checks); state != "yes" {
		t.Errorf("the worst check: %s", state)
	}
}

func TestEmptyHoistKnowsNothing(t *testing.T) {
	checks := Checks(lift.Hoist{}, lift.Drive{})
	for _, c := range checks {
		if c.Word == Holds || c.Word == Tight {
			t.Errorf("%s passes with nothing known: %s", c.ID, c.Say)
		}
		if c.Word == NotKnown && len(c.Missing) == 0 && c.Say.IsZero() {
			t.Errorf("%s says nothing", c.ID)
		}
	}
	if state := worst(checks); state != "no" {
		t.Errorf("the worst check: %s, want no: no holds are named", state)
	}
}

// worst is "no" when a check gives way, "not_known" when one is not known, else "yes".
func worst(checks []Check) string {
	word := "yes"
	for _, c := range checks {
		switch {
		case c.Word == GivesWay:
			return "no"
		case c.Word == NotKnown:
			word = "not_known"
		}
	}
	return word
}

// sound looks at what must be true of any check.
func sound(t *testing.T, c Check) {
	t.Helper()
	if !inList(closedList, c.ID) {
		t.Errorf("id %q is not in the closed list", c.ID)
	}
	nums := []unit.Known[unit.Ratio]{c.Demand.Known(), c.Capacity.Known(), c.Had, c.Use}
	for _, k := range c.Cases {
		nums = append(nums, k.Use, k.Demand.Known(), k.Capacity.Known())
	}
	for _, x := range c.Inputs {
		nums = append(nums, x.Value.Known())
	}
	for _, n := range nums {
		if !finite(float64(n.Val)) {
			t.Errorf("%s, %s: a figure is %v", c.ID, c.Part, n.Val)
		}
	}
	switch c.Word {
	case NotKnown:
		if c.Use.Is || c.Had.Is {
			t.Errorf("%s is not known and has a use", c.ID)
		}
	case Holds, Tight:
		if len(c.Missing) > 0 {
			t.Errorf("%s passes with %v missing", c.ID, c.Missing)
		}
		if c.Use.Val > 1 {
			t.Errorf("%s passes with use %v", c.ID, c.Use.Val)
		}
	case GivesWay:
		if c.Use.Is && c.Use.Val <= 1 {
			t.Errorf("%s gives way with use %v", c.ID, c.Use.Val)
		}
	default:
		t.Errorf("%s: word %q", c.ID, c.Word)
	}
	if c.Formula == "" || c.Source.Source.Title == "" || c.Part == "" || c.Say.IsZero() {
		t.Errorf("%s, %s: formula, source, part or sentence is empty: %+v", c.ID, c.Part, c)
	}
	if strings.Contains(plainly(c.Say), "NaN") || strings.Contains(plainly(c.Say), "Inf") || strings.Contains(plainly(c.Say), "  ") {
		t.Errorf("%s says %q", c.ID, c.Say)
	}
}

func inList(list []string, s string) bool {
	for _, x := range list {
		if x == s {
			return true
		}
	}
	return false
}

// fields calls f for every unit.Known inside v, with its path.
func fields(v reflect.Value, path string, f func(path string, known reflect.Value)) {
	switch v.Kind() {
	case reflect.Struct:
		if v.NumField() == 2 && v.Type().Field(1).Name == "Is" {
			f(path, v)
			return
		}
		for i := range v.NumField() {
			tag, _, _ := strings.Cut(v.Type().Field(i).Tag.Get("json"), ",")
			p := tag
			if path != "" {
				p = path + "." + tag
			}
			fields(v.Field(i), p, f)
		}
	case reflect.Slice:
		for i := range v.Len() {
			fields(v.Index(i), path+"["+string(rune('0'+i))+"]", f)
		}
	case reflect.String:
		f(path, v)
	}
}

// passes counts worse words higher.
func worse(w Word) int { return map[Word]int{Holds: 0, Tight: 1, NotKnown: 2, GivesWay: 2}[w] }

// Forgetting an input never turns a check that does not pass into one that does: for every input of the whole hoist.
func TestForgettingNeverPasses(t *testing.T) {
	// Inputs that a design may leave out by the meaning of its field.
	free := map[string]bool{"base.rope_angle_rad": true}
	base := whole()
	before := map[string]Word{}
	for _, c := range Checks(base, drive(base)) {
		before[c.ID+c.Part] = c.Word
	}
	var paths []string
	fields(reflect.ValueOf(&base).Elem(), "", func(p string, _ reflect.Value) { paths = append(paths, p) })
	for _, p := range paths {
		h := whole()
		fields(reflect.ValueOf(&h).Elem(), "", func(q string, v reflect.Value) {
			if p == q && !strings.HasSuffix(q, "name") {
				v.SetZero()
			}
		})
		for _, c := range Checks(h, drive(h)) {
			sound(t, c)
			if w, ok := before[c.ID+c.Part]; ok && worse(c.Word) < worse(w) && !free[p] {
				t.Errorf("forgetting %s turns %s (%s) from %s to %s", p, c.ID, c.Part, w, c.Word)
			}
		}
	}
}

// Inputs whose absence must leave a line not known, with the path named.
func TestMissingIsNamed(t *testing.T) {
	for _, row := range []struct{ path, id string }{
		{"rope.breaking_load_n", "rope"}, {"rope.breaking_load_n", "knot"}, {"reeving.sheaves[0].working_load_n", "head_sheave"},
		{"structure.hanger_working_load_n", "hanger"}, {"base.mass_kg", "base_uplift"}, {"drum.shaft_yield_pa", "shaft"}, {"drum.pin_yield_pa", "cross_pin"},
		{"drum.coupling_torque_nm", "coupling"}, {"drum.hub_strength_pa", "drum_hub"}, {"drum.flange_diameter_m", "drum_capacity"},
		{"train.stages[0].tooth.strength_pa", "gear_tooth"}, {"train.case_screws", "case_fasteners"}, {"structure.beam.class", "beam"},
		{"structure.posts[0].class", "post"}, {"structure.posts[0].soil", "ground"}, {"container.working_load_n", "container"},
		{"base.friction", "base_sliding"}, {"base.width_m", "base_overturning"}, {"base.board.bending_strength_pa", "base_board"},
		{"drum.dead_wraps", "dead_wraps"}, {"drum.fleet_angle_rad", "fleet_angle"}, {"rope.diameter_m", "bend_ratio"}, {"holds.room_above_m", "overhoist"},
		{"holds.slack_switch", "slack"}, {"rope.stiffness_ea_n", "brake_catch"}, {"holds.holds[0].torque_nm", "holds"}, {"holds.upper_stops[0].own_path", ""},
	} {
		h := whole()
		fields(reflect.ValueOf(&h).Elem(), "", func(q string, v reflect.Value) {
			if q == row.path {
				v.SetZero()
			}
		})
		found := row.id == ""
		for _, c := range Checks(h, drive(h)) {
			found = found || (c.ID == row.id && c.Word == NotKnown && inList(c.Missing, row.path))
		}
		if !found {
			t.Errorf("without %s the check %s does not say that it is missing", row.path, row.id)
		}
	}
}

// scramble forgets, empties and spreads inputs at random over many orders of magnitude, inside what a form may give.
func scramble(h *lift.Hoist, r *rand.Rand) {
	fields(reflect.ValueOf(h).Elem(), "", func(p string, v reflect.Value) {
		switch {
		case r.IntN(6) == 0:
			v.SetZero()
		case v.Kind() == reflect.Struct && r.IntN(3) == 0:
			x := v.Field(0)
			if x.Kind() == reflect.Float64 {
				y := x.Float() * math.Pow(10, 6*r.Float64()-3)
				switch {
				case strings.HasSuffix(p, "lead_angle_rad"), strings.HasSuffix(p, "rope_angle_rad"), strings.HasSuffix(p, "hanger_angle_rad"), strings.HasSuffix(p, "fleet_angle_rad"):
					y = math.Min(y, 1.5)
				case strings.HasSuffix(p, "_rad"):
					y = math.Min(y, math.Pi)
				case strings.Contains(p, "efficiency"), strings.HasSuffix(p, "_factor") && strings.HasPrefix(p, "rope."), strings.HasSuffix(p, "friction"):
					y = math.Min(y, 1)
				case strings.HasSuffix(p, "].ratio"):
					y = math.Max(y, 1)
				}
				x.SetFloat(y)
			} else if r.IntN(2) == 0 {
				x.SetInt(int64(1 + r.IntN(11)))
			}
		}
	})
	pick := func(words ...string) string { return words[r.IntN(len(words))] }
	h.Rope.Kind = lift.RopeKind(pick("", "polyester", "nylon", "polypropylene", "hmpe", "other_fibre", "wire"))
	h.Rope.Ending = lift.Ending(pick("", "splice", "bowline", "other_knot", "swaged", "clips"))
	h.Drum.HubFit = lift.HubFit(pick("", "cross_pin", "key", "set_screw", "press", "glue"))
	h.Structure.HangerKind = lift.HangerKind(pick("", "shoulder_eyebolt", "plain_eyebolt", "shackle", "hook", "other"))
	h.Structure.Beam.Kind = lift.MemberKind(pick("", "timber", "round_pole", "steel_tube", "steel_round_tube", "other"))
	h.Structure.Beam.Support = lift.BeamSupport(pick("", "two_supports", "cantilever", "both_ends_fixed"))
	h.Structure.RestsOn = lift.RestsOn(pick("", "own_posts_on_ground", "roof_truss", "not_seen", "engineered_steel"))
	h.Container.Kind = lift.ContainerKind(pick("", "none_one_block", "bag", "drum", "cage", "home_sewn"))
	h.Base.Where = lift.BaseWhere(pick("", "on_ground", "on_beam", "on_wall"))
	if r.IntN(4) == 0 {
		h.Reeving.LeadSheaves = of[unit.Count](0)
	}
	h.Train.Stages[0].Kind = lift.StageKind(pick("", "planetary", "spur", "worm", "belt", "box"))
	h.Train.Stages[0].Tooth.Material = lift.ToothMaterial(pick("", "steel", "printed", "pom", "cast_iron"))
}

func TestRandomHoistsAreSound(t *testing.T) {
	r := rand.New(rand.NewPCG(7, 11))
	for range 3000 {
		h := whole()
		scramble(&h, r)
		d := drive(h)
		checks := Checks(h, d)
		Sort(checks)
		for i, c := range checks {
			sound(t, c)
			if i > 0 && rank(checks[i-1].Word) > rank(c.Word) {
				t.Fatal("not in order")
			}
		}
		z := HazardsOf(h, d)
		if !finite(float64(z.KeepOut.Val)) || !finite(float64(z.PadForce.Val)) {
			t.Fatal("hazard is not a number")
		}
		if t.Failed() {
			return
		}
	}
}

// More mass never uses any part less.
func TestMoreMassNeverUsesLess(t *testing.T) {
	use := func(m float64) map[string]float64 {
		h := whole()
		h.Mass[0].Mass = of[unit.Mass](m)
		out := map[string]float64{}
		for _, c := range Checks(h, drive(h)) {
			if c.Use.Is {
				out[c.ID+c.Part] = float64(c.Use.Val)
			}
		}
		return out
	}
	small := use(50)
	for _, m := range []float64{60, 100, 400, 5000} {
		next := use(m)
		for key, x := range small {
			if y, ok := next[key]; ok && y < x*(1-1e-12) {
				t.Errorf("%s: use %g at %g kg, %g before", key, y, m, x)
			}
		}
		small = next
	}
}

func TestSort(t *testing.T) {
	u := func(x float64) unit.Known[unit.Ratio] { return unit.Of(unit.Ratio(x)) }
	c := []Check{{ID: "a", Word: Holds, Use: u(.2)}, {ID: "b", Word: NotKnown}, {ID: "c", Word: GivesWay, Use: u(1.1)}, {ID: "d", Word: Tight, Use: u(.9)},
		{ID: "e", Word: GivesWay}, {ID: "f", Word: GivesWay, Use: u(3)}, {ID: "g", Word: Holds, Use: u(.4)}}
	Sort(c)
	got := ""
	for _, x := range c {
		got += x.ID
	}
	if got != "efcbdga" {
		t.Errorf("order %s, want efcbdga", got)
	}
}
