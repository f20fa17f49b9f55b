//go:build cgo

package store

import (
	"context"
	"database/sql"
	"errors"
	"fmt"
	"strings"
	"sync"
	"sync/atomic"
	"testing"
	"time"

	sqlite3 "github.com/mattn/go-sqlite3"

	"duskweight/internal/model"
)

// onCommit calls f at each end of a transaction of the connection that writes; where it returns another number than 0,
// SQLite takes the transaction back instead (sqlite3_commit_hook).
func onCommit(t *testing.T, s *Store, f func() int) {
	t.Helper()
	conn := must[*sql.Conn](t)(s.writer.Conn(t.Context()))
	defer conn.Close()
	if err := conn.Raw(func(c any) error {
		c.(*sqlite3.SQLiteConn).RegisterCommitHook(f)
		return nil
	}); err != nil {
		t.Fatal(err)
	}
}

// atOnce lets changes wait in one line until all of them are there, then lets them go, and returns what each was told.
func atOnce(t *testing.T, s *Store, changes []func() error) []error {
	t.Helper()
	p := must[pen](t)(s.takePen(t.Context()))
	told := make([]error, len(changes))
	var all sync.WaitGroup
	for i, change := range changes {
		all.Go(func() {
			defer func() {
				if out := recover(); out != nil {
					told[i] = fmt.Errorf("panic: %v", out)
				}
			}()
			told[i] = change()
		})
		for behind := -1; behind < i; time.Sleep(100 * time.Microsecond) { // each is behind the one before it
			s.turns.mu.Lock()
			if behind = len(s.turns.queue); !s.turns.taken {
				behind = -1
			}
			s.turns.mu.Unlock()
		}
	}
	if err := p.give(); err != nil {
		t.Fatal(err)
	}
	all.Wait()
	return told
}

func setting(s *Store, ctx context.Context, name string) func() error {
	return func() error { return s.SaveSettings(ctx, map[string]string{name: "set"}) }
}

// TestSavedAtOnce saves what comes at the same moment in one transaction. Nobody hears of it before its end; a change
// that is refused, one whose caller has left and one that breaks off take nothing of the others back and leave nothing.
func TestSavedAtOnce(t *testing.T) {
	s := fresh(t)
	_, v := sampled(t, s)
	var ends, answered, early atomic.Int32
	onCommit(t, s, func() int {
		ends.Add(1)
		early.Add(answered.Load())
		return 0
	})
	gone, leave := context.WithCancel(t.Context())
	changes := []func() error{
		setting(s, t.Context(), "first"),
		func() error {
			return second(s.SaveVariant(t.Context(), v.ID, lifting(v.Value, 9), Edit{Revision: v.Revision, Said: "Travel"}, noon))
		},
		func() error { // it sees the one before, on which it was not made
			return second(s.SaveVariant(t.Context(), v.ID, lifting(v.Value, 11), Edit{Revision: v.Revision, Said: "Travel"}, noon))
		},
		func() error {
			return s.inTx(gone, func(ctx context.Context, tx *sql.Tx) error {
				_, err := tx.ExecContext(ctx, `INSERT INTO setting VALUES ('left', '')`)
				leave()
				return err
			})
		},
		func() error {
			return s.inTx(t.Context(), func(ctx context.Context, tx *sql.Tx) error {
				if _, err := tx.ExecContext(ctx, `INSERT INTO setting VALUES ('broken off', '')`); err != nil {
					return err
				}
				panic("broken off")
			})
		},
		setting(s, t.Context(), "last"),
	}
	for i, change := range changes {
		if i != 4 { // who breaks off is told nothing
			changes[i] = func() error {
				defer answered.Add(1)
				return change()
			}
		}
	}
	told := atOnce(t, s, changes)
	for i, want := range []string{"", "", ErrStale.Error(), context.Canceled.Error(), "panic: broken off", ""} {
		if got := fmt.Sprint(told[i]); want == "" && told[i] != nil || !strings.Contains(got, want) {
			t.Errorf("change %d: %s, want %q", i, got, want)
		}
	}
	if ends.Load() != 1 || early.Load() > 0 {
		t.Errorf("%d transactions, %d answers before the end of one", ends.Load(), early.Load())
	}
	if is := must[map[string]string](t)(s.Settings(t.Context())); len(is) != 2 || is["first"] != "set" || is["last"] != "set" {
		t.Errorf("the settings are %v", is)
	}
	if is := must[Saved[model.Variant]](t)(s.Variant(t.Context(), v.ID)); travel(is.Value) != 9 {
		t.Errorf("the travel is %v", travel(is.Value))
	}
}

