package form

import (
	"cmp"
	"fmt"
	"net/url"
	"strings"
	"unicode"
	"unicode/utf8"

	"duskweight/internal/model"
	"duskweight/internal/model/unit"
	"duskweight/internal/say"
)

// Noted reports whether there is a note under the field, which its element then names.
func (f FieldView) Noted() bool {
	return f.Problem != "" || f.Saved != "" || f.Echo != "" || f.Hint != "" || f.Remark != "" || f.Origin != ""
}

// FormView is a form ready to print.
type FormView struct {
	Action   string // where it is saved
	Try      string // where it is only computed; empty for a form without an answer
	Revision string
	Page     string // random, see namePage
	Units    string // see nameUnits
	Unsaved  bool   // shown by "Show the answer": typed and not saved
	Parts    []PartView
	Problems []ProblemView // the summary on top
	Save     string        // the word on the button
}

// PartView is one node: exactly one of its three is set.
type PartView struct {
	Field *FieldView
	Group *GroupView
	List  *ListView
}

type GroupView struct {
	Title, Intro, Shape string
	Fold, Open          bool
	Section             Section // at the top of a form
	Parts               []PartView
	Links, Other        []LinkView // rows of the catalog, and other pages, that fill it in
}

type ListView struct {
	ID, Path, Title, One, Intro, Problem string
	Count                                int
	Full, Open                           bool
	Kept                                 bool    // no row can be taken away here, and several show their names
	Section                              Section // at the top of a form
	Rows                                 []rowView
}

type rowView struct {
	Name   string // "Panel 2"
	Path   string
	Source string // of all its typical values, where it is one
	Parts  []PartView
}

type FieldView struct {
	ID, Path, Label, Unit, Hint, Value, Echo string
	Told                                     string // how a reader is told the value, where not by its digits
	Kind                                     InputKind
	Options                                  []OptionView
	Problem                                  string
	Saved                                    string     // what is stored, where the field holds refused text
	Origin, Source                           string     // "typical", and from where
	Offer                                    string     // a typical value, where the value is not known
	Remark                                   string     // on a value outside of what is usual
	Spare                                    bool       // may stay empty
	Unsaved                                  bool       // the text is not what the design shows
	Tiles                                    []TileView // its answers as pictures, where a page offers them so
}

// TileView is an answer as a picture.
type TileView struct {
	Value, Word, Picture string
	Chosen               bool
}

type OptionView struct {
	Value, Word string
	Chosen      bool
}

// ProblemView is one line of the summary, linked to its field.
type ProblemView struct {
	ID    string `json:"id"`
	Label string `json:"label"`
	Say   string `json:"say"`
	Path  string `json:"-"`
	URL   string `json:"-"` // of the field, where it is not on this page
}

// FieldID is the id of the element of a path: CSS and links take no brackets.
func FieldID(path string) string { return "f-" + plainID.Replace(path) }

// together keeps a figure and its sign on one line.
var together = strings.NewReplacer(" %", "\u00a0%", "± ", "±\u00a0")

var plainID = strings.NewReplacer("[", "-", "]", "", ".", "-", "_", "-")

// View prints a form. t is the thing with what could be read of typed. typed is text that was not saved and is shown again as
// it was typed. Problems stand on top and beside their fields.
func (f Form[T]) View(t *T, typed url.Values, problems model.Problems, sys unit.System) FormView {
	p := printer[T]{typed: typed, sys: sys, problems: map[string]string{}}
	if f.Origins != nil {
		p.origins = *f.Origins(t)
	}
	for _, one := range problems {
		say := Sentence(one.Say.In(sys))
		if have := p.problems[one.Path]; have != "" {
			say = have + " " + say
		}
		p.problems[one.Path] = say
	}
	p.stored = cmp.Or(f.Stored, t)
	if len(typed) > 0 {
		p.was = f.shown(p.stored, sys)
	}
	shown := f.Parts
	if f.Shown != nil {
		refused := make([]string, len(problems))
		for i, one := range problems {
			refused[i] = one.Path
		}
		shown = f.Shown(refused)
	}
	parts := p.parts(shown, t)
	openFirst(parts)
	out := FormView{Parts: parts, Save: "Save", Units: UnitsWords[sys]}
	for _, one := range problems {
		label, id := p.labelOf(one.Path)
		if f.Shown != nil && id == "main" {
			label = cmp.Or(f.Labels(*t)[one.Path], label)
		}
		out.Problems = append(out.Problems, ProblemView{ID: id, Label: label, Say: Sentence(one.Say.In(sys)), Path: one.Path})
	}
	return out
}

