package store

import (
	"database/sql"
	"os"
	"path/filepath"
	"reflect"
	"strings"
	"testing"

	"duskweight/internal/model"
)

// TestBackup makes a copy at a start when something changed, keeps the last ten, and each opens as the file was.
func TestBackup(t *testing.T) {
	s := fresh(t)
	ctx := t.Context()
	p, v := sampled(t, s)
	if n := len(must[[]Backup](t)(s.Backups())); n != 0 {
		t.Errorf("%d copies of an empty file", n)
	}
	s = reopened(t, s)
	s = reopened(t, s)
	if n := len(must[[]Backup](t)(s.Backups())); n != 1 {
		t.Errorf("%d copies after one change and two starts", n)
	}
	for i := range 12 {
		v = must[Saved[model.Variant]](t)(s.SaveVariant(ctx, v.ID, lifting(v.Value, float64(i+10)), Edit{Revision: v.Revision}, later(-i)))
		s = reopened(t, s)
	}
	bs := must[[]Backup](t)(s.Backups())
	if len(bs) != recentCopies || bs[0].Number != 13 || bs[9].Number != 4 {
		t.Errorf("copies: %+v", bs)
	}
	want := must[model.Document](t)(s.Export(ctx, p.ID))
	copied := opened(t, bs[0].Path)
	if got := must[model.Document](t)(copied.Export(ctx, p.ID)); !reflect.DeepEqual(got, want) {
		t.Error("the newest copy holds something else")
	}
	old := opened(t, bs[1].Path)
	if got := must[Saved[model.Variant]](t)(old.Variant(ctx, v.ID)); travel(got.Value) != 20 {
		t.Errorf("the copy before it: %v", travel(got.Value))
	}
}

// TestBackupOfSettings: settings and drafts are changes too.
func TestBackupOfSettings(t *testing.T) {
	s := fresh(t)
	ctx := t.Context()
	first := must[Backup](t)(s.Backup(ctx, noon))
	if again := must[Backup](t)(s.Backup(ctx, noon)); again != first {
		t.Error("copied without a change")
	}
	if err := s.SaveSettings(ctx, map[string]string{"units": "imperial"}); err != nil {
		t.Fatal(err)
	}
	second := must[Backup](t)(s.Backup(ctx, noon))
	if err := s.SaveDrafts(ctx, Thing{ProjectKind, 1}, map[string]string{"f": "x"}, noon); err != nil {
		t.Fatal(err)
	}
	third := must[Backup](t)(s.Backup(ctx, noon))
	if second.Number != first.Number+1 || third.Number != second.Number+1 {
		t.Error(first, second, third)
	}
}

// TestSpoiltCopy does not count a copy that is not sound, and says so at a start where none can be made.
func TestSpoiltCopy(t *testing.T) {
	s := fresh(t)
	ctx := t.Context()
	sampled(t, s)
	b := must[Backup](t)(s.Backup(ctx, noon))
	if err := os.WriteFile(b.Path, []byte("spoilt"), 0o600); err != nil {
		t.Fatal(err)
	}
	if again := must[Backup](t)(s.Backup(ctx, noon)); again.Number != b.Number+1 {
		t.Error("a spoilt copy was taken for the file")
	}
	if err := os.RemoveAll(copyFolder(s.Path())); err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(copyFolder(s.Path()), nil, 0o600); err != nil {
		t.Fatal(err)
	}
	s = reopened(t, s)
	if len(s.Notices()) != 1 {
		t.Errorf("notices: %q", s.Notices())
	}
}

// TestVerify finds a copy with a spoilt page, and one of another state of the file.
func TestVerify(t *testing.T) {
	s := fresh(t)
	ctx := t.Context()
	_, v := sampled(t, s)
	is := must[string](t)(fingerprint(ctx, s.Path()))
	b := must[Backup](t)(s.Backup(ctx, noon))
	if err := verify(ctx, b.Path, is); err != nil {
		t.Error(err)
	}
	must[Saved[model.Variant]](t)(s.SaveVariant(ctx, v.ID, lifting(v.Value, 9), Edit{Revision: v.Revision}, noon))
	if err := verify(ctx, b.Path, must[string](t)(fingerprint(ctx, s.Path()))); err == nil || !strings.Contains(err.Error(), "not like the file") {
		t.Errorf("an older copy passed for a new one: %v", err)
	}
	spoilIndex(t, b.Path)
	if err := verify(ctx, b.Path, is); err == nil || !strings.Contains(err.Error(), "not sound") {
		t.Errorf("an unsound copy passed: %v", err)
	}
}

// spoilIndex spoils the page of an index that the fingerprint does not read: only the check of the whole file finds it.
func spoilIndex(t *testing.T, path string) {
	t.Helper()
	var root, size int64
	err := look(t.Context(), path, func(db *sql.DB) error {
		return db.QueryRow(`SELECT rootpage, page_size FROM sqlite_schema, pragma_page_size WHERE name = 'revision_newest'`).Scan(&root, &size)
	})
	if err != nil {
		t.Fatal(err)
	}
	f := must[*os.File](t)(os.OpenFile(path, os.O_RDWR, 0))
	defer f.Close()
	if _, err := f.WriteAt(make([]byte, size), (root-1)*size); err != nil {
		t.Fatal(err)
	}
}

// TestDamagedCopyIsMadeAgain makes a new copy of an unchanged file where a page of the newest copy is damaged, and none
// where that copy is sound.
func TestDamagedCopyIsMadeAgain(t *testing.T) {
	s := fresh(t)
	ctx := t.Context()
	sampled(t, s)
	first := must[Backup](t)(s.Backup(ctx, noon))
	spoilIndex(t, first.Path)
	second := must[Backup](t)(s.Backup(ctx, noon))
	if second.Number != first.Number+1 {
		t.Errorf("after damage to copy %d the newest copy is %d", first.Number, second.Number)
	}
	if err := sound(ctx, second.Path); err != nil {
		t.Error(err)
	}
	if third := must[Backup](t)(s.Backup(ctx, noon)); third != second {
		t.Errorf("copied again without a change: %+v", third)
	}
}

// TestCopyThatFails leaves nothing under the name of a copy when the copy is not like the file.
func TestCopyThatFails(t *testing.T) {
	s := fresh(t)
	sampled(t, s)
	final := filepath.Join(copyFolder(s.Path()), "duskweight-000001-x.db")
	if err := writeCopy(t.Context(), s.Path(), final, "another state"); err == nil {
		t.Error("no error")
	}
	if left := must[[]os.DirEntry](t)(os.ReadDir(copyFolder(s.Path()))); len(left) != 0 {
		t.Errorf("left behind: %v", left)
	}
}
