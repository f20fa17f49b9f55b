package place

import (
	"strings"
	"testing"

	"duskweight/internal/catalog"
	"duskweight/internal/model/unit"
)

// What stands for an empty spread of the days is told where one is empty, and only there. By hand for Luxembourg, as the years
// are fitted, worked out again from its twelve shares of light and temperatures: 0.129 in July to 0.178 in October.
func TestUsualSpreadWhereEmpty(t *testing.T) {
	p := catalog.Sample().Project
	if spread, lag := whereEmpty(&p); spread != "" || lag != "" {
		t.Errorf("all known: %q, %q", spread, lag)
	}
	m := *p.Place.Monthly
	p.Place.Monthly = &m
	m.KTSd[3] = unit.Known[unit.Ratio]{}
	if spread, _ := whereEmpty(&p); !strings.Contains(spread, "0.13 to 0.18") {
		t.Errorf("%q", spread)
	}
	m.KTLag1 = unit.Known[unit.Ratio]{}
	if _, lag := whereEmpty(&p); !strings.Contains(lag, "if empty: 0.") {
		t.Errorf("%q", lag)
	}
}
