package store

import (
	"context"
	"database/sql"
	"errors"
	"fmt"
	"slices"
	"sync"
)

// mostTogether is how many changes are saved in one transaction at most (our own judgement): a return to a copy does not
// wait for more than these.
const mostTogether = 64

// group is some changes of several callers that are saved in one transaction, so that the disk is waited for once for
// all of them (a group commit). Each has a savepoint of its own: one that is refused takes nothing of the others back.
// Nobody hears of a change before the end of its group. A group belongs to who has the turn.
type group struct {
	conn *sql.Conn
	tx   *sql.Tx
	size int
	lost error         // why SQLite took the whole transaction back, as it does where the disk is full
	done chan struct{} // closed at the end
	err  error         // of the end, for each of them
}

// turns hands the right to write from one change to the next, in the order in which they came.
type turns struct {
	mu    sync.Mutex
	taken bool
	queue []chan struct{}
	open  *group // of who has the turn; nil where it has none yet
}

// take waits for the turn.
func (t *turns) take(ctx context.Context) error {
	t.mu.Lock()
	if !t.taken {
		t.taken = true
		t.mu.Unlock()
		return nil
	}
	mine := make(chan struct{})
	t.queue = append(t.queue, mine)
	t.mu.Unlock()
	select {
	case <-mine:
		return nil
	case <-ctx.Done():
	}
	t.mu.Lock()
	defer t.mu.Unlock()
	at := slices.Index(t.queue, mine)
	if at < 0 { // it was handed over at the same moment
		return nil
	}
	t.queue = slices.Delete(t.queue, at, at+1)
	return ctx.Err()
}

// handOver gives the turn, with the open group, to whoever waits longest. Where nobody waits, it stays where it is.
func (t *turns) handOver() bool {
	t.mu.Lock()
	defer t.mu.Unlock()
	if len(t.queue) == 0 {
		return false
	}
	close(t.queue[0])
	t.queue = t.queue[1:]
	return true
}

// give ends a turn without a group.
func (t *turns) give() {
	t.mu.Lock()
	defer t.mu.Unlock()
	if t.taken = len(t.queue) > 0; t.taken {
		close(t.queue[0])
		t.queue = t.queue[1:]
	}
}

// inTx runs f in a transaction that holds the pen, together with what others save at this moment. It is saved, and on
// the disk, when inTx returns nil. While a return to a copy holds the pen, it is ErrWait after a moment.
//
// What f asks does not end with ctx: SQLite answers an interrupted change by taking the whole transaction back.
func (s *Store) inTx(ctx context.Context, f func(context.Context, *sql.Tx) error) error {
	g, err := s.join(ctx)
	if err != nil {
		return toldOf(err)
	}
	refused := func() error {
		defer s.leave(g) // out of a panic too
		return g.do(ctx, f)
	}()
	<-g.done
	if g.err != nil {
		return toldOf(g.err)
	}
	return toldOf(refused)
}

// join waits for the turn, and opens a group where there is none that others have begun.
func (s *Store) join(ctx context.Context) (*group, error) {
	if s.writer == nil {
		return nil, fmt.Errorf("%w: %s", ErrReadOnly, s.readOnly)
	}
	var conn *sql.Conn
	err := s.wait(ctx, func(ctx context.Context) (err error) {
		if err := s.turns.take(ctx); err != nil || s.turns.open != nil {
			return err
		}
		if conn, err = s.writer.Conn(ctx); err != nil {
			s.turns.give()
		}
		return err
	})
	switch {
	case err != nil:
		return nil, err
	case conn == nil:
		return s.turns.open, nil
	}
	err = s.Guard()
	var tx *sql.Tx
	if err == nil {
		if tx, err = conn.BeginTx(context.WithoutCancel(ctx), nil); err != nil {
			err = fmt.Errorf("store: %w", err)
		}
	}
	if err != nil {
		err = errors.Join(err, conn.Close())
		s.turns.give()
		return nil, err
	}
	s.turns.open = &group{conn: conn, tx: tx, done: make(chan struct{})}
	return s.turns.open, nil
}

// do runs one change of a group.
func (g *group) do(ctx context.Context, f func(context.Context, *sql.Tx) error) (err error) {
	within := context.WithoutCancel(ctx)
	if _, err := g.tx.ExecContext(within, `SAVEPOINT one`); err != nil {
		g.lost = fmt.Errorf("store: %w", err)
		return g.lost
	}
	kept := false
	defer func() {
		if kept {
			return
		}
		_, back := g.tx.ExecContext(within, `ROLLBACK TO one`)
		_, off := g.tx.ExecContext(within, `RELEASE one`)
		if failed := errors.Join(back, off); failed != nil { // there is no transaction any more
			g.lost = errors.Join(err, fmt.Errorf("store: not saved: %w", failed))
		}
	}()
	if err := f(within, g.tx); err != nil {
		return err
	}
	if err := ctx.Err(); err != nil { // nobody waits for it any more
		return fmt.Errorf("store: %w", err)
	}
	if _, err := g.tx.ExecContext(within, `RELEASE one`); err != nil {
		return fmt.Errorf("store: not saved: %w", err)
	}
	kept = true
	return nil
}

// leave hands the group on to the next who waits, or ends it where nobody does.
func (s *Store) leave(g *group) {
	g.size++
	if g.lost == nil && g.size < mostTogether && s.turns.handOver() {
		return
	}
	s.turns.open = nil
	if g.lost == nil {
		g.lost = s.Guard() // since it was opened
	}
	if g.lost != nil {
		_ = g.tx.Rollback() // it is taken back already, or this does it
		g.err = g.lost
	} else if err := g.tx.Commit(); err != nil {
		g.err = fmt.Errorf("store: not saved: %w", err)
	}
	g.err = errors.Join(g.err, g.conn.Close())
	if g.err == nil {
		g.err = s.moved() // between the last look and the end
	}
	close(g.done)
	s.turns.give()
}
