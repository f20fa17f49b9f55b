package model

import (
	"reflect"
	"slices"
	"sync"

	"duskweight/internal/model/panel"
	"duskweight/internal/model/sun"
	"duskweight/internal/model/unit"
)

// harvest is what a year of one sky brings to the panels of a variant. Nothing in it changes.
type harvest struct {
	lights   []panel.Light                // on each array; none on one whose place is not known
	bus      *panel.Bus                   // at the line; nil where a problem stands against it
	plane    unit.Known[unit.Irradiation] // on the panels, mean over their power
	problems Problems

	panels     []panel.Array // of whom: copies, so that nobody changes them
	controller panel.Controller
}

// harvestsKept is how many of them a ground keeps, some 300 KB each.
const harvestsKept = 4

// harvests keeps what the last few panels got under one sky: load, stores and parts leave it as it is, and the variants of a
// project often have the same panels.
type harvests struct {
	mu   sync.Mutex
	kept []*harvest // the last one asked for stands first

	tilts  sync.Once
	season sun.Season // once somebody asked for it
}

// harvest returns what the ground's year brings to the panels of a variant. The ground must have a sky.
func (g Ground) harvest(v Variant) *harvest {
	if s := g.harvests.of(v); s != nil {
		return s
	}
	s := g.shine(v)
	g.harvests.keep(s)
	return s
}

// of returns those of the same panels and controller; nil where none are kept.
func (k *harvests) of(v Variant) *harvest {
	k.mu.Lock()
	defer k.mu.Unlock()
	for i, s := range k.kept {
		if reflect.DeepEqual(s.panels, v.Panels) && reflect.DeepEqual(s.controller, v.Controller) {
			copy(k.kept[1:i+1], k.kept[:i])
			k.kept[0] = s
			return s
		}
	}
	return nil
}

// keep puts one in front and lets the last go where there are too many.
func (k *harvests) keep(s *harvest) {
	k.mu.Lock()
	defer k.mu.Unlock()
	k.kept = append([]*harvest{s}, k.kept[:min(len(k.kept), harvestsKept-1)]...)
}

// shine works them out.
func (g Ground) shine(v Variant) *harvest {
	s := &harvest{lights: g.lights(v), controller: v.Controller, panels: slices.Clone(v.Panels)}
	s.controller.Curve = slices.Clone(v.Controller.Curve)
	for i, a := range v.Panels {
		s.panels[i] = a.Copy()
	}
	bus, problems := panel.BusPower(v.Panels, v.Controller, s.lights, g.Sky.TAir)
	for _, p := range problems {
		s.problems.Tell(p.Path, p.Say)
	}
	if len(problems) == 0 {
		s.bus, s.plane = bus, panel.MeanLight(v.Panels, s.lights)
	}
	return s
}

// PlaneOf prepares the plane of an array of which it is known how it stands. The ground must have a sky.
func (g Ground) PlaneOf(a panel.Array) *sun.Plane {
	return sun.PlaneOf(g.Sky.Geometry, g.Project.Place, sun.Face{Tilt: a.Tilt.Val, ByMonth: a.TiltBy, Azimuth: a.Azimuth.Val, Shade: a.Shade, Snow: g.snowOn(a)})
}

// snowOn is the snow that falls on an array; nil where none falls, or nothing is said of it.
func (g Ground) snowOn(a panel.Array) *sun.Snow {
	p := g.Project.Place
	if p.SnowFall == nil || *p.SnowFall == ([12]unit.Length{}) {
		return nil
	}
	return &sun.Snow{Fall: *p.SnowFall, Events: p.SnowTimes, Slant: a.Slant, Edge: a.Edge, Cleared: a.Cleared == unit.Yes}
}

// Season is which tilts bring most on this ground, which must have a sky. Twenty tilts are tried once for it.
func (g Ground) Season() sun.Season {
	k := g.harvests
	k.tilts.Do(func() { k.season = sun.SeasonOf(g.Sky.Geometry, g.Project.Place, g.Sky) })
	return k.season
}

// lights computes the light on each array; an array whose place is not known gets none, and BusPower names it.
func (g Ground) lights(v Variant) []panel.Light {
	lights := make([]panel.Light, len(v.Panels))
	for i, a := range v.Panels {
		if !a.Stands() {
			continue
		}
		p := g.PlaneOf(a)
		l := p.Light(g.Sky)
		lights[i] = panel.Light(l)
	}
	return lights
}
