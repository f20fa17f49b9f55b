package overview_test

import (
	"fmt"
	"math"
	"net/url"
	"regexp"
	"strings"
	"testing"
	"time"

	"duskweight/internal/catalog"
	"duskweight/internal/model"
	"duskweight/internal/model/unit"
	"duskweight/internal/store"
	"duskweight/web/browsertest"
	"duskweight/web/formtest"
	"duskweight/web/page"
	"duskweight/web/webtest"
)

// Numbers that are tried are answered for and not saved; kept, they are saved, each where it belongs: two pieces of the mass
// scaled together, the height of the travel, the lamps' hours of the project. What is typed as it was stays to the last digit,
// and what an older page kept changes nothing.
func TestTryAndKeep(t *testing.T) {
	s := webtest.NewSite(t)
	p, vs := webtest.Create(t, s, "sample", catalog.Sample())
	at := page.ProjectURL(p.ID)
	q := fmt.Sprintf("?v=%d", vs[0].ID)
	body := webtest.Ask(s.Handler(), "GET", at, nil).Body.String()
	_, sliders, _ := strings.Cut(body, `class="sliders"`)
	sliders, _, _ = strings.Cut(sliders, "</form>")
	sent := url.Values{}
	for _, m := range regexp.MustCompile(`name="([a-z_]+)"[^>]*value="([^"]*)"`).FindAllStringSubmatch(sliders, -1) {
		sent.Set(m[1], webtest.Unescape(m[2]))
	}
	for name, want := range map[string]string{"mass": "120", "height": "4.5", "hours": "3.72"} {
		if sent.Get(name) != want || sent.Get(name+"_was") != want {
			t.Fatalf("%s holds %q", name, sent.Get(name))
		}
	}
	with := func(changes ...string) url.Values {
		v := url.Values{}
		for name, value := range sent {
			v[name] = value
		}
		for i := 0; i < len(changes); i += 2 {
			v.Set(changes[i], changes[i+1])
		}
		return v
	}
	tried := webtest.Ask(s.Handler(), "POST", at+"/try"+q, with("mass", "240"), "X-Part", "results")
	if tried.Code != 200 || !strings.Contains(strings.ReplaceAll(tried.Body.String(), unit.Space, " "), "240 kg × 4.5 m") || !strings.Contains(tried.Body.String(), `data-swap="cards"`) {
		t.Errorf("tried: %d %s", tried.Code, tried.Body)
	}
	stored := func() (model.Variant, model.Project) {
		project, err := s.Store.Project(t.Context(), p.ID)
		if err != nil {
			t.Fatal(err)
		}
		return webtest.Stored(t, s, vs[0].ID).Value, project.Value
	}
	if v, pr := stored(); formtest.Dump(v) != formtest.Dump(vs[0].Value) || formtest.Dump(pr) != formtest.Dump(p.Value) {
		t.Error("trying saved something")
	}
	if w := webtest.Ask(s.Handler(), "POST", at+q, with()); w.Code != 303 || webtest.Stored(t, s, vs[0].ID).Revision != vs[0].Revision {
		t.Errorf("kept as it was: %d", w.Code)
	}
	for _, bad := range []string{"much", "", "-5", "1e99"} {
		if w := webtest.Ask(s.Handler(), "POST", at+q, with("mass", bad)); w.Code != 422 || !strings.Contains(w.Body.String(), `class="problem"`) {
			t.Errorf("%q: %d", bad, w.Code)
		}
	}
	if w := webtest.Ask(s.Handler(), "POST", at+q, with("mass", "240", "height", "3 m", "hours", "5.72")); w.Code != 303 {
		t.Fatalf("kept: %d %s", w.Code, w.Body)
	}
	v, pr := stored()
	was := vs[0].Value.Stores[0].Hoist
	h := v.Stores[0].Hoist
	if sum := h.Hangs().Val; sum < 239.999 || sum > 240.001 || h.Travel.Val != 3 || len(h.Mass) != len(was.Mass) {
		t.Errorf("%v kg up %v m in %d pieces", sum, h.Travel.Val, len(h.Mass))
	}
	if share, before := h.Mass[1].Mass.Val/h.Mass[0].Mass.Val, was.Mass[1].Mass.Val/was.Mass[0].Mass.Val; share/before < 0.999 || share/before > 1.001 {
		t.Error("the pieces are not scaled together")
	}
	// 3.72 h were shown, so everything with hours of its own goes off 2 h later, up to the rounding of what is shown.
	for i, a := range pr.Load.Appliances {
		later := math.Mod(float64(a.To.Val-p.Value.Load.Appliances[i].To.Val)/3600+24, 24)
		if want := map[bool]float64{true: 0, false: 2}[a.From == p.Value.Load.Appliances[i].To]; later < want-0.01 || later > want+0.01 {
			t.Errorf("%s goes off %v h later", a.Name, later)
		}
	}
	if w := webtest.Ask(s.Handler(), "POST", at+q, with("mass", "300")); w.Code != 409 || webtest.Stored(t, s, vs[0].ID).Value.Stores[0].Hoist.Hangs().Val > 241 {
		t.Errorf("an older page: %d", w.Code)
	}
	// One press of Keep these is one step: one undo brings mass, height and hours back. A second line of history is there, and the
	// overview leads back to the state that was undone.
	step, _, err := s.Store.Steps(t.Context(), p.ID)
	if err != nil || step == nil || !strings.Contains(step.Said, "Light at night") || !strings.Contains(step.Said, "Mass") {
		t.Fatalf("the step offered is %+v, %v", step, err)
	}
	if w := webtest.Ask(s.Handler(), "POST", at+"/undo", url.Values{"seq": {fmt.Sprint(step.Seq)}}); w.Code != 303 {
		t.Fatalf("undo: %d", w.Code)
	}
	if v, pr := stored(); formtest.Dump(v) != formtest.Dump(vs[0].Value) || formtest.Dump(pr) != formtest.Dump(p.Value) {
		t.Error("one undo did not take back all that was kept")
	}
}

