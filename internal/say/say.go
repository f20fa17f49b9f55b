// Package say holds sentences whose quantities are still quantities. The model returns a Sentence; whoever shows it prints
// it once, in the reader's units: pages in metric or imperial, `evaluate` in metric. Nobody reads a number back out of a
// text.
//
// Left out: translation, plural forms (see Count) and markup. A sentence is plain text in English.
package say

import (
	"fmt"
	"reflect"
	"slices"
	"strings"
	"unicode/utf8"

	"duskweight/internal/model/unit"
)

// Sentence is one or more plain sentences with typed quantities in them. The zero value says nothing.
type Sentence struct {
	words []string // one more than parts, or none
	parts []part
}

// part is what stands between two pieces of words.
type part interface {
	print(sys unit.System) string
}

// That makes a sentence of words and what stands in them, one value for each %s: an Amount, another Sentence, a text of the
// user's (string) or of a closed list (any type of strings), or a number of pieces (int or unit.Count). A percent sign is written as it is. A
// wrong number of values and a value of any other type, above all a bare float64, are mistakes of the caller: That panics.
func That(words string, values ...any) Sentence {
	pieces := strings.Split(words, "%s")
	if len(pieces) != len(values)+1 {
		panic(fmt.Sprintf("say: %d values for %q", len(values), words))
	}
	s := Sentence{words: pieces}
	for _, v := range values {
		s.parts = append(s.parts, partOf(v))
	}
	return s
}

// Words makes a sentence of a text as it is, with no value in it.
func Words(text string) Sentence { return Sentence{words: []string{text}} }

func partOf(v any) part {
	switch v := v.(type) {
	case Amount:
		return v
	case Sentence:
		return v
	case string:
		return text(v)
	case int:
		return text(count(v))
	case unit.Count:
		return text(count(int(v)))
	}
	if word := reflect.ValueOf(v); word.Kind() == reflect.String {
		return text(word.String())
	}
	panic(fmt.Sprintf("say: a %T cannot stand in a sentence", v))
}

func count(n int) string { return unit.Thousands(n) }

type text string

func (t text) print(unit.System) string { return string(t) }

func (s Sentence) print(sys unit.System) string { return s.In(sys) }

// In returns the sentence as text in a reader's units; "" for the zero Sentence.
func (s Sentence) In(sys unit.System) string {
	return s.write(func(p part) string { return p.print(sys) })
}

func (s Sentence) write(print func(part) string) string {
	if len(s.words) == 0 {
		return ""
	}
	var b strings.Builder
	b.WriteString(s.words[0])
	for i, p := range s.parts {
		b.WriteString(print(p))
		b.WriteString(s.words[i+1])
	}
	return b.String()
}

// String is the sentence in metric units, as `evaluate` prints it.
func (s Sentence) String() string { return s.In(unit.Metric) }

// MarshalText is String, so that a Sentence is a JSON string.
func (s Sentence) MarshalText() ([]byte, error) { return []byte(s.String()), nil }

// IsZero reports whether the sentence says nothing.
func (s Sentence) IsZero() bool { return len(s.words) == 0 || len(s.parts) == 0 && s.words[0] == "" }

// Is reports whether two sentences say the same to a reader of either system.
func (s Sentence) Is(other Sentence) bool {
	return s.In(unit.Metric) == other.In(unit.Metric) && s.In(unit.Imperial) == other.In(unit.Imperial)
}

// Blank returns the sentence with "…" for each quantity in it: two that differ only in their numbers are alike.
func (s Sentence) Blank() string {
	return s.write(func(p part) string {
		switch p := p.(type) {
		case Amount:
			return "…"
		case Sentence:
			return p.Blank()
		}
		return p.print(unit.Metric)
	})
}

// Lower returns the sentence with a small first letter, to stand behind a colon. Only words that were written begin it, never
// a value.
func (s Sentence) Lower() Sentence { return s.first(strings.ToLower) }

// Capital returns the sentence with a capital first letter.
func (s Sentence) Capital() Sentence { return s.first(strings.ToUpper) }

func (s Sentence) first(change func(string) string) Sentence {
	if len(s.words) == 0 {
		return s
	}
	if s.words[0] == "" {
		inner, ok := s.leading()
		if !ok {
			return s
		}
		s.parts = slices.Clone(s.parts)
		s.parts[0] = inner.first(change)
		return s
	}
	_, n := utf8.DecodeRuneInString(s.words[0])
	s.words = slices.Clone(s.words)
	s.words[0] = change(s.words[0][:n]) + s.words[0][n:]
	return s
}

// leading is the sentence that stands at the very beginning of s.
func (s Sentence) leading() (Sentence, bool) {
	if len(s.parts) == 0 {
		return s, false
	}
	inner, ok := s.parts[0].(Sentence)
	return inner, ok
}

// Or returns s, or another sentence where s says nothing.
func (s Sentence) Or(other Sentence) Sentence {
	if s.IsZero() {
		return other
	}
	return s
}

// Join puts sentences one after another with a space between, leaving out those that say nothing.
func Join(sentences ...Sentence) Sentence { return List(" ", sentences...) }

// List puts sentences one after another with sep between, leaving out those that say nothing.
func List(sep string, sentences ...Sentence) Sentence {
	said := slices.DeleteFunc(slices.Clone(sentences), Sentence.IsZero)
	if len(said) < 2 {
		return append(said, Sentence{})[0]
	}
	all := make([]any, len(said))
	for i, s := range said {
		all[i] = s
	}
	return That(strings.Repeat("%s"+sep, len(said)-1)+"%s", all...)
}

// All prints sentences in a reader's units.
func All(sentences []Sentence, sys unit.System) []string {
	out := make([]string, len(sentences))
	for i, s := range sentences {
		out[i] = s.In(sys)
	}
	return out
}

// Plural is "1 night" or "3 nights": a number of pieces with its noun, one for a single piece and many for any other number.
func Plural(n int, one, many string) Sentence {
	if n == 1 {
		many = one
	}
	return Sentence{words: []string{count(n) + unit.Space + many}}
}
