package model

import (
	"fmt"
	"strings"

	"duskweight/internal/model/lift"
	"duskweight/internal/model/load"
	"duskweight/internal/model/sun"
	"duskweight/internal/model/unit"
	"duskweight/internal/say"
)

// Limits on how much one document may hold, so that a page stays a page. Whoever makes a variant or a name obeys them,
// so that what was exported can be imported.
const (
	MaxVariants = 40  // in one project
	MaxName     = 200 // letters of a name
	maxStores   = 8
	maxRows     = 200
)

// FullProject is the problem of a project that has as many variants as it may have.
func FullProject(variants int) Problems {
	return Problems{{Path: "variants", Say: say.Words(fmt.Sprintf("at most %d variants in one project; these are %d", MaxVariants, variants))}}
}

// FitName puts words behind a name, which is shortened where the whole would be longer than a name may be.
func FitName(name, behind string) string {
	letters := []rune(name)
	return string(letters[:min(len(letters), MaxName-len([]rune(behind)))]) + behind
}

// Check returns everything that is wrong with a document, all at once, each with its path: numbers out of their range,
// words that are not on their list, and values that contradict each other. A value that is not known is never wrong.
func Check(doc Document) Problems {
	ps := CheckProject(doc.Project).Moved("project")
	if n := len(doc.Variants); n > MaxVariants {
		ps = append(ps, FullProject(n)...)
	}
	for i, v := range doc.Variants {
		ps = append(ps, CheckVariant(v).Moved(fmt.Sprintf("variants[%d]", i))...)
	}
	return ps
}

// CheckProject returns what is wrong with the project alone; paths are inside it.
func CheckProject(p Project) Problems {
	ps := CheckRanges(p)
	ps = append(ps, named(p.Name, "name")...)
	if len(p.Load.Appliances) > maxRows {
		ps.Add("load.appliances", fmt.Sprintf("at most %d appliances", maxRows))
	}
	for i, a := range p.Load.Appliances {
		if why, no := load.Refused(a); no {
			ps.Add(fmt.Sprintf("load.appliances[%d].purpose", i), why)
		}
	}
	ps = append(ps, checkLoad(p.Load).Moved("load")...)
	return append(append(ps, checkShelf(p.Shelf).Moved("shelf")...), checkPlace(p)...)
}

func checkPlace(p Project) Problems {
	var ps Problems
	switch m := p.Place.Monthly; {
	case p.Place.Sky == sun.SkyMonthly && m == nil:
		ps.Add("place.monthly", "give the twelve monthly means, or choose another way to know the sky")
	case m != nil:
		for i := range 12 {
			if m.TMin[i] > m.TMean[i] || m.TMean[i] > m.TMax[i] {
				ps.Add(fmt.Sprintf("place.monthly.t_mean_c[%d]", i), fmt.Sprintf("the mean of month %d must lie between its daily lowest and its daily highest", i+1))
			}
		}
	}
	if (p.Place.Sky == sun.SkyFile || p.Place.Sky == sun.SkyFiles) && p.Weather == nil {
		ps.Add("place.sky", "the project has no weather file yet: read one in, or choose another way to know the sky")
	}
	if snow, times := p.Place.SnowFall, p.Place.SnowTimes; snow != nil && times != nil {
		for i := range snow {
			if snow[i] > 0 && times[i] == 0 {
				ps.Add(fmt.Sprintf("place.snow_events[%d]", i), fmt.Sprintf("month %d has snow, so its number of snowfalls is at least 1", i+1))
			}
		}
	}
	return append(ps, checkFiles(p)...)
}

