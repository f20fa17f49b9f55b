package compare

import (
	"testing"

	"duskweight/internal/draw"
	"duskweight/internal/model"
	"duskweight/internal/model/unit"
)

func spans(values ...float64) []onScale {
	out := make([]onScale, len(values))
	for i, v := range values {
		if v >= 0 {
			out[i] = onScale{Span: draw.Span{Low: v, Usual: v, High: v, Known: true}, value: "n"}
		}
	}
	return out
}

// The best is named for a purpose, and only of those whose number is known: nothing is best of one, of equals, or of what is not
// known.
func TestBestOfKnown(t *testing.T) {
	for _, c := range []struct {
		values  []float64
		highest bool
		want    int
	}{{[]float64{3, 5, 4}, true, 1}, {[]float64{3, 5, 4}, false, 0}, {[]float64{3, -1}, true, -1}, {[]float64{4, 4, 1}, true, -1}, {[]float64{4, 4, 5}, true, 2}, {[]float64{-1, 2, 7}, false, 1}} {
		if got := bestOf(spans(c.values...), c.highest); got != c.want {
			t.Errorf("%v: %d, want %d", c.values, got, c.want)
		}
	}
	head, more := bestInWords([]string{"A", "B"}, spans(10, 20), spans(7, 5))
	if head != "For lamps at night: “B”, n full nights." || more != "It costs least of the 2 that have a price." {
		t.Errorf("%q %q", head, more)
	}
	if head, more := bestInWords([]string{"A", "B"}, spans(10, 10), spans(7, -1)); head != "None of them is better at night than the others." || more == "" {
		t.Errorf("%q %q", head, more)
	}
}

// The life of a variant is that of the store that wears out first: of 9 and 4 years it is 4, with what its own figure lies
// between. One store whose life is not known leaves it not known, and a variant without a store that wears has none.
func TestLifeOfTheFirstToWearOut(t *testing.T) {
	life := func(years ...float64) model.VariantResult {
		var r model.VariantResult
		for _, y := range years {
			c := &model.CellsResult{}
			if y > 0 {
				c.Life.YearsLow, c.Life.Years, c.Life.YearsHigh = unit.Of(unit.Ratio(y/2)), unit.Of(unit.Ratio(y)), unit.Of(unit.Ratio(2*y))
			}
			r.Stores = append(r.Stores, model.StoreResult{Name: "B", Part: c})
		}
		return r
	}
	got := lifeSpans([]model.VariantResult{life(9, 4), life(9, 0), life()})
	if want := (onScale{draw.Span{Low: 2, Usual: 4, High: 8, Known: true}, "4 years", "2 to 8: B"}); got[0] != want {
		t.Errorf("%+v, want %+v", got[0], want)
	}
	if got[1].Known || got[2].Known || got[1].value != "not known" || got[1].note != "B" {
		t.Errorf("%+v %+v", got[1], got[2])
	}
}

// What is in sight differs and stands on no scale; everything else is in the fold once, and no row is lost.
func TestRowsHaveOnePlace(t *testing.T) {
	row := func(name string, scale bool, values ...string) compareRow {
		r := compareRow{Name: name, OnAxis: scale}
		for _, v := range values {
			r.Cells = append(r.Cells, compareCell{Text: v})
		}
		return r
	}
	answers := []compareGroup{{"A", []compareRow{row("differs", false, "1", "2"), row("same", false, "1", "1"), row("on a scale", true, "1", "2")}}, {"Money", []compareRow{row("price", false, "1", "2")}}}
	for i := range answers {
		markDifferent(&answers[i])
	}
	inputs := []compareGroup{{"I", []compareRow{{Name: "input", Differs: true}, {Name: "like"}}}}
	var v compareView
	v.lay(answers, inputs)
	names := func(gs []compareGroup) (out string) {
		for _, g := range gs {
			for _, r := range g.Rows {
				out += r.Name + ";"
			}
		}
		return out
	}
	for got, want := range map[string]string{names(v.Differ): "differs;", names(v.Money): "price;", names(v.Inputs): "input;", names(v.Folded): "same;on a scale;like;"} {
		if got != want {
			t.Errorf("%q, want %q", got, want)
		}
	}
}
