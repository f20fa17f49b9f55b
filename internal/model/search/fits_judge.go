package search

import (
	"slices"
	"strings"

	"duskweight/internal/model"
	"duskweight/internal/model/lift"
	"duskweight/internal/model/lift/path"
	"duskweight/internal/model/reason"
	"duskweight/internal/model/unit"
	"duskweight/internal/say"
)

// judged is a combination that was worked out in full, with what stands against it.
type judged struct {
	model.Combination
	moves   Moves // a whole hoist is too much to keep of thousands
	against []against
}

// against is a reason against one combination, in short: a whole one is too much to keep of thousands.
type against struct {
	id    string
	word  reason.Word
	short say.Sentence
	use   unit.Known[unit.Ratio] // of what gives way
	path  string                 // of its field, in the variant
	key   string                 // the same reason of another combination has the same
	at    string                 // the path of its field: in the project where a part of the shelf decides it, else in the variant
	parts bool                   // a part of the shelf decides it, or it says whether the mass moves and the motor stays cool
}

// motion are the ids of reasons that say whether the mass is lifted, comes down by itself and leaves the motor cool: what a
// combination of parts is asked for, whatever field they name.
var motion = []string{"lift_stalls", "never_lifts", "stays_up", "races", "needs_push", "motor_hot"}

// judgeFit gathers what stands against a combination in the hoist at place i.
func judgeFit(h *model.HoistResult, c model.Combination, i int) judged {
	j := judged{Combination: c, moves: movesOf(h)}
	push := h.Drive.Lowering.Known && h.Drive.Lowering.RunsBack == lift.DownNudge
	for _, b := range h.Because {
		if b.Word != reason.No && b.Word != reason.NotKnown || push && b.ID == "needs_push" {
			continue
		}
		inside := strings.TrimPrefix(b.Path, model.HoistPath(i)+".")
		a := against{id: b.ID, word: b.Word, short: b.Short(), use: b.Use, path: b.Path, key: keyOf(b), at: b.Path}
		if at, ok := c.Shelved(inside); ok {
			a.at, a.parts = at, true
		}
		a.parts = a.parts || slices.Contains(motion, b.ID) && inside != "raise.feed"
		j.against = append(j.against, a)
	}
	j.tell(h.Drive, push, i)
	return j
}

func keyOf(b reason.Reason) string { return b.ID + " " + b.Path + " " + b.Of }

// movesOf are the few numbers of a hoist.
func movesOf(h *model.HoistResult) Moves {
	m := Moves{Ratio: h.Drive.Ratio}
	if r := h.Drive.Raising; r.Known && !r.Stalls && r.Time > 0 {
		m.Up, m.Time = unit.Of(r.Speed), unit.Of(r.Time)
	}
	if l := h.Drive.Lowering; l.Known && l.Steady {
		m.Gives = unit.Of(max(0, l.EnergyOut))
	}
	for _, c := range h.Checks {
		strained := c.Word == path.Holds || c.Word == path.Tight
		if counted := c.ID == "holds" || c.ID == "stops"; strained && !counted && c.Use.Is && (!m.Use.Is || c.Use.Val > m.Use.Val) {
			m.Part, m.Use = c.Part, c.Use
		}
	}
	return m
}

// tell adds what the rules do not say of the drive: that it needs a push, gets too hot in one run, or that this is not known.
func (j *judged) tell(d lift.Drive, push bool, i int) {
	has := func(id string, w reason.Word) bool {
		return slices.ContainsFunc(j.against, func(a against) bool { return a.id == id && a.word == w && a.parts })
	}
	add := func(id string, w reason.Word, inside, words string) {
		path := model.HoistPath(i) + "." + inside
		a := against{id: id, word: w, short: say.That(words), key: id + string(w), path: path, at: path, parts: true}
		if at, ok := j.Shelved(inside); ok {
			a.at = at
		}
		j.against = append(j.against, a)
	}
	if push {
		add("needs_push", reason.No, "train.stages", "It comes down only with a push.")
	}
	switch hot := d.HeatUp.Known && d.HeatUp.TooHot || d.HeatDown.Known && d.HeatDown.TooHot; {
	case hot && !has("motor_hot", reason.No):
		add("motor_hot", reason.No, "machine.rth_winding_k_w", "One run from cold already makes the motor too hot.")
	case !hot && !(d.HeatUp.Known && d.HeatDown.Known):
		add("motor_hot", reason.NotKnown, "machine.rth_winding_k_w", "Whether the motor stays cool is not known.")
	}
	if !d.Raising.Known && !has("lift_stalls", reason.No) {
		add("lift_stalls", reason.NotKnown, "raise.voltage_v", "Whether the hoist lifts is not known.")
	}
	if !d.Lowering.Known && !has("stays_up", reason.No) {
		add("stays_up", reason.NotKnown, "lower.loads", "Whether the mass comes down by itself is not known.")
	}
}

// counted are the reasons that count against the combination: what forbids it, and what is not known of it.
func (j judged) counted(apart apart) (no, not []against) {
	for _, a := range j.against {
		switch {
		case !a.parts && apart[a.key]:
		case a.word == reason.No:
			no = append(no, a)
		default:
			not = append(not, a)
		}
	}
	return no, not
}

// apart are the keys of what stands against every combination alike in a part that no shelf changes.
type apart map[string]bool

// apartOf finds what stands against all combinations that were worked out.
func apartOf(all []judged) apart {
	in := map[string]int{}
	for _, j := range all {
		own := map[string]bool{}
		for _, a := range j.against {
			if !a.parts && !own[a.key] {
				own[a.key] = true
				in[a.key]++
			}
		}
	}
	out := apart{}
	for key, n := range in {
		out[key] = n == len(all)
	}
	return out
}

// reasons are what is apart, in the words of the hoist with its own parts where they stand against that too, else of the best
// combination.
func (p apart) reasons(own, best []reason.Reason) []reason.Reason {
	var out []reason.Reason
	for _, list := range [][]reason.Reason{own, best} {
		for _, b := range list {
			told := slices.ContainsFunc(out, func(o reason.Reason) bool { return keyOf(o) == keyOf(b) })
			if p[keyOf(b)] && !told {
				out = append(out, b)
			}
		}
	}
	reason.Sort(out)
	return out
}
