package model

import (
	"reflect"
	"testing"
)

// A lifted mass computed alone is the one of the whole answer: with the panels straight on its motor, on a battery, with
// no tilt, and with no place.
func TestHoistAlone(t *testing.T) {
	straight := directVariant()
	onLine := directVariant()
	h := *onLine.Stores[0].Hoist
	h.Raise.Feed = "battery"
	onLine.Stores[0].Hoist = &h
	flat := directVariant()
	flat.Panels[0].Tilt.Is = false
	for name, v := range map[string]Variant{"straight": straight, "on the line": onLine, "no tilt": flat} {
		for where, g := range map[string]Ground{"sunny": sunny(t), "nowhere": {}} {
			whole, alone := HoistOf(g.Evaluate(v).Stores[0]), g.Hoist(v, 0)
			if n := len(alone.Drive.Flags); n < len(whole.Drive.Flags) { // the last ones are what year and night say of it
				whole.Drive.Flags = whole.Drive.Flags[:n]
			}
			if !reflect.DeepEqual(whole, alone) {
				t.Errorf("%s, %s: alone it is another", name, where)
			}
			if known := alone.Direct != nil && alone.Direct.Known; known != (name == "straight") {
				t.Errorf("%s: straight on the panels: %v", name, known)
			}
		}
	}
}
