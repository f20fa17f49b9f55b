package store

import (
	"context"
	"database/sql"
	"errors"
	"fmt"
	"math/rand/v2"
	"os"
	"path/filepath"
	"reflect"
	"strconv"
	"strings"
	"testing"
	"time"

	"duskweight/internal/model"
)

// torture is whether the long forms are run.
var torture = os.Getenv("DUSKWEIGHT_TORTURE") != ""

// often is how often a random check is done: so many times in an ordinary run, so many in a long one. DUSKWEIGHT_TORTURE=0.05
// does a twentieth of the long one.
func often(usual, long int) int {
	if !torture {
		return usual
	}
	if share, err := strconv.ParseFloat(os.Getenv("DUSKWEIGHT_TORTURE"), 64); err == nil && share > 0 && share < 1 {
		return max(usual, int(share*float64(long)))
	}
	return long
}

// logicalDump is all that a file says, the notes of a return to a copy left out.
func logicalDump(t testing.TB, path string) string {
	t.Helper()
	var said string
	if err := look(context.Background(), path, func(db *sql.DB) error {
		said = dumpOf(t, db)
		return nil
	}); err != nil {
		t.Fatal(err)
	}
	return said
}

func dumpOf(t testing.TB, db *sql.DB) string {
	t.Helper()
	var b strings.Builder
	if err := func() error {
		rows, err := db.Query(`SELECT * FROM (SELECT 'r', ` + strings.ReplaceAll(rowColumns, "series", "coalesce(series, '')") + ` FROM revision WHERE said <> '` + goneBack + `' ORDER BY seq)`)
		if err != nil {
			return err
		}
		if err := writeRows(&b, rows); err != nil {
			return err
		}
		for _, q := range []string{`SELECT * FROM series ORDER BY hash`, `SELECT * FROM draft ORDER BY kind, thing, field`, `SELECT * FROM setting ORDER BY name`} {
			if rows, err = db.Query(q); err != nil {
				return err
			}
			if err := writeRows(&b, rows); err != nil {
				return err
			}
		}
		return nil
	}(); err != nil {
		t.Fatal(err)
	}
	return b.String()
}

func writeRows(b *strings.Builder, rows *sql.Rows) error {
	columns, err := rows.Columns()
	if err != nil {
		return err
	}
	defer rows.Close()
	for rows.Next() {
		values := make([]any, len(columns))
		into := make([]any, len(columns))
		for i := range values {
			into[i] = &values[i]
		}
		if err := rows.Scan(into...); err != nil {
			return err
		}
		fmt.Fprintln(b, values...)
	}
	return rows.Err()
}

// shake changes something at random.
func shake(t *testing.T, s *Store, r *rand.Rand, at time.Time) {
	t.Helper()
	ctx := t.Context()
	ps := must[[]Listed](t)(s.Projects(ctx))
	if len(ps) == 0 || r.IntN(12) == 0 {
		must[Saved[model.Project]](t)(s.CreateProject(ctx, sample(t), "Made", at))
		return
	}
	p := ps[r.IntN(len(ps))]
	vs := must[[]Saved[model.Variant]](t)(s.Variants(ctx, p.ID))
	switch k := r.IntN(10); {
	case k < 5:
		v := vs[r.IntN(len(vs))]
		must[Saved[model.Variant]](t)(s.SaveVariant(ctx, v.ID, lifting(v.Value, 1+r.Float64()), Edit{Revision: v.Revision, Said: "Travel", Page: "p", Field: "f"}, at))
	case k < 7:
		if _, err := s.Undo(ctx, p.ID, 0, at); err != nil && !errors.Is(err, ErrNothing) {
			t.Fatal(err)
		}
	case k == 7:
		if err := s.DeleteProject(ctx, p.ID, p.Revision, "Deleted", at); err != nil {
			t.Fatal(err)
		}
	case k == 8:
		if err := s.SaveDrafts(ctx, Thing{VariantKind, vs[0].ID}, map[string]string{"mass": fmt.Sprint(r.IntN(99))}, at); err != nil {
			t.Fatal(err)
		}
	default:
		if err := s.SaveSettings(ctx, map[string]string{"currency": fmt.Sprint(r.IntN(99))}); err != nil {
			t.Fatal(err)
		}
	}
}

