package weather

import (
	"math"
	"slices"
	"strings"

	"duskweight/internal/model/sun"
	"duskweight/internal/model/unit"
	"duskweight/internal/say"
)

// What a column may be instead of what its place or its name says is told by the values and asked, never set right alone.

// clearest is the share of the light outside the air on the second clearest day of the year, of the days with at least 2
// kWh/m² outside; NaN where there are fewer than two. spread is the standard deviation of that share within single months.
func clearest(light []float64, g *sun.Geometry) (share, spread float64) {
	var all []float64
	square, n := 0.0, 0.0
	for m := 1; m <= 12; m++ {
		var month []float64
		for d := before(m, false); d < before(m, false)+monthLength(m); d++ {
			if g.Day[d] > 2*3.6e6 {
				month = append(month, sumOver(light[d*24:d*24+24])*3600/g.Day[d])
			}
		}
		mean := sumOver(month) / max(1, float64(len(month)))
		for _, k := range month {
			square += (k - mean) * (k - mean)
			n++
		}
		all = append(all, month...)
	}
	if len(all) < 2 {
		return math.NaN(), math.NaN()
	}
	slices.Sort(all)
	return all[len(all)-2], math.Sqrt(square / n)
}

func sumOver(v []float64) (sum float64) {
	for _, x := range v {
		sum += x
	}
	return sum
}

// Shares of the light outside the air that the clearest days of a place have: 0.68 to 0.80 in 6 files of typical years and 54
// measured ones, from Colombo to Denver; the borders leave room for haze and heights. Days of one month spread by 0.07 or
// more there; under a sky without clouds by 0.02.
const (
	clearLow, clearHigh = 0.55, 0.88
	evenDays            = 0.04
)

// doubtLight asks where the light is not as that of a sky with clear and cloudy days: about its unit, and about a column that
// is the light of a sky without clouds.
func (s *sheet) doubtLight(h *[columns][]float64, g *sun.Geometry, rep *Report) {
	share, spread := clearest(h[ghi], g)
	if share < clearLow || share > clearHigh {
		rep.ask("light", "The clearest days of this file have %s of the light outside the air; clear days have about 65 to 80%s%%. Is the unit right?%s", say.Share(unit.Ratio(share)), unit.Space, fitting(s.unitsThatFit(share, rep)))
	}
	switch i := s.col[ghi]; {
	case i >= 0 && i < len(s.heads) && clearSky(s.heads[i]):
		rep.ask("clear", "The column “%s” has the name of a sky without clouds. Is it the light of this place?", short(s.heads[i]))
	case spread < evenDays && share > 0.5:
		rep.ask("clear", "In each month one day of this file is as clear as the next. Is its global light that of a sky without clouds? It would bring too much.")
	}
}

// unitsThatFit are the other units in which the clearest days would be as clear days are. share is that of the unit in use.
func (s *sheet) unitsThatFit(share float64, rep *Report) (fit []string) {
	now := radiationUnits[s.radiation]
	if energyUnit(s.radiation) {
		now *= float64(unit.Hour) / float64(rep.Step)
	}
	seen := map[float64]bool{now: true}
	for _, u := range unitOrder {
		factor := radiationUnits[u]
		if energyUnit(u) {
			factor *= float64(unit.Hour) / float64(rep.Step)
		}
		if k := share * factor / now; !seen[factor] && k > 0.6 && k < 0.85 {
			fit = append(fit, u)
		}
		seen[factor] = true
	}
	return fit
}

// fitting says in which units the light would be as under clear skies; nothing where there is none.
func fitting(units []string) string {
	if len(units) == 0 {
		return ""
	}
	var shown []string
	for _, u := range units {
		shown = append(shown, shownUnit(u))
	}
	return " In " + strings.Join(shown, " or in ") + " it would be as under clear skies."
}

// shownUnit is a unit of light as it is printed.
func shownUnit(u string) string {
	text := strings.NewReplacer("m2", "m²", "ft2", "ft²").Replace(u)
	if energyUnit(u) {
		text += " of each row"
	}
	return text
}

// warmest and coldest are the means of the year, °C, between which the air of places lies at a latitude in degrees: the mean
// of 34 °C of the hottest place on Earth (Dallol, WMO) towards the equator, falling by 0.45 K a degree from 20° on; below,
// 5 °C of high mountains towards the equator, falling by 0.4 K a degree to −20 °C at 82°. Our own judgement on the starter climates, which keep 5 K or more away from both.
func warmest(latitude float64) float64 { return 34 - 0.45*max(0, math.Abs(latitude)-20) }
func coldest(latitude float64) float64 { return 5 - 0.4*max(0, math.Abs(latitude)-20) }

// leastRise is by how many kelvin the air of the early afternoon is warmer than that before dawn, mean of the year: 2.9 or more
// in the files and years above, the dew point of the same files at most 1.3. Our own judgement.
const leastRise = 2.0

// doubtAir asks where the air is not as that of its place: about its unit, and about a column that is the dew point.
func (s *sheet) doubtAir(air []float64, g *sun.Geometry, rep *Report) {
	mean, lat := sumOver(air)/sun.YearHours, g.Latitude.Degrees()
	switch asF, asC := (mean-32)*5/9, mean*9/5+32; {
	case mean > warmest(lat):
		rep.ask("air", "The air has %s in the mean of the year, more than places at this latitude have. Is the unit right? In °F it would be %s.", say.Temperature(unit.Celsius(mean)), say.Temperature(unit.Celsius(asF)))
	case mean < coldest(lat) && s.thermo == "F":
		rep.ask("air", "The air has %s in the mean of the year, less than places at this latitude have. Is the unit right? In °C it would be %s.", say.Temperature(unit.Celsius(mean)), say.Temperature(unit.Celsius(asC)))
	case mean < coldest(lat)-15:
		rep.ask("air", "The air has %s in the mean of the year, which no place at this latitude has. Is the column, its unit and the latitude right?", say.Temperature(unit.Celsius(mean)))
	}
	i := s.col[temp]
	switch named := i >= 0 && i < len(s.heads) && has(letterOnly(s.heads[i]), otherAir); {
	case s.damp > s.dry:
		rep.ask("dew", "In most rows the dew point is above the temperature of the air, which cannot be. Are the two columns changed over?")
	case named:
		rep.ask("dew", "The column “%s” does not have the name of the air's temperature. Is it the air?", short(s.heads[i]))
	case rise(air, g) < leastRise && math.Abs(lat) < 60:
		rep.ask("dew", "The afternoons of this file are hardly warmer than its nights, by %s in the mean. Is the column the dew point, and not the air?", say.Of(unit.TempSteps, rise(air, g)).To(2))
	}
}

// rise is by how much four hours of the early afternoon are warmer than four before dawn, mean of the year.
func rise(air []float64, g *sun.Geometry) (k float64) {
	for d := range 365 {
		noon := d*24 + int(g.Noon[d])
		for i := range 4 {
			k += (air[around(noon+1+i)] - air[around(noon-9+i)]) / 4 / 365
		}
	}
	return k
}