// Sentence makes a sentence of what a check says.
func Sentence(say string) string {
	say = strings.TrimSpace(say)
	if say == "" {
		return ""
	}
	first, size := utf8.DecodeRuneInString(say)
	say = string(unicode.ToUpper(first)) + say[size:]
	if last := say[len(say)-1]; last != '.' && last != '?' && last != '!' {
		say += "."
	}
	return say
}

// shown gives the texts of all fields for a thing, by path.
func (f Form[T]) shown(t *T, sys unit.System) map[string]string {
	out := map[string]string{}
	f.Walk(f.Parts, t, func(in *Input[T]) { out[in.Path] = in.Show(t, sys) })
	return out
}

type printer[T any] struct {
	typed    url.Values
	stored   *T
	was      map[string]string // what the fields show of what is saved; nil where it is not asked for
	sys      unit.System
	origins  model.Origins
	problems map[string]string
	labels   []struct{ path, label string }
	where    string // the row, or the group inside a section, that is printed
	deep     bool   // inside a section
}

func (p *printer[T]) parts(parts []Part[T], t *T) []PartView {
	out := make([]PartView, 0, len(parts))
	for _, one := range parts {
		switch {
		case one.Input != nil:
			out = append(out, PartView{Field: p.field(one.Input, t)})
		case one.Group != nil:
			out = append(out, PartView{Group: p.group(one.Group, t)})
		case one.List != nil:
			if l := p.list(one.List, t); len(l.Rows) > 0 || !one.List.fixed {
				out = append(out, PartView{List: l})
			}
		}
	}
	return out
}

func (p *printer[T]) group(g *Group[T], t *T) *GroupView {
	name := p.where
	if name == "" && p.deep { // a section is no part of a name, what stands inside it is
		name = g.Title
	}
	was := p.deep
	p.deep = true
	v := &GroupView{Title: g.Title, Intro: say.Marked(g.Intro).In(p.sys), Shape: g.Shape, Fold: g.Fold, Parts: p.inside(name, g.Parts, t), Links: g.Links, Other: g.Other}
	p.deep = was
	v.Open, v.Section = anyProblem(v.Parts), sectionOf(v.Title, v.Parts, g.tell...)
	if g.Brief != nil {
		v.Section.Brief = g.Brief(t, p.sys)
	}
	return v
}

// inside prints what belongs to a row or a group; a problem in it is told with its name.
func (p *printer[T]) inside(name string, parts []Part[T], t *T) []PartView {
	was := p.where
	p.where = name
	defer func() { p.where = was }()
	return p.parts(parts, t)
}

func (p *printer[T]) list(l *list[T], t *T) *ListView {
	v := &ListView{ID: FieldID(l.Path), Path: l.Path, Title: l.Title, One: l.One, Intro: say.Marked(l.Intro).In(p.sys), Problem: p.problems[l.Path]}
	p.labels = append(p.labels, struct{ path, label string }{l.Path, l.Title})
	if v.Intro == v.Title {
		v.Intro = ""
	}
	v.Count = l.Count(t)
	if was := p.was; was != nil && l.Count(p.stored) != v.Count { // its rows are not those that are saved
		p.was = nil
		defer func() { p.was = was }()
	}
	v.Full, v.Kept = v.Count >= l.most || l.fixed, l.called != nil
	for i := range v.Count {
		row := l.Row(i)
		if l.picked && len(row) == 0 {
			continue
		}
		path := fmt.Sprintf("%s[%d]", l.Path, i)
		name := fmt.Sprintf("%s %d", SentenceCase(l.One), i+1)
		if l.called != nil {
			name = l.called(t, i)
		}
		v.Rows = append(v.Rows, rowView{Name: name, Path: path, Parts: p.inside(name, row, t)})
		shown := &v.Rows[len(v.Rows)-1]
		if len(v.Rows) > 1 {
			hushed(shown.Parts)
		}
		shown.Source = p.sourceOnce(shown.Parts)
	}
	own := []PartView{{List: v}}
	v.Open, v.Section = anyProblem(own), sectionOf(v.Title, own)
	return v
}

