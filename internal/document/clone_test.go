package document

import (
	"reflect"
	"testing"

	"duskweight/internal/catalog"
	"duskweight/internal/model"
	"duskweight/internal/model/panel"
)

// A copy is what reading back the written design gives, for any design: lists and tables that are empty, too.
func TestCloneIsReadBack(t *testing.T) {
	docs := []model.Document{catalog.Sample()}
	for seed := range uint64(30) {
		docs = append(docs, newFiller(seed).document())
	}
	empty := catalog.Sample()
	empty.Variants[0].Panels, empty.Variants[0].Origins = []panel.Array{}, model.Origins{}
	docs = append(docs, empty)
	for i, doc := range docs {
		for _, v := range doc.Variants {
			body, err := EncodeVariant(v)
			if err != nil {
				t.Fatal(i, err)
			}
			back, err := DecodeVariant(Edition, body)
			if err != nil {
				t.Fatal(i, err)
			}
			if !reflect.DeepEqual(Clone(v), back) {
				t.Errorf("document %d: the copy is not what is read back", i)
			}
		}
		p := doc.Project
		p.Weather = nil
		body, err := EncodeProject(p)
		if err != nil {
			t.Fatal(i, err)
		}
		if back, err := DecodeProject(Edition, body); err != nil || !reflect.DeepEqual(Clone(p), back) {
			t.Errorf("document %d: the copy of the project is not what is read back: %v", i, err)
		}
	}
}

// What could not be read back is not written.
func TestEncodeClosedWords(t *testing.T) {
	v := catalog.Sample().Variants[0]
	v.Controller.Kind = "magic"
	if body, err := EncodeVariant(v); err == nil {
		_, again := DecodeVariant(Edition, body)
		t.Errorf("a kind of no list is written; reading it back says: %v", again)
	}
}
