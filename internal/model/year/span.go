package year

// longest finds the most hours on end in which more than a trace of what was wanted is missing, over the turn of the
// year too.
func longest(missing, wantedWatts []float64) Span {
	n := len(missing)
	out := func(h int) bool { return missing[h%n] > served*wantedWatts[h%n]*hour && missing[h%n] > 0 }
	best := Span{}
	for h := 0; h < n; {
		if !out(h) {
			h++
			continue
		}
		end := h
		for end < h+n && out(end) {
			end++
		}
		if end-h > best.Hours {
			best = Span{From: h, Hours: end - h}
		}
		h = end
	}
	for h := best.From; h < best.From+best.Hours; h++ {
		best.Unmet += joules(missing[h%n])
	}
	return best
}

// worst finds the width hours on end that miss most, over the turn of the year too.
func worst(unmet []float64, width int) Span {
	n := len(unmet)
	width = min(width, n)
	sum, best, from := 0.0, 0.0, 0
	for h := range width {
		sum += unmet[h]
	}
	best = sum
	for h := 1; h < n; h++ {
		sum += unmet[(h+width-1)%n] - unmet[h-1]
		if sum > best*(1+1e-12) {
			best, from = sum, h
		}
	}
	if best <= 0 {
		return Span{}
	}
	exact := 0.0
	for h := from; h < from+width; h++ {
		exact += unmet[h%n]
	}
	return Span{From: from, Hours: width, Unmet: joules(exact)}
}
