package model

import (
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"

	"duskweight/internal/model/cell"
	"duskweight/internal/model/cost"
	"duskweight/internal/model/panel"
	"duskweight/internal/model/unit"
	"duskweight/internal/say"
)

// Need is a part that a plan asks for, whether or not it stands on the buy-and-make list yet. It never has a price.
type Need struct {
	As    cost.As // the word by which a part of the list says that it is this one
	At    string  // in the variant: the value that stands on its label; empty for none
	Name  string
	Of    cost.PartOf // "store", "safety", "panel": as in the list
	Make  bool        // usually made, not bought
	Count int
	Want  []Want       // what must stand on it; the first is the number that matters. Empty: nothing is asked of a label
	Look  say.Sentence // what to look for besides, in plain words
	Sizes []Size       // as it is made, or as it is designed
}

// Want is the one number to look for on a part.
type Want struct {
	Least   unit.Known[unit.Ratio]
	Unit    unit.Measure
	Where   say.Sentence           // "printed on the reel"
	Missing []string               // paths in the variant: what keeps the number from being known, and Least is then a lower bound
	Stated  unit.Known[unit.Ratio] // what the design says stands on it
	Open    bool                   // it stays not known whatever the label says
	None    bool                   // no number would do; Where says why
}

// Known reports whether the number is the whole answer.
func (w Want) Known() bool { return w.Least.Is && len(w.Missing) == 0 && !w.Open && !w.None }

// Short reports whether the design's own part has less on it than is asked for.
func (w Want) Short() bool {
	return w.Least.Is && w.Stated.Is && float64(w.Stated.Val) < float64(w.Least.Val)*(1-1e-9)
}

// Size is one size of a part, or a word about it.
type Size struct {
	Name  string
	Value unit.Known[unit.Ratio]
	Unit  unit.Measure // none where Text stands instead
	Text  string       // instead of a value
	Tape  bool         // a length that a tape is held to
}

// Needs lists the parts that a variant asks for, in the order of its stores, panels first. r is what the variant comes
// to.
func Needs(v Variant, r VariantResult) []Need {
	needs, _ := needsOf(v, r)
	return needs
}

// Owners says for each part of the list which store alone asks for it, by its place; −1 where none does, or several do.
func Owners(v Variant, r VariantResult) []int {
	needs, store := needsOf(v, r)
	owners, _ := Matched(v.Parts, needs)
	for i, n := range owners {
		if n >= 0 {
			owners[i] = store[n]
		}
	}
	return owners
}

// needsOf lists the parts that a variant asks for, and the store that asks for each: −1 for panels and what stores share.
func needsOf(v Variant, r VariantResult) (out []Need, store []int) {
	of := func(i int) {
		for len(store) < len(out) {
			store = append(store, i)
		}
	}
	for _, a := range v.Panels {
		out = append(out, panelNeeds(a)...)
	}
	if k := v.Controller.Kind; k == panel.ControllerTracking || k == panel.ControllerPulseWidth {
		out = append(out, controllerNeed(v))
	}
	of(-1)
	var shared []Need
	for i, s := range r.Stores {
		out = append(out, s.Part.Needs(s.Kind.Path(i))...)
		of(i)
		for _, n := range s.Part.Shared() {
			if !slices.ContainsFunc(shared, func(had Need) bool { return had.As == n.As }) {
				shared = append(shared, n)
			}
		}
	}
	out = append(out, shared...)
	of(-1)
	return out, store
}

// Matched says for each part of the list which of the needs it is, −1 for none: the first part of a kind is the first
// need of that kind, and so on. open are the needs that no part of the list is.
func Matched(parts []cost.Part, needs []Need) (of []int, open []int) {
	taken := make([]bool, len(needs))
	of = make([]int, len(parts))
	for i, p := range parts {
		of[i] = -1
		for n, need := range needs {
			if p.As != "" && need.As == p.As && !taken[n] {
				of[i], taken[n] = n, true
				break
			}
		}
	}
	for n := range needs {
		if !taken[n] {
			open = append(open, n)
		}
	}
	return of, open
}

// Part is the need as a new line of the list.
func (n Need) Part() cost.Part {
	p := cost.Part{Name: n.Name, As: n.As, Of: n.Of}
	if n.Count > 1 {
		p.Count = unit.Of(unit.Count(n.Count))
	}
	if n.Make {
		p.Get = cost.GetMake
	}
	if n.As == cost.AsBattery {
		p.Cells = unit.Yes
	}
	return p
}

