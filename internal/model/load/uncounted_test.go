package load

import (
	"strings"
	"testing"

	"duskweight/internal/model/unit"
)

// A fridge counts only where its hours, its power and its number are known. One that counts as nothing is told of by what is not
// known; a refused one and one that is only nice to have are not, and 0 W is known.
func TestUncounted(t *testing.T) {
	whole := Appliance{Name: "Fridge", Power: unit.Of[unit.Power](80), Count: unit.Of[unit.Count](1), From: unit.Of[unit.Duration](0), To: unit.Of[unit.Duration](0), Priority: PriorityEssential}
	for _, c := range []struct {
		change func(*Appliance)
		says   string // empty: it counts
	}{
		{func(*Appliance) {}, ""},
		{func(a *Appliance) { a.Power.Val = 0 }, ""},
		{func(a *Appliance) { a.To.Is = false }, "when “Fridge” runs is not known, so it is not counted"},
		{func(a *Appliance) { a.To.Is, a.FromDusk = false, unit.Of[unit.Duration](3600) }, ""},
		{func(a *Appliance) { a.From.Is, a.To.Is, a.AfterDusk = false, false, unit.Yes }, ""},
		{func(a *Appliance) { a.Power.Is = false }, "the power of “Fridge” is not known, so it is not counted"},
		{func(a *Appliance) { a.Count.Is = false }, "how many of “Fridge” there are is not known, so they are not counted"},
		{func(a *Appliance) { a.To.Is, a.Priority = false, "" }, "when “Fridge” runs"},
		{func(a *Appliance) { a.To.Is, a.Priority = false, PriorityNice }, ""},
		{func(a *Appliance) { a.To.Is, a.Name = false, "Medicine fridge" }, ""},
	} {
		a := whole
		c.change(&a)
		all := Load{Appliances: []Appliance{whole, a}}.Uncounted()
		switch {
		case c.says == "" && len(all) > 0:
			t.Errorf("%+v: %q", a, all[0])
		case c.says != "" && (len(all) != 1 || !strings.HasPrefix(all[0].String(), c.says)):
			t.Errorf("%+v: %q, want %q", a, all, c.says)
		}
	}
}
