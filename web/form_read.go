package web

import (
	"fmt"
	"net/url"
	"strconv"
	"strings"

	"duskweight/internal/model"
	"duskweight/internal/model/unit"
)

// form edits one thing: a project or a variant.
type form[T any] struct {
	parts   []part[T]
	origins func(*T) *model.Origins // nil where the thing keeps none
	check   func(T) model.Problems  // what is wrong with the whole thing
	press   func(t *T, do string)   // what a button of this page alone does, after the text is read; nil for none
}

// Names in a form that are not values of the document.
const (
	nameRevision = "revision" // the revision that the page was opened with
	nameDo       = "do"       // a button that changes rows: add:panels, remove:panels[1], typical:panels[0].gamma_per_k
	nameConfirm  = "confirm"  // the path of a typical value that is confirmed
	formID       = "edit"     // of the form's element: buttons that stand elsewhere name it
	rowsSuffix   = "[]"       // panels[]=2: how many rows the page had
)

// read puts what was typed into t, as far as it can be read, and returns every problem at once, each with its path: text
// that is no value, and what the check finds in the result. Text equal to what the page shows for the stored value is
// not read, so that a value is not worn down by rounding. A name that was not sent leaves its value alone.
func (f form[T]) read(typed url.Values, t *T, sys unit.System) model.Problems {
	r := reader[T]{typed: typed, sys: sys, confirmed: map[string]bool{}}
	if f.origins != nil {
		r.origins = f.origins(t)
	}
	for _, path := range typed[nameConfirm] {
		r.confirmed[path] = true
	}
	r.change(f.parts, t, typed.Get(nameDo))
	r.parts(f.parts, t)
	if f.press != nil {
		f.press(t, typed.Get(nameDo))
	}
	if f.check != nil {
		r.problems = append(r.problems, f.inUnits(f.without(f.check(*t), r.problems), t, sys)...)
	}
	return r.problems
}

