package search_test

import (
	"crypto/sha256"
	"encoding/json"
	"fmt"
	"math"
	"reflect"
	"testing"

	"duskweight/internal/catalog"
	"duskweight/internal/model/search"
	"duskweight/internal/model/sun"
)

// By hand. A triangular distribution from 0.8 to 1.2 with its top at 1 has F(x) = (x − 0.8)²/(0.4·0.2) below 1, so
// F(0.9) = 0.125, and by symmetry F(1.1) = 0.875. Its mean is (a + b + c)/3 and its variance (a² + b² + c² − ab − ac −
// bc)/18: for −20 … +50 % 1.1 and 0.02167 (source.LawKelton). 4,000 draws know the mean to √(0.02167/4000) = 0.0023; four
// of these are allowed.
func TestTriangularDraws(t *testing.T) {
	for _, tc := range []struct{ u, a, b, want float64 }{{0.125, 0.8, 1.2, 0.9}, {0.5, 0.8, 1.2, 1}, {0.875, 0.8, 1.2, 1.1}, {0, 0.8, 1.5, 0.8}, {1, 0.8, 1.5, 1.5}, {0.2 / 0.7, 0.8, 1.5, 1}} {
		if got := search.Triangular(tc.u, tc.a, tc.b); math.Abs(got-tc.want) > 1e-12 { // rounding of a few operations
			t.Errorf("u = %v of %v to %v: %v, want %v", tc.u, tc.a, tc.b, got, tc.want)
		}
	}
	const n = 4000
	idle := search.Tolerance{Name: "idle", Low: 0.8, High: 1.5}
	sum, square := 0.0, 0.0
	for j := range n {
		f := idle.Factor(7, j)
		if f < 0.8 || f > 1.5 {
			t.Fatalf("draw %d is %v", j, f)
		}
		sum, square = sum+f, square+f*f
	}
	mean := sum / n
	if v := square/n - mean*mean; math.Abs(mean-1.1) > 4*0.0023 || math.Abs(v-0.02167) > 0.002 { // the variance of 4,000 draws: ± 0.0005
		t.Errorf("mean %.4f, variance %.5f; want 1.1000, 0.02167", mean, v)
	}
}

// Streams are keyed by name: other seeds, names and numbers give other draws, and no stream goes with another or with its
// own next draw. Two rows of 2,000 with nothing in common have a rank correlation below 4/√2000 = 0.089.
func TestStreamsByName(t *testing.T) {
	const n = 2000
	row := func(seed uint64, name string, from int) (out []float64) {
		for j := range n {
			out = append(out, sun.Uniform(seed, name, from+j))
		}
		return out
	}
	first := row(1, "sun", 0)
	for name, other := range map[string][]float64{"name": row(1, "mass", 0), "seed": row(2, "sun", 0), "next": row(1, "sun", 1)} {
		if r := search.RankCorrelation(first, other); math.Abs(r) > 0.089 {
			t.Errorf("another %s: correlation %v", name, r)
		}
	}
	if !reflect.DeepEqual(first, row(1, "sun", 0)) {
		t.Error("the same stream gives other numbers")
	}
}

// By hand. Rows 86 97 99 100 101 103 106 110 112 113 and 0 20 28 27 50 29 7 17 6 12 have the ranks 1 … 10 and 1 6 8 7 10 9
// 3 5 2 4; the squares of the differences, 0 16 25 9 25 9 16 9 49 36, add up to 194; ρ = 1 − 6·194/(10·99) = −29/165.
// With ties: 1 2 2 3 has the ranks 1 2½ 2½ 4; against 1 2 3 4 the deviations give 4.5/√(4.5·5) = 0.948683.
func TestRankCorrelation(t *testing.T) {
	for _, tc := range []struct {
		a, b []float64
		want float64
	}{
		{[]float64{86, 97, 99, 100, 101, 103, 106, 110, 112, 113}, []float64{0, 20, 28, 27, 50, 29, 7, 17, 6, 12}, -29.0 / 165},
		{[]float64{1, 2, 2, 3}, []float64{1, 2, 3, 4}, 4.5 / math.Sqrt(22.5)},
		{[]float64{1, 2, 3}, []float64{math.Exp(1), math.Exp(2), math.Exp(3)}, 1},
		{[]float64{5, 5, 5}, []float64{1, 2, 3}, 0},
	} {
		if got := search.RankCorrelation(tc.a, tc.b); math.Abs(got-tc.want) > 1e-12 {
			t.Errorf("%v, %v: %v, want %v", tc.a, tc.b, got, tc.want)
		}
	}
}

// With parts that differ: the document stays as it was, the numbers are the same for any number of workers and steps, the
// years differ more than by weather alone, more sun and more panel serve more, longer lamps less, and the input that
// moves most stands first. A draw of a copy is the same draw.
func TestPartsThatDiffer(t *testing.T) {
	doc := catalog.Sample()
	doc.Variants = append(doc.Variants[:2:2], doc.Variants[1])
	before, err := json.Marshal(doc)
	if err != nil {
		t.Fatal(err)
	}
	var first [32]byte
	for workers := 1; workers <= 2; workers++ {
		r := search.NewRun(doc.Project, doc.Variants, true)
		for _, n := range [][]int{{40}, {7, 40}}[workers-1] {
			if err := r.Until(t.Context(), n, workers, nil); err != nil {
				t.Fatal(err)
			}
		}
		s := r.Sure()
		h := sha256.Sum256(fmt.Appendf(nil, "%#v", s))
		if workers == 1 {
			first = h
			continue
		}
		if h != first {
			t.Error("other workers and steps, other numbers")
		}
		if v := s.Pairs[1][2]; v.Same != 40 {
			t.Errorf("a variant against its copy: %+v", v)
		}
		same, err := search.Years(t.Context(), doc.Project, doc.Variants, 40, 1, nil)
		if err != nil {
			t.Fatal(err)
		}
		c := s.Variants[1]
		if wide, narrow := c.Share.Best-c.Share.Worst, same.Variants[1].Share.Best-same.Variants[1].Share.Worst; wide <= narrow {
			t.Errorf("with parts the served share spans %v, by weather alone %v", wide, narrow)
		}
		for i, m := range c.Moves {
			if i > 0 && m.Share > c.Moves[i-1].Share || m.Share > 1 {
				t.Errorf("moves: %+v", c.Moves)
			}
			if m.Share > search.ByChance(40) && m.More != (m.Input != "lamps" && m.Input != "idle") {
				t.Errorf("the wrong way round: %+v", m)
			}
			if m.Input == "mass" || m.Input == "gear_loss" {
				t.Errorf("a battery has no %s", m.Input)
			}
		}
		if len(c.Moves) < 4 || c.Moves[0].Share < search.ByChance(40) {
			t.Errorf("nothing moves the answer: %+v", c.Moves)
		}
	}
	if after, err := json.Marshal(doc); err != nil || string(after) != string(before) {
		t.Errorf("the document was changed, %v", err)
	}
}
