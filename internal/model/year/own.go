package year

// A store with a source of its own: the hours in which that source brings something belong to it alone, the others to
// the line.

// given is what the source brings in hour h: watts at the source and own watts, which are never more. Both are 0 where
// nothing comes of it.
func (s *store) given(h int) (power, rate float64) {
	if s.own == nil || h >= len(s.own.Power) || h >= len(s.own.Fill) || h < len(s.noFill) && s.noFill[h] {
		return 0, 0
	}
	power = tame(s.own.Power[h])
	if rate = min(tame(s.own.Fill[h]), power); rate <= 0 {
		return 0, 0
	}
	return power, rate
}

// overOwn is over for a store with a source of its own.
func (s *store) overOwn(net []float64, first int, tr trace) {
	for i := range net {
		one := trace{}
		if tr.flow != nil {
			one = trace{flow: tr.flow[i : i+1], state: tr.state[i : i+1]}
		}
		power, rate := s.given(first + i)
		if rate <= 0 {
			s.over(net[i:i+1], first+i, one)
			continue
		}
		s.fillOwn(power, rate, first+i, one)
	}
}

// fillOwn is one hour in which the source brings power and the state rises at rate: t = min(H, (top − x)/rate), top the
// capacity or the day's cap. What the source would have brought in the rest of the hour is sun not used.
func (s *store) fillOwn(power, rate float64, h int, tr trace) {
	var t sums
	x := s.begin(&t, s.x, h)
	top := s.X
	if s.cap > 0 && x+s.left < top {
		top = x + s.left
	}
	end, time := x+rate*hour, hour
	if end >= top {
		end, time = max(x, top), max(0, (top-x)/rate)
	}
	t.up, t.taken, t.idle = end-x, power*time, power*(hour-time)
	s.left -= end - x
	if end >= s.X {
		t.full += hour - time
	}
	s.x = end
	s.sum.add(t)
	tr.hour(0, power*time*(1/hour), end)
}

// given returns what the sources of all stores' own bring in hour h, W.
func given(stores []store, h int) float64 {
	sum := 0.0
	for k := range stores {
		power, _ := stores[k].given(h)
		sum += power
	}
	return sum
}

// hasOwn reports whether any store has a source of its own.
func hasOwn(stores []store) bool {
	for k := range stores {
		if stores[k].own != nil {
			return true
		}
	}
	return false
}
