package store

import (
	"context"
	"database/sql"
	"errors"
	"fmt"
	"time"
)

// patience is how long a save waits for a return to a copy before it says so.
const patience = 500 * time.Millisecond

// pen is the one connection that writes, taken out of everybody's hands, and the right to write copies.
type pen struct {
	conn *sql.Conn // nil where the file can only be read
	give func() error
}

// takePen waits for the right to write copies and for the connection that writes.
func (s *Store) takePen(ctx context.Context) (pen, error) {
	if err := s.wait(ctx, func(ctx context.Context) error {
		select {
		case s.copying <- struct{}{}:
			return nil
		case <-ctx.Done():
			return ctx.Err()
		}
	}); err != nil {
		return pen{}, err
	}
	free := func() { <-s.copying }
	if s.writer == nil {
		return pen{give: func() error { free(); return nil }}, nil
	}
	conn, err := s.takeConn(ctx)
	if err != nil {
		free()
		return pen{}, err
	}
	return pen{conn, func() error { defer free(); return conn.Close() }}, nil
}

// takeConn waits for the connection that writes. Where the file is not at its place any more, it is ErrMoved.
func (s *Store) takeConn(ctx context.Context) (conn *sql.Conn, err error) {
	if s.writer == nil {
		return nil, fmt.Errorf("%w: %s", ErrReadOnly, s.readOnly)
	}
	err = s.wait(ctx, func(ctx context.Context) (err error) {
		conn, err = s.writer.Conn(ctx)
		return err
	})
	if err != nil {
		return nil, err
	}
	if err := s.Guard(); err != nil {
		return nil, errors.Join(err, conn.Close())
	}
	return conn, nil
}

// wait takes something that others may hold. It waits for as long as ctx lets it, but for a return to a copy only for
// patience: that one may take seconds, and is ErrWait then.
func (s *Store) wait(ctx context.Context, take func(context.Context) error) error {
	for {
		short, cancel := context.WithTimeout(ctx, patience)
		err := take(short)
		cancel()
		switch {
		case err == nil:
			return nil
		case ctx.Err() != nil || !errors.Is(err, context.DeadlineExceeded):
			return fmt.Errorf("store: %w", err)
		case s.goingBack.Load():
			return ErrWait
		}
	}
}
