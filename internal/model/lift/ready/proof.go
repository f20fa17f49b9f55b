package ready

import (
	"strings"

	"duskweight/internal/model/lift"
	"duskweight/internal/model/lift/path"
	"duskweight/internal/model/reason"
	"duskweight/internal/model/source"
	"duskweight/internal/model/unit"
	"duskweight/internal/say"
)

// A proof is a load test of a part that nobody rates. It clears the "not known" of the part's own line and never one that
// gives way; rope, knots, bags, holds as a number, stops, geometry, the place and everything electrical are never proved so.

// provable reports whether a load test may stand for the rating of a part, by the id of its line.
func provable(h lift.Hoist, id string) bool {
	switch id {
	case "drum_hub", "coupling", "cross_pin", "gear_tooth", "case_fasteners", "head_sheave", "redirect_sheave", "base_board", "base_uplift", "base_sliding", "holds", "bracing":
		return true
	case "hanger":
		return h.Structure.HangerFixing != lift.FixingAnchorInMasonry && h.Structure.HangerFixing != lift.FixingScrewedIntoWood
	case "container":
		return h.Container.Kind == lift.ContainerCage || h.Container.Kind == lift.ContainerCrate
	case "beam":
		return h.Structure.RestsOn == lift.RestsOnOwnPostsOnGround && h.Structure.Beam.Class == ""
	case "post":
		return h.Structure.RestsOn == lift.RestsOnOwnPostsOnGround
	}
	return false
}

// turned are the parts that a torque at the drum loads.
func turned(id string) bool {
	switch id {
	case "drum_hub", "coupling", "cross_pin", "gear_tooth", "case_fasteners", "holds":
		return true
	}
	return false
}

// ask is what a load test must reach: times the working load, and how long. 2006/42/EC annex I 4.1.2.3 asks for a static
// test of 1.5 of hand-driven machines and of lifting accessories; 2.0 of wood is about k_mod 1.1 over 0.6; 3.0 of plastic and
// all times are our own judgement. Printed, glued and fibre parts between mass and brake are never proved.
func ask(madeOf lift.ProofMaterial, id string) (factor float64, held unit.Duration, months int, lifts unit.Count, ok bool) {
	const hour = 3600
	switch madeOf {
	case lift.MadeMetal:
		return 1.5, hour / 4, 12, 500, true
	case lift.MadeWood:
		return 2.0, 24 * hour, 3, 100, !turned(id)
	case lift.MadeGround:
		return 2.0, 24 * hour, 3, 100, id == "base_uplift" || id == "base_sliding" || id == "bracing"
	case lift.MadePlastic, lift.MadePrinted:
		return 3.0, 24 * hour, 3, 100, id == "gear_tooth" || id == "coupling" || id == "case_fasteners"
	}
	return 0, 0, 0, 0, false
}

// Over this energy or mass a qualified person sees a test with the mass on the rope (our own judgement). A lever and a bench
// lift nothing.
const (
	alone     = 5000 // J
	aloneMass = 250  // kg
)

// sideTest is how many times the wanted side force the frame is pulled with.
const sideTest = 1.5

// proved is a line that is not known, cleared by a proof where one is valid.
func (c Case) proved(k path.Check, r reason.Reason) []reason.Reason {
	for _, p := range k.Missing {
		if !isStrength(p) && !strings.HasSuffix(p, "class") {
			return []reason.Reason{r} // what is missing is no strength
		}
	}
	return c.prove(k.ID, r)
}

// prove clears a reason by a valid proof of its part: then it is proven, up to a mass and a day. A proof that has run out
// leaves the reason and says so.
func (c Case) prove(id string, r reason.Reason) []reason.Reason {
	if !provable(c.Hoist, id) {
		return []reason.Reason{r}
	}
	lapsed := ""
	for i, p := range c.Hoist.Trials.Proofs {
		if string(p.Part) != id {
			continue
		}
		at := func(field string) string { return "trials.proofs[" + itoa(i) + "]." + field }
		good, why := c.valid(id, p)
		if !good {
			if why != "" {
				lapsed = at(why)
			}
			continue
		}
		if mass, ok := c.carries(id, p); ok {
			_, _, months, _, _ := ask(p.MadeOf, id)
			until := reason.Day(p.Date).Months(months)
			r.Word, r.Clears, r.Path, r.Use = reason.Proven, reason.RatedPart, at("date"), unit.Known[unit.Ratio]{}
			r.Mass, r.Until = unit.Of(min(mass, c.Plan.Drive.Mass.Or(mass))), until // nothing else was judged for more than the plan hangs
			r.Say = say.That("A load test proved this part for %s. The proof is valid until %s, and ends with any change or shock.", say.Mass(mass).Down(), string(until))
			r.Head = say.Sentence{}
			r.Mend = say.That("Keep everybody away while the mass is up, and lower it when nobody is there. Only a rated part clears this.")
			return []reason.Reason{r}
		}
		r.Say = say.That("%s The load test was too small for this part.", r.Say)
	}
	if lapsed == "" {
		return []reason.Reason{r}
	}
	return []reason.Reason{r, {ID: "proof_lapsed", Word: reason.NotKnown, Path: lapsed, Clears: reason.Proof,
		Say:  say.That("The load test of a part has run out, or does not count as it was written down."),
		Mend: say.That("Repeat it, and let a second adult see and sign it."), Source: source.Judgement.At("proof by test")}}
}

