package weather

import (
	"math"

	"duskweight/internal/model/sun"
	"duskweight/internal/model/unit"
)

// hourly gives the means of the hours of a clock on which the first step begins shift minutes after midnight: each hour
// takes of each step the part that falls into it, so the sum of the year stays. parts says which share of a step falls
// into its first hour, where it meets two; nil shares by time.
func hourly(v []float64, step int, shift float64, parts *parts) []float64 {
	out := make([]float64, sun.YearHours)
	shift -= math.Floor(shift/yearMinutes) * yearMinutes
	for i, x := range v {
		if math.IsNaN(x) {
			x = 0 // only direct light, which is not used then
		}
		from := shift + float64(i*step)
		hour := int(from / 60)
		left := float64(hour+1)*60 - from // minutes to the end of the hour
		if left >= float64(step)-1e-6 {
			out[around(hour)] += x * float64(step) / 60
			continue
		}
		first := left / float64(step)
		if parts != nil {
			first = parts.first(i, hour, first)
		}
		out[around(hour)] += x * float64(step) / 60 * first
		out[around(hour+1)] += x * float64(step) / 60 * (1 - first)
	}
	return out
}

// parts knows how the light outside the air of a step that meets two hours is shared between them. A row keeps its
// clearness on both sides of the full hour and its sum; by time alone the edges of the day would be smeared.
type parts struct {
	n     int         // steps an hour
	begin [][]float64 // of each step of the hour: light outside the air from the year's beginning to each of its beginnings
	full  []float64   // the same to each full hour
}

// partsOf makes the shares for steps of at least a quarter of an hour that begin shift minutes past the hour; nil for
// shorter ones, and for those that no full hour cuts.
func partsOf(step int, shift float64, latitude, longitude unit.Angle, offset float64) *parts {
	at := shift - math.Floor(shift/float64(step))*float64(step)
	if step < 15 || at < 1e-6 || at > float64(step)-1e-6 {
		return nil
	}
	p := &parts{n: 60 / step}
	p.full = outside(latitude, longitude, offset, 0)
	for k := range p.n {
		minute := math.Mod(shift+float64(k*step), 60)
		if minute < 0 {
			minute += 60
		}
		p.begin = append(p.begin, outside(latitude, longitude, offset, minute))
	}
	return p
}

// outside is the light outside the air, Wh/m², from the year's beginning to so many minutes past each of its hours.
func outside(latitude, longitude unit.Angle, offset, minute float64) []float64 {
	g := sun.NewGeometry(latitude, longitude, unit.Duration(offset-minute*60)) // its hour k begins minutes after k o'clock
	sum := make([]float64, sun.YearHours+1)
	sum[0] = minute / 60 * g.Extra[sun.YearHours-1] // of polar day alone, where the sun changes little round midnight
	for i, x := range g.Extra {
		sum[i+1] = sum[i] + x
	}
	return sum
}

// first is the share of step i, which begins in an hour, that falls into it; byTime where there is no sun.
func (p *parts) first(i, hour int, byTime float64) float64 {
	hour = around(hour)
	from, to := p.begin[i%p.n][hour], p.begin[(i+1)%p.n][hour+1]
	if to-from < 1e-3 {
		return byTime
	}
	return min(1, max(0, (p.full[hour+1]-from)/(to-from)))
}
