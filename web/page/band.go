package page

import (
	"slices"
	"strings"

	"duskweight/internal/model"
	"duskweight/internal/model/reason"
	"duskweight/internal/model/unit"
	"duskweight/internal/say"
	"duskweight/web/form"
)

// BandView is the state of one store or of a whole variant, ready to print: one of four, told apart by border, sign and
// words. It stands before all else on a page and on the sheet.
type BandView struct {
	Of    string      // whose state it is, where several are told: "The whole variant"; else empty
	State reason.Word // yes, proven, not_known, no
	Word  string      // "DO NOT HANG.", "NOT READY: 3 things are not known."
	Brief string      // the same as lists and tables have it, with its figures: "PROVEN BY TEST up to 120 kg until 1 May 2027"
	Bare  string      // the same without figures: "NOT READY"
	Why   string      // the first reason; may be empty
	Fall  string      // "It may fall, and its fall zone is …"; empty where it may not
	Link  form.LinkView
	Bars  bool // not even the first step, 100 mm off the ground, is allowed
}

// BandSigns stand before the words of a state, so that no colour says it alone.
var BandSigns = map[reason.Word]string{reason.No: "✕", reason.NotKnown: "?", reason.Proven: "✓", reason.Yes: "✓"}

// Sign is the sign of the state.
func (b BandView) Sign() string { return BandSigns[b.State] }

// Class is the name of the state in the style sheets.
func (b BandView) Class() string { return strings.ReplaceAll(string(b.State), "_", "-") }

// Says is the band as one text, for whoever hears the page: the danger first.
func (b BandView) Says() string {
	return strings.Join(slices.DeleteFunc([]string{b.Of, b.Word, b.Why, b.Fall}, func(s string) bool { return s == "" }), " ")
}

// judged is what a band is made from: a word, its reasons, and the kinds of store that it speaks of.
type judged struct {
	word    reason.Word
	because []reason.Reason
	stores  []model.StoreResult
}

// VariantBand is the band of a whole variant. to leads to the field of a path inside it; nil for no links.
func VariantBand(r model.VariantResult, sys unit.System, to func(path string) form.LinkView) BandView {
	return judged{r.Ready, r.Because, r.Stores}.band(sys, to)
}

// StoreBand is the band of store i alone.
func StoreBand(r model.VariantResult, i int, sys unit.System, to func(path string) form.LinkView) BandView {
	s := r.Stores[i]
	return judged{s.Ready, s.Because, r.Stores[i : i+1]}.band(sys, to)
}

// StoreBands are the band of store i and, where the variant is worse than its store, that of the variant below.
func StoreBands(r model.VariantResult, i int, sys unit.System, to func(path string) form.LinkView) []BandView {
	out := []BandView{StoreBand(r, i, sys, to)}
	if r.Ready.Worse(r.Stores[i].Ready) {
		out[0].Of = "This store:"
		whole := VariantBand(r, sys, to)
		whole.Of = "The whole variant:"
		out = append(out, whole)
	}
	return out
}

// EachStore are the states of the stores one by one, where there are several or the only one differs from the whole.
func EachStore(r model.VariantResult, sys unit.System) (out []BandView) {
	if len(r.Stores) == 0 || len(r.Stores) == 1 && r.Stores[0].Ready == r.Ready {
		return nil
	}
	for i, s := range r.Stores {
		b := StoreBand(r, i, sys, nil)
		b.Of = OrUnnamed(s.Name) + ":"
		out = append(out, b)
	}
	return out
}

