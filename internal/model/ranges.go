package model

import (
	"fmt"
	"math"
	"reflect"
	"slices"
	"strconv"
	"strings"
	"unicode"
	"unicode/utf8"

	"duskweight/internal/model/sun"
	"duskweight/internal/model/unit"
)

// MaxText is the most characters that one text may have (our own judgement: a page of notes, not a novel).
const MaxText = 2000

// CheckRanges walks any struct of the document by its tags and returns every known value that is out of its `range`,
// every NaN and infinity, every word that is not in its `enum` list, and every text that is too long or not plain; at
// most MostProblems of them. Paths start at v. What is not known is never a problem here.
func CheckRanges(v any) Problems {
	var ps Problems
	rangesOf(&ps, "", reflect.ValueOf(v), "")
	return ps
}

// MostProblems is how many problems are told at once: what has more is not mended one by one.
const MostProblems = 1000

// rangesOf checks one value under the tags of the field that holds it. Lists, arrays and pointers hand the tags on to
// what they hold.
func rangesOf(ps *Problems, path string, v reflect.Value, tag reflect.StructTag) {
	if len(*ps) >= MostProblems {
		return
	}
	switch v.Kind() {
	case reflect.Pointer:
		if !v.IsNil() {
			rangesOf(ps, path, v.Elem(), tag)
		}
	case reflect.Slice, reflect.Array:
		for i := range v.Len() {
			rangesOf(ps, path+"["+strconv.Itoa(i)+"]", v.Index(i), tag)
		}
	case reflect.Map:
		for _, k := range sortedKeys(v) {
			if !utf8.ValidString(k) || strings.ContainsFunc(k, func(r rune) bool { return unicode.IsControl(r) || Unprintable(r) }) || len(k) > MaxText {
				ps.Add(path, "has a key that is too long or cannot be printed")
				continue
			}
			rangesOf(ps, Join(path, k), v.MapIndex(reflect.ValueOf(k)), tag)
		}
	case reflect.Struct:
		rangesOfStruct(ps, path, v, tag)
	case reflect.String:
		checkText(ps, path, v.String(), tag)
	case reflect.Float64:
		checkNumber(ps, path, v.Float(), v.Type(), tag)
	case reflect.Int:
		checkNumber(ps, path, float64(v.Int()), v.Type(), tag)
	case reflect.Uint64:
		checkNumber(ps, path, float64(v.Uint()), v.Type(), tag)
	}
}

func rangesOfStruct(ps *Problems, path string, v reflect.Value, tag reflect.StructTag) {
	switch {
	case IsKnown(v.Type()):
		if v.FieldByName("Is").Bool() {
			rangesOf(ps, path, v.FieldByName("Val"), tag)
		}
		return
	case v.Type() == reflect.TypeFor[sun.Series]():
		v = reflect.ValueOf(v.Interface().(sun.Series).Pack())
	}
	for i := range v.NumField() {
		f := v.Type().Field(i)
		if key := Key(f); key != "" {
			rangesOf(ps, Join(path, key), v.Field(i), f.Tag)
		}
	}
}

// IsKnown reports whether t is a unit.Known: a value that may be not known.
func IsKnown(t reflect.Type) bool {
	return t.Kind() == reflect.Struct && t.PkgPath() == reflect.TypeFor[unit.Known[float64]]().PkgPath() &&
		strings.HasPrefix(t.Name(), "Known[")
}

// Key returns the field's key in the document, or "" where the document does not hold it.
func Key(f reflect.StructField) string {
	key, _, _ := strings.Cut(f.Tag.Get("json"), ",")
	if !f.IsExported() || key == "-" {
		return ""
	}
	return key
}

func sortedKeys(m reflect.Value) []string {
	keys := make([]string, 0, m.Len())
	for _, k := range m.MapKeys() {
		keys = append(keys, k.String())
	}
	slices.Sort(keys)
	return keys
}

func checkNumber(ps *Problems, path string, x float64, kind reflect.Type, tag reflect.StructTag) {
	if math.IsNaN(x) || math.IsInf(x, 0) {
		ps.Add(path, "must be a number")
		return
	}
	text, ok := tag.Lookup("range")
	if !ok {
		return
	}
	within, err := ParseInterval(text)
	if err != nil {
		panic(err) // a tag of ours is wrong
	}
	if !within.Holds(x) {
		o := outside{within, x, kind, tag.Get("say")}
		*ps = append(*ps, Problem{Path: path, Say: o.say(plain, plain), out: &o})
	}
}

// Enum returns the words of an `enum` tag and whether there is one. A list that starts with | allows the empty word.
func Enum(tag reflect.StructTag) ([]string, bool) {
	list, ok := tag.Lookup("enum")
	return strings.Split(list, "|"), ok
}

func checkText(ps *Problems, path, s string, tag reflect.StructTag) {
	words, closed := Enum(tag)
	switch {
	case closed && !slices.Contains(words, s) && s == "":
		ps.Add(path, "is empty; choose "+Choices(words))
	case closed && !slices.Contains(words, s):
		ps.Add(path, fmt.Sprintf("must be %s; it is %q", Choices(words), short(s)))
	case !utf8.ValidString(s) || strings.ContainsFunc(s, Unprintable):
		ps.Add(path, "holds characters that cannot be printed")
	case utf8.RuneCountInString(s) > MaxText:
		ps.Add(path, fmt.Sprintf("must be at most %d characters; it has %d", MaxText, utf8.RuneCountInString(s)))
	}
}

// Unprintable reports whether no text of ours may hold a character: a control character other than the ends of lines and the
// tabulator, or one that turns the direction of all that follows, so that a name reads otherwise than it is written. Source:
// Unicode Standard Annex 9, sections 2.1 to 2.5: embeddings, overrides, isolates.
func Unprintable(r rune) bool {
	return unicode.IsControl(r) && !strings.ContainsRune("\n\r\t", r) || r >= '\u202a' && r <= '\u202e' || r >= '\u2066' && r <= '\u2069'
}

// Choices says which words are allowed: "a, b or c", and "nothing" for the empty word.
func Choices(words []string) string {
	var said []string
	for _, w := range words {
		if w != "" {
			said = append(said, w)
		}
	}
	if slices.Contains(words, "") {
		said = append(said, "nothing")
	}
	if len(said) < 2 {
		return strings.Join(said, "")
	}
	return strings.Join(said[:len(said)-1], ", ") + " or " + said[len(said)-1]
}

// short cuts a text so that a sentence can hold it.
func short(s string) string {
	if r := []rune(s); len(r) > 40 {
		return string(r[:40]) + "…"
	}
	return s
}
