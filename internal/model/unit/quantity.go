package unit

import (
	"math"
	"math/big"
	"strconv"
	"strings"
)

// System is which units a page speaks in.
type System int

// The two systems. In either, text may name any unit that the quantity knows.
const (
	Metric System = iota
	Imperial
)

// measure is one unit of a dimension: SI value = number·factor + offset, or factor/number where it is upside down.
type measure struct {
	symbol  string   // as shown
	word    string   // as read aloud, plural
	factor  *big.Rat // exact
	offset  *big.Rat // nil for none
	inverse bool
	then    string // symbol of the unit that a bare last number takes: 9 ft 2, 1 h 30
}

// dimension is what can be added and compared: a length, a mass.
type dimension struct {
	noun    string // "a length"
	units   []*measure
	exact   map[string]*measure // by spelling
	folded  map[string]*measure // by spelling in small letters, where that says only one thing
	compose bool                // 9 ft 2 in
	feet    bool                // an apostrophe is a unit
	whole   bool                // whole numbers only
	science bool                // 5e-5 may be written
	ask     map[string]string   // spellings that are asked back, with the question
	own     string              // spellings that mean the unit of the field, each between spaces
	signs   string              // letters for plus and minus: "NS", "EW"
	read    func(s string) (*big.Rat, bool, error)
	write   func(si float64) string
}

// Quantity is what a field holds: a dimension with the unit it is shown in under each system, its significant digits
// and its plausible range. Quantities are package-level values and never change.
type Quantity struct {
	dim    *dimension
	shown  [2]*measure
	digits int
	lo, hi float64  // plausible, SI; both 0 for none
	gauge  bool     // a wire: its size by number stands beside, for readers in inches
	tape   int      // told in feet and inches to readers in inches: the finest step from a foot up, in sixteenths of an inch; 0 for decimals
	whole  *measure // the unit in which a value from wholeFrom up is told without decimals; nil for none
}

// wholeFrom is the number from which some units are told without decimals: a scale in pounds shows no tenths there (common
// practice).
const wholeFrom = 10

// scaled returns q told in whole units of that symbol from wholeFrom up.
func (q Quantity) scaled(symbol string) Quantity {
	q.whole = q.dim.exact[spelling(symbol)]
	return q
}

// Fine returns q without the rules of whole units and of the tape: for the working behind a figure, which has all its digits.
func (q Quantity) Fine() Quantity { q.whole, q.tape = nil, 0; return q }

// digitsFor returns how many of so many digits the number v in the unit of sys is told with.
func (q Quantity) digitsFor(v float64, sys System, digits int) int {
	if q.whole != q.shown[sys&1] || q.whole == nil || !(math.Abs(v) >= wholeFrom) || digits <= 0 {
		return digits
	}
	return min(digits, 1+int(math.Floor(math.Log10(math.Abs(v)))))
}

// Symbol returns the unit that q is shown in under sys, for a label: "mm", "lb", "" for a plain number.
func (q Quantity) Symbol(sys System) string { return q.shown[sys&1].symbol }

// Word returns the unit's name for reading aloud: "millimetres".
func (q Quantity) Word(sys System) string { return q.shown[sys&1].word }

// Noun returns what q is, with its article: "a length".
func (q Quantity) Noun() string { return q.dim.noun }

// Whole reports whether q takes whole numbers only.
func (q Quantity) Whole() bool { return q.dim.whole }

// Units returns the symbols of all units that text may name.
func (q Quantity) Units() []string {
	out := make([]string, 0, len(q.dim.units))
	for _, m := range q.dim.units {
		if m.symbol != "" {
			out = append(out, m.symbol)
		}
	}
	return out
}

// Plausible reports whether a home-made store may well have this value. A value outside is asked about, not refused.
func (q Quantity) Plausible(si float64) bool {
	return q.lo == 0 && q.hi == 0 || si >= q.lo && si <= q.hi
}

