package model_test

import (
	"strings"
	"testing"
	"unicode/utf8"

	"duskweight/internal/model"
)

// Words behind a name are kept whole, and the name before them as long as both fit, counted in letters and not in bytes.
func TestFitName(t *testing.T) {
	const behind = " (copy)"
	for letters, want := range map[int]int{1: 8, 192: 199, 193: 200, 194: 200, 200: 200} {
		got := model.FitName(strings.Repeat("ö", letters), behind)
		if utf8.RuneCountInString(got) != want || !strings.HasSuffix(got, behind) || !strings.HasPrefix(got, strings.Repeat("ö", want-len(behind))) {
			t.Errorf("%d letters: %d, wanted %d: %q", letters, utf8.RuneCountInString(got), want, got)
		}
	}
}
