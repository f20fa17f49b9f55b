package model_test

import (
	"strings"
	"testing"

	"duskweight/internal/catalog"
	"duskweight/internal/model"
	"duskweight/internal/model/lift"
	"duskweight/internal/model/unit"
)

// A store that too little is known of leaves the verdict open, unless it cannot mend it: 1 kg over 1 m is at the most
// 9.8 J, nothing against a night. A variant without a store has no verdict.
func TestVerdictStaysOpen(t *testing.T) {
	doc := catalog.Sample()
	ground := model.Prepare(doc.Project)
	for _, c := range []struct {
		what string
		h    *lift.Hoist
		want string
		open string
	}{
		{"a hoist of which nothing is known", &lift.Hoist{Name: "stone"}, "", "“stone”"},
		{"one that is light and low", &lift.Hoist{Name: "stone", Mass: []lift.Piece{{Mass: unit.Of[unit.Mass](1)}}, Travel: unit.Of[unit.Length](1)}, model.LearningPiece, ""},
		{"one of 10,000 t", &lift.Hoist{Name: "stone", Mass: []lift.Piece{{Mass: unit.Of[unit.Mass](1e7)}}, Travel: unit.Of[unit.Length](1)}, "", "“stone”"},
		{"no store", nil, "", "stores energy"},
	} {
		v := doc.Variants[0]
		v.Stores, v.Origins = nil, nil
		if c.h != nil {
			v.Stores = []model.Store{{Hoist: c.h}}
		}
		r := ground.Evaluate(v)
		if r.Verdict != c.want || !strings.Contains(r.Open.String(), c.open) || (c.open == "") != r.Open.IsZero() {
			t.Errorf("%s: %q, open %q", c.what, r.Verdict, r.Open)
		}
		if c.open != "" && !strings.Contains(r.Headline[0].String(), r.Open.String()) {
			t.Errorf("%s: %q", c.what, r.Headline)
		}
	}
}
