package history

import (
	"context"
	"net/http"
	"strconv"

	"duskweight/internal/model"
	"duskweight/internal/store"
	"duskweight/web/page"
)

// back saves again what a project or one of its variants was after a change. It is a change of its own, and undo takes it back.
// The weather files stay those of today: the history does not keep them beside each change.
func (s *Pages) back(w http.ResponseWriter, r *http.Request) error {
	id, err := page.PathID(r, "project")
	if err != nil {
		return err
	}
	if err := page.ParseForm(r); err != nil {
		return err
	}
	seq, err := strconv.ParseInt(r.PostForm.Get("seq"), 10, 64)
	if err != nil || seq <= 0 {
		return page.BadRequest("The form does not say what to go back to. Open the history again.")
	}
	found, err := s.Store.FullChanges(r.Context(), id, seq+1, 1)
	if err != nil {
		return err
	}
	if len(found) == 0 || found[0].Seq != seq || found[0].Deleted {
		return page.ErrNotFound
	}
	if err := s.saveAgain(r.Context(), id, found[0]); err != nil {
		return err
	}
	return page.SeeOther(w, r, page.ProjectURL(id)+"/history")
}

// saveAgain saves what the thing of a change was after it.
func (s *Pages) saveAgain(ctx context.Context, project int64, c store.FullChange) error {
	edit := store.Edit{Said: "Back to revision " + strconv.FormatInt(c.Number, 10)}
	if c.VariantIs != nil {
		now, err := s.Store.Variant(ctx, c.Thing.ID)
		if err != nil {
			return err
		}
		edit.Revision = now.Revision
		_, err = s.Store.SaveVariant(ctx, now.ID, *c.VariantIs, edit, s.Now())
		return err
	}
	now, err := s.Store.Project(ctx, project)
	if err != nil {
		return err
	}
	was := *c.ProjectIs
	was.Weather, was.Weathers = now.Value.Weather, now.Value.Weathers
	if problems := model.CheckProject(was); len(problems) > 0 {
		return problems
	}
	edit.Revision = now.Revision
	_, err = s.Store.SaveProject(ctx, now.ID, was, edit, s.Now())
	return err
}

// newest are the revisions of a project and of its living variants.
func (s *Pages) newest(ctx context.Context, p store.Saved[model.Project]) (map[store.Thing]int64, error) {
	now := map[store.Thing]int64{{Kind: store.ProjectKind, ID: p.ID}: p.Revision}
	vs, err := s.Store.Variants(ctx, p.ID)
	for _, v := range vs {
		now[store.Thing{Kind: store.VariantKind, ID: v.ID}] = v.Revision
	}
	return now, err
}
