package store

import (
	"cmp"
	"context"
	"crypto/sha256"
	"database/sql"
	"encoding/hex"
	"errors"
	"fmt"
	"io/fs"
	"net/url"
	"os"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"time"
)

// Backup is a checked copy of the file.
type Backup struct {
	Number int       // of the copy: counted up, since clocks can go back
	At     time.Time // when it was made, as its name says; zero where the name does not
	Path   string
	Size   int64
}

// copyStamp is how the name of a copy says when it was made.
const copyStamp = "2006-01-02T150405Z"

// Backup makes a checked copy of the file beside it, if something changed since the last one or that one is damaged, and
// returns the newest copy. Older ones are thinned out; see outgrown.
func (s *Store) Backup(ctx context.Context, now time.Time) (Backup, error) {
	pen, err := s.takePen(ctx)
	if err != nil {
		return Backup{}, err
	}
	b, err := backUp(ctx, s.path, now)
	return b, errors.Join(err, pen.give())
}

// Backups lists the copies, the newest first.
func (s *Store) Backups() ([]Backup, error) { return copies(s.path) }

// Copies lists the copies of a file that need not be open, the newest first.
func Copies(path string) ([]Backup, error) { return copies(path) }

func backUp(ctx context.Context, path string, now time.Time) (Backup, error) {
	have, err := copies(path)
	if err != nil {
		return Backup{}, err
	}
	is, err := fingerprint(ctx, path)
	if err != nil {
		return Backup{}, err
	}
	next := 1
	if len(have) > 0 {
		if was, err := fingerprint(ctx, have[0].Path); err == nil && was == is && sound(ctx, have[0].Path) == nil {
			return have[0], nil
		}
		next = have[0].Number + 1
	}
	final := filepath.Join(copyFolder(path), fmt.Sprintf("%s-%06d-%s.db", stem(path), next, now.UTC().Format(copyStamp)))
	if err := writeCopy(ctx, path, final, is); err != nil {
		return Backup{}, err
	}
	have, err = copies(path)
	if err != nil {
		return Backup{}, err
	}
	for _, old := range outgrown(have) {
		if err := os.Remove(old.Path); err != nil {
			return have[0], fmt.Errorf("store: an old copy: %w", err)
		}
	}
	return have[0], nil
}

// writeCopy makes a copy under another name, makes sure that it is whole and on the disk, and only then gives it its
// name.
func writeCopy(ctx context.Context, path, final, fingerprinted string) (err error) {
	if err := os.MkdirAll(filepath.Dir(final), 0o700); err != nil {
		return fmt.Errorf("store: %w", err)
	}
	part := unfinished(path)
	if err := os.Remove(part); err != nil && !errors.Is(err, fs.ErrNotExist) {
		return fmt.Errorf("store: %w", err)
	}
	defer func() {
		if err != nil {
			err = errors.Join(err, os.RemoveAll(part))
		}
	}()
	if err := vacuumInto(ctx, path, part); err != nil {
		return err
	}
	if err := verify(ctx, part, fingerprinted); err != nil {
		return err
	}
	if err := syncPath(part); err != nil {
		return err
	}
	if err := os.Rename(part, final); err != nil {
		return fmt.Errorf("store: %w", err)
	}
	return syncFolder(filepath.Dir(final))
}

// vacuumInto writes what a file holds, its log too, into a new one. It is not on the disk yet.
func vacuumInto(ctx context.Context, path, part string) error {
	return look(ctx, path, func(db *sql.DB) error {
		_, err := db.ExecContext(ctx, `VACUUM INTO ?`, part)
		return err
	})
}

// verify makes sure that a copy is sound and holds what the original held.
func verify(ctx context.Context, path, fingerprinted string) error {
	if err := sound(ctx, path); err != nil {
		return fmt.Errorf("store: the copy is not sound: %w", err)
	}
	is, err := fingerprint(ctx, path)
	if err == nil && is != fingerprinted {
		err = errors.New("store: the copy is not like the file")
	}
	return err
}

// sound reads a whole file and checks its structure.
func sound(ctx context.Context, path string) error { return soundAs(ctx, path, looking) }

func soundAs(ctx context.Context, path string, how url.Values) error {
	return lookAs(ctx, path, how, func(db *sql.DB) error {
		var said string
		if err := db.QueryRowContext(ctx, `PRAGMA integrity_check`).Scan(&said); err != nil {
			return err
		}
		if said != "ok" {
			return errors.New(said)
		}
		return nil
	})
}

