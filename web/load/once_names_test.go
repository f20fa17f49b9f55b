package load

import (
	"encoding/json"
	"os"
	"testing"

	"duskweight/internal/document"
	"duskweight/internal/model"
	"duskweight/internal/model/load"
	"duskweight/internal/model/unit"
)

// Every check of everything at once has a name on the card, and every name a check: those of a hoist on the line, and those
// of a battery with an inverter and a lamp on a cable of its own, and of one that breaks down.
func TestOnceNames(t *testing.T) {
	text, err := os.ReadFile("../../testdata/readiness/line.json")
	if err != nil {
		t.Fatal(err)
	}
	var all struct{ Bases map[string]json.RawMessage }
	if err := json.Unmarshal(text, &all); err != nil {
		t.Fatal(err)
	}
	seen := map[string]bool{}
	for _, base := range all.Bases {
		doc, err := document.Decode(base)
		if err != nil {
			t.Fatal(err)
		}
		lamps := doc.Project.Load.Appliances
		lamps[0].CableLen, lamps[0].CableArea = unit.Of(unit.Length(5)), unit.Of(unit.Area(1e-6))
		lamps[1].Supply, lamps[1].Surge = load.SupplyInverter, unit.Of(unit.Power(50))
		doc.Project.Load.Inverter.Present = unit.Yes
		broken := document.Clone(doc) // a battery that breaks down
		for i, st := range broken.Variants[0].Stores {
			if st.Cells != nil {
				broken.Variants[0].Stores[i].Cells.Internal = unit.Of[unit.Resistance](10)
			}
		}
		for _, r := range append(model.Evaluate(doc, "2026-11-28").Variants, model.Evaluate(broken, "2026-11-28").Variants...) {
			for _, c := range r.AllAtOnce() {
				seen[c.ID] = true
				if onceNames[c.ID] == "" {
					t.Errorf("%s has no name", c.ID)
				}
			}
		}
	}
	for id := range onceNames {
		if !seen[id] {
			t.Errorf("no check is %s", id)
		}
	}
}
