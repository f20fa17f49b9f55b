package web

import (
	"encoding/json"
	"net/http"
	"reflect"
	"regexp"
	"strings"
	"testing"

	"duskweight/internal/catalog"
	"duskweight/internal/model"
	"duskweight/internal/model/cell"
	"duskweight/internal/model/cost"
	"duskweight/internal/model/lift"
	"duskweight/internal/model/load"
	"duskweight/internal/model/panel"
	"duskweight/internal/model/source"
	"duskweight/internal/model/sun"
	"duskweight/internal/model/unit"
)

// everyInput calls visit for the table of every form, on a thing with one blank row in every list.
func everyInput(visit inputVisitor) {
	of := AllTables()
	p := &model.Project{Place: sun.Place{Monthly: &sun.Monthly{}, Horizon: make([]sun.Horizon, 1)}}
	visitAll(visit, "place", of.Place(p), p)
	visitAll(visit, "load", of.Load(), &load.Load{Appliances: make([]load.Appliance, 1), Standing: make([]load.Standing, 1)})
	visitAll(visit, "variant", of.Variant(), &model.Variant{Panels: make([]panel.Array, 1), Standing: make([]load.Standing, 1), Controller: panel.Controller{Curve: make([]panel.Efficiency, 1)}})
	h := &lift.Hoist{Mass: make([]lift.Piece, 1)}
	h.Reeving.Sheaves, h.Train.Stages, h.Lower.Loads, h.Structure.Posts = make([]lift.Sheave, 1), make([]lift.Stage, 1), make([]lift.DCLoad, 1), make([]lift.Post, 1)
	h.Holds.Holds, h.Holds.UpperStops = make([]lift.Hold, 1), make([]lift.Stop, 1)
	h.Machine.BenchR, h.Machine.BenchI0, h.Machine.BenchK = make([]lift.Bench, 1), make([]lift.Bench, 1), make([]lift.Bench, 1)
	h.Trials.Raises, h.Trials.Lowers, h.Trials.Warmth = make([]lift.RaiseTrial, 1), make([]lift.LowerTrial, 1), make([]lift.WarmthTrial, 1)
	h.Trials.Held, h.Trials.Failures = make([]lift.HeldTrial, 1), make([]lift.Failure, 1)
	visitAll(visit, "hoist", of.Hoist(), h)
	visitAll(visit, "trials", of.Trials(), h)
	for _, kind := range []string{"flooded_lead", "sealed_lead", "lfp", "nmc", "nickel_iron", "sodium_ion"} {
		visitAll(visit, "battery", of.Cells(), &cell.Bank{Kind: kind})
	}
	visitAll(visit, "parts", of.Parts(), &model.Variant{Parts: make([]cost.Part, 1)})
	visitAll(visit, "money", of.Money(), &cost.Terms{})
}

// inputVisitor is told of one input: its form, its path, what it is, and the thing with its own functions.
type inputVisitor func(form string, one anyInput)

type anyInput struct {
	path, label, hint, say string
	kind                   inputKind
	options                []option
	usual                  func() (usual, bool)
	show                   func(unit.System) string
	read                   func(string, unit.System) error
	remark                 func(unit.System) string
	take                   func() (source.Ref, bool)
	value                  func() (float64, bool)
	usualHint              func(unit.System) string
}

func visitAll[T any](visit inputVisitor, name string, parts []part[T], t *T) {
	form[T]{}.walk(parts, t, func(in *input[T]) {
		visit(name, anyInput{
			path: in.path, label: in.label, hint: in.hint, say: tagOf[T](in.path).Get("say"), kind: in.kind, options: in.options,
			usual: func() (usual, bool) {
				if in.usual == nil {
					return usual{}, false
				}
				return in.usual(t), true
			},
			show:   func(sys unit.System) string { return in.show(t, sys) },
			read:   func(text string, sys unit.System) error { return in.read(t, text, sys) },
			remark: func(sys unit.System) string { return in.remarkOn(t, sys) },
			take:   func() (source.Ref, bool) { return in.takeTypical(t) },
			value:  func() (float64, bool) { return in.value(t) },

			usualHint: func(sys unit.System) string { return in.usualHint(t, sys) },
		})
	})
}

// strengthPath are the values that bear the mass, or that keep it from being let go.
var strengthPath = regexp.MustCompile(`breaking_load|working_load|_yield_pa|yield_pa|strength_pa|proof_pa|knot_factor|age_factor|rated_torque|coupling_torque|set_screw_torque|holds\.holds\[0\]\.(torque|force)|side_pull|safety_factor|rated_current|fuse_a|cable_area`)

