package path

import (
	"strings"
	"testing"

	"duskweight/internal/model/lift"
	"duskweight/internal/model/unit"
)

// A fall makes the whole load path not known and the plan not ready, until every part was looked at; a damaged part
// forbids it; a stop without fall or jerk changes nothing, and what nobody answered counts as a fall.
func TestAfterAFall(t *testing.T) {
	state := func(f ...lift.Failure) (string, []Check) {
		h := whole()
		h.Trials.Failures = f
		d := drive(h)
		checks := Checks(h, d)
		for _, c := range checks {
			sound(t, c)
		}
		word := worst(checks)
		return word, checks
	}
	whole := lift.Look{Rope: "renewed", Knots: "sound", Pulleys: "sound", Pins: "sound", Container: "sound", Base: "sound"}
	if word, _ := state(); word != "yes" {
		t.Fatalf("without a fall: %s", word)
	}
	if word, _ := state(lift.Failure{Shock: "no"}); word != "yes" {
		t.Errorf("no fall, no jerk: %s", word)
	}
	for _, shock := range []string{"yes", ""} {
		word, checks := state(lift.Failure{Shock: unit.Answer(shock)})
		if word != "not_known" {
			t.Errorf("after a fall (%q): %s", shock, word)
		}
		for _, id := range []string{"rope", "knot", "head_sheave", "cross_pin", "container", "base_uplift"} {
			if c := find(t, checks, id, ""); c.Word != NotKnown {
				t.Errorf("after a fall (%q) %s: %s", shock, id, c.Word)
			}
		}
	}
	if word, _ := state(lift.Failure{Shock: "yes", Look: whole}); word != "yes" {
		t.Errorf("all looked at: %s", word)
	}
	for _, b := range limbs() { // each part alone blocks
		one := whole
		for key, at := range map[string]*lift.Condition{"rope": &one.Rope, "knots": &one.Knots, "pulleys": &one.Pulleys, "pins": &one.Pins, "container": &one.Container, "base": &one.Base} {
			if key == b.key {
				*at = ""
			}
		}
		if word, _ := state(lift.Failure{Shock: "yes", Look: one}); word != "not_known" {
			t.Errorf("%s not looked at: %s", b.key, word)
		}
	}
	bad := whole
	bad.Pulleys = "damaged"
	word, checks := state(lift.Failure{Date: "3 May", Shock: "yes", Look: bad})
	if word != "no" || !strings.Contains(plainly(find(t, checks, "hanger", "").Say), "3 May") {
		t.Errorf("a damaged pulley: %s", word)
	}
	if word, _ := state(lift.Failure{Shock: "yes", Look: whole}, lift.Failure{Shock: "yes"}); word != "not_known" {
		t.Errorf("a second fall: %s", word)
	}
}

// Each part that was not looked at takes back every line that stands on it and no other. Only the room on the drum and
// the side angle of the rope, sizes of the design, wait for no look.
func TestEveryLineOfAPart(t *testing.T) {
	rope, pins := []string{"rope", "bend_ratio", "slack", "brake_catch", stallRope}, []string{"cross_pin", "shaft", "coupling", "drum_hub", "gear_tooth", "case_fasteners", "holds", "dead_wraps", "stops", "brake_catch", roomAbove}
	base := []string{"base_uplift", "base_sliding", "base_overturning", "base_board", "ground", "post", "beam", stallBase}
	all := lift.Look{Rope: "sound", Knots: "sound", Pulleys: "sound", Pins: "sound", Container: "sound", Base: "sound"}
	for _, one := range []struct {
		name  string
		clear func(*lift.Look)
		want  []string
	}{
		{"rope", func(l *lift.Look) { l.Rope = "" }, rope},
		{"knots", func(l *lift.Look) { l.Knots = "" }, []string{"knot"}},
		{"pulleys", func(l *lift.Look) { l.Pulleys = "" }, []string{"head_sheave", "hanger"}},
		{"pins", func(l *lift.Look) { l.Pins = "" }, pins},
		{"container", func(l *lift.Look) { l.Container = "" }, []string{"container"}},
		{"base", func(l *lift.Look) { l.Base = "" }, base},
		{"anything", func(l *lift.Look) { *l = lift.Look{} }, append(append(append([]string{"knot", "head_sheave", "hanger", "container"}, rope...), pins...), base...)},
	} {
		look := all
		one.clear(&look)
		h := whole()
		h.Trials.Failures = []lift.Failure{{Shock: "yes", Look: look}}
		met := map[string]bool{}
		for _, c := range Checks(h, drive(h)) {
			key := c.ID
			if c.ID == "overhoist" {
				key = c.Part
			}
			wanted := contains(one.want, key)
			met[key] = true
			if wanted != (c.Word == NotKnown) || wanted && (c.Use.Is || len(c.Missing) == 0) {
				t.Errorf("%s not looked at: %s, %s is %s", one.name, c.ID, c.Part, c.Word)
			}
		}
		for _, key := range one.want {
			if !met[key] {
				t.Errorf("%s: no line %s", one.name, key)
			}
		}
	}
}

// What gives way anyhow still does, and a part without a check of its own gets a line.
func TestAfterAFallKeepsTheWorse(t *testing.T) {
	h := whole()
	h.Rope.BreakingLoad = of[unit.Force](100)
	h.Reeving.LeadSheaves = of[unit.Count](0)
	h.Reeving.Sheaves = nil
	h.Trials.Failures = []lift.Failure{{Shock: "yes"}}
	d := lift.Compute(h)
	checks := Checks(h, d)
	if c := find(t, checks, "rope", ""); c.Word != GivesWay {
		t.Errorf("a weak rope: %s", c.Word)
	}
	for _, b := range limbs() {
		met := false
		for _, c := range checks {
			met = met || b.has(c)
		}
		if !met {
			t.Errorf("no line for %s", b.key)
		}
	}
}

// A regular look that finds damage forbids the hoist as one after a fall does; one that leaves a part out forbids nothing, for
// nothing fell. A copy keeps what fell and what was found damaged, and no look that found nothing.
func TestRegularLook(t *testing.T) {
	h := whole()
	sound, half := lift.Look{Rope: "sound", Knots: "sound", Pulleys: "sound", Pins: "sound", Container: "sound", Base: "sound"}, lift.Look{Rope: "sound"}
	bad := sound
	bad.Rope = "damaged"
	h.Trials.Looks = []lift.LookTrial{{Date: "1 May", Look: sound}, {Date: "2 May", Look: half}}
	if word := worst(Checks(h, drive(h))); word != "yes" {
		t.Errorf("two looks that found nothing: %s", word)
	}
	h.Trials.Looks = append(h.Trials.Looks, lift.LookTrial{Date: "3 May", Look: bad})
	checks := Checks(h, drive(h))
	if said := plainly(find(t, checks, "rope", "").Say); worst(checks) != "no" || !strings.Contains(said, "at the look of 3 May") {
		t.Errorf("found damaged: %s, %q", worst(checks), said)
	}
	h.Trials.Failures = []lift.Failure{{Date: "4 May", Shock: "yes", Look: sound}}
	if kept := h.Trials.Kept(); len(kept.Failures) != 1 || len(kept.Looks) != 1 || kept.Looks[0].Date != "3 May" {
		t.Errorf("a copy keeps %+v", kept)
	}
}
