// Package web is everything that speaks HTTP, put together: which rooms there are, at which addresses, and what guards
// them. Each subject has a room of its own below this folder; what rooms share is web/page, and what a form is, web/form.
package web

import (
	"embed"
	"errors"
	"log/slog"
	"net/http"
	"time"

	"duskweight/internal/store"
	"duskweight/web/guide"
	"duskweight/web/page"
	"duskweight/web/place"
	"duskweight/web/rescue"
)

//go:embed static
var staticFiles embed.FS

// Config is what a site is made of.
type Config struct {
	Store   *store.Store
	Now     func() time.Time // the only clock of the pages
	Version string           // shown in the footer and on the sheet
	File    string           // the data file, shown in the footer
	Log     *slog.Logger

	Lost   *store.Rescue            // in place of Store: a data file that cannot be used
	Opened func(*store.Store) error // is handed the file that is opened once somebody has chosen how to go on
}

// Site is the whole web side of one running program.
type Site struct {
	*page.Site
	guide  *guide.Pages
	place  *place.Pages
	rescue *rescue.Pages // nil where the data file is well
}

// New checks that a site has what it needs and reads its embedded files.
func New(c Config) (*Site, error) {
	shared, err := page.New(page.Site{Store: c.Store, Now: c.Now, Version: c.Version, File: c.File, Log: c.Log, Tables: AllTables()}, staticFiles)
	if err != nil {
		return nil, err
	}
	book, err := guide.New(shared)
	if err != nil {
		return nil, err
	}
	site := &Site{Site: shared, guide: book}
	switch {
	case c.Store != nil:
		site.place = place.New(shared)
	case c.Lost != nil && c.Opened != nil:
		site.rescue = &rescue.Pages{Site: shared, Lost: c.Lost, Opened: c.Opened}
	default:
		return nil, errors.New("a site needs a store, or a lost file and somebody who takes it over")
	}
	return site, nil
}

// Timeouts of a server that talks to one household. An import of 8 MiB over loopback takes a moment; a slow peer that
// holds a line open does not get longer.
const (
	readHeaderTimeout = 5 * time.Second
	readTimeout       = 30 * time.Second
	writeTimeout      = 60 * time.Second
	idleTimeout       = 2 * time.Minute
)

// Server is an http.Server for pages that a Site made, with every timeout and limit set.
func Server(pages http.Handler, log *slog.Logger) *http.Server {
	return &http.Server{
		Handler:           pages,
		ReadHeaderTimeout: readHeaderTimeout,
		ReadTimeout:       readTimeout,
		WriteTimeout:      writeTimeout,
		IdleTimeout:       idleTimeout,
		MaxHeaderBytes:    headerLimit,

		DisableGeneralOptionsHandler: true, // net/http would answer "OPTIONS *" before our guards
		ErrorLog:                     slog.NewLogLogger(log.Handler(), slog.LevelWarn),
	}
}
