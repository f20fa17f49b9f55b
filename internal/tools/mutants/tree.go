package main

import (
	"bytes"
	"cmp"
	"context"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"time"
)

// What becomes of a change.
const (
	caught   = "caught"
	survives = "SURVIVED"
	unbuilt  = "unbuilt"
)

// slow are packages whose tests ask about files, power cuts and the text of documents, not about numbers, and need minutes:
// they are not run.
var slow = []string{"internal/store", "internal/document"}

// longest is the time that the tests of one package may need; a change that makes them hang is caught by it.
const longest = 150 * time.Second

// tree is the program.
type tree struct {
	root, module string
	exports      map[string]string // by path: the file with what a package shows to others
	packages     []pkg
	depends      map[string][]string // by path: the packages that its tests are built from
	cover        cover
	late         map[string][]string // by path: the tests that a short run leaves out
	long         time.Duration       // how long these may take for one change
}

// pkg is what go list says of a package.
type pkg struct {
	ImportPath, Dir string
	Export          string
	GoFiles         []string
	TestGoFiles     []string
	XTestGoFiles    []string
	Deps            []string
	ForTest         string
	Module          *struct {
		Path string
		Main bool
	}
}

// load asks for the packages of internal and for those that each test is built from.
func load(ctx context.Context, root string) (*tree, error) {
	t := &tree{root: root, depends: map[string][]string{}, exports: map[string]string{}, cover: cover{}, late: map[string][]string{}}
	all, err := t.list(ctx, "./internal/...")
	if err != nil {
		return nil, err
	}
	for _, p := range all {
		if strings.HasSuffix(p.ImportPath, ".test") {
			of := strings.TrimSuffix(p.ImportPath, ".test")
			for _, d := range p.Deps {
				plain, _, _ := strings.Cut(d, " ")
				t.depends[of] = append(t.depends[of], plain)
			}
		} else if p.ForTest == "" {
			t.exports[p.ImportPath] = p.Export
			if p.Module == nil || !p.Module.Main {
				continue
			}
			t.packages = append(t.packages, p)
			t.module = p.Module.Path
		}
	}
	return t, nil
}

func (t *tree) list(ctx context.Context, what string) ([]pkg, error) {
	cmd := exec.CommandContext(ctx, "go", "list", "-test", "-deps", "-export", "-json=ImportPath,Dir,Export,GoFiles,TestGoFiles,XTestGoFiles,Deps,ForTest,Module", what)
	cmd.Dir, cmd.Stderr = t.root, os.Stderr
	out, err := cmd.Output()
	if err != nil {
		return nil, fmt.Errorf("go list: %w", err)
	}
	var all []pkg
	for d := json.NewDecoder(bytes.NewReader(out)); ; {
		var p pkg
		if err := d.Decode(&p); errors.Is(err, io.EOF) {
			return all, nil
		} else if err != nil {
			return nil, err
		}
		all = append(all, p)
	}
}

func (t *tree) below(p pkg) string { return strings.TrimPrefix(p.ImportPath, t.module+"/") }

func (t *tree) isSlow(of string) bool {
	return slices.Contains(slow, strings.TrimPrefix(of, t.module+"/"))
}

// askers are the packages whose tests are run for a change: its own, then those that are built on it, the nearest first.
func (t *tree) askers(c change) []string {
	own := t.own(c)
	var on []string
	for of, deps := range t.depends {
		if of == own || slices.Contains(deps, own) && !t.isSlow(of) {
			on = append(on, of)
		}
	}
	slices.SortFunc(on, func(a, b string) int {
		switch {
		case a == own:
			return -1
		case b == own:
			return 1
		}
		return cmp.Or(cmp.Compare(len(t.depends[a]), len(t.depends[b])), cmp.Compare(a, b))
	})
	return on
}

// own is the package that a change is made in.
func (t *tree) own(c change) string { return t.module + "/" + filepath.ToSlash(filepath.Dir(c.file)) }

// tryNear runs the short tests of a change's own package against it. by is the test that failed.
func (t *tree) tryNear(ctx context.Context, c change) (word, by string, err error) {
	overlay, clean, err := t.overlay(c)
	if err != nil {
		return "", "", err
	}
	defer clean()
	word, by = t.test(ctx, t.own(c), overlay, longest, "-short")
	return word, by, nil
}

// tryFar runs what is left against a change that its own package let through: the short tests of each package that is built on
// it and comes to its line, then, of all these, the tests that a short run leaves out.
func (t *tree) tryFar(ctx context.Context, c change) (word, by string, err error) {
	overlay, clean, err := t.overlay(c)
	if err != nil {
		return "", "", err
	}
	defer clean()
	var see []string
	for _, p := range t.askers(c) {
		if err := t.look(ctx, p); err != nil {
			return "", "", err
		}
		if p != t.own(c) {
			if !t.sees(p, c) {
				continue
			}
			if word, by := t.test(ctx, p, overlay, longest, "-short"); word != survives {
				return word, by, nil
			}
		}
		see = append(see, p)
	}
	until := time.Now().Add(t.long)
	for _, p := range see {
		rest := time.Until(until)
		if len(t.late[p]) == 0 || rest < time.Second {
			continue
		}
		if word, by := t.test(ctx, p, overlay, rest, "-run", "^("+strings.Join(t.late[p], "|")+")$"); word == caught && by != outOfTime {
			return word, by + ", long", nil
		}
	}
	return survives, "", nil
}

// test runs tests of one package against a change. by is the one that failed.
func (t *tree) test(ctx context.Context, of, overlay string, limit time.Duration, how ...string) (word, by string) {
	args := slices.Concat([]string{"test", "-overlay", overlay, "-vet=off", "-failfast", "-p", "1", "-timeout", limit.String()}, how, []string{of})
	run := exec.CommandContext(ctx, "go", args...)
	run.Dir = t.root
	out, err := run.CombinedOutput()
	switch {
	case err == nil:
		return survives, ""
	case bytes.Contains(out, []byte("[build failed]")) || bytes.Contains(out, []byte("[setup failed]")):
		return unbuilt, ""
	}
	by = firstFailed(string(out))
	if by != outOfTime {
		by += " of " + strings.TrimPrefix(of, t.module+"/")
	}
	return caught, by
}

// overlay writes the changed file and the list that puts it in place of the real one.
func (t *tree) overlay(c change) (list string, clean func(), err error) {
	real, err := filepath.Abs(filepath.Join(t.root, c.file))
	if err != nil {
		return "", nil, err
	}
	text, err := os.ReadFile(real)
	if err != nil {
		return "", nil, err
	}
	dir, err := os.MkdirTemp("", "mutant")
	if err != nil {
		return "", nil, err
	}
	changed := filepath.Join(dir, filepath.Base(c.file))
	replace, err := json.Marshal(map[string]map[string]string{"Replace": {real: changed}})
	list = filepath.Join(dir, "overlay.json")
	err = errors.Join(err, os.WriteFile(changed, slices.Concat(text[:c.from], []byte(c.new), text[c.to:]), 0o600), os.WriteFile(list, replace, 0o600))
	return list, func() { os.RemoveAll(dir) }, err
}

// outOfTime stands for the test that ran when the time was over.
const outOfTime = "the time limit"

var failed = regexp.MustCompile(`--- FAIL: (\S+)`)

func firstFailed(out string) string {
	if m := failed.FindStringSubmatch(out); m != nil {
		return m[1]
	}
	if strings.Contains(out, "panic: test timed out") {
		return outOfTime
	}
	if strings.Contains(out, "panic:") {
		return "a panic"
	}
	return "a test"
}
