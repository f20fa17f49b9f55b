// Package rescue shows the one page of a data file that cannot be used (/): what was found, what can still be read of it
// as project files, its spare copies, and the way back to one of them or to an empty file. It is there in place of all other
// pages until somebody has chosen.
package rescue

import (
	"context"
	"fmt"
	"net/http"
	"net/url"
	"path/filepath"
	"strconv"
	"sync"
	"time"

	"github.com/go-chi/chi/v5"

	"duskweight/internal/document"
	"duskweight/internal/store"
	"duskweight/web/form"
	"duskweight/web/page"
)

// Pages are the pages of this room.
type Pages struct {
	*page.Site
	Lost   *store.Rescue
	Opened func(*store.Store) error // is handed the file that is opened in the end

	mu     sync.Mutex // one choice at a time, and nobody reads meanwhile
	chosen bool
}

// Routes hangs the pages at their addresses.
func (s *Pages) Routes(r chi.Router) {
	r.Get("/", s.Page(s.show))
	r.Get("/healthz", func(w http.ResponseWriter, _ *http.Request) {
		http.Error(w, s.Lost.Lost.Say(), http.StatusServiceUnavailable)
	})
	r.Get("/rescue/projects/{project}/export.json", s.Page(s.export))
	r.Get("/rescue/copies/{copy}", s.Page(s.download))
	r.Post("/rescue/copies/{copy}/restore", s.Page(s.goBack))
	r.Post("/rescue/empty", s.Page(s.begin))
}

// View is the page, ready to print.
type View struct {
	Say      string
	Found    string // what was found in the words of whoever found it, for somebody who helps
	File     string
	Locked   bool
	There    bool // something lies at the place of the file
	Projects []ProjectRow
	Lost     []string
	Unread   bool // the file itself cannot be read at all
	Copies   []CopyRow
}

// ProjectRow is a project that can still be read.
type ProjectRow struct {
	URL, Name, When, Variants string
	Short                     []string
}

// CopyRow is a spare copy.
type CopyRow struct {
	Number, Name, When, Size, Holds, URL string
	Unsound                              bool
}

func (s *Pages) show(w http.ResponseWriter, r *http.Request) error {
	s.mu.Lock() // not while a choice moves the files
	defer s.mu.Unlock()
	lost := s.Lost.Lost
	v := View{Say: lost.Say(), Found: lost.Error(), File: lost.Path, Locked: s.Lost.Locked(), There: lost.How != store.Missing}
	found, err := s.Lost.Salvage()
	if v.Unread = err != nil; v.Unread {
		s.Log.Warn("the data file cannot be read", "error", err)
	}
	for _, p := range found.Projects {
		row := ProjectRow{
			URL: "/rescue/projects/" + strconv.FormatInt(p.ID, 10) + "/export.json", Name: p.Doc.Project.Name,
			When: s.When(p.At), Variants: page.Counted(len(p.Doc.Variants), "variant"),
		}
		for _, short := range p.Short {
			row.Short = append(row.Short, short.Say(s.When))
		}
		v.Projects = append(v.Projects, row)
	}
	for _, lost := range found.Lost {
		v.Lost = append(v.Lost, lost.Say(s.When))
	}
	spares, err := s.Lost.Spares(r.Context())
	if err != nil {
		return err
	}
	for _, c := range spares {
		row := CopyRow{
			Number: strconv.Itoa(c.Number), Name: filepath.Base(c.Path), Size: page.Bytes(c.Size), URL: "/rescue/copies/" + strconv.Itoa(c.Number),
			Holds: page.Counted(c.Projects, "project"), Unsound: c.Unsound, When: "not known",
		}
		if !c.At.IsZero() {
			row.When = s.When(c.At)
		}
		v.Copies = append(v.Copies, row)
	}
	return s.Show(w, r, http.StatusOK, page.Frame{Title: "Your projects cannot be opened"}, RescuePage(v))
}

// export sends what can be read of a project as a document that can be imported.
func (s *Pages) export(w http.ResponseWriter, r *http.Request) error {
	id, err := page.PathID(r, "project")
	if err != nil {
		return err
	}
	s.mu.Lock()
	found, err := s.Lost.Salvage()
	s.mu.Unlock()
	if err != nil {
		return err
	}
	for _, p := range found.Projects {
		if p.ID != id {
			continue
		}
		data, err := document.Encode(p.Doc)
		if err != nil {
			return err
		}
		w.Header().Set("Content-Type", "application/json")
		w.Header().Set("Content-Disposition", "attachment; filename=\""+form.FileName(p.Doc.Project.Name)+".json\"; filename*=UTF-8''"+url.PathEscape(p.Doc.Project.Name)+".json")
		_, _ = w.Write(data)
		return nil
	}
	return page.ErrNotFound
}

func (s *Pages) download(w http.ResponseWriter, r *http.Request) error {
	c, err := s.named(r)
	if err != nil {
		return err
	}
	w.Header().Set("Content-Type", "application/vnd.sqlite3")
	w.Header().Set("Content-Disposition", `attachment; filename="`+filepath.Base(c.Path)+`"`)
	http.ServeFile(w, r, c.Path)
	return nil
}

func (s *Pages) goBack(w http.ResponseWriter, r *http.Request) error {
	c, err := s.named(r)
	if err != nil {
		return err
	}
	return s.choose(w, r, func(ctx context.Context, now time.Time) (*store.Store, string, error) {
		return s.Lost.GoBack(ctx, c.Path, now)
	})
}

func (s *Pages) begin(w http.ResponseWriter, r *http.Request) error {
	return s.choose(w, r, s.Lost.Begin)
}

// choose does what was chosen, once, and hands the open file on: from then on the ordinary pages answer.
func (s *Pages) choose(w http.ResponseWriter, r *http.Request, do func(context.Context, time.Time) (*store.Store, string, error)) error {
	s.mu.Lock()
	defer s.mu.Unlock()
	if s.chosen {
		return page.SeeOther(w, r, "/")
	}
	kept, _, err := do(context.WithoutCancel(r.Context()), s.Now()) // a browser that leaves does not stop it half way
	if err != nil {
		return fmt.Errorf("%w: %w", page.ErrNotChosen, err)
	}
	if err := s.Opened(kept); err != nil {
		return err
	}
	s.chosen = true
	return page.SeeOther(w, r, "/")
}

// named finds the copy that the address names.
func (s *Pages) named(r *http.Request) (store.Backup, error) {
	all, err := store.Copies(s.Lost.Lost.Path)
	if err != nil {
		return store.Backup{}, err
	}
	for _, c := range all {
		if strconv.Itoa(c.Number) == chi.URLParam(r, "copy") {
			return c, nil
		}
	}
	return store.Backup{}, page.ErrNotFound
}
