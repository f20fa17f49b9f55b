package witness

import (
	"os"
	"path/filepath"
	"strings"
	"testing"
)

// Files holds texts against the files of these names in testdata/kept, to the last digit, and names the first line in which one
// differs, with advice on what to look at. No other file with one of these endings may lie there. Where the environment has
// write in the variable, the files are written anew.
func Files(t *testing.T, variable, advice string, now map[string]string) {
	t.Helper()
	endings := map[string]bool{}
	for name, text := range now {
		endings[filepath.Ext(name)] = true
		file := filepath.Join("testdata", "kept", name)
		if os.Getenv(variable) == "write" {
			if err := os.WriteFile(file, []byte(text), 0o644); err != nil {
				t.Fatal(err)
			}
			continue
		}
		kept, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		was, is := strings.Split(string(kept), "\n"), strings.Split(text, "\n")
		for i := range max(len(was), len(is)) {
			if i >= len(was) || i >= len(is) || was[i] != is[i] {
				t.Errorf("%s, line %d, is not as it is kept.\nkept: %s\nnow:  %s\n%s Then %s=write writes it anew.", file, i+1, line(was, i), line(is, i), advice, variable)
				break
			}
		}
	}
	entries, err := os.ReadDir(filepath.Join("testdata", "kept"))
	if err != nil {
		t.Fatal(err)
	}
	for _, e := range entries {
		if _, ok := now[e.Name()]; !ok && endings[filepath.Ext(e.Name())] {
			t.Errorf("nothing gives testdata/kept/%s any more", e.Name())
		}
	}
}

func line(lines []string, i int) string {
	if i < len(lines) {
		return lines[i]
	}
	return "no more lines"
}
