package projects

import (
	"net/url"
	"strings"
	"testing"
)

// FuzzAddress reads any address of the list, for any number of projects that were found. The part that is shown lies inside of
// them and is empty only where none is; the links beside it keep what was searched and sorted by, and lead to the parts
// that touch it.
func FuzzAddress(f *testing.F) {
	f.Add("page=2&q=shed&sort=name", uint16(120))
	f.Add("page=-9223372036854775808&q=%3D%22&q=b", uint16(51))
	f.Add("page=99999999999999999999;sort=a%00", uint16(0))
	f.Fuzz(func(t *testing.T, raw string, found uint16) {
		q, _ := url.ParseQuery(raw) // as the request reads it: what is malformed is left out
		v := ListView{All: int(found), Found: int(found), Find: strings.TrimSpace(q.Get(nameFind)), Sort: q.Get(nameSort)}
		from, n := v.part(q.Get(namePage))
		if from < 0 || n < 0 || from+n > v.Found || n > aPage || n == 0 && v.Found > 0 {
			t.Fatalf("%d from %d of %d", n, from, v.Found)
		}
		if (v.Before != "") != (from > 0) || (v.After != "") != (from+n < v.Found) {
			t.Errorf("%d to %d of %d: links %q and %q", from, from+n, v.Found, v.Before, v.After)
		}
		for link, want := range map[string]int{v.Before: from - aPage, v.After: from + n} {
			if link == "" {
				continue
			}
			to, err := url.Parse(link)
			if err != nil || to.Path != "/" || to.Host != "" {
				t.Fatalf("%q leads to %v, %v", link, to, err)
			}
			next := to.Query()
			there := ListView{Found: v.Found, Find: strings.TrimSpace(next.Get(nameFind)), Sort: next.Get(nameSort)}
			if at, _ := there.part(next.Get(namePage)); at != want || there.Find != v.Find || there.Sort != v.Sort {
				t.Errorf("%q leads to %d of %q by %q, want %d of %q by %q", link, at, there.Find, there.Sort, want, v.Find, v.Sort)
			}
		}
	})
}
