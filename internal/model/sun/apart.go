package sun

import (
	"math"

	"duskweight/internal/model/unit"
)

// earth is the mean radius of the earth, m (IUGG, from memory).
const earth = 6371e3

// Apart is the way over ground between two places: the great circle by the haversine, which keeps its digits for near places.
func Apart(lat1, lon1, lat2, lon2 unit.Angle) unit.Length {
	a, b := float64(lat1), float64(lat2)
	dLat, dLon := math.Sin((b-a)/2), math.Sin(float64(lon2-lon1)/2)
	return unit.Length(2 * earth * math.Asin(math.Min(1, math.Sqrt(dLat*dLat+math.Cos(a)*math.Cos(b)*dLon*dLon))))
}
