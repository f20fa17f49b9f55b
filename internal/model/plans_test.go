package model_test

import (
	"encoding/json"
	"fmt"
	"os"
	"slices"
	"strconv"
	"strings"
	"testing"

	"duskweight/internal/document"
	"duskweight/internal/model"
	"duskweight/internal/model/reason"
)

// on is the day on which the plans are judged: the proofs among them are four weeks old.
const on = reason.Day("2026-11-28")

// electrical are the rules of voltages, currents and loads.
var electrical = []string{"volts_line", "volts_feed", "volts_string", "volts_touch", "batteries_joined", "peak_fuse", "fuse", "contacts", "charge_current", "inverter", "air", "harm"}

// plans are the unsafe plans and their controls, each a patch (RFC 6902) of a plan that is ready.
type plans struct {
	Bases     map[string]json.RawMessage `json:"bases"`
	LaterBase map[string][]operation     `json:"later_base"`
	Cases     []plan                     `json:"cases"`
}

type plan struct {
	ID    string      `json:"id"`
	Base  string      `json:"base"`
	Patch []operation `json:"patch"`
	Later []operation `json:"later"`
	Want  struct {
		Ready  string  `json:"ready"`
		Reason *string `json:"reason"`
	} `json:"want"`
}

type operation struct {
	Op    string `json:"op"`
	Path  string `json:"path"`
	Value any    `json:"value"`
}

func readPlans(t testing.TB) plans {
	t.Helper()
	data, err := os.ReadFile("../../testdata/unsafe/plans.json")
	if err != nil {
		t.Fatal(err)
	}
	var p plans
	if err := json.Unmarshal(data, &p); err != nil {
		t.Fatal(err)
	}
	return p
}

// document makes the document of a plan, and what is refused of it.
func (p plans) document(t testing.TB, c plan) (model.Document, error) {
	t.Helper()
	var tree any
	if err := json.Unmarshal(p.Bases[c.Base], &tree); err != nil {
		t.Fatal(err)
	}
	if m, ok := tree.(map[string]any); ok && m["document"] != nil {
		tree = m["document"]
	}
	for _, o := range slices.Concat(p.LaterBase[c.Base], c.Patch, c.Later) {
		tree = patched(t, tree, strings.Split(o.Path, "/")[1:], o)
	}
	data, err := json.Marshal(tree)
	if err != nil {
		t.Fatal(err)
	}
	doc, err := document.Decode(data)
	if err == nil {
		err = model.CheckOn(doc, on).Err()
	}
	return doc, err
}

// patched applies one operation below a node. An answer of a list that the patch shortened falls away with it.
func patched(t testing.TB, node any, path []string, o operation) any {
	switch n := node.(type) {
	case map[string]any:
		if len(path) > 1 {
			n[path[0]] = patched(t, n[path[0]], path[1:], o)
		} else if o.Op == "remove" {
			delete(n, path[0])
		} else {
			n[path[0]] = o.Value
		}
		return n
	case []any:
		i, err := strconv.Atoi(path[0])
		switch {
		case path[0] == "-":
			return append(n, o.Value)
		case err != nil || i > len(n):
			t.Fatalf("%s: %s", o.Path, path[0])
		case len(path) > 1:
			n[i] = patched(t, n[i], path[1:], o)
		case o.Op == "remove":
			return slices.Delete(n, i, i+1)
		case o.Op == "add":
			return slices.Insert(n, i, o.Value)
		default:
			n[i] = o.Value
		}
		return n
	}
	t.Fatalf("%s leads nowhere", o.Path)
	return nil
}

// Each of the plans gets the word that it deserves, for the reason that it deserves, in the judgement and in the answer.
func TestUnsafePlans(t *testing.T) {
	p := readPlans(t)
	if len(p.Cases) != 73 {
		t.Fatalf("%d plans", len(p.Cases))
	}
	for _, c := range p.Cases {
		if c.Want.Reason != nil && slices.Contains(electrical, *c.Want.Reason) && !slices.Contains(model.RuleNames(), "volts_feed") {
			continue
		}
		doc, err := p.document(t, c)
		if (err != nil) != (c.Want.Ready == "refused") {
			t.Errorf("%s: refused: %v", c.ID, err)
		}
		if err != nil {
			continue
		}
		r := model.Evaluate(doc, on)
		if say := c.judged(r.Variants[0].Ready, r.Variants[0].Because); say != "" {
			t.Errorf("%s: %s", c.ID, say)
		}
		a := r.Answer().Variants[0]
		found := c.Want.Reason == nil
		for _, b := range a.Because {
			found = found || b.ID == *c.Want.Reason && string(b.Word) == c.Want.Ready
		}
		if string(a.Ready) != c.Want.Ready || !found {
			t.Errorf("%s: evaluate says %s", c.ID, a.Ready)
		}
	}
}

// judged says how a judgement differs from what a plan wants; empty where it does not.
func (c plan) judged(word reason.Word, because []reason.Reason) string {
	var told []string
	found := c.Want.Reason == nil
	for _, b := range because {
		told = append(told, fmt.Sprintf("%s %s (%s): %s", b.Word, b.ID, b.Path, b.Text()))
		found = found || b.ID == *c.Want.Reason && string(b.Word) == c.Want.Ready
	}
	if string(word) == c.Want.Ready && found {
		return ""
	}
	want := c.Want.Ready
	if c.Want.Reason != nil {
		want += " because of " + *c.Want.Reason
	}
	return fmt.Sprintf("%s, want %s\n  %s", word, want, strings.Join(told, "\n  "))
}
