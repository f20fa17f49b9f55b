package parts

import (
	"fmt"
	"net/http"
	"strings"

	"duskweight/internal/model"
	"duskweight/internal/model/cost"
	"duskweight/internal/model/unit"
	"duskweight/internal/store"
	"duskweight/web/form"
	"duskweight/web/page"
)

// The printed lists of a variant: the market list, one line and one number for each part, and the making list with the
// sizes of what is made.

// listSheet is a printed list, ready to print.
type listSheet struct {
	page.PaperTop
	Back   string
	Letter bool
	Intro  string
	Groups []listGroup
	Pieces []pieceView
	Sum    string
	Empty  string
}

type listGroup struct {
	Title string
	Rows  []listRow
}

// listRow is one line of the market list.
type listRow struct {
	Name, Sizes, Number, Look, Price string
	Short                            string
	Known                            bool
}

// pieceView is one thing that is made.
type pieceView struct {
	Name, Print string
	Sizes       []page.PairView
	Listed      bool
}

func (s *Pages) showMarket(w http.ResponseWriter, r *http.Request) error {
	return s.showList(w, r, "Market list", marketOf)
}

func (s *Pages) showMaking(w http.ResponseWriter, r *http.Request) error {
	return s.showList(w, r, "Making list", makingOf)
}

type listMaker func(*listSheet, model.VariantResult, model.Variant, []model.Need, string, unit.System)

func (s *Pages) showList(w http.ResponseWriter, r *http.Request, title string, fill listMaker) error {
	p, v, sys, err := s.VariantIn(r)
	if err != nil {
		return err
	}
	top, err := s.PaperTop(p, v)
	if err != nil {
		return err
	}
	top.Title = title + ": " + top.Title
	result := s.Results.Of(p, v)
	l := listSheet{PaperTop: top, Back: page.VariantURL(p.ID, v.ID) + "/parts", Letter: r.URL.Query().Get("paper") == "letter"}
	fill(&l, result, v.Value, model.Needs(v.Value, result), p.Value.Currency, sys)
	return s.Show(w, r, http.StatusOK, page.Frame{Title: l.Title, Paper: true}, listPage(l))
}

// marketOf sorts the parts by how they are got. What is not on the list stands last, so that nothing is forgotten.
func marketOf(l *listSheet, r model.VariantResult, v model.Variant, needs []model.Need, currency string, sys unit.System) {
	l.Intro = "Each part has one number. Buy nothing on which that number is smaller or cannot be read. A fuse must have exactly that number."
	of, open := model.Matched(v.Parts, needs)
	titles := []struct {
		get   cost.Get
		title string
	}{{cost.GetBuy, "To buy"}, {cost.GetBorrow, "To borrow"}, {"", "How to get it is not known"}, {cost.GetHave, "At hand: look for the number before you use it"}}
	for _, t := range titles {
		g := listGroup{Title: t.title}
		for i, p := range v.Parts {
			if p.Get == t.get {
				g.Rows = append(g.Rows, marketRow(p, of[i], needs, currency, sys))
			}
		}
		if len(g.Rows) > 0 {
			l.Groups = append(l.Groups, g)
		}
	}
	rest := listGroup{Title: "The plan needs these too; they are not on the list"}
	for _, n := range open {
		if !needs[n].Make {
			rest.Rows = append(rest.Rows, marketRow(needs[n].Part(), n, needs, currency, sys))
		}
	}
	if len(rest.Rows) > 0 {
		l.Groups = append(l.Groups, rest)
	}
	if len(l.Groups) == 0 {
		l.Empty = "There is nothing to get yet."
	}
	if c := r.Cost; c.Parts > 0 {
		l.Sum = fmt.Sprintf("%d of %s priced: %s. Paid so far: %s.", c.Priced, page.Counted(c.Parts, "part"), page.MoneyText(c.Listed, currency), page.MoneyText(c.Spent, currency))
	}
}

