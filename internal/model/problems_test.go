package model

import (
	"reflect"
	"testing"
)

func TestProblemsUnder(t *testing.T) {
	ps := Problems{
		{"variants[1]", "a"}, {"variants[1].name", "b"}, {"variants[10].name", "c"}, {"variants[1].stores[0]", "d"},
		{"variants", "e"}, {"document", "f"},
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
	got := Problems{{"name", "a"}, {"", "b"}, {"[2].x", "c"}}.Moved("variants[0]")
	want := Problems{{"variants[0].name", "a"}, {"variants[0]", "b"}, {"variants[0][2].x", "c"}}
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
