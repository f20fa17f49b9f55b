package model

import (
	"encoding/json"
	"fmt"
	"os"
	"slices"
	"strconv"
	"strings"
	"testing"

	"duskweight/internal/model/reason"
)

// lineCases are plans in which one thing about line, battery or loads is wrong, not known, or only just right.
type lineCases struct {
	Bases map[string]json.RawMessage
	Cases []lineCase
}

type lineCase struct {
	ID, Base, Why string
	Set           map[string]json.RawMessage
	Want          []string // id and word; empty for none
	Absent        []string
}

func readLineCases(t *testing.T) lineCases {
	t.Helper()
	text, err := os.ReadFile("../../testdata/readiness/line.json")
	if err != nil {
		t.Fatal(err)
	}
	var all lineCases
	if err := json.Unmarshal(text, &all); err != nil {
		t.Fatal(err)
	}
	return all
}

// document is the base of a case with its values set.
func (c lineCase) document(t *testing.T, bases map[string]json.RawMessage) Document {
	t.Helper()
	var tree any
	if err := json.Unmarshal(bases[c.Base], &tree); err != nil {
		t.Fatal(err)
	}
	for path, text := range c.Set {
		var v any
		if err := json.Unmarshal(text, &v); err != nil {
			t.Fatal(err)
		}
		tree = set(tree, strings.Split(path, "."), v)
	}
	text, err := json.Marshal(tree)
	if err != nil {
		t.Fatal(err)
	}
	var doc Document
	if err := json.Unmarshal(text, &doc); err != nil {
		t.Fatal(err)
	}
	if ps := Check(doc); len(ps) > 0 {
		t.Fatalf("%s: %v", c.ID, ps)
	}
	return doc
}

// set puts v at a path of a tree; + appends to a list.
func set(tree any, path []string, v any) any {
	if len(path) == 0 {
		return v
	}
	switch at := tree.(type) {
	case map[string]any:
		at[path[0]] = set(at[path[0]], path[1:], v)
		return at
	case []any:
		if path[0] == "+" {
			return append(at, v)
		}
		i, _ := strconv.Atoi(path[0])
		at[i] = set(at[i], path[1:], v)
		return at
	}
	return v
}

// fails says how reasons differ from what the case wants; empty where they do not.
func (c lineCase) fails(because []reason.Reason) string {
	if len(c.Want) == 2 && !slices.ContainsFunc(because, func(r reason.Reason) bool {
		return r.ID == c.Want[0] && string(r.Word) == c.Want[1]
	}) {
		return "does not say " + strings.Join(c.Want, " ")
	}
	for _, r := range because {
		if slices.Contains(c.Absent, r.ID) {
			return fmt.Sprintf("says %s %s: %s", r.ID, r.Word, r.Text())
		}
	}
	return ""
}

// Every rule of line, batteries and loads says what it should where one thing is wrong, open or only just right, by figures
// worked out by hand in the case; and each of the rules is what makes a case right: without it the case fails.
func TestLineCases(t *testing.T) {
	if testing.Short() {
		t.Skip("every plan, one after the other: not in a short run")
	}
	all := readLineCases(t)
	needed := map[string]bool{}
	for _, c := range all.Cases {
		doc := c.document(t, all.Bases)
		g := Prepare(doc.Project).At("2026-11-28")
		r := g.Evaluate(doc.Variants[0])
		if why := c.fails(r.Because); why != "" {
			t.Errorf("%s (%s): %s", c.ID, c.Why, why)
		}
		for _, b := range r.Because {
			if !slices.Contains(reason.Order(), b.ID) && slices.Contains(c.Want, b.ID) {
				t.Errorf("%s: %s is not in the order of reasons", c.ID, b.ID)
			}
			if b.Say.IsZero() || b.Path == "" || b.Clears == "" || b.Source.Source.Key == "" {
				t.Errorf("%s: %+v says too little", c.ID, b)
			}
		}
		for _, name := range RuleNames() {
			if without := JudgeWithout(name, g, doc.Variants[0], &r, g.On); c.fails(without.Because) != "" {
				needed[name] = true
			}
		}
	}
	ofHoist := (&HoistResult{}).alone("", 0)
	for _, name := range RuleNames() {
		alone := name == "no_store" || name == "not_computed" || slices.ContainsFunc(ofHoist, func(r rule) bool { return r.name == name })
		if !alone && !needed[name] { // those of a hoist alone have their own plans
			t.Errorf("no case fails without the rule %s", name)
		}
	}
}
