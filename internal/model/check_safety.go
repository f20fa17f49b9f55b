package model

import (
	"fmt"
	"strings"

	"duskweight/internal/model/lift"
	"duskweight/internal/model/reason"
	"duskweight/internal/model/unit"
)

// checkSafety returns what no hoist may be, and load tests that cannot have been: they are refused.
func checkSafety(h lift.Hoist) Problems {
	var ps Problems
	if h.Site.CarriesPeople == unit.Yes {
		ps.Add("site.carries_people", "this program plans no hoist for people: nobody may ride on it")
	}
	for i, p := range h.Trials.Proofs {
		at := func(field string) string { return fmt.Sprintf("trials.proofs[%d].%s", i, field) }
		if strings.TrimSpace(p.Witness) == "" {
			ps.Add(at("witness"), "a load test needs a second adult who saw it: write the name")
		}
		if _, ok := reason.DayOf(p.Date); !ok && p.Date != "" {
			ps.Add(at("date"), "must be a day such as 2026-11-28")
		}
		if p.Load.Is && p.Torque.Is {
			ps.Add(at("torque_nm"), "give a force or a torque, not both: "+at("load_n")+" is given, too")
		}
	}
	for i, x := range h.Holds.Holds {
		if x.Trips == unit.No && x.TripsAt.Is {
			ps.Add(fmt.Sprintf("holds.holds[%d].trips_at_m_s", i), fmt.Sprintf("it has a speed at which it sets, and holds.holds[%d].trips says that it does not set by speed", i))
		}
	}
	return ps
}
