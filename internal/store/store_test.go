package store

import (
	"context"
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"reflect"
	"testing"
	"time"

	"duskweight/internal/document"
	"duskweight/internal/model"
	"duskweight/internal/model/unit"
)

// noon is when every test begins.
var noon = time.Date(2026, 3, 20, 12, 0, 0, 0, time.UTC)

// later gives a time that many hours after noon: saves that are steps of their own.
func later(hours int) time.Time { return noon.Add(time.Duration(hours) * time.Hour) }

func opened(t testing.TB, path string) *Store {
	t.Helper()
	s, err := Open(t.Context(), path, noon)
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { s.Close() })
	return s
}

// reopened closes a store and opens its file again.
func reopened(t *testing.T, s *Store) *Store {
	t.Helper()
	if err := s.Close(); err != nil {
		t.Fatal(err)
	}
	return opened(t, s.Path())
}

func fresh(t *testing.T) *Store { return opened(t, filepath.Join(t.TempDir(), "duskweight.db")) }

func sample(t testing.TB) model.Document {
	t.Helper()
	data, err := os.ReadFile("../../testdata/projects/shed_lamp.json")
	if err != nil {
		t.Fatal(err)
	}
	doc, err := document.Decode(data)
	if err != nil {
		t.Fatal(err)
	}
	return doc
}

// sampled stores the sample and returns it with its first variant.
func sampled(t *testing.T, s *Store) (Saved[model.Project], Saved[model.Variant]) {
	t.Helper()
	p, err := s.CreateProject(t.Context(), sample(t), "Sample", noon)
	if err != nil {
		t.Fatal(err)
	}
	vs, err := s.Variants(t.Context(), p.ID)
	if err != nil || len(vs) != 1 {
		t.Fatal(len(vs), err)
	}
	return p, vs[0]
}

// lifting returns a variant whose hoist travels so far: a value to tell versions apart.
func lifting(v model.Variant, travel float64) model.Variant {
	h := *v.Stores[0].Hoist
	h.Travel = unit.Of(unit.Length(travel))
	v.Stores = []model.Store{{Hoist: &h}}
	return v
}

func travel(v model.Variant) float64 { return float64(v.Stores[0].Hoist.Travel.Val) }

func must[T any](t *testing.T) func(v T, err error) T {
	return func(v T, err error) T {
		t.Helper()
		if err != nil {
			t.Fatal(err)
		}
		return v
	}
}

func TestRoundTrip(t *testing.T) {
	s := fresh(t)
	doc := sample(t)
	p, v := sampled(t, s)
	s = reopened(t, s)
	got := must[model.Document](t)(s.Export(t.Context(), p.ID))
	if !reflect.DeepEqual(got, doc) {
		t.Errorf("came back changed:\n%+v\n%+v", got, doc)
	}
	second := must[Saved[model.Project]](t)(s.CreateProject(t.Context(), got, "Import", later(1)))
	if again := must[model.Document](t)(s.Export(t.Context(), second.ID)); !reflect.DeepEqual(again, doc) {
		t.Error("an import of an export is not the same")
	}
	one := must[Saved[model.Variant]](t)(s.Variant(t.Context(), v.ID))
	if !reflect.DeepEqual(one, v) {
		t.Errorf("variant %+v, want %+v", one, v)
	}
	ls := must[[]Listed](t)(s.Projects(t.Context()))
	want := []Listed{
		{ID: second.ID, Revision: 1, Name: "Shed lamp", Place: doc.Project.Place.Name, Variants: []string{doc.Variants[0].Name}, Last: 4, At: later(1)},
		{ID: p.ID, Revision: 1, Name: "Shed lamp", Place: doc.Project.Place.Name, Variants: []string{doc.Variants[0].Name}, Last: 2, At: noon},
	}
	if !reflect.DeepEqual(ls, want) {
		t.Errorf("list %+v, want %+v", ls, want)
	}
}