// without leaves out what a problem already stands for.
func (f form[T]) without(more, have model.Problems) model.Problems {
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

// inUnits says problems in the reader's units, and a range in the unit of its field.
func (f form[T]) inUnits(problems model.Problems, t *T, sys unit.System) model.Problems {
	for i, p := range problems {
		problems[i].Say = p.In(sys)
		if in := findInput(f.parts, t, p.Path); in != nil && in.q != nil {
			problems[i].Say = p.InUnits(*in.q, sys)
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

func (r *reader[T]) parts(parts []part[T], t *T) {
	for _, p := range parts {
		switch {
		case p.input != nil:
			r.input(p.input, t)
		case p.group != nil:
			r.parts(p.group.parts, t)
		case p.list != nil:
			r.list(p.list, t)
		}
	}
}

func (r *reader[T]) input(in *input[T], t *T) {
	if r.confirmed[in.path] {
		r.forget(in.path)
	}
	sent, ok := r.typed[in.path]
	if !ok || len(sent) == 0 || sameText(sent[0], in.show(t, r.sys)) {
		return
	}
	if err := in.read(t, sent[0], r.sys); err != nil {
		r.problems = append(r.problems, model.Problem{Path: in.path, Say: err.Error()})
		return
	}
	r.forget(in.path)
}

// sameText compares what came back with what was shown. Browsers send line ends of their own.
func sameText(sent, shown string) bool {
	return strings.ReplaceAll(sent, "\r\n", "\n") == shown
}

// list makes the list as long as the page says and reads its rows.
func (r *reader[T]) list(l *list[T], t *T) {
	if sent := r.typed.Get(l.path + rowsSuffix); sent != "" {
		n, err := strconv.Atoi(sent)
		if err != nil || n < 0 || n > max(l.most, l.count(t)) {
			r.problems = append(r.problems, model.Problem{Path: l.path, Say: fmt.Sprintf("At most %d rows.", l.most)})
			return
		}
		l.resize(t, n)
	}
	for i := range l.count(t) {
		r.parts(l.row(i), t)
	}
}

// forget makes a value the user's own.
func (r *reader[T]) forget(path string) {
	if r.origins != nil {
		delete(*r.origins, path)
	}
}

// change does what a button of the form asks for, on the design and on the typed text alike, before the text is read.
func (r *reader[T]) change(parts []part[T], t *T, do string) {
	verb, path, _ := strings.Cut(do, ":")
	switch verb {
	case "add":
		if l := findList(parts, t, path); l != nil {
			n := max(l.count(t), r.rowsSent(l)) + 1
			r.typed.Set(l.path+rowsSuffix, strconv.Itoa(n))
		}
	case "remove":
		list, i, ok := splitRow(path)
		if l := findList(parts, t, list); ok && l != nil {
			r.removeRow(l, t, i)
		}
	case "mine":
		if s := findSection(parts, path); s != nil {
			form[T]{}.walk([]part[T]{*s}, t, func(in *input[T]) {
				if r.origins != nil && (*r.origins)[in.path].Kind == "typical" {
					r.forget(in.path)
				}
			})
		}
	case "typical":
		in := findInput(parts, t, path)
		if in == nil {
			return
		}
		if from, ok := in.takeTypical(t); ok {
			r.typed.Del(path)
			if r.origins != nil {
				if *r.origins == nil {
					*r.origins = model.Origins{}
				}
				(*r.origins)[path] = model.Origin{Kind: "typical", Source: from.String()}
			}
		}
	}
}

func (r *reader[T]) rowsSent(l *list[T]) int {
	n, err := strconv.Atoi(r.typed.Get(l.path + rowsSuffix))
	if err != nil || n < 0 || n > l.most {
		return 0
	}
	return n
}

// removeRow takes row i out of the design, the typed text and the origins; the rows after it move up.
func (r *reader[T]) removeRow(l *list[T], t *T, i int) {
	n := max(l.count(t), r.rowsSent(l))
	if i < 0 || i >= n {
		return
	}
	l.resize(t, n)
	l.remove(t, i)
	r.typed.Set(l.path+rowsSuffix, strconv.Itoa(n-1))
	moved := url.Values{}
	for name, v := range r.typed {
		if to, keep := moveUp(name, l.path, i); keep {
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
			if to, keep := moveUp(name, l.path, i); keep {
				origins[to] = o
			}
		}
		*r.origins = origins
	}
}

// moveUp renames a path for the removal of row i of a list. keep is false for what belongs to the row itself.
func moveUp(name, list string, i int) (to string, keep bool) {
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

// splitRow reads "stores[0].hoist.mass[2]" as the list and its row.
func splitRow(path string) (list string, i int, ok bool) {
	open := strings.LastIndexByte(path, '[')
	if open < 0 || !strings.HasSuffix(path, "]") {
		return "", 0, false
	}
	i, err := strconv.Atoi(path[open+1 : len(path)-1])
	return path[:open], i, err == nil
}

// findSection finds a part at the top of a form by the id of its element.
func findSection[T any](parts []part[T], id string) *part[T] {
	for i, p := range parts {
		if p.group != nil && sectionID(p.group.title) == id || p.list != nil && sectionID(p.list.title) == id {
			return &parts[i]
		}
	}
	return nil
}

// findList finds a list by its path, in rows of other lists too.
func findList[T any](parts []part[T], t *T, path string) *list[T] {
	for _, p := range parts {
		switch {
		case p.group != nil:
			if l := findList(p.group.parts, t, path); l != nil {
				return l
			}
		case p.list != nil && p.list.path == path:
			return p.list
		case p.list != nil && strings.HasPrefix(path, p.list.path+"["):
			for i := range p.list.count(t) {
				if l := findList(p.list.row(i), t, path); l != nil {
					return l
				}
			}
		}
	}
	return nil
}

// findInput finds an input by its path.
func findInput[T any](parts []part[T], t *T, path string) *input[T] {
	for _, p := range parts {
		switch {
		case p.input != nil && p.input.path == path:
			return p.input
		case p.group != nil:
			if in := findInput(p.group.parts, t, path); in != nil {
				return in
			}
		case p.list != nil && strings.HasPrefix(path, p.list.path+"["):
			for i := range p.list.count(t) {
				if in := findInput(p.list.row(i), t, path); in != nil {
					return in
				}
			}
		}
	}
	return nil
}
