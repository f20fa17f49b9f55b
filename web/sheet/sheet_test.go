package sheet

import (
	"fmt"
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
		1: "lower: at the drum, mass down; upper: 3.5 m along the rope towards the mass. A mark does not stop the hoist",
		2: "lower: at the drum, mass down; upper: 7 m along the rope towards the mass, as 2 ropes carry it. A mark does not stop the hoist",
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
	if s := sheet(func(b *cell.Bank) { b.Indoors = "bedroom" }); s.Band.Word != "DO NOT USE." || !strings.HasPrefix(s.Band.Why, "A battery may not be in a bedroom") || s.Sign {
		t.Errorf("in a bedroom: %q, sign %v", s.Band.Word+" "+s.Band.Why, s.Sign)
	}
	s := sheet(func(b *cell.Bank) { b.Indoors, b.Board, b.Fuse = "", "", unit.Known[unit.Current]{} })
	if want := []string{"Which fuse is close to the battery is not known.", "Whether a board stops charging in the cold", "The place of the battery"}; !slices.Equal(s.Causes, want) || s.Band.Word != "NOT READY: 3 things are not known." {
		t.Errorf("%q: %q, want %q", s.Band.Word, s.Causes, want)
	}
}

// A travel of 4.5 m under a head pulley at 3 m cannot be built: the drawing marks it with the number of its reason, and
// its words say so before anything else.
func TestSheetTellsClash(t *testing.T) {
	doc := catalog.Sample()
	doc.Variants[2].Stores[0].Hoist.Structure.HeadHeight = unit.Of[unit.Length](3)
	sheet := sheetOf(sheetView{}, model.Evaluate(doc, "").Variants[2], doc.Project, doc.Variants[2], unit.Metric)
	if !strings.Contains(sheet.Drawing, "<desc>Mark 1: The mass does not fit under the pulley") || !strings.Contains(sheet.Drawing, `class="mark"`) || !told(sheet, "The mass does not fit under the pulley") || sheet.Band.State != reason.No {
		t.Errorf("%s: %.900s", sheet.Band.State, sheet.Drawing)
	}
}

// told reports whether a sheet tells a reason, in its band or numbered in its list.
func told(v sheetView, words string) bool {
	for i, c := range v.Causes {
		if strings.HasPrefix(c, words) {
			return v.Number(i) != "" && strings.Contains(v.Drawing, ">"+v.Number(i)+"</text>")
		}
	}
	return strings.HasPrefix(v.Band.Why, words)
}

// What the page has no room for goes in a fixed order: years, checks after the third, settings that stand on the drawing. The
// steps, the cautions and the reasons stay whatever is on it.
func TestWhatIsLeftOut(t *testing.T) {
	doc := catalog.Sample()
	r := model.Evaluate(doc, "").Variants[2]
	roomy := sheetOf(sheetView{}, r, doc.Project, doc.Variants[2], unit.Metric)
	for _, letter := range []bool{false, true} {
		v := sheetOf(sheetView{Letter: letter, Years: strings.Repeat("Of 200 made years the usual one has 325 full nights. ", 3)}, r, doc.Project, doc.Variants[2], unit.Metric)
		if v.Years != "" || len(v.Checks) != 3 {
			t.Errorf("Letter %v: %q and %d checks stand on a full page", letter, v.Years, len(v.Checks))
		}
		for _, row := range v.Set {
			if onDrawing[row.Name] {
				t.Errorf("Letter %v: %s stands on the drawing and in the list of a full page", letter, row.Name)
			}
		}
		if len(v.Steps) != 5 || len(v.Caution) != len(roomy.Caution) || !v.Sign || v.Drawing == "" {
			t.Errorf("Letter %v: %d steps, %d cautions, sign %v", letter, len(v.Steps), len(v.Caution), v.Sign)
		}
	}
	// The first eight reasons, and how many more.
	heavy := doc.Variants[2].Stores[0].Hoist
	heavy.Holds.Holds, heavy.Mass[0].Mass, heavy.Structure.HeadHeight = nil, unit.Of[unit.Mass](9000), unit.Of[unit.Length](3)
	r = model.Evaluate(doc, "").Variants[2]
	all, _ := reasonsOf(r, unit.Metric)
	v := sheetOf(sheetView{}, r, doc.Project, doc.Variants[2], unit.Metric)
	open := 0
	for _, b := range r.Because {
		open += map[reason.Word]int{reason.NotKnown: 1}[b.Word]
	}
	if more := v.Causes[len(v.Causes)-1]; open < 2 || len(all) <= 8 || len(v.Causes) != 8 || more != fmt.Sprintf("and %d more, on screen; %d things are not known.", len(all)-8, open) || v.Number(7) != "" || v.Number(6) != "8" {
		t.Errorf("of %d reasons %d stand in the list, and then %q", len(all), len(v.Causes)-1, more)
	}
	if len(v.Steps) > 0 || v.Sign || !strings.Contains(v.Drawing, `class="mark"`) {
		t.Errorf("a hoist that must not be hung has %d steps, sign %v", len(v.Steps), v.Sign)
	}
}

// Lengths on an imperial sheet are those of an inch tape, and a rope of 12 mm stays one: 120 kg on a travel of 4.5 m
// (14′ 9-3/16″, the mark a sixteenth lower: 14′ 9-1/8″) with the head at 5.75 m (5.75·16/0.0254 = 3622.05: 18′ 10-3/8″).
func TestImperialSheet(t *testing.T) {
	doc := catalog.Sample()
	v := sheetOf(sheetView{}, model.Evaluate(doc, "").Variants[2], doc.Project, doc.Variants[2], unit.Imperial)
	said := strings.ReplaceAll(v.Drawing, unit.Space, " ")
	for _, want := range []string{"travel 14′ 9-3/16″", "18′ 10-3/8″", "Shaft 35 mm, pin 8 mm", "Rope polyester", "Top pulley", "3-15/16″"} {
		if !strings.Contains(said, want) {
			t.Errorf("the drawing does not say %q", want)
		}
	}
	for _, row := range v.Set {
		if row.Name == "Stop marks on the rope" && !strings.Contains(strings.ReplaceAll(row.Value, unit.Space, " "), "14′ 9\u20111/8″") {
			t.Errorf("stop marks: %s", row.Value)
		}
	}
	if len(v.Steps) != 5 || v.Steps[4].Mass != "331"+unit.Space+"lb" { // 150 kg
		t.Errorf("load steps %v", v.Steps)
	}
}
