package history

// What the tests from outside ask for.
var (
	ChangesOf = changesOf
)
