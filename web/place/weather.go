package place

import (
	"bytes"
	"cmp"
	"crypto/rand"
	"errors"
	"fmt"
	"io"
	"net/http"
	"strings"
	"sync"
	"time"

	"duskweight/internal/document"
	"duskweight/internal/model"
	"duskweight/internal/model/sun"
	"duskweight/internal/model/unit"
	"duskweight/internal/store"
	"duskweight/internal/weather"
	"duskweight/web/form"
	"duskweight/web/page"
)

// The page Weather file: /projects/{project}/place/file. A file is read into memory and shown; nothing of it is stored
// before its reader says so.

const (
	WeatherLimit = 64 << 20 // bytes of a form with a weather file
	weatherKept  = 4        // files that wait for an answer
	weatherSpace = 16 << 20 // bytes of them together; the last one waits however large it is
	readAtOnce   = 2        // forms with files
	weatherWaits = 10 * time.Minute
)

// desk keeps the last files that were read and wait for an answer.
type desk struct {
	mu   sync.Mutex
	kept []sheetOnDesk
	read []*reading // large files that are being read
}

// sheetOnDesk is one file that waits: its bytes as long as they may be read another way, and its year once it is read.
type sheetOnDesk struct {
	token   string
	project int64
	at      time.Time
	file    string
	data    []byte
	mapping weather.Mapping // how it was shown
	year    *sun.Series     // nil until it is read in full
	many    bool            // it is read as several years
	told    func(int64)     // is told how far it is read; nil for a small file
	years   []*sun.Series   // where there are several
	said    weather.Mapping // what the file itself says of its place, where it was read in full
}

// put lays a file on the desk for as long as it may wait; the oldest go where there is no room.
func (d *desk) put(s sheetOnDesk) {
	d.mu.Lock()
	defer d.mu.Unlock()
	d.kept = append(d.kept, s)
	first, size := len(d.kept)-1, d.kept[len(d.kept)-1].size()
	for first > 0 && len(d.kept)-first < weatherKept && size+d.kept[first-1].size() <= weatherSpace {
		first--
		size += d.kept[first].size()
	}
	d.kept = append([]sheetOnDesk(nil), d.kept[first:]...)
	token := s.token // and not the file
	time.AfterFunc(weatherWaits, func() { d.drop(token) })
}

// size is how many bytes a file holds while it waits: its text, and three columns of hours for each year.
func (s sheetOnDesk) size() int {
	years := len(s.years)
	if s.year != nil {
		years++
	}
	return len(s.data) + years*3*8*sun.YearHours
}

// find gives the file of a token and a project, and forgets all that waited too long.
func (d *desk) find(token string, project int64, now time.Time) (sheetOnDesk, bool) {
	d.mu.Lock()
	defer d.mu.Unlock()
	var fresh []sheetOnDesk
	for _, s := range d.kept {
		if now.Sub(s.at) < weatherWaits {
			fresh = append(fresh, s)
		}
	}
	d.kept = fresh
	for _, s := range fresh {
		if s.token == token && s.project == project {
			return s, true
		}
	}
	return sheetOnDesk{}, false
}

// drop takes a file off the desk.
func (d *desk) drop(token string) {
	d.mu.Lock()
	defer d.mu.Unlock()
	for i, s := range d.kept {
		if s.token == token {
			d.kept = append(append([]sheetOnDesk(nil), d.kept[:i]...), d.kept[i+1:]...)
			return
		}
	}
}

const weatherGone = "This file is no longer in memory: it waits ten minutes, and only the last four wait. Choose it again."

func (s *Pages) showWeather(w http.ResponseWriter, r *http.Request) error {
	p, err := s.Project(r)
	if err != nil {
		return err
	}
	return s.weatherPage(w, r, p, http.StatusOK, weatherView{})
}

