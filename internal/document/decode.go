package document

import (
	"fmt"
	"math"
	"reflect"
	"slices"
	"strconv"
	"strings"
	"unicode"
	"unicode/utf8"

	"duskweight/internal/model"
	"duskweight/internal/model/sun"
)

// maxWhole is the largest whole number that every program reads back exactly: 2⁵³ − 1 (RFC 8259, section 6).
const maxWhole = 1<<53 - 1

// decodeInto fills what dst points at and returns every problem.
func decodeInto(dst any, tree *value) error {
	var d decoder
	d.into(reflect.ValueOf(dst).Elem(), tree, "", "")
	if len(d.problems) == 0 {
		return nil
	}
	read := d.problems
	for _, p := range model.CheckRanges(dst) {
		if !slices.ContainsFunc(read, func(q model.Problem) bool { return model.Within(p.Path, q.Path) }) {
			d.refuse(p.Path, "%s", p.Say.String())
		}
	}
	return d.problems
}

type decoder struct{ problems model.Problems }

func (d *decoder) refuse(path, format string, args ...any) {
	switch n := len(d.problems); {
	case n > model.MostProblems:
		return
	case n == model.MostProblems:
		path, format, args = whole, "has more problems than these %d", []any{model.MostProblems}
	case path == "":
		path = whole
	}
	d.problems.Add(path, fmt.Sprintf(format, args...))
}

// unknown refuses a key, and offers the one that was probably meant.
func (d *decoder) unknown(path, key string, fields fields) {
	meant := ""
	if len(d.problems) < model.MostProblems {
		meant = fields.nearest(key)
	}
	d.refuse(model.Join(path, brief(key)), "is not known here%s", meant)
}

// into reads v into dst, a value of any type that the document knows.
func (d *decoder) into(dst reflect.Value, v *value, path string, tag reflect.StructTag) {
	t := dst.Type()
	switch {
	case model.IsKnown(t):
		if v.kind != null && d.number(dst.FieldByName("Val"), v, path, ", or null where it is not known") {
			dst.FieldByName("Is").SetBool(true)
		}
	case t == reflect.TypeFor[sun.Series]():
		d.series(dst, v, path)
	case t == reflect.TypeFor[sun.Column]():
		d.column(dst, v, path)
	default:
		d.kind(dst, v, path, tag)
	}
}

func (d *decoder) kind(dst reflect.Value, v *value, path string, tag reflect.StructTag) {
	switch dst.Kind() {
	case reflect.Pointer:
		if v.kind != null {
			dst.Set(reflect.New(dst.Type().Elem()))
			d.into(dst.Elem(), v, path, tag)
		}
	case reflect.Struct:
		d.structure(dst, v, path)
	case reflect.Slice:
		d.slice(dst, v, path, tag)
	case reflect.Array:
		d.array(dst, v, path, tag)
	case reflect.Map:
		d.table(dst, v, path)
	case reflect.String:
		d.text(dst, v, path, tag)
	case reflect.Float64, reflect.Int, reflect.Uint64:
		d.number(dst, v, path, "")
	default:
		panic("document: no reading for " + dst.Type().String())
	}
}

func (d *decoder) structure(dst reflect.Value, v *value, path string) {
	if v.kind != object {
		d.refuse(path, "must be a group of values in braces; it is %v", v.kind)
		return
	}
	before := len(d.problems)
	fields := fieldsOf(dst.Type())
	for i, key := range v.keys {
		f, ok := fields.find(key)
		if !ok {
			d.unknown(path, key, fields)
			continue
		}
		d.into(dst.Field(f.index), v.items[i], model.Join(path, key), f.tag)
	}
	for _, f := range fields {
		if f.required && v.field(f.key) == nil {
			d.refuse(model.Join(path, f.key), "is missing")
		}
	}
	if s, ok := dst.Interface().(model.Store); ok && s.Kind() == nil && len(d.problems) == before {
		d.refuse(path, "must be either %s; it is %s", model.StoreKinds(), map[bool]string{true: "neither", false: "both"}[s.Empty()])
	}
}

// brief makes a key fit to be said: short, and on one line.
func brief(key string) string {
	key = strings.Map(func(r rune) rune {
		if unicode.IsPrint(r) {
			return r
		}
		return utf8.RuneError
	}, key)
	if r := []rune(key); len(r) > 60 {
		return string(r[:60]) + "…"
	}
	return key
}

