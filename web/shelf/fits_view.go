package shelf

import (
	"fmt"
	"io"
	"math"
	"slices"
	"strconv"
	"strings"

	"duskweight/internal/draw"
	"duskweight/internal/model"
	"duskweight/internal/model/lift"
	"duskweight/internal/model/search"
	"duskweight/internal/model/unit"
	"duskweight/web/form"
	"duskweight/web/page"
)

// fitsView is the page What fits.
type fitsView struct {
	Bands []page.BandView // of the hoist in which the parts are tried
	Say   string
	Tried string // how many were tried, and of how many
	Back  string

	Choose  []page.Tab
	Five    []fitView
	All     []fitView // the sets of parts that do, for the table
	Sets    int       // how many of them
	More    moreView
	Misses  []missView
	Counts  []countView
	WhyRest string // heading of the reasons against the others
	Apart   apartView
	Left    []leftView
	Notes   []string

	Use        string // where a combination is used
	Variant, I string
	Name       string // of the variant
	Revision   string // of the project
	Version    string // revision of the variant
	CSV, Why   string
}

// moreView is what is not worked out yet.
type moreView struct {
	Left int
	All  string // the address of the page with all
}

// fitView is a combination that does.
type fitView struct {
	Name, Gears        string
	Sketch             string
	Minutes, Up, Tight string
	Part               string // the tightest
	Written            string
	Now                bool // the hoist has these parts already
}

// missView is a combination that nearly does.
type missView struct {
	Name, Sketch, Why string
	Cures             []string
}

// countView is a first reason and how many combinations have it.
type countView struct {
	Say   string
	Count int
	Width string // of its bar, of 100
	Shown string
}

// apartView is what the hoist must settle whatever is chosen here.
type apartView struct {
	List []page.ReasonView
	More int
	URL  string
}

// leftView is a part that was left out and the fields that are wanting.
type leftView struct {
	Say   string
	Links []form.LinkView
}

const (
	mostFive  = 5
	mostRows  = 100 // sets of parts in the table
	mostApart = 8   // reasons that stand open
)

// print makes the page of what was found so far.
func (a fitsAsked) print(f search.Fits, misses []search.Miss) fitsView {
	at, s := page.ProjectURL(a.project.ID)+"/shelf", a.project.Value.Shelf
	v := fitsView{Back: at, Use: at + "/use", Variant: a.at.VariantID(), I: page.Itoa(a.at.I), Name: a.at.Name,
		Revision: strconv.FormatInt(a.project.Revision, 10), Version: strconv.FormatInt(a.at.Variant.Revision, 10)}
	for _, o := range a.all {
		v.Choose = append(v.Choose, page.Tab{Text: o.Name, URL: at + "/fits?" + o.Query(), Here: o.Name == a.at.Name})
	}
	v.Left = a.left(f.Left)
	if f.Lacks != "" {
		v.Say = f.Lacks
		return v
	}
	v.Say, v.Tried, v.Sets = fitsSay(f), triedSay(f), len(f.Found)
	if f.Longest < search.LongestTrain {
		v.Notes = append(v.Notes, "There are too many stages for every row of four: rows of up to "+page.Counted(f.Longest, "stage")+" were tried.")
	}
	scale := scaleOf(s)
	for k, one := range f.Found[:min(len(f.Found), mostRows)] {
		fit := fitView{Name: briefly(one.Combination, s), Gears: gearsSaid(one, s, true), Written: written(one.Combination), Part: one.Part,
			Minutes: a.minutesSaid(one.Moves), Up: page.Known(one.Up, unit.SlowSpeeds, a.sys), Tight: timesSaid(one.Use), Now: a.has(one.Combination)}
		if k < mostFive {
			fit.Sketch = sketch(one.Combination, s, scale)
			v.Five = append(v.Five, fit)
		}
		v.All = append(v.All, fit)
	}
	for k, fit := range v.Five {
		same := func(o fitView) bool { return o.Name == fit.Name && o.Written != fit.Written }
		v.Five[k].Gears = gearsSaid(f.Found[k], s, slices.ContainsFunc(v.Five, same))
	}
	for _, m := range misses {
		v.Misses = append(v.Misses, missView{Name: briefly(m.Combination, s), Sketch: sketch(m.Combination, s, scale), Why: whySaid(m, a.sys), Cures: curesSaid(m, a.sys)})
	}
	v.Counts = countsOf(f, a.sys)
	if n := f.Tried - f.Do; n > 0 {
		v.WhyRest = "Why " + unit.Thousands(n) + " other combinations do not work"
		if n == 1 {
			v.WhyRest = "Why 1 other combination does not work"
		}
	}
	v.apart(a, f)
	v.CSV, v.Why = a.url("/fits.csv", a.whole), a.url("/why.csv", a.whole)
	if n := f.Passed - f.Worked; a.run.Size() > f.Worked {
		v.More = moreView{Left: n, All: a.url("/fits", true)}
	}
	return v
}

