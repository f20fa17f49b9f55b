package page

import (
	"fmt"
	"slices"
	"strings"

	"duskweight/internal/model/unit"
)

// IfKnown puts a value into words, which hold one %s; "" where it is not known.
func IfKnown[T unit.Number](k unit.Known[T], q unit.Quantity, sys unit.System, words string) string {
	if !k.Is {
		return ""
	}
	return fmt.Sprintf(words, q.Format(float64(k.Val), sys))
}

// OrTake is a value, or where it is not known the one to take.
func OrTake[T unit.Number](is, take unit.Known[T], q unit.Quantity, sys unit.System) string {
	if !is.Is && take.Is {
		return "not known; use " + Known(take, q, sys)
	}
	return Known(is, q, sys)
}

// Clauses joins what is known; "not known" where nothing is.
func Clauses(between string, parts ...string) string {
	parts = slices.DeleteFunc(parts, func(p string) bool { return p == "" })
	if len(parts) == 0 {
		return "not known"
	}
	return strings.Join(parts, between)
}
