package document

import (
	"bytes"
	"encoding/json"
	"fmt"
	"reflect"
	"slices"
	"strings"

	"duskweight/internal/model"
	"duskweight/internal/model/sun"
	"duskweight/internal/say"
)

// Schema returns the JSON Schema (draft 2020-12) of the document, indented, with a line end. It says of each value what
// Decode and model.CheckRanges hold it to: keys, types, ranges, words. What it cannot say (values that contradict each
// other, keys given twice) is left to the program.
func Schema() ([]byte, error) {
	s := schemer{defs: map[string]node{}}
	root := node{
		{"$schema", "https://json-schema.org/draft/2020-12/schema"},
		{"title", "Duskweight project"},
		{"description", fmt.Sprintf("One project with its variants, edition %d. SI units, named by the end of each key. null is not known.", Edition)},
	}
	root = append(root, s.structure(reflect.TypeFor[model.Document]())...)
	root = append(root, member{"$defs", s.sorted()})
	flat, err := plainJSON(root)
	if err != nil {
		return nil, fmt.Errorf("document: %w", err)
	}
	var b bytes.Buffer
	if err := json.Indent(&b, flat, "", "  "); err != nil {
		return nil, fmt.Errorf("document: %w", err)
	}
	b.WriteByte('\n')
	return b.Bytes(), nil
}

// node is a JSON object whose members keep their order.
type node []member

type member struct {
	key string
	val any
}

// MarshalJSON writes the members in their order.
func (n node) MarshalJSON() ([]byte, error) {
	out := []byte{'{'}
	for i, m := range n {
		if i > 0 {
			out = append(out, ',')
		}
		key, err := plainJSON(m.key)
		if err != nil {
			return nil, err
		}
		val, err := plainJSON(m.val)
		if err != nil {
			return nil, err
		}
		out = append(append(append(out, key...), ':'), val...)
	}
	return append(out, '}'), nil
}

type schemer struct{ defs map[string]node }

// of gives the schema of a value of type t under the tags of the field that holds it.
func (s *schemer) of(t reflect.Type, tag reflect.StructTag) node {
	switch {
	case model.IsKnown(t):
		v, _ := t.FieldByName("Val")
		return s.nullable(s.of(v.Type, tag))
	case t == reflect.TypeFor[sun.Series]():
		return s.ref(reflect.TypeFor[sun.Packed]())
	case t == reflect.TypeFor[sun.Column]():
		return columnSchema()
	}
	switch t.Kind() {
	case reflect.Pointer:
		return s.nullable(s.of(t.Elem(), tag))
	case reflect.Struct:
		return s.ref(t)
	case reflect.Slice:
		return node{{"type", []string{"array", "null"}}, {"items", s.of(t.Elem(), tag)}}
	case reflect.Array:
		kind := any("array")
		if model.IsKnown(t.Elem()) {
			kind = []string{"array", "null"}
		}
		return node{{"type", kind}, {"items", s.of(t.Elem(), tag)}, {"minItems", t.Len()}, {"maxItems", t.Len()}}
	case reflect.Map:
		return node{{"type", []string{"object", "null"}}, {"additionalProperties", s.of(t.Elem(), "")}}
	case reflect.String:
		return textSchema(tag)
	case reflect.Float64:
		return append(node{{"type", "number"}}, rangeSchema(tag)...)
	case reflect.Int, reflect.Uint64:
		return append(node{{"type", "integer"}}, rangeSchema(tag)...)
	}
	panic("document: no schema for " + t.String())
}

// nullable lets null stand for not known, or for not there.
func (s *schemer) nullable(n node) node {
	if n[0].key == "type" {
		return append(node{{"type", []any{n[0].val, "null"}}}, n[1:]...)
	}
	return node{{"anyOf", []node{n, {{"type", "null"}}}}}
}

// ref points to the definition of a structure, and makes it where it is not made yet.
func (s *schemer) ref(t reflect.Type) node {
	name := t.String() // "lift.Rope": one name in the whole model
	if _, ok := s.defs[name]; !ok {
		s.defs[name] = nil // it may hold itself
		s.defs[name] = s.structure(t)
	}
	return node{{"$ref", "#/$defs/" + name}}
}

func (s *schemer) structure(t reflect.Type) node {
	var properties node
	required := []string{}
	for _, f := range fieldsOf(t) {
		sub := s.of(t.Field(f.index).Type, f.tag)
		if meaning := f.tag.Get("say"); meaning != "" {
			sub = append(sub, member{"description", say.Marked(meaning).String()})
		}
		if t == reflect.TypeFor[model.Document]() && f.key == "duskweight" {
			sub = node{{"const", Edition}, {"description", "Edition of the document"}}
		}
		properties = append(properties, member{f.key, sub})
		if needed(t.Field(f.index).Type, f) {
			required = append(required, f.key)
		}
	}
	n := node{{"type", "object"}, {"properties", properties}, {"required", required}, {"additionalProperties", false}}
	if t == reflect.TypeFor[model.Store]() {
		var one []node
		for _, k := range model.Kinds() {
			one = append(one, onlyStore(k.Key))
		}
		n = append(n, member{"oneOf", one})
	}
	return n
}

// needed reports whether a document without this field would be refused by Decode or by CheckRanges: the field itself
// must be given, or one inside it.
func needed(t reflect.Type, f field) bool {
	if words, closed := model.Enum(f.tag); closed {
		return !slices.Contains(words, "")
	}
	if t.Kind() != reflect.Struct || model.IsKnown(t) {
		return f.required
	}
	return slices.ContainsFunc(fieldsOf(t), func(in field) bool { return needed(t.Field(in.index).Type, in) })
}

// onlyStore says that a store has a part of the one kind.
func onlyStore(key string) node {
	return node{{"properties", node{{key, node{{"type", "object"}}}}}, {"required", []string{key}}}
}

func textSchema(tag reflect.StructTag) node {
	if words, closed := model.Enum(tag); closed {
		return node{{"type", "string"}, {"enum", words}}
	}
	return node{{"type", "string"}, {"maxLength", model.MaxText}}
}

func rangeSchema(tag reflect.StructTag) node {
	text, ok := tag.Lookup("range")
	if !ok {
		return nil
	}
	i, err := model.ParseInterval(text)
	if err != nil {
		panic(err) // a tag of ours is wrong
	}
	low, high := "minimum", "maximum"
	if i.LowOpen {
		low = "exclusiveMinimum"
	}
	if i.HighOpen {
		high = "exclusiveMaximum"
	}
	return node{{low, i.Low}, {high, i.High}}
}

// columnSchema is a packed weather column: 8 bytes for each hour, in base64.
func columnSchema() node {
	length := (8*sun.YearHours + 2) / 3 * 4
	return node{
		{"type", "string"}, {"contentEncoding", "base64"}, {"pattern", "^[A-Za-z0-9+/]*={0,2}$"},
		{"minLength", length}, {"maxLength", length}, {"$comment", "little-endian float64, one for each hour"},
	}
}

// sorted gives the definitions in the order of their names.
func (s *schemer) sorted() node {
	var n node
	for name, def := range s.defs {
		n = append(n, member{name, def})
	}
	slices.SortFunc(n, func(a, b member) int { return strings.Compare(a.key, b.key) })
	return n
}

// plainJSON writes a value without the escapes that only a web page needs.
func plainJSON(v any) ([]byte, error) {
	var b bytes.Buffer
	e := json.NewEncoder(&b)
	e.SetEscapeHTML(false)
	err := e.Encode(v)
	return bytes.TrimSuffix(b.Bytes(), []byte("\n")), err
}
