//go:build !cgo

package main

// SQLite is written in C. Without a C compiler the build would go through and the program would fail at its first start;
// this line stops the build instead, and its text says what to do.
var _ int = "Duskweight needs a C compiler: install gcc (Debian: apt-get install gcc libc6-dev), set CGO_ENABLED=1 and build again"
