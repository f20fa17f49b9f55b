package model

import (
	"slices"
	"testing"

	"duskweight/internal/model/reason"
)

// RuleNames are the names of all rules of a variant with a store of each kind.
func RuleNames() []string {
	var out []string
	for _, all := range [][]rule{rules(), (&HoistResult{}).Rules(judgement{}, 0), (&CellsResult{}).Rules(judgement{result: &VariantResult{Stores: make([]StoreResult, 1)}}, 0)} {
		for _, r := range all {
			out = append(out, r.name)
		}
	}
	return out
}

// JudgeWithout judges a variant as Judge does, with one rule switched off.
func JudgeWithout(name string, g Ground, v Variant, r *VariantResult, on reason.Day) Readiness {
	j := judgement{g, v, r, on}
	return judgeBy(slices.DeleteFunc(allRules(j), func(r rule) bool { return r.name == name }), j)
}

// electricRules are the rules of line, panels, peak and loads, those of each battery, and of a hoist those about what flows.
func electricRules(j judgement) []rule {
	all := lineRules()
	for i, s := range j.result.Stores {
		rules := s.Part.Rules(j, i)
		if h := HoistOf(s); h != nil {
			alone := h.alone("", i)
			rules = slices.DeleteFunc(rules, func(r rule) bool {
				flows := r.name == "shunt" || r.name == "brake_power"
				return !flows && slices.ContainsFunc(alone, func(a rule) bool { return a.name == r.name })
			})
		}
		all = append(all, inStore(s.Kind.Path(i), rules)...)
	}
	return all
}

// ElectricReasons are the reasons of the rules about what flows.
func ElectricReasons(g Ground, v Variant, r *VariantResult) []reason.Reason {
	j := judgement{g, v, r, g.On}
	return judgeBy(electricRules(j), j).Because
}

// LineDocuments are the cases of line, battery and loads, by their id.
func LineDocuments(t *testing.T) map[string]Document {
	all, out := readLineCases(t), map[string]Document{}
	for _, c := range all.Cases {
		out[c.ID] = c.document(t, all.Bases)
	}
	return out
}

// DeviceKinds lists the kinds of device.
func DeviceKinds() []DeviceKind {
	return []DeviceKind{Panels, StringFuses, PanelCable, Charger, TheLine, Inverter, Devices, Battery, BatteryFuse, BatteryCable, Board,
		MotorFuse, MotorCable, MotorSwitch, MotorSupply, BrakeCoil, MotorLamps, Shunt}
}

// Fresh is the ground with nothing kept of any panels.
func (g Ground) Fresh() Ground {
	g.harvests = new(harvests)
	return g
}
