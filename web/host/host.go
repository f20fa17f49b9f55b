// Package host tells the names under which the program answers from all others. It stands alone, so that its fuzz target
// builds in a second.
package host

import (
	"strconv"
	"strings"
)

// hosts are the names under which the program answers, and no others. A page of a stranger can make its own name
// point to 127.0.0.1; the name it then sends is not one of these.
var hosts = [...]string{"localhost", "127.0.0.1", "[::1]"}

// Own reports whether a Host header is exactly one of our names, alone or with a port from 1 to 65535. The port
// itself is free, because a container or a tunnel may show another one. Nothing is looked up and nothing is guessed:
// no capitals, no final dot, no other spelling of the same address.
func Own(host string) bool {
	for _, name := range hosts {
		rest, ok := strings.CutPrefix(host, name)
		if !ok {
			continue
		}
		if rest == "" {
			return true
		}
		port, ok := strings.CutPrefix(rest, ":")
		return ok && ownPort(port)
	}
	return false
}

// ownPort reports whether text is a port in plain digits: no sign, no leading zero, not 0.
func ownPort(text string) bool {
	n, err := strconv.ParseUint(text, 10, 16)
	return err == nil && n > 0 && strconv.FormatUint(n, 10) == text
}
