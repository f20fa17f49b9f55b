package source

// What stands behind water.
var (
	HazenWilliams = Source{"hazen-williams", "G. S. Williams, A. Hazen, Hydraulic Tables, 1905; in SI, h = 10.67·L·Q^1.852/(C^1.852·d^4.8704), C = 150 for plastic (from memory)"}
	Joukowsky     = Source{"joukowsky-1900", "N. Joukowsky, Über den hydraulischen Stoss in Wasserleitungsröhren, 1900: Δp = ρ·c·Δv"}
	Harvey        = Source{"harvey-1993", "A. Harvey, Micro-Hydro Design Manual, 1993 (from memory)"}
	Thake         = Source{"thake-2000", "J. Thake, The Micro-Hydro Pelton Turbine Manual, 2000 (from memory)"}
)
