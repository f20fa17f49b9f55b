package web

import (
	"bytes"
	"embed"
	"net/http"
	"strings"

	"github.com/go-chi/chi/v5"
	"github.com/yuin/goldmark"
	"github.com/yuin/goldmark/extension"
)

// The Guide: /help and /help/{topic}. Its pages are embedded and ready before the first request.

//go:embed guide/*.md
var guideFiles embed.FS

// guideTopics is the order of the guide.
var guideTopics = []string{"start", "night", "sun", "hoist", "breaks", "cells", "sure", "money", "safety", "words", "program"}

// guidePage is one page of the guide, ready to print.
type guidePage struct {
	Topic, Title, HTML string
}

// readGuide renders the embedded pages.
func readGuide() ([]guidePage, error) {
	md := goldmark.New(goldmark.WithExtensions(extension.Table))
	var pages []guidePage
	for _, topic := range guideTopics {
		src, err := guideFiles.ReadFile("guide/" + topic + ".md")
		if err != nil {
			return nil, err
		}
		first, rest, _ := strings.Cut(string(src), "\n")
		var out bytes.Buffer
		if err := md.Convert([]byte(rest), &out); err != nil {
			return nil, err
		}
		pages = append(pages, guidePage{topic, strings.TrimPrefix(first, "# "), out.String()})
	}
	return pages, nil
}

func (s *Site) showGuide(w http.ResponseWriter, r *http.Request) error {
	return s.show(w, r, http.StatusOK, frame{Title: "Guide"}, guideIndex(s.guide))
}

func (s *Site) showTopic(w http.ResponseWriter, r *http.Request) error {
	topic := chi.URLParam(r, "topic")
	for _, p := range s.guide {
		if p.Topic == topic {
			return s.show(w, r, http.StatusOK, frame{Title: p.Title}, guideTopic(s.guide, p))
		}
	}
	return errNotFound
}
