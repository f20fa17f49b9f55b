package unit

import (
	"math/big"
	"strings"
)

// row is one unit of the table: symbol, name for reading aloud, exact factor to SI (numbers and "pi" joined by * and
// /), and its other spellings parted by "|". A spelling after "=" is taken in exactly that case: mW is not MW.
type row struct{ symbol, word, factor, also string }

// Conversion factors are exact by definition: inch, foot, mile, pound (international yard and pound agreement, 1959), g
// (3rd CGPM, 1901), degree Fahrenheit, calendar year of 365.25 days (IAU), degree and revolution by geometry.
var (
	lengths = build(dimension{noun: "a length", compose: true, feet: true}, "",
		row{"mm", "millimetres", "0.001", "millimetre|millimeter|millimetres|millimeters|mms"},
		row{"cm", "centimetres", "0.01", "centimetre|centimeter|centimetres|centimeters|cms"},
		row{"m", "metres", "1", "metre|meter|metres|meters|mtr|mtrs"},
		row{"km", "kilometres", "1000", "kilometre|kilometer|kilometres|kilometers"},
		row{"in", "inches", "0.0254", "\"|inch|inches|ins"},
		row{"ft", "feet", "0.3048", "'|foot|feet"},
		row{"mi", "miles", "1609.344", "mile|miles"},
		row{"yd", "yards", "0.9144", "yard|yards|yds"},
		row{"thou", "thousandths of an inch", "0.0000254", "mil|mils"},
		row{"µm", "micrometres", "0.000001", "um|micron|microns"})

	masses = build(dimension{noun: "a mass", compose: true, ask: map[string]string{"ton": sayTon, "tons": sayTon}}, "",
		row{"kg", "kilograms", "1", "kilo|kilos|kilogram|kilograms|kilogramme|kilogrammes|kgs"},
		row{"g", "grams", "0.001", "gram|grams|gramme|grammes|gr"},
		row{"t", "tonnes", "1000", "tonne|tonnes|metric ton|metric tons"},
		row{"lb", "pounds", "0.45359237", "lbs|pound|pounds|lbm|#"},
		row{"oz", "ounces", "0.45359237/16", "ounce|ounces"},
		row{"short ton", "short tons", "2000*0.45359237", "short tons|US ton|US tons"},
		row{"long ton", "long tons", "2240*0.45359237", "long tons|imperial ton|imperial tons"},
		row{"st", "stone", "14*0.45359237", "stone|stones"},
		row{"cwt", "long hundredweight", "112*0.45359237", "hundredweight"})

	// A force may be given as the mass whose weight it is: makers weigh.
	forces = build(dimension{noun: "a force"}, "",
		row{"N", "newtons", "1", "newton|newtons"},
		row{"kN", "kilonewtons", "1000", "kilonewton|kilonewtons"},
		row{"daN", "decanewtons", "10", "decanewton|decanewtons"},
		row{"kg", "kilograms", "9.80665", "kgf|kp|kilo|kilos|kilogram|kilograms|kgs|kilopond|kilograms force"},
		row{"t", "tonnes", "9806.65", "tf|tonne|tonnes"},
		row{"lb", "pounds", "0.45359237*9.80665", "lbs|pound|pounds|#"},
		row{"lbf", "pounds force", "0.45359237*9.80665", "pound force|pounds force"})

	torques = build(dimension{noun: "a torque"}, "",
		row{"N·m", "newton metres", "1", "Nm|N-m|newton metre|newton metres|newton meter|newton meters"},
		row{"N·cm", "newton centimetres", "0.01", "Ncm|N-cm"},
		row{"N·mm", "newton millimetres", "0.001", "Nmm|N-mm"},
		row{"mN·m", "millinewton metres", "0.001", "=mNm"},
		row{"kN·m", "kilonewton metres", "1000", "kNm"},
		row{"kg·cm", "kilogram-force centimetres", "0.0980665", "kgcm|kg-cm|kgf cm|kgfcm|kgf-cm"},
		row{"kg·m", "kilogram-force metres", "9.80665", "kgm|kg-m|kgf m|kgfm"},
		row{"g·cm", "gram-force centimetres", "0.0000980665", "gcm|g-cm|gf cm"},
		row{"lbf·ft", "pound-force feet", "0.45359237*9.80665*0.3048", "lbfft|lb-ft|lbft|ft-lb|ftlb|ft lbf|ft-lbf|foot pounds|foot-pounds|foot pound|lbs ft"},
		row{"lbf·in", "pound-force inches", "0.45359237*9.80665*0.0254", "lbfin|lb-in|lbin|in-lb|inlb|in lbf|in-lbf|inch pounds|inch-pounds|lbs in"},
		row{"ozf·in", "ounce-force inches", "0.45359237*9.80665*0.0254/16", "oz-in|ozin|oz in|in-oz|ozfin"})

	stresses = build(dimension{noun: "a stress"}, "",
		row{"MPa", "megapascals", "1000000", "=MPa|N/mm2|megapascal|megapascals"},
		row{"GPa", "gigapascals", "1000000000", "kN/mm2|gigapascal|gigapascals"},
		row{"kPa", "kilopascals", "1000", "kN/m2|kilopascal|kilopascals"},
		row{"Pa", "pascals", "1", "N/m2|pascal|pascals"},
		row{"bar", "bar", "100000", "bars"},
		row{"kg/cm²", "kilograms force a square centimetre", "98066.5", "kgf/cm2"},
		row{"kg/mm²", "kilograms force a square millimetre", "9806650", "kgf/mm2"},
		row{"psi", "pounds a square inch", "0.45359237*9.80665/0.0254/0.0254", "lb/in2|lbf/in2"},
		row{"ksi", "thousand pounds a square inch", "1000*0.45359237*9.80665/0.0254/0.0254", "kip/in2"})

	energies = build(dimension{noun: "an energy"}, "",
		row{"Wh", "watt-hours", "3600", "watt-hour|watt-hours|watthours|watt hours|W h|W-h"},
		row{"kWh", "kilowatt-hours", "3600000", "kilowatt-hour|kilowatt-hours|kilowatt hours|kW h|unit|units"},
		row{"mWh", "milliwatt-hours", "3.6", "=mWh"},
		row{"MWh", "megawatt-hours", "3600000000", "=MWh"},
		row{"J", "joules", "1", "joule|joules|Ws|Nm|N·m"},
		row{"kJ", "kilojoules", "1000", "kilojoule|kilojoules"},
		row{"MJ", "megajoules", "1000000", "=MJ|megajoule|megajoules"},
		row{"ft·lbf", "foot-pounds", "0.45359237*9.80665*0.3048", "ft-lb|ft lb|ftlb|foot-pounds|foot pounds"},
		row{"cal", "calories", "4.184", "calorie|calories"},
		row{"Btu", "British thermal units", "1055.05585262", "btus"})

	powers = build(dimension{noun: "a power"}, "",
		row{"W", "watts", "1", "watt|watts|J/s|Wp|watt-peak|VA"},
		row{"kW", "kilowatts", "1000", "kilowatt|kilowatts|kWp"},
		row{"mW", "milliwatts", "0.001", "=mW|milliwatt|milliwatts"},
		row{"MW", "megawatts", "1000000", "=MW|megawatt|megawatts"},
		row{"hp", "horsepower", "550*0.45359237*9.80665*0.3048", "horsepower|bhp"})

	voltages = build(dimension{noun: "a voltage"}, "",
		row{"V", "volts", "1", "volt|volts|VDC|V DC|Vdc"},
		row{"mV", "millivolts", "0.001", "=mV|millivolt|millivolts"},
		row{"kV", "kilovolts", "1000", "kilovolt|kilovolts"})

	currents = build(dimension{noun: "a current"}, "",
		row{"A", "amperes", "1", "amp|amps|ampere|amperes"},
		row{"mA", "milliamperes", "0.001", "=mA|milliamp|milliamps|milliampere|milliamperes"},
		row{"µA", "microamperes", "0.000001", "=uA|microamp|microamps"},
		row{"kA", "kiloamperes", "1000", "kiloamp|kiloamps"})

	charges = build(dimension{noun: "a charge"}, "",
		row{"Ah", "ampere-hours", "3600", "amp-hour|amp-hours|amp hours|amp hour|ampere-hours|ampere hours|A h|A-h"},
		row{"mAh", "milliampere-hours", "3.6", "milliamp-hours|milliamp hours|mA h"},
		row{"C", "coulombs", "1", "coulomb|coulombs|As"})

	resistances = build(dimension{noun: "a resistance"}, "",
		row{"Ω", "ohms", "1", "ohm|ohms|R"},
		row{"mΩ", "milliohms", "0.001", "=mΩ|=mOhm|=mohm|=mohms|milliohm|milliohms"},
		row{"kΩ", "kiloohms", "1000", "kOhm|kohms|kiloohm|kiloohms|kilohm|kilohms|k"},
		row{"MΩ", "megaohms", "1000000", "=MΩ|=MOhm|megaohm|megaohms|megohm"})

	machineConstants = build(dimension{noun: "a machine constant"}, "inverse",
		row{"V·s/rad", "volt seconds a radian", "1", "Vs/rad|V/(rad/s)|Vs|N·m/A|Nm/A"},
		row{"mV·s/rad", "millivolt seconds a radian", "0.001", "=mVs/rad|=mNm/A|=mVs"},
		row{"N·cm/A", "newton centimetres an ampere", "0.01", "Ncm/A"},
		row{"V/1000 rpm", "volts for 1000 revolutions a minute", "60/1000/2/pi", "V/1000rpm|V/krpm|V/k rpm|V/1000/min|V/kRPM"},
		row{"V/rpm", "volts for one revolution a minute", "60/2/pi", "V/rpm"},
		row{"rpm/V", "revolutions a minute for a volt", "60/2/pi", "rpm/V|rpm/volt|kv|1/min/V"},
		row{"lbf·in/A", "pound-force inches an ampere", "0.45359237*9.80665*0.0254", "lb-in/A|lbfin/A|in-lb/A"},
		row{"ozf·in/A", "ounce-force inches an ampere", "0.45359237*9.80665*0.0254/16", "oz-in/A|ozin/A"})

	inertias = build(dimension{noun: "an inertia", science: true}, "",
		row{"g·cm²", "gram centimetres squared", "0.0000001", "gcm2|g cm2|g-cm2"},
		row{"kg·cm²", "kilogram centimetres squared", "0.0001", "kgcm2|kg-cm2"},
		row{"kg·m²", "kilogram metres squared", "1", "kgm2|kg-m2"},
		row{"g·m²", "gram metres squared", "0.001", "gm2|g-m2"},
		row{"g·mm²", "gram millimetres squared", "0.000000001", "gmm2"},
		row{"lb·in²", "pound inches squared", "0.45359237*0.0254*0.0254", "lbin2|lb-in2"},
		row{"oz·in²", "ounce inches squared", "0.45359237*0.0254*0.0254/16", "ozin2|oz-in2"},
		row{"lb·ft²", "pound feet squared", "0.45359237*0.3048*0.3048", "lbft2|lb-ft2"})

	thermalResistances = build(dimension{noun: "a thermal resistance"}, "",
		row{"K/W", "kelvins a watt", "1", "°C/W|C/W|deg C/W"},
		row{"°F/W", "degrees Fahrenheit a watt", "5/9", "F/W"})

	durations = build(dimension{noun: "a time", compose: true}, "",
		row{"s", "seconds", "1", "sec|secs|second|seconds"},
		row{"ms", "milliseconds", "0.001", "=ms|millisecond|milliseconds"},
		row{"min", "minutes", "60", "mins|minute|minutes|'"},
		row{"h", "hours", "3600", "hr|hrs|hour|hours"},
		row{"days", "days", "86400", "d|day"},
		row{"weeks", "weeks", "604800", "wk|week"},
		row{"months", "months", "31557600/12", "month|mo"},
		row{"years", "years", "31557600", "year|yr|yrs|a"})

	temperatures = build(dimension{noun: "a temperature", own: ownDegrees}, "temperature",
		row{"°C", "degrees Celsius", "1", "C|deg C|degC|degrees C|celsius|degrees celsius"},
		row{"°F", "degrees Fahrenheit", "5/9", "F|deg F|degF|degrees F|fahrenheit|degrees fahrenheit"},
		row{"K", "kelvins", "1", "kelvin|kelvins"})

	tempSteps = build(dimension{noun: "a temperature difference", own: ownDegrees}, "",
		row{"K", "kelvins", "1", "kelvin|kelvins|°C|C|deg C|degC|celsius"},
		row{"°F", "degrees Fahrenheit", "5/9", "F|deg F|degF|fahrenheit"})

	angleRows = []row{
		{"°", "degrees", "pi/180", "deg|degs|degree|degrees"},
		{"'", "arc minutes", "pi/180/60", "arcmin|minutes"},
		{"\"", "arc seconds", "pi/180/3600", "arcsec|seconds"},
		{"rad", "radians", "1", "radian|radians"},
	}
	angles     = build(dimension{noun: "an angle", compose: true, feet: true}, "", angleRows...)
	latitudes  = build(dimension{noun: "a latitude", compose: true, feet: true, signs: "NS"}, "", angleRows...)
	longitudes = build(dimension{noun: "a longitude", compose: true, feet: true, signs: "EW"}, "", angleRows...)

	rotations = build(dimension{noun: "a turning speed"}, "",
		row{"rpm", "revolutions a minute", "2*pi/60", "r/min|rev/min|1/min|/min|min-1|revs|turns/min|U/min|revolutions per minute|turns per minute"},
		row{"rev/s", "revolutions a second", "2*pi", "r/s|rps|Hz|turns/s"},
		row{"rad/s", "radians a second", "1", "1/s|s-1"})

	speeds = build(dimension{noun: "a speed"}, "",
		row{"m/s", "metres a second", "1", "metres per second|meters per second|mps"},
		row{"cm/s", "centimetres a second", "0.01", ""},
		row{"mm/s", "millimetres a second", "0.001", ""},
		row{"m/min", "metres a minute", "1/60", ""},
		row{"km/h", "kilometres an hour", "1000/3600", "kph|kmh|km/hr"},
		row{"ft/s", "feet a second", "0.3048", "fps|ft/sec"},
		row{"ft/min", "feet a minute", "0.3048/60", "fpm"},
		row{"mph", "miles an hour", "1609.344/3600", "mi/h"},
		row{"kn", "knots", "1852/3600", "knot|knots|kt|kts"})

	irradiances = build(dimension{noun: "sunshine on an area"}, "",
		row{"W/m²", "watts a square metre", "1", "W/m2|W/sqm"},
		row{"kW/m²", "kilowatts a square metre", "1000", "kW/m2|suns|sun"})

	irradiations = build(dimension{noun: "sun energy on an area"}, "",
		row{"kWh/m²", "kilowatt-hours a square metre", "3600000", "kWh/m2/day|kWh/m2/d|kWh/m²/day|peak sun hours|psh|sun hours"},
		row{"Wh/m²", "watt-hours a square metre", "3600", "Wh/m2/day|Wh/m2/d"},
		row{"MJ/m²", "megajoules a square metre", "1000000", "MJ/m2/day|MJ/m2/d"},
		row{"kJ/m²", "kilojoules a square metre", "1000", "kJ/m2/day"},
		row{"J/m²", "joules a square metre", "1", ""},
		row{"cal/cm²", "calories a square centimetre", "41840", "ly|langley|langleys"},
		row{"Btu/ft²", "British thermal units a square foot", "1055.05585262/0.3048/0.3048", ""})

	ratios = build(dimension{noun: "a plain number"}, "",
		row{"", "", "1", ""},
		row{"%", "percent", "0.01", "percent|per cent|pct"})

	gearRatios = build(dimension{noun: "a gear ratio", read: readGear}, "", row{"", "", "1", ""})

	counts = build(dimension{noun: "a number of pieces", whole: true}, "",
		row{"", "", "1", "pcs|pc|pieces|piece|x|×|off|times|turns|teeth|stages"})

	money = build(dimension{noun: "an amount of money"}, "", row{"", "", "1", ""})

	areas = build(dimension{noun: "an area"}, "",
		row{"mm²", "square millimetres", "0.000001", "sq mm|sqmm|qmm"},
		row{"cm²", "square centimetres", "0.0001", "sq cm|sqcm"},
		row{"m²", "square metres", "1", "sq m|sqm|qm|square metres|square meters"},
		row{"in²", "square inches", "0.0254*0.0254", "sq in|sqin|square inches"},
		row{"ft²", "square feet", "0.3048*0.3048", "sq ft|sqft|square feet"})

	wires = build(dimension{noun: "the area of a wire", read: readGauge}, "",
		row{"mm²", "square millimetres", "0.000001", "sq mm|sqmm|qmm"},
		row{"cm²", "square centimetres", "0.0001", "sq cm|sqcm"},
		row{"m²", "square metres", "1", "sq m|sqm|qm|square metres|square meters"},
		row{"in²", "square inches", "0.0254*0.0254", "sq in|sqin|square inches"},
		row{"ft²", "square feet", "0.3048*0.3048", "sq ft|sqft|square feet"})

	volumes = build(dimension{noun: "a volume", ask: map[string]string{"gal": sayGallon, "gallon": sayGallon, "gallons": sayGallon}}, "",
		row{"l", "litres", "0.001", "litre|litres|liter|liters|ltr|dm3"},
		row{"ml", "millilitres", "0.000001", "=ml|=mL|cm3|cc|millilitre|millilitres"},
		row{"m³", "cubic metres", "1", "cubic metres|cubic meters|cbm"},
		row{"US gal", "US gallons", "231*0.0254*0.0254*0.0254", "US gallon|US gallons"},
		row{"imp gal", "imperial gallons", "0.00454609", "UK gal|imperial gallons"},
		row{"ft³", "cubic feet", "0.3048*0.3048*0.3048", "cu ft|cuft|cubic feet"},
		row{"in³", "cubic inches", "0.0254*0.0254*0.0254", "cu in|cubic inches"},
		row{"yd³", "cubic yards", "0.9144*0.9144*0.9144", "cu yd|cubic yards"})

	// One US gallon is 231 in³, one imperial gallon 4.54609 l.
	flows = build(dimension{noun: "a flow"}, "",
		row{"l/min", "litres a minute", "0.001/60", "litre a minute|litres a minute|lpm"},
		row{"l/s", "litres a second", "0.001", "litre a second|litres a second"},
		row{"ml/s", "millilitres a second", "0.000001", "millilitres a second"},
		row{"l/h", "litres an hour", "0.001/3600", "litre an hour|litres an hour|lph"},
		row{"m³/h", "cubic metres an hour", "1/3600", "m3/h|cubic metres an hour|cubic meters an hour"},
		row{"m³/s", "cubic metres a second", "1", "m3/s"},
		row{"US gal/min", "US gallons a minute", "231*0.0254*0.0254*0.0254/60", "gpm|US gpm"})

	sectionModuli = build(dimension{noun: "a section modulus"}, "",
		row{"cm³", "cubic centimetres", "0.000001", ""},
		row{"in³", "cubic inches", "0.0254*0.0254*0.0254", ""})

	secondMoments = build(dimension{noun: "a second moment of area"}, "",
		row{"cm⁴", "centimetres to the fourth", "0.00000001", ""},
		row{"in⁴", "inches to the fourth", "0.0254*0.0254*0.0254*0.0254", ""})

	densities = build(dimension{noun: "a density"}, "",
		row{"kg/m³", "kilograms a cubic metre", "1", ""},
		row{"kg/l", "kilograms a litre", "1000", "g/cm3|t/m3|kg/dm3|g/cc|g/ml"},
		row{"lb/ft³", "pounds a cubic foot", "0.45359237/0.3048/0.3048/0.3048", "lb/cu ft|pcf"})

	stiffnesses = build(dimension{noun: "a stiffness"}, "",
		row{"N/m", "newtons a metre", "1", ""},
		row{"N/mm", "newtons a millimetre", "1000", "kN/m"},
		row{"lbf/in", "pounds force an inch", "0.45359237*9.80665/0.0254", "lb/in"})

	heatLosses = build(dimension{noun: "a heat loss"}, "",
		row{"W/(m²·K)", "watts a square metre and kelvin", "1", "W/m2K|W/m2/K|W/(m2K)"})

	heatLossesWind = build(dimension{noun: "a heat loss by wind"}, "",
		row{"W·s/(m³·K)", "watts a square metre and kelvin for each metre a second", "1", "Ws/m3K|Ws/m3/K|W/m3sK"})

	perKelvins = build(dimension{noun: "a change with temperature"}, "",
		row{"%/K", "percent a kelvin", "0.01", "%/°C|%/C|percent/K|percent/°C|%"},
		row{"1/K", "a kelvin", "1", "/K|1/°C|/°C"},
		row{"ppm/K", "millionths a kelvin", "0.000001", "ppm/°C"})

	perHours = build(dimension{noun: "a rate"}, "",
		row{"/h", "an hour", "1", "1/h|/hour|C|C-rate"})

	clockTimes = build(dimension{noun: "a time of day", read: readClock, write: writeClock}, "",
		row{"", "", "1", ""})

	utcOffsets = build(dimension{noun: "a time zone", read: readOffset, write: writeOffset}, "",
		row{"h", "hours", "3600", "hr|hrs|hour|hours"})
)

