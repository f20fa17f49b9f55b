package place

import (
	"fmt"

	"duskweight/internal/model"
	"duskweight/internal/model/unit"
	"duskweight/web/form"
	"duskweight/web/page"
)

// doorView is one of the three ways to know the sun.
type doorView struct {
	Title, Say, URL, Sketch string
	Here                    bool
}

// doorsView are the three with what is so now.
type doorsView struct {
	Now  string
	List []doorView
}

// Small pictures of the doors: a globe with a pin, twelve bars, sheets with a curve.
const (
	globeSketch = `<svg viewBox="0 0 52 52" aria-hidden="true" class="door"><circle cx="26" cy="26" r="20" class="line-ink"/><path d="M6 26H46M26 6C14 16 14 36 26 46M26 6C38 16 38 36 26 46" class="line-ink"/><circle cx="36" cy="17" r="4" class="sun"/></svg>`
	barsSketch  = `<svg viewBox="0 0 52 52" aria-hidden="true" class="door"><path d="M5 44h6v-9H5zM15 44h6V25h-6zM25 44h6V12h-6zM35 44h6V21h-6zM45 44h4V34h-4z" class="sun"/><path d="M2 44H51" class="line-ink"/></svg>`
	filesSketch = `<svg viewBox="0 0 52 52" aria-hidden="true" class="door"><path d="M14 6h22l8 8v30H14z" class="line-ink"/><path d="M36 6v8h8M8 12v38h28M19 36l5-10 5 7 4-13 6 14" class="line-ink"/></svg>`
)

func doorsOf(p model.Project, at placeAt) doorsView {
	now := door(p)
	v := doorsView{Now: "not known yet"}
	if now != "" {
		v.Now = form.WordFor(string(p.Place.Sky))
		if n := len(p.Files()); now == partFiles && n > 1 {
			v.Now = fmt.Sprintf("%d hourly weather files", n)
		}
	}
	files := doorView{Title: "Hourly weather files", Say: "A file or a table of hours, one year or many. Many show how years differ.", URL: at.url + "/file", Sketch: filesSketch}
	if len(p.Files()) > 0 {
		files.URL = at.card(partFiles)
	}
	v.List = []doorView{
		{Title: "A climate like yours", Say: fmt.Sprintf("%d places that come with the program, or your sky in words. One press; the result is rough.", len(page.ClimateOptions())), URL: at.card(partClimate), Sketch: globeSketch},
		{Title: "Twelve monthly means", Say: "From a table or a map. Years are made from them.", URL: at.card(partMeans), Sketch: barsSketch},
		files,
	}
	for i, part := range []string{partClimate, partMeans, partFiles} {
		v.List[i].Here = part == now
	}
	return v
}

// pickerView is what the first doors need beside the form: the starter climates, and whether twelve means can be opened.
type pickerView struct {
	URL, Revision string
	Climates      []form.Option
	TypeOwn       bool
}

// layView is what the page has beside the form and its answer.
type layView struct {
	Card   *page.CardView
	Part   string // whose card is open
	Files  *filesView
	Doors  doorsView
	Rows   []rowView
	Picker pickerView
	Whole  string // address of the whole form
}

// rowView is one line of what the place has further, leading to its card.
type rowView struct {
	Title, Say, URL string
	Typical         int // of its values, not confirmed
	Here            bool
}

// typicalIn counts the values of a card that are only typical.
func typicalIn(p model.Project, part string) (n int) {
	for at, o := range p.Origins {
		if o.Kind == model.OriginTypical && partOf(at) == part {
			n++
		}
	}
	return n
}

// rowsOf are the cards that are no doors, with what they hold in a few words.
func rowsOf(p model.Project, at placeAt, open string, sys unit.System) []rowView {
	place := p.Place
	where := page.Known(place.Latitude, unit.Latitudes, sys)
	if place.Longitude.Is {
		where += ", " + page.Known(place.Longitude, unit.Longitudes, sys)
	}
	if place.Elevation.Is {
		where += ", " + page.Known(place.Elevation, unit.Elevations, sys) + " above the sea"
	}
	if place.UTCOffset.Is {
		where += ", clock UTC" + page.Known(place.UTCOffset, unit.UTCOffsets, sys)
	}
	ground := "20 % of the sunlight is reflected, unless you type another share"
	if place.Albedo.Is {
		ground = page.Known(place.Albedo, unit.Percents, sys) + " of the light thrown back"
	}
	room := "as the air outside"
	if in := place.Indoor; in != nil {
		room = unit.Temperatures.Format(float64(in.Mean), sys) + " over the year"
	}
	snow := "not known; winter is counted without it"
	if fall := place.SnowFall; fall != nil {
		sum := unit.Length(0)
		for _, x := range fall {
			sum += x
		}
		snow = "none"
		if sum > 0 {
			snow = unit.Lengths.Format(float64(sum), sys) + " of fresh snow a year"
		}
	}
	outline := "not known, counted as free"
	if n := len(place.Horizon); n > 0 {
		outline = page.Counted(n, "point")
	}
	project := form.Clip(page.OrUnnamed(p.Name), page.PaperName)
	if p.Currency != "" {
		project += ", " + form.Clip(p.Currency, 10)
	}
	rows := []rowView{{Title: "Where", Say: where, URL: at.card(partWhere)}, {Title: "Ground", Say: ground, URL: at.card(partGround)}, {Title: "Shading outline", Say: outline, URL: at.card(partOutline)},
		{Title: "Snow", Say: snow, URL: at.card(partSnow)}, {Title: "Room of the battery", Say: room, URL: at.card(partRoom)}, {Title: "Project", Say: project, URL: at.card(partProject)}}
	for i, part := range []string{partWhere, partGround, partOutline, partSnow, partRoom, partProject} {
		rows[i].Here, rows[i].Typical = part == open, typicalIn(p, part)
	}
	return rows
}

// noted is the open card with a word on what it is for.
func noted(l layView) page.CardView {
	c := *l.Card
	switch l.Part {
	case partClimate:
		c.Title, c.Note = "No climate of the list is like mine", "Give your latitude and how your sky is, and choose “a sky described in words”."
	case partOutline:
		c.Note = "Give a direction and the height of what hides the sky there: hills, trees, houses. Between two points the outline is a straight line. If nothing hides it, give one point of 0°."
	case partSnow:
		c.Note = "Count fresh snow as a weather service adds it up, not the depth on the ground. What snow takes from the panels is on the page Season, dust and snow of each variant."
	case partFiles:
		c.Note = "Choose whether the sun is known by the first file or by all of them, each one year."
	}
	return c
}
