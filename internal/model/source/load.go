package source

// What stands behind the load.
var (
	SmallInverter = Source{"small-inverters", "typical values of small inverters: .80 at 5 % of full load, .90 at 30 %; from memory, ± 30 %"}
)
