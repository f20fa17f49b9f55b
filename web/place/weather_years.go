package place

import (
	"bytes"
	"errors"
	"fmt"
	"math"
	"net/http"
	"strings"

	"duskweight/internal/document"
	"duskweight/internal/model"
	"duskweight/internal/model/sun"
	"duskweight/internal/model/unit"
	"duskweight/internal/store"
	"duskweight/internal/weather"
	"duskweight/web/form"
	"duskweight/web/page"
)

// Several years of weather: one file that holds them, or several files sent together. They are listed with what was left
// out, and kept all together.

// sentFile is a file of a form.
type sentFile struct {
	name string
	data []byte
}

// manyView is the list of years that were read, ready to print.
type manyView struct {
	Headline string
	Rows     [][]string
	Left     []string // part years, and files that hold no year
	Against  []string // why they cannot be used together
	Add      string   // offers to keep the years that the project has; "" where it has none of this place
}

// tryYears reads every year of the files. ok is false where there is one year at most: then the one file is shown by
// itself.
func (s *Pages) tryYears(w http.ResponseWriter, r *http.Request, p store.Saved[model.Project], on sheetOnDesk, files []sentFile, hint weather.Mapping) (ok bool, err error) {
	sys, err := s.Units(r.Context())
	if err != nil {
		return true, err
	}
	var v manyView
	var asked weather.Report
	shown := weatherView{Token: on.token}
	for _, f := range files {
		years, left, _, err := weather.ReadYears(bytes.NewReader(f.data), hint, on.told)
		if len(files) == 1 && len(years) < 2 && len(left) < 2 {
			return false, nil
		}
		if refused, is := errors.AsType[*weather.Refused](err); is {
			lines, _ := faultLines(refused, sys)
			v.Left = append(v.Left, f.name+": "+lines[0]+" Choose this file alone, and its columns can be named.")
			continue
		}
		if err != nil {
			return true, err
		}
		for _, y := range years {
			one := y.Series
			one.Name, one.Source = plainText(one.Name, 60), plainText(one.Source, 150)
			if one.Name == "" {
				one.Name = f.name
			}
			on.years = append(on.years, &one)
			v.Rows = append(v.Rows, yearRow(one, y.Report, sys))
			v.Left = append(v.Left, doubts(one, y.Report, sys)...)
			if len(files) == 1 && (shown.Slip == nil || farther(y.Report, asked)) {
				shown.Slip, asked = slipViewOf(y.Report), y.Report
			}
		}
		for _, l := range left {
			v.Left = append(v.Left, f.name+": "+form.Sentence(plainText(l.In(sys), 400)))
		}
		on.file = f.name
	}
	if len(files) > 1 {
		on.file = page.Counted(len(files), "file")
	}
	shown.File = on.file
	if len(on.years) == 0 {
		shown.Faults = v.Left
		return true, s.weatherPage(w, r, p, http.StatusUnprocessableEntity, shown)
	}
	on.years = sun.InOrder(on.years)
	v.Headline = fmt.Sprintf("%s of weather, each run as it was.", counted(len(on.years)))
	v.Against = against(p.Value, on.years, sys)
	if say, far := farSay(*on.years[0], p.Value.Place, sys); far {
		v.Left = append([]string{say}, v.Left...)
	}
	if n := len(p.Value.Files()); n > 0 && len(against(p.Value, append(p.Value.Files(), on.years...), sys)) == 0 {
		v.Add = fmt.Sprintf("Keep the %s that the project has, too", counted(n))
	}
	if len(files) == 1 {
		on.many, on.data, on.mapping = true, files[0].data, asked.Mapping
	}
	shown.Many = &v
	s.desk.put(on)
	return true, s.weatherPage(w, r, p, http.StatusOK, shown)
}

// doubts are the questions that one of several years leaves open, each with its year before it.
func doubts(y sun.Series, r weather.Report, sys unit.System) (out []string) {
	for _, n := range r.Notes {
		if n.Asks != "" {
			out = append(out, yearName(y)+": "+form.Sentence(plainText(n.Say.In(sys), 400)))
		}
	}
	return out
}

// farther reports whether the sun of a year that asks about it runs further off than that of another one.
func farther(r, than weather.Report) bool {
	return slipViewOf(r) != nil && math.Abs(float64(r.Slip.Val)) > math.Abs(float64(than.Slip.Val))
}

func yearName(y sun.Series) string {
	if n, ok := y.Year.Value(); ok {
		return unit.CalendarYear(int(n))
	}
	return y.Name
}

func counted(n int) string { return page.Counted(n, "year") }

// yearRow is one year in the list.
func yearRow(y sun.Series, r weather.Report, sys unit.System) []string {
	name := "not said"
	if n, ok := y.Year.Value(); ok {
		name = unit.CalendarYear(int(n))
	}
	return []string{name, y.Name, unit.YearIrradiations.Format(float64(r.GHI), sys), unit.Temperatures.Format(float64(r.TMean), sys),
		filled(r.Gaps), knownOr(r.Slip, func(x unit.Duration) string { return unit.Rounded(float64(x)/60, 2) + " min" }, "–")}
}

// against says why a project cannot have these weather files together.
func against(p model.Project, files []*sun.Series, sys unit.System) (out []string) {
	for _, q := range model.CheckProject(withYears(p, files)) {
		if strings.HasPrefix(q.Path, "weather") {
			out = append(out, form.Sentence(q.Say.In(sys)))
		}
	}
	return out
}

// withYears is a project whose weather is that of the files.
func withYears(p model.Project, files []*sun.Series) model.Project {
	p = withWeather(p, *files[0], weather.Mapping{Elevation: unit.Of(files[0].Elevation), UTCOffset: unit.Of(files[0].UTCOffset)})
	p.TakeFiles(files)
	if len(files) > 1 {
		p.Place.Sky = sun.SkyFiles
	}
	return p
}

// useYears stores the years of files that wait.
func (s *Pages) useYears(w http.ResponseWriter, r *http.Request, p store.Saved[model.Project], on *sheetOnDesk, revision int64) error {
	files := on.years
	if r.PostForm.Get("add") == "yes" {
		files = sun.InOrder(append(document.Clone(p.Value).Files(), files...))
	}
	v := withYears(p.Value, files)
	if problems := model.CheckRanges(v); len(problems) > 0 {
		return problems
	}
	if why := against(p.Value, files, unit.Metric); len(why) > 0 {
		return page.BadRequest(strings.Join(why, " "))
	}
	if _, err := s.Store.SaveProject(r.Context(), p.ID, v, store.Edit{Revision: revision, Said: "Weather: " + counted(len(files))}, s.Now()); err != nil {
		return err
	}
	s.desk.drop(on.token)
	return page.SeeOther(w, r, page.ProjectURL(p.ID)+"/place")
}
