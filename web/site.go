// Package web is everything that speaks HTTP: routes, pages, forms and the few scripts they carry. It computes nothing:
// it turns typed text into a design, asks the model, keeps what is saved in the store, and prints strings that are
// ready to read.
package web

import (
	"errors"
	"log/slog"
	"net/http"
	"time"

	"duskweight/internal/store"
)

// Config is what a site is made of.
type Config struct {
	Store   *store.Store
	Now     func() time.Time
	Version string
	File    string
	Log     *slog.Logger
}

// Site is the whole web side of one running program.
type Site struct {
	Store   *store.Store
	Now     func() time.Time // the only clock of the pages
	Version string           // shown in the footer and on the sheet
	File    string           // the data file, shown in the footer
	Log     *slog.Logger

	assets  *assets
	grounds *grounds
	desk    *desk
	guide   *guide
	tables  Tables
	words   *lexicon
}

// New checks that a site has what it needs and reads its embedded files.
func New(c Config) (*Site, error) {
	s := Site{Store: c.Store, Now: c.Now, Version: c.Version, File: c.File, Log: c.Log}
	if s.Store == nil || s.Now == nil || s.Log == nil {
		return nil, errors.New("a site needs a store, a clock and a log")
	}
	var err error
	if s.assets, err = readAssets(staticFiles); err != nil {
		return nil, err
	}
	s.grounds, s.desk, s.tables = &grounds{now: s.Now}, &desk{}, AllTables()
	if s.guide, s.words, err = readGuide(); err != nil {
		return nil, err
	}
	return &s, nil
}

// Timeouts of a server that talks to one household. An import of 8 MiB over loopback takes a moment; a slow peer that
// holds a line open does not get longer.
const (
	readHeaderTimeout = 5 * time.Second
	readTimeout       = 30 * time.Second
	writeTimeout      = 60 * time.Second
	idleTimeout       = 2 * time.Minute
)

// Server is an http.Server for the site with every timeout and limit set.
func (s *Site) Server() *http.Server {
	return &http.Server{
		Handler:           s.Handler(),
		ReadHeaderTimeout: readHeaderTimeout,
		ReadTimeout:       readTimeout,
		WriteTimeout:      writeTimeout,
		IdleTimeout:       idleTimeout,
		MaxHeaderBytes:    headerLimit,
		ErrorLog:          slog.NewLogLogger(s.Log.Handler(), slog.LevelWarn),
	}
}
