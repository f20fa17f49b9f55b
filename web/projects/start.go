package projects

import (
	"crypto/rand"
	"encoding/binary"
	"net/http"
	"net/url"
	"slices"
	"strings"

	"duskweight/internal/catalog"
	"duskweight/internal/model"
	"duskweight/internal/model/lift"
	"duskweight/internal/model/sun"
	"duskweight/internal/model/unit"
	"duskweight/internal/say"
	"duskweight/web/form"
	"duskweight/web/page"
)

// The page of the three questions: /start.

// startView is the three questions, with what was typed and what is wrong with it.
type startView struct {
	Typed    url.Values
	Problems []form.ProblemView
	Say      map[string]string
	Climates []form.Option
	Skies    []form.Option
	Supports []form.Option
	Length   string // unit of the height
	Units    string // see nameUnits
	Mass     string
	Hints    map[string]string // under the fields that may stay empty
}

func (v startView) value(name, otherwise string) string {
	if t, ok := v.Typed[name]; ok && len(t) > 0 {
		return t[0]
	}
	return otherwise
}

func (s *Pages) showStart(w http.ResponseWriter, r *http.Request) error {
	sys, err := s.Units(r.Context())
	if err != nil {
		return err
	}
	return s.Show(w, r, http.StatusOK, page.Frame{Title: "Three questions"}, startPage(startViewOf(nil, nil, sys)))
}

func startViewOf(typed url.Values, problems model.Problems, sys unit.System) startView {
	v := startView{Typed: typed, Say: map[string]string{}, Climates: page.ClimateOptions(), Supports: supports(), Length: unit.Lengths.Symbol(sys), Units: form.UnitsWords[sys], Mass: unit.Masses.Symbol(sys)}
	for _, w := range []string{"desert", "dry", "mixed", "cloudy", "very_cloudy"} {
		v.Skies = append(v.Skies, form.Option{Value: w, Word: form.WordFor(w)})
	}
	v.Hints = map[string]string{
		"mass": guessHint("mass", unit.Masses, sys), "height": guessHint("height", unit.Heights, sys), "lamps": guessHint("lamps", unit.Counts, sys),
		"watts": guessHint("watts", unit.Powers, sys), "hours": guessHint("hours", unit.Hours, sys),
	}
	labels := map[string]string{"place": "Where", "latitude": "Latitude", "mass": "Its mass", "height": "Height", "support": "What carries it", "lamps": "Lamps", "watts": "Power of one lamp", "hours": "Hours", "name": "Name"}
	for _, p := range problems {
		text := form.Sentence(p.Say.In(sys))
		v.Say[p.Path] = text
		v.Problems = append(v.Problems, form.ProblemView{ID: "q-" + p.Path, Label: labels[p.Path], Say: text})
	}
	return v
}

// supports is what may carry the beam.
func supports() []form.Option { return form.WordsOf[lift.Structure]("rests_on") }

// makeStart makes a project of the three answers and opens it.
func (s *Pages) makeStart(w http.ResponseWriter, r *http.Request) error {
	if err := page.ParseForm(r); err != nil {
		return err
	}
	settings, err := s.Store.Settings(r.Context())
	if err != nil {
		return err
	}
	sys := form.UnitsOf(r.PostForm, page.UnitsIn(settings))
	a, problems := startAnswers(r.PostForm, sys)
	if len(problems) == 0 {
		a.Currency, a.Seed = settings["currency"], newSeed()
		doc := catalog.Start(a)
		if problems = model.Check(doc); len(problems) == 0 {
			saved, err := s.Store.CreateProject(r.Context(), doc, "Made from three answers", s.Now())
			if err != nil {
				return err
			}
			return page.SeeOther(w, r, page.ProjectURL(saved.ID))
		}
	}
	f := page.Frame{Title: "Three questions", Refused: true}
	return s.Show(w, r, http.StatusUnprocessableEntity, f, startPage(startViewOf(r.PostForm, problems, sys)))
}

// newSeed draws the seed of a new project's weather; it is shown and stored, so that the year can be made again.
func newSeed() uint64 {
	var b [8]byte
	_, _ = rand.Read(b[:]) // never fails (crypto/rand)
	return binary.LittleEndian.Uint64(b[:]) % 1_000_000
}

// startAnswers reads the three answers, with every problem at once.
func startAnswers(typed url.Values, sys unit.System) (catalog.Answers, model.Problems) {
	var ps model.Problems
	var a catalog.Answers
	number := func(name string, q unit.Quantity, low, high float64) float64 {
		si, known, err := q.Parse(typed.Get(name), sys)
		switch {
		case err != nil:
			ps.Add(name, err.Error())
		case !known:
			a.Guess(name)
			return catalog.Guesses()[name].Value
		case si <= low || si > high:
			ps.Tell(name, say.That("it must be more than %s and at most %s", say.Limit(q, low).Up(), say.Limit(q, high).Down()))
		}
		return si
	}
	a.Name, a.HeavyName = strings.TrimSpace(typed.Get("name")), strings.TrimSpace(typed.Get("heavy"))
	if a.Name == "" {
		a.Name = "My home"
	}
	if a.HeavyName == "" {
		a.HeavyName = "Something heavy"
	}
	if len([]rune(a.Name)) > 120 || len([]rune(a.HeavyName)) > 120 {
		ps.Add("name", "at most 120 letters")
	}
	a.Place = startPlace(typed, sys, &ps)
	if typed.Get("place") == placeNotKnown {
		a.Guess("latitude")
	}
	a.Support = lift.RestsOn(typed.Get("support"))
	if !slices.ContainsFunc(supports(), func(o form.Option) bool { return o.Value == string(a.Support) }) {
		ps.Add("support", "choose one of the list")
	}
	a.Mass = unit.Mass(number("mass", unit.Masses, 0, 1e6))
	a.Height = unit.Length(number("height", unit.Lengths, 0, 1000))
	lamps := number("lamps", unit.Counts, 0, 10000)
	a.Lamps = unit.Count(lamps)
	a.LampPower = unit.Power(number("watts", unit.Powers, 0, 1e5))
	if typed.Get("all_night") == "" {
		a.Hours = unit.Duration(number("hours", unit.Hours, 0, 24*3600))
	}
	return a, ps
}

// placeNotKnown is the choice of those who do not know where they are, or will not say.
const placeNotKnown = "?"

// guessHint says what is taken for an empty answer, and what is usual.
func guessHint(name string, q unit.Quantity, sys unit.System) string {
	g := catalog.Guesses()[name]
	return "Usual: " + q.Between(g.Low, g.High, sys) + ". If empty: " + q.Format(g.Value, sys) + ", " + g.Source + "."
}

func startPlace(typed url.Values, sys unit.System, ps *model.Problems) sun.Place {
	if name := typed.Get("place"); name == placeNotKnown {
		return sun.Place{Sky: sun.SkyDescribed, Described: sun.DescribedMixed}
	} else if name != "" {
		place, ok := catalog.Climate(name)
		if !ok {
			ps.Add("place", "there is no starter climate of that name")
		}
		return place
	}
	place := sun.Place{Sky: sun.SkyDescribed, Described: sun.DescribedSky(typed.Get("sky"))}
	si, known, err := unit.Latitudes.Parse(typed.Get("latitude"), sys)
	switch {
	case err != nil:
		ps.Add("latitude", err.Error())
	case !known:
		ps.Add("place", "choose a climate like yours, or “I do not know”, or give your latitude below")
	default:
		place.Latitude = unit.Of(unit.Angle(si))
	}
	if place.Described == "" {
		place.Described = sun.DescribedMixed
	}
	return place
}
