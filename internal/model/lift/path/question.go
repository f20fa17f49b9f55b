package path

import (
	"duskweight/internal/model/lift"
	"duskweight/internal/model/unit"
	"duskweight/internal/say"
)

// Question is one thing that only the user can answer. The program never answers or passes it.
type Question struct {
	Path   string // the field inside the hoist that holds the answer
	Ask    string
	Answer string       // the user's answer in words, or "not known"
	Worse  bool         // the answer, or its absence, is the worse one
	Say    say.Sentence // what the worse answer means; empty otherwise
}

// askAny makes a question; an answer in bad, or none, is the worse one.
func askAny[A ~string](path, q string, answer A, bad []A, worse string) Question {
	x := Question{Path: path, Ask: q, Answer: plain(answer), Worse: answer == "" || contains(bad, answer)}
	if x.Worse {
		x.Say = say.That(worse)
	}
	return x
}

// plain turns a word of a closed list into words.
func plain[S ~string](s S) string {
	if s == "" {
		return "not known"
	}
	b := []byte(s)
	for i := range b {
		if b[i] == '_' {
			b[i] = ' '
		}
	}
	return string(b)
}

// questions are the seven that are asked once.
func questions(h lift.Hoist) []Question {
	s := h.Site
	return []Question{
		askAny("site.outdoors", "Is the hoist outdoors?", s.Outdoors, []unit.Answer{unit.Yes}, "Wind, rain, frost and sun wear rope and bag, and wind moves the mass."),
		askAny("site.earthquake", "Are there earthquakes here?", s.Earthquake, []lift.Earthquakes{lift.EarthquakesSome, lift.EarthquakesStrong}, "An earthquake pushes sideways and swings the mass out of its keep-out. The local rule decides."),
		askAny("site.children", "Can children or animals come near?", s.Children, []unit.Answer{unit.Yes}, "Fence the hoist or lock the room. Guard rope, drum and gears. Leave no rope end or mass to climb. Lower and lock the mass when nobody is there."),
		askAny("structure.rests_on", "What carries the beam, down to the ground?", h.Structure.RestsOn, []lift.RestsOn{lift.RestsOnRoofTruss, lift.RestsOnJoists, lift.RestsOnLivingTree, lift.RestsOnBalcony, lift.RestsOnConcreteOrMasonry, lift.RestsOnNotSeen}, "This structure was not made for a hoist. A qualified person must look at it first."),
		askAny("site.lives_below", "Does anyone live below or behind the hoist?", s.LivesBelow, []unit.Answer{unit.Yes}, "The room below and the place behind belong to the keep-out."),
		askAny("site.helper", "Is there someone who can come to help?", s.Helper, []unit.Answer{unit.No}, "Do not lift alone: a second person with a phone waits outside the keep-out."),
		askAny("site.self_start", "Can the hoist start by itself?", s.SelfStart, []unit.Answer{unit.Yes}, "Let nothing start the hoist again by itself. Fit a switch that locks at the site, a warning before the mass moves, and a stop button that sets the brake."),
	}
}

// round are the lines of "Around the hoist".
func round(h lift.Hoist) []Question {
	s := h.Site
	return []Question{
		askAny("site.owner", "Who owns the structure, and did the owner agree?", s.Owner, []lift.Consent{lift.ConsentNotAsked}, "Ask the owner first."),
		askAny("site.neighbours_told", "Were the household and the neighbours told the hours of lifting?", s.Told, []unit.Answer{unit.No}, "Tell the neighbours, and agree on the hours."),
		askAny("site.floor_below", "What is under the floor, and is it made safe?", s.FloorBelow, []lift.FloorBelow{lift.FloorCellar, lift.FloorRoom, lift.FloorPipesOrTank}, underFloor(s)),
		askAny("site.lit_at_night", "Is there a lamp at the hoist at night?", s.Lit, []unit.Answer{unit.No}, "Put a lamp there that does not depend on this store."),
		askAny("site.noise_at_bed", "Was the noise at the bed measured, and is it acceptable?", s.Noise, []unit.Answer{unit.No}, "Noise stays not known until it is measured."),
		askAny("site.wind_plan", "Is the mass lowered in wind, frost and gales?", s.WindPlan, []unit.Answer{unit.No}, "Stop when wind moves the mass or ice sits on a pulley."),
		askAny("site.insurance_and_rules", "Did you ask the insurer, and what the local rules say?", s.Insurance, []unit.Answer{unit.No}, "Local rules come first: ask before you hang the mass."),
		askAny("site.watched_halfway", "Does someone watch the mass while it hangs halfway?", s.Watched, []unit.Answer{unit.No}, "A mass that hangs halfway needs someone who watches, and two holds."),
		askAny("site.comes_down_without_power", "How does the mass come down with no power, a stuck brake or a jammed rope?", s.ComesDown, nil, "Plan this before the first lift, not while the mass hangs."),
	}
}
