package page

import (
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"

	"duskweight/internal/model/unit"
)

// MoneyText writes an amount with the label of the currency: to the hundredth below a thousand, whole above.
func MoneyText(m unit.Money, currency string) string {
	v := RoundTo(float64(m), 12)
	text := unit.Fixed(v, 2)
	if v >= 1000 || v <= -1000 {
		text = unit.Whole(v)
	}
	if v >= 1e9 || v <= -1e9 {
		text = unit.Rounded(v, 4)
	}
	text = strings.TrimSuffix(text, ".00")
	return strings.TrimSpace(text + "\u00a0" + currency)
}

// MoneyAbout writes what is counted over years to come, with the label of the currency: with three digits, for it rests on lives,
// on interest and on prices that change (our own judgement).
func MoneyAbout(m unit.Money, currency string) string {
	return strings.TrimSpace(unit.Rounded(float64(m), 3) + unit.Space + currency)
}

func ForceBoth(f unit.Known[unit.Force], sys unit.System) string {
	n, ok := f.Value()
	if !ok {
		return "not known"
	}
	first, beside := loadText(unit.Amount{Val: float64(n), In: unit.Newtons, Is: true}, sys, unit.Nearest)
	if beside != "" {
		beside = " (" + beside + ")"
	}
	return first + beside
}

// lengthText gives a length in the unit that its size suits.
func lengthText(l unit.Length, sys unit.System) string { return LengthUnit(l).Format(float64(l), sys) }

// LengthUnit is the quantity that a length is told as: in millimetres under a metre.
func LengthUnit(l unit.Length) unit.Quantity {
	if l < 1 && l > -1 {
		return unit.SmallLengths
	}
	return unit.Lengths
}

// tapedUnit is LengthUnit of a length that a tape is held to.
func tapedUnit(l unit.Length) unit.Quantity {
	if l < 1 && l > -1 {
		return unit.Widths
	}
	return unit.Heights
}

// leastShare is the smallest share that is told in figures: a year of nights is no better known (our own judgement).
const leastShare = 1e-4

// Share writes a share in per cent for reading; one that is smaller than a hundredth of a per cent is only said to be.
func Share(share float64, sys unit.System) string {
	if share > 0 && share < leastShare {
		return "less than " + unit.Percents.Format(leastShare, sys)
	}
	return unit.Percents.Format(share, sys)
}

// Known prints a value that may be not known.
func Known[T unit.Number](k unit.Known[T], q unit.Quantity, sys unit.System) string {
	if v, ok := k.Value(); ok {
		return q.Format(float64(v), sys)
	}
	return "not known"
}

// Span is a value that is only known to lie between two, for reading: "7.3 to 8.1 A"; one number where both read the same.
func Span(q unit.Quantity, a, b float64, sys unit.System) string {
	low, high := q.NumberTo(min(a, b), sys, spanDigits, unit.Down), q.FormatTo(max(a, b), sys, spanDigits, unit.Up)
	if q.Format(a, sys) == q.Format(b, sys) {
		return q.Format(a, sys)
	}
	return low + " to " + high
}

// Extent tells the least and the greatest of some values, which are known: "20 to 65°".
func Extent[T ~float64](q unit.Quantity, all []T, sys unit.System) string {
	return q.Number(float64(slices.Min(all)), sys) + " to " + q.Format(float64(slices.Max(all)), sys)
}

// spanDigits is how many digits the ends of a range are told with, rounded to the outside.
const spanDigits = 2

// Itoa writes a whole number into an id.
func Itoa(i int) string { return strconv.Itoa(i) }

func OrUnnamed(name string) string {
	if name == "" {
		return "without a name"
	}
	return name
}

func MoneyOr(k unit.Known[unit.Money], currency string) string {
	if v, ok := k.Value(); ok {
		return MoneyText(v, currency)
	}
	return "not known"
}

// MoneyRange is a sum of prices with what it lies between: "710 EUR (560 to 900)"; where it has no width, the sum alone.
func MoneyRange(low, k, high unit.Known[unit.Money], currency string) string {
	return moneyBetween(low, k, high, currency, MoneyText)
}

// MoneyAboutRange is MoneyRange of what is counted over years to come.
func MoneyAboutRange(low, k, high unit.Known[unit.Money], currency string) string {
	return moneyBetween(low, k, high, currency, MoneyAbout)
}

func moneyBetween(low, k, high unit.Known[unit.Money], currency string, text func(unit.Money, string) string) string {
	if !k.Is {
		return "not known"
	}
	from, to := text(low.Val, ""), text(high.Val, "")
	if !low.Is || !high.Is || from == to {
		return text(k.Val, currency)
	}
	return text(k.Val, currency) + " (" + from + " to " + to + ")"
}

// Clock writes an hour of the day, 0 … 24, as a clock does.
func Clock(hours float64) string {
	m := int(math.Round(hours * 60))
	return fmt.Sprintf("%02d:%02d", m/60%24, m%60)
}

func Sum(v []float64) float64 {
	s := 0.0
	for _, x := range v {
		s += x
	}
	return s
}

// Counted writes a number with its noun.
func Counted(n int, noun string) string {
	if n == 1 {
		return "1 " + noun
	}
	return unit.Thousands(n) + " " + noun + "s"
}

func OrElse(s, otherwise string) string {
	if s == "" {
		return otherwise
	}
	return s
}

func OrNone[T unit.Number](k unit.Known[T]) float64 {
	if !k.Is {
		return math.NaN()
	}
	return float64(k.Val)
}

// Bytes writes a size for reading.
func Bytes(n int64) string {
	switch {
	case n < 1<<10:
		return strconv.FormatInt(n, 10) + " bytes"
	case n < 1<<20:
		return strconv.FormatInt((n+1<<9)>>10, 10) + " KiB"
	default:
		return unit.Fixed(float64(n)/(1<<20), 1) + " MiB"
	}
}
