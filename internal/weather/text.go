package weather

import (
	"bytes"
	"encoding/binary"
	"errors"
	"io"
	"math"
	"strconv"
	"strings"
	"unicode/utf16"
	"unicode/utf8"
)

// Limits of a line: weather files have some ten to eighty columns, and headings of a few hundred letters (our own
// judgement).
const (
	longestLine = 64 << 10 // bytes
	mostColumns = 200
	mostWords   = 500 // between blanks: a heading may be prose
)

// width counts the bytes of a line and what may part its columns, as a file comes in.
type width struct {
	bytes, signs, words int
	word                bool // inside one
}

// take counts on and refuses a line that is too long, or has too many columns.
func (l *width) take(b []byte) error {
	for _, c := range b {
		switch c {
		case '\n', '\r':
			*l = width{}
			continue
		case ',', ';', '\t', '|':
			l.signs++
		}
		if word := c != ' '; word != l.word {
			l.word = word
			l.words++ // two for each
		}
		if l.bytes++; l.bytes > longestLine {
			return refuse("A line of this file is longer than %s KB. A weather file has one short line for each hour.", longestLine>>10)
		}
		if l.signs > mostColumns || l.words > 2*mostWords {
			return refuse("A line of this file has more than %s columns. Keep time, light and temperature, and leave out the others.", mostColumns)
		}
	}
	return nil
}

// slurp reads the file, refuses what is no text or has endless lines before the rest of it is read, and returns it as UTF-8.
func slurp(r io.Reader) (string, error) {
	var all []byte
	var line width
	buf := make([]byte, 64<<10)
	for {
		n, err := r.Read(buf)
		first := len(all) == 0
		all = append(all, buf[:n]...)
		if first && len(all) > 0 {
			if err := otherKind(all); err != nil {
				return "", err
			}
		}
		if err := line.take(buf[:n]); err != nil {
			return "", err
		}
		if len(all) > Largest {
			return "", refuse("This file is larger than %s MB. A year of hours has about 2 MB: is this the right file?", Largest>>20)
		}
		if errors.Is(err, io.EOF) {
			return decode(all)
		}
		if err != nil {
			return "", err
		}
	}
}

// otherKind refuses files that are told by their first bytes.
func otherKind(b []byte) error {
	raw := string(b[:min(len(b), 200)])
	head := strings.ToLower(raw)
	switch {
	case begins(raw, "PK\x03\x04", "PK\x05\x06"):
		return refuse("This is a zip archive or a spreadsheet, whatever its name says. Unpack it, or save the sheet as CSV, and choose the file inside.")
	case begins(raw, "\x1f\x8b", "BZh", "7z\xbc\xaf", "Rar!", "\xfd7zXZ", "\x28\xb5\x2f\xfd"):
		return refuse("This file is packed. Unpack it and choose the file inside.")
	case begins(raw, "%PDF"):
		return refuse("This is a PDF document, not a weather file.")
	case strings.Contains(head, "<!doctype"), strings.Contains(head, "<html"), strings.HasPrefix(strings.TrimSpace(head), "<?xml"):
		return refuse("This is a web page, not a weather file. The download may have asked for something first.")
	case begins(raw, "\xd0\xcf\x11\xe0"):
		return refuse("This is an old spreadsheet or document. Save the sheet as CSV and choose that.")
	case begins(raw, "SQLite format", "\x89HDF", "CDF\x01", "CDF\x02"):
		return refuse("This is a database or an array file, not a weather file in text.")
	}
	return nil
}

func begins(s string, with ...string) bool {
	for _, w := range with {
		if strings.HasPrefix(s, w) {
			return true
		}
	}
	return false
}

