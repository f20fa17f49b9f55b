package form

import (
	"fmt"
	"net/url"
	"strconv"
	"strings"

	"duskweight/internal/model"
	"duskweight/internal/model/unit"
	"duskweight/internal/say"
)

// Form edits one thing: a project or a variant.
type Form[T any] struct {
	Parts   []Part[T]
	Shown   func(refused []string) []Part[T] // those that the page shows, where it refuses the values at these paths; nil for all
	Origins func(*T) *model.Origins          // nil where the thing keeps none
	Check   func(T) model.Problems           // what is wrong with the whole thing
	Press   func(t *T, do string)            // what a button of this page alone does, after the text is read; nil for none
	Stored  *T                               // what is saved, where the form shows something else; nil where it shows that
}

// Names in a form that are not values of the document.
const (
	NameRevision = "revision" // the revision that the page was opened with
	NameDo       = "do"       // a button that changes rows: add:panels, remove:panels[1], typical:panels[0].gamma_per_k
	NameConfirm  = "confirm"  // the path of a typical value that is confirmed
	FormID       = "edit"     // of the form's element: buttons that stand elsewhere name it
	RowsSuffix   = "[]"       // panels[]=2: how many rows the page had
)

// Read puts what was typed into t, as far as it can be read, and returns every problem at once, each with its path: text
// that is no value, and what the check finds in the result. Text equal to what the page shows for the stored value is
// not read, so that a value is not worn down by rounding. A name that was not sent leaves its value alone.
func (f Form[T]) Read(typed url.Values, t *T, sys unit.System) model.Problems {
	r := reader[T]{typed: typed, sys: sys, confirmed: map[string]bool{}}
	if f.Origins != nil {
		r.origins = f.Origins(t)
	}
	for _, path := range typed[NameConfirm] {
		r.confirmed[path] = true
	}
	r.change(f.Parts, t, typed.Get(NameDo))
	r.parts(f.Parts, t)
	if f.Press != nil {
		f.Press(t, typed.Get(NameDo))
	}
	if f.Check != nil {
		r.problems = append(r.problems, f.asFields(f.without(f.Check(*t), r.problems), t)...)
	}
	return r.problems
}

// without leaves out what a problem already stands for.
func (f Form[T]) without(more, have model.Problems) model.Problems {
	seen := map[string]bool{}
	for _, p := range have {
		seen[p.Path] = true
	}
	var out model.Problems
	for _, p := range more {
		if !seen[p.Path] {
			out = append(out, p)
		}
	}
	return out
}

// asFields says a range in the unit of its field.
func (f Form[T]) asFields(problems model.Problems, t *T) model.Problems {
	for i, p := range problems {
		if in := FindInput(f.Parts, t, p.Path); in != nil && in.q != nil {
			problems[i] = p.As(*in.q)
		} else if at := strings.LastIndexByte(p.Path, '['); at > 0 {
			if in := FindInput(f.Parts, t, p.Path[:at]); in != nil && in.each != nil {
				problems[i] = p.As(*in.each)
			}
		}
	}
	return problems
}

type reader[T any] struct {
	typed     url.Values
	sys       unit.System
	origins   *model.Origins
	confirmed map[string]bool
	problems  model.Problems
}

func (r *reader[T]) parts(parts []Part[T], t *T) {
	for _, p := range parts {
		switch {
		case p.Input != nil:
			r.input(p.Input, t)
		case p.Group != nil:
			r.parts(p.Group.Parts, t)
		case p.List != nil:
			r.list(p.List, t)
		}
	}
}

func (r *reader[T]) input(in *Input[T], t *T) {
	if r.confirmed[in.Path] {
		r.forget(in.Path)
	}
	sent, ok := r.typed[in.Path]
	if !ok || len(sent) == 0 || sameText(sent[0], in.Show(t, r.sys)) {
		return
	}
	if err := in.Read(t, sent[0], r.sys); err != nil {
		r.problems = append(r.problems, model.Problem{Path: in.Path, Say: say.Why(err)})
		return
	}
	r.forget(in.Path)
}

// sameText compares what came back with what was shown. Browsers send line ends of their own.
func sameText(sent, shown string) bool {
	return strings.ReplaceAll(sent, "\r\n", "\n") == shown
}

// list makes the list as long as the page says and reads its rows.
func (r *reader[T]) list(l *list[T], t *T) {
	if sent := r.typed.Get(l.Path + RowsSuffix); sent != "" {
		n, err := strconv.Atoi(sent)
		if err != nil || n < 0 || n > max(l.most, l.Count(t)) {
			r.problems = append(r.problems, model.Problem{Path: l.Path, Say: say.That("At most %s rows.", l.most)})
			return
		}
		l.Resize(t, n)
	}
	for i := range l.Count(t) {
		r.parts(l.Row(i), t)
	}
}

// forget makes a value the user's own.
func (r *reader[T]) forget(path string) {
	if r.origins != nil {
		delete(*r.origins, path)
	}
}

