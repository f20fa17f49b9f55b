package model

import (
	"fmt"
	"strings"
)

// energyOnly are the values of a hoist that move energy and nothing that bears or holds: a typical one of them makes the
// answer rough, and nothing unsafe.
var energyOnly = map[string]bool{"units": true, "raise.drive_efficiency": true, "raise.auxiliary_w": true, "lower.auxiliary_w": true}

// typicalReason tells how many values of the hoist at that place of the variant are typical and not yet the builder's
// own; it is empty where there are none. A plan that rests on such a value is not ready: the sheet is for the thing that
// hangs, and the thing that is usual does not hang there.
func (v Variant) typicalReason(i int) string {
	n := 0
	for path, o := range v.Origins {
		rest, ok := strings.CutPrefix(path, fmt.Sprintf("stores[%d].hoist.", i))
		if ok && o.Kind == "typical" && !energyOnly[rest] {
			n++
		}
	}
	switch n {
	case 0:
		return ""
	case 1:
		return "Whether one typical value is true of your hoist. Confirm it on its page, or type your own."
	}
	return fmt.Sprintf("Whether %d typical values are true of your hoist. Confirm them on its page, or type your own.", n)
}

// onlyTypical makes a hoist that was ready not ready for that reason; empty is none.
func (r *HoistResult) onlyTypical(reason string) {
	if reason == "" || r.Ready == "no" {
		return
	}
	r.Ready = "not_known"
	r.Reasons = append(r.Reasons, reason)
}
