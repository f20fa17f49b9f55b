package ready

import (
	"duskweight/internal/model/lift"
	"duskweight/internal/model/reason"
	"duskweight/internal/model/source"
	"duskweight/internal/model/unit"
	"duskweight/internal/say"
)

// asked makes a reason of a question about the place; none for the word Yes.
func asked(id string, w reason.Word, path, wrong, open, mend string, forbids bool, ref source.Ref) []reason.Reason {
	if w == reason.Yes {
		return nil
	}
	r := reason.Reason{ID: id, Word: w, Path: path, Say: say.That("%s", wrong), Mend: say.That("%s", mend), Clears: answerOr(w), Forbids: forbids, Source: ref}
	if w == reason.NotKnown {
		r.Say = say.That("%s", open)
	}
	return []reason.Reason{r}
}

// peopleRide is a hoist of which nobody said that it carries no person. One that does is refused as a document.
func peopleRide(c Case) []reason.Reason {
	return asked("people_ride", reason.YesNo(c.Hoist.Site.CarriesPeople, unit.Yes), "site.carries_people",
		"This plan says that the hoist carries people. Nobody may ride on it.", "Whether the hoist ever carries a person is not known. Nobody may ride on it.",
		"Answer that it carries nobody.", true, source.FromMemory.At("EN 14492-2, scope"))
}

// fence is the least height of a fence that keeps children out, m (our own judgement).
const fence = 1.8

// peopleNear is a place that children or animals reach, with neither a fence nor a locked room.
func peopleNear(c Case) []reason.Reason {
	s := c.Hoist.Site
	if s.Barrier == lift.BarrierLockedRoom || s.Barrier == lift.BarrierFence {
		return nil
	}
	rs := asked("people_near", reason.YesNo(s.Children, unit.Yes), "site.children",
		"Children or animals can come under the mass.", "Whether children or animals can come under the mass is not known.",
		"Lock the room, or put a fence round it.", true, source.FromMemory.At("ISO 12100"))
	for i := range rs {
		rs[i].Mend = say.That("Lock the room, or put a fence round it that is at least %s high.", say.Height(fence))
	}
	return rs
}

// peopleBelow is somebody who lives under or behind the hoist.
func peopleBelow(c Case) []reason.Reason {
	return asked("people_below", reason.YesNo(c.Hoist.Site.LivesBelow, unit.Yes), "site.lives_below",
		"Somebody lives below or behind the hoist.", "Whether somebody lives below or behind the hoist is not known.",
		"Build it elsewhere.", true, source.FromMemory.At("ISO 12100"))
}

// floorBelow is a floor over a room, pipes or a tank that nobody secured.
func floorBelow(c Case) []reason.Reason {
	s := c.Hoist.Site
	if s.FloorBelow == lift.FloorSolidGround || s.BelowSecured == unit.Yes {
		return nil
	}
	return asked("floor_below", reason.Tried(s.FloorBelow != "", true), "site.floor_below",
		"A mass that falls goes through the floor.", "What is under the floor is not known: a mass that falls may go through it.",
		"Empty and lock the room below, and move pipes and tanks.", true, source.CommonPractice.Whole())
}

// keepOut is a distance that everybody keeps and nobody knows: the size of the mass is missing, or the height of a frame on
// its own posts, which may topple.
func keepOut(c Case) []reason.Reason {
	h := c.Hoist
	path := ""
	switch {
	case h.Structure.RestsOn == lift.RestsOnOwnPostsOnGround && !h.Site.FrameHeight.Is:
		path = "site.frame_height_m"
	case c.Hazards.AtLeast && !h.Site.LoadWidth.Is:
		path = "site.load_width_m"
	case c.Hazards.AtLeast && !h.Site.LoadHeight.Is:
		path = "site.load_height_m"
	case c.Hazards.AtLeast:
		path = "site.frame_height_m"
	default:
		return nil
	}
	return asked("keep_out", reason.NotKnown, path, "", "How far everybody must stay away while the mass is up is not known.", "Measure the frame, from the ground to its top, and the mass.", false, source.Derivation.At("circle of a frame that topples"))
}

// owner is a structure whose owner was not asked.
func owner(c Case) []reason.Reason {
	if o := c.Hoist.Site.Owner; o == lift.ConsentOwn || o == lift.ConsentAgreed {
		return nil
	}
	r := asked("owner", reason.NotKnown, "site.owner", "", "Whether the owner of the structure agrees is not known.", "Ask the owner.", false, source.CommonPractice.Whole())
	r[0].Clears = reason.Person
	return r
}

// helper is a hoist that is lifted alone.
func helper(c Case) []reason.Reason {
	if c.Hoist.Site.Helper == unit.Yes {
		return nil
	}
	return asked("helper", reason.NotKnown, "site.helper", "", "Nobody is named to come and help.", "Do not lift alone: a second person with a phone waits outside the keep-out.", false, source.CommonPractice.Whole())
}

// selfStart is a hoist that starts by itself with no guard against it.
func selfStart(c Case) []reason.Reason {
	s := c.Hoist.Site
	if s.SelfStartGuard == unit.Yes {
		return nil
	}
	return asked("self_start", reason.YesNo(s.SelfStart, unit.Yes), "site.self_start",
		"The hoist can start by itself.", "Whether the hoist can start by itself is not known.",
		"Use a switch that locks, no restart after a power loss, a warning before it moves, and a stop that sets the brake.", false, source.FromMemory.At("ISO 14118"))
}

// wayDown is a mass that nobody can let down with dead power.
func wayDown(c Case) []reason.Reason {
	s := c.Hoist.Site
	if s.WayDown != "" && s.WayDown != lift.DownNone && s.ComesDown != "" {
		return nil
	}
	path := "site.way_down"
	if s.ComesDown == "" {
		path = "site.comes_down_without_power"
	}
	return asked("way_down", reason.NotKnown, path, "", "How the mass comes down without power is not known.",
		"Plan it before the first lift: a hand crank, the brake opened by hand, or another hoist.", false, source.FromMemory.At("ISO 12100"))
}
