package model

import (
	"fmt"
	"maps"
	"reflect"
	"slices"
	"strings"

	"duskweight/internal/model/lift"
	"duskweight/internal/model/unit"
)

// Shelf is the box of parts at hand, from which the hoists of a project may be put together.
type Shelf struct {
	Motors  []lift.Machine `json:"motors" say:"Motors at hand"`
	Stages  []SpareStage   `json:"stages" say:"Gear stages and gearboxes at hand"`
	Drums   []SpareDrum    `json:"drums" say:"Drums at hand, each with its shaft"`
	Ropes   []SpareRope    `json:"ropes" say:"Ropes at hand"`
	Pulleys []SparePulley  `json:"pulleys" say:"Pulleys at hand"`
	Panels  []SparePanel   `json:"panels" say:"Panels at hand"`
	Cells   []SpareCells   `json:"batteries" say:"Batteries at hand"`
}

// SpareStage is a gear stage, or several alike.
type SpareStage struct {
	Name  string                 `json:"name" say:"What you call it"`
	Count unit.Known[unit.Count] `json:"count" say:"How many of them; not known counts as 1" range:"[0,100]"`
	Stage lift.Stage             `json:"stage"`
}

// SpareDrum is a drum. The turns that stay on and the side angle of the rope belong to the hoist.
type SpareDrum struct {
	Name string    `json:"name" say:"What you call it"`
	Drum lift.Drum `json:"drum"`
}

// SpareRope is a rope.
type SpareRope struct {
	Name string    `json:"name" say:"What you call it"`
	Rope lift.Rope `json:"rope"`
}

// SparePulley is a pulley, or several alike.
type SparePulley struct {
	Name       string                  `json:"name" say:"What you call it"`
	Count      unit.Known[unit.Count]  `json:"count" say:"How many of them; not known counts as 1" range:"[0,100]"`
	Efficiency unit.Known[unit.Ratio]  `json:"efficiency" say:"Its efficiency with the rope" range:"(0,1]"`
	Diameter   unit.Known[unit.Length] `json:"diameter_m" say:"Diameter at the bottom of its groove" range:"(0,5]"`
	Rating     unit.Known[unit.Force]  `json:"working_load_n" say:"Working load on its label" range:"(0,1e8]"`
	RatingOf   lift.RatingOf           `json:"rating_of" say:"What the label means: pull in the rope, or load on the hook" enum:"|rope_pull|hook_load"`
}

// Parts is how many parts lie on the shelf; several alike count as one.
func (s Shelf) Parts() int {
	n := 0
	for _, l := range s.Counts() {
		n += l.Parts
	}
	return n
}

// Own stands in a Combination for the part that the hoist has.
const Own = -1

// Combination is one choice of parts for a hoist: the place of each on the shelf, or Own.
type Combination struct {
	Motor, Drum, Rope, Pulley int
	Stages                    []int // the first at the motor; nil for the hoist's own
}

// checkShelf returns what is wrong with the shelf besides the ranges of its numbers.
func checkShelf(s Shelf) Problems {
	var ps Problems
	for _, l := range s.Counts() {
		if l.Parts > MostSpares {
			ps.Add(l.List, fmt.Sprintf("at most %d of a kind; these are %d", MostSpares, l.Parts))
		}
	}
	return ps
}

// ListCount is how many parts a list of the shelf has.
type ListCount struct {
	List  string
	Parts int
}

// Counts is how many parts lie in each list, in the order in which they lie there.
func (s Shelf) Counts() []ListCount {
	return []ListCount{{"motors", len(s.Motors)}, {"stages", len(s.Stages)}, {"drums", len(s.Drums)}, {"ropes", len(s.Ropes)}, {"pulleys", len(s.Pulleys)}, {"panels", len(s.Panels)}, {"batteries", len(s.Cells)}}
}

// MostSpares is how many parts of a kind the shelf holds.
const MostSpares = 40

