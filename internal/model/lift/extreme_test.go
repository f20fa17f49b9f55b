package lift

import (
	"fmt"
	"math"
	"reflect"
	"strconv"
	"strings"
	"testing"
)

// scramble fills every field of a design with any value of its range, the ends of it above all, or leaves it not known.
func (d dice) scramble(v reflect.Value, tag reflect.StructTag) {
	switch v.Kind() {
	case reflect.String:
		if words := strings.Split(tag.Get("enum"), "|"); len(words) > 1 {
			v.SetString(pick(d, words...))
		}
	case reflect.Slice:
		n := d.IntN(4)
		v.Set(reflect.MakeSlice(v.Type(), n, n))
		for i := range n {
			d.scramble(v.Index(i), "")
		}
	case reflect.Struct:
		if is := v.FieldByName("Is"); is.IsValid() {
			if d.IntN(5) > 0 {
				is.SetBool(true)
				x := d.inRange(tag.Get("range"))
				if val := v.FieldByName("Val"); val.Kind() == reflect.Int {
					val.SetInt(int64(x))
				} else {
					val.SetFloat(x)
				}
			}
			return
		}
		for i := range v.NumField() {
			d.scramble(v.Field(i), v.Type().Field(i).Tag)
		}
	}
}

// inRange is a value of an interval such as "(0,1e5]".
func (d dice) inRange(tag string) float64 {
	lo, hi, ok := strings.Cut(strings.Trim(tag, "[]()"), ",")
	if !ok {
		return d.Float64()
	}
	a, errA := strconv.ParseFloat(lo, 64)
	b, errB := strconv.ParseFloat(hi, 64)
	if errA != nil || errB != nil {
		panic("unreadable range " + tag)
	}
	if tag[0] == '(' {
		a = math.Nextafter(a, b)
	}
	switch d.IntN(8) {
	case 0:
		return a
	case 1:
		return b
	case 2:
		return math.Min(b, math.Max(a, d.between(1e-12, 1)))
	}
	return math.Min(b, math.Max(a, d.between(1e-3, math.Max(1e-2, b))*(1-2*float64(d.IntN(2))*boolean(a < 0))))
}

func boolean(b bool) float64 {
	if b {
		return 1
	}
	return 0
}

// notFinite returns the path of the first number that is none, "" where all are.
func notFinite(v reflect.Value, path string) string {
	switch v.Kind() {
	case reflect.Float64:
		if x := v.Float(); math.IsNaN(x) || math.IsInf(x, 0) {
			return fmt.Sprintf("%s = %g", path, x)
		}
	case reflect.String:
		for _, word := range []string{"NaN", "Inf"} {
			if strings.Contains(v.String(), word) {
				return path + ": " + v.String()
			}
		}
	case reflect.Pointer:
		if !v.IsNil() {
			return notFinite(v.Elem(), path)
		}
	case reflect.Slice:
		for i := range v.Len() {
			if s := notFinite(v.Index(i), fmt.Sprintf("%s[%d]", path, i)); s != "" {
				return s
			}
		}
	case reflect.Struct:
		for i := range v.NumField() {
			if s := notFinite(v.Field(i), path+"."+v.Type().Field(i).Name); s != "" {
				return s
			}
		}
	}
	return ""
}

// Any input within its range, however absurd: no panic, no endless loop, no number that is none.
func TestAnyInput(t *testing.T) {
	d := newDice(9)
	computed := 0
	for i := range 8000 {
		var h Hoist
		if i%2 == 0 {
			h = d.hoist() // a sound design with some fields gone wild
			var wild Hoist
			d.scramble(reflect.ValueOf(&wild).Elem(), "")
			from, to := reflect.ValueOf(wild), reflect.ValueOf(&h).Elem()
			f := d.IntN(to.NumField())
			to.Field(f).Set(from.Field(f))
		} else {
			d.scramble(reflect.ValueOf(&h).Elem(), "")
		}
		r := Compute(h)
		if s := notFinite(reflect.ValueOf(r), "drive"); s != "" {
			t.Fatalf("input %d: %s", i, s)
		}
		if r.Reservoir == nil && r.WhyNot == "" {
			t.Fatalf("input %d: no store, and no reason", i)
		}
		if r.Raising.Known && r.Lowering.Known {
			computed++
		}
	}
	if computed < 500 {
		t.Fatalf("only %d inputs were computed to the end", computed)
	}
}

// An empty design says what it needs and claims nothing.
func TestNothingKnown(t *testing.T) {
	d := Compute(Hoist{})
	if d.Reservoir != nil || d.Raising.Known || d.Lowering.Known || d.LetGo.Known || d.HeatUp.Known || d.Mass.Is || d.RopeUp.Is {
		t.Errorf("%+v", d)
	}
	paths := map[string]bool{}
	for _, m := range d.Missing {
		paths[m.Path] = true
	}
	for _, p := range []string{"mass", "travel_m", "reeving.rope_parts", "reeving.lead_sheaves", "drum.diameter_m", "rope.diameter_m", "train.stages", "machine.k_vs_rad", "machine.r_ohm", "machine.i0_a"} {
		if !paths[p] {
			t.Errorf("%s is not asked for", p)
		}
	}
	for _, f := range d.Flags {
		if f.Bad {
			t.Errorf("an empty design is not bad: %s", f.Say)
		}
	}
}
