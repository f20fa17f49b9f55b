package web

import (
	"fmt"
	"net/url"
	"strings"
	"unicode"
	"unicode/utf8"

	"duskweight/internal/model"
	"duskweight/internal/model/unit"
)

// formView is a form ready to print.
type formView struct {
	Action   string // where it is saved
	Try      string // where it is only computed; empty for a form without an answer
	Revision string
	Page     string // random, see namePage
	Units    string // see nameUnits
	Unsaved  bool   // shown by "Show the answer": typed and not saved
	Parts    []partView
	Problems []problemView // the summary on top
	Save     string        // the word on the button
}

// partView is one node: exactly one of its three is set.
type partView struct {
	Field *fieldView
	Group *groupView
	List  *listView
}

type groupView struct {
	Title, Intro, Shape string
	Fold, Open          bool
	Section             section // at the top of a form
	Parts               []partView
	Links, Other        []linkView // rows of the catalog, and other pages, that fill it in
}

type listView struct {
	ID, Path, Title, One, Intro, Problem string
	Count                                int
	Full, Open                           bool
	Section                              section // at the top of a form
	Rows                                 []rowView
}

type rowView struct {
	Name   string // "Panel 2"
	Path   string
	Source string // of all its typical values, where it is one
	Parts  []partView
}

type fieldView struct {
	ID, Path, Label, Unit, Hint, Value, Echo string
	Kind                                     inputKind
	Options                                  []optionView
	Problem                                  string
	Saved                                    string // what is stored, where the field holds refused text
	Origin, Source                           string // "typical", and from where
	Offer                                    string // a typical value, where the value is not known
	Remark                                   string // on a value outside of what is usual
	Spare                                    bool   // may stay empty
}

type optionView struct {
	Value, Word string
	Chosen      bool
}

// problemView is one line of the summary, linked to its field.
type problemView struct{ ID, Label, Say string }

// fieldID is the id of the element of a path: CSS and links take no brackets.
func fieldID(path string) string { return "f-" + plainID.Replace(path) }

var plainID = strings.NewReplacer("[", "-", "]", "", ".", "-", "_", "-")

// view prints a form. t is the stored thing; typed is text that was refused and is shown again as it was typed;
// problems stand on top and beside their fields.
func (f form[T]) view(t *T, typed url.Values, problems model.Problems, sys unit.System) formView {
	p := printer[T]{typed: typed, sys: sys, problems: map[string]string{}}
	if f.origins != nil {
		p.origins = *f.origins(t)
	}
	for _, one := range problems {
		say := sentence(one.Say)
		if have := p.problems[one.Path]; have != "" {
			say = have + " " + say
		}
		p.problems[one.Path] = say
	}
	parts := p.parts(f.parts, t)
	openFirst(parts)
	out := formView{Parts: parts, Save: "Save", Units: unitsWords[sys]}
	for _, one := range problems {
		label, id := p.labelOf(one.Path)
		out.Problems = append(out.Problems, problemView{ID: id, Label: label, Say: sentence(one.Say)})
	}
	return out
}

