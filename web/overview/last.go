package overview

import (
	"context"
	"strconv"

	"duskweight/internal/store"
	"duskweight/web/form"
	"duskweight/web/page"
)

// mostLast is how many of the last changes the overview tells; the history has them all.
const mostLast = 3

// lastChange is one of them, ready to print.
type lastChange struct {
	When, Thing, What string
	Seq               string // of the change, where one can go back to it: it is not the newest of its thing
}

// lastChanges are the newest changes of a project that somebody made; none where nothing was changed since the project came.
func (s *Pages) lastChanges(ctx context.Context, a asked) (out []lastChange, err error) {
	changes, err := s.Store.FullChanges(ctx, a.project.ID, 0, mostLast)
	if err != nil {
		return nil, err
	}
	now := map[store.Thing]int64{{Kind: store.ProjectKind, ID: a.project.ID}: a.project.Revision}
	for _, v := range a.variants {
		now[store.Thing{Kind: store.VariantKind, ID: v.ID}] = v.Revision
	}
	some := false
	for _, c := range changes {
		some = some || c.Action != store.Aside
		one := lastChange{When: s.When(c.At), Thing: form.Clip(page.OrUnnamed(c.Name), page.PaperName), What: form.Clip(c.Said, 90)}
		switch c.Action {
		case store.Undone:
			one.What = "Undone: " + one.What
		case store.Redone:
			one.What = "Redone: " + one.What
		}
		if c.Number < now[c.Thing] && !c.Deleted && s.Store.ReadOnly() == "" {
			one.Seq = strconv.FormatInt(c.Seq, 10)
		}
		out = append(out, one)
	}
	if !some {
		return nil, nil
	}
	return out, nil
}
