package weather

import (
	"fmt"
	"strings"

	"duskweight/internal/model/unit"
	"duskweight/internal/say"
)

// Report is what was found in a file and what was done about it.
type Report struct {
	Layout  string
	Mapping Mapping // how the file was read, for the page to show and change

	Rows        int                         // rows of values
	Step        unit.Duration               // from row to row
	LeapDay     bool                        // 29 February was there and was dropped
	Gaps        []Gap                       // hours that were missing and filled
	Negative    int                         // radiation below zero, set to zero
	AboveSky    int                         // hours with more than 1.1 times the light outside the air, kept
	DiffuseOver int                         // hours with more diffuse than global light, cut to the global
	Diffuse     string                      // "file", "direct" (global less direct), "estimated" (from the clearness of the hour)
	Global      string                      // "file", or "direct" (direct plus diffuse)
	ZoneOff     unit.Duration               // the clock zone less what the longitude would give
	Slip        unit.Known[unit.Duration]   // how much later the sun of the file runs than the sun of the sky, clear hours
	Closure     unit.Known[unit.Irradiance] // root mean square of global − (direct·cos zenith + diffuse), direct over 200 W/m²
	GHI         unit.Irradiation            // of the year
	DHI         unit.Irradiation
	TMean       unit.Celsius
	Summer      [2]int // days of the year, from 1, from and to which the sun runs an hour late, where it does in one half of the year
	Fits        []Fit  // ways to take the stamps, the one with the smallest slip first
	Shifted     bool   // stamps do not fall on the hours of the place's clock; neighbours were shared out
	Notes       []Note

	clock float64 // the place's standard clock ahead of UTC, seconds
}

// Gap is a run of missing hours.
type Gap struct {
	What  string // the column
	From  string // "3 February 14:00"
	Hours float64
}

// Note is one thing said in words. A warning wants an answer; the others are for the record.
type Note struct {
	Warning bool
	Say     say.Sentence
	Asks    string // the question that it asks, in one word; "" for none
}

func (r *Report) note(warning bool, words string, values ...any) {
	r.Notes = append(r.Notes, Note{Warning: warning, Say: say.That(words, values...)})
}

// ask notes a question that only the reader can answer.
func (r *Report) ask(question, words string, values ...any) {
	r.Notes = append(r.Notes, Note{Warning: true, Say: say.That(words, values...), Asks: question})
}

// Asks reports whether a question is open.
func (r *Report) Asks(question string) bool {
	for _, n := range r.Notes {
		if n.Asks == question {
			return true
		}
	}
	return false
}

// Fault is one reason why a file is refused.
type Fault struct {
	Line   int    // from 1; 0 for the file as a whole
	Column int    // from 1; 0 for the row as a whole
	Head   string // the column's name
	Value  string // what stands there
	Reason say.Sentence
}

// In gives the fault as one line in a reader's units: line 12, column 3 (GHI): "abc" is not a number.
func (f Fault) In(sys unit.System) string {
	var b strings.Builder
	if f.Line > 0 {
		fmt.Fprintf(&b, "line %d", f.Line)
	}
	if f.Column > 0 {
		fmt.Fprintf(&b, ", column %d", f.Column)
	}
	if f.Head != "" {
		fmt.Fprintf(&b, " (%s)", f.Head)
	}
	if b.Len() > 0 {
		b.WriteString(": ")
	}
	if f.Value != "" {
		fmt.Fprintf(&b, "%q ", f.Value)
	}
	b.WriteString(f.Reason.In(sys))
	return b.String()
}

// most is how many faults are told one by one.
const most = 50

// Refused is a file that cannot be used, with every reason. Nothing of it was kept.
type Refused struct {
	Faults []Fault
	More   int // further faults that are not told one by one

	Best Mapping // what fits better where a unit is in doubt: to be offered, not to be used alone
}

func (r *Refused) Error() string {
	lines := make([]string, 0, len(r.Faults)+1)
	for _, f := range r.Faults {
		lines = append(lines, f.In(unit.Metric))
	}
	if r.More > 0 {
		lines = append(lines, fmt.Sprintf("and %d more", r.More))
	}
	return strings.Join(lines, "\n")
}

func (r *Refused) add(f Fault) {
	if len(r.Faults) >= most {
		r.More++
		return
	}
	f.Value = short(f.Value)
	f.Head = short(f.Head)
	r.Faults = append(r.Faults, f)
}

// orNil is the error, or nil when there is no fault.
func (r *Refused) orNil() error {
	if len(r.Faults) == 0 {
		return nil
	}
	return r
}

func refuse(words string, values ...any) error {
	return &Refused{Faults: []Fault{{Reason: say.That(words, values...)}}}
}

func short(s string) string {
	if r := []rune(s); len(r) > 40 {
		return string(r[:40]) + "…"
	}
	return s
}
