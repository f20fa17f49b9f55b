package year

import (
	"encoding/csv"
	"math"
	"os"
	"strconv"
	"testing"

	"duskweight/internal/model/reservoir"
	"duskweight/internal/model/source"
	"duskweight/internal/model/unit"
	"duskweight/internal/witness"
)

// table reads a check table: lines that begin with # name its source, the first other line its columns.
func table(t *testing.T, name string) [][]float64 {
	t.Helper()
	f, err := os.Open("../../../testdata/published/" + name)
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	r := csv.NewReader(f)
	r.Comment = '#'
	rows, err := r.ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	var out [][]float64
	for _, row := range rows[1:] {
		var v []float64
		for _, s := range row {
			x, err := strconv.ParseFloat(s, 64)
			if err != nil {
				t.Fatal(err)
			}
			v = append(v, x)
		}
		out = append(out, v)
	}
	return out
}

// The share of the load that is missing, and the days on which it is, agree with an independent reference run: one
// step a day, in which sun and load meet first, as they do there.
func TestLossOfLoad(t *testing.T) {
	days := table(t, "year_days.csv")
	share := witness.Table(t, "whole", "share of the load that is missing in a year", " %", source.EgidoLorenzo.Whole().String())
	shortDays := witness.Table(t, "whole", "days of a year on which something is missing", "", source.EgidoLorenzo.Whole().String())
	for _, row := range table(t, "year_loss_of_load.csv") {
		array, storage, want, wantDays := row[0], row[1], row[2], row[3]
		in := Input{Stores: []reservoir.Reservoir{{
			Capacity: unit.Energy(storage * hour), FillMax: 1e9, FillGain: 1, DrawMax: 1e9, DrawGain: 1,
		}}}
		for d, day := range days {
			in.Bus = append(in.Bus, array*day[1]/3.5069)
			in.Essential = append(in.Essential, 1)
			in.Night = append(in.Night, d)
		}
		got := run(in)
		// The reference prints six decimals, and its yields five.
		share.See(100*want, 100*float64(got.Unmet/got.Load))
		shortDays.See(wantDays, float64(got.Nights-got.NightsServed))
		if llp := float64(got.Unmet / got.Load); math.Abs(llp-want) > 1e-5 {
			t.Errorf("array %g, storage %g: loss of load %.6f, want %.6f (%s)", array, storage, llp, want, source.EgidoLorenzo.Whole())
		}
		if short := got.Nights - got.NightsServed; short != int(wantDays) {
			t.Errorf("array %g, storage %g: %d days short, want %g", array, storage, short, wantDays)
		}
	}
}
