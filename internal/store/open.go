package store

import (
	"context"
	"database/sql"
	"errors"
	"fmt"
	"io/fs"
	"maps"
	"net/url"
	"os"
	"path/filepath"
	"strconv"
	"time"

	"github.com/pressly/goose/v3"

	"duskweight/migrations"
)

// readers is how many pages can be read at once.
const readers = 4

// Open opens the file at path, and makes it, with its folder, where there is none. It takes the file's lock, makes a
// checked copy where something changed since the last one, brings the schema up to date, and reads back the settings
// that keep a save from being lost.
//
// A file that another process has open is a *Busy with that one's address. A file that is damaged, no database, somebody
// else's, or gone although copies of it are there, is a *Lost and is left as it is; see OpenRescue. A file of a newer program
// opens to be read only; see ReadOnly.
func Open(ctx context.Context, path string, now time.Time) (*Store, error) {
	path, err := settle(path)
	if err != nil {
		return nil, err
	}
	s := newStore(path)
	s.lock, err = takeLock(ctx, path)
	if protected(err) {
		return openLocked(ctx, path)
	}
	if err != nil {
		return nil, err
	}
	if err := s.open(ctx, now); err != nil {
		return nil, errors.Join(err, s.abandon())
	}
	return s, nil
}

func newStore(path string) *Store { return &Store{path: path, copying: make(chan struct{}, 1)} }

// lockedFolder is why nothing is saved where the folder cannot be written to.
const lockedFolder = "This folder cannot be written to. You can look at your projects and export them, but not save."

// lockedFile is why nothing is saved where the file alone cannot be written to.
const lockedFile = "The file with your projects is write-protected. You can look at your projects and export them, but not save. Allow Duskweight to write to that file, then start it again."

// writable is why the system does not let us write to a file.
func writable(path string) error {
	f, err := os.OpenFile(path, os.O_RDWR, 0)
	if err == nil {
		err = f.Close()
	}
	if err != nil {
		return fmt.Errorf("store: %w", err)
	}
	return nil
}

// protected reports whether it is a right that is missing, and no fault of the disk that may be over at the next start.
func protected(err error) bool { return errors.Is(err, fs.ErrPermission) || isReadOnlyDisk(err) }

// openLocked opens a file in a folder that cannot be written to, so that what is in it can be seen and exported. SQLite
// needs to write beside a file to read it, unless it is told that nobody changes it.
func openLocked(ctx context.Context, path string) (*Store, error) {
	s := newStore(path)
	s.still, s.readOnly = true, lockedFolder
	version, err := s.examine(ctx)
	switch {
	case err != nil:
		return nil, err
	case version == 0:
		return nil, fmt.Errorf("store: there are no projects in %s yet, and the folder cannot be written to", path)
	}
	if log, err := os.Stat(path + "-wal"); err == nil && log.Size() > 0 {
		s.notices = append(s.notices, "The program was cut off the last time. The last changes may not be shown here; they are not lost. Open the folder where it can be written to.")
	}
	return s, s.openReader(ctx)
}

// looking is how to look at the file: without a change to it.
func (s *Store) looking() url.Values {
	if !s.still {
		return looking
	}
	still := maps.Clone(looking)
	still.Set("immutable", "1")
	return still
}

// abandon closes what a failed Open has opened.
func (s *Store) abandon() error {
	if s.reader == nil {
		s.reader = new(sql.DB)
		if s.writer == nil {
			return s.lock.release()
		}
		return errors.Join(s.writer.Close(), s.lock.release())
	}
	return s.Close()
}

