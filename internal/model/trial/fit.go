// Package trial turns what was measured at the bench and in the yard into numbers of the plan: least squares with
// standard errors, and a plain refusal where the records do not determine a number.
//
// Left out: errors of the masses and radii themselves; friction that changes with speed; a motor that heats as two
// bodies.
package trial

import (
	"errors"
	"math"
	"slices"

	"gonum.org/v1/gonum/mat"
)

// Value is a number found from records. Its standard error is known where there are more records than numbers.
type Value struct {
	Val, Err float64
	Sure     bool // Err is known
}

// solution of a least-squares problem: values, and their covariance where spare records tell the scatter.
type solution struct {
	beta []float64
	cov  *mat.Dense // scaled by the scatter; nil with no record to spare
	rss  float64
	ok   bool // every number is determined
}

func (s solution) value(i int) Value {
	v := Value{Val: s.beta[i]}
	if s.cov != nil {
		v.Err, v.Sure = math.Sqrt(math.Max(0, s.cov.At(i, i))), true
	}
	return v
}

// conditionLimit is where columns count as alike: a number that only the last digits of the readings would decide is
// not determined.
const conditionLimit = 1e8

// linear solves y ≈ X·β by the Householder triangle R of X, and once more for what that leaves of y (Björck, Numerical
// methods for least squares problems, section 2.9). The covariance is s²·(XᵀX)⁻¹ = s²·R⁻¹R⁻ᵀ, s² = RSS/(n − p). Not ok
// where the columns do not tell the numbers apart.
func linear(rows [][]float64, y []float64) solution {
	if len(rows) == 0 || len(rows) < len(rows[0]) {
		return solution{}
	}
	n, p := len(rows), len(rows[0])
	x := mat.NewDense(n, p, slices.Concat(rows...))
	var qr mat.QR
	qr.Factorize(x)
	r := mat.NewTriDense(p, mat.Upper, nil)
	if !determined(&qr, r, x) {
		return solution{}
	}
	want := mat.NewVecDense(n, slices.Clone(y))
	beta, rest := mat.NewVecDense(p, nil), mat.VecDenseCopyOf(want)
	for range 2 {
		var more, part mat.VecDense
		if err := qr.SolveVecTo(&more, false, rest); err != nil && !errors.As(err, new(mat.Condition)) {
			return solution{}
		}
		beta.AddVec(beta, &more)
		part.MulVec(x, beta)
		rest.SubVec(want, &part)
	}
	s := solution{beta: beta.RawVector().Data, rss: mat.Dot(rest, rest), ok: true}
	if n > p {
		s.cov = covariance(r, s.rss/float64(n-p))
	}
	return s
}

// determined fills the triangle r of the columns of x and reports whether each column has a part of its own.
func determined(qr *mat.QR, r *mat.TriDense, x *mat.Dense) bool {
	var full mat.Dense
	qr.RTo(&full)
	_, p := x.Dims()
	for j := range p {
		for i := range j + 1 {
			r.SetTri(i, j, full.At(i, j))
		}
		if size := mat.Norm(x.ColView(j), 2); !(math.Abs(r.At(j, j)) > size/conditionLimit) {
			return false
		}
	}
	return true
}

// covariance is scatter·R⁻¹·R⁻ᵀ.
func covariance(r *mat.TriDense, scatter float64) *mat.Dense {
	var inverse mat.TriDense
	if err := inverse.InverseTri(r); err != nil && !errors.As(err, new(mat.Condition)) {
		return nil
	}
	var c mat.Dense
	c.Mul(&inverse, inverse.T())
	c.Scale(scatter, &c)
	return &c
}

// curve fits y ≈ f(β) from a start by damped Gauss–Newton steps (Levenberg 1944, Marquardt 1963) with central
// differences; covariance as in linear, from the slopes at the end.
func curve(f func(b []float64) []float64, y, start []float64) solution {
	b := append([]float64(nil), start...)
	rss := squares(f(b), y)
	damp := 1e-3
	for range 300 {
		step, ok := dampedStep(f, b, y, damp)
		if !ok {
			return solution{}
		}
		next := make([]float64, len(b))
		moved := 0.0
		for j := range b {
			next[j] = b[j] + step[j]
			moved = math.Max(moved, math.Abs(step[j])/(math.Abs(b[j])+1e-300))
		}
		if r := squares(f(next), y); r <= rss {
			b, rss, damp = next, r, damp/5
			if moved < 1e-12 {
				break
			}
		} else if damp *= 4; damp > 1e12 {
			break
		}
	}
	s := linear(slopes(f, b), residuals(f(b), y))
	if !s.ok || math.IsNaN(rss) || math.IsInf(rss, 0) {
		return solution{}
	}
	s.beta, s.rss = b, rss
	return s
}

// dampedStep solves the linear problem of the slopes with √damp·|column| under each column.
func dampedStep(f func([]float64) []float64, b, y []float64, damp float64) ([]float64, bool) {
	rows, r := slopes(f, b), residuals(f(b), y)
	for j := range b {
		var size float64
		for _, row := range rows[:len(y)] {
			size = math.Hypot(size, row[j])
		}
		extra := make([]float64, len(b))
		extra[j] = math.Sqrt(damp) * size
		rows, r = append(rows, extra), append(r, 0)
	}
	s := linear(rows, r)
	return s.beta, s.ok
}

func slopes(f func([]float64) []float64, b []float64) [][]float64 {
	var rows [][]float64
	for j := range b {
		h := 1e-5 * math.Max(math.Abs(b[j]), 1e-12)
		up, down := append([]float64(nil), b...), append([]float64(nil), b...)
		up[j] += h
		down[j] -= h
		hi, lo := f(up), f(down)
		if rows == nil {
			rows = make([][]float64, len(hi))
			for i := range rows {
				rows[i] = make([]float64, len(b))
			}
		}
		for i := range hi {
			rows[i][j] = (hi[i] - lo[i]) / (2 * h)
		}
	}
	return rows
}

func residuals(fit, y []float64) []float64 {
	r := make([]float64, len(y))
	for i := range y {
		r[i] = y[i] - fit[i]
	}
	return r
}

func squares(fit, y []float64) float64 {
	sum := 0.0
	for _, r := range residuals(fit, y) {
		sum += r * r
	}
	if math.IsNaN(sum) {
		return math.Inf(1)
	}
	return sum
}
