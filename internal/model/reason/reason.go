// Package reason holds what a readiness rule answers: a word, the sentence that says why, and what clears it. A rule makes
// reasons; package model gathers them into the one word of a plan.
package reason

import (
	"duskweight/internal/model/source"
	"duskweight/internal/model/unit"
	"duskweight/internal/say"
)

// Word is the readiness of a store or a plan, from best to worst: yes, proven, not_known, no.
type Word string

// The closed list of words.
const (
	Yes      Word = "yes"       // every rule is satisfied
	Proven   Word = "proven"    // a part that nobody rates passed its load test, and the proof is still valid
	NotKnown Word = "not_known" // an answer is missing that could be a bad one
	No       Word = "no"        // a rule forbids it
)

func (w Word) rank() int {
	switch w {
	case Yes, "":
		return 0
	case Proven:
		return 1
	case NotKnown:
		return 2
	}
	return 3
}

// Worse reports whether w is worse than v.
func (w Word) Worse(v Word) bool { return w.rank() > v.rank() }

// Worst returns the worst of some words; Yes for none.
func Worst(words ...Word) Word {
	worst := Yes
	for _, w := range words {
		if w.Worse(worst) {
			worst = w
		}
	}
	return worst
}

// Clears says what makes a reason go away.
type Clears string

// The closed list of what clears a reason.
const (
	Answer    Clears = "answer"     // an answer that is missing
	Change    Clears = "change"     // a change of the plan
	RatedPart Clears = "rated_part" // a part with a rating on its label; no test stands in for it
	Proof     Clears = "proof"      // a rated part, or a proof by test
	Person    Clears = "person"     // a qualified person, or the owner's word
	Never     Clears = "never"      // nothing does
)

// Reason is one thing that stands against readiness, or, with the word Proven, that a proof by test cleared.
type Reason struct {
	ID      string                 // from the closed list of Order, or the id of a check of the load path
	Word    Word                   // Proven, NotKnown or No
	Path    string                 // the field that decides, inside the variant; "load." and what follows is inside the project
	Of      string                 // of a check of the load path: where its hoist names what is checked; empty else
	Beside  string                 // the other field of two that do not go together; empty for none
	Say     say.Sentence           // what is wrong, whole sentences
	Head    say.Sentence           // the same in few words, without figures and advice; says nothing where Say is short already
	Mend    say.Sentence           // what to do about it; may say nothing
	Clears  Clears                 //
	Forbids bool                   // even the first step, 100 mm off the ground, is forbidden
	Use     unit.Known[unit.Ratio] // of a check that gives way: wanted strength over the strength that is there
	Source  source.Ref

	Mass  unit.Known[unit.Mass] // Proven: up to this mass
	Until Day                   // Proven: the last day of the proof
}

// Paths are the fields that the reason is about: the one that decides, and the other one of two that do not go together.
func (r Reason) Paths() []string {
	if r.Beside == "" {
		return []string{r.Path}
	}
	return []string{r.Path, r.Beside}
}

// Short is what is wrong in few words.
func (r Reason) Short() say.Sentence { return r.Head.Or(r.Say) }

// Text is what is wrong and what to do about it.
func (r Reason) Text() say.Sentence {
	if r.Mend.IsZero() {
		return r.Say
	}
	return say.That("%s %s", r.Say, r.Mend)
}
