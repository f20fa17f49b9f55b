package load

import (
	"net/url"
	"slices"
	"strconv"
	"strings"

	"duskweight/internal/document"
	"duskweight/internal/model"
	"duskweight/internal/model/load"
	"duskweight/web/form"
	"duskweight/web/page"
)

// The hours of a row are painted: its cells are checkboxes of the form, sent with a mark that the row was shown. Those that
// differ from what is saved are a painting.

// What a row of the strip sends beside its path, and the buttons of its question.
const (
	sentHours = ".hours" // each clock hour that is on
	sentStrip = ".strip" // the row was shown; "painted" where its hours are newer than the text of its card
	doSecond  = "second" // second:load.appliances[2], keep a further run as a row of its own
	doOne     = "one"    // leave it out
	nameAsk   = "paint"  // in the address: 2:00c000, a row with what is painted and waits for an answer
)

// painter reads the painted hours of a request.
type painter struct {
	saved model.Project
	day   load.Day
	typed url.Values
	asks  map[int][24]bool // rows painted with more runs than one
}

// rowPath is the path of an appliance in the form.
func rowPath(i int) string { return appliances + "[" + strconv.Itoa(i) + "]" }

// press does what a button of the page does and reads what was painted, after the text of the form.
func (s *painter) press(p *model.Project, do string) {
	pressPreset(p, do)
	verb, _, _ := strings.Cut(do, ":")
	if verb == "add" || verb == "remove" || len(p.Load.Appliances) < len(s.saved.Load.Appliances) {
		return // the rows are no longer where they were painted
	}
	for i, was := range s.saved.Load.Appliances {
		switch s.typed.Get(rowPath(i) + sentStrip) {
		case "":
			continue
		case "painted":
			was = p.Load.Appliances[i]
		}
		if hours := hoursIn(s.typed[rowPath(i)+sentHours]); hours != s.shown(was) {
			s.paint(p, i, hours, do)
		}
	}
}

// shown are the hours that the strip of an appliance shows as on.
func (s *painter) shown(a load.Appliance) (hours [24]bool) {
	on, _ := s.day.On(a)
	for h, share := range on {
		hours[h] = share > 0
	}
	return hours
}

// paint gives a row its painted hours. A further run waits for an answer: it becomes a row of its own, or is left out.
func (s *painter) paint(p *model.Project, i int, hours [24]bool, do string) {
	a, more := s.day.Paint(p.Load.Appliances[i], hours)
	switch {
	case do == doOne+":"+rowPath(i):
		return
	case len(more) > 0 && (do != doSecond+":"+rowPath(i) || len(p.Load.Appliances)+len(more) > mostAppliances):
		s.asks[i] = hours
		return
	}
	for _, run := range more {
		twin := document.Clone(a)
		from, to := rowPath(i), rowPath(len(p.Load.Appliances))
		p.Load.Appliances = append(p.Load.Appliances, s.day.With(twin, run))
		for path, o := range p.Origins {
			if rest, mine := strings.CutPrefix(path, from+"."); mine && !slices.Contains(timeFields, rest) {
				p.Origins[to+"."+rest] = o
			}
		}
	}
	for _, field := range timeFields {
		delete(p.Origins, rowPath(i)+"."+field)
	}
	p.Load.Appliances[i] = a
}

// timeFields are the inputs that painting writes: they are the reader's own then.
var timeFields = []string{"from_s", "to_s", "from_dusk_s", "after_dusk"}

// hoursIn reads clock hours; what is none is left out.
func hoursIn(sent []string) (hours [24]bool) {
	for _, text := range sent {
		if h, err := strconv.Atoi(text); err == nil && h >= 0 && h < 24 {
			hours[h] = true
		}
	}
	return hours
}

// query is the part of the address that keeps what waits for an answer: "2:3800c0", the row and a bit for each hour.
func (s *painter) query() string {
	for i, hours := range s.asks {
		bits := 0
		for h, on := range hours {
			if on {
				bits |= 1 << h
			}
		}
		return nameAsk + "=" + strconv.Itoa(i) + ":" + strconv.FormatInt(int64(bits), 16)
	}
	return ""
}

// recall reads it again.
func (s *painter) recall(text string) {
	row, word, _ := strings.Cut(text, ":")
	i, err := strconv.Atoi(row)
	bits, bad := strconv.ParseInt(word, 16, 32)
	if err != nil || bad != nil || i < 0 || i >= len(s.saved.Load.Appliances) {
		return
	}
	var hours [24]bool
	for h := range hours {
		hours[h] = bits>>h&1 == 1
	}
	if hours != s.shown(s.saved.Load.Appliances[i]) {
		s.asks[i] = hours
	}
}

// painted makes the editor read what is painted.
func painted(e *page.Editor[model.Project], s *painter) {
	e.Form.Press = s.press
	next := e.Next
	e.Next = func(typed url.Values) string {
		to := next(typed)
		if q := s.query(); q != "" && typed.Get(form.NameDo) == "" {
			to += map[bool]string{true: "&", false: "?"}[strings.Contains(to, "?")] + q + "#rows"
		}
		return to
	}
}