// TestRestoreDrills goes back to copies at random, and back again from there: the file then says what the copy says; no
// id and no number of a revision is ever given twice with another content.
func TestRestoreDrills(t *testing.T) {
	s := fresh(t)
	ctx := t.Context()
	r := rand.New(rand.NewPCG(6, 1))
	at := noon
	contents := map[string]string{} // of every revision that a page could ever have shown
	watch := func() {
		rows := must[*sql.Rows](t)(s.reader.Query(`SELECT kind || ' ' || thing || ' revision ' || number, name || deleted || body FROM
			(SELECT kind, thing, max(number) AS number FROM revision GROUP BY kind, thing) JOIN revision USING (kind, thing, number)`))
		defer rows.Close()
		for rows.Next() {
			var which, says string
			if err := rows.Scan(&which, &says); err != nil {
				t.Fatal(err)
			}
			if was, ok := contents[which]; ok && was != says {
				t.Errorf("%s was\n%s\nand is\n%s", which, was, says)
			}
			contents[which] = says
		}
	}
	drills := often(40, 1000)
	for range drills {
		for range 1 + r.IntN(3) {
			at = at.Add(20 * time.Second)
			shake(t, s, r, at)
			watch()
		}
		must[Backup](t)(s.Backup(ctx, at))
		bs := must[[]Backup](t)(s.Backups())
		copied := bs[r.IntN(len(bs))]
		want, was := logicalDump(t, copied.Path), logicalDump(t, s.Path())
		before := must[Backup](t)(s.Restore(ctx, copied.Path, at))
		watch()
		if got := logicalDump(t, s.Path()); got != want {
			t.Fatalf("after the return to copy %d the file says\n%s\nand the copy\n%s", copied.Number, got, want)
		}
		if r.IntN(2) == 0 {
			must[Backup](t)(s.Restore(ctx, before.Path, at))
			watch()
			if got := logicalDump(t, s.Path()); got != was {
				t.Fatal("the return could not be taken back")
			}
		}
		if t.Failed() {
			return
		}
	}
	if err := sound(ctx, s.Path()); err != nil {
		t.Error(err)
	}
	entries := must[[]os.DirEntry](t)(os.ReadDir(copyFolder(s.Path())))
	for _, e := range entries {
		if filepath.Ext(e.Name()) != ".db" {
			t.Errorf("left behind: %s", e.Name())
		}
	}
	t.Logf("%d drills, %d revisions watched", drills, len(contents))
}

// TestRestoreMakesPagesStale: what a page showed before a return to a copy is not saved over what came back.
func TestRestoreMakesPagesStale(t *testing.T) {
	s := fresh(t)
	ctx := t.Context()
	p, v := sampled(t, s)
	b := must[Backup](t)(s.Backup(ctx, noon))
	open := must[Saved[model.Variant]](t)(s.SaveVariant(ctx, v.ID, lifting(v.Value, 9), Edit{Revision: v.Revision}, later(1)))
	other := must[Saved[model.Project]](t)(s.CreateProject(ctx, sample(t), "", later(2)))
	must[Backup](t)(s.Restore(ctx, b.Path, later(3)))
	if _, err := s.SaveVariant(ctx, v.ID, lifting(v.Value, 10), Edit{Revision: open.Revision}, later(4)); !errors.Is(err, ErrStale) {
		t.Errorf("a page of before saved: %v", err)
	}
	now := must[Saved[model.Variant]](t)(s.Variant(ctx, v.ID))
	if travel(now.Value) != travel(v.Value) || now.Revision <= open.Revision || now.Said != goneBack {
		t.Errorf("%+v", now)
	}
	if again := must[Saved[model.Project]](t)(s.CreateProject(ctx, sample(t), "", later(5))); again.ID == other.ID || again.ID == p.ID {
		t.Errorf("id %d is used twice", again.ID)
	}
}

