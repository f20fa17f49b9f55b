package draw

import (
	"html"
	"io"
	"strings"
)

// thingLines are the lines of the drawing of a bought or measured thing on 40 × 40, by its key: ink, and the place where its
// number stands or what it is measured with. Our own drawings.
var thingLines = map[string][2]string{
	"reel":    {"M7 5h4v30H7zM29 5h4v30h-4zM11 10h18M11 30h18M14 10v4M18 10v4M22 10v4M26 10v4M14 30v-4M18 30v-4M22 30v-4M26 30v-4", "M13 15h14v10H13zM16 18.500h8M16 21.500h5"},
	"bag":     {"M8 14h24v22H8zM8 14L5 5M32 14l3-9M8 14l5-9M32 14l-5-9", "M14 20h12v10H14zM17 23.500h6M17 26.500h4"},
	"eye":     {"M20 3a9 9 0 1 0 .1 0zM20 8a4 4 0 1 0 .1 0zM13 21h14v4H13zM17 25v11h6V25M17 28h6M17 31h6M17 34h6", "M14.500 15q5.500 5 11 0"},
	"pulley":  {"M20 9a12 12 0 1 0 .1 0zM20 19a2 2 0 1 0 .1 0zM20 9V3M16 3h8", "M15 25h10v5H15z"},
	"gearbox": {"M9 9h22v23H9zM31 17h6v6h-6M3 19h6v3H3M11.500 11.500h.1M28.500 11.500h.1M11.500 29.500h.1M28.500 29.500h.1", "M13 15h14v10H13zM16 18.500h8M16 21.500h5"},
	"wheel":   {"M20 10a11 11 0 1 0 .1 0zM20 18a3 3 0 1 0 .1 0zM20 10V7M20 32v3M9 21H6M31 21h3M12.200 13.200L10 11M27.800 28.800L30 31M12.200 28.800L10 31M27.800 13.200L30 11", "M6 3h28M6 3v13M34 3v13"},
	"motor":   {"M4 11h25v18H4zM29 17h8v5h-8M8 29v4M25 29v4M4 11v18M8 11v18", "M12 15h13v10H12zM15 18.500h7M15 21.500h4"},
	"supply":  {"M5 9h30v22H5zM10 31v3M30 31v3M31 14h.1M31 20h.1M31 26h.1", "M9 13h17v10H9zM12 16.500h9M12 19.500h6"},
	"lamp":    {"M20 4a10 10 0 0 1 6 18v4H14v-4a10 10 0 0 1 6-18zM15 34h10M15 30h10", "M16 26h8v3h-8z"},
	"brake":   {"M6 7h14v26H6zM20 10h5v20h-5zM25 18h11v4H25", "M9 14h8v12H9zM11 18h4M11 21h3"},
	"timber":  {"M4 16l8-7h24l-8 7zM4 16h24v16H4zM28 16l8-7v16l-8 7", "M9 20h12v7H9z"},
	"scale":   {"M6 28h28v7H6zM10 8h20v20H10z", "M15 30h10v3H15z"},
	"drum":    {"M7 6h4v28H7zM29 6h4v28h-4zM11 12h18M11 28h18", "M18 12q-3 8 0 16M22 12q-3 8 0 16M18 28v7M22 28v4"},
	"bolt":    {"M9 5h22v12H9zM16 17v19h8V17M16 22h8M16 26h8M16 30h8M16 34h8", "M16 9h8M16 13h5"},
	"battery": {"M5 12h30v22H5zM9 8h6v4H9zM25 8h6v4h-6zM10 16.500h4M12 14.500v4M26 16.500h4", "M10 21h20v9H10zM13 24h12M13 27h7"},
	"fuse":    {"M3 14h8v12H3zM29 14h8v12h-8zM11 15h18v10H11", "M15 20q2.500-4 5 0t5 0"},
	"panel":   {"M6 4h28v32H6zM20 4v6M14 10h12v7H14zM16 17v3M24 17v3", "M11 23h18v9H11zM14 26h10M14 29h6"},
	"bare":    {"M5 30q6-14 12-6t8-6 10-12M5 30l3-3M35 6l-3 3", ""},
	"unknown": {"M13 14c0-11 15-11 15-1 0 7-8 6-8 13M20 31v2", ""},
	"list":    {"M9 4h22v32H9zM17 12h10M17 20h10M17 28h10", "M12 11l1.500 2 2-3M12 19l1.500 2 2-3M12 27h3"},
}

// Thing draws a thing by its key, as a sign beside its name; nothing for one that has no drawing.
func Thing(key string) string {
	lines, ok := thingLines[key]
	if !ok {
		return ""
	}
	return icon(lines, "glow")
}

// Stamp is what is printed on a thing, larger, and what each line of it means.
type Stamp struct {
	Thing string // key of its drawing
	Title string // the same in words
	Lines []StampLine
}

// StampLine is one line: as a maker prints it, an example, and what it means.
type StampLine struct{ Print, Means string }

// The paper of a stamp: the thing on the left, what is printed in a frame, the meaning behind it.
const (
	stampW     = 374.0
	stampFrame = 84.0 // left edge of the frame
	stampMeans = 196.0
	stampRow   = 20.0
	stampType  = 12.0
)

// Draw draws the thing, its label, and a line from each line of the label to its meaning.
func (s Stamp) Draw(w io.Writer) error {
	high := max(76, 20+stampRow*float64(len(s.Lines)))
	p := newPen(w)
	p.raw(`<svg class="stamp" viewBox="0 0 %s %s" role="img" fill="none" aria-label="%s">`, num(stampW), num(high), html.EscapeString(s.Title))
	p.raw(`<g class="ic" transform="translate(4 %s) scale(1.7)">%s</g>`, num(high/2-34), paths(thingLines[s.Thing], "glow"))
	frame := stampRow*float64(len(s.Lines)) + 8
	top := (high - frame) / 2
	right := stampFrame
	for _, l := range s.Lines {
		right = max(right, stampFrame+20+TextWidth(l.Print, stampType))
	}
	p.rect(stampFrame, top, right-stampFrame, frame, attrs{"class", "print", "rx", "3"})
	for i, l := range s.Lines {
		y := top + 4 + stampRow*(float64(i)+0.5)
		p.raw(`<text class="w" x="%s" y="%s">%s</text>`, num(stampFrame+10), num(y+4), html.EscapeString(l.Print))
		p.line(right, y, stampMeans-6, y, attrs{"class", "hair"})
		p.raw(`<text x="%s" y="%s">%s</text>`, num(stampMeans), num(y+4), html.EscapeString(l.Means))
	}
	return p.close()
}

// Words are what a stamp shows, for those who do not see it.
func (s Stamp) Words() string {
	var out []string
	for _, l := range s.Lines {
		out = append(out, l.Print+": "+l.Means)
	}
	return strings.Join(out, "; ")
}
