package store

import (
	"bytes"
	"context"
	"errors"
	"fmt"
	"math/rand/v2"
	"os"
	"path/filepath"
	"reflect"
	"strings"
	"testing"
	"time"

	"duskweight/internal/document"
	"duskweight/internal/model"
)

// worked makes a file with a life behind it: projects with a history, one with a weather file, a deleted one; its copy is
// older than its last changes.
func worked(t *testing.T) (path string, copied Backup) {
	t.Helper()
	ctx := t.Context()
	s := fresh(t)
	doc := sample(t)
	doc.Variants = append(doc.Variants, doc.Variants[0], doc.Variants[0])
	doc.Variants[1].Name, doc.Variants[2].Name = "Second", "Third"
	for i := range 4 {
		doc.Project.Name = fmt.Sprintf("Hut %d", i)
		p := must[Saved[model.Project]](t)(s.CreateProject(ctx, doc, "Made", later(i)))
		if i == 2 {
			with := p.Value
			with.Weather = year()
			must[Saved[model.Project]](t)(s.SaveProject(ctx, p.ID, with, Edit{Revision: 1, Said: "Weather"}, later(i)))
		}
		for _, v := range must[[]Saved[model.Variant]](t)(s.Variants(ctx, p.ID)) {
			for k := range 4 {
				v = must[Saved[model.Variant]](t)(s.SaveVariant(ctx, v.ID, lifting(v.Value, float64(2+k)), Edit{Revision: v.Revision, Said: "Travel"}, later(5+k)))
			}
		}
	}
	if err := s.DeleteProject(ctx, 4, 1, "Deleted", later(20)); err != nil {
		t.Fatal(err)
	}
	copied = must[Backup](t)(s.Backup(ctx, later(21)))
	vs := must[[]Saved[model.Variant]](t)(s.Variants(ctx, 1))
	must[Saved[model.Variant]](t)(s.SaveVariant(ctx, vs[1].ID, lifting(vs[1].Value, 9), Edit{Revision: vs[1].Revision}, later(22)))
	if err := s.Close(); err != nil {
		t.Fatal(err)
	}
	return s.Path(), copied
}

// exported is each project of a file as its document, by its number.
func exported(t *testing.T, s *Store) map[int64]string {
	t.Helper()
	out := map[int64]string{}
	for _, p := range must[[]Listed](t)(s.Projects(t.Context())) {
		out[p.ID] = encoded(t, must[model.Document](t)(s.Export(t.Context(), p.ID)))
	}
	return out
}

func encoded(t *testing.T, doc model.Document) string {
	t.Helper()
	return string(must[[]byte](t)(document.Encode(doc)))
}

func encodedVariant(t *testing.T, v model.Variant) string {
	t.Helper()
	return string(must[[]byte](t)(document.EncodeVariant(v)))
}

// damage is one way to spoil a file.
type damage struct {
	name  string
	spoil func([]byte) []byte
}

// damages are zeroed pages, pages of 0xff and of noise, pages that took each other's place, every byte of the header, files
// that end too early, and what is no file of ours.
func damages(size int, r *rand.Rand) (all []damage) {
	pages := size / rawPage
	add := func(name string, spoil func([]byte)) {
		all = append(all, damage{name, func(b []byte) []byte { b = bytes.Clone(b); spoil(b); return b }})
	}
	for n := range pages {
		if n > often(8, 25) && n%often(29, 1) != 0 { // most of the others hold the weather file
			continue
		}
		at := n * rawPage
		add(fmt.Sprintf("page %d is zeros", n+1), func(b []byte) { clear(b[at : at+rawPage]) })
		add(fmt.Sprintf("page %d is ones", n+1), func(b []byte) { copy(b[at:], bytes.Repeat([]byte{0xff}, rawPage)) })
		noise := make([]byte, 512)
		for i := range noise {
			noise[i] = byte(r.Uint32())
		}
		from := at + r.IntN(rawPage-512)
		add(fmt.Sprintf("noise in page %d", n+1), func(b []byte) { copy(b[from:], noise) })
		other := r.IntN(pages) * rawPage
		add(fmt.Sprintf("page %d is another", n+1), func(b []byte) { copy(b[at:at+rawPage], bytes.Clone(b[other:other+rawPage])) })
	}
	for i := 0; i < 112; i += often(2+r.IntN(4), 1) { // the header of the file and that of its first page
		bit := byte(1) << r.IntN(8)
		add(fmt.Sprintf("bit %d of header byte %d", bit, i), func(b []byte) { b[i] ^= bit })
		add(fmt.Sprintf("header byte %d is 0xff", i), func(b []byte) { b[i] = 0xff })
	}
	for _, left := range []int{0, 1, 15, 99, 100, 511, 512, 1000, rawPage - 1, rawPage, rawPage + 1, 5 * rawPage, size / 2, size - rawPage, size - 1} {
		all = append(all, damage{fmt.Sprintf("%d bytes left", left), func(b []byte) []byte { return b[:left] }})
	}
	return append(all, damage{"a letter", func([]byte) []byte { return []byte(strings.Repeat("Dear aunt, ", 900)) }})
}

