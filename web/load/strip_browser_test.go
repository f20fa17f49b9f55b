package load_test

import (
	"fmt"
	"strings"
	"testing"

	"duskweight/internal/catalog"
	"duskweight/internal/model/unit"
	"duskweight/web/browsertest"
	"duskweight/web/page"
	"duskweight/web/webtest"
)

// Keys as the browser has them.
const (
	keyLeft, keyRight = "\u0302", "\u0303"
	keyUp, keyDown    = "\u0304", "\u0301"
	keyHome, keyEnd   = "\u0306", "\u0305"
)

// isOn lists the hours of row i that are on, as the page shows them.
func isOn(tab *browsertest.Tab, i int) string {
	return tab.String(fmt.Sprintf("[...document.querySelectorAll('[id^=h-%d-]')].filter(c => c.checked).map(c => c.value).join(' ')", i))
}

// The strip is painted by keys: a row is one tab stop, the arrows move, Space turns an hour over, Shift with an arrow paints, Home and
// End lead to 8 and to 7, Down to the next row. The sum follows, the focus stays, and a second later the row is told.
func TestBrowserStripByKeys(t *testing.T) {
	b := browsertest.Start(t)
	s, base := webtest.Serve(t)
	p, _ := webtest.Create(t, s, "sample", catalog.Sample())
	tab := b.Open(t, browsertest.Look{Width: 1366, Height: 900, Still: true})
	tab.Go(base + page.ProjectURL(p.ID) + "/load")
	if stops := tab.Number("document.querySelectorAll('.hours input:not([tabindex=\"-1\"]):not([type=hidden])').length"); stops != 3 {
		t.Errorf("%g tab stops in three rows", stops)
	}
	focus := func() string { return tab.String("document.activeElement.id") }
	tab.Number("document.getElementById('h-2-18').focus(), 0")
	for _, step := range []struct{ key, want string }{{keyRight, "h-2-19"}, {keyHome, "h-2-8"}, {keyEnd, "h-2-7"}, {keyUp, "h-1-7"}, {keyDown, "h-2-7"}, {keyLeft, "h-2-6"}} {
		if tab.Press(step.key); focus() != step.want {
			t.Fatalf("%q leads to %q, want %s", step.key, focus(), step.want)
		}
	}
	tab.Number("document.getElementById('h-2-21').focus(), 0")
	before := tab.Text("h1")
	tab.Press(" ")
	tab.Wait(fmt.Sprintf("document.querySelector('h1').textContent !== %q", before))
	if on := isOn(tab, 2); on != "18 19 20 21" || focus() != "h-2-21" {
		t.Errorf("after Space %q are on and %q has the focus", on, focus())
	}
	tab.Wait("document.getElementById('painted').textContent.includes('Radio') && document.getElementById('painted').textContent.includes('18:00 to 22:00')")
	tab.Shift(keyRight)
	tab.Wait("document.querySelector('#rows').textContent.includes('18:00 to 23:00')")
	tab.Wait("document.querySelector('[data-saved]').textContent === 'Saved.'")
	tab.Go(base + page.ProjectURL(p.ID) + "/load")
	if on := isOn(tab, 2); on != "18 19 20 21 22" {
		t.Errorf("saved are %q", on)
	}
	if c := tab.Complaints(); len(c) > 0 {
		t.Errorf("console: %+v", c)
	}
}

// A press and a stroke paint with the pointer, of a mouse. A second run asks, and a yes is a
// second row. The open card shows the painted hours.
func TestBrowserStripByPointer(t *testing.T) {
	b := browsertest.Start(t)
	s, base := webtest.Serve(t)
	p, _ := webtest.Create(t, s, "sample", catalog.Sample())
	tab := b.Open(t, browsertest.Look{Width: 1366, Height: 900, Still: true})
	tab.Go(base + page.ProjectURL(p.ID) + "/load?part=appliances%5B2%5D")
	stroke := func(from, to int) {
		tab.Draw(fmt.Sprintf("#h-2-%d", from), fmt.Sprintf("#h-2-%d", to))
	}
	tab.Number("addEventListener('pointerup', () => { window.began = performance.now() }, true), addEventListener('live:swap', () => { window.took = performance.now() - window.began }), 0")
	var took []float64
	for n := range 7 { // on and off, and on at last
		tab.Number("window.took = 0")
		stroke(21+2*(n%2), 23-2*(n%2))
		tab.Wait("window.took > 0")
		took = append(took, tab.Number("window.took"))
		tab.Wait("document.querySelector('[data-saved]').textContent === 'Saved.'")
	}
	t.Logf("painted hour to sum: %.0f ms, wanted 100", took)
	if on := isOn(tab, 2); on != "18 19 20 21 22 23" {
		t.Errorf("after a stroke %q are on", on)
	}
	if to := tab.Value("#f-load-appliances-2-to-s"); to != "0:00" && to != "00:00" {
		t.Errorf("the field of the card says %q", to)
	}
	tab.Wait("document.querySelector('[data-saved]').textContent === 'Saved.'")
	stroke(12, 12)
	tab.Wait("document.querySelector('.twice')")
	tab.Follow(".twice button")
	tab.Wait("document.querySelectorAll('.hours').length === 4")
	if on := isOn(tab, 2) + "|" + isOn(tab, 3); on != "18 19 20 21 22 23|12" {
		t.Errorf("two rows: %q", on)
	}
	if c := tab.Complaints(); len(c) > 0 {
		t.Errorf("console: %+v", c)
	}
}

