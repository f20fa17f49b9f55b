package weather

import (
	"math"
	"slices"

	"duskweight/internal/model/sun"
	"duskweight/internal/model/unit"
	"duskweight/internal/say"
)

// judge looks at the year as a whole: sums, light above the sky's, closure of the three kinds of light, and whether the
// sun of the file runs early or late.
func judge(h *[columns][]float64, g *sun.Geometry, rep *Report) {
	var sumG, sumD, sumT float64
	for i := range h[ghi] {
		sumG += h[ghi][i]
		sumD += h[dhi][i]
		sumT += h[temp][i]
		if h[ghi][i] > 1.1*g.Extra[i]+10 { // 10 W/m² of twilight and rounding
			rep.AboveSky++
		}
	}
	rep.GHI, rep.DHI = unit.Irradiation(sumG*3600), unit.Irradiation(sumD*3600)
	rep.TMean = unit.Celsius(sumT / sun.YearHours)
	if rep.AboveSky > 0 {
		rep.note(rep.AboveSky > 50, "%s hours have more than 1.1 times the light outside the air. They were kept as they are.", rep.AboveSky)
	}
	if rep.LeapDay {
		rep.note(false, "29 February was left out: a typical year has 365 days.")
	}
	if t := float64(rep.TMean); t > 33 || t < -40 { // the yearly means of places lie between: WMO normals; our own round numbers
		rep.note(true, "The air has %s in the mean of the year, which no place has. Is the unit right?", say.Temperature(rep.TMean))
	}
	closure(h, g, rep)
	slip(h, g, rep)
	halves(h, g, rep)
}

