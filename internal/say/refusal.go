package say

import "errors"

// refusal is an error that is a sentence.
type refusal struct{ say Sentence }

// Error is the sentence in metric units.
func (r refusal) Error() string { return r.say.String() }

// Refuse makes an error of a sentence: see That. Why gives the sentence back, so that a page can print it in the reader's units.
func Refuse(words string, values ...any) error { return refusal{That(words, values...)} }

// Why returns the sentence of an error that Refuse has made, or else the words of the error; nothing where there is none.
func Why(err error) Sentence {
	if err == nil {
		return Sentence{}
	}
	if r, ok := errors.AsType[refusal](err); ok {
		return r.say
	}
	return Words(err.Error())
}
