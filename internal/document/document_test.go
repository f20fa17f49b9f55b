package document

import (
	"bytes"
	"encoding/base64"
	"errors"
	"os"
	"reflect"
	"slices"
	"strings"
	"testing"

	"duskweight/internal/model"
)

// shedLamp is a short document as a person would write it: many keys are left out.
const shedLamp = "../../testdata/projects/shed_lamp.json"

// TestRoundTrip reads back what was written: the same values to the last digit, the same bytes the second time.
func TestRoundTrip(t *testing.T) {
	for seed := range uint64(60) {
		doc := newFiller(seed).document()
		data, err := Encode(doc)
		if err != nil {
			t.Fatal(err)
		}
		back, err := Decode(data)
		if err != nil {
			t.Fatalf("seed %d: %v\n%s", seed, err, data)
		}
		if !reflect.DeepEqual(doc, back) {
			t.Fatalf("seed %d: came back changed:\n%s", seed, data)
		}
		again, err := Encode(back)
		if err != nil || !bytes.Equal(again, data) {
			t.Fatalf("seed %d: written differently the second time (%v)", seed, err)
		}
		if ps := model.CheckRanges(doc); len(ps) > 0 {
			t.Fatalf("seed %d: %v", seed, ps)
		}
	}
}

// TestShort reads values out of a short document, to the last digit.
func TestShort(t *testing.T) {
	data, err := os.ReadFile(shedLamp)
	if err != nil {
		t.Fatal(err)
	}
	doc, err := Decode(data)
	if err != nil {
		t.Fatal(err)
	}
	if got := doc.Variants[0].Stores[0].Hoist.Rope.BreakingLoad; !got.Is || got.Val != 8200 {
		t.Errorf("breaking load %v, want 8200", got)
	}
	if got := doc.Project.Seed; got != 1<<53-1 {
		t.Errorf("seed %d, want %d", got, uint64(1<<53-1))
	}
	if got := doc.Variants[0].Panels[0].Shade[11]; got != 0.30000000000000004 {
		t.Errorf("shade %v", got)
	}
	if ps := model.CheckRanges(doc); len(ps) > 0 {
		t.Error(ps)
	}
}

