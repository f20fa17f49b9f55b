package model

import (
	"fmt"

	"duskweight/internal/model/reason"
)

// CheckOn returns what Check does and, with them, the days of load tests that lie after a day. A day that is not known
// refuses none.
func CheckOn(doc Document, on reason.Day) Problems {
	ps := Check(doc)
	for i, v := range doc.Variants {
		for k, s := range v.Stores {
			if s.Hoist == nil {
				continue
			}
			for n, p := range s.Hoist.Trials.Proofs {
				if day, ok := reason.DayOf(p.Date); ok && day.After(on) {
					ps.Add(fmt.Sprintf("variants[%d].%s.trials.proofs[%d].date", i, HoistPath(k), n), "is a day that has not come yet")
				}
			}
		}
	}
	return ps
}
