package document

import (
	"fmt"
	"reflect"
	"strconv"
	"strings"

	"duskweight/internal/model"
)

// CopyInput writes what one variant has at a path into another at a path of its own, with the mark of where the value comes
// from. Both paths must be there: a row of a list, or a store, is not made.
func CopyInput(dst *model.Variant, to string, src model.Variant, from string) error {
	out, err := valueAt(reflect.ValueOf(dst).Elem(), to)
	if err != nil {
		return err
	}
	in, err := valueAt(reflect.ValueOf(&src).Elem(), from)
	if err != nil {
		return err
	}
	if in.Type() != out.Type() {
		return fmt.Errorf("%s and %s are not of one kind", from, to)
	}
	out.Set(copyOf(in))
	origins := make(model.Origins, len(dst.Origins)+1)
	for path, o := range dst.Origins {
		if path != to {
			origins[path] = o
		}
	}
	if o, ok := src.Origins[from]; ok {
		origins[to] = o
	}
	dst.Origins = origins
	return nil
}

// valueAt is the value at a path like "stores[0].hoist.travel_m".
func valueAt(v reflect.Value, path string) (reflect.Value, error) {
	for step := range strings.SplitSeq(path, ".") {
		key, row, list := strings.Cut(step, "[")
		for v.Kind() == reflect.Pointer {
			if v.IsNil() {
				return v, fmt.Errorf("there is nothing at %s", path)
			}
			v = v.Elem()
		}
		if v.Kind() != reflect.Struct {
			return v, fmt.Errorf("there is nothing at %s", path)
		}
		f, ok := fieldsOf(v.Type()).find(key)
		if !ok {
			return v, fmt.Errorf("there is nothing at %s", path)
		}
		v = v.Field(f.index)
		if list {
			n, err := strconv.Atoi(strings.TrimSuffix(row, "]"))
			if err != nil || v.Kind() != reflect.Slice && v.Kind() != reflect.Array || n < 0 || n >= v.Len() {
				return v, fmt.Errorf("there is no row at %s", path)
			}
			v = v.Index(n)
		}
	}
	return v, nil
}
