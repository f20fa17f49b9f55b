package store

import (
	"math"
	"reflect"
	"testing"

	"duskweight/internal/model"
	"duskweight/internal/model/sun"
	"duskweight/internal/model/unit"
)

// TestSeveralWeatherFiles keeps each weather file of a project once, gives all back in their order and to the last bit, also
// behind a purge of another project, through a copy and without what was read before, and tells a change of one of them.
func TestSeveralWeatherFiles(t *testing.T) {
	s := fresh(t)
	ctx := t.Context()
	doc := sample(t)
	var files []*sun.Series
	for j := range 3 {
		y := year()
		y.Year, y.Typical = unit.Of(unit.Count(2015-j)), unit.No
		y.GHI[12] = math.Nextafter(y.GHI[12], float64(j))
		y.TAir[0] += float64(j)
		files = append(files, y)
	}
	doc.Project.TakeFiles(files)
	p := must[Saved[model.Project]](t)(s.CreateProject(ctx, doc, "", noon))
	gone := must[Saved[model.Project]](t)(s.CreateProject(ctx, doc, "", noon))
	two := gone.Value
	two.TakeFiles(files[1:])
	gone = must[Saved[model.Project]](t)(s.SaveProject(ctx, gone.ID, two, Edit{Revision: gone.Revision}, noon))
	if err := s.DeleteProject(ctx, gone.ID, gone.Revision, "", noon); err != nil {
		t.Fatal(err)
	}
	counts := func(want int) {
		t.Helper()
		var kept int
		if err := s.reader.QueryRow(`SELECT count(*) FROM series`).Scan(&kept); err != nil || kept != want {
			t.Errorf("%d rows of weather, want %d (%v)", kept, want, err)
		}
	}
	counts(5) // three files, and two lists of them
	if n := must[int](t)(s.Purge(ctx, later(31*24))); n != 1 {
		t.Fatalf("%d purged", n)
	}
	counts(4)
	back := func(what string) {
		t.Helper()
		s.years = cache[string, sun.Series]{}
		s.knownProjects = cache[text, model.Project]{}
		got := must[Saved[model.Project]](t)(s.Project(ctx, p.ID))
		if !reflect.DeepEqual(got.Value.Files(), files) || got.Value.Weather == nil || len(got.Value.Weathers) != 2 {
			t.Errorf("%s: the files came back changed", what)
		}
	}
	back("behind a purge")
	one := p.Value
	one.TakeFiles(files[:1])
	must[Saved[model.Project]](t)(s.SaveProject(ctx, p.ID, one, Edit{Revision: p.Revision}, later(32*24)))
	cs, err := s.FullChanges(ctx, p.ID, 0, 1)
	if err != nil || len(cs) != 1 || !cs[0].OtherYear {
		t.Errorf("taking two files away: %+v, %v", cs, err)
	}
	must[Change](t)(s.Undo(ctx, p.ID, 0, later(33*24)))
	back("behind an undo")
	copied := must[Backup](t)(s.Backup(ctx, later(34*24)))
	other, err := Open(ctx, copied.Path, later(34*24))
	if err != nil {
		t.Fatal(err)
	}
	defer other.Close()
	s, p = other, must[Saved[model.Project]](t)(other.Project(ctx, p.ID))
	back("in a copy")
}
