package page

import (
	"fmt"
	"slices"
	"strings"

	"duskweight/internal/model"
	"duskweight/internal/model/reason"
	"duskweight/internal/model/unit"
)

// CircuitView is the wiring of a variant from the panels to motor and lamps, ready to print: a drawing, and the same as a list with the worst
// first.
type CircuitView struct {
	Alt    string
	Boxes  []DeviceView
	Names  []CircuitName
	Wires  string // path of all wires
	Height int
	List   []DeviceView
}

// DeviceView is one device with its rating and its state, and where it is drawn.
type DeviceView struct {
	Name, Of, Rating   string
	State              reason.Word
	Sign, Word         string
	Why                []ReasonView
	X, Y, Middle       int
	NameY, RateY, SayY int
}

// CircuitName stands over the devices of one store.
type CircuitName struct {
	Text string
	Y    int
}

// deviceNames name the kinds of device, short enough for their boxes.
var deviceNames = map[model.DeviceKind]string{
	model.Panels: "panels", model.StringFuses: "string fuses", model.PanelCable: "panel cable", model.Charger: "controller", model.TheLine: "line", model.Inverter: "inverter",
	model.Devices: "lamps, devices", model.Battery: "battery", model.BatteryFuse: "battery fuse", model.BatteryCable: "battery cable", model.Board: "board",
	model.MotorFuse: "motor fuse", model.MotorCable: "motor wires", model.MotorSwitch: "switch", model.MotorSupply: "motor supply", model.BrakeCoil: "brake coil",
	model.MotorLamps: "lamps on motor", model.Shunt: "brake resistor",
}

// Measures of the drawing: boxes in rows of four beside the line.
const (
	boxWide, boxHigh   = 100, 48
	boxStep, rowStep   = 108, 62
	firstBox, busAt    = 34, 14
	CircuitWide        = firstBox + 4*boxStep
	boxesInRow, nameUp = 4, 14
)

// CircuitOf draws the devices of a variant.
func CircuitOf(v model.Variant, r model.VariantResult, sys unit.System) CircuitView {
	c := circuitDrawing{view: CircuitView{}, y: 6}
	all := r.Circuit(v)
	views := make([]DeviceView, len(all))
	for i, d := range all {
		views[i] = deviceView(d, ownerOf(d, r), sys)
	}
	i := c.panels(all, views)
	for i < len(all) {
		n := i + 1 // the devices of one store, or one alone
		for n < len(all) && all[n].At == all[i].At && all[i].At >= 0 {
			n++
		}
		c.branch(views[i:n])
		i = n
	}
	c.view.Height = c.y
	c.view.Wires = c.wires.String() + fmt.Sprintf("M%d %dV%d", busAt, c.first, c.last)
	c.view.List = slices.Clone(c.view.Boxes)
	slices.SortStableFunc(c.view.List, func(a, b DeviceView) int {
		switch {
		case a.State.Worse(b.State):
			return -1
		case b.State.Worse(a.State):
			return 1
		}
		return 0
	})
	c.view.Alt = circuitAlt(c.view.List)
	return c.view
}

// circuitDrawing lays out the rows one under the other.
type circuitDrawing struct {
	view        CircuitView
	wires       strings.Builder
	y           int
	first, last int // of the line
	top         int // of the panels
}

// panels draws the controller on the line, and behind it a row for each array, its panels last. It returns how many devices
// that were.
func (c *circuitDrawing) panels(all []model.Device, views []DeviceView) int {
	n := slices.IndexFunc(all, func(d model.Device) bool { return d.Kind == model.Charger })
	if n < 0 {
		return 0
	}
	top, behind := c.y, c.y
	c.top = top
	for i := 0; i < n; {
		k := i + 1
		for k < n && all[k].At == all[i].At {
			k++
		}
		row := slices.Clone(views[i:k])
		slices.Reverse(row)
		behind = c.y
		c.row(row, 1)
		i = k
	}
	end := c.y
	c.y = top
	c.row(views[n:n+1], 0)
	c.hang(top)
	c.y = end
	if behind > top { // the arrays join before the controller
		fmt.Fprintf(&c.wires, "M%d %dV%d", firstBox+boxWide+4, top+boxHigh/2, behind+boxHigh/2)
	}
	return n + 1
}

