package shelf

import (
	"encoding/json"
	"math"
	"net/http"
	"runtime"
	"time"

	"duskweight/internal/model"
	"duskweight/internal/model/search"
	"duskweight/internal/model/unit"
	"duskweight/internal/store"
	"duskweight/web/page"
)

// fitsWait is the longest that a search through a shelf may take.
const fitsWait = 60 * time.Second

// fitsAtOnce is how many combinations are worked out before a page is shown; more come bit by bit.
const fitsAtOnce = 250

// fitsAsked is the hoist that parts are tried in, and the search.
type fitsAsked struct {
	project store.Saved[model.Project]
	at      page.HoistAt
	all     []page.HoistAt
	sys     unit.System
	whole   bool // the whole search, before anything is shown
	run     *search.FitsRun
	now     model.VariantResult // the variant as it is
	links   *page.PlanLinks
}

// fitsAsked reads the address and tries every combination at first sight. Without a hoist there is nothing to try.
func (s *Pages) fitsAsked(r *http.Request) (a fitsAsked, err error) {
	if a.project, err = s.Project(r); err != nil {
		return a, err
	}
	if a.sys, err = s.Units(r.Context()); err != nil {
		return a, err
	}
	a.whole = r.URL.Query().Get("all") != ""
	if a.at, a.all, err = s.hoistAsked(r, a.project.ID, r.URL.Query()); err != nil || len(a.all) == 0 {
		return a, err
	}
	g, v := s.Grounds.Of(a.project), a.at.Variant
	a.now = s.Results.Of(a.project, v)
	a.links = s.LinksOf(a.project, v.Value, v.ID)
	a.run, err = search.NewFits(r.Context(), g, a.project.Value, v.Value, a.at.I, runtime.GOMAXPROCS(0))
	return a, err
}

// view works out so many combinations and prints what comes of them.
func (a fitsAsked) view(r *http.Request, n int) (fitsView, error) {
	if err := a.run.Until(r.Context(), n, runtime.GOMAXPROCS(0), nil); err != nil {
		return fitsView{}, err
	}
	misses, err := a.run.Nearest(r.Context(), runtime.GOMAXPROCS(0))
	if err != nil {
		return fitsView{}, err
	}
	return a.print(a.run.Fits(), misses), nil
}

func (s *Pages) showFits(w http.ResponseWriter, r *http.Request) error {
	_ = http.NewResponseController(w).SetWriteDeadline(time.Now().Add(fitsWait)) // it is not a slow reader, it is a long search
	a, err := s.fitsAsked(r)
	if err != nil {
		return page.LeftOr(r, err)
	}
	at := page.ProjectURL(a.project.ID) + "/shelf"
	f, err := s.ProjectFrame(r.Context(), a.project, "What fits", at)
	if err != nil {
		return err
	}
	f.Style, f.Script = "shelf.css", "many.js"
	if len(a.all) == 0 {
		return s.Show(w, r, http.StatusOK, f, fitsPage(fitsView{Back: at, Say: "No variant of this project has a lifted mass yet. Add one to a variant, then come back."}))
	}
	n := fitsAtOnce
	if a.whole {
		n = a.run.Size()
	}
	view, err := a.view(r, n)
	if err != nil {
		return page.LeftOr(r, err)
	}
	f.Title = "What fits in " + a.at.Name
	view.Bands = page.StoreBands(a.now, a.at.I, a.sys, a.links.To)
	view.Bands[0].Of = "The parts are tried in this hoist:"
	return s.Show(w, r, http.StatusOK, f, fitsPage(view))
}

// fitsLine is one line of an answer that comes bit by bit: how many combinations are worked out, and now and then what comes
// of them; with the last one the address of the same page.
type fitsLine struct {
	Done int    `json:"done"`
	Of   int    `json:"of"`
	HTML string `json:"html,omitempty"`
	URL  string `json:"url,omitempty"`
}

