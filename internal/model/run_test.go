package model_test

import (
	"reflect"
	"testing"

	"duskweight/internal/catalog"
	"duskweight/internal/model"
)

// A search that tries many variants runs the years alone. They are those of the whole answer, to the last bit.
func TestRunIsTheYearOfTheAnswer(t *testing.T) {
	docs := map[string]model.Document{"sample": catalog.Sample(), "cabin": catalog.Cabin()}
	years := 0
	for name, doc := range docs {
		g := model.Prepare(doc.Project)
		for _, v := range doc.Variants {
			whole, run := g.Evaluate(v), g.Run(v)
			if whole.YearKnown != run.YearKnown || !reflect.DeepEqual(whole.Year, run.Year) || !reflect.DeepEqual(whole.Last, run.Last) || !reflect.DeepEqual(whole.Worn, run.Worn) {
				t.Errorf("%s, %s: %+v, the whole answer has %+v", name, v.Name, run.Last, whole.Last)
			}
			for i, s := range run.Stores {
				if !reflect.DeepEqual(s.Reservoir, whole.Stores[i].Reservoir) {
					t.Errorf("%s, %s, store %d: %+v, the whole answer has %+v", name, v.Name, i, s.Reservoir, whole.Stores[i].Reservoir)
				}
			}
			if run.YearKnown {
				years++
			}
		}
	}
	if years < 6 {
		t.Errorf("%d years", years)
	}
}
