package weather

import (
	"math"

	"duskweight/internal/model/sun"
	"duskweight/internal/model/unit"
	"duskweight/internal/say"
)

// judge looks at the year as a whole: sums, light above the sky's, and closure of the three kinds of light.
func judge(h *[columns][]float64, g *sun.Geometry, rep *Report) {
	closure(h, g, rep)
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
	halves(h, g, rep)
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
		rep.ask("half", "The bright months of this file are the dark months of its latitude. Is the sign of the latitude wrong, or does the year begin in another month?")
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

// sunOf is a sum over the hours of a year, W/m², as sunlight.
func sunOf(hours float64) say.Amount { return say.Of(unit.YearIrradiations, hours*3600).To(4) }

// byNight refuses a year whose light falls by night, and offers the clock under which it does not, where there is one.
func (r *Report) byNight(share say.Amount) error {
	if len(r.Fits) == 0 || math.Abs(float64(r.Fits[0].Late)) > 20*60 {
		return refuse("%s of the light falls while the sun is down. The time zone or the longitude is wrong.", share)
	}
	f := r.Fits[0]
	out := &Refused{Best: Mapping{Stamp: f.Stamp, StampZone: f.Zone}}
	out.add(Fault{Reason: say.That("%s of the light falls while the sun is down. The time zone or the longitude is wrong. The light fits the sun where %s.", share, f.Way(r.Mapping.StampZone, r.Step))})
	return out
}

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
		return rep.byNight(say.Share(unit.Ratio(down / sum)))
	case k < 0.22 || k > 0.8:
		rep.ask("light", "The year has %s of sun, %s of what is outside the air. That is unusual. Is the unit right?", sunOf(sum), say.Share(unit.Ratio(k)))
	}
	if down > 0.02*sum {
		rep.ask("clock", "%s of the light falls while the sun is down. Is the time zone right?", say.Share(unit.Ratio(down/sum)))
	}
	return nil
}
