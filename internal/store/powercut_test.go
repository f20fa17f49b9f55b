//go:build linux && amd64

package store

import (
	"context"
	"database/sql"
	"encoding/json"
	"errors"
	"fmt"
	"maps"
	"math/rand/v2"
	"os"
	"path/filepath"
	"slices"
	"syscall"
	"testing"
)

func init() {
	parts["full"] = func(path string) error { return saveSome(path, "FULL") }
	parts["normal"] = func(path string) error { return saveSome(path, "NORMAL") }
}

// saveSome saves, twice with a close between, while others save beside it, and tells each change once it was acknowledged.
func saveSome(path, synchronous string) error {
	ctx := context.Background()
	for range 2 {
		s, err := Open(ctx, path, noon)
		if err != nil {
			return err
		}
		if _, err := s.writer.Exec(`PRAGMA synchronous = ` + synchronous); err != nil {
			return err
		}
		done, err := counted(s)
		if err != nil {
			return err
		}
		halt := saveBeside(ctx, s, done.Beside)
		for range 20 {
			done.Saved++
			if err := saveTravel(ctx, s, done.Saved); err != nil {
				return err
			}
			if err := tell(tally{Saved: done.Saved}); err != nil {
				return err
			}
		}
		if err := halt(); err != nil {
			return err
		}
		if err := s.Close(); err != nil {
			return err
		}
	}
	return nil
}

// disk is what a cut of the power would leave: of each file what was synced, and what was written since and may or may
// not be there. A name is there for good once its folder is synced; names go to the disk in their order.
type disk struct {
	names   map[string]*file // as the process sees them
	durable map[string]*file
	moves   []map[string]*file // the names after each change since the folder was synced
}

type file struct {
	synced []byte
	since  []fileCall
}

func (f *file) with(calls []fileCall) []byte {
	b := slices.Clone(f.synced)
	for _, c := range calls {
		end := c.offset + int64(len(c.data))
		if c.name == "cut" && int64(len(b)) > c.offset {
			b = b[:c.offset]
		}
		if grow := end - int64(len(b)); grow > 0 {
			b = append(b, make([]byte, grow)...)
		}
		copy(b[c.offset:], c.data)
	}
	return b
}

func (d *disk) do(c fileCall, folder string) error {
	switch c.name {
	case "create":
		d.names[c.path] = &file{}
	case "unlink":
		delete(d.names, c.path)
	case "rename":
		d.names[c.to] = d.names[c.path]
		delete(d.names, c.path)
	case "write", "cut":
		f := d.names[c.path]
		if f == nil {
			return fmt.Errorf("%s of an unknown file %s", c.name, c.path)
		}
		f.since = append(f.since, c)
		return nil
	case "sync":
		if f := d.names[c.path]; f != nil {
			f.synced, f.since = f.with(f.since), nil
		} else if c.path == folder {
			d.durable, d.moves = maps.Clone(d.names), nil
		}
		return nil
	case "plain write":
		return fmt.Errorf("a write without a place in %s", c.path)
	}
	d.moves = append(d.moves, maps.Clone(d.names))
	return nil
}

// cut writes into a folder what the disk may hold after a cut of the power: some of the names, and of each file some of
// the sectors that were not synced.
func (d *disk) cut(r *rand.Rand, into string) error {
	names := d.durable
	if k := r.IntN(len(d.moves) + 1); k > 0 {
		names = d.moves[k-1]
	}
	share := []float64{0, 1, r.Float64()}[r.IntN(3)]
	for path, f := range names {
		var some []fileCall
		for _, c := range f.since {
			for at := 0; at == 0 || at < len(c.data); at += 512 {
				if r.Float64() < share {
					some = append(some, fileCall{name: c.name, offset: c.offset + int64(at), data: c.data[at:min(at+512, len(c.data))]})
				}
			}
		}
		if err := os.WriteFile(filepath.Join(into, filepath.Base(path)), f.with(some), 0o600); err != nil {
			return err
		}
	}
	return nil
}

// cutPower traces a saving process and cuts the power at random places; it returns in how many of the cuts something
// acknowledged was lost.
func cutPower(t *testing.T, part string, cuts int) (lost int) {
	t.Helper()
	path := filepath.Join(t.TempDir(), "duskweight.db")
	s := opened(t, path)
	_, v := sampled(t, s)
	if err := second(s.SaveVariant(t.Context(), v.ID, lifting(v.Value, 3), Edit{Revision: 1}, noon)); err != nil {
		t.Fatal(err)
	}
	must[Backup](t)(s.Backup(t.Context(), noon))
	s.Close()
	first := &file{synced: must[[]byte](t)(os.ReadFile(path))}
	folder := filepath.Dir(path)
	cmd := partCommand(part, path)
	calls, err := traced(cmd, folder)
	if _, refused := errors.AsType[syscall.Errno](err); refused {
		t.Skipf("LEFT OUT: this system lets no process be traced: %v", err)
	}
	if err != nil {
		t.Fatal(err)
	}
	r := rand.New(rand.NewPCG(2, uint64(cuts)))
	at := map[int]int{}
	for range cuts {
		at[r.IntN(len(calls))]++
	}
	d := disk{names: map[string]*file{path: first}, durable: map[string]*file{path: first}}
	var told tally
	for i, c := range calls {
		switch {
		case c.name == "told":
			if err := json.Unmarshal(c.data, &told); err != nil {
				t.Fatal(err)
			}
		case filepath.Dir(c.path) == filepath.Join(folder, "backups"): // copies are not what is cut here
		default:
			if err := d.do(c, folder); err != nil {
				t.Fatal(err)
			}
		}
		for range at[i] {
			if !kept(t, &d, r, told) {
				lost++
			}
		}
	}
	t.Logf("%s: %d changes of files, %d cuts, something acknowledged lost in %d", part, len(calls), cuts, lost)
	return lost
}

// kept cuts the power once and reports whether the file then is sound and has all that was told.
func kept(t *testing.T, d *disk, r *rand.Rand, told tally) bool {
	t.Helper()
	into := must[string](t)(os.MkdirTemp(t.TempDir(), "cut"))
	defer os.RemoveAll(into)
	if err := d.cut(r, into); err != nil {
		t.Fatal(err)
	}
	db := must[*sql.DB](t)(sql.Open("sqlite3", dsn(filepath.Join(into, "duskweight.db"), nil)))
	defer db.Close()
	var said string
	if err := db.QueryRow(`PRAGMA integrity_check`).Scan(&said); err != nil || said != "ok" {
		t.Logf("not sound: %s %v", said, err)
		return false
	}
	is, err := counted(&Store{reader: db})
	return err == nil && is.lost(told) == nil
}

// TestPowerCut loses nothing that was acknowledged, wherever the power is cut; and sees what is lost where SQLite does
// not wait for the disk, or else it would be blind.
func TestPowerCut(t *testing.T) {
	if lost := cutPower(t, "full", often(300, 100_000)); lost > 0 {
		t.Errorf("something acknowledged was lost in %d cuts", lost)
	}
	if lost := cutPower(t, "normal", often(60, 1000)); lost == 0 {
		t.Error("nothing was lost with synchronous=NORMAL: this test is blind")
	}
}
