package guide

import (
	"encoding/json"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"testing"
)

// The page How we know shows every published rig, and no row of a test that is gone. That the numbers are those of today is seen by
// the tests that they are of.
func TestHowWeKnow(t *testing.T) {
	tables, err := readKnown()
	if err != nil {
		t.Fatal(err)
	}
	var tests strings.Builder
	err = filepath.WalkDir("../../internal/model", func(path string, _ fs.DirEntry, err error) error {
		if err != nil || !strings.HasSuffix(path, "_test.go") {
			return err
		}
		text, err := os.ReadFile(path)
		tests.Write(text)
		return err
	})
	if err != nil {
		t.Fatal(err)
	}
	named := map[string]bool{}
	for _, k := range tables {
		if len(k.Rows) == 0 {
			t.Errorf("%s is empty", k.Title)
		}
		for _, r := range k.Rows {
			rig, _, _ := strings.Cut(r.What, ": ")
			named[rig] = true
			if !strings.Contains(tests.String(), "func "+r.test+"(t *testing.T)") {
				t.Errorf("%s: %s is of a test that is gone: %s", k.Title, r.What, r.test)
			}
			if r.What == "" || r.Printed == "" || r.Ours == "" || r.Source == "" {
				t.Errorf("%s: not whole: %+v", k.Title, r)
			}
		}
	}
	data, err := os.ReadFile("../../testdata/published/rigs.json")
	if err != nil {
		t.Fatal(err)
	}
	var rigs struct{ Cases []struct{ Name string } }
	if err := json.Unmarshal(data, &rigs); err != nil {
		t.Fatal(err)
	}
	if len(rigs.Cases) == 0 {
		t.Error("no rig")
	}
	for _, c := range rigs.Cases {
		if !named[c.Name] {
			t.Errorf("%s is not on the page", c.Name)
		}
	}
}

// Values are counted by hand: one row of one, one of a table of 12.
func TestKnownCounts(t *testing.T) {
	k := knownTable{Rows: []knownRow{{Printed: "9160", Source: "a"}, {Printed: "12 values", Source: "b"}}}
	if got := k.Count(); got != "13 values" {
		t.Error(got)
	}
	if got := knownSummary([]knownTable{k, {What: "Place", Rows: []knownRow{{Printed: "3 years"}}}}); !strings.HasPrefix(got, "13 values, from 2 places") {
		t.Error(got)
	}
}
