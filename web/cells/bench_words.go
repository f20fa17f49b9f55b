package cells

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"duskweight/internal/draw"
	"duskweight/internal/model"
	"duskweight/internal/model/cell"
	"duskweight/internal/model/lift/path"
	"duskweight/internal/model/reason"
	"duskweight/internal/model/unit"
	"duskweight/web/form"
	"duskweight/web/page"
)

// word is the word of a part.
func word(s state) string {
	switch s.Word {
	case path.Holds:
		return "strong enough"
	case path.Tight:
		return "tight"
	case draw.Missing:
		return "missing"
	case path.NotKnown:
		return "not known"
	}
	for _, r := range s.Because {
		switch {
		case r.Word != reason.No:
		case strings.HasSuffix(r.Path, ".present"), strings.HasSuffix(r.Path, ".management_board"):
			return "missing"
		case s.id == partPlace, s.id == partLoads, strings.HasSuffix(r.Path, ".cells_are"):
			return "forbids it"
		}
	}
	return "gives way"
}

// line is what the list says beside a part.
func (b *bench) line(s state) string {
	sys := b.h.sys
	for _, want := range []reason.Word{reason.No, reason.NotKnown} {
		for _, r := range s.Because {
			if r.Word == want {
				return r.Short().In(sys)
			}
		}
	}
	if s.Word == path.Tight {
		for _, k := range s.Checks {
			if k.Word == model.Tight || k.Word == model.GivesWay {
				return k.Say.In(sys)
			}
		}
		for _, f := range s.Remarks {
			if f.ID == "fuse_near" {
				return f.Say.In(sys)
			}
		}
	}
	if len(s.Open) > 0 {
		return b.openNames(s)
	}
	return b.rating(s.id)
}

// openNames asks for the first input that a part waits for, and says how many more there are.
func (b *bench) openNames(s state) string {
	name := cmp.Or(asked[keyOf(s.Open[0], b.prefix)], b.h.labels[s.Open[0]], "not known")
	if n := len(s.Open) - 1; n > 0 {
		name += fmt.Sprintf(" And %d more", n)
	}
	return name
}

// shortAsk are open inputs in few words, for the drawing.
var shortAsk = map[string]string{
	"kind": "which kind?", "block_capacity_c": "how many Ah?", "block_voltage_v": "how many volts?", "cells_are": "new or used?", "management_board": "is there one?", "board_max_a": "how many A?",
	"place": "where is it?", "vent_area_m2": "opening for air?", "fuse_a": "how many A?", "fuse_distance_m": "how far?", "breaking_a": "which short?", "cable_area_m2": "how thick?", "cable_length_m": "how long?",
	"panels.count": "how many?", "panels.panel_w": "how many watts?", "panels.sheet.panels_in_series": "how many in a row?", "panels.sheet": "data sheet?", "panels.cable_area_m2": "how thick?",
	"controller.max_input_v": "up to which voltage?", "controller.licensed": "who wires it?",
}

// subs are words about a part that the drawing may have room for, the best first.
func (b *bench) subs(s state) []string {
	rating := b.rating(s.id)
	var out []string
	add := func(text string) {
		if text != "" {
			out = append(out, text)
		}
	}
	switch s.Word {
	case path.NotKnown:
		if len(s.Open) > 0 {
			ask := shortAsk[keyOf(s.Open[0], b.prefix)]
			if ask != "" && rating != "" {
				add(rating + "; " + ask)
			}
			add(ask)
		}
		add(word(s))
	case path.GivesWay:
		add(rating + "; " + word(s))
		add(word(s))
	case draw.Missing:
		add("none yet")
	default:
		add(rating)
	}
	return out
}

