//go:build linux || darwin || freebsd

package store

import (
	"fmt"
	"math"
	"syscall"
)

// FolderWritable returns why nothing can be written into a folder that is there, nil where something can, and whether the
// system tells that without an attempt. Nothing is written.
func FolderWritable(folder string) (known bool, err error) {
	const write, enter = 2, 1 // W_OK and X_OK of access(2)
	if err := syscall.Access(folder, write|enter); err != nil {
		return true, fmt.Errorf("store: %s: %w", folder, err)
	}
	return true, nil
}

// RoomLeft returns how many bytes an ordinary user can still write to the disk of a folder, and whether that is known.
func RoomLeft(folder string) (bytes int64, known bool) {
	var disk syscall.Statfs_t
	if err := syscall.Statfs(folder, &disk); err != nil {
		return 0, false
	}
	return int64(min(float64(disk.Bavail)*float64(disk.Bsize), math.MaxInt64/2)), true
}