// TestDamage spoils a file in some hundred ways. At each the program either has the projects as they were saved last, or says
// that the file is lost, and then: it has changed no byte, what it can still read can be imported and is a state that was
// once saved, and going back to the copy brings the copy and keeps the damaged file as it was.
func TestDamage(t *testing.T) {
	ctx := t.Context()
	path, copied := worked(t)
	kept := must[[]byte](t)(os.ReadFile(copied.Path))
	inCopy := logicalDump(t, copied.Path)
	sound := must[[]byte](t)(os.ReadFile(path))
	s := opened(t, path)
	was := exported(t, s)
	known := statesOf(t, s)
	s.Close()
	if len(was) != 3 {
		t.Fatalf("%d projects", len(was))
	}
	tally := map[string]int{}
	for _, d := range damages(len(sound), rand.New(rand.NewPCG(1, 5))) {
		dir := t.TempDir()
		at := filepath.Join(dir, "duskweight.db")
		spoilt := d.spoil(sound)
		put(t, at, spoilt)
		put(t, filepath.Join(copyFolder(at), filepath.Base(copied.Path)), kept)
		s, err := Open(ctx, at, later(30))
		if err == nil {
			tally["opened"]++
			if got := exported(t, s); s.ReadOnly() == "" && !reflect.DeepEqual(got, was) {
				t.Errorf("%s: it opened with %d other projects", d.name, len(got))
			}
			if err := s.SaveSettings(ctx, map[string]string{"units": "metric"}); err != nil && s.ReadOnly() == "" {
				t.Errorf("%s: it opened and cannot save: %v", d.name, err)
			}
			s.Close()
			continue
		}
		lost, ok := errors.AsType[*Lost](err)
		if !ok {
			t.Errorf("%s: %v", d.name, err)
			continue
		}
		tally[lost.Say()]++
		if is := must[[]byte](t)(os.ReadFile(at)); !bytes.Equal(is, spoilt) {
			t.Errorf("%s: the file was changed", d.name)
		}
		r := must[*Rescue](t)(OpenRescue(ctx, lost))
		found := must[Salvage](t)(r.Salvage())
		tally["projects read"] += len(found.Projects)
		for _, p := range found.Projects {
			again, err := document.Decode([]byte(encoded(t, p.Doc)))
			if err == nil {
				err = model.Check(again).Err()
			}
			if err != nil {
				t.Errorf("%s: a document that cannot be imported: %v", d.name, err)
			}
			whole := encoded(t, p.Doc) == was[p.ID]
			if whole {
				tally["projects as they were"]++
			}
			if !whole && len(p.Short) == 0 && !strings.HasPrefix(d.name, "noise") && was[p.ID] != "" {
				t.Errorf("%s: project %d is not as it was, without a word", d.name, p.ID)
			}
			for _, v := range p.Doc.Variants {
				if !known[encodedVariant(t, v)] && !strings.HasPrefix(d.name, "noise") {
					t.Errorf("%s: a variant that was never saved", d.name)
				}
			}
		}
		spares := must[[]Spare](t)(r.Spares(ctx))
		if len(spares) != 1 || spares[0].Projects != 3 || spares[0].Unsound {
			t.Errorf("%s: copies %+v", d.name, spares)
		}
		if goneBack := tally["gone back"]; r.Lost.How == Damaged && goneBack > often(8, 1<<20) {
			r.Close()
			continue
		}
		tally["gone back"]++
		s, aside, err := r.GoBack(ctx, spares[0].Path, later(31))
		if err != nil {
			t.Errorf("%s: going back: %v", d.name, err)
			continue
		}
		if got := logicalDump(t, at); got != inCopy {
			t.Errorf("%s: after going back the file is not like the copy", d.name)
		}
		if is := must[[]byte](t)(os.ReadFile(aside)); !bytes.Equal(is, spoilt) {
			t.Errorf("%s: the damaged file is not kept as it was", d.name)
		}
		s.Close()
	}
	for what, n := range tally {
		t.Logf("%5d %s", n, what)
	}
}