// Every number of every form has a typical value with its source, or a stated reason for having none; and a plausible
// range with its source. No strength has a typical value. Every input takes "not known", but for what is named here.
func TestEveryInputHasAHabit(t *testing.T) {
	inputs, typical, reasons := 0, 0, map[string]int{}
	everyInput(func(form string, in anyInput) {
		at := form + " " + in.path
		inputs++
		if in.kind != asNumber {
			return // words and choices are the reader's own
		}
		u, ok := in.usual()
		if !ok {
			t.Errorf("%s: neither a typical value nor a reason for having none", at)
			return
		}
		switch {
		case u.typical() && u.why != "", !u.typical() && u.why == "":
			t.Errorf("%s: typical %q, reason %q", at, u.habit.take, u.why)
		case u.typical() && strengthPath.MatchString(in.path):
			t.Errorf("%s: a strength with a typical value", at)
		case !u.typical() && strengthPath.MatchString(in.path) && u.why != whyStrength:
			t.Errorf("%s: a strength with the reason %q", at, u.why)
		case u.typical():
			typical++
		default:
			reasons[u.why]++
		}
		if u.from.Key == "" || u.source().String() == "" {
			t.Errorf("%s: no source", at)
		}
		for _, text := range []string{u.habit.take, u.habit.low, u.habit.high} {
			if _, known, err := u.quantity.Parse(text, unit.Metric); err != nil || !known && text != "" {
				t.Errorf("%s: %q is read as known %v, %v", at, text, known, err)
			}
		}
		if u.habit.high == "" && u.quantity.PlausibleRange(unit.Metric) == "" && u.why != whyYours {
			t.Errorf("%s: no plausible range", at)
		}
		if u.habit.high != "" && u.low >= u.high || u.typical() && (u.take < u.low || u.take > u.high) {
			t.Errorf("%s: %v of %v to %v", at, u.take, u.low, u.high)
		}
		if u.counts {
			if !strings.Contains(in.hint+in.usualHint(unit.Metric), "empty") {
				t.Errorf("%s: an empty field does not say what it counts as", at)
			}
		}
	})
	t.Logf("%d inputs, %d of them numbers with a typical value; without one: %v", inputs, typical, reasons)
	if inputs < 300 || typical < 60 {
		t.Errorf("%d inputs and %d typical values: the walk misses some", inputs, typical)
	}
}

// Every typical value is taken by its field and lies inside of what is usual; a value far off is told so, in both systems
// of units, and never refused for that.
func TestTypicalIsTaken(t *testing.T) {
	everyInput(func(form string, in anyInput) {
		u, ok := in.usual()
		if !ok || u.why == whyWorked { // those of a room wait for its mean
			return
		}
		if u.typical() {
			if from, ok := in.take(); !ok || from.String() == "" {
				t.Errorf("%s %s: the typical value is not taken", form, in.path)
			}
			if in.remark(unit.Metric) != "" {
				t.Errorf("%s %s: %q is said of the typical value", form, in.path, in.remark(unit.Metric))
			}
			if v, known := in.value(); !known && u.take != 0 || known && v != u.take {
				t.Errorf("%s %s: took %v, known %v, want %v", form, in.path, v, known, u.take)
			}
		}
		for _, sys := range []unit.System{unit.Metric, unit.Imperial} {
			if u.habit.high == "" {
				continue
			}
			if say := u.remark(u.high*10+1, sys); !strings.Contains(say, "usual") {
				t.Errorf("%s %s: nothing is said of a value ten times too large", form, in.path)
			}
			if u.remark(u.low, sys) != "" || u.remark(u.high, sys) != "" {
				t.Errorf("%s %s: the ends of what is usual are called unusual", form, in.path)
			}
		}
	})
}

// needsAnswer are the fields without "not known": their row has another way out, which the reason names.
var needsAnswer = map[string]string{
	"place.sky":                 "how the sky is known: in words is the way without knowledge",
	"place.monthly.":            "a table of twelve: take a place near you, or tell the sky in words",
	"place.horizon":             "a point of the skyline that is not known is left out",
	"controller.kind":           "a plan without a controller has none",
	"controller.efficiency_cur": "a point that is not known is left out: without points the typical curve counts",
	"].supply":                  "straight from the line, until an inverter is said",
	"].priority":                "essential, until it is said to be nice to have",
	"parts[0].of":               "of the store, until it is said to be another's",
}

