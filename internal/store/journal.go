package store

import (
	"context"
	"database/sql"
	"errors"
	"fmt"
	"io"
	"os"
	"path/filepath"
)

// heal lets SQLite take back what a program that was stopped left half written in a file with a rollback journal (SQLite,
// atomic commit, section 4): whoever only looks cannot, and finds such a file for ever unreadable. It is tried on a copy
// first, in the folder of the copies, so that a file of another program is left as it is. A file without a journal is
// left as it is, too. The caller has the lock.
func heal(ctx context.Context, path string) (err error) {
	if !hot(path) {
		return nil
	}
	if _, err := inspect(ctx, path, looking); !isReadOnlyFile(err) {
		return nil // no journal that is in the way; what else may be wrong is told by the next look
	}
	tried, err := healed(ctx, path, restoring(path))
	if err != nil {
		return err
	}
	defer func() { err = errors.Join(err, removeFile(tried)) }()
	if _, err := inspect(ctx, tried, looking); err != nil {
		return err
	}
	return rollBack(ctx, path)
}

// healed makes a copy of a file and its journal, with what was left half written taken back. The caller removes it.
func healed(ctx context.Context, path, to string) (at string, err error) {
	if err := copyHalf(path, to); err != nil {
		return "", err
	}
	if err := rollBack(ctx, to); err != nil {
		return "", errors.Join(err, removeFile(to))
	}
	return to, nil
}

// hot reports whether a journal lies beside a file.
func hot(path string) bool {
	info, err := os.Stat(path + "-journal")
	return err == nil && info.Size() > 0
}

// copyHalf copies a file and its journal.
func copyHalf(path, to string) error {
	if err := os.MkdirAll(filepath.Dir(to), 0o700); err != nil {
		return fmt.Errorf("store: %w", err)
	}
	for _, side := range []string{"", "-journal"} {
		if err := copyFile(path+side, to+side); err != nil {
			return errors.Join(fmt.Errorf("store: %w", err), removeFile(to))
		}
	}
	return nil
}

func copyFile(from, to string) (err error) {
	in, err := os.Open(from)
	if err != nil {
		return err
	}
	defer func() { err = errors.Join(err, in.Close()) }()
	out, err := os.OpenFile(to, os.O_CREATE|os.O_TRUNC|os.O_WRONLY, 0o600)
	if err != nil {
		return err
	}
	_, err = io.Copy(out, in)
	return errors.Join(err, out.Close())
}

// rollBack opens a file to be written and reads from it once: SQLite takes back then what was left half written.
func rollBack(ctx context.Context, path string) (err error) {
	how := map[string][]string{"mode": {"rw"}, "_busy_timeout": {"5000"}}
	db, err := sql.Open("sqlite3", dsn(path, how))
	if err != nil {
		return fmt.Errorf("store: %w", err)
	}
	defer func() { err = errors.Join(err, db.Close()) }()
	var tables int
	if err := db.QueryRowContext(ctx, `SELECT count(*) FROM sqlite_schema`).Scan(&tables); err != nil {
		return fmt.Errorf("store: %s was left half written, and that could not be taken back: %w", path, err)
	}
	return nil
}

// removeFile removes a database file and all that SQLite puts beside one.
func removeFile(path string) error {
	for _, side := range []string{"", "-journal", "-wal", "-shm"} {
		if err := os.RemoveAll(path + side); err != nil {
			return fmt.Errorf("store: %w", err)
		}
	}
	return nil
}
