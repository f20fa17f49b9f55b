package year

import (
	"bytes"
	"encoding/binary"
	"fmt"
	"math"
	"os/exec"
	"path/filepath"
	"testing"
	"time"
)

// twin builds the kernel in C and runs it on a year, and returns its best ns a step and its numbers. It skips loudly
// where there is no C compiler.
func twin(t testing.TB, k straight, bus, total []float64, times int) (ns, x, over, above, unmet float64) {
	t.Helper()
	cc, err := exec.LookPath("cc")
	if err != nil {
		t.Skip("no C compiler (cc) is here: the kernel is not compared with its twin")
	}
	program := filepath.Join(t.TempDir(), "kernel")
	if out, err := exec.Command(cc, "-O2", "-o", program, "testdata/kernel.c").CombinedOutput(); err != nil {
		t.Skipf("the C twin does not build here: %v\n%s", err, out)
	}
	var in bytes.Buffer
	for _, v := range [][]float64{{float64(len(bus)), float64(times), k.X, k.pf, k.pd, k.gain, k.cost, k.standing}, bus, total} {
		if err := binary.Write(&in, binary.LittleEndian, v); err != nil {
			t.Fatal(err)
		}
	}
	cmd := exec.Command(program)
	cmd.Stdin = &in
	out, err := cmd.Output()
	if err != nil {
		t.Fatal(err)
	}
	if _, err := fmt.Sscan(string(out), &ns, &x, &over, &above, &unmet); err != nil {
		t.Fatal(err)
	}
	return ns, x, over, above, unmet
}

// The kernel and its twin in C come to the same numbers.
func TestTwin(t *testing.T) {
	for seed := range uint64(3) {
		bus, d := benchYear(seed)
		r := straightStore()
		r.DrawMax = 42 // so that the evening asks for more
		s := ready(r)
		k, ok := straighten(&s, 0.7)
		if !ok {
			t.Fatal("not straight")
		}
		short := make([]lack, Hours)
		x, got := k.run(bus, d.total, 0, short, k.X)
		unmet := 0.0
		for _, l := range short[:got.short] {
			unmet += l.unmet
		}
		_, wx, wover, wabove, wunmet := twin(t, k, bus, d.total, 1)
		for _, c := range [][2]float64{{x, wx}, {got.over, wover}, {got.above, wabove}, {unmet, wunmet}} {
			if math.Abs(c[0]-c[1]) > 1e-12*math.Max(1, math.Abs(c[1])) {
				t.Errorf("seed %d: %.17g, its twin in C %.17g", seed, c[0], c[1])
			}
		}
		if unmet == 0 || got.over == 0 {
			t.Error("the year tests nothing")
		}
	}
}

// The kernel beside its twin in C, built here: the best of many runs of each, and their ratio.
func BenchmarkTwin(b *testing.B) {
	bus, d := benchYear(1)
	s := ready(straightStore())
	k, _ := straighten(&s, 0)
	short := make([]lack, Hours)
	ns, _, _, _, _ := twin(b, k, bus, d.total, 3000)
	best := math.Inf(1)
	for b.Loop() {
		begin := time.Now()
		k.run(bus, d.total, 0, short, k.X)
		best = min(best, float64(time.Since(begin).Nanoseconds())/Hours)
	}
	b.ReportMetric(best, "ns/step")
	b.ReportMetric(ns, "C-ns/step")
	b.ReportMetric(best/ns, "ratio")
}

// The same over 64 different years, one after the other, as a sweep over weather sees it.
func BenchmarkManyYears(b *testing.B) {
	const years = 64
	var bus [years][]float64
	var d *Demand
	for i := range bus {
		bus[i], d = benchYear(uint64(i))
	}
	s := ready(straightStore())
	k, _ := straighten(&s, 0)
	short := make([]lack, Hours)
	clocked(b, years*Hours, func() {
		for i := range bus {
			k.run(bus[i], d.total, 0, short, k.X)
		}
	})
}
