package hoist

import (
	"fmt"
	"strings"
	"sync"

	"duskweight/internal/draw"
	"duskweight/internal/model/lift"
	"duskweight/internal/model/lift/parts"
	"duskweight/internal/model/lift/path"
	"duskweight/internal/model/reason"
	"duskweight/internal/model/unit"
	"duskweight/web/form"
	"duskweight/web/page"
)

// word is the word of a part: "strong enough" of what is loaded is said of a part that holds.
func word(s parts.State) string {
	switch {
	case s.Word == path.Holds:
		return "settled"
	case s.Word == path.GivesWay && s.Check != nil && s.Check.Word == path.GivesWay:
		return "gives way"
	case s.Word == path.GivesWay:
		return "forbids it"
	}
	return page.CheckWords[s.Word].Word
}

// line is what the list says beside a part.
func (b bench) line(s parts.State) string {
	switch s.Word {
	case path.GivesWay, path.NotKnown:
		if len(s.Flags) > 0 {
			return s.Flags[0].Say.In(b.h.sys)
		}
		for _, r := range s.Against {
			if s.Word == path.NotKnown && len(s.Open) > 0 || (r.Word == reason.No) != (s.Word == path.GivesWay) {
				continue
			}
			return r.Short().In(b.h.sys)
		}
		return b.openSay(s)
	}
	if s.Check != nil {
		return s.Check.Case
	}
	return ""
}

// openSay names what a part is asked for first, and how many inputs more.
func (b bench) openSay(s parts.State) string {
	var names []string
	for _, p := range s.Open {
		name := b.label(p)
		if name != "" && len(names) < 1 {
			names = append(names, name)
		}
	}
	if n := len(s.Open) - len(names); n > 0 && len(names) > 0 {
		return strings.Join(names, "; ") + fmt.Sprintf(", and %d more", n)
	}
	return strings.Join(names, "; ")
}

// label is the label of an input inside the hoist.
func (b bench) label(p string) string {
	if text := b.h.labels[b.said.At+"."+p]; text != "" {
		return text
	}
	return labelsOfNew()[blankRow(p)]
}

// spot is a part as the pictures show it.
func (b bench) spot(i int) draw.Spot {
	s := b.states[i]
	return draw.Spot{ID: s.ID, Name: s.Name, Subs: b.subs(s), Href: b.at.card(s.ID), Say: b.spoken(i), Word: s.Word, Here: i == b.open, Around: s.Place == parts.Around}
}

// spoken is a part's word for whoever hears the page.
func (b bench) spoken(i int) string {
	s := b.states[i]
	say := word(s)
	if line := b.line(s); line != "" {
		say += ", " + strings.TrimSuffix(line, ".")
	}
	if i == b.open {
		return say + ". Its card is open"
	}
	return say + ". Open its card"
}

// subs are words about a part that a picture may have room for, the best first.
func (b bench) subs(s parts.State) []string {
	var out []string
	add := func(text string) {
		if text != "" {
			out = append(out, text)
		}
	}
	switch s.Word {
	case path.GivesWay:
		if s.Use.Is {
			add(page.UseText(float64(s.Use.Val)) + " its limit")
		}
		add(word(s))
	case path.NotKnown:
		if len(s.Open) > 0 {
			add(strings.ToLower(b.label(s.Open[0])) + "?")
		}
		if n := len(s.Open); n > 1 {
			add(fmt.Sprintf("%d not known", n))
		}
		add("not known")
	default:
		if s.Check == nil || s.Check.Demand.In == unit.Pieces {
			return nil // counted, not loaded
		}
		if s.Check.Demand.Is && s.Check.Capacity.Is {
			v := page.CheckViews([]path.Check{*s.Check}, b.said.At, b.h.sys, b.h.labels, "")[0]
			add(v.Pulls + " of " + v.May)
		}
		if s.Use.Is {
			add(page.UseText(float64(s.Use.Val)) + " used")
		}
	}
	return out
}

// progressSay is the sentence beside the squares.
func (b bench) progressSay() (settled int, say string) {
	for _, s := range b.states {
		if s.Settled() {
			settled++
		}
	}
	say = fmt.Sprintf("%d of %d parts settled", settled, len(b.states))
	if b.ask.Part >= 0 {
		say += "; next: " + strings.ToLower(b.states[b.ask.Part].Name)
	}
	return settled, say
}

// settles says what an answer to the question settles.
func (b bench) settles() string {
	switch n := b.ask.Settles; {
	case b.ask.Why == parts.TierRefused:
		return "The value there cannot be used as it is."
	case n > 1:
		return fmt.Sprintf("Your answer settles %d checks.", n)
	case n == 1:
		return "Your answer settles one check."
	}
	return map[parts.Tier]string{
		parts.TierMass:    "Everything else follows from it.",
		parts.TierDrive:   "Your answer decides whether the mass goes up and comes down.",
		parts.TierHolds:   "Two holds that share no part, two stops: without them nothing hangs.",
		parts.TierTypical: "This is a typical value. Give your own.",
		parts.TierRound:   "Until you answer, the worse answer counts.",
	}[b.ask.Why]
}

// blankRow is a path with each row's number as 0, as the form of a new row has it.
func blankRow(p string) string {
	var out strings.Builder
	for {
		before, rest, ok := strings.Cut(p, "[")
		out.WriteString(before)
		if !ok {
			return out.String()
		}
		_, p, _ = strings.Cut(rest, "]")
		out.WriteString("[0]")
	}
}

// labelsOfNew are the labels of the inputs of a hoist that has one row in each list.
var labelsOfNew = sync.OnceValue(func() map[string]string {
	h := lift.Hoist{Mass: make([]lift.Piece, 1)}
	h.Reeving.Sheaves, h.Train.Stages, h.Lower.Loads = make([]lift.Sheave, 1), make([]lift.Stage, 1), make([]lift.DCLoad, 1)
	h.Structure.Posts, h.Holds.Holds, h.Holds.UpperStops = make([]lift.Post, 1), make([]lift.Hold, 1), make([]lift.Stop, 1)
	return form.Form[lift.Hoist]{Parts: hoistInputs()}.Labels(h)
})
