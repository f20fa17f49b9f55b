package projects_test

import (
	"fmt"
	"math/rand/v2"
	"net/http"
	"net/url"
	"os"
	"regexp"
	"strings"
	"testing"
	"time"

	"duskweight/internal/catalog"
	"duskweight/internal/model"
	"duskweight/web"
	"duskweight/web/webtest"
)

// bare is a project with one empty variant.
func bare(name, place, variant string) model.Document {
	doc := catalog.Sample()
	doc.Project.Name, doc.Project.Place.Name, doc.Project.Example = name, place, ""
	doc.Variants = doc.Variants[1:2]
	doc.Variants[0].Name, doc.Variants[0].Stores = variant, nil
	return doc
}

var titles = regexp.MustCompile(`<h2><a href="[^"]*">([^<]*)</a></h2>`)

// listed are the names of the projects on a page, in their order.
func listed(s *web.Site, at string) []string {
	var out []string
	for _, m := range titles.FindAllStringSubmatch(webtest.Ask(s.Handler(), "GET", at, nil).Body.String(), -1) {
		out = append(out, m[1])
	}
	return out
}

// Projects are found by their name, their place and the name of a variant, in any case of letters and any script; they stand in
// the order of the last change or of their names, fifty a page.
func TestFindSortAndPage(t *testing.T) {
	s := webtest.NewSite(t)
	for i := range 60 {
		webtest.Create(t, s, "many", bare(fmt.Sprintf("Hut %02d", i), "", "Barrel"))
	}
	webtest.Create(t, s, "one", bare("Äpfel und Öl", "Bergstadt", "Faß am Seil"))
	for find, want := range map[string]int{"": 50, "hut": 50, "HUT 0": 10, "äPFEL": 1, "bergst": 1, "faß": 1, "barrel": 50, "nowhere": 0, "%": 0, "_": 0} {
		if got := listed(s, "/?q="+url.QueryEscape(find)); len(got) != want {
			t.Errorf("%q finds %d projects, want %d: %v", find, len(got), want, got)
		}
	}
	if first := listed(s, "/"); first[0] != "Äpfel und Öl" || first[1] != "Hut 59" {
		t.Errorf("by the last change: %v", first[:2])
	}
	if first := listed(s, "/?sort=name"); first[0] != "Hut 00" || first[49] != "Hut 49" {
		t.Errorf("by name: %v", first)
	}
	if rest := listed(s, "/?sort=name&page=2"); len(rest) != 11 || rest[0] != "Hut 50" || rest[10] != "Äpfel und Öl" {
		t.Errorf("the second page: %v", rest)
	}
	for _, odd := range []string{"99", "-1", "x", "0"} {
		if got := listed(s, "/?page="+odd); len(got) == 0 {
			t.Errorf("page %s is empty", odd)
		}
	}
	body := webtest.Ask(s.Handler(), "GET", "/?q=hut&sort=name", nil).Body.String()
	if !strings.Contains(body, `href="/?page=2&amp;q=hut&amp;sort=name"`) || !strings.Contains(body, "1 to 50 of 60") {
		t.Error("the next page is not linked with what was asked for")
	}
	if body := webtest.Ask(s.Handler(), "GET", "/?q=nowhere", nil).Body.String(); !strings.Contains(body, "Nothing is called “nowhere”") {
		t.Error("nothing found is not said")
	}
}

// plain is a page without its tags.
func plain(h http.Handler, at string) string {
	return webtest.Tags.ReplaceAllString(webtest.Ask(h, "GET", at, nil).Body.String(), "")
}