// CheckVariant returns what is wrong with a variant alone; paths are inside it.
func CheckVariant(v Variant) Problems {
	ps := CheckRanges(v)
	ps = append(ps, named(v.Name, "name")...)
	if len(v.Stores) > maxStores {
		ps.Add("stores", fmt.Sprintf("at most %d stores in one variant", maxStores))
	}
	if len(v.Panels) > maxRows || len(v.Parts) > maxRows {
		ps.Add("parts", fmt.Sprintf("at most %d rows in a list", maxRows))
	}
	for i, p := range v.Parts {
		ps = append(ps, checkPrices(p).Moved(fmt.Sprintf("parts[%d]", i))...)
	}
	ps = append(ps, checkBackup(v.Backup).Moved("backup")...)
	for i, s := range v.Stores {
		if k := s.Kind(); k != nil {
			ps = append(ps, s.Design().Check().Moved(k.Path(i))...)
		} else {
			ps.Add(fmt.Sprintf("stores[%d]", i), "a store is either "+StoreKinds()+": give exactly one of them")
		}
	}
	return ps
}

func named(name, path string) Problems {
	switch {
	case strings.TrimSpace(name) == "":
		return Problems{{Path: path, Say: say.Words("give it a name")}}
	case len([]rune(name)) > MaxName:
		return Problems{{Path: path, Say: say.That("at most %s letters", MaxName)}}
	}
	return nil
}

// checkHoist returns the contradictions inside one hoist. What is merely dangerous is a check or a flag of the result,
// not a refusal: the user must see it fail.
func checkHoist(h lift.Hoist) Problems {
	var ps Problems
	add := func(path, format string, args ...any) { ps.Add(path, fmt.Sprintf(format, args...)) }
	if d, D := h.Rope.Diameter, h.Drum.Diameter; d.Is && D.Is && D.Val <= d.Val {
		drum, rope := say.Compared(D.Val, d.Val)
		ps.Tell("drum.diameter_m", say.That("the drum (%s) must be thicker than its rope (%s)", drum, rope))
	}
	if f, D := h.Drum.Flange, h.Drum.Diameter; f.Is && D.Is && f.Val < D.Val {
		add("drum.flange_diameter_m", "the flanges must be larger than the bare drum")
	}
	if w, d := h.Drum.Width, h.Rope.Diameter; w.Is && d.Is && w.Val < d.Val {
		add("drum.width_m", "the drum must be wider than its rope is thick")
	}
	if n, k, s := h.Reeving.RopeParts, h.Reeving.LeadSheaves, len(h.Reeving.Sheaves); n.Is && k.Is && s > int(k.Val+n.Val)-1 {
		add("reeving.sheaves", "the rope passes %d pulleys (those between mass and drum and those between the ropes that carry the mass); the list has %d", int(k.Val+n.Val)-1, s)
	}
	if l, t, n := h.Rope.Length, h.Travel, h.Reeving.RopeParts; l.Is && t.Is && n.Is && float64(l.Val) < float64(t.Val)*float64(n.Val) {
		ps.Tell("rope.length_m", say.That("the rope is too short: %s × the travel is %s before any of it reaches the drum", n.Val, say.Distance(t.Val*unit.Length(n.Val)).Up()))
	}
	ps = append(ps, checkSafety(h)...)
	ps = append(ps, checkReeving(h)...)
	ps = append(ps, checkMachine(h.Machine)...)
	ps = append(ps, checkPosts(h.Structure)...)
	if b := h.Structure.Beam; b.Span.Is && b.From.Is && b.From.Val > b.Span.Val {
		add("structure.beam.load_from_support_m", "the pulley cannot hang beyond the span")
	}
	if b := h.Base; b.Mass.Is && b.LoosePart.Is && b.LoosePart.Val > b.Mass.Val {
		add("base.loose_mass_kg", "the loose weights are a part of the base's mass and cannot be more than it")
	}
	if len(h.Mass) > maxRows || len(h.Train.Stages) > 20 || len(h.Lower.Loads) > 50 {
		add("mass", "too many rows in a list of this hoist")
	}
	for i, s := range h.Train.Stages {
		ps = append(ps, checkStage(s).Moved(fmt.Sprintf("train.stages[%d]", i))...)
	}
	return ps
}
