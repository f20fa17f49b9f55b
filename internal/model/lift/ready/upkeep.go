package ready

import (
	"duskweight/internal/model/lift"
	"duskweight/internal/model/reason"
)

// lookMonths is how long a look at the whole load path stands (our own judgement; ASME B30.16 has hoists in severe service
// inspected every three months, from memory).
const lookMonths = 3

// NextLook is the day on which rope, knots, pulleys, pins with drum and brake, container and base are to be looked at again:
// three months after the latest dated record that found all of them sound or renewed. Not known without such a record.
func NextLook(t lift.Trials) reason.Day {
	var last reason.Day
	for _, f := range t.Seen() {
		if day, ok := reason.DayOf(f.Date); ok && f.Look.Whole() && !last.After(day) {
			last = day
		}
	}
	return last.Months(lookMonths)
}
