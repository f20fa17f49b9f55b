package hoist

import (
	"net/url"
	"slices"
	"strconv"

	"duskweight/internal/catalog"
	"duskweight/internal/model/lift"
	"duskweight/internal/model/unit"
	"duskweight/internal/say"
	"duskweight/web/form"
)

// rowsView is the rows of one kind, ready to print.
type rowsView struct {
	Title, Hoist, Action, Revision, Kind string
	Problems                             []form.ProblemView
	Groups                               []rowGroup
	Places                               []form.OptionView
	Asks                                 []form.FieldView
	MayRead, Read                        bool // some row wants the user's word; it was given
	Keeps                                string
}

type rowGroup struct {
	Title, Source, Note string
	Rows                []rowChoice
	Open                bool
}

// rowChoice is one row: what it would set, and what it may not.
type rowChoice struct {
	ID, Name     string
	Sets, Open   []string
	Source, Note string // where they differ from row to row
	Mark         string // "from memory"
	Chosen       bool
}

var askLabels = map[string]string{
	catalog.AskRatio:  "Ratio to 1",
	catalog.AskRated:  "Rated torque at its output, from its label",
	catalog.AskVolume: "Volume",
	catalog.AskSeries: "Lamps in one row",
	catalog.AskRows:   "Rows side by side",
}

var askHints = map[string]string{
	catalog.AskRatio:  "If empty: the ratio does not change.",
	catalog.AskRated:  "If empty: the torque to turn it without load stays not known.",
	catalog.AskVolume: "Volume times density is a guess to ± 10 %: weigh it when you can.",
	catalog.AskSeries: "If empty: 1.",
	catalog.AskRows:   "If empty: 1.",
}

var askUnits = map[string]unit.Quantity{
	catalog.AskRatio: unit.GearRatios, catalog.AskRated: unit.Torques, catalog.AskVolume: unit.Volumes, catalog.AskSeries: unit.Counts, catalog.AskRows: unit.Counts,
}

func rowsViewOf(k catalog.Kind, at rowsPlace, typed url.Values, problems []form.ProblemView) rowsView {
	v := rowsView{Title: k.Title, Hoist: at.url, Action: at.url + "/take", Revision: strconv.FormatInt(at.variant.Revision, 10), Kind: k.Word, Problems: problems, Read: typed.Get(nameRead) == "yes"}
	if m := at.hoist().Machine; k.Word == "motor" && (m.SheetVolts.Is || m.SheetSpeed.Is || m.SheetStall.Is || m.SheetTorque.Is) {
		v.Keeps = "The label that you typed stays. The row fills what the label leaves open; a row of another size counts as not known."
	}
	chosen := typed.Get(nameRow)
	for _, r := range k.Rows {
		if len(v.Groups) == 0 || v.Groups[len(v.Groups)-1].Title != r.Group {
			v.Groups = append(v.Groups, rowGroup{Title: r.Group})
		}
		g := &v.Groups[len(v.Groups)-1]
		one := rowChoiceOf(k, r, at.sys)
		one.Chosen = r.ID == chosen
		g.Open = g.Open || one.Chosen || len(v.Groups) == 1
		v.MayRead = v.MayRead || len(one.Open) > 0
		g.Rows = append(g.Rows, one)
	}
	for i := range v.Groups {
		v.Groups[i].gather()
	}
	places := k.Places(at.hoist())
	for i, p := range places {
		v.Places = append(v.Places, form.OptionView{Value: p.At, Word: p.Say, Chosen: p.At == typed.Get(nameAt) || typed.Get(nameAt) == "" && i == 0})
	}
	for _, name := range k.Asks {
		f := form.FieldView{ID: name, Path: name, Label: askLabels[name], Unit: askUnits[name].Symbol(at.sys), Hint: askHints[name], Kind: form.AsNumber, Value: typed.Get(name)}
		if i := slices.IndexFunc(problems, func(p form.ProblemView) bool { return p.ID == name }); i >= 0 {
			f.Problem = problems[i].Say
		}
		v.Asks = append(v.Asks, f)
	}
	return v
}

// rowChoiceOf tells what a row would set, by taking it into an empty hoist.
func rowChoiceOf(k catalog.Kind, r catalog.Row, sys unit.System) rowChoice {
	out := rowChoice{ID: r.ID, Name: rowName(r, sys), Source: form.SentenceCase(r.Source), Note: say.Marked(r.Note).In(sys)}
	if r.Memory {
		out.Mark = "from memory"
	}
	h := lift.Hoist{}
	h.Train.Stages, h.Structure.Posts = make([]lift.Stage, 1), make([]lift.Post, 1)
	if k.Word == "ending" && r.Group == "Wire rope" {
		h.Rope.Kind = lift.RopeWire
	} else if k.Word == "ending" {
		h.Rope.Kind = lift.RopePolyester
	}
	c := catalog.Choice{Volume: unit.Of[unit.Volume](1)}
	if places := k.Places(&h); len(places) > 0 {
		c.At = places[0].At
	}
	t, err := r.Take(&h, c)
	if err != nil {
		return out
	}
	table := form.Form[lift.Hoist]{Parts: HoistForm()}
	for _, path := range t.Copied {
		if in := form.FindInput(table.Parts, &h, path); in != nil && k.Word == "material" {
			out.Sets = append(out.Sets, heavyAs(h.Mass[0].Mass.Val, sys))
		} else if in != nil {
			out.Sets = append(out.Sets, in.Label+" "+in.Brief(&h, sys))
		}
	}
	c.Read = true
	if _, err := r.Take(&h, c); err != nil {
		return out
	}
	for _, path := range t.Open {
		if in := form.FindInput(table.Parts, &h, path); in != nil {
			out.Open = append(out.Open, in.Label+" "+form.OrNotKnown(in.Brief(&h, sys)))
		}
	}
	return out
}

// gather moves source and note of rows that share them to their group.
func (g *rowGroup) gather() {
	first := g.Rows[0]
	for _, r := range g.Rows {
		if r.Source != first.Source || r.Note != first.Note {
			return
		}
	}
	g.Source, g.Note = first.Source, first.Note
	for i := range g.Rows {
		g.Rows[i].Source, g.Rows[i].Note = "", ""
	}
}

// heavyAs says how dense a material is, by the mass of 1 m³, in the measure that its reader fills: 1600 kg/m³ are 1.6 kg a litre.
func heavyAs(cubicMetre unit.Mass, sys unit.System) string {
	measure, of := "litre", 1000.0
	if sys == unit.Imperial {
		measure, of = "US gallon", 1000/3.785411784 // 231 cubic inches (NIST Handbook 44, appendix C)
	}
	return "Weighs " + unit.Masses.Format(float64(cubicMetre)/of, sys) + " a " + measure
}
