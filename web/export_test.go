package web

// What the tests from outside ask for.
const (
	Policy = policy
)

var Safe = safe
