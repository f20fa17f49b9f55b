// Package store keeps projects in one SQLite file: a table of revisions, where a save is one more row and undo is one
// more row too. One process at a time; one connection that writes and a few that only read. Every saved change is on
// the disk before the caller hears of it. Bodies are written and read by package document alone. The clock is the
// caller's.
//
// Left out: more than one computer on the same file (the lock is the operating system's and is not to be trusted on
// network drives).
package store

import (
	"context"
	"database/sql"
	"errors"
	"fmt"
	"sync/atomic"
	"syscall"
	"time"

	"duskweight/internal/model"
	"duskweight/internal/model/sun"
)

// What a caller can tell apart. Each comes wrapped; try errors.Is, and errors.AsType for *Stale and *Busy.
var (
	ErrNotFound = errors.New("it is not here, or it was deleted")
	ErrStale    = errors.New("it was changed elsewhere since this page was opened")
	ErrBusy     = errors.New("another Duskweight has this file open")
	ErrReadOnly = errors.New("this file can only be read")
	ErrMoved    = errors.New("the file was moved, replaced or deleted while it was open")
	ErrForeign  = errors.New("this is not a Duskweight file")
	ErrNothing  = errors.New("there is nothing to undo")
	ErrWait     = errors.New("the projects go back to a copy at this moment") // nothing of the change was saved
	ErrFull     = errors.New("the disk is full")                              // nothing of the change was saved
	ErrDisk     = errors.New("the disk reports a fault")
)

// Store is an open file. It is safe for use by several goroutines.
type Store struct {
	path     string
	writer   *sql.DB // nil where the file can only be read
	reader   *sql.DB
	lock     *lock
	readOnly string
	still    bool // nobody can change the file while it is open
	anew     bool // an empty file is wanted, although there are copies
	anchor   anchor
	notices  []string
	years    cache[string, sun.Series]

	knownProjects cache[text, model.Project]
	knownVariants cache[text, model.Variant]

	copying   chan struct{} // of one place, taken while a copy is made or gone back to
	goingBack atomic.Bool   // a return to a copy holds the pen
	turns     turns
}

// Path returns where the file is.
func (s *Store) Path() string { return s.path }

// ReadOnly returns why nothing can be saved, as a sentence, or "" where all is well. It can change while the file is open.
func (s *Store) ReadOnly() string {
	if s.readOnly == "" && s.moved() != nil {
		return "The file with your projects was moved, replaced or deleted while Duskweight was running. Nothing can be saved. Export each project that you need, then end Duskweight and start it again."
	}
	return s.readOnly
}

// Notices returns what went wrong at the start without being in the way of it, as sentences: a copy that could not be
// made, say.
func (s *Store) Notices() []string { return s.notices }

// Announce writes the address of the running program beside the file, for a second start to open.
func (s *Store) Announce(address string) error {
	if s.lock == nil {
		return nil
	}
	return s.lock.announce(address)
}

// Close closes the file and lets the next program have it.
func (s *Store) Close() error {
	var errs []error
	errs = append(errs, s.reader.Close()) // first: the last writer to go folds the log into the file
	if s.writer != nil {
		errs = append(errs, s.leaveLog(), s.writer.Close())
		if !exists(s.path + "-wal") {
			errs = append(errs, s.lock.hold(pair{}))
		}
	}
	return errors.Join(append(errs, s.lock.release())...)
}

// read runs f on one unchanging view of the file.
func (s *Store) read(ctx context.Context, f func(*sql.Tx) error) error {
	conn, err := s.reader.Conn(ctx)
	if err != nil {
		return fmt.Errorf("store: %w", err)
	}
	return closing(conn, func() error { return inTx(ctx, conn, f) })
}

// closing runs f and gives the connection back, even out of a panic: there is one that writes.
func closing(conn *sql.Conn, f func() error) (err error) {
	defer func() { err = errors.Join(err, conn.Close()) }()
	return f()
}

// DiskError is ErrFull, ErrDisk or ErrReadOnly for what the disk refused, nil for every other error.
func DiskError(err error) error {
	switch {
	case errors.Is(err, syscall.ENOSPC):
		return ErrFull
	case errors.Is(err, syscall.EIO):
		return ErrDisk
	case errors.Is(err, syscall.EROFS):
		return ErrReadOnly
	}
	return refusedBy(err)
}

// toldOf wraps what the disk refused as ErrFull, ErrDisk or ErrReadOnly.
func toldOf(err error) error {
	if kind := DiskError(err); kind != nil {
		return fmt.Errorf("%w: %w", kind, err)
	}
	return err
}

// inTx runs f in one transaction. What the disk refuses is ErrFull, ErrDisk or ErrReadOnly: the transaction is taken back then, and
// what is read next is what is stored.
//
// The transaction itself does not end with ctx, only what f asks in it does: database/sql would take it back beside us,
// and the connection would still be inside it when inTx has returned.
func inTx(ctx context.Context, conn *sql.Conn, f func(*sql.Tx) error) (err error) {
	defer func() { err = toldOf(err) }()
	tx, err := conn.BeginTx(context.WithoutCancel(ctx), nil)
	if err != nil {
		return fmt.Errorf("store: %w", err)
	}
	done := false
	defer func() {
		if !done { // out of a panic too
			err = errors.Join(err, tx.Rollback())
		}
	}()
	if err := f(tx); err != nil {
		return err
	}
	if err := ctx.Err(); err != nil { // nobody waits for it any more
		return fmt.Errorf("store: %w", err)
	}
	done = true
	if err := tx.Commit(); err != nil {
		return fmt.Errorf("store: not saved: %w", err)
	}
	return nil
}

const clockForm = "2006-01-02T15:04:05.000000000Z"

func stamp(now time.Time) string { return now.UTC().Format(clockForm) }

func unstamp(at string) (time.Time, error) { return time.Parse(clockForm, at) }
