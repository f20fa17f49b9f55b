package source

// Sun, sky and weather.
var (
	Meeus           = Source{"meeus", "Jean Meeus, Astronomical Algorithms, 2nd edition, Willmann-Bell 1998"}
	MeeusFormulae   = Source{"meeus-formulae", "Jean Meeus, Astronomical Formulae for Calculators, 4th edition, Willmann-Bell 1988"}
	RedaAndreas     = Source{"reda-andreas", "I. Reda and A. Andreas, Solar position algorithm for solar radiation applications, Solar Energy 76 (2004) 577–589; NREL/TP-560-34302"}
	EspenakMeeus    = Source{"espenak-meeus", "F. Espenak and J. Meeus, Five Millennium Canon of Solar Eclipses, NASA/TP-2006-214141"}
	DuffieBeckman   = Source{"duffie-beckman", "J. A. Duffie and W. A. Beckman, Solar Engineering of Thermal Processes, 4th edition, Wiley 2013"}
	FAO56           = Source{"fao56", "R. G. Allen, L. S. Pereira, D. Raes and M. Smith, Crop evapotranspiration, FAO Irrigation and Drainage Paper 56, 1998"}
	Bendt           = Source{"bendt", "P. Bendt, M. Collares-Pereira and A. Rabl, The frequency distribution of daily insolation values, Solar Energy 27 (1981) 1–5"}
	HollandsHuget   = Source{"hollands-huget", "K. G. T. Hollands and R. G. Huget, A probability density function for the clearness index, with applications, Solar Energy 30 (1983) 195–209"}
	Graham          = Source{"graham", "V. A. Graham, K. G. T. Hollands and T. E. Unny, A time series model for K_t with application to global synthetic weather generation, Solar Energy 40 (1988) 83–92"}
	CollaresPereira = Source{"collares-pereira", "M. Collares-Pereira and A. Rabl, The average distribution of solar radiation, Solar Energy 22 (1979) 155–164"}
	LiuJordan       = Source{"liu-jordan", "B. Y. H. Liu and R. C. Jordan, The interrelationship and characteristic distribution of direct, diffuse and total solar radiation, Solar Energy 4 (1960) 1–19"}
	Erbs            = Source{"erbs", "D. G. Erbs, S. A. Klein and J. A. Duffie, Estimation of the diffuse radiation fraction for hourly, daily and monthly-average global radiation, Solar Energy 28 (1982) 293–302"}
	Haurwitz        = Source{"haurwitz", "B. Haurwitz, Insolation in relation to cloudiness and cloud density, Journal of Meteorology 2 (1945) 154–166"}
	HayDavies       = Source{"hay-davies", "J. E. Hay and J. A. Davies, Calculation of the solar radiation incident on an inclined surface, Proc. First Canadian Solar Radiation Data Workshop, 1980, 59–72"}
	SplitMix        = Source{"splitmix64", "G. L. Steele, D. Lea and C. H. Flood, Fast splittable pseudorandom number generators, OOPSLA 2014"}
	Wichura         = Source{"as241", "M. J. Wichura, Algorithm AS 241: the percentage points of the normal distribution, Applied Statistics 37 (1988) 477–484"}
)
