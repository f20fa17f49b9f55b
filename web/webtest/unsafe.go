package webtest

import (
	"encoding/json"
	"os"
	"slices"
	"strconv"
	"strings"
	"testing"

	"duskweight/internal/document"
	"duskweight/internal/model"
)

// UnsafePlan is one of the plans in testdata/unsafe: a document, and the word that it deserves. One that a page would
// refuse has no document.
type UnsafePlan struct {
	ID, Ready string
	Doc       model.Document
}

// UnsafePlans reads the unsafe plans and their controls, each a patch (RFC 6902) of a plan that is ready. It is for tests
// two folders below the root.
func UnsafePlans(t testing.TB) (out []UnsafePlan) {
	t.Helper()
	type operation struct {
		Op, Path string
		Value    any
	}
	var all struct {
		Bases     map[string]json.RawMessage
		LaterBase map[string][]operation `json:"later_base"`
		Cases     []struct {
			ID, Base     string
			Patch, Later []operation
			Want         struct{ Ready string }
		}
	}
	data, err := os.ReadFile("../../testdata/unsafe/plans.json")
	if err != nil {
		t.Fatal(err)
	}
	if err := json.Unmarshal(data, &all); err != nil {
		t.Fatal(err)
	}
	for _, c := range all.Cases {
		var tree any
		if err := json.Unmarshal(all.Bases[c.Base], &tree); err != nil {
			t.Fatal(err)
		}
		if m, ok := tree.(map[string]any); ok && m["document"] != nil {
			tree = m["document"]
		}
		for _, o := range slices.Concat(all.LaterBase[c.Base], c.Patch, c.Later) {
			tree = patchJSON(t, tree, strings.Split(o.Path, "/")[1:], o.Op, o.Value)
		}
		text, err := json.Marshal(tree)
		if err != nil {
			t.Fatal(err)
		}
		doc, err := document.Decode(text)
		if err != nil || model.Check(doc).Err() != nil {
			continue
		}
		out = append(out, UnsafePlan{c.ID, c.Want.Ready, doc})
	}
	return out
}

// patchJSON applies one operation (add, replace, remove) below a node of a JSON tree.
func patchJSON(t testing.TB, node any, path []string, op string, value any) any {
	t.Helper()
	switch n := node.(type) {
	case map[string]any:
		switch {
		case len(path) > 1:
			n[path[0]] = patchJSON(t, n[path[0]], path[1:], op, value)
		case op == "remove":
			delete(n, path[0])
		default:
			n[path[0]] = value
		}
		return n
	case []any:
		i, err := strconv.Atoi(path[0])
		switch {
		case path[0] == "-":
			return append(n, value)
		case err != nil || i > len(n):
			t.Fatalf("%v leads nowhere", path)
		case i == len(n) && (len(path) > 1 || op == "replace"):
			return n // an answer of a list that the patch shortened falls away with it
		case len(path) > 1:
			n[i] = patchJSON(t, n[i], path[1:], op, value)
		case op == "remove":
			return slices.Delete(n, i, i+1)
		case op == "add":
			return slices.Insert(n, i, value)
		default:
			n[i] = value
		}
		return n
	}
	t.Fatalf("%v leads nowhere", path)
	return nil
}
