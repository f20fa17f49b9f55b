package hoist

import (
	"io"
	"strings"

	"github.com/a-h/templ"

	"duskweight/internal/draw"
	"duskweight/internal/model"
	"duskweight/internal/model/lift/parts"
	"duskweight/internal/model/lift/path"
	"duskweight/internal/model/unit"
	"duskweight/web/form"
	"duskweight/web/page"
)

// tabNames are the tabs of the answer as they stand in the address, the first the usual one.
var tabNames = []string{"lifting", "down", "heat", "wiring", "round"}

// tabWords are the tabs as they are read.
var tabWords = map[string]string{"lifting": "Lifting", "down": "Coming down", "heat": "Heat", "wiring": "Wiring", "round": "Around it"}

// benchView is what follows the answer on the page: state, progress, drawing, list and the answer itself.
type benchView struct {
	Progress, Squares    string
	Side, Drive, Circuit string // SVG
	Notes                []string
	Parts                page.PartRowsView
	Tabs                 []page.Tab
	Tab                  string
	Whole                string // address of all inputs and numbers
	Ladder               []rung
	Answer               hoistView
}

// rung is one thing that must be so before it may hang.
type rung struct {
	Sign, Say string
	Word      path.Word
}

// benchAnswer prints the answer of a design with the places of the page that follow it.
func (h hoistPage) benchAnswer(v model.Variant, at benchAt) (page.Answer, error) {
	whole := h.evaluate(v)
	b := h.benchOf(v, whole, at, nil)
	if at.part == "" { // the card follows what is saved
		b.open = h.benchOf(h.Saved.Value, h.whole(), at, nil).open
	}
	view := b.view()
	return page.Answer{First: view.Answer.Headline, Facts: view.Answer.Facts, Bands: page.StoreBands(whole, h.i, h.sys, h.links(v)),
		Also: []page.Piece{{ID: "progress", Body: page.PartProgress(view.Progress, view.Squares)}, {ID: "drawing", Body: hoistPlates(view)}, {ID: "parts-list", Body: benchList(view)}},
		Body: benchResults(view)}, nil
}

// view prints one design.
func (b bench) view() benchView {
	v := benchView{Answer: b.h.view(b.whole, b.v, b.at.url), Tab: b.at.show}
	settled, say := b.progressSay()
	v.Progress = say
	bad, tight := 0, 0
	for _, s := range b.states {
		switch s.Word {
		case path.GivesWay:
			bad++
		case path.Tight:
			tight++
		}
	}
	v.Parts = page.PartRowsView{Rows: b.rows(path.GivesWay, path.NotKnown, path.Tight), Holding: b.rows(path.Holds)}
	v.Squares = page.Squares(settled, tight, bad, len(b.states), say)
	b.pictures(&v)
	for _, name := range tabNames {
		l := page.Tab{Text: tabWords[name], URL: b.at.link(func(a *benchAt) { a.show = name }, "#answer")}
		l.Here = name == b.at.show
		v.Tabs = append(v.Tabs, l)
	}
	v.Whole = b.at.url + "?" + nameDepth + "=" + string(depthBench) + "&" + nameAll + "=1"
	v.Ladder = b.ladder()
	return v
}

// row is one line of the list.
func (b bench) row(i int) page.PartRowView {
	s := b.states[i]
	r := page.PartRowView{Href: b.at.card(s.ID), Name: s.Name, Word: word(s), Line: b.line(s), Sign: draw.Sign(s.Word), Here: i == b.open}
	if u, ok := s.Use.Value(); ok && s.Word != path.NotKnown {
		r.Use = page.UseText(float64(u))
	}
	return r
}

// rows are the lines of the parts with these words, the first word first; each keeps the order of the load.
func (b bench) rows(words ...path.Word) []page.PartRowView {
	var out []page.PartRowView
	for _, w := range words {
		for i, s := range b.states {
			if s.Word == w {
				out = append(out, b.row(i))
			}
		}
	}
	return out
}

