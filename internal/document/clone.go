package document

import (
	"reflect"
	"sync"

	"duskweight/internal/model/sun"
)

// Clone copies a design with everything it points to, so that a change of one cannot touch the other. The copy is what reading
// back the written design would give: an empty list or table is nil. A weather year is shared: nothing writes into one.
func Clone[T any](v T) T {
	out := reflect.New(reflect.TypeFor[T]()).Elem()
	out.Set(copyOf(reflect.ValueOf(&v).Elem()))
	return out.Interface().(T)
}

func copyOf(v reflect.Value) reflect.Value {
	if flat(v.Type()) {
		return v
	}
	switch v.Kind() {
	case reflect.Pointer:
		if v.IsNil() {
			return v
		}
		out := reflect.New(v.Type().Elem())
		out.Elem().Set(copyOf(v.Elem()))
		return out
	case reflect.Slice:
		if v.Len() == 0 {
			return reflect.Zero(v.Type())
		}
		out := reflect.MakeSlice(v.Type(), v.Len(), v.Len())
		if flat(v.Type().Elem()) {
			reflect.Copy(out, v)
			return out
		}
		for i := range v.Len() {
			out.Index(i).Set(copyOf(v.Index(i)))
		}
		return out
	case reflect.Map:
		if v.Len() == 0 {
			return reflect.Zero(v.Type())
		}
		out := reflect.MakeMapWithSize(v.Type(), v.Len())
		for it := v.MapRange(); it.Next(); {
			out.SetMapIndex(it.Key(), copyOf(it.Value()))
		}
		return out
	case reflect.Struct:
		out := reflect.New(v.Type()).Elem()
		out.Set(v)
		for i := range v.NumField() {
			if v.Type().Field(i).IsExported() {
				out.Field(i).Set(copyOf(v.Field(i)))
			}
		}
		return out
	}
	return v
}

// flat reports whether a value of a type points to nothing that could change, so that assigning it copies it. A weather
// year counts as such.
func flat(t reflect.Type) bool {
	if w, ok := flats.Load(t); ok {
		return w.(bool)
	}
	w := true
	switch t.Kind() {
	case reflect.Pointer:
		w = t == reflect.TypeFor[*sun.Series]()
	case reflect.Slice, reflect.Map, reflect.Interface, reflect.Chan, reflect.Func, reflect.UnsafePointer:
		w = false
	case reflect.Array:
		w = flat(t.Elem())
	case reflect.Struct:
		for f := range t.Fields() {
			w = w && flat(f.Type)
		}
	}
	flats.Store(t, w)
	return w
}

// flats are the answers of flat by type.
var flats sync.Map