// dimensions in the order in which a stray unit is explained. Quantities that only retell another are left out.
var dimensions = []*dimension{lengths, masses, forces, powers, voltages, currents, energies, charges, resistances,
	torques, stresses, durations, temperatures, rotations, speeds, areas, volumes, densities, angles, irradiances,
	irradiations, inertias, machineConstants, thermalResistances, ratios, stiffnesses, perKelvins}

// Words that say too little are asked back: each of them is one thing here and another there.
const (
	sayTon    = "There are three tons. Write t (1\u00a0000 kg), short ton (907 kg) or long ton (1\u00a0016 kg)."
	sayGallon = "There are two gallons. Write US gal (3.79 l) or imp gal (4.55 l)."
)

// ownDegrees are spellings that mean the field's own unit: 77° is 77 °F on a page that speaks in °F.
const ownDegrees = " ° deg degs degree degrees "

// build makes a dimension from its rows; kind marks the two that are not plain factors.
func build(d dimension, kind string, rows ...row) *dimension {
	d.exact, d.folded = map[string]*measure{}, map[string]*measure{}
	unclear := map[string]bool{}
	for _, r := range rows {
		m := &measure{symbol: r.symbol, word: r.word, factor: factor(r.factor)}
		m.inverse = kind == "inverse" && r.symbol == "rpm/V"
		switch {
		case kind == "temperature" && r.symbol == "°F":
			m.offset = factor("0-32*5/9")
		case kind == "temperature" && r.symbol == "K":
			m.offset = factor("0-273.15")
		}
		m.then = map[string]string{"ft": "in", "h": "min", "°": "'"}[r.symbol]
		d.units = append(d.units, m)
		for _, name := range strings.Split(r.symbol+"|"+r.also, "|") {
			key, only := strings.CutPrefix(name, "=")
			if key = spelling(key); key == "" {
				continue
			}
			d.exact[key] = m
			low := strings.ToLower(key)
			if was := d.folded[low]; was != nil && was != m || only {
				unclear[low] = true
			}
			d.folded[low] = m
		}
	}
	for low := range unclear {
		delete(d.folded, low)
	}
	return &d
}