func (d *decoder) slice(dst reflect.Value, v *value, path string, tag reflect.StructTag) {
	if v.kind == null {
		return
	}
	if v.kind != list {
		d.refuse(path, "must be a list; it is %v", v.kind)
		return
	}
	if len(v.items) == 0 {
		return
	}
	dst.Set(reflect.MakeSlice(dst.Type(), len(v.items), len(v.items)))
	for i, item := range v.items {
		d.into(dst.Index(i), item, path+"["+strconv.Itoa(i)+"]", tag)
	}
}

func (d *decoder) array(dst reflect.Value, v *value, path string, tag reflect.StructTag) {
	if v.kind == null && model.IsKnown(dst.Type().Elem()) { // none of them is known
		return
	}
	if v.kind != list || len(v.items) != dst.Len() {
		d.refuse(path, "must be a list of %d values", dst.Len())
		return
	}
	for i, item := range v.items {
		d.into(dst.Index(i), item, path+"["+strconv.Itoa(i)+"]", tag)
	}
}

// table reads an object whose keys are free.
func (d *decoder) table(dst reflect.Value, v *value, path string) {
	if v.kind == null {
		return
	}
	if v.kind != object {
		d.refuse(path, "must be a group of values in braces; it is %v", v.kind)
		return
	}
	if len(v.keys) == 0 {
		return
	}
	dst.Set(reflect.MakeMap(dst.Type()))
	for i, key := range v.keys {
		item := reflect.New(dst.Type().Elem()).Elem()
		d.into(item, v.items[i], model.Join(path, brief(key)), "")
		dst.SetMapIndex(reflect.ValueOf(key).Convert(dst.Type().Key()), item)
	}
}

func (d *decoder) text(dst reflect.Value, v *value, path string, tag reflect.StructTag) {
	if v.kind != text {
		d.refuse(path, "must be text; it is %v", v.kind)
		return
	}
	words, closed := model.Enum(tag)
	if closed && v.text != "" && !slices.Contains(words, v.text) {
		d.refuse(path, "must be %s; it is %.60q", model.Choices(words), v.text)
		return
	}
	dst.SetString(v.text)
}

// number reads a number; or names what else would do. Counts and seeds must be whole.
func (d *decoder) number(dst reflect.Value, v *value, path, or string) bool {
	if v.kind != number {
		d.refuse(path, "must be a number%s; it is %v", or, v.kind)
		return false
	}
	x, err := strconv.ParseFloat(v.text, 64)
	switch {
	case err != nil:
		d.refuse(path, "is too large to be read: %.40s", v.text)
	case x == 0 && strings.ContainsAny(mantissa(v.text), "123456789"):
		d.refuse(path, "is too small to be told from zero: %.40s", v.text)
	case dst.Kind() == reflect.Float64:
		dst.SetFloat(x)
		return true
	case x != math.Trunc(x) || math.Abs(x) > maxWhole:
		d.refuse(path, "must be a whole number; it is %.40s", v.text)
	case dst.Kind() == reflect.Int:
		dst.SetInt(int64(x))
		return true
	case x < 0:
		d.refuse(path, "must be a whole number from 0 up; it is %.40s", v.text)
	default:
		dst.SetUint(uint64(x))
		return true
	}
	return false
}

func mantissa(number string) string {
	if i := strings.IndexAny(number, "eE"); i >= 0 {
		return number[:i]
	}
	return number
}

// series reads a weather year in its packed form.
func (d *decoder) series(dst reflect.Value, v *value, path string) {
	before := len(d.problems)
	var p sun.Packed
	d.structure(reflect.ValueOf(&p).Elem(), v, path)
	if len(d.problems) > before {
		return
	}
	s, err := p.Unpack()
	if err != nil {
		d.refuse(path, "%v", err)
		return
	}
	dst.Set(reflect.ValueOf(s))
}

func (d *decoder) column(dst reflect.Value, v *value, path string) {
	if v.kind != text {
		d.refuse(path, "must be text; it is %v", v.kind)
		return
	}
	var c sun.Column
	if err := c.UnmarshalText([]byte(v.text)); err != nil {
		d.refuse(path, "%v", err)
		return
	}
	dst.Set(reflect.ValueOf(c))
}
