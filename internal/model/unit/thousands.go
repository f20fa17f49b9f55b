package unit

import (
	"strconv"
	"strings"
)

// Apart sets the thousands of a number in plain digits apart, from 1 000 on: "1 234.5". It is the one rule for everything that is
// read; a text that is no such number comes back as it is. Fields, files and addresses hold plain digits: see Typed.
func Apart(number string) string {
	whole, dec, has := strings.Cut(number, ".")
	sign := ""
	for _, mark := range []string{"-", Minus} {
		if rest, cut := strings.CutPrefix(whole, mark); cut {
			sign, whole = mark, rest
		}
	}
	if len(whole) < 4 || strings.Trim(whole, "0123456789") != "" {
		return number
	}
	for i := len(whole) - 3; i > 0; i -= 3 {
		whole = whole[:i] + Space + whole[i:]
	}
	if has {
		whole += "." + dec
	}
	return sign + whole
}

// Thousands writes a whole number for reading: "8 760".
func Thousands(n int) string { return Apart(strconv.Itoa(n)) }

// CalendarYear writes the number of a year: "2026". A year is a name, so nothing is set apart in it.
func CalendarYear(n int) string { return strconv.Itoa(n) }

// Typed writes a number that was printed for reading as it stands in a field or an attribute: without marks between thousands.
func Typed(printed string) string { return strings.ReplaceAll(printed, Space, "") }
