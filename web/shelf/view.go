package shelf

import (
	"duskweight/internal/model"
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
