package model_test

import (
	"strings"
	"testing"

	"duskweight/internal/catalog"
	"duskweight/internal/model"
	"duskweight/internal/model/sun"
	"duskweight/internal/model/unit"
)

// Further weather files must be of the place and the clock of the first, and of another year; what is not is named where it
// stands. 0.1° is allowed, a hair more is not.
func TestFurtherWeatherFiles(t *testing.T) {
	whole := make([]float64, sun.Hours)
	first := sun.Series{Name: "a", Latitude: 48.2 * unit.Degree, Longitude: 16 * unit.Degree, UTCOffset: unit.Hour, Year: unit.Of[unit.Count](2014), Hours: sun.Hours, GHI: whole, DHI: whole, TAir: whole}
	for name, c := range map[string]struct {
		change func(*sun.Series)
		want   string
	}{
		"another year":  {func(*sun.Series) {}, ""},
		"within":        {func(w *sun.Series) { w.Latitude += 0.0999 * unit.Degree }, ""},
		"latitude":      {func(w *sun.Series) { w.Latitude = 52.1 * unit.Degree }, "project.weathers[0]: this file is for 52.1° N, the first for 48.2° N"},
		"just too far":  {func(w *sun.Series) { w.Latitude -= 0.1001 * unit.Degree }, "project.weathers[0]: this file is for 48.1° N, the first for 48.2° N"},
		"longitude":     {func(w *sun.Series) { w.Longitude = -16 * unit.Degree }, "project.weathers[0]: this file is for 16.0° W, the first for 16.0° E"},
		"clock":         {func(w *sun.Series) { w.UTCOffset = 2 * unit.Hour }, "project.weathers[0]: this file's clock is 2 h ahead of UTC, that of the first 1 h"},
		"the same year": {func(w *sun.Series) { w.Year = unit.Of[unit.Count](2014) }, "project.weathers[0]: two files hold 2014"},
	} {
		doc := catalog.Sample()
		second := first
		second.Year = unit.Of[unit.Count](2015)
		c.change(&second)
		doc.Project.Place.Sky = sun.SkyFiles
		doc.Project.TakeFiles([]*sun.Series{&first, &second})
		got := ""
		if err := model.CheckOn(doc, "").Err(); err != nil {
			got = strings.ReplaceAll(err.Error(), unit.Space, " ")
		}
		if got != c.want {
			t.Errorf("%s: %q, want %q", name, got, c.want)
		}
	}
}
