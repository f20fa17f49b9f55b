package store

import (
	"context"
	"database/sql"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"time"

	"duskweight/migrations"
)

// goneBack is what the history says of a thing that a return to a copy has changed.
const goneBack = "Gone back to a copy"

// Restore makes the projects, drafts and settings those of a copy, in one step that is done whole or not at all, and
// returns the copy of what was there before: going back to that one undoes it. Nothing is read from the copy's place
// but the copy, and it is not changed. A page that was opened before and shows something else than the copy is stale.
func (s *Store) Restore(ctx context.Context, from string, now time.Time) (before Backup, err error) {
	if s.writer == nil {
		return before, fmt.Errorf("%w: %s", ErrReadOnly, s.readOnly)
	}
	p, err := s.takePen(ctx)
	if err != nil {
		return before, err
	}
	s.goingBack.Store(true)
	defer func() {
		s.goingBack.Store(false)
		err = errors.Join(err, p.give())
	}()
	ready, drop, err := prepareCopy(ctx, s.path, from)
	if err != nil {
		return before, err
	}
	defer func() { err = errors.Join(err, drop()) }()
	if before, err = backUp(ctx, s.path, now); err != nil {
		return before, fmt.Errorf("store: nothing was changed, for no copy of what is here could be made first: %w", err)
	}
	// The connection outlives us: whatever becomes of ctx, the copy is attached, and then let go.
	if _, err := p.conn.ExecContext(context.WithoutCancel(ctx), `ATTACH ? AS copied`, dsn(ready, looking)); err != nil {
		return before, fmt.Errorf("store: %w", err)
	}
	err = inTx(ctx, p.conn, func(tx *sql.Tx) error { return replaceAll(ctx, tx, now) })
	if _, detached := p.conn.ExecContext(context.WithoutCancel(ctx), `DETACH copied`); detached != nil {
		err = errors.Join(err, fmt.Errorf("store: %w", detached))
	}
	if err == nil {
		err = s.moved() // while it was gone back to
	}
	return before, err
}

// prepareCopy returns a sound copy of the newest schema and how to be rid of it: the copy itself where it is so already
// and nothing has to be written beside it, else a file of our own.
func prepareCopy(ctx context.Context, path, from string) (ready string, drop func() error, err error) {
	if asItIs(ctx, from) {
		if err := sound(ctx, from); err != nil {
			return "", nil, fmt.Errorf("store: the copy cannot be used: %w", err)
		}
		return from, func() error { return nil }, nil
	}
	if ready, err = readCopy(ctx, path, from); err != nil {
		return "", nil, err
	}
	db, err := sql.Open("sqlite3", dsn(ready, nil))
	if err == nil {
		err = errors.Join(migrate(ctx, db), db.Close())
	}
	if err != nil {
		return "", nil, errors.Join(fmt.Errorf("store: the copy: %w", err), os.Remove(ready))
	}
	return ready, func() error { return os.Remove(ready) }, nil
}

// asItIs reports whether a file can be read where it lies, without a write beside it: it is of the newest schema, has no
// log, and says of itself that readers need none (bytes 18 and 19, SQLite file format, section 1.3.3).
func asItIs(ctx context.Context, from string) bool {
	if version, err := inspect(ctx, from, looking); err != nil || version != migrations.Newest {
		return false
	}
	for _, side := range []string{"-wal", "-journal"} {
		if _, err := os.Stat(from + side); err == nil {
			return false
		}
	}
	f, err := os.Open(from)
	if err != nil {
		return false
	}
	var head [20]byte
	_, err = io.ReadFull(f, head[:])
	return errors.Join(err, f.Close()) == nil && head[18] == 1 && head[19] == 1
}

// readCopy reads a copy, with the log that may lie beside it, into a file of our own and makes sure that it is sound.
func readCopy(ctx context.Context, path, from string) (ready string, err error) {
	if hot(from) {
		if from, err = healed(ctx, from, halfWritten(path)); err != nil {
			return "", err
		}
		defer func() { err = errors.Join(err, removeFile(from)) }()
	}
	version, err := inspect(ctx, from, looking)
	switch {
	case err != nil:
		return "", err
	case version == 0:
		return "", fmt.Errorf("%s: %w", from, ErrNotFound)
	case version > migrations.Newest:
		return "", fmt.Errorf("store: %s was written by a newer Duskweight; install that one to go back to it", from)
	}
	if err := os.MkdirAll(copyFolder(path), 0o700); err != nil {
		return "", fmt.Errorf("store: %w", err)
	}
	ready = restoring(path)
	if err := os.RemoveAll(ready); err != nil {
		return "", fmt.Errorf("store: %w", err)
	}
	if err = vacuumInto(ctx, from, ready); err == nil {
		err = sound(ctx, ready)
	}
	if err != nil {
		return "", errors.Join(fmt.Errorf("store: the copy cannot be used: %w", err), os.RemoveAll(ready))
	}
	return ready, nil
}

// same is true of a revision that is here and in the copy alike.
var same = func() string {
	var all []string
	for _, column := range strings.Split(rowColumns, ", ") {
		all = append(all, "c."+column+" IS revision."+column)
	}
	return strings.Join(all, " AND ")
}()

