package lift

import (
	"math"
	"testing"

	"duskweight/internal/model/unit"
)

// By hand: pieces of 20 kg and 60 kg scaled to 120 kg are 30 kg and 90 kg; the first hoist keeps its own. Without a known
// piece it is one piece.
func TestHanging(t *testing.T) {
	kg := func(m unit.Mass) Piece { return Piece{Name: "plate", Mass: unit.Of(m), Weighed: ByScale} }
	h := Hoist{Mass: []Piece{kg(20), kg(60)}}
	if m := h.Hangs(); !m.Is || m.Val != 80 {
		t.Errorf("it hangs %v", m)
	}
	two := h.Hanging(120)
	if math.Abs(float64(two.Mass[0].Mass.Val)-30) > 1e-12 || math.Abs(float64(two.Mass[1].Mass.Val)-90) > 1e-12 || two.Mass[0].Weighed != "" || two.Mass[1].Name != "plate" {
		t.Errorf("%+v", two.Mass)
	}
	if h.Mass[0].Mass.Val != 20 {
		t.Error("the hoist before is changed too")
	}
	open := Hoist{Mass: []Piece{{Name: "barrel"}, kg(5)}}
	if open.Hangs().Is {
		t.Error("a piece that is not known is counted as nothing")
	}
	if one := open.Hanging(50).Mass; len(one) != 1 || one[0].Mass.Val != 50 || one[0].Name != "barrel" {
		t.Errorf("%+v", one)
	}
}
