package load

// The words of closed lists. The empty word means that the question is open.

// Supply is how an appliance gets its power.
type Supply string

// The words of Supply.
const (
	SupplyDc       Supply = "dc"
	SupplyInverter Supply = "inverter"
)

// Priority is how much an appliance matters.
type Priority string

// The words of Priority.
const (
	PriorityEssential Priority = "essential"
	PriorityNice      Priority = "nice"
)

// Purpose is what an appliance is for.
type Purpose string

// The words of Purpose.
const (
	ForLight    Purpose = "light"
	ForRadio    Purpose = "radio"
	ForPhone    Purpose = "phone"
	ForComputer Purpose = "computer"
	ForRouter   Purpose = "router"
	ForFan      Purpose = "fan"
	ForCooling  Purpose = "cooling"
	ForPump     Purpose = "pump"
	ForMedical  Purpose = "medical"
	ForAlarm    Purpose = "alarm"
	ForAnimals  Purpose = "animals"
	ForOther    Purpose = "other"
)

// NightOf is what a night is: from sunset to sunrise, or between hours of its own.
type NightOf string

// The words of NightOf.
const (
	NightSun NightOf = "sun"
	NightOwn NightOf = "own"
)
