package page

import (
	"duskweight/internal/model"
	"duskweight/internal/model/reason"
	"duskweight/internal/model/unit"
)

// IdeaOf is what the overview of a project says of a store of one kind.
type IdeaOf struct {
	Is  func(s model.StoreResult, sys unit.System) (name, numbers string)                                            // what it is: "barrel", "60 kg × 4 m"
	Day func(g model.Ground, r model.VariantResult, s model.StoreResult, month int, sys unit.System) (DayView, bool) // 0 for January; false where no day can be told
	Due func(s model.StoreResult, on reason.Day) (PairView, bool)                                                    // when it is to be looked at again, where looks are recorded; nil where nothing wears out that way
	Try []Tryable
}

// DayView is a day with a store in drawn moments, ready to print.
type DayView struct {
	PictureView
	Moments []MomentView
}

// MomentView is one moment of a day: what the clock shows, what happens, and its picture.
type MomentView struct{ Clock, Say, SVG string }

// Due says when a store is to be looked at again, in the words of its kind; false where it has nothing to say.
func (ks Kinds) Due(s model.StoreResult, on reason.Day) (PairView, bool) {
	if due := ks.Of(s.Kind).Idea.Due; due != nil {
		return due(s, on)
	}
	return PairView{}, false
}

// StoreIs is what a store is, in the words of its kind.
func (ks Kinds) StoreIs(s model.StoreResult, sys unit.System) PairView {
	is := ks.Of(s.Kind).Idea.Is
	if is == nil {
		return PairView{Name: OrUnnamed(s.Name), Value: s.Kind.Noun}
	}
	name, numbers := is(s, sys)
	return PairView{Name: name, Value: numbers}
}
