package model

import (
	"reflect"
	"strconv"
	"testing"
)

func TestProblemsUnder(t *testing.T) {
	ps := Problems{
		{Path: "variants[1]", Say: "a"}, {Path: "variants[1].name", Say: "b"}, {Path: "variants[10].name", Say: "c"}, {Path: "variants[1].stores[0]", Say: "d"},
		{Path: "variants", Say: "e"}, {Path: "document", Say: "f"},
	}
	for path, want := range map[string]string{"variants[1]": "abd", "variants": "abcde", "variants[1].stores": "d", "": "abcdef", "variants[1].nam": ""} {
		got := ""
		for _, p := range ps.Under(path) {
			got += p.Say
		}
		if got != want {
			t.Errorf("under %q: %s, want %s", path, got, want)
		}
	}
}

func TestProblemsMoved(t *testing.T) {
	got := Problems{{Path: "name", Say: "a"}, {Path: "", Say: "b"}, {Path: "[2].x", Say: "c"}}.Moved("variants[0]")
	want := Problems{{Path: "variants[0].name", Say: "a"}, {Path: "variants[0]", Say: "b"}, {Path: "variants[0][2].x", Say: "c"}}
	if !reflect.DeepEqual(got, want) {
		t.Errorf("%v, want %v", got, want)
	}
}

func TestProblemsErr(t *testing.T) {
	if err := (Problems{}).Err(); err != nil {
		t.Errorf("no problem is an error: %v", err)
	}
	var ps Problems
	ps.Add("a", "is wrong")
	ps.Add("b", "is worse")
	if got, want := ps.Err().Error(), "a: is wrong\nb: is worse"; got != want {
		t.Errorf("%q, want %q", got, want)
	}
}

// A range is said in the numbers that a reader knows: by hand, 13 ft of at most 12.
func TestProblemSayAs(t *testing.T) {
	type tall struct {
		Height float64 `json:"height_m" range:"(0,3.6576]"`
	}
	ps := CheckRanges(tall{Height: 3.9624}).Moved("shed")
	if len(ps) != 1 || ps[0].Path != "shed.height_m" {
		t.Fatalf("%v", ps)
	}
	feet := func(si float64) string { return strconv.FormatFloat(si/0.3048, 'g', 6, 64) + " ft" }
	if got, want := ps[0].SayAs(feet), "must be more than 0 ft and at most 12 ft; it is 13 ft"; got != want {
		t.Errorf("%q, want %q", got, want)
	}
	if got, want := ps[0].Say, "must be more than 0 and at most 3.6576; it is 3.9624"; got != want {
		t.Errorf("%q, want %q", got, want)
	}
	if p := (Problem{Say: "give it a name"}); p.SayAs(feet) != p.Say {
		t.Errorf("%q", p.SayAs(feet))
	}
}
