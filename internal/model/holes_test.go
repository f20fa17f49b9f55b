package model_test

import (
	"bufio"
	"hash/fnv"
	"maps"
	"math/rand/v2"
	"os"
	"reflect"
	"slices"
	"strings"
	"testing"

	"duskweight/internal/model"
	"duskweight/internal/model/reason"
	"duskweight/internal/model/sun"
	"duskweight/internal/model/unit"
)

// hole is a plan that is ready, to be changed by chance.
type hole struct {
	id    string
	doc   *model.Document
	spots []spot
}

// readyPlans are all plans that are ready, each on ground without a year: the year decides nothing but how much energy there
// is.
func readyPlans(t *testing.T) []hole {
	t.Helper()
	var out []hole
	p := readPlans(t)
	for _, set := range []plans{p, p.more(t)} {
		for _, c := range set.Cases {
			if c.Want.Ready != "yes" {
				continue
			}
			doc, err := set.document(t, c)
			if err != nil {
				t.Fatal(err)
			}
			doc.Project.Place.Sky, doc.Project.Place.Described = sun.SkyDescribed, ""
			doc.Project.Place.RecordLow = unit.Of(unit.Celsius(-21))
			h := hole{id: c.ID, doc: &doc}
			h.spots = append(spots(reflect.ValueOf(&doc.Variants[0]), "", ""), spots(reflect.ValueOf(&doc.Project.Load), "load", "")...)
			if w := h.word(); w != reason.Yes {
				t.Fatalf("%s without a year: %s", c.ID, w)
			}
			out = append(out, h)
		}
	}
	return out
}

// word is the judgement of the document as it stands; refused documents are "no".
func (h hole) word() reason.Word {
	if model.CheckOn(*h.doc, on).Err() != nil {
		return reason.No
	}
	return model.Prepare(h.doc.Project).At(on).Evaluate(h.doc.Variants[0]).Ready
}

// one is a change of one field.
type one struct {
	spot, other spot   // the field, and the one that it is swapped with
	group       string // field and kind of change, without places in lists
	do          func()
}

// touches reports whether two changes meet in a field, or one in a list that the other changes.
func (o one) touches(p one) bool {
	for _, a := range []string{o.spot.path, o.other.path} {
		for _, b := range []string{p.spot.path, p.other.path} {
			if a != "" && b != "" && (strings.HasPrefix(a, b) || strings.HasPrefix(b, a)) {
				return true
			}
		}
	}
	return false
}

// all are all changes of one field, in order; fields of one measure are swapped by chance.
func (h hole) all(draw *rand.Rand) []one {
	var out []one
	for _, s := range h.spots {
		other := h.like(s, draw)
		kinds := s.changes(other)
		for _, kind := range slices.Sorted(maps.Keys(kinds)) {
			o := one{spot: s, group: places.ReplaceAllString(strings.TrimPrefix(s.path, "."), "[]") + " " + kind, do: kinds[kind]}
			if kind == "swapped" {
				o.other = other
			}
			out = append(out, o)
		}
	}
	return out
}

// chance is a plan's own generator, so that another plan in the list draws nothing else here.
func (h hole) chance() *rand.Rand {
	sum := fnv.New64a()
	sum.Write([]byte(h.id))
	return rand.New(rand.NewPCG(27, sum.Sum64()))
}

// like is another field of the same measure in which another number stands; none where there is none.
func (h hole) like(s spot, draw *rand.Rand) spot {
	none := spot{at: reflect.ValueOf(struct{}{})}
	if !s.numeric() {
		return none
	}
	var all []spot
	for _, o := range h.spots {
		if o.path != s.path && o.known && o.at.Type() == s.at.Type() && o.numeric() && o.at.Interface() != s.at.Interface() {
			all = append(all, o)
		}
	}
	if len(all) == 0 {
		return none
	}
	return all[draw.IntN(len(all))]
}

// changed makes some changes, judges, and takes them back.
func (h hole) changed(set []one) reason.Word {
	type was struct{ at, old reflect.Value }
	var before []was
	for _, o := range set {
		for _, s := range []spot{o.spot, o.other} {
			if s.path != "" {
				old := reflect.New(s.at.Type()).Elem()
				old.Set(s.at)
				before = append(before, was{s.at, old})
			}
		}
		o.do()
	}
	w := h.word()
	for _, b := range slices.Backward(before) {
		b.at.Set(b.old)
	}
	return w
}

// drawn are one to four changes that do not meet.
func drawn(pool []one, draw *rand.Rand) []one {
	var set []one
	for range 1 + draw.IntN(4) {
		o := pool[draw.IntN(len(pool))]
		if !slices.ContainsFunc(set, o.touches) {
			set = append(set, o)
		}
	}
	return set
}

// fits reports whether a change may leave a plan ready, by itself or together with another of the set.
func (o one) fits(set []one, fine map[string]string) bool {
	return fine[o.group] != "" || slices.ContainsFunc(set, func(p one) bool { return fine[o.group+" + "+p.group] != "" })
}

// staysReady is the closed list of changes that may leave a plan ready, each with the reason why that is right. Of two with a
// plus between them the first may only where the second is made too.
func staysReady(t *testing.T) map[string]string {
	t.Helper()
	f, err := os.Open("../../testdata/unsafe/stays_ready.txt")
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	out, why := map[string]string{}, ""
	for in := bufio.NewScanner(f); in.Scan(); {
		switch line := in.Text(); {
		case strings.HasPrefix(line, "# "):
			why = line[2:]
		case strings.Contains(line, " + "):
			out[line] = why
		case why != "" && line != "":
			words := strings.Fields(line)
			for _, kind := range words[1:] {
				out[words[0]+" "+kind] = why
				out[words[0]+" swapped"] = why // with whatever number stands in the other field
			}
		}
	}
	return out
}

// A plan that is ready and is changed by chance, one to four fields at a time, stays ready only by changes of the closed list,
// each of which was read: a new field that no rule looks at fails here. Many more changes are tried in the long form.
func TestHoles(t *testing.T) {
	longOnly(t)
	fine := staysReady(t)
	tries, told := 40, map[string]bool{} // for each plan
	all := readyPlans(t)
	long := os.Getenv("DUSKWEIGHT_TORTURE") != ""
	if long {
		tries = 100_000 / len(all)
	}
	stayed := 0
	try := func(h hole, set []one) {
		if h.changed(set) != reason.Yes {
			return
		}
		stayed++
		for _, o := range set {
			if !o.fits(set, fine) && !told[o.group] {
				told[o.group] = true
				t.Errorf("%s stays ready by %s: %s", h.id, o.group, groups(set))
			}
		}
	}
	for _, h := range all {
		draw := h.chance()
		pool := h.all(draw)
		for _, o := range pool {
			if long {
				try(h, []one{o})
			}
		}
		for i := range tries {
			if i%100 == 99 {
				pool = h.all(draw)
			}
			try(h, drawn(pool, draw))
		}
	}
	if stayed < tries*len(all)/20 {
		t.Errorf("%d of %d stay ready: the search is blind", stayed, tries*len(all))
	}
}

func groups(set []one) string {
	var out []string
	for _, o := range set {
		out = append(out, o.group)
	}
	return strings.Join(out, " + ")
}
