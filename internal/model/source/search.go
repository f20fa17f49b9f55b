package source

// Statistics of many years.
var (
	HyndmanFan = Source{"hyndman-fan", "R. J. Hyndman, Y. Fan, Sample Quantiles in Statistical Packages, The American Statistician 50 (1996) 361–365"}
	Hanley     = Source{"hanley-lippman-hand", "J. A. Hanley, A. Lippman-Hand, If Nothing Goes Wrong, Is Everything All Right? Interpreting Zero Numerators, JAMA 249 (1983) 1743–1745"}
)
