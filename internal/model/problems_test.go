package model

import (
	"reflect"
	"strings"
	"testing"

	"duskweight/internal/model/lift"
	"duskweight/internal/model/unit"
	"duskweight/internal/say"
)

func TestProblemsUnder(t *testing.T) {
	ps := Problems{
		{Path: "variants[1]", Say: say.Words("a")}, {Path: "variants[1].name", Say: say.Words("b")}, {Path: "variants[10].name", Say: say.Words("c")}, {Path: "variants[1].stores[0]", Say: say.Words("d")},
		{Path: "variants", Say: say.Words("e")}, {Path: "document", Say: say.Words("f")},
	}
	for path, want := range map[string]string{"variants[1]": "abd", "variants": "abcde", "variants[1].stores": "d", "": "abcdef", "variants[1].nam": ""} {
		got := ""
		for _, p := range ps.Under(path) {
			got += p.Say.String()
		}
		if got != want {
			t.Errorf("under %q: %s, want %s", path, got, want)
		}
	}
}

func TestProblemsMoved(t *testing.T) {
	got := Problems{{Path: "name", Say: say.Words("a")}, {Path: "", Say: say.Words("b")}, {Path: "[2].x", Say: say.Words("c")}}.Moved("variants[0]")
	want := Problems{{Path: "variants[0].name", Say: say.Words("a")}, {Path: "variants[0]", Say: say.Words("b")}, {Path: "variants[0][2].x", Say: say.Words("c")}}
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

// A range is said in the units of a reader, its limits rounded inwards and the value outwards. By hand: 10 m are 32.808 ft and
// 10.001 m are 32.8117 ft; 1e8 N are the weight of 1e8/9.80665 = 10 197 162 kg.
func TestProblemAsField(t *testing.T) {
	type shed struct {
		Height float64 `json:"height_m" range:"(0,10]"`
		Load   float64 `json:"load_n" range:"(0,1e8]"`
		Doors  int     `json:"doors" range:"[0,1024]"`
		Warm   float64 `json:"warm_c" range:"[-60,80]"`
	}
	ps := CheckRanges(shed{10.001, 2e8, 1025, -60.5}).Moved("shed")
	if len(ps) != 4 || ps[0].Path != "shed.height_m" {
		t.Fatalf("%v", ps)
	}
	for _, c := range []struct{ got, want string }{
		{ps[0].As(unit.Lengths).Say.In(unit.Imperial), "must be more than 0 ft and at most 32.8 ft; it is 32.8117 ft"},
		{ps[0].As(unit.Lengths).Say.In(unit.Metric), "must be more than 0 m and at most 10 m; it is 10.001 m"},
		{ps[0].Say.In(unit.Imperial), "must be more than 0 and at most 10; it is 10.001"},
		{ps[1].As(unit.Loads).Say.In(unit.Metric), "must be more than 0 kg and at most 10 100 000 kg; it is 20 394 400 kg"},
		{ps[2].As(unit.Counts).Say.In(unit.Metric), "must be at least 0 and at most 1 024; it is 1 025"},
		{ps[3].As(unit.Temperatures).Say.In(unit.Imperial), "must be at least −76 °F and at most 176 °F; it is −76.9 °F"},
	} {
		if got := strings.ReplaceAll(c.got, unit.Space, " "); got != c.want {
			t.Errorf("%q, want %q", got, c.want)
		}
	}
	if p := (Problem{Say: say.Words("give it a name")}); !p.As(unit.Lengths).Say.Is(p.Say) {
		t.Errorf("%q", p.As(unit.Lengths).Say)
	}
}

// What contradicts itself is told without a power of ten, in the reader's units; the document's own words are metric. By hand:
// 4 m are 4000 mm or 157.48 in, that is 13 ft 1.48 in and 7.7 sixteenths over 13′ 1″; 4.2 m are 165.354 in, 13 ft 9.354 in, 5.7 sixteenths over 9″. Four ropes of 1.3 km of travel are 5200 m or 17 060 ft, told as the length that must be bought.
func TestContradictionInUnits(t *testing.T) {
	h := lift.Hoist{Travel: unit.Of[unit.Length](1300)}
	h.Rope.Diameter, h.Drum.Diameter = unit.Of[unit.Length](4.2), unit.Of[unit.Length](4)
	h.Rope.Length, h.Reeving.RopeParts = unit.Of[unit.Length](10), unit.Of[unit.Count](4)
	ps := checkHoist(h)
	for i, want := range []struct{ metric, imperial string }{
		{"the drum (4 000 mm) must be thicker than its rope (4 200 mm)", "the drum (13′ 1-1/2″) must be thicker than its rope (13′ 9-3/8″)"},
		{"the rope is too short: 4 × the travel is 5 200 m before any of it reaches the drum", "the rope is too short: 4 × the travel is 17 100 ft before any of it reaches the drum"},
	} {
		metric, imperial := strings.ReplaceAll(ps[i].Say.String(), unit.Space, " "), strings.ReplaceAll(ps[i].Say.In(unit.Imperial), unit.Space, " ")
		if metric != want.metric || imperial != want.imperial {
			t.Errorf("%q and %q, want %q", metric, imperial, want)
		}
	}
}
