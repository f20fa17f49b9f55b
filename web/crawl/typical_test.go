package crawl_test

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
	"duskweight/internal/model/water"
	"duskweight/web"
	"duskweight/web/cells"
	"duskweight/web/form"
	"duskweight/web/hoist"
	"duskweight/web/page"
	"duskweight/web/shelf"
	"duskweight/web/trials"
	"duskweight/web/typical"
	roomwater "duskweight/web/water"
	"duskweight/web/webtest"
)

// everyInput calls visit for the table of every form, on a thing with one blank row in every list.
func everyInput(visit inputVisitor) {
	of := web.AllTables()
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
	visitAll(visit, "hoist", hoist.HoistForm(), h)
	visitAll(visit, "trials", trials.TrialsForm(), h)
	for _, kind := range []string{"flooded_lead", "sealed_lead", "lfp", "nmc", "nickel_iron", "sodium_ion"} {
		visitAll(visit, "battery", cells.CellsForm(), &cell.Bank{Kind: cell.Chemistry(kind)})
	}
	visitAll(visit, "water", roomwater.WaterForm(), &water.Water{})
	visitAll(visit, "parts", of.Parts(), &model.Variant{Parts: make([]cost.Part, 1)})
	visitAll(visit, "money", of.Money(), &model.Project{})
	visitAll(visit, "shelf", shelf.ShelfForm(), &model.Shelf{Motors: make([]lift.Machine, 1), Stages: make([]model.SpareStage, 1), Drums: make([]model.SpareDrum, 1),
		Ropes: make([]model.SpareRope, 1), Pulleys: make([]model.SparePulley, 1), Panels: make([]model.SparePanel, 1), Cells: make([]model.SpareCells, 1)})
}

// inputVisitor is told of one input: its form, its path, what it is, and the thing with its own functions.
type inputVisitor func(form string, one anyInput)

type anyInput struct {
	path, label, hint, say string
	kind                   form.InputKind
	options                []form.Option
	usual                  func() (typical.Usual, bool)
	show, told             func(unit.System) string
	read                   func(string, unit.System) error
	remark                 func(unit.System) string
	take                   func() (source.Ref, bool)
	value                  func() (float64, bool)
	usualHint              func(unit.System) string
}

func visitAll[T any](visit inputVisitor, name string, parts []form.Part[T], t *T) {
	form.Form[T]{}.Walk(parts, t, func(in *form.Input[T]) {
		visit(name, anyInput{
			path: in.Path, label: in.Label, hint: in.Hint, say: form.TagOf[T](in.Path).Get("say"), kind: in.Kind, options: in.Options,
			usual: func() (typical.Usual, bool) {
				if in.Usual == nil {
					return typical.Usual{}, false
				}
				return in.Usual(t), true
			},
			show:   func(sys unit.System) string { return in.Show(t, sys) },
			told:   func(sys unit.System) string { return in.Told(t, sys) },
			read:   func(text string, sys unit.System) error { return in.Read(t, text, sys) },
			remark: func(sys unit.System) string { return in.RemarkOn(t, sys) },
			take:   func() (source.Ref, bool) { return in.TakeTypical(t) },
			value:  func() (float64, bool) { return in.Value(t) },

			usualHint: func(sys unit.System) string { return in.UsualHint(t, sys) },
		})
	})
}

// strengthPath are the values that bear the mass, or that keep it from being let go.
var strengthPath = regexp.MustCompile(`breaking_load|working_load|_yield_pa|yield_pa|strength_pa|proof_pa|knot_factor|age_factor|rated_torque|coupling_torque|set_screw_torque|holds\.holds\[0\]\.(torque|force)|side_pull|safety_factor|rated_current|fuse_a|cable_area`)

