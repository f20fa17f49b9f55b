//go:build cgo

package store

import (
	"errors"

	sqlite3 "github.com/mattn/go-sqlite3"
)

// isNoDatabase reports whether err says that a file is no database.
func isNoDatabase(err error) bool {
	e, ok := errors.AsType[sqlite3.Error](err)
	return ok && e.Code == sqlite3.ErrNotADB
}
