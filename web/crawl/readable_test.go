package crawl_test

import (
	"html"
	"net/http"
	"regexp"
	"strings"
	"testing"

	"duskweight/internal/catalog"
	"duskweight/web/guide"
	"duskweight/web/webtest"
)

// Reading grade of Flesch and Kincaid: J. P. Kincaid, R. P. Fishburne, R. L. Rogers and B. S. Chissom, Derivation of new
// readability formulas for Navy enlisted personnel, Research Branch Report 8-75, 1975:
// grade = 0.39 words/sentences + 11.8 syllables/words − 15.59.
const highestGrade = 8

// grade counts the words, sentences and syllables of texts.
type grade struct{ words, sentences, syllables int }

func (g *grade) add(sentence string) {
	n := 0
	for _, w := range strings.Fields(sentence) {
		if s := syllables(w); s > 0 {
			g.syllables += s
			n++
		}
	}
	if n > 0 {
		g.words += n
		g.sentences++
	}
}

func (g grade) value() float64 {
	if g.sentences == 0 {
		return 0
	}
	return 0.39*float64(g.words)/float64(g.sentences) + 11.8*float64(g.syllables)/float64(g.words) - 15.59
}

var notLetters = regexp.MustCompile(`[^a-z]`)

// syllables counts groups of vowels, without a silent e at the end; a word without letters counts none.
func syllables(word string) int {
	w := notLetters.ReplaceAllString(strings.ToLower(word), "")
	if w == "" {
		return 0
	}
	n, vowel := 0, false
	for _, c := range w {
		v := strings.ContainsRune("aeiouy", c)
		if v && !vowel {
			n++
		}
		vowel = v
	}
	switch {
	case strings.HasSuffix(w, "le") && len(w) > 2 && !strings.ContainsRune("aeiouy", rune(w[len(w)-3])):
	case strings.HasSuffix(w, "e"), strings.HasSuffix(w, "ed") && !strings.HasSuffix(w, "ted") && !strings.HasSuffix(w, "ded"):
		n--
	}
	return max(n, 1)
}

var (
	unread     = regexp.MustCompile(`(?s)<(script|style|svg|code|select|textarea|footer)\b.*?</(script|style|svg|code|select|textarea|footer)>`)
	blockEdges = regexp.MustCompile(`</?(p|li|td|th|dt|dd|div|h[1-6]|label|legend|summary|button|caption|figcaption|tr|ul|ol|dl|table|section|article|details|form|fieldset|small|option|main|nav|body|br)\b[^>]*>|<span class="(?:quiet|brief)">`)
	sentenceAt = regexp.MustCompile(`[.?!]["”)]*(\s+|$)`)
)

// blocksOf are the texts of a page's main part, one for each paragraph, point, cell, label.
func blocksOf(page string) (out []string) {
	if _, main, ok := strings.Cut(page, "<main"); ok {
		page = "<main" + main
	}
	for _, block := range blockEdges.Split(unread.ReplaceAllString(page, " "), -1) {
		if text := strings.Join(strings.Fields(html.UnescapeString(webtest.Tags.ReplaceAllString(block, ""))), " "); text != "" {
			out = append(out, text)
		}
	}
	return out
}

// Every page, the guide and the pages of work alike, speaks in sentences of at most 25 words, and is read at grade 8 or
// below.
func TestReadable(t *testing.T) {
	s := webtest.NewSite(t)
	p, vs := webtest.Create(t, s, "sample", catalog.Sample())
	q, us := webtest.Create(t, s, "first plan", catalog.Start(webtest.ExampleAnswers(t)))
	pages := append(append(webtest.PagesOf(p, vs), webtest.PagesOf(q, us)...), "/", "/start", "/settings", "/help", "/help?q=rope")
	for _, topic := range guide.GuideTopics {
		if topic != "sources" { // titles of works
			pages = append(pages, "/help/"+topic)
		}
	}
	told := map[string]bool{}
	for _, page := range pages {
		w := webtest.Ask(s.Handler(), "GET", page, nil)
		if w.Code != http.StatusOK || !strings.HasPrefix(w.Header().Get("Content-Type"), "text/html") {
			continue
		}
		var g grade
		for _, block := range blocksOf(w.Body.String()) {
			for _, one := range sentenceAt.Split(block, -1) {
				if n := len(strings.Fields(one)); n > longestSentence && !told[one] {
					told[one] = true
					t.Errorf("%s: %d words: %s", page, n, one)
				}
				if len(strings.Fields(one)) >= 4 {
					g.add(one)
				}
			}
		}
		t.Logf("%s: grade %.1f of %d sentences", page, g.value(), g.sentences)
		if g.value() > highestGrade {
			t.Errorf("%s: reading grade %.1f", page, g.value())
		}
	}
}

// The grade agrees with one counted by hand: "The cat sat on the mat." has 6 words of 1 syllable:
// 0.39·6 + 11.8·1 − 15.59 = −1.45. "Water tables are not simple to carry over." has 8 words and
// 2+2+1+1+2+1+2+2 = 13 syllables: 0.39·8 + 11.8·13/8 − 15.59 = 6.705.
func TestReadableCounts(t *testing.T) {
	for text, want := range map[string]float64{"The cat sat on the mat": -1.45, "Water tables are not simple to carry over": 6.705} {
		var g grade
		g.add(text)
		if v := g.value(); v < want-0.01 || v > want+0.01 {
			t.Errorf("%s: %.3f, want %.3f", text, v, want)
		}
	}
	long := "<main><p>" + strings.Repeat("word ", 26) + "</p></main>"
	if b := blocksOf(long); len(b) != 1 || len(strings.Fields(b[0])) != 26 {
		t.Error("a long sentence is not found")
	}
}