// TestRefused gives every way in which a document can be refused, with its path and its sentence.
func TestRefused(t *testing.T) {
	in := func(project, variants string) string {
		return `{"duskweight":1,"project":{` + project + `},"variants":[` + variants + `]}`
	}
	deep := strings.Repeat("[", 40) + strings.Repeat("]", 40)
	for _, c := range []struct{ doc, path, say string }{
		{``, "document", "is not JSON: line 1: unexpected end of JSON input"},
		{"{\n\"duskweight\":1,,}", "document", "is not JSON: line 2: invalid character ',' looking for beginning of object key string"},
		{in("", "") + "{}", "document", "is not JSON: line 1: invalid character '{' after top-level value"},
		{"{\"duskweight\":1,\"project\":{\"name\":\"\xff\"}}", "document", "is not UTF-8 text"},
		{in(`"name":"\ud800"`, ""), "document", `holds half of a character (a lone \u surrogate)`},
		{in(`"name":"\udc00\ud83e\udd8a"`, ""), "document", `holds half of a character (a lone \u surrogate)`},
		{strings.Repeat(" ", MaxBytes+1), "document", "must be at most 8 MiB; it is 8.0 MiB"},
		{`{"duskweight":1,"x":` + deep + `}`, "document", "must be at most 32 levels deep"},
		{`{"duskweight":1,"x":[` + strings.Repeat("0,", MaxValues) + `0]}`, "document", "must hold at most 100000 values"},
		{in(`"name":"a","name":"b"`, ""), "project.name", "is given twice"},
		{`[]`, "document", "must be a group of values in braces; it is a list"},
		{`{"project":{}}`, "duskweight", "is missing: this is not a Duskweight project"},
		{`{"duskweight":2}`, "duskweight", "was written by a newer Duskweight: it is edition 2, and this program reads up to 1"},
		{`{"duskweight":"1"}`, "duskweight", "must be the edition of the document, a whole number from 1 to 1"},
		{`{"duskweight":0}`, "duskweight", "must be the edition of the document, a whole number from 1 to 1"},
		{`{"duskweight":1.5}`, "duskweight", "must be the edition of the document, a whole number from 1 to 1"},
		{in(`"nme":"a"`, ""), "project.nme", "is not known here; is name meant?"},
		{in(`"zebra":1`, ""), "project.zebra", "is not known here"},
		{in(`"name":1`, ""), "project.name", "must be text; it is a number"},
		{in(`"name":null`, ""), "project.name", "must be text; it is null"},
		{in(`"seed":-1`, ""), "project.seed", "must be a whole number from 0 up; it is -1"},
		{in(`"seed":9007199254740993`, ""), "project.seed", "must be a whole number; it is 9007199254740993"},
		{in(`"seed":0.5`, ""), "project.seed", "must be a whole number; it is 0.5"},
		{in(`"place":[]`, ""), "project.place", "must be a group of values in braces; it is a list"},
		{in(`"place":{"latitude_rad":"1"}`, ""), "project.place.latitude_rad", "must be a number, or null where it is not known; it is text"},
		{in(`"place":{"latitude_rad":1e999}`, ""), "project.place.latitude_rad", "is too large to be read: 1e999"},
		{in(`"place":{"latitude_rad":1e-999}`, ""), "project.place.latitude_rad", "is too small to be told from zero: 1e-999"},
		{in(`"place":{"sky":"blue"}`, ""), "project.place.sky", `must be monthly, described, file or files; it is "blue"`},
		{in(`"place":{"horizon":{}}`, ""), "project.place.horizon", "must be a list; it is a group of values"},
		{in(`"place":{"horizon":[{"azimuth_rad":1}]}`, ""), "project.place.horizon[0].altitude_rad", "is missing"},
		{in(`"place":{"horizon":[{"azimuth_rad":1,"altitude_rad":null}]}`, ""), "project.place.horizon[0].altitude_rad", "must be a number; it is null"},
		{in(`"load":{"appliances":[{"count":1.5}]}`, ""), "project.load.appliances[0].count", "must be a whole number; it is 1.5"},
		{in(`"place":{"monthly":{}}`, ""), "project.place.monthly.ghi_j_m2_day", "is missing"},
		{in(`"origins":{"a":{"kind":"guess"}}`, ""), "project.origins.a.kind", `must be typical, catalog or measured; it is "guess"`},
		{in(`"a\nb":1`, ""), "project.a\uFFFDb", "is not known here"},
		{in(`"origins":{"a\nb":{"kind":1}}`, ""), "project.origins.a\uFFFDb.kind", "must be text; it is a number"},
		{in(`"origins":[]`, ""), "project.origins", "must be a group of values in braces; it is a list"},
		{in(`"weather":{"hours":8760}`, ""), "project.weather.latitude_rad", "is missing"},
		{in("", `{"stores":[{}]}`), "variants[0].stores[0]", "must be either cells, a hoist or water; it is neither"},
		{in("", `{"stores":[{"hoist":{},"cells":{}}]}`), "variants[0].stores[0]", "must be either cells, a hoist or water; it is both"},
		{in("", `{},{"panels":[{"shade":[1,2]}]}`), "variants[1].panels[0].shade", "must be a list of 12 values"},
		{in("", `{"stores":[{"hoist":{"rope":{"breaking_load_n":true}}}]}`), "variants[0].stores[0].hoist.rope.breaking_load_n",
			"must be a number, or null where it is not known; it is true or false"},
	} {
		_, err := Decode([]byte(c.doc))
		ps, _ := errors.AsType[model.Problems](err)
		if !slices.ContainsFunc(ps, func(p model.Problem) bool { return p.Path == c.path && p.Say.String() == c.say }) {
			t.Errorf("%.80s\n got %v\nwant %s: %s", c.doc, err, c.path, c.say)
		}
	}
}

// TestAllAtOnce finds every problem in one reading, those of ranges too, and none that only follows from another.
func TestAllAtOnce(t *testing.T) {
	_, err := Decode([]byte(`{"duskweight":1,"extra":0,"project":{"name":"p","place":{"sky":"file","latitude_rad":9}},
		"variants":[{"name":"v","controller":7,"stores":[{"hoist":{"travel_m":-1,"rope":{"kind":"hemp"}}}]}]}`))
	want := []string{
		"extra: is not known here",
		"variants[0].controller: must be a group of values in braces; it is a number",
		`variants[0].stores[0].hoist.rope.kind: must be polyester, nylon, polypropylene, hmpe, other_fibre, wire or nothing; it is "hemp"`,
		"project.place.latitude_rad: must be at least -1.5707963267948966 and at most 1.5707963267948966; it is 9",
		"variants[0].stores[0].hoist.travel_m: must be more than 0 and at most 1000; it is -1",
	}
	if err == nil || err.Error() != strings.Join(want, "\n") {
		t.Errorf("got:\n%v\nwant:\n%s", err, strings.Join(want, "\n"))
	}
}

