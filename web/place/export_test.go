package place

// What the tests from outside ask for.
const (
	WeatherKept  = weatherKept
	WeatherWaits = weatherWaits
)

var (
	WithWeather = withWeather
)
