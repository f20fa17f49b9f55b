package page

import (
	"bytes"
	"strings"

	"golang.org/x/net/html"
	"golang.org/x/net/html/atom"

	"duskweight/web/form"
)

// Term is one word of the glossary: what the pages say, what the trade says, and its meaning in a line.
type Term struct {
	Word, Trade, Meaning string
	ID                   string // of its row on the page Words
	Forms                []string
}

// everyday are spellings of the glossary that mean other things too, or are known to everybody. They are looked up on
// the page Words and never linked.
var everyday = map[string]bool{
	"battery": true, "cells": true, "bank": true, "pulley": true, "use": true, "pulls": true, "may pull": true, "demand": true, "capacity": true,
	"hold": true, "drive": true, "base": true, "stage": true, "tooth": true, "sun": true, "ring": true, "planet": true, "layer": true, "posts": true,
	"columns": true, "missing": true, "slope": true, "faces": true, "swing": true, "cycle": true, "unstable": true,
	"settles": true, "typical": true, "default": true, "not known": true, "keep out": true,
	"weighed by": true, "module": true, "steady": true, "travel": true, "let go": true, "stall": true, "warms in": true, "usual": true, "bad": true, "good year": true,
	"may be used": true, "transmission": true, "wh": true, "ah": true, "j": true, "joined wires": true,
}

// ReadGlossary reads the rows of the page Words.
func ReadGlossary(page string) []Term {
	var out []Term
	for line := range strings.Lines(page) {
		cells := strings.Split(strings.Trim(strings.TrimSpace(line), "|"), "|")
		if !strings.HasPrefix(line, "| ") || len(cells) != 3 || strings.HasPrefix(line, "| ---") || strings.HasPrefix(line, "| on the page") {
			continue
		}
		t := Term{Word: strings.TrimSpace(cells[0]), Trade: strings.Trim(cells[1], " –"), Meaning: strings.TrimSpace(cells[2])}
		t.ID = "w-" + form.FileName(t.Word)
		for _, f := range strings.Split(t.Word+", "+t.Trade, ", ") {
			f, short, _ := strings.Cut(f, " (")
			for _, form := range []string{f, strings.TrimSuffix(short, ")")} {
				if form = strings.ToLower(form); len(form) > 1 && !everyday[form] {
					t.Forms = append(t.Forms, form)
				}
			}
		}
		out = append(out, t)
	}
	return out
}

// Lexicon finds the terms in a page by their first word.
type Lexicon struct {
	terms []Term
	first map[string][]phrase // the longest first
	begin [1 << 16]bool       // by the first two letters of the first word, for speed
}

type phrase struct {
	rest string // what follows the first word, small letters
	term int
}

func NewLexicon(terms []Term) *Lexicon {
	l := &Lexicon{terms: terms, first: map[string][]phrase{}}
	for i, t := range terms {
		for _, f := range t.Forms {
			head := f[:wordEnd([]byte(f), 0)]
			l.begin[pair(f[0], f[1])] = true
			list := l.first[head]
			at := 0
			for at < len(list) && len(list[at].rest) >= len(f)-len(head) {
				at++
			}
			l.first[head] = append(list[:at:at], append([]phrase{{f[len(head):], i}}, list[at:]...)...)
		}
	}
	return l
}

// Link makes the first use of each term in a page a link to its meaning, which is also the link's title. Form and answer
// count apart, because they stand side by side; a use inside what is folded away does not count for the rest. A part of
// a page is all linked, of a page only what is in main.
func (l *Lexicon) Link(page []byte, part bool) []byte {
	s := linker{Lexicon: l, on: part, seen: make([]bool, len(l.terms)), folded: make([]bool, len(l.terms))}
	s.out.Grow(len(page) + 4096)
	z := html.NewTokenizer(bytes.NewReader(page))
	for {
		switch z.Next() {
		case html.ErrorToken: // the end, and whatever stands there half finished
			s.out.Write(z.Raw())
			return s.out.Bytes()
		case html.TextToken:
			s.text(z.Raw())
		case html.StartTagToken:
			s.out.Write(z.Raw())
			s.element(z, 1)
		case html.EndTagToken:
			s.out.Write(z.Raw())
			s.element(z, -1)
		default:
			s.out.Write(z.Raw())
		}
	}
}