// With returns the variant with parts of the project's shelf in its hoist at place i, each with its origins. What was
// recorded of the hoist with other parts is left out, but what fell stays. Case screws belong to a gear case, and a current
// without load that was measured with gears on belongs to those gears: both are not known with other ones.
func (c Combination) With(p Project, v Variant, i int) Variant {
	h := *v.HoistAt(i)
	at := HoistPath(i) + "."
	v.Origins = maps.Clone(v.Origins)
	moved := func(inside, from string) {
		dropOrigins(v.Origins, at+inside)
		moveOrigins(p.Origins, from, &v.Origins, at+inside)
	}
	if c.Motor != Own {
		h.Machine = p.Shelf.Motors[c.Motor]
		moved("machine", fmt.Sprintf("shelf.motors[%d]", c.Motor))
	}
	if c.Stages != nil {
		h.Train.Stages = make([]lift.Stage, len(c.Stages))
		dropOrigins(v.Origins, at+"train.stages")
		for k, n := range c.Stages {
			h.Train.Stages[k] = p.Shelf.Stages[n].Stage
			moved(fmt.Sprintf("train.stages[%d]", k), fmt.Sprintf("shelf.stages[%d].stage", n))
		}
		t := &h.Train
		t.CaseScrews, t.CaseScrewSize, t.CaseScrewCount, t.CaseScrewCircle, t.CaseScrewProof = "", unit.Known[unit.Length]{}, unit.Known[unit.Count]{}, unit.Known[unit.Length]{}, unit.Known[unit.Stress]{}
	}
	if c.Motor != Own || c.Stages != nil {
		h.Machine.I0WithGear = ""
	}
	if c.Drum != Own {
		own := h.Drum
		h.Drum = p.Shelf.Drums[c.Drum].Drum
		h.Drum.DeadWraps, h.Drum.FleetAngle = own.DeadWraps, own.FleetAngle
		moved("drum", fmt.Sprintf("shelf.drums[%d].drum", c.Drum))
	}
	if c.Rope != Own {
		outdoors := h.Rope.Outdoors
		h.Rope = p.Shelf.Ropes[c.Rope].Rope
		if h.Rope.Outdoors == "" {
			h.Rope.Outdoors = outdoors
		}
		moved("rope", fmt.Sprintf("shelf.ropes[%d].rope", c.Rope))
	}
	if c.Pulley != Own {
		h.Reeving.Sheaves = pulleysOf(p.Shelf.Pulleys[c.Pulley], h.Reeving)
		for k := range h.Reeving.Sheaves {
			for _, field := range []string{"efficiency", "diameter_m", "working_load_n"} {
				moved(fmt.Sprintf("reeving.sheaves[%d].%s", k, field), fmt.Sprintf("shelf.pulleys[%d].%s", c.Pulley, field))
			}
		}
	}
	h.Trials = h.Trials.Kept()
	return v.WithHoist(i, h)
}

// Shelved is the path in the project of a field inside the hoist that a combination fills from the shelf; false for one of the
// hoist's own.
func (c Combination) Shelved(inside string) (string, bool) {
	at := func(list string, n int, from, to string) (string, bool) {
		if n == Own || !Within(inside, from) {
			return "", false
		}
		return fmt.Sprintf("shelf.%s[%d]%s", list, n, to) + strings.TrimPrefix(inside, from), true
	}
	switch part, _, _ := strings.Cut(inside, "."); part {
	case "machine":
		return at("motors", c.Motor, part, "")
	case "drum":
		if inside == "drum.dead_wraps" || inside == "drum.fleet_angle_rad" {
			return "", false
		}
		return at("drums", c.Drum, part, ".drum")
	case "rope":
		return at("ropes", c.Rope, part, ".rope")
	}
	switch {
	case inside == "train.stages" && c.Stages != nil:
		return "shelf.stages", true
	case inside == "reeving.sheaves" && c.Pulley != Own:
		return fmt.Sprintf("shelf.pulleys[%d]", c.Pulley), true
	}
	for k, n := range c.Stages {
		if to, ok := at("stages", n, fmt.Sprintf("train.stages[%d]", k), ".stage"); ok {
			return to, true
		}
	}
	if row, ok := strings.CutPrefix(inside, "reeving.sheaves["); ok {
		_, field, _ := strings.Cut(row, "].")
		if slices.Contains([]string{"efficiency", "diameter_m", "working_load_n", "rating_of"}, field) && c.Pulley != Own {
			return fmt.Sprintf("shelf.pulleys[%d].%s", c.Pulley, field), true
		}
	}
	return "", false
}

// pulleysOf puts one kind of pulley at every place; where each hangs and how the rope runs over it stays.
func pulleysOf(p SparePulley, r lift.Reeving) []lift.Sheave {
	out := make([]lift.Sheave, PulleysOf(r))
	copy(out, r.Sheaves)
	for k := range out {
		s := &out[k]
		s.Efficiency, s.Diameter, s.Rating, s.RatingOf = p.Efficiency, p.Diameter, p.Rating, p.RatingOf
	}
	return out
}

// PulleysOf is how many pulleys the rope passes, 0 where that is not known.
func PulleysOf(r lift.Reeving) int {
	if !r.RopeParts.Is || !r.LeadSheaves.Is {
		return 0
	}
	return int(r.LeadSheaves.Val + r.RopeParts.Val - 1)
}

