//go:build linux && amd64

package store

import (
	"context"
	"encoding/json"
	"errors"
	"fmt"
	"io/fs"
	"math/rand/v2"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"syscall"
	"testing"

	"duskweight/internal/model"
)

func init() { parts["bear"] = bear }

// bear changes a file in every way, whatever the system refuses, and tells each change once it was acknowledged. After each
// it reads what is stored, and ends with an error where that is less than what it told: a later change would hide it. At the
// end it tells whether a change is saved again.
func bear(path string) error {
	ctx := context.Background()
	var s *Store
	var err error
	for try := 0; s == nil; try++ {
		if s, err = Open(ctx, path, noon); err != nil && try == 2 {
			return nil // nothing was told; the next start is somebody else's
		}
	}
	told, err := counted(s)
	if err != nil {
		return err
	}
	doc, err := s.Export(ctx, 1)
	if err != nil {
		return err
	}
	for step := range 12 {
		next := told
		switch step % 6 {
		case 0, 1, 2:
			next.Saved++
			err = saveTravel(ctx, s, next.Saved)
		case 3:
			next.Drafted = next.Saved
			err = s.SaveDrafts(ctx, Thing{VariantKind, 1}, map[string]string{"f": fmt.Sprint(next.Saved)}, noon)
		case 4:
			next.Undos++
			_, err = s.Undo(ctx, 1, 0, noon)
		case 5:
			if step == 5 { // a copy
				_, err = s.Backup(ctx, noon)
				break
			}
			next.Projects++
			_, err = s.CreateProject(ctx, doc, "Taken in", noon)
		}
		if err == nil {
			if told = next; tell(told) != nil {
				return errors.New("nobody listens")
			}
		}
		is, failed := counted(s)
		if failed != nil {
			return fmt.Errorf("after step %d (%v) nothing can be read: %w", step, err, failed)
		}
		if less := is.lost(told); less != nil {
			return fmt.Errorf("after step %d (%v) less is read than was acknowledged: %v", step, err, less)
		}
		told.Saved = max(told.Saved, is.Saved) // the next value is a greater one
	}
	for range 2 { // the first one may be what is refused
		if err := s.SaveSettings(ctx, map[string]string{"end": "1"}); err == nil {
			told.Beside = map[string]int{"end": 1}
			if err := tell(told); err != nil {
				return err
			}
			break
		}
	}
	_ = s.Close() // it may be refused too
	return nil
}

// begun is a file with a project, in a folder of its own.
func begun(t *testing.T, folder string) (path string) {
	t.Helper()
	path = filepath.Join(folder, "duskweight.db")
	s := opened(t, path)
	_, v := sampled(t, s)
	must[Saved[model.Variant]](t)(s.SaveVariant(t.Context(), v.ID, lifting(v.Value, 3), Edit{Revision: 1}, noon))
	if err := s.Close(); err != nil {
		t.Fatal(err)
	}
	return path
}

// stands makes sure that a file opens again, is sound, and has all that was told.
func stands(t *testing.T, what, path string, told tally) {
	t.Helper()
	s, err := Open(t.Context(), path, noon)
	if err != nil {
		t.Errorf("%s: it does not open again: %v", what, err)
		return
	}
	defer s.Close()
	if err := sound(t.Context(), path); err != nil {
		t.Errorf("%s: %v", what, err)
	}
	if less := must[tally](t)(counted(s)).lost(told); less != nil {
		t.Errorf("%s: acknowledged changes are lost: %v", what, less)
	}
}

// lastTold is what a traced process told last.
func lastTold(t *testing.T, calls []fileCall) (told tally) {
	t.Helper()
	for _, c := range slices.Backward(calls) {
		if c.name == "told" {
			if err := json.Unmarshal(c.data, &told); err != nil {
				t.Fatal(err)
			}
			break
		}
	}
	return told
}

