package document

import (
	"testing"
)

// TestUpgradeSteps takes a document through a step of each kind, as a later edition will.
func TestUpgradeSteps(t *testing.T) {
	rename := func(from, to string) rewrite {
		return func(v *value) {
			for i, k := range v.keys {
				if k == from {
					v.keys[i] = to
				}
			}
		}
	}
	s := []step{{project: rename("title", "name")}, {variant: rename("title", "name")}}
	tree, err := parse([]byte(`{"project":{"title":"p"},"variants":[{"title":"a"},{"title":"b"},7]}`))
	if err != nil {
		t.Fatal(err)
	}
	upgrade(tree, s)
	if got := tree.field("project").field("name"); got == nil || got.text != "p" {
		t.Error("the project was not lifted")
	}
	for i, want := range []string{"a", "b"} {
		if got := tree.field("variants").items[i].field("name"); got == nil || got.text != want {
			t.Errorf("variant %d was not lifted", i)
		}
	}
}

// TestOneStepAnEdition keeps the steps and the edition together.
func TestOneStepAnEdition(t *testing.T) {
	if len(steps) != Edition-1 {
		t.Errorf("edition %d needs %d steps; there are %d", Edition, Edition-1, len(steps))
	}
	for _, edition := range []int{-1, 0, Edition + 1} {
		if _, err := DecodeVariant(edition, []byte("{}")); err == nil {
			t.Errorf("edition %d was read", edition)
		}
	}
}
