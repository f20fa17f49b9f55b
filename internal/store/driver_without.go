//go:build !cgo

package store

// Without cgo the driver can open nothing; the program itself stops the build with a sentence (cmd/duskweight).
func isNoDatabase(error) bool { return false }

// SQLite is not built in.
func SQLite() string { return "not built in" }

func refusedBy(error) error { return nil }

func isReadOnlyFile(error) bool { return false }

func keepLog(any) error { return nil }
