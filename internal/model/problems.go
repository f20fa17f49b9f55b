package model

import (
	"fmt"
	"reflect"
	"strings"

	"duskweight/internal/model/unit"
	"duskweight/internal/say"
)

// Problem is one thing that is wrong with a document: where, and what in plain words. The path is that of the value in
// the document ("variants[0].stores[1].hoist.travel_m"); "document" is the document as a whole.
type Problem struct {
	Path string       `json:"path"`
	Say  say.Sentence `json:"say"` // the numbers of a range in SI, as the document writes them: see As
	out  *outside
}

// outside is a number out of its range.
type outside struct {
	within Interval
	is     float64
	kind   reflect.Type
	of     string // what the number is, as its tag says
}

// As returns the problem of a field of a quantity: a range, and what lies out of it, is told in the field's unit. Its limits are
// rounded towards the inside of the range, the value away from it, so that no limit that is told is refused and no value that is
// told seems to lie inside.
func (p Problem) As(q unit.Quantity) Problem {
	if p.out != nil {
		q = q.Fine() // a tape's feet and inches are not the field's unit
		p.Say = p.out.say(
			func(si float64, dir unit.Round) any { return say.Limit(q, si).Toward(dir) },
			func(si float64, dir unit.Round) any { return say.Of(q, si).To(valueDigits).Toward(dir) })
	}
	return p
}

// valueDigits is how many digits of a refused value are told: what people type, and not the noise of a conversion.
const valueDigits = 6

func (o outside) say(bound, value func(float64, unit.Round) any) say.Sentence {
	dir := unit.Up
	if o.is <= o.within.Low {
		dir = unit.Down
	}
	return say.That("must be %s; it is %s", o.within.As(bound), value(o.is, dir))
}

// String gives "path: sentence".
func (p Problem) String() string { return p.Path + ": " + p.Say.String() }

// Problems is everything that is wrong, all at once. It is an error where it is not empty; see Err.
type Problems []Problem

// Error gives one line a problem.
func (ps Problems) Error() string {
	lines := make([]string, len(ps))
	for i, p := range ps {
		lines[i] = p.String()
	}
	return strings.Join(lines, "\n")
}

// Err returns ps as an error, or nil where nothing is wrong.
func (ps Problems) Err() error {
	if len(ps) == 0 {
		return nil
	}
	return ps
}

// Add appends a problem that is said in words alone.
func (ps *Problems) Add(path, words string) { ps.Tell(path, say.Words(words)) }

// Tell appends a problem whose sentence has values in it.
func (ps *Problems) Tell(path string, sentence say.Sentence) {
	*ps = append(*ps, Problem{Path: path, Say: sentence})
}

// Under returns the problems at a path and at everything inside it, in their order: "variants[1]" takes
// "variants[1].name" and not "variants[10]". The empty path takes all.
func (ps Problems) Under(path string) Problems {
	var in Problems
	for _, p := range ps {
		if Within(p.Path, path) {
			in = append(in, p)
		}
	}
	return in
}

// Within reports whether a path is outer or lies inside it.
func Within(path, outer string) bool {
	rest, ok := strings.CutPrefix(path, outer)
	return ok && (outer == "" || rest == "" || rest[0] == '.' || rest[0] == '[')
}

// Moved returns the problems with their paths put inside outer: the problems of one variant as those of its document.
func (ps Problems) Moved(outer string) Problems {
	moved := make(Problems, len(ps))
	for i, p := range ps {
		moved[i] = p
		moved[i].Path = Join(outer, p.Path)
	}
	return moved
}

// StorePath is the path of what stands at a place among the stores of a variant: "stores[0].hoist", "stores[1].cells".
func StorePath(i int, kind string) string { return fmt.Sprintf("stores[%d].%s", i, kind) }

// Join puts an inner path behind an outer one.
func Join(outer, inner string) string {
	if outer == "" || inner == "" || inner[0] == '[' {
		return outer + inner
	}
	return outer + "." + inner
}
