package store

import (
	"errors"
	"reflect"
	"strings"
	"testing"

	"duskweight/internal/document"
	"duskweight/internal/model"
)

// TestFullProject takes as many variants as a document may hold and not one more, counts none that was deleted, and gives
// the full project back from its export.
func TestFullProject(t *testing.T) {
	s := fresh(t)
	p, first := sampled(t, s)
	next := first.Value
	next.Name = strings.Repeat("ñ", model.MaxName)
	var last Saved[model.Variant]
	for range model.MaxVariants - 1 {
		last = must[Saved[model.Variant]](t)(s.CreateVariant(t.Context(), p.ID, next, "Added", noon))
	}
	problems, full := errors.AsType[model.Problems](second(s.CreateVariant(t.Context(), p.ID, next, "Added", noon)))
	if !full || len(problems) != 1 || problems[0].Path != "variants" {
		t.Errorf("one more: %v", problems)
	}
	if err := s.DeleteVariant(t.Context(), last.ID, last.Revision, "Deleted", noon); err != nil {
		t.Fatal(err)
	}
	must[Saved[model.Variant]](t)(s.CreateVariant(t.Context(), p.ID, next, "Added", noon))
	doc := must[model.Document](t)(s.Export(t.Context(), p.ID))
	data := must[[]byte](t)(document.Encode(doc))
	back := must[model.Document](t)(document.Decode(data))
	if err := model.Check(back).Err(); err != nil {
		t.Errorf("its own export is refused: %v", err)
	}
	if again := must[Saved[model.Project]](t)(s.CreateProject(t.Context(), back, "Brought in", noon)); !reflect.DeepEqual(doc, must[model.Document](t)(s.Export(t.Context(), again.ID))) {
		t.Error("it came back changed")
	}
}
