package projects

// What the tests from outside ask for.
const (
	PlaceNotKnown = placeNotKnown
)
