package place

import (
	"fmt"
	"math"
	"net/http"
	"slices"
	"strconv"

	"duskweight/internal/document"
	"duskweight/internal/draw"
	"duskweight/internal/model"
	"duskweight/internal/model/lift/path"
	"duskweight/internal/model/sun"
	"duskweight/internal/model/unit"
	"duskweight/internal/say"
	"duskweight/internal/store"
	"duskweight/web/form"
	"duskweight/web/page"
)

// filesView are the weather files that the project has: one with an open question as a card, the others a line each.
type filesView struct {
	Brief    string
	Unused   string // why they are not what the sun is known by
	Open     *fileView
	Others   []fileView
	Read     string // where files are read in
	Revision string
	URL      string // where a question is answered
}

// fileView is one weather file with its checks.
type fileView struct {
	Name, Brief, Sign, Word string
	Checks                  []fileCheck
	Index                   string // of the file, for its question
	AsksTypical             bool
}

// fileCheck is one thing that a weather file is looked at for.
type fileCheck struct{ Sign, Word, Label, Say string }

func filesViewOf(p store.Saved[model.Project], at placeAt, sys unit.System) *filesView {
	files := p.Value.Files()
	if len(files) == 0 {
		return nil
	}
	v := &filesView{Read: at.url + "/file", Revision: fmt.Sprint(p.Revision), URL: at.url + "/typical", Brief: counted(len(files)) + " of hours"}
	if first, last, ok := yearsOf(files); ok && len(files) > 1 {
		v.Brief += fmt.Sprintf(", %d to %d", first, last)
	}
	if door(p.Value) != partFiles {
		v.Unused = "They are kept, but the sun is known in another way now: choose “Hourly weather files” above, then what it is known by."
	}
	var rest []fileView
	for i, w := range files {
		one := fileViewOf(*w, i, p.Value.Place, sys)
		if one.Word != "" && v.Open == nil {
			v.Open = &one
			continue
		}
		if one.Word != "" {
			v.Others = append(v.Others, one)
		} else {
			rest = append(rest, one)
		}
	}
	v.Others = append(v.Others, rest...) // those with a question first
	return v
}

// yearsOf are the first and the last year of files that all say theirs.
func yearsOf(files []*sun.Series) (first, last int, ok bool) {
	first, last = math.MaxInt, 0
	for _, w := range files {
		y, known := w.Year.Value()
		if !known {
			return 0, 0, false
		}
		first, last = min(first, int(y)), max(last, int(y))
	}
	return first, last, true
}

func fileViewOf(w sun.Series, i int, place sun.Place, sys unit.System) fileView {
	v := fileView{Name: form.Clip(w.Name, page.PaperName), Index: page.Itoa(i), Brief: unit.YearIrradiations.Format(page.Sum(w.GHI)*3600, sys) + " a year on the flat"}
	if y, ok := w.Year.Value(); ok {
		v.Name = unit.CalendarYear(int(y)) + ", " + v.Name
	}
	add := func(word path.Word, label, text string) {
		c := fileCheck{Sign: draw.Sign(word), Label: label, Say: text}
		switch word {
		case path.NotKnown:
			c.Word = "not known"
		case path.Tight:
			c.Word = "look at it"
		}
		v.Checks = append(v.Checks, c)
	}
	where := unit.Latitudes.Format(float64(w.Latitude), sys) + ", " + unit.Longitudes.Format(float64(w.Longitude), sys)
	switch km, far := apart(w, place); {
	case far:
		add(path.Tight, "Place", where+": "+unit.Distances.Format(km*1000, sys)+" from yours")
	case km > 0:
		add(path.Holds, "Place", where+": "+unit.Distances.Format(km*1000, sys)+" from yours")
	default:
		add(path.Holds, "Place", where)
	}
	add(path.Holds, "Hours", unit.Thousands(len(w.GHI))+" hours of one year")
	add(path.Holds, "Sunlight", v.Brief)
	add(path.Holds, "Diffuse", unit.WholePercent(page.Sum(w.DHI)/max(page.Sum(w.GHI), 1))+" of the light is diffuse")
	if slip, asked := w.Slip.Value(); asked {
		late := "late"
		if slip < 0 {
			late = "early"
		}
		v.Word = "not known: its clock"
		add(path.NotKnown, "Clock", fmt.Sprintf("its sun runs about %s %s; the reason is not known. Read the file again to answer", say.Time(unit.Duration(math.Abs(float64(slip)))).To(2).In(sys), late))
	} else {
		add(path.Holds, "Clock", "UTC"+unit.UTCOffsets.Format(float64(w.UTCOffset), sys)+", its sun agrees or was answered for")
	}
	switch typical, known := w.IsTypical(); {
	case !known:
		v.AsksTypical = true
		if v.Word != "" {
			v.Word += ", and what year it is"
		} else {
			v.Word = "not known: what year it is"
		}
		add(path.NotKnown, "Year", "one real year, or a typical one? Answer below")
	case typical:
		add(path.Holds, "Year", "a typical year, put together from months of several years; it hides bad ones")
	default:
		add(path.Holds, "Year", "one real year")
	}
	v.Sign = draw.Sign(path.Holds)
	if v.Word != "" {
		v.Sign = draw.Sign(path.NotKnown)
	}
	return v
}

// answerTypical stores whether a weather file of the project is a typical year or one real one.
func (s *Pages) answerTypical(w http.ResponseWriter, r *http.Request) error {
	p, err := s.Project(r)
	if err != nil {
		return err
	}
	typed, revision, err := page.PostedForm(r)
	if err != nil {
		return err
	}
	v := document.Clone(p.Value)
	files := v.Files()
	i, err := strconv.Atoi(typed.Get("file"))
	answer := unit.Answer(typed.Get("typical"))
	if err != nil || i < 0 || i >= len(files) || !slices.Contains([]unit.Answer{unit.Yes, unit.No}, answer) {
		return page.BadRequest("Choose a weather file of the project, and whether it is a typical year or one real year.")
	}
	files[i].Typical = answer
	said := map[unit.Answer]string{unit.Yes: "Weather file: a typical year", unit.No: "Weather file: one real year"}[answer]
	if _, err = s.Store.SaveProject(r.Context(), p.ID, v, store.Edit{Revision: revision, Said: said}, s.Now()); err != nil {
		return err
	}
	return page.SeeOther(w, r, page.ProjectURL(p.ID)+"/place#files")
}