// Every number of every form has a typical value with its source, or a stated reason for having none; and a plausible
// range with its source. No strength has a typical value. Every input takes "not known", but for what is named here.
func TestEveryInputHasAHabit(t *testing.T) {
	inputs, offered, reasons := 0, 0, map[string]int{}
	everyInput(func(of string, in anyInput) {
		at := of + " " + in.path
		inputs++
		if in.kind != form.AsNumber {
			return // words and choices are the reader's own
		}
		u, ok := in.usual()
		if !ok {
			t.Errorf("%s: neither a typical value nor a reason for having none", at)
			return
		}
		switch {
		case u.Typical() && u.Why != "", !u.Typical() && u.Why == "":
			t.Errorf("%s: typical %q, reason %q", at, u.Habit.Take, u.Why)
		case u.Typical() && strengthPath.MatchString(in.path):
			t.Errorf("%s: a strength with a typical value", at)
		case !u.Typical() && strengthPath.MatchString(in.path) && u.Why != typical.WhyStrength:
			t.Errorf("%s: a strength with the reason %q", at, u.Why)
		case u.Typical():
			offered++
		default:
			reasons[u.Why]++
		}
		if u.From.Key == "" || u.Source().String() == "" {
			t.Errorf("%s: no source", at)
		}
		for _, text := range []string{u.Habit.Take, u.Habit.Low, u.Habit.High} {
			if _, known, err := u.Quantity.Parse(text, unit.Metric); err != nil || !known && text != "" {
				t.Errorf("%s: %q is read as known %v, %v", at, text, known, err)
			}
		}
		if u.Habit.High == "" && u.Quantity.PlausibleRange(unit.Metric) == "" && u.Why != typical.WhyYours {
			t.Errorf("%s: no plausible range", at)
		}
		if u.Habit.High != "" && u.Low >= u.High || u.Typical() && (u.Take < u.Low || u.Take > u.High) {
			t.Errorf("%s: %v of %v to %v", at, u.Take, u.Low, u.High)
		}
		if u.Counts {
			if !strings.Contains(in.hint+in.usualHint(unit.Metric), "empty") {
				t.Errorf("%s: an empty field does not say what it counts as", at)
			}
		}
	})
	t.Logf("%d inputs, %d of them numbers with a typical value; without one: %v", inputs, offered, reasons)
	if inputs < 300 || offered < 60 {
		t.Errorf("%d inputs and %d typical values: the walk misses some", inputs, offered)
	}
}

