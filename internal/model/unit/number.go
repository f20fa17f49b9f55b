package unit

import (
	"math/big"
	"strings"
	"unicode"
)

// Refusal is why typed text was not taken, as one or two plain sentences for the person who typed it.
type Refusal string

func (r Refusal) Error() string { return string(r) }

// longest is the most characters a field takes: room for any float64 written out in full, and no novel.
const longest = 400

const (
	sayLong      = "This is too long. Write one number."
	sayNoNumber  = "This is not a number. Write it in digits, for example 2.8."
	sayOneNumber = "Write one number. This looks like two."
	sayScience   = "Write the number out in ordinary digits, for example 0.00005 or 20 000."
	sayTooLarge  = "This number is too large."
	sayTooSmall  = "This number is too close to zero."
	sayFraction  = "This fraction cannot be read. Write it like 1 1/2 or 1.5."
)

// notKnown are the words that mean that the value is not known.
var notKnown = map[string]bool{
	"": true, "?": true, "??": true, "???": true, "not known": true, "unknown": true, "not known yet": true,
	"i do not know": true, "i don't know": true, "do not know": true, "don't know": true, "no idea": true,
}

// vulgar are the fractions that stand in one character.
var vulgar = map[rune]string{
	'½': "1/2", '⅓': "1/3", '⅔': "2/3", '¼': "1/4", '¾': "3/4", '⅕': "1/5", '⅖': "2/5", '⅗': "3/5", '⅘': "4/5",
	'⅙': "1/6", '⅚': "5/6", '⅛': "1/8", '⅜': "3/8", '⅝': "5/8", '⅞': "7/8",
}

// tidy writes all kinds of spaces, minus signs, primes, digits and one-character fractions in one way.
func tidy(text string) string {
	var b strings.Builder
	for _, r := range strings.TrimSpace(text) {
		switch {
		case vulgar[r] != "":
			b.WriteString(" " + vulgar[r])
		case unicode.IsSpace(r), r == '\u2007', r == '\u202f', r == '\u2060', r == '\ufeff':
			b.WriteByte(' ')
		case strings.ContainsRune("−–—‐‑‒﹣－", r):
			b.WriteByte('-')
		case strings.ContainsRune("’‘′ʹ`´", r):
			b.WriteByte('\'')
		case strings.ContainsRune("″“”ʺ", r):
			b.WriteByte('"')
		case r == '⁄', r == '∕':
			b.WriteByte('/')
		case r == '٫':
			b.WriteByte(',')
		case r > '9' && unicode.Is(unicode.Nd, r):
			b.WriteByte('0' + digitValue(r))
		default:
			b.WriteRune(r)
		}
	}
	s := strings.ReplaceAll(b.String(), "''", `"`)
	return strings.Join(strings.Fields(s), " ")
}

// digitValue is the value of a decimal digit of any script: digits stand in runs of ten from zero.
func digitValue(r rune) byte {
	n := byte(0)
	for n < 9 && unicode.Is(unicode.Nd, r-1) {
		r--
		n++
	}
	return n
}

// amount is one number as it was read.
type amount struct {
	value  *big.Rat
	minus  bool // a sign stood before it; value is already negative
	signed bool
	whole  bool
	digits int // digits before the point
}

// scanner walks over tidied text.
type scanner struct {
	s       string
	pos     int
	science bool // 5e-5 may be written
	feet    bool // an apostrophe may mean a unit
}

func (c *scanner) peek() byte { return c.at(c.pos) }

func (c *scanner) at(i int) byte {
	if i < len(c.s) {
		return c.s[i]
	}
	return 0
}

func isDigit(b byte) bool { return b >= '0' && b <= '9' }

// run counts the digits from i on.
func (c *scanner) run(i int) int {
	n := 0
	for isDigit(c.at(i + n)) {
		n++
	}
	return n
}

// number reads one number: sign, digits grouped by spaces or apostrophes, a point or a comma, or a fraction.
func (c *scanner) number() (amount, error) {
	var a amount
	if b := c.peek(); b == '-' || b == '+' {
		a.minus, a.signed = b == '-', true
		c.pos++
		for c.peek() == ' ' {
			c.pos++
		}
	}
	if !isDigit(c.peek()) && !((c.peek() == '.' || c.peek() == ',') && isDigit(c.at(c.pos+1))) {
		return a, Refusal(sayNoNumber)
	}
	whole := c.grouped()
	a.digits = len(whole)
	dec, err := c.decimals(whole)
	if err != nil {
		return a, err
	}
	a.value, a.whole = new(big.Rat), dec == ""
	if _, ok := a.value.SetString("0" + whole + "." + dec + "0"); !ok {
		return a, Refusal(sayNoNumber)
	}
	if a.whole {
		if err := c.fraction(&a); err != nil {
			return a, err
		}
	}
	if err := c.exponent(&a); err != nil {
		return a, err
	}
	if a.minus {
		a.value.Neg(a.value)
	}
	return a, nil
}