// Each project says the states of its sheets, the worst first, and its best variant for the night, as the judge and the year
// have them; a change is seen at once.
func TestListTellsStates(t *testing.T) {
	s := webtest.NewSite(t)
	h := s.Handler()
	p, vs := webtest.Create(t, s, "sample", catalog.Sample())
	r := s.Grounds.Of(p)
	best := 0
	for i, v := range vs {
		if a, b := r.Evaluate(v.Value), r.Evaluate(vs[best].Value); a.Last.NightsFull > b.Last.NightsFull {
			best = i
		}
	}
	year := r.Evaluate(vs[best].Value).Last
	body := plain(h, "/verdicts")
	for _, want := range []string{"DO NOT HANG", "READY for use", fmt.Sprintf("%d of %d nights full", year.NightsFull, year.Nights), vs[best].Value.Name} {
		if !strings.Contains(body, want) {
			t.Errorf("the list does not say %q", want)
		}
	}
	if strings.Index(body, "DO NOT HANG") > strings.Index(body, "READY for use") {
		t.Error("the danger does not come first")
	}
	for _, v := range vs[1:] {
		if err := s.Store.DeleteVariant(t.Context(), v.ID, v.Revision, "gone", s.Now()); err != nil {
			t.Fatal(err)
		}
	}
	if body := plain(h, "/verdicts"); strings.Contains(body, "READY for use") || !strings.Contains(body, "1 variant") {
		t.Error("the list tells of a variant that is deleted")
	}
}

// What cannot be worked out in time follows: the page says so, and the address that it names has all of it.
func TestListWaitsForNobody(t *testing.T) {
	s := webtest.NewSite(t)
	h := s.Handler()
	for range 40 {
		webtest.Create(t, s, "sample", catalog.Sample())
	}
	begin := time.Now()
	body := plain(h, "/")
	t.Logf("the first list of 40 projects in %v", time.Since(begin))
	open := strings.Count(body, "not worked out yet")
	if follows := strings.Contains(webtest.Ask(h, "GET", "/", nil).Body.String(), `data-follow="/verdicts"`); follows != (open > 0) {
		t.Errorf("%d not worked out, and it follows: %v", open, follows)
	}
	if body := plain(h, "/verdicts"); strings.Contains(body, "not worked out yet") {
		t.Error("the address that it names has not all of it")
	}
	if body := plain(h, "/"); strings.Contains(body, "not worked out yet") {
		t.Error("what was worked out is not remembered")
	}
}

// A list of a thousand projects, fifty on a page, loads in 10 KB with three fields: find, order, file; whether what they come
// to is known or not. In an ordinary run there are sixty.
func TestListIsSmall(t *testing.T) {
	s := webtest.NewSite(t)
	h := s.Handler()
	all := 60 // fifty stand on a page, however many there are
	if os.Getenv("DUSKWEIGHT_TORTURE") != "" {
		all = 1000
	}
	words := []string{"Hut", "Barn", "Cabin", "Mill", "Boat house", "School", "Workshop", "North slope", "Orchard", "Well", "Ridge", "Clinic"}
	r := rand.New(rand.NewPCG(4, 4))
	for i := range all {
		doc := catalog.Sample()
		doc.Project.Name = fmt.Sprintf("%s %s %d", words[r.IntN(len(words))], words[r.IntN(len(words))], i)
		webtest.Create(t, s, "sample", doc)
	}
	plainly := len(webtest.Packed(h, "/"))
	webtest.Ask(h, "GET", "/verdicts", nil) // works out those of a page
	full := len(webtest.Packed(h, "/"))
	t.Logf("the list of %d is %d bytes packed before its verdicts are known, %d after", all, plainly, full)
	if strings.Contains(webtest.Ask(h, "GET", "/", nil).Body.String(), "not worked out yet") {
		t.Error("it is not known what all of them come to")
	}
	if max(plainly, full) > 10*1024 {
		t.Errorf("the list of %d is %d and %d bytes packed", all, plainly, full)
	}
	if n := strings.Count(webtest.Ask(h, "GET", "/", nil).Body.String(), "<input") - 50; n > 3 { // each row has the revision that it deletes
		t.Errorf("%d fields", n)
	}
}
