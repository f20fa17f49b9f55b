package compare

import (
	"testing"

	"duskweight/internal/draw"
)

func spans(values ...float64) []onAxis {
	out := make([]onAxis, len(values))
	for i, v := range values {
		if v >= 0 {
			out[i] = onAxis{Span: draw.Span{Low: v, Usual: v, High: v, Known: true}, value: "n"}
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
