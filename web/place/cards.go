package place

import (
	"net/url"
	"slices"
	"strings"

	"github.com/a-h/templ"

	"duskweight/internal/model"
	"duskweight/internal/model/sun"
	"duskweight/web/form"
	"duskweight/web/page"
)

// The page shows one card of its form at a time; which one stands in the address.

// Names in the address.
const (
	namePart = "part"
	nameAll  = "all"
)

// The cards. The first three are the doors: how the sun is known.
const (
	partClimate = "climate"
	partMeans   = "means"
	partFiles   = "files"
	partWhere   = "where"
	partOutline = "outline"
	partGround  = "ground"
	partSnow    = "snow"
	partRoom    = "room"
	partProject = "project"
)

// partTitles are the cards with what is over them.
var partTitles = map[string]string{
	partClimate: "A climate like yours", partMeans: "Twelve monthly means", partFiles: "Weather files", partWhere: "Place on the map",
	partOutline: "Points of the shading outline", partGround: "Ground", partSnow: "Snow", partRoom: "Room of the battery", partProject: "Name and money of the project",
}

// placeAt is what the address asks for.
type placeAt struct {
	url  string // of the page
	part string // whose card is open; empty for none
	all  bool   // the whole form

	known bool // the sun is known, by what is saved
}

func placeAtOf(q url.Values, url string) placeAt {
	at := placeAt{url: url, part: q.Get(namePart), all: q.Get(nameAll) != ""}
	if field := q.Get(page.NameField); field != "" {
		at.part = partOf(field)
	}
	if partTitles[at.part] == "" {
		at.part = ""
	}
	return at
}

// partOf is the card that holds a path of the form.
func partOf(path string) string {
	switch {
	case path == "name", path == "currency":
		return partProject
	case strings.HasPrefix(path, "place.monthly"):
		return partMeans
	case strings.HasPrefix(path, "place.horizon"):
		return partOutline
	case strings.HasPrefix(path, "place.snow"):
		return partSnow
	case strings.HasPrefix(path, "place.indoor"):
		return partRoom
	case path == "place.albedo":
		return partGround
	case path == "place.sky", path == "place.described":
		return partClimate
	case strings.HasPrefix(path, "place"):
		return partWhere
	}
	return ""
}

// cardParts are the inputs of a card.
func cardParts(part string, p *model.Project) []form.Part[model.Project] {
	switch part {
	case partClimate:
		return []form.Part[model.Project]{latitudeInput(), skyInput(), describedInput()}
	case partMeans:
		inputs := monthInputs(p)
		if len(inputs) == 0 {
			return nil
		}
		inputs[0].Group.Fold, inputs[0].Group.Brief = false, nil
		return append([]form.Part[model.Project]{skyInput()}, inputs...)
	case partFiles:
		return []form.Part[model.Project]{skyInput()}
	case partWhere:
		return whereInputs()
	case partOutline:
		return []form.Part[model.Project]{outlineRows()}
	case partGround:
		return []form.Part[model.Project]{albedoInput()}
	case partSnow:
		return snowInputs()
	case partRoom:
		return indoorInputs().Group.Parts
	case partProject:
		return projectInputs()
	}
	return nil
}

// query is the part of the address behind the page.
func (at placeAt) query() string {
	switch {
	case at.all:
		return "?" + nameAll + "=1"
	case at.part != "":
		return "?" + url.Values{namePart: {at.part}}.Encode()
	}
	return ""
}

// card is the address of a card.
func (at placeAt) card(part string) string { return at.url + "?" + namePart + "=" + part + "#card" }

// open is the card that is open: that of the first refused value which it does not hold, or the one that the address names. While
// nothing is known of the sun it is the first door.
func (at placeAt) open(p model.Project, refused []string) string {
	for _, path := range refused {
		if part := partOf(path); part != "" && !at.holds(path) {
			return part
		}
	}
	if at.part == "" && !begun(p) {
		return partClimate
	}
	return at.part
}

// holds reports whether the card of the address holds a path, which may stand on two cards.
func (at placeAt) holds(path string) bool {
	switch path {
	case "place.sky":
		return slices.Contains([]string{partClimate, partMeans, partFiles}, at.part)
	case "place.latitude_rad":
		return at.part == partClimate || at.part == partWhere
	}
	return partOf(path) == at.part
}

// begun reports whether anything was said of the place.
func begun(p model.Project) bool {
	return p.Place.Latitude.Is || p.Place.Monthly != nil || p.Place.Described != "" || len(p.Files()) > 0
}

// door is the card of how the sun is known now; empty where that is open.
func door(p model.Project) string {
	switch p.Place.Sky {
	case sun.SkyMonthly:
		if p.Place.Monthly != nil {
			return partMeans
		}
	case sun.SkyDescribed:
		if p.Place.Described != "" {
			return partClimate
		}
	case sun.SkyFile, sun.SkyFiles:
		if len(p.Files()) > 0 {
			return partFiles
		}
	}
	return ""
}

// onCards makes the editor show the months, the doors and one card.
func onCards(e *page.Editor[model.Project], at placeAt, first func(v page.EditorView, c *page.CardView, part string) templ.Component) {
	saved := e.Saved.Value
	e.Form.Shown = func(refused []string) []form.Part[model.Project] { return cardParts(at.open(saved, refused), &saved) }
	e.Card = at.query
	e.Next = func(url.Values) string { return at.query() }
	e.Where = func(path string) string { return page.FieldURL(at.url, path) }
	e.Lay = func(v page.EditorView, refused []string) templ.Component {
		part := at.open(saved, refused)
		var c *page.CardView
		if part != "" {
			c = &page.CardView{Title: partTitles[part], Close: at.url, Form: v.Form}
		}
		return first(v, c, part)
	}
}
