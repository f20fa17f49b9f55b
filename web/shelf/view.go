package shelf

import (
	"fmt"
	"strconv"
	"strings"

	"duskweight/internal/model"
	"duskweight/internal/model/search"
	"duskweight/internal/model/unit"
	"duskweight/internal/say"
	"duskweight/web/form"
	"duskweight/web/page"
)

// shelfTop is what stands over the form: which hoists have parts that could lie on the shelf.
type shelfTop struct {
	URL, Revision string
	Hoists        []page.HoistAt
	Empty         bool // nothing lies there yet
}

// shelfView is the answer of the page Parts shelf.
type shelfView struct {
	Headline string
	Fits     []form.LinkView // what fits in each hoist
	Rows     []page.PairView
}

func shelfViewOf(s model.Shelf, at string, hoists []page.HoistAt) shelfView {
	v := shelfView{}
	for _, l := range []struct {
		name string
		n    int
	}{{"Motors", len(s.Motors)}, {"Kinds of gear stages", len(s.Stages)}, {"Drums", len(s.Drums)}, {"Ropes", len(s.Ropes)}, {"Kinds of pulleys", len(s.Pulleys)}} {
		v.Rows = append(v.Rows, page.PairView{Name: l.name, Value: page.Itoa(l.n)})
	}
	all := s.Parts()
	switch {
	case all == 0:
		v.Headline = "The shelf is empty. Put the parts of a hoist on it, or add what lies in your box."
	case len(hoists) == 0:
		v.Headline = page.Counted(all, "part") + " on the shelf. Add a lifted mass to a variant, then see what fits in it."
	default:
		v.Headline = page.Counted(all, "part") + " on the shelf."
		for _, h := range hoists {
			v.Fits = append(v.Fits, form.LinkView{Text: "What fits in " + h.Name, URL: at + "/fits?" + h.Query()})
		}
	}
	return v
}

// fitsView is the page What fits.
type fitsView struct {
	Bands      []page.BandView // of the hoist in which the parts are tried
	Say        string
	Notes      []string
	Choose     []fitsChoice
	Back       string
	Columns    []string
	Rows       []fitRow
	Why        [][2]string
	Use        string // where a combination is taken
	Variant, I string
	Revision   string // of the project
	Version    string // revision of the variant
}

type fitsChoice struct {
	form.LinkView
	Here bool
}

// fitRow is one combination that does.
type fitRow struct {
	Parts      []string
	Sign, Word string
	Open       []string
	Written    string
	Name       string // of its button, for those who hear the page
}

// shownFits is how many combinations one page shows.
const shownFits = 100

func fitsViewOf(f search.Fits, s model.Shelf, sys unit.System) fitsView {
	v := fitsView{}
	switch {
	case f.TooMany:
		v.left(f.Left, s)
		v.Say = "There are more combinations than can be tried. Take parts off the shelf that you do not mean to use."
		return v
	case f.Lacks != "":
		v.left(f.Left, s)
		v.Say = f.Lacks
		return v
	}
	v.Say = fitsSay(f)
	v.left(f.Left, s)
	if f.Longest < search.LongestTrain {
		v.Notes = append(v.Notes, "There are too many stages for every row of four: rows of up to "+page.Counted(f.Longest, "stage")+" were tried.")
	}
	if f.Worked < f.Passed {
		v.Notes = append(v.Notes, fmt.Sprintf("%s lift and come down. The %s of them that lose least were worked out in full, the rest were not.", page.Thousands(f.Passed), page.Thousands(f.Worked)))
	}
	columns := []struct {
		name string
		on   bool
		of   func(c search.Fit) string
	}{
		{"Motor", has(f, func(c search.Fit) int { return c.Motor }), func(c search.Fit) string { return nameOr(s.Motors[c.Motor].Name, "Motor", c.Motor) }},
		{"Gears, from the motor", has(f, func(c search.Fit) int { return len(c.Stages) - 1 }), func(c search.Fit) string { return gearsOf(c, s) }},
		{"Drum", has(f, func(c search.Fit) int { return c.Drum }), func(c search.Fit) string {
			return sized(nameOr(s.Drums[c.Drum].Name, "Drum", c.Drum), s.Drums[c.Drum].Drum.Diameter, sys)
		}},
		{"Rope", has(f, func(c search.Fit) int { return c.Rope }), func(c search.Fit) string {
			return sized(nameOr(s.Ropes[c.Rope].Name, "Rope", c.Rope), s.Ropes[c.Rope].Rope.Diameter, sys)
		}},
		{"Pulleys", has(f, func(c search.Fit) int { return c.Pulley }), func(c search.Fit) string {
			return sized(nameOr(s.Pulleys[c.Pulley].Name, "Pulley", c.Pulley), s.Pulleys[c.Pulley].Diameter, sys)
		}},
		{"Lifts in", true, func(c search.Fit) string {
			if r := c.Hoist.Drive.Raising; r.Known && r.Time > 0 {
				return form.Lasting(r.Time)
			}
			return "not known"
		}},
		{"One lift gives back", true, func(c search.Fit) string { return page.Known(c.Gives, unit.Energies, sys) }},
		{"Tightest part", true, tightest},
	}
	for _, c := range columns {
		if c.on {
			v.Columns = append(v.Columns, c.name)
		}
	}
	for k, fit := range f.Found[:min(len(f.Found), shownFits)] {
		row := fitRow{Sign: "✓", Word: "ready", Written: written(fit.Combination), Name: "Make a variant with combination " + page.Itoa(k+1)}
		if n := len(fit.Open); n > 0 {
			row.Sign, row.Word, row.Open = "?", page.Counted(n, "thing")+" not known", say.All(fit.Open, sys)
		}
		for _, c := range columns {
			if c.on {
				row.Parts = append(row.Parts, c.of(fit))
			}
		}
		v.Rows = append(v.Rows, row)
	}
	v.why(f, sys)
	return v
}

