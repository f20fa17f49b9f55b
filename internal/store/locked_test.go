//go:build unix

package store

import (
	"context"
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"syscall"
	"testing"
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

func init() { parts["look"] = lookOnly }
