package store

import (
	"context"
	"errors"
	"fmt"
	"io/fs"
	"os"
)

// anchor is which file was opened: the operating system can put another in its place while it is open, and then what is
// written goes where nobody finds it.
type anchor struct{ file, log fs.FileInfo }

// hold remembers which file is open, and its log.
func (s *Store) hold() (err error) {
	if s.anchor.file, err = os.Stat(s.path); err == nil {
		s.anchor.log, err = os.Stat(s.path + "-wal")
	}
	if err != nil {
		return fmt.Errorf("store: %w", err)
	}
	return nil
}

// moved is ErrMoved where the file at the path, or its log, is not the one that is open.
func (s *Store) moved() error {
	if s.anchor.file == nil { // it is only read
		return nil
	}
	for path, opened := range map[string]fs.FileInfo{s.path: s.anchor.file, s.path + "-wal": s.anchor.log} {
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
		return errors.Join(err, os.Rename(s.path+"-wal", s.path+".replaced-wal"))
	}
	return err
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
