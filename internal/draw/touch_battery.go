package draw

import (
	"html"
	"io"
	"math"

	"duskweight/internal/model/lift/path"
)

// Missing is the word of a part that no one has named: it has a sign of its own beside those of the checks.
const Missing path.Word = "missing"

// BatterySketch is a battery with all that its current runs through, from the panels to lamps and devices. It is no picture
// to scale: it shows what follows what. What is not there is dashed.
type BatterySketch struct {
	Blocks   int  // in a row, as many as are drawn; 0: the battery is not known
	Panels   int  // groups of panels; 0: none
	Board    bool // cells of this kind have a management board
	Inverter bool // something runs through one
	Lamps    bool // something is switched on at night
	Over60   bool // somewhere more than 60 V

	Volts  string // of the line, on the controller: "12.8 V"
	Line   string // "the 12.8 V line"
	Flow   string // what flows: "sun 7.8 A · night 6.9 A"
	Row    string // how the panels are joined: "2 in a row"
	Near   string // from the battery to the fuse: "10 cm"
	Spots  []Spot
	Titled string // for whoever hears the page
}

// The paper of the battery, and the measures that its drawing hangs on.
const (
	cellsW, cellsH = 880.0, 458.0
	lineY          = 188.0 // of the line
	backY          = 214.0 // of the wire back
	floorY         = 446.0
)

// batterySpots are the places of the parts: their boxes and the points that they lead to. On a phone only their signs are
// shown, so the signs stand 74 apart or more.
var batterySpots = map[string]struct {
	b    box
	x, y float64
}{
	"panels":      {box{44, 250, 204, 250 + spotHigh}, 116, 162},
	"panel_cable": {box{132, 302, 280, 302 + spotHigh}, 316, 192},
	"controller":  {box{322, 114, 482, 114 + spotHigh}, 366, 164},
	"fuse":        {box{324, 250, 446, 250 + spotHigh}, 452, 272},
	"cable":       {box{588, 220, 704, 220 + spotHigh}, 572, 236},
	"battery":     {box{298, 352, 436, 352 + spotHigh}, 440, 371},
	"board":       {box{642, 344, 806, 344 + spotHigh}, 549, 319},
	"place":       {box{132, 384, 280, 384 + spotHigh}, 288, 401},
	"inverter":    {box{654, 34, 844, 34 + spotHigh}, 690, 92},
	"loads":       {box{716, 296, 858, 296 + spotHigh}, 758, 286},
}

// Draw draws the battery with its parts as links along the current.
func (s BatterySketch) Draw(w io.Writer) error {
	p := openTouch(w, cellsW, cellsH, s.Titled)
	p.house()
	s.panels(p)
	s.controller(p)
	s.battery(p)
	s.mains(p)
	s.lamps(p)
	s.words(p)
	for _, one := range s.Spots {
		if at, ok := batterySpots[one.ID]; ok {
			p.spot(placed{Spot: one, box: at.b, x: at.x, y: at.y, own: true})
		}
	}
	return p.close()
}

// house is the sun, the roof that bears the panels, and the room with the battery.
func (p *pen) house() {
	p.circle(40, 44, 16, attrs{"class", "sunf"})
	p.tag("path", attrs{"class", "sunl", "d", "M40 18V10M40 78v-8M14 44H6M74 44h-8M22 26l-6-6M58 26l6-6M22 62l-6 6"})
	p.path([]float64{22, 196, 292, 78, 296, 87, 26, 205}, true, attrs{"class", "wood"})
	for _, r := range [][4]float64{{286, 24, 9, floorY - 24}, {286, 18, 584, 7}, {863, 25, 7, floorY - 25}, {26, 200, 8, floorY - 200}} {
		p.rect(r[0], r[1], r[2], r[3], attrs{"class", "wood"})
	}
	p.line(14, floorY, 866, floorY, stroke(ink, wide, ""))
	for x := 28.0; x < 280; x += 18 {
		p.line(x, floorY, x-7, floorY+8, stroke(ink, 0.7, ""))
	}
	p.tag("path", attrs{"class", "ln", "d", "M288 392h6M288 398h6M288 404h6M288 410h6"}) // the opening for air
}

// gone is the look of what is not there.
func gone() attrs { return stroke(ink, 1.2, dashed) }

// panels are the panels on the roof and their cable to the controller.
func (s BatterySketch) panels(p *pen) {
	for i, at := range [][2]float64{{172, 126.4}, {72, 170.1}} { // the one next to the cable first
		x, y := at[0], at[1]
		outline := []float64{x, y, x + 88, y - 38.4, x + 82, y - 54.4, x - 6, y - 16}
		if s.Panels <= i {
			if s.Panels == 0 {
				p.path(outline, true, gone())
			}
			continue
		}
		p.path(outline, true, attrs{"class", "sunf"})
		for k := 1.0; k < 4; k++ {
			p.line(x+22*k, y-9.6*k, x+22*k-6, y-9.6*k-16, attrs{"class", "seam"})
		}
	}
	if s.Panels > 1 {
		p.line(160, 130, 167, 127, stroke(ink, wide, ""))
	}
	wire := []float64{250, 98, 250, 118, 318, 118, 318, 196, 352, 196}
	if s.Panels == 0 {
		p.path(wire, false, gone())
		return
	}
	if s.Over60 {
		p.path(wire, false, stroke(failColour, 3.4, ""))
		return
	}
	p.path(wire, false, attrs{"class", "sunl", "stroke-width", "2.4"})
}

