package ready

import (
	"cmp"

	"duskweight/internal/model/lift/path"
)

// decides is the field of a hoist that a line of the load path hangs on: the first that is missing, else what the part
// withstands, or for what is only counted or measured the answer that is counted. "" where no one field is more to blame
// than another.
func decides(k path.Check) string {
	return cmp.Or(first(k.Missing), k.Strength())
}
