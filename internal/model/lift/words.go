package lift

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"duskweight/internal/model/unit"
)

// figure prints a number with three figures that count, plainly.
func figure(x float64) string {
	if x == 0 || !finite(x) {
		return "0"
	}
	if math.Abs(x) >= 10000 {
		return unit.Rounded(x, 3) // thousands set apart
	}
	places := 2 - int(math.Floor(math.Log10(math.Abs(x))))
	if places < -12 || places > 12 {
		return strconv.FormatFloat(x, 'g', 3, 64)
	}
	scale := math.Pow(10, float64(places))
	s := strconv.FormatFloat(math.Round(x*scale)/scale, 'f', max(places, 0), 64)
	if strings.Contains(s, ".") {
		s = strings.TrimRight(strings.TrimRight(s, "0"), ".")
	}
	return s
}

func amps(x float64) string    { return figure(x) + " A" }
func volts(x float64) string   { return figure(x) + " V" }
func watts(x float64) string   { return figure(x) + " W" }
func ohms(x float64) string    { return figure(x) + " Ω" }
func torque(x float64) string  { return figure(x) + " N·m" }
func kilos(x float64) string   { return figure(x) + " kg" }
func rpm(x float64) string     { return figure(x*60/(2*math.Pi)) + " turns a minute" }
func celsius(x float64) string { return fmt.Sprintf("%.0f °C", x) }

// seconds prints a duration as people say it.
func seconds(s float64) string {
	switch {
	case s < 10:
		return figure(s) + " s"
	case s < 120:
		return fmt.Sprintf("%.0f s", s)
	case s < 7200:
		return figure(s/60) + " minutes"
	}
	return figure(s/3600) + " hours"
}
