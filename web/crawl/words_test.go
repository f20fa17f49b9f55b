package crawl_test

import (
	"net/http"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"

	"duskweight/internal/catalog"
	"duskweight/internal/model"
	"duskweight/internal/model/cell"
	"duskweight/internal/model/lift"
	"duskweight/internal/model/load"
	"duskweight/internal/model/unit"
	"duskweight/internal/model/water"
	"duskweight/web"
	"duskweight/web/cells"
	"duskweight/web/form"
	"duskweight/web/guide"
	"duskweight/web/hoist"
	"duskweight/web/trials"
	roomwater "duskweight/web/water"
	"duskweight/web/webtest"
)

// longestSentence is the most words that one sentence may have: its reader's first language is often another.
const longestSentence = 25

// tradeWords do not stand in labels, hints and headings; the guide's glossary and what is behind "how" may use them.
var tradeWords = regexp.MustCompile(`(?i)\b(sheaves?|reeving|reeved|hangers?|fleet angle|dead wraps?|spilled|unmet|bus|standing draw|levelised|clearness|albedo|transposition|back-?driv\w*|self-?locking|hold-down|redirect|utili[sz]ation|P10|P50|P90|curtail\w*|constant-voltage|breakaway|rope parts)\b`)

// formText is one text of a form table, with its place.
type formText struct{ at, text string }

// formTexts are all labels, hints, titles, introductions and choices of the tables.
func formTexts[T any](name string, parts []form.Part[T], t *T) (out []formText) {
	add := func(at, text string) {
		if text != "" {
			out = append(out, formText{name + " " + at, text})
		}
	}
	for _, p := range parts {
		switch {
		case p.Input != nil:
			add(p.Input.Path, p.Input.Label)
			add(p.Input.Path, p.Input.Hint)
			for _, o := range p.Input.Options {
				add(p.Input.Path, o.Word)
			}
		case p.Group != nil:
			add("heading", p.Group.Title)
			add(p.Group.Title, p.Group.Intro)
			out = append(out, formTexts(name, p.Group.Parts, t)...)
		default:
			add(p.List.Path, p.List.Title)
			add(p.List.Path, p.List.One)
			add(p.List.Path, p.List.Intro)
			if p.List.Count(t) == 0 {
				p.List.Resize(t, 1)
			}
			out = append(out, formTexts(name, p.List.Row(0), t)...)
		}
	}
	return out
}

func allFormTexts() []formText {
	var out []formText
	of := web.AllTables()
	out = append(out, formTexts("place", of.Place(&model.Project{}), &model.Project{})...)
	out = append(out, formTexts("load", of.Load(), &load.Load{})...)
	out = append(out, formTexts("variant", of.Variant(), &model.Variant{})...)
	out = append(out, formTexts("hoist", hoist.HoistForm(), &lift.Hoist{})...)
	out = append(out, formTexts("trials", trials.TrialsForm(), &lift.Hoist{})...)
	out = append(out, formTexts("water", roomwater.WaterForm(), &water.Water{})...)
	return append(out, formTexts("battery", cells.CellsForm(), &cell.Bank{})...)
}

// sentences splits a text at its full stops, question marks and semicolons; headings, rows of tables and points of lists
// are sentences of their own.
func sentences(text string) []string {
	return regexp.MustCompile(`[.?!;:]\**(?:\s|$)|\n\s*(?:\n|[-*|#]|\d+\.)|\|`).Split(text, -1)
}

func tooLong(text string) (long []string) {
	for _, s := range sentences(text) {
		if len(strings.Fields(s)) > longestSentence {
			long = append(long, strings.Join(strings.Fields(s), " "))
		}
	}
	return long
}

// The forms speak plainly: short sentences, no words of the trade.
func TestWordsOfForms(t *testing.T) {
	for _, f := range allFormTexts() {
		for _, s := range tooLong(f.text) {
			t.Errorf("%s: more than %d words: %s", f.at, longestSentence, s)
		}
		if w := tradeWords.FindString(f.text); w != "" {
			t.Errorf("%s: %q is a word of the trade: %s", f.at, w, f.text)
		}
	}
}

