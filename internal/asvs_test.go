package internal_test

import (
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"
)

var (
	securityRow  = regexp.MustCompile(`^\| (V\d+\.\d+\.\d+) \| ([12]) \| ([^|]+) \| (yes|no|n/a) \| ([^|]+) \|$`)
	quotedTest   = regexp.MustCompile("`((?:Test|Fuzz)[A-Za-z0-9]+)`")
	declaredTest = regexp.MustCompile(`(?m)^func ((?:Test|Fuzz)[A-Za-z0-9]+)\(`)
)

// securityFaults says what is wrong with the table of asvs.md: every requirement of levels 1 and 2 (testdata/asvs-5.0.0.txt,
// in its order) has one row with its level, every test that is named exists, and what is met names a test or says that there
// is none. The counts above the table are those of its rows.
func securityFaults(table, ids string, tests map[string]bool) (faults []string) {
	var rows, want []string
	count := map[string]int{}
	for _, line := range strings.Split(table, "\n") {
		if !strings.HasPrefix(line, "| V") {
			continue
		}
		m := securityRow.FindStringSubmatch(line)
		if m == nil {
			faults = append(faults, "not a row: "+line)
			continue
		}
		rows = append(rows, m[1]+" "+m[2])
		count[m[4]]++
		named := quotedTest.FindAllStringSubmatch(m[5], -1)
		for _, one := range named {
			if !tests[one[1]] {
				faults = append(faults, m[1]+" names "+one[1]+", which is no test")
			}
		}
		if m[4] == "yes" && len(named) == 0 && !strings.HasPrefix(m[5], "No test") {
			faults = append(faults, m[1]+" is met without a test")
		}
	}
	for _, line := range strings.Split(ids, "\n") {
		if strings.HasPrefix(line, "V") {
			want = append(want, line)
		}
	}
	if has, wants := strings.Join(rows, "\n"), strings.Join(want, "\n"); has != wants {
		faults = append(faults, fmt.Sprintf("the table has %d rows, the list %d numbers, or their order or levels differ", len(rows), len(want)))
	}
	if sum := fmt.Sprintf("Of %d requirements %d are met, %d are not, and %d do not apply.", len(rows), count["yes"], count["no"], count["n/a"]); !strings.Contains(table, sum) {
		faults = append(faults, "the table does not say: "+sum)
	}
	return faults
}

func securityFiles(t *testing.T) (table, ids string, tests map[string]bool) {
	t.Helper()
	var texts [2]string
	for i, path := range []string{"asvs.md", "testdata/asvs-5.0.0.txt"} {
		text, err := os.ReadFile(path)
		if err != nil {
			t.Fatal(err)
		}
		texts[i] = string(text)
	}
	tests = map[string]bool{}
	for _, root := range []string{"../cmd", "../web", "../internal"} {
		err := filepath.WalkDir(root, func(path string, e fs.DirEntry, err error) error {
			if err != nil || !strings.HasSuffix(path, "_test.go") {
				return err
			}
			text, err := os.ReadFile(path)
			for _, m := range declaredTest.FindAllStringSubmatch(string(text), -1) {
				tests[m[1]] = true
			}
			return err
		})
		if err != nil {
			t.Fatal(err)
		}
	}
	return texts[0], texts[1], tests
}

// The standard's own count of its levels 1 and 2 is 70 and 183 (OWASP ASVS 5.0.0, the rows of its table).
func TestSecurityTable(t *testing.T) {
	table, ids, tests := securityFiles(t)
	for _, fault := range securityFaults(table, ids, tests) {
		t.Error(fault)
	}
	if one, two := strings.Count(ids, " 1\n"), strings.Count(ids, " 2\n"); one != 70 || two != 183 {
		t.Errorf("%d of level 1, %d of level 2", one, two)
	}
}

// A row that is missing, twice, of another level, names a test that is gone, or is met without one, is found.
func TestSecurityTableCanFail(t *testing.T) {
	table, ids, tests := securityFiles(t)
	row := regexp.MustCompile(`(?m)^\| V3\.4\.3 .*\n`).FindString(table)
	for name, with := range map[string]string{
		"missing":     "",
		"twice":       row + row,
		"level":       strings.Replace(row, "| 2 |", "| 1 |", 1),
		"gone":        strings.Replace(row, "`TestHeaders`", "`TestOfNothing`", 1),
		"no test":     strings.Replace(row, "`TestHeaders`", "a policy is sent", 1),
		"other count": strings.Replace(row, "| yes |", "| no |", 1),
		"other word":  strings.Replace(row, "| yes |", "| partly |", 1),
	} {
		if with == row || len(securityFaults(strings.Replace(table, row, with, 1), ids, tests)) == 0 {
			t.Errorf("%s: nothing is found", name)
		}
	}
}
