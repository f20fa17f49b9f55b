package path

import (
	"strings"
	"testing"

	"duskweight/internal/model/lift"
)

// Each rope and each container is warned of what is its own, and of nothing that is another's: wires break in wire rope alone
// (discard criteria of wire rope), polypropylene and HMPE creep, a bag ages in the sun.
func TestCautionsBelongToTheirKind(t *testing.T) {
	said := func(h lift.Hoist) string {
		var all strings.Builder
		for _, c := range cautions(h, lift.Drive{}) {
			all.WriteString(c.Say.String() + "\n")
		}
		return all.String()
	}
	const wires, creeps, bag = "broken wires", "creeps under a load", "months in the sun"
	for _, c := range []struct {
		rope      lift.RopeKind
		container lift.ContainerKind
		want      string
	}{
		{lift.RopeWire, lift.ContainerBag, wires + bag}, {lift.RopePolyester, lift.ContainerCage, ""},
		{lift.RopePolypropylene, lift.ContainerCage, creeps}, {lift.RopeHMPE, lift.ContainerBag, creeps + bag}, {"", lift.ContainerCage, creeps},
	} {
		h := lift.Hoist{Rope: lift.Rope{Kind: c.rope}, Container: lift.Container{Kind: c.container}}
		for _, words := range []string{wires, creeps, bag} {
			if got := strings.Contains(said(h), words); got != strings.Contains(c.want, words) {
				t.Errorf("%q in a %q: %q is said: %v", c.rope, c.container, words, got)
			}
		}
	}
}