// replaceAll puts the rows of the attached copy in the place of all that are here; those that are alike stay where they
// are. Ids and numbers of revisions that were ever given are not given again: a thing that the copy has otherwise than it
// was here gets one more revision.
func replaceAll(ctx context.Context, tx *sql.Tx, now time.Time) error {
	if err := spend(ctx, tx, "main"); err != nil {
		return fmt.Errorf("store: %w", err)
	}
	for _, statement := range []string{
		`PRAGMA defer_foreign_keys = ON`, // until the end of this transaction
		`DELETE FROM draft`, `DELETE FROM setting`,
		`DELETE FROM revision WHERE NOT EXISTS (SELECT 1 FROM copied.revision AS c WHERE c.seq = revision.seq AND ` + same + `)`,
		`DELETE FROM series WHERE hash NOT IN (SELECT hash FROM copied.series)`,
		`INSERT INTO series SELECT * FROM copied.series WHERE hash NOT IN (SELECT hash FROM main.series)`,
		`INSERT INTO revision SELECT * FROM copied.revision WHERE seq NOT IN (SELECT seq FROM main.revision) ORDER BY seq`,
		`INSERT INTO setting SELECT * FROM copied.setting`,
		`INSERT INTO draft SELECT * FROM copied.draft`,
	} {
		if _, err := tx.ExecContext(ctx, statement); err != nil {
			return fmt.Errorf("store: %w", err)
		}
	}
	last, err := lastRevisions(ctx, tx)
	if err != nil {
		return err
	}
	for _, r := range last {
		if err := r.outnumber(ctx, tx, now); err != nil {
			return err
		}
	}
	if err := spend(ctx, tx, "copied"); err != nil {
		return fmt.Errorf("store: %w", err)
	}
	return nil
}

// lastRevision is the highest revision that a thing ever had here.
type lastRevision struct {
	thing       Thing
	number, seq int64
	at          string
}

// outnumber makes sure that the revision which a page may still show is the newest only if it is the same one.
func (l lastRevision) outnumber(ctx context.Context, tx *sql.Tx, now time.Time) error {
	r, err := newest(ctx, tx, l.thing)
	if errors.Is(err, ErrNotFound) {
		return nil
	}
	if err != nil || r.number > l.number || r.seq == l.seq && r.at == l.at {
		return err
	}
	r.number = l.number
	r = r.next(goneBack, now)
	r.deed = Aside
	return r.insert(ctx, tx)
}

func lastRevisions(ctx context.Context, tx *sql.Tx) (all []lastRevision, err error) {
	rows, err := tx.QueryContext(ctx, `SELECT kind, thing, number, seq, at FROM spent ORDER BY seq`)
	if err != nil {
		return nil, fmt.Errorf("store: %w", err)
	}
	defer func() { err = errors.Join(err, rows.Close()) }()
	for rows.Next() {
		var l lastRevision
		if err := rows.Scan(&l.thing.Kind, &l.thing.ID, &l.number, &l.seq, &l.at); err != nil {
			return nil, fmt.Errorf("store: %w", err)
		}
		all = append(all, l)
	}
	return all, rows.Err()
}

// RestoreFile makes the file at path hold what a copy holds. It is Restore where the file can be opened. A file that is
// damaged, or no database any more, is set aside under another name, with its log, and the copy takes its place: then
// aside is where the old one is. The file must not be open.
func RestoreFile(ctx context.Context, path, from string, now time.Time) (before Backup, aside string, err error) {
	s, err := Open(ctx, path, now)
	if err == nil {
		before, err = s.Restore(ctx, from, now)
		err = errors.Join(err, s.Close())
	}
	if err == nil || errors.Is(err, ErrBusy) || !errors.Is(err, ErrLost) && usable(ctx, path) {
		return before, "", err
	}
	aside, failed := replaceFile(ctx, path, from, now)
	if failed != nil {
		return before, "", errors.Join(err, failed)
	}
	return Backup{}, aside, nil
}

// usable reports whether a file is one of ours, with something in it, and sound.
func usable(ctx context.Context, path string) bool {
	version, err := inspect(ctx, path, looking)
	return err == nil && version > 0 && sound(ctx, path) == nil
}

func replaceFile(ctx context.Context, path, from string, now time.Time) (aside string, err error) {
	if path, err = settle(path); err != nil {
		return "", err
	}
	l, err := takeLock(ctx, path)
	if err != nil {
		return "", err
	}
	defer func() { err = errors.Join(err, l.release()) }()
	return replaceHeld(ctx, path, from, now)
}

// replaceHeld puts a copy in the place of a file whose lock the caller has, and keeps that one: aside is where, "" where
// there was none.
func replaceHeld(ctx context.Context, path, from string, now time.Time) (aside string, err error) {
	ready, err := readCopy(ctx, path, from)
	if err != nil {
		return "", err
	}
	if err := syncPath(ready); err != nil {
		return "", err
	}
	if aside, err = setAside(path, now); err != nil {
		return "", err
	}
	if err := os.Rename(ready, path); err != nil {
		return "", fmt.Errorf("store: %w", err)
	}
	return aside, syncFolder(filepath.Dir(path))
}

// setAside gives a file and all that SQLite puts beside it another name that nothing has yet, and returns it; "" where there
// was no file. The caller has the lock.
func setAside(path string, now time.Time) (aside string, err error) {
	sides := []string{"-wal", "-shm", "-journal", ""} // the file last: a log that stays would be played into the new one
	aside = path + ".set-aside-" + now.UTC().Format(copyStamp)
	for n := 2; slices.ContainsFunc(sides, func(side string) bool { return exists(aside + side) }); n++ {
		aside = fmt.Sprintf("%s.set-aside-%s-%d", path, now.UTC().Format(copyStamp), n)
	}
	kept := false
	for _, side := range sides {
		switch err := os.Rename(path+side, aside+side); {
		case err == nil:
			kept = kept || side == ""
		case !errors.Is(err, fs.ErrNotExist):
			return "", fmt.Errorf("store: %w", err)
		}
	}
	if err := syncFolder(filepath.Dir(path)); err != nil {
		return "", fmt.Errorf("store: %w", err)
	}
	if !kept {
		return "", nil
	}
	return aside, nil
}

func exists(path string) bool {
	_, err := os.Lstat(path)
	return err == nil
}
