package sure

import (
	"testing"

	"duskweight/internal/model/search"
	"duskweight/internal/model/unit"
)

// Years that are all alike are told once.
func TestRangeOfOneNumber(t *testing.T) {
	c := search.Certain{Light: search.Spread{Worst: 54, Bad: 54, Usual: 54, Good: 54, Best: 54}, Nine: 54}
	if l := rangeLineOf(c, 365, unit.Metric); l.Nine != "In every made year 54 of 365 nights are full." || l.Range != "" {
		t.Errorf("%+v", l)
	}
	c.Light.Best = 57
	if l := rangeLineOf(c, 365, unit.Metric); l.Range != "A bad, a usual and a good year have 54." {
		t.Errorf("%+v", l)
	}
}
