package form

import "strconv"

// Difference is one thing that two versions do not share: a value, or a whole row of a list.
type Difference struct {
	Path     string // its place in the form: in the newer version, or in the older one where it is gone
	Label    string // "Stage 2, Ratio to 1"; of a row its name, "Stage 2"
	Old, New string // in words, empty for not known; of a row its first values
	row      rowChange
}

// rowChange is what happened to a whole row; none for a value.
type rowChange string

const (
	rowAdded rowChange = "added"
	rowGone  rowChange = "taken out"
)

// Field is the path of the value that changed; empty where a whole row came or went.
func (d Difference) Field() string {
	if d.row != "" {
		return ""
	}
	return d.Path
}

// String tells the change in a line: "Stage 2, Ratio to 1: 3 → 4", "Hold 1 added (ratchet)".
func (d Difference) String() string {
	if d.row == "" {
		return d.Label + ": " + short(OrNotKnown(d.Old)) + " → " + short(OrNotKnown(d.New))
	}
	return d.Label + " " + string(d.row) + inBrackets(d.Old+d.New)
}

// Sides are the two versions as they stand side by side.
func (d Difference) Sides() (was, is string) {
	switch d.row {
	case rowAdded:
		return "not there", "there" + inBrackets(d.New)
	case rowGone:
		return "there" + inBrackets(d.Old), "not there"
	}
	return OrNotKnown(d.Old), OrNotKnown(d.New)
}

func inBrackets(text string) string {
	if text == "" {
		return ""
	}
	return " (" + text + ")"
}

// Said is a change in one line: the first difference, and how many more.
func Said(diffs []Difference) string {
	if len(diffs) == 0 {
		return "Confirmed as it is"
	}
	first := diffs[0].String()
	switch n := len(diffs) - 1; n {
	case 0:
		return first
	case 1:
		return first + ", and one more"
	default:
		return first + ", and " + strconv.Itoa(n) + " more"
	}
}
