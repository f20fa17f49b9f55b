package model

import (
	"math"
	"reflect"
	"testing"
)

func TestInterval(t *testing.T) {
	for _, c := range []struct {
		tag  string
		in   []float64
		out  []float64
		said string
	}{
		{"(0,5]", []float64{math.SmallestNonzeroFloat64, 5}, []float64{0, math.Copysign(0, -1), 5.000000000000001, -2}, "more than 0 and at most 5"},
		{"[0,1)", []float64{0, math.Copysign(0, -1), 0.9999999999999999}, []float64{1, -1e-300}, "at least 0 and less than 1"},
		{"[-0.02,0]", []float64{-0.02, 0}, []float64{0.02}, "at least -0.02 and at most 0"},
		{"[8760,8760]", []float64{8760}, []float64{8759, 8761}, "8760"},
		{"(0,1e9]", []float64{1e9}, []float64{1e10}, "more than 0 and at most 1000000000"},
		{"(0,1e-9]", []float64{1e-9}, []float64{1e-8}, "more than 0 and at most 1e-09"},
	} {
		i, err := ParseInterval(c.tag)
		if err != nil {
			t.Fatal(err)
		}
		for _, x := range c.in {
			if !i.Holds(x) {
				t.Errorf("%s does not hold %v", c.tag, x)
			}
		}
		for _, x := range append(c.out, math.NaN(), math.Inf(1), math.Inf(-1)) {
			if i.Holds(x) {
				t.Errorf("%s holds %v", c.tag, x)
			}
		}
		if i.String() != c.said {
			t.Errorf("%s is said %q, want %q", c.tag, i, c.said)
		}
	}
	for _, bad := range []string{"", "0,1", "[0;1]", "[1,0]", "[a,1]", "[0,]", "{0,1}", "[NaN,1]"} {
		if _, err := ParseInterval(bad); err == nil {
			t.Errorf("%q was read", bad)
		}
	}
}

// TestTags reads every range and every list of words of the document, and finds no field that the document forgot.
func TestTags(t *testing.T) {
	seen := map[reflect.Type]bool{}
	numbers := 0
	var walk func(t reflect.Type)
	walk = func(typ reflect.Type) {
		for typ.Kind() == reflect.Pointer || typ.Kind() == reflect.Slice || typ.Kind() == reflect.Array || typ.Kind() == reflect.Map {
			typ = typ.Elem()
		}
		if typ.Kind() != reflect.Struct || IsKnown(typ) || seen[typ] {
			return
		}
		seen[typ] = true
		for i := range typ.NumField() {
			f := typ.Field(i)
			if typ.String() != "sun.Series" && Key(f) == "" {
				t.Errorf("%v.%s is not in the document", typ, f.Name)
			}
			if tag, ok := f.Tag.Lookup("range"); ok {
				numbers++
				if _, err := ParseInterval(tag); err != nil {
					t.Errorf("%v.%s: %v", typ, f.Name, err)
				}
			} else if IsKnown(f.Type) && typ.String() != "sun.Series" { // sun.Packed has its ranges
				t.Errorf("%v.%s has no range", typ, f.Name)
			}
			if f.Type.Kind() != reflect.Struct && f.Tag.Get("say") == "" && f.Type.Kind() != reflect.Map && f.Type.Kind() != reflect.Pointer &&
				typ != reflect.TypeFor[Document]() && typ.String() != "sun.Series" {
				t.Errorf("%v.%s has no meaning in words", typ, f.Name)
			}
			walk(f.Type)
		}
	}
	walk(reflect.TypeFor[Document]())
	if numbers < 100 {
		t.Errorf("only %d ranges were found: the test is blind", numbers)
	}
}