// sendFits sends what comes of the search as it is worked out, one line of JSON each time.
func (s *Pages) sendFits(w http.ResponseWriter, r *http.Request) error {
	to := http.NewResponseController(w)
	_ = to.SetWriteDeadline(time.Now().Add(fitsWait))
	a, err := s.fitsAsked(r)
	if err != nil {
		return page.LeftOr(r, err)
	}
	if len(a.all) == 0 {
		return page.ErrNotFound
	}
	w.Header().Set("Content-Type", "application/x-ndjson")
	out, size := json.NewEncoder(w), a.run.Size()
	for n := fitsAtOnce; ; n += fitsAtOnce {
		n = min(n, size)
		view, err := a.view(r, n)
		if err != nil {
			return nil // stopped: what was sent stands
		}
		part, err := page.Rendered(r, fitsResults(view))
		if err != nil {
			return err
		}
		line := fitsLine{Done: n, Of: size, HTML: string(s.Words.Link(part, true))}
		if n == size {
			line.URL = a.url("/fits", true)
		}
		_ = out.Encode(line) // a browser that left ends the context
		_ = to.Flush()
		if n == size {
			return nil
		}
	}
}

// url is an address below the shelf with the same hoist, of the whole search or not.
func (a fitsAsked) url(path string, whole bool) string {
	url := page.ProjectURL(a.project.ID) + "/shelf" + path + "?" + a.at.Query()
	if whole {
		url += "&all=1"
	}
	return url
}

// fitsAll is the whole search, for its numbers.
func (s *Pages) fitsAll(w http.ResponseWriter, r *http.Request) (fitsAsked, search.Fits, error) {
	_ = http.NewResponseController(w).SetWriteDeadline(time.Now().Add(fitsWait))
	a, err := s.fitsAsked(r)
	if err == nil && len(a.all) == 0 {
		err = page.ErrNotFound
	}
	if err != nil {
		return a, search.Fits{}, err
	}
	n := fitsAtOnce
	if a.whole {
		n = a.run.Size()
	}
	err = a.run.Until(r.Context(), n, runtime.GOMAXPROCS(0), nil)
	return a, a.run.Fits(), err
}

// sendFitsCSV sends every set of parts that does, the best first.
func (s *Pages) sendFitsCSV(w http.ResponseWriter, r *http.Request) error {
	a, fits, err := s.fitsAll(w, r)
	if err != nil {
		return page.LeftOr(r, err)
	}
	up := page.ScaleOf(unit.SlowSpeeds, a.sys)
	t := page.SheetOfNumbers{Name: "what-fits", Head: []string{"parts", "gear ratio", "lamps run, minutes", up.Axis("lifts at"), "one lift, s", "gives back, Wh", "tightest part", "use of it"}}
	for _, f := range fits.Found {
		t.Rows = append(t.Rows, []any{partsSaid(f.Combination, a.project.Value.Shelf), number(f.Ratio), a.minutes(f.Moves), up.Of(number(f.Up)), number(f.Time), number(f.Gives) / 3600, f.Part, number(f.Use)})
	}
	return page.SendCSV(w, t)
}

// sendWhyCSV sends how many combinations do, and how many do not for each first reason: together all that were tried.
func (s *Pages) sendWhyCSV(w http.ResponseWriter, r *http.Request) error {
	a, fits, err := s.fitsAll(w, r)
	if err != nil {
		return page.LeftOr(r, err)
	}
	t := page.SheetOfNumbers{Name: "why-not", Head: []string{"what comes of them", "combinations"}, Rows: [][]any{{"They lift, come down by themselves and stay cool.", fits.Do}}}
	for _, c := range countsOf(fits, a.sys) {
		t.Rows = append(t.Rows, []any{c.Say, c.Count})
	}
	return page.SendCSV(w, t)
}

// number is a value as a number, not a number where it is not known.
func number[T ~float64](k unit.Known[T]) float64 {
	if v, ok := k.Value(); ok {
		return float64(v)
	}
	return math.NaN()
}
