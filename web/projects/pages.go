// Package projects shows the list of all projects (/), the three questions that begin one (/start) and the worked sample;
// it brings projects in and sends them out as documents, deletes them and brings them back. What is inside a project is
// shown by the other rooms.
package projects

import (
	"errors"
	"io"
	"net/http"
	"net/url"
	"strconv"

	"github.com/go-chi/chi/v5"

	"duskweight/internal/catalog"
	"duskweight/internal/document"
	"duskweight/internal/model"
	"duskweight/internal/model/unit"
	"duskweight/internal/store"
	"duskweight/web/form"
	"duskweight/web/page"
)

// Pages are the pages of this room.
type Pages struct {
	*page.Site
	verdicts *verdicts
}

// New makes the pages of this room.
func New(s *page.Site) *Pages {
	return &Pages{Site: s, verdicts: &verdicts{of: map[verdictKey][]verdict{}}}
}

// Routes hangs the pages at their addresses.
func (s *Pages) Routes(r chi.Router) {
	r.Get("/", s.Page(s.showProjects))
	r.Get("/verdicts", s.Page(s.sendVerdicts))
	r.Post("/sample", s.Page(s.addSample))
	r.Get("/start", s.Page(s.showStart))
	r.Post("/start", s.Page(s.makeStart))
	r.Get("/projects/{project}/export.json", s.Page(s.exportProject))
	r.Post("/projects/{project}/delete", s.Page(s.deleteProject))
	r.Post("/projects/{project}/restore", s.Page(s.restoreProject))
}

// Uploads hangs what reads in a file, which may be larger than a form.
func (s *Pages) Uploads(r chi.Router) {
	r.Post("/import", s.Page(s.importProject))
}

func (s *Pages) showProjects(w http.ResponseWriter, r *http.Request) error {
	return s.projectsPage(w, r, http.StatusOK, ImportView{})
}

func (s *Pages) projectsPage(w http.ResponseWriter, r *http.Request, status int, in ImportView) error {
	deleted, err := s.Store.DeletedProjects(r.Context())
	if err != nil {
		return err
	}
	list, err := s.listOf(r, false)
	if err != nil {
		return err
	}
	v := ProjectsView{List: list, Notices: s.Store.Notices(), Import: in}
	for _, p := range deleted {
		v.Deleted = append(v.Deleted, DeletedCard{URL: page.ProjectURL(p.ID), Name: p.Name, When: s.When(p.At), Until: p.At.Add(store.KeptDeleted).In(s.Now().Location()).Format("2 January 2006")})
	}
	return s.Show(w, r, status, page.Frame{Title: "Projects", Style: "projects.css", Refused: len(in.Problems) > 0}, ProjectsPage(v))
}

// sendVerdicts sends the same part of the list with everything worked out: alone for the script, else as the page.
func (s *Pages) sendVerdicts(w http.ResponseWriter, r *http.Request) error {
	list, err := s.listOf(r, true)
	if err != nil {
		return err
	}
	if page.WantsPart(r) {
		return s.Write(w, r, http.StatusOK, projectRows(list))
	}
	return s.Show(w, r, http.StatusOK, page.Frame{Title: "Projects", Style: "projects.css"}, ProjectsPage(ProjectsView{List: list}))
}

// What a button of a worked example sends: nothing for the one with a lifted mass.
const (
	nameExample  = "example"
	exampleCabin = "cabin"
)

// addSample adds a worked example.
func (s *Pages) addSample(w http.ResponseWriter, r *http.Request) error {
	if err := page.ParseForm(r); err != nil {
		return err
	}
	doc := catalog.Sample()
	switch which := r.PostForm.Get(nameExample); which {
	case "":
	case exampleCabin:
		doc = catalog.Cabin()
	default:
		return page.BadRequest("There is no such example.")
	}
	saved, err := s.Store.CreateProject(r.Context(), doc, "Worked example added", s.Now())
	if err != nil {
		return err
	}
	return page.SeeOther(w, r, page.ProjectURL(saved.ID))
}

// importProject makes a new project from a document, or says everything that is wrong with it.
func (s *Pages) importProject(w http.ResponseWriter, r *http.Request) error {
	data, err := postedFile(r, "file")
	if err != nil {
		return err
	}
	doc, err := document.Decode(data)
	if err == nil {
		err = model.Check(doc).Err()
	}
	if problems, ok := errors.AsType[model.Problems](err); ok {
		sys, err := s.Units(r.Context())
		if err != nil {
			return err
		}
		return s.projectsPage(w, r, http.StatusUnprocessableEntity, importProblemsOf(problems, sys))
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
	return page.SeeOther(w, r, page.ProjectURL(saved.ID))
}

// mostProblems is how many problems of a document are shown at once.
const mostProblems = 30

func importProblemsOf(ps model.Problems, sys unit.System) ImportView {
	var v ImportView
	if more := len(ps) - mostProblems; more > 0 {
		v.More, ps = "And "+strconv.Itoa(more)+" more.", ps[:mostProblems]
	}
	v.Problems = page.ProblemsOf(ps, sys)
	return v
}

// postedFile reads an uploaded file into memory, within the limit of its route.
func postedFile(r *http.Request, name string) ([]byte, error) {
	if err := r.ParseMultipartForm(page.ImportLimit); err != nil {
		if _, tooLarge := errors.AsType[*http.MaxBytesError](err); tooLarge {
			return nil, err
		}
		return nil, page.BadRequest("The file did not arrive.")
	}
	file, _, err := r.FormFile(name)
	if err != nil {
		return nil, page.BadRequest("Choose a file first.")
	}
	defer file.Close()
	return io.ReadAll(file)
}

// exportProject sends a project with all its variants as one document.
func (s *Pages) exportProject(w http.ResponseWriter, r *http.Request) error {
	id, err := page.PathID(r, "project")
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
	w.Header().Set("Content-Disposition", "attachment; filename=\""+form.FileName(doc.Project.Name)+".json\"; filename*=UTF-8''"+url.PathEscape(doc.Project.Name)+".json")
	_, _ = w.Write(data)
	return nil
}

func (s *Pages) deleteProject(w http.ResponseWriter, r *http.Request) error {
	id, err := page.PathID(r, "project")
	if err != nil {
		return err
	}
	_, revision, err := page.PostedForm(r)
	if err != nil {
		return err
	}
	if err := s.Store.DeleteProject(r.Context(), id, revision, "Project deleted", s.Now()); err != nil {
		return err
	}
	return page.SeeOther(w, r, "/#deleted")
}

func (s *Pages) restoreProject(w http.ResponseWriter, r *http.Request) error {
	id, err := page.PathID(r, "project")
	if err != nil {
		return err
	}
	if _, err := s.Store.RestoreProject(r.Context(), id, "Project brought back", s.Now()); err != nil {
		return err
	}
	return page.SeeOther(w, r, "/")
}
