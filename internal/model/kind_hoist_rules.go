package model

import (
	"strings"

	"duskweight/internal/model/cell"
	"duskweight/internal/model/lift"
	"duskweight/internal/model/lift/ready"
	"duskweight/internal/model/reason"
	"duskweight/internal/model/source"
	"duskweight/internal/say"
)

// Rules are those of a hoist alone and those of the line that feeds it.
func (r *HoistResult) Rules(j judgement, i int) []rule {
	line := func(name string, look func(judgement, *HoistResult) []reason.Reason) rule {
		return rule{name, func(j judgement) []reason.Reason { return look(j, r) }}
	}
	return append(r.alone(j.on, i), line("volts_feed", voltsFeed), line("supply_cable", supplyCable), line("supply_fuse", supplyFuse), line("contacts", contacts))
}

// alone are the rules that need nothing but the hoist and the origins of its values.
func (r *HoistResult) alone(on reason.Day, i int) []rule {
	out := []rule{{"typical", func(j judgement) []reason.Reason { return typicalValues(j.variant, i) }},
		{"measured_differs", func(judgement) []reason.Reason { return measuredDiffers(r) }}}
	c := r.readyCase(on)
	for _, rule := range ready.Rules() {
		out = append(out, ruleOf(rule, c))
	}
	return out
}

func ruleOf(r ready.Rule, c ready.Case) rule {
	return rule{r.Name, func(judgement) []reason.Reason { return r.Look(c) }}
}

// judgeAlone judges the hoist at place i of a variant by the rules that need nothing else of it than the panels on its motor.
func (h *HoistResult) judgeAlone(v Variant, i int, on reason.Day) {
	rules := h.alone(on, i)
	if h.onPanels() {
		rules = append(rules, rule{"contacts", func(j judgement) []reason.Reason { return contacts(j, h) }})
	}
	j := judgeBy(inStore(HoistPath(i), rules), judgement{variant: v, result: &VariantResult{Stores: make([]StoreResult, i+1)}, on: on})
	h.Ready, h.Because = j.Ready, j.Because
}

// readyCase is a hoist as the rules of one hoist look at it.
func (h *HoistResult) readyCase(on reason.Day) ready.Case {
	fed := bySupply(h.Design)
	if h.Direct != nil && h.Direct.Known {
		fed = h.Direct.inFullSun(fed)
	}
	fed.Mass = h.weighed
	c := ready.New(fed, h.Drive, h.Checks, h.Hazards, on)
	usual := ready.Usual{Hub: h.usual.Hub}
	for _, one := range h.usual.Hoists {
		one.Raise, one.Mass = fed.Raise, fed.Mass
		usual.Hoists = append(usual.Hoists, one)
	}
	return c.Among(usual)
}

// relayOff is how far the voltage of a relay's motor may be off the line, our own judgement.
const relayOff = 0.15

// voltsFeed is a motor whose supply the line cannot give.
func voltsFeed(j judgement, h *HoistResult) []reason.Reason {
	line := j.variant.Controller.Line()
	if !h.Design.Raise.Voltage.Is {
		return nil
	}
	raise := h.Design.Raise
	v, word := raise.Voltage.Val, reason.Yes
	switch {
	case raise.Feed == lift.FeedRelay:
		word = reason.Tried(off(v, line, relayOff), off(v, line, relayOff))
	case raise.Feed == lift.FeedDrive && v > line && raise.Converter != lift.ConversionStepUp:
		word = reason.YesNo(raise.Converter, lift.ConversionStepDown)
	}
	return worded(word, reason.Reason{ID: "volts_feed", Path: "raise.voltage_v", Source: source.Judgement.Whole(),
		Say:  say.That("The line of %s cannot give the motor's supply %s.", say.Voltage(line), say.Voltage(v)),
		Mend: say.That("Use the line's voltage, or a converter that steps it up.")})
}

// checkWord is the word of readiness of a check.
func checkWord(c LineCheck) reason.Word {
	return reason.Tried(c.Word == GivesWay, c.Word == GivesWay || c.Word == NotKnown)
}

// supplyCable is a wire of the motor's supply that carries less than flows.
func supplyCable(_ judgement, h *HoistResult) []reason.Reason {
	if !h.onLine() {
		return nil
	}
	c, mend := h.wireCheck(), say.That("Use thicker wires.")
	if !h.Design.Raise.WireArea.Is {
		mend = say.That("Measure their cross-section.")
	}
	return worded(checkWord(c), reason.Reason{ID: "cable", Path: c.Path, Source: source.IEC60364.Whole(), Say: c.Say, Mend: mend})
}

// supplyFuse is a fuse of the motor's supply that lets its wires burn.
func supplyFuse(_ judgement, h *HoistResult) []reason.Reason {
	if !h.onLine() {
		return nil
	}
	path, raise := "raise.fuse_a", h.Design.Raise
	if !raise.Fuse.Is {
		return []reason.Reason{ask("fuse", path, source.CommonPractice.Whole(), say.That("Which fuse protects the wires to the motor is not known."), say.That("Put a fuse at the line, no larger than its wires carry."))}
	}
	if !raise.WireArea.Is {
		return nil // said by cable
	}
	least, most := cell.AmpacityEnds(raise.WireArea.Val)
	return worded(reason.Tried(raise.Fuse.Val > most, raise.Fuse.Val > least), reason.Reason{ID: "fuse", Path: path, Source: source.IEC60364.Whole(),
		Say: say.That("The fuse of %s lets the motor's wires burn: they carry %s.", say.Current(raise.Fuse.Val), say.Current(least).Down()), Mend: say.That("Use a smaller fuse or thicker wires.")})
}

// contacts is a switch that cannot break the current of the motor, or of the panels that feed it straight.
func contacts(_ judgement, h *HoistResult) []reason.Reason {
	if !h.onLine() && !h.onPanels() {
		return nil
	}
	c := h.switchCheck()
	return worded(checkWord(c), reason.Reason{ID: "contacts", Path: c.Path, Source: source.FromMemory.At("IEC 60947-3"), Say: c.Say,
		Mend: say.That("Use a switch or relay rated for it at direct current; the rating for alternating current does not count.")})
}

// typicalValues are the values of a hoist that are usual elsewhere and not yet the builder's own. A plan that rests on one
// is not ready: the sheet is for the thing that hangs, and what is usual does not hang there.
func typicalValues(v Variant, i int) []reason.Reason {
	paths := v.typicalPaths(i)
	if len(paths) == 0 {
		return nil
	}
	text := say.That("One typical value counts as if it were true of your hoist.")
	if n := len(paths); n > 1 {
		text = say.That("%s typical values count as if you had measured them.", n)
	}
	return []reason.Reason{{ID: "typical", Word: reason.NotKnown, Path: strings.TrimPrefix(paths[0], HoistPath(i)+"."), Clears: reason.Answer, Say: text,
		Mend: say.That("Confirm them on the page of the hoist, or type your own."), Source: source.Judgement.Whole()}}
}

// measuredDiffers is a last lift or a last way down far beside the plan.
func measuredDiffers(h *HoistResult) (out []reason.Reason) {
	for _, text := range doubts(bySupply(h.Design)) {
		out = append(out, reason.Reason{ID: "measured_differs", Word: reason.NotKnown, Path: "trials", Clears: reason.Change,
			Say: say.That("%s", text), Source: source.Judgement.Whole()})
	}
	return out
}
