package formtest

import "reflect"

// EachKnown calls do with every value of v that may be not known, as something that can be set.
func EachKnown(v reflect.Value, do func(value, is reflect.Value, tag reflect.StructTag), tag reflect.StructTag) {
	switch v.Kind() {
	case reflect.Pointer:
		if !v.IsNil() {
			EachKnown(v.Elem(), do, tag)
		}
	case reflect.Slice, reflect.Array:
		for i := range v.Len() {
			EachKnown(v.Index(i), do, tag)
		}
	case reflect.Struct:
		if value, is := v.FieldByName("Val"), v.FieldByName("Is"); value.IsValid() && is.IsValid() && is.Kind() == reflect.Bool {
			do(value, is, tag)
			return
		}
		for i := range v.NumField() {
			if f := v.Type().Field(i); f.IsExported() {
				EachKnown(v.Field(i), do, f.Tag)
			}
		}
	}
}
