package page

import (
	"cmp"
	"slices"
	"strings"

	"duskweight/internal/model/reason"
	"duskweight/internal/model/unit"
	"duskweight/web/form"
)

// ReasonView is one reason against readiness, ready to print.
type ReasonView struct {
	State  reason.Word
	Say    string // what is wrong
	Mend   string // what to do about it; may be empty
	Clears string // what makes it go away: "answer"
	Bars   bool   // not even the first step, 100 mm off the ground, is allowed
	Links  []form.LinkView
}

// mostReasons is how many reasons stand open; more stand behind a line that says how many.
const mostReasons = 8

// ReasonsView is the list of what stands against a store or a variant, the worst first.
type ReasonsView struct {
	List     []ReasonView
	Answered string // "31 of 45 answered"; empty where no form asks
}

// clearWords name what clears a reason.
var clearWords = map[reason.Clears]string{reason.Answer: "answer", reason.Change: "change", reason.RatedPart: "rated part", reason.Proof: "rated part, or load test", reason.Person: "qualified person", reason.Never: "no way"}

// ReasonsOf prints reasons with the fields that decide them.
func ReasonsOf(because []reason.Reason, sys unit.System, to func(path string) form.LinkView) (v ReasonsView) {
	no := func(r reason.Reason) int {
		if r.Word == reason.No {
			return 0
		}
		return 1
	}
	// what forbids it stands before what is open, also where an open question bars the first step
	for _, r := range slices.SortedStableFunc(slices.Values(because), func(a, b reason.Reason) int { return cmp.Compare(no(a), no(b)) }) {
		one := ReasonView{State: r.Word, Say: r.Say.In(sys), Mend: r.Mend.In(sys), Clears: clearWords[r.Clears], Bars: r.Forbids}
		for _, at := range r.Paths() {
			if l := to(at); l.URL != "" {
				one.Links = append(one.Links, l)
			}
		}
		v.List = append(v.List, one)
	}
	return v
}

// Sign is the sign of the reason's word.
func (r ReasonView) Sign() string { return BandSigns[r.State] }

// Class is the name of its word in the style sheets.
func (r ReasonView) Class() string { return strings.ReplaceAll(string(r.State), "_", "-") }

// reasonWords say the word of a reason, for whoever does not see its sign.
var reasonWords = map[reason.Word]string{reason.No: "Forbids:", reason.NotKnown: "Not known:", reason.Proven: "Proven by test:"}

// AnsweredOf says how many of the questions of a form have an answer. It is no share of READY.
func AnsweredOf[T any](f form.Form[T], t T) string {
	known, all := f.Answered(t)
	return Itoa(known) + " of " + Itoa(all) + " answered on this page"
}
