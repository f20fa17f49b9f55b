// Package trial turns what was measured at the bench and in the yard into numbers of the plan: least squares with
// standard errors, and a plain refusal where the records do not determine a number.
//
// Left out: errors of the masses and radii themselves; friction that changes with speed; a motor that heats as two
// bodies.
package trial

import "math"

// Value is a number found from records. Its standard error is known where there are more records than numbers.
type Value struct {
	Val, Err float64
	Sure     bool // Err is known
}

// solution of a least-squares problem: values, and their covariance where spare records tell the scatter.
type solution struct {
	beta []float64
	cov  [][]float64 // scaled by the scatter; nil with no record to spare
	rss  float64
	ok   bool // every number is determined
}

func (s solution) value(i int) Value {
	v := Value{Val: s.beta[i]}
	if s.cov != nil {
		v.Err, v.Sure = math.Sqrt(math.Max(0, s.cov[i][i])), true
	}
	return v
}

// conditionLimit is where columns count as alike: a number that only the last digits of the readings would decide is
// not determined.
const conditionLimit = 1e8

// linear solves y ≈ X·β by orthogonal columns, twice over (Björck, Solving linear least squares problems by
// Gram–Schmidt orthogonalization, BIT 7, 1967), and gives s²·(XᵀX)⁻¹ = s²·R⁻¹R⁻ᵀ, s² = RSS/(n − p). Not ok where the
// columns do not tell the numbers apart.
func linear(rows [][]float64, y []float64) solution {
	if len(rows) == 0 || len(rows) < len(rows[0]) {
		return solution{}
	}
	n, p := len(rows), len(rows[0])
	q, r := make([][]float64, p), make([][]float64, p) // q by column
	for j := range p {
		q[j], r[j] = make([]float64, n), make([]float64, p)
		for i := range n {
			q[j][i] = rows[i][j]
		}
		size := length(q[j])
		for range 2 {
			for k := range j {
				d := dot(q[k], q[j])
				r[k][j] += d
				subtract(q[j], d, q[k])
			}
		}
		r[j][j] = length(q[j])
		if !(r[j][j] > size/conditionLimit) {
			return solution{}
		}
		for i := range n {
			q[j][i] /= r[j][j]
		}
	}
	rest := append([]float64(nil), y...)
	z := make([]float64, p)
	for range 2 {
		for j := range p {
			d := dot(q[j], rest)
			z[j] += d
			subtract(rest, d, q[j])
		}
	}
	s := solution{rss: dot(rest, rest), ok: true}
	s.beta = back(r, z)
	if n > p {
		s.cov = covariance(r, s.rss/float64(n-p))
	}
	return s
}

// back solves the upper triangle R·β = z.
func back(r [][]float64, z []float64) []float64 {
	b := make([]float64, len(z))
	for j := len(z) - 1; j >= 0; j-- {
		b[j] = z[j]
		for k := j + 1; k < len(z); k++ {
			b[j] -= r[j][k] * b[k]
		}
		b[j] /= r[j][j]
	}
	return b
}

// covariance is scatter·R⁻¹·R⁻ᵀ.
func covariance(r [][]float64, scatter float64) [][]float64 {
	p := len(r)
	inverse := make([][]float64, p) // by column
	for j := range p {
		unit := make([]float64, p)
		unit[j] = 1
		inverse[j] = back(r, unit)
	}
	c := make([][]float64, p)
	for i := range p {
		c[i] = make([]float64, p)
		for j := range p {
			for k := range p {
				c[i][j] += scatter * inverse[k][i] * inverse[k][j]
			}
		}
	}
	return c
}

func dot(a, b []float64) float64 {
	sum := 0.0
	for i := range a {
		sum += a[i] * b[i]
	}
	return sum
}

func length(a []float64) float64 { return math.Sqrt(dot(a, a)) }

// subtract takes d·b from a.
func subtract(a []float64, d float64, b []float64) {
	for i := range a {
		a[i] -= d * b[i]
	}
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
		size := 0.0
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
