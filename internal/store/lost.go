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
	"time"

	"duskweight/migrations"
)

// ErrLost is a data file that no page can be made from. Open returns it as *Lost, and has changed nothing: Rescue goes on
// from there.
var ErrLost = errors.New("the file with the projects cannot be used")

// Loss is how a file was lost.
type Loss int

// The ways in which a file is lost.
const (
	Damaged     Loss = iota // it is ours, and some of it cannot be read
	Missing                 // it is not there, but copies of it are, or its log
	Emptied                 // it holds nothing, but copies of it are there, or its log
	NotDatabase             // what lies there is no database
	Another                 // what lies there is the database of another program
)

// Lost is a file that cannot be worked with, an ErrLost.
type Lost struct {
	Path string
	How  Loss
	Why  error // what was found, for whoever looks closer
}

func (l *Lost) Error() string { return l.Why.Error() }

// Is makes a *Lost an ErrLost.
func (l *Lost) Is(target error) bool { return target == ErrLost }

func (l *Lost) Unwrap() error { return l.Why }

// Say says what was found, as sentences.
func (l *Lost) Say() string {
	switch l.How {
	case Missing:
		return "The file with your projects is not at its place."
	case Emptied:
		return "The file with your projects is empty."
	case NotDatabase:
		return "At the place of your projects lies a file that is not a database."
	case Another:
		return "At the place of your projects lies the file of another program."
	}
	return "The file with your projects is damaged. Some of it may not be readable any more."
}

// examine looks at a file before anything is opened to be written to, and says why it cannot be worked with, or how new its
// schema is: 0 for a file that is to be made.
func (s *Store) examine(ctx context.Context) (version int, err error) {
	version, err = inspect(ctx, s.path, s.looking())
	lost := func(how Loss, why error) (int, error) { return 0, &Lost{s.path, how, why} }
	switch {
	case errors.Is(err, ErrForeign) && isFile(s.path) && marked(s.path):
		return lost(Damaged, err)
	case errors.Is(err, errNotDatabase):
		return lost(NotDatabase, err)
	case errors.Is(err, ErrForeign) && isFile(s.path):
		return lost(Another, err)
	case errors.Is(err, ErrForeign), errors.Is(err, fs.ErrPermission), ctx.Err() != nil:
		return 0, err
	case err != nil && isFile(s.path):
		return lost(Damaged, err)
	case err != nil:
		return 0, err
	case version == 0 && !s.anew:
		return 0, s.missed()
	case version == 0:
		return 0, nil
	}
	if err := s.whole(ctx, version); err != nil {
		if ctx.Err() != nil {
			return 0, err
		}
		return lost(Damaged, err)
	}
	return version, nil
}

// missed is a *Lost where there is no file, or an empty one, although there once was: copies lie beside it, or a log.
func (s *Store) missed() error {
	all, err := copies(s.path)
	if err != nil {
		return err
	}
	log, failed := os.Stat(s.path + "-wal")
	if len(all) == 0 && (failed != nil || log.Size() <= logHeader) {
		return nil
	}
	if _, err := os.Stat(s.path); errors.Is(err, fs.ErrNotExist) {
		return &Lost{s.path, Missing, fmt.Errorf("store: %w", err)}
	}
	return &Lost{s.path, Emptied, fmt.Errorf("store: %s holds nothing", s.path)}
}

func isFile(path string) bool {
	info, err := os.Stat(path)
	return err == nil && info.Mode().IsRegular()
}

// marked reports whether rows of ours are in a file that says that it is another's: then its header is damaged.
func marked(path string) bool {
	found, err := salvage(path)
	return err == nil && len(found.Projects)+len(found.Lost) > 0
}

// whole makes sure that a file of ours can be read: its structure, the number of its schema, and the newest state of each
// thing in it. A newer program's file is not read further than its structure.
func (s *Store) whole(ctx context.Context, version int) error {
	if err := soundAs(ctx, s.path, s.looking()); err != nil {
		return err
	}
	if err := plainHeader(s.path); err != nil {
		return err
	}
	return lookAs(ctx, s.path, s.looking(), func(db *sql.DB) error {
		conn, err := db.Conn(ctx)
		if err != nil {
			return err
		}
		return closing(conn, func() error {
			return inTx(ctx, conn, func(tx *sql.Tx) error { return s.readable(ctx, tx, version) })
		})
	})
}

