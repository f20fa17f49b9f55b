package main

import (
	"encoding/json"
	"fmt"
	"io"
	"math"
	"mime/multipart"
	"net/http"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"duskweight/internal/catalog"
	"duskweight/internal/document"
	"duskweight/internal/model"
	"duskweight/internal/model/cell"
	"duskweight/internal/model/lift"
	"duskweight/internal/model/load"
	"duskweight/internal/model/panel"
	"duskweight/internal/model/sun"
	"duskweight/internal/model/unit"
)

// kind is what a value of the answer may be.
type kind string

const (
	number  kind = "number or null"
	must    kind = "number" // never null
	word    kind = "text"
	maybe   kind = "text or null"
	yesNo   kind = "bool or null"
	list    kind = "list"
	thing   kind = "object"
	orNone  kind = "object or null"
	counted kind = "pair of numbers"
)

// The contract of the answer: every key is always there. Keys beyond these are allowed.
var (
	wholeKeys   = map[string]kind{"version": must, "project": word, "sun": thing, "load": thing, "variants": list}
	sunKeys     = map[string]kind{"ghi_j_m2_year": number, "weather_seed": number, "why_not": list, "remarks": list, "tilt": orNone}
	loadKeys    = map[string]kind{"appliances_j_year": number, "night_j_mean": number, "night_j_max": number, "why_not": list}
	variantKeys = map[string]kind{"name": word, "verdict": maybe, "why_no_year": maybe, "ready": word, "plane_j_m2_year": number, "load_j_year": number, "standing_j_year": number, "bus_j_year": number, "snow_share": list,
		"direct_j_year": number, "delivered_j_year": number, "spilled_j_year": number, "unmet_j_year": number, "served_share": number, "nights_served": number, "nights": number,
		"essential_share": number, "nights_full": number, "nights_essential": number, "nights_most": number, "nights_dark": number, "night_share": number, "longest_gap_h": number, "to_full": number, "worn": list, "years": orNone, "backup": orNone, "sun_share": number, "shed": list, "waiting": list, "capital": number, "levelised_per_kwh": number, "cost": thing, "priced_parts": counted, "stores": list}
	backupKeys = map[string]kind{"hours": must, "starts": must, "energy_j": must, "direct_j": must, "out_j": must, "fuel_l": must, "cost": number}
	storeKeys  = map[string]kind{"name": word, "kind": word, "capacity_j": number, "round_trip": number, "in_j_year": number, "out_j_year": number, "loss_j_year": number, "change_j_year": number, "standing_j_year": number, "hoist": orNone, "water": orNone, "life": orNone}
	hoistKeys  = map[string]kind{"tension": list, "rope_up_n": number, "rope_down_n": number, "drum_torque_up_nm": number, "raise": thing, "lower": thing, "let_go": thing, "heat": thing, "checks": list,
		"ready": word, "reasons": list, "flags": list, "missing": list, "machine": thing, "stages": list, "cures": list, "mishaps": thing, "hazards": thing}
	partKeys = map[string]map[string]kind{
		"raise":  {"stalls": yesNo, "starts": yesNo, "current_a": number, "speed_m_s": number, "time_s": number, "energy_in_j": number},
		"lower":  {"runs_back": maybe, "current_a": number, "voltage_v": number, "speed_m_s": number, "time_s": number, "power_w": number, "energy_out_j": number, "steady": yesNo},
		"let_go": {"open_speed_m_s": number, "rotor_rad_s": number, "joined_speed_m_s": number},
		"heat":   {"of": maybe, "settles": yesNo, "winding_c": number, "run_s": number, "rest_s": number},
	}
	tensionKeys = map[string]kind{"part": must, "up_n": must, "down_n": must}
	checkKeys   = map[string]kind{"id": word, "part": word, "demand": number, "capacity": number, "unit": word, "factor_had": number, "factor_wanted": must, "use": number, "word": word, "source": word,
		"say": word, "case": word, "formula": word, "inputs": list, "cases": list, "missing": list, "also": list}
)

type object = map[string]any

// is says whether a value is of its kind.
func (k kind) is(v any) bool {
	switch x := v.(type) {
	case nil:
		return k == number || k == maybe || k == yesNo || k == orNone
	case float64:
		return (k == number || k == must) && !math.IsNaN(x) && !math.IsInf(x, 0)
	case string:
		return k == word || k == maybe
	case bool:
		return k == yesNo
	case []any:
		return k == list || k == counted && len(x) == 2
	case object:
		return k == thing || k == orNone
	}
	return false
}

