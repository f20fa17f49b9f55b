package sun

import "duskweight/internal/model/unit"

// hours writes the hours of day d with clearness k: global by r_t, diffuse by Erbs and r_d, no hour above its ceiling;
// what is cut off goes to the other hours of the day, in proportion to their room.
func (c *Climate) hours(d int, k float64, ghi, dhi []float64) {
	from, to := c.sunrise[d], c.sunset[d]
	day := k * c.geometry.Day[d]
	diffuse := day * min(1, DiffuseOfDay(k, unit.Angle(c.geometry.Sunset[d])))
	over, room := 0.0, 0.0
	for h := from; h < to; h++ {
		i := day * c.share[h]
		if i > c.ceiling[h] {
			over += i - c.ceiling[h]
			i = c.ceiling[h]
		}
		room += c.ceiling[h] - i
		ghi[h] = i
	}
	raise := 0.0
	if over > 0 && room > 0 {
		raise = min(1, over/room)
	}
	for h := from; h < to; h++ {
		if raise > 0 {
			ghi[h] += raise * (c.ceiling[h] - ghi[h])
		}
		dhi[h] = min(ghi[h], diffuse*c.spread[h])
	}
}
