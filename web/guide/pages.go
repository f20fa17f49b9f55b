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
}

// New reads the embedded texts. The words that lead to them are left with the site, for every page.
func New(s *page.Site) (*Pages, error) {
	book, words, err := readGuide()
	if err != nil {
		return nil, err
	}
	s.Words = words
	return &Pages{s, book}, nil
}

// Routes hangs the pages at their addresses.
func (s *Pages) Routes(r chi.Router) {
	r.Get("/help", s.Page(s.showGuide))
	r.Get("/help/{topic}", s.Page(s.showTopic))
}

// The Guide: /help and /help/{topic}. Its pages are embedded and ready before the first request.

//go:embed *.md
var Files embed.FS

// GuideTopics is the order of the guide.
var GuideTopics = []string{"start", "example", "night", "sun", "hoist", "rows", "shelf", "breaks", "trials", "cells", "water", "sure", "money", "typical", "formulas", "sources", "safety", "words", "program"}

// bareTopics are pages whose words are titles, commands, or the meanings themselves.
var bareTopics = map[string]bool{"words": true, "sources": true, "program": true, "typical": true}

// guidePage is one page of the guide, ready to print, with its passages for the search.
type guidePage struct {
	Topic, Title, HTML string
	passages           []passage
}

// guide is all pages of it.
type guide struct{ pages []guidePage }

// readGuide renders the embedded pages, and gives the words that link to them.
func readGuide() (*guide, *page.Lexicon, error) {
	md := goldmark.New(goldmark.WithExtensions(extension.Table), goldmark.WithParserOptions(parser.WithAutoHeadingID()))
	g, words := &guide{}, (*page.Lexicon)(nil)
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
			one.HTML, one.passages = glossaryHTML(terms), glossaryPassages(terms)
		} else {
			doc := md.Parser().Parse(gmtext.NewReader([]byte(rest)))
			var out bytes.Buffer
			if err := md.Renderer().Render(&out, []byte(rest), doc); err != nil {
				return nil, nil, err
			}
			one.HTML, one.passages = out.String(), passagesOf(doc, []byte(rest))
		}
		g.pages = append(g.pages, one)
	}
	return g, words, nil
}

// glossaryHTML is the table of words; each row can be linked to.
func glossaryHTML(terms []page.Term) string {
	var b strings.Builder
	b.WriteString(`<p>Plain words on the pages, and the word of the trade beside them. A word with dots under it leads here.</p>` +
		`<table><thead><tr><th scope="col">on the page</th><th scope="col">word of the trade</th><th scope="col">meaning</th></tr></thead><tbody>`)
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
	v := guideView{Pages: s.guide.pages, Asked: form.Clip(strings.TrimSpace(r.URL.Query().Get("q")), longestSearch)}
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
			if topic == "typical" {
				sys, err := s.Units(r.Context())
				if err != nil {
					return err
				}
				more = typicalTables(typicalPages(s.Tables, sys))
			}
			return s.Show(w, r, http.StatusOK, page.Frame{Title: p.Title, Bare: bareTopics[topic]}, guideTopic(s.guide.pages, p, more))
		}
	}
	return page.ErrNotFound
}
