package unit

import (
	"math"
	"math/big"
	"strconv"
	"strings"
)

const sayClock = "Write a time of day like 18:30."

// readClock reads "18:30", "18:30:15", "18h30", "6:30 pm", "18" as seconds after midnight, up to 24:00.
func readClock(s string) (*big.Rat, bool, error) {
	low := strings.ToLower(strings.ReplaceAll(s, ".m.", "m"))
	half := ""
	for _, h := range []string{"am", "pm"} {
		if rest, ok := strings.CutSuffix(low, h); ok {
			low, half = strings.TrimSpace(rest), h
		}
	}
	switch low {
	case "noon", "midday":
		return big.NewRat(12*3600, 1), true, nil
	case "midnight":
		return new(big.Rat), true, nil
	}
	low = strings.TrimSpace(strings.TrimSuffix(strings.TrimSuffix(low, " uhr"), "h"))
	if strings.Count(low, "h") == 1 {
		low = strings.Replace(low, "h", ":", 1)
	}
	parts := strings.Split(low, ":")
	if len(parts) > 3 {
		return nil, true, Refusal(sayClock)
	}
	sum, err := clockSum(parts, half)
	return sum, true, err
}

func clockSum(parts []string, half string) (*big.Rat, error) {
	sum := new(big.Rat)
	for i, p := range parts {
		p = strings.TrimSpace(p)
		whole, dec, point := strings.Cut(p, ".")
		if point && i < 2 || !digitsOnly(whole) || len(whole) > 2 || i > 0 && len(whole) != 2 || point && !digitsOnly(dec) {
			return nil, Refusal(sayClock)
		}
		v, ok := new(big.Rat).SetString(p)
		if !ok || i > 0 && v.Cmp(big.NewRat(60, 1)) >= 0 {
			return nil, Refusal("Minutes and seconds go from 00 to 59. " + sayClock)
		}
		if i == 0 {
			if v, ok = hourOf(v, half); !ok {
				return nil, Refusal("Hours go from 0 to 24, and from 1 to 12 with am or pm. " + sayClock)
			}
		}
		sum.Add(sum, v.Mul(v, big.NewRat([]int64{3600, 60, 1}[i], 1)))
	}
	if sum.Cmp(big.NewRat(86400, 1)) > 0 {
		return nil, Refusal("The day ends at 24:00. " + sayClock)
	}
	return sum, nil
}

// hourOf turns the hours of a half day into those of the day.
func hourOf(v *big.Rat, half string) (*big.Rat, bool) {
	h := v.Num().Int64()
	if half == "" {
		return v, h <= 24
	}
	if h < 1 || h > 12 {
		return v, false
	}
	h %= 12
	if half == "pm" {
		h += 12
	}
	return big.NewRat(h, 1), true
}

func digitsOnly(s string) bool {
	return s != "" && strings.Trim(s, "0123456789") == ""
}

// writeClock writes seconds after midnight as "18:30", with seconds where there are some.
func writeClock(si float64) string {
	if si < 0 || si > 86400 {
		return Rounded(si, 17) + Space + "s"
	}
	m := math.Floor(si / 60)
	s := pad(int(m)/60) + ":" + pad(int(m)%60)
	rest := new(big.Rat).SetFloat64(si)
	rest.Sub(rest, new(big.Rat).SetInt64(int64(m)*60))
	if rest.Sign() == 0 {
		return s
	}
	for d := 0; ; d++ {
		sec := rest.FloatString(d)
		if len(sec) == 1 || sec[1] == '.' {
			sec = "0" + sec
		}
		if strings.HasPrefix(sec, "60") {
			continue
		}
		if v, _, err := readClock(s + ":" + sec); err == nil || d > 400 {
			if f, _ := ratOf(v).Float64(); f == si || d > 400 {
				return s + ":" + sec
			}
		}
	}
}

func ratOf(v *big.Rat) *big.Rat {
	if v == nil {
		return new(big.Rat)
	}
	return v
}

func pad(n int) string {
	if n < 10 {
		return "0" + strconv.Itoa(n)
	}
	return strconv.Itoa(n)
}

// readOffset reads "+5:30", "UTC+1", "GMT-3" as seconds ahead of UTC; a plain number of hours is left to the table.
func readOffset(s string) (*big.Rat, bool, error) {
	up := strings.ToUpper(s)
	for _, p := range []string{"UTC", "GMT", "Z"} {
		up = strings.TrimSpace(strings.TrimPrefix(up, p))
	}
	if up == "" {
		return new(big.Rat), true, nil
	}
	sign := int64(1)
	body := up
	if strings.HasPrefix(up, "-") || strings.HasPrefix(up, "+") {
		if up[0] == '-' {
			sign = -1
		}
		body = strings.TrimSpace(up[1:])
	}
	if h, m, ok := strings.Cut(body, ":"); ok {
		if !digitsOnly(h) || len(h) > 2 || !digitsOnly(m) || len(m) != 2 || m[0] > '5' {
			return nil, true, Refusal("Write a time zone like +5:30 or -3.")
		}
		hours, _ := strconv.ParseInt(h, 10, 64)
		minutes, _ := strconv.ParseInt(m, 10, 64)
		return big.NewRat(sign*(hours*3600+minutes*60), 1), true, nil
	}
	if up != strings.ToUpper(s) { // "UTC+1"
		if digitsOnly(body) && len(body) <= 2 {
			hours, _ := strconv.ParseInt(body, 10, 64)
			return big.NewRat(sign*hours*3600, 1), true, nil
		}
		return nil, true, Refusal("Write a time zone like +5:30 or -3.")
	}
	return nil, false, nil
}

// writeOffset writes whole minutes as "+5:30", anything else as hours.
func writeOffset(si float64) string {
	if math.Mod(si, 60) != 0 || math.Abs(si) >= 100*3600 {
		return Rounded(si/3600, 17) + Space + "h"
	}
	sign := "+"
	if si < 0 {
		sign, si = "-", -si
	}
	return sign + strconv.Itoa(int(si)/3600) + ":" + pad(int(si)%3600/60)
}

// readGear reads "27:1" and "1:27", which gearbox labels both use for the same thing.
func readGear(s string) (*big.Rat, bool, error) {
	a, b, ok := strings.Cut(strings.ReplaceAll(s, " ", ""), ":")
	if !ok {
		return nil, false, nil
	}
	if a == "1" {
		a, b = b, a
	}
	if b != "1" {
		return nil, true, Refusal("Write a gear ratio like 27 or 27:1.")
	}
	c := &scanner{s: a}
	v, err := c.number()
	if err != nil || c.pos != len(c.s) {
		return nil, true, Refusal("Write a gear ratio like 27 or 27:1.")
	}
	return v.value, true, nil
}
