package sun

import (
	"duskweight/internal/model/unit"
	"duskweight/internal/say"
)

// Sky is one hourly year over a place: what falls on the flat, and the air. Each value is the mean of its hour, hour 0
// from midnight to one o'clock of 1 January, standard clock time. The columns may be shared: they must not be written to.
type Sky struct {
	GHI  []float64 // [8760] global on the flat, W/m²
	DHI  []float64 // [8760] diffuse on the flat, W/m²
	TAir []float64 // [8760] °C

	Geometry *Geometry
	Made     string         // how the year was made, in plain words
	Rough    bool           // made from a described sky: marked wherever it shows
	Remarks  []say.Sentence // what was changed in the means
}

// Year returns the irradiation of the year on the flat, J/m².
func (s *Sky) Year() float64 {
	return total(s.GHI) * 3600
}

// Months returns the irradiation of each month on the flat.
func (s *Sky) Months() (out [12]unit.Irradiation) {
	hour := 0
	for i, days := range monthLength {
		out[i] = unit.Irradiation(total(s.GHI[hour:hour+24*days]) * 3600)
		hour += 24 * days
	}
	return out
}

// MonthOf returns the month of a day of the year, 1 to 12; day 0 is 1 January.
func MonthOf(day int) int {
	for i, days := range monthLength {
		if day < days {
			return i + 1
		}
		day -= days
	}
	return 12
}

// MonthDays returns the days of a month of the typical year, 1 to 12.
func MonthDays(month int) int { return monthLength[month-1] }

// Problem is one thing that is wrong with a place, and where; the path is inside the place.
type Problem struct {
	Path string
	Say  say.Sentence
}

// Problems is all that is wrong.
type Problems []Problem
