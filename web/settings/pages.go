// Package settings shows the page Settings (/settings): the units and the label for money, and the copies of the data
// file, which can be made, sent and gone back to.
package settings

import (
	"context"
	"fmt"
	"net/http"
	"os"
	"path/filepath"
	"strconv"
	"strings"

	"github.com/go-chi/chi/v5"

	"duskweight/internal/model"
	"duskweight/internal/store"
	"duskweight/web/page"
)

// Pages are the pages of this room.
type Pages struct{ *page.Site }

// Routes hangs the pages at their addresses.
func (s *Pages) Routes(r chi.Router) {
	r.Get("/healthz", s.Page(s.health))
	r.Get("/settings", s.Page(s.showSettings))
	r.Post("/settings", s.Page(s.saveSettings))
	r.Post("/settings/copy", s.Page(s.makeCopy))
	r.Post("/settings/download", s.Page(s.downloadAll))
	r.Get("/settings/copies/{copy}", s.Page(s.downloadCopy))
	r.Post("/settings/copies/{copy}/restore", s.Page(s.restoreCopy))
}

// Names of the settings in the store.
const (
	settingCurrency = "currency" // the label for money of new projects
)

// longestLabel is how many letters a label for money may have.
const longestLabel = 12

func (s *Pages) showSettings(w http.ResponseWriter, r *http.Request) error {
	v, err := s.settingsView(r.Context())
	if err != nil {
		return err
	}
	v.Saved = r.URL.Query().Has("saved")
	v.Copied = v.named(r.URL.Query().Get("copy"))
	v.Back, v.Before = v.named(r.URL.Query().Get("back")), v.named(r.URL.Query().Get("before"))
	return s.Show(w, r, http.StatusOK, page.Frame{Title: "Settings"}, SettingsPage(v))
}

func (s *Pages) settingsView(ctx context.Context) (SettingsView, error) {
	set, err := s.Store.Settings(ctx)
	if err != nil {
		return SettingsView{}, err
	}
	copies, err := s.Store.Backups()
	if err != nil {
		return SettingsView{}, err
	}
	v := SettingsView{Imperial: set[page.SettingUnits] == "imperial", Currency: set[settingCurrency], File: s.File, Version: s.Version}
	for _, c := range copies {
		row := CopyRow{Number: strconv.Itoa(c.Number), Name: filepath.Base(c.Path), Size: page.Bytes(c.Size), URL: "/settings/copies/" + strconv.Itoa(c.Number)}
		if !c.At.IsZero() {
			row.When = s.When(c.At)
		}
		v.Copies = append(v.Copies, row)
	}
	return v, nil
}

// named finds the row of a copy by its number; the zero row where there is none.
func (v SettingsView) named(number string) CopyRow {
	for _, c := range v.Copies {
		if c.Number == number {
			return c
		}
	}
	return CopyRow{}
}

// saveSettings saves units and label, or shows the page again with what is wrong.
func (s *Pages) saveSettings(w http.ResponseWriter, r *http.Request) error {
	if err := page.ParseForm(r); err != nil {
		return err
	}
	units, label := r.PostForm.Get("units"), strings.TrimSpace(r.PostForm.Get("currency"))
	if units != "metric" && units != "imperial" {
		return page.BadRequest("Choose metric or imperial units.")
	}
	if problem := labelProblem(label); problem != "" {
		v, err := s.settingsView(r.Context())
		if err != nil {
			return err
		}
		v.Imperial, v.Currency, v.Problem = units == "imperial", r.PostForm.Get("currency"), problem
		return s.Show(w, r, http.StatusUnprocessableEntity, page.Frame{Title: "Settings", Refused: true}, SettingsPage(v))
	}
	if err := s.Store.SaveSettings(r.Context(), map[string]string{page.SettingUnits: units, settingCurrency: label}); err != nil {
		return err
	}
	return page.SeeOther(w, r, "/settings?saved")
}

func labelProblem(label string) string {
	if n := len([]rune(label)); n > longestLabel {
		return fmt.Sprintf("At most %d letters; these are %d.", longestLabel, n)
	}
	if strings.ContainsFunc(label, func(r rune) bool { return r < ' ' || r == 0xFFFD || model.Unprintable(r) }) {
		return "There is a sign in it that cannot be shown."
	}
	return ""
}

// makeCopy makes a checked copy of the data file, if anything changed since the last one.
func (s *Pages) makeCopy(w http.ResponseWriter, r *http.Request) error {
	c, err := s.Store.Backup(r.Context(), s.Now())
	if err != nil {
		return err
	}
	return page.SeeOther(w, r, "/settings?copy="+strconv.Itoa(c.Number)+"#copies")
}

// downloadAll makes a checked copy and sends it. It is a POST, because it may write the copy.
func (s *Pages) downloadAll(w http.ResponseWriter, r *http.Request) error {
	c, err := s.Store.Backup(r.Context(), s.Now())
	if err != nil {
		return err
	}
	return sendCopy(w, r, c)
}

// downloadCopy sends one of the copies that the store lists.
func (s *Pages) downloadCopy(w http.ResponseWriter, r *http.Request) error {
	c, err := s.pathCopy(r)
	if err != nil {
		return err
	}
	return sendCopy(w, r, c)
}

// restoreCopy goes back to one of the copies. The page that follows offers to take it back.
func (s *Pages) restoreCopy(w http.ResponseWriter, r *http.Request) error {
	c, err := s.pathCopy(r)
	if err != nil {
		return err
	}
	before, err := s.Store.Restore(r.Context(), c.Path, s.Now())
	if err != nil {
		return err
	}
	return page.SeeOther(w, r, fmt.Sprintf("/settings?back=%d&before=%d#copies", c.Number, before.Number))
}

// pathCopy finds the copy that the address names.
func (s *Pages) pathCopy(r *http.Request) (store.Backup, error) {
	copies, err := s.Store.Backups()
	if err != nil {
		return store.Backup{}, err
	}
	for _, c := range copies {
		if strconv.Itoa(c.Number) == chi.URLParam(r, "copy") {
			return c, nil
		}
	}
	return store.Backup{}, page.ErrNotFound
}

func sendCopy(w http.ResponseWriter, r *http.Request, c store.Backup) error {
	f, err := os.Open(c.Path)
	if err != nil {
		return fmt.Errorf("send a copy: %w", err)
	}
	defer f.Close()
	info, err := f.Stat()
	if err != nil {
		return fmt.Errorf("send a copy: %w", err)
	}
	w.Header().Set("Content-Type", "application/vnd.sqlite3")
	w.Header().Set("Content-Disposition", `attachment; filename="`+filepath.Base(c.Path)+`"`)
	http.ServeContent(w, r, "", info.ModTime(), f)
	return nil
}
