package model

import (
	"fmt"

	"duskweight/internal/model/load"
	"duskweight/internal/model/reason"
	"duskweight/internal/model/source"
	"duskweight/internal/say"
)

// loadOpen is a device or a standing use of which nobody says how much it uses, or when: at worst it is on at the peak, and
// more than the battery's fuse, cable and board withstand.
func loadOpen(j judgement) []reason.Reason {
	if at, _ := banks(j.result.Stores); len(at) == 0 {
		return nil
	}
	var out []reason.Reason
	add := func(path, name, what string) {
		out = append(out, ask("peak_fuse", path, source.Derivation.Whole(), say.That("%s %s uses is not known, and so whether fuse, cable and inverter carry everything that is on together.", what, name),
			say.That("Read it on its label, or give the most that it can be.")))
	}
	l := j.ground.Project.Load
	for i, a := range l.Appliances {
		if _, refused := load.Refused(a); refused || a.Count.Is && a.Count.Val == 0 {
			continue
		}
		switch {
		case !a.Running().Is:
			add(atAppliance(i, "power_w"), nameOf(a), "How much")
		case !a.Count.Is:
			add(atAppliance(i, "count"), nameOf(a), "How much all of")
		case a.Running().Val > 0 && !a.Timed():
			out = append(out, ask("peak_fuse", atAppliance(i, "from_s"), source.Derivation.Whole(), say.That("When %s is on is not known, and so whether fuse, cable and inverter carry everything that is on together.", nameOf(a)),
				say.That("Give its hours, or all day.")))
		}
	}
	for i, s := range l.Standing {
		if !s.Power.Is {
			add(fmt.Sprintf("load.standing[%d].power_w", i), orName(s.Name, "a standing device"), "How much")
		}
	}
	return out
}

func orName(name, without string) string {
	if name == "" {
		return without
	}
	return name
}