// Parse reads what was typed into a field of q. A bare number is in q.Symbol(sys); any unit that q knows may be named
// in either system. known is false, with no error, for empty text, "?" and "not known". The value is the float64
// nearest to the exact decimal or fraction that was typed. An error is a Refusal: a plain sentence.
func (q Quantity) Parse(text string, sys System) (si float64, known bool, err error) {
	if len(text) > 4*longest {
		return 0, false, Refusal(sayLong)
	}
	s := tidy(text)
	if len(s) > longest {
		return 0, false, Refusal(sayLong)
	}
	if notKnown[strings.ToLower(strings.TrimRight(s, ". "))] {
		return 0, false, nil
	}
	exact, err := q.exactly(s, sys)
	if err != nil {
		return 0, false, err
	}
	v, _ := exact.Float64()
	switch {
	case math.IsInf(v, 0):
		return 0, false, Refusal(sayTooLarge)
	case v == 0 && exact.Sign() != 0:
		return 0, false, Refusal(sayTooSmall)
	}
	return v, true, nil
}

// exactly reads tidied text as an exact SI value.
func (q Quantity) exactly(s string, sys System) (*big.Rat, error) {
	if q.dim.read != nil {
		if v, done, err := q.dim.read(s); done || err != nil {
			return v, err
		}
	}
	s, turn := q.dim.turned(s)
	c := &scanner{s: s, science: q.dim.science, feet: q.dim.feet}
	a, err := c.number()
	if err != nil {
		return nil, err
	}
	bare := strings.TrimSpace(c.s[c.pos:]) == ""
	m, err := q.unit(c, sys)
	if err != nil {
		return nil, err
	}
	if bare && m.symbol == "%" && a.value.Sign() != 0 && new(big.Rat).Abs(a.value).Cmp(big.NewRat(1, 1)) <= 0 {
		return nil, shareOrPercent(a.value)
	}
	if q.dim.whole && !a.value.IsInt() {
		return nil, Refusal("Write a whole number.")
	}
	if turn && a.signed {
		return nil, Refusal("Write either a sign or a letter for the direction, not both.")
	}
	v, err := m.toSI(a.value)
	if err != nil {
		return nil, err
	}
	if v, err = q.more(c, v, a, m); err != nil {
		return nil, err
	}
	if turn {
		v.Neg(v)
	}
	return v, nil
}

// shareOrPercent asks back where a bare number of 1 or less stands for per cent: most people who write 0.85 for an
// efficiency mean 85 %, and read as 0.85 % it would be a silent misreading by a hundred.
func shareOrPercent(v *big.Rat) error {
	x, _ := v.Float64()
	plain := func(x float64) string { return strconv.FormatFloat(x, 'g', 6, 64) }
	return Refusal("Is that " + plain(x) + " % or " + plain(100*x) + " %? Write the % sign.")
}

// more reads the smaller parts of a compound: the 2 in of 9 ft 2 in. Parts must get smaller and stay below one of the
// part before.
func (q Quantity) more(c *scanner, sum *big.Rat, first amount, m *measure) (*big.Rat, error) {
	last := first
	for c.pos < len(c.s) {
		if !q.dim.compose || !last.whole {
			return nil, Refusal(sayOneNumber)
		}
		a, err := c.number()
		if err != nil || a.signed {
			return nil, Refusal(sayOneNumber)
		}
		next := m.follower(q.dim)
		if c.pos < len(c.s) {
			if next, err = q.unit(c, Metric); err != nil {
				return nil, err
			}
		}
		if next == nil || next.factor.Cmp(m.factor) >= 0 || next.inverse || m.offset != nil {
			return nil, Refusal(sayOneNumber)
		}
		part := new(big.Rat).Mul(a.value, next.factor)
		if part.Cmp(m.factor) >= 0 {
			return nil, Refusal("There is too much " + next.symbol + " for one " + m.symbol + ". Write it in one unit.")
		}
		if first.minus {
			part.Neg(part)
		}
		sum.Add(sum, part)
		m, last = next, a
	}
	return sum, nil
}

func (m *measure) follower(d *dimension) *measure {
	if m.then == "" {
		return nil
	}
	return d.exact[m.then]
}

// toSI converts exactly.
func (m *measure) toSI(v *big.Rat) (*big.Rat, error) {
	out := new(big.Rat)
	if m.inverse {
		if v.Sign() == 0 {
			return nil, Refusal("Zero " + m.symbol + " has no meaning here.")
		}
		return out.Quo(m.factor, v), nil
	}
	out.Mul(v, m.factor)
	if m.offset != nil {
		out.Add(out, m.offset)
	}
	return out, nil
}