// The overview tells the last three changes, the newest first; to each that is not the newest of its thing there is a way back. A
// project in which nothing was changed tells none.
func TestLastChanges(t *testing.T) {
	s := webtest.NewSite(t)
	p, vs := webtest.Create(t, s, "sample", catalog.Sample())
	at := page.ProjectURL(p.ID)
	if body := webtest.Ask(s.Handler(), "GET", at, nil).Body.String(); strings.Contains(body, "Last changes") {
		t.Error("a project that was only made has last changes")
	}
	now := vs[0]
	for i, name := range []string{"one", "two", "three", "four"} {
		v := now.Value
		v.Name = name
		saved, err := s.Store.SaveVariant(t.Context(), now.ID, v, store.Edit{Revision: now.Revision, Said: "said " + name}, s.Now().Add(time.Duration(i)*time.Hour))
		if err != nil {
			t.Fatal(err)
		}
		now = saved
	}
	body := webtest.Ask(s.Handler(), "GET", at, nil).Body.String()
	_, last, _ := strings.Cut(body, `class="last"`)
	last, _, _ = strings.Cut(last, "</ul>")
	if said := regexp.MustCompile(`</b>: said (\w+)`).FindAllStringSubmatch(last, -1); len(said) != 3 || said[0][1] != "four" || said[2][1] != "two" {
		t.Fatalf("told: %v", said)
	}
	back := regexp.MustCompile(`name="seq" value="(\d+)"`).FindAllStringSubmatch(last, -1)
	if len(back) != 2 {
		t.Fatalf("%d ways back of three changes, want all but the newest", len(back))
	}
	if w := webtest.Ask(s.Handler(), "POST", at+"/back", url.Values{"seq": {back[1][1]}}); w.Code != 303 || webtest.Stored(t, s, now.ID).Value.Name != "two" {
		t.Errorf("back to the oldest of the three: %d, the name is %q", w.Code, webtest.Stored(t, s, now.ID).Value.Name)
	}
}

// A slider moves its field, the answer follows, and the danger stays in sight; without a script the fields have a button.
func TestBrowserSliders(t *testing.T) {
	b := browsertest.Start(t)
	s, base := webtest.Serve(t)
	p, _ := webtest.Create(t, s, "sample", catalog.Sample())
	tab := b.Open(t, browsertest.Look{Width: 1366, Height: 768, Still: true})
	tab.Go(base + page.ProjectURL(p.ID))
	before := tab.String(`document.querySelector("#results .lead").textContent`)
	tab.Number(`(() => { const r = document.querySelector('[data-slides="try-mass"]'); r.value = 300; r.dispatchEvent(new Event("input", {bubbles: true})); return 0 })()`)
	if v := tab.Value("#try-mass"); v != "300" {
		t.Errorf("the field holds %q", v)
	}
	tab.Wait(fmt.Sprintf(`document.querySelector("#results .lead").textContent !== %q`, before))
	if band := tab.Text("#band"); !strings.Contains(band, "DO NOT HANG") {
		t.Errorf("the band is %q", band)
	}
	tab.Clean()
	plain := b.Open(t, browsertest.Look{NoScripts: true})
	plain.Go(base + page.ProjectURL(p.ID))
	if n := plain.Number(`[...document.querySelectorAll(".sliders input[type=range]")].filter(e => e.checkVisibility()).length`); n != 0 {
		t.Errorf("%v dead sliders without a script", n)
	}
	plain.Type("#try-mass", "300")
	plain.Follow(`[data-try-button]`)
	if lead := plain.Text("#results .lead"); lead == before || !strings.Contains(plain.Text("#said"), "not saved") {
		t.Errorf("without a script it says %q", lead)
	}
}