// closure compares global light with direct·cos zenith + diffuse in hours with direct light over 200 W/m².
func closure(h *[columns][]float64, g *sun.Geometry, rep *Report) {
	if h[dni] == nil || rep.Global != "file" || rep.Diffuse != "file" {
		return
	}
	n, sum := 0, 0.0
	for i := range h[ghi] {
		if h[dni][i] > 200 && g.Up[i] > 0 {
			e := h[ghi][i] - h[dni][i]*g.Up[i]*g.Lit[i] - h[dhi][i]
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
		rep.note(true, "Global light and the sum of direct and diffuse light differ by %s (root mean square). The columns may be half an hour apart. Global and diffuse light are used.", say.Light(unit.Irradiance(rms)))
	}
}

// late is by how much the sun of a file may run before or after that of the sky without being told: mornings that are
// clearer than afternoons shift the middle of the light by a few minutes.
const late = 15.0 // minutes

// slip compares, on the clearest fifth of each month's days, the middle of the light of the file with the middle of the
// light outside the air. A slip of half an hour hides on a plane to the south and shows on one to the east or west.
func slip(h *[columns][]float64, g *sun.Geometry, rep *Report) {
	var off []float64
	for m := 1; m <= 12; m++ {
		var days []clearness
		for d := before(m, false); d < before(m, false)+monthLength(m); d++ {
			if c, ok := clearnessOf(h[ghi], g, d); ok {
				days = append(days, c)
			}
		}
		slices.SortFunc(days, func(a, b clearness) int { return -compare(a.k, b.k) })
		for _, c := range days[:(len(days)+4)/5] {
			off = append(off, c.late)
		}
	}
	if len(off) < 12 {
		return
	}
	slices.Sort(off)
	mid := off[len(off)/2] * 60
	rep.Slip = unit.Of(unit.Duration(mid * 60))
	if math.Abs(mid) < late {
		return
	}
	word, side := "later", "west"
	if mid < 0 {
		word, side = "earlier", "east"
	}
	rep.note(true, "On clear days the sun of this file runs about %s %s than the sun of the sky. Are the stamps at the start, the middle or the end of the hour, and is the time zone right? As it is, a panel that faces %s is judged too well.", say.Time(unit.Duration(math.Abs(mid)*60)).To(2), word, side)
}

// halves compares the seasons of the light with those of the latitude: how much the clearness of the months scatters, with
// the sun of this half of the Earth and with that of the other, half a year on. Within 20° of the equator rain and not the
// sun makes the seasons, and nothing is said; of the starter climates beyond 20° the other half fits worse by 19 times or
// more.
func halves(h *[columns][]float64, g *sun.Geometry, rep *Report) {
	if math.Abs(float64(g.Latitude)) < float64(20*unit.Degree) {
		return
	}
	var light, extra [12]float64
	for m := range 12 {
		from := before(m+1, false) * 24
		for i := from; i < from+monthLength(m+1)*24; i++ {
			light[m] += h[ghi][i]
			extra[m] += g.Extra[i]
		}
		light[m] /= float64(monthLength(m + 1))
		extra[m] /= float64(monthLength(m + 1))
	}
	var here, there float64 // sums of squares of light less clearness times light outside the air
	k := sumOf(light) / sumOf(extra)
	for m := range 12 {
		here += math.Pow(light[m]-k*extra[m], 2)
		there += math.Pow(light[m]-k*extra[(m+6)%12], 2)
	}
	if there < here/2 {
		rep.note(true, "The bright months of this file are the dark months of its latitude. Is the sign of the latitude wrong, or does the year begin in another month?")
	}
}

func sumOf(v [12]float64) (sum float64) {
	for _, x := range v {
		sum += x
	}
	return sum
}

func monthLength(m int) int { return before(m+1, false) - before(m, false) }

func compare(a, b float64) int {
	switch {
	case a < b:
		return -1
	case a > b:
		return 1
	}
	return 0
}

// clearness of a day and by how many hours its light is late.
type clearness struct{ k, late float64 }

// clearnessOf looks at the 24 hours round solar noon of a day with at least 1 kWh/m² outside the air.
func clearnessOf(v []float64, g *sun.Geometry, day int) (clearness, bool) {
	noon := float64(day*24) + g.Noon[day]
	first := int(math.Floor(noon - 12))
	var sum, sumX, extra, extraX float64
	for i := first; i < first+24; i++ {
		j := ((i % sun.YearHours) + sun.YearHours) % sun.YearHours
		x := float64(i) + 0.5 - noon
		sum += v[j]
		sumX += v[j] * x
		extra += g.Extra[j]
		extraX += g.Extra[j] * x
	}
	if extra < 1000 || sum < 0.05*extra {
		return clearness{}, false
	}
	return clearness{sum / extra, sumX/sum - extraX/extra}, true
}

// sunOf is a sum over the hours of a year, W/m², as sunlight.
func sunOf(hours float64) say.Amount { return say.Of(unit.YearIrradiations, hours*3600).To(4) }

// refuseSky refuses a year without sun, and one that is so bright or dark that its unit must be wrong.
func refuseSky(h [columns][]float64, g *sun.Geometry, rep *Report) error {
	var sum, extra, down float64
	for i, v := range h[ghi] {
		sum += v
		extra += g.Extra[i]
		if g.Extra[i] == 0 {
			down += v
		}
	}
	k := sum / extra
	switch {
	case sum == 0:
		return refuse("There is no sun in the whole year: the column of global radiation holds only zeros.")
	case k > 0.95:
		return refuse("The year has %s of sun, and outside the air there are only %s. The unit or the column is wrong.", sunOf(sum), sunOf(extra))
	case k < 0.1:
		return refuse("The year has only %s of sun, where a dark climate has about %s. The unit or the column is wrong.", sunOf(sum), sunOf(0.3*extra).To(2))
	case down > 0.2*sum:
		return refuse("%s of the light falls while the sun is down. The time zone or the longitude is wrong.", say.Share(unit.Ratio(down/sum)))
	case k < 0.22 || k > 0.8:
		rep.note(true, "The year has %s of sun, %s of what is outside the air. That is unusual. Is the unit right?", sunOf(sum), say.Share(unit.Ratio(k)))
	}
	if down > 0.02*sum {
		rep.note(true, "%s of the light falls while the sun is down. Is the time zone right?", say.Share(unit.Ratio(down/sum)))
	}
	return nil
}