// linker is one pass over one page.
type linker struct {
	*Lexicon
	out                 bytes.Buffer
	on                  bool // inside main
	may, barred, inside int  // open elements where a link may stand, where none may, and details
	seen, folded        []bool
}

// element counts an element that opens or closes.
func (s *linker) element(z *html.Tokenizer, step int) {
	name, _ := z.TagName()
	switch atom.Lookup(name) {
	case atom.Main:
		s.on = step > 0
	case atom.Details:
		s.inside += step
	case atom.Div:
		if step > 0 && hasID(z, "results") {
			clear(s.seen)
			clear(s.folded)
		}
	case atom.P, atom.Li, atom.Dt, atom.Dd, atom.Td, atom.Figcaption:
		s.may += step
	case atom.A, atom.Button, atom.Summary, atom.Label, atom.Select, atom.Textarea, atom.Svg, atom.H1, atom.H2, atom.H3, atom.H4, atom.Th, atom.Legend,
		atom.Caption, atom.Code, atom.Pre, atom.Script, atom.Style, atom.Title:
		s.barred += step
	}
}

// hasID reports whether the tag that was just read has this id.
func hasID(z *html.Tokenizer, id string) bool {
	for more := true; more; {
		var key, val []byte
		if key, val, more = z.TagAttr(); string(key) == "id" {
			return string(val) == id
		}
	}
	return false
}

func (s *linker) text(text []byte) {
	if !s.on || s.may <= 0 || s.barred > 0 {
		s.out.Write(text)
		return
	}
	done := 0
	for i := 0; i < len(text); {
		if !inWord(text[i]) {
			i++
			continue
		}
		end := wordEnd(text, i)
		if n, t := s.find(text, i, end); n > 0 && s.fresh(t) {
			s.out.Write(text[done:i])
			s.anchor(s.terms[t], text[i:i+n])
			done, end = i+n, i+n
		}
		i = end
	}
	s.out.Write(text[done:])
}

// fresh reports whether this is the first use of a term, and marks it used.
func (s *linker) fresh(t int) bool {
	if s.seen[t] || s.inside > 0 && s.folded[t] {
		return false
	}
	s.folded[t] = true
	s.seen[t] = s.inside == 0
	return true
}

func (s *linker) anchor(t Term, text []byte) {
	s.out.WriteString(`<a class="term" href="/help/words#`)
	s.out.WriteString(t.ID)
	s.out.WriteString(`" title="`)
	s.out.WriteString(html.EscapeString(t.Meaning))
	s.out.WriteString(`">`)
	s.out.Write(text)
	s.out.WriteString(`</a>`)
}

// find returns how long the term is that begins with the word at text[i:end], and which; 0 for none.
func (l *Lexicon) find(text []byte, i, end int) (n, t int) {
	var low [32]byte
	if end-i > len(low) || len(text) < i+2 || !l.begin[pair(small(text[i]), small(text[i+1]))] {
		return 0, 0
	}
	for j, b := range text[i:end] {
		low[j] = small(b)
	}
	head := low[:end-i]
	list, ok := l.first[string(head)]
	if !ok && len(head) > 4 && head[len(head)-1] == 's' { // one sheave, two sheaves
		list = l.first[string(head[:len(head)-1])]
	}
	for _, p := range list {
		if n, ok := follows(text[end:], p.rest); ok {
			return end - i + n, p.term
		}
	}
	return 0, 0
}

// follows reports whether text goes on with rest, as whole words, one or many of the last; and how long that is.
func follows(text []byte, rest string) (int, bool) {
	if len(text) < len(rest) {
		return 0, false
	}
	for j := range rest {
		if small(text[j]) != rest[j] {
			return 0, false
		}
	}
	n := len(rest)
	if n > 0 && n < len(text) && text[n] == 's' {
		n++
	}
	return n, n == len(text) || !inWord(text[n])
}

func pair(a, b byte) uint16 { return uint16(a)<<8 | uint16(b) }

func small(b byte) byte {
	if b >= 'A' && b <= 'Z' {
		return b + 'a' - 'A'
	}
	return b
}

func inWord(b byte) bool {
	return b >= 'a' && b <= 'z' || b >= 'A' && b <= 'Z' || b >= '0' && b <= '9' || b >= 0x80
}

func wordEnd(text []byte, i int) int {
	for i < len(text) && inWord(text[i]) {
		i++
	}
	return i
}
