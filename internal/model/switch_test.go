package model

import (
	"slices"
	"strings"
	"testing"

	"duskweight/internal/model/lift"
	"duskweight/internal/model/reason"
	"duskweight/internal/model/unit"
)

// The switch between panels and motor must break a quarter more than all panels give into a short circuit by their sheet. A hair
// less gives way, one that nobody rated is not known, and the switch is drawn with what the judge says of it.
func TestPanelSwitchBreaksTheirCurrent(t *testing.T) {
	v := directVariant()
	a := v.Panels[0]
	short := float64(a.Sheet.Isc.Val) * float64(a.Count.Val) / float64(a.Sheet.Series.Or(1))
	for _, c := range []struct {
		amps unit.Known[unit.Current]
		word reason.Word
	}{{unit.Of(unit.Current(1.25 * short * 1.01)), reason.Yes}, {unit.Of(unit.Current(1.25 * short * 0.99)), reason.No}, {unit.Known[unit.Current]{}, reason.NotKnown}} {
		h := *v.Stores[0].Hoist
		h.Raise.Switch = c.amps
		with := v.WithHoist(0, h)
		r := sunny(t).Evaluate(with)
		if len(r.Wiring.Strings) == 0 || !HoistOf(r.Stores[0]).Direct.Known {
			t.Fatal("no panels on the motor")
		}
		got := reason.Yes
		for _, b := range r.Because {
			if b.ID == "contacts" {
				got = b.Word
			}
		}
		if got != c.word {
			t.Errorf("%v A of %g: %s, want %s", c.amps, 1.25*short, got, c.word)
		}
		drawn := slices.IndexFunc(r.Circuit(with), func(d Device) bool { return d.Kind == MotorSwitch })
		if drawn < 0 || r.Circuit(with)[drawn].Word != c.word {
			t.Errorf("%v A: the switch is not drawn as it is judged", c.amps)
		}
	}
	h := *v.Stores[0].Hoist
	h.Raise.Feed = lift.FeedDrive
	if c := HoistOf(sunny(t).Evaluate(v.WithHoist(0, h)).Stores[0]).switchCheck(); strings.Contains(c.Say.String(), "panels") {
		t.Errorf("a motor on the line: %s", c.Say)
	}
}
