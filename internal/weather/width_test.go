package weather

import (
	"bytes"
	"fmt"
	"strings"
	"testing"
)

// TestEndlessLines refuses a file of one endless line, or of endless columns, before the rest of it is read, and reads a file
// whose lines are as wide as lines may be.
func TestEndlessLines(t *testing.T) {
	for name, c := range map[string]struct{ text, say string }{
		"one line":   {strings.Repeat("0123456789", 3<<20), "longer than 64 KB"},
		"commas":     {"time,ghi\n" + strings.Repeat("1,", 300_000), "more than 200 columns"},
		"tabs":       {"time\tghi\n" + strings.Repeat("1\t", 300_000), "more than 200 columns"},
		"blanks":     {"time ghi\n" + strings.Repeat("1 ", 30_000), "more than 200 columns"},
		"wide UTF":   {"\xff\xfe" + strings.Repeat("1\x00,\x00", 300), "more than 200 columns"},
		"201 commas": {"time,ghi\n" + strings.Repeat("1,", 201), "more than 200 columns"},
	} {
		r := strings.NewReader(c.text)
		_, err := slurp(r)
		if err == nil || !strings.Contains(fmt.Sprint(err), c.say) {
			t.Errorf("%s: %v, want %q", name, err, c.say)
		}
		if read := len(c.text) - r.Len(); read > 2*longestLine {
			t.Errorf("%s: %d bytes were read", name, read)
		}
	}
	wide := []byte("time,ghi" + strings.Repeat(",x", 199) + "\r\n" + strings.Repeat("word ", 400) + "\n" + strings.Repeat("y", longestLine) + "\n")
	if _, err := slurp(bytes.NewReader(wide)); err != nil {
		t.Errorf("as wide as it may be: %v", err)
	}
}
