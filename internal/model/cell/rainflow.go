package cell

import (
	"math"
	"slices"
)

// Cycle is one range of a history that was counted.
type Cycle struct {
	Range, Mean float64
	Count       float64 // 1, or ½ for a half cycle
}

// Rainflow counts the cycles of a history by the rules of ASTM E1049-85 section 5.4.4. Points that are no turning
// points are passed over. Empty for fewer than two different values.
func Rainflow(history []float64) []Cycle {
	var out []Cycle
	var stack []float64
	for _, p := range turningPoints(history) {
		stack = append(stack, p)
		for len(stack) >= 3 {
			n := len(stack)
			x := math.Abs(stack[n-1] - stack[n-2]) // the range under consideration
			y := math.Abs(stack[n-2] - stack[n-3]) // the one before it
			if x < y {
				break
			}
			mean := (stack[n-2] + stack[n-3]) / 2
			if n == 3 { // y contains the starting point: half a cycle, and the start moves on
				out = append(out, Cycle{y, mean, 0.5})
				stack = append(stack[:0], stack[1:]...)
				continue
			}
			out = append(out, Cycle{y, mean, 1})
			stack[n-3] = stack[n-1]
			stack = stack[:n-2]
		}
	}
	for i := 1; i < len(stack); i++ {
		out = append(out, Cycle{math.Abs(stack[i] - stack[i-1]), (stack[i] + stack[i-1]) / 2, 0.5})
	}
	return out
}

// RainflowRepeating counts a history that repeats without end: it is turned to begin and end at its highest peak
// (section 5.4.5), so that no range is counted by halves of different size.
func RainflowRepeating(history []float64) []Cycle {
	if len(history) == 0 {
		return nil
	}
	top := 0
	for i, v := range history {
		if v > history[top] {
			top = i
		}
	}
	return Rainflow(slices.Concat(history[top:], history[:top], history[top:top+1]))
}

// turningPoints keeps the first, the last and every peak and valley between.
func turningPoints(history []float64) []float64 {
	var out []float64
	for _, v := range history {
		n := len(out)
		switch {
		case n > 0 && v == out[n-1]:
		case n > 1 && (out[n-1]-out[n-2])*(v-out[n-1]) > 0:
			out[n-1] = v
		default:
			out = append(out, v)
		}
	}
	if len(out) < 2 {
		return nil
	}
	return out
}
