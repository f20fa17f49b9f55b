package model_test

import "testing"

// longOnly leaves a test out of short runs: it judges every plan, one after the other, and the race detector, which takes ten
// times as long, has nothing to see there.
func longOnly(t *testing.T) {
	t.Helper()
	if testing.Short() {
		t.Skip("every plan, one after the other: not in a short run")
	}
}
