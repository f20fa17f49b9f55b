package sun

import "duskweight/internal/say"

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
	sum := 0.0
	for _, g := range s.GHI {
		sum += g
	}
	return sum * 3600
}

// Problem is one thing that is wrong with a place, and where; the path is inside the place.
type Problem struct {
	Path string
	Say  say.Sentence
}

// Problems is all that is wrong.
type Problems []Problem
