package web

import (
	"strings"
	"testing"

	"duskweight/internal/catalog"
	"duskweight/internal/model"
	"duskweight/internal/model/cost"
	"duskweight/internal/model/unit"
)

// A text takes no more room than it was given, whatever its letters; what fits is left alone.
func TestClip(t *testing.T) {
	for _, tc := range []struct {
		text string
		n    int
		want string
	}{
		{"short", 5, "short"},
		{"longer", 5, "long…"},
		{"two  words\n here", 15, "two words here"}, // two w take half a letter more each
		{strings.Repeat("W", 200), 9, "WWWWW…"},     // five of one and a half, and the sign behind them
		{"石石石石石石", 6, "石石…"},
		{"", 4, ""},
	} {
		if got := clip(tc.text, tc.n); got != tc.want {
			t.Errorf("%q in %d: %q, want %q", tc.text, tc.n, got, tc.want)
		}
	}
}

// Parts that do not fit are counted, never lost without a word.
func TestSheetParts(t *testing.T) {
	for _, n := range []int{0, 1, 13, 14, 15, 200} {
		rows, more := buildRows(make([]cost.Part, n), "EUR", sheetLines)
		if want := n > sheetLines; (more != "") != want || len(rows) != min(n, sheetLines) {
			t.Errorf("%d parts: %d rows and %q", n, len(rows), more)
		}
	}
	if rows, more := buildRows([]cost.Part{{Name: oneWord}, {Name: oneWord}}, "EUR", 3); len(rows) != 1 || !strings.HasPrefix(more, "and 1 more") {
		t.Errorf("two parts of two lines in three: %d rows and %q", len(rows), more)
	}
}

// A second hoist is named, for its load steps are not on this sheet; when it gives way, the sheet says do not hang.
func TestSheetOfTwoHoists(t *testing.T) {
	for _, rating := range []unit.Mass{700, 140} {
		doc := catalog.Sample()
		second := *catalog.Sample().Variants[2].Stores[0].Hoist
		second.Structure.HangerRating = unit.Of(rating.Weight())
		v := &doc.Variants[2]
		v.Stores = append(v.Stores, model.Store{Hoist: &second})
		sheet := sheetOf(model.Evaluate(doc).Variants[2], doc.Project, *v, unit.Metric)
		named := false
		for _, row := range sheet.Set {
			named = named || row.Name == "Other hoists"
		}
		if !named {
			t.Error("the second hoist is not named")
		}
		if want := rating == 140; (sheet.State == "do not hang") != want || sheet.Sign == want {
			t.Errorf("second hook of %v kg: %s", rating, sheet.State)
		}
	}
}

// Sentences that do not fit are left out whole.
func TestWhole(t *testing.T) {
	for _, tc := range []struct {
		text string
		n    int
		want string
	}{
		{"It bends. Take a stronger one. It carries 2 kg.", 60, "It bends. Take a stronger one. It carries 2 kg."},
		{"It bends. Take a stronger one. It carries 2 kg.", 32, "It bends. Take a stronger one."},
		{"It bends. Take a stronger one.", 12, "It bends."},
		{"It bends a lot", 8, clip("It bends a lot", 8)},
	} {
		if got := whole(tc.text, tc.n); got != tc.want {
			t.Errorf("%q in %d: %q, want %q", tc.text, tc.n, got, tc.want)
		}
	}
}
