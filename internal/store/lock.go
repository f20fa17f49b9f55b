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
type lock struct {
	file  *os.File
	words lockWords
}

// pair says which log belongs to which data file: the identities of both, as the system tells them apart. It stays in the
// file of the lock when a program is cut off, for the next start to compare. The zero pair says nothing.
type pair struct {
	File string `json:"file,omitempty"`
	Log  string `json:"log,omitempty"`
}

// lockWords is what stands in the file of the lock.
type lockWords struct {
	Busy
	pair
}

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
			l := &lock{f, lockWords{pair: readLock(path).pair}}
			return l, l.write()
		} else if !errors.Is(err, errLocked) {
			return nil, errors.Join(fmt.Errorf("store: the lock: %w", err), f.Close())
		}
		seen := readLock(path).Busy
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

// readLock reads what stands in the lock of a database file; nothing where that is not written yet.
func readLock(path string) (words lockWords) {
	f, err := os.Open(path + ".lock")
	if err != nil {
		return words
	}
	defer f.Close()
	if json.NewDecoder(f).Decode(&words) != nil { // behind it may be the end of a longer one
		return lockWords{}
	}
	return words
}

func (l *lock) announce(address string) error {
	l.words.Busy = Busy{os.Getpid(), address}
	return l.write()
}

// hold writes down which file and log belong together, down to the disk: a start after a cut of the power reads it. That
// there is no log any more needs no such haste.
func (l *lock) hold(held pair) error {
	if l == nil || l.words.pair == held {
		return nil
	}
	l.words.pair = held
	if err := l.write(); err != nil || held == (pair{}) {
		return err
	}
	if err := l.file.Sync(); err != nil {
		return fmt.Errorf("store: the lock: %w", err)
	}
	return nil
}

// write puts the words in the place of the old ones, in one call: a program that is cut off there leaves the old or the new.
func (l *lock) write() error {
	data, err := json.Marshal(l.words)
	if err != nil {
		return fmt.Errorf("store: the lock: %w", err)
	}
	if _, err := l.file.WriteAt(data, 0); err != nil {
		return fmt.Errorf("store: the lock: %w", err)
	}
	if err := l.file.Truncate(int64(len(data))); err != nil {
		return fmt.Errorf("store: the lock: %w", err)
	}
	return nil
}

// release lets the next program have the file. No lock, nil, has nothing to let go.
func (l *lock) release() error {
	if l == nil {
		return nil
	}
	l.words.Busy = Busy{}
	return errors.Join(l.write(), l.file.Close())
}
