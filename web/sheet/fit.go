package sheet

import (
	"fmt"
	"math"
	"strings"

	"duskweight/internal/model/cost"
	"duskweight/internal/model/unit"
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
	part, get      int     // letters in the columns of a part
	check          int     // letters in the name of a check
}

var (
	plainType = sheetType{say: 4.2, Row: 4.35, more: 3.4, wide: 98, name: 22, value: 41, part: 46, get: 22, check: 43}
	roomyType = sheetType{say: 4.6, Row: 4.8, more: 3.85, wide: 90, name: 20, value: 36, part: 40, get: 22, check: 37}
)

// Heights on the page, margins between the parts included.
const (
	heightA4     = 274.0
	heightLetter = 256.0
	heightTitle  = 6.4
	heightHead   = 7.4  // of a heading over a part
	heightBand   = 5.0  // of a line in the band
	heightFrame  = 7.5  // around the band's lines
	heightStore  = 4.6  // the line of a store under the band
	heightSteps  = 8.0  // the boxes of the load steps
	heightSign   = 12.0 // the lines to sign
	lettersTitle = 42
	lettersBand  = 62
	lettersThird = 28 // in one of the three columns of what is not known
)

// linesIn is how many lines a text takes in a column of so many letters.
func linesIn(text string, column int) float64 {
	return max(1, math.Ceil(float64(letters(text))/float64(column)))
}

// fit lists as many parts as the page has room for, in the larger type where everything fits in it.
func (v *sheetView) fit(parts []cost.Part, currency string) {
	v.Build, v.More = buildRows(parts, currency, roomyType, v.room(roomyType))
	if v.Roomy = v.More == "" && v.room(roomyType) >= 0; v.Roomy {
		v.Drawn = v.drawn(roomyType)
		return
	}
	if v.room(plainType) < heightHead+plainType.say && len(v.Stores) > 1 {
		v.narrow()
	}
	if v.drawn(plainType) <= leastDrawn || v.room(plainType) < heightHead+plainType.say {
		v.Years = "" // the first to go: it stands on screen
	}
	v.Build, v.More = buildRows(parts, currency, plainType, v.room(plainType))
	v.Drawn = v.drawn(plainType)
}

// room is the height in mm that is left for the parts.
func (v *sheetView) room(t sheetType) float64 {
	set := heightHead
	value := t.value
	if !v.Hoist { // no drawing: one column under the other, as wide as the page
		set += 5 + heightHead
		for _, say := range v.Order {
			set += t.more * linesIn(say, t.wide)
		}
		value = t.wide - t.name
	}
	for _, row := range v.Set {
		set += t.Row + t.more*(max(linesIn(row.Name, t.name), linesIn(row.Value, value))-1)
	}
	return v.middle(t) - set - heightHead
}

// leastDrawn is the least height of a drawing, mm.
const leastDrawn = 40

// drawn is the height in mm that is left for the drawing, in steps of 5.
func (v *sheetView) drawn(t sheetType) int {
	left := v.middle(t)
	if len(v.Order) > 0 {
		left -= heightHead
		for _, say := range v.Order {
			left -= t.more * linesIn(say, t.value+4)
		}
	}
	return min(110, max(leastDrawn, 5*int(left/5)))
}

// middle is the height in mm between what stands over the two columns and what stands under them.
func (v *sheetView) middle(t sheetType) float64 {
	left := heightA4
	if v.Letter {
		left = heightLetter
	}
	left -= 4 + heightTitle*linesIn(v.Title, lettersTitle) + t.say*linesIn(v.Project+" (an invented example) · "+v.Revisions, t.wide-12)
	if len(v.Waits) > 0 {
		left -= 1 + t.say*math.Ceil(float64(3+len(v.Waits))/6)
	}
	left -= heightFrame + heightBand*linesIn(v.Band.Says(), lettersBand)
	left -= v.storeLines(t)
	if len(v.Causes) > 0 {
		lines := 0.0
		for _, u := range v.Causes {
			if len(v.Causes) <= 2 {
				lines += linesIn(u, t.wide)
			} else {
				lines += linesIn(u, lettersThird)
			}
		}
		if len(v.Causes) > 2 {
			lines = math.Ceil(lines/3 + 1)
		}
		left -= 1 + t.say*lines
	}
	left -= 1.5 + 1 + t.say*linesIn(strings.Join(v.Verdict, " "), t.wide)
	if v.Years != "" {
		left -= t.say * linesIn(v.Years, t.wide)
	}
	if len(v.Checks) > 0 {
		left -= heightHead + t.Row
		for _, c := range v.Checks {
			left -= t.Row + t.more*(linesIn(c.Part, t.check)-1)
		}
	}
	if len(v.Steps) > 0 {
		left -= heightHead + 1 + t.say*linesIn(v.StepSay, t.wide) + heightSteps
	}
	left -= 4
	for _, c := range v.Caution {
		left -= t.more * linesIn(c, t.wide+24)
	}
	if v.Sign {
		left -= heightSign
	}
	return left
}

// storeLines is the height in mm of the lines of the stores.
func (v *sheetView) storeLines(t sheetType) float64 {
	if len(v.Stores) == 0 {
		return 0
	}
	lines := 0.0
	for _, b := range v.Stores {
		lines += linesIn(b.Of+" "+b.Brief, t.wide-16) // most of it is bold
	}
	if v.sheetState.More != "" {
		lines++
	}
	if v.Narrow {
		lines = math.Ceil(lines / 3)
	}
	return 1 + heightStore*lines
}

// buildRows are the parts with the number that matters and how to get them, as many as fit into the room of so many mm, and
// how many did not.
func buildRows(parts []cost.Part, currency string, t sheetType, room float64) (out [][]string, more string) {
	heights := make([]float64, len(parts))
	for i, p := range parts {
		row := []string{form.Clip(partName(p), sheetText), form.Clip(partGet(p, currency), t.get)}
		heights[i] = t.Row + t.more*(linesIn(row[0], t.part)-1)
		out = append(out, row)
	}
	used := 0.0
	fits, fitsBeforeMore := 0, 0
	for _, h := range heights {
		if used += h; used > room {
			break
		}
		fits++
		if used+1+t.say <= room {
			fitsBeforeMore = fits
		}
	}
	if fits == len(parts) {
		return out, ""
	}
	return out[:fitsBeforeMore], fmt.Sprintf("and %d more on the page Buy and make", len(parts)-fitsBeforeMore)
}

func partName(p cost.Part) string {
	if p.Number == "" {
		return page.OrUnnamed(p.Name)
	}
	return page.OrUnnamed(p.Name) + ", " + p.Number
}

func partGet(p cost.Part, currency string) string {
	price, ok := p.Price.Value()
	if !ok {
		return string(p.Get)
	}
	return strings.TrimSpace(string(p.Get) + " " + unit.Rounded(float64(price), 3) + " " + currency)
}

// letters is how many usual letters take the room of a text.
func letters(s string) int { return form.Width(s) / 2 }
