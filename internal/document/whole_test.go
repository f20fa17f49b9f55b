package document_test

import (
	"bytes"
	"encoding/json"
	"fmt"
	"math"
	"os"
	"os/exec"
	"strconv"
	"strings"
	"testing"

	"duskweight/internal/catalog"
	"duskweight/internal/document"
	"duskweight/internal/model"
	"duskweight/internal/model/sun"
	"duskweight/internal/model/unit"
)

// wholeCase is what the second calculation is given: the document, the sky over the place, and the hours in which the
// sun is down, of which it takes only what the sun's last hundredths of a degree decide. bus is the power at the line of
// each variant: what the stores come to is then compared to rounding, and the way from the sun to the line beside it.
type wholeCase struct {
	Document json.RawMessage      `json:"document"`
	Sky      map[string][]float64 `json:"sky"`
	Down     []bool               `json:"down"`
	Bus      [][]float64          `json:"bus"`
}

// wholeTwin is what it answers: what `evaluate` prints, under its names, and beside it what the pages show more.
type wholeTwin struct {
	Sun, Load map[string]any
	Variants  []map[string]any
}

// Whole answers, from the document to verdict and money, against a second calculation in another language that was
// written from the equations' text: the example, first plans from three answers at five places, and random plans.
func TestWholeTwin(t *testing.T) {
	if testing.Short() {
		t.Skip("one document after the other: not in a short run")
	}
	python, err := exec.LookPath("python3")
	if err != nil {
		t.Skip("python3 is not on this machine: the second calculation of whole answers was NOT compared")
	}
	random := 8
	if os.Getenv("DUSKWEIGHT_TORTURE") != "" {
		random = 400
	}
	docs := append([]model.Document{catalog.Sample()}, startPlans(t)...)
	docs = append(docs, randomPlans(t, python, random)...)
	words := map[string]int{}
	for len(docs) > 0 { // some at a time: a year of each is held
		n := min(len(docs), 14)
		for _, r := range sameWhole(t, python, docs[:n]) {
			for _, v := range r.Variants {
				words[v.Verdict]++
			}
		}
		docs = docs[n:]
	}
	for _, word := range []string{model.CarriesNight, model.CarriesMost, model.CarriesPart, model.LearningPiece} {
		if words[word] < 3 {
			t.Errorf("only %d plans of %q: they are too tame", words[word], word)
		}
	}
}

// sameWhole evaluates some documents both ways and compares.
func sameWhole(t *testing.T, python string, docs []model.Document) []model.Result {
	t.Helper()
	cases, results := make([]wholeCase, len(docs)), make([]model.Result, len(docs))
	for i, doc := range docs {
		results[i] = model.Evaluate(doc, "")
		cases[i] = wholeCaseOf(t, doc, results[i])
	}
	body, err := json.Marshal(cases)
	if err != nil {
		t.Fatal(err)
	}
	var twins []wholeTwin
	if err := json.Unmarshal(twin(t, python, body, "whole.py"), &twins); err != nil {
		t.Fatal(err)
	}
	for i, r := range results {
		w := whole{t: t, at: fmt.Sprintf("document %d (%s)", i, docs[i].Project.Name)}
		answer := w.plain(r.Answer())
		w.same("sun", answer["sun"], twins[i].Sun)
		w.same("load", answer["load"], twins[i].Load)
		for k, v := range answer["variants"].([]any) {
			at := whole{t: t, at: fmt.Sprintf("%s, variant %d", w.at, k), load: float64(r.Variants[k].Year.Load)}
			at.same("", v, twins[i].Variants[k])
			at.beside(r.Variants[k], twins[i].Variants[k])
		}
	}
	return results
}