func (s *Store) open(ctx context.Context, now time.Time) error {
	if err := sweep(s.path); err != nil {
		s.notices = append(s.notices, fmt.Sprintf("What a program that was stopped left of a copy is still there: %v.", err))
	}
	if err := s.leaveStranger(); err != nil {
		return err
	}
	if err := heal(ctx, s.path); err != nil {
		if ctx.Err() == nil && isFile(s.path) && DiskError(err) != ErrFull {
			return &Lost{s.path, Damaged, err}
		}
		return err
	}
	if info, err := os.Stat(s.path); err == nil && info.Mode().IsRegular() && info.Size() == 0 && !s.anew {
		s.notices = append(s.notices, "The data file was empty, and there is no spare copy of it. Duskweight began a new one.")
	}
	version, err := s.examine(ctx)
	if err != nil {
		return err
	}
	if version > migrations.Newest {
		s.readOnly = "This file was written by a newer Duskweight. You can look at your projects, but not save. Install the newer version to go on."
		return s.openReader(ctx)
	}
	if version == migrations.Newest {
		if err := writable(s.path); protected(err) {
			s.readOnly = lockedFile
			return s.openReader(ctx)
		} else if err != nil {
			return err
		}
	}
	copied := version > 0
	if version > 0 {
		if _, err := backUp(ctx, s.path, now); err != nil {
			if version < migrations.Newest {
				return fmt.Errorf("store: the file must be brought up to date, but no copy of it could be made first: %w", err)
			}
			copied = false
			s.notices = append(s.notices, fmt.Sprintf("No copy of your projects could be made at this start: %v.", err))
		}
	}
	if err := s.openWriter(ctx); err != nil {
		return err
	}
	if copied { // what is purged is in a copy
		if _, err := s.Purge(ctx, now); err != nil {
			s.notices = append(s.notices, fmt.Sprintf("Old deleted projects are still there: %v.", err))
		}
	}
	if err := s.hold(); err != nil {
		return err
	}
	return s.openReader(ctx)
}

// Tend does what an open file needs from time to time: a checked copy where something changed, then a purge.
func (s *Store) Tend(ctx context.Context, now time.Time) error {
	if s.readOnly != "" {
		return nil
	}
	if _, err := s.Backup(ctx, now); err != nil {
		return err
	}
	_, err := s.Purge(ctx, now)
	return err
}

// settle makes the path absolute and plain, so that one file has one lock, and makes its folder.
func settle(path string) (string, error) {
	abs, err := filepath.Abs(path)
	if err != nil {
		return "", fmt.Errorf("store: %w", err)
	}
	if err := os.MkdirAll(filepath.Dir(abs), 0o700); err != nil {
		return "", fmt.Errorf("store: the folder for the file: %w", err)
	}
	if real, err := filepath.EvalSymlinks(abs); err == nil {
		return real, nil
	}
	dir, err := filepath.EvalSymlinks(filepath.Dir(abs))
	if err != nil {
		return "", fmt.Errorf("store: %w", err)
	}
	return filepath.Join(dir, filepath.Base(abs)), nil
}

// dsn names a database file whatever characters its path has.
func dsn(path string, q url.Values) string {
	u := url.URL{Scheme: "file", OmitHost: true, Path: filepath.ToSlash(path), RawQuery: q.Encode()}
	return u.String()
}

// statements is how many prepared statements each connection keeps: more than the program has.
const statements = "64"

var (
	// FULL: a save is on the disk before anyone hears of it; NORMAL loses the last ones in a power cut.
	writing = url.Values{
		"_journal_mode": {"WAL"}, "_synchronous": {"FULL"}, "_foreign_keys": {"on"},
		"_busy_timeout": {"5000"}, "_txlock": {"immediate"}, "_stmt_cache_size": {statements},
	}
	reading = url.Values{"mode": {"ro"}, "_query_only": {"1"}, "_busy_timeout": {"5000"}, "_foreign_keys": {"on"}, "_stmt_cache_size": {statements}}
	looking = url.Values{"mode": {"ro"}, "_busy_timeout": {"5000"}}
)

// leastDatabase is the least page of a database (SQLite file format, section 1.2). SQLite takes anything shorter for an
// empty file and would write over it.
const leastDatabase = 512

// inspect tells the schema version of the file without changing it: 0 for a file that is not there or still empty.
// What is no database, or not ours, is ErrForeign.
func inspect(ctx context.Context, path string, how url.Values) (version int, err error) {
	info, err := os.Stat(path)
	if errors.Is(err, fs.ErrNotExist) || err == nil && info.Mode().IsRegular() && info.Size() == 0 {
		return 0, nil
	}
	if err != nil {
		return 0, fmt.Errorf("store: %w", err)
	}
	if !info.Mode().IsRegular() {
		return 0, fmt.Errorf("%w: %s is not a file", ErrForeign, path)
	}
	if info.Size() < leastDatabase {
		return 0, notDatabase(path)
	}
	db, err := sql.Open("sqlite3", dsn(path, how))
	if err != nil {
		return 0, fmt.Errorf("store: %w", err)
	}
	defer func() { err = errors.Join(err, db.Close()) }()
	var application, others int
	err = db.QueryRowContext(ctx, `SELECT (SELECT application_id FROM pragma_application_id),
		(SELECT user_version FROM pragma_user_version),
		(SELECT count(*) FROM sqlite_schema WHERE name NOT LIKE 'goose_%' AND name NOT LIKE 'sqlite_%')`).Scan(&application, &version, &others)
	switch {
	case isNoDatabase(err):
		return 0, notDatabase(path)
	case err != nil:
		return 0, fmt.Errorf("store: %s cannot be read: %w", path, err)
	case application == 0 && others == 0: // made, and stopped before the first step of the schema
		return 0, nil
	case application != migrations.ApplicationID:
		return 0, fmt.Errorf("%w: %s belongs to another program, and was left as it is", ErrForeign, path)
	}
	return version, nil
}

