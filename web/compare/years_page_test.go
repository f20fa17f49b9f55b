package compare_test

import (
	"encoding/csv"
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"
	"testing"

	"duskweight/internal/catalog"
	"duskweight/internal/model/lift"
	"duskweight/internal/model/panel"
	"duskweight/web"
	"duskweight/web/page"
	"duskweight/web/webtest"
)

// nightsOf are the full nights of 200 made years of one variant, in rising order, as the page How sure sends them.
func nightsOf(t *testing.T, s *web.Site, project, variant int64) (nights []float64) {
	t.Helper()
	body := webtest.Ask(s.Handler(), "GET", fmt.Sprintf("%s/sure/years.csv?v=%d", page.ProjectURL(project), variant), nil).Body.String()
	rows, err := csv.NewReader(strings.NewReader(strings.TrimPrefix(body, "\ufeff"))).ReadAll()
	if err != nil || len(rows) != 201 {
		t.Fatalf("%d rows, %v", len(rows), err)
	}
	for _, row := range rows[1:] {
		n, err := strconv.ParseFloat(row[1], 64)
		if err != nil {
			t.Fatal(err)
		}
		nights = append(nights, n)
	}
	slices.Sort(nights)
	return nights
}

// The usual year of 200 stands between the 100th and the 101st, and a bad year, rounded down, nine tenths of the way from the
// 20th to the 21st (199/10 = 19.9). Compare, the plan sheet and How sure say the same; the years are the first thing that a
// sheet without room leaves out.
func TestUsualAndBadYearOnEveryPage(t *testing.T) {
	s := webtest.NewSite(t)
	p, vs := webtest.Create(t, s, "sample", catalog.Sample())
	compared := webtest.Readable(webtest.Ask(s.Handler(), "GET", page.ProjectURL(p.ID)+"/compare", nil).Body.String())
	usual, bad := "Full nights, usual year highest is", "Full nights, bad year highest is"
	said := 0
	for _, v := range vs[:3] {
		n := nightsOf(t, s, p.ID, v.ID)
		u, b := math.Round((n[99]+n[100])/2), math.Floor(n[19]+0.9*(n[20]-n[19]))
		sheet := webtest.Readable(webtest.Ask(s.Handler(), "GET", page.VariantURL(p.ID, v.ID)+"/sheet", nil).Body.String())
		if want := fmt.Sprintf("Of 200 made years the usual one has %.0f of 365 full nights, a bad one %.0f.", u, b); strings.Contains(sheet, want) {
			said++
		} else if strings.Contains(sheet, "made years") && u > b {
			t.Errorf("%s: the sheet does not say %q", v.Value.Name, want)
		}
		usual += fmt.Sprintf(" %.0f", u)
		bad += fmt.Sprintf(" %.0f", b)
	}
	if said == 0 {
		t.Error("no sheet tells a usual and a bad year")
	}
	plain := strings.NewReplacer(", differs", "", " ≠", "", "≠", "", " best ", " ").Replace(strings.ReplaceAll(compared, "\u00a0", " "))
	for _, want := range []string{usual, bad} {
		if !strings.Contains(strings.Join(strings.Fields(plain), " "), want) {
			t.Errorf("Compare does not have %q:\n%s", want, plain)
		}
	}
}

// A motor straight on the panels takes long, so its years are not worked out for Compare. How sure works them out and keeps
// them, and a new revision has years of its own.
func TestYearsThatTakeLong(t *testing.T) {
	doc := catalog.Sample()
	doc.Project.Years.Val, doc.Project.Years.Is = 20, true
	hoist := &doc.Variants[0]
	hoist.Controller.Kind = panel.ControllerDirect
	hoist.Stores[0].Hoist.Raise.Feed = lift.FeedPanel
	s := webtest.NewSite(t)
	p, vs := webtest.Create(t, s, "straight", doc)
	at := page.ProjectURL(p.ID) + "/compare"
	const waits = "not worked out yet: see How sure"
	if body := webtest.Ask(s.Handler(), "GET", at, nil).Body.String(); strings.Count(body, waits) != 2 {
		t.Errorf("%d cells wait, want a usual and a bad year of one variant", strings.Count(body, waits))
	}
	webtest.Ask(s.Handler(), "GET", fmt.Sprintf("%s/sure?v=%d", page.ProjectURL(p.ID), vs[0].ID), nil)
	if body := webtest.Ask(s.Handler(), "GET", at, nil).Body.String(); strings.Contains(body, waits) {
		t.Error("the years are worked out, and Compare does not show them")
	}
}
