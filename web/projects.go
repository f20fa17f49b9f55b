package web

import (
	"context"
	"errors"
	"io"
	"net/http"
	"net/url"
	"strconv"
	"strings"
	"time"

	"github.com/go-chi/chi/v5"

	"duskweight/internal/catalog"
	"duskweight/internal/document"
	"duskweight/internal/model"
	"duskweight/internal/store"
)

func (s *Site) showProjects(w http.ResponseWriter, r *http.Request) error {
	return s.projectsPage(w, r, http.StatusOK, importView{})
}

func (s *Site) projectsPage(w http.ResponseWriter, r *http.Request, status int, in importView) error {
	living, err := s.Store.Projects(r.Context())
	if err != nil {
		return err
	}
	deleted, err := s.Store.DeletedProjects(r.Context())
	if err != nil {
		return err
	}
	v := projectsView{Notices: s.Store.Notices(), ReadOnly: s.Store.ReadOnly(), Import: in}
	for _, p := range living {
		v.Projects = append(v.Projects, projectCard{
			URL: projectURL(p.ID), Name: p.Name, Example: p.Example, Revision: strconv.FormatInt(p.Revision, 10),
			Variants: counted(p.Variants, "variant"), Changed: s.when(p.At),
		})
	}
	for _, p := range deleted {
		v.Deleted = append(v.Deleted, deletedCard{URL: projectURL(p.ID), Name: p.Name, When: s.when(p.At), Until: p.At.Add(store.KeptDeleted).In(s.Now().Location()).Format("2 January 2006")})
	}
	return s.show(w, r, status, frame{Title: "Projects", Refused: len(in.Problems) > 0}, projectsPage(v))
}

func projectURL(id int64) string { return "/projects/" + strconv.FormatInt(id, 10) }

func variantURL(project, id int64) string {
	return projectURL(project) + "/variants/" + strconv.FormatInt(id, 10)
}

// pathID reads a number from the address; what is no number is not found.
func pathID(r *http.Request, name string) (int64, error) {
	text := chi.URLParam(r, name)
	id, err := strconv.ParseInt(text, 10, 64)
	if err != nil || id <= 0 || strconv.FormatInt(id, 10) != text {
		return 0, errNotFound
	}
	return id, nil
}

// addSample adds the worked example.
func (s *Site) addSample(w http.ResponseWriter, r *http.Request) error {
	saved, err := s.Store.CreateProject(r.Context(), catalog.Sample(), "Worked example added", s.Now())
	if err != nil {
		return err
	}
	return seeOther(w, r, projectURL(saved.ID))
}

// importProject makes a new project from a document, or says everything that is wrong with it.
func (s *Site) importProject(w http.ResponseWriter, r *http.Request) error {
	data, err := postedFile(r, "file")
	if err != nil {
		return err
	}
	doc, err := document.Decode(data)
	if err == nil {
		err = model.Check(doc).Err()
	}
	if problems, ok := errors.AsType[model.Problems](err); ok {
		return s.projectsPage(w, r, http.StatusUnprocessableEntity, importProblemsOf(problems))
	}
	if err != nil {
		return err
	}
	if _, err := s.Store.Backup(r.Context(), s.Now()); err != nil { // an import only adds, so it goes on without
		s.Log.Warn("no copy before an import", "error", err)
	}
	saved, err := s.Store.CreateProject(r.Context(), doc, "Brought in from a document", s.Now())
	if err != nil {
		return err
	}
	return seeOther(w, r, projectURL(saved.ID))
}

// mostProblems is how many problems of a document are shown at once.
const mostProblems = 30

func importProblemsOf(ps model.Problems) importView {
	var v importView
	for i, p := range ps {
		if i == mostProblems {
			v.More = "And " + strconv.Itoa(len(ps)-i) + " more."
			break
		}
		v.Problems = append(v.Problems, problemView{Label: p.Path, Say: sentence(p.Say)})
	}
	return v
}

// postedFile reads an uploaded file into memory, within the limit of its route.
func postedFile(r *http.Request, name string) ([]byte, error) {
	if err := r.ParseMultipartForm(importLimit); err != nil {
		if _, tooLarge := errors.AsType[*http.MaxBytesError](err); tooLarge {
			return nil, err
		}
		return nil, badRequest("The file did not arrive.")
	}
	file, _, err := r.FormFile(name)
	if err != nil {
		return nil, badRequest("Choose a file first.")
	}
	defer file.Close()
	return io.ReadAll(file)
}

