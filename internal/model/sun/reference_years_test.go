package sun

import (
	"bufio"
	"compress/gzip"
	"os"
	"strconv"
	"strings"
	"testing"

	"duskweight/internal/model/unit"
)

// realYears are the measured years of a place: by year 365 days of light on the flat, J/m², and the highest and lowest
// temperature. Years with a missing day are left out.
type realYears struct {
	name          string
	lat, lon, utc float64
	height        float64
	light         [][Days]float64
	most, least   [][Days]float64
}

// realPlace reads a file of real years that stands beside the project, or skips and says so.
func realPlace(t *testing.T, name string) *realYears {
	t.Helper()
	f, err := os.Open(root + "../shared/reference/years/" + name + ".csv.gz")
	if err != nil {
		t.Skipf("LEFT OUT: ../shared/reference/years/%s.csv.gz is not here; real years were not compared", name)
	}
	defer f.Close()
	z, err := gzip.NewReader(f)
	if err != nil {
		t.Fatal(err)
	}
	y := &realYears{name: name}
	hourly := strings.HasSuffix(name, "hourly")
	holes, year := map[int]bool{}, ""
	lines := bufio.NewScanner(z)
	for lines.Scan() {
		line := lines.Text()
		if head, ok := strings.CutPrefix(line, "# "); ok {
			y.head(head)
			continue
		}
		row := strings.Split(line, ",")
		if row[0] == "year" {
			continue
		}
		if row[0] != year {
			year = row[0]
			y.light, y.most, y.least = append(y.light, [Days]float64{}), append(y.most, [Days]float64{}), append(y.least, [Days]float64{})
		}
		if !y.row(row, hourly) {
			holes[len(y.light)-1] = true
		}
	}
	kept := 0
	for i := range y.light {
		if !holes[i] {
			y.light[kept], y.most[kept], y.least[kept] = y.light[i], y.most[i], y.least[i]
			kept++
		}
	}
	y.light, y.most, y.least = y.light[:kept], y.most[:kept], y.least[:kept]
	if kept == 0 {
		t.Fatalf("%s: no whole year", name)
	}
	return y
}

// head reads a line of the head.
func (y *realYears) head(line string) {
	key, val, _ := strings.Cut(line, ": ")
	v, _, _ := strings.Cut(val, ";")
	x, _ := strconv.ParseFloat(strings.TrimSpace(v), 64)
	switch key {
	case "latitude_deg":
		y.lat = x
	case "longitude_deg":
		y.lon = x
	case "elevation_m":
		y.height = x
	case "utc_offset_h":
		y.utc = x
	}
}

// row books one line of the last year; false where something is missing.
func (y *realYears) row(row []string, hourly bool) bool {
	n, err := strconv.Atoi(row[1])
	light, bad := strconv.ParseFloat(row[2], 64)
	if err != nil || bad != nil {
		return false
	}
	i := len(y.light) - 1
	if !hourly {
		most, one := strconv.ParseFloat(row[3], 64)
		least, two := strconv.ParseFloat(row[4], 64)
		y.light[i][n], y.most[i][n], y.least[i][n] = light*1000, most, least
		return one == nil && two == nil && n < Days
	}
	air, bad := strconv.ParseFloat(row[4], 64)
	d := n / 24
	y.light[i][d] += light * 3600
	if n%24 == 0 {
		y.most[i][d], y.least[i][d] = air, air
	}
	y.most[i][d], y.least[i][d] = max(y.most[i][d], air), min(y.least[i][d], air)
	return bad == nil
}

// typed is the place as someone would type it: twelve means of all its years.
func (y *realYears) typed() Place {
	m := &Monthly{}
	first := 0
	for i, days := range monthLength {
		n := unit.Irradiation(days * len(y.light))
		for j := range y.light {
			for d := first; d < first+days; d++ {
				m.GHI[i] += unit.Irradiation(y.light[j][d]) / n
				m.TMax[i] += unit.Celsius(y.most[j][d]) / unit.Celsius(n)
				m.TMin[i] += unit.Celsius(y.least[j][d]) / unit.Celsius(n)
			}
		}
		m.TMean[i] = (m.TMax[i] + m.TMin[i]) / 2
		first += days
	}
	return Place{Name: y.name, Sky: SkyMonthly, Monthly: m, Latitude: unit.Of(deg(y.lat)), Longitude: unit.Of(deg(y.lon)),
		Elevation: unit.Of(unit.Length(y.height)), UTCOffset: unit.Of(unit.Duration(y.utc * 3600))}
}
