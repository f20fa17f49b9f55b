package sure

import (
	"cmp"
	"fmt"
	"net/http"
	"runtime"
	"slices"

	"duskweight/internal/model"
	"duskweight/internal/model/search"
	"duskweight/internal/model/unit"
	"duskweight/internal/store"
	"duskweight/web/page"
)

// sureMoves is which input moves the answer of one variant most.
type sureMoves struct {
	Name, Say string
	Rows      []moveRow
}

// moveRow is one input: what it is and where it is typed, the range it is drawn from, how much it moves the answer.
type moveRow struct{ Label, URL, Range, Width, Text, Way string }

// moveWords say an input, and which way its more goes.
var moveWords = map[string]string{
	"sun":    "Sunlight of the twelve means",
	"panels": "Power of the panels",
	"lamps":  "What lamps and devices use",
	"idle":   "What uses power all the time",
}

// moveName says the input of a move.
func moveName(m search.Move) string { return cmp.Or(m.Say, moveWords[m.Input]) }

// moves are those of every variant asked for.
func (a sureAsked) moves(s search.Sure) (out []sureMoves) {
	for i, c := range s.Variants {
		if len(c.Moves) > 0 {
			out = append(out, movesView(c, s.Years, func(input string) string { return inputURL(a.project.ID, a.chosen[i], input) }))
		}
	}
	return out
}

// inputURL is the page on which an input is typed.
func inputURL(project int64, v store.Saved[model.Variant], input string) string {
	base := page.ProjectURL(project)
	switch input {
	case "sun":
		return base + "/place"
	case "lamps":
		return base + "/load"
	case "idle":
		return base + "/load?part=standing"
	}
	for i, st := range v.Value.Stores {
		k := st.Kind()
		if slices.ContainsFunc(k.Doubts, func(d model.Doubt) bool { return d.Name == input }) {
			return page.StoreURL(project, v.ID, i, k.Key)
		}
	}
	return page.VariantURL(project, v.ID)
}

// movesView prints how much each input moves the answer; at gives the page of an input.
func movesView(c search.Certain, years int, at func(input string) string) sureMoves {
	chance := search.ByChance(years)
	v := sureMoves{Name: page.OrUnnamed(c.Name)}
	switch top := c.Moves[0]; {
	case c.Share.Best == c.Share.Worst:
		v.Say = "The answer is the same in every year, so nothing moves it."
	case top.Share <= chance:
		v.Say = fmt.Sprintf("No single input decides: the weather does, or %s years are too few to tell.", unit.Thousands(years))
	default:
		way := "More of it leaves less for the lamps."
		if top.More {
			way = "More of it gives more to the lamps."
		}
		v.Say = fmt.Sprintf("%s changes the result most. %s", moveName(top), way)
	}
	for _, m := range c.Moves {
		way := "more of it leaves less for the lamps"
		if m.More {
			way = "a higher value gives more to the lamps"
		}
		if m.Share <= chance {
			way = "no clear effect"
		}
		v.Rows = append(v.Rows, moveRow{moveName(m), at(m.Input), moveRange(m), unit.Fixed(max(1, m.Share*100), 1), unit.WholePercent(m.Share), way})
	}
	return v
}

// moveDraws is how many draws tell what moves the answer where the page itself draws nothing but the weather.
const moveDraws = 100

// sendMoves answers with what moves the answer of one variant: light, parts and use are drawn for it, and it follows the page.
func (s *Pages) sendMoves(w http.ResponseWriter, r *http.Request) error {
	p, _, chosen, err := s.Chosen(r)
	if err != nil {
		return err
	}
	chosen = chosen[:min(1, len(chosen))]
	a := sureAsked{project: p, chosen: chosen, parts: true, n: moveDraws}
	if !page.WantsPart(r) {
		return page.SeeOther(w, r, page.ProjectURL(p.ID)+"/sure?"+a.query(p.Value.MadeYears()).Encode())
	}
	run := search.NewRun(p.Value, values(chosen), true)
	if err := run.Until(r.Context(), moveDraws, runtime.GOMAXPROCS(0), nil); err != nil {
		return page.LeftOr(r, err)
	}
	return s.Write(w, r, http.StatusOK, movesPart(a.moves(run.Sure()), moveDraws))
}

// moveRange is an input's range in words; a mass has the range of how each piece was weighed.
func moveRange(m search.Move) string {
	if m.Range != "" {
		return m.Range
	}
	return unit.Minus + unit.Whole(100*(1-m.Low)) + " to +" + unit.WholePercent(m.High-1)
}
