package history

import (
	"context"
	"net/http"
	"strconv"
	"strings"
	"time"

	"duskweight/internal/store"
	"duskweight/web/page"
)

// undo takes back the change that its page offered, and no other; redo takes back an undo.
func (s *Pages) undo(w http.ResponseWriter, r *http.Request) error {
	return s.takeBack(w, r, s.Store.Undo)
}

func (s *Pages) redo(w http.ResponseWriter, r *http.Request) error {
	return s.takeBack(w, r, s.Store.Redo)
}

func (s *Pages) takeBack(w http.ResponseWriter, r *http.Request, step func(context.Context, int64, int64, time.Time) (store.Change, error)) error {
	id, err := page.PathID(r, "project")
	if err != nil {
		return err
	}
	if err := page.ParseForm(r); err != nil {
		return err
	}
	seq, err := strconv.ParseInt(r.PostForm.Get("seq"), 10, 64)
	if err != nil || seq <= 0 {
		return page.BadRequest("The form does not say what to undo. Open the history again.")
	}
	taken, err := step(r.Context(), id, seq, s.Now())
	if err != nil {
		return err
	}
	return page.SeeOther(w, r, backTo(r.PostForm.Get("back"), id, taken))
}

// backTo is the page where a step was taken back: the one that offered it, if it is a page of the project and what it
// shows is still there.
func backTo(back string, project int64, taken store.Change) string {
	home := page.ProjectURL(project)
	switch {
	case back == home && !taken.Created:
		return home
	case strings.HasPrefix(back, home+"/") && !taken.Created && !strings.ContainsAny(back, "\\?#"):
		return back
	}
	return home + "/history"
}