// unit reads the unit that follows a number, the whole rest if that is one, else up to the next digit.
func (q Quantity) unit(c *scanner, sys System) (*measure, error) {
	for c.peek() == ' ' {
		c.pos++
	}
	rest := c.s[c.pos:]
	if rest == "" {
		return q.shown[sys&1], nil
	}
	low := strings.ToLower(spelling(rest))
	if say := q.dim.ask[low]; say != "" {
		return nil, Refusal(say)
	}
	if strings.Contains(q.dim.own, " "+low+" ") {
		c.pos = len(c.s)
		return q.shown[sys&1], nil
	}
	if m := q.dim.find(rest); m != nil {
		c.pos = len(c.s)
		return m, nil
	}
	if q.dim.compose {
		n := strings.IndexAny(rest, "0123456789")
		if n > 0 {
			if m := q.dim.find(rest[:n]); m != nil {
				c.pos += n
				return m, nil
			}
		}
		if n == 0 {
			return nil, Refusal(sayOneNumber)
		}
	}
	return nil, q.wrongUnit(rest)
}

// wrongUnit says why rest is not a unit of q.
func (q Quantity) wrongUnit(rest string) error {
	if i := strings.IndexAny(rest, "0123456789"); i == 0 || i == 1 && strings.ContainsAny(rest[:1], "-+:;=") {
		return Refusal(sayOneNumber)
	}
	if rest[0] == '_' || rest[0] == 'x' || rest[0] == 'X' || rest[0] == '*' || rest[0] == '×' {
		return Refusal(sayScience)
	}
	field := "this field is " + q.dim.noun
	if other := nounOf(rest); other != "" {
		return Refusal("\"" + rest + "\" is " + other + "; " + field + ".")
	}
	if len([]rune(rest)) > 20 {
		rest = string([]rune(rest)[:20]) + "…"
	}
	if len(q.Units()) == 0 {
		return Refusal("\"" + rest + "\" cannot be read here. Write the number only.")
	}
	return Refusal("\"" + rest + "\" is not a unit that this field knows; " + field + ". Use " + orList(q.Units()) + ".")
}

func orList(s []string) string {
	if len(s) == 1 {
		return s[0]
	}
	return strings.Join(s[:len(s)-1], ", ") + " or " + s[len(s)-1]
}

// find returns the unit of that spelling, or nil.
func (d *dimension) find(text string) *measure {
	key := spelling(text)
	if m := d.exact[key]; m != nil {
		return m
	}
	return d.folded[strings.ToLower(key)]
}

var unspell = strings.NewReplacer(" per ", "/", " ", "", "·", "", "⋅", "", "*", "", ".", "", "^", "", "²", "2", "³", "3",
	"µ", "u", "μ", "u", "\u2126", "Ω", "º", "°", "˚", "°", "\u2212", "-", "–", "-")

// spelling writes a unit's text in one way: no spaces or points, plain digits for powers.
func spelling(text string) string { return unspell.Replace(strings.TrimSpace(text)) }

// nounOf returns what the unit's text would be a unit of, or "". Quantities that read like a plain number do not count.
func nounOf(text string) string {
	for _, d := range dimensions {
		if d.exact[spelling(text)] != nil {
			return d.noun
		}
	}
	for _, d := range dimensions {
		if d.find(text) != nil {
			return d.noun
		}
	}
	return ""
}

// turned takes a letter for the direction off the text; turn is true when it stands for minus.
func (d *dimension) turned(s string) (rest string, turn bool) {
	if d.signs == "" || s == "" {
		return s, false
	}
	up := strings.ToUpper(s)
	if len(up) != len(s) {
		return s, false // letters that no compass has
	}
	for word, letter := range compass {
		if strings.HasSuffix(up, word) && strings.ContainsAny(d.signs, letter) {
			return strings.TrimSpace(s[:len(s)-len(word)]), letter == d.signs[1:]
		}
	}
	n := len(up)
	first, last := up[:1], up[n-1:]
	switch {
	case n > 1 && strings.Contains(d.signs, last) && !isLetter(up[n-2]):
		return strings.TrimSpace(s[:len(s)-1]), last == d.signs[1:]
	case n > 1 && strings.Contains(d.signs, first) && !isLetter(up[1]):
		return strings.TrimSpace(s[1:]), first == d.signs[1:]
	}
	return s, false
}

var compass = map[string]string{"NORTH": "N", "SOUTH": "S", "EAST": "E", "WEST": "W"}

func isLetter(b byte) bool { return b >= 'A' && b <= 'Z' }
