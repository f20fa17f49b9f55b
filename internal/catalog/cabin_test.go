package catalog_test

import (
	"testing"

	"duskweight/internal/catalog"
	"duskweight/internal/model"
	"duskweight/internal/model/reason"
)

// TestCabin sees that the second worked example says what it is there to say: three plans that nothing stands against, a battery
// that falls short in winter, one that does not, and a smaller one that a generator helps out, with its litres and its price.
func TestCabin(t *testing.T) {
	doc := catalog.Cabin()
	if err := model.Check(doc).Err(); err != nil {
		t.Fatal(err)
	}
	r := model.Evaluate(doc, "")
	for i, want := range []struct {
		verdict string
		burns   bool
	}{{"carries the essentials", false}, {"carries the night", false}, {"carries the night", true}} {
		v := r.Variants[i]
		if v.Verdict != want.verdict || v.Ready != reason.Yes {
			t.Errorf("%s: %s, %v %v", v.Name, v.Verdict, v.Ready, v.Because)
		}
		if litres := v.Year.Backup.Fuel * 1000; (litres > 30 && litres < 120) != want.burns || !v.Cost.Whole.Is {
			t.Errorf("%s: %.0f litres, %v", v.Name, litres, v.Cost.Whole)
		}
		if w := v.Year.Waiting; len(w) != 1 || w[0].Missed > 0.03*w[0].Asked {
			t.Errorf("%s: the pump: %+v", v.Name, w)
		}
	}
}
