package sun

import "math"

// Cover glass of a panel: refractive index, what it swallows and how thick it is, source.DeSoto.At("section 2.2").
const (
	glassIndex     = 1.526
	glassSwallows  = 4.0   // 1/m
	glassThickness = 0.002 // m
)

// throughGlass returns the share of light at angle θ from straight on that gets through the glass, over the share that
// gets through straight on, for cos θ: source.DeSoto.At("eq. 14–15"), source.DuffieBeckman.At("eq. 5.1.1, 5.1.2").
func throughGlass(cos float64) float64 {
	if cos <= 0 {
		return 0
	}
	cos = min(cos, 1)
	cosR := math.Sqrt(1 - (1-cos*cos)/(glassIndex*glassIndex)) // Snell
	along := (cosR - glassIndex*cos) / (cosR + glassIndex*cos)
	across := (cos - glassIndex*cosR) / (cos + glassIndex*cosR)
	reflected := (along*along + across*across) / 2
	return math.Exp(-glassSwallows*glassThickness/cosR) * (1 - reflected) / straightOn
}

var straightOn = math.Exp(-glassSwallows*glassThickness) * (1 - math.Pow((glassIndex-1)/(glassIndex+1), 2))

// throughFromSky and throughFromGround return that share for diffuse light on a plane of tilt β: light comes from many
// directions and counts as coming from one, source.DuffieBeckman.At("eq. 5.4.2, 5.4.1").
func throughFromSky(tilt float64) float64 {
	b := tilt * 180 / math.Pi
	return throughGlass(math.Cos((59.7 + b*(-0.1388+b*0.001497)) * math.Pi / 180))
}

func throughFromGround(tilt float64) float64 {
	b := tilt * 180 / math.Pi
	return throughGlass(math.Cos((90 + b*(-0.5788+b*0.002693)) * math.Pi / 180))
}
