package path

import (
	"duskweight/internal/model/lift"
	"duskweight/internal/model/source"
	"duskweight/internal/say"
)

// limb is a part of the load path that is looked at as one, with the ids of its checks, the first for a line of its own.
// lines are those of its parts whose id other limbs share. Room on the drum and side angle of the rope are sizes of the
// design that stay what they are: they wait for no look.
type limb struct {
	key, name  string
	ids, lines []string
	found      func(lift.Look) lift.Condition
}

func limbs() []limb {
	return []limb{
		{"rope", "the rope", []string{"rope", "bend_ratio", "slack", "brake_catch"}, []string{stallRope}, func(l lift.Look) lift.Condition { return l.Rope }},
		{"knots", "the knots and ends", []string{"knot"}, nil, func(l lift.Look) lift.Condition { return l.Knots }},
		{"pulleys", "the pulleys and what holds them", []string{"head_sheave", "redirect_sheave", "hanger"}, nil, func(l lift.Look) lift.Condition { return l.Pulleys }},
		{"pins", "pins, drum, gears, brake and stops", []string{"cross_pin", "shaft", "set_screw", "coupling", "drum_hub", "gear_tooth", "case_fasteners", "holds", "dead_wraps", "stops", "brake_catch"}, []string{roomAbove}, func(l lift.Look) lift.Condition { return l.Pins }},
		{"container", "the container of the mass", []string{"container"}, nil, func(l lift.Look) lift.Condition { return l.Container }},
		{"base", "base, posts and beam", []string{"base_uplift", "base_sliding", "base_overturning", "base_board", "ground", "post", "beam"}, []string{stallBase}, func(l lift.Look) lift.Condition { return l.Base }},
	}
}

// has reports whether a check stands for this part.
func (b limb) has(c Check) bool { return contains(b.ids, c.ID) || contains(b.lines, c.Part) }

// afterShock takes back what the checks say of each part that was not looked at since a fall or a shock: it is not
// known, unless it gives way anyhow. A part that was found damaged gives way until it is renewed. A part without a check
// of its own gets a line.
func afterShock(failures []lift.Failure, checks []Check) []Check {
	for _, b := range limbs() {
		damaged, open := b.state(failures)
		if damaged == "" && len(open) == 0 {
			continue
		}
		met := false
		for i := range checks {
			if b.has(checks[i]) {
				met = true
				shaken(&checks[i], damaged, open)
			}
		}
		if !met {
			c := newLine(b.ids[0], b.name, "looked at after every fall or shock", source.CommonPractice.At("after a fall or a shock")).c
			shaken(&c, damaged, open)
			checks = append(checks, c)
		}
	}
	return checks
}

// state is when the part was found damaged, "" for never, and the paths of the looks that are still owed.
func (b limb) state(failures []lift.Failure) (damaged string, open []string) {
	for i, f := range failures {
		switch found := b.found(f.Look); {
		case found == "" && f.Shaken():
			open = append(open, at("trials.failures", i, "looked."+b.key))
		case found == lift.PartDamaged: // whatever made it so
			damaged = when(f)
		}
	}
	return damaged, open
}

// shaken rewrites one line.
func shaken(c *Check, damaged string, open []string) {
	switch {
	case damaged != "":
		c.forget()
		c.Word, c.Say = GivesWay, say.That("Found damaged %s. Renew it before anything hangs, then say so under Tests and repairs.", damaged)
	case c.Word != GivesWay:
		c.forget()
		c.Word, c.Say = NotKnown, say.That("Not known since a fall or a shock. Look at it, then say what you found under Tests and repairs.")
		c.Missing = append(c.Missing, open...)
	}
}

func when(f lift.Failure) string {
	what, last := "after a fall or a shock", "after the fall or shock of "
	if !f.Shaken() && f.What == "" {
		what, last = "at a look", "at the look of "
	}
	if f.Date == "" {
		return what
	}
	return last + f.Date
}