func (s *Pages) weatherPage(w http.ResponseWriter, r *http.Request, p store.Saved[model.Project], status int, v weatherView) error {
	v.URL, v.Back, v.Revision = page.ProjectURL(p.ID)+"/place/file", page.ProjectURL(p.ID)+"/place", fmt.Sprint(p.Revision)
	if files := p.Value.Files(); len(files) == 1 {
		v.Now = files[0].Name
	} else if len(files) > 1 {
		v.Now = fmt.Sprintf("%d files, the first is %s", len(files), files[0].Name)
	}
	f, err := s.ProjectFrame(r.Context(), p, "Weather file", v.Back)
	if err != nil {
		return err
	}
	f.Refused = status >= http.StatusBadRequest
	return s.Show(w, r, status, f, weatherPage(v))
}

// readWeather takes a file that was sent and shows what it holds.
func (s *Pages) readWeather(w http.ResponseWriter, r *http.Request) error {
	p, err := s.Project(r)
	if err != nil {
		return err
	}
	files, err := postedWeather(r)
	if _, ok := errors.AsType[*http.MaxBytesError](err); ok {
		return s.weatherPage(w, r, p, http.StatusRequestEntityTooLarge, weatherView{Faults: []string{
			fmt.Sprintf("This file is larger than %d MB. A year of hours has about 2 MB: is this the right file?", weather.Largest>>20)}})
	}
	if bad, ok := errors.AsType[page.BadRequest](err); ok {
		return s.weatherPage(w, r, p, http.StatusUnprocessableEntity, weatherView{Faults: []string{string(bad)}})
	}
	if err != nil {
		return err
	}
	size := 0
	for _, f := range files {
		size += len(f.data)
	}
	return s.slowly(w, r, p, files[0].name, size, func(w http.ResponseWriter, r *http.Request, progress func(int64)) error {
		on := sheetOnDesk{token: rand.Text(), project: p.ID, at: s.Now(), told: progress}
		if ok, err := s.tryYears(w, r, p, on, files, weather.Mapping{}); ok || err != nil {
			return err
		}
		on.file, on.data = files[0].name, files[0].data
		return s.tryWeather(w, r, p, on, weather.Mapping{}, false)
	})
}

// mostFiles is how many weather files are taken at once: what a project may have.
const mostFiles = 20

// postedWeather reads the parts "file" of a form into memory. What is larger than a weather file may be is refused as
// what is larger than the route takes.
func postedWeather(r *http.Request) (files []sentFile, err error) {
	parts, err := r.MultipartReader()
	if err != nil {
		return nil, page.BadRequest("Choose a file first.")
	}
	for {
		part, err := parts.NextPart()
		switch {
		case errors.Is(err, io.EOF) && len(files) == 0:
			return nil, page.BadRequest("Choose a file first.")
		case errors.Is(err, io.EOF):
			return files, nil
		case err != nil:
			return nil, arrived(err)
		}
		if part.FormName() != "file" || part.FileName() == "" {
			continue
		}
		data, err := io.ReadAll(io.LimitReader(part, weather.Largest+1))
		if err != nil {
			return nil, arrived(err)
		}
		if len(data) > weather.Largest {
			return nil, &http.MaxBytesError{Limit: weather.Largest}
		}
		if len(files) == mostFiles {
			return nil, page.BadRequest(fmt.Sprintf("At most %d files at once.", mostFiles))
		}
		files = append(files, sentFile{plainText(part.FileName(), 60), data})
	}
}

// arrived is why a file did not arrive: it was larger than the route takes, or the line broke.
func arrived(err error) error {
	if _, tooLarge := errors.AsType[*http.MaxBytesError](err); tooLarge {
		return err
	}
	return page.BadRequest("The file did not arrive in full. Choose it again.")
}

// plainText is a text of a file without what cannot be printed, cut to n letters' room.
func plainText(text string, n int) string {
	return form.Clip(strings.Map(func(c rune) rune {
		if c < ' ' || c == 0x7f || c == '\ufffd' || c == '\u2028' || c == '\u2029' || c >= 0x80 && c < 0xa0 {
			return ' '
		}
		return c
	}, strings.ToValidUTF8(text, " ")), n)
}