// fitsSay is the answer in one sentence.
func fitsSay(f search.Fits) string {
	unsure := 0
	for _, u := range f.Unsure {
		unsure += u.Count
	}
	say := unit.Thousands(f.Do) + " of " + unit.Thousands(f.Tried) + " combinations lift, come down by themselves and stay cool."
	switch {
	case f.Do == 0 && f.Tried == 1:
		say = "The only combination fails: it does not lift, come down by itself and stay cool."
	case f.Do == 0:
		say = "None of " + unit.Thousands(f.Tried) + " combinations lifts, comes down by itself, stays cool and carries its load."
	case f.Do == 1:
		say = "1 of " + page.Counted(f.Tried, "combination") + " lifts, comes down by itself and stays cool."
	}
	if unsure > 0 {
		say += " Something is not known of " + unit.Thousands(unsure) + " more."
	}
	return say
}

// triedSay says that not all were tried, or not all of those that move were worked out.
func triedSay(f search.Fits) string {
	var say []string
	if f.Tried < f.Of {
		say = append(say, fmt.Sprintf("The first %s of %s were tried.", unit.Thousands(f.Tried), unit.Thousands(f.Of)))
	}
	if f.Worked < f.Passed {
		say = append(say, fmt.Sprintf("%s lift and come down. The %s of them that lose least were worked out in full.", unit.Thousands(f.Passed), unit.Thousands(f.Worked)))
	}
	return strings.Join(say, " ")
}

// minutes is how long one lift runs the lamps of the night; not a number where that is not known.
func (a fitsAsked) minutes(m search.Moves) float64 {
	watts, ok := a.now.Facts.LampPower.Value()
	if !ok || watts <= 0 {
		return math.NaN()
	}
	return number(m.Gives) / float64(watts) / 60
}

func (a fitsAsked) minutesSaid(m search.Moves) string {
	if t := a.minutes(m); !math.IsNaN(t) {
		return form.Lasting(unit.Duration(60 * t))
	}
	return page.Known(m.Gives, unit.Energies, a.sys)
}

// has reports whether the hoist has the parts of a combination already.
func (a fitsAsked) has(c model.Combination) bool {
	w, v := c.With(a.project.Value, a.at.Variant.Value, a.at.I).HoistAt(a.at.I), a.at.Variant.Value.HoistAt(a.at.I)
	return sameParts(*w, *v)
}

// countsOf are the others by their first reason, the most frequent first in each way to fail: together with those that do they
// are all that were tried.
func countsOf(f search.Fits, sys unit.System) (out []countView) {
	add := func(say string, n int) {
		if n > 0 {
			out = append(out, countView{Say: say, Count: n, Shown: unit.Thousands(n)})
		}
	}
	add("It lifts, but does not come down by itself.", f.Stuck)
	add("The motor stalls: it does not lift the mass.", f.Stalls)
	for _, w := range f.Why {
		say := form.Sentence(w.Say.In(sys))
		if w.Differ {
			say += " (Figures of one of them.)"
		}
		add(say, w.Count)
	}
	for _, u := range f.Unsure {
		add("Not known: "+form.Sentence(u.Say.In(sys)), u.Count)
	}
	add("It lifts and comes down, and was not worked out.", f.Passed-f.Worked)
	most := 0
	for _, c := range out {
		most = max(most, c.Count)
	}
	for i := range out {
		out[i].Width = unit.Rounded(100*float64(out[i].Count)/float64(most), 3)
	}
	return out
}

// apart prints what no part of the shelf changes.
func (v *fitsView) apart(a fitsAsked, f search.Fits) {
	if len(f.Apart) == 0 {
		return
	}
	list := page.ReasonsOf(f.Apart, a.sys, a.links.To).List
	v.Apart = apartView{List: list[:min(len(list), mostApart)], URL: page.StoreURL(a.project.ID, a.at.Variant.ID, a.at.I, "hoist")}
	v.Apart.More = len(list) - len(v.Apart.List)
}

// sketch draws a combination small.
func sketch(c model.Combination, s model.Shelf, scale [2]float64) string {
	d := draw.ChainSketch{Stages: len(c.Stages), Motor: 0.5, Drum: 0.5}
	if c.Motor != model.Own && scale[0] > 0 {
		d.Motor = torqueOf(s.Motors[c.Motor]) / scale[0]
	}
	if c.Drum != model.Own && scale[1] > 0 {
		d.Drum = float64(s.Drums[c.Drum].Drum.Diameter.Or(0)) / scale[1]
	}
	for _, k := range c.Stages {
		d.Worm = d.Worm || s.Stages[k].Stage.Kind == lift.StageWorm
	}
	if c.Stages == nil {
		d.Stages = 1
	}
	return page.SvgOf(func(w io.Writer) error { return d.Draw(w) })
}

// scaleOf is the largest torque of a motor and the largest drum on the shelf.
func scaleOf(s model.Shelf) (most [2]float64) {
	for _, m := range s.Motors {
		most[0] = max(most[0], torqueOf(m))
	}
	for _, d := range s.Drums {
		most[1] = max(most[1], float64(d.Drum.Diameter.Or(0)))
	}
	return most
}

// torqueOf is what a motor gives at the current that it withstands all day, N·m; 0 where that is not known.
func torqueOf(m lift.Machine) float64 {
	if m.K.Is && m.MaxCurrent.Is {
		return float64(m.K.Val) * float64(m.MaxCurrent.Val)
	}
	return 0
}
