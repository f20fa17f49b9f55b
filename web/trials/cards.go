package trials

import (
	"net/url"
	"slices"
	"strings"

	"duskweight/internal/model/lift"
	"duskweight/internal/model/unit"
	"duskweight/internal/say"
	"duskweight/web/form"
	"duskweight/web/page"
)

// The records are kept in groups: each load step, lifts, ways down, and so on. The page opens one of them at a time as a card;
// which one stands in the address.

// Names in the address.
const (
	namePart = "part"
	nameAll  = "all"
)

// group is one group of records: what its card is called and when it is filled in.
type group struct {
	Key         string // in the address, and the first word of its paths that tells it: "raises", "at_50"
	Title, Note string
	List        string // the path of its rows inside the records; empty where it has none
	One         string // what one row is called
}

// groups are all groups of records in the order of the form.
func groups() []group {
	var out []group
	for _, p := range TrialsForm() {
		switch {
		case p.List != nil:
			out = append(out, group{Key: keyOf(p.List.Path), Title: p.List.Title, List: p.List.Path, One: p.List.One})
		case p.Group.Parts[0].Group != nil: // the load steps
			for _, step := range p.Group.Parts {
				out = append(out, group{Key: keyOf(step.Group.Parts[0].Input.Path), Title: "Load step: " + step.Group.Title, Note: p.Group.Intro})
			}
		default:
			g := group{Key: keyOf(p.Group.Parts[0].Input.Path), Title: p.Group.Title, Note: p.Group.Intro}
			if last := p.Group.Parts[len(p.Group.Parts)-1].List; last != nil {
				g.Key, g.List, g.One = keyOf(last.Path), last.Path, last.One
			}
			out = append(out, g)
		}
	}
	return out
}

// keyOf is the group that a path of the form belongs to.
func keyOf(path string) string {
	_, path, _ = strings.Cut(path, "trials.")
	key := form.Field(strings.TrimPrefix(path, "steps."))
	if key == "warm_at" {
		return "warmth"
	}
	return key
}

// trialsAt is what the address asks for.
type trialsAt struct {
	url  string // of the page
	part string // whose card is open; empty for none
	all  bool   // the whole form
}

func trialsAtOf(q url.Values, url string) trialsAt {
	at := trialsAt{url: url, part: q.Get(namePart), all: q.Get(nameAll) != ""}
	if field := q.Get(page.NameField); field != "" {
		at.part = keyOf(field)
	}
	return at
}

// query is the part of the address behind the page.
func (at trialsAt) query() string {
	switch {
	case at.all:
		return "?" + nameAll + "=1"
	case at.part != "":
		return "?" + namePart + "=" + at.part
	}
	return ""
}

// card is the address of the card of a group.
func (at trialsAt) card(key string) string {
	at.part, at.all = key, false
	return at.url + at.query() + "#card"
}

// open is the group whose card is open, or that of the first refused value; nil for none.
func (at trialsAt) open(refused []string) *group {
	all := groups()
	for _, p := range append(slices.Clone(refused), "trials."+at.part) {
		if i := slices.IndexFunc(all, func(g group) bool { return g.Key == keyOf(p) }); i >= 0 {
			return &all[i]
		}
	}
	return nil
}

// recordRow is a group of records as the list tells it.
type recordRow struct {
	Name, Inside, URL string
	Post, Add, One    string // the button that adds one, and where it posts
	Here              bool
}

// recordRows lists the groups but the load steps, each with how much is written down and a button for one more.
func recordRows(t lift.Trials, hoist string, at trialsAt) []recordRow {
	inside := map[string]int{"raises": len(t.Raises), "lowers": len(t.Lowers), "warmth": len(t.Warmth), "held": len(t.Held), "failures": len(t.Failures), "looks": len(t.Looks), "proofs": len(t.Proofs), "least": leastKnown(t.Least)}
	var out []recordRow
	for _, g := range groups() {
		n, listed := inside[g.Key]
		if !listed {
			continue // a load step: it has a rung
		}
		r := recordRow{Name: g.Title, URL: at.card(g.Key), Here: g.Key == at.part, One: g.One, Inside: "nothing yet"}
		if n > 0 && g.One == "" {
			r.Inside = page.Counted(n, "number")
		} else if n > 0 {
			r.Inside = strings.Replace(page.Counted(n, g.One), "way downs", "ways down", 1)
		}
		if g.Key != "failures" && strings.HasPrefix(g.List, "trials."+g.Key) {
			r.Add, r.Post = "add:"+hoist+"."+g.List, strings.TrimSuffix(r.URL, "#card")
		}
		out = append(out, r)
	}
	return out
}

// leastKnown counts the numbers of the smallest mass that are known.
func leastKnown(l lift.LeastTrial) (n int) {
	for _, k := range []unit.Known[unit.Mass]{l.Alone, l.AloneStays, l.Push, l.PushStays} {
		if k.Is {
			n++
		}
	}
	return n
}

// cardOf is the open card of a group.
func cardOf(g group, at trialsAt, v page.EditorView, sys unit.System) *page.CardView {
	return &page.CardView{Title: g.Title, Note: say.Marked(g.Note).In(sys), Close: at.url, Form: v.Form}
}
