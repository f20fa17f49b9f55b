package overview_test

import (
	"fmt"
	"strings"
	"testing"

	"duskweight/internal/catalog"
	"duskweight/internal/model"
	"duskweight/internal/model/lift"
	"duskweight/internal/model/unit"
	"duskweight/web/browsertest"
	"duskweight/web/page"
	"duskweight/web/webtest"
)

// barrel is the worked example with one piece that its user calls barrel, 60 kg by 4 m.
func barrel() model.Document {
	doc := catalog.Sample()
	h := doc.Variants[0].Stores[0].Hoist
	h.Mass = []lift.Piece{{Name: "barrel", Mass: unit.Of[unit.Mass](60)}}
	h.Travel = unit.Of[unit.Length](4)
	return doc
}

// The first screen of a project: the danger before the heading, the most dangerous open thing as the next step with a link to
// its field, three energies on one scale, a day in four pictures, and what each variant is in its own names and numbers.
// A battery of 12 Ah holds 12 × 12.8 × 0.8 = 122.88 Wh.
func TestFirstScreen(t *testing.T) {
	s := webtest.NewSite(t)
	p, vs := webtest.Create(t, s, "barrel", barrel())
	body := webtest.Ask(s.Handler(), "GET", page.ProjectURL(p.ID), nil).Body.String()
	text := webtest.TextOf(body)
	text = strings.ReplaceAll(text, unit.Space, " ")
	for _, want := range []string{"A battery of 12 Ah holds", "from 0 to 120 Wh", "A night needs", "One lift gives", "barrel", "60 kg × 4 m", "12.8 V 50 Ah", "The sun lifts the mass", "It comes down and gives the lamps "} {
		if !strings.Contains(text, want) {
			t.Errorf("the page does not say %q", want)
		}
	}
	if !strings.Contains(text, "A full lift of “Block in the gable” gives nothing back") {
		t.Error("60 kg does not bring this drive down by itself, and the page does not say so")
	}
	if n := strings.Count(body, `class="draw moment"`); n != 4 {
		t.Errorf("%d moments", n)
	}
	if n := strings.Count(body, `class="draw bar"`); n != 3 {
		t.Errorf("%d bars", n)
	}
	_, todo, _ := strings.Cut(body, `id="next"`)
	first, _, _ := strings.Cut(todo, "</li>")
	field := page.StoreURL(p.ID, vs[0].ID, 0, "hoist")
	if !strings.Contains(webtest.Readable(first), "the hook of the top pulley") || !strings.Contains(first, field) || !strings.Contains(first, "hanger") {
		t.Errorf("the next step is %q", first)
	}
	for _, csv := range []string{"bars", "day"} {
		w := webtest.Ask(s.Handler(), "GET", fmt.Sprintf("%s/%s.csv?v=%d", page.ProjectURL(p.ID), csv, vs[0].ID), nil)
		if w.Code != 200 || !strings.Contains(w.Body.String(), ",") {
			t.Errorf("%s: %d %q", csv, w.Code, w.Body)
		}
	}
}

// With batteries alone nothing is lifted: the second bar is the battery that is there, and no day of a hoist is drawn.
func TestFirstScreenWithoutHoist(t *testing.T) {
	s := webtest.NewSite(t)
	doc := catalog.Sample()
	doc.Variants = doc.Variants[1:2]
	p, _ := webtest.Create(t, s, "battery", doc)
	body := webtest.Ask(s.Handler(), "GET", page.ProjectURL(p.ID), nil).Body.String()
	if !strings.Contains(body, "Your battery holds") || strings.Contains(body, "One lift") || strings.Contains(body, `class="draw moment"`) {
		t.Error("a battery is told as a lifted mass")
	}
}

// What the overview may ask of a reader at first sight: no more than 14 KB to load, no scrolling sideways at 320 px, at
// 360 px at most 3400 px. The measures are our own judgement.
func TestBrowserOverviewBudgets(t *testing.T) {
	b := browsertest.Start(t)
	s, base := webtest.Serve(t)
	p, _ := webtest.Create(t, s, "example", catalog.Sample())
	at := page.ProjectURL(p.ID)
	packed := len(webtest.Packed(s.Handler(), at))
	phone := b.Open(t, browsertest.Look{Width: 360, Height: 800, Still: true})
	phone.Go(base + at)
	tall := phone.Number(`document.documentElement.scrollHeight`)
	narrow := b.Open(t, browsertest.Look{Width: 320, Height: 700, Still: true})
	narrow.Go(base + at)
	over := narrow.Number(`document.documentElement.scrollWidth - innerWidth`)
	t.Logf("%d bytes packed, %.0f px at 360 px", packed, tall)
	if packed > 14*1024 || tall > 3400 || over > 0 {
		t.Errorf("%d bytes packed, %.0f px at 360 px, %.0f px sideways at 320 px", packed, tall, over)
	}
}

// The menu of the variants says of each whether it may hang and what it carries, when it is opened on any page of the project. The
// words are those of the cards on the overview.
func TestBrowserMenuSaysVerdicts(t *testing.T) {
	b := browsertest.Start(t)
	s, base := webtest.Serve(t)
	p, vs := webtest.Create(t, s, "example", catalog.Sample())
	tab := b.Open(t, browsertest.Look{Still: true})
	for _, at := range []string{page.ProjectURL(p.ID) + "/load", page.StoreURL(p.ID, vs[0].ID, 0, "hoist")} {
		tab.Go(base + at)
		tab.Click(".top .menu > summary")
		tab.Wait(`document.querySelectorAll(".menu nav small").length === 3`)
		for i, want := range []string{"DO NOT HANG, a learning piece", "READY for use, carries most nights", "READY for the load steps, carries most nights"} {
			if got := tab.String(fmt.Sprintf(`document.querySelectorAll(".menu nav small")[%d].textContent`, i)); got != want {
				t.Errorf("%s: %s: %q, want %q", at, vs[i].Value.Name, got, want)
			}
		}
		if strings.HasSuffix(at, "/load") { // over a second line of tabs an open menu hides a part of them, as any menu does
			tab.Shot("menu")
			for _, found := range tab.Axe() {
				t.Errorf("%s: %v", at, found)
			}
		}
		if c := tab.Complaints(); len(c) > 0 {
			t.Errorf("console: %+v", c)
		}
	}
}

// The overview says when each hoist is to be looked at again: three months after the look that is on record.
func TestOverviewTellsTheNextLook(t *testing.T) {
	s := webtest.NewSite(t)
	doc := catalog.Sample()
	sound := lift.Look{Rope: "sound", Knots: "sound", Pulleys: "sound", Pins: "sound", Container: "sound", Base: "sound"}
	doc.Variants[0].Stores[0].Hoist.Trials.Looks = []lift.LookTrial{{Date: "2020-01-15", Look: sound}}
	p, _ := webtest.Create(t, s, "sample", doc)
	body := webtest.Ask(s.Handler(), "GET", page.ProjectURL(p.ID), nil).Body.String()
	if !strings.Contains(body, "due since 15 April 2020: look before you lift") {
		t.Error("a look that is due is not told")
	}
}
