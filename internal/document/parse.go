package document

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"strconv"
	"unicode/utf8"

	"duskweight/internal/model"
	"duskweight/internal/model/unit"
	"duskweight/internal/say"
)

// Limits of a document; they are tried before anything is made of it.
const (
	MaxBytes  = 8 << 20
	MaxDepth  = 32
	MaxValues = 100_000
)

// whole is the path of a problem with the document as a whole.
const whole = "document"

// kind is what a JSON value is.
type kind int

const (
	null kind = iota
	boolean
	number
	text
	list
	object
)

// String says the kind in plain words.
func (k kind) String() string {
	return [...]string{"null", "true or false", "a number", "text", "a list", "a group of values"}[k]
}

// value is a parsed JSON value: keys in their order, numbers as they were written.
type value struct {
	kind  kind
	text  string   // number and text
	keys  []string // object
	items []*value // list and object
}

// field returns the value under a key of an object, or nil.
func (v *value) field(key string) *value {
	for i, k := range v.keys {
		if k == key {
			return v.items[i]
		}
	}
	return nil
}

// parse reads one JSON value and nothing after it, within the limits.
func parse(data []byte) (*value, error) {
	data = bytes.TrimPrefix(data, []byte("\ufeff")) // a byte order mark may be ignored (RFC 8259, section 8.1)
	if len(data) > MaxBytes {
		return nil, refuse(whole, "must be at most 8 MiB; it is %s MiB", unit.Fixed(float64(len(data))/(1<<20), 1))
	}
	if !utf8.Valid(data) {
		return nil, refuse(whole, "is not UTF-8 text")
	}
	if err := json.Unmarshal(data, new(json.RawMessage)); err != nil {
		return nil, syntax(data, err)
	}
	if loneSurrogate(data) {
		return nil, refuse(whole, "holds half of a character (a lone \\u surrogate)")
	}
	d := json.NewDecoder(bytes.NewReader(data))
	d.UseNumber()
	p := parser{d: d}
	v, err := p.value("", 0)
	switch {
	case err != nil:
		return nil, err
	case len(p.problems) > 0:
		return nil, p.problems
	}
	return v, nil
}

func refuse(path, format string, args ...any) model.Problems {
	return model.Problems{{Path: path, Say: say.Words(fmt.Sprintf(format, args...))}}
}

// syntax says where a text stops being JSON.
func syntax(data []byte, err error) error {
	at := len(data)
	if e, ok := errors.AsType[*json.SyntaxError](err); ok {
		at = min(int(e.Offset), len(data))
	}
	line := 1 + bytes.Count(data[:at], []byte("\n"))
	return refuse(whole, "is not JSON: line %d: %v", line, err)
}

// loneSurrogate reports whether a text escapes half of a surrogate pair, which no character stands for.
func loneSurrogate(data []byte) bool {
	for i := 0; i+1 < len(data); i++ {
		if data[i] != '\\' {
			continue
		}
		i++
		if data[i] != 'u' {
			continue
		}
		r := escaped(data[i+1:])
		i += 4
		switch {
		case r >= 0xDC00 && r < 0xE000:
			return true
		case r >= 0xD800 && r < 0xDC00:
			rest := data[min(i+1, len(data)):]
			if !bytes.HasPrefix(rest, []byte(`\u`)) {
				return true
			}
			if low := escaped(rest[2:]); low < 0xDC00 || low >= 0xE000 {
				return true
			}
			i += 6
		}
	}
	return false
}

func escaped(hex []byte) uint64 {
	r, err := strconv.ParseUint(string(hex[:min(4, len(hex))]), 16, 32)
	if err != nil {
		return 0
	}
	return r
}

// parser builds the tree of a text that is known to be JSON.
type parser struct {
	d        *json.Decoder
	values   int
	problems model.Problems
}

func (p *parser) value(path string, depth int) (*value, error) {
	if p.values++; p.values > MaxValues {
		return nil, refuse(whole, "must hold at most %d values", MaxValues)
	}
	tok, err := p.d.Token()
	if err != nil {
		return nil, refuse(whole, "is not JSON: %v", err)
	}
	switch t := tok.(type) {
	case nil:
		return &value{kind: null}, nil
	case bool:
		return &value{kind: boolean}, nil
	case json.Number:
		return &value{kind: number, text: t.String()}, nil
	case string:
		return &value{kind: text, text: t}, nil
	}
	if depth++; depth > MaxDepth {
		return nil, refuse(whole, "must be at most %d levels deep", MaxDepth)
	}
	v := &value{kind: list}
	if tok == json.Delim('{') {
		v.kind = object
	}
	err = p.inside(v, path, depth)
	return v, err
}

// inside reads the items of a list or an object up to its closing bracket.
func (p *parser) inside(v *value, path string, depth int) error {
	seen := map[string]bool{}
	for p.d.More() {
		at := path + "[" + strconv.Itoa(len(v.items)) + "]"
		if v.kind == object {
			tok, err := p.d.Token()
			if err != nil {
				return refuse(whole, "is not JSON: %v", err)
			}
			key := tok.(string)
			at = model.Join(path, brief(key))
			if seen[key] && len(p.problems) < model.MostProblems {
				p.problems.Add(at, "is given twice")
			}
			seen[key] = true
			v.keys = append(v.keys, key)
		}
		item, err := p.value(at, depth)
		if err != nil {
			return err
		}
		v.items = append(v.items, item)
	}
	_, err := p.d.Token()
	return err
}
