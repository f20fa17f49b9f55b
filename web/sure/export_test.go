package sure

// What the tests from outside ask for.
type (
	SureLine = sureLine
)

const (
	UsualYears = usualYears
)

var (
	NineSay = nineSay
)
