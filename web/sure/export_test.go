package sure

// What the tests from outside ask for.
type (
	SureLine = sureLine
)

var (
	NineSay = nineSay
)