// tryWeather reads a file with a mapping and shows it: as a year that may be used, as a table whose columns are to be
// named, or as refused. again says that the mapping was sent by its form.
func (s *Pages) tryWeather(w http.ResponseWriter, r *http.Request, p store.Saved[model.Project], on sheetOnDesk, hint weather.Mapping, again bool) error {
	sys, err := s.Units(r.Context())
	if err != nil {
		return err
	}
	year, report, err := weather.Read(bytes.NewReader(on.data), hint, on.told)
	refused, isRefused := errors.AsType[*weather.Refused](err)
	if err != nil && !isRefused {
		return err
	}
	look, lookErr := weather.Look(bytes.NewReader(on.data), hint)
	if lookErr != nil && !isRefused {
		return lookErr
	}
	v := weatherView{File: on.file, Token: on.token}
	if lookErr == nil {
		v.Rows = previewRows(look, sys)
	}
	table := lookErr == nil && len(look.Heads) > 1
	if err == nil {
		on.mapping = report.Mapping
	}
	if table {
		on.mapping = look.Mapping
		if report.Mapping.Stamp != "" {
			on.mapping.Stamp, on.mapping.Order = report.Mapping.Stamp, report.Mapping.Order
		}
		shown, own := offered(on.mapping, refused, p.Value.Place)
		v.Mapping = mappingView(shown, look, sys)
		if own {
			v.Mapping.Groups[0].Hint = "The file does not say where it is from. These are your project's place and clock: check them."
		}
	}
	if isRefused {
		v.Faults, v.More = faultLines(refused, sys)
		v.Asks = table && !again && (look.Refused != nil || refused.Best != weather.Mapping{}) && general(refused) // a year that is wrong as a whole is refused, not asked about
		if table {
			s.desk.put(on)
		}
		status := http.StatusUnprocessableEntity
		if v.Asks {
			status = http.StatusOK
		}
		return s.weatherPage(w, r, p, status, v)
	}
	year.Name, year.Source = plainText(year.Name, 60), plainText(year.Source, 150)
	if year.Name == "" {
		year.Name = on.file
	}
	if _, far := apart(year, p.Value.Place); !far && !report.Mapping.Elevation.Is {
		year.Elevation = p.Value.Place.Elevation.Or(0)
	}
	on.year, on.said = &year, report.Mapping
	s.desk.put(on)
	v.Year = weatherYearOf(year, report, p.Value.Place, sys)
	v.Slip = slipViewOf(report)
	return s.weatherPage(w, r, p, http.StatusOK, v)
}

// offered is the mapping that the form shows: with the units that fit better where they are in doubt, and with the project's
// place where the file says none (own). Nothing of it is used before its reader sends it.
func offered(m weather.Mapping, refused *weather.Refused, place sun.Place) (out weather.Mapping, own bool) {
	if refused != nil {
		m.RadiationUnit = cmp.Or(refused.Best.RadiationUnit, m.RadiationUnit)
		m.TemperatureUnit = cmp.Or(refused.Best.TemperatureUnit, m.TemperatureUnit)
		m.Stamp = cmp.Or(refused.Best.Stamp, m.Stamp)
		if refused.Best.StampZone.Is {
			m.StampZone = refused.Best.StampZone
		}
	}
	if m.Latitude.Is || m.Longitude.Is || !place.Latitude.Is || !place.Longitude.Is {
		return m, false
	}
	m.Latitude, m.Longitude = place.Latitude, place.Longitude
	if !m.UTCOffset.Is {
		m.UTCOffset = place.UTCOffset
	}
	return m, true
}

// general reports whether nothing but the naming of columns, units and place is missing.
func general(r *weather.Refused) bool {
	for _, f := range r.Faults {
		if f.Line > 0 || f.Value != "" {
			return false
		}
	}
	return true
}

