package water

import (
	"duskweight/internal/model/source"
	"duskweight/internal/model/unit"
)

// Size is a class of small pumps and turbines: what comes out of what goes in, motor or generator included.
type Size struct {
	Below         unit.Power // electric power of the machines of this class, W
	Usual         unit.Ratio
	Least, Most   unit.Ratio
	From          source.Ref
	FromLeastMost source.Ref
}

// Sizes are the classes, the smallest first. The usual values stand in two manuals of small water power; the range of the
// smallest is theirs too. The ranges of the others are as wide, 0.15 to each side (our own judgement); good makers of the
// largest give 0.70 to 0.75. The last class also counts beyond its border.
func Sizes() []Size {
	book := source.Harvey.At("with Thake 2000")
	own := source.Judgement.Whole()
	return []Size{
		{100, 0.30, 0.15, 0.45, book, source.FromMemory.Whole()},
		{500, 0.40, 0.25, 0.55, book, own},
		{2000, 0.50, 0.35, 0.65, book, own},
		{10000, 0.60, 0.45, 0.75, book, own},
	}
}

// PumpSize is the class of a pump that uses an electric power.
func PumpSize(rated unit.Power) Size {
	all := Sizes()
	for _, s := range all {
		if rated < s.Below {
			return s
		}
	}
	return all[len(all)-1]
}

// TurbineSize is the class of a turbine through which water of a power runs: the first whose usual share of that power is below
// the border of the class.
func TurbineSize(hydraulic unit.Power) Size {
	all := Sizes()
	for _, s := range all {
		if hydraulic*unit.Power(s.Usual) < s.Below {
			return s
		}
	}
	return all[len(all)-1]
}
