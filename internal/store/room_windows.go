package store

import (
	"math"
	"syscall"
	"unsafe"
)

var getDiskFreeSpaceEx = syscall.NewLazyDLL("kernel32.dll").NewProc("GetDiskFreeSpaceExW")

// FolderWritable has nothing to tell: only an attempt to write shows it on this system.
func FolderWritable(string) (known bool, err error) { return false, nil }

// RoomLeft returns how many bytes this user can still write to the disk of a folder, and whether that is known.
func RoomLeft(folder string) (bytes int64, known bool) {
	name, err := syscall.UTF16PtrFromString(folder)
	if err != nil {
		return 0, false
	}
	var free uint64
	ok, _, _ := getDiskFreeSpaceEx.Call(uintptr(unsafe.Pointer(name)), uintptr(unsafe.Pointer(&free)), 0, 0)
	return int64(min(free, math.MaxInt64)), ok != 0
}