func (j judged) band(sys unit.System, to func(string) form.LinkView) BandView {
	b := BandView{State: j.word, Bars: slices.ContainsFunc(j.because, func(r reason.Reason) bool { return r.Forbids })}
	if b.State == "" {
		b.State = reason.Yes
	}
	why := j.first()
	switch b.State {
	case reason.No:
		b.Bare = j.stop()
		b.Brief = b.Bare
		b.Word = b.Bare + "."
	case reason.NotKnown:
		_, unknown := ThingsNotKnown(j.because)
		b.Bare = "NOT READY"
		b.Brief = b.Bare + ": " + unknown
		if b.Bars {
			b.Brief = b.Bare + ". " + j.hold() + ": " + unknown
		}
		b.Word = b.Brief + "."
	case reason.Proven:
		up, until, _ := Proof(j.because)
		most, day := say.Mass(up.Val).Down().In(sys), DayText(until)
		b.Bare = "PROVEN BY TEST"
		b.Brief = b.Bare + " up to " + most + " until " + day
		b.Word = b.Bare + " up to " + most + ", under keep-out, until " + day + "."
		b.Why = "Load-tested: " + provenParts(j.because) + ". Nobody inside the keep-out."
	default:
		b.Bare, b.Word = j.ready()
		b.Brief = b.Bare
	}
	if why != nil && b.State.Worse(reason.Proven) {
		b.Why = why.Say.In(sys)
	}
	if why != nil && to != nil {
		b.Link = to(why.Path)
	}
	b.Fall = mayFall(j.stores)
	return b
}

// first is the reason that a band tells: the worst of those that make its word, and with the word of a kind
// ("DO NOT HANG") the worst of its stores. A question that is open does not stand beside "DO NOT HANG" as if it were why.
func (j judged) first() *reason.Reason {
	because := j.because
	if j.word == reason.No {
		for _, s := range j.stores {
			if s.Ready == reason.No && s.Kind.Stop != "" && len(s.Because) > 0 {
				because = s.Because
				break
			}
		}
	}
	if len(because) == 0 {
		return nil
	}
	return &because[max(0, slices.IndexFunc(because, func(r reason.Reason) bool { return r.Word == j.word }))]
}

// stop is what a plan that is not to be built says: the word of the kind that is the reason, such as that nothing is hung,
// or else that it is not used.
func (j judged) stop() string {
	for _, s := range j.stores {
		if s.Ready == reason.No && s.Kind.Stop != "" {
			return s.Kind.Stop
		}
	}
	return "DO NOT USE"
}

func (j judged) hold() string {
	for _, s := range j.stores {
		if s.Kind.Hold != "" {
			return s.Kind.Hold
		}
	}
	return "Use nothing"
}

// ready is what a plan says that may be used, bare and whole.
func (j judged) ready() (bare, whole string) {
	for _, s := range j.stores {
		if k := s.Kind; k.Go != "" {
			return k.Go, k.Go + ": " + k.GoWhy + "."
		}
	}
	return "READY for use", "READY for use."
}

// ThingsNotKnown counts the reasons that want an answer: 3, "3 things are not known".
func ThingsNotKnown(because []reason.Reason) (n int, say string) {
	for _, r := range because {
		if r.Word == reason.NotKnown {
			n++
		}
	}
	if n == 1 {
		return n, "1 thing is not known"
	}
	return n, Itoa(n) + " things are not known"
}

// Proof is what the load tests of a plan stand for: the least mass and the first day on which one ends. False without a
// test.
func Proof(because []reason.Reason) (up unit.Known[unit.Mass], until reason.Day, ok bool) {
	for _, r := range because {
		if r.Word != reason.Proven {
			continue
		}
		if m, known := r.Mass.Value(); known && (!up.Is || m < up.Val) {
			up = unit.Of(m)
		}
		if !ok || until.After(r.Until) {
			until = r.Until
		}
		ok = true
	}
	return up, until, ok
}

// provenParts names the parts that passed a load test.
func provenParts(because []reason.Reason) string {
	var parts []string
	for _, r := range because {
		if name := form.WordFor(r.ID); r.Word == reason.Proven && !slices.Contains(parts, name) {
			parts = append(parts, name)
		}
	}
	return strings.Join(parts, ", ")
}

// ReadyOf says in short what the plan sheet says of a variant: "DO NOT HANG", "NOT READY: 3 things are not known".
func ReadyOf(r model.VariantResult, sys unit.System) string {
	return VariantBand(r, sys, nil).Brief
}
