package weather

import (
	"bufio"
	"compress/gzip"
	"fmt"
	"os"
	"strconv"
	"strings"
	"testing"
)

// measured reads the hourly years of one place beside the repository; missing light counts as none.
func measured(t *testing.T, name string) map[int]*made {
	t.Helper()
	f, err := os.Open(shared(t, "years", name+".csv.gz"))
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	z, err := gzip.NewReader(f)
	if err != nil {
		t.Fatal(err)
	}
	var at made
	years := map[int]*made{}
	lines := bufio.NewScanner(z)
	for lines.Scan() {
		l := lines.Text()
		if strings.HasPrefix(l, "#") {
			for head, to := range map[string]*float64{"# latitude_deg: %f": &at.lat, "# longitude_deg: %f": &at.lon, "# utc_offset_h: %f": &at.zone} {
				_, _ = fmt.Sscanf(l, head, to)
			}
			continue
		}
		f := strings.Split(l, ",")
		year, err := strconv.Atoi(f[0])
		if err != nil {
			continue
		}
		if years[year] == nil {
			years[year] = &made{lat: at.lat, lon: at.lon, zone: at.zone}
		}
		y := years[year]
		for i, to := range []*[]float64{&y.g, &y.d, &y.t} {
			v, _ := strconv.ParseFloat(f[2+i], 64)
			*to = append(*to, v)
		}
	}
	return years
}
