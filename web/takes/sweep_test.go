package takes

import (
	"math"
	"testing"

	"duskweight/internal/model"
	"duskweight/internal/model/search"
	"duskweight/internal/model/unit"
)

// Where the nights cross a half, by hand, evenly in the logarithm: between stores of 1 and 4 with 25 and 75 of 100 nights
// at 4^(25/50) = 2, with 30 and 100 at 4^(20/70); between panels of 1 and 2 with 30 and 100 at 2^(20/70).
func TestContours(t *testing.T) {
	cell := func(panel, size float64, nights int) search.SweepCell {
		return search.SweepCell{Panel: panel, Size: size, Nights: nights, Of: 100, Today: panel == 1 && size == 1}
	}
	s := search.Sweep{Store: "battery", Lever: &model.CellsKind().Levers[0], Power: 100, Size: unit.Of[unit.Ratio](36000), Cells: [][]search.SweepCell{
		{cell(0.5, 1, 25), cell(1, 1, 30), cell(2, 1, 100)},
		{cell(0.5, 4, 75), cell(1, 4, 100), cell(2, 4, 100)},
	}}
	want := [][2]float64{{0.5, 2}, {1, math.Pow(4, 20.0/70)}, {math.Pow(2, 20.0/70), 1}}
	got := border(s, 0.5)
	if len(got) != len(want) {
		t.Fatalf("%v, want %v", got, want)
	}
	for i := range want {
		for k := range 2 {
			if math.Abs(got[i][k]-want[i][k]) > 1e-12 {
				t.Errorf("%v, want %v", got, want)
			}
		}
	}
	p := contours(s, unit.Metric)
	if len(p.Lines) != 4 { // 95 %, 75 %, half, and as it is; a tenth crosses nowhere
		t.Fatalf("%d lines", len(p.Lines))
	}
	last := p.Lines[len(p.Lines)-1]
	if last.Name != "As it is" || last.Points[0] != [2]float64{100, 10} {
		t.Errorf("as it is: %+v", last)
	}
	for i := range s.Cells {
		for k := range s.Cells[i] {
			s.Cells[i][k].Nights = 0
		}
	}
	if p := contours(s, unit.Metric); len(p.Lines) != 0 {
		t.Errorf("a table without a border has lines: %v", p.Lines)
	}
}
