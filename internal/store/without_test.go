//go:build !cgo

package store

const withSQLite = false
