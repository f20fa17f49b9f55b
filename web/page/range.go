package page

import (
	"duskweight/internal/model"
	"duskweight/internal/store"
)

// The range of a headline: what a bad, a usual and a good year of full nights come to. It takes longer than the
// answer, so it follows as a second one; without scripts a link leads to the page How sure.

// RangeView is a range, ready to print.
type RangeView struct {
	Follow string // where it comes from
	Link   string // the page How sure, with the same variants
	Lines  []RangeLine
	Pairs  []string // which has more full nights, pair by pair
	Say    string   // instead of lines
	Get    bool     // it is that of what is saved, whatever is typed on the page
	Room   string   // how many lines are kept free for it: "room3"
}

// RangeLine is one variant: the promise, and the range round it. Name is empty where there is only one.
type RangeLine struct{ Name, Nine, Range string }

// RangeLater is the place of a range that is still to come; chosen are the variants it is about.
func RangeLater(project int64, chosen []store.Saved[model.Variant]) RangeView {
	q := NamingChosen(chosen)
	at := ProjectURL(project) + "/sure"
	return RangeView{Follow: at + "/said?" + q.Encode(), Link: at + "?" + q.Encode(), Room: "room" + Itoa(len(chosen))}
}
