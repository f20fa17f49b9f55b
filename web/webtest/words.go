package webtest

import (
	"regexp"
	"strings"
)

// what a page says, without its tags and with single spaces.
func Readable(body string) string {
	return strings.Join(strings.Fields(strings.ReplaceAll(Unescape(Tags.ReplaceAllString(body, " ")), "\u00a0", " ")), " ")
}

var OneWord = strings.Repeat("W", 200)

var Novel = strings.Repeat("A very long name without any end ", 6)

var Inlined = regexp.MustCompile(`(?i)\sstyle=|\son[a-z]+="|javascript:|NaN|[+-]Inf\b`)

func TextOf(body string) string {
	_, body, _ = strings.Cut(body, "<main")
	return strings.Join(strings.Fields(regexp.MustCompile(`<[^>]*>`).ReplaceAllString(body, " ")), " ")
}
