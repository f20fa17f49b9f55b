package shelf

// What the tests from outside ask for.
var (
	CombinationOf = combinationOf
	Written       = written
)