// keysIn says which keys are missing or of another kind.
func keysIn(o object, keys map[string]kind) (wrong []string) {
	for name, k := range keys {
		v, ok := o[name]
		if !ok || !k.is(v) {
			wrong = append(wrong, fmt.Sprintf("%s is %v, want %s", name, v, k))
		}
	}
	slices.Sort(wrong)
	return wrong
}

// follows says what in an answer breaks the contract.
func follows(a object) (wrong []string) {
	at := func(where string, o object, keys map[string]kind) bool {
		bad := keysIn(o, keys)
		for _, w := range bad {
			wrong = append(wrong, where+": "+w)
		}
		return len(bad) == 0
	}
	one := func(where string, v any, words ...string) {
		if s, ok := v.(string); v != nil && (!ok || !slices.Contains(words, s)) {
			wrong = append(wrong, fmt.Sprintf("%s: %v is not one of %q", where, v, words))
		}
	}
	if !at("answer", a, wholeKeys) || !at("sun", a["sun"].(object), sunKeys) || !at("load", a["load"].(object), loadKeys) {
		return wrong
	}
	for i, v := range a["variants"].([]any) {
		v, where := v.(object), fmt.Sprintf("variant %d", i)
		if !at(where, v, variantKeys) {
			continue
		}
		if b, ok := v["backup"].(object); ok {
			at(where+" backup", b, backupKeys)
		}
		for _, l := range v["shed"].([]any) {
			at(where+" shed", l.(object), map[string]kind{"below": must, "hours": must, "energy_j": must})
		}
		for _, one := range v["waiting"].([]any) {
			at(where+" waiting", one.(object), map[string]kind{"name": word, "asked_j": must, "run_j": must, "missed_j": must})
		}
		one(where+" verdict", v["verdict"], "carries the night", "carries the essentials", "carries most nights", "carries part", "a learning piece")
		one(where+" ready", v["ready"], "yes", "not_known", "no")
		wrong = append(wrong, balances(where, v)...)
		for j, st := range v["stores"].([]any) {
			st, where := st.(object), fmt.Sprintf("%s store %d", where, j)
			if !at(where, st, storeKeys) {
				continue
			}
			one(where+" kind", st["kind"], "cells", "hoist")
			h, ok := st["hoist"].(object)
			if ok != (st["kind"] == "hoist") {
				wrong = append(wrong, where+": a hoist has its part, and nothing else has")
			}
			if !ok || !at(where, h, hoistKeys) {
				continue
			}
			for name, keys := range partKeys {
				at(where+" "+name, h[name].(object), keys)
			}
			one(where+" runs_back", h["lower"].(object)["runs_back"], "yes", "nudge", "no")
			one(where+" heat of", h["heat"].(object)["of"], "raise", "lower")
			for _, t := range h["tension"].([]any) {
				at(where+" tension", t.(object), tensionKeys)
			}
			for _, c := range h["checks"].([]any) {
				c := c.(object)
				at(where+" check", c, checkKeys)
				one(where+" check", c["word"], "holds", "tight", "gives_way", "not_known")
				if (c["word"] == "not_known") != (c["demand"] == nil || c["capacity"] == nil) && c["word"] == "not_known" && c["use"] != nil {
					wrong = append(wrong, fmt.Sprintf("%s: %v is not known and has a use", where, c["id"]))
				}
			}
		}
	}
	return wrong
}

// balances says which sums of a year do not close, to 1e-9 of their greatest member: sums of 8760 hours in double
// precision stay a thousand times under that.
func balances(where string, v object) (wrong []string) {
	if v["bus_j_year"] == nil {
		return nil
	}
	f := func(o object, name string) float64 { x, _ := o[name].(float64); return x }
	closed := func(what string, left float64, right ...float64) {
		sum, most := 0.0, math.Abs(left)
		for _, x := range right {
			sum += x
			most = max(most, math.Abs(x))
		}
		if math.Abs(left-sum) > 1e-9*most {
			wrong = append(wrong, fmt.Sprintf("%s: %s does not close: %v and %v", where, what, left, sum))
		}
	}
	backup, _ := v["backup"].(object)
	taken := []float64{f(v, "direct_j_year"), f(v, "spilled_j_year"), f(backup, "direct_j"), -f(backup, "energy_j")}
	for _, st := range v["stores"].([]any) {
		st := st.(object)
		taken = append(taken, f(st, "in_j_year"))
		closed(fmt.Sprint(st["name"]), f(st, "in_j_year"), f(st, "out_j_year"), f(st, "loss_j_year"), f(st, "change_j_year"))
	}
	closed("the line", f(v, "bus_j_year"), taken...)
	closed("the load", f(v, "load_j_year"), f(v, "direct_j_year"), f(backup, "direct_j"), f(v, "delivered_j_year"), f(v, "unmet_j_year"))
	return wrong
}

