package guide

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"duskweight/internal/catalog"
	"duskweight/internal/model/lift"
	"duskweight/internal/model/lift/path"
	"duskweight/internal/model/unit"
)

// Every page of the guide, and every heading of it, begins with the question that it answers: a sentence of its own, or the heading
// itself. The works on the page Sources are a list, and the words of the glossary are their own question.
func TestEveryTopicBeginsWithItsQuestion(t *testing.T) {
	g, _, err := readGuide()
	if err != nil {
		t.Fatal(err)
	}
	asked := 0
	for _, p := range g.pages {
		for _, s := range p.sections {
			if !s.opens && (p.Topic == "sources" || p.Topic == "words") {
				continue
			}
			asked++
			if s.question == "" && !strings.HasSuffix(s.heading, "?") {
				t.Errorf("%s#%s begins without a question", p.Topic, s.id)
			}
			if len(s.passages) == 0 {
				t.Errorf("%s#%s has a question and no answer", p.Topic, s.id)
			}
		}
	}
	if asked < 90 {
		t.Errorf("only %d questions", asked)
	}
}

// What the guide says of a fridge and of knots is what the catalog and the check say.
func TestGuideTellsTheCatalog(t *testing.T) {
	says := func(topic string, want ...string) {
		t.Helper()
		text, err := Files.ReadFile(topic + ".md")
		if err != nil {
			t.Fatal(err)
		}
		for _, w := range want {
			if !strings.Contains(string(text), w) {
				t.Errorf("%s does not say %q", topic, w)
			}
		}
	}
	fridge, ok := catalog.ApplianceOf("fridge")
	freezer, also := catalog.ApplianceOf("freezer")
	if !ok || !also {
		t.Fatal("no row of a fridge")
	}
	tens := func(wh float64) string { return fmt.Sprintf("%.0f Wh", math.Round(wh/10)*10) }
	says("night",
		fmt.Sprintf("uses %v W while it runs, and runs about %v %% of the time", float64(fridge.Power[0]), 100*float64(fridge.Share)),
		tens(float64(fridge.Power[0])*float64(fridge.Share)*24),
		fmt.Sprintf("uses %v W and runs %v %% of the time: %s", float64(freezer.Power[0]), 100*float64(freezer.Share), tens(float64(freezer.Power[0])*float64(freezer.Share)*24)),
		fmt.Sprintf("about %v times as much at the start", float64(fridge.Surge[0])),
		fmt.Sprintf("One tonne that is lifted by 10 m (33 ft) holds %.0f Wh", 1000*unit.G*10/3600))
	left := func(kind lift.RopeKind, ending lift.Ending) string {
		share, _ := path.KnotShare(kind, ending)
		return fmt.Sprintf("%.0f %%", 100*share)
	}
	says("breaks",
		fmt.Sprintf("a splice leaves %s, a figure eight %s, a bowline %s, another knot %s", left(lift.RopePolyester, lift.EndingSplice), left(lift.RopePolyester, lift.EndingFigureEight), left(lift.RopePolyester, lift.EndingBowline), left(lift.RopePolyester, lift.EndingOtherKnot)),
		fmt.Sprintf("a swaged end leaves %s, a splice or clips %s", left(lift.RopeWire, lift.EndingSwaged), left(lift.RopeWire, lift.EndingClips)))
	if left(lift.RopeWire, lift.EndingBowline) != "0 %" || left(lift.RopeHMPE, lift.EndingBowline) != "0 %" {
		t.Error("a knot in wire or slippery rope counts")
	}
}
