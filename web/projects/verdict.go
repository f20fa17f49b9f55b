package projects

import (
	"context"
	"fmt"
	"slices"
	"sync"

	"duskweight/internal/model/reason"
	"duskweight/internal/model/unit"
	"duskweight/web/form"
	"duskweight/web/page"
)

// verdict is what one variant comes to, as the list tells it.
type verdict struct {
	name    string
	ready   reason.Word
	band    [2]page.BandView // in each system of units
	word    string           // of the closed list of verdicts; empty for not known
	nights  int              // with light; −1 for not known
	ofNight int
}

// verdictKey is one state of a project on one day: a proof by test runs out with a day.
type verdictKey struct {
	project, change int64
	on              reason.Day
}

// verdicts remembers what projects came to. It may be forgotten at any time, and is when the program ends.
type verdicts struct {
	mu sync.Mutex
	of map[verdictKey][]verdict
}

// mostVerdicts bounds the memory: some 2 KB a project.
const mostVerdicts = 2000

func (c *verdicts) get(k verdictKey) ([]verdict, bool) {
	c.mu.Lock()
	defer c.mu.Unlock()
	v, ok := c.of[k]
	return slices.Clone(v), ok
}

func (c *verdicts) put(k verdictKey, v []verdict) {
	c.mu.Lock()
	defer c.mu.Unlock()
	if len(c.of) >= mostVerdicts {
		clear(c.of)
	}
	c.of[k] = slices.Clone(v)
}

// workOut evaluates every variant of a project.
func (s *Pages) workOut(ctx context.Context, project int64) ([]verdict, error) {
	p, err := s.Store.Project(ctx, project)
	if err != nil {
		return nil, err
	}
	vs, err := s.Store.Variants(ctx, project)
	if err != nil {
		return nil, err
	}
	ground := s.Grounds.Of(p)
	var out []verdict
	for _, v := range vs {
		if err := ctx.Err(); err != nil {
			return nil, err
		}
		r := ground.Evaluate(v.Value)
		one := verdict{name: v.Value.Name, ready: r.Ready, word: r.Verdict, nights: -1,
			band: [2]page.BandView{page.VariantBand(r, unit.Metric, nil), page.VariantBand(r, unit.Imperial, nil)}}
		if r.YearKnown && r.Open.IsZero() {
			one.nights, one.ofNight = r.Last.NightsFull, r.Last.Nights
		}
		out = append(out, one)
	}
	return out, nil
}

// best prints a variant as the best of its project.
func (v verdict) best() BestView {
	b := BestView{Name: form.Clip(v.name, page.PaperName), Nights: "nights not known"}
	b.Sign, b.Word = page.VerdictSigned(v.word)
	if v.nights >= 0 {
		b.Nights = fmt.Sprintf("%d of %d nights full", v.nights, v.ofNight)
	}
	return b
}

// state prints the state of a variant's sheet.
func (v verdict) state(sys unit.System) StateView {
	b := v.band[sys&1]
	return StateView{Class: b.Class(), Sign: b.Sign(), Word: b.Brief, Name: form.Clip(v.name, page.PaperName)}
}
