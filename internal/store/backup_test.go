package store

import (
	"os"
	"reflect"
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
	if len(bs) != backups || bs[0].Number != 13 || bs[9].Number != 4 {
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
