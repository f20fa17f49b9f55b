package guide

import (
	"cmp"
	"html"
	"math"
	"slices"
	"strings"
	"unicode"

	"github.com/yuin/goldmark/ast"
	east "github.com/yuin/goldmark/extension/ast"
	"golang.org/x/text/unicode/norm"

	"duskweight/web/form"
	"duskweight/web/page"
)

// section is what the search finds: a heading of the guide with its question and its text, or one word of the glossary.
type section struct {
	page, heading, id, question string
	trade                       string   // of a word of the glossary: what the trade calls it
	passages                    []string // paragraphs, points and rows of tables
	opens                       bool     // it is the beginning of its page
	weights                     map[string]float64
	names                       []string // heading and words of the trade, as keys of their words
	phrases                     string   // heading, question and, where it opens a page, the page's title, as keys of their words
}

// The weight of a word by where it stands. Our own judgement; TestSearchFindsTheTopic holds these numbers together.
const (
	inTitle    = 7.0 // of the page, in its first section
	inPage     = 1.5 // the same, in the other sections
	inHeading  = 5.0
	inQuestion = 3.0
	inText     = 1.0
	asName     = 1.5  // all that was typed is the heading, or the word of the trade
	asPhrase   = 2.0  // all that was typed stands together in title, heading or question
	toList     = 0.05 // of the best score: what has less is not shown
)

// behind are the pages that are looked up when the others have said what they can: how much their words count beside those.
var behind = map[string]float64{"words": 0.5, "formulas": 0.6, "example": 0.6, "sources": 0.4}

// sectionsOf cuts a page of the guide at its headings.
func sectionsOf(title string, doc ast.Node, src []byte) []section {
	out := []section{{page: title, opens: true}}
	_ = ast.Walk(doc, func(n ast.Node, entering bool) (ast.WalkStatus, error) { // our own function never fails
		if !entering {
			return ast.WalkContinue, nil
		}
		last := &out[len(out)-1]
		switch n.Kind() {
		case ast.KindHeading:
			one := section{page: title, heading: nodeText(n, src)}
			if v, ok := n.AttributeString("id"); ok {
				if b, ok := v.([]byte); ok {
					one.id = string(b)
				}
			}
			out = append(out, one)
		case ast.KindParagraph, ast.KindTextBlock, east.KindTableRow:
			text := nodeText(n, src)
			if len(last.passages) == 0 && last.question == "" && strings.HasSuffix(text, "?") {
				last.question = text
				break
			}
			last.passages = append(last.passages, text)
		default:
			return ast.WalkContinue, nil
		}
		return ast.WalkSkipChildren, nil
	})
	return weighed(out)
}

// nodeText is the text of a node without its marks; cells of a table are set apart.
func nodeText(n ast.Node, src []byte) string {
	var b strings.Builder
	_ = ast.Walk(n, func(n ast.Node, entering bool) (ast.WalkStatus, error) {
		switch t := n.(type) {
		case *ast.Text:
			if entering {
				b.Write(t.Segment.Value(src))
				if t.SoftLineBreak() {
					b.WriteByte(' ')
				}
			}
		case *east.TableCell:
			if !entering && n.NextSibling() != nil {
				b.WriteString(". ")
			}
		}
		return ast.WalkContinue, nil
	})
	return strings.TrimSpace(b.String())
}

// glossarySections are the words of the glossary, one section each.
func glossarySections(title string, terms []page.Term) []section {
	var out []section
	for _, t := range terms {
		text := t.Word
		if t.Trade != "" {
			text += " (" + t.Trade + ")"
		}
		out = append(out, section{page: title, heading: t.Word, trade: t.Trade, id: t.ID, passages: []string{text + ": " + t.Meaning}})
	}
	return weighed(out)
}

// weighed counts the words of each section by where they stand.
func weighed(all []section) []section {
	for i := range all {
		s := &all[i]
		s.weights = map[string]float64{}
		add := func(text string, weight float64) {
			for _, w := range wordsOf(text) {
				s.weights[w.key] = max(s.weights[w.key], weight)
			}
			s.phrases += phraseOf(text)
		}
		if s.opens {
			add(s.page, inTitle)
		} else {
			for _, w := range wordsOf(s.page) {
				s.weights[w.key] = inPage
			}
		}
		add(s.heading, inHeading)
		add(s.trade, inHeading)
		add(s.question, inQuestion)
		for _, name := range append(strings.Split(s.trade, ", "), s.heading) {
			s.names = append(s.names, phraseOf(name))
		}
		for _, p := range s.passages {
			for _, w := range wordsOf(p) {
				s.weights[w.key] += inText / (1 + s.weights[w.key]) // each further use counts less
			}
		}
	}
	return all
}