// TestWeatherOnce keeps a weather year once, however often its project is saved, and gives it back with each.
func TestWeatherOnce(t *testing.T) {
	s := fresh(t)
	doc := sample(t)
	doc.Project.Weather = year()
	p := must[Saved[model.Project]](t)(s.CreateProject(t.Context(), doc, "", noon))
	for i := range 20 {
		next := p.Value
		next.Name = fmt.Sprint("name ", i)
		p = must[Saved[model.Project]](t)(s.SaveProject(t.Context(), p.ID, next, Edit{Revision: p.Revision}, later(i)))
	}
	got := must[Saved[model.Project]](t)(s.Project(t.Context(), p.ID))
	if !reflect.DeepEqual(got.Value.Weather, doc.Project.Weather) {
		t.Error("the weather year came back changed")
	}
	var kept, largest int
	err := s.reader.QueryRow(`SELECT (SELECT count(*) FROM series), (SELECT max(length(body)) FROM revision)`).Scan(&kept, &largest)
	if err != nil || kept != 1 || largest > 10_000 {
		t.Errorf("%d years kept, largest body %d bytes, %v", kept, largest, err)
	}
}

func TestNotFound(t *testing.T) {
	s := fresh(t)
	ctx := t.Context()
	p, v := sampled(t, s)
	if err := s.DeleteProject(ctx, p.ID, p.Revision, "gone", noon); err != nil {
		t.Fatal(err)
	}
	for name, err := range map[string]error{
		"project":  second(s.Project(ctx, p.ID)),
		"variant":  second(s.Variant(ctx, v.ID)),
		"variants": second(s.Variants(ctx, p.ID)),
		"export":   second(s.Export(ctx, p.ID)),
		"never":    second(s.Project(ctx, 99)),
		"create":   second(s.CreateVariant(ctx, p.ID, v.Value, "", noon)),
		"save":     second(s.SaveVariant(ctx, v.ID, v.Value, Edit{Revision: v.Revision}, noon)),
		"undo":     second(s.Undo(ctx, p.ID, 0, noon)),
	} {
		if !errors.Is(err, ErrNotFound) {
			t.Errorf("%s: %v", name, err)
		}
	}
	if ls := must[[]Listed](t)(s.DeletedProjects(ctx)); len(ls) != 1 || ls[0].ID != p.ID {
		t.Errorf("deleted: %+v", ls)
	}
	back := must[Saved[model.Project]](t)(s.RestoreProject(ctx, p.ID, "back", later(1)))
	if !reflect.DeepEqual(back.Value, p.Value) {
		t.Error("restored otherwise")
	}
	if got := must[Saved[model.Variant]](t)(s.Variant(ctx, v.ID)); !reflect.DeepEqual(got, v) {
		t.Error("its variant was not restored")
	}
}

func second[T any](_ T, err error) error { return err }

// TestStale refuses a save on an old revision, with both versions.
func TestStale(t *testing.T) {
	s := fresh(t)
	ctx := t.Context()
	_, v := sampled(t, s)
	must[Saved[model.Variant]](t)(s.SaveVariant(ctx, v.ID, lifting(v.Value, 3), Edit{Revision: v.Revision}, noon))
	_, err := s.SaveVariant(ctx, v.ID, lifting(v.Value, 4), Edit{Revision: v.Revision}, noon)
	stale, ok := errors.AsType[*Stale[model.Variant]](err)
	if !ok || !errors.Is(err, ErrStale) {
		t.Fatal(err)
	}
	if travel(stale.Current.Value) != 3 || travel(stale.Yours) != 4 || stale.Current.Revision != v.Revision+1 {
		t.Errorf("%+v", stale)
	}
	if err := s.DeleteVariant(ctx, v.ID, v.Revision, "", noon); !errors.Is(err, ErrStale) {
		t.Errorf("a stale deletion: %v", err)
	}
	if err := s.DeleteVariant(ctx, v.ID, v.Revision+1, "", noon); err != nil {
		t.Fatal(err)
	}
	_, err = s.SaveVariant(ctx, v.ID, v.Value, Edit{Revision: v.Revision + 2}, noon)
	if stale, ok := errors.AsType[*Stale[model.Variant]](err); !ok || !stale.Current.Deleted {
		t.Errorf("saved over a tombstone: %v", err)
	}
}

