package model

import (
	"fmt"
	"math"

	"duskweight/internal/model/lift"
	"duskweight/internal/model/unit"
	"duskweight/internal/say"
)

// checkStage returns why the teeth of a planetary stage cannot be put together, or contradict its ratio. Paths are
// inside the stage. Conditions: Z_r = Z_s + 2 Z_p; (Z_s + Z_r)/planets whole; (Z_s + Z_p)·sin(π/planets) > Z_p + 2
// (neighbouring planets clear each other; VDI 2157 terms).
func checkStage(s lift.Stage) Problems {
	var ps Problems
	sun, planet, ring := s.SunTeeth, s.PlanetTeeth, s.RingTeeth
	if s.Kind != lift.StagePlanetary {
		return nil
	}
	if sun.Is && planet.Is && ring.Is && ring.Val != sun.Val+2*planet.Val {
		ps.Add("ring_teeth", fmt.Sprintf("these teeth do not fit together: the ring must have sun + 2 × planet = %d teeth", sun.Val+2*planet.Val))
	}
	if !ring.Is && sun.Is && planet.Is {
		ring = unit.Of(sun.Val + 2*planet.Val) // the only ring that fits
	}
	if n := s.Planets; n.Is && n.Val > 0 && sun.Is && ring.Is && (sun.Val+ring.Val)%n.Val != 0 {
		ps.Add("planets", fmt.Sprintf("%d planets cannot be spaced evenly: sun + ring = %d teeth is not a multiple of %d", n.Val, sun.Val+ring.Val, n.Val))
	}
	if n := s.Planets; n.Is && n.Val > 1 && sun.Is && planet.Is &&
		float64(sun.Val+planet.Val)*math.Sin(math.Pi/float64(n.Val)) <= float64(planet.Val)+2 {
		ps.Add("planets", fmt.Sprintf("%d planets of %d teeth touch each other round a sun of %d teeth", n.Val, planet.Val, sun.Val))
	}
	if sun.Is && ring.Is && s.Ratio.Is {
		if r := 1 + float64(ring.Val)/float64(sun.Val); math.Abs(float64(s.Ratio.Val)-r) > 0.005*r {
			ps.Tell("ratio", say.That("the teeth make %s:1, the ratio given is %s:1: correct one, or leave the ratio empty", say.Times(unit.Ratio(r)).To(4), say.Times(unit.Ratio(s.Ratio.Val)).To(4)))
		}
	}
	return ps
}