// sized is a name with its size behind it, in the reader's units; the name alone where the size is not known.
func sized(name string, across unit.Known[unit.Length], sys unit.System) string {
	if d, ok := across.Value(); ok {
		return name + ", " + unit.SmallLengths.Format(float64(d), sys)
	}
	return name
}

// left names the parts that were left out.
func (v *fitsView) left(l search.LeftOut, s model.Shelf) {
	var names []string
	add := func(at []int, kind string, name func(int) string) {
		for _, i := range at {
			names = append(names, nameOr(name(i), kind, i))
		}
	}
	add(l.Motors, "Motor", func(i int) string { return s.Motors[i].Name })
	add(l.Stages, "Stage", func(i int) string { return s.Stages[i].Name })
	add(l.Drums, "Drum", func(i int) string { return s.Drums[i].Name })
	add(l.Ropes, "Rope", func(i int) string { return s.Ropes[i].Name })
	if len(names) > 0 {
		v.Notes = append(v.Notes, "Left out, as too little is known of them: "+strings.Join(names, ", ")+".")
	}
}

// fitsSay is the answer in one sentence.
func fitsSay(f search.Fits) string {
	ready := 0
	for _, one := range f.Found {
		if len(one.Open) == 0 {
			ready++
		}
	}
	say := page.Thousands(f.Tried) + " combinations were tried. "
	if f.Tried == 1 {
		say = "1 combination was tried. "
	}
	switch n := f.Do; {
	case n == 0:
		return say + "None lifts, comes down by itself, stays cool and holds."
	case ready == n:
		return say + fmt.Sprintf("%s of them lift, come down by themselves, stay cool and hold.", page.Thousands(n))
	case ready == 0:
		return say + fmt.Sprintf("%s of them may do: they lift and come down, and nothing gives way, but not everything is known of them.", page.Thousands(n))
	default:
		return say + fmt.Sprintf("%s of them lift, come down by themselves, stay cool and hold; of %s more not everything is known.", page.Thousands(ready), page.Thousands(n-ready))
	}
}

// why counts the rest by the first reason.
func (v *fitsView) why(f search.Fits, sys unit.System) {
	add := func(say string, n int) {
		if n > 0 {
			v.Why = append(v.Why, [2]string{say, page.Thousands(n)})
		}
	}
	add("The motor stalls: it does not lift the mass.", f.Stalls)
	add("It lifts, and does not come down by itself.", f.Stuck)
	for _, w := range f.Why {
		say := form.Sentence(w.Say.In(sys))
		if w.Differ {
			say += " (Figures of one of them.)"
		}
		add(say, w.Count)
	}
	add("Not worked out.", f.Passed-f.Worked)
}

func (v *fitsView) choose(at string, h page.HoistAt, all []page.HoistAt, revision int64) {
	v.Back, v.Use = at, at+"/use"
	for _, o := range all {
		v.Choose = append(v.Choose, fitsChoice{form.LinkView{Text: o.Name, URL: at + "/fits?" + o.Query()}, o.Name == h.Name})
	}
	v.Variant, v.I = h.VariantID(), page.Itoa(h.I)
	v.Revision, v.Version = strconv.FormatInt(revision, 10), strconv.FormatInt(h.Variant.Revision, 10)
}

// has tells whether a kind of part comes from the shelf, in all of them or in none.
func has(f search.Fits, of func(search.Fit) int) bool {
	return len(f.Found) > 0 && of(f.Found[0]) != model.Own
}

func gearsOf(c search.Fit, s model.Shelf) string {
	var names []string
	for i := 0; i < len(c.Stages); {
		alike := 1
		for i+alike < len(c.Stages) && c.Stages[i+alike] == c.Stages[i] {
			alike++
		}
		name := nameOr(s.Stages[c.Stages[i]].Name, "Stage", c.Stages[i])
		if alike > 1 {
			name = page.Itoa(alike) + " × " + name
		}
		names = append(names, name)
		i += alike
	}
	say := strings.Join(names, " + ")
	if r, ok := c.Hoist.Drive.Ratio.Value(); ok && len(c.Stages) > 1 {
		say += " (" + unit.GearRatios.Format(float64(r), unit.Metric) + ":1 in all)"
	}
	if c.Orders > 0 {
		say += "; also in " + page.Counted(c.Orders, "other order")
	}
	return say
}

// tightest is the part that is strained most, with its use.
func tightest(c search.Fit) string {
	use, ok := c.Tight.Use.Value()
	if !ok {
		return "not known"
	}
	return form.SentenceCase(c.Tight.Part) + ", " + unit.Rounded(float64(use), 2) + " ×"
}
