package cells

import (
	"strings"
	"testing"

	"duskweight/internal/model"
	"duskweight/internal/model/cell"
	"duskweight/internal/model/unit"
)

// TestInNumbers tells what all blocks of a battery are together: volts add up in series, ampere-hours side by side.
func TestInNumbers(t *testing.T) {
	for want, b := range map[string]cell.Bank{
		"12 V 280 Ah": {},
		"24 V 280 Ah": {Series: unit.Of[unit.Count](2)},
		"24 V 840 Ah": {Series: unit.Of[unit.Count](2), Parallel: unit.Of[unit.Count](3)},
	} {
		b.Voltage, b.Capacity = unit.Of[unit.Voltage](12), unit.Of(280*unit.AmpereHour)
		if _, got := inNumbers(model.StoreResult{Part: &model.CellsResult{Design: b}}, unit.Metric); strings.ReplaceAll(got, "\u00a0", " ") != want {
			t.Errorf("%q, want %q", got, want)
		}
	}
}
