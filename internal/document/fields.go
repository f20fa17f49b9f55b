package document

import (
	"reflect"
	"sync"

	"duskweight/internal/model"
	"duskweight/internal/model/sun"
)

// field is one field of a structure of the document.
type field struct {
	key      string
	index    int
	tag      reflect.StructTag
	omit     bool // left out where it is nil
	required bool // has no state of being not known, so it must be given
}

type fields []field

// known holds the fields of each structure once they were read from its tags.
var known sync.Map

// fieldsOf returns the fields of a structure in their order.
func fieldsOf(t reflect.Type) fields {
	if fs, ok := known.Load(t); ok {
		return fs.(fields)
	}
	fs := readFields(t)
	known.Store(t, fs)
	return fs
}

func readFields(t reflect.Type) fields {
	var fs fields
	for i := range t.NumField() {
		f := t.Field(i)
		key := model.Key(f)
		if key == "" {
			continue
		}
		fs = append(fs, field{key: key, index: i, tag: f.Tag, omit: omitted(f), required: required(f.Type)})
	}
	return fs
}

func omitted(f reflect.StructField) bool {
	return f.Type.Kind() == reflect.Pointer && f.Tag.Get("json") != model.Key(f)
}

// required reports whether a value of this type must be given: a plain number or a list of fixed length has no way to
// be not known, and a missing one must not become a silent zero. The seed is the exception: 0 is a seed like any other.
func required(t reflect.Type) bool {
	switch t.Kind() {
	case reflect.Float64, reflect.Int:
		return true
	case reflect.Array:
		return !model.IsKnown(t.Elem())
	}
	return t == reflect.TypeFor[sun.Column]()
}

func (fs fields) find(key string) (field, bool) {
	for _, f := range fs {
		if f.key == key {
			return f, true
		}
	}
	return field{}, false
}

// nearest offers the key that was probably meant, as the end of a sentence, or nothing.
func (fs fields) nearest(key string) string {
	best, least := "", 1+len(key)/3
	for _, f := range fs {
		if n := edits(key, f.key); n <= least && (best == "" || n < least) {
			best, least = f.key, n
		}
	}
	if best == "" {
		return ""
	}
	return "; is " + best + " meant?"
}

// edits is the number of letters to insert, drop or exchange to make b of a (Levenshtein 1966), for short keys.
func edits(a, b string) int {
	if len(a) > 64 || len(b) > 64 {
		return 64
	}
	row := make([]int, len(b)+1)
	for j := range row {
		row[j] = j
	}
	for i := range len(a) {
		diagonal := row[0]
		row[0] = i + 1
		for j := range len(b) {
			cost := diagonal
			if a[i] != b[j] {
				cost++
			}
			diagonal = row[j+1]
			row[j+1] = min(cost, row[j]+1, row[j+1]+1)
		}
	}
	return row[len(b)]
}
