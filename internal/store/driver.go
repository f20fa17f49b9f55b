//go:build cgo

package store

import (
	"errors"
	"fmt"

	sqlite3 "github.com/mattn/go-sqlite3"
)

// SQLite is the version of SQLite that is built in.
func SQLite() string {
	is, _, _ := sqlite3.Version()
	return is
}

// refusedBy is DiskError for what SQLite says.
func refusedBy(err error) error {
	e, ok := errors.AsType[sqlite3.Error](err)
	switch {
	case !ok:
		return nil
	case e.Code == sqlite3.ErrFull:
		return ErrFull
	case e.Code == sqlite3.ErrReadonly:
		return ErrReadOnly
	case e.Code == sqlite3.ErrIoErr, e.Code == sqlite3.ErrCorrupt, e.Code == sqlite3.ErrCantOpen:
		return ErrDisk
	}
	return nil
}

// isNoDatabase reports whether err says that a file is no database.
func isNoDatabase(err error) bool {
	e, ok := errors.AsType[sqlite3.Error](err)
	return ok && e.Code == sqlite3.ErrNotADB
}

// isReadOnlyFile reports whether err says that a file would have to be written to.
func isReadOnlyFile(err error) bool {
	e, ok := errors.AsType[sqlite3.Error](err)
	return ok && e.Code == sqlite3.ErrReadonly
}

// keepLog tells a connection to leave the log on the disk when it is closed.
func keepLog(conn any) error {
	c, ok := conn.(*sqlite3.SQLiteConn)
	if !ok {
		return fmt.Errorf("store: another driver: %T", conn)
	}
	return c.SetFileControlInt("main", sqlite3.SQLITE_FCNTL_PERSIST_WAL, 1)
}
