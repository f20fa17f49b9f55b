package lift

import (
	"strings"
	"testing"

	"duskweight/internal/model/unit"
)

// A machine that was driven both ways is asked nothing; one that was driven one way only, whichever, is asked for the other.
// Resistance wants five positions of the shaft. Readings that lie further apart than a fifth of their mean are told.
func TestBenchBothWays(t *testing.T) {
	turned := func(rpm float64) Bench {
		return Bench{Speed: known(unit.AngularSpeed(rpm * 0.1047)), Voltage: known(unit.Voltage(rpm * 0.0034))}
	}
	still := Bench{Voltage: known[unit.Voltage](1), Current: known[unit.Current](2)}
	for name, c := range map[string]struct {
		driven    []Bench
		oneWay    bool
		stills    int
		positions bool
	}{
		"both ways":            {[]Bench{turned(1000), turned(-1000)}, false, 5, false},
		"both, other order":    {[]Bench{turned(-1000), turned(1000)}, false, 6, false},
		"three, the last back": {[]Bench{turned(1000), turned(900), turned(-1000)}, false, 5, false},
		"forward only":         {[]Bench{turned(1000), turned(900)}, true, 5, false},
		"back only":            {[]Bench{turned(-1000)}, true, 4, true},
		"four positions":       {[]Bench{turned(1000), turned(-1000)}, false, 4, true},
	} {
		h := worked()
		h.Machine.K, h.Machine.R = unit.Known[unit.MachineConstant]{}, unit.Known[unit.Resistance]{}
		h.Machine.BenchK = c.driven
		for range c.stills {
			h.Machine.BenchR = append(h.Machine.BenchR, still)
		}
		var said []string
		for _, f := range Compute(h).Flags {
			said = append(said, f.Say.String())
		}
		all := strings.Join(said, " ")
		if strings.Contains(all, "one direction only") != c.oneWay || strings.Contains(all, "positions of the shaft") != c.positions {
			t.Errorf("%s: %s", name, all)
		}
	}
}