// Shelve returns the project with the parts of the hoist at place i of a variant on its shelf, each with its origins, and how
// many were new: a part that lies there already, or of which nothing is known, is not put there again.
func (p Project) Shelve(v Variant, i int) (Project, int) {
	h, at, n := v.HoistAt(i), HoistPath(i)+".", 0
	p.Origins = maps.Clone(p.Origins)
	s := &p.Shelf
	put := func(path, from string) {
		n++
		moveOrigins(v.Origins, at+from, &p.Origins, path)
	}
	motor := h.Machine
	motor.I0WithGear = ""
	if !blank(motor) && !slices.ContainsFunc(s.Motors, func(m lift.Machine) bool { return reflect.DeepEqual(m, motor) }) {
		s.Motors = append(slices.Clone(s.Motors), motor)
		put(fmt.Sprintf("shelf.motors[%d]", len(s.Motors)-1), "machine")
	}
	for k, stage := range h.Train.Stages {
		if blank(stage) || slices.Index(h.Train.Stages, stage) < k {
			continue
		}
		alike := unit.Count(0)
		for _, o := range h.Train.Stages {
			if o == stage {
				alike++
			}
		}
		j := slices.IndexFunc(s.Stages, func(o SpareStage) bool { return o.Stage == stage })
		if j < 0 {
			j, s.Stages = len(s.Stages), append(slices.Clone(s.Stages), SpareStage{Name: s.free(stageName(stage)), Stage: stage})
			put(fmt.Sprintf("shelf.stages[%d].stage", j), fmt.Sprintf("train.stages[%d]", k))
		}
		if s.Stages[j].Count.Or(1) < alike {
			s.Stages = slices.Clone(s.Stages)
			s.Stages[j].Count = unit.Of(alike)
		}
	}
	drum := h.Drum
	drum.DeadWraps, drum.FleetAngle = unit.Known[unit.Count]{}, unit.Known[unit.Angle]{}
	if !blank(drum) && !slices.ContainsFunc(s.Drums, func(o SpareDrum) bool { return o.Drum == drum }) {
		s.Drums = append(slices.Clone(s.Drums), SpareDrum{Name: s.free("Drum"), Drum: drum})
		put(fmt.Sprintf("shelf.drums[%d].drum", len(s.Drums)-1), "drum")
	}
	if !blank(h.Rope) && !slices.ContainsFunc(s.Ropes, func(o SpareRope) bool { return o.Rope == h.Rope }) {
		s.Ropes = append(slices.Clone(s.Ropes), SpareRope{Name: s.free(ropeName(h.Rope.Kind)), Rope: h.Rope})
		put(fmt.Sprintf("shelf.ropes[%d].rope", len(s.Ropes)-1), "rope")
	}
	for k, o := range h.Reeving.Sheaves {
		p := SparePulley{Efficiency: o.Efficiency, Diameter: o.Diameter, Rating: o.Rating, RatingOf: o.RatingOf}
		if blank(p) {
			continue
		}
		p.Name = "Pulley"
		if j := slices.IndexFunc(s.Pulleys, func(q SparePulley) bool { q.Name, q.Count = p.Name, p.Count; return q == p }); j >= 0 {
			continue
		}
		p.Name = s.free(p.Name)
		s.Pulleys = append(slices.Clone(s.Pulleys), p)
		put(fmt.Sprintf("shelf.pulleys[%d]", len(s.Pulleys)-1), fmt.Sprintf("reeving.sheaves[%d]", k))
	}
	return p, n
}

// free puts a number behind a name until no part has it.
func (s *Shelf) free(name string) string {
	taken := map[string]bool{}
	for _, o := range s.Stages {
		taken[o.Name] = true
	}
	for _, o := range s.Drums {
		taken[o.Name] = true
	}
	for _, o := range s.Ropes {
		taken[o.Name] = true
	}
	for _, o := range s.Pulleys {
		taken[o.Name] = true
	}
	for _, o := range s.Panels {
		taken[o.Name] = true
	}
	for _, o := range s.Cells {
		taken[o.Name] = true
	}
	next := name
	for n := 2; taken[next]; n++ {
		next = fmt.Sprintf("%s (%d)", name, n)
	}
	return next
}

func blank[T any](v T) bool { return reflect.ValueOf(v).IsZero() }

func stageName(s lift.Stage) string {
	name := capital(strings.ReplaceAll(orElse(string(s.Kind), "stage"), "_", " "))
	if r, ok := s.Ratio.Value(); ok {
		name += " " + unit.Rounded(float64(r), 3) + ":1"
	}
	if m, ok := s.Tooth.Module.Value(); ok {
		name += ", module " + unit.Rounded(float64(m/unit.Millimetre), 3) // sold by it everywhere, without a unit
	}
	return name
}

// ropeName is what a rope is called on the shelf. A name of ours has no size in it: every page prints that in the reader's
// units.
func ropeName(kind lift.RopeKind) string {
	return capital(strings.ReplaceAll(orElse(string(kind), "rope"), "_", " "))
}

// dropOrigins takes out the origins of a path and of what lies inside it.
func dropOrigins(o Origins, path string) {
	for at := range o {
		if Within(at, path) {
			delete(o, at)
		}
	}
}

// moveOrigins copies the origins of a path and of what lies inside it to another path.
func moveOrigins(from Origins, path string, to *Origins, as string) {
	for at, o := range from {
		if Within(at, path) {
			if *to == nil {
				*to = Origins{}
			}
			(*to)[as+strings.TrimPrefix(at, path)] = o
		}
	}
}
