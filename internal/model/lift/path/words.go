package path

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"duskweight/internal/model/unit"
)

// sig prints x with three significant digits and no exponent.
func sig(x float64) string {
	if x == 0 || !finite(x) {
		return "0"
	}
	p := 2 - int(math.Floor(math.Log10(math.Abs(x))))
	if p >= 0 {
		s := strconv.FormatFloat(x, 'f', min(p, 12), 64)
		if strings.Contains(s, ".") {
			s = strings.TrimRight(strings.TrimRight(s, "0"), ".")
		}
		return s
	}
	q := math.Pow(10, float64(-p))
	return strconv.FormatFloat(math.Round(x/q)*q, 'f', 0, 64)
}

// amount prints a value of a check in the unit a maker reads: forces as the weight of a mass, stresses in MPa, lengths
// in mm, angles in degrees.
func amount(x float64, u string) string {
	switch u {
	case "N":
		return sig(x/unit.G) + " kg"
	case "Pa":
		if math.Abs(x) < 1e5 {
			return sig(x/1e3) + " kPa"
		}
		return sig(x/1e6) + " MPa"
	case "m":
		if math.Abs(x) >= 1 {
			return sig(x) + " m"
		}
		return sig(x*1000) + " mm"
	case "rad":
		return sig(x*180/math.Pi) + "°"
	case "1", "":
		return sig(x)
	}
	return sig(x) + " " + u
}

// verbs of a line: what it does and what it may do.
type verbs struct{ does, may string }

var (
	pulls    = verbs{"It pulls", "may pull"}
	carries  = verbs{"It carries", "may carry"}
	bends    = verbs{"It is stressed to", "may be stressed to"}
	turns    = verbs{"It takes", "may take"}
	measures = verbs{"It needs", "there is"}
)

// of turns stress into words that fit the unit: a length sags, a force or a torque is borne.
func (v verbs) of(u string) verbs {
	switch {
	case v == bends && u == "m":
		return verbs{"It sags", "may sag"}
	case (v == bends || v == carries) && u == "N":
		return carries
	case v == bends && u == "N·m":
		return turns
	case v == carries && u == "Pa":
		return bends
	}
	return v
}

// say writes the one plain sentence of a check that has been decided, with what would mend it.
func say(c *Check, v verbs, mend string) {
	if m := mendOf(c.Case); m != "" && c.Word == GivesWay {
		mend = m + " " + mend
	}
	switch c.Word {
	case NotKnown:
		c.Say = notKnownSay(c.Missing, mend)
	case GivesWay:
		c.Say = overSay(c, v) + " " + mend
	case Tight:
		c.Say = heldSay(c, v) + " It holds, but with little to spare."
	case Holds:
		c.Say = heldSay(c, v)
	}
	c.Say = strings.TrimSpace(c.Say)
}

func overSay(c *Check, v verbs) string {
	v = v.of(c.Unit)
	d, k, w := float64(c.Demand.Val), float64(c.Capacity.Val), float64(c.Wanted)
	if k <= 0 {
		return fmt.Sprintf("%s %s (%s), and nothing is there to bear it.", v.does, amount(d, c.Unit), c.Case)
	}
	return fmt.Sprintf("%s %s (%s), %s %s: %s × too much.", v.does, amount(d, c.Unit), c.Case, v.may,
		amount(k/w, c.Unit), sig(float64(c.Use.Val)))
}

func heldSay(c *Check, v verbs) string {
	if !c.Demand.Is {
		return ""
	}
	v = v.of(c.Unit)
	return fmt.Sprintf("%s %s (%s), %s %s.", v.does, amount(float64(c.Demand.Val), c.Unit), c.Case, v.may,
		amount(float64(c.Capacity.Val)/max(float64(c.Wanted), 1e-9), c.Unit))
}

// notKnownSay says that a check is open. What would mend a part that gives way is not yet asked for.
func notKnownSay(missing []string, mend string) string {
	mend = shouldItGiveWay(mend)
	switch len(missing) {
	case 0:
		return "Not known. " + mend
	case 1:
		return "Not known: one input is missing. " + mend
	}
	return fmt.Sprintf("Not known: %d inputs are missing. %s", len(missing), mend)
}

// shouldItGiveWay puts the first change of a part that mend names under a condition.
func shouldItGiveWay(mend string) string {
	first := -1
	for _, change := range []string{"Take ", "Put ", "Set ", "Splice ", "Make ", "Use ", "Leave "} {
		at := strings.Index(mend, ". "+change) + 2
		if strings.HasPrefix(mend, change) {
			at = 0
		}
		if at != 1 && (first < 0 || at < first) {
			first = at
		}
	}
	if first < 0 {
		return mend
	}
	return mend[:first] + "If it gives way: " + strings.ToLower(mend[first:first+1]) + mend[first+1:]
}