// managed is a plan with a pump that waits, a radio that goes off and a generator that comes on.
func managed() model.Document {
	doc := catalog.Sample()
	l := &doc.Project.Load
	l.Appliances[0].ShedBelow = unit.Of[unit.Ratio](0.4)
	l.Appliances = append(l.Appliances, load.Appliance{Name: "Pump", Count: unit.Of[unit.Count](1), Waits: unit.Yes, From: unit.Of(9 * unit.Hour), To: unit.Of(16 * unit.Hour), Supply: load.SupplyDc, Priority: load.PriorityNice, Purpose: load.ForPump,
		Power: unit.Of[unit.Power](60), DayEnergy: unit.Of[unit.Energy](60 * 3600)})
	for i := range doc.Variants {
		doc.Variants[i].Backup = model.Backup{Kind: model.BackupPetrol, Rated: unit.Of[unit.Power](800), Start: unit.Of[unit.Ratio](0.2), Stop: unit.Of[unit.Ratio](0.6), PricePerL: unit.Of[unit.Money](2)}
	}
	return doc
}

// contractDocuments are documents that work, that are empty, and that fail in each way that is foretold.
func contractDocuments(t *testing.T) map[string]model.Document {
	t.Helper()
	place, ok := catalog.Climate("Denver, Colorado")
	if !ok {
		t.Fatal("no such climate")
	}
	blank := model.Document{Edition: 1, Project: model.Project{Name: "New", Place: sun.Place{Sky: "described"}},
		Variants: []model.Variant{{Name: "First", Controller: panel.Controller{Kind: "tracking"}, Stores: []model.Store{{Hoist: &lift.Hoist{}}, {Cells: &cell.Bank{Kind: "lfp", Role: "night"}}}}}}
	hoist := func(change func(*lift.Hoist)) model.Document {
		doc := catalog.Sample()
		doc.Variants = doc.Variants[2:]
		change(doc.Variants[0].Stores[0].Hoist)
		return doc
	}
	return map[string]model.Document{
		"sample": catalog.Sample(), "blank": blank, "managed": managed(),
		"no variant":    {Edition: 1, Project: model.Project{Name: "New", Place: sun.Place{Sky: "described"}}, Variants: []model.Variant{}},
		"start":         catalog.Start(catalog.Answers{Name: "Hill cabin", Place: place, HeavyName: "Stone", Mass: 40, Height: 3, Lamps: 2, LampPower: 5, Hours: 4 * unit.Hour, Seed: 1}),
		"start, large":  catalog.Start(catalog.Answers{Name: "Barn", Place: place, HeavyName: "Tank", Mass: 5000, Height: 10, Lamps: 30, LampPower: 9, Seed: 2}),
		"will not back": hoist(func(h *lift.Hoist) { h.Train.Stages[0].Efficiency = unit.Of[unit.Ratio](0.45) }),
		"with a push": hoist(func(h *lift.Hoist) {
			h.Train.Stages[0].Efficiency, h.Train.Breakaway = unit.Of[unit.Ratio](0.65), unit.Of[unit.Ratio](2)
		}),
		"stalls":      hoist(func(h *lift.Hoist) { h.Raise.CurrentLimit = unit.Of[unit.Current](0.5) }),
		"base lifts":  hoist(func(h *lift.Hoist) { h.Base.Mass = unit.Of[unit.Mass](168) }),
		"head pulley": hoist(func(h *lift.Hoist) { h.Reeving.Sheaves[0].Rating = unit.Of(unit.Mass(240).Weight()) }),
		"races": hoist(func(h *lift.Hoist) {
			h.Lower.Loads = []lift.DCLoad{{Kind: "constant_power", Power: unit.Of[unit.Power](8)}}
		}),
		"one hold":         hoist(func(h *lift.Hoist) { h.Holds.Holds = h.Holds.Holds[:1] }),
		"rope not known":   hoist(func(h *lift.Hoist) { h.Rope.BreakingLoad = unit.Known[unit.Force]{} }),
		"travel not known": hoist(func(h *lift.Hoist) { h.Travel = unit.Known[unit.Length]{} }),
		"panel on motor":   hoist(func(h *lift.Hoist) { h.Raise.Feed = "panel" }),
	}
}