// TestMissingIsNotKnown reads the shortest document.
func TestMissingIsNotKnown(t *testing.T) {
	doc, err := Decode([]byte(`{"duskweight":1,"variants":[{"stores":[{"hoist":{}}],"panels":null}]}`))
	if err != nil {
		t.Fatal(err)
	}
	if doc.Variants[0].Stores[0].Hoist.Rope.BreakingLoad.Is {
		t.Error("a breaking load came from nowhere")
	}
	data, err := Encode(doc)
	if err != nil {
		t.Fatal(err)
	}
	for _, want := range []string{`"breaking_load_n": null`, `"panels": []`, `"origins": {}`, `"weather": null`} {
		if !bytes.Contains(data, []byte(want)) {
			t.Errorf("no %s in\n%s", want, data)
		}
	}
}

// TestWeather refuses a year that is not one.
func TestWeather(t *testing.T) {
	doc := model.Document{Project: model.Project{Weather: new(newFiller(1).series())}}
	data, err := Encode(doc)
	if err != nil {
		t.Fatal(err)
	}
	pi := base64.StdEncoding.EncodeToString([]byte{0x18, 0x2d, 0x44, 0x54, 0xfb, 0x21, 0x09, 0x40}) // π, IEEE 754 in little-endian order
	nan := base64.StdEncoding.EncodeToString([]byte{0, 0, 0, 0, 0, 0, 0xf8, 0x7f})
	for col, want := range map[string]string{
		pi:           "project.weather: ghi_w_m2 must have 8760 values; it has 1",
		nan:          "project.weather.ghi_w_m2: value 0 is not a number",
		"AAAA":       "project.weather.ghi_w_m2: must be base64 of little-endian float64 values",
		"not base64": "project.weather.ghi_w_m2: must be base64 of little-endian float64 values",
	} {
		i := bytes.Index(data, []byte(`"ghi_w_m2": "`)) + len(`"ghi_w_m2": "`)
		j := i + bytes.IndexByte(data[i:], '"')
		bad := slices.Concat(data[:i], []byte(col), data[j:])
		if _, err := Decode(bad); err == nil || !strings.HasPrefix(err.Error(), want) {
			t.Errorf("%s: got %v, want %s", col, err, want)
		}
	}
}

// TestEncodeRefuses keeps what could not be read again from being written.
func TestEncodeRefuses(t *testing.T) {
	var doc model.Document
	doc.Project.Name = "a\xffb"
	doc.Project.Weather = new(newFiller(1).series())
	doc.Project.Weather.TAir[3] /= 0
	doc.Project.Weather.Latitude /= 0
	_, err := Encode(doc)
	want := "project.name: is not UTF-8 text\nproject.weather.latitude_rad: must be a number\nproject.weather.t_air_c: value 3 is not a number"
	if err == nil || err.Error() != want {
		t.Errorf("got %v, want %s", err, want)
	}
}

// FuzzDecode reads anything: no panic, and what is read is written and read again as the same.
func FuzzDecode(f *testing.F) {
	data, err := os.ReadFile(shedLamp)
	if err != nil {
		f.Fatal(err)
	}
	f.Add(data)
	f.Add([]byte(`{"duskweight":1,"project":{"name":"\ud83e\udd8a","seed":1e3},"variants":[{"stores":[{"cells":{}}]}]}`))
	f.Fuzz(func(t *testing.T, data []byte) {
		doc, err := Decode(data)
		if err != nil {
			if ps, ok := errors.AsType[model.Problems](err); !ok || len(ps) == 0 {
				t.Fatalf("not a list of problems: %v", err)
			}
			return
		}
		once, err := Encode(doc)
		if err != nil {
			t.Fatal(err)
		}
		back, err := Decode(once)
		if err != nil {
			t.Fatal(err)
		}
		if twice, _ := Encode(back); !bytes.Equal(once, twice) {
			t.Fatalf("%s\n%s", once, twice)
		}
	})
}

// A byte order mark before a document is passed over, as RFC 8259, section 8.1 allows; a second one is no JSON.
func TestByteOrderMark(t *testing.T) {
	data, err := Encode(newFiller(1).document())
	if err != nil {
		t.Fatal(err)
	}
	marked, err := Decode(append([]byte("\xef\xbb\xbf"), data...))
	if err != nil {
		t.Fatal(err)
	}
	if again, err := Encode(marked); err != nil || !bytes.Equal(again, data) {
		t.Errorf("with a mark it is read otherwise, %v", err)
	}
	if _, err := Decode(append([]byte("\xef\xbb\xbf\xef\xbb\xbf"), data...)); err == nil {
		t.Error("two marks are taken")
	}
}
