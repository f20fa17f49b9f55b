package store

import (
	"context"
	"database/sql"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"time"

	"duskweight/migrations"
)

// Seen is what a look at a data file found. The file need not be open, and neither the file nor its folder is changed.
type Seen struct {
	Size        int64     // in bytes; 0 where there is no file
	There       bool      // a file lies at the place
	Version     int       // of the schema; 0 where there is no file yet, or one that holds nothing
	Newest      time.Time // when the newest change was saved; zero where none is, or where none can be read
	Protected   bool      // the system does not let us write to the file
	HalfWritten bool      // a journal lies beside the file: a change was cut off, and the next start takes it back
	Cut         bool      // a log lies beside the file of a program that was cut off; the next start reads it
	Replaced    bool      // the log beside the file is that of another file, which lay there before; the next start sets it aside
}

// Look looks at the data file as Open does before it changes anything. The error is a *Lost where no page can be made from
// the file; what was seen until then is returned with every error. A file with a log or a journal beside it, and no program
// that has it open, is looked at in a copy in the folder for temporary files.
func Look(ctx context.Context, path string, running bool) (Seen, error) {
	var is Seen
	info, err := os.Stat(path)
	if err != nil && !errors.Is(err, fs.ErrNotExist) {
		return is, fmt.Errorf("store: %w", err)
	}
	if err == nil {
		is.There, is.Size = true, info.Size()
		if f, err := os.Open(path); err != nil { // SQLite does not say why it cannot open a file
			return is, fmt.Errorf("store: %w", err)
		} else if err = f.Close(); err != nil {
			return is, fmt.Errorf("store: %w", err)
		}
		is.Protected = info.Mode().IsRegular() && protected(writable(path))
	}
	err = unchanged(ctx, path, running, func(s *Store) (err error) {
		is.HalfWritten = !running && hot(path)
		is.Replaced = !running && strangers(path)
		is.Cut = !running && !is.HalfWritten && !s.still
		if is.Version, err = s.examine(ctx); err != nil || is.Version == 0 || is.Version > migrations.Newest {
			return err // a newer program's table may be another one
		}
		is.Newest, err = newestChange(ctx, s)
		return err
	})
	if err == nil && is.Version == 0 {
		err = newStore(path).missed() // copies lie beside the file itself
	}
	if lost, ok := errors.AsType[*Lost](err); ok {
		err = &Lost{path, lost.How, lost.Why} // it may have been looked at in a copy
	}
	return is, err
}

// unchanged calls f with a file that can be looked at without a change to it or to its folder.
func unchanged(ctx context.Context, path string, running bool, f func(*Store) error) (err error) {
	s := newStore(path)
	shared, logged := isFile(path+"-shm"), isFile(path+"-wal")
	switch {
	case running && shared: // what SQLite needs beside the file is there
		return f(s)
	case running || strangers(path) || !isFile(path) || !logged && !hot(path):
		s.still = true
		return f(s)
	}
	folder, err := os.MkdirTemp("", "duskweight-look-")
	if err != nil {
		return fmt.Errorf("store: %w", err)
	}
	defer func() { err = errors.Join(err, os.RemoveAll(folder)) }()
	s.path = filepath.Join(folder, FileName)
	for _, side := range []string{"", "-wal", "-journal"} {
		if err := copyFile(path+side, s.path+side); err != nil && !errors.Is(err, fs.ErrNotExist) {
			return fmt.Errorf("store: %w", err)
		}
	}
	if hot(s.path) {
		if err := rollBack(ctx, s.path); err != nil {
			return &Lost{path, Damaged, err}
		}
	}
	return f(s)
}

// newestChange is when the newest revision was saved, zero where there is none.
func newestChange(ctx context.Context, s *Store) (newest time.Time, err error) {
	err = lookAs(ctx, s.path, s.looking(), func(db *sql.DB) error {
		var at string
		if err := db.QueryRowContext(ctx, `SELECT coalesce(max(at), '') FROM revision`).Scan(&at); err != nil || at == "" {
			return err
		}
		newest, err = unstamp(at)
		return err
	})
	return newest, err
}

// Usable makes sure that a copy is sound and that this program can go back to it. Nothing is changed.
func Usable(ctx context.Context, copied string) error {
	return unchanged(ctx, copied, false, func(s *Store) error {
		version, err := inspect(ctx, s.path, s.looking())
		switch {
		case err != nil:
			return err
		case version == 0:
			return fmt.Errorf("store: %s holds nothing", copied)
		case version > migrations.Newest:
			return fmt.Errorf("store: %s was written by a newer Duskweight", copied)
		}
		return s.whole(ctx, version)
	})
}

// Running says which program has the data file open, nil where none has it. Nothing is made: without the file of the lock
// no program runs.
func Running(path string) (*Busy, error) {
	f, err := os.Open(path + ".lock")
	if errors.Is(err, fs.ErrNotExist) {
		return nil, nil
	}
	if err != nil {
		return nil, fmt.Errorf("store: %w", err)
	}
	err = tryLock(f)
	if errors.Is(err, errLocked) {
		who := readLock(path).Busy
		return &who, f.Close()
	}
	return nil, errors.Join(err, f.Close()) // the end of the file is the end of its lock
}
