package sheet

import (
	"math"
	"slices"
	"strings"

	"duskweight/web/form"
	"duskweight/web/page"
)

// What fits on the one page of the plan sheet. Heights are in millimetres, as measured on the printed page; widths are
// counted in usual letters. Both lie a little on the safe side, as fonts differ between machines.

// sheetType is one size of type: what a line of it takes.
type sheetType struct {
	say, Row, more float64 // height of a line of text, of a row in a table, of each further line in that row
	wide           int     // letters across the page
	name, value    int     // letters in the columns of a setting
	check          int     // letters in the name of a check
	half           int     // letters across half of the page
}

var (
	plainType = sheetType{say: 4.1, Row: 4.2, more: 3.4, wide: 98, name: 17, value: 33, check: 30, half: 60}
	roomyType = sheetType{say: 4.6, Row: 4.8, more: 3.85, wide: 90, name: 16, value: 29, check: 26, half: 52}
)

// Heights on the page, margins between the parts included.
const (
	heightA4     = 278.0
	heightLetter = 263.0
	heightTitle  = 6.4
	heightHead   = 6.6  // of a heading over a part
	heightBand   = 4.9  // of a line in the band
	heightFrame  = 5.0  // around the band's lines
	heightStore  = 4.6  // the line of a store under the band
	heightSteps  = 6.6  // the boxes of the load steps
	heightSign   = 11.6 // the lines to sign
	heightBox    = 3.4  // round the cautions
	lettersTitle = 46
	lettersBand  = 72
)

// linesIn is how many lines a text takes in a column of so many letters.
func linesIn(text string, column int) float64 {
	return max(1, math.Ceil(float64(letters(text))/float64(column)))
}

// fit leaves out what the page has no room for, in a fixed order: the parts in a line and the years, the tight checks after
// the third, the settings that stand on the drawing, then the long names of stores, the order of
// switching and what stands beside the hoist, which have a page of their own, and what a year brings.
// Band, reasons, drawing, load steps, cautions and signatures stay.
func (v *sheetView) fit() {
	if v.Drawing == "" && v.fits(roomyType) {
		v.Roomy = true
		return
	}
	for _, leaveOut := range []func(){
		func() { v.Buy = "" },
		func() { v.Years = "" },
		func() { v.Checks = v.Checks[:min(len(v.Checks), 4)] },
		func() { v.Checks = v.Checks[:min(len(v.Checks), 3)] },
		v.lessSet, v.lessSet, v.lessSet, v.lessSet, v.lessSet, v.lessSet, v.lessSet,
		func() {
			if len(v.Stores) > 1 {
				v.narrow()
			}
		},
		func() {
			if v.Hoist && len(v.Order) > 0 {
				v.Order, v.OrderAt = nil, "Switch order: on the page Wiring and switching."
			}
		},
		func() {
			if len(v.beside) > 0 {
				v.Set = slices.DeleteFunc(v.Set, func(row page.PairView) bool { return slices.Contains(v.beside, row) })
				v.OrderAt = "Switch order, battery and panels: on the page Wiring and switching."
			}
		},
		func() { v.Verdict = v.Verdict[:min(len(v.Verdict), 1)] },
		func() { v.Verdict = nil },
		func() { v.shortReasons(110) },
		v.shortCircuit, v.lessStores,
		func() { v.Checks = nil },
	} {
		if v.fits(plainType) {
			return
		}
		leaveOut()
	}
}

// shortReasons cuts the reasons of the list to so many letters: whole they stand on screen.
func (v *sheetView) shortReasons(n int) {
	for i, c := range v.Causes {
		v.Causes[i] = form.Clip(c, n)
	}
}

// shortCircuit leaves out what the wiring has behind its first rows, and says so.
func (v *sheetView) shortCircuit() {
	if v.Circuit != nil && v.Circuit.Height > circuitHigh {
		short := v.Circuit.First(circuitHigh)
		v.Remarks = append(v.Remarks, page.Counted(len(v.Circuit.Boxes)-len(short.Boxes), "more device")+" is on the page Wiring and switching.")
		v.Circuit = &short
	}
}

// lessStores leaves out the settings of all batteries but the first.
func (v *sheetView) lessStores() {
	if n := v.firstStore; n > 0 && n < len(v.Set) {
		v.Set = append(v.Set[:n:n], page.PairView{Name: "Further stores, panels", Value: "on their own pages"})
	}
}

