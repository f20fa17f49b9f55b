package weather

import (
	"math"

	"duskweight/internal/model/sun"
	"duskweight/internal/model/unit"
	"duskweight/internal/say"
)

// closure compares global light with direct·cos zenith + diffuse in hours with direct light over 200 W/m². Where they differ
// by more than 20 W/m² (root mean square) the file has two kinds of direct light on the flat, its direct column and global less
// diffuse; the one with the darker winter is used, since winter sizes the store, and the month is named in which they differ
// most.
func closure(h *[columns][]float64, g *sun.Geometry, rep *Report) {
	if h[dni] == nil || rep.Global != "file" || rep.Diffuse != "file" {
		return
	}
	n, sum := 0, 0.0
	for i := range h[ghi] {
		if h[dni][i] > 200 && g.Up[i] > 0 {
			e := h[ghi][i] - onFlat(h, g, i) - h[dhi][i]
			sum += e * e
			n++
		}
	}
	if n == 0 {
		return
	}
	rms := math.Sqrt(sum / float64(n))
	rep.Closure = unit.Of(unit.Irradiance(rms))
	if rms > 20 {
		disagree(h, g, rep)
	}
}

// onFlat is the direct light of an hour on the flat by its own column, W/m².
func onFlat(h *[columns][]float64, g *sun.Geometry, i int) float64 {
	return h[dni][i] * g.Up[i] * g.Lit[i]
}

// alike is by which share the direct light of two winters may differ and still be the same light, some minutes apart. Our own
// judgement: a typical year whose columns are half an hour apart has 0.018.
const alike = 0.03

// disagree uses the lower winter of the two kinds of direct light, and says so.
func disagree(h *[columns][]float64, g *sun.Geometry, rep *Report) {
	column, less := directOfMonths(h, g)
	var winters [2]float64
	for _, m := range winter(g) {
		winters[0] += column[m]
		winters[1] += less[m]
	}
	most := 0
	for m := range 12 {
		if math.Abs(column[m]-less[m]) > math.Abs(column[most]-less[most]) {
			most = m
		}
	}
	use := "The lower winter is used, that of global less diffuse light."
	switch {
	case math.Abs(winters[0]-winters[1]) < alike*winters[1]:
		use = "Their winters are alike, so the columns may be some minutes apart. Global and diffuse light are used."
	case winters[0] < winters[1]:
		use, rep.Diffuse = "The lower winter is used, that of the direct column.", "direct"
		for i := range h[dhi] {
			h[dhi][i] = h[ghi][i] - min(h[ghi][i], onFlat(h, g, i))
		}
	}
	day := float64(monthLength(most + 1))
	rep.ask("columns", "Global light and the sum of direct and diffuse light differ by %s (root mean square), most in %s: there the direct column brings %s a day on the flat, and global less diffuse light %s. Are the columns right, and of the same hours? %s",
		say.Light(rep.Closure.Val), monthLong[most], say.Sun(unit.Irradiation(column[most]*3600/day)), say.Sun(unit.Irradiation(less[most]*3600/day)), use)
}

// directOfMonths is the direct light of each month on the flat, Wh/m², by its own column and as global less diffuse light.
func directOfMonths(h *[columns][]float64, g *sun.Geometry) (column, less [12]float64) {
	for m := range 12 {
		for i := before(m+1, false) * 24; i < (before(m+1, false)+monthLength(m+1))*24; i++ {
			column[m] += min(onFlat(h, g, i), h[ghi][i])
			less[m] += h[ghi][i] - h[dhi][i]
		}
	}
	return column, less
}

// winter are the three months round the one with the least light outside the air.
func winter(g *sun.Geometry) [3]int {
	dark, least := 0, math.Inf(1)
	for m := range 12 {
		sum := sumOver(g.Extra[before(m+1, false)*24:before(m+1, false)*24+monthLength(m+1)*24]) / float64(monthLength(m+1))
		if sum < least {
			dark, least = m, sum
		}
	}
	return [3]int{(dark + 11) % 12, dark, (dark + 1) % 12}
}

var monthLong = [12]string{"January", "February", "March", "April", "May", "June", "July", "August", "September", "October", "November", "December"}