func put(t *testing.T, path string, data []byte) {
	t.Helper()
	if err := errors.Join(os.MkdirAll(filepath.Dir(path), 0o700), os.WriteFile(path, data, 0o600)); err != nil {
		t.Fatal(err)
	}
}

// statesOf are all variants that a file ever held.
func statesOf(t *testing.T, s *Store) map[string]bool {
	t.Helper()
	states := map[string]bool{}
	for id := int64(1); id <= 4; id++ {
		for _, c := range must[[]FullChange](t)(s.FullChanges(t.Context(), id, 0, 1000)) {
			for _, v := range []*model.Variant{c.VariantIs, c.VariantWas} {
				if v != nil {
					states[encodedVariant(t, *v)] = true
				}
			}
		}
	}
	return states
}

// TestRawReads reads a sound file without SQLite, with and without a log beside it, and comes to what SQLite reads.
func TestRawReads(t *testing.T) {
	path, _ := worked(t)
	for _, logged := range []bool{false, true} {
		s := opened(t, path)
		if logged {
			v := must[Saved[model.Variant]](t)(s.Variant(t.Context(), 1))
			must[Saved[model.Variant]](t)(s.SaveVariant(t.Context(), 1, lifting(v.Value, 11), Edit{Revision: v.Revision}, later(40)))
			if info, err := os.Stat(path + "-wal"); err != nil || info.Size() <= logHeader {
				t.Fatal("there is no log", err)
			}
		}
		want := exported(t, s)
		found := must[Salvage](t)(salvage(path))
		if len(found.Projects) != len(want) || len(found.Lost) != 0 {
			t.Fatalf("with a log %v: %d projects, want %d; lost %v", logged, len(found.Projects), len(want), found.Lost)
		}
		for _, p := range found.Projects {
			if encoded(t, p.Doc) != want[p.ID] || len(p.Short) > 0 {
				t.Errorf("with a log %v: project %d is read otherwise, %+v", logged, p.ID, p.Short)
			}
		}
		s.Close()
	}
}

// TestMissing does not make an empty file where copies of a lost one lie; an empty one is made when it is asked for, and the
// next start opens it.
func TestMissing(t *testing.T) {
	ctx := t.Context()
	for name, lose := range map[string]func(path string) error{
		"missing": os.Remove,
		"emptied": func(path string) error { return os.Truncate(path, 0) },
	} {
		path, _ := worked(t)
		if err := lose(path); err != nil {
			t.Fatal(err)
		}
		_, err := Open(ctx, path, noon)
		lost, ok := errors.AsType[*Lost](err)
		if !ok || (lost.How == Missing) != (name == "missing") || (lost.How == Emptied) != (name == "emptied") {
			t.Fatalf("%s: %v", name, err)
		}
		r := must[*Rescue](t)(OpenRescue(ctx, lost))
		if err := r.Announce("http://127.0.0.1:4321/"); err != nil {
			t.Fatal(err)
		}
		if _, err := Open(ctx, path, noon); !errors.Is(err, ErrBusy) {
			t.Errorf("%s: a second program: %v", name, err)
		}
		s, _, err := r.Begin(ctx, noon)
		if err != nil {
			t.Fatal(err)
		}
		if ps := must[[]Listed](t)(s.Projects(ctx)); len(ps) != 0 {
			t.Errorf("%s: %d projects", name, len(ps))
		}
		if spares := must[[]Spare](t)(Spares(ctx, path)); len(spares) != 1 || spares[0].Projects != 3 {
			t.Errorf("%s: the copies are %+v", name, spares)
		}
		reopened(t, s)
	}
	if _, err := Open(ctx, filepath.Join(t.TempDir(), "first", "duskweight.db"), noon); err != nil {
		t.Errorf("the first start of all: %v", err)
	}
}

