package catalog

import (
	"duskweight/internal/model"
	"duskweight/internal/model/unit"
)

// Guess is what stands in for an answer of the three questions that nobody knows. It is marked typical in the plan.
type Guess struct {
	Value, Low, High float64 // SI; what is taken, and what is usual
	Source           string
	variant, project string // its path in the first variant, or in the project
	set              func(*Answers, float64)
}

// Guesses are the typical answers by the name of their question.
func Guesses() map[string]Guess {
	return map[string]Guess{
		"mass": {40, 5, 1000, "two sacks of sand (common practice)", "stores[0].hoist.mass[0].mass_kg", "",
			func(a *Answers, v float64) { a.Mass = unit.Mass(v) }},
		"height": {2.5, 1, 15, "a room from floor to ceiling (common practice)", "stores[0].hoist.travel_m", "",
			func(a *Answers, v float64) { a.Height = unit.Length(v) }},
		"lamps": {2, 1, 20, "for a room and a way (our own judgement)", "", "load.appliances[0].count",
			func(a *Answers, v float64) { a.Lamps = unit.Count(v) }},
		"watts": {5, 0.5, 15, "a lamp to read by (from memory)", "", "load.appliances[0].power_w",
			func(a *Answers, v float64) { a.LampPower = unit.Power(v) }},
		"hours": {4 * 3600, 3600, 12 * 3600, "an evening (our own judgement)", "", "load.appliances[0].from_dusk_s",
			func(a *Answers, v float64) { a.Hours = unit.Duration(v) }},
		"latitude": {float64(45 * unit.Degree), 0, float64(65 * unit.Degree), "half the way from the equator to the pole (our own judgement)", "", "place.latitude_rad",
			func(a *Answers, v float64) { a.Place.Latitude = unit.Of(unit.Angle(v)) }},
	}
}

// Guess takes the typical answer to one of the questions.
func (a *Answers) Guess(question string) {
	if g, ok := Guesses()[question]; ok {
		g.set(a, g.Value)
		a.guessed = append(a.guessed, g)
	}
}

// markGuesses marks what was not answered.
func (a Answers) markGuesses(doc *model.Document) {
	for _, g := range a.guessed {
		if g.project != "" {
			doc.Project.Origins[g.project] = model.Origin{Kind: model.OriginTypical, Source: g.Source}
		} else {
			doc.Variants[0].Origins[g.variant] = model.Origin{Kind: model.OriginTypical, Source: g.Source}
		}
	}
}
