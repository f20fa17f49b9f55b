package crawl_test

import (
	"net/http/httptest"
	"net/url"
	"strconv"
	"strings"
	"testing"

	"duskweight/web/browsertest"
	"duskweight/web/webtest"
)

// The scripts in a real browser: answers follow typing, leaving a field saves, a refused text is kept and its field marked
// with the reason, a button pressed while a save is under way does not clash with it, and a second window is told.
func TestBrowserScripts(t *testing.T) {
	b := browsertest.Start(t)
	s := webtest.NewSite(t)
	server := httptest.NewServer(s.Handler())
	t.Cleanup(server.Close)
	webtest.Ask(s.Handler(), "POST", "/sample", url.Values{})
	page := server.URL + "/projects/1/variants/1"
	const power = "#f-panels-0-panel-w"

	tab := b.Open(t, browsertest.Look{})
	tab.Go(page)
	before := tab.Text("#results")
	tab.Type(power, "300")
	tab.Wait(`document.querySelector("#results .was") !== null`)
	if now := tab.Text("#results"); now == before || !strings.Contains(now, "was ") {
		t.Error("the answer does not follow typing, or does not say what it was")
	}
	if tab.String(`document.activeElement.id`) != power[1:] {
		t.Error("the focus moved")
	}

	tab.Press("\t")
	tab.Wait(`document.querySelector("[data-saved]").textContent === "Saved."`)
	if got := webtest.Stored(t, s, 1).Value.Panels[0].Power.Val; got != 300 {
		t.Errorf("leaving the field saved %v", got)
	}

	const heads = `[...document.querySelectorAll(".section > summary")].map(s => s.textContent.replace(/\s+/g, " ").trim()).join("; ")`
	full := tab.String(heads)
	tab.Type(power, "")
	tab.Press("\t")
	tab.Wait(`document.querySelector("[data-saved]").textContent === "Saved."`)
	tab.Wait(heads + ` !== ` + strconv.Quote(full))
	open := tab.String(heads)
	tab.Go(page)
	if now := tab.String(heads); now != open {
		t.Errorf("after a save the lines of the sections say %q, after a reload %q", open, now)
	}
	tab.Type(power, "300")
	tab.Press("\t")
	tab.Wait(heads + ` === ` + strconv.Quote(full))

	tab.Type(power, "many")
	tab.Press("\t")
	tab.Wait(`document.querySelector("[data-saved]").textContent.startsWith("Not saved yet")`)
	tab.Wait(`document.getElementById("results").classList.contains("stale")`)
	if tab.Number(`document.querySelectorAll("[aria-invalid]").length`) != 1 || !strings.Contains(tab.Text(power+"-n .problem"), "This is not a number.") {
		t.Error("the refused field is not marked with its reason")
	}
	if said := tab.Text("[data-saved]"); !strings.Contains(said, "Power of one") {
		t.Errorf("the refused field is not named: %q", said)
	}
	tab.Go(page)
	if tab.Value(power) != "many" || tab.Number(`document.querySelectorAll("[aria-invalid]").length`) != 1 {
		t.Errorf("%q is in the field of the refused text, or it is not marked", tab.Value(power))
	}
	if tab.String(`document.activeElement.className`) != "summary" {
		t.Error("the focus is not on the summary")
	}
	tab.Type(power, "200")
	tab.Press("\t")
	tab.Wait(`document.querySelector("[data-saved]").textContent === "Saved."`)
	if tab.Number(`document.querySelectorAll("[aria-invalid], .summary, .problem").length`) != 0 || strings.HasPrefix(tab.String(`document.title`), "Error") {
		t.Error("the marks of the refusal stay after it was mended")
	}

	rows := len(webtest.Stored(t, s, 1).Value.Panels)
	tab.Type(power, "210")
	tab.Follow(`button[value="add:panels"]`)
	if v := webtest.Stored(t, s, 1).Value; len(v.Panels) != rows+1 || v.Panels[0].Power.Val != 210 {
		t.Errorf("a row added while a save is under way: %d rows, %v", len(v.Panels), v.Panels[0].Power)
	}

	other := b.Open(t, browsertest.Look{})
	other.Go(page)
	tab.Type(power, "220")
	tab.Press("\t")
	tab.Wait(`document.querySelector("[data-saved]").textContent === "Saved."`)
	other.Type(power, "230")
	other.Press("\t")
	other.Wait(`document.querySelector("[data-saved]").textContent.startsWith("Changed in another window")`)
	other.Follow(`.actions .primary`)
	if body := other.Text("main"); !strings.Contains(body, "220") || !strings.Contains(body, "230") {
		t.Error("the page of the conflict does not show both versions")
	}
	if got := webtest.Stored(t, s, 1).Value.Panels[0].Power.Val; got != 220 {
		t.Errorf("%v was saved over 220", got)
	}
	for _, one := range []*browsertest.Tab{tab, other} {
		one.Clean("422", "409")
	}
}
