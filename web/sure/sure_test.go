package sure

import (
	"strings"
	"testing"

	"duskweight/internal/model"
	"duskweight/internal/model/search"
	"duskweight/internal/model/unit"
	"duskweight/internal/say"
)

// The words of pairs, by hand: √(0.93·0.07/100) = 0.0255, whole percents; √(0.5·0.5/10) = 0.158, tens; all of 100: above
// 1 − 3/100. The better one stands first.
func TestWordsOfPairs(t *testing.T) {
	for _, tc := range []struct {
		v    search.Versus
		want string
	}{
		{search.Versus{More: 93, Same: 4, Less: 3, Years: 100}, "In 93 of 100 years, A has more full nights than B. In 4 of the years both have the same number, and in 3 the first has fewer. The chance is 93 %, plus or minus 3 %."},
		{search.Versus{More: 3, Same: 4, Less: 93, Years: 100}, "In 93 of 100 years, B has more full nights than A. In 4 of the years both have the same number, and in 3 the first has fewer. The chance is 93 %, plus or minus 3 %."},
		{search.Versus{More: 5, Same: 2, Less: 3, Years: 10}, "In 5 of 10 years, A has more full nights than B. In 2 of the years both have the same number, and in 3 the first has fewer. The chance is 50 %, plus or minus 20 %."},
		{search.Versus{More: 931, Same: 0, Less: 69, Years: 1000}, "In 931 of 1 000 years, A has more full nights than B. In 0 of the years both have the same number, and in 69 the first has fewer. The chance is 93.1 %, plus or minus 0.8 %."},
		{search.Versus{More: 100, Years: 100}, "In all 100 years, A has more full nights than B: a chance above 97 %."},
		{search.Versus{Same: 100, Years: 100}, "In every one of 100 years, A and B have the same number of full nights."},
		{search.Versus{More: 5, Same: 90, Less: 5, Years: 100}, "Neither is better: in 5 of 100 years, A has more full nights than B, in as many it has fewer, and in 90 the same."},
	} {
		want := strings.ReplaceAll(tc.want, " %", unit.Space+"%")
		if got := pairSay("A", "B", tc.v); got != want {
			t.Errorf("%+v:\n%s\n%s", tc.v, got, want)
		}
	}
}

// Without a sky, with a file, and with a store that gives nothing back the page says so and shows no number.
func TestSureWithLess(t *testing.T) {
	for _, tc := range []struct {
		s    search.Sure
		want string
	}{
		{search.Sure{Years: 1, Nights: 365, WhyOne: say.Words("it is a file"), Variants: []search.Certain{{Name: "A", Nights: []float64{300}}}}, "one year only: it is a file"},
		{search.Sure{Years: 1, WhyOne: say.Words("the place is not known"), Variants: []search.Certain{{Name: "A", WhyNot: say.Words("the place is not known")}}}, "No year can be run yet: the place is not known."},
		{search.Sure{}, "no variant"},
	} {
		v := sureOf(tc.s, beside{}, model.Project{}, 0)
		if !strings.Contains(v.Empty, tc.want) || len(v.Rows) > 0 {
			t.Errorf("%q does not say %q; %d rows", v.Empty, tc.want, len(v.Rows))
		}
	}
	v := sureOf(search.Sure{Years: 100, Nights: 365, Variants: []search.Certain{{Name: "A", WhyNot: say.Words("no panel")}}, Pairs: [][]search.Versus{{{}}}}, beside{}, model.Project{}, 0)
	if len(v.Lacks) != 1 || !strings.Contains(v.Lacks[0], "A: no year can be run, because no panel.") {
		t.Errorf("%q", v.Lacks)
	}
}
