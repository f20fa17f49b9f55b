package document

import (
	"bytes"
	"encoding/json"
	"fmt"
	"maps"
	"math/rand/v2"
	"os"
	"slices"
	"testing"

	"github.com/santhosh-tekuri/jsonschema/v6"

	"duskweight/internal/model"
)

func compiled(t *testing.T) *jsonschema.Schema {
	t.Helper()
	text, err := Schema()
	if err != nil {
		t.Fatal(err)
	}
	doc, err := jsonschema.UnmarshalJSON(bytes.NewReader(text))
	if err != nil {
		t.Fatal(err)
	}
	c := jsonschema.NewCompiler()
	c.DefaultDraft(jsonschema.Draft2020)
	c.AssertContent()
	if err := c.AddResource("project.json", doc); err != nil {
		t.Fatal(err)
	}
	s, err := c.Compile("project.json")
	if err != nil {
		t.Fatal(err)
	}
	return s
}

func allows(t *testing.T, s *jsonschema.Schema, data []byte) error {
	t.Helper()
	v, err := jsonschema.UnmarshalJSON(bytes.NewReader(data))
	if err != nil {
		t.Fatal(err)
	}
	return s.Validate(v)
}

// reads is what the program itself says of a document's form and ranges.
func reads(data []byte) error {
	doc, err := Decode(data)
	if err != nil {
		return err
	}
	return model.CheckRanges(doc).Err()
}

// TestSchemaAllows holds the schema against documents that the program reads.
func TestSchemaAllows(t *testing.T) {
	s := compiled(t)
	data, err := os.ReadFile(shedLamp)
	if err != nil {
		t.Fatal(err)
	}
	if err := allows(t, s, data); err != nil {
		t.Errorf("%#v", err)
	}
	for seed := range uint64(12) {
		data, err := Encode(newFiller(seed).document())
		if err != nil {
			t.Fatal(err)
		}
		if err := allows(t, s, data); err != nil {
			t.Fatalf("seed %d: %#v", seed, err)
		}
	}
}

// TestSchemaAgrees spoils one value of a good document at a time; the schema and the program must agree on the rest.
func TestSchemaAgrees(t *testing.T) {
	if testing.Short() {
		t.Skip("one document after the other: not in a short run")
	}
	s := compiled(t)
	r := rand.New(rand.NewPCG(7, 7))
	refused := 0
	for n := range 600 {
		doc := newFiller(uint64(n % 30)).document()
		doc.Project.Weather = nil // a long way to carry for one value
		data, err := Encode(doc)
		if err != nil {
			t.Fatal(err)
		}
		var tree any
		if err := json.Unmarshal(data, &tree); err != nil {
			t.Fatal(err)
		}
		what := spoil(r, tree)
		bad, err := json.Marshal(tree)
		if err != nil {
			t.Fatal(err)
		}
		program, schema := reads(bad), allows(t, s, bad)
		if (program == nil) != (schema == nil) {
			t.Fatalf("%s\nthe program says %v\nthe schema says %v", what, program, schema)
		}
		if program != nil {
			refused++
		}
	}
	if refused < 200 {
		t.Errorf("only %d of 600 were refused: the test is blind", refused)
	}
}

// spoil changes one value somewhere in a tree, and tells what it did.
func spoil(r *rand.Rand, tree any) string {
	type spot struct {
		path string
		set  func(any)
		drop func()
	}
	var spots []spot
	var walk func(string, any)
	walk = func(path string, v any) {
		switch v := v.(type) {
		case map[string]any:
			for _, k := range sorted(v) {
				spots = append(spots, spot{path + "." + k, func(x any) { v[k] = x }, func() { delete(v, k) }})
				walk(path+"."+k, v[k])
			}
			spots = append(spots, spot{path + ".unheard_of", func(x any) { v["unheard_of"] = x }, func() {}})
		case []any:
			for i := range v {
				spots = append(spots, spot{fmt.Sprintf("%s[%d]", path, i), func(x any) { v[i] = x }, func() {}})
				walk(fmt.Sprintf("%s[%d]", path, i), v[i])
			}
		}
	}
	walk("", tree)
	at := spots[r.IntN(len(spots))]
	values := []any{nil, true, "", "yes", "hemp", 0, -1, 1.5, 1e30, 3, []any{}, map[string]any{}, []any{1}}
	if r.IntN(4) == 0 {
		at.drop()
		return at.path + " dropped"
	}
	v := values[r.IntN(len(values))]
	at.set(v)
	return fmt.Sprintf("%s = %#v", at.path, v)
}

func sorted(m map[string]any) []string {
	return slices.Sorted(maps.Keys(m)) // a map's order is random; the test's is not
}