// fingerprint tells two states of a file apart: its schema, its last change, its drafts and settings.
func fingerprint(ctx context.Context, path string) (string, error) {
	sum := sha256.New()
	err := look(ctx, path, func(db *sql.DB) (err error) {
		rows, err := db.QueryContext(ctx, `SELECT 'schema', user_version, '', '' FROM pragma_user_version
			UNION ALL SELECT * FROM (SELECT 'last', seq, at, '' FROM revision ORDER BY seq DESC LIMIT 1)
			UNION ALL SELECT 'rows', count(*), '', '' FROM revision
			UNION ALL SELECT * FROM (SELECT 'draft ' || kind, thing, field, text FROM draft ORDER BY kind, thing, field)
			UNION ALL SELECT * FROM (SELECT 'setting', 0, name, value FROM setting ORDER BY name)`)
		if err != nil {
			return err
		}
		defer func() { err = errors.Join(err, rows.Close()) }()
		for rows.Next() {
			var what, a, b string
			var n int64
			if err := rows.Scan(&what, &n, &a, &b); err != nil {
				return err
			}
			fmt.Fprintf(sum, "%q %d %q %q\n", what, n, a, b)
		}
		return rows.Err()
	})
	return hex.EncodeToString(sum.Sum(nil)), err
}

// look runs f on a connection of its own that only reads.
func look(ctx context.Context, path string, f func(*sql.DB) error) error {
	return lookAs(ctx, path, looking, f)
}

func lookAs(ctx context.Context, path string, how url.Values, f func(*sql.DB) error) (err error) {
	db, err := sql.Open("sqlite3", dsn(path, how))
	if err == nil {
		defer func() { err = errors.Join(err, db.Close()) }()
		err = f(db)
	}
	if err != nil {
		return fmt.Errorf("store: %w", err)
	}
	return nil
}

func copyFolder(path string) string { return filepath.Join(filepath.Dir(path), "backups") }

// unfinished, restoring and halfWritten are where a copy lies while it is made, while it is gone back to, and while what
// was left half written in it is taken back.
func unfinished(path string) string  { return filepath.Join(copyFolder(path), stem(path)+".part") }
func restoring(path string) string   { return filepath.Join(copyFolder(path), stem(path)+".restore") }
func halfWritten(path string) string { return filepath.Join(copyFolder(path), stem(path)+".half") }

// sweep removes what a program that was stopped left of a copy: nobody knows whether it is whole. The caller has the lock.
func sweep(path string) error {
	if info, err := os.Stat(copyFolder(path)); err != nil || !info.IsDir() {
		return nil
	}
	for _, left := range []string{unfinished(path), restoring(path), halfWritten(path)} {
		if err := removeFile(left); err != nil {
			return err
		}
	}
	return nil
}

func stem(path string) string { return strings.TrimSuffix(filepath.Base(path), filepath.Ext(path)) }

// copies lists the copies of a file, the newest first.
func copies(path string) ([]Backup, error) {
	entries, err := os.ReadDir(copyFolder(path))
	if errors.Is(err, fs.ErrNotExist) {
		return nil, nil
	}
	if err != nil {
		return nil, fmt.Errorf("store: %w", err)
	}
	var bs []Backup
	for _, e := range entries {
		rest, ours := strings.CutPrefix(e.Name(), stem(path)+"-")
		digits, when, _ := strings.Cut(rest, "-")
		n, err := strconv.Atoi(digits)
		if !ours || err != nil || filepath.Ext(rest) != ".db" {
			continue
		}
		info, err := e.Info()
		if err != nil {
			return nil, fmt.Errorf("store: %w", err)
		}
		at, _ := time.Parse(copyStamp+".db", when) // a name without it is still a copy
		bs = append(bs, Backup{n, at, filepath.Join(copyFolder(path), e.Name()), info.Size()})
	}
	slices.SortFunc(bs, func(a, b Backup) int { return cmp.Compare(b.Number, a.Number) })
	return bs, nil
}

// syncPath puts a file on the disk.
func syncPath(path string) error {
	f, err := os.OpenFile(path, os.O_RDWR, 0)
	if err != nil {
		return fmt.Errorf("store: %w", err)
	}
	return errors.Join(f.Sync(), f.Close())
}