// readable reads the number of the schema, and the newest state of each thing.
func (s *Store) readable(ctx context.Context, tx *sql.Tx, version int) error {
	var steps int
	if err := tx.QueryRowContext(ctx, `SELECT coalesce(max(version_id), 0) FROM goose_db_version WHERE is_applied`).Scan(&steps); err != nil {
		return fmt.Errorf("store: %w", err)
	}
	if steps != version {
		return fmt.Errorf("store: the file says that its schema is number %d, and that step %d was the last", version, steps)
	}
	if version > migrations.Newest {
		return nil
	}
	return errors.Join(allReadable(ctx, tx, s.projects()), allReadable(ctx, tx, s.variants()), allSeries(ctx, tx))
}

// plainHeader makes sure that a file says of itself that we may write to it: it is in one of the two ways of writing that
// SQLite has (bytes 18 and 19, SQLite file format, section 1.3.3).
func plainHeader(path string) (err error) {
	f, err := os.Open(path)
	if err != nil {
		return fmt.Errorf("store: %w", err)
	}
	defer func() { err = errors.Join(err, f.Close()) }()
	var head [20]byte
	if _, err := io.ReadFull(f, head[:]); err != nil {
		return fmt.Errorf("store: %w", err)
	}
	for _, how := range head[18:] {
		if how != 1 && how != 2 {
			return fmt.Errorf("store: the header says that the file is written in a way %d, which SQLite does not have", how)
		}
	}
	return nil
}

// allReadable reads the newest state of each thing of a kind.
func allReadable[T any](ctx context.Context, tx *sql.Tx, c content[T]) (err error) {
	rows, err := tx.QueryContext(ctx, `SELECT edition, body, thing, at FROM
		(SELECT kind, thing, max(number) AS number FROM revision WHERE kind = ? GROUP BY thing)
		CROSS JOIN revision USING (kind, thing, number)`, c.kind)
	if err != nil {
		return fmt.Errorf("store: %w", err)
	}
	defer func() { err = errors.Join(err, rows.Close()) }()
	for rows.Next() {
		var edition int
		var id int64
		var body, at string
		if err := rows.Scan(&edition, &body, &id, &at); err != nil {
			return fmt.Errorf("store: %w", err)
		}
		_, err := c.decode(edition, []byte(body))
		if _, clock := unstamp(at); err != nil || clock != nil {
			return fmt.Errorf("store: %s %d cannot be read: %w", c.kind, id, errors.Join(err, clock))
		}
	}
	return rows.Err()
}

// allSeries makes sure that every weather file is what its hash says, and that each is there that is pointed to.
func allSeries(ctx context.Context, tx *sql.Tx) (err error) {
	var missing int
	err = tx.QueryRowContext(ctx, `SELECT count(*) FROM revision WHERE series IS NOT NULL AND series NOT IN (SELECT hash FROM series)`).Scan(&missing)
	if err == nil && missing > 0 {
		err = errors.New("a weather file is missing")
	}
	if err != nil {
		return fmt.Errorf("store: %w", err)
	}
	rows, err := tx.QueryContext(ctx, `SELECT hash, body FROM series`)
	if err != nil {
		return fmt.Errorf("store: %w", err)
	}
	defer func() { err = errors.Join(err, rows.Close()) }()
	for rows.Next() {
		var hash, body string
		if err := rows.Scan(&hash, &body); err != nil {
			return fmt.Errorf("store: %w", err)
		}
		if !isHash(hash, body) {
			return errors.New("store: a weather file is not as it was saved")
		}
	}
	return rows.Err()
}

// Rescue is a lost file, with the lock on it. Nothing of it is changed before somebody chooses.
type Rescue struct {
	Lost *Lost
	lock *lock // nil where the folder cannot be written to
}

// OpenRescue takes hold of a file that Open has found lost.
func OpenRescue(ctx context.Context, lost *Lost) (*Rescue, error) {
	l, err := takeLock(ctx, lost.Path)
	if protected(err) {
		return &Rescue{Lost: lost}, nil
	}
	if err != nil {
		return nil, err
	}
	return &Rescue{lost, l}, nil
}