func wholeCaseOf(t *testing.T, doc model.Document, r model.Result) wholeCase {
	t.Helper()
	body, err := document.Encode(doc)
	if err != nil {
		t.Fatal(err)
	}
	sky := r.Ground.Sky
	c := wholeCase{Document: body, Sky: map[string][]float64{"ghi": sky.GHI, "dhi": sky.DHI, "tair": sky.TAir}, Down: sky.Geometry.Down}
	for k, v := range r.Variants {
		if !v.YearKnown {
			t.Fatalf("%s, variant %d: no year: %s", doc.Project.Name, k, v.WhyNoYear)
		}
		c.Bus = append(c.Bus, v.Bus.Power)
	}
	return c
}

// twin runs a script of the second calculation.
func twin(t *testing.T, python string, in []byte, script string, args ...string) []byte {
	t.Helper()
	cmd := exec.CommandContext(t.Context(), python, append([]string{"../../testdata/twin/" + script}, args...)...)
	cmd.Stdin = bytes.NewReader(in)
	var complaint bytes.Buffer
	cmd.Stderr = &complaint
	out, err := cmd.Output()
	if err != nil {
		t.Fatalf("the second calculation failed: %v\n%s", err, complaint.String())
	}
	return out
}

// startPlans are first plans from three answers: far north and south, the tropics, a desert, with a mass of each size.
func startPlans(t *testing.T) []model.Document {
	t.Helper()
	climate := func(name string) sun.Place {
		for _, c := range catalog.Climates() {
			if c.Name == name {
				return c.Place
			}
		}
		t.Fatalf("no climate %q ships", name)
		return sun.Place{}
	}
	described := func(latitude unit.Angle, sky string) sun.Place {
		return sun.Place{Latitude: unit.Of(latitude * unit.Degree), Sky: "described", Described: sun.DescribedSky(sky)}
	}
	return []model.Document{
		catalog.Start(catalog.Answers{Name: "North", Place: climate("Stockholm Arlanda"), Mass: 300, Height: 3, Lamps: 3, LampPower: 5, Hours: 4 * unit.Hour, Seed: 1}),
		catalog.Start(catalog.Answers{Name: "Highland", Place: climate("Addis Ababa"), Mass: 80, Height: 2.5, Lamps: 2, LampPower: 3, Hours: 5 * unit.Hour, Seed: 2}),
		catalog.Start(catalog.Answers{Name: "South", Place: climate("Cape Town"), Mass: 1000, Height: 5, Lamps: 4, LampPower: 8, Seed: 3}),
		catalog.Start(catalog.Answers{Name: "Desert", Place: described(31.5, "desert"), Mass: 200, Height: 4, Lamps: 1, LampPower: 1, Hours: 3 * unit.Hour, Seed: 4}),
		catalog.Start(catalog.Answers{Name: "Far south", Place: described(-62, "very_cloudy"), Mass: 2000, Height: 10, Lamps: 1, LampPower: 0.5, Hours: 2 * unit.Hour, Seed: 5}),
	}
}

// randomPlans are documents that the second calculation's own generator makes.
func randomPlans(t *testing.T, python string, count int) []model.Document {
	t.Helper()
	sample, err := document.Encode(catalog.Sample())
	if err != nil {
		t.Fatal(err)
	}
	var raw []json.RawMessage
	if err := json.Unmarshal(twin(t, python, sample, "plans.py", strconv.Itoa(count), "20"), &raw); err != nil {
		t.Fatal(err)
	}
	var docs []model.Document
	for i, body := range raw {
		doc, err := document.Decode(body)
		if err == nil {
			err = model.Check(doc).Err()
		}
		if err != nil {
			t.Fatalf("random plan %d is refused: %v", i, err)
		}
		docs = append(docs, doc)
	}
	return docs
}

// whole compares one answer: energies to 1e-6 of the year's load, for both end a year that agrees with its start to 1e-9
// of a capacity; all else to 1e-6 of itself.
type whole struct {
	t    *testing.T
	at   string
	load float64
}

func (w whole) plain(answer any) map[string]any {
	body, err := json.Marshal(answer)
	var out map[string]any
	if err == nil {
		err = json.Unmarshal(body, &out)
	}
	if err != nil {
		w.t.Fatal(err)
	}
	return out
}