// change does what a button of the form asks for, on the design and on the typed text alike, before the text is read.
func (r *reader[T]) change(parts []Part[T], t *T, do string) {
	verb, path, _ := strings.Cut(do, ":")
	switch verb {
	case "add":
		if l := findList(parts, t, path); l != nil {
			n := max(l.Count(t), r.rowsSent(l)) + 1
			r.typed.Set(l.Path+RowsSuffix, strconv.Itoa(n))
		}
	case "remove":
		list, i, ok := SplitRow(path)
		if l := findList(parts, t, list); ok && l != nil {
			r.removeRow(l, t, i)
		}
	case "mine":
		if s := findSection(parts, path); s != nil {
			Form[T]{}.Walk([]Part[T]{*s}, t, func(in *Input[T]) {
				if r.origins != nil && (*r.origins)[in.Path].Kind == model.OriginTypical {
					r.forget(in.Path)
				}
			})
		}
	case "typical":
		in := FindInput(parts, t, path)
		if in == nil {
			return
		}
		if from, ok := in.TakeTypical(t); ok {
			r.typed.Del(path)
			if r.origins != nil {
				if *r.origins == nil {
					*r.origins = model.Origins{}
				}
				(*r.origins)[path] = model.Origin{Kind: model.OriginTypical, Source: from.String()}
			}
		}
	}
}

func (r *reader[T]) rowsSent(l *list[T]) int {
	n, err := strconv.Atoi(r.typed.Get(l.Path + RowsSuffix))
	if err != nil || n < 0 || n > l.most {
		return 0
	}
	return n
}

// removeRow takes row i out of the design, the typed text and the origins; the rows after it move up.
func (r *reader[T]) removeRow(l *list[T], t *T, i int) {
	n := max(l.Count(t), r.rowsSent(l))
	if i < 0 || i >= n {
		return
	}
	l.Resize(t, n)
	l.remove(t, i)
	r.typed.Set(l.Path+RowsSuffix, strconv.Itoa(n-1))
	moved := url.Values{}
	for name, v := range r.typed {
		if to, keep := MoveUp(name, l.Path, i); keep {
			moved[to] = v
		}
	}
	clear(r.typed)
	for name, v := range moved {
		r.typed[name] = v
	}
	if r.origins != nil {
		origins := model.Origins{}
		for name, o := range *r.origins {
			if to, keep := MoveUp(name, l.Path, i); keep {
				origins[to] = o
			}
		}
		*r.origins = origins
	}
}

// MoveUp renames a path for the removal of row i of a list. keep is false for what belongs to the row itself.
func MoveUp(name, list string, i int) (to string, keep bool) {
	rest, ok := strings.CutPrefix(name, list+"[")
	if !ok {
		return name, true
	}
	index, after, ok := strings.Cut(rest, "]")
	j, err := strconv.Atoi(index)
	switch {
	case !ok || err != nil || j < i:
		return name, true
	case j == i:
		return "", false
	}
	return fmt.Sprintf("%s[%d]%s", list, j-1, after), true
}

// SplitRow reads "stores[0].hoist.mass[2]" as the list and its row.
func SplitRow(path string) (list string, i int, ok bool) {
	open := strings.LastIndexByte(path, '[')
	if open < 0 || !strings.HasSuffix(path, "]") {
		return "", 0, false
	}
	i, err := strconv.Atoi(path[open+1 : len(path)-1])
	return path[:open], i, err == nil
}

// findSection finds a part at the top of a form by the id of its element.
func findSection[T any](parts []Part[T], id string) *Part[T] {
	for i, p := range parts {
		if p.Group != nil && sectionID(p.Group.Title) == id || p.List != nil && sectionID(p.List.Title) == id {
			return &parts[i]
		}
	}
	return nil
}

// findList finds a list by its path, in rows of other lists too.
func findList[T any](parts []Part[T], t *T, path string) *list[T] {
	for _, p := range parts {
		switch {
		case p.Group != nil:
			if l := findList(p.Group.Parts, t, path); l != nil {
				return l
			}
		case p.List != nil && p.List.Path == path:
			return p.List
		case p.List != nil && strings.HasPrefix(path, p.List.Path+"["):
			for i := range p.List.Count(t) {
				if l := findList(p.List.Row(i), t, path); l != nil {
					return l
				}
			}
		}
	}
	return nil
}

// FindInput finds an input by its path.
func FindInput[T any](parts []Part[T], t *T, path string) *Input[T] {
	for _, p := range parts {
		switch {
		case p.Input != nil && p.Input.Path == path:
			return p.Input
		case p.Group != nil:
			if in := FindInput(p.Group.Parts, t, path); in != nil {
				return in
			}
		case p.List != nil && strings.HasPrefix(path, p.List.Path+"["):
			for i := range p.List.Count(t) {
				if in := FindInput(p.List.Row(i), t, path); in != nil {
					return in
				}
			}
		}
	}
	return nil
}