// The guide speaks in short sentences, and its glossary is long enough to find a word in.
func TestWordsOfGuide(t *testing.T) {
	pages, err := filepath.Glob("../guide/*.md")
	if err != nil || len(pages) != len(guide.GuideTopics) {
		t.Fatalf("%d pages, want %d (%v)", len(pages), len(guide.GuideTopics), err)
	}
	for _, topic := range guide.GuideTopics {
		text, err := guide.Files.ReadFile(topic + ".md")
		if err != nil {
			t.Fatal(err)
		}
		for _, s := range tooLong(string(text)) {
			t.Errorf("%s: more than %d words: %s", topic, longestSentence, s)
		}
		if topic != "words" {
			for _, line := range strings.Split(string(text), "\n") {
				if w := tradeWords.FindString(line); w != "" && strings.HasPrefix(line, "#") {
					t.Errorf("%s: %q in the heading %q", topic, w, line)
				}
			}
			continue
		}
		var terms []string
		for _, line := range strings.Split(string(text), "\n") {
			if cells := strings.Split(strings.Trim(line, "|"), "|"); strings.HasPrefix(line, "| ") && len(cells) == 3 && !strings.Contains(line, "---") {
				term := strings.TrimSpace(cells[0])
				if slices.Contains(terms, term) {
					t.Errorf("%q stands twice in the glossary", term)
				}
				if strings.TrimSpace(cells[2]) == "" {
					t.Errorf("%q has no meaning", term)
				}
				terms = append(terms, term)
			}
		}
		if n := len(terms) - 1; n < 60 { // the first row is the heading
			t.Errorf("%d terms in the glossary, want at least 60", n)
		}
	}
}

// The guide's example tells the numbers of the worked sample that ships.
func TestGuideTellsTheSample(t *testing.T) {
	text, err := guide.Files.ReadFile("start.md")
	if err != nil {
		t.Fatal(err)
	}
	f := model.Evaluate(catalog.Sample(), "").Variants[0].Facts
	for _, want := range []string{
		unit.Rounded(float64(f.OneLiftOut.Val)/3600, 2) + " Wh",
		form.Lasting(f.LiftMinutes.Val) + " of light",
		unit.Rounded(float64(f.TimesMore.Val), 2) + " times as much",
		unit.Rounded(float64(f.NightAppliances.Val+f.NightStanding.Val)/3600, 2) + " Wh",
	} {
		if !strings.Contains(string(text), strings.ReplaceAll(want, "\u00a0", " ")) {
			t.Errorf("the guide does not say %q", want)
		}
	}
}

// Headings, labels and names of columns of the sample's pages hold no word of the trade.
func TestWordsOfPages(t *testing.T) {
	s := webtest.NewSite(t)
	p, vs := webtest.Create(t, s, "sample", catalog.Sample())
	heads := regexp.MustCompile(`(?s)<(h[1-6]|label|th|legend|summary|dt|button|caption|nav)\b[^>]*>(.*?)</(?:h[1-6]|label|th|legend|summary|dt|button|caption|nav)>`)
	for _, page := range append(webtest.PagesOf(p, vs), "/", "/start", "/settings") {
		w := webtest.Ask(s.Handler(), "GET", page, nil)
		if w.Code != http.StatusOK {
			t.Fatalf("%s: %d", page, w.Code)
		}
		told := map[string]bool{}
		for _, m := range heads.FindAllStringSubmatch(w.Body.String(), -1) {
			text := strings.Join(strings.Fields(webtest.Tags.ReplaceAllString(m[2], " ")), " ")
			if bad := tradeWords.FindString(text); bad != "" && !told[text] {
				told[text] = true
				t.Errorf("%s: %q in the %s %q", page, bad, m[1], text)
			}
		}
	}
}

// What the checks look for is found.
func TestWordsFinds(t *testing.T) {
	if len(tooLong(strings.Repeat("word ", 26))) != 1 || len(tooLong(strings.Repeat("word ", 25)+". Next")) != 0 {
		t.Error("long sentences are not found")
	}
	for _, w := range []string{"Sheave", "dead wraps", "Spilled sun", "The bus", "back-driveable"} {
		if !tradeWords.MatchString(w) {
			t.Errorf("%q is not found", w)
		}
	}
	if tradeWords.MatchString("Busy") || tradeWords.MatchString("unmetered") {
		t.Error("too much is found")
	}
}
