package web

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
)

// The Guide: /help and /help/{topic}. Its pages are embedded and ready before the first request.

//go:embed guide/*.md
var guideFiles embed.FS

// guideTopics is the order of the guide.
var guideTopics = []string{"start", "example", "night", "sun", "hoist", "rows", "shelf", "breaks", "trials", "cells", "sure", "money", "typical", "formulas", "sources", "safety", "words", "program"}

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
func readGuide() (*guide, *lexicon, error) {
	md := goldmark.New(goldmark.WithExtensions(extension.Table), goldmark.WithParserOptions(parser.WithAutoHeadingID()))
	g, words := &guide{}, (*lexicon)(nil)
	for _, topic := range guideTopics {
		src, err := guideFiles.ReadFile("guide/" + topic + ".md")
		if err != nil {
			return nil, nil, err
		}
		first, rest, _ := strings.Cut(string(src), "\n")
		page := guidePage{Topic: topic, Title: strings.TrimPrefix(first, "# ")}
		if topic == "words" {
			terms := readGlossary(rest)
			words = newLexicon(terms)
			page.HTML, page.passages = glossaryHTML(terms), glossaryPassages(terms)
		} else {
			doc := md.Parser().Parse(gmtext.NewReader([]byte(rest)))
			var out bytes.Buffer
			if err := md.Renderer().Render(&out, []byte(rest), doc); err != nil {
				return nil, nil, err
			}
			page.HTML, page.passages = out.String(), passagesOf(doc, []byte(rest))
		}
		g.pages = append(g.pages, page)
	}
	return g, words, nil
}

// glossaryHTML is the table of words; each row can be linked to.
func glossaryHTML(terms []term) string {
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
func (s *Site) showGuide(w http.ResponseWriter, r *http.Request) error {
	v := guideView{Pages: s.guide.pages, Asked: clip(strings.TrimSpace(r.URL.Query().Get("q")), longestSearch)}
	if v.Asked == "" {
		return s.show(w, r, http.StatusOK, frame{Title: "Guide"}, guideIndex(v))
	}
	v.Found = s.guide.search(v.Asked)
	return s.show(w, r, http.StatusOK, frame{Title: "Search in the guide"}, guideIndex(v))
}

func (s *Site) showTopic(w http.ResponseWriter, r *http.Request) error {
	topic := chi.URLParam(r, "topic")
	for _, p := range s.guide.pages {
		if p.Topic == topic {
			var more templ.Component
			if topic == "typical" {
				sys, err := s.units(r.Context())
				if err != nil {
					return err
				}
				more = typicalTables(typicalPages(s.tables, sys))
			}
			return s.show(w, r, http.StatusOK, frame{Title: p.Title, Bare: bareTopics[topic]}, guideTopic(s.guide.pages, p, more))
		}
	}
	return errNotFound
}
