package path

import (
	"math"

	"duskweight/internal/model/lift"
)

// timber is one strength class; stresses in Pa, density in kg/m³.
type timber struct {
	class             lift.TimberClass
	fm, fc0, fc90, fv float64 // bending, compression along and across the grain, shear: characteristic
	e, e05            float64 // mean and 5-percentile modulus
	density           float64 // mean
	glued             bool
}

// timberClasses are EN 338:2016, tables 1 and 3, and EN 14080:2013, table 5, for the classes that can be chosen.
func timberClasses() []timber {
	const m, g = 1e6, 1e9
	return []timber{
		{lift.TimberC14, 14 * m, 16 * m, 2.0 * m, 3.0 * m, 7.0 * g, 4.7 * g, 350, false},
		{lift.TimberC16, 16 * m, 17 * m, 2.2 * m, 3.2 * m, 8.0 * g, 5.4 * g, 370, false},
		{lift.TimberC18, 18 * m, 18 * m, 2.2 * m, 3.4 * m, 9.0 * g, 6.0 * g, 380, false},
		{lift.TimberC20, 20 * m, 19 * m, 2.3 * m, 3.6 * m, 9.5 * g, 6.4 * g, 400, false},
		{lift.TimberC22, 22 * m, 20 * m, 2.4 * m, 3.8 * m, 10.0 * g, 6.7 * g, 410, false},
		{lift.TimberC24, 24 * m, 21 * m, 2.5 * m, 4.0 * m, 11.0 * g, 7.4 * g, 420, false},
		{lift.TimberC27, 27 * m, 22 * m, 2.5 * m, 4.0 * m, 11.5 * g, 7.7 * g, 430, false},
		{lift.TimberC30, 30 * m, 24 * m, 2.7 * m, 4.0 * m, 12.0 * g, 8.0 * g, 460, false},
		{lift.TimberD24, 24 * m, 21 * m, 4.9 * m, 3.7 * m, 10.0 * g, 8.4 * g, 580, false},
		{lift.TimberD30, 30 * m, 24 * m, 5.3 * m, 3.9 * m, 11.0 * g, 9.2 * g, 640, false},
		{lift.TimberD40, 40 * m, 27 * m, 5.5 * m, 4.2 * m, 13.0 * g, 10.9 * g, 660, false},
		{lift.TimberGL24h, 24 * m, 24 * m, 2.5 * m, 3.5 * m, 11.5 * g, 9.6 * g, 420, true},
	}
}

func timberOf(class lift.TimberClass) (timber, bool) {
	for _, t := range timberClasses() {
		if t.class == class {
			return t, true
		}
	}
	return timber{}, false
}

const (
	gammaM = 1.3  // partial factor of solid timber, EN 1995-1-1 table 2.3; kept for glued timber (1.25), the cautious side
	kcr    = 0.67 // share of the width that cracks leave for shear, EN 1995-1-1 6.1.7
	gammaG = 1.35 // on actions, EN 1990 table A1.2(B)
)

// kmod is the modification factor of EN 1995-1-1 table 3.1: permanent .6 (a mass held up most days), short .9; in
// service class 3 (outdoors) .5 and .7.
func kmod(outdoors, short bool) float64 {
	switch {
	case outdoors && short:
		return 0.7
	case outdoors:
		return 0.5
	case short:
		return 0.9
	}
	return 0.6
}

// kdef is the creep factor of EN 1995-1-1 table 3.2: .8 in an unheated roof (class 2), 2.0 outdoors.
func kdef(outdoors bool) float64 {
	if outdoors {
		return 2
	}
	return 0.8
}

// kh is the size factor in bending of EN 1995-1-1 3.2 and 3.3 for a depth h in metres.
func (t timber) kh(h float64) float64 {
	if h <= 0 {
		return 1
	}
	if t.glued {
		return math.Max(1, math.Min(math.Pow(0.6/h, 0.1), 1.1))
	}
	return math.Max(1, math.Min(math.Pow(0.15/h, 0.2), 1.3))
}

// kc is the share of compressive strength that buckling leaves, EN 1995-1-1 6.3.2, for a slenderness λ.
func (t timber) kc(lambda float64) float64 {
	beta := 0.2
	if t.glued {
		beta = 0.1
	}
	rel := lambda / math.Pi * math.Sqrt(t.fc0/t.e05)
	if rel <= 0.3 {
		return 1
	}
	k := 0.5 * (1 + beta*(rel-0.3) + rel*rel)
	return 1 / (k + math.Sqrt(k*k-rel*rel))
}
