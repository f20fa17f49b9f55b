package place

import (
	"fmt"
	"math"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"
	"time"

	"duskweight/internal/model/sun"
	"duskweight/internal/model/unit"
)

const WeatherURL = "/projects/1/place/file"

var Tokens = regexp.MustCompile(`name="token" value="([^"]+)"`)

func Sample(t *testing.T, name string) []byte {
	t.Helper()
	b, err := os.ReadFile(filepath.Join("..", "..", "testdata", "weather", name))
	if err != nil {
		t.Fatal(err)
	}
	return b
}

// PlainYear is a table of our own making at 40° N, 12° E with seven tenths of the light outside the air: comma
// separated, times in UTC+1 at the start of the hour, and head and first column as given.
func PlainYear(head string, change func(i int, row string) string) []byte {
	g := sun.NewGeometry(40*unit.Degree, 12*unit.Degree, unit.Hour)
	var b strings.Builder
	b.WriteString(head + "\n")
	at := time.Date(2021, 1, 1, 0, 0, 0, 0, time.UTC)
	for i := range sun.YearHours {
		row := fmt.Sprintf("%s,%.0f,%.0f,%.1f", at.Add(time.Duration(i)*time.Hour).Format("2006-01-02 15:04"), 0.7*g.Extra[i], 0.2*g.Extra[i], 10+5*math.Sin(float64(i)/1000))
		if change != nil {
			row = change(i, row)
		}
		b.WriteString(row + "\n")
	}
	return []byte(b.String())
}

func SameYear(t *testing.T, got, want sun.Series) {
	t.Helper()
	if got.Latitude != want.Latitude || got.Longitude != want.Longitude || got.UTCOffset != want.UTCOffset || got.Elevation != want.Elevation {
		t.Errorf("the place is %v %v, want %v %v", got.Latitude, got.Longitude, want.Latitude, want.Longitude)
	}
	for name, pair := range map[string][2][]float64{"GHI": {got.GHI, want.GHI}, "DHI": {got.DHI, want.DHI}, "air": {got.TAir, want.TAir}} {
		if len(pair[0]) != sun.YearHours {
			t.Fatalf("%s has %d hours", name, len(pair[0]))
		}
		for i := range pair[0] {
			if math.Float64bits(pair[0][i]) != math.Float64bits(pair[1][i]) {
				t.Fatalf("%s of hour %d is %v, want %v", name, i, pair[0][i], pair[1][i])
			}
		}
	}
}
