package sun

import (
	"math"

	"duskweight/internal/model/unit"
)

// Snow is what falls on panels, and how they shed it.
type Snow struct {
	Fall    [12]unit.Length         // of fresh snow, by month
	Events  *[12]unit.Count         // falls of a month; nil counts as one in each
	Slant   unit.Known[unit.Length] // from the lower edge of the panels to the upper, along them
	Edge    unit.Known[unit.Length] // their lower edge over the ground
	Cleared bool                    // somebody clears them
}

// Of the loss by snow: source.TownsendPowers. Its depths count in inches.
const (
	snowLoss     = 5.7e4
	snowGround   = 0.51               // how much less is lost where what slides off finds room below
	snowRepose   = 40 * math.Pi / 180 // of the heap that it makes
	snowHumidity = 0.8                // share, where nobody measures it; our own judgement
	snowSwept    = 0.25               // of the loss that is left where somebody clears them; our own judgement
	thisMonth    = 2.0 / 3            // of what lies is this month's, and the rest the last one's
	inch         = 0.0254             // m
	freezing     = 273.15             // K
)

// effective is the depth of snow of a month that counts, m: half its fall, and the more the fewer falls it comes in.
func (s *Snow) effective(month int) float64 {
	events := 1.0
	if s.Events != nil {
		events = float64(s.Events[month])
	}
	if events <= 0 {
		return 0
	}
	return 0.5 * float64(s.Fall[month]) * (1 + 1/events)
}

// loss is the share of a month's power that snow takes on panels of a tilt, rad; t is the mean air, °C, and light what falls on
// them in the month, kWh/m².
func (s *Snow) loss(month int, tilt, t, light float64) float64 {
	depth := thisMonth*s.effective(month) + (1-thisMonth)*s.effective((month+11)%12)
	if depth <= 0 {
		return 0
	}
	if light <= 0 {
		return 1
	}
	cos := math.Cos(tilt)
	ground := 1.0 // where slant or edge are not known, there is no room below
	if s.Slant.Is && s.Edge.Is && float64(s.Edge.Val) > depth {
		slant, edge := float64(s.Slant.Val), float64(s.Edge.Val)
		gamma := slant * depth * cos * 2 * math.Tan(snowRepose) / (edge*edge - depth*depth)
		ground = 1 - snowGround*math.Exp(-gamma)
	}
	t += freezing
	lost := snowLoss * depth / inch * cos * cos * ground * snowHumidity / (t * t * math.Pow(light, 0.67))
	lost = min(1, max(0, lost))
	if s.Cleared {
		lost *= snowSwept
	}
	return lost
}

// fill writes the loss of each month into lost, from the light on the panels, W/m², and the air of the year.
func (s *Snow) fill(tilts [12]float64, plane, air []float64, lost *[12]float64) {
	from := 0
	for m, days := range monthLength {
		to := from + 24*days
		var light, warm float64
		for h := from; h < to; h++ {
			light, warm = light+plane[h], warm+air[h]
		}
		lost[m] = s.loss(m, tilts[m], warm/float64(to-from), light/1000)
		from = to
	}
}
