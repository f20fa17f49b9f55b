package cells

import (
	"slices"

	"duskweight/internal/draw"
	"duskweight/internal/model"
	"duskweight/internal/model/cell"
	"duskweight/internal/model/lift/path"
	"duskweight/internal/model/reason"
	"duskweight/internal/model/unit"
)

// state is a part of one design with its word, the worst of what is said of it.
type state struct {
	part
	Word    path.Word
	Because []reason.Reason
	Checks  []model.LineCheck
	Remarks []cell.Flag
	Open    []string // inputs that are not known, by their paths
}

// Settled reports whether nothing is open and nothing gives way.
func (s state) Settled() bool { return s.Word == path.Holds || s.Word == path.Tight }

// Use is the greatest use of its checks.
func (s state) Use() (use unit.Known[unit.Ratio]) {
	for _, k := range s.Checks {
		if k.Use.Is && (!use.Is || k.Use.Val > use.Val) {
			use = k.Use
		}
	}
	return use
}

// states are the parts of the design along the current, those that there are: no inverter where nothing needs one, no board
// for cells that have none.
func (b *bench) makeStates() {
	for _, p := range allParts {
		if b.has(p.id) {
			b.states = append(b.states, state{part: p})
		}
	}
	b.judge()
	for i := range b.states {
		s := &b.states[i]
		s.Open = b.openOf(*s)
		s.Word = b.wordOf(*s)
	}
}

// has reports whether the design has a part.
func (b *bench) has(id string) bool {
	switch id {
	case partPanelCable:
		return len(b.v.Panels) > 0
	case partBoard:
		return b.board
	case partInverter:
		return b.whole.Peak.AC > 0
	}
	return true
}

// judge gives each part the reasons, checks and remarks that are about it.
func (b *bench) judge() {
	circuit := b.whole.Circuit(b.v)
	for _, r := range b.whole.Because {
		if s := b.state(b.partOf(r, circuit)); s != nil {
			s.Because = append(s.Because, r)
		}
	}
	for _, k := range slices.Concat(b.whole.Peak.Checks, b.whole.Wiring.Checks) {
		id := ownerOf(k.Path, b.prefix, b.board)
		if k.ID == "volts_string" { // the label of the controller bounds it, the panels make it
			id = partPanels
		}
		if s := b.state(id); s != nil {
			s.Checks = append(s.Checks, k)
		}
	}
	for _, f := range slices.Concat(b.c.Cautions, b.c.Line.Flags) {
		if f.Bad || f.Open { // a reason says it
			continue
		}
		if s := b.state(ownerOf(model.Join(b.prefix, f.Path), b.prefix, b.board)); s != nil {
			s.Remarks = append(s.Remarks, f)
		}
	}
}

// partOf is the part that a reason is about; empty for one about another store.
func (b *bench) partOf(r reason.Reason, circuit []model.Device) string {
	if model.Within(r.Path, "stores") && !model.Within(r.Path, b.prefix) {
		return ""
	}
	for _, d := range circuit {
		if d.Asks(r) && devicePart[d.Kind] != "" {
			return devicePart[d.Kind]
		}
	}
	return ownerOf(r.Path, b.prefix, b.board)
}

// state is a part by its id; nil where the design has none.
func (b *bench) state(id string) *state {
	i := slices.IndexFunc(b.states, func(s state) bool { return s.id == id })
	if i < 0 {
		return nil
	}
	return &b.states[i]
}

// openOf are the inputs that a part waits for: those that its reasons name, then those that it needs.
func (b *bench) openOf(s state) (out []string) {
	add := func(path string) {
		if !slices.Contains(out, path) {
			out = append(out, path)
		}
	}
	for _, r := range s.Because {
		if r.Word == reason.NotKnown {
			add(r.Path)
		}
	}
	for _, path := range b.inputs(s.id) {
		if slices.Contains(s.needs, keyOf(path, b.prefix)) && !b.given[path] {
			add(path)
		}
	}
	return out
}

// wordOf is the worst of what is said of a part.
func (b *bench) wordOf(s state) path.Word {
	word := path.Holds
	for _, k := range s.Checks {
		if k.Word == model.Tight || k.Word == model.GivesWay { // where nothing forbids it, it loses or uses more than is usual
			word = path.Tight
		}
	}
	if slices.ContainsFunc(s.Remarks, func(f cell.Flag) bool { return f.ID == "fuse_near" }) {
		word = path.Tight
	}
	if len(s.Open) > 0 {
		word = path.NotKnown
	}
	if b.unnamed(s.id) {
		word = draw.Missing
	}
	if slices.ContainsFunc(s.Because, func(r reason.Reason) bool { return r.Word == reason.No }) {
		word = path.GivesWay
	}
	return word
}

// unnamed reports whether nobody has named a part yet.
func (b *bench) unnamed(id string) bool {
	d := b.c.Design
	switch id {
	case partPanels:
		return len(b.v.Panels) == 0
	case partBattery:
		return !d.Capacity.Is && !d.Voltage.Is
	}
	return false
}
