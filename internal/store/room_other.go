//go:build !linux && !darwin && !freebsd && !windows

package store

// FolderWritable has nothing to tell: it is not asked for on this system.
func FolderWritable(string) (known bool, err error) { return false, nil }

// RoomLeft is not known on this system.
func RoomLeft(string) (bytes int64, known bool) { return 0, false }
