// Package source is the bibliography as Go values. A number in the model names where it comes from, a row of a check
// table ends with its source, and a page shows it behind "how".
package source

// Source is a published work, or one of the two honest marks FromMemory and CommonPractice.
type Source struct {
	Key   string // short, unique: "duffie-beckman"
	Title string // author, title, edition, year: enough to find it
}

// Ref is a place in a source.
type Ref struct {
	Source Source
	Place  string // "ex. 1.6.1", "table 4", "eq. 2.9.6"; empty for the whole
}

// At points into the source.
func (s Source) At(place string) Ref { return Ref{Source: s, Place: place} }

// Whole is the source as a whole.
func (s Source) Whole() Ref { return Ref{Source: s} }

// String gives the title and the place, ready to print.
func (r Ref) String() string {
	if r.Place == "" {
		return r.Source.Title
	}
	return r.Source.Title + ", " + r.Place
}

// The marks for numbers that no published source stands behind, and for what follows from laws alone.
var (
	FromMemory     = Source{"from-memory", "from memory, not re-read"}
	CommonPractice = Source{"common-practice", "common practice of the trade"}
	Derivation     = Source{"derivation", "derived here"}
	Judgement      = Source{"judgement", "our own judgement"}
)
