package source

// What stands behind the load.
var (
	SmallInverter  = Source{"small-inverters", "typical values of small inverters: .80 at 5 % of full load, .90 at 30 %; from memory, ± 30 %"}
	PetrolSets     = Source{"petrol-sets", "data sheets of petrol generators of 2 kW: .40 to .45 l/h at a quarter of full load, 1.0 to 1.15 l/h at full load; from memory"}
	SkarsteinUhlen = Source{"skarstein-uhlen", "Ø. Skarstein, K. Uhlen, Design considerations with respect to long-term diesel saving in wind/diesel plants, Wind Engineering 13 (1989) 72 (from memory)"}
	IdlingCar      = Source{"idling-car", "a car that stands with its engine on: .8 l/h, from memory"}
)
