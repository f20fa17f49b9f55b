package page

import (
	"sync"

	"duskweight/internal/model"
	"duskweight/internal/model/unit"
	"duskweight/web/form"
)

// Kind is what the pages about all stores need of one kind beside its row in the model. The room of the kind makes it, and
// web hands all of them on; a field that is nil has nothing to say.
type Kind struct {
	Row    *model.Kind
	Add    string // on the button that adds one: "Add a lifted mass"
	New    func() model.Store
	Copied func(st model.Store) // drops what belongs to the one that was built, in a copy
	Also   []Tab                // its pages beside its own; URL is the last of their path, and the part of the design that they fill: "trials"
	Inputs Inputs
	Idea   IdeaOf
	Year   YearOf
	Sheet  SheetOf
}

// YearOf is what the pages of a year say of a store.
type YearOf struct {
	End     func(s model.StoreResult) string                                                     // when its end comes, in words
	Wasted  func(s model.StoreResult, sys unit.System) string                                    // why it gave back little of what it took
	Today   func(g model.Ground, r model.VariantResult, s model.StoreResult, month int) []string // what to do on a day of the month, 0 for January
	Picture func(r model.VariantResult, s model.StoreResult, sys unit.System) (PictureView, bool)
}

// SheetOf is what the plan sheet says of a store.
type SheetOf struct {
	Order  []string                                              // how it is joined and taken apart, on a sheet that draws no hoist
	Set    func(s model.StoreResult, sys unit.System) []PairView // what is set at it
	Beside func(s model.StoreResult, sys unit.System) PairView   // the same in short, beside a hoist
}

// UsualPage is a list of what is usual of some numbers.
type UsualPage struct {
	Title string
	Rows  []form.UsualOf
}

// Kinds are all kinds of store, in the order in which pages offer them.
type Kinds []Kind

// Of is what the pages need of a kind.
func (ks Kinds) Of(row *model.Kind) Kind {
	for _, k := range ks {
		if k.Row == row {
			return k
		}
	}
	return Kind{Row: row}
}

// Inputs are the inputs of a store of one kind, for the pages that tell of all inputs.
type Inputs struct {
	Labels func(st model.Store) map[string]string // by their path inside the design
	Texts  func(st model.Store, sys unit.System) []form.InputText
	// Told are the values of two versions of a store, without those that are alike in both. An empty one has none.
	Told  func(was, is model.Store, sys unit.System) (w, i []form.Value)
	Usual func() []UsualPage // what is usual of the numbers, for the guide
}

// InputsOf makes them from the tables of the forms of a kind. The first is that of its own page; the others are told in the
// history alone. usual may be nil. The tables are made once: nothing that reads them here changes them.
func InputsOf[T any](of func(model.Store) *T, usual func() []UsualPage, own func() []form.Part[T], more ...func() []form.Part[T]) Inputs {
	own = sync.OnceValue(own)
	for i, table := range more {
		more[i] = sync.OnceValue(table)
	}
	return Inputs{
		Usual:  usual,
		Labels: func(st model.Store) map[string]string { return form.Form[T]{Parts: own()}.Labels(*of(st)) },
		Texts: func(st model.Store, sys unit.System) []form.InputText {
			return form.TextsOf(own(), *of(st), sys)
		},
		Told: func(was, is model.Store, sys unit.System) (w, i []form.Value) {
			w, i = form.Told(own(), of(was), of(is), sys)
			for _, table := range more {
				otherW, otherI := form.Told(table(), of(was), of(is), sys)
				w, i = append(w, otherW...), append(i, otherI...)
			}
			return w, i
		},
	}
}
