package path

import (
	"duskweight/internal/model/lift"
)

// beamCompliance is 1/k of the beam at the pulley, m/N; 0 (rigid) where it is not known.
func beamCompliance(b lift.Beam) float64 { return 0 }
