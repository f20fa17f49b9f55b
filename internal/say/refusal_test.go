package say

import (
	"errors"
	"fmt"
	"testing"

	"duskweight/internal/model/unit"
)

// By hand: 100 kg/0.45359237 = 220 lb.
func TestRefuse(t *testing.T) {
	err := Refuse("more than %s", Mass(100))
	if got := err.Error(); got != "more than 100"+unit.Space+"kg" {
		t.Errorf("the error is %q", got)
	}
	for _, e := range []error{err, fmt.Errorf("behind a wrapping: %w", err)} {
		if got := Why(e).In(unit.Imperial); got != "more than 220"+unit.Space+"lb" {
			t.Errorf("%v: %q", e, got)
		}
	}
	if got := Why(errors.New("100 % of %s")).String(); got != "100 % of %s" {
		t.Errorf("another error is %q", got)
	}
	if !Why(nil).IsZero() {
		t.Error("no error says something")
	}
}