// row draws devices side by side, from a column on, joined with what stands before it.
func (c *circuitDrawing) row(ds []DeviceView, column int) {
	middle := c.y + boxHigh/2
	for k := range ds {
		d := &ds[k]
		d.X, d.Y = firstBox+(column+k)*boxStep, c.y
		d.Middle, d.NameY, d.RateY, d.SayY = d.X+boxWide/2, c.y+14, c.y+27, c.y+41
		if column+k > 0 {
			fmt.Fprintf(&c.wires, "M%d %dH%d", d.X-boxStep+boxWide+c.joint(column, k), middle, d.X)
		}
	}
	c.view.Boxes = append(c.view.Boxes, ds...)
	c.y += rowStep
}

// joint is where the wire to a device begins, beyond the box before it: an array under the first begins where they join.
func (c *circuitDrawing) joint(column, k int) int {
	if column > 0 && k == 0 && c.y > c.top {
		return 4
	}
	return 0
}

// hang joins the row at a height with the line.
func (c *circuitDrawing) hang(y int) {
	middle := y + boxHigh/2
	fmt.Fprintf(&c.wires, "M%d %dH%d", busAt, middle, firstBox)
	if c.first == 0 {
		c.first = middle
	}
	c.last = middle
}

// branch draws the devices of a store in rows that hang on the line.
func (c *circuitDrawing) branch(ds []DeviceView) {
	if ds[0].Of != "" {
		c.view.Names = append(c.view.Names, CircuitName{ds[0].Of, c.y + 9})
		c.y += nameUp
	}
	for row := range slices.Chunk(slices.Clone(ds), boxesInRow) {
		c.hang(c.y)
		c.row(row, 0)
	}
}

// ownerOf names the store of a device; empty for what all share.
func ownerOf(d model.Device, r model.VariantResult) string {
	if d.At < 0 || d.Kind == model.Panels || d.Kind == model.StringFuses || d.Kind == model.PanelCable {
		return ""
	}
	return OrUnnamed(r.Stores[d.At].Name)
}

func deviceView(d model.Device, of string, sys unit.System) DeviceView {
	v := DeviceView{Name: deviceNames[d.Kind], Of: of, Rating: d.Rating.In(sys), State: d.Word, Sign: BandSigns[d.Word], Word: deviceWord(d)}
	for _, b := range d.Because {
		v.Why = append(v.Why, ReasonView{State: b.Word, Say: b.Say.In(sys), Mend: b.Mend.In(sys)})
	}
	if v.Rating == "" && d.Kind != model.Shunt {
		v.Rating = "not given"
	}
	return v
}

// deviceWord says in a word what is wrong with a device, by the worst reason.
func deviceWord(d model.Device) string {
	switch d.Word {
	case reason.NotKnown:
		return "not known"
	case reason.No:
	default:
		return "good"
	}
	b := d.Because[slices.IndexFunc(d.Because, func(b reason.Reason) bool { return b.Word == reason.No })]
	switch {
	case b.ID == "shunt" || strings.HasSuffix(b.Path, ".present") || strings.HasSuffix(b.Path, ".management_board"):
		return "missing"
	case strings.HasPrefix(b.ID, "volts_") || b.ID == "bare_volts":
		return "wrong voltage"
	case b.ID == "charge_current" || b.ID == "batteries_joined":
		return "does not fit"
	}
	return "too weak"
}

// First is the drawing down to a height, with what reaches over it left out; the list is whole.
func (v CircuitView) First(high int) CircuitView {
	v.Boxes = slices.DeleteFunc(slices.Clone(v.Boxes), func(d DeviceView) bool { return d.Y+boxHigh > high })
	v.Names = slices.DeleteFunc(slices.Clone(v.Names), func(n CircuitName) bool { return n.Y+nameUp+boxHigh > high })
	v.Height = min(v.Height, high)
	return v
}

// Class is the state in the style sheets.
func (d DeviceView) Class() string { return strings.ReplaceAll(string(d.State), "_", "-") }

// circuitAlt is the drawing in words, the danger first.
func circuitAlt(list []DeviceView) string {
	var bad, open []string
	for _, d := range list {
		name := d.Name
		if d.Of != "" {
			name += " of " + d.Of
		}
		switch d.State {
		case reason.No:
			bad = append(bad, name+": "+d.Word)
		case reason.NotKnown:
			open = append(open, name)
		}
	}
	say := "Wiring from the panels to lamps and motor, " + Counted(len(list), "part") + ". "
	if len(bad) > 0 {
		say = strings.Join(bad, "; ") + ". " + say
	}
	if len(open) > 0 {
		say += "Not known: " + strings.Join(open, ", ") + ". "
	}
	return say + "The table lists them all."
}