// mapWeather reads a file that waits with the columns that its form names.
func (s *Pages) mapWeather(w http.ResponseWriter, r *http.Request) error {
	p, on, err := s.waiting(w, r)
	if err != nil || on == nil {
		return err
	}
	sys, err := s.Units(r.Context())
	if err != nil {
		return err
	}
	typedIn := form.UnitsOf(r.PostForm, sys)
	hint, faults := mappingOf(r.PostForm, on.mapping, typedIn)
	if len(faults) > 0 {
		look, err := weather.Look(bytes.NewReader(on.data), hint)
		if err != nil {
			return err
		}
		v := weatherView{File: on.file, Token: on.token, Faults: faults, Rows: previewRows(look, sys), Mapping: mappingView(look.Mapping, look, typedIn)}
		v.Mapping.keep(r.PostForm)
		return s.weatherPage(w, r, p, http.StatusUnprocessableEntity, v)
	}
	s.desk.drop(on.token)
	return s.readAgain(w, r, p, on, hint)
}

// readAgain reads a file that waits anew, with another mapping.
func (s *Pages) readAgain(w http.ResponseWriter, r *http.Request, p store.Saved[model.Project], on *sheetOnDesk, hint weather.Mapping) error {
	next := on.again(s.Now())
	return s.slowly(w, r, p, on.file, len(on.data), func(w http.ResponseWriter, r *http.Request, progress func(int64)) error {
		next.told = progress
		if next.many {
			_, err := s.tryYears(w, r, p, next, []sentFile{{next.file, next.data}}, hint)
			return err
		}
		return s.tryWeather(w, r, p, next, hint, true)
	})
}

// again is the same file, to be read anew.
func (on sheetOnDesk) again(now time.Time) sheetOnDesk {
	on.token, on.at, on.year, on.years = rand.Text(), now, nil, nil
	return on
}

// waiting finds the file that a form speaks of; where it is gone it shows the page that says so, and gives nil.
func (s *Pages) waiting(w http.ResponseWriter, r *http.Request) (store.Saved[model.Project], *sheetOnDesk, error) {
	p, err := s.Project(r)
	if err != nil {
		return p, nil, err
	}
	if err := page.ParseForm(r); err != nil {
		return p, nil, err
	}
	on, ok := s.desk.find(r.PostForm.Get("token"), p.ID, s.Now())
	if !ok {
		return p, nil, s.weatherPage(w, r, p, http.StatusGone, weatherView{Faults: []string{weatherGone}})
	}
	return p, &on, nil
}

// useWeather stores the year of a file that waits.
func (s *Pages) useWeather(w http.ResponseWriter, r *http.Request) error {
	p, on, err := s.waiting(w, r)
	if err != nil || on == nil {
		return err
	}
	_, revision, err := page.PostedForm(r)
	if err != nil {
		return err
	}
	if on.years != nil {
		return s.useYears(w, r, p, on, revision)
	}
	if on.year == nil {
		return page.BadRequest("This file is not understood yet.")
	}
	year := *on.year
	if a := unit.Answer(r.PostForm.Get("typical")); a == unit.Yes || a == unit.No {
		year.Typical = a
	}
	v := withWeather(p.Value, year, on.said)
	v.Weathers = nil
	if problems := model.CheckRanges(v); len(problems) > 0 {
		return problems
	}
	if _, err := s.Store.SaveProject(r.Context(), p.ID, v, store.Edit{Revision: revision, Said: "Weather file: " + on.year.Name}, s.Now()); err != nil {
		return err
	}
	s.desk.drop(on.token)
	return page.SeeOther(w, r, page.ProjectURL(p.ID)+"/place")
}

// withWeather is a project with a weather file; what it does not know of its place it takes from the file, as far as the
// file says it.
func withWeather(p model.Project, y sun.Series, said weather.Mapping) model.Project {
	p = document.Clone(p)
	p.Weather, p.Place.Sky = &y, sun.SkyFile
	if p.Place.Name == "" {
		p.Place.Name = y.Name
	}
	fill(&p.Place.Latitude, y.Latitude)
	fill(&p.Place.Longitude, y.Longitude)
	if said.Elevation.Is {
		fill(&p.Place.Elevation, y.Elevation)
	}
	if said.UTCOffset.Is {
		fill(&p.Place.UTCOffset, y.UTCOffset)
	}
	return p
}