// exportProject sends a project with all its variants as one document.
func (s *Site) exportProject(w http.ResponseWriter, r *http.Request) error {
	id, err := pathID(r, "project")
	if err != nil {
		return err
	}
	doc, err := s.Store.Export(r.Context(), id)
	if err != nil {
		return err
	}
	data, err := document.Encode(doc)
	if err != nil {
		return err
	}
	w.Header().Set("Content-Type", "application/json")
	w.Header().Set("Content-Disposition", "attachment; filename=\""+fileName(doc.Project.Name)+".json\"; filename*=UTF-8''"+url.PathEscape(doc.Project.Name)+".json")
	_, _ = w.Write(data)
	return nil
}

// fileName makes a plain file name of any name.
func fileName(name string) string {
	var b strings.Builder
	for _, r := range strings.ToLower(name) {
		switch {
		case r >= 'a' && r <= 'z', r >= '0' && r <= '9':
			b.WriteRune(r)
		case b.Len() > 0 && !strings.HasSuffix(b.String(), "-"):
			b.WriteByte('-')
		}
		if b.Len() >= 60 {
			break
		}
	}
	if plain := strings.Trim(b.String(), "-"); plain != "" {
		return plain
	}
	return "project"
}

func (s *Site) deleteProject(w http.ResponseWriter, r *http.Request) error {
	id, err := pathID(r, "project")
	if err != nil {
		return err
	}
	_, revision, err := postedForm(r)
	if err != nil {
		return err
	}
	if err := s.Store.DeleteProject(r.Context(), id, revision, "Project deleted", s.Now()); err != nil {
		return err
	}
	return seeOther(w, r, "/#deleted")
}

func (s *Site) restoreProject(w http.ResponseWriter, r *http.Request) error {
	id, err := pathID(r, "project")
	if err != nil {
		return err
	}
	if _, err := s.Store.RestoreProject(r.Context(), id, "Project brought back", s.Now()); err != nil {
		return err
	}
	return seeOther(w, r, "/")
}

// undo takes back the change that its page offered, and no other; redo takes back an undo.
func (s *Site) undo(w http.ResponseWriter, r *http.Request) error {
	return s.takeBack(w, r, s.Store.Undo)
}

func (s *Site) redo(w http.ResponseWriter, r *http.Request) error {
	return s.takeBack(w, r, s.Store.Redo)
}

func (s *Site) takeBack(w http.ResponseWriter, r *http.Request, step func(context.Context, int64, int64, time.Time) (store.Change, error)) error {
	id, err := pathID(r, "project")
	if err != nil {
		return err
	}
	if err := parseForm(r); err != nil {
		return err
	}
	seq, err := strconv.ParseInt(r.PostForm.Get("seq"), 10, 64)
	if err != nil || seq <= 0 {
		return badRequest("The form does not say what to take back. Open the history again.")
	}
	taken, err := step(r.Context(), id, seq, s.Now())
	if err != nil {
		return err
	}
	return seeOther(w, r, backTo(r.PostForm.Get("back"), id, taken))
}

// backTo is the page where a step was taken back: the one that offered it, if it is a page of the project and what it
// shows is still there.
func backTo(back string, project int64, taken store.Change) string {
	home := projectURL(project)
	switch {
	case back == home && !taken.Created:
		return home
	case strings.HasPrefix(back, home+"/") && !taken.Created && !strings.ContainsAny(back, "\\?#"):
		return back
	}
	return home + "/history"
}

// counted writes a number with its noun.
func counted(n int, noun string) string {
	if n == 1 {
		return "1 " + noun
	}
	return strconv.Itoa(n) + " " + noun + "s"
}

// when writes a time as its reader thinks of it.
func (s *Site) when(t time.Time) string {
	now := s.Now()
	t = t.In(now.Location())
	midnight := func(t time.Time) time.Time { return time.Date(t.Year(), t.Month(), t.Day(), 12, 0, 0, 0, time.UTC) }
	switch days := int(midnight(now).Sub(midnight(t)).Hours() / 24); {
	case days == 0:
		return "today, " + t.Format("15:04")
	case days == 1:
		return "yesterday, " + t.Format("15:04")
	}
	return t.Format("2 January 2006, 15:04")
}
