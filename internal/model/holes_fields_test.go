package model_test

import (
	"fmt"
	"reflect"
	"regexp"
	"strconv"
	"strings"
)

// places are the places in lists of a path.
var places = regexp.MustCompile(`\[\d+\]`)

// spot is one field of a document that can be changed.
type spot struct {
	path  string
	at    reflect.Value
	enum  []string
	least float64
	most  float64
	known bool // the field is a number that may be empty
}

// spots are all fields below a value, by their names in the document.
func spots(at reflect.Value, path string, tag reflect.StructTag) []spot {
	s := spot{path: path, at: at}
	switch at.Kind() {
	case reflect.Pointer:
		if at.IsNil() {
			return nil
		}
		return spots(at.Elem(), path, tag)
	case reflect.Struct:
		if at.Type().NumField() == 2 && at.Type().Field(0).Name == "Val" {
			s.known = true
			s.least, s.most = ends(tag.Get("range"))
			return []spot{s}
		}
		var out []spot
		for i := range at.NumField() {
			f := at.Type().Field(i)
			name, _, _ := strings.Cut(f.Tag.Get("json"), ",")
			if name == "" || name == "-" || name == "origins" || name == "parts" || name == "shelf" {
				continue
			}
			out = append(out, spots(at.Field(i), path+"."+name, f.Tag)...)
		}
		return out
	case reflect.Slice:
		out := []spot{s}
		for i := range at.Len() {
			out = append(out, spots(at.Index(i), fmt.Sprintf("%s[%d]", path, i), tag)...)
		}
		return out
	case reflect.String:
		if e := tag.Get("enum"); e != "" {
			s.enum = strings.Split(e, "|")
		}
		return []spot{s}
	}
	return nil
}

// ends are the ends of a range as it is written in a tag.
func ends(tag string) (least, most float64) {
	a, b, _ := strings.Cut(strings.Trim(tag, "[]()"), ",")
	least, _ = strconv.ParseFloat(strings.TrimSpace(a), 64)
	most, _ = strconv.ParseFloat(strings.TrimSpace(b), 64)
	return least, most
}

func (s spot) set(x float64) { s.at.Field(0).SetFloat(x); s.at.Field(1).SetBool(true) }

// numeric reports whether a number stands in the field.
func (s spot) numeric() bool {
	return s.known && s.at.Field(1).Bool() && s.at.Field(0).CanFloat()
}

// changes are the ways in which a field is changed; other is a field to swap with.
func (s spot) changes(other spot) map[string]func() {
	out := map[string]func(){}
	switch {
	case s.known:
		if s.at.Field(1).Bool() {
			out["empty"] = func() { s.at.SetZero() }
		}
		if s.at.Field(0).CanFloat() {
			out["least"], out["most"] = func() { s.set(s.least) }, func() { s.set(s.most) }
		}
		if s.numeric() {
			x := s.at.Field(0).Float()
			out["doubled"], out["halved"] = func() { s.set(2 * x) }, func() { s.set(x / 2) }
			if other.known && other.numeric() {
				y := other.at.Field(0).Float()
				out["swapped"] = func() { s.set(y); other.set(x) }
			}
		}
	case s.at.Kind() == reflect.Slice && s.at.Len() > 0:
		out["empty"] = func() { s.at.SetZero() }
		out["shorter"] = func() { s.at.Set(s.at.Slice(0, s.at.Len()-1)) }
		out["doubled"] = func() { s.at.Set(reflect.AppendSlice(slicesCopy(s.at), s.at)) }
	case s.at.Kind() == reflect.String:
		for _, e := range s.enum {
			if e != s.at.String() {
				out["="+e] = func() { s.at.SetString(e) }
			}
		}
		if len(s.enum) == 0 && s.at.String() != "" {
			out["="] = func() { s.at.SetString("") }
		}
	}
	return out
}

func slicesCopy(v reflect.Value) reflect.Value {
	return reflect.AppendSlice(reflect.MakeSlice(v.Type(), 0, 2*v.Len()), v)
}
