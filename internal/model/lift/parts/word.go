package parts

import (
	"cmp"
	"slices"
	"strings"

	"duskweight/internal/model/lift"
	"duskweight/internal/model/lift/path"
	"duskweight/internal/model/reason"
	"duskweight/internal/model/unit"
)

// Said is what is known of a hoist, as far as its parts are concerned.
type Said struct {
	At      string          // the hoist's place in the variant
	Checks  []path.Check    // of the load path
	Flags   []lift.Flag     // of the drive
	Because []reason.Reason // against readiness, paths in the variant
	Typical []string        // inputs whose value is usual elsewhere and not confirmed, paths inside the hoist
	Given   map[string]bool // of every input that the hoist has, by its path inside it: whether it is given, or may stay empty
}

// State is a part with its word. A part is settled where it holds or is only tight: nothing of it gives way or is not
// known, its first inputs are given, and no value of it is merely usual elsewhere. Settled is never called proven.
type State struct {
	Part
	Word    path.Word
	Use     unit.Known[unit.Ratio] // of its check that is used most
	Check   *path.Check            // that check, or the one that decides the word; nil for none
	Against []reason.Reason        // of this part, the worst first
	Flags   []lift.Flag            // bad ones of this part
	Open    []string               // inputs that are asked for and not given, the one that most checks name first
}

// Settled reports whether the part is settled.
func (s State) Settled() bool { return s.Word == path.Holds || s.Word == path.Tight }

// Beyond is the part that stands for reasons of no part of the hoist: what its tests said, or what else is on its line.
const Beyond = "beyond"

// States gives every part of a hoist its word. What stands against the hoist and belongs to none of its parts makes a part
// of its own at the end, so that never all parts of a hoist that is not ready are settled.
func States(h lift.Hoist, said Said) []State {
	all := All(h)
	out := make([]State, len(all))
	for i, p := range all {
		out[i] = State{Part: p, Word: path.Holds}
	}
	beyond := State{Part: single(Beyond, "Tests and line", "What else is against it?", Around, nil, nil), Word: path.Holds}
	to := func(at string) *State {
		if i := Owner(all, at); i >= 0 {
			return &out[i]
		}
		return &beyond
	}
	asks, cleared := askedBy(all, said.Checks), clearedIn(said.Because)
	for i := range said.Checks {
		c := &said.Checks[i]
		s := to(c.About())
		s.measure(c)
		if !cleared[c.ID+" "+c.About()] {
			s.take(c)
		}
	}
	for _, f := range said.Flags {
		if f.Bad {
			s := to(f.Path)
			s.Flags, s.Word = append(s.Flags, f), path.GivesWay
		}
	}
	for _, r := range said.Because {
		to(cmp.Or(r.Of, inside(r.Path, said.At))).against(r)
		if p := Input(all, inside(r.Path, said.At)); r.Word == reason.NotKnown && r.Path != "" {
			to(p).open(p)
		}
	}
	for _, p := range said.Typical {
		to(p).open(p)
	}
	for i := range out {
		out[i].ask(all, asks, said)
	}
	if len(beyond.Against)+len(beyond.Flags) > 0 {
		out = append(out, beyond)
	}
	return out
}

// clearedIn are the checks that a proof by test cleared.
func clearedIn(because []reason.Reason) map[string]bool {
	out := map[string]bool{}
	for _, r := range because {
		if r.Word == reason.Proven {
			out[r.ID+" "+r.Of] = true
		}
	}
	return out
}

// measure takes the check's use where it is the largest.
func (s *State) measure(c *path.Check) {
	if s.Check == nil || c.Use.Is && (!s.Use.Is || c.Use.Val > s.Use.Val) {
		s.Check, s.Use = c, c.Use
	}
}

// take takes the check's word where it is worse, and shows that check.
func (s *State) take(c *path.Check) {
	if rank(c.Word) > rank(s.Word) {
		s.Check, s.Word = c, c.Word
	}
}

// against takes a reason; one that a test cleared is no reason against the part.
func (s *State) against(r reason.Reason) {
	s.Against = append(s.Against, r)
	w := path.Holds
	switch r.Word {
	case reason.No:
		w = path.GivesWay
	case reason.NotKnown:
		w = path.NotKnown
	}
	if rank(w) > rank(s.Word) {
		s.Word = w
	}
}

// open adds an input that is asked for, once.
func (s *State) open(p string) {
	if !slices.Contains(s.Open, p) {
		s.Open = append(s.Open, p)
	}
}

// ask lists what the part is asked for and does not say.
func (s *State) ask(all []Part, asks map[string]int, said Said) {
	for _, p := range s.firstOpen(said.Given) {
		s.open(p)
	}
	for p := range asks {
		if i := Owner(all, p); i >= 0 && all[i].ID == s.ID {
			s.open(p)
		}
	}
	slices.SortFunc(s.Open, func(a, b string) int {
		return cmp.Or(s.aside(a)-s.aside(b), cmp.Compare(asks[b], asks[a]), cmp.Compare(s.place(a), s.place(b)), cmp.Compare(a, b))
	})
	if len(s.Open) > 0 && rank(path.NotKnown) > rank(s.Word) {
		s.Word = path.NotKnown
	}
}

// firstOpen are the first inputs of the card that are not given. Of a row that is not there yet it is the first alone.
func (s *State) firstOpen(given map[string]bool) []string {
	var out []string
	begun := map[string]bool{} // lists without a row
	for _, f := range s.First {
		rows := rowsOf(f, given)
		for _, p := range rows {
			if is, there := given[p]; there && !is {
				out = append(out, p)
			}
		}
		if list, _, ok := strings.Cut(f, "["); ok && len(rows) == 0 && !begun[list] {
			begun[list] = true
			out = append(out, strings.ReplaceAll(f, "[]", "[0]"))
		}
	}
	return out
}

// rowsOf are the inputs of a hoist that one name of a card stands for; none where its row is not there.
func rowsOf(name string, given map[string]bool) []string {
	if !strings.Contains(name, "[]") {
		if _, there := given[name]; there {
			return []string{name}
		}
		return nil
	}
	var out []string
	for p := range given {
		if everyRow(p) == name {
			out = append(out, p)
		}
	}
	slices.Sort(out)
	return out
}

// aside is 1 for an input that the card does not show first.
func (s *State) aside(at string) int {
	if s.Shows(at) {
		return 0
	}
	return 1
}

// place is where an input stands on the card.
func (s *State) place(at string) int {
	for i, f := range s.First {
		if f == at || f == everyRow(at) {
			return i
		}
	}
	return len(s.First)
}

func rank(w path.Word) int {
	return slices.Index([]path.Word{path.Holds, path.Tight, path.NotKnown, path.GivesWay}, w)
}

// inside is a path of the variant as a path inside the hoist; one of elsewhere stays what it is.
func inside(at, hoist string) string {
	if within(at, hoist) && len(at) > len(hoist) {
		return at[len(hoist)+1:]
	}
	return at
}
