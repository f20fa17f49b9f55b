package parts

import (
	"slices"
	"strings"

	"duskweight/internal/model/lift"
	"duskweight/internal/model/lift/path"
	"duskweight/internal/model/reason"
)

// Question is the one thing to ask next: an input of a part.
type Question struct {
	Part    int    // of the states; −1 for none: nothing is left to ask
	Path    string // inside the hoist
	Settles int    // how many checks of the load path name it as missing
	Why     Tier
	Later   bool // it was put behind its tier
}

// Tier is why a question comes when it does.
type Tier int

// The tiers, the first that has a question wins.
const (
	TierRefused Tier = iota // a value that was refused
	TierMass                // what hangs and how far
	TierDrive               // what decides lifting and coming down
	TierHolds               // holds and stops
	TierPath                // what keeps a check of the load path open
	TierTypical             // typical values to confirm
	TierRound               // around the hoist
	TierRest                // whatever else is open
	tierNone
)

// Ask is what the next question is made from.
type Ask struct {
	Refused []string       // paths inside the hoist of values that were refused
	Drive   []lift.Missing // inputs that the drive misses
	Later   []string       // paths that were put behind their tier
}

// Next chooses the next question of a hoist: from the first tier that has one the input that most checks miss; between
// equals the part that stands nearer to the mass, then the order of its card.
func Next(h lift.Hoist, states []State, said Said, ask Ask) Question {
	all := partsOf(states)
	ask.Drive = slices.Clone(ask.Drive)
	for i := range ask.Drive {
		ask.Drive[i].Path = Input(all, ask.Drive[i].Path)
	}
	asks, best := askedBy(all, said.Checks), Question{Part: -1, Why: tierNone}
	for i, s := range states {
		for _, p := range s.candidates(all, ask) {
			if q := (Question{i, p, asks[p], tierOf(h, s, p, asks[p], said, ask), slices.Contains(ask.Later, p)}); q.before(best) {
				best = q
			}
		}
	}
	return best
}

// before reports whether a question goes before one that was found earlier on the way from the mass to the ground.
func (q Question) before(o Question) bool {
	switch {
	case q.Why != o.Why:
		return q.Why < o.Why
	case q.Later != o.Later:
		return o.Later
	}
	return q.Settles > o.Settles
}

// askedBy counts how many checks miss an input.
func askedBy(all []Part, checks []path.Check) map[string]int {
	asks := map[string]int{}
	for _, c := range checks {
		for _, m := range c.Missing {
			asks[Input(all, m)]++
		}
	}
	return asks
}

// candidates are the inputs that a part may ask for, each once.
func (s State) candidates(all []Part, ask Ask) []string {
	var out []string
	for _, p := range slices.Concat(ask.Refused, drivePaths(ask.Drive), s.Open) {
		p = Input(all, p)
		if i := Owner(all, p); i >= 0 && all[i].ID == s.ID && !slices.Contains(out, p) {
			out = append(out, p)
		}
	}
	return out
}

// partsOf are the parts without their words.
func partsOf(states []State) []Part {
	all := make([]Part, len(states))
	for i, s := range states {
		all[i] = s.Part
	}
	return all
}

func drivePaths(missing []lift.Missing) []string {
	out := make([]string, len(missing))
	for i, m := range missing {
		out[i] = m.Path
	}
	return out
}

// tierOf says in which tier an input of a part is asked for; asked is how many checks miss it.
func tierOf(h lift.Hoist, s State, p string, asked int, said Said, ask Ask) Tier {
	switch {
	case slices.Contains(ask.Refused, p):
		return TierRefused
	case p == "travel_m" && !h.Travel.Is, s.ID == "mass" && strings.HasSuffix(p, "mass_kg"):
		return TierMass
	case slices.Contains(drivePaths(ask.Drive), p):
		return TierDrive
	case strings.HasPrefix(p, "holds.") && strings.HasSuffix(p, ".kind"):
		return TierHolds
	case s.ID == "round":
		return TierRound
	case slices.Contains(said.Typical, p) && asked == 0:
		return TierTypical
	case !s.Shows(p): // a careful value stands in for it, or a few give it
		return TierRest
	case asked > 0:
		return TierPath
	}
	for _, r := range s.Against {
		if r.Word == reason.NotKnown && inside(r.Path, said.At) == p {
			return TierPath
		}
	}
	return TierRest
}
