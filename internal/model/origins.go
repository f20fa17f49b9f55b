package model

import (
	"fmt"
	"strconv"
	"strings"
)

// Without returns the origins after row i of a list is gone: its own are dropped, and those behind it move up.
func (o Origins) Without(list string, i int) Origins {
	out := Origins{}
	for path, origin := range o {
		rest, inside := strings.CutPrefix(path, list+"[")
		index, after, _ := strings.Cut(rest, "]")
		j, err := strconv.Atoi(index)
		switch {
		case !inside || err != nil || j < i:
			out[path] = origin
		case j > i:
			out[fmt.Sprintf("%s[%d]%s", list, j-1, after)] = origin
		}
	}
	return out
}
