package store

import (
	"context"
	"encoding/json"
	"errors"
	"fmt"
	"os"
	"time"
)

// Busy says who has the file: an ErrBusy. The address is empty where the other program did not get so far in time.
type Busy struct {
	PID     int    `json:"pid"`
	Address string `json:"address"`
}

// Error says who has the file, and where its page is.
func (b *Busy) Error() string {
	if b.Address == "" {
		return ErrBusy.Error()
	}
	return ErrBusy.Error() + ": " + b.Address
}

// Is makes a *Busy an ErrBusy.
func (b *Busy) Is(target error) bool { return target == ErrBusy }

// lock is a file beside the database, locked by the operating system for as long as the process lives. The file itself
// stays: only the lock on it means anything, so one that a dead process left behind is never in the way.
type lock struct{ file *os.File }

// How long a second start waits for the first to say its address.
const (
	lockWait = 3 * time.Second
	lockLook = 20 * time.Millisecond
)

// takeLock takes the lock of a database file, or returns a *Busy.
func takeLock(ctx context.Context, path string) (*lock, error) {
	f, err := os.OpenFile(path+".lock", os.O_RDWR|os.O_CREATE, 0o600)
	if err != nil {
		return nil, fmt.Errorf("store: %w", err)
	}
	var last Busy
	for end := time.After(lockWait); ; {
		if err := tryLock(f); err == nil {
			l := &lock{f}
			return l, l.write(nil)
		} else if !errors.Is(err, errLocked) {
			return nil, errors.Join(fmt.Errorf("store: the lock: %w", err), f.Close())
		}
		seen := readBusy(path + ".lock")
		if seen.Address != "" && seen == last { // twice: the first look may have met a dead one's words
			return nil, errors.Join(&seen, f.Close())
		}
		last = seen
		select {
		case <-time.After(lockLook):
		case <-end:
			return nil, errors.Join(&seen, f.Close())
		case <-ctx.Done():
			return nil, errors.Join(ctx.Err(), f.Close())
		}
	}
}

// readBusy reads who holds the lock; the zero Busy where that is not written yet.
func readBusy(path string) Busy {
	var b Busy
	data, err := os.ReadFile(path)
	if err != nil || json.Unmarshal(data, &b) != nil {
		return Busy{}
	}
	return b
}

func (l *lock) announce(address string) error {
	data, err := json.Marshal(Busy{os.Getpid(), address})
	if err != nil {
		return fmt.Errorf("store: %w", err)
	}
	return l.write(append(data, '\n'))
}

func (l *lock) write(data []byte) error {
	if err := l.file.Truncate(0); err != nil {
		return fmt.Errorf("store: the lock: %w", err)
	}
	if _, err := l.file.WriteAt(data, 0); err != nil {
		return fmt.Errorf("store: the lock: %w", err)
	}
	return nil
}

// release lets the next program have the file. No lock, nil, has nothing to let go.
func (l *lock) release() error {
	if l == nil {
		return nil
	}
	return errors.Join(l.write(nil), l.file.Close())
}
