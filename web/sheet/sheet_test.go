package sheet

import (
	"slices"
	"strings"
	"testing"

	"duskweight/internal/catalog"
	"duskweight/internal/model"
	"duskweight/internal/model/cell"
	"duskweight/internal/model/lift"
	"duskweight/internal/model/reason"
	"duskweight/internal/model/unit"
	"duskweight/web/form"
	"duskweight/web/page"
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
		if got := form.Clip(tc.text, tc.n); got != tc.want {
			t.Errorf("%q in %d: %q, want %q", tc.text, tc.n, got, tc.want)
		}
	}
}

// A second hoist is named, for its load steps are not on this sheet; when it gives way, the sheet says do not hang.
func TestSheetOfTwoHoists(t *testing.T) {
	for _, rating := range []unit.Mass{700, 140} {
		doc := catalog.Sample()
		second := *catalog.Sample().Variants[2].Stores[0].Hoist
		second.Structure.HangerRating = unit.Of(rating.Weight())
		v := &doc.Variants[2]
		v.Stores[1].Cells.Fuse = unit.Of[unit.Current](30) // two drives lift at once
		v.Stores = append(v.Stores, model.Store{Hoist: &second})
		sheet := sheetOf(sheetView{}, model.Evaluate(doc, "").Variants[2], doc.Project, *v, unit.Metric)
		named := false
		for _, row := range sheet.Set {
			named = named || row.Name == "Other hoists"
		}
		if !named {
			t.Error("the second hoist is not named")
		}
		if want := rating == 140; (sheet.Band.State == reason.No) != want || sheet.Sign == want {
			t.Errorf("second hook of %v kg: %s %v", rating, sheet.Band.State, model.Evaluate(doc, "").Variants[2].Because)
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
		{"It bends a lot", 8, form.Clip("It bends a lot", 8)},
	} {
		if got := form.Whole(tc.text, tc.n); got != tc.want {
			t.Errorf("%q in %d: %q, want %q", tc.text, tc.n, got, tc.want)
		}
	}
}

// The marks of the stops on the rope, by hand: with one rope 3.5 m apart; with two the drum takes up 2 · 3.5 = 7 m.
func TestStopMarks(t *testing.T) {
	h := lift.Hoist{Travel: unit.Of[unit.Length](3.5)}
	for n, want := range map[unit.Count]string{
		1: "lower: where it meets the drum, mass down; upper: 3.5 m nearer to the mass; a mark stops nothing",
		2: "lower: where it meets the drum, mass down; upper: 7 m nearer to the mass, as 2 ropes carry it; a mark stops nothing",
	} {
		h.Reeving.RopeParts = unit.Of(n)
		if got := strings.ReplaceAll(stopMarks(h, unit.Metric).Value, unit.Space, " "); got != want {
			t.Errorf("%d ropes: %q, want %q", n, got, want)
		}
	}
	h.Reeving.RopeParts.Is = false
	if got := stopMarks(h, unit.Metric).Value; got != "not known" {
		t.Errorf("ropes not known: %q", got)
	}
}

// A battery that may not be used so says DO NOT USE, and one of which something is not known says what.
func TestSheetOfBattery(t *testing.T) {
	doc := catalog.Sample()
	g := model.Prepare(doc.Project)
	sheet := func(change func(*cell.Bank)) sheetView {
		v := doc.Variants[1]
		b := *v.Stores[0].Cells
		change(&b)
		v.Stores = []model.Store{{Cells: &b}}
		kinds := page.Kinds{{Row: model.CellsKind(), Sheet: page.SheetOf{Order: make([]string, 4)}}}
		return sheetOf(sheetView{kinds: kinds}, g.Evaluate(v), doc.Project, v, unit.Metric)
	}
	if s := sheet(func(*cell.Bank) {}); s.Band.State != reason.Yes || !s.Sign || len(s.Order) != 4 {
		t.Errorf("as it is: %q, sign %v, %d lines of order", s.Band.State, s.Sign, len(s.Order))
	}
	if s := sheet(func(b *cell.Bank) { b.Indoors = "bedroom" }); s.Band.Word != "DO NOT USE." || !strings.HasPrefix(s.Band.Why, "Not in a bedroom") || s.Sign {
		t.Errorf("in a bedroom: %q, sign %v", s.Band.Word+" "+s.Band.Why, s.Sign)
	}
	s := sheet(func(b *cell.Bank) { b.Indoors, b.Board, b.Fuse = "", "", unit.Known[unit.Current]{} })
	if want := []string{"Which fuse stands close to the battery is not known.", "Whether a board stops cold charging", "Where the battery stands"}; !slices.Equal(s.Causes, want) || s.Band.Word != "NOT READY: 3 things are not known." {
		t.Errorf("%q: %q, want %q", s.Band.Word, s.Causes, want)
	}
}

// A travel of 4.5 m under a head pulley at 3 m cannot be built: the drawing marks it, and its words say so before anything else.
func TestSheetTellsClash(t *testing.T) {
	doc := catalog.Sample()
	doc.Variants[2].Stores[0].Hoist.Structure.HeadHeight = unit.Of[unit.Length](3)
	sheet := sheetOf(sheetView{}, model.Evaluate(doc, "").Variants[2], doc.Project, doc.Variants[2], unit.Metric)
	if !strings.Contains(sheet.Drawing, "<desc>Mark 1: The mass does not fit under the pulley") || !strings.Contains(sheet.Drawing, ">✕ 1 The mass does not fit") || sheet.Band.State != reason.No {
		t.Errorf("%s: %.900s", sheet.Band.State, sheet.Drawing)
	}
}
