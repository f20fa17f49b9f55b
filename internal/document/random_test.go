package document

import (
	"math"
	"math/rand/v2"
	"reflect"

	"duskweight/internal/model"
	"duskweight/internal/model/sun"
	"duskweight/internal/model/unit"
)

// filler fills any structure of the document with values that its tags allow, so that no test has a list of fields.
type filler struct{ r *rand.Rand }

func (f filler) document() model.Document {
	var doc model.Document
	f.fill(reflect.ValueOf(&doc).Elem(), "")
	doc.Edition = Edition
	return doc
}

func (f filler) fill(v reflect.Value, tag reflect.StructTag) {
	switch t := v.Type(); {
	case model.IsKnown(t):
		if f.r.IntN(4) > 0 {
			f.fill(v.FieldByName("Val"), tag)
			v.FieldByName("Is").SetBool(true)
		}
		return
	case t == reflect.TypeFor[sun.Series]():
		v.Set(reflect.ValueOf(f.series()))
		return
	case t == reflect.TypeFor[model.Store]():
		f.fill(v.Field(f.r.IntN(2)), "half")
		return
	}
	switch v.Kind() {
	case reflect.Pointer:
		if tag == "half" || f.r.IntN(3) > 0 {
			v.Set(reflect.New(v.Type().Elem()))
			f.fill(v.Elem(), tag)
		}
	case reflect.Struct:
		for i := range v.NumField() {
			f.fill(v.Field(i), v.Type().Field(i).Tag)
		}
	case reflect.Slice:
		if n := f.r.IntN(3); n > 0 {
			v.Set(reflect.MakeSlice(v.Type(), n, n))
		}
		fallthrough
	case reflect.Array:
		for i := range v.Len() {
			f.fill(v.Index(i), tag)
		}
	case reflect.Map:
		if f.r.IntN(2) > 0 {
			v.Set(reflect.ValueOf(model.Origins{"place.latitude_rad": {Kind: "typical", Source: "<“a & b”>"}}))
		}
	case reflect.String:
		f.word(v, tag)
	default:
		f.number(v, tag)
	}
}

func (f filler) word(v reflect.Value, tag reflect.StructTag) {
	if words, closed := model.Enum(tag); closed {
		v.SetString(words[f.r.IntN(len(words))])
		return
	}
	words := []string{"", "rope", "Größe 2½ \U0001F98A", "a\tb\nc", `"quoted" \ </script>`, "\u2028"}
	v.SetString(words[f.r.IntN(len(words))])
}

func (f filler) number(v reflect.Value, tag reflect.StructTag) {
	i := model.Interval{Low: -1e300, High: 1e300}
	if text, ok := tag.Lookup("range"); ok {
		i, _ = model.ParseInterval(text)
	}
	whole := v.Kind() != reflect.Float64
	for {
		x := i.Low + f.r.Float64()*(i.High-i.Low)
		switch f.r.IntN(8) {
		case 0:
			x = i.Low
		case 1:
			x = i.High
		case 2:
			x = math.Copysign(0, -1)
		case 3:
			x = math.Nextafter(i.Low, i.High)
		}
		if whole {
			x = math.Trunc(x)
		}
		if !i.Holds(x) {
			continue
		}
		switch v.Kind() {
		case reflect.Float64:
			v.SetFloat(x)
		case reflect.Int:
			v.SetInt(int64(x))
		case reflect.Uint64:
			v.SetUint(uint64(x))
		}
		return
	}
}

func (f filler) series() sun.Series {
	s := sun.Series{Name: "made", Source: "made by a test", Latitude: unit.Angle(f.r.Float64()), Hours: sun.YearHours}
	for range sun.YearHours {
		s.GHI = append(s.GHI, 1000*f.r.Float64())
		s.DHI = append(s.DHI, 500*f.r.Float64())
		s.TAir = append(s.TAir, -10+30*f.r.Float64())
	}
	return s
}

func newFiller(seed uint64) filler { return filler{rand.New(rand.NewPCG(seed, 1))} }