// answerOf evaluates a document through the command.
func answerOf(t *testing.T, name, doc string) object {
	t.Helper()
	code, stdout, stderr := command(t, doc, "evaluate", "-")
	if code != exitDone || stderr != "" {
		t.Fatalf("%s: %d %s", name, code, stderr)
	}
	var a object
	if err := json.Unmarshal([]byte(stdout), &a); err != nil {
		t.Fatalf("%s: %v", name, err)
	}
	return a
}

// Every answer has every key, of its kind, with words of the closed lists, and its years close.
func TestContract(t *testing.T) {
	ready := map[string]string{"will not back": "no", "with a push": "not_known", "stalls": "no", "base lifts": "no", "head pulley": "no", "races": "no", "one hold": "no", "rope not known": "not_known"}
	for name, doc := range contractDocuments(t) {
		data, err := document.Encode(doc)
		if err != nil {
			t.Fatal(err)
		}
		a := answerOf(t, name, string(data))
		for _, wrong := range follows(a) {
			t.Errorf("%s: %s", name, wrong)
		}
		if want := ready[name]; want != "" {
			if got := a["variants"].([]any)[0].(object)["ready"]; got != want {
				t.Errorf("%s: ready %v, want %s", name, got, want)
			}
		}
	}
}

// What is not known is null in the answer, never a zero and never a missing key.
func TestNotKnownIsNull(t *testing.T) {
	data, err := document.Encode(contractDocuments(t)["blank"])
	if err != nil {
		t.Fatal(err)
	}
	v := answerOf(t, "blank", string(data))["variants"].([]any)[0].(object)
	h := v["stores"].([]any)[0].(object)["hoist"].(object)
	for name, part := range map[string]object{"variant": v, "hoist": h, "raise": h["raise"].(object), "lower": h["lower"].(object), "let_go": h["let_go"].(object), "heat": h["heat"].(object)} {
		for key, x := range part {
			if n, ok := x.(float64); ok && key != "capital" {
				t.Errorf("a blank hoist's %s has %s = %v", name, key, n)
			}
		}
	}
}

// Each thing that follows looks for is found.
func TestContractFinds(t *testing.T) {
	data, err := document.Encode(catalog.Sample())
	if err != nil {
		t.Fatal(err)
	}
	for name, spoil := range map[string]func(v, st, h object){
		"missing key":   func(v, _, _ object) { delete(v, "nights") },
		"text":          func(v, _, _ object) { v["bus_j_year"] = "12" },
		"verdict":       func(v, _, _ object) { v["verdict"] = "fine" },
		"balance":       func(v, _, _ object) { v["spilled_j_year"] = v["spilled_j_year"].(float64)*1.0001 + 1 },
		"store":         func(_, st, _ object) { st["loss_j_year"] = st["loss_j_year"].(float64)*1.0001 + 1 },
		"store kind":    func(_, st, _ object) { st["kind"] = "spring" },
		"missing part":  func(_, _, h object) { delete(h["lower"].(object), "steady") },
		"check word":    func(_, _, h object) { h["checks"].([]any)[0].(object)["word"] = "ok" },
		"check missing": func(_, _, h object) { delete(h["checks"].([]any)[0].(object), "source") },
	} {
		a := answerOf(t, name, string(data))
		if wrong := follows(a); len(wrong) > 0 {
			t.Fatalf("the sample: %v", wrong)
		}
		v := a["variants"].([]any)[2].(object)
		st := v["stores"].([]any)[0].(object)
		spoil(v, st, st["hoist"].(object))
		if len(follows(a)) == 0 {
			t.Errorf("%s is not found", name)
		}
	}
}