// TestNothingChanged adds no step for a save that changes nothing.
func TestNothingChanged(t *testing.T) {
	s := fresh(t)
	p, v := sampled(t, s)
	got := must[Saved[model.Variant]](t)(s.SaveVariant(t.Context(), v.ID, v.Value, Edit{Revision: v.Revision, Said: "nothing"}, later(1)))
	if got.Revision != v.Revision {
		t.Errorf("revision %d, want %d", got.Revision, v.Revision)
	}
	if undo, _ := offered(t, s, p.ID); undo != nil {
		t.Errorf("a step: %+v", undo)
	}
}

func TestOrder(t *testing.T) {
	s := fresh(t)
	ctx := t.Context()
	p, _ := sampled(t, s)
	b := must[Saved[model.Variant]](t)(s.CreateVariant(ctx, p.ID, model.Variant{Name: "b"}, "", noon))
	must[Saved[model.Variant]](t)(s.CreateVariant(ctx, p.ID, model.Variant{Name: "c"}, "", noon))
	must[Saved[model.Variant]](t)(s.SaveVariant(ctx, b.ID, model.Variant{Name: "b, changed"}, Edit{Revision: b.Revision, Said: "changed"}, later(1)))
	names := func() (names []string) {
		for _, v := range must[[]Saved[model.Variant]](t)(s.Variants(ctx, p.ID)) {
			names = append(names, v.Value.Name)
		}
		return names
	}
	if got, want := names(), []string{"Barrel", "b, changed", "c"}; !reflect.DeepEqual(got, want) {
		t.Errorf("order %v, want %v", got, want)
	}
	must[Change](t)(s.Undo(ctx, p.ID, 0, later(2)))
	if got, want := names(), []string{"Barrel", "b", "c"}; !reflect.DeepEqual(got, want) {
		t.Errorf("order %v, want %v", got, want)
	}
}

func TestDraftsAndSettings(t *testing.T) {
	s := fresh(t)
	ctx := t.Context()
	_, v := sampled(t, s)
	thing := Thing{VariantKind, v.ID}
	texts := map[string]string{"hoist.travel_m": "6,0 elephants", "name": "\x00\xff", "hoist.mass": ""}
	if err := s.SaveDrafts(ctx, thing, texts, noon); err != nil {
		t.Fatal(err)
	}
	if err := s.SaveSettings(ctx, map[string]string{"units": "metric", "currency": "EUR"}); err != nil {
		t.Fatal(err)
	}
	if err := s.SaveSettings(ctx, map[string]string{"units": "imperial"}); err != nil {
		t.Fatal(err)
	}
	s = reopened(t, s)
	if got := must[map[string]string](t)(s.Drafts(ctx, thing)); !reflect.DeepEqual(got, texts) {
		t.Errorf("drafts %q, want %q", got, texts)
	}
	if got, want := must[map[string]string](t)(s.Settings(ctx)), map[string]string{"units": "imperial", "currency": "EUR"}; !reflect.DeepEqual(got, want) {
		t.Errorf("settings %v, want %v", got, want)
	}
	must[Saved[model.Variant]](t)(s.SaveVariant(ctx, v.ID, lifting(v.Value, 6), Edit{Revision: v.Revision, Settles: []string{"hoist.travel_m"}}, later(1)))
	if got := must[map[string]string](t)(s.Drafts(ctx, thing)); len(got) != 2 {
		t.Errorf("after the save: %q", got)
	}
	if err := s.ClearDrafts(ctx, thing); err != nil {
		t.Fatal(err)
	}
	if got := must[map[string]string](t)(s.Drafts(ctx, thing)); len(got) != 0 {
		t.Errorf("after clearing: %q", got)
	}
}

// TestRefusedSaveChangesNothing: a value that could not be read again is not saved, nor are its drafts settled.
func TestRefusedSaveChangesNothing(t *testing.T) {
	s := fresh(t)
	ctx := t.Context()
	_, v := sampled(t, s)
	bad := v.Value
	bad.Name = "\xff"
	if _, err := s.SaveVariant(ctx, v.ID, bad, Edit{Revision: v.Revision}, noon); err == nil {
		t.Error("saved text that is not UTF-8")
	}
	var zero unit.Length
	bad = lifting(v.Value, 1)
	bad.Stores[0].Hoist.Travel = unit.Of(1 / zero)
	if _, err := s.SaveVariant(ctx, v.ID, bad, Edit{Revision: v.Revision}, noon); err == nil {
		t.Error("saved an infinite travel")
	}
	if got := must[Saved[model.Variant]](t)(s.Variant(ctx, v.ID)); !reflect.DeepEqual(got, v) {
		t.Error("the stored variant changed")
	}
}

