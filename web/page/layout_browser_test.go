package page_test

import (
	"fmt"
	"strings"
	"testing"

	"duskweight/web/browsertest"
	"duskweight/web/webtest"
)

// Undo and History can be clicked over their whole height, on a phone and on a desk. The keys undo and redo where no field has
// the focus, and leave a field alone that has it.
func TestBrowserSteps(t *testing.T) {
	b := browsertest.Start(t)
	s, base := webtest.Serve(t)
	webtest.Ask(s.Handler(), "POST", "/sample", map[string][]string{})
	page := base + "/projects/1/variants/1"
	const power = "#f-panels-0-panel-w"
	was := webtest.Stored(t, s, 1).Value.Panels[0].Power.Val
	for _, wide := range []int{320, 1366} {
		tab := b.Open(t, browsertest.Look{Width: wide, Height: 700, Still: true})
		tab.Go(page)
		tab.Type(power, "310")
		tab.Press("\t")
		tab.Wait(`!document.querySelector("[data-step=undo]").hidden`)
		for _, css := range []string{"[data-step=undo] button", ".steps a"} {
			for _, part := range []string{"0.1", "0.5", "0.9"} {
				if hit := tab.String(fmt.Sprintf(`(() => { const el = document.querySelector(%q), r = (el.scrollIntoView({block: "center"}), el.getBoundingClientRect()), at = document.elementFromPoint(r.left + r.width/2, r.top + %s*r.height); return String(el.contains(at)); })()`, css, part)); hit != "true" {
					t.Errorf("%d px: %s lies under something at %s of its height", wide, css, part)
				}
			}
		}
		keys := func(key, shift string) {
			tab.Number(`document.activeElement.dispatchEvent(new KeyboardEvent("keydown", {key: "` + key + `", ctrlKey: true, shiftKey: ` + shift + `, bubbles: true, cancelable: true})), 0`)
		}
		tab.Number(`document.querySelector("` + power + `").focus(), 0`)
		keys("z", "false")
		if got := webtest.Stored(t, s, 1).Value.Panels[0].Power.Val; got != 310 {
			t.Errorf("%d px: Ctrl+Z inside a field undoes the project: %v", wide, got)
		}
		tab.Number(`document.activeElement.blur(), 0`)
		keys("z", "false")
		tab.Wait(`document.querySelector("` + power + `").value !== "310" && document.readyState === "complete"`)
		if got := webtest.Stored(t, s, 1).Value.Panels[0].Power.Val; got != was {
			t.Errorf("%d px: after Ctrl+Z the power is %v, want %v", wide, got, was)
		}
		tab.Number(`document.activeElement.blur(), 0`)
		keys("Z", "true")
		tab.Wait(`document.querySelector("` + power + `").value === "310" && document.readyState === "complete"`)
		tab.Number(`document.activeElement.blur(), 0`)
		keys("z", "false")
		tab.Wait(`document.querySelector("` + power + `").value !== "310" && document.readyState === "complete"`)
		tab.Clean()
	}
}

// Every link and button stands in a landmark: header, navigation, a named section, main or footer.
func TestLandmarks(t *testing.T) {
	s, _ := webtest.Serve(t)
	webtest.Ask(s.Handler(), "POST", "/sample", map[string][]string{})
	body := webtest.Ask(s.Handler(), "GET", "/projects/1/variants/1", nil).Body.String()
	_, rest, _ := strings.Cut(body, "</header>")
	rest, _, _ = strings.Cut(rest, "<main")
	for _, mark := range []string{"nav", "section"} {
		for {
			before, inside, found := strings.Cut(rest, "<"+mark)
			tag, after, _ := strings.Cut(inside, ">")
			if !found {
				break
			}
			if !strings.Contains(tag, "aria-label=") {
				t.Errorf("<%s%s> has no name", mark, tag)
			}
			_, after, _ = strings.Cut(after, "</"+mark+">")
			rest = before + after
		}
	}
	if strings.Contains(rest, "<a ") || strings.Contains(rest, "<button") {
		t.Errorf("outside of every landmark: %s", rest)
	}
}