// decode takes off a byte order mark and turns UTF-16 into UTF-8. Bytes that are no UTF-8 are taken as letters of ISO
// 8859-1: they only stand in names and units.
func decode(b []byte) (string, error) {
	switch {
	case bytes.HasPrefix(b, []byte{0xef, 0xbb, 0xbf}):
		b = b[3:]
	case bytes.HasPrefix(b, []byte{0xff, 0xfe}):
		return wide(b[2:], binary.LittleEndian), nil
	case bytes.HasPrefix(b, []byte{0xfe, 0xff}):
		return wide(b[2:], binary.BigEndian), nil
	}
	if bytes.IndexByte(b, 0) >= 0 {
		return "", refuse("This is not a text file.")
	}
	if len(bytes.TrimSpace(b)) == 0 {
		return "", refuse("This file is empty.")
	}
	if utf8.Valid(b) {
		return string(b), nil
	}
	letters := make([]rune, len(b))
	for i, c := range b {
		letters[i] = rune(c)
	}
	return string(letters), nil
}

func wide(b []byte, order binary.ByteOrder) string {
	u := make([]uint16, 0, len(b)/2)
	for ; len(b) >= 2; b = b[2:] {
		u = append(u, order.Uint16(b))
	}
	return strings.ReplaceAll(string(utf16.Decode(u)), "\x00", "\ufffd")
}

// lines parts a text at any of the three line ends, without the empty lines at its end.
func lines(text string) []string {
	text = strings.ReplaceAll(text, "\r\n", "\n")
	if !strings.Contains(text, "\n") {
		text = strings.ReplaceAll(text, "\r", "\n")
	}
	all := strings.Split(text, "\n")
	for len(all) > 0 && strings.TrimSpace(all[len(all)-1]) == "" {
		all = all[:len(all)-1]
	}
	return all
}

// fields parts a line at the delimiter. A field in quotes may hold the delimiter; two quotes in it are one. Any run of
// blanks is one delimiter. There is always at least one field, which is empty in an empty line.
func fields(line string, delimiter byte) []string {
	if delimiter == ' ' {
		if out := strings.Fields(line); len(out) > 0 {
			return out
		}
		return []string{""}
	}
	if strings.IndexByte(line, '"') < 0 {
		out := strings.Split(line, string(delimiter))
		for i := range out {
			out[i] = strings.TrimSpace(out[i])
		}
		return out
	}
	var out []string
	var f strings.Builder
	quoted := false
	for i := 0; i < len(line); i++ {
		switch c := line[i]; {
		case c == '"' && quoted && i+1 < len(line) && line[i+1] == '"':
			f.WriteByte('"')
			i++
		case c == '"':
			quoted = !quoted
		case c == delimiter && !quoted:
			out = append(out, strings.TrimSpace(f.String()))
			f.Reset()
		default:
			f.WriteByte(c)
		}
	}
	return append(out, strings.TrimSpace(f.String()))
}

// delimiterOf tells the delimiter by the last lines: the one that parts most of them into the same number of fields,
// two or more. A semicolon, a tab or a bar goes before a comma, which may be a decimal comma; blanks come last.
func delimiterOf(all []string) byte {
	tail := all[max(0, len(all)-40):]
	for _, d := range []byte{';', '\t', '|', ',', ' '} {
		count := map[int]int{}
		for _, l := range tail {
			if n := len(fields(l, d)); n >= 2 {
				if count[n]++; 2*count[n] > len(tail) {
					return d
				}
			}
		}
	}
	return ','
}

// number reads a plain decimal number; comma says that the decimal sign may be a comma.
func number(s string, comma bool) (float64, bool) {
	s = strings.TrimSpace(strings.ReplaceAll(s, "\u2212", "-"))
	if comma {
		if strings.Count(s, ",") > 1 {
			return 0, false
		}
		s = strings.Replace(s, ",", ".", 1)
	}
	if s == "" || strings.Trim(s, "0123456789+-.eE") != "" {
		return 0, false
	}
	v, err := strconv.ParseFloat(s, 64)
	return v, err == nil && !math.IsInf(v, 0)
}
