package web

import (
	"bytes"
	"compress/gzip"
	"encoding/csv"
	"html"
	"math"
	"net/http"
	"path"
	"regexp"
	"strings"
	"testing"
	"time"

	"duskweight/internal/catalog"
	"duskweight/internal/model"
	"duskweight/internal/model/unit"
	"duskweight/internal/model/year"
	"duskweight/internal/store"
)

// The sample's pictures: every one has a title, a sentence and its numbers, no attribute that the policy refuses, and no
// identifier twice on the page.
func TestPictures(t *testing.T) {
	doc := catalog.Sample()
	g := model.Prepare(doc.Project)
	for _, variant := range doc.Variants {
		r := g.Evaluate(variant)
		ids := map[string]bool{}
		pictures := picturesOf(g, r, 5, "/page", unit.Metric)
		if want := 3 + len(variant.Stores); len(pictures) < want { // day, flow, nights, and each store
			t.Errorf("%s: %d pictures, want at least %d", variant.Name, len(pictures), want)
		}
		for _, p := range pictures {
			if p.ID == "" || p.Title == "" || p.Say == "" || len(p.Rows) == 0 || !strings.HasPrefix(p.SVG, "<svg") || strings.Contains(p.SVG, "style=") || ids[p.ID] {
				t.Errorf("%s: %q", variant.Name, p.ID)
			}
			ids[p.ID] = true
			for _, row := range p.Rows {
				if len(row) != len(p.Head) {
					t.Errorf("%s, %s: a row of %d under a head of %d", variant.Name, p.ID, len(row), len(p.Head))
				}
				for _, cell := range row {
					if cell == "" {
						t.Errorf("%s, %s: a blank cell in %v", variant.Name, p.ID, row)
					}
				}
			}
		}
	}
}

// Every picture of the sample's pages has its numbers as a CSV file whose rows are as long as its head, at the address that
// stands beside it.
func TestPicturesAsNumbers(t *testing.T) {
	s := newSite(t)
	p, vs := create(t, s, "sample", catalog.Sample())
	pages := []string{projectURL(p.ID) + "/place", projectURL(p.ID) + "/load", projectURL(p.ID) + "/sure?v=2&v=3", projectURL(p.ID) + "/sure?v=2&parts=yes", variantURL(p.ID, vs[1].ID) + "/sweep"}
	for _, v := range vs {
		pages = append(pages, variantURL(p.ID, v.ID))
	}
	pages = append(pages, variantURL(p.ID, vs[0].ID)+"/hoist/0", variantURL(p.ID, vs[0].ID)+"/hoist/0/pictures", projectURL(p.ID)+"/compare?v=1&v=2&v=3")
	link := regexp.MustCompile(`href="([^"]*\.csv[^"]*)"`)
	seen := map[string]bool{}
	for _, page := range pages {
		body := ask(s.Handler(), "GET", page, nil).Body.String()
		figures := strings.Count(body, "<figure")
		links := link.FindAllStringSubmatch(body, -1)
		if len(links) == 0 || !strings.Contains(page, "/sure") && !strings.HasSuffix(page, "/hoist/0") && len(links) < figures {
			t.Errorf("%s: %d pictures and %d addresses of numbers", page, figures, len(links))
		}
		for _, m := range links {
			at := html.UnescapeString(m[1])
			w := ask(s.Handler(), "GET", at, nil)
			rows, err := csv.NewReader(w.Body).ReadAll() // refuses rows of other lengths
			if w.Code != http.StatusOK || err != nil || len(rows) < 2 || !strings.HasPrefix(w.Header().Get("Content-Type"), "text/csv") {
				t.Errorf("%s: %d, %d rows, %v", at, w.Code, len(rows), err)
			}
			seen[path.Base(strings.Split(at, "?")[0])] = true
		}
	}
	for _, name := range []string{"day.csv", "flow.csv", "nights.csv", "week.csv", "state1.csv", "mass.csv", "sun.csv", "burns-171.csv", "years.csv", "sweep.csv", "sweep-lines.csv", "costs.csv", "checks.csv"} {
		if !seen[name] {
			t.Errorf("no page leads to %s", name)
		}
	}
	if w := ask(s.Handler(), "GET", variantURL(p.ID, vs[0].ID)+"/nothing.csv", nil); w.Code != http.StatusNotFound {
		t.Errorf("a picture that there is none of: %d", w.Code)
	}
}

// The worst week holds what the year says of it, and a "week" of the whole year holds the year.
func TestWeekHoldsTheYear(t *testing.T) {
	doc := catalog.Sample()
	g := model.Prepare(doc.Project)
	near := func(what string, got []float64, want unit.Energy) {
		t.Helper()
		if d := sum(got)*3600 - float64(want); math.Abs(d) > 1e-9*float64(want) { // sums in another order
			t.Errorf("%s: %g J, want %g", what, sum(got)*3600, float64(want))
		}
	}
	for _, variant := range doc.Variants {
		r := g.Evaluate(variant)
		near(variant.Name+": missing in the worst week", weekOf(g, r).Missing, r.Year.WorstWeek.Unmet)
		r.Year.WorstWeek = year.Span{From: 4000, Hours: 8760}
		w := weekOf(g, r)
		near(variant.Name+": wanted", w.Load, r.Year.Load)
		near(variant.Name+": sun", w.Sun, r.Year.Bus)
		near(variant.Name+": missing", w.Missing, r.Year.Unmet)
	}
}