// "I do not know" works in every field, in every spelling of it, and leaves the value not known.
func TestNotKnownIsTaken(t *testing.T) {
	n := 0
	everyInput(func(form string, in anyInput) {
		for part := range needsAnswer {
			if strings.Contains(in.path, part) {
				return
			}
		}
		switch in.kind {
		case asNumber:
			for _, say := range []string{"", "?", "not known", "I do not know", "Unknown.", "don’t know"} {
				if err := in.read(say, unit.Metric); err != nil {
					t.Errorf("%s %s: %q is refused: %v", form, in.path, say, err)
				}
				if v, known := in.value(); known && v != 0 {
					t.Errorf("%s %s: %q makes it %v", form, in.path, say, v)
				}
			}
		case asChoice:
			if !strings.Contains("|"+joined(in.options), "||") && in.options[0].value != "" {
				t.Errorf("%s %s: no choice for not known: %v", form, in.path, in.options)
			}
		default:
			if err := in.read("", unit.Metric); err != nil {
				t.Errorf("%s %s: empty text is refused", form, in.path)
			}
		}
		n++
	})
	if n < 300 {
		t.Errorf("only %d inputs", n)
	}
}

func joined(os []option) string {
	var words []string
	for _, o := range os {
		words = append(words, o.value)
	}
	return strings.Join(words, "|")
}

// Every row of the tables belongs to an input.
func TestHabitsBelongToInputs(t *testing.T) {
	names := map[string]bool{}
	for _, table := range []map[string]habit{hoistHabits, buildHabits, plainHabits} {
		for name := range table {
			if names[name] {
				t.Errorf("%s stands in two tables", name)
			}
			names[name] = true
		}
	}
	used := 0
	for name := range names {
		owner, path, _ := strings.Cut(name, " ")
		if !pathExists(ownerTypes[owner], strings.ReplaceAll(path, "[]", "")) {
			t.Errorf("%s belongs to no value", name)
		}
		used++
	}
	if used < 150 {
		t.Errorf("%d rows", used)
	}
}

var ownerTypes = map[string]reflect.Type{}

func init() {
	for _, v := range []any{lift.Hoist{}, lift.Piece{}, lift.Sheave{}, lift.Stage{}, lift.Rope{}, lift.Drum{}, lift.Machine{}, model.SpareStage{}, model.SparePulley{}, lift.Bench{}, lift.DCLoad{}, lift.Post{}, lift.Hold{}, lift.Trials{}, lift.LoadStep{}, lift.RaiseTrial{}, lift.LowerTrial{},
		lift.WarmthTrial{}, lift.HeldTrial{}, model.Project{}, model.Variant{}, sun.Horizon{}, panel.Array{}, panel.Efficiency{}, load.Load{}, load.Appliance{}, load.Standing{}, cell.Bank{}, cost.Part{}, cost.Terms{}} {
		ownerTypes[reflect.TypeOf(v).String()] = reflect.TypeOf(v)
	}
}

func pathExists(t reflect.Type, path string) bool {
	for name := range strings.SplitSeq(path, ".") {
		if t == nil {
			return false
		}
		for t.Kind() == reflect.Pointer || t.Kind() == reflect.Slice || t.Kind() == reflect.Array {
			t = t.Elem()
		}
		f, ok := fieldNamed(t, name)
		if !ok {
			return false
		}
		t = f.Type
	}
	return true
}

// A save of one field far outside of what is usual is taken and told so, as the answer to the script and on the page that
// comes back; the page of the guide lists every typical value with its source.
func TestRemarkWhenSaved(t *testing.T) {
	s := newSite(t)
	p, vs := create(t, s, "sample", catalog.Sample())
	page := variantURL(p.ID, vs[0].ID) + "/hoist/0"
	sent, _ := formAt(t, ask(s.Handler(), "GET", page, nil).Body.String(), page)
	const path = "stores[0].hoist.base.width_m"
	sent.Set(path, "12 m")
	w := ask(s.Handler(), "POST", page, sent, "Accept", "application/json")
	var got struct{ Remarks map[string]string }
	if err := json.Unmarshal(w.Body.Bytes(), &got); err != nil || w.Code != http.StatusOK {
		t.Fatalf("%d %v: %s", w.Code, err, w.Body)
	}
	const want = "Far outside the usual 0.2 to 3 m: check the unit."
	if say := strings.ReplaceAll(got.Remarks[fieldID(path)], unit.Space, " "); say != want || len(got.Remarks) != 1 {
		t.Errorf("the script is told %q", got.Remarks)
	}
	body := strings.ReplaceAll(ask(s.Handler(), "GET", page, nil).Body.String(), unit.Space, " ")
	if n := strings.Count(body, want); n != 1 {
		t.Errorf("the page says it %d times", n)
	}
	guide := ask(s.Handler(), "GET", "/help/typical", nil).Body.String()
	for _, say := range []string{"30 CFR 75.1436", "table 13-6", whyStrength, whySize, whyMeasure, "Efficiency of a pulley", "87"} {
		if !strings.Contains(unescape(guide), say) {
			t.Errorf("the guide does not say %q", say)
		}
	}
}

// Every table of the program can be made: each path exists in the design.
func TestTablesFitTheDesign(*testing.T) {
	everyInput(func(string, anyInput) {})
}
