package search_test

import (
	"fmt"
	"reflect"
	"slices"
	"testing"

	"duskweight/internal/catalog"
	"duskweight/internal/model"
	"duskweight/internal/model/search"
	"duskweight/internal/model/sun"
	"duskweight/internal/model/unit"
)

// filesOf makes n weather files of the sample's place out of made years; what matters is that they differ.
func filesOf(t *testing.T, p model.Project, n int) []*sun.Series {
	t.Helper()
	var out []*sun.Series
	for j := range n {
		s := model.PrepareMade(p, j).Sky
		out = append(out, &sun.Series{Name: fmt.Sprint("station ", 2010+j), Latitude: p.Place.Latitude.Val, Longitude: p.Place.Longitude.Val, Elevation: p.Place.Elevation.Or(0),
			UTCOffset: p.Place.UTCOffset.Val, Year: unit.Of(unit.Count(2010 + j)), Hours: sun.Hours, GHI: s.GHI, DHI: s.DHI, TAir: s.TAir})
	}
	return out
}

func many(t *testing.T, p model.Project, vs []model.Variant, n int) []*model.YearsAnswer {
	t.Helper()
	r := search.NewRun(p, vs, false)
	r.Weather = true
	if err := r.Until(t.Context(), n, 2, nil); err != nil {
		t.Fatal(err)
	}
	return r.Sure().Answers(p)
}

// Several weather files: each year is, to the last bit, what a project with that file alone comes to, in the order of the
// years, whatever the order of the files.
func TestFilesAreTheirOwnYears(t *testing.T) {
	doc := catalog.Sample()
	p := doc.Project
	files := filesOf(t, p, 5)
	p.Place.Sky = sun.SkyFiles
	p.TakeFiles(files)
	if ps := model.CheckRanges(p); len(ps) > 0 {
		t.Fatal(ps)
	}
	got := many(t, p, doc.Variants, 200)
	for i := range doc.Variants {
		if got[i].Of != model.YearsFiles || got[i].Basis != model.BasisReal || got[i].N != len(files) {
			t.Fatalf("%d years of %s by %s", got[i].N, got[i].Of, got[i].Basis)
		}
	}
	for j, f := range files {
		one := p
		one.Place.Sky = sun.SkyFile
		one.TakeFiles([]*sun.Series{f})
		alone := many(t, one, doc.Variants, 200)
		for i := range doc.Variants {
			if alone[i].N != 1 || alone[i].Basis != model.BasisReal || !reflect.DeepEqual(alone[i].Each[0], got[i].Each[j]) {
				t.Errorf("variant %d, %d: %+v, alone %+v", i, 2010+j, got[i].Each[j], alone[i].Each[0])
			}
		}
	}
	slices.Reverse(files)
	p.TakeFiles(append(files[2:], files[:2]...))
	if again := many(t, p, doc.Variants, 200); !reflect.DeepEqual(got, again) {
		t.Error("another order of the files gives another answer")
	}
	// the plan year is the one with the middle light
	lights := []float64{}
	for _, f := range files {
		sum := 0.0
		for _, g := range f.GHI {
			sum += g
		}
		lights = append(lights, sum*3600)
	}
	slices.Sort(lights)
	if sky := model.Prepare(p).Sky; sky == nil || sky.Year() != lights[2] {
		t.Error("the plan year is not the middle one")
	}
}

// A typical file has years made from its means, a real one is one year, and one that does not say is asked about.
func TestTypicalFileHasMadeYears(t *testing.T) {
	doc := catalog.Sample()
	p := doc.Project
	f := *filesOf(t, p, 1)[0]
	f.Year = unit.Known[unit.Count]{}
	p.Place.Sky = sun.SkyFile
	for _, c := range []struct {
		source  string
		typical unit.Answer
		n       int
		basis   model.YearsBasis
	}{{"TMY3", "", 30, model.BasisTypical}, {"Meteo office", unit.Yes, 30, model.BasisTypical}, {"TMY3", unit.No, 1, model.BasisReal}, {"measured", "", 1, model.BasisReal}} {
		one := f
		one.Source, one.Typical = c.source, c.typical
		p.TakeFiles([]*sun.Series{&one})
		y := many(t, p, doc.Variants[1:2], 30)[0]
		if y.N != c.n || y.Basis != c.basis {
			t.Errorf("%q %q: %d years, %s", c.source, c.typical, y.N, y.Basis)
		}
		if c.n == 1 {
			continue
		}
		// made from its means: the light of 30 years is that of the file to three standard errors of 5 %
		want, mean := 0.0, 0.0
		for _, g := range f.GHI {
			want += g * 3600
		}
		for _, e := range y.Each {
			for _, m := range e.GHI {
				mean += float64(m) / 30
			}
		}
		if mean/want < 0.973 || mean/want > 1.027 {
			t.Errorf("made years have %.3f of the file's light", mean/want)
		}
	}
}