// TestCancelled saves nothing for a caller who is gone.
func TestCancelled(t *testing.T) {
	s := fresh(t)
	_, v := sampled(t, s)
	ctx, cancel := context.WithCancel(t.Context())
	cancel()
	if _, err := s.SaveVariant(ctx, v.ID, lifting(v.Value, 9), Edit{Revision: v.Revision}, noon); err == nil {
		t.Error("saved")
	}
	if got := must[Saved[model.Variant]](t)(s.Variant(t.Context(), v.ID)); got.Revision != v.Revision {
		t.Error("the stored variant changed")
	}
}

// The names of variants are those of the variants that are there, in their order, after renaming, adding and deleting.
func TestVariantNames(t *testing.T) {
	s := fresh(t)
	p, first := sampled(t, s)
	same := func(want int) {
		t.Helper()
		vs, err := s.Variants(t.Context(), p.ID)
		if err != nil {
			t.Fatal(err)
		}
		names, err := s.VariantNames(t.Context(), p.ID)
		if err != nil || len(names) != want || len(vs) != want {
			t.Fatalf("%d names of %d variants, want %d; %v", len(names), len(vs), want, err)
		}
		for i, v := range vs {
			if names[i] != (Named{v.ID, v.Value.Name}) {
				t.Errorf("%v, want %d %q", names[i], v.ID, v.Value.Name)
			}
		}
	}
	same(1)
	_, err := s.CreateVariant(t.Context(), p.ID, first.Value, "added", later(1))
	if err != nil {
		t.Fatal(err)
	}
	same(2)
	renamed := first.Value
	renamed.Name = "Another name"
	saved, err := s.SaveVariant(t.Context(), first.ID, renamed, Edit{Revision: first.Revision, Said: "renamed"}, later(2))
	if err != nil {
		t.Fatal(err)
	}
	same(2)
	if err := s.DeleteVariant(t.Context(), saved.ID, saved.Revision, "deleted", later(3)); err != nil {
		t.Fatal(err)
	}
	same(1)
	if names, err := s.VariantNames(t.Context(), 999); err != nil || names != nil {
		t.Errorf("of no project: %v, %v", names, err)
	}
}

// A variant is read with its project only where it belongs to it and both are there.
func TestDesign(t *testing.T) {
	s := opened(t, t.TempDir()+"/duskweight.db")
	doc := sample(t)
	p := make([]Saved[model.Project], 2)
	vs := make([][]Saved[model.Variant], 2)
	for i := range p {
		var err error
		if p[i], err = s.CreateProject(t.Context(), doc, "", noon); err != nil {
			t.Fatal(err)
		}
		if vs[i], err = s.Variants(t.Context(), p[i].ID); err != nil {
			t.Fatal(err)
		}
	}
	got, v, err := s.Design(t.Context(), p[1].ID, vs[1][0].ID)
	if err != nil || !reflect.DeepEqual(got, p[1]) || !reflect.DeepEqual(v, vs[1][0]) {
		t.Errorf("%v; project %d, variant %d", err, got.ID, v.ID)
	}
	if _, _, err := s.Design(t.Context(), p[0].ID, vs[1][0].ID); !errors.Is(err, ErrNotFound) {
		t.Errorf("a variant of another project: %v", err)
	}
	if err := s.DeleteVariant(t.Context(), vs[1][0].ID, vs[1][0].Revision, "", noon); err != nil {
		t.Fatal(err)
	}
	if _, _, err := s.Design(t.Context(), p[1].ID, vs[1][0].ID); !errors.Is(err, ErrNotFound) {
		t.Errorf("a deleted variant: %v", err)
	}
	if err := s.DeleteProject(t.Context(), p[0].ID, p[0].Revision, "", noon); err != nil {
		t.Fatal(err)
	}
	if _, _, err := s.Design(t.Context(), p[0].ID, vs[0][0].ID); !errors.Is(err, ErrNotFound) {
		t.Errorf("a variant of a deleted project: %v", err)
	}
}