// sourceOnce takes the source from the fields of a row where two or more have the same, and returns it.
func (p *printer[T]) sourceOnce(parts []PartView) string {
	source, n := "", 0
	for _, one := range parts {
		if f := one.Field; f != nil && f.Origin == "typical" {
			if full := p.origins[f.Path].Source; source == "" || full == source {
				source = full
				n++
			} else {
				return ""
			}
		}
	}
	if n < 2 {
		return ""
	}
	for _, one := range parts {
		if one.Field != nil && one.Field.Origin == "typical" {
			one.Field.Source = ""
		}
	}
	return Clip(source, 160)
}

// hushed takes the hints out of a row that has another above it, where they already stand.
func hushed(parts []PartView) {
	for _, p := range parts {
		switch {
		case p.Field != nil:
			p.Field.Hint = ""
		case p.Group != nil:
			hushed(p.Group.Parts)
		}
	}
}

func SentenceCase(s string) string {
	if s == "" {
		return ""
	}
	first, size := utf8.DecodeRuneInString(s)
	return string(unicode.ToUpper(first)) + s[size:]
}

func (p *printer[T]) field(in *Input[T], t *T) *FieldView {
	label := in.Label
	if p.where != "" {
		label = p.where + ": " + label
	}
	p.labels = append(p.labels, struct{ path, label string }{in.Path, label})
	shown := in.Show(t, p.sys)
	v := &FieldView{
		ID: FieldID(in.Path), Path: in.Path, Label: in.Label, Unit: in.Symbol(p.sys), Hint: say.Marked(SentenceCase(in.Hint)).In(p.sys), Kind: in.Kind, Spare: in.Spare,
		Value: shown, Problem: p.problems[in.Path],
	}
	v.Told, _ = in.taped(t, p.sys)
	if in.echo != nil {
		v.Echo = in.echo(t, p.sys)
	}
	if sent, ok := p.typed[in.Path]; ok && len(sent) > 0 && !sameText(sent[0], shown) {
		v.Value, v.Echo, v.Unsaved = sent[0], "", true
	}
	if was := p.was[in.Path]; p.was != nil && !sameText(v.Value, was) {
		v.Saved = was
		if in.Kind == AsChoice {
			v.Saved = WordFor(was)
		}
	}
	if o, ok := p.origins[in.Path]; ok {
		v.Origin, v.Source = string(o.Kind), together.Replace(shortSource(o.Source))
	}
	if shown == "" {
		p.empty(v, in, t)
	} else if !v.Unsaved {
		v.Remark = in.RemarkOn(t, p.sys)
	}
	for _, o := range in.Options {
		v.Options = append(v.Options, OptionView{Value: o.Value, Word: o.Word, Chosen: o.Value == v.Value})
	}
	return v
}

// empty tells in an empty field what is usual, and offers the typical value where the field does not count as it.
func (p *printer[T]) empty(v *FieldView, in *Input[T], t *T) {
	if in.Usual == nil {
		return
	}
	u := in.Usual(t)
	if more := in.UsualHint(t, p.sys); more != "" {
		v.Hint = strings.TrimPrefix(strings.TrimSuffix(v.Hint, ".")+". ", ". ") + SentenceCase(more)
	}
	if u.Typical() && !u.Counts {
		v.Offer = u.Quantity.Format(u.Take, p.sys)
	}
}

// labelOf finds the label and the element for a problem: the field itself, or the nearest thing around it.
func (p *printer[T]) labelOf(path string) (label, id string) {
	best := ""
	for _, l := range p.labels {
		if l.path == path {
			return l.label, FieldID(path)
		}
		if (strings.HasPrefix(path, l.path+"[") || strings.HasPrefix(path, l.path+".") || strings.HasPrefix(l.path, path+".") || strings.HasPrefix(l.path, path+"[")) && len(l.path) > len(best) {
			best, label = l.path, l.label
		}
	}
	if best == "" {
		return path, "main"
	}
	return label, FieldID(best)
}
