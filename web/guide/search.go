package guide

import (
	"html"
	"slices"
	"strings"

	"github.com/yuin/goldmark/ast"
	east "github.com/yuin/goldmark/extension/ast"

	"duskweight/web/form"
	"duskweight/web/page"
)

// passage is one paragraph, point or row of the guide, with the heading that it stands under.
type passage struct {
	heading, id string
	text        string
}

// passagesOf cuts a page into what the search finds.
func passagesOf(doc ast.Node, src []byte) []passage {
	var out []passage
	var heading, id string
	_ = ast.Walk(doc, func(n ast.Node, entering bool) (ast.WalkStatus, error) { // our own function never fails
		if !entering {
			return ast.WalkContinue, nil
		}
		switch n.Kind() {
		case ast.KindHeading:
			heading, id = nodeText(n, src), ""
			if v, ok := n.AttributeString("id"); ok {
				if b, ok := v.([]byte); ok {
					id = string(b)
				}
			}
		case ast.KindParagraph, ast.KindTextBlock, east.KindTableRow:
			out = append(out, passage{heading, id, nodeText(n, src)})
		default:
			return ast.WalkContinue, nil
		}
		return ast.WalkSkipChildren, nil
	})
	return out
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

func glossaryPassages(terms []page.Term) []passage {
	var out []passage
	for _, t := range terms {
		text := t.Word
		if t.Trade != "" {
			text += " (" + t.Trade + ")"
		}
		out = append(out, passage{t.Word, t.ID, text + ": " + t.Meaning})
	}
	return out
}

// guideView is the list of the guide with what was asked and found.
type guideView struct {
	Pages []guidePage
	Asked string
	Found []foundView
}

// foundView is one passage that was found, parted at the words that were asked for.
type foundView struct {
	Title, URL string
	Parts      []foundPart
	rank       int
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
	mostFound     = 30
	shownLetters  = 220 // of a passage
)

// search returns the passages that hold every word that was asked for, those with a word in their heading first. A word
// finds longer words that begin with it; of one that ends in s the s may be missing.
func (g *guide) search(asked string) []foundView {
	words := strings.FieldsFunc(strings.ToLower(asked), func(r rune) bool { return strings.ContainsRune(" ,;:?!\"'()", r) })
	for i, w := range words {
		if len(w) > 3 {
			words[i] = strings.TrimSuffix(w, "s")
		}
	}
	var out []foundView
	if len(words) == 0 {
		return nil
	}
	for _, page := range g.pages {
		for _, p := range page.passages {
			head := strings.ToLower(page.Title + " " + p.heading)
			text := strings.ToLower(p.text)
			here, inHead := 0, 0
			for _, w := range words {
				switch {
				case wordAt(text, w) >= 0:
					here++
				case wordAt(head, w) < 0:
					here = -len(words)
				}
				if wordAt(head, w) >= 0 {
					inHead++
				}
			}
			if here <= 0 {
				continue
			}
			f := foundView{Title: page.Title, URL: "/help/" + page.Topic, Parts: partsOf(p.text, words), rank: here + 2*inHead}
			if p.heading != "" {
				f.Title += ": " + p.heading
			}
			if p.id != "" {
				f.URL += "#" + p.id
			}
			out = append(out, f)
		}
	}
	slices.SortStableFunc(out, func(a, b foundView) int { return b.rank - a.rank })
	return out[:min(len(out), mostFound)]
}

// wordAt is where a word of text begins with w, or -1.
func wordAt(text, w string) int {
	for from := 0; ; {
		i := strings.Index(text[from:], w)
		if i < 0 {
			return -1
		}
		if i += from; i == 0 || !page.InWord(text[i-1]) {
			return i
		}
		from = i + 1
	}
}

// partsOf clips a passage round the first word that was asked for and parts it at all of them.
func partsOf(text string, words []string) []foundPart {
	low := strings.ToLower(text)
	if len(low) != len(text) { // letters whose small form is longer: shown without marks
		return []foundPart{{Text: form.Clip(text, shownLetters)}}
	}
	first := len(text)
	for _, w := range words {
		if i := wordAt(low, w); i >= 0 {
			first = min(first, i)
		}
	}
	from, to := 0, len(text)
	if first > shownLetters/2 && first < len(text) {
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
	for from < to {
		at, n := to, 0
		for _, w := range words {
			if i := wordAt(low[from:to], w); i >= 0 && from+i < at {
				at, n = from+i, len(w)
			}
		}
		add(text[from:at], false)
		add(text[at:at+n], true)
		from = at + n
		if n > 0 && from < to && page.InWord(text[from]) { // the rest of a longer word
			end := min(page.WordEnd([]byte(text), from), to)
			add(text[from:end], false)
			from = end
		}
	}
	if to < len(text) {
		add(" …", false)
	}
	return out
}
