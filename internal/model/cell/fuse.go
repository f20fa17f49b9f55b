package cell

import (
	"duskweight/internal/model/unit"
	"duskweight/internal/say"
)

// fuseSizes are the usual ratings, A.
var fuseSizes = []float64{1, 2, 3, 4, 5, 7.5, 10, 15, 20, 25, 30, 35, 40, 45, 50, 60, 70, 80, 90, 100, 110, 125, 150, 175, 200, 225, 250, 300, 350, 400, 450, 500, 600}

// NextFuse returns the smallest usual rating of at least i; false above 600 A.
func NextFuse(i unit.Current) (unit.Current, bool) {
	for _, f := range fuseSizes {
		if f >= float64(i) {
			return unit.Current(f), true
		}
	}
	return 0, false
}

// PanelFuseOver is how far the fuse of a panel circuit stands above its short-circuit current: 1.25·1.25 (source.NEC690, 690.8
// and 690.9). It holds for panels only.
const PanelFuseOver = 1.5625

// PanelFuse returns the least rating of a fuse, and of the cable, in a panel circuit of short-circuit current isc.
func PanelFuse(isc unit.Current) unit.Current { return isc * PanelFuseOver }

// FuseOverLoad is how far the fuse at the cells stands above the greatest current (common practice).
const FuseOverLoad = 1.25

// Line is the cable from the cells to the line and its fuse, as they are and as they should be.
type Line struct {
	Most      unit.Current             // greatest current of the year
	FuseLeast unit.Current             // 1.25·Most
	FuseTake  unit.Known[unit.Current] // the next usual rating
	AreaTake  unit.Known[unit.Area]    // smallest standard section that carries the fuse and keeps the drop
	Ampacity  unit.Known[unit.Current] // of the cable as it is
	Drop      unit.Known[unit.Voltage] // of the cable as it is, at Most
	DropShare unit.Known[unit.Ratio]
	Flags     []Flag
	Missing   []Missing
}

// Line checks the cable and the fuse at the cells for the greatest current of the year.
func (r Resolved) Line(most unit.Current) Line {
	l := Line{Most: most, FuseLeast: most * FuseOverLoad}
	b := r.bank
	if f, ok := NextFuse(l.FuseLeast); ok && most > 0 {
		l.FuseTake = unit.Of(f)
		l.AreaTake = r.areaFor(f, most)
	}
	if a, ok := b.CableArea.Value(); ok {
		if amps, ok := Ampacity(a); ok {
			l.Ampacity = unit.Of(amps)
		}
		if length, ok := b.CableLength.Value(); ok && r.Voltage != 0 {
			u := Drop(length, most, a, HotCable)
			l.Drop, l.DropShare = unit.Of(u), unit.Of(unit.Ratio(u/r.Voltage))
		}
	} else {
		l.Missing = append(l.Missing, Missing{"cable_area_m2", "whether the cable and its fuse fit"})
	}
	if !b.CableLength.Is {
		l.Missing = append(l.Missing, Missing{"cable_length_m", "how many volts the cable loses"})
	}
	if !b.Fuse.Is {
		l.Missing = append(l.Missing, Missing{"fuse_a", "whether the cable is protected"})
	}
	l.judge(b)
	return l
}

// areaFor returns the smallest standard section whose ampacity carries the fuse and whose drop stays under DropMost.
func (r Resolved) areaFor(fuse, most unit.Current) unit.Known[unit.Area] {
	for _, s := range sections {
		a := unit.Area(s.area * 1e-6)
		if s.amps < float64(fuse) {
			continue
		}
		if l, ok := r.bank.CableLength.Value(); ok && float64(Drop(l, most, a, HotCable)) > DropMost*float64(r.Voltage) {
			continue
		}
		return unit.Of(a)
	}
	return unit.Known[unit.Area]{}
}

// judge says what is wrong with the cable and its fuse.
func (l *Line) judge(b Bank) {
	tell := func(path string, bad bool, words string, values ...any) {
		l.Flags = append(l.Flags, Flag{Path: path, Say: say.That(words, values...), Bad: bad})
	}
	fuse, fuseIs := b.Fuse.Value()
	amps, ampsIs := l.Ampacity.Value()
	if fuseIs && ampsIs && fuse > amps {
		tell("fuse_a", true, "The fuse of %s lets the cable burn: it carries %s. Use a smaller fuse or a thicker cable.", say.Current(fuse), say.Current(amps))
	}
	if fuseIs && fuse < l.FuseLeast {
		tell("fuse_a", false, "The fuse of %s may blow in use: the greatest current is %s, and at least %s is needed.", say.Current(fuse), say.Current(l.Most), say.Current(l.FuseLeast).Up())
	}
	if ampsIs && l.Most > amps {
		tell("cable_area_m2", true, "The cable carries %s, and up to %s flow. Use a thicker cable.", say.Current(amps), say.Current(l.Most))
	}
	if b.CableArea.Is && !ampsIs {
		tell("cable_area_m2", false, "For a cable of %s the table has no current. Ask for its rating.", say.WireArea(b.CableArea.Val))
	}
	if s, ok := l.DropShare.Value(); ok && s > DropMost {
		tell("cable_area_m2", false, "The cable loses %s, %s of the voltage; more than %s is too much. Use a thicker or shorter cable.", say.Voltage(l.Drop.Val).To(2), say.Share(s), say.Share(DropMost))
	}
}
