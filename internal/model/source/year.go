package source

// The books behind the year run.
var (
	EgidoLorenzo = Source{"egido-lorenzo", "M. Egido, E. Lorenzo, The sizing of stand alone PV-systems: a review and a proposed new method, Solar Energy Materials and Solar Cells 26, 1992"}
)
