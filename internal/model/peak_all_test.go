package model

import (
	"slices"
	"strings"
	"testing"

	"duskweight/internal/model/load"
	"duskweight/internal/model/reason"
	"duskweight/internal/model/unit"
)

// In each case of line, battery and loads that is about what flows when everything is on together, the checks of the whole
// name the same field, with the word that the case works out by hand; and no check that the judge forbids is left out.
func TestAllAtOnceSaysWhatTheJudgeSays(t *testing.T) {
	if testing.Short() {
		t.Skip("every plan, one after the other: not in a short run")
	}
	all, seen := readLineCases(t), map[string]bool{}
	about := []string{"inverter", "peak_fuse", "board", "low_voltage", "contacts", "cable", "fuse"}
	words := map[reason.Word]string{reason.No: GivesWay, reason.NotKnown: NotKnown}
	for _, c := range all.Cases {
		doc := c.document(t, all.Bases)
		r := Prepare(doc.Project).Evaluate(doc.Variants[0])
		checks := r.AllAtOnce()
		if !slices.IsSortedFunc(checks, WorseCheck) {
			t.Errorf("%s: the worst is not first", c.ID)
		}
		for _, b := range r.Because {
			flows := slices.Contains(about, b.ID) && !strings.HasPrefix(b.Path, "load.appliances") && !strings.HasSuffix(b.Path, "present") &&
				!strings.HasSuffix(b.Path, "management_board") && !strings.HasSuffix(b.Path, "raise.fuse_a") // a fuse that lets its cable burn, without any load
			k := slices.IndexFunc(checks, func(k LineCheck) bool { return k.Path == b.Path && k.Word == words[b.Word] })
			switch {
			case !flows:
			case k < 0 && b.ID != "fuse" && b.ID != "peak_fuse": // panels and cables blow or burn one without any load
				t.Errorf("%s: the judge says %s %s at %s, and no check does", c.ID, b.ID, b.Word, b.Path)
			case k >= 0 && r.MendOf(checks[k]).IsZero() && b.ID != "fuse" && b.ID != "cable":
				t.Errorf("%s: no mend for %s", c.ID, checks[k].ID)
			case k >= 0:
				seen[checks[k].ID+" "+checks[k].Word] = true
			}
		}
	}
	for _, want := range []string{"inverter_run gives_way", "inverter_run not_known", "inverter_start gives_way", "inverter_start not_known", "fuse gives_way", "fuse not_known",
		"fuse_start gives_way", "board gives_way", "board not_known", "low_voltage gives_way", "battery_cable gives_way", "motor_cable gives_way", "motor_cable not_known", "contacts gives_way", "contacts not_known"} {
		if !seen[want] {
			t.Errorf("no case for %s: %v", want, seen)
		}
	}
}

// A wire of 1 mm² carries something up to the 17.5 A of 1.5 mm², the thinnest of the table: 20 A are too much for it at its
// best, 10 A may be.
func TestMotorWireThinnerThanTheTable(t *testing.T) {
	all := readLineCases(t)
	i := slices.IndexFunc(all.Cases, func(c lineCase) bool { return c.ID == "wire-thin" })
	doc := all.Cases[i].document(t, all.Bases)
	for _, c := range []struct {
		limit unit.Current
		word  string
	}{{20, GivesWay}, {10, NotKnown}} {
		v := doc.Variants[0]
		for n := range v.Stores {
			if h := v.Stores[n].Hoist; h != nil {
				h.Raise.WireArea, h.Raise.CurrentLimit = unit.Of(unit.Area(1e-6)), unit.Of(c.limit)
			}
		}
		r := Prepare(doc.Project).Evaluate(v)
		for _, k := range r.AllAtOnce() {
			if k.ID == "motor_cable" && k.Word != c.word {
				t.Errorf("%v A: %s, %s", c.limit, k.Word, k.Say)
			}
		}
	}
}

// A kettle of 2 kW from 7 to 8 and a fridge of 80 W all day, which starts with 480 W: 2080 W run together at 7, and 2480 W
// when the fridge starts.
func TestPeakInWords(t *testing.T) {
	l := load.Load{Appliances: []load.Appliance{
		{Name: "Kettle", Power: unit.Of(unit.Power(2000)), Count: unit.Of(unit.Count(1)), From: unit.Of(unit.Duration(7 * 3600)), To: unit.Of(unit.Duration(8 * 3600)), Supply: load.SupplyInverter},
		{Name: "Fridge", Power: unit.Of(unit.Power(80)), Count: unit.Of(unit.Count(1)), From: unit.Of(unit.Duration(0)), To: unit.Of(unit.Duration(0)), Supply: load.SupplyInverter, Surge: unit.Of(unit.Power(480))},
	}}
	g := Ground{Project: Project{Load: l}}
	g.Load.Peaks = load.PeaksAnywhere(l)
	g.Load.Losses, _ = l.Inverter.Losses()
	var said []string
	for _, s := range g.PeakOfLoad().SayLoad(l) {
		said = append(said, s.String())
	}
	text := strings.Join(said, " ")
	for _, want := range []string{"From 07:00 Kettle and Fridge may run together: 2 080", "When Fridge starts at 07:00, that is up to 2 480"} {
		if !strings.Contains(text, want) {
			t.Errorf("%q is not in %q", want, text)
		}
	}
}
