package sun

import (
	"math"
	"testing"
)

// source.SplitMix: the first numbers of seed 1234567, as the published reference programs print them (from memory).
func TestGeneratorAgainstReference(t *testing.T) {
	g := generator(1234567)
	for i, want := range []uint64{6457827717110365317, 3203168211198807973, 9817491932198370423, 4593380528125082431, 16408922859458223821} {
		if got := g.next(); got != want {
			t.Errorf("number %d: %d, want %d", i, got, want)
		}
	}
}

// normalCDF returns Φ(z).
func normalCDF(z float64) float64 { return 0.5 * math.Erfc(-z/math.Sqrt2) }

// source.Wichura.At("test values"): Φ⁻¹(0.25), Φ⁻¹(0.001), Φ⁻¹(1e-20), to the sixteen digits it promises; and the
// distribution function leads back.
func TestInverseNormal(t *testing.T) {
	for p, want := range map[float64]float64{0.25: -0.6744897501960817, 0.001: -3.090232306167814, 1e-20: -9.262340089798408, 0.5: 0} {
		near(t, "Φ⁻¹", inverseNormal(p), want, 3e-15*math.Abs(want))
	}
	for p := 0x1p-53; p < 1; p = p*1.3 + 1e-4 {
		near(t, "Φ(Φ⁻¹(p))/p", normalCDF(inverseNormal(p))/p, 1, 1e-13)
	}
}

func TestSeed(t *testing.T) {
	seen := map[uint64]bool{}
	for seed := range uint64(20) {
		if Seed(seed, 0) != seed {
			t.Errorf("year 0 of seed %d is %d", seed, Seed(seed, 0))
		}
		for j := 1; j < 500; j++ {
			if s := Seed(seed, j); seen[s] {
				t.Fatalf("seed %d, year %d: used twice", seed, j)
			} else {
				seen[s] = true
			}
		}
	}
}