// TestRefusedCall lets the system refuse the Nth call that writes, syncs, opens, cuts, renames or removes, with the error of
// a broken disk or of a full one: nothing that was acknowledged is lost, what is read after it is what was acknowledged, a
// later change is saved again, and the file opens again. Every N in the long form, some in an ordinary run.
func TestRefusedCall(t *testing.T) {
	var names []string // of all calls, in a run without a refusal
	run := func(n int, no syscall.Errno) (refused fileCall) {
		calls := 0
		path := begun(t, t.TempDir())
		cmd := partCommand("bear", path)
		var said strings.Builder
		cmd.Stderr = &said
		did, err := tracedAs(cmd, filepath.Dir(path), func(c fileCall) syscall.Errno {
			if n == 0 {
				names = append(names, c.name+" "+filepath.Base(c.path))
			}
			if calls++; calls != n {
				return 0
			}
			refused = c
			return no
		})
		what := fmt.Sprintf("call %d, %s of %s with %v", n, refused.name, filepath.Base(refused.path), no)
		if no, ok := errors.AsType[syscall.Errno](err); ok && n == 0 {
			t.Skipf("LEFT OUT: this system lets no process be traced: %v", no)
		}
		if err != nil {
			t.Errorf("%s: %v: %s", what, err, said.String())
			return refused
		}
		told := lastTold(t, did)
		if told.Beside["end"] != 1 {
			t.Errorf("%s: nothing is saved after it: %s", what, said.String())
		}
		stands(t, what, path, told)
		return refused
	}
	run(0, 0)
	all := len(names)
	if all < 100 {
		t.Fatalf("%d calls", all)
	}
	tried := map[string]int{}
	try := func(n int, no syscall.Errno) { tried[run(n, no).name]++ }
	r := rand.New(rand.NewPCG(8, 8))
	switch every := often(0, all); {
	case every == 0: // two, where changes are saved, and the opening of the file to be written to, after it was made sure that there is one
		for name, no := range map[string]syscall.Errno{"sync": syscall.EIO, "write": syscall.ENOSPC} {
			var at []int
			for i, is := range names {
				if is == name+" duskweight.db-wal" {
					at = append(at, i+1)
				}
			}
			if len(at) < 10 {
				t.Fatalf("%d times %s", len(at), name)
			}
			try(at[len(at)/2], no)
		}
		opening := 0
		for i := range all - 2 {
			if names[i] == "open duskweight.db" && names[i+1] == names[i] && names[i+2] == names[i]+"-wal" {
				opening = i + 2
			}
		}
		try(opening, syscall.EIO)
	case every < all:
		for range every {
			try(1+r.IntN(all), []syscall.Errno{syscall.EIO, syscall.ENOSPC}[r.IntN(2)])
		}
	default:
		for n := 1; n <= all; n++ {
			try(n, syscall.EIO)
			try(n, syscall.ENOSPC)
		}
	}
	t.Logf("%d calls, refused were %v", all, tried)
}

// TestFullFileSystem does the same where the file system itself is full: a small one in memory of which so many pages of
// 4 KiB are left. Once there is room again, the file opens with all that was acknowledged.
func TestFullFileSystem(t *testing.T) {
	small := t.TempDir()
	if err := syscall.Mount("tmpfs", small, "tmpfs", 0, "size=4m"); err != nil {
		t.Skipf("LEFT OUT: only root may make a small file system here: %v", err)
	}
	t.Cleanup(func() {
		if err := syscall.Unmount(small, 0); err != nil {
			t.Error(err)
		}
	})
	full, most := 0, 0
	left := []int{20, 60}
	if long := often(0, 300); long > 0 {
		left = nil
		for n := range 300 {
			if len(left) < long*(n+1)/300 {
				left = append(left, n)
			}
		}
	}
	for _, pages := range left {
		folder := filepath.Join(small, fmt.Sprint(pages))
		path := begun(t, folder)
		var disk syscall.Statfs_t
		if err := syscall.Statfs(small, &disk); err != nil {
			t.Fatal(err)
		}
		filler := filepath.Join(small, "filler")
		fill := int64(disk.Bavail)*disk.Bsize - int64(pages)*4096
		if err := os.WriteFile(filler, make([]byte, max(fill, 0)), 0o600); err != nil {
			t.Fatal(err)
		}
		cmd := partCommand("bear", path)
		var said strings.Builder
		cmd.Stderr = &said
		out, err := cmd.Output()
		what := fmt.Sprintf("%d pages left", pages)
		if err != nil {
			t.Errorf("%s: %v: %s", what, err, said.String())
		}
		var told tally
		for line := range strings.Lines(string(out)) {
			if err := json.Unmarshal([]byte(line), &told); err != nil {
				t.Fatal(err)
			}
		}
		if told.Beside["end"] != 1 {
			full++
		}
		most = max(most, told.Saved)
		if err := os.Remove(filler); err != nil {
			t.Fatal(err)
		}
		stands(t, what, path, told)
		if err := os.RemoveAll(folder); err != nil && !errors.Is(err, fs.ErrNotExist) {
			t.Fatal(err)
		}
	}
	t.Logf("%d times, full at the end in %d, at most %d saved", len(left), full, most)
	if full == 0 {
		t.Error("it was never full: this test is blind")
	}
}
