package document

import (
	"fmt"
	"strconv"
	"strings"
	"testing"
	"unicode/utf8"
)

// A document of so many bytes, so deep, of so many values is read; one more is refused.
func TestLimitsOnEitherSide(t *testing.T) {
	nested := func(deep int) string { return strings.Repeat("[", deep) + strings.Repeat("]", deep) }
	wide := func(values int) string { return "[" + strings.TrimSuffix(strings.Repeat("0,", values-1), ",") + "]" } // the list itself is one
	for _, c := range []struct {
		name, text, refused string
	}{
		{"8 MiB", "0" + strings.Repeat(" ", 8<<20-1), ""}, {"a byte more", "0" + strings.Repeat(" ", 8<<20), "at most 8 MiB"},
		{"32 levels", nested(32), ""}, {"33 levels", nested(33), "at most 32 levels deep"},
		{"33 levels of groups", strings.Repeat(`{"a":`, 33) + "0" + strings.Repeat("}", 33), "at most 32 levels deep"}, {"32 of them", strings.Repeat(`{"a":`, 32) + "0" + strings.Repeat("}", 32), ""},
		{"100,000 values", wide(100_000), ""}, {"one more", wide(100_001), "at most 100000 values"},
		{"nothing", "", "line 1"}, {"a slip in the third line", "[\n1,\n2 3]", "line 3"}, {"an end too early", "[\n1,\n", "line 3"},
	} {
		_, err := parse([]byte(c.text))
		if c.refused == "" && err != nil || c.refused != "" && (err == nil || !strings.Contains(err.Error(), c.refused)) {
			t.Errorf("%s: %v", c.name, err)
		}
	}
}

// UTF-16 writes what lies beyond 65,535 as two halves, the first from D800 to DBFF and the second from DC00 to DFFF (RFC 2781). A
// half alone is no character; a backslash before the escape makes it letters.
func TestHalvesOfCharacters(t *testing.T) {
	for text, lone := range map[string]bool{
		`\ud800\udc00`: false, `\udbff\udfff`: false, `\ud83d\ude00`: false, `\ud7ff`: false, `\ue000`: false, `\\ud800`: false, `\\\ud800`: true, `a\nb`: false, `\u0041`: false,
		`\ud800`: true, `\udbff`: true, `\udc00`: true, `\udfff`: true, `\ud83d\ud83d`: true, `\ud83dx`: true, `\ud83d\n`: true, `\ud83d\u0041`: true, `\ud83d\ue000`: true, `\ud83d\udbff`: true,
		`\ud83d\ude00\ud83d`: true, `\ud83d\ude00\ude00`: true, `\ud83d\ude00\ud83d\ude00`: false, `\n\ud83d\ude00`: false, `\u00e4\ud83d`: true, `\uDC00`: true, `\uD83D\uDE00`: false, `x\ude00`: true,
	} {
		if got := loneSurrogate([]byte(`"` + text + `"`)); got != lone {
			t.Errorf("%s: %v", text, got)
		}
		if _, err := parse([]byte(`"` + text + `"`)); (err != nil) != lone {
			t.Errorf("%s: %v", text, err)
		}
	}
}

// The number of letters to change, by examples that are printed everywhere: kitten to sitting 3, Saturday to Sunday 3, intention to
// execution 5, flaw to lawn 2. A key of 65 letters is compared with nothing.
func TestLettersToChange(t *testing.T) {
	for pair, want := range map[[2]string]int{
		{"kitten", "sitting"}: 3, {"Saturday", "Sunday"}: 3, {"intention", "execution"}: 5, {"flaw", "lawn"}: 2, {"", "abc"}: 3, {"abc", ""}: 3, {"", ""}: 0, {"same", "same"}: 0,
		{strings.Repeat("a", 64), strings.Repeat("a", 63)}: 1, {strings.Repeat("a", 65), strings.Repeat("a", 65)}: 64, {"a", strings.Repeat("a", 65)}: 64, {strings.Repeat("a", 64), "a"}: 63,
	} {
		if got := edits(pair[0], pair[1]); got != want {
			t.Errorf("%q to %q: %d, want %d", pair[0], pair[1], got, want)
		}
	}
	known := fields{{key: "mass_kg"}, {key: "mast_kg"}, {key: "travel_m"}}
	for key, want := range map[string]string{"mass_kgg": "mass_kg", "masz_kg": "mass_kg", "mast_kg1": "mast_kg", "travel": "travel_m", "tra": "", "height": "", "xravxl_x": "travel_m", "xravxl_y1": "travel_m", "xravxl_y12": "", "": ""} {
		got := known.nearest(key)
		if want == "" && got != "" || want != "" && got != "; is "+want+" meant?" {
			t.Errorf("%q: %q, want %q", key, got, want)
		}
	}
}

// A key is told by its first 60 characters, on one line.
func TestBriefKeys(t *testing.T) {
	long := strings.Repeat("ä", 60)
	for key, want := range map[string]string{long: long, long + "ä": long + "…", "a\nb": "a" + string(utf8.RuneError) + "b", "": ""} {
		if got := brief(key); got != want {
			t.Errorf("%q is told as %q", key, got)
		}
	}
}

// Whole numbers are read up to 2⁵³ − 1, on both sides of nothing where a count may be negative; a number that no program holds is
// refused, a nothing of any length is nothing.
func TestNumbersOnEitherSide(t *testing.T) {
	read := func(to any, text string) error {
		return decodeInto(to, &value{kind: object, keys: []string{"v"}, items: []*value{{kind: number, text: text}}})
	}
	type counted struct {
		V int `json:"v"`
	}
	type seeded struct {
		V uint64 `json:"v"`
	}
	type measured struct {
		V float64 `json:"v"`
	}
	for text, want := range map[string]int{"9007199254740991": 1<<53 - 1, "-9007199254740991": -(1<<53 - 1), "9007199254740992": 0, "-9007199254740992": 0, "3.0": 3, "3.5": 0, "1e3": 1000, "-2": -2} {
		var c counted
		if err := read(&c, text); (err == nil) != (want != 0) || c.V != want {
			t.Errorf("%s: %d, %v", text, c.V, err)
		}
	}
	for text, ok := range map[string]bool{"0": true, "-1": false, "9007199254740991": true, "9007199254740992": false, "-0": true} {
		var s seeded
		if err := read(&s, text); (err == nil) != ok {
			t.Errorf("seed %s: %v", text, err)
		}
	}
	for text, ok := range map[string]bool{"1.7e308": true, "1.8e308": false, "-1.8e308": false, "5e-324": true, "1e-324": false, "0e-999": true, "0.000": true, "0E1": true, "0.0e9": true} {
		var m measured
		if err := read(&m, text); (err == nil) != ok {
			t.Errorf("%s: %v", text, err)
		}
		if want, _ := strconv.ParseFloat(text, 64); ok && m.V != want {
			t.Errorf("%s is read as %v", text, m.V)
		}
	}
}

// What JSON values are called, in their order.
func TestKindsInWords(t *testing.T) {
	got := fmt.Sprint(null, boolean, number, text, list, object)
	if want := "null true or false a number text a list a group of values"; got != want {
		t.Error(got)
	}
}
