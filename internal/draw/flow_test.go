package draw

import (
	"math"
	"strings"
	"testing"
)

// Half of 1 kWh and a quarter of it: the bars lie end to end over the 278 units of the whole, the shares are told.
func TestFlow(t *testing.T) {
	f := Flow{Name: "Where it went", Whole: FlowPart{Name: "sun", Energy: 3.6e6}, Parts: []FlowPart{
		{"light", 1.8e6, ToLight}, {"heat", 0.9e6, ToHeat}, {"not used", 0.9e6, ToNobody}}}
	var b strings.Builder
	if err := f.Draw(&b); err != nil {
		t.Fatal(err)
	}
	sound(t, b.String())
	for _, want := range []string{`<rect x="8" y="50" width="139"`, `<rect x="147" y="81" width="69.5"`, `<rect x="216.5" y="112" width="69.5"`, ">50\u00a0%<", ">25\u00a0%<", "sun, of it: light: 50\u00a0%; heat: 25\u00a0%; not used: 25\u00a0%."} {
		if !strings.Contains(b.String(), want) {
			t.Errorf("no %q in %s", want, b.String())
		}
	}
	for _, f := range []Flow{{}, {Whole: FlowPart{Energy: 1}, Parts: []FlowPart{{"<x>", 5, ToHeat}}},
		{Parts: []FlowPart{{Name: strings.Repeat("long ", 40), Energy: -1, Becomes: 9}}}} {
		b.Reset()
		if err := f.Draw(&b); err != nil {
			t.Fatal(err)
		}
		sound(t, b.String())
	}
}

// A band of three days: up along the most, down, and back along the least to where it began.
func TestStates(t *testing.T) {
	s := States{Least: []float64{0, 0, 0.5}, Most: []float64{1, 1, 0.8}}
	if got, want := s.band(34, 122), "M34 22h1l1 20h1v30h-1l-1 50h-1Z"; got != want {
		t.Errorf("%q, want %q", got, want)
	}
	if got, want := s.reading(), "The store gets full on 2 days of the year and empty on 2."; got != want {
		t.Errorf("%q, want %q", got, want)
	}
	for _, s := range []States{{}, s, {Look: "mass", Least: []float64{math.NaN()}, Most: []float64{math.Inf(1), 2}}, {Least: make([]float64, 400), Most: make([]float64, 400)}} {
		var b strings.Builder
		if err := s.Draw(&b); err != nil {
			t.Fatal(err)
		}
		sound(t, b.String())
	}
}