// TestRestoreWithLog reads a copy whose last changes are still in the log beside it, as after somebody opened it.
func TestRestoreWithLog(t *testing.T) {
	s := fresh(t)
	ctx := t.Context()
	sampled(t, s)
	other := opened(t, filepath.Join(t.TempDir(), "other.db"))
	_, v := sampled(t, other)
	must[Saved[model.Variant]](t)(other.SaveVariant(ctx, v.ID, lifting(v.Value, 9), Edit{Revision: 1}, noon))
	if info, err := os.Stat(other.Path() + "-wal"); err != nil || info.Size() == 0 {
		t.Fatal("there is no log", err)
	}
	must[Backup](t)(s.Restore(ctx, other.Path(), noon))
	if got := must[Saved[model.Variant]](t)(s.Variant(ctx, v.ID)); travel(got.Value) != 9 {
		t.Errorf("the log was not read: %v", travel(got.Value))
	}
}

// TestRestoreRefused changes nothing where the copy is none of ours, is newer, spoilt, empty or not there.
func TestRestoreRefused(t *testing.T) {
	s := fresh(t)
	ctx := t.Context()
	_, v := sampled(t, s)
	good := must[Backup](t)(s.Backup(ctx, noon))
	must[Saved[model.Variant]](t)(s.SaveVariant(ctx, v.ID, lifting(v.Value, 9), Edit{Revision: 1}, noon))
	data := must[[]byte](t)(os.ReadFile(good.Path))
	newer := append([]byte(nil), data...)
	newer[63] = 99 // user_version, big-endian at byte 60 (SQLite file format, section 1.3)
	torn := append([]byte(nil), data[:len(data)-8192]...)
	was := logicalDump(t, s.Path())
	for name, data := range map[string][]byte{"junk": []byte(strings.Repeat("junk", 1000)), "empty": nil, "newer": newer, "torn": torn} {
		path := filepath.Join(t.TempDir(), name+".db")
		if err := os.WriteFile(path, data, 0o600); err != nil {
			t.Fatal(err)
		}
		if _, err := s.Restore(ctx, path, noon); err == nil {
			t.Errorf("%s was taken", name)
		}
		if _, _, err := RestoreFile(ctx, filepath.Join(t.TempDir(), "new", "duskweight.db"), path, noon); err == nil {
			t.Errorf("%s was taken for a new file", name)
		}
		if is := must[[]byte](t)(os.ReadFile(path)); !reflect.DeepEqual(is, append([]byte{}, data...)) {
			t.Errorf("%s was changed", name)
		}
	}
	if _, err := s.Restore(ctx, filepath.Join(t.TempDir(), "none.db"), noon); !errors.Is(err, ErrNotFound) {
		t.Errorf("no copy: %v", err)
	}
	if logicalDump(t, s.Path()) != was {
		t.Error("something changed")
	}
}

// TestRestoreFile puts a copy in the place of a file that is damaged or no database any more, and keeps that one.
func TestRestoreFile(t *testing.T) {
	ctx := t.Context()
	for name, spoil := range map[string]func([]byte) []byte{
		"sound":    func(b []byte) []byte { return b },
		"junk":     func(b []byte) []byte { return []byte(strings.Repeat("junk", 2000)) },
		"torn":     func(b []byte) []byte { return b[:len(b)-3*4096] },
		"no pages": func(b []byte) []byte { return append(append([]byte(nil), b[:4096]...), make([]byte, len(b)-4096)...) },
	} {
		if name == "no pages" && !torture { // the schema's tool tries for three seconds
			continue
		}
		s := fresh(t)
		sampled(t, s)
		b := must[Backup](t)(s.Backup(ctx, noon))
		want := logicalDump(t, b.Path)
		s.Close()
		spoilt := spoil(must[[]byte](t)(os.ReadFile(s.Path())))
		if err := os.WriteFile(s.Path(), spoilt, 0o600); err != nil {
			t.Fatal(err)
		}
		_, aside, err := RestoreFile(ctx, s.Path(), b.Path, later(1))
		if err != nil || (aside == "") != (name == "sound") {
			t.Errorf("%s: aside %q, %v", name, aside, err)
			continue
		}
		if aside != "" && string(must[[]byte](t)(os.ReadFile(aside))) != string(spoilt) {
			t.Errorf("%s: the old file is not kept", name)
		}
		opened(t, s.Path())
		if logicalDump(t, s.Path()) != want {
			t.Errorf("%s: the file is not like the copy", name)
		}
	}
}