// TestSetAside never puts one file that is kept in the place of another.
func TestSetAside(t *testing.T) {
	path := filepath.Join(t.TempDir(), "duskweight.db")
	seen := map[string]bool{}
	for i := range 3 {
		put(t, path, []byte(fmt.Sprint(i)))
		put(t, path+"-wal", []byte("log"))
		aside := must[string](t)(setAside(path, noon))
		if seen[aside] || string(must[[]byte](t)(os.ReadFile(aside))) != fmt.Sprint(i) || !exists(aside+"-wal") {
			t.Errorf("%d: %s", i, aside)
		}
		seen[aside] = true
	}
}

// TestRestoreFileOfALostOne goes back by command where the file is gone, empty, or says something of itself that is not so.
func TestRestoreFileOfALostOne(t *testing.T) {
	for name, lose := range map[string]func(path string) error{
		"missing": os.Remove,
		"emptied": func(path string) error { return os.Truncate(path, 0) },
		"schema":  func(path string) error { return flip(path, 63) },
		"owner":   func(path string) error { return flip(path, 70) },
	} {
		path, copied := worked(t)
		want := logicalDump(t, copied.Path)
		if err := lose(path); err != nil {
			t.Fatal(err)
		}
		if _, _, err := RestoreFile(t.Context(), path, copied.Path, later(1)); err != nil {
			t.Errorf("%s: %v", name, err)
			continue
		}
		opened(t, path)
		if logicalDump(t, path) != want {
			t.Errorf("%s: the file is not like the copy", name)
		}
	}
}

func flip(path string, at int) error {
	data, err := os.ReadFile(path)
	if err != nil {
		return err
	}
	data[at] ^= 2
	return os.WriteFile(path, data, 0o600)
}

// A weather file that is not as it was saved is noticed, although every page is sound.
func TestWeatherIsLooked(t *testing.T) {
	path, _ := worked(t)
	data := must[[]byte](t)(os.ReadFile(path))
	at := bytes.Index(data, []byte(`"Source":"made by`))
	if at < 0 {
		at = bytes.Index(data, []byte("made by a test"))
	}
	data[at+1] = 'X'
	put(t, path, data)
	_, err := Open(t.Context(), path, noon)
	if lost, ok := errors.AsType[*Lost](err); !ok || lost.How != Damaged {
		t.Fatalf("%v", err)
	}
	found := must[Salvage](t)(salvage(path))
	for _, p := range found.Projects {
		if p.ID == 3 && (len(p.Short) != 1 || !p.Short[0].Weather || p.Doc.Project.Weather != nil) {
			t.Errorf("%+v", p.Short)
		}
	}
	if say := (Shortfall{Thing: Thing{VariantKind, 3}, Name: "Second", Instead: noon}).Say(func(at time.Time) string { return at.Format("2 January") }); say != "Variant “Second”: its last change cannot be read. Its state of 20 March stands here instead." {
		t.Error(say)
	}
}

// TestBeginAgain lets somebody choose once more where the chosen file could not be opened: the lock is still held, and the file
// that was set aside is still kept.
func TestBeginAgain(t *testing.T) {
	ctx := t.Context()
	path, copied := worked(t)
	spoilt := bytes.Repeat([]byte("Dear aunt, "), 900)
	put(t, path, spoilt)
	_, err := Open(ctx, path, noon)
	lost, ok := errors.AsType[*Lost](err)
	if !ok {
		t.Fatal(err)
	}
	r := must[*Rescue](t)(OpenRescue(ctx, lost))
	gone, cancel := context.WithCancel(ctx)
	cancel()
	if _, _, err := r.Begin(gone, noon); !errors.Is(err, context.Canceled) {
		t.Fatalf("it began although nobody waits: %v", err)
	}
	if _, err := Open(ctx, path, noon); !errors.Is(err, ErrBusy) {
		t.Errorf("the lock was let go: %v", err)
	}
	s, _, err := r.GoBack(ctx, copied.Path, later(31))
	if err != nil {
		t.Fatal(err)
	}
	if ps := must[[]Listed](t)(s.Projects(ctx)); len(ps) != 3 {
		t.Errorf("%d projects", len(ps))
	}
	s.Close()
	all := must[[]string](t)(filepath.Glob(path + ".set-aside-*Z"))
	if len(all) == 0 || !bytes.Equal(must[[]byte](t)(os.ReadFile(all[0])), spoilt) {
		t.Errorf("what lay there is not kept: %q", all)
	}
}
