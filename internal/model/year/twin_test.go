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

// numbers are what a twin of the kernel prints.
type numbers struct{ ns, x, over, above, unmet float64 }

// twinC builds the kernel in C and returns the command that runs it. It skips loudly where there is no C compiler.
func twinC(t testing.TB) *exec.Cmd {
	t.Helper()
	cc, err := exec.LookPath("cc")
	if err != nil {
		t.Skip("no C compiler (cc) is here: the kernel is not compared with its twin in C")
	}
	program := filepath.Join(t.TempDir(), "kernel")
	if out, err := exec.Command(cc, "-O2", "-o", program, "testdata/kernel.c").CombinedOutput(); err != nil {
		t.Skipf("the twin in C does not build here: %v\n%s", err, out)
	}
	return exec.Command(program)
}

// twinPython returns the command that runs the kernel in Python, or skips loudly.
func twinPython(t testing.TB) *exec.Cmd {
	t.Helper()
	python, err := exec.LookPath("python3")
	if err != nil {
		t.Skip("no python3 is here: the kernel is not compared with its twin in Python")
	}
	return exec.Command(python, "testdata/kernel.py")
}

// ask runs a twin on a year and reads its numbers.
func ask(t testing.TB, cmd *exec.Cmd, k straight, bus, total []float64, times int) (n numbers) {
	t.Helper()
	var in bytes.Buffer
	for _, v := range [][]float64{{float64(len(bus)), float64(times), k.X, k.pf, k.pd, k.gain, k.cost, k.standing}, bus, total} {
		if err := binary.Write(&in, binary.LittleEndian, v); err != nil {
			t.Fatal(err)
		}
	}
	cmd.Stdin = &in
	out, err := cmd.Output()
	if err != nil {
		t.Fatal(err)
	}
	if _, err := fmt.Sscan(string(out), &n.ns, &n.x, &n.over, &n.above, &n.unmet); err != nil {
		t.Fatal(err)
	}
	return n
}

// The kernel and its twins in C and in Python come to the same numbers.
func TestTwins(t *testing.T) {
	for name, twin := range map[string]func(testing.TB) *exec.Cmd{"C": twinC, "Python": twinPython} {
		t.Run(name, func(t *testing.T) {
			bus, d := benchYear(2)
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
			want := ask(t, twin(t), k, bus, d.total, 1)
			for _, c := range [][2]float64{{x, want.x}, {got.over, want.over}, {got.above, want.above}, {unmet, want.unmet}} {
				if math.Abs(c[0]-c[1]) > 1e-12*math.Max(1, math.Abs(c[1])) {
					t.Errorf("%.17g, its twin %.17g", c[0], c[1])
				}
			}
			if unmet == 0 || got.over == 0 {
				t.Error("the year tests nothing")
			}
		})
	}
}

// The kernel beside its twins, run here: the best of many runs of each, and how many times longer a twin takes.
func BenchmarkTwins(b *testing.B) {
	for name, twin := range map[string]func(testing.TB) *exec.Cmd{"C": twinC, "Python": twinPython} {
		b.Run(name, func(b *testing.B) {
			bus, d := benchYear(1)
			s := ready(straightStore())
			k, _ := straighten(&s, 0)
			short := make([]lack, Hours)
			times := map[string]int{"C": 3000, "Python": 20}[name]
			slow := ask(b, twin(b), k, bus, d.total, times)
			best := math.Inf(1)
			for b.Loop() {
				begin := time.Now()
				k.run(bus, d.total, 0, short, k.X)
				best = min(best, float64(time.Since(begin).Nanoseconds())/Hours)
			}
			b.ReportMetric(best, "ns/step")
			b.ReportMetric(slow.ns, "twin-ns/step")
			b.ReportMetric(slow.ns/best, "times")
		})
	}
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