func marketRow(p cost.Part, n int, needs []model.Need, currency string, sys unit.System) listRow {
	line := partLineOf(p, currency)
	row := listRow{Name: form.Clip(line.Name, 80), Price: line.Price, Known: true}
	if !p.Price.Is {
		row.Price = ""
	}
	if n >= 0 {
		line.number(needs[n], sys)
		var sizes []string
		for _, s := range needs[n].Sizes {
			if text := page.SizeText(s, sys); text != "" {
				sizes = append(sizes, s.Name+" "+text)
			}
		}
		row.Sizes = strings.Join(sizes[:min(3, len(sizes))], " · ")
		row.Short = line.Short
	}
	row.Number, row.Look, row.Known = form.Clip(line.Number, 100), form.Clip(line.Look, 100), line.Known
	return row
}

// makingOf are the parts that are made, with the design's sizes.
func makingOf(l *listSheet, _ model.VariantResult, v model.Variant, needs []model.Need, _ string, sys unit.System) {
	l.Intro = "The sizes are those of the plan. What is not known here is not known in the plan either: find it out before you cut."
	of, open := model.Matched(v.Parts, needs)
	for i, p := range v.Parts {
		if p.Get != cost.GetMake {
			continue
		}
		piece := pieceView{Name: form.Clip(partLineOf(p, "").Name, 80), Print: printedSay(p, sys), Listed: true}
		if n := of[i]; n >= 0 {
			piece.Sizes = sizesOf(needs[n], sys)
		}
		if p.Number != "" {
			piece.Sizes = append(piece.Sizes, page.PairView{Name: "note", Value: form.Clip(p.Number, 100)})
		}
		l.Pieces = append(l.Pieces, piece)
	}
	for _, n := range open {
		if needs[n].Make {
			l.Pieces = append(l.Pieces, pieceView{Name: needs[n].Name, Sizes: sizesOf(needs[n], sys)})
		}
	}
	if len(l.Pieces) == 0 {
		l.Empty = "No part of this plan is marked as one to make."
	}
	hours, grams := 0.0, 0.0
	for _, p := range v.Parts {
		if p.Get == cost.GetMake {
			hours += float64(p.Print.Or(0)) * float64(p.Count.Or(1))
			grams += float64(p.Grams.Or(0)) * float64(p.Count.Or(1))
		}
	}
	l.Sum = printSay(cost.Result{PrintTime: unit.Duration(hours), PrintMass: unit.Mass(grams)}, sys)
}

func sizesOf(n model.Need, sys unit.System) []page.PairView {
	var out []page.PairView
	for _, s := range n.Sizes {
		text := page.SizeText(s, sys)
		if text == "" {
			text = "not known"
		}
		out = append(out, page.PairView{Name: s.Name, Value: text})
	}
	if number, _ := page.WantText(n, sys); number != "" {
		out = append(out, page.PairView{Name: "the number to look for", Value: number})
	}
	return out
}

func printedSay(p cost.Part, sys unit.System) string {
	var says []string
	if t, ok := p.Print.Value(); ok {
		says = append(says, unit.Hours.Format(float64(t), sys)+" on the printer")
	}
	if m, ok := p.Grams.Value(); ok {
		says = append(says, unit.SmallMasses.Format(float64(m), sys)+" of material")
	}
	if len(says) == 0 {
		return ""
	}
	return "Printed, each: " + strings.Join(says, ", ")
}

// sendPartsCSV sends the yearly costs of one variant.
func (s *Pages) sendPartsCSV(w http.ResponseWriter, r *http.Request) error {
	p, v, err := s.Variant(r)
	if err != nil {
		return err
	}
	one := page.BillsOf([]model.VariantResult{s.Results.Of(p, v)}, []store.Saved[model.Variant]{v}, p.Value.Currency)
	if len(one[0].Cost.Years) == 0 {
		return page.ErrNotFound
	}
	return page.SendCSV(w, page.CostNumbers(one))
}
