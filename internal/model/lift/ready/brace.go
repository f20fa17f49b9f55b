package ready

import (
	"duskweight/internal/model/lift"
	"duskweight/internal/model/lift/path"
	"duskweight/internal/model/reason"
	"duskweight/internal/model/source"
	"duskweight/internal/model/unit"
	"duskweight/internal/say"
)

// shaking is the share of the weight that an earthquake pushes sideways with (from memory; the local code decides).
func shaking(earthquake lift.Earthquakes) float64 {
	switch earthquake {
	case lift.EarthquakesSome:
		return 0.2
	case lift.EarthquakesStrong:
		return 0.4
	}
	return 0
}

// SideForce is what pushes a frame sideways: the rope's own pull with an earthquake, c times the weight of mass, beam and
// half the posts, or outdoors with a storm on beam and half the posts and the wind on the mass.
func SideForce(s path.Sideways, earthquake lift.Earthquakes, outdoors, windPlan bool) unit.Force {
	quake := shaking(earthquake) * unit.G * float64(s.Hung+s.Beam+s.Posts/2)
	wind := 0.0
	if outdoors {
		onLoad := path.StormPressure
		if windPlan {
			onLoad = path.BreezePressure
		}
		wind = float64(path.StormPressure)*float64(s.BeamArea+s.PostArea/2) + float64(onLoad)*float64(s.LoadArea)
	}
	return s.Rope + unit.Force(max(quake, wind))
}

// bracing sets what pushes the frame of its own posts sideways against what it is braced for.
func bracing(c Case) []reason.Reason {
	h := c.Hoist
	if h.Structure.RestsOn != lift.RestsOnOwnPostsOnGround {
		return nil
	}
	s := path.SidewaysOf(c.Heavy.Hoist, c.Heavy.Drive)
	bestQuake, worstQuake := h.Site.Earthquake, h.Site.Earthquake
	if h.Site.Earthquake == "" {
		bestQuake, worstQuake = lift.EarthquakesNone, lift.EarthquakesStrong
	}
	plan := h.Site.WindPlan == unit.Yes
	best := SideForce(s, bestQuake, h.Site.Outdoors == unit.Yes, h.Site.WindPlan != unit.No)
	worst := SideForce(s, worstQuake, h.Site.Outdoors != unit.No, plan)
	pull, ok := h.Structure.SidePull.Value()
	matters := worst > s.Rope // the rope's own pull is a line of the load path
	bad := len(s.Missing) > 0 || !ok
	w := reason.Tried(ok && best > pull, matters && (bad || worst > pull))
	if w == reason.Yes {
		return nil
	}
	r := reason.Reason{ID: "bracing", Word: w, Path: "structure.side_pull_n", Clears: answerOr(w), Source: source.FromMemory.At("earthquake and wind on a frame; the local code decides"),
		Say:  say.That("Earthquake or wind pushes the frame with %s, and it is braced for %s.", say.Force(best), say.Force(pull).Down()),
		Mend: say.That("Brace it. Your local building code decides.")}
	if w == reason.NotKnown {
		switch {
		case h.Site.Earthquake == "":
			r.Path = "site.earthquake"
		case h.Site.Outdoors == "":
			r.Path = "site.outdoors"
		case len(s.Missing) > 0:
			r.Path = s.Missing[0]
		}
		r.Say = say.That("Earthquake or wind may push the frame with %s, and whether it withstands that is not known.", say.Force(worst))
		return c.prove("bracing", r)
	}
	return []reason.Reason{r}
}
