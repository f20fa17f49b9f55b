package document

import (
	"encoding/json"
	"fmt"
	"math"
	"reflect"
	"slices"
	"strconv"
	"strings"
	"unicode/utf8"

	"duskweight/internal/model"
	"duskweight/internal/model/sun"
)

// encode writes a value compactly. Lists and tables without content are [] and {}, what is not known is null.
func encode(v any) ([]byte, error) {
	var e encoder
	e.value(reflect.ValueOf(v), "")
	return e.out, e.problems.Err()
}

type encoder struct {
	out      []byte
	problems model.Problems
}

func (e *encoder) add(s string) { e.out = append(e.out, s...) }

func (e *encoder) value(v reflect.Value, path string) {
	switch t := v.Type(); {
	case model.IsKnown(t):
		if v.FieldByName("Is").Bool() {
			e.value(v.FieldByName("Val"), path)
		} else {
			e.add("null")
		}
	case t == reflect.TypeFor[sun.Series]():
		e.value(reflect.ValueOf(v.Interface().(sun.Series).Pack()), path)
	case t == reflect.TypeFor[sun.Column]():
		e.column(v.Interface().(sun.Column), path)
	default:
		e.kind(v, path)
	}
}

func (e *encoder) kind(v reflect.Value, path string) {
	switch v.Kind() {
	case reflect.Pointer:
		if v.IsNil() {
			e.add("null")
		} else {
			e.value(v.Elem(), path)
		}
	case reflect.Struct:
		e.structure(v, path)
	case reflect.Slice, reflect.Array:
		e.list(v, path)
	case reflect.Map:
		e.table(v, path)
	case reflect.String:
		e.text(v.String(), path)
	case reflect.Float64:
		e.float(v.Float(), path)
	case reflect.Int:
		e.out = strconv.AppendInt(e.out, v.Int(), 10)
	case reflect.Uint64:
		e.out = strconv.AppendUint(e.out, v.Uint(), 10)
	default:
		panic("document: no writing for " + v.Type().String())
	}
}

func (e *encoder) structure(v reflect.Value, path string) {
	open := "{"
	for _, f := range fieldsOf(v.Type()) {
		if f.omit && v.Field(f.index).IsNil() {
			continue
		}
		e.add(open + strconv.Quote(f.key) + ":")
		e.value(v.Field(f.index), model.Join(path, f.key))
		e.closed(v.Field(f.index), f.tag.Get("enum"), model.Join(path, f.key))
		open = ","
	}
	if open == "{" {
		e.add(open)
	}
	e.add("}")
}

// closed refuses a word that is not in the list of its tag: it could not be read back.
func (e *encoder) closed(v reflect.Value, words, path string) {
	switch {
	case words == "":
	case v.Kind() == reflect.Slice || v.Kind() == reflect.Array:
		for i := range v.Len() {
			e.closed(v.Index(i), words, path+"["+strconv.Itoa(i)+"]")
		}
	case v.Kind() == reflect.String && v.Len() > 0 && !strings.Contains("|"+words+"|", "|"+v.String()+"|"):
		e.problems.Add(path, fmt.Sprintf("must be %s; it is %.60q", model.Choices(strings.Split(words, "|")), v.String()))
	}
}

func (e *encoder) list(v reflect.Value, path string) {
	e.add("[")
	for i := range v.Len() {
		if i > 0 {
			e.add(",")
		}
		e.value(v.Index(i), path+"["+strconv.Itoa(i)+"]")
	}
	e.add("]")
}

func (e *encoder) table(v reflect.Value, path string) {
	keys := make([]string, 0, v.Len())
	for _, k := range v.MapKeys() {
		keys = append(keys, k.String())
	}
	slices.Sort(keys)
	e.add("{")
	for i, k := range keys {
		if i > 0 {
			e.add(",")
		}
		e.text(k, path)
		e.add(":")
		e.value(v.MapIndex(reflect.ValueOf(k).Convert(v.Type().Key())), model.Join(path, k))
	}
	e.add("}")
}

func (e *encoder) text(s, path string) {
	if !utf8.ValidString(s) {
		e.problems.Add(path, "is not UTF-8 text")
		s = ""
	}
	b, _ := plainJSON(s) // a valid text can always be written
	e.out = append(e.out, b...)
}

// float writes the shortest digits that read back as the same number.
func (e *encoder) float(x float64, path string) {
	if math.IsNaN(x) || math.IsInf(x, 0) {
		e.problems.Add(path, "must be a number")
		x = 0
	}
	b, _ := json.Marshal(x) // a finite number can always be written
	e.out = append(e.out, b...)
}

func (e *encoder) column(c sun.Column, path string) {
	b, err := c.MarshalText()
	if err != nil {
		e.problems.Add(path, err.Error())
	}
	e.add(`"`)
	e.out = append(e.out, b...)
	e.add(`"`)
}
