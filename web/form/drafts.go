package form

import (
	"net/url"
	"strconv"
	"strings"

	"duskweight/internal/document"
	"duskweight/internal/model/unit"
)

// Own picks the drafts that this form holds, as they are shown in a system of units.
func (f Form[T]) Own(drafts map[string]string, t *T, sys unit.System) url.Values {
	typed := url.Values{}
	for path, text := range drafts {
		if list, isCount := strings.CutSuffix(path, RowsSuffix); isCount && findList(f.Parts, t, list) != nil {
			typed.Set(path, text)
		}
	}
	if len(drafts) == 0 {
		return typed
	}
	longer := document.Clone(*t)
	Form[T]{Parts: f.Parts}.Read(typed, &longer, unit.Metric) // the rows alone: nothing is checked
	for path, text := range drafts {
		if in := FindInput(f.Parts, &longer, path); in != nil {
			if in.q != nil {
				text = in.q.WithoutUnit(text, sys)
			}
			typed.Set(path, text)
		}
	}
	return typed
}

// Changed picks the typed texts that differ from what is stored: the drafts to keep. now is what was read of them, with
// their rows. A number alone gets the unit that it is meant in, for the page may be opened in the other system next.
func (f Form[T]) Changed(typed url.Values, stored, now T, sys unit.System) map[string]string {
	out := map[string]string{}
	shown := f.shown(&stored, sys)
	for path, sent := range typed {
		if strings.HasSuffix(path, RowsSuffix) || path == NameConfirm || path == NameDo || path == NameRevision || path == NamePage || path == NameUnits {
			if l := findList(f.Parts, &stored, strings.TrimSuffix(path, RowsSuffix)); l != nil && strconv.Itoa(l.Count(&stored)) != sent[0] {
				out[path] = sent[0]
			}
			continue
		}
		if have, ok := shown[path]; ok && sameText(sent[0], have) {
			continue
		}
		out[path] = sent[0]
		if in := FindInput(f.Parts, &now, path); in != nil && in.q != nil {
			out[path] = in.q.WithUnit(sent[0], sys)
		}
	}
	return out
}
