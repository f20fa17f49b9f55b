// Package parts sees a hoist as its builder does: some two dozen things that one can point at, each with a question, its
// inputs, a word and a place on the way from the mass to the ground. It judges nothing: a part's word is what the checks
// of the load path, the flags of the drive and the reasons of readiness say of its inputs.
package parts

import (
	"slices"
	"strconv"
	"strings"

	"duskweight/internal/model/lift"
)

// Place is the picture in which a part stands.
type Place string

// The closed list of places.
const (
	Side    Place = "side"    // the hoist from the side
	Drive   Place = "drive"   // the drive, larger
	Circuit Place = "circuit" // by day and by night
	Around  Place = "around"  // in no picture
)

// Part is one thing of a hoist.
type Part struct {
	ID    string   // "rope", "hold-2": its word in addresses, of letters, digits and dashes
	Name  string   // "Top pulley"
	Ask   string   // the question of its card
	Place Place    //
	Owns  []string // paths inside the hoist; what lies below a path that no other part names more exactly belongs to it
	First []string // the inputs that its card shows first; "[]" stands for every row of a list
	Row   int      // of Owns[0], where the part is one row of a list; −1 else
}

// All lists the parts of a hoist from the mass to the ground, then what stands round it. Two holds and two stops have
// their places before they are named.
func All(h lift.Hoist) []Part {
	out := []Part{massPart(), containerPart(h), ropePart(), endsPart()}
	out = append(out, pulleys(h)...)
	out = append(out, hangerPart(h), beamPart(h), postsPart(h), drumPart(), shaftPart(h), gearsPart(h))
	if hasCase(h) {
		out = append(out, casePart())
	}
	out = append(out, motorPart(h), feedPart(h), lampsPart(h), clampPart(h), weightsPart(h))
	if hasBoard(h) {
		out = append(out, boardPart())
	}
	for i := range max(2, len(h.Holds.Holds)) {
		out = append(out, holdPart(h, i))
	}
	for i := range max(2, len(h.Holds.UpperStops)) {
		out = append(out, stopPart(i))
	}
	return append(out, slackPart(), roundPart(h))
}

// Owner returns the index of the part to which a path inside the hoist belongs, −1 for none: that which names it most
// exactly.
func Owner(all []Part, path string) int {
	best, at := "", -1
	for i, p := range all {
		for _, own := range p.Owns {
			if within(path, own) && (at < 0 || len(own) > len(best)) {
				best, at = own, i
			}
		}
	}
	return at
}

// bench are numbers of a motor that no label has: they follow from it, or from the bench.
var bench = []string{"machine.k_vs_rad", "machine.r_ohm", "machine.i0_a"}

// Input is the input that a path asks for: of a list that is missing, the first input of its first row; of a motor's own
// numbers its label, while that is what its card asks for.
func Input(all []Part, path string) string {
	if slices.Contains(bench, path) {
		for _, p := range all {
			if p.Shows("machine.sheet_voltage_v") {
				return "machine.sheet_voltage_v"
			}
		}
	}
	for _, p := range all {
		for _, f := range p.First {
			if list, _, ok := strings.Cut(f, "["); ok && list == path {
				return strings.ReplaceAll(f, "[]", "[0]")
			}
		}
	}
	return path
}

// within reports whether a path is at, or lies in it.
func within(path, at string) bool {
	rest, ok := strings.CutPrefix(path, at)
	return ok && (rest == "" || rest[0] == '.' || rest[0] == '[')
}

// Shows reports whether the card shows an input first.
func (p Part) Shows(path string) bool {
	for _, f := range p.First {
		if f == path || strings.Contains(f, "[]") && f == everyRow(path) {
			return true
		}
	}
	return false
}

// everyRow turns the number of each row of a path into "[]".
func everyRow(path string) string {
	var b strings.Builder
	for {
		before, rest, ok := strings.Cut(path, "[")
		b.WriteString(before)
		if !ok {
			return b.String()
		}
		_, path, _ = strings.Cut(rest, "]")
		b.WriteString("[]")
	}
}

// under puts a path before each name.
func under(path string, names ...string) []string {
	out := make([]string, len(names))
	for i, n := range names {
		out[i] = path + "." + n
	}
	return out
}

func row(list string, i int) string { return list + "[" + strconv.Itoa(i) + "]" }
