package sun

import (
	"math"

	"duskweight/internal/model/unit"
)

// Hours and days of the typical year.
const (
	Hours = YearHours
	Days  = 365
)

// monthLength is days of each month of the typical year.
var monthLength = [12]int{31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31}

// Geometry is the way of the sun through the typical year at one place: everything that does not depend on the
// weather. Make it once and use it for any number of skies and planes; nothing in it changes.
//
// Hour h runs from h to h+1 o'clock of standard clock time, hour 0 from midnight of 1 January. An hour in which the sun
// rises or sets counts with the middle of its sunlit part. The slices must not be written to.
type Geometry struct {
	Latitude  unit.Angle
	Longitude unit.Angle
	UTCOffset unit.Duration

	East, North, Up []float64 // [8760] direction to the sun in the middle of the sunlit part; Up = cos zenith, 0 while down
	HourAngle       []float64 // [8760] rad from solar noon, −π … π, there
	Lit             []float64 // [8760] sunlit share of the hour, 0 … 1
	Extra           []float64 // [8760] W/m² on the flat outside the atmosphere, mean of the hour
	Down            []bool    // [8760] the sun's centre stands below −0.833° in the middle of the hour: night

	Noon   [Days]float64 // solar noon, hours of clock time, 0 ≤ noon < 24
	Sunset [Days]float64 // hour angle of sunset, rad, 0 … π
	Day    [Days]float64 // J/m² on the flat outside the atmosphere, sum of the day's hours
}

// horizon is the altitude of the sun's centre when its upper edge rises or sets: 16′ radius and 34′ refraction.
const horizon = -50.0 / 60 * math.Pi / 180 // source.Meeus.At("ch. 15")

// NewGeometry follows the sun through the typical year. Clock time is ahead of universal time by utcOffset.
func NewGeometry(latitude, longitude unit.Angle, utcOffset unit.Duration) *Geometry {
	g := &Geometry{Latitude: latitude, Longitude: longitude, UTCOffset: utcOffset}
	columns := make([]float64, 6*Hours)
	for i, c := range []*[]float64{&g.East, &g.North, &g.Up, &g.HourAngle, &g.Lit, &g.Extra} {
		*c = columns[i*Hours : (i+1)*Hours : (i+1)*Hours]
	}
	g.Down = make([]bool, Hours)
	p := pole{}
	p.sinL, p.cosL = math.Sincos(float64(latitude))
	offset := float64(utcOffset) / 3600
	shift := math.Remainder(float64(longitude)-offset*math.Pi/12, 2*math.Pi) // from clock time to mean solar time, rad
	next := ephemerisAt(Julian(TypicalYear, 1, 1, -offset))
	for d := range Days {
		// within a day declination and equation of time move in a straight line to 0.001°
		this := next
		next = ephemerisAt(Julian(TypicalYear, 1, d+2, -offset))
		for k := range 24 {
			e := between(this, next, (float64(k)+0.5)/24)
			g.hour(d*24+k, p, e, turn((float64(k)+0.5-12)*math.Pi/12+shift+e.eot))
			g.Day[d] += g.Extra[d*24+k] * 3600
		}
		noon := between(this, next, 0.5)
		g.Noon[d] = math.Mod(12-(shift+noon.eot)*12/math.Pi+72, 24)
		g.Sunset[d] = float64(SunsetHourAngle(latitude, unit.Angle(noon.declination)))
	}
	return g
}

// turn brings an angle into −π … π.
func turn(w float64) float64 {
	for w > math.Pi {
		w -= 2 * math.Pi
	}
	for w < -math.Pi {
		w += 2 * math.Pi
	}
	return w
}

// pole holds sine and cosine of the latitude.
type pole struct{ sinL, cosL float64 }

// toSun returns the direction to the sun's centre, from sine and cosine of its declination and of its hour angle:
// source.DuffieBeckman.At("eq. 1.6.5") and its two companions.
func (p pole) toSun(sinD, cosD, sinW, cosW float64) (east, north, up float64) {
	return -cosD * sinW, p.cosL*sinD - p.sinL*cosD*cosW, p.sinL*sinD + p.cosL*cosD*cosW
}

func between(a, b ephemeris, share float64) ephemeris {
	return ephemeris{
		declination: a.declination + share*(b.declination-a.declination),
		eot:         a.eot + share*(b.eot-a.eot),
		nearness:    a.nearness + share*(b.nearness-a.nearness),
	}
}

// halfHour is half an hour as an angle of the sun's way.
const halfHour = math.Pi / 24

// hour fills hour h, whose middle is at hour angle w.
func (g *Geometry) hour(h int, p pole, e ephemeris, w float64) {
	sinD, cosD := math.Sincos(e.declination)
	a, b := p.sinL*sinD, p.cosL*cosD // altitude: sin α = a + b cos ω, source.DuffieBeckman.At("eq. 1.6.5")
	sinW, cosW := math.Sincos(w)
	g.Down[h] = a+b*cosW < sinHorizon
	lit := 1.0
	// b·halfHour is more than sin α can change in half an hour
	switch up := a + b*cosW; {
	case up <= -b*halfHour:
		return
	case up < b*halfHour:
		w, lit = sunlit(a, b, w)
		if lit == 0 {
			return
		}
		sinW, cosW = math.Sincos(w)
	}
	east, north, up := p.toSun(sinD, cosD, sinW, cosW)
	if up <= 0 {
		return
	}
	g.East[h], g.North[h], g.Up[h] = east, north, up
	g.HourAngle[h] = w
	g.Lit[h] = lit
	// mean of a + b cos ω over the sunlit part: sin(x)/x of its half width
	x := halfHour * lit
	sinc := 1 - x*x/6*(1-x*x/20)
	g.Extra[h] = SolarConstant * e.nearness * (a + b*cosW*sinc) * lit
}

var sinHorizon = math.Sin(horizon)

// sunlit returns the middle of the sunlit part of the hour round w and its share of the hour. Where an hour holds both
// a sunset and a sunrise (about midnight at the edge of polar day) the middle is that of the longer part.
func sunlit(a, b, w float64) (middle, share float64) {
	switch {
	case b <= math.Abs(a):
		if a > 0 {
			return w, 1
		}
		return w, 0
	}
	ws := math.Acos(-a / b)
	best := 0.0
	for _, turn := range [3]float64{-2 * math.Pi, 0, 2 * math.Pi} {
		from, to := max(w-halfHour, turn-ws), min(w+halfHour, turn+ws)
		if to <= from {
			continue
		}
		share += (to - from) / (2 * halfHour)
		if to-from > best {
			best = to - from
			middle = (from+to)/2 - turn
		}
	}
	return middle, min(share, 1)
}

// SunDown returns how many days of the year the sun does not rise on, and the first and last of the longest run of them, 0 for
// 1 January; the run may go over the turn of the year. No day is 0, 0, 0.
func (g *Geometry) SunDown() (days, from, to int) {
	longest, run := 0, 0
	for d := range 2 * Days { // twice round, for a run over the turn of the year
		if g.Day[d%Days] > 0 {
			run = 0
			continue
		}
		if d < Days {
			days++
		}
		if run++; run > longest && run <= Days {
			longest, from, to = run, (d-run+1)%Days, d%Days
		}
	}
	return days, from, to
}
