package crawl_test

import (
	"duskweight/web/form"
	"regexp"
	"strings"
	"testing"

	"duskweight/internal/catalog"
	"duskweight/internal/model"
	"duskweight/internal/model/lift/path"
	"duskweight/internal/model/unit"
	"duskweight/web/guide"
	"duskweight/web/page"
	"duskweight/web/webtest"
)

// knotOf is the line of the rope's ending in the first variant.
func knotOf(t *testing.T, doc model.Document) path.Check {
	t.Helper()
	for _, c := range model.HoistOf(model.Evaluate(doc, "").Variants[0].Stores[0]).Checks {
		if c.ID == "knot" {
			return c
		}
	}
	t.Fatal("no line for the rope's ending")
	return path.Check{}
}

// The guide's worked example says what the model says, and no number that the model does not.
func TestExampleTellsTheModel(t *testing.T) {
	src, err := guide.Files.ReadFile("example.md")
	if err != nil {
		t.Fatal(err)
	}
	text := string(src)
	doc := catalog.Start(webtest.ExampleAnswers(t))
	r := model.Evaluate(doc, "")
	mass, battery := r.Variants[0], r.Variants[1]
	f, d := mass.Facts, model.HoistOf(mass.Stores[0]).Drive
	wh := func(e unit.Energy, digits int) string { return unit.Rounded(float64(e)/3600, digits) + " Wh" }

	rope := &doc.Variants[0].Stores[0].Hoist.Rope
	rope.BreakingLoad, rope.Ending = unit.Of[unit.Force](12e3), "bowline"
	tied := knotOf(t, doc)
	rope.BreakingLoad, rope.Ending = unit.Of[unit.Force](30e3), "splice"
	spliced := knotOf(t, doc)
	if tied.Word != path.GivesWay || spliced.Word == path.GivesWay || spliced.Word == path.NotKnown {
		t.Errorf("the tied rope %v, the spliced one %v", tied.Word, spliced.Word)
	}
	both := func(metric string, q unit.Quantity, si float64) string {
		return metric + " (" + q.Format(si, unit.Imperial) + ")"
	}
	newton := func(k unit.Known[unit.Ratio]) string {
		return both(unit.Rounded(float64(k.Val), 3)+" N", unit.Forces, float64(k.Val))
	}

	said := []string{
		both("of 60 kg", unit.Masses, 60), "by 3 m (9.8 ft)", "2 lamps of 3 W, for 4 h", "2 × 3 W × 4 h", "9.80665 m/s²", "60 kg × ", " × 3 m", "12.8 V", // what was typed
		wh(f.NightAppliances.Val, 3), wh(f.NightStanding.Val, 3),
		"= " + unit.Rounded(60*unit.G*3, 4) + " J", wh(60*unit.G*3, 2),
		wh(f.OneLiftIn.Val, 2), "takes " + unit.Rounded(float64(d.Raising.Time), 2) + " s at " + unit.Rounded(float64(d.Raising.Current), 3) + " A",
		"in " + unit.Rounded(float64(d.Lowering.Time), 2) + " s", unit.Rounded(float64(d.Lowering.Current), 3) + " A at " + unit.Rounded(float64(d.Lowering.Voltage), 3) + " V",
		wh(f.OneLiftOut.Val, 2), form.Lasting(f.LiftMinutes.Val) + " of light", unit.Rounded(float64(f.TimesMore.Val), 2) + " times as much",
		both(unit.Rounded(float64(f.MassForNight.Val), 3)+" kg", unit.Masses, float64(f.MassForNight.Val)), both(unit.Rounded(float64(f.HeightFor.Val), 3)+" m", unit.Lengths, float64(f.HeightFor.Val)),
		battery.Name, "of 12 Ah", wh(battery.Facts.CellsHold.Val, 3) + " from full",
		both("breaks at 12 kN", unit.Forces, 12e3), both("breaks at 30 kN", unit.Forces, 30e3), newton(tied.Demand.Known()), newton(tied.Capacity.Known()), newton(spliced.Capacity.Known()),
		"a factor of " + unit.Rounded(float64(tied.Wanted), 2), "has " + unit.Rounded(float64(tied.Capacity.Val/tied.Demand.Val), 2),
		page.UseText(float64(tied.Use.Val)), page.UseText(float64(spliced.Use.Val)),
		"*" + mass.Verdict + "*", "*" + battery.Verdict + "*",
	}
	rest := text
	for _, want := range said {
		want = strings.ReplaceAll(want, unit.Space, " ")
		if !strings.Contains(text, want) {
			t.Errorf("the example does not say %q", want)
		}
		rest = strings.ReplaceAll(rest, want, "")
	}
	rest = regexp.MustCompile(`(?m)^## \d\.`).ReplaceAllString(rest, "")
	for _, n := range regexp.MustCompile(`.{0,20}\d[\d. ]*.{0,10}`).FindAllString(rest, -1) {
		t.Errorf("nothing worked out says %q", n)
	}
	if battery.Ready != "not_known" || len(battery.Because) != 7 || mass.Ready != "no" {
		t.Errorf("the sheets are %q, because of %v, and %q", battery.Ready, battery.Because, mass.Ready)
	}
	b := doc.Variants[1].Stores[0].Cells
	b.Indoors, b.Board, b.Origin = "own_room", "yes", "new"
	c := &doc.Variants[1].Controller
	c.MaxInput, c.MaxCharge = unit.Of[unit.Voltage](100), unit.Of[unit.Current](6) // its label, and its limit set as asked
	b.Fuse, b.CableArea = model.CellsOf(battery.Stores[0]).Line.FuseTake, model.CellsOf(battery.Stores[0]).Line.AreaTake
	if battery = model.Evaluate(doc, "").Variants[1]; battery.Ready != "yes" {
		t.Errorf("answered, the battery is %q, because of %v", battery.Ready, battery.Because)
	}
}
