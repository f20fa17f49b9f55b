// Package guide shows the Guide (/help and /help/{topic}): texts that are embedded and rendered before the first request,
// their search, the words of the trade, and what is typical for each number.
package guide

import (
	"bytes"
	"embed"
	"fmt"
	"html"
	"net/http"
	"strings"

	"github.com/a-h/templ"
	"github.com/go-chi/chi/v5"
	"github.com/yuin/goldmark"
	"github.com/yuin/goldmark/extension"
	"github.com/yuin/goldmark/parser"
	gmtext "github.com/yuin/goldmark/text"

	"duskweight/web/form"
	"duskweight/web/page"
)

// Pages are the pages of this room.
type Pages struct {
	*page.Site
	guide *guide
	known []knownTable
}

// New reads the embedded texts. The words that lead to them are left with the site, for every page.
func New(s *page.Site) (*Pages, error) {
	book, words, err := readGuide()
	if err != nil {
		return nil, err
	}
	known, err := readKnown()
	if err != nil {
		return nil, err
	}
	s.Words = words
	return &Pages{s, book, known}, nil
}

// Routes hangs the pages at their addresses.
func (s *Pages) Routes(r chi.Router) {
	r.Get("/help", s.Page(s.showGuide))
	r.Get("/help/{topic}", s.Page(s.showTopic))
}

// The Guide: /help and /help/{topic}. Its pages are embedded and ready before the first request.

//go:embed *.md
var Files embed.FS

// groups are the headings of the index, each with its pages in their order.
var groups = []struct {
	name   string
	topics []string
}{
	{"First steps", []string{"safety", "start", "example"}},
	{"Night and sun", []string{"night", "sun"}},
	{"Lifted mass", []string{"hoist", "breaks", "rows", "shelf", "trials"}},
	{"Other stores", []string{"cells", "water"}},
	{"Money and chance", []string{"money", "sure"}},
	{"Evidence", []string{"known", "formulas", "sources", "typical"}},
	{"Reference", []string{"words", "program"}},
}

// GuideTopics is the order of the guide.
var GuideTopics = topicsOf()

func topicsOf() (out []string) {
	for _, g := range groups {
		out = append(out, g.topics...)
	}
	return out
}

// bareTopics are pages whose words are titles, commands, or the meanings themselves.
var bareTopics = map[string]bool{"words": true, "sources": true, "program": true, "typical": true, "known": true}

// guidePage is one page of the guide, ready to print, with its sections for the search.
type guidePage struct {
	Topic, Title, HTML string
	sections           []section
}

// Question is the question that the page answers.
func (p guidePage) Question() string { return p.sections[0].question }

// address is where a section of the page stands.
func (p guidePage) address(s *section) string {
	if s.id == "" {
		return "/help/" + p.Topic
	}
	return "/help/" + p.Topic + "#" + s.id
}

// groupView is one heading of the index with its pages.
type groupView struct {
	Name  string
	Pages []guidePage
}

// guide is all pages of it, with how many sections there are and in how many of them each word is used.
type guide struct {
	pages []guidePage
	count int
	used  map[string]int
}

// groups are the pages under the headings of the index.
func (g *guide) groups() []groupView {
	var out []groupView
	from := 0
	for _, one := range groups {
		to := from + len(one.topics)
		out = append(out, groupView{one.name, g.pages[from:to]})
		from = to
	}
	return out
}

// readGuide renders the embedded pages, and gives the words that link to them.
func readGuide() (*guide, *page.Lexicon, error) {
	md := goldmark.New(goldmark.WithExtensions(extension.Table), goldmark.WithParserOptions(parser.WithAutoHeadingID()))
	g, words := &guide{used: map[string]int{}}, (*page.Lexicon)(nil)
	for _, topic := range GuideTopics {
		src, err := Files.ReadFile(topic + ".md")
		if err != nil {
			return nil, nil, err
		}
		first, rest, _ := strings.Cut(string(src), "\n")
		one := guidePage{Topic: topic, Title: strings.TrimPrefix(first, "# ")}
		if topic == "words" {
			terms := page.ReadGlossary(rest)
			words = page.NewLexicon(terms)
			one.HTML = glossaryHTML(terms)
			one.sections = append(weighed([]section{{page: one.Title, opens: true, question: glossaryQuestion, passages: []string{glossaryIntro}}}), glossarySections(one.Title, terms)...)
		} else {
			doc := md.Parser().Parse(gmtext.NewReader([]byte(rest)))
			var out bytes.Buffer
			if err := md.Renderer().Render(&out, []byte(rest), doc); err != nil {
				return nil, nil, err
			}
			one.HTML, one.sections = out.String(), sectionsOf(one.Title, doc, []byte(rest))
		}
		g.pages = append(g.pages, one)
		for _, s := range one.sections {
			g.count++
			for w := range s.weights {
				g.used[w]++
			}
		}
	}
	return g, words, nil
}

// What the page Words begins with.
const (
	glossaryQuestion = "What does a word on the pages mean?"
	glossaryIntro    = "The pages use plain words; the word of the trade stands beside each. A word with dots under it leads here."
)

// glossaryHTML is the table of words; each row can be linked to.
func glossaryHTML(terms []page.Term) string {
	var b strings.Builder
	b.WriteString(`<p><em>` + glossaryQuestion + `</em></p><p>` + glossaryIntro + `</p><table><thead><tr><th scope="col">on the page</th><th scope="col">word of the trade</th><th scope="col">meaning</th></tr></thead><tbody>`)
	for _, t := range terms {
		trade := t.Trade
		if trade == "" {
			trade = "–"
		}
		fmt.Fprintf(&b, `<tr id="%s"><th scope="row">%s</th><td>%s</td><td>%s</td></tr>`, t.ID, html.EscapeString(t.Word), html.EscapeString(trade), html.EscapeString(t.Meaning))
	}
	b.WriteString(`</tbody></table>`)
	return b.String()
}

// showGuide shows the list of the guide, or what was found for ?q=.
func (s *Pages) showGuide(w http.ResponseWriter, r *http.Request) error {
	v := guideView{Groups: s.guide.groups(), Asked: form.Clip(strings.TrimSpace(r.URL.Query().Get("q")), longestSearch)}
	if v.Asked == "" {
		return s.Show(w, r, http.StatusOK, page.Frame{Title: "Guide"}, guideIndex(v))
	}
	v.Found = s.guide.search(v.Asked)
	return s.Show(w, r, http.StatusOK, page.Frame{Title: "Search in the guide"}, guideIndex(v))
}

func (s *Pages) showTopic(w http.ResponseWriter, r *http.Request) error {
	topic := chi.URLParam(r, "topic")
	for _, p := range s.guide.pages {
		if p.Topic == topic {
			var more templ.Component
			switch topic {
			case "known":
				more = knownTables(s.known)
			case "typical":
				sys, err := s.Units(r.Context())
				if err != nil {
					return err
				}
				more = typicalTables(typicalPages(s.Tables, sys))
			}
			return s.Show(w, r, http.StatusOK, page.Frame{Title: p.Title, Bare: bareTopics[topic]}, guideTopic(s.guide.groups(), p, more))
		}
	}
	return page.ErrNotFound
}