// rating is what a part is, in few words.
func (b *bench) rating(id string) string {
	sys, d, v := b.h.sys, b.c.Design, b.v
	amps := func(i unit.Current) string { return unit.Currents.Format(float64(i), sys) }
	switch id {
	case partPanels:
		return b.panelsRating()
	case partPanelCable:
		a := v.Panels[0]
		return joined(", ", page.IfKnown(a.CableArea, unit.WireAreas, sys, "%s"), page.IfKnown(a.CableLen, unit.Lengths, sys, "%s"))
	case partController:
		if v.Controller.MaxCharge.Is {
			return amps(b.whole.Wiring.Charge) + " of " + amps(v.Controller.MaxCharge.Val)
		}
		return form.WordFor(string(v.Controller.Kind))
	case partFuse:
		return joined(", ", page.IfKnown(d.Fuse, unit.Currents, sys, "%s"), b.near())
	case partCable:
		text := page.IfKnown(d.CableArea, unit.WireAreas, sys, "%s")
		if amps, ok := cell.Ampacity(d.CableArea.Or(0)); ok && text != "" {
			text += ": " + unit.Currents.Format(float64(amps), sys)
		}
		return text
	case partBattery:
		if b.c.Resolved.WhyNot != "" {
			return joined(", ", page.IfKnown(d.Capacity, unit.Charges, sys, "%s"), page.IfKnown(d.Voltage, unit.Voltages, sys, "%s"))
		}
		return joined(", ", unit.Charges.Format(float64(b.c.Resolved.Charge), sys), page.IfKnown(b.st.Capacity, unit.Energies, sys, "%s"))
	case partBoard:
		if d.BoardMost.Is {
			return "up to " + amps(d.BoardMost.Val)
		}
		if d.Board == unit.Yes {
			return "stops in the cold"
		}
	case partPlace:
		return b.room()
	case partInverter:
		return b.inverterRating()
	case partLoads:
		if p := unit.Power(b.whole.Peak.Run.Run()); p > 0 {
			return unit.Powers.Format(float64(p), sys) + " at once"
		}
	}
	return ""
}

// panelsRating is the voltage in frost of what the controller withstands, or the power on the labels.
func (b *bench) panelsRating() string {
	sys := b.h.sys
	for _, k := range b.whole.Wiring.Checks {
		if k.ID == "volts_string" && k.Use.Is {
			return unit.Rounded(k.Demand, 3) + " of " + unit.Voltages.Format(k.Capacity, sys) + " in the cold"
		}
	}
	sum := unit.Power(0)
	for _, a := range b.v.Panels {
		sum += a.Nominal().Or(0)
	}
	if sum <= 0 {
		return ""
	}
	return unit.Powers.Format(float64(sum), sys)
}

// inverterRating is what runs through the inverter, of what it gives.
func (b *bench) inverterRating() string {
	runs := unit.Powers.Format(b.whole.Peak.AC, b.h.sys)
	if rated, ok := b.h.ground().Project.Load.Inverter.Rated.Value(); ok {
		return unit.Rounded(b.whole.Peak.AC, 3) + " of " + unit.Powers.Format(float64(rated), b.h.sys)
	}
	return runs + " at once"
}

// near is how far the fuse is from the battery; empty where it is not known.
func (b *bench) near() string {
	return page.IfKnown(b.c.Design.FuseFrom, unit.Heights, b.h.sys, "%s away")
}

// room is where the battery is, and whether it gives off gas.
func (b *bench) room() string {
	if b.c.Design.Indoors == "" {
		return ""
	}
	text := strings.ToLower(form.WordFor(string(b.c.Design.Indoors)))
	if b.c.Air.Boost > 0 {
		text += "; gives off gas"
	}
	return text
}

// spot is a part as the drawing shows it.
func (b *bench) spot(i int) draw.Spot {
	s := b.states[i]
	say := word(s)
	if line := b.line(s); line != "" {
		say += ", " + strings.TrimSuffix(line, ".")
	}
	open := ". Open its card"
	if i == b.open {
		open = ". Its card is open"
	}
	return draw.Spot{ID: s.id, Name: s.name, Subs: b.subs(s), Href: b.at.card(s.id), Say: say + open, Word: s.Word, Here: i == b.open}
}

