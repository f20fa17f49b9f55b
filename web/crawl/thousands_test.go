package crawl_test

import (
	"regexp"
	"strings"
	"testing"
)

var (
	fourDigits = regexp.MustCompile(`[1-9]\d{3,}`)
	// isYear is a number that is read as a year where no unit stands behind it.
	isYear = regexp.MustCompile(`^(1[89]|20)\d\d$`)
	// unitBehind is a unit behind a number; a year has none.
	unitBehind = regexp.MustCompile(`^ (mm|m|ft|in|kg|lb|t|N|kN|lbf|W|Wh|kW|kWh|V|A|Ah|Ω|h|s|l|m³|m²|ft²|rpm|MPa|psi|kWh/m²|cycles|hours|lifts|pieces|kg/m³|lb/ft³|K|°C|°F)\b`)
	// named is a number that is a name: of a standard, a document, a patent, a revision, a seed, or a
	// part's own label: the motor of the example is called by its plate, “24 V, 3000 rpm”.
	named = regexp.MustCompile(`(IEC|ISO|EN|VDI|DIN|ASTM|IEEE|CI|ASME|Std|No\.?|Tolerance Class|RFC|NACA|rev|revision|plan|table|Table|section|article|JAMA|pp?\.|line|port|seed|part|sheet|grade|24 V,) ?$`)
)

// unapart are the figures of a text whose thousands stand together: four digits or more in a row that are no year and no name.
func unapart(text string) (found []string) {
	for _, at := range fourDigits.FindAllStringIndex(text, -1) {
		number, before, behind := text[at[0]:at[1]], text[:at[0]], text[at[1]:]
		last, next := "", ""
		if before != "" {
			r := []rune(before)
			last = string(r[len(r)-1:])
		}
		if behind != "" {
			next = string([]rune(behind)[:1])
		}
		switch {
		case last != "" && (strings.ContainsAny(last, "._/#?=&:,-–−") || isWord(last) || last >= "0" && last <= "9"): // a decimal, a path, a date, a code
			if last != "−" {
				continue
			}
		case next != "" && (isWord(next) || strings.ContainsAny(next, "–·")): // pages of a book; a sum in a source
			continue
		case named.MatchString(before):
			continue
		case isYear.MatchString(number) && !unitBehind.MatchString(behind):
			continue
		}
		found = append(found, number)
	}
	return found
}

func isWord(s string) bool { return strings.ToLower(s) != strings.ToUpper(s) || s == "_" }

// thousandsApart looks at the figures of all texts: from 1 000 up their thousands stand apart.
func thousandsApart(t *testing.T, all []saidAt) {
	t.Helper()
	told := map[string]bool{}
	for _, one := range all {
		if one.Kind == "code" || one.Kind == "pre" || one.Kind == "csv" || strings.Contains(one.Text, "://") || strings.Contains(one.Page, "/help/sources") {
			continue
		}
		for _, figure := range unapart(one.Text) {
			if !told[one.Text] {
				told[one.Text] = true
				t.Errorf("%s %s, %s: %s in “%s”: thousands stand apart", one.Doc, one.Page, one.Kind, figure, one.Text)
			}
		}
	}
}

// The rule above finds figures, and leaves years and names alone.
func TestThousandsFinds(t *testing.T) {
	for text, want := range map[string]string{
		"It weighs 1234 kg.": "1234", "1234 kg": "1234", "In 2000 h it is full": "2000", "12345.6 Wh": "12345", "−1200 m": "1200", "about 3000 years": "3000",
		"It weighs 1 234 kg.": "", "10 000 cycles": "", "in 2026": "", "IEC 62548": "", "0.12345": "", "2026-11-29": "", "/projects/1234": "", "plan 12345678": "", "a1234": "", "1234x": "",
	} {
		if got := strings.Join(unapart(text), " "); got != want {
			t.Errorf("%q: found %q, want %q", text, got, want)
		}
	}
}
