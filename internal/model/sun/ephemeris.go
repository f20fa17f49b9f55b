package sun

import "math"

// TypicalYear is the one calendar year that a typical year, which has none, takes its sun from: not a leap year, and
// the one that the reference sums of the check tables use. 1 January 2001 was a Monday.
const TypicalYear = 2001

// SolarConstant is the irradiance outside the atmosphere at the mean distance of the sun, 1367 W/m²
// (source.DuffieBeckman.At("section 1.2")).
const SolarConstant = 1367

// JulianDay is days since noon of 1 January 4713 BC, in universal time.
type JulianDay float64

// Julian returns the Julian day of a date of the Gregorian calendar and hours of universal time (which may be negative
// or over 24): source.Meeus.At("eq. 7.1").
func Julian(year, month, day int, hours float64) JulianDay {
	y, m := year, month
	if m <= 2 {
		y, m = y-1, m+12
	}
	century := math.Floor(float64(y) / 100)
	leap := 2 - century + math.Floor(century/4)
	whole := math.Floor(365.25*float64(y+4716)) + math.Floor(30.6001*float64(m+1)) + float64(day) + leap - 1524.5
	return JulianDay(whole + hours/24)
}

// ephemeris is the sun seen from the centre of the earth.
type ephemeris struct {
	declination float64 // rad
	eot         float64 // equation of time, rad of hour angle
	nearness    float64 // (mean distance / distance)²
}

// ephemerisAt follows source.Meeus.At("ch. 25, low accuracy"; nutation and obliquity ch. 22, sidereal time eq. 12.4).
func ephemerisAt(jd JulianDay) ephemeris {
	const deg = math.Pi / 180
	d := float64(jd) - 2451545
	t := (d + deltaT(d)/86400) / 36525                    // centuries of dynamical time from 2000
	l0 := 280.46646 + t*(36000.76983+t*0.0003032)         // mean longitude, eq. 25.2
	m := (357.52911 + t*(35999.05029-t*0.0001537)) * deg  // mean anomaly, eq. 25.3
	e := 0.016708634 - t*(0.000042037+t*0.0000001267)     // eccentricity, eq. 25.4
	c := (1.914602-t*(0.004817+t*0.000014))*math.Sin(m) + // equation of the centre
		(0.019993-t*0.000101)*math.Sin(2*m) + 0.000289*math.Sin(3*m)
	// pulls of Venus, Jupiter and the moon; v is centuries from 1900: source.MeeusFormulae.At("ch. 18"), from memory; with
	// them the check table's worst falls from 0.008° to 0.003°
	v := t + 1
	c += 0.00134*math.Cos((153.23+22518.7541*v)*deg) + 0.00154*math.Cos((216.57+45037.5082*v)*deg) +
		0.00200*math.Cos((312.69+32964.3577*v)*deg) + 0.00179*math.Sin((350.74+445267.1142*v-0.00144*v*v)*deg) +
		0.00178*math.Sin((231.19+20.20*v)*deg)
	omega := (125.04 - 1934.136*t) * deg
	nutation := -0.00478 * math.Sin(omega)                                            // in longitude
	lambda := (l0 + c - 0.00569 + nutation) * deg                                     // apparent longitude
	epsilon := (23.0 + 26.0/60 + 21.448/3600 - t*(46.8150/3600+t*0.00059/3600)) * deg // mean obliquity, eq. 22.2
	epsilon += 0.00256 * deg * math.Cos(omega)                                        // eq. 25.8
	sinLambda, cosLambda := math.Sincos(lambda)
	sinE, cosE := math.Sincos(epsilon)
	alpha := math.Atan2(cosE*sinLambda, cosLambda) // right ascension, eq. 25.6
	delta := math.Asin(sinE * sinLambda)           // declination, eq. 25.7
	// sidereal time at Greenwich less universal time, plus 180°: what the mean sun would have as right ascension
	tu := d / 36525
	meanSun := 280.46061837 + 0.98564736629*d + tu*tu*0.000387933 + nutation*cosE // eq. 12.4, apparent
	r := 1.000001018 * (1 - e*e) / (1 + e*math.Cos(m+c*deg))                      // eq. 25.5
	return ephemeris{
		declination: delta,
		eot:         math.Remainder(meanSun*deg-alpha, 2*math.Pi),
		nearness:    1 / (r * r),
	}
}

// deltaT returns dynamical less universal time in seconds, d days from 2000: source.EspenakMeeus.At("2005–2050"). It
// moves the sun by 0.04″ a second; errors of half a minute do not show.
func deltaT(d float64) float64 {
	y := d / 365.25
	return 62.92 + y*(0.32217+y*0.005589)
}
