// Package page is what every page shares: the site that they stand on, the frame round them, the recipe of a page with a
// form, errors as pages (here only), how a number came about, tables, pictures and plots, addresses, and numbers in
// words. It shows no page of its own and knows no room.
package page

import (
	"errors"
	"io/fs"
	"log/slog"
	"time"

	"duskweight/internal/store"
)

// Site is what the pages of one running program share.
type Site struct {
	Store   *store.Store     // nil where no file is open, on the pages of a lost one
	Now     func() time.Time // the only clock of the pages
	Version string           // shown in the footer and on the sheet
	File    string           // the data file, shown in the footer
	Log     *slog.Logger
	Tables  Tables   // the inputs of all forms
	Words   *Lexicon // words that lead to the guide
	Grounds *Grounds
	Results *Results
	Years   *Years

	Assets *assets // the files of web/static
}

// New checks that a site has what it needs and reads the files that its pages use.
func New(s Site, files fs.FS) (*Site, error) {
	if s.Now == nil || s.Log == nil {
		return nil, errors.New("a site needs a clock and a log")
	}
	var err error
	if s.Assets, err = readAssets(files); err != nil {
		return nil, err
	}
	s.Grounds, s.Years = &Grounds{now: s.Now}, &Years{}
	s.Results = &Results{grounds: s.Grounds}
	return &s, nil
}
