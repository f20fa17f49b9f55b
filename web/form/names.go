package form

import "strings"

// NamePage is the field with the random name that a page gets when it is made; saves of one field from one page within
// a minute are one step of the history.
const NamePage = "page"

func OrNotKnown(text string) string {
	if text == "" {
		return "not known"
	}
	return text
}

func short(text string) string {
	if runes := []rune(strings.ReplaceAll(text, "\n", " ")); len(runes) > 60 {
		return string(runes[:59]) + "…"
	}
	return text
}

var MonthNames = [12]string{"January", "February", "March", "April", "May", "June", "July", "August", "September", "October", "November", "December"}

// FileName makes a plain file name of any name.
func FileName(name string) string {
	var b strings.Builder
	for _, r := range strings.ToLower(name) {
		switch {
		case r >= 'a' && r <= 'z', r >= '0' && r <= '9':
			b.WriteRune(r)
		case b.Len() > 0 && !strings.HasSuffix(b.String(), "-"):
			b.WriteByte('-')
		}
		if b.Len() >= 60 {
			break
		}
	}
	if plain := strings.Trim(b.String(), "-"); plain != "" {
		return plain
	}
	return "project"
}

// Width is how many half letters a text takes.
func Width(s string) (n int) {
	for _, c := range s {
		n += halves(c)
	}
	return n
}

// Whole shortens a text to the sentences that fit in the room of n usual letters; the first is clipped where not even
// it fits.
func Whole(s string, n int) string {
	kept := ""
	for sentence := range strings.SplitAfterSeq(s, ". ") {
		if Width(strings.TrimSpace(kept+sentence)) > 2*n {
			break
		}
		kept += sentence
	}
	if kept == "" {
		return Clip(s, n)
	}
	return strings.TrimSpace(kept)
}

// Clip shortens a text to the room of n usual letters. Wide letters take more of it, so that a name of nothing but W
// takes no more lines than another.
func Clip(s string, n int) string {
	room := 2 * n
	r := []rune(strings.Join(strings.Fields(s), " "))
	last := 0 // letters that fit with the sign of what is missing behind them
	for i, c := range r {
		room -= halves(c)
		if room < 0 {
			return strings.TrimSpace(string(r[:last])) + "…"
		}
		if room >= 2 {
			last = i + 1
		}
	}
	return string(r)
}

// halves is the room that a letter takes, in halves of a usual one, rounded up.
func halves(c rune) int {
	switch {
	case c >= 0x1100: // the scripts of full width, and pictures
		return 4
	case strings.ContainsRune("WMmw@%", c), c >= 'A' && c <= 'Z':
		return 3
	}
	return 2
}
