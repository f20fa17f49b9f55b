package document

import (
	"os"
	"reflect"
	"testing"

	"duskweight/internal/catalog"
	"duskweight/internal/model"
)

// TestSample takes the worked example through the codec, the schema and the check.
func TestSample(t *testing.T) {
	doc := catalog.Sample()
	data, err := Encode(doc)
	if err != nil {
		t.Fatal(err)
	}
	back, err := Decode(data)
	if err != nil {
		t.Fatal(err)
	}
	if !reflect.DeepEqual(back, doc) {
		t.Error("the sample came back changed")
	}
	if err := allows(t, compiled(t), data); err != nil {
		t.Errorf("%#v", err)
	}
	if ps := model.Check(back); len(ps) > 0 {
		t.Error(ps)
	}
}

// TestReleased reads the document of each released edition as this edition, and finds nothing wrong with it. A file is
// added with each edition and never changed.
func TestReleased(t *testing.T) {
	for _, name := range []string{"edition1.json", "shed_lamp.json"} {
		data, err := os.ReadFile("../../testdata/projects/" + name)
		if err != nil {
			t.Fatal(err)
		}
		doc, err := Decode(data)
		if err != nil {
			t.Fatal(err)
		}
		if ps := model.Check(doc); len(ps) > 0 {
			t.Errorf("%s: %v", name, ps)
		}
	}
}
