package compare

// What the tests from outside ask for.
var (
	InputGroups = inputGroups
)
