package model

import (
	"fmt"
	"reflect"
	"strings"

	"duskweight/internal/model/reason"
)

// CheckOn returns what Check does and, with them, the days of tests that lie after a day. A day that is not known refuses
// none.
func CheckOn(doc Document, on reason.Day) Problems {
	ps := Check(doc)
	for i, v := range doc.Variants {
		ps = append(ps, notYet(v, on).Moved(fmt.Sprintf("variants[%d]", i))...)
	}
	return ps
}

// CheckVariantOn returns what CheckVariant does and, with them, the days of tests that lie after a day.
func CheckVariantOn(v Variant, on reason.Day) Problems {
	return append(CheckVariant(v), notYet(v, on)...)
}

// notYet are the days of tests that have not come yet. A date that somebody wrote in another way is only text.
func notYet(v Variant, on reason.Day) Problems {
	var ps Problems
	for i, s := range v.Stores {
		if s.Hoist == nil {
			continue
		}
		dates(reflect.ValueOf(s.Hoist.Trials), Join(HoistPath(i), "trials"), func(path, text string) {
			if day, ok := reason.DayOf(text); ok && day.After(on) {
				ps.Add(path, "this day has not come yet")
			}
		})
	}
	return ps
}

// dates tells each date of some records, by its path.
func dates(at reflect.Value, path string, tell func(path, text string)) {
	switch at.Kind() {
	case reflect.Slice, reflect.Array:
		for i := range at.Len() {
			dates(at.Index(i), fmt.Sprintf("%s[%d]", path, i), tell)
		}
	case reflect.Struct:
		for i := range at.NumField() {
			name, _, _ := strings.Cut(at.Type().Field(i).Tag.Get("json"), ",")
			switch {
			case name == "" || name == "-":
			case name == "date":
				tell(path+".date", at.Field(i).String())
			default:
				dates(at.Field(i), path+"."+name, tell)
			}
		}
	}
}
