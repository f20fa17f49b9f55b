package page

import (
	"bytes"
	"cmp"
	"context"
	"errors"
	"fmt"
	"net/http"
	"strconv"
	"strings"

	"github.com/a-h/templ"
	"github.com/go-chi/chi/v5"

	"duskweight/internal/model"
	"duskweight/internal/model/unit"
	"duskweight/internal/store"
	"duskweight/web/form"
)

// handler answers a request or says why not. The adapter below is the only place where an error becomes a page.
type handler func(http.ResponseWriter, *http.Request) error

// Kinds of refusal that are born in this package.
var (
	ErrNotFound    = errors.New("page not found")
	ErrWrongMethod = errors.New("method not allowed")
	ErrWrongHost   = errors.New("request for another host")
	ErrForeignPage = errors.New("request from a page of another origin")
	ErrHeaders     = errors.New("too much before the body")
	ErrNotAForm    = errors.New("body is not a form")
	ErrNotChosen   = errors.New("the way out of a lost file could not be gone")
)

// BadRequest is a request that no page of ours sends; the text is a sentence for the reader.
type BadRequest string

func (e BadRequest) Error() string { return string(e) }

// Page adapts a handler: what it returns is shown as a page, once, and what nobody foresaw is logged, once.
func (s *Site) Page(h handler) http.HandlerFunc {
	return func(w http.ResponseWriter, r *http.Request) {
		defer func() {
			if p := recover(); p != nil {
				if p == http.ErrAbortHandler {
					panic(p)
				}
				s.Fail(w, r, fmt.Errorf("panic: %v", p))
			}
		}()
		if err := h(w, r); err != nil {
			s.Fail(w, r, err)
		}
	}
}

// Show renders a page into memory and only then answers, so that a failing page is an error page and not half a page.
func (s *Site) Show(w http.ResponseWriter, r *http.Request, status int, f Frame, body templ.Component) error {
	page, err := Rendered(r, s.layout(f, body))
	if err == nil && !f.Paper && !f.Bare {
		page = s.Words.Link(page, false)
	}
	return send(w, status, page, err)
}

// Write renders a part of a page into memory and answers with it.
func (s *Site) Write(w http.ResponseWriter, r *http.Request, status int, c templ.Component) error {
	part, err := Rendered(r, c)
	if err == nil {
		part = s.Words.Link(part, true)
	}
	return send(w, status, part, err)
}

func Rendered(r *http.Request, c templ.Component) ([]byte, error) {
	var b bytes.Buffer
	if err := c.Render(r.Context(), &b); err != nil {
		return nil, fmt.Errorf("render: %w", err)
	}
	return b.Bytes(), nil
}

func send(w http.ResponseWriter, status int, body []byte, err error) error {
	if err != nil {
		return err
	}
	w.Header().Set("Content-Type", "text/html; charset=utf-8")
	w.Header().Set("Content-Length", strconv.Itoa(len(body)))
	w.WriteHeader(status)
	_, _ = w.Write(body) // a browser that left is no failure of ours
	return nil
}

// SeeOther sends the browser to another page after a change.
func SeeOther(w http.ResponseWriter, r *http.Request, url string) error {
	http.Redirect(w, r, url, http.StatusSeeOther)
	return nil
}

// Refusal is an error as its reader sees it.
type Refusal struct {
	Status   int
	Title    string
	Say      []string
	Problems []form.ProblemView
	Conflict *Conflict
}

// Fail answers with the page of an error. The log names the page by its place among the pages: an address may hold what
// somebody typed.
func (s *Site) Fail(w http.ResponseWriter, r *http.Request, err error) {
	if errors.Is(err, context.Canceled) && r.Context().Err() != nil { // whoever asked has left
		w.WriteHeader(http.StatusServiceUnavailable)
		return
	}
	f := s.refusalOf(r, err)
	if f.Status >= http.StatusInternalServerError && f.Status != http.StatusServiceUnavailable {
		s.Log.Error("a page failed", "method", r.Method, "page", chi.RouteContext(r.Context()).RoutePattern(), "error", err)
	}
	if wantsJSON(r) {
		_ = WriteJSON(w, f.Status, map[string]any{"say": strings.Join(f.Say, " "), "problems": f.Problems})
		return
	}
	if f.Status == http.StatusMisdirectedRequest || f.Status == http.StatusRequestHeaderFieldsTooLarge { // nothing of ours is shown under another name
		http.Error(w, f.Say[0], f.Status)
		return
	}
	if err := s.Show(w, r, f.Status, Frame{Title: f.Title, Refused: f.Problems != nil}, Refused(f)); err != nil {
		s.Log.Error("the error page failed", "error", err)
		http.Error(w, "Something went wrong. The window where the program was started says more.", http.StatusInternalServerError)
	}
}

