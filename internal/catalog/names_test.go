package catalog_test

import (
	"reflect"
	"regexp"
	"testing"

	"duskweight/internal/catalog"
	"duskweight/internal/model"
)

// aUnit is a figure with a unit that readers of one system do not use. V, rpm, Ah and the mm² of wire are the same for all.
var aUnit = regexp.MustCompile(`\d[ \x{a0}]?(?:kg|g|t|mm|cm|m|km|N|kN|MPa|°C|lb|oz|ft|in|°F)(?:[^\pL²³·/]|$)`)

// texts calls do with every text of a value.
func texts(v reflect.Value, do func(string)) {
	switch v.Kind() {
	case reflect.Pointer:
		if !v.IsNil() {
			texts(v.Elem(), do)
		}
	case reflect.Slice, reflect.Array:
		for i := range v.Len() {
			texts(v.Index(i), do)
		}
	case reflect.Struct:
		for i := range v.NumField() {
			if v.Type().Field(i).IsExported() {
				texts(v.Field(i), do)
			}
		}
	case reflect.String:
		do(v.String())
	}
}

// No text of the worked example has a unit in it: it is stored, and read in feet and in metres. What is put on the shelf gets
// names of the program's own, and those have none either.
func TestNamesHaveNoUnit(t *testing.T) {
	if !aUnit.MatchString("Drum 100 mm") || aUnit.MatchString("Cable, two wires, 4 mm²") || aUnit.MatchString("12 V, 250 rpm") {
		t.Fatal("the test is blind")
	}
	doc := catalog.Sample()
	doc.Project.Shelf = model.Shelf{}
	shelved, n := doc.Project.Shelve(doc.Variants[2], 0)
	if n == 0 {
		t.Fatal("nothing was put on the shelf")
	}
	for _, v := range []any{catalog.Sample(), shelved.Shelf} {
		texts(reflect.ValueOf(&v).Elem().Elem(), func(s string) {
			if aUnit.MatchString(s) {
				t.Errorf("%q", s)
			}
		})
	}
}