// Announce writes the address of the running program beside the file, for a second start to open.
func (r *Rescue) Announce(address string) error {
	if r.lock == nil {
		return nil
	}
	return r.lock.announce(address)
}

// Close lets the next program have the file. After Open it does nothing.
func (r *Rescue) Close() error { return r.lock.release() }

// Locked reports whether the folder of the file cannot be written to, so that nothing can be mended there.
func (r *Rescue) Locked() bool { return r.lock == nil }

// Salvage reads what can still be read of the file.
func (r *Rescue) Salvage() (Salvage, error) { return salvage(r.Lost.Path) }

// SalvageFile reads what can be read of a file that need not be open, whatever is damaged in it.
func SalvageFile(path string) (Salvage, error) { return salvage(path) }

// Spare is a copy with what it holds.
type Spare struct {
	Backup
	Projects int
	Unsound  bool // it cannot be read either
}

// Spares lists the copies of the file, the newest first.
func (r *Rescue) Spares(ctx context.Context) ([]Spare, error) { return Spares(ctx, r.Lost.Path) }

// Spares lists the copies of a file that need not be open with what they hold, the newest first.
func Spares(ctx context.Context, path string) ([]Spare, error) {
	all, err := copies(path)
	if err != nil {
		return nil, err
	}
	var out []Spare
	for _, b := range all {
		one := Spare{Backup: b}
		if version, err := inspect(ctx, b.Path, looking); err != nil || version == 0 {
			one.Unsound = true
		} else if one.Projects, err = countProjects(ctx, b.Path); err != nil {
			one.Unsound = true
		}
		out = append(out, one)
	}
	return out, nil
}

// countProjects counts the projects of a file that are not deleted.
func countProjects(ctx context.Context, path string) (n int, err error) {
	db, err := sql.Open("sqlite3", dsn(path, looking))
	if err != nil {
		return 0, fmt.Errorf("store: %w", err)
	}
	err = db.QueryRowContext(ctx, `SELECT count(*) FROM (SELECT deleted, max(number) FROM revision WHERE kind = 'project' GROUP BY thing) WHERE NOT deleted`).Scan(&n)
	return n, errors.Join(err, db.Close())
}

// GoBack puts a copy in the place of the lost file and opens it. The lost file is kept under another name, with its log:
// aside is where; "" where there was none.
func (r *Rescue) GoBack(ctx context.Context, from string, now time.Time) (s *Store, aside string, err error) {
	if r.lock == nil {
		return nil, "", fmt.Errorf("%w: %s", ErrReadOnly, lockedFolder)
	}
	if aside, err = replaceHeld(ctx, r.Lost.Path, from, now); err != nil {
		return nil, "", err
	}
	s, err = r.open(ctx, now, false, "Your projects are those of the spare copy "+filepath.Base(from)+"."+keptAside(aside))
	return s, aside, err
}

// Begin sets the lost file aside and opens an empty one.
func (r *Rescue) Begin(ctx context.Context, now time.Time) (s *Store, aside string, err error) {
	if r.lock == nil {
		return nil, "", fmt.Errorf("%w: %s", ErrReadOnly, lockedFolder)
	}
	if aside, err = setAside(r.Lost.Path, now); err != nil {
		return nil, "", err
	}
	s, err = r.open(ctx, now, true, "Duskweight began an empty file, as you chose."+keptAside(aside))
	return s, aside, err
}

func keptAside(aside string) string {
	if aside == "" {
		return ""
	}
	return " The file that lay here before is kept: " + aside + "."
}

// open opens the file that is there now, and hands the lock to it.
func (r *Rescue) open(ctx context.Context, now time.Time, anew bool, notice string) (*Store, error) {
	s := newStore(r.Lost.Path)
	s.lock, s.anew = r.lock, anew
	if err := s.open(ctx, now); err != nil {
		s.lock = nil
		return nil, errors.Join(err, s.abandon())
	}
	r.lock = nil
	s.notices = append(s.notices, notice)
	return s, nil
}