// Every typical value is taken by its field and lies inside of what is usual; a value far off is told so, in both systems
// of units, and never refused for that.
func TestTypicalIsTaken(t *testing.T) {
	everyInput(func(form string, in anyInput) {
		u, ok := in.usual()
		if !ok || u.Why == typical.WhyWorked { // those of a room wait for its mean
			return
		}
		if u.Typical() {
			if from, ok := in.take(); !ok || from.String() == "" {
				t.Errorf("%s %s: the typical value is not taken", form, in.path)
			}
			if in.remark(unit.Metric) != "" {
				t.Errorf("%s %s: %q is said of the typical value", form, in.path, in.remark(unit.Metric))
			}
			if v, known := in.value(); !known && u.Take != 0 || known && v != u.Take {
				t.Errorf("%s %s: took %v, known %v, want %v", form, in.path, v, known, u.Take)
			}
		}
		for _, sys := range []unit.System{unit.Metric, unit.Imperial} {
			if u.Habit.High == "" {
				continue
			}
			if say := u.Remark(u.High*10+1, sys); !strings.Contains(say, "usual") {
				t.Errorf("%s %s: nothing is said of a value ten times too large", form, in.path)
			}
			if u.Remark(u.Low, sys) != "" || u.Remark(u.High, sys) != "" {
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
	everyInput(func(of string, in anyInput) {
		for part := range needsAnswer {
			if strings.Contains(in.path, part) {
				return
			}
		}
		switch in.kind {
		case form.AsNumber:
			for _, say := range []string{"", "?", "not known", "I do not know", "Unknown.", "don’t know"} {
				if err := in.read(say, unit.Metric); err != nil {
					t.Errorf("%s %s: %q is refused: %v", of, in.path, say, err)
				}
				if v, known := in.value(); known && v != 0 {
					t.Errorf("%s %s: %q makes it %v", of, in.path, say, v)
				}
			}
		case form.AsChoice:
			if !strings.Contains("|"+joined(in.options), "||") && in.options[0].Value != "" {
				t.Errorf("%s %s: no choice for not known: %v", of, in.path, in.options)
			}
		default:
			if err := in.read("", unit.Metric); err != nil {
				t.Errorf("%s %s: empty text is refused", of, in.path)
			}
		}
		n++
	})
	if n < 300 {
		t.Errorf("only %d inputs", n)
	}
}

func joined(os []form.Option) string {
	var words []string
	for _, o := range os {
		words = append(words, o.Value)
	}
	return strings.Join(words, "|")
}

// Every row of the tables belongs to an input.
func TestHabitsBelongToInputs(t *testing.T) {
	names := map[string]bool{}
	for _, table := range []map[string]typical.Habit{typical.HoistHabits, typical.BuildHabits, typical.PlainHabits} {
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
	for _, v := range []any{lift.Hoist{}, lift.Piece{}, lift.Sheave{}, lift.Stage{}, lift.Rope{}, lift.Drum{}, lift.Machine{}, model.SpareStage{}, model.SparePulley{}, model.SparePanel{}, model.SpareCells{}, lift.Bench{}, lift.DCLoad{}, lift.Post{}, lift.Hold{}, lift.Trials{}, lift.LoadStep{}, lift.RaiseTrial{}, lift.LowerTrial{},
		lift.WarmthTrial{}, lift.HeldTrial{}, lift.Proof{}, model.Project{}, model.Variant{}, sun.Horizon{}, panel.Array{}, panel.Sheet{}, panel.Efficiency{}, load.Load{}, load.Appliance{}, load.Standing{}, cell.Bank{}, cost.Part{}, cost.Terms{}} {
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
		f, ok := form.FieldNamed(t, name)
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
	s := webtest.NewSite(t)
	p, vs := webtest.Create(t, s, "sample", catalog.Sample())
	page := page.VariantURL(p.ID, vs[0].ID) + "/hoist/0?depth=bench&all=1"
	sent, _ := webtest.FormAt(t, webtest.Ask(s.Handler(), "GET", page, nil).Body.String(), page)
	const path = "stores[0].hoist.base.width_m"
	sent.Set(path, "12 m")
	w := webtest.Ask(s.Handler(), "POST", page, sent, "Accept", "application/json")
	var got struct{ Remarks map[string]string }
	if err := json.Unmarshal(w.Body.Bytes(), &got); err != nil || w.Code != http.StatusOK {
		t.Fatalf("%d %v: %s", w.Code, err, w.Body)
	}
	const want = "Far outside the usual 0.2 to 3 m: check the unit."
	if say := strings.ReplaceAll(got.Remarks[form.FieldID(path)], unit.Space, " "); say != want || len(got.Remarks) != 1 {
		t.Errorf("the script is told %q", got.Remarks)
	}
	body := strings.ReplaceAll(webtest.Ask(s.Handler(), "GET", page, nil).Body.String(), unit.Space, " ")
	if n := strings.Count(body, want); n != 1 {
		t.Errorf("the page says it %d times", n)
	}
	guide := webtest.Ask(s.Handler(), "GET", "/help/typical", nil).Body.String()
	for _, say := range []string{"30 CFR 75.1436", "table 13-6", typical.WhyStrength, typical.WhySize, typical.WhyMeasure, "Efficiency of a pulley", "87"} {
		if !strings.Contains(webtest.Unescape(guide), say) {
			t.Errorf("the guide does not say %q", say)
		}
	}
}

// Every table of the program can be made: each path exists in the design.
func TestTablesFitTheDesign(*testing.T) {
	everyInput(func(string, anyInput) {})
}
