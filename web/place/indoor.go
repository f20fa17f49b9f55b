package place

import (
	"errors"

	"duskweight/internal/model"
	"duskweight/internal/model/sun"
	"duskweight/internal/model/unit"
	"duskweight/web/form"
)

// indoorInputs are the temperature of the room where a battery may stand: its mean, its warmest month and which that is.
// Without the mean there is no room, and batteries indoors are as cold as the air outside.
func indoorInputs() form.Part[model.Project] {
	return form.Folded("Room of the battery", "This is for a battery indoors. If empty: as the air outside.",
		indoorInput("mean_c", "Mean of the year", unit.Temperatures, func(in *sun.Indoor) float64 { return float64(in.Mean) }, func(p *model.Project, v float64, known bool) error {
			room := p.Place.Indoor
			switch {
			case !known:
				p.Place.Indoor = nil
			case room == nil:
				p.Place.Indoor = &sun.Indoor{Mean: unit.Celsius(v), Warmest: midsummer(p)}
			default: // the warmest month keeps its temperature
				p.Place.Indoor = &sun.Indoor{Mean: unit.Celsius(v), Swing: room.Swing + room.Mean - unit.Celsius(v), Warmest: room.Warmest}
			}
			return nil
		}),
		indoorInput("swing_k", "In its warmest month", unit.Temperatures, func(in *sun.Indoor) float64 { return float64(in.Mean + in.Swing) }, func(p *model.Project, v float64, known bool) error {
			return room(p, known, func(in *sun.Indoor) {
				in.Swing = 0
				if known {
					in.Swing = unit.Celsius(v) - in.Mean
				}
			})
		}),
		indoorInput("warmest_month", "Warmest month, 1 to 12", unit.Counts, func(in *sun.Indoor) float64 { return float64(in.Warmest) }, func(p *model.Project, v float64, known bool) error {
			return room(p, known, func(in *sun.Indoor) {
				in.Warmest = midsummer(p)
				if known {
					in.Warmest = unit.Count(v)
				}
			})
		}))
}

func indoorInput(key, label string, q unit.Quantity, get func(*sun.Indoor) float64, set func(*model.Project, float64, bool) error) form.Part[model.Project] {
	in := form.NewInput[model.Project]("place.indoor."+key, label, form.AsNumber)
	in.Hint, in.Symbol, in.Spare = "", q.Symbol, true
	in.Show = func(p *model.Project, sys unit.System) string {
		if p.Place.Indoor == nil {
			return ""
		}
		return form.TypedForm(q, get(p.Place.Indoor), sys)
	}
	in.Read = func(p *model.Project, text string, sys unit.System) error {
		v, known, err := form.ReadNumber[unit.Celsius](q, text, sys)
		if err != nil {
			return err
		}
		return set(p, float64(v), known)
	}
	in.Value = func(p *model.Project) (float64, bool) {
		if p.Place.Indoor == nil {
			return 0, false
		}
		return get(p.Place.Indoor), true
	}
	return form.FinishNumber(in, q, nil)
}

// room changes a room that is there; a value without one wants its mean first.
func room(p *model.Project, known bool, change func(*sun.Indoor)) error {
	if p.Place.Indoor == nil {
		if known {
			return errors.New("give the mean of the year first")
		}
		return nil
	}
	own := *p.Place.Indoor
	change(&own)
	p.Place.Indoor = &own
	return nil
}

// midsummer is July, and January south of the equator.
func midsummer(p *model.Project) unit.Count {
	if p.Place.Latitude.Is && p.Place.Latitude.Val < 0 {
		return 1
	}
	return 7
}