// controller is the controller and the line that it feeds, there and back.
func (s BatterySketch) controller(p *pen) {
	p.rect(352, 164, 84, 62, attrs{"class", "steel", "rx", "3"})
	p.rect(358, 173, 56, 18, attrs{"class", "paperf"})
	p.circle(422, 182, 5, attrs{"class", "paperf"})
	p.tag("path", attrs{"class", "ln", "d", "M366 203h56M366 212h40"})
	p.line(436, lineY, 812, lineY, stroke(ink, wide, ""))
	p.path([]float64{571, 318, 571, backY, 812, backY}, false, stroke(ink, wide, ""))
}

// battery is the battery on its shelf, with fuse and cable.
func (s BatterySketch) battery(p *pen) {
	p.rect(398, 414, 236, 9, attrs{"class", "wood"})
	p.tag("path", attrs{"class", "ln", "d", "M410 423v23M622 423v23"})
	body := attrs{"class", "paperf"}
	if s.Blocks == 0 {
		body = gone()
	}
	p.rect(440, 328, 156, 86, body)
	p.tag("path", stroke(ink, wide, ""), attrs{"d", "M456 328v-10h18v10M562 328v-10h18v10"})
	if n := min(s.Blocks, 8); n > 0 {
		p.rect(446, 345, 144, 63, attrs{"class", "cellf"})
		for k := 1; k < n; k++ {
			x := 446 + 144*float64(k)/float64(n)
			p.line(x, 345, x, 408, attrs{"class", "cellcut"})
		}
		p.raw(`<text class="d" x="465" y="341" text-anchor="middle">+</text><text class="d" x="571" y="341" text-anchor="middle">–</text>`)
	}
	if s.Board {
		p.rect(488, 312, 60, 14, attrs{"class", "boardf"})
		p.tag("path", attrs{"class", "ln", "d", "M474 320h14M548 320h14"})
	}
	p.tag("path", stroke(ink, wide, ""), attrs{"d", "M465 318V296M465 252V188"})
	p.rect(454, 252, 22, 44, attrs{"class", "paperf", "rx", "3"})
	p.tag("path", stroke(ink, wide, ""), attrs{"d", "M465 258c6 5-6 8 0 16s-6 8 0 16"})
	if s.Near != "" {
		p.tag("path", attrs{"class", "dim", "d", "M430 296h14M430 318h14M436 296V318m-3-6 3 6 3-6m-6-10 3-6 3 6"})
	}
}

// mains is the inverter with its socket; dashed where nothing runs through one.
func (s BatterySketch) mains(p *pen) {
	look, wire := attrs{"class", "steel", "rx", "3"}, stroke(ink, wide, "")
	if !s.Inverter {
		look, wire = append(gone(), "rx", "3"), gone()
	}
	p.path([]float64{676, lineY, 676, 150}, false, wire)
	p.path([]float64{700, backY, 700, 150}, false, wire)
	p.rect(652, 92, 78, 58, look)
	p.tag("path", wire, attrs{"d", "M668 121c8-20 15-20 22 0s15 20 22 0"})
	if !s.Inverter {
		return
	}
	p.line(730, 121, 786, 121, wire)
	p.rect(786, 100, 42, 42, attrs{"class", "paperf", "rx", "4"})
	p.circle(799, 121, 3, wire)
	p.circle(815, 121, 3, wire)
}

// lamps are the lamps on the line; dashed where nothing is switched on.
func (s BatterySketch) lamps(p *pen) {
	for _, x := range []float64{716, 758, 800} {
		if !s.Lamps {
			p.path([]float64{x - 6, 262, x + 20, 262, x + 28, 282, x - 14, 282}, true, gone())
			continue
		}
		p.tag("path", attrs{"class", "nightl", "d", "M" + num(x) + " 188V262M" + num(x+14) + " 214V262"})
		p.path([]float64{x - 6, 262, x + 20, 262, x + 28, 282, x - 14, 282}, true, attrs{"class", "paperf"})
		p.tag("path", attrs{"class", "sunf", "d", "M" + num(x+1) + " 282a6 6 0 0 0 12 0z"})
	}
}

// words are the letters that are no link; each is left out where it has no room.
func (s BatterySketch) words(p *pen) {
	for _, t := range []struct {
		text         string
		x, y         float64
		room         float64
		anchor, look string
	}{
		{s.Volts, 386, 187, 56, "middle", "d"},
		{s.Line, 446, lineY - 6, 190, "start", "s"},
		{s.Flow, 476, lineY + 18, 190, "start", "s"},
		{s.Row, 96, 66, 138, "start", "d"},
		{s.Near, 426, 311, 90, "end", "d"},
	} {
		if t.text == "" || TextWidth(t.text, 12) > t.room {
			continue
		}
		p.raw(`<text class="%s" x="%s" y="%s" text-anchor="%s">%s</text>`, t.look, num(t.x), num(math.Round(t.y)), t.anchor, html.EscapeString(t.text))
	}
	if !s.Inverter {
		p.raw(`<text class="s" x="740" y="118">no inverter:</text><text class="s" x="740" y="132">nothing needs it</text>`)
	}
}