// The worked chain of 80 kg over 3 m: two ropes carry it, one pulley on the lead line and one at the mass, 0.96 each; a
// drum of 30 mm to the middle of the rope, one gear of 100 : 1 at 75 %, a 12 V motor from a published data sheet (Pittman
// 14203S010), lamps at 9 V. Worked by hand: 80·9.81/(0.96 + 0.96²) = 417.1 N; 417.1·0.03/(100·0.75)/0.0327 + 0.3364 =
// 5.438 A; (12 − 5.438·0.3459)/0.0327 = 309.4 rad/s, 2·100·3/0.03/309.4 = 64.6 s; 12·5.438·64.6 = 4218 J. The printed
// digits are four: tolerance half a percent (the model's g is 9.80665).
func TestWorkedChainThroughDocument(t *testing.T) {
	data, err := os.ReadFile(filepath.Join("..", "..", "testdata", "projects", "chain_80kg_3m.json"))
	if err != nil {
		t.Fatal(err)
	}
	h := answerOf(t, "chain", string(data))["variants"].([]any)[0].(object)["stores"].([]any)[0].(object)["hoist"].(object)
	raise, lower := h["raise"].(object), h["lower"].(object)
	for _, row := range []struct {
		name string
		got  any
		want float64
	}{
		{"rope, raising, N", h["rope_up_n"], 417.1},
		{"rope, lowering, N", h["rope_down_n"], 369.0},
		{"drum torque, N·m", h["drum_torque_up_nm"], 417.1 * 0.03},
		{"current up, A", raise["current_a"], 5.438},
		{"time up, s", raise["time_s"], 64.6},
		{"energy in, J", raise["energy_in_j"], 4218},
		{"current down, A", lower["current_a"], 1.921},
		{"voltage down, V", lower["voltage_v"], 9},
		{"time down, s", lower["time_s"], 67.7},
		{"energy out, J", lower["energy_out_j"], 1170},
	} {
		if got, ok := row.got.(float64); !ok || math.Abs(got-row.want) > 0.005*row.want {
			t.Errorf("%s: %v, want %v", row.name, row.got, row.want)
		}
	}
	if lower["runs_back"] == nil || lower["steady"] != true || raise["stalls"] != false {
		t.Errorf("%v %v", raise, lower)
	}
}

// Refused: exit 1, nothing on standard output, one line a problem.
func TestRefusalLines(t *testing.T) {
	home(t)
	for name, tc := range map[string]struct{ doc, path string }{
		"unknown field":  {`{"duskweight":1,"project":{"name":"A","place":{"sky":"described"},"colour":"red"},"variants":[]}`, "project.colour"},
		"newer edition":  {`{"duskweight":2,"project":{"name":"A","place":{"sky":"described"}},"variants":[]}`, "duskweight"},
		"negative":       {`{"duskweight":1,"project":{"name":"A","place":{"sky":"described"},"load":{"standing":[{"name":"B","power_w":-1}]}},"variants":[]}`, "project.load.standing[0].power_w"},
		"text as number": {`{"duskweight":1,"project":{"name":"A","place":{"sky":"described"},"load":{"standing":[{"name":"B","power_w":"1"}]}},"variants":[]}`, "project.load.standing[0].power_w"},
	} {
		code, stdout, stderr := command(t, tc.doc, "evaluate", "-")
		if code != exitRefused || stdout != "" {
			t.Errorf("%s: %d %q", name, code, stdout)
		}
		found := false
		for _, line := range strings.Split(strings.TrimSpace(stderr), "\n") {
			path, say, ok := strings.Cut(line, ": ")
			if !ok || path == "" || say == "" {
				t.Errorf("%s: %q is not path: sentence", name, line)
			}
			found = found || path == tc.path
		}
		if !found {
			t.Errorf("%s: nothing at %s:\n%s", name, tc.path, stderr)
		}
	}
}

// What the running program exports is evaluated to the numbers that its pages show.
func TestExportGivesTheSameNumbers(t *testing.T) {
	data := home(t)
	s := start(t, "-addr", "127.0.0.1:0", "-data", data, "-no-browser")
	r, err := http.Post(s.url+"sample", "application/x-www-form-urlencoded", strings.NewReader(""))
	if err != nil {
		t.Fatal(err)
	}
	r.Body.Close()
	export := get(t, s.url+"projects/1/export.json")
	a := answerOf(t, "export", export)
	out := a["variants"].([]any)[0].(object)["stores"].([]any)[0].(object)["hoist"].(object)["lower"].(object)["energy_out_j"].(float64)
	page := strings.NewReplacer("\u00a0", " ", "\u202f", " ").Replace(get(t, s.url+"projects/1/variants/1"))
	if want := fmt.Sprintf("One full lift gives back %.2g Wh", out/3600); !strings.Contains(page, want) { // two figures, as the headline has
		t.Errorf("the page does not say %q", want)
	}
	// Imported again and exported again: the same, to the last digit.
	pr, pw := io.Pipe()
	form := multipart.NewWriter(pw)
	go func() {
		part, err := form.CreateFormFile("file", "sample.json")
		if err == nil {
			_, err = io.WriteString(part, export)
		}
		_ = form.Close()
		_ = pw.CloseWithError(err)
	}()
	r, err = http.Post(s.url+"import", form.FormDataContentType(), pr)
	if err != nil {
		t.Fatal(err)
	}
	r.Body.Close()
	if again := get(t, s.url+"projects/2/export.json"); again != export {
		t.Error("an import of the export is not exported the same")
	}
}
