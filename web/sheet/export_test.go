package sheet

// What the tests from outside ask for.
var (
	BuildRows = buildRows
	PlainType = plainType
)
