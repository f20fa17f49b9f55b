package catalog

import (
	"slices"
	"testing"

	"duskweight/internal/model/unit"
)

// A row goes where its kind says that it may go, and nowhere else: timber makes no shaft, teeth make no stage, a hook is no post. A
// place is told once and in words, and one behind the end of a list is none. A material that is not for the base is a piece of the mass.
func TestRowsGoToTheirPlacesAlone(t *testing.T) {
	h := full()
	all := []string{"nowhere", "-1", "99", "mass", "base", "all", "new", "hanger", "eye", "beam", "shaft", "0", "1", "2", "3"}
	for _, k := range Kinds() {
		places := k.Places(&h)
		if places == nil || k.Word == "material" {
			continue
		}
		var at []string
		for _, p := range places {
			if p.Say == "" || slices.Contains(at, p.At) {
				t.Errorf("%s: %q, %q", k.Word, p.At, p.Say)
			}
			at = append(at, p.At)
		}
		for _, r := range k.Rows {
			for _, place := range all {
				h := full()
				_, err := r.Take(&h, Choice{At: place, Volume: unit.Of[unit.Volume](1)})
				if may := slices.Contains(at, place); may != (err == nil) {
					t.Errorf("%s %s into %q: %v, its places are %q", k.Word, r.ID, place, err, at)
				}
			}
		}
	}
}
