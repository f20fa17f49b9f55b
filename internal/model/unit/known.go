package unit

import (
	"bytes"
	"encoding/json"
)

// Number is any quantity of this package.
type Number interface{ ~float64 | ~int }

// Known is a value that may be not known. Not known is a state, never a zero: the zero Known is not known.
// In JSON it is a number, or null.
type Known[T Number] struct {
	Val T
	Is  bool
}

// Of returns the known value v.
func Of[T Number](v T) Known[T] { return Known[T]{Val: v, Is: true} }

// Value returns the value and whether it is known.
func (k Known[T]) Value() (T, bool) { return k.Val, k.Is }

// Or returns the value, or otherwise where it is not known. For offering a typical value with its source beside it;
// never for strength.
func (k Known[T]) Or(otherwise T) T {
	if k.Is {
		return k.Val
	}
	return otherwise
}

// Times multiplies the value by f and reports whether it is known.
func (k *Known[T]) Times(f float64) bool {
	k.Val = T(float64(k.Val) * f)
	return k.Is
}

// MarshalJSON writes the number, or null where it is not known. NaN and infinities are errors.
func (k Known[T]) MarshalJSON() ([]byte, error) {
	if !k.Is {
		return []byte("null"), nil
	}
	return json.Marshal(k.Val)
}

// UnmarshalJSON reads a number, or null for not known.
func (k *Known[T]) UnmarshalJSON(b []byte) error {
	if bytes.Equal(bytes.TrimSpace(b), []byte("null")) {
		*k = Known[T]{}
		return nil
	}
	var v T
	if err := json.Unmarshal(b, &v); err != nil {
		return err
	}
	*k = Of(v)
	return nil
}

// AllKnown reports whether every one of the values is known.
func AllKnown(ks ...interface{ known() bool }) bool {
	for _, k := range ks {
		if !k.known() {
			return false
		}
	}
	return true
}

func (k Known[T]) known() bool { return k.Is }