// sketch is the drawing of the design.
func (b *bench) sketch() draw.BatterySketch {
	sys, r, d := b.h.sys, b.c.Resolved, b.c.Design
	volts := unit.Voltages.Format(float64(b.v.Controller.Line()), sys)
	s := draw.BatterySketch{Titled: "From the panels to the lamps. Every part is a link that opens its card.", Panels: len(b.v.Panels), Board: b.board && d.Board != unit.No,
		Inverter: b.whole.Peak.AC > 0, Lamps: len(b.whole.Peak.Run.On) > 0, Volts: volts, Line: "the line", Near: strings.TrimSuffix(b.near(), " away")}
	if r.WhyNot == "" {
		s.Blocks = max(1, r.Series)
	}
	if !d.FuseFrom.Is {
		s.Near = "?"
	}
	var flows []string
	if sun := b.whole.Wiring.Charge; sun > 0 && b.whole.Wiring.Limited {
		flows = append(flows, "sun "+unit.Currents.Format(float64(sun), sys))
	}
	if i := b.bank(); i >= 0 && b.whole.Peak.Banks[i].Current > 0 {
		flows = append(flows, "night "+unit.Currents.Format(float64(b.whole.Peak.Banks[i].Current), sys))
	}
	s.Flow = strings.Join(flows, " · ")
	for _, w := range b.whole.Wiring.Strings {
		if w.Known && w.InSeries > 0 && s.Row == "" {
			s.Row = fmt.Sprintf("%d in a row", w.InSeries)
		}
	}
	s.Over60 = b.whole.Wiring.Over60 && len(b.v.Panels) > 0
	for i := range b.states {
		s.Spots = append(s.Spots, b.spot(i))
	}
	return s
}

// bank is the place of the battery among those that carry the peak; −1 where it cannot be computed.
func (b *bench) bank() int {
	return slices.IndexFunc(b.whole.Peak.Banks, func(p model.PeakBank) bool { return p.At == b.h.i })
}

// over60 is the sentence on a voltage that can kill; empty at 60 V and below.
func (b *bench) over60() string {
	w := b.whole.Wiring
	if !w.Over60 {
		return ""
	}
	return "Up to " + unit.Voltages.FormatTo(float64(w.Highest), b.h.sys, 3, unit.Up) + ": more than 60 V can kill. Let a licensed person connect what carries it."
}

// progress is how many parts are settled, as a sentence, with its squares.
func (b *bench) progress() (say, squares string) {
	settled, tight, bad := 0, 0, 0
	for _, s := range b.states {
		switch s.Word {
		case path.GivesWay:
			bad++
		case path.Tight:
			tight++
			settled++
		case path.Holds:
			settled++
		}
	}
	say = fmt.Sprintf("%d of %d parts settled", settled, len(b.states))
	if s := b.state(ownerOf(b.ask, b.prefix, b.board)); b.ask != "" && s != nil {
		say += "; next: " + strings.ToLower(s.name)
	}
	return say, page.Squares(settled, tight, bad, len(b.states), say)
}

// rows are the parts as a list, the worst first.
func (b *bench) rows() (v page.PartRowsView) {
	for _, w := range []path.Word{path.GivesWay, draw.Missing, path.NotKnown, path.Tight, path.Holds} {
		for i, s := range b.states {
			if s.Word != w {
				continue
			}
			row := page.PartRowView{Href: b.at.card(s.id), Name: s.name, Word: word(s), Line: b.line(s), Sign: draw.Sign(s.Word), Here: i == b.open}
			if u, ok := s.Use().Value(); ok && s.Settled() {
				row.Use = page.UseText(float64(u))
			}
			if w == path.Holds {
				v.Holding = append(v.Holding, row)
			} else {
				v.Rows = append(v.Rows, row)
			}
		}
	}
	return v
}

// joined puts words between what is known of some parts; nothing where nothing is.
func joined(between string, parts ...string) string {
	return strings.Join(slices.DeleteFunc(parts, func(p string) bool { return p == "" }), between)
}

// signKey are the signs of the drawing with their words.
func signKey() (out []page.PartHeadView) {
	for _, w := range []path.Word{path.Holds, path.Tight, path.GivesWay, path.NotKnown, draw.Missing} {
		out = append(out, page.PartHeadView{Sign: draw.Sign(w), Word: word(state{Word: w})})
	}
	return out
}
