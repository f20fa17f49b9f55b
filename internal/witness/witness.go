// Package witness keeps what tests compared with something published where the guide can show it: the tables in web/guide/known.
// A test hands in what was printed and what the program gives; when a table says something else, the test fails. With
// DUSKWEIGHT_KNOWN=write the tables are written anew. It is for tests alone.
package witness

import (
	"encoding/csv"
	"fmt"
	"math"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"sync"
	"testing"

	"duskweight/internal/model/source"
	"duskweight/internal/model/unit"
)

// Row is one line of a table: what was compared, as it was printed, as the program gives it, and who printed it.
type Row struct{ What, Printed, Ours, Source string }

// Value hands in one number. What nobody printed (from memory, derived) is no row.
func Value(t *testing.T, subject, what string, printed, ours float64, from source.Ref) {
	t.Helper()
	switch from.Source {
	case source.FromMemory, source.CommonPractice, source.Derivation, source.Judgement:
		return
	}
	if strings.Contains(from.String(), "from memory") {
		return
	}
	Keep(t, subject, Row{what, Number(printed), Number(ours), from.String()})
}

// Number is a number as the tables show it.
func Number(v float64) string {
	if v != 0 && math.Abs(v) < 1e-4 {
		return "< 0.0001"
	}
	return unit.Rounded(v, 4)
}

// Many counts the values of one published table, and how far the program is beside the worst of them.
type Many struct {
	what, unit, source string
	count              int
	worst              float64
}

// See compares one more value.
func (m *Many) See(printed, ours float64) {
	m.count++
	m.worst = max(m.worst, math.Abs(printed-ours))
}

// SeeShare compares one more value by its ratio, in percent.
func (m *Many) SeeShare(printed, ours float64) { m.See(100, 100*ours/printed) }

func (m *Many) row() Row {
	apart := "at most " + unit.Rounded(m.worst, 2) + m.unit + " apart"
	if m.worst < 0.001 {
		apart = "less than 0.001" + m.unit + " apart"
	}
	return Row{m.what, fmt.Sprintf("%d values", m.count), apart, m.source}
}

// Table begins a row for a whole published table; it is kept when the test ends. The unit stands behind its space.
func Table(t *testing.T, subject, what, unit, source string) *Many {
	t.Helper()
	m := &Many{what: what, unit: unit, source: source}
	keeper(t, subject) // before the row, so that it compares after it
	t.Cleanup(func() { Keep(t, subject, m.row()) })
	return m
}

var (
	mutex sync.Mutex
	kept  = map[string][]Row{} // by subject and test
)

// Keep hands in rows of a test. They are compared with the table when the test ends.
func Keep(t *testing.T, subject string, rows ...Row) {
	t.Helper()
	keeper(t, subject)
	mutex.Lock()
	defer mutex.Unlock()
	key := subject + " " + t.Name()
	kept[key] = append(kept[key], rows...)
}

// keeper compares when a test ends, once a test: the first to be asked for is the last to run.
func keeper(t *testing.T, subject string) {
	mutex.Lock()
	defer mutex.Unlock()
	key := subject + " " + t.Name()
	if _, ok := kept[key]; ok {
		return
	}
	kept[key] = nil
	t.Cleanup(func() {
		mutex.Lock()
		defer mutex.Unlock()
		if t.Failed() || t.Skipped() {
			return
		}
		compare(t, subject, kept[key])
		delete(kept, key) // the same test may run again
	})
}

func compare(t *testing.T, subject string, rows []Row) {
	t.Helper()
	file := tableOf(t, subject)
	var lines, others [][]string
	for _, r := range rows {
		lines = append(lines, []string{t.Name(), r.What, r.Printed, r.Ours, r.Source})
	}
	slices.SortFunc(lines, slices.Compare)
	var have [][]string
	for _, l := range read(t, file) {
		if l[0] == t.Name() {
			have = append(have, l)
		} else {
			others = append(others, l)
		}
	}
	if slices.EqualFunc(lines, have, slices.Equal[[]string]) {
		return
	}
	if os.Getenv("DUSKWEIGHT_KNOWN") != "write" {
		t.Errorf("%s says of this test:\n%v\nwhich is now:\n%v\nIf that is meant, write the tables anew with DUSKWEIGHT_KNOWN=write", filepath.Base(file), have, lines)
		return
	}
	all := slices.Concat(others, lines)
	slices.SortFunc(all, slices.Compare)
	var b strings.Builder
	w := csv.NewWriter(&b)
	if err := w.WriteAll(all); err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(file, []byte(b.String()), 0o644); err != nil {
		t.Fatal(err)
	}
}

func read(t *testing.T, file string) [][]string {
	f, err := os.Open(file)
	if os.IsNotExist(err) {
		return nil
	}
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	lines, err := csv.NewReader(f).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	return lines
}

// tableOf is the file of a subject, looked for from the folder of the test upwards.
func tableOf(t *testing.T, subject string) string {
	t.Helper()
	dir, err := os.Getwd()
	if err != nil {
		t.Fatal(err)
	}
	for !exists(filepath.Join(dir, "go.mod")) {
		if up := filepath.Dir(dir); up != dir {
			dir = up
			continue
		}
		t.Fatal("no go.mod above the test")
	}
	return filepath.Join(dir, "web", "guide", "known", subject+".csv")
}

func exists(file string) bool {
	_, err := os.Stat(file)
	return err == nil
}
