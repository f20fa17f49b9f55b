package main

import (
	"bufio"
	"context"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strings"
)

// block is a run of statements of a file, by line, that the tests of a package go through or not.
type block struct {
	from, to int
	through  bool
}

// cover is by the package of the tests and the file, by import path.
type cover map[string]map[string][]block

// look runs the short tests of a package once, and notes which lines they go through and which tests they leave out.
func (t *tree) look(ctx context.Context, of string) error {
	if t.cover[of] != nil {
		return nil
	}
	dir, err := os.MkdirTemp("", "mutants")
	if err != nil {
		return err
	}
	defer os.RemoveAll(dir)
	profile := filepath.Join(dir, "profile")
	cmd := exec.CommandContext(ctx, "go", "test", "-v", "-short", "-vet=off", "-p", "1", "-coverpkg=./internal/...", "-coverprofile="+profile, of)
	cmd.Dir = t.root
	out, err := cmd.CombinedOutput()
	if err != nil {
		return fmt.Errorf("the tests of %s fail without any change: %w\n%s", of, err, out)
	}
	for _, m := range leftOut.FindAllSubmatch(out, -1) {
		t.late[of] = append(t.late[of], string(m[1]))
	}
	t.cover[of], err = blocks(profile)
	return err
}

var leftOut = regexp.MustCompile(`(?m)^--- SKIP: (\w+)`)

// blocks reads a profile: lines of "file:from.column,to.column statements times".
func blocks(profile string) (map[string][]block, error) {
	f, err := os.Open(profile)
	if err != nil {
		return nil, err
	}
	defer f.Close()
	out := map[string][]block{}
	for s := bufio.NewScanner(f); s.Scan(); {
		file, rest, ok := strings.Cut(s.Text(), ".go:")
		var b block
		var c, d, statements, times int
		if _, err := fmt.Sscanf(rest, "%d.%d,%d.%d %d %d", &b.from, &c, &b.to, &d, &statements, &times); !ok || err != nil {
			continue // its head
		}
		b.through = times > 0
		out[file+".go"] = append(out[file+".go"], b)
	}
	return out, nil
}

// sees reports whether the tests of a package go through the line of a change. What stands outside of every function is
// seen by all.
func (t *tree) sees(of string, c change) bool {
	inside := false
	for _, b := range t.cover[of][t.module+"/"+c.file] {
		if b.from <= c.line && c.line <= b.to {
			if b.through {
				return true
			}
			inside = true
		}
	}
	return !inside
}
