package source

// The books behind the money.
var (
	EngineeringEconomy = Source{"engineering-economy", "L. Blank, A. Tarquin, Engineering Economy, compound interest factor tables"}
)