// word is one word of a text: where it stands, and the key by which it is compared.
type word struct {
	from, to int
	key      string
}

// wordsOf are the words of a text in their order.
func wordsOf(text string) []word {
	var out []word
	from := -1
	for i, r := range text + " " {
		in := unicode.IsLetter(r) || unicode.IsDigit(r) || unicode.Is(unicode.Mn, r)
		switch {
		case in && from < 0:
			from = i
		case !in && from >= 0:
			out = append(out, word{from, i, keyOf(text[from:i])})
			from = -1
		}
	}
	return out
}

// keyOf is a word in small letters, without accents and without the ending of a plural: batteries and Battery are "battery".
func keyOf(w string) string {
	var b strings.Builder
	for _, r := range norm.NFD.String(strings.ToLower(w)) {
		if !unicode.Is(unicode.Mn, r) {
			b.WriteRune(r)
		}
	}
	key := b.String()
	for _, end := range []struct{ many, one string }{{"ies", "y"}, {"sses", "ss"}, {"shes", "sh"}, {"ches", "ch"}, {"xes", "x"}, {"ss", "ss"}, {"us", "us"}, {"s", ""}} {
		if cut, ok := strings.CutSuffix(key, end.many); ok && len(cut) > 2 {
			return cut + end.one
		}
	}
	return key
}

// phraseOf is the keys of a text, each between two spaces.
func phraseOf(text string) string {
	var b strings.Builder
	b.WriteString(" ")
	for _, w := range wordsOf(text) {
		b.WriteString(w.key + " ")
	}
	return b.String()
}

// wanted is one word that was asked for: the keys that answer it, each with how well it does, 1 for the word itself.
type wanted map[string]float64

const (
	likeness = 0.8 // of a word that means the same
	besides  = 0.5 // the same, where the guide has the word itself
	longer   = 0.5 // of a longer word that begins with it
	typo     = 0.4 // of a word with one letter typed wrong
)

// wantedOf reads what was typed. Words that every text has are left out; what no text has is taken for a word of the guide with
// one letter typed wrong.
func (g *guide) wantedOf(asked string) []wanted {
	var out []wanted
	for _, w := range wordsOf(asked) {
		if everywhere[w.key] {
			continue
		}
		is := wanted{}
		g.match(is, w.key, 1)
		likeness := likeness
		if g.used[w.key] > 0 {
			likeness = besides
		}
		for _, same := range strings.Fields(sameAs[w.key]) {
			g.match(is, same, likeness)
		}
		if len(is) == 0 && len(w.key) > 3 {
			for key := range g.used {
				if oneApart(w.key, key) {
					is[key] = typo
				}
			}
		}
		out = append(out, is)
	}
	return out
}

// match adds the keys of the guide that are the key, or begin with it.
func (g *guide) match(is wanted, key string, how float64) {
	if g.used[key] > 0 {
		is[key] = max(is[key], how)
	}
	if len(key) < 3 {
		return
	}
	for used := range g.used {
		if used != key && strings.HasPrefix(used, key) {
			is[used] = max(is[used], how*longer)
		}
	}
}

// oneApart reports whether one letter more, less or other, or two that changed places, make b of a.
func oneApart(a, b string) bool {
	if len(a) > len(b) {
		a, b = b, a
	}
	if len(b)-len(a) > 1 || a == "" || a[0] != b[0] {
		return false
	}
	i := 0
	for i < len(a) && a[i] == b[i] {
		i++
	}
	switch {
	case len(a) < len(b):
		return a[i:] == b[i+1:]
	case i+1 >= len(a):
		return true
	}
	return a[i+1:] == b[i+1:] || a[i] == b[i+1] && a[i+1] == b[i] && a[i+2:] == b[i+2:]
}

// guideView is the list of the guide with what was asked and found.
type guideView struct {
	Groups []groupView
	Asked  string
	Found  []foundView
}