// valid reports whether a proof counts on the day, and the field that keeps it from it.
func (c Case) valid(id string, p lift.Proof) (ok bool, why string) {
	_, held, months, lifts, may := ask(p.MadeOf, id)
	day, isDay := reason.DayOf(p.Date)
	energy := c.Hazards.DropEnergy
	mass, _ := c.heaviest()
	big := p.On == lift.OnRope && (!energy.Is || energy.Val > alone || mass > aloneMass)
	switch {
	case !may:
		return false, "made_of"
	case p.Moved != unit.No:
		return false, "moved"
	case p.Measured == "":
		return false, "measured_with"
	case id == "bracing" && p.HeldFor.Val < 24*3600 && p.MadeOf == lift.MadeGround, !p.HeldFor.Is || p.HeldFor.Val < held:
		return false, "held_s"
	case !isDay || c.On == "" || day.After(c.On) || c.On.After(day.Months(months)):
		return false, "date"
	case !p.Lifts.Is || p.Lifts.Val > lifts:
		return false, "lifts_since"
	case p.By == "" || p.Witness == "" || strings.EqualFold(strings.TrimSpace(p.By), strings.TrimSpace(p.Witness)):
		return false, "witness"
	case big && p.Expert == "":
		return false, "qualified"
	case c.Hoist.Site.Barrier != lift.BarrierLockedRoom && c.Hoist.Site.Barrier != lift.BarrierFence:
		return false, "date"
	case c.shockedSince(day):
		return false, "date"
	}
	return true, ""
}

// shockedSince reports whether the mass fell or jerked on or after a day, or on a day that nobody wrote down.
func (c Case) shockedSince(day reason.Day) bool {
	for _, f := range c.Hoist.Trials.Failures {
		at, ok := reason.DayOf(f.Date)
		if f.Shaken() && (!ok || !day.After(at)) {
			return true
		}
	}
	return false
}

// carries is the mass that a proof stands for; false where the test was smaller than what the plan asks for: the larger of
// factor times jerks times the load at rest, and 1.1 times the largest event, all at the heaviest that may hang. A test with
// the mass on the rope counts only where nothing else gives way under it.
func (c Case) carries(id string, p lift.Proof) (unit.Mass, bool) {
	factor, _, _, _, _ := ask(p.MadeOf, id)
	if id == "bracing" {
		return c.carriesSide(p)
	}
	s, ok := path.StillOf(id, c.Heavy.Hoist, c.Heavy.Drive)
	if !ok {
		return 0, false
	}
	had := 0.0
	switch {
	case p.On == lift.OnRope && p.Load.Is:
		had = float64(p.Load.Val) / float64(s.Weight)
		if !c.bears(id, unit.Mass(float64(p.Load.Val)/unit.G)) {
			return 0, false
		}
	case p.On == "":
		return 0, false
	case turned(id) && p.Torque.Is:
		had = float64(p.Torque.Val) / float64(s.Torque)
	case !turned(id) && p.Load.Is:
		had = float64(p.Load.Val) / float64(s.Force)
	}
	const grain = 1e-9
	if had+grain < testTimes(factor, s) {
		return 0, false
	}
	mass, _ := c.heaviest()
	return unit.Mass(had / (factor * float64(s.Jerks)) * float64(mass)), true
}

// carriesSide is a pull at the head of the frame, 1.5 times what pushes it sideways at the worst.
func (c Case) carriesSide(p lift.Proof) (unit.Mass, bool) {
	want, known := c.sidePull()
	mass, ok := c.heaviest()
	if !ok || !known || p.Load.Val < want || p.Measured != lift.MeasuredWithLoadCell {
		return 0, false
	}
	return mass, true
}

// sidePull is the force that a frame is pulled with at its head; false where it is not known.
func (c Case) sidePull() (unit.Force, bool) {
	s := path.SidewaysOf(c.Heavy.Hoist, c.Heavy.Drive)
	quake := c.Hoist.Site.Earthquake
	if quake == "" {
		quake = lift.EarthquakesStrong
	}
	want := sideTest * SideForce(s, quake, c.Hoist.Site.Outdoors != unit.No, c.Hoist.Site.WindPlan == unit.Yes)
	return want, want > 0 && len(s.Missing) == 0
}

// bears reports whether every part but one withstands a test load on the rope: twice on breaking, once on yield, up to twice
// the working load of rated hardware.
func (c Case) bears(id string, mass unit.Mass) bool {
	h := c.Heavy.Hoist
	h.Mass = []lift.Piece{{Mass: unit.Of(mass), Weighed: lift.ByScale}}
	w := worked(h)
	for _, k := range w.Checks {
		had, ok := k.Had.Value()
		if k.ID == id || !ok {
			continue
		}
		least := 1.0
		switch k.ID {
		case "rope", "knot", "slack", "brake_catch", "overhoist":
			least = 2
		case "head_sheave", "redirect_sheave", "hanger", "container":
			least = 0.5
		case "holds", "stops", "dead_wraps", "fleet_angle", "bend_ratio", "drum_capacity":
			continue
		}
		if float64(had) < least {
			return false
		}
	}
	return true
}

func itoa(i int) string { return say.That("%s", i).String() }