// refusalOf says what kind of error it is. An unforeseen error shows nothing of its own text.
func (s *Site) refusalOf(r *http.Request, err error) Refusal {
	var (
		problems model.Problems
		tooLarge *http.MaxBytesError
		bad      BadRequest
		clash    *Conflict
	)
	if kind := store.DiskError(err); kind != nil {
		err = errors.Join(err, kind)
	}
	switch {
	case errors.As(err, &clash):
		return Refusal{
			Status: http.StatusConflict, Title: "Saved somewhere else meanwhile", Conflict: clash,
			Say: []string{"This was changed on another page or in another window after you opened it. Nothing of yours was saved over it."},
		}
	case errors.As(err, &problems):
		return Refusal{Status: http.StatusUnprocessableEntity, Title: "This cannot be taken as it is", Problems: ProblemsOf(problems.Whole(), s.unitsOr(r))}
	case errors.As(err, &tooLarge):
		return Refusal{
			Status: http.StatusRequestEntityTooLarge, Title: "Too large",
			Say: []string{fmt.Sprintf("At most %s KiB are read here. Nothing was changed.", unit.Thousands(int(tooLarge.Limit>>10)))},
		}
	case errors.As(err, &bad):
		return Refusal{Status: http.StatusBadRequest, Title: "Not understood", Say: []string{string(bad), "Nothing was changed."}}
	case errors.Is(err, store.ErrStale):
		return Refusal{
			Status: http.StatusConflict, Title: "Saved somewhere else meanwhile",
			Say: []string{"This was changed on another page or in another window after you opened it. Nothing of yours was saved over it. Open the page again and repeat your change."},
		}
	case errors.Is(err, ErrNotChosen):
		return Refusal{
			Status: http.StatusConflict, Title: "Not done",
			Say: []string{"This copy cannot be used, or there is no room on the disk. The file that lay there is kept. Go back to the first page and choose another copy, or make room on the disk."},
		}
	case errors.Is(err, store.ErrReadOnly), errors.Is(err, store.ErrMoved):
		return Refusal{Status: http.StatusForbidden, Title: "Nothing can be saved", Say: []string{cmp.Or(s.readOnly(), "The file with your projects is write-protected. Allow Duskweight to write to that file and its folder, then start it again. Nothing of this was saved.")}}
	case errors.Is(err, store.ErrWait):
		return Refusal{Status: http.StatusServiceUnavailable, Title: "Going back to a copy",
			Say: []string{"Nothing of this was saved: all projects go back to a copy at this moment. Wait a few seconds, then save again."}}
	case errors.Is(err, store.ErrFull):
		return Refusal{Status: http.StatusInsufficientStorage, Title: "The disk is full",
			Say: []string{"Nothing of this was saved: there is no room left on the disk that holds your data. Make room, then save again. What was saved before is still there."}}
	case errors.Is(err, store.ErrDisk):
		return Refusal{Status: http.StatusInternalServerError, Title: "The disk reports a fault",
			Say: []string{"Nothing of this was saved, and the file with your projects may be damaged.", "End Duskweight and start it again. It then checks the whole file, and offers what can be read and your spare copies."}}
	case errors.Is(err, store.ErrNothing):
		return Refusal{Status: http.StatusConflict, Title: "Nothing to undo", Say: []string{"There is nothing left to undo or redo."}}
	case errors.Is(err, ErrNotFound), errors.Is(err, store.ErrNotFound):
		return Refusal{Status: http.StatusNotFound, Title: "Not here", Say: []string{"There is nothing at this address. It may have been deleted: the list of projects can bring it back."}}
	case errors.Is(err, ErrWrongMethod):
		return Refusal{Status: http.StatusMethodNotAllowed, Title: "Not that way", Say: []string{"This page does not accept " + r.Method + "."}}
	case errors.Is(err, ErrWrongHost):
		return Refusal{Status: http.StatusMisdirectedRequest, Title: "Wrong name", Say: []string{"This program answers only to 127.0.0.1, localhost and [::1]."}}
	case errors.Is(err, ErrHeaders):
		return Refusal{Status: http.StatusRequestHeaderFieldsTooLarge, Title: "Too much at once",
			Say: []string{"The address, the cookies and what else the browser sends are too long together. Delete the cookies of this address in the browser, then open the page again."}}
	case errors.Is(err, ErrForeignPage):
		return Refusal{Status: http.StatusForbidden, Title: "Not from here", Say: []string{"This was sent by a page that is not ours. Nothing was changed."}}
	case errors.Is(err, ErrNotAForm):
		return Refusal{Status: http.StatusUnsupportedMediaType, Title: "Not a form", Say: []string{"Only a form can be sent here. Nothing was changed."}}
	}
	return Refusal{
		Status: http.StatusInternalServerError, Title: "Something went wrong",
		Say: []string{"The page could not be made. The window where the program was started says more. What was saved before is still there."},
	}
}