// foundView is one section that was found: its question, and the passage that answers best, parted at the words asked for.
type foundView struct {
	Title, URL, Question string
	Parts                []foundPart
}

type foundPart struct {
	Text string
	Hit  bool
}

// marked is the passage as HTML. It is put together here because a template would set spaces between the parts.
func (f foundView) marked() string {
	var b strings.Builder
	for _, p := range f.Parts {
		text := html.EscapeString(p.Text)
		if p.Hit {
			text = "<mark>" + text + "</mark>"
		}
		b.WriteString(text)
	}
	return b.String()
}

const (
	longestSearch = 100 // letters
	mostFound     = 20
	shownLetters  = 220 // of a passage
)

// ranked is a section with how well it answers.
type ranked struct {
	at    *section
	url   string
	score float64
}

// search returns the sections that answer what was asked for, the best first. A rare word counts more than a frequent one, and a
// section that lacks some of the words counts less by the square of the share that it has.
func (g *guide) search(asked string) []foundView {
	words, phrase := g.wantedOf(asked), phraseOf(asked)
	var all []ranked
	for i := range g.pages {
		for j := range g.pages[i].sections {
			s := &g.pages[i].sections[j]
			score, has := 0.0, 0.0
			for _, w := range words {
				best := 0.0
				for key, how := range w {
					best = max(best, how*s.weights[key]*math.Log(1+float64(g.count)/float64(g.used[key])))
				}
				if best > 0 {
					has++
				}
				score += best
			}
			if has == 0 {
				continue
			}
			score *= (has / float64(len(words))) * (has / float64(len(words)))
			if strings.Contains(s.phrases, phrase) {
				score *= asPhrase
			}
			if slices.Contains(s.names, phrase) {
				score *= asName
			}
			if less, ok := behind[g.pages[i].Topic]; ok {
				score *= less
			}
			all = append(all, ranked{s, g.pages[i].address(s), score})
		}
	}
	slices.SortStableFunc(all, func(a, b ranked) int { return cmp.Compare(b.score, a.score) })
	all = slices.DeleteFunc(all, func(r ranked) bool { return r.score < toList*all[0].score })
	var out []foundView
	for _, r := range all[:min(len(all), mostFound)] {
		f := foundView{Title: r.at.page, URL: r.url, Question: r.at.question, Parts: partsOf(r.at.bestPassage(words), words)}
		if r.at.heading != "" {
			f.Title += ": " + r.at.heading
		}
		out = append(out, f)
	}
	return out
}

// bestPassage is the passage of a section with most of the words asked for; the first one where none has any.
func (s *section) bestPassage(words []wanted) string {
	best, most := "", -1.0
	for _, p := range s.passages {
		n := 0.0
		for _, w := range words {
			hit := 0.0
			for _, one := range wordsOf(p) {
				hit = max(hit, w[one.key])
			}
			n += hit
		}
		if n > most {
			best, most = p, n
		}
	}
	return best
}

// partsOf clips a passage round the first word that was asked for and parts it at all of them.
func partsOf(text string, words []wanted) []foundPart {
	var hits []word
	for _, one := range wordsOf(text) {
		if slices.ContainsFunc(words, func(w wanted) bool { return w[one.key] > 0 }) {
			hits = append(hits, one)
		}
	}
	if len(hits) == 0 {
		return []foundPart{{Text: form.Clip(text, shownLetters)}}
	}
	from, to := 0, len(text)
	if first := hits[0].from; first > shownLetters/2 {
		from = strings.LastIndexByte(text[:first-shownLetters/3], ' ') + 1
	}
	if to-from > shownLetters {
		if i := strings.IndexByte(text[from+shownLetters:], ' '); i >= 0 {
			to = from + shownLetters + i
		}
	}
	var out []foundPart
	add := func(s string, hit bool) {
		if s != "" {
			out = append(out, foundPart{s, hit})
		}
	}
	if from > 0 {
		add("… ", false)
	}
	for _, h := range hits {
		if h.from >= from && h.to <= to {
			add(text[from:h.from], false)
			add(text[h.from:h.to], true)
			from = h.to
		}
	}
	add(text[from:to], false)
	if to < len(text) {
		add(" …", false)
	}
	return out
}