// same walks through what the twin says.
func (w whole) same(path string, got, want any) {
	w.t.Helper()
	switch want := want.(type) {
	case map[string]any:
		of, ok := got.(map[string]any)
		if !ok {
			w.t.Errorf("%s, %s: %v, the twin has %v", w.at, path, got, want)
			return
		}
		for key, v := range want {
			if key != "beside" {
				w.same(strings.TrimPrefix(path+"."+key, "."), of[key], v)
			}
		}
	case []any:
		of, ok := got.([]any)
		if !ok || len(of) != len(want) {
			w.t.Errorf("%s, %s: %v, the twin has %v", w.at, path, got, want)
			return
		}
		for i, v := range want {
			w.same(fmt.Sprintf("%s[%d]", path, i), of[i], v)
		}
	case float64:
		if got == nil && want == 0 { // a store that gives nothing has no capacity
			return
		}
		x, ok := got.(float64)
		within := 1e-6 * math.Abs(want)
		if strings.HasSuffix(path, "_j_year") {
			within = max(1e-6*w.load, 1e-9*want)
		}
		if !ok || !(math.Abs(x-want) <= within+1e-9) {
			w.t.Errorf("%s, %s: %v, the twin has %v", w.at, path, got, want)
		}
	default:
		if got != want {
			w.t.Errorf("%s, %s: %v, the twin has %v", w.at, path, got, want)
		}
	}
}

// beside compares what the pages show and `evaluate` does not print. The two calculations of the sun are held together
// within 0.2 % of a year: the sun's place within 0.02°, and hours of sunrise that each ends in its own way.
func (w whole) beside(v model.VariantResult, twin map[string]any) {
	w.t.Helper()
	b := twin["beside"].(map[string]any)
	roughly := func(what string, got float64, want any) {
		if x, ok := want.(float64); ok && !(math.Abs(got-x) <= 2e-3*x) {
			w.t.Errorf("%s, %s: %v, the twin has %v", w.at, what, got, x)
		}
	}
	roughly("light on the panels", float64(v.Plane.Val), b["plane_j_m2"])
	roughly("power at the line", float64(v.Bus.Total), b["bus_j"])
	for i, months := range b["snow"].([]any) {
		if (months == nil) != (v.Snow[i] == nil) {
			w.t.Errorf("%s, snow on panels %d: %v, the twin has %v", w.at, i, v.Snow[i], months)
			continue
		}
		if months != nil {
			for m, want := range months.([]any) {
				roughly(fmt.Sprintf("snow on panels %d in month %d", i, m+1), v.Snow[i][m], want)
			}
		}
	}
	y := v.Year
	w.same("nights with what is essential", float64(y.NightsEssential), b["essential_nights"])
	w.same("longest outage", float64(y.LongestOutage.Hours), b["outage_hours"])
	w.same("worst week_j_year", float64(y.WorstWeek.Unmet), b["week_j"])
	w.same("npv", orNil(v.Cost.NPV), b["npv"])
	w.same("a night", orNil(v.Cost.PerNight), b["per_night"])
	for m, want := range b["surplus_by_month"].([]any) {
		sum := 0.0
		for _, c := range y.Typical[m] {
			sum += float64(c.Surplus()) * 3600 * float64(monthLength[m])
		}
		w.same(fmt.Sprintf("left over in month %d_j_year", m+1), sum, want)
	}
	for i, s := range twin["stores"].([]any) {
		if cells, ok := s.(map[string]any)["beside"].(map[string]any); ok {
			w.same("current", float64(model.CellsOf(v.Stores[i]).Current), cells["current_a"])
		}
	}
}

var monthLength = [12]int{31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31}

func orNil(k unit.Known[unit.Money]) any {
	if !k.Is {
		return nil
	}
	return float64(k.Val)
}
