package history

import (
	"reflect"
	"strings"
	"sync"

	"duskweight/internal/model"
	"duskweight/internal/model/load"
	"duskweight/internal/model/unit"
	"duskweight/internal/say"
	"duskweight/internal/store"
	"duskweight/web/form"
	"duskweight/web/page"
)

// onceEach makes each table when it is first asked for, and keeps it for all changes of a page.
func onceEach(of page.Tables) page.Tables {
	of.Load, of.Shelf, of.Money = sync.OnceValue(of.Load), sync.OnceValue(of.Shelf), sync.OnceValue(of.Money)
	of.Variant, of.Parts = sync.OnceValue(of.Variant), sync.OnceValue(of.Parts)
	return of
}

// changesOf tells what a change changed, value by value: "Rope diameter: 6 mm → 8 mm".
func changesOf(c store.FullChange, of page.Tables, sys unit.System) []string {
	var diffs []form.Difference
	switch {
	case c.ProjectWas != nil && c.ProjectIs != nil:
		was, is := c.ProjectWas, c.ProjectIs
		if !reflect.DeepEqual(withoutLists(*was), withoutLists(*is)) { // its table is made for each project
			diffs = form.Tell(of.Place(is), was, is, sys)
		}
		diffs = append(diffs, form.Tell(of.Load(), &was.Load, &is.Load, sys)...)
		diffs = append(diffs, form.Tell(of.Shelf(), &was.Shelf, &is.Shelf, sys)...)
		diffs = append(diffs, form.Tell(of.Money(), was, is, sys)...)
	case c.VariantWas != nil && c.VariantIs != nil:
		was, is := c.VariantWas, c.VariantIs
		diffs = form.Tell(of.Variant(), was, is, sys)
		diffs = append(diffs, form.Tell(of.Parts(), was, is, sys)...)
		diffs = append(diffs, storesDiffer(was.Stores, is.Stores, of.Stores, sys)...)
	}
	var out []string
	for _, d := range diffs {
		out = append(out, d.String())
	}
	if len(out) == 0 {
		out = append(untold(reflect.ValueOf(c.ProjectWas), reflect.ValueOf(c.ProjectIs), "", sys), untold(reflect.ValueOf(c.VariantWas), reflect.ValueOf(c.VariantIs), "", sys)...)
	}
	if c.OtherYear {
		out = append(out, "Weather files: others")
	}
	return out
}

// withoutLists is a project without its load and its shelf, which have pages of their own.
func withoutLists(p model.Project) model.Project {
	p.Load, p.Shelf = load.Load{}, model.Shelf{}
	return p
}

// storesDiffer tells what differs between the stores of two versions, each by the form of its page. Where none came or
// went, two of one kind at the same place are told side by side.
func storesDiffer(was, is []model.Store, of page.Kinds, sys unit.System) []form.Difference {
	rows := func(n int) form.Value {
		return form.Value{Path: "stores", Key: "stores", One: "store", Rows: make([][]form.Value, n), Names: make([]string, n)}
	}
	paired := func(n int) bool { return len(was) == len(is) && was[n].Kind() == is[n].Kind() }
	w, i := rows(len(was)), rows(len(is))
	for n, st := range was {
		w.Names[n] = st.Design().Name()
		if paired(n) {
			w.Rows[n], i.Rows[n] = of.Of(st.Kind()).Inputs.Told(st, is[n], sys)
		} else {
			w.Rows[n], _ = of.Of(st.Kind()).Inputs.Told(st, model.Store{}, sys)
		}
	}
	for n, st := range is {
		i.Names[n] = st.Design().Name()
		if !paired(n) {
			_, i.Rows[n] = of.Of(st.Kind()).Inputs.Told(model.Store{}, st, sys)
		}
	}
	return form.Differ([]form.Value{w}, []form.Value{i}, "")
}

// untold names what differs and has no field, by its meaning in the document. Where a value comes from is none of it.
func untold(was, is reflect.Value, meaning string, sys unit.System) (out []string) {
	switch {
	case was.Kind() != is.Kind() || was.Type() == reflect.TypeFor[model.Origins]():
	case was.Kind() == reflect.Pointer:
		if !was.IsNil() && !is.IsNil() {
			return untold(was.Elem(), is.Elem(), meaning, sys)
		}
	case was.Kind() == reflect.Struct && !was.FieldByName("Is").IsValid():
		for i := range was.NumField() {
			if f := was.Type().Field(i); f.IsExported() {
				out = append(out, untold(was.Field(i), is.Field(i), f.Tag.Get("say"), sys)...)
			}
		}
	case !reflect.DeepEqual(was.Interface(), is.Interface()) && meaning != "":
		meaning, _, _ = strings.Cut(meaning, ";")
		return []string{say.Marked(meaning).In(sys) + ": changed"}
	}
	return out
}
