package load

import (
	"net/url"
	"slices"
	"strconv"
	"strings"

	"github.com/a-h/templ"

	"duskweight/internal/model"
	"duskweight/internal/model/unit"
	"duskweight/web/form"
	"duskweight/web/page"
)

// The page shows a row for each lamp or device and one card of the form at a time; which one stands in the address.

// Names in the address.
const (
	namePart = "part"
	nameAll  = "all"
	nameMore = "more"
)

// The cards beside those of the appliances, which are named "appliances[2]".
const (
	partStanding = "standing"
	partInverter = "inverter"
	partNight    = "night"
	partGrowth   = "growth"
)

const appliances = "load.appliances"

// loadAt is what the address asks for.
type loadAt struct {
	url  string // of the page
	part string // whose card is open; empty for none
	all  bool   // the whole form
	more bool   // every row

	month int // whose strips are shown, 1 to 12; 0 for that of the longest night
}

func loadAtOf(q url.Values, url string) loadAt {
	at := loadAt{url: url, part: q.Get(namePart), all: q.Get(nameAll) != "", more: q.Get(nameMore) != "", month: monthIn(q.Get(nameMonth))}
	if field := q.Get(page.NameField); field != "" {
		at.part = partOf(field)
	}
	return at
}

// partOf is the card that holds a path of the form.
func partOf(path string) string {
	path = strings.TrimPrefix(path, "load.")
	if strings.HasPrefix(path, "growth_") {
		return partGrowth
	}
	end := strings.IndexByte(path, '.')
	if end < 0 {
		end = len(path)
	}
	if list, _, ok := form.SplitRow(path[:end]); ok && list != "appliances" {
		return list
	}
	return path[:end]
}

// query is the part of the address behind the page.
func (at loadAt) query() string {
	switch {
	case at.all:
		return "?" + nameAll + "=1"
	case at.part == "" && !at.more && at.month == 0:
		return ""
	}
	q := url.Values{}
	if at.part != "" {
		q.Set(namePart, at.part)
	}
	if at.more {
		q.Set(nameMore, "1")
	}
	if at.month > 0 {
		q.Set(nameMonth, strconv.Itoa(at.month))
	}
	return "?" + q.Encode()
}

// card is the address of a card.
func (at loadAt) card(part string) string {
	at.part, at.all = part, false
	return at.url + at.query() + "#card"
}

// closed is the address of the page without a card.
func (at loadAt) closed() string {
	at.part, at.all, at.more = "", false, false
	return at.url + at.query()
}

// open is the part whose card is open: that of the first refused value, or that which the address names; "" for none.
func (at loadAt) open(p model.Project, refused []string) string {
	for _, path := range append(slices.Clone(refused), at.part) {
		part := partOf(path)
		_, i, isRow := form.SplitRow(part)
		if slices.Contains([]string{partStanding, partInverter, partNight, partGrowth}, part) || isRow && i < len(p.Load.Appliances) {
			return part
		}
	}
	return ""
}

// next is what opens after a save: the card of a row that was added, nothing after one was removed, else the same card.
func (at loadAt) next(typed url.Values) string {
	switch do := typed.Get(form.NameDo); {
	case do == "add:"+appliances:
		if n, err := strconv.Atoi(typed.Get(appliances + form.RowsSuffix)); err == nil && n > 0 {
			at.part = "appliances[" + strconv.Itoa(n-1) + "]"
		}
	case strings.HasPrefix(do, "remove:"+appliances), strings.HasPrefix(do, page.PressPreset+":"):
		at.part = ""
	}
	return at.query()
}

// onCards makes the editor show the rows and one card.
func onCards(e *page.Editor[model.Project], at loadAt, sys unit.System) {
	whole, saved := e.Form.Parts, e.Saved.Value
	e.Form.Shown = func(refused []string) []form.Part[model.Project] {
		part := at.open(saved, refused)
		if part == "" {
			return nil
		}
		if _, i, ok := form.SplitRow(part); ok {
			return form.Only(whole, appliances, i)
		}
		mine := func(path string) bool { return partOf(path) == part }
		return form.Pick(whole, mine, mine)
	}
	e.Card, e.Next = at.query, at.next
	e.Where = func(path string) string { return page.FieldURL(at.url, path) }
	e.Lay = func(v page.EditorView, refused []string) templ.Component {
		var c *page.CardView
		if part := at.open(saved, refused); part != "" {
			c = &page.CardView{Title: titleOf(part, saved), Close: at.closed(), Form: v.Form}
		}
		return loadPage(v, c, presetsOf(saved, at.url, v.Form, sys), at.url+"?"+nameAll+"=1")
	}
}

// titleOf is what a card is called.
func titleOf(part string, p model.Project) string {
	if _, i, ok := form.SplitRow(part); ok {
		return page.OrUnnamed(form.Clip(p.Load.Appliances[i].Name, page.PaperName))
	}
	return map[string]string{partStanding: "What uses power all the time", partInverter: "Inverter", partNight: "Which hours are night", partGrowth: "The load of later years"}[part]
}