// pictures draws side view, drive and circuit with their parts.
func (b bench) pictures(v *benchView) {
	var side, drive, circuit []draw.Spot
	for i, s := range b.states {
		switch s.Place {
		case parts.Drive:
			drive = append(drive, b.spot(i))
		case parts.Circuit:
			circuit = append(circuit, b.spot(i))
		default:
			side = append(side, b.spot(i))
		}
	}
	scene := page.SceneOf(b.result, b.h.sys)
	v.Notes = scene.Notes
	v.Side = page.SvgOf(func(w io.Writer) error { return draw.Touch(scene, side, w) })
	sketch := draw.DriveSketch{Stages: len(b.result.Design.Train.Stages), Title: "The drive, larger", Spots: drive}
	if n, ok := b.result.Drive.Ratio.Value(); ok {
		sketch.Title += ": " + unit.GearRatios.Format(float64(n), b.h.sys) + " to 1"
	}
	v.Drive = page.SvgOf(sketch.Draw)
	v.Circuit = page.SvgOf(draw.CircuitSketch{Spots: circuit, Foot: b.upAndDown()}.Draw)
}

// upAndDown is the electricity of a day and a night in one line.
func (b bench) upAndDown() string {
	d, sys := b.result.Drive, b.h.sys
	var out []string
	if r := d.Raising; r.Known && !r.Stalls && r.Starts {
		out = append(out, "Up "+unit.Currents.Format(float64(r.Current), sys)+", "+form.Lasting(r.Time)+".")
	}
	if l := d.Lowering; l.Known && l.Steady && !l.Short {
		out = append(out, "Down "+unit.Voltages.Format(float64(l.Voltage), sys)+" "+unit.Currents.Format(float64(l.Current), sys)+", "+form.Lasting(l.Time)+".")
	}
	return strings.Join(out, " ")
}

// ladder is what must be so before it may hang, in the order in which a builder gets there.
func (b bench) ladder() []rung {
	d := b.result.Drive
	word := func(known, good bool) path.Word {
		switch {
		case !known:
			return path.NotKnown
		case good:
			return path.Holds
		}
		return path.GivesWay
	}
	bad, open := 0, 0
	holds := path.Holds
	for _, s := range b.states {
		switch s.Word {
		case path.GivesWay:
			bad++
		case path.NotKnown:
			open++
		}
		if strings.HasPrefix(s.ID, "hold-") || strings.HasPrefix(s.ID, "stop-") {
			if s.Word == path.GivesWay || s.Word == path.NotKnown && holds != path.GivesWay {
				holds = s.Word
			}
		}
	}
	cool := word(d.HeatUp.Known && d.HeatDown.Known, !d.HeatUp.TooHot && !d.HeatDown.TooHot)
	out := []rung{
		{Say: "it lifts", Word: word(d.Raising.Known && !d.Raising.Gearless, !d.Raising.Stalls && d.Raising.Starts)},
		{Say: "comes down by itself", Word: word(d.Lowering.RunsBack != "", d.Lowering.RunsBack == "yes")},
		{Say: "stays cool", Word: cool},
		{Say: "nothing gives way", Word: word(true, bad == 0)},
		{Say: "nothing is unknown", Word: word(open == 0, true)},
		{Say: "two holds, two stops", Word: holds},
	}
	if bad > 0 {
		out[3].Say = page.Counted(bad, "part") + " must change"
	}
	if open > 0 {
		out[4].Say = page.Counted(open, "part") + " not known"
	}
	for i := range out {
		out[i].Sign = draw.Sign(out[i].Word)
	}
	return out
}

// lay prints the page.
func (h hoistPage) lay(v page.EditorView, at benchAt, refused []string) templ.Component {
	b := h.benchOf(h.Saved.Value, h.whole(), at, refused)
	return benchPage(v, b.question(v), b.cardOf(v), at.depths())
}

// depths are the three links of how much a card shows.
func (b benchAt) depths() []page.Tab {
	var out []page.Tab
	for _, d := range []struct {
		depth depth
		word  string
	}{{depthIdea, "Idea"}, {depthBuild, "Build"}, {depthBench, "Bench"}} {
		out = append(out, page.Tab{Text: d.word, URL: b.link(func(a *benchAt) { a.depth = d.depth }, ""), Here: d.depth == b.depth})
	}
	return out
}