// factor works out numbers joined by * and /, from left to right; a leading "0-" turns the sign.
func factor(s string) *big.Rat {
	s, minus := strings.CutPrefix(s, "0-")
	out := big.NewRat(1, 1)
	for i, f := range strings.Split(strings.ReplaceAll(s, "/", "*/"), "*") {
		f, under := strings.CutPrefix(f, "/")
		f = strings.Replace(f, "pi", "3.14159265358979323846264338327950288419716939937510582097494459", 1)
		v, ok := new(big.Rat).SetString(f)
		if !ok {
			panic("unit: factor " + s)
		}
		if under && i > 0 {
			out.Quo(out, v)
		} else {
			out.Mul(out, v)
		}
	}
	if minus {
		out.Neg(out)
	}
	return out
}

// as makes a quantity: its units metric and imperial, digits shown, plausible range in SI.
func as(d *dimension, metric, imperial string, digits int, lo, hi float64) Quantity {
	q := Quantity{dim: d, digits: digits, lo: lo, hi: hi}
	for i, symbol := range []string{metric, imperial} {
		for _, m := range d.units {
			if m.symbol == symbol {
				q.shown[i] = m
			}
		}
		if q.shown[i] == nil {
			panic("unit: no unit " + symbol + " in " + d.noun)
		}
	}
	return q
}

