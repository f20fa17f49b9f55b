package shelf

import (
	"io"
	"strconv"
	"strings"

	"duskweight/internal/draw"
	"duskweight/internal/model"
	"duskweight/internal/model/lift"
	"duskweight/internal/model/unit"
	"duskweight/web/form"
	"duskweight/web/page"
)

// shelfTop is what stands round the planks: which hoists and variants have parts that could lie on the shelf.
type shelfTop struct {
	URL, Revision string
	Hoists        []page.HoistAt
	Homes         []intoView // variants with panels or batteries that do not lie there
	Variants      []intoView
	Empty         bool   // nothing lies there yet
	All           string // address of the whole form
}

// cardView is the card of one part round its fields.
type cardView struct {
	Open, New   bool
	Name, Close string
	Into        []intoView // variants that the part can be added to
	Row         string     // its place: "panels[0]"
	Form        form.FormView
}

// shelfView is what lies on the shelf.
type shelfView struct {
	Headline string
	Fits     []form.LinkView // what fits in each hoist
	Planks   []plankView
	Add      []form.LinkView // a new part of each kind
	Folded   bool            // so many that each kind has a plank of its own
}

// plankView is a plank with parts: of all kinds, or of one.
type plankView struct {
	Title string
	Tiles []tileView
}

// tileView is one part on a plank.
type tileView struct {
	Number, Name, More string
	Sketch             string
	URL                string
	at                 spareAt
	Here               bool
}

// emptyPlace is the sketch of the place for another part.
var emptyPlace = page.SvgOf(func(w io.Writer) error { return draw.SparePart("").Draw(w) })

// mostTogether is how many parts lie on one plank; with more, each kind has its own. Our own judgement.
const mostTogether = 40

// kinds of part on the shelf, in the order in which they lie there.
var kinds = []struct{ list, title, one string }{
	{"motors", "Motors", "a motor"}, {"stages", "Gear stages", "a gear stage"}, {"drums", "Drums", "a drum"}, {"ropes", "Ropes", "a rope"}, {"pulleys", "Pulleys", "a pulley"},
	{"panels", "Panels", "a panel"}, {"batteries", "Batteries", "a battery"},
}

func shelfViewOf(s model.Shelf, at string, hoists []page.HoistAt, sys unit.System) shelfView {
	all := s.Parts()
	v := shelfView{Headline: page.Counted(all, "part") + " on the shelf", Folded: all > mostTogether}
	if all == 0 {
		v.Headline = "The shelf is empty"
	}
	together := plankView{}
	for _, k := range kinds {
		p := plankView{Title: k.title}
		n := counts(s)[k.list]
		for i := range n {
			p.Tiles = append(p.Tiles, tileOf(s, spareAt{k.list, i}, at, sys))
		}
		if n < model.MostSpares {
			v.Add = append(v.Add, form.LinkView{Text: k.one, URL: at + spareAt{k.list, n}.query() + "#card"})
		}
		if v.Folded && n > 0 {
			p.Title += ": " + page.Itoa(n)
			v.Planks = append(v.Planks, p)
		}
		together.Tiles = append(together.Tiles, p.Tiles...)
	}
	if !v.Folded {
		v.Planks = []plankView{together}
	}
	if s.HoistParts() > 0 {
		for _, h := range hoists {
			v.Fits = append(v.Fits, form.LinkView{Text: "What fits in " + h.Name, URL: at + "/fits?" + h.Query()})
		}
	}
	return v
}

// mark marks the tile whose card is open.
func (v *shelfView) mark(at spareAt, open bool) {
	for p := range v.Planks {
		for t := range v.Planks[p].Tiles {
			v.Planks[p].Tiles[t].Here = open && v.Planks[p].Tiles[t].at == at
		}
	}
}

// tileOf prints a part with the number that is looked for first, "?" where it is not known.
func tileOf(s model.Shelf, a spareAt, at string, sys unit.System) tileView {
	t := tileView{Name: spareName(s, a.list, a.i), URL: at + a.query() + "#card", at: a,
		Sketch: page.SvgOf(func(w io.Writer) error { return draw.SparePart(a.list).Draw(w) })}
	var more []string
	count := unit.Known[unit.Count]{}
	switch a.list {
	case "motors":
		m := s.Motors[a.i]
		t.Number = "? " + unit.Torques.Symbol(sys)
		if torque := torqueOf(m); torque > 0 {
			t.Number = unit.Torques.FormatTo(torque, sys, 2, unit.Down)
		}
		if m.SheetVolts.Is {
			more = append(more, unit.Voltages.Format(float64(m.SheetVolts.Val), sys))
		}
	case "stages":
		o := s.Stages[a.i]
		count, t.Number = o.Count, "? : 1"
		if r := ratioOf(o.Stage); r.Is {
			t.Number = unit.GearRatios.Format(float64(r.Val), sys) + " : 1"
		}
		if o.Stage.Kind != "" {
			more = append(more, form.WordFor(string(o.Stage.Kind)))
		}
	case "drums":
		d := s.Drums[a.i].Drum
		t.Number = orAsked(d.Diameter, unit.Widths, sys)
		if d.Width.Is {
			more = append(more, unit.Widths.Format(float64(d.Width.Val), sys)+" wide")
		}
	case "ropes":
		r := s.Ropes[a.i].Rope
		t.Number = orAsked(r.BreakingLoad, unit.Loads, sys)
		if r.Diameter.Is {
			more = append(more, unit.SmallLengths.Format(float64(r.Diameter.Val), sys))
		}
		if r.Length.Is {
			more = append(more, unit.Lengths.Format(float64(r.Length.Val), sys))
		}
	case "pulleys":
		p := s.Pulleys[a.i]
		count, t.Number = p.Count, orAsked(p.Rating, unit.Loads, sys)
		if p.Diameter.Is {
			more = append(more, unit.Widths.Format(float64(p.Diameter.Val), sys))
		}
	case "panels":
		p := s.Panels[a.i]
		count, t.Number = p.Count, orAsked(p.Power, unit.Powers, sys)
		if p.Sheet.Vmp.Is {
			more = append(more, unit.Voltages.Format(float64(p.Sheet.Vmp.Val), sys))
		}
	case "batteries":
		c := s.Cells[a.i]
		count, t.Number = c.Count, orAsked(c.Capacity, unit.Charges, sys)
		if c.Voltage.Is {
			more = append(more, unit.Voltages.Format(float64(c.Voltage.Val), sys))
		}
		if c.Kind != "" {
			more = append(more, form.WordFor(string(c.Kind)))
		}
	}
	if n, ok := count.Value(); ok && n != 1 {
		more = append(more, strconv.Itoa(int(n))+" of them")
	}
	if strings.HasPrefix(t.Number, "?") {
		more = append(more, "not known")
	}
	t.More = strings.Join(more, ", ")
	return t
}

// orAsked prints a value, or a question mark with its unit.
func orAsked[T unit.Number](k unit.Known[T], q unit.Quantity, sys unit.System) string {
	if k.Is {
		return q.Format(float64(k.Val), sys)
	}
	return "? " + q.Symbol(sys)
}

// ratioOf is the ratio of a stage: as given, or by the teeth of a planetary one.
func ratioOf(s lift.Stage) unit.Known[unit.Ratio] {
	if !s.Ratio.Is && s.SunTeeth.Is && s.RingTeeth.Is && s.SunTeeth.Val > 0 {
		return unit.Of(lift.PlanetaryRatio(s.SunTeeth.Val, s.RingTeeth.Val))
	}
	return s.Ratio
}