// errNotDatabase is the ErrForeign of a file that is no database at all.
var errNotDatabase = fmt.Errorf("%w", ErrForeign)

func notDatabase(path string) error {
	return fmt.Errorf("%w: %s is not a database, and was left as it is", errNotDatabase, path)
}

// openWriter opens the one connection that writes, and brings the schema up to date.
func (s *Store) openWriter(ctx context.Context) (err error) {
	f, err := os.OpenFile(s.path, os.O_CREATE|os.O_EXCL|os.O_WRONLY, 0o600) // the file is nobody else's to read
	if err == nil {
		err = f.Close()
	}
	if err != nil && !errors.Is(err, fs.ErrExist) {
		return fmt.Errorf("store: %w", err)
	}
	if s.anchor.file, err = os.Stat(s.path); err != nil { // before it is opened: whatever lies there later is another one
		return fmt.Errorf("store: %w", err)
	}
	if s.writer, err = sql.Open("sqlite3", dsn(s.path, writing)); err != nil {
		return fmt.Errorf("store: %w", err)
	}
	s.writer.SetMaxOpenConns(1)
	if err := migrate(ctx, s.writer); err != nil {
		return err
	}
	// SQLite opens a file that cannot be opened for writing at this moment to be read only, and says so at the first change:
	// this one, of a setting that is not there.
	if _, err := s.writer.ExecContext(ctx, `DELETE FROM setting WHERE name = ?`, healthSetting); err != nil {
		return toldOf(fmt.Errorf("store: the file cannot be written to: %w", err))
	}
	return readBack(ctx, s.writer, map[string]string{
		"journal_mode": "wal", "synchronous": "2", "foreign_keys": "1", "busy_timeout": "5000",
		"application_id": strconv.Itoa(migrations.ApplicationID), "user_version": strconv.Itoa(migrations.Newest),
	})
}

func migrate(ctx context.Context, db *sql.DB) error {
	p, err := goose.NewProvider(goose.DialectSQLite3, db, migrations.FS, goose.WithDisableGlobalRegistry(true))
	if err != nil {
		return fmt.Errorf("store: %w", err)
	}
	if _, err := p.Up(ctx); err != nil {
		return fmt.Errorf("store: the file could not be brought up to date: %w", err)
	}
	return nil
}

// openReader opens the connections that only read.
func (s *Store) openReader(ctx context.Context) (err error) {
	how := maps.Clone(s.looking())
	maps.Copy(how, reading)
	if s.reader, err = sql.Open("sqlite3", dsn(s.path, how)); err != nil {
		return fmt.Errorf("store: %w", err)
	}
	s.reader.SetMaxOpenConns(readers)
	s.reader.SetMaxIdleConns(readers)
	if err := openAll(ctx, s.reader, readers); err != nil {
		return err
	}
	return readBack(ctx, s.reader, map[string]string{"query_only": "1", "busy_timeout": "5000"})
}

// openAll opens so many connections at once and keeps them: where the file is taken away while it is open, they still
// read what it held.
func openAll(ctx context.Context, db *sql.DB, n int) (err error) {
	for range n {
		conn, failed := db.Conn(ctx)
		if failed != nil {
			return fmt.Errorf("store: %w", failed)
		}
		defer func() { err = errors.Join(err, conn.Close()) }()
		if failed = conn.PingContext(ctx); failed != nil {
			return fmt.Errorf("store: %w", failed)
		}
	}
	return nil
}

// readBack makes sure that the settings of a connection are the wanted ones: a misspelt one is ignored without a word.
func readBack(ctx context.Context, db *sql.DB, wanted map[string]string) error {
	for name, want := range wanted {
		var got string
		if err := db.QueryRowContext(ctx, "PRAGMA "+name).Scan(&got); err != nil {
			return fmt.Errorf("store: %s: %w", name, err)
		}
		if got != want {
			return fmt.Errorf("store: %s must be %s and is %s", name, want, got)
		}
	}
	return nil
}
