package weather

import "strings"

// radiationUnits in W/m², or in Wh/m² of one step. A calorie is 4.184 J, a British thermal unit 1055.06 J and a foot
// 0.3048 m, all by their definitions (ISO 80000-5; the British unit from memory).
var radiationUnits = map[string]float64{
	"W/m2": 1, "kW/m2": 1000, "Wh/m2": 1, "kWh/m2": 1000, "J/m2": 1 / 3600.0, "kJ/m2": 1 / 3.6, "MJ/m2": 1000 / 3.6, "J/cm2": 10 / 3.6,
	"cal/cm2": 4.184e4 / 3600, "Btu/ft2": 1055.06 / (0.3048 * 0.3048) / 3600,
}

// unitOrder are the units of light in the order in which they are offered.
var unitOrder = []string{"W/m2", "kW/m2", "Wh/m2", "kWh/m2", "J/m2", "kJ/m2", "MJ/m2", "J/cm2", "cal/cm2", "Btu/ft2"}

// RadiationUnits are the units of light that are known, each as a Mapping names it and as it is printed.
func RadiationUnits() (units [][2]string) {
	for _, u := range unitOrder {
		units = append(units, [2]string{u, shownUnit(u)})
	}
	return units
}

// unitSigns are units as they stand in names, without spaces and marks, the longer before those they end with.
var unitSigns = [][2]string{
	{"kwh/m2", "kWh/m2"}, {"wh/m2", "Wh/m2"}, {"kw/m2", "kW/m2"}, {"w/m2", "W/m2"}, {"mj/m2", "MJ/m2"}, {"kj/m2", "kJ/m2"}, {"j/m2", "J/m2"}, {"j/cm2", "J/cm2"},
	{"cal/cm2", "cal/cm2"}, {"langley", "cal/cm2"}, {"btu/ft2", "Btu/ft2"},
}

// unitIn is the unit of light in the name of a column, "" for none: "GHI (W/m²)", "ghi_wh_m2", "ssrd [J m**-2]".
func unitIn(name string) string {
	n := strings.NewReplacer("²", "2", "^", "", " ", "", "*", "", "_", "", ".", "", "·", "", "watts", "w", "watt", "w", "sqm", "m2", "per", "/").Replace(strings.ToLower(name))
	n = strings.NewReplacer("\u2212", "-", "⁻", "-").Replace(n)
	n = strings.NewReplacer("m-2", "/m2", "cm-2", "/cm2").Replace(n)
	n = strings.NewReplacer("//", "/", "c/m2", "/cm2").Replace(n)
	for _, u := range unitSigns {
		if strings.Contains(n, u[0]) {
			return u[1]
		}
	}
	for _, u := range unitSigns { // ghi_wm2
		if bare := strings.Replace(u[0], "/", "", 1); bare != u[0] && strings.HasSuffix(strings.TrimRight(n, ")]"), bare) {
			return u[1]
		}
	}
	return ""
}

// degreesIn is the unit of temperature in the name of a column, "" for none.
func degreesIn(name string) string {
	n := strings.NewReplacer(" ", "", "º", "°").Replace(strings.ToLower(name))
	end := strings.TrimRight(n, ")]")
	switch {
	case strings.Contains(n, "°f"), strings.Contains(n, "(f)"), strings.Contains(n, "[f]"), strings.Contains(n, "degf"), strings.Contains(n, "fahrenheit"), strings.HasSuffix(end, "_f"), strings.HasSuffix(end, ",f"):
		return "F"
	case strings.Contains(n, "(k)"), strings.Contains(n, "[k]"), strings.Contains(n, "kelvin"), strings.Contains(n, "degk"), strings.HasSuffix(end, "_k"):
		return "K"
	case strings.Contains(n, "°c"), strings.Contains(n, "(c)"), strings.Contains(n, "[c]"), strings.Contains(n, "degc"), strings.Contains(n, "celsius"), strings.HasSuffix(end, "_c"):
		return "C"
	}
	return ""
}