// sentence makes a sentence of what a check says.
func sentence(say string) string {
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

type printer[T any] struct {
	typed    url.Values
	sys      unit.System
	origins  model.Origins
	problems map[string]string
	labels   []struct{ path, label string }
	where    string // the row, or the group inside a section, that is printed
	deep     bool   // inside a section
}

func (p *printer[T]) parts(parts []part[T], t *T) []partView {
	out := make([]partView, 0, len(parts))
	for _, one := range parts {
		switch {
		case one.input != nil:
			out = append(out, partView{Field: p.field(one.input, t)})
		case one.group != nil:
			out = append(out, partView{Group: p.group(one.group, t)})
		case one.list != nil:
			out = append(out, partView{List: p.list(one.list, t)})
		}
	}
	return out
}

func (p *printer[T]) group(g *group[T], t *T) *groupView {
	name := p.where
	if name == "" && p.deep { // a section is no part of a name, what stands inside it is
		name = g.title
	}
	was := p.deep
	p.deep = true
	v := &groupView{Title: g.title, Intro: retell(g.intro, p.sys), Shape: g.shape, Fold: g.fold, Parts: p.inside(name, g.parts, t), Links: g.links, Other: g.other}
	p.deep = was
	v.Open, v.Section = anyProblem(v.Parts), sectionOf(v.Title, v.Parts, g.tell...)
	if g.brief != nil {
		v.Section.Brief = g.brief(t, p.sys)
	}
	return v
}

// inside prints what belongs to a row or a group; a problem in it is told with its name.
func (p *printer[T]) inside(name string, parts []part[T], t *T) []partView {
	was := p.where
	p.where = name
	defer func() { p.where = was }()
	return p.parts(parts, t)
}

func (p *printer[T]) list(l *list[T], t *T) *listView {
	v := &listView{ID: fieldID(l.path), Path: l.path, Title: l.title, One: l.one, Intro: l.intro, Problem: p.problems[l.path]}
	p.labels = append(p.labels, struct{ path, label string }{l.path, l.title})
	if v.Intro == v.Title {
		v.Intro = ""
	}
	v.Count = l.count(t)
	v.Full = v.Count >= l.most
	for i := range v.Count {
		path := fmt.Sprintf("%s[%d]", l.path, i)
		name := fmt.Sprintf("%s %d", sentenceCase(l.one), i+1)
		v.Rows = append(v.Rows, rowView{Name: name, Path: path, Parts: p.inside(name, l.row(i), t)})
		if i > 0 {
			hushed(v.Rows[i].Parts)
		}
		v.Rows[i].Source = p.sourceOnce(v.Rows[i].Parts)
	}
	own := []partView{{List: v}}
	v.Open, v.Section = anyProblem(own), sectionOf(v.Title, own)
	return v
}

// sourceOnce takes the source from the fields of a row where two or more have the same, and returns it.
func (p *printer[T]) sourceOnce(parts []partView) string {
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
	return clip(source, 160)
}

// hushed takes the hints out of a row that has another above it, where they already stand.
func hushed(parts []partView) {
	for _, p := range parts {
		switch {
		case p.Field != nil:
			p.Field.Hint = ""
		case p.Group != nil:
			hushed(p.Group.Parts)
		}
	}
}

func sentenceCase(s string) string {
	if s == "" {
		return ""
	}
	first, size := utf8.DecodeRuneInString(s)
	return string(unicode.ToUpper(first)) + s[size:]
}

func (p *printer[T]) field(in *input[T], t *T) *fieldView {
	label := in.label
	if p.where != "" {
		label = p.where + ": " + label
	}
	p.labels = append(p.labels, struct{ path, label string }{in.path, label})
	shown := in.show(t, p.sys)
	v := &fieldView{
		ID: fieldID(in.path), Path: in.path, Label: retell(in.label, p.sys), Unit: in.symbol(p.sys), Hint: retell(sentenceCase(in.hint), p.sys), Kind: in.kind, Spare: in.spare,
		Value: shown, Problem: p.problems[in.path],
	}
	if in.echo != nil {
		v.Echo = in.echo(t, p.sys)
	}
	if sent, ok := p.typed[in.path]; ok && len(sent) > 0 && !sameText(sent[0], shown) {
		v.Value, v.Saved, v.Echo = sent[0], shown, ""
	}
	if o, ok := p.origins[in.path]; ok {
		v.Origin, v.Source = o.Kind, shortSource(o.Source)
	}
	if shown == "" {
		p.empty(v, in, t)
	} else if v.Saved == "" {
		v.Remark = in.remarkOn(t, p.sys)
	}
	for _, o := range in.options {
		v.Options = append(v.Options, optionView{Value: o.value, Word: o.word, Chosen: o.value == v.Value})
	}
	return v
}

// empty tells in an empty field what is usual, and offers the typical value where the field does not count as it.
func (p *printer[T]) empty(v *fieldView, in *input[T], t *T) {
	if in.usual == nil {
		return
	}
	u := in.usual(t)
	if more := in.usualHint(t, p.sys); more != "" {
		v.Hint = strings.TrimPrefix(strings.TrimSuffix(v.Hint, ".")+". ", ". ") + sentenceCase(more)
	}
	if u.typical() && !u.counts {
		v.Offer = u.quantity.Format(u.take, p.sys)
	}
}

// labelOf finds the label and the element for a problem: the field itself, or the nearest thing around it.
func (p *printer[T]) labelOf(path string) (label, id string) {
	best := ""
	for _, l := range p.labels {
		if l.path == path {
			return l.label, fieldID(path)
		}
		if (strings.HasPrefix(path, l.path+"[") || strings.HasPrefix(path, l.path+".") || strings.HasPrefix(l.path, path+".") || strings.HasPrefix(l.path, path+"[")) && len(l.path) > len(best) {
			best, label = l.path, l.label
		}
	}
	if best == "" {
		return path, "main"
	}
	return label, fieldID(best)
}
