package sun

import (
	"cmp"
	"math"
	"slices"
	"strings"

	"duskweight/internal/model/unit"
)

// typicalWords are how sources of typical years name them: a year put together from months of many years.
var typicalWords = []string{"tmy", "iwec", "swera", "typical"}

// IsTypical reports whether a weather file holds a typical year: as its reader says or, where nothing is said, as the file's
// own words on its source and its name have it. known is false where neither tells.
func (w *Series) IsTypical() (typical, known bool) {
	if w.Typical != "" {
		return w.Typical == unit.Yes, true
	}
	words := strings.ToLower(w.Source + " " + w.Name)
	for _, t := range typicalWords {
		if strings.Contains(words, t) {
			return true, true
		}
	}
	return false, w.Year.Is
}

// InOrder returns the weather files by their years, those without one last, and then by name and light: an order that does
// not depend on how they came.
func InOrder(files []*Series) []*Series {
	return slices.SortedStableFunc(slices.Values(files), func(a, b *Series) int {
		if a.Year.Is != b.Year.Is {
			if a.Year.Is {
				return -1
			}
			return 1
		}
		return cmp.Or(cmp.Compare(a.Year.Val, b.Year.Val), cmp.Compare(a.Name, b.Name), cmp.Compare(total(a.GHI), total(b.GHI)))
	})
}

// Middle returns the file with the middle light of the year, of two in the middle the darker one; nil of none.
func Middle(files []*Series) *Series {
	if len(files) == 0 {
		return nil
	}
	by := slices.SortedStableFunc(slices.Values(InOrder(files)), func(a, b *Series) int { return cmp.Compare(total(a.GHI), total(b.GHI)) })
	return by[(len(by)-1)/2]
}

// called is the name of a file with its year.
func (w *Series) called() string {
	if y, ok := w.Year.Value(); ok {
		return unit.CalendarYear(int(y)) + " (" + w.Name + ")"
	}
	return w.Name
}

func total(v []float64) (sum float64) {
	for _, x := range v {
		sum += x
	}
	return sum
}

// Means are the twelve means of weather files of one place, with the spread of the daily clearness within single months and
// the correlation of a day's deviation, in spreads of its month, with that of the day before. At least one file.
func Means(files []*Series) Monthly {
	m, k, sd, lag := meansOf(files)
	if len(files) == 1 { // one year's spread and lag are a small sample
		sd, lag = MixOneYear(k, sd, lag, m.TMean, files[0].Latitude, files[0].Elevation)
	}
	m.KTSd, m.KTLag1 = Own(sd), unit.Of(unit.Ratio(lag))
	return m
}

// Own is a spread of its own for each month.
func Own(sd [12]float64) (out [12]unit.Known[unit.Ratio]) {
	for i, s := range sd {
		out[i] = unit.Of(unit.Ratio(s))
	}
	return out
}

func meansOf(files []*Series) (m Monthly, k, sd [12]float64, lag float64) {
	var square [12]float64
	product, pairs := 0.0, 0.0
	n := float64(len(files))
	for _, w := range files {
		d := daysOf(w)
		before := math.NaN()
		first := 0
		for i, length := range monthLength {
			mean, spread := monthOf(d.clear[first : first+length])
			m.GHI[i] += unit.Irradiation(total(d.light[first:first+length]) / float64(length) / n)
			m.TMean[i] += unit.Celsius(total(d.mean[first:first+length]) / float64(length) / n)
			m.TMax[i] += unit.Celsius(total(d.most[first:first+length]) / float64(length) / n)
			m.TMin[i] += unit.Celsius(total(d.least[first:first+length]) / float64(length) / n)
			k[i] += mean / n
			square[i] += spread * spread
			for _, x := range d.clear[first : first+length] {
				z := math.NaN()
				if spread > 0 {
					z = (x - mean) / spread
				}
				if p := z * before; !math.IsNaN(p) {
					product += p
					pairs++
				}
				before = z
			}
			first += length
		}
	}
	for i := range sd {
		sd[i] = math.Sqrt(square[i] / n)
	}
	return m, k, sd, product / max(1, pairs)
}

// fileDays are the days of a weather file.
type fileDays struct{ light, clear, mean, most, least [Days]float64 }

func daysOf(w *Series) *fileDays {
	g := NewGeometry(w.Latitude, w.Longitude, w.UTCOffset)
	d := &fileDays{}
	for i := range Days {
		air := w.TAir[24*i : 24*i+24]
		d.light[i] = total(w.GHI[24*i:24*i+24]) * 3600
		d.mean[i], d.most[i], d.least[i] = total(air)/24, slices.Max(air), slices.Min(air)
		if d.clear[i] = math.NaN(); g.Day[i] > 0 {
			d.clear[i] = d.light[i] / g.Day[i]
		}
	}
	return d
}

// monthOf returns mean and standard deviation of a month's clearness, of the days that have sun; a month with fewer than
// five of them has no spread.
func monthOf(k []float64) (mean, spread float64) {
	n := 0.0
	for _, x := range k {
		if !math.IsNaN(x) {
			mean += x
			n++
		}
	}
	if n < 5 {
		return mean / max(1, n), 0
	}
	mean /= n
	for _, x := range k {
		if !math.IsNaN(x) {
			spread += (x - mean) * (x - mean) / (n - 1)
		}
	}
	return mean, math.Sqrt(spread)
}
