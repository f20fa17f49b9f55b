package store

import (
	"errors"
	"io/fs"
	"os"
	"syscall"
	"unsafe"
)

var errLocked = errors.New("locked by another process")

var lockFileEx = syscall.NewLazyDLL("kernel32.dll").NewProc("LockFileEx")

// tryLock takes the lock, or returns errLocked at once. The locked byte lies far behind the text, so that others can
// still read who holds it (LockFileEx locks against reading too).
func tryLock(f *os.File) error {
	const exclusive, atOnce = 2, 1
	const lockViolation = syscall.Errno(33)
	at := syscall.Overlapped{OffsetHigh: 1}
	ok, _, err := lockFileEx.Call(f.Fd(), exclusive|atOnce, 0, 1, 0, uintptr(unsafe.Pointer(&at)))
	switch {
	case ok != 0:
		return nil
	case errors.Is(err, lockViolation):
		return errLocked
	}
	return err
}

// identity says nothing: this system lets nobody put another file in the place of an open one.
func identity(fs.FileInfo) string { return "" }

func isReadOnlyDisk(err error) bool {
	const writeProtect = syscall.Errno(19)
	return errors.Is(err, writeProtect)
}

// syncFolder has nothing to do: this system keeps the names in a folder itself.
func syncFolder(string) error { return nil }
