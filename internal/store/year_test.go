package store

import (
	"math"

	"duskweight/internal/model/sun"
)

// year is a weather year of round shapes.
func year() *sun.Series {
	s := sun.Series{Name: "made", Source: "made by a test", Latitude: 0.8, Hours: sun.YearHours}
	for h := range sun.YearHours {
		up := max(0, math.Sin(2*math.Pi*(float64(h%24)-6)/24))
		s.GHI = append(s.GHI, 900*up)
		s.DHI = append(s.DHI, 300*up)
		s.TAir = append(s.TAir, 10+8*math.Sin(2*math.Pi*float64(h)/8760)+0.1)
	}
	return &s
}