// Without a script the hours are ticked with Space and saved by the button.
func TestBrowserStripWithoutScript(t *testing.T) {
	b := browsertest.Start(t)
	s, base := webtest.Serve(t)
	p, _ := webtest.Create(t, s, "sample", catalog.Sample())
	tab := b.Open(t, browsertest.Look{Width: 1366, Height: 900, NoScripts: true})
	tab.Go(base + page.ProjectURL(p.ID) + "/load")
	tab.Click("#h-2-21")
	tab.Follow(".strip-save .primary")
	if text := tab.Text("#rows"); !strings.Contains(text, "18:00 to 22:00") {
		t.Errorf("saved: %q", text)
	}
}

// Every hour is at least 24 px wide and high, at 320 px too, and the page is at most 2,900 px high at 360 px; nothing is found by the
// rules for everyone, in light and in dark.
func TestBrowserStripForEveryone(t *testing.T) {
	b := browsertest.Start(t)
	s, base := webtest.Serve(t)
	p, _ := webtest.Create(t, s, "sample", catalog.Sample())
	tab := b.Open(t, browsertest.Look{Width: 320, Height: 640, Still: true})
	for _, width := range []int{320, 360, 768, 1100, 1366, 1920} {
		for _, dark := range []bool{false, true} {
			tab.Look(browsertest.Look{Width: width, Height: 800, Still: true, Dark: dark})
			tab.Go(base + page.ProjectURL(p.ID) + "/load")
			least := tab.Number("Math.min(...[...document.querySelectorAll('.h')].map(c => { const r = c.getBoundingClientRect(); return Math.min(r.width, r.height) }))")
			high := tab.Number("document.documentElement.scrollHeight")
			if least < 24 || width == 360 && high > 2900 || tab.Sideways() > 0 {
				t.Errorf("%d px: the smallest hour is %.1f px, the page %.0f px high and %d px too wide", width, least, high, tab.Sideways())
			}
			t.Logf("%d px, dark %v: the smallest hour %.1f px, the page %.0f px high", width, dark, least, high)
			if width != 320 && width != 1366 {
				continue
			}
			for _, f := range tab.Axe() {
				t.Errorf("%d px, dark %v: %v", width, dark, f)
			}
		}
	}
}

// A stroke that is painted while the answer to the one before is on its way stays: in another row, in the same row, and while the
// pointer is still down. The answers are held back until all three are painted; both rows are then shown and saved, also that of
// the open card, whose fields still held the hours of before when the second save went out.
func TestBrowserStripKeepsEveryStroke(t *testing.T) {
	b := browsertest.Start(t)
	s, base := webtest.Serve(t)
	p, _ := webtest.Create(t, s, "sample", catalog.Sample())
	tab := b.Open(t, browsertest.Look{Width: 1366, Height: 900, Still: true})
	tab.Go(base + page.ProjectURL(p.ID) + "/load?part=appliances%5B2%5D")
	before := isOn(tab, 1)
	tab.Number(`(() => {
		const real = window.fetch;
		window.held = []; window.swaps = 0;
		window.fetch = (to, how) => String(to).includes("/try") ? new Promise(go => held.push(go)).then(() => real(to, how)) : real(to, how);
		addEventListener("live:swap", () => window.swaps++);
		return 0;
	})()`)
	saved := func() { tab.Wait("document.querySelector('[data-saved]').textContent === 'Saved.'") }
	again := func() { tab.Number("document.querySelector('[data-saved]').textContent = '', 0") }
	tab.Draw("#h-2-21", "#h-2-21")
	tab.Wait("held.length === 1")
	saved()
	again()
	tab.Draw("#h-1-16", "#h-1-16") // its save goes out with the old text of the other row's card
	saved()
	again()
	if now, err := s.Store.Project(t.Context(), p.ID); err != nil || now.Value.Load.Appliances[2].To != unit.Of(22*unit.Hour) {
		t.Errorf("the second save set the first row to %v, want 22 hours: its painted hour is lost (%v)", now.Value.Load.Appliances[2].To, err)
	}
	tab.Draw("#h-2-22", "#h-2-22")
	saved()
	const down = `document.getElementById("h-2-23").dispatchEvent(new PointerEvent("pointerdown", {bubbles: true})), 0`
	tab.Number(down)
	tab.Number("held.shift()(), 0")
	tab.Wait("swaps === 1")
	want := "18 19 20 21 22 23|16 " + before
	if on := isOn(tab, 2) + "|" + isOn(tab, 1); on != want {
		t.Errorf("after the first answer %q, want %q", on, want)
	}
	again()
	tab.Number(`dispatchEvent(new PointerEvent("pointerup")), 0`)
	for n := 2; n <= 3; n++ {
		tab.Wait("held.length > 0")
		tab.Number("held.shift()(), 0")
		tab.Wait(fmt.Sprintf("swaps >= %d", n))
	}
	saved()
	shown := isOn(tab, 2) + "|" + isOn(tab, 1)
	tab.Go(base + page.ProjectURL(p.ID) + "/load")
	if on := isOn(tab, 2) + "|" + isOn(tab, 1); on != want || shown != want {
		t.Errorf("saved are %q, shown were %q, want %q", on, shown, want)
	}
	if c := tab.Complaints(); len(c) > 0 {
		t.Errorf("console: %+v", c)
	}
}
