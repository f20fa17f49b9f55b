package model_test

import (
	"slices"
	"testing"

	"duskweight/internal/model"
	"duskweight/internal/model/lift"
	"duskweight/internal/model/lift/path"
	"duskweight/internal/model/lift/ready"
	"duskweight/internal/model/reason"
	"duskweight/internal/model/unit"
)

// Of a spring brake, a ratchet on the drum, a catch elsewhere, a prop and a pin two hold a mass that moves: the brake and the
// ratchet.
func TestHoldsCounted(t *testing.T) {
	var h lift.Hoist
	for i, x := range []struct {
		kind lift.HoldKind
		drum unit.Answer
		n    int
	}{{lift.HoldRatedProp, unit.Yes, 0}, {lift.HoldLockingPin, unit.Yes, 0}, {lift.HoldSpringBrake, unit.No, 1}, {lift.HoldOverspeedCatch, unit.No, 1}, {lift.HoldRatchet, "", 1}, {lift.HoldRatchet, unit.Yes, 2}} {
		h.Holds.Holds = append(h.Holds.Holds, lift.Hold{Kind: x.kind, OnDrum: x.drum})
		if n := ready.Counted(h); n != x.n {
			t.Errorf("after %d, %s: %d, want %d", i, x.kind, n, x.n)
		}
	}
}

// In every unsafe plan and control the line of the two holds has the judge's word: it holds where and only where none of the
// judge's reasons about holds stands, and where it does not it is the first line.
func TestHoldsLineSaysWhatTheJudgeSays(t *testing.T) {
	longOnly(t)
	words := map[path.Word]bool{}
	for _, p := range evaluated(t) {
		for _, s := range p.result.Stores {
			h := model.HoistOf(s)
			if h == nil {
				continue
			}
			lines := h.Lines()
			i := slices.IndexFunc(lines, func(c path.Check) bool { return c.Part == path.TwoHolds })
			if i < 0 {
				continue
			}
			want := path.Holds
			for _, b := range h.Because {
				if !slices.Contains([]string{"holds_count", "holds_drum", "holds_independent"}, b.ID) {
					continue
				}
				if want = path.NotKnown; b.Word == reason.No {
					want = path.GivesWay
				}
				break
			}
			words[want] = true
			if c := lines[i]; c.Word != want || want != path.Holds && i != 0 || len(lines) != len(h.Checks) {
				t.Errorf("%s: line %d of %d says %s, the judge %s: %s", p.plan.ID, i, len(lines), c.Word, want, c.Say)
			}
			if c := lines[i]; int(c.Capacity.Val) != ready.Counted(h.Design) {
				t.Errorf("%s: %v holds", p.plan.ID, c.Capacity)
			}
		}
	}
	if len(words) != 3 {
		t.Errorf("only %v", words)
	}
}
