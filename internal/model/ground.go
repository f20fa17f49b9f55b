package model

import (
	"slices"

	"duskweight/internal/model/cell"
	"duskweight/internal/model/load"
	"duskweight/internal/model/reason"
	"duskweight/internal/model/sun"
	"duskweight/internal/model/unit"
)

// Ground is what a project comes to before any variant: its sky and its nights. Computed once, it serves every variant.
type Ground struct {
	Project Project
	Sky     *sun.Sky   // nil when the place is not known; WhyNot says why
	Load    load.Year  // empty without a sky
	WhyNot  Problems   // paths inside the project
	On      reason.Day // the day on which readiness is judged; empty is not known, and then no proof by test counts

	outside, indoors cell.Temperature // of cells that stand there; indoors is not known without a room
	harvests         *harvests        // of this sky; nil without one
}

// Prepare computes sky and nights of a project in its plan year.
func Prepare(p Project) Ground {
	sky, problems := sun.Year(p.Place, p.Seed, p.Files())
	return prepared(p, sky, problems)
}

// PrepareMade computes sky and nights of a project in year j of its many: made year j of its seed, or that of its weather
// files in turn.
func PrepareMade(p Project, j int) Ground {
	sky, problems := sun.MadeYear(p.Place, p.Seed, j, p.Files())
	return prepared(p, sky, problems)
}

func prepared(p Project, sky *sun.Sky, problems sun.Problems) Ground {
	g := Ground{Project: p}
	for _, q := range problems {
		g.WhyNot.Tell(Join("place", q.Path), q.Say)
	}
	if len(problems) > 0 || sky == nil {
		return g.loaded()
	}
	return g.under(sky)
}

// Loaded returns the ground of a project that differs from this one in its load alone: the sky stays, and what its sun brings
// to panels.
func (g Ground) Loaded(p Project) Ground {
	g.Project = p
	return g.loaded()
}

// loaded returns the ground with the nights of its project's load.
func (g Ground) loaded() Ground {
	l := g.Project.Load
	if g.Sky == nil {
		g.Load = load.Year{Peaks: load.PeaksAnywhere(l)}
		g.Load.Losses, _ = l.Inverter.Losses()
		return g
	}
	g.Load = load.HoursIn(l, g.Sky.Geometry.Down, noons(g.Sky.Geometry), g.air())
	return g
}

// At returns the ground on a day: proofs by test must be valid then.
func (g Ground) At(on reason.Day) Ground {
	g.On = on
	return g
}

// under puts a ready sky over the project: for many years of one climate.
func (g Ground) under(sky *sun.Sky) Ground {
	g.Sky, g.harvests = sky, new(harvests)
	g.outside = cell.TemperatureIn(sky.TAir)
	g.indoors = cell.Temperature{}
	if room := g.Project.Place.Indoor; room != nil {
		g.indoors = cell.TemperatureIn(indoorAir(*room))
	}
	return g.loaded()
}

func noons(g *sun.Geometry) []unit.Duration {
	out := make([]unit.Duration, len(g.Noon))
	for d, h := range g.Noon {
		out[d] = unit.Duration(h) * unit.Hour
	}
	return out
}

// cellsOf returns the temperature of a battery where it stands.
func (g Ground) cellsOf(b cell.Bank) cell.Temperature {
	if g.inRoom(b) {
		return g.indoors
	}
	return g.outside
}

// indoors are the places of a battery that are as warm as the room of the project.
var indoors = map[cell.Room]bool{cell.InOwnRoom: true, cell.InBedroom: true, cell.InEscapeRoute: true}

// inRoom reports whether a battery stands in a room whose temperature is known.
func (g Ground) inRoom(b cell.Bank) bool { return g.Project.Place.Indoor != nil && indoors[b.Indoors] }

// livedIn is how cold a room of which nothing is known gets at the least, °C: somebody lives beside the devices (our own
// judgement, on the side of the greater need).
const livedIn = 18

// air is the temperature round the devices, where one of them follows the heat: of the room where it is known, else outside and
// at least that of a room that is lived in.
func (g Ground) air() []float64 {
	follows := func(a load.Appliance) bool { return a.Heat == unit.Yes }
	if !slices.ContainsFunc(g.Project.Load.Appliances, follows) {
		return nil
	}
	if room := g.Project.Place.Indoor; room != nil {
		return indoorAir(*room)
	}
	air := slices.Clone(g.Sky.TAir)
	for h := range air {
		air[h] = max(livedIn, air[h])
	}
	return air
}

// indoorAir is a room over the year: its mean and a swing with the warmest month, as a cosine through the middles of
// the months.
func indoorAir(in sun.Indoor) []float64 {
	air := make([]float64, sun.Hours)
	for h := range air {
		month := float64(h)/sun.Hours*12 + 0.5 // 1.0 in the middle of January
		air[h] = float64(in.Mean) + float64(in.Swing)*cosTurn((month-float64(in.Warmest))/12)
	}
	return air
}

// Scaled returns the ground with every lamp and device taking f times its power: for asking which load is served.
func (g Ground) Scaled(f float64) Ground {
	g.Load = g.Load.Scaled(f, 1)
	return g
}

// Drawn returns the ground under another sky over the same place, for a project that differs only in its load: every
// appliance takes use times its power, and what uses power all the time idle times.
func (g Ground) Drawn(p Project, sky *sun.Sky, use, idle float64) Ground {
	on, room := g.On, g.indoors
	if g.Load.Losses.Curved() {
		return Ground{Project: p}.under(sky).At(on)
	}
	return Ground{Project: p, Sky: sky, Load: g.Load.Scaled(use, idle), On: on,
		outside: cell.TemperatureIn(sky.TAir), indoors: room, harvests: new(harvests)}
}
