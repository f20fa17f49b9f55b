//go:build cgo

package store

const withSQLite = true
