//go:build unix

package store

import (
	"bytes"
	"context"
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"syscall"
	"testing"

	"duskweight/migrations"
)

// lookOnly opens a file in a folder that cannot be written to, and tells what can be done with it.
func lookOnly(path string) error {
	ctx := context.Background()
	s, err := Open(ctx, path, noon)
	if err != nil {
		fmt.Println("refused:", err)
		return nil
	}
	doc, err := s.Export(ctx, 1)
	if err != nil {
		return err
	}
	_, err = s.SaveProject(ctx, 1, doc.Project, Edit{Revision: 1}, noon)
	fmt.Println(doc.Project.Name, "/", s.ReadOnly(), "/", errors.Is(err, ErrReadOnly), "/", len(s.Notices()))
	return s.Close()
}

// TestLockedFolder shows and exports what is in a folder that cannot be written to, as an ordinary user meets it.
func TestLockedFolder(t *testing.T) {
	dir := t.TempDir()
	program := filepath.Join(dir, "program") // where a user without rights can run it
	if err := os.WriteFile(program, must[[]byte](t)(os.ReadFile(os.Args[0])), 0o755); err != nil {
		t.Fatal(err)
	}
	if err := errors.Join(os.Chmod(program, 0o755), os.Chmod(dir, 0o755), os.Chmod(filepath.Dir(dir), 0o755)); err != nil {
		t.Fatal(err)
	}
	locked := filepath.Join(dir, "locked")
	s := opened(t, filepath.Join(locked, "duskweight.db"))
	sampled(t, s)
	s.Close()
	if err := os.WriteFile(filepath.Join(locked, "junk.db"), []byte(strings.Repeat("junk", 1000)), 0o644); err != nil {
		t.Fatal(err)
	}
	for _, name := range []string{"duskweight.db", "duskweight.db.lock"} {
		if err := os.Chmod(filepath.Join(locked, name), 0o444); err != nil {
			t.Fatal(err)
		}
	}
	if err := os.Chmod(locked, 0o555); err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { os.Chmod(locked, 0o755) })
	fileOnly := filepath.Join(dir, "file only") // the file alone is write-protected
	put(t, filepath.Join(fileOnly, "duskweight.db"), must[[]byte](t)(os.ReadFile(filepath.Join(locked, "duskweight.db"))))
	if err := errors.Join(os.Chmod(filepath.Join(fileOnly, "duskweight.db"), 0o444), os.Chmod(fileOnly, 0o777)); err != nil {
		t.Fatal(err)
	}
	for name, want := range map[string]string{
		"../file only/duskweight.db": "Shed lamp / " + lockedFile + " / true / 0",
		"duskweight.db":              "Shed lamp / This folder cannot be written to. You can look at your projects and export them, but not save. / true / 0",
		"junk.db":                    "refused: this is not a Duskweight file: " + filepath.Join(locked, "junk.db") + " is not a database, and was left as it is",
		"none.db":                    "refused: store: there are no projects in " + filepath.Join(locked, "none.db") + " yet, and the folder cannot be written to",
	} {
		cmd := partCommand("look", filepath.Join(locked, name))
		cmd.Path, cmd.Dir = program, dir
		if os.Getuid() == 0 { // root may write anywhere
			cmd.SysProcAttr = &syscall.SysProcAttr{Credential: &syscall.Credential{Uid: 65534, Gid: 65534}}
		}
		out, err := cmd.Output()
		if got := strings.TrimSpace(string(out)); err != nil || got != want {
			t.Errorf("%s: %v\n got %s\nwant %s", name, err, got, want)
		}
	}
}

// TestLockedFolderOfAnOldSchema shows, in a folder that cannot be written to, a file of every schema that was ever released as it is,
// with all that a page asks of it. It cannot be brought up to date there.
func TestLockedFolderOfAnOldSchema(t *testing.T) {
	for n := 1; n <= migrations.Newest; n++ {
		path := releasedFile(t, n)
		was := must[[]byte](t)(os.ReadFile(path))
		s, err := openLocked(t.Context(), path)
		if err != nil {
			t.Fatalf("schema %d: %v", n, err)
		}
		living := must[[]Listed](t)(s.Projects(t.Context()))
		if len(living) == 0 {
			t.Fatalf("schema %d: no projects", n)
		}
		p := living[0].ID
		vs, err := s.Variants(t.Context(), p)
		if err != nil || len(vs) == 0 {
			t.Fatalf("schema %d: %d variants, %v", n, len(vs), err)
		}
		_, _, design := s.Design(t.Context(), p, vs[0].ID)
		_, _, steps := s.Steps(t.Context(), p)
		for what, err := range map[string]error{
			"settings": second(s.Settings(t.Context())), "copies": second(s.Backups()), "drafts": second(s.Drafts(t.Context(), Thing{VariantKind, vs[0].ID})),
			"deleted": second(s.DeletedProjects(t.Context())), "export": second(s.Export(t.Context(), p)), "design": design, "steps": steps,
			"history": second(s.FullChanges(t.Context(), p, 0, 100)), "names": second(s.VariantNames(t.Context(), p)),
		} {
			if err != nil {
				t.Errorf("schema %d: %s: %v", n, what, err)
			}
		}
		for what, err := range map[string]error{
			"settings": s.SaveSettings(t.Context(), map[string]string{"units": "metric"}), "health": s.Health(t.Context()),
			"a copy gone back to": second(s.Restore(t.Context(), path, noon)),
		} {
			if !errors.Is(err, ErrReadOnly) {
				t.Errorf("schema %d: %s: %v", n, what, err)
			}
		}
		if err := s.Tend(t.Context(), noon); err != nil {
			t.Errorf("schema %d: %v", n, err)
		}
		if err := s.Close(); err != nil {
			t.Error(err)
		}
		entries := must[[]os.DirEntry](t)(os.ReadDir(filepath.Dir(path)))
		if is := must[[]byte](t)(os.ReadFile(path)); !bytes.Equal(is, was) || len(entries) != 1 {
			t.Errorf("schema %d: something was written: %v", n, entries)
		}
	}
}

func init() { parts["look"] = lookOnly }
