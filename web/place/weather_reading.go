package place

import (
	"bytes"
	"context"
	"crypto/rand"
	"fmt"
	"net/http"
	"sync/atomic"
	"time"

	"duskweight/internal/model"
	"duskweight/internal/model/unit"
	"duskweight/internal/store"
	"duskweight/web/page"
)

// A large file, such as a year of minutes, takes seconds to read. It is read beside the request, and a page with a bar, which
// comes again by itself every second also without scripts, shows how far it is until the result is there.

// slowSize is the size in bytes from which on a bar is shown: a year of hours with every column that people keep has less.
const slowSize = 6 << 20

// passes is how often a file is read through: once for the years that it may hold, and once for the one that it has.
const passes = 2

// reading is one large file that is being read. Its answer is only looked at when finished is closed.
type reading struct {
	token    string
	project  int64
	at       time.Time
	file     string
	size     int64
	read     atomic.Int64 // bytes, over all passes
	finished chan struct{}
	answer   answer
}

// answer is what a handler writes, kept.
type answer struct {
	header http.Header
	status int
	body   bytes.Buffer
}

func (a *answer) Header() http.Header { return a.header }

func (a *answer) WriteHeader(status int) {
	if a.status == 0 {
		a.status = status
	}
}

func (a *answer) Write(b []byte) (int, error) {
	a.WriteHeader(http.StatusOK)
	return a.body.Write(b)
}

// progress takes the bytes of the file worked through so far, pass by pass.
func (g *reading) progress() func(int64) {
	before, last := int64(0), int64(0)
	return func(done int64) {
		if done < last {
			before += g.size
		}
		last = done
		g.read.Store(before + done)
	}
}

// share is how much of the work is done, 0 to 1.
func (g *reading) share() float64 {
	return min(0.99, float64(g.read.Load())/float64(passes*g.size))
}

// slowly does the work of a handler at once for a small file; for a large one it begins it, and sends to the page with the bar.
func (s *Pages) slowly(w http.ResponseWriter, r *http.Request, p store.Saved[model.Project], file string, size int, work func(w http.ResponseWriter, r *http.Request, progress func(int64)) error) error {
	if size < slowSize {
		return work(w, r, nil)
	}
	g := &reading{token: rand.Text(), project: p.ID, at: s.Now(), file: file, size: int64(size), finished: make(chan struct{}), answer: answer{header: http.Header{}}}
	s.desk.begin(g)
	beside := r.Clone(context.WithoutCancel(r.Context()))
	go func() {
		defer close(g.finished)
		s.Page(func(w http.ResponseWriter, r *http.Request) error { return work(w, r, g.progress()) })(&g.answer, beside)
	}()
	return page.SeeOther(w, r, page.ProjectURL(p.ID)+"/place/file/reading?token="+g.token)
}

// begin keeps a file that is being read; the oldest of more than are kept is forgotten.
func (d *desk) begin(g *reading) {
	d.mu.Lock()
	defer d.mu.Unlock()
	d.read = append(d.read, g)
	d.read = append([]*reading(nil), d.read[max(0, len(d.read)-weatherKept):]...)
}

// reading gives the file of a token and a project that is being read, and forgets all that waited too long.
func (d *desk) reading(token string, project int64, now time.Time) *reading {
	d.mu.Lock()
	defer d.mu.Unlock()
	var fresh []*reading
	var found *reading
	for _, g := range d.read {
		if now.Sub(g.at) < weatherWaits {
			fresh = append(fresh, g)
			if g.token == token && g.project == project {
				found = g
			}
		}
	}
	d.read = fresh
	return found
}

// showReading shows how far a large file is, and its answer once it is there.
func (s *Pages) showReading(w http.ResponseWriter, r *http.Request) error {
	p, err := s.Project(r)
	if err != nil {
		return err
	}
	g := s.desk.reading(r.URL.Query().Get("token"), p.ID, s.Now())
	if g == nil {
		return s.weatherPage(w, r, p, http.StatusGone, weatherView{Faults: []string{weatherGone}})
	}
	select {
	case <-g.finished:
		for name, values := range g.answer.header {
			w.Header()[name] = values
		}
		w.WriteHeader(g.answer.status)
		_, err := w.Write(g.answer.body.Bytes())
		return err
	case <-time.After(readingBeat):
	}
	w.Header().Set("Refresh", "1")
	share := g.share()
	return s.weatherPage(w, r, p, http.StatusOK, weatherView{File: g.file, Reading: &readingView{Share: fmt.Sprintf("%.2f", share), Say: unit.WholePercent(share) + " is read. This page shows the result by itself.", Again: r.URL.RequestURI()}})
}

// readingBeat is how long the page with the bar waits for the end before it is shown.
const readingBeat = 200 * time.Millisecond

// readingView is the bar, ready to print.
type readingView struct{ Share, Say, Again string }
