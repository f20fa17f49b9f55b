package model

import (
	"slices"
	"strings"

	"duskweight/internal/model/lift"
	"duskweight/internal/say"
)

// energyOnly are the values of a hoist that move energy and nothing that bears or holds: a typical one of them makes the
// answer rough, and nothing unsafe. The inputs that count as a named value where nobody gave one say so in their tag and
// stand in a closed list with the tests (countsAs).
var energyOnly = map[string]bool{"units": true, "raise.drive_efficiency": true}

// typicalPaths are the typical values of the hoist at that place of the variant that are not yet the builder's own, by
// their paths in the variant, in order.
func (v Variant) typicalPaths(i int) []string {
	var out []string
	hoist := HoistPath(i) + "."
	for path, o := range v.Origins {
		rest, ok := strings.CutPrefix(path, hoist)
		if ok && o.Kind == OriginTypical && !energyOnly[rest] {
			out = append(out, path)
		}
	}
	slices.Sort(out)
	return out
}

// TypicalOf are the typical values of the hoist at that place of the variant that are not yet the builder's own, by their
// paths inside the hoist, in order.
func (v Variant) TypicalOf(i int) []string {
	out := v.typicalPaths(i)
	for n := range out {
		out[n] = strings.TrimPrefix(out[n], HoistPath(i)+".")
	}
	return out
}

// labelled is the hoist at that place of the variant without the typical values of its motor that the label's own numbers
// tell: K from volts and speed without load, R from volts and the current with the shaft held; and without any of them where
// they are those of a motor of another size. A value that the builder confirmed stays. gaveWay lists the paths of those
// that went, inside the hoist.
func (v Variant) labelled(i int) (h lift.Hoist, gaveWay gaveWay) {
	h = *v.HoistAt(i)
	m := &h.Machine
	typical := func(path string) bool {
		return v.Origins[Join(HoistPath(i), path)].Kind == OriginTypical
	}
	if otherSize(*m, typical) {
		gaveWay.size = dropTypical(m, typical)
	}
	if m.R.Is && m.SheetVolts.Is && m.SheetStall.Is && typical("machine.r_ohm") {
		m.R.Is, gaveWay.label = false, append(gaveWay.label, "machine.r_ohm")
	}
	if m.K.Is && m.SheetVolts.Is && m.SheetSpeed.Is && m.I0.Is && typical("machine.k_vs_rad") {
		m.K.Is, gaveWay.label = false, append(gaveWay.label, "machine.k_vs_rad")
	}
	return h, gaveWay
}

// tellLabel says which typical values the label's numbers replaced, and which count as not known.
func (r *HoistResult) tellLabel(gone gaveWay) {
	names := map[string]string{"machine.r_ohm": "The winding resistance", "machine.k_vs_rad": "The machine constant"}
	for _, path := range gone.label {
		r.Drive.Flags = append(r.Drive.Flags, lift.Flag{Path: path, Say: say.That("%s is worked out from the motor's label. The typical value in its field counts no more: empty the field.", names[path])})
	}
	for _, path := range gone.size {
		r.Drive.Flags = append(r.Drive.Flags, lift.Flag{Path: path, Say: say.That("The typical value in this field belongs to a motor of another size than the label's, so it counts as not known. Choose a motor by the label's size, or measure it.")})
	}
}

// Lifted is the hoist at that place of the variant as it is computed: without the typical values that its motor's label
// replaces, and without a supply of its own where the panels feed it straight.
func (v Variant) Lifted(i int) lift.Hoist {
	h, _ := v.labelled(i)
	return bySupply(h)
}
