package store

import (
	"context"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
)

// anchor is which file was opened: the operating system can put another in its place while it is open, and then what is
// written goes where nobody finds it.
type anchor struct{ file, log fs.FileInfo }

// hold remembers which log is open, and writes down beside the file that the two belong together.
func (s *Store) hold() error {
	log, err := os.Stat(s.path + "-wal")
	if err != nil {
		return fmt.Errorf("store: %w", err)
	}
	if err := s.moved(); err != nil { // while it was opened; whose the log is nobody knows then
		return err
	}
	s.anchor.log = log
	return s.lock.hold(pair{identity(s.anchor.file), identity(log)})
}

// moved is ErrMoved where the file at the path, or its log, is not the one that is open.
func (s *Store) moved() error {
	if s.anchor.file == nil { // it is only read
		return nil
	}
	for path, opened := range map[string]fs.FileInfo{s.path: s.anchor.file, s.path + "-wal": s.anchor.log} {
		if opened == nil { // the log is not there yet
			continue
		}
		if now, err := os.Stat(path); err != nil || !os.SameFile(opened, now) {
			return fmt.Errorf("store: %s: %w", path, errors.Join(ErrMoved, err))
		}
	}
	return nil
}

// Guard sets the log aside where another file was put in the place of the one that is open: the next program would play
// it into that one. It reports ErrMoved then.
func (s *Store) Guard() error {
	err := s.moved()
	if err == nil {
		return nil
	}
	there, gone := os.Stat(s.path)
	log, none := os.Stat(s.path + "-wal")
	if gone == nil && none == nil && !os.SameFile(s.anchor.file, there) && os.SameFile(s.anchor.log, log) {
		_, failed := logAside(s.path)
		return errors.Join(err, failed)
	}
	return err
}

// logAside gives the log of a file that was replaced a name that nothing has yet, and returns it.
func logAside(path string) (aside string, err error) {
	aside = path + ".replaced-wal"
	for n := 2; exists(aside); n++ {
		aside = fmt.Sprintf("%s.replaced-%d-wal", path, n)
	}
	if err := os.Rename(path+"-wal", aside); err != nil {
		return "", fmt.Errorf("store: %w", err)
	}
	if err := syncFolder(filepath.Dir(path)); err != nil {
		return "", fmt.Errorf("store: %w", err)
	}
	return aside, nil
}

// strangers reports whether the log beside a file is that of another file, which lay there when the program was cut off:
// nothing in the log itself says so, and SQLite would play it into this one. Where both were moved together, they belong
// together still.
func strangers(path string) bool {
	held := readLock(path).pair
	file, gone := os.Stat(path)
	log, none := os.Stat(path + "-wal")
	return gone == nil && none == nil && held.File != "" && identity(log) == held.Log && identity(file) != held.File
}

// leaveStranger sets the log of another file aside before anything reads it. The caller has the lock.
func (s *Store) leaveStranger() error {
	if strangers(s.path) {
		aside, err := logAside(s.path)
		if err != nil {
			return err
		}
		s.notices = append(s.notices, fmt.Sprintf("Another data file was put in the place of the one that was open. The last changes of that one are kept in %s.", aside))
	}
	if !exists(s.path + "-wal") {
		return s.lock.hold(pair{}) // no later log is the one that was written down
	}
	return nil
}

// leaveLog keeps the end of the last connection from removing a log at our path that is not ours.
func (s *Store) leaveLog() error {
	if s.Guard() == nil {
		return nil
	}
	conn, err := s.writer.Conn(context.Background())
	if err != nil {
		return fmt.Errorf("store: %w", err)
	}
	return errors.Join(conn.Raw(keepLog), conn.Close())
}