func panelNeeds(a panel.Array) []Need {
	n := Need{As: cost.AsPanel, Name: "Panel", Of: cost.OfPanel, Count: max(1, int(a.Count.Or(1)))}
	if a.Name != "" {
		n.Name = "Panel, " + a.Name
	}
	if a.Count.Is && a.Count.Val == 0 {
		return nil
	}
	n.Want = []Want{{Least: ratio(a.Power), Unit: unit.Watts, Where: say.Words("on its label")}}
	fuse := Need{As: cost.AsPanelFuse, Name: "Fuse and switch close to the panels", Of: cost.OfSafety, Count: 1, Look: say.Words("made for direct current")}
	if a.Sheet != nil && a.Sheet.Isc.Is {
		if f, ok := cell.NextFuse(cell.PanelFuse(a.Sheet.Isc.Val)); ok {
			fuse.Want = []Want{{Least: unit.Of(unit.Ratio(f)), Unit: unit.Amperes, Where: say.That("for each string; %s × the panel's short-circuit current", say.Times(cell.PanelFuseOver))}}
		}
	} else {
		fuse.Look = say.That("%s; its number needs the panel's short-circuit current, which is not known", fuse.Look)
	}
	return []Need{n, fuse}
}

// controllerNeed asks for the power of all panels.
func controllerNeed(v Variant) Need {
	n := Need{As: cost.AsController, Name: "Charge controller", Of: cost.OfPanel, Count: 1}
	power, known := unit.Power(0), len(v.Panels) > 0
	for _, a := range v.Panels {
		one := a.Nominal()
		known = known && one.Is
		power += one.Val
	}
	if known {
		n.Want = []Want{{Least: unit.Of(unit.Ratio(power)), Unit: unit.Watts, Where: say.Words("of panels allowed on it")}}
	}
	return n
}

func cellNeeds(c CellsResult, at string) []Need {
	d, res := c.Design, c.Resolved
	battery := Need{As: cost.AsBattery, Name: orElse(d.Name, "Battery"), Of: cost.OfStore, Count: 1}
	battery.Want = []Want{{Least: known(res.Charge, res.Charge > 0), Unit: unit.Coulombs, Where: say.Words("on its label")}}
	if res.Voltage > 0 {
		battery.Sizes = append(battery.Sizes, Size{Name: "voltage", Value: unit.Of(unit.Ratio(res.Voltage)), Unit: unit.Volts})
	}
	if res.Kind.Ion {
		battery.Look = say.Words("with a board that stops charging in frost")
	}
	l := c.Line
	fuse := Need{As: cost.AsFuse, Name: "Fuse at the battery, with holder", Of: cost.OfSafety, Count: 1, Look: say.Words("made for direct current, close to the battery")}
	fuse.Want = []Want{{Least: ratio(l.FuseTake), Unit: unit.Amperes, Where: say.Words("on the fuse")}}
	if d.Fuse.Is {
		fuse.Want[0].Least = ratio(d.Fuse)
	}
	cable := Need{As: cost.AsCable, Name: "Cable from the battery", Of: cost.OfStore, Count: 1, Look: say.Words("two wires, copper")}
	cable.Want = []Want{{Least: ratio(l.AreaTake), Unit: unit.SquareMetres, Where: say.Words("of copper, printed on the cable")}}
	if d.CableArea.Is && (!l.AreaTake.Is || d.CableArea.Val > l.AreaTake.Val) {
		cable.Want[0].Least = ratio(d.CableArea)
	}
	if !d.CableLength.Is {
		cable.Want[0].Missing = []string{Join(at, "cable_length_m")}
	}
	cable.Sizes = []Size{{Name: "length, one way", Value: ratio(d.CableLength), Unit: unit.Metres}}
	return []Need{battery, fuse, cable}
}

// ratio is a known quantity as a plain number in SI.
func ratio[T unit.Number](k unit.Known[T]) unit.Known[unit.Ratio] { return known(k.Val, k.Is) }

func known[T unit.Number](v T, is bool) unit.Known[unit.Ratio] {
	if !is {
		return unit.Known[unit.Ratio]{}
	}
	return unit.Of(unit.Ratio(v))
}

func orElse(s, otherwise string) string {
	if strings.TrimSpace(s) == "" {
		return otherwise
	}
	return s
}

// thing is a part of a check as the name of a thing to buy: without its article, with a capital.
func thing(part string) string { return capital(strings.TrimPrefix(part, "the ")) }

func capital(s string) string {
	first, size := utf8.DecodeRuneInString(s)
	return string(unicode.ToUpper(first)) + s[size:]
}
