package source

// Panels, controllers and the current–voltage curve.
var (
	Faiman     = Source{"faiman", "D. Faiman, Assessing the outdoor operating temperature of photovoltaic modules, Progress in Photovoltaics 16 (2008) 307–315"}
	DeSoto     = Source{"de-soto", "W. De Soto, S. A. Klein and W. A. Beckman, Improvement and validation of a model for photovoltaic array performance, Solar Energy 80 (2006) 78–88"}
	Ross       = Source{"ross", "R. G. Ross, Flat-plate photovoltaic array design optimization, 14th IEEE Photovoltaic Specialists Conference, 1980, 1126–1132"}
	IEC61215   = Source{"iec-61215", "IEC 61215, Crystalline silicon terrestrial photovoltaic modules – Design qualification and type approval"}
	Kimber     = Source{"kimber", "A. Kimber et al., The effect of soiling on large photovoltaic systems, World Conference on Photovoltaic Energy Conversion, 2006 (secondary copy)"}
	Corless    = Source{"corless", "R. M. Corless, G. H. Gonnet, D. E. G. Hare, D. J. Jeffrey and D. E. Knuth, On the Lambert W function, Advances in Computational Mathematics 5 (1996) 329–359"}
	JainKapoor = Source{"jain-kapoor", "A. Jain and A. Kapoor, Exact analytical solutions of the parameters of real solar cells using Lambert W-function, Solar Energy Materials and Solar Cells 81 (2004) 269–277"}
)