// The quantities of the fields. The plausible ranges are what a home-made store of a household may well have: our own
// judgement, asked about and never enforced.
var (
	Lengths            = as(lengths, "m", "ft", 3, 0.001, 1000).byTape(TapeInch)      // of ropes, cables and pipes, of a fall
	SmallLengths       = as(lengths, "mm", "in", 3, 0.0001, 5)                        // ropes, bolts, shafts: what a calliper is held to
	Heights            = as(lengths, "m", "ft", 3, 0.001, 1000).byTape(TapeSixteenth) // travel, frames, spans, the keep-out
	Widths             = as(lengths, "mm", "in", 3, 0.0001, 5).byTape(TapeSixteenth)  // drums, pulleys, beams
	Distances          = as(lengths, "km", "mi", 2, 0, 0)                             // on a map
	Elevations         = as(lengths, "m", "ft", 4, -430, 6000).scaled("ft")
	Masses             = as(masses, "kg", "lb", 3, 0.001, 100e3).scaled("lb")
	SmallMasses        = as(masses, "g", "oz", 3, 0.0001, 100)
	Forces             = as(forces, "N", "lbf", 3, 0.1, 1e6)
	Loads              = as(forces, "kg", "lb", 3, 1, 1e6).scaled("lb") // a force as the mass whose weight it is
	Torques            = as(torques, "N·m", "lbf·ft", 3, 0.001, 10e3)
	SmallTorques       = as(torques, "mN·m", "ozf·in", 3, 1e-5, 10)
	Stresses           = as(stresses, "MPa", "psi", 3, 1e5, 2.5e9)
	SmallStresses      = as(stresses, "kPa", "psi", 3, 1e2, 1e6) // soil, pads
	Pressures          = as(stresses, "bar", "psi", 3, 1e4, 1e7) // of water in a pipe
	Energies           = as(energies, "Wh", "Wh", 3, 0.001*3600, 100e3*3600)
	BigEnergies        = as(energies, "kWh", "kWh", 3, 3600, 100e6*3600)
	Powers             = as(powers, "W", "W", 3, 0.001, 20e3)
	Voltages           = as(voltages, "V", "V", 4, 0.01, 1000)
	Currents           = as(currents, "A", "A", 3, 0.001, 1000)
	Charges            = as(charges, "Ah", "Ah", 3, 0.1*3600, 2000*3600)
	Resistances        = as(resistances, "Ω", "Ω", 3, 0.001, 10e3)
	MachineConstants   = as(machineConstants, "V·s/rad", "V·s/rad", 3, 1e-4, 10)
	Inertias           = as(inertias, "g·cm²", "oz·in²", 3, 1e-8, 1)
	ThermalResistances = as(thermalResistances, "K/W", "K/W", 3, 0.01, 100)
	Durations          = as(durations, "s", "s", 3, 0, 0)
	Minutes            = as(durations, "min", "min", 3, 0, 0)
	Hours              = as(durations, "h", "h", 3, 0, 0)
	Days               = as(durations, "days", "days", 3, 0, 0)
	Years              = as(durations, "years", "years", 3, 0, 100*31557600)
	ClockTimes         = as(clockTimes, "", "", 0, 0, 86400)
	UTCOffsets         = as(utcOffsets, "h", "h", 0, -12*3600, 14*3600)
	Temperatures       = as(temperatures, "°C", "°F", 3, -50, 200)
	TempSteps          = as(tempSteps, "K", "°F", 3, 0, 150)
	Angles             = as(angles, "°", "°", 3, 0, 0)
	Latitudes          = as(latitudes, "°", "°", 5, 0, 0)
	Longitudes         = as(longitudes, "°", "°", 5, 0, 0)
	RotationSpeeds     = as(rotations, "rpm", "rpm", 3, 0.01, 10e3)
	Speeds             = as(speeds, "m/s", "ft/s", 3, 1e-5, 60)
	SlowSpeeds         = as(speeds, "mm/s", "ft/min", 3, 1e-5, 5)
	RoadSpeeds         = as(speeds, "km/h", "mph", 2, 0.01, 100)
	Irradiances        = as(irradiances, "W/m²", "W/m²", 3, 0, 1400)
	Irradiations       = as(irradiations, "kWh/m²", "kWh/m²", 3, 0, 12*3.6e6) // a day
	YearIrradiations   = as(irradiations, "kWh/m²", "kWh/m²", 4, 300*3.6e6, 3000*3.6e6)
	Ratios             = as(ratios, "", "", 3, 0, 0)
	Percents           = as(ratios, "%", "%", 3, 0, 0)
	GearRatios         = as(gearRatios, "", "", 4, 1, 10e3)
	Counts             = as(counts, "", "", 17, 0, 10e3)
	Prices             = as(money, "", "", 17, 0, 0)
	Areas              = as(areas, "m²", "ft²", 3, 0, 0)
	SmallAreas         = as(areas, "mm²", "mm²", 3, 1e-8, 1e-2)
	WireAreas          = Quantity{dim: wires, shown: [2]*measure{wires.exact["mm2"], wires.exact["mm2"]}, digits: 3, lo: 1e-8, hi: 1e-2, gauge: true} // copper: mm² in both systems, the gauge beside in inches
	Openings           = as(areas, "cm²", "in²", 3, 0, 0)
	Volumes            = as(volumes, "l", "US gal", 3, 1e-4, 100)
	BigVolumes         = as(volumes, "m³", "US gal", 3, 0.01, 1e4) // tanks and ponds
	Flows              = as(flows, "l/min", "US gal/min", 3, 1e-6, 1)
	SectionModuli      = as(sectionModuli, "cm³", "in³", 3, 0, 0)
	SecondMoments      = as(secondMoments, "cm⁴", "in⁴", 3, 0, 0)
	Densities          = as(densities, "kg/m³", "lb/ft³", 3, 10, 20e3)
	Stiffnesses        = as(stiffnesses, "N/mm", "lbf/in", 3, 0, 0)
	HeatLosses         = as(heatLosses, "W/(m²·K)", "W/(m²·K)", 3, 5, 100)
	HeatLossesWind     = as(heatLossesWind, "W·s/(m³·K)", "W·s/(m³·K)", 3, 0, 20)
	PerKelvins         = as(perKelvins, "%/K", "%/K", 3, -0.02, 0.02)
	PerHours           = as(perHours, "/h", "/h", 3, 0.001, 20)
)