// The parts of the flow add up to the sun of the year: what was taken came out, was lost or is still there.
func TestFlowCloses(t *testing.T) {
	doc := catalog.Sample()
	g := model.Prepare(doc.Project)
	for _, variant := range doc.Variants {
		y := g.Evaluate(variant).Year
		sum := y.Spilled
		for _, part := range []unit.Energy{y.Essential.Direct, y.Essential.Delivered, y.Nice.Direct, y.Nice.Delivered, y.Standing.Direct, y.Standing.Delivered, y.StoreStanding.Direct, y.StoreStanding.Delivered} {
			sum += part
		}
		for _, s := range y.Stores {
			sum += s.Loss + s.Change
		}
		if d := float64(sum-y.Bus) / float64(y.Bus); d > 1e-9 || d < -1e-9 { // sums of 8760 hours in another order
			t.Errorf("%s: off by %g of the sun", variant.Name, d)
		}
	}
}

// The page of a variant comes light: 14 KiB as the browser loads it, the chart library apart.
func TestVariantPageIsLight(t *testing.T) {
	s := newSite(t)
	h := s.Handler()
	p, err := s.Store.CreateProject(t.Context(), catalog.Sample(), "made", s.Now())
	if err != nil {
		t.Fatal(err)
	}
	vs, err := s.Store.Variants(t.Context(), p.ID)
	if err != nil {
		t.Fatal(err)
	}
	for _, v := range vs {
		body := ask(h, "GET", variantURL(p.ID, v.ID)+"?month=6", nil).Body.String()
		if !strings.Contains(body, `<b aria-current="true">Jun</b>`) {
			t.Error("the month of the address is not the one shown")
		}
		var small bytes.Buffer
		z := gzip.NewWriter(&small)
		z.Write([]byte(body)) // a buffer takes everything
		z.Close()
		if small.Len() > 14<<10 {
			t.Errorf("%s: %d bytes", v.Value.Name, small.Len())
		}
	}
}

// By the almanac the sun sets there, at 49.6° north and 6.2° east, at 20:38 by standard time in the middle of June
// (from memory). What to do today is told for a hoist that may hang, and for one that may not is that it may not.
func TestToday(t *testing.T) {
	doc := catalog.Sample()
	g := model.Prepare(doc.Project)
	told := map[string]string{}
	for _, v := range doc.Variants {
		r := g.Evaluate(v)
		told[string(r.Ready)+map[bool]string{true: " hoist", false: ""}[hasHoist(r)]] = strings.Join(todayOf(g, r, int(time.June)-1), "\n")
	}
	if told["yes"] != "" {
		t.Errorf("without a hoist: %q", told["yes"])
	}
	if told["no hoist"] != "Do not lift: the checks say do not hang." {
		t.Errorf("do not hang: %q", told["no hoist"])
	}
	if want := regexp.MustCompile(`^Lift between 0\d:00 and 1\d:00, .*\nLower after sunset, about 20:[34]0\. .*\nStop if the base moves, the motor is too hot to touch, or wind moves the mass\.$`); !want.MatchString(told["yes hoist"]) {
		t.Errorf("ready: %q", told["yes hoist"])
	}
}

func TestLongest(t *testing.T) {
	for want, hours := range map[[2]int]string{{0, 0}: "", {9, 12}: "2 9 10 11", {22, 24}: "22 23", {0, 3}: "0 1 2 5"} {
		in := " " + hours + " "
		if from, to := longest(func(h int) bool { return strings.Contains(in, " "+itoa(h)+" ") }); from != want[0] || to != want[1] {
			t.Errorf("%q: %d to %d", hours, from, to)
		}
	}
}

// Only the inputs that differ among those who have them are shown, and no cell is blank.
func TestCompareInputs(t *testing.T) {
	doc := catalog.Sample()
	var vs []store.Saved[model.Variant]
	for _, v := range doc.Variants {
		vs = append(vs, store.Saved[model.Variant]{Value: v})
	}
	differ, all := 0, 0
	for _, g := range inputGroups(AllTables(), vs, false, unit.Metric) {
		for _, row := range g.Rows {
			differ++
			if !row.Differs {
				t.Errorf("%s: %s does not differ", g.Title, row.Name)
			}
		}
	}
	for _, g := range inputGroups(AllTables(), vs, true, unit.Metric) {
		for _, row := range g.Rows {
			all++
			for _, c := range row.Cells {
				if c.Text == "" {
					t.Errorf("%s: %s has a blank cell", g.Title, row.Name)
				}
			}
		}
	}
	if differ == 0 || differ >= all/3 {
		t.Errorf("%d of %d inputs differ", differ, all)
	}
}

// A lifted mass that runs down for less than it gives says so; a battery, and a mass that gives what it can, say nothing.
func TestWasted(t *testing.T) {
	doc := catalog.Sample()
	g := model.Prepare(doc.Project)
	s := g.Evaluate(doc.Variants[0]).Stores[0]
	if say := wastedBy(s, unit.Metric); !strings.Contains(say, "comes down at "+unit.Powers.Format(float64(s.Reservoir.DrawMin), unit.Metric)) {
		t.Errorf("%g of %g J given back: %q", float64(s.Year.Delivered), float64(s.RoundTrip.Val)*float64(s.Year.Taken), say)
	}
	s.Year.Delivered = unit.Energy(0.9 * float64(s.RoundTrip.Val) * float64(s.Year.Taken))
	if say := wastedBy(s, unit.Metric); say != "" {
		t.Errorf("a mass that gives what it can: %q", say)
	}
	if say := wastedBy(g.Evaluate(doc.Variants[1]).Stores[0], unit.Metric); say != "" {
		t.Errorf("a battery: %q", say)
	}
}