// lessSet leaves out the last setting where it stands on the drawing.
func (v *sheetView) lessSet() {
	if n := len(v.Set); n > 0 && v.Drawing != "" && onDrawing[v.Set[n-1].Name] {
		v.Set = v.Set[:n-1]
	}
}

// fits reports whether all that stands on the page fits in a size of type.
func (v *sheetView) fits(t sheetType) bool {
	high := heightA4
	if v.Letter {
		high = heightLetter
	}
	return v.head(t)+v.pictures(t)+v.columns(t)+v.foot(t) <= high
}

// pictures is the height of the drawing or the wiring, with its key.
func (v *sheetView) pictures(t sheetType) float64 {
	high := 0.0
	switch {
	case v.Drawing != "" && v.Letter:
		high = drawnHighLetter + 1.5
	case v.Drawing != "":
		high = drawnHigh + 1.5
	case v.Circuit != nil:
		high = heightHead + 2 + float64(v.Circuit.Height)*circuitWide(v.Letter)/float64(circuitUnits)
	}
	for _, say := range v.under() {
		high += t.more * linesIn(say, t.wide)
	}
	return high
}

// columns is the height of the two columns, which settings, checks, order and parts fill one after the other.
func (v *sheetView) columns(t sheetType) float64 {
	return (v.left(t)+v.right(t))/2 + unevenColumns
}

// unevenColumns is how much higher the higher of the columns is than both on average: rows are not cut, mm.
const unevenColumns = 5.5

// left is the height of the settings.
func (v *sheetView) left(t sheetType) float64 {
	high := 0.0
	if len(v.Set) > 0 {
		high = heightHead
	}
	for _, row := range v.Set {
		high += t.Row + t.more*(max(linesIn(row.Name, t.name), linesIn(row.Value, t.value))-1)
	}
	return high
}

// right is the height of checks, order and parts.
func (v *sheetView) right(t sheetType) float64 {
	high := 0.0
	if len(v.Checks) > 0 {
		high += heightHead
	}
	for _, c := range v.Checks {
		high += t.Row + t.more*(linesIn(c.Part, t.check)-1)
	}
	if len(v.Order) > 0 {
		high += heightHead
	}
	for _, say := range v.Order {
		high += t.more * linesIn(say, t.half-3)
	}
	for _, say := range []string{v.Buy, v.OrderAt} {
		if say != "" {
			high += 1 + t.more*linesIn(say, t.half)
		}
	}
	return high
}

// head is the height of what stands over the drawing.
func (v *sheetView) head(t sheetType) float64 {
	high := 4 + heightTitle*linesIn(v.Title, lettersTitle) + t.say*linesIn(v.Project+" (an invented example) · "+v.Revisions, t.wide-12)
	if len(v.Waits) > 0 {
		high += 1 + t.say*math.Ceil(float64(3+len(v.Waits))/6)
	}
	high += heightFrame + heightBand*linesIn(v.Band.Says(), lettersBand) + v.storeLines(t)
	if len(v.Causes) > 0 {
		lines := 0.0
		for _, u := range v.Causes {
			if v.InLines() {
				lines += linesIn(u, t.wide+18)
			} else {
				lines += linesIn(u, t.half)
			}
		}
		if !v.InLines() {
			lines = math.Ceil(lines/2 + .5)
		}
		high += 1 + t.more*lines
	}
	return high + 2 + t.say*linesIn(strings.Join(append(v.Verdict, v.Years), " "), t.wide)
}

// foot is the height of what stands under the two columns.
func (v *sheetView) foot(t sheetType) float64 {
	high := 1.5 + heightBox
	if len(v.Steps) > 0 {
		high += 2 + t.more*linesIn("Load steps. "+v.StepSay, t.wide+26) + heightSteps
	}
	lines := 0.0
	for _, c := range v.Caution {
		lines += linesIn(c, t.half)
	}
	high += t.more * math.Ceil(lines/2)
	if v.Sign {
		high += heightSign
	}
	return high
}

// storeLines is the height in mm of the lines of the stores.
func (v *sheetView) storeLines(t sheetType) float64 {
	if len(v.Stores) == 0 {
		return 0
	}
	wide := letters(v.sheetState.More)
	for _, b := range v.Stores {
		wide += 6 + letters(b.Of+" "+b.Brief)*21/20 // part of it is bold
	}
	return 1 + heightStore*math.Ceil(float64(wide)/float64(t.wide))
}

// letters is how many usual letters take the room of a text.
func letters(s string) int { return form.Width(s) / 2 }