// grouped reads the digits before the point; thousands may be set apart by a space or an apostrophe.
func (c *scanner) grouped() string {
	n := c.run(c.pos)
	out := c.s[c.pos : c.pos+n]
	c.pos += n
	if n == 0 || n > 3 {
		return out
	}
	for {
		b := c.peek()
		inches := c.feet && strings.Contains(c.s, `"`)
		if b != ' ' && (b != '\'' || inches) || c.run(c.pos+1) != 3 || c.at(c.pos+4) == '/' {
			return out
		}
		out += c.s[c.pos+1 : c.pos+4]
		c.pos += 4
	}
}

// decimals reads what follows a point or comma, and asks back where it could as well set thousands apart.
func (c *scanner) decimals(whole string) (string, error) {
	sep := c.peek()
	if sep != '.' && sep != ',' {
		return "", nil
	}
	n := c.run(c.pos + 1)
	dec := c.s[c.pos+1 : c.pos+1+n]
	if next := c.at(c.pos + 1 + n); (next == '.' || next == ',') && isDigit(c.at(c.pos+2+n)) {
		return "", Refusal(mixed(whole + c.s[c.pos:]))
	}
	if n == 3 && len(whole) <= 3 && whole != "" && whole[0] != '0' && (sep == ',' || dec[2] == '0') {
		plain := strings.TrimRight(strings.TrimRight(whole+"."+dec, "0"), ".")
		return "", Refusal("Do you mean " + plain + " or " + whole + dec + "? Write it that way, without \"" + string(sep) + "\" between thousands.")
	}
	c.pos += 1 + n
	return dec, nil
}

// mixed is the question for a number with more than one point or comma in it.
func mixed(s string) string {
	end := 0
	for end < len(s) && (isDigit(s[end]) || s[end] == '.' || s[end] == ',') {
		end++
	}
	s = strings.TrimRight(s[:end], ".,")
	last := strings.LastIndexAny(s, ".,")
	point := strings.NewReplacer(".", "", ",", "")
	plain := point.Replace(s)
	if strings.Count(s, s[last:last+1]) == 1 {
		plain = point.Replace(s[:last]) + "." + s[last+1:]
	}
	return "Do you mean " + plain + "? Write it that way, with no point or comma between thousands."
}

// fraction reads "/8" after a numerator, or " 1/2" and "-1/2" after a whole number.
func (c *scanner) fraction(a *amount) error {
	if c.peek() == '/' && isDigit(c.at(c.pos+1)) {
		bottom, err := c.denominator()
		if err != nil {
			return err
		}
		a.value.Quo(a.value, bottom)
		a.whole = false
		return nil
	}
	if b := c.peek(); b != ' ' && b != '-' {
		return nil
	}
	n := c.run(c.pos + 1)
	if n == 0 || n > 4 || c.at(c.pos+1+n) != '/' || !isDigit(c.at(c.pos+2+n)) {
		return nil
	}
	top, _ := new(big.Rat).SetString(c.s[c.pos+1 : c.pos+1+n])
	c.pos += 1 + n
	bottom, err := c.denominator()
	if err != nil {
		return err
	}
	if top.Cmp(bottom) >= 0 {
		return Refusal(sayFraction)
	}
	a.value.Add(a.value, top.Quo(top, bottom))
	a.whole = false
	return nil
}

func (c *scanner) denominator() (*big.Rat, error) {
	n := c.run(c.pos + 1)
	if n > 4 {
		return nil, Refusal(sayFraction)
	}
	bottom, ok := new(big.Rat).SetString(c.s[c.pos+1 : c.pos+1+n])
	if !ok || bottom.Sign() == 0 || c.at(c.pos+1+n) == '/' {
		return nil, Refusal(sayFraction)
	}
	c.pos += 1 + n
	return bottom, nil
}

// exponent reads e-5, ×10^-5 is not understood. Most fields refuse it: nobody writes a drum that way but by mistake.
func (c *scanner) exponent(a *amount) error {
	if b := c.peek(); b != 'e' && b != 'E' {
		return nil
	}
	i := c.pos + 1
	if b := c.at(i); b == '-' || b == '+' {
		i++
	}
	n := c.run(i)
	if n == 0 {
		return nil
	}
	if !c.science {
		return Refusal(sayScience)
	}
	if n > 2 {
		if c.at(c.pos+1) == '-' {
			return Refusal(sayTooSmall)
		}
		return Refusal(sayTooLarge)
	}
	ten, _ := new(big.Rat).SetString("1" + c.s[c.pos:i+n])
	a.value.Mul(a.value, ten)
	a.whole = a.value.IsInt()
	c.pos = i + n
	return nil
}
