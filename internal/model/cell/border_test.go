package cell

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"duskweight/internal/model/unit"
)

// The ratings of fuses: up to 30 A those of blade fuses for road vehicles (ISO 8820-3), from 15 A on the standard ratings of
// the National Electrical Code, 240.6(A); both from memory. Each is the next of what is a hair below it, and not of what is a
// hair above.
func TestFuseSizesOfTheStandards(t *testing.T) {
	for _, a := range []float64{1, 2, 3, 4, 5, 7.5, 10, 15, 20, 25, 30, 35, 40, 45, 50, 60, 70, 80, 90, 100, 110, 125, 150, 175, 200, 225, 250, 300, 350, 400, 450, 500, 600} {
		if f, ok := NextFuse(unit.Current(math.Nextafter(a, 0))); !ok || float64(f) != a {
			t.Errorf("under %g A: %v", a, f)
		}
		if f, ok := NextFuse(unit.Current(math.Nextafter(a, 1000))); ok == (a == 600) || ok && float64(f) <= a {
			t.Errorf("over %g A: %v, %v", a, f, ok)
		}
	}
}

// A cable may lose 3 % of the voltage (common practice): 16 mm² at 10 A, both ways, at 40 °C have
// 2·l·10·0.017241e-6·(1 + 0.00393·20)/16e-6 V, which is 0.03·12.8 = 0.384 V at l = 16.52 m.
func TestCableDropAtItsBorder(t *testing.T) {
	for _, c := range []struct {
		length float64
		told   bool
	}{{16.50, false}, {16.54, true}} {
		b := typicalBank("lfp")
		b.Series, b.Voltage, b.CableLength, b.CableArea = unit.Of[unit.Count](1), unit.Of[unit.Voltage](12.8), unit.Of(unit.Length(c.length)), unit.Of[unit.Area](16e-6)
		l := b.Resolve().Line(10)
		if told := strings.Contains(fmt.Sprint(l.Flags), "of the voltage"); told != c.told {
			t.Errorf("%g m: %v, drop %v", c.length, l.Flags, l.DropShare)
		}
	}
}

// Blocks side by side are brought to one voltage first; a single one is not.
func TestSideBySideIsCautioned(t *testing.T) {
	for n, told := range map[unit.Count]bool{1: false, 2: true} {
		b := typicalBank("lfp")
		b.Parallel = unit.Of(n)
		if got := strings.Contains(fmt.Sprint(b.Resolve().Cautions(Life{})), "to the same voltage before you join"); got != told {
			t.Errorf("%g side by side: cautioned %v", float64(n), got)
		}
	}
}

// In a cold in which nothing is left of the capacity the trade's size is five times as large, not endless; on a mild day a
// lead battery of 25 °C needs no more than itself.
func TestColdFactorIsFiveAtMost(t *testing.T) {
	r := typicalBank("flooded_lead").Resolve()
	day := func(c float64) (hours []float64) {
		for range 24 {
			hours = append(hours, c)
		}
		return hours
	}
	if got := r.coldFactor(TemperatureIn(append(day(20), day(-60)...))); got != 5 {
		t.Errorf("with a day of −60 °C: %g times", got)
	}
	if got := r.coldFactor(TemperatureIn(day(25))); math.Abs(got-1) > 1e-9 {
		t.Errorf("at 25 °C: %g times", got)
	}
}

// Lead under 0.98 of full for 14 days on end sulphates, the fourteenth day included; an hour less does not, and an hour at 0.98
// between two weeks breaks them off. Ions never do.
func TestFourteenDaysUnderFull(t *testing.T) {
	year := func(low int, gap int) []float64 {
		charge := make([]float64, 8760)
		for h := range charge {
			charge[h] = 1
			if h >= 100 && h < 100+low && h != gap {
				charge[h] = 0.97
			}
		}
		if gap > 0 {
			charge[gap] = 0.98
		}
		return charge
	}
	warm := make([]float64, 8760)
	for h := range warm {
		warm[h] = 20
	}
	for _, c := range []struct {
		kind     string
		low, gap int
		want     bool
	}{{"flooded_lead", 336, 0, true}, {"flooded_lead", 335, 0, false}, {"flooded_lead", 600, 400, false}, {"lfp", 336, 0, false}} {
		var l Life
		l.stand(typicalBank(c.kind).Resolve(), year(c.low, c.gap), warm)
		if l.Sulphates != c.want {
			t.Errorf("%s, %d hours under full, a full hour at %d: %v for %v h", c.kind, c.low, c.gap, l.Sulphates, float64(l.NotFull/unit.Hour))
		}
	}
}
