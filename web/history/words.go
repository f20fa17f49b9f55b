package history

import (
	"reflect"
	"strings"

	"duskweight/internal/model"
	"duskweight/internal/model/load"
	"duskweight/internal/model/unit"
	"duskweight/internal/say"
	"duskweight/internal/store"
	"duskweight/web/form"
	"duskweight/web/page"
)

// changesOf tells what a change changed, value by value: "Rope diameter: 6 mm → 8 mm".
func changesOf(c store.FullChange, of page.Tables, sys unit.System) []string {
	var diffs []form.Difference
	switch {
	case c.ProjectWas != nil && c.ProjectIs != nil:
		diffs = form.Differ(projectValues(c.ProjectWas, of, sys), projectValues(c.ProjectIs, of, sys), "")
	case c.VariantWas != nil && c.VariantIs != nil:
		diffs = form.Differ(variantValues(c.VariantWas, of, sys), variantValues(c.VariantIs, of, sys), "")
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

func projectValues(p *model.Project, of page.Tables, sys unit.System) []form.Value {
	out := form.ValuesOf(of.Place(p), p, "", sys)
	out = append(out, form.ValuesOf(form.Within("load", func(p *model.Project) *load.Load { return &p.Load }, of.Load()...), p, "", sys)...)
	out = append(out, form.ValuesOf(form.Within("shelf", func(p *model.Project) *model.Shelf { return &p.Shelf }, of.Shelf()...), p, "", sys)...)
	return append(out, form.ValuesOf(of.Money(), p, "", sys)...)
}

// variantValues are those of the variant's own form, and its stores as a list, each with those of its page.
func variantValues(v *model.Variant, of page.Tables, sys unit.System) []form.Value {
	out := append(form.ValuesOf(of.Variant(), v, "", sys), form.ValuesOf(of.Parts(), v, "", sys)...)
	stores := form.Value{Path: "stores", Key: "stores", One: "store"}
	for _, st := range v.Stores {
		stores.Rows = append(stores.Rows, of.Stores.Of(st.Kind()).Inputs.Values(st, sys))
		stores.Names = append(stores.Names, st.Design().Name())
	}
	return append(out, stores)
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
