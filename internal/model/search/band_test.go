package search_test

import (
	"testing"

	"duskweight/internal/catalog"
	"duskweight/internal/model"
	"duskweight/internal/model/search"
	"duskweight/internal/model/sun"
	"duskweight/internal/model/unit"
)

// Five weather files have a band of made years whose middle is that of the years they were drawn from: the files here are made
// years of the worked example. Four have none.
func TestBandOfFiles(t *testing.T) {
	doc := catalog.Sample()
	_, climate, _ := sun.ClimateOf(doc.Project.Place, nil)
	p := doc.Project
	p.Place.Sky = sun.SkyFiles
	for j := range 5 {
		s := climate.Made(99, j)
		f := &sun.Series{Name: "made", Year: unit.Of(unit.Count(2000 + j)), GHI: s.GHI, DHI: s.DHI, TAir: s.TAir,
			Latitude: s.Geometry.Latitude, Longitude: s.Geometry.Longitude, UTCOffset: s.Geometry.UTCOffset, Elevation: doc.Project.Place.Elevation.Or(0)}
		if p.Weather == nil {
			p.Weather = f
		} else {
			p.Weathers = append(p.Weathers, f)
		}
	}
	band, err := search.Band(t.Context(), p, doc.Variants[1:2], 2)
	if err != nil || band == nil {
		t.Fatal(band, err)
	}
	made, err := search.Years(t.Context(), doc.Project, doc.Variants[1:2], 200, 2, nil)
	if err != nil {
		t.Fatal(err)
	}
	got, want := band.Variants[0].Light, made.Variants[0].Light
	// five years know the light of a year to 5 %/√5 ≈ 2 %; a night in fifty is the width of the middle half of the years
	if d := got.Usual - want.Usual; band.Years != 200 || d > 8 || d < -8 || got.Worst == got.Best {
		t.Errorf("band of %d years %+v, the years they are from %+v", band.Years, got, want)
	}
	p.Weathers = p.Weathers[:3]
	if band, err := search.Band(t.Context(), p, doc.Variants[1:2], 2); band != nil || err != nil {
		t.Errorf("four files have a band: %v", err)
	}
}

// A typical file has its own year beside the made ones: the year that the model runs on its hours. A real one has none.
func TestYearOfATypicalFile(t *testing.T) {
	doc := catalog.Sample()
	_, climate, _ := sun.ClimateOf(doc.Project.Place, nil)
	s := climate.Made(99, 0)
	p := doc.Project
	p.Place.Sky = sun.SkyFile
	p.Weather = &sun.Series{Name: "typical", Typical: unit.Yes, GHI: s.GHI, DHI: s.DHI, TAir: s.TAir,
		Latitude: s.Geometry.Latitude, Longitude: s.Geometry.Longitude, UTCOffset: s.Geometry.UTCOffset, Elevation: doc.Project.Place.Elevation.Or(0)}
	own, err := search.Typical(t.Context(), p, doc.Variants[1:2])
	if err != nil || own == nil || len(own.Variants[0].Nights) != 1 {
		t.Fatal(own, err)
	}
	r := model.Prepare(p).Evaluate(doc.Variants[1])
	if got, want := own.Variants[0].Nights[0], float64(r.Last.NightsFull); got != want || want == 0 {
		t.Errorf("%v full nights, the model's own year has %v", got, want)
	}
	p.Weather.Typical = unit.No
	if own, err := search.Typical(t.Context(), p, doc.Variants[1:2]); own != nil || err != nil {
		t.Errorf("a real file has a typical year: %v, %v", own, err)
	}
}