// TestNotSavedAtOnce: where the end of the transaction fails, each change of it is told so, and nothing of any is there;
// the next one is taken.
func TestNotSavedAtOnce(t *testing.T) {
	s := fresh(t)
	var refuse atomic.Bool
	refuse.Store(true)
	onCommit(t, s, func() int {
		if refuse.Load() {
			return 1
		}
		return 0
	})
	for i, err := range atOnce(t, s, []func() error{setting(s, t.Context(), "a"), setting(s, t.Context(), "b"), setting(s, t.Context(), "c")}) {
		if err == nil {
			t.Errorf("change %d was told that it is saved", i)
		}
	}
	if is := must[map[string]string](t)(s.Settings(t.Context())); len(is) != 0 {
		t.Errorf("there is %v", is)
	}
	refuse.Store(false)
	if err := setting(s, t.Context(), "d")(); err != nil {
		t.Errorf("afterwards: %v", err)
	}
}

// TestTakenBackByTheDisk: a full disk may take the whole transaction back in the middle of it (SQLite, lang_transaction,
// section 4). Those who were in it are told ErrFull, nothing of theirs is there, and those behind them are saved.
func TestTakenBackByTheDisk(t *testing.T) {
	s := fresh(t)
	told := atOnce(t, s, []func() error{
		setting(s, t.Context(), "before"),
		func() error {
			return s.inTx(t.Context(), func(ctx context.Context, tx *sql.Tx) error {
				if _, err := tx.ExecContext(ctx, `ROLLBACK`); err != nil { // as SQLite does it by itself
					return err
				}
				return fmt.Errorf("store: %w", sqlite3.Error{Code: sqlite3.ErrFull})
			})
		},
		setting(s, t.Context(), "behind"),
	})
	if !errors.Is(told[0], ErrFull) || !errors.Is(told[1], ErrFull) || told[2] != nil {
		t.Errorf("they were told %v", told)
	}
	if is := must[map[string]string](t)(s.Settings(t.Context())); len(is) != 1 || is["behind"] != "set" {
		t.Errorf("there is %v", is)
	}
}

// TestTurns: whoever leaves the line while it waits is in nobody's way, and each of those who stay has its turn, in order.
func TestTurns(t *testing.T) {
	var line turns
	inLine := func(want int) {
		for is := -1; is != want; time.Sleep(100 * time.Microsecond) {
			line.mu.Lock()
			is = len(line.queue)
			line.mu.Unlock()
		}
	}
	if err := line.take(t.Context()); err != nil {
		t.Fatal(err)
	}
	var order []int
	var all sync.WaitGroup
	stay := 0
	for i := range 9 {
		ctx, leave := context.WithCancel(t.Context())
		all.Go(func() {
			if line.take(ctx) == nil {
				order = append(order, i) // one at a time
				line.give()
			}
			leave()
		})
		inLine(stay + 1)
		if i%3 == 1 {
			leave()
			inLine(stay)
		} else {
			stay++
		}
	}
	line.give()
	all.Wait()
	if fmt.Sprint(order) != "[0 2 3 5 6 8]" || line.taken {
		t.Errorf("they came as %v; taken %v", order, line.taken)
	}
}
