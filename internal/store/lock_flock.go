//go:build unix

package store

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"syscall"
)

var errLocked = errors.New("locked by another process")

// tryLock takes the lock, or returns errLocked at once.
func tryLock(f *os.File) error {
	err := syscall.Flock(int(f.Fd()), syscall.LOCK_EX|syscall.LOCK_NB)
	if errors.Is(err, syscall.EWOULDBLOCK) {
		return errLocked
	}
	return err
}

// identity is how the system tells a file from all others, as os.SameFile does, for a later process to compare.
func identity(info fs.FileInfo) string {
	is, ok := info.Sys().(*syscall.Stat_t)
	if !ok {
		return ""
	}
	return fmt.Sprintf("%d:%d", is.Dev, is.Ino)
}

func isReadOnlyDisk(err error) bool { return errors.Is(err, syscall.EROFS) }

// syncFolder puts the names in a folder on the disk.
func syncFolder(path string) error {
	f, err := os.Open(path)
	if err != nil {
		return err
	}
	return errors.Join(f.Sync(), f.Close())
}
