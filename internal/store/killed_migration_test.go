//go:build linux && amd64

package store

import (
	"context"
	"errors"
	"fmt"
	"path/filepath"
	"strings"
	"syscall"
	"testing"

	"duskweight/migrations"
)

func init() {
	parts["once"] = func(path string) error {
		s, err := Open(context.Background(), path, noon)
		if err != nil {
			return err
		}
		return s.Close()
	}
}

// TestKilledMigration kills a start on a file of an older schema before its Nth call that writes, syncs, opens, cuts,
// renames or removes, which is finer than at every statement: the next start finds what the file said before, brings it up
// to date, and a copy of the old schema lies beside it. Every N of every schema in the long form; in an ordinary run some of
// the oldest one, where the log is written.
func TestKilledMigration(t *testing.T) {
	kills := 0
	for schema := 1; schema < migrations.Newest; schema++ {
		var names []string // of all calls, in a run to its end
		run := func(n int) {
			path := releasedFile(t, schema)
			want := logicalDump(t, path)
			cmd := partCommand("once", path)
			var said strings.Builder
			cmd.Stderr = &said
			calls := 0
			_, err := tracedAs(cmd, filepath.Dir(path), func(c fileCall) syscall.Errno {
				if n == 0 {
					names = append(names, c.name+" "+filepath.Base(c.path))
				}
				if calls++; calls == n {
					kills++
					_ = cmd.Process.Kill() // it does not come to the call
				}
				return 0
			})
			if no, ok := errors.AsType[syscall.Errno](err); ok && n == 0 {
				t.Skipf("LEFT OUT: this system lets no process be traced: %v", no)
			}
			what := fmt.Sprintf("schema %d, killed before call %d", schema, n)
			if killed := err != nil; killed != (n > 0 && n <= calls) {
				t.Errorf("%s of %d: %v %s", what, calls, err, said.String())
			}
			s, err := Open(t.Context(), path, noon)
			if err != nil {
				t.Errorf("%s: %v", what, err)
				return
			}
			defer s.Close()
			if got := logicalDump(t, path); got != want {
				t.Errorf("%s: it said\n%s\nand says\n%s", what, want, got)
			}
			if version := must[int](t)(inspect(t.Context(), path, looking)); version != migrations.Newest {
				t.Errorf("%s: it is of schema %d", what, version)
			}
			if err := sound(t.Context(), path); err != nil {
				t.Errorf("%s: %v", what, err)
			}
			old := 0
			for _, b := range must[[]Backup](t)(s.Backups()) {
				if must[int](t)(inspect(t.Context(), b.Path, looking)) == schema && logicalDump(t, b.Path) == want {
					old++
				}
			}
			if old == 0 {
				t.Errorf("%s: there is no copy of the old schema", what)
			}
		}
		run(0)
		var at []int
		for i, name := range names {
			if name == "write duskweight.db-wal" {
				at = append(at, i+1)
			}
		}
		if len(at) < 8 {
			t.Fatalf("schema %d: the log is written %d times", schema, len(at))
		}
		switch every := often(0, len(names)); {
		case every == 0 && schema == 1:
			run(at[len(at)/4])
			run(at[3*len(at)/4])
		case every > 0:
			for i := range every {
				run(1 + i*len(names)/every)
			}
		}
	}
	t.Logf("%d kills", kills)
}
