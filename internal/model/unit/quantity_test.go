package unit

import (
	"math"
	"strconv"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

// everything is the list of all quantities of the catalogue.
var everything = map[string]Quantity{
	"Lengths": Lengths, "Heights": Heights, "Widths": Widths, "SmallLengths": SmallLengths, "Elevations": Elevations, "Masses": Masses, "SmallMasses": SmallMasses,
	"Forces": Forces, "Loads": Loads, "Torques": Torques, "SmallTorques": SmallTorques, "Stresses": Stresses,
	"Energies": Energies, "BigEnergies": BigEnergies, "Powers": Powers, "Voltages": Voltages, "Currents": Currents,
	"Charges": Charges, "Resistances": Resistances, "MachineConstants": MachineConstants, "Inertias": Inertias,
	"ThermalResistances": ThermalResistances, "Durations": Durations, "Minutes": Minutes, "Hours": Hours, "Days": Days,
	"Years": Years, "ClockTimes": ClockTimes, "UTCOffsets": UTCOffsets, "Temperatures": Temperatures, "TempSteps": TempSteps,
	"Angles": Angles, "Latitudes": Latitudes, "Longitudes": Longitudes, "RotationSpeeds": RotationSpeeds, "Speeds": Speeds,
	"SlowSpeeds": SlowSpeeds, "Irradiances": Irradiances, "Irradiations": Irradiations, "YearIrradiations": YearIrradiations,
	"Ratios": Ratios, "Percents": Percents, "GearRatios": GearRatios, "Counts": Counts, "Prices": Prices, "Areas": Areas,
	"SmallAreas": SmallAreas, "WireAreas": WireAreas, "Volumes": Volumes, "BigVolumes": BigVolumes, "Flows": Flows, "Pressures": Pressures, "Openings": Openings, "Densities": Densities, "Stiffnesses": Stiffnesses,
	"HeatLosses": HeatLosses, "HeatLossesWind": HeatLossesWind, "PerKelvins": PerKelvins, "PerHours": PerHours,
}

// The expected values are the definitions of the units worked by hand: inch 25.4 mm, foot 12 in, pound 0.45359237 kg,
// g 9.80665 m/s², hour 3600 s.
func TestSpellings(t *testing.T) {
	const nb, thin, narrow = "\u00a0", "\u2009", "\u202f"
	for _, c := range []struct {
		q    Quantity
		text string
		sys  System
		want float64
	}{
		{Lengths, "1.5", Metric, 1.5},
		{Lengths, "1,5", Metric, 1.5},
		{Lengths, " 12 ", Metric, 12},
		{Lengths, "2 000", Metric, 2000},
		{Lengths, "2'000", Metric, 2000},
		{Lengths, "2’000", Metric, 2000},
		{Lengths, "2" + nb + "000", Metric, 2000},
		{Lengths, "2" + thin + "000", Metric, 2000},
		{Lengths, "2" + narrow + "000,5", Metric, 2000.5},
		{Lengths, "1 234 567.25", Metric, 1234567.25},
		{Lengths, "1½", Metric, 1.5},
		{Lengths, "½", Metric, 0.5},
		{Lengths, "1 ½ m", Metric, 1.5},
		{Lengths, "1 1/2", Metric, 1.5},
		{Lengths, "1 1⁄2", Metric, 1.5},
		{Lengths, "3/4", Metric, 0.75},
		{Lengths, ".5", Metric, 0.5},
		{Lengths, "0.500", Metric, 0.5},
		{Lengths, "0,125", Metric, 0.125},
		{Lengths, "1.234", Metric, 1.234},
		{Lengths, "+3", Metric, 3},
		{Temperatures, "−12", Metric, -12},
		{Temperatures, "–12,5 °C", Metric, -12.5},
		{Lengths, "2.8 m", Metric, 2.8},
		{Lengths, "2.8m", Imperial, 2.8},
		{Lengths, "2.8 M", Metric, 2.8},
		{Lengths, "280 cm", Metric, 2.8},
		{Lengths, "2800 mm", Metric, 2.8},
		{Lengths, "280 centimetres", Metric, 2.8},
		{Lengths, "9 ft 2 in", Metric, 110 * 0.0254},
		{Lengths, "9ft 2in", Metric, 110 * 0.0254},
		{Lengths, "9'2\"", Metric, 110 * 0.0254},
		{Lengths, "9' 2''", Metric, 110 * 0.0254},
		{Lengths, "9′ 2½″", Metric, 110.5 * 0.0254},
		{Lengths, "9 ft 2", Metric, 110 * 0.0254},
		{Lengths, "9' 2-1/2\"", Metric, 110.5 * 0.0254},
		{Lengths, "9.5 ft", Metric, 114 * 0.0254},
		{Lengths, "9 feet", Metric, 108 * 0.0254},
		{Lengths, "9", Imperial, 108 * 0.0254},
		{SmallLengths, "60", Metric, 0.06},
		{SmallLengths, "6 cm", Metric, 0.06},
		{SmallLengths, "3/8 in", Metric, 0.009525},
		{SmallLengths, "3/8", Imperial, 0.009525},
		{SmallLengths, "2 3/8\"", Metric, 0.060325},
		{SmallLengths, "1-1/2 inch", Metric, 0.0381},
		{Masses, "38kg", Metric, 38},
		{Masses, "38 KG", Metric, 38},
		{Masses, "38 kilos", Metric, 38},
		{Masses, "84 lb", Metric, 84 * 0.45359237},
		{Masses, "84 lbs", Metric, 84 * 0.45359237},
		{Masses, "84", Imperial, 84 * 0.45359237},
		{Masses, "10 lb 8 oz", Metric, 10.5 * 0.45359237},
		{Masses, "1.5 t", Metric, 1500},
		{Masses, "500 g", Metric, 0.5},
		{Forces, "2.6 kN", Metric, 2600},
		{Forces, "265 kg", Metric, 265 * 9.80665},
		{Forces, "100 lbf", Metric, 100 * 0.45359237 * 9.80665},
		{Loads, "265", Metric, 265 * 9.80665},
		{Loads, "100", Imperial, 100 * 0.45359237 * 9.80665},
		{Torques, "2.5 Nm", Metric, 2.5},
		{Torques, "2.5 N·m", Metric, 2.5},
		{Torques, "2.5 N m", Metric, 2.5},
		{Torques, "2.5 newton metres", Metric, 2.5},
		{Torques, "35 kg.cm", Metric, 35 * 0.0980665},
		{Torques, "12 ft-lb", Metric, 12 * 0.45359237 * 9.80665 * 0.3048},
		{Torques, "9 in-lb", Metric, 9 * 0.45359237 * 9.80665 * 0.0254},
		{SmallTorques, "22 mNm", Metric, 0.022},
		{Stresses, "235", Metric, 235e6},
		{Stresses, "235 N/mm²", Metric, 235e6},
		{Stresses, "235 N/mm2", Metric, 235e6},
		{Voltages, "12V", Metric, 12},
		{Voltages, "12 volts", Metric, 12},
		{Voltages, "12,8 V DC", Metric, 12.8},
		{Currents, "350 mA", Metric, 0.35},
		{Charges, "7 Ah", Metric, 25200},
		{Charges, "7000 mAh", Metric, 25200},
		{Energies, "84 Wh", Metric, 302400},
		{Energies, "1.2 kWh", Metric, 4.32e6},
		{Powers, "5W", Metric, 5},
		{Powers, "0.1 kw", Metric, 100},
		{Powers, "500 mW", Metric, 0.5},
		{Resistances, "0.8 Ω", Metric, 0.8},
		{Resistances, "0.8 ohm", Metric, 0.8},
		{Resistances, "80 mΩ", Metric, 0.08},
		{RotationSpeeds, "410 rpm", Metric, 410 * 2 * math.Pi / 60},
		{RotationSpeeds, "410", Metric, 410 * 2 * math.Pi / 60},
		{RotationSpeeds, "410 1/min", Metric, 410 * 2 * math.Pi / 60},
		{MachineConstants, "400 rpm/V", Metric, 60 / (2 * math.Pi * 400)},
		{MachineConstants, "22 mNm/A", Metric, 0.022},
		{MachineConstants, "5 V/1000 rpm", Metric, 5 * 60 / (2000 * math.Pi)},
		{Inertias, "5e-5 kg m2", Metric, 5e-5},
		{Inertias, "5E-5 kg·m²", Metric, 5e-5},
		{Inertias, "500", Metric, 5e-5},
		{Temperatures, "25 C", Metric, 25},
		{Temperatures, "77 °F", Metric, 25},
		{Temperatures, "77", Imperial, 25},
		{Temperatures, "-40 F", Metric, -40},
		{TempSteps, "18 °F", Metric, 10},
		{Temperatures, "25°", Metric, 25},
		{Temperatures, "77°", Imperial, 25}, // (77 − 32)/1.8
		{Temperatures, "77 degrees", Imperial, 25},
		{Temperatures, "25 °C", Imperial, 25},
		{TempSteps, "18°", Imperial, 10},
		{TempSteps, "10°", Metric, 10},
		{Masses, "1 short ton", Metric, 2000 * 0.45359237},
		{Masses, "1 long ton", Metric, 2240 * 0.45359237},
		{Masses, "0.5 tonnes", Imperial, 500},
		{SmallLengths, "10 thou", Metric, 0.000254},
		{Volumes, "2 US gal", Metric, 2 * 231 * 0.0254 * 0.0254 * 0.0254},
		{Volumes, "2 imp gal", Metric, 2 * 0.00454609},
		{Volumes, "2", Imperial, 2 * 231 * 0.0254 * 0.0254 * 0.0254},
		{Lengths, "2 m 80 cm", Metric, 2.8},
		{ClockTimes, "18:30", Metric, 66600},
		{ClockTimes, "6:30 pm", Metric, 66600},
		{ClockTimes, "6:30 p.m.", Metric, 66600},
		{ClockTimes, "18h30", Metric, 66600},
		{ClockTimes, "18", Metric, 64800},
		{ClockTimes, "12 am", Metric, 0},
		{ClockTimes, "24:00", Metric, 86400},
		{Hours, "1 h 30 min", Metric, 5400},
		{Hours, "1h30", Metric, 5400},
		{Hours, "1.5", Metric, 5400},
		{Minutes, "90 s", Metric, 90},
		{Years, "2", Metric, 2 * 365.25 * 86400},
		{UTCOffsets, "+5:30", Metric, 19800},
		{UTCOffsets, "5.5", Metric, 19800},
		{UTCOffsets, "UTC-3", Metric, -10800},
		{UTCOffsets, "UTC+05:45", Metric, 20700},
		{Angles, "35°", Metric, 35 * math.Pi / 180},
		{Angles, "35 degrees", Metric, 35 * math.Pi / 180},
		{Latitudes, "33.9 S", Metric, -33.9 * math.Pi / 180},
		{Latitudes, "51°30'N", Metric, 51.5 * math.Pi / 180},
		{Latitudes, "S 33,9", Metric, -33.9 * math.Pi / 180},
		{Latitudes, "45 degrees", Metric, math.Pi / 4},
		{Latitudes, "33.9 south", Metric, -33.9 * math.Pi / 180},
		{Longitudes, "18°24'36\" E", Metric, 18.41 * math.Pi / 180},
		{Longitudes, "9.14 W", Metric, -9.14 * math.Pi / 180},
		{Percents, "3", Metric, 0.03},
		{Percents, "3 %", Metric, 0.03},
		{Percents, "0.85 %", Metric, 0.0085},
		{Percents, "1.5", Metric, 0.015},
		{Percents, "0", Metric, 0},
		{Ratios, "85%", Metric, 0.85},
		{Ratios, "0.85", Metric, 0.85},
		{GearRatios, "27:1", Metric, 27},
		{GearRatios, "1:27", Metric, 27},
		{GearRatios, "27,5", Metric, 27.5},
		{Counts, "12", Metric, 12},
		{Counts, "12 pcs", Metric, 12},
		{Counts, "1 200", Metric, 1200},
		{Prices, "12,50", Metric, 12.5},
		{Irradiations, "5.2", Metric, 5.2 * 3.6e6},
		{Irradiations, "18.7 MJ/m²", Metric, 18.7e6},
		{Irradiances, "1000 W/m2", Metric, 1000},
		{SmallAreas, "2.5 mm²", Metric, 2.5e-6},
		{Volumes, "200 litres", Metric, 0.2},
		{BigVolumes, "10", Metric, 10},
		{BigVolumes, "100", Imperial, 23100 * 0.0254 * 0.0254 * 0.0254}, // a gallon is 231 in³
		{Flows, "60", Metric, 0.001},
		{Flows, "1.2 l/s", Metric, 0.0012},
		{Flows, "10", Imperial, 2310 * 0.0254 * 0.0254 * 0.0254 / 60},
		{Pressures, "10", Metric, 1e6},
		{Densities, "1.6 t/m3", Metric, 1600},
		{PerKelvins, "-0.4 %/°C", Metric, -0.004},
		{Lengths, "१२.५ m", Metric, 12.5},
		{Lengths, "٢٫٨", Metric, 2.8},
	} {
		got, known, err := c.q.Parse(c.text, c.sys)
		// 1e-15: the wanted side is a product of rounded factors, the parsed side is rounded once.
		if err != nil || !known || math.Abs(got-c.want) > 1e-15*math.Max(1, math.Abs(c.want)) {
			t.Errorf("%q in %s: %v, %v, %v; want %v", c.text, c.q.Noun(), got, known, err, c.want)
		}
	}
}

func TestRefusals(t *testing.T) {
	for _, c := range []struct {
		q    Quantity
		text string
		say  string
	}{
		{Lengths, "1,500", "Do you mean 1.5 or 1500?"},
		{Percents, "0.85", "Is that 0.85 % or 85 %?"},
		{Percents, "1", "Is that 1 % or 100 %?"},
		{Percents, "0,07", "Is that 0.07 % or 7 %?"},
		{Lengths, "12,000 mm", "Do you mean 12 or 12000?"},
		{Lengths, "1.500", "Do you mean 1.5 or 1500?"},
		{Lengths, "1.500,2", "Do you mean 1500.2?"},
		{Lengths, "1,500.2 m", "Do you mean 1500.2?"},
		{Lengths, "1,234,567", "Do you mean 1234567?"},
		{Lengths, "1.2.3", "Do you mean 123?"},
		{Lengths, "NaN", "not a number"},
		{Lengths, "inf", "not a number"},
		{Lengths, "-Infinity", "not a number"},
		{Lengths, "0x10", "ordinary digits"},
		{Lengths, "1e999", "ordinary digits"},
		{Lengths, "1e5", "ordinary digits"},
		{Inertias, "1e999", "too large"},
		{Inertias, "1e-999", "too close to zero"},
		{Lengths, "1_000", "ordinary digits"},
		{Lengths, "3 kg", "\"kg\" is a mass; this field is a length."},
		{Masses, "3 m", "\"m\" is a length; this field is a mass."},
		{Masses, "30 N", "\"N\" is a force; this field is a mass."},
		{Masses, "1 ton", "There are three tons."},
		{Masses, "2 Tons", "There are three tons."},
		{Volumes, "5 gal", "There are two gallons."},
		{Volumes, "5 gallons", "There are two gallons."},
		{Voltages, "5 A", "\"A\" is a current; this field is a voltage."},
		{Powers, "84 Wh", "\"Wh\" is an energy; this field is a power."},
		{Energies, "84 W", "\"W\" is a power; this field is an energy."},
		{Temperatures, "5 m", "\"m\" is a length; this field is a temperature."},
		{Powers, "5 mw", "is not a unit that this field knows"},
		{Lengths, "3 parsecs", "Use mm, cm, m, km, in, ft, mi, yd, thou or µm."},
		{Lengths, "5-6", "looks like two"},
		{Lengths, "5 6", "looks like two"},
		{Lengths, "2 00", "looks like two"},
		{Lengths, "9 ft 14 in", "too much in for one ft"},
		{Lengths, "9.5 ft 2 in", "looks like two"},
		{Lengths, "2 in 9 ft", "looks like two"},
		{Lengths, "1/0", "fraction"},
		{Lengths, "1 3/2", "fraction"},
		{Lengths, "~5", "not a number"},
		{Lengths, "about 5", "not a number"},
		{Lengths, "-", "not a number"},
		{Lengths, ",", "not a number"},
		{Lengths, "--5", "not a number"},
		{Counts, "2.5", "whole number"},
		{Counts, "½", "whole number"},
		{Prices, "$5", "not a number"},
		{Prices, "5 EUR", "Write the number only"},
		{ClockTimes, "18.30", "like 18:30"},
		{ClockTimes, "25:00", "Hours go from 0 to 24"},
		{ClockTimes, "24:01", "ends at 24:00"},
		{ClockTimes, "12:60", "00 to 59"},
		{ClockTimes, "evening", "like 18:30"},
		{GearRatios, "3:2", "like 27"},
		{UTCOffsets, "5:75", "time zone"},
		{Latitudes, "-33.9 S", "not both"},
		{Latitudes, "12 E", "is not a unit"},
		{MachineConstants, "0 rpm/V", "no meaning"},
		{Lengths, strings.Repeat("9", 399), "too large"},
		{Lengths, "0." + strings.Repeat("0", 390) + "1", "too close to zero"},
		{Lengths, strings.Repeat("It was a dark and stormy night. ", 1000), "too long"},
		{Lengths, strings.Repeat("1", 401), "too long"},
		{Lengths, "<script>alert(1)</script>", "not a number"},
		{Lengths, "5\x00", "not a unit"},
	} {
		got, known, err := c.q.Parse(c.text, Metric)
		if err == nil || known || got != 0 {
			t.Errorf("%.40q in %s is taken as %v (%v)", c.text, c.q.Noun(), got, known)
			continue
		}
		if !strings.Contains(err.Error(), c.say) {
			t.Errorf("%.40q: %q does not say %q", c.text, err, c.say)
		}
	}
}

func TestNotKnown(t *testing.T) {
	for _, s := range []string{"", "  ", "?", "not known", "Unknown", "I do not know", "I don’t know.", "\u00a0"} {
		for name, q := range everything {
			if v, known, err := q.Parse(s, Metric); v != 0 || known || err != nil {
				t.Errorf("%s: %q is %v, %v, %v; want not known", name, s, v, known, err)
			}
		}
	}
}

func TestFormat(t *testing.T) {
	for _, c := range []struct {
		q    Quantity
		si   float64
		sys  System
		want string
	}{
		{Energies, 0.118 * 3600, Metric, "0.118 Wh"},
		{Energies, 168.2 * 3600, Metric, "168 Wh"},
		{Masses, 10800, Metric, "10 800 kg"},
		{Masses, 1234567, Metric, "1 230 000 kg"},
		{Masses, 1e30, Metric, "1 000 000 000 000 000 000 000 000 000 000 kg"},
		{Masses, 40, Imperial, "88 lb"},
		{Currents, 1e-7, Metric, "0.0000001 A"},
		{SmallLengths, 0.06, Metric, "60 mm"},
		{Temperatures, -40, Imperial, "−40 °F"},
		{Temperatures, 25, Imperial, "77 °F"},
		{Angles, math.Pi / 6, Metric, "30°"},
		{Percents, 0.125, Metric, "12.5 %"},
		{ClockTimes, 66600, Metric, "18:30"},
		{ClockTimes, 66615.25, Metric, "18:30:15.25"},
		{UTCOffsets, -12600, Metric, "-3:30"},
		{Counts, 8760, Metric, "8 760"},
		{Ratios, math.NaN(), Metric, "not known"},
		{Ratios, math.Inf(1), Metric, "not known"},
		{Voltages, -0.00001, Metric, "−0.00001 V"},
		{Voltages, 0, Metric, "0 V"},
	} {
		if got := strings.ReplaceAll(c.q.Format(c.si, c.sys), Space, " "); got != c.want {
			t.Errorf("%v: %q, want %q", c.si, got, c.want)
		}
	}
	if got := strings.ReplaceAll(Masses.Echo(40, Metric), Space, " "); got != "40 kg = 88 lb" {
		t.Errorf("echo: %q", got)
	}
	if got := strings.ReplaceAll(SmallLengths.PlausibleRange(Metric), Space, " "); got != "0.1 to 5 000 mm" {
		t.Errorf("range: %q", got)
	}
}

func TestLabels(t *testing.T) {
	if got := SmallLengths.Word(Metric) + ", " + SmallLengths.Word(Imperial) + ", " + Counts.Word(Metric); got != "millimetres, inches, " {
		t.Errorf("words %q", got)
	}
	if !Counts.Whole() || Masses.Whole() {
		t.Error("whole numbers")
	}
	if !SmallLengths.Plausible(0.06) || SmallLengths.Plausible(60) || !Ratios.Plausible(-3) {
		t.Error("plausible: a drum of 60 mm is, one of 60 m is not; a plain number may be anything")
	}
}

// What was typed short is shown short.
func TestFormatFullIsShort(t *testing.T) {
	for _, c := range []struct {
		q     Quantity
		typed string
		sys   System
		want  string
	}{
		{SmallLengths, "60", Metric, "60"}, {SmallLengths, "0.06 m", Metric, "60"}, {SmallLengths, "2.5 in", Imperial, "2.5"},
		{Lengths, "2,8", Metric, "2.8"}, {Lengths, "9 ft 6 in", Imperial, "9.5"}, {Lengths, "2.8 m", Imperial, "2.8 m"},
		{Masses, "40", Imperial, "40"}, {Temperatures, "77", Imperial, "77"}, {Temperatures, "0.1", Metric, "0.1"},
		{RotationSpeeds, "410", Metric, "410"}, {Latitudes, "59.65", Metric, "59.65"}, {Percents, "3.3", Metric, "3.3"},
		{MachineConstants, "0.05", Metric, "0.05"}, {Charges, "7.2", Metric, "7.2"}, {Inertias, "5e-5 kgm2", Metric, "500"},
		{ClockTimes, "6:30 pm", Metric, "18:30"}, {UTCOffsets, "5.5", Metric, "+5:30"}, {Forces, "265 kg", Metric, "2598.76225"},
	} {
		v, _, err := c.q.Parse(c.typed, c.sys)
		if err != nil {
			t.Fatal(err)
		}
		if got := c.q.FormatFull(v, c.sys); got != c.want {
			t.Errorf("%q (%s) is shown as %q, want %q", c.typed, c.q.Noun(), got, c.want)
		}
	}
}

// A stored value that is shown in a form and posted back unchanged is the same to the last bit, in both systems.
func TestShownAndPostedBack(t *testing.T) {
	for name, q := range everything {
		t.Run(name, rapid.MakeCheck(func(t *rapid.T) {
			sys := System(rapid.IntRange(0, 1).Draw(t, "system"))
			v := rapid.Custom(drawn(q)).Draw(t, "value")
			text := q.FormatFull(v, sys)
			got, known, err := q.Parse(text, sys)
			if err != nil || !known || math.Float64bits(got) != math.Float64bits(v) {
				t.Fatalf("%v is shown as %q and comes back as %v (%v)", v, text, got, err)
			}
		}))
	}
	for _, v := range []float64{5e-324, 2.2250738585072014e-308, 1e300, -1e300} {
		for _, sys := range []System{Metric, Imperial} {
			text := Masses.FormatFull(v, sys)
			if got, _, err := Masses.Parse(text, sys); got != v {
				t.Errorf("%v comes back as %v (%v)", v, got, err)
			}
		}
	}
}

// drawn draws values of all magnitudes that a field can hold, round and not round, but no minus zero: no field shows one.
func drawn(q Quantity) func(t *rapid.T) float64 {
	return func(t *rapid.T) float64 {
		switch {
		case q.dim == clockTimes:
			return rapid.Float64Range(0, 86400).Draw(t, "seconds") + 0
		case q.dim.whole:
			return float64(rapid.IntRange(0, 1e6).Draw(t, "pieces"))
		}
		v := rapid.Float64Range(-1e9, 1e9).Draw(t, "wide") + 0
		switch rapid.IntRange(0, 3).Draw(t, "kind") {
		case 0:
			v = rapid.Float64Range(1e-12, 1).Draw(t, "small")
		case 1:
			v = math.Round(v*100) / 1e6
		case 2:
			v = q.shown[0].fromSI(v)
		}
		return v + 0
	}
}

// Reading keeps order: a larger number typed is never a smaller value stored.
func TestOrder(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a := rapid.Float64Range(-1e6, 1e6).Draw(t, "a")
		b := rapid.Float64Range(-1e6, 1e6).Draw(t, "b")
		va, _, _ := Temperatures.Parse(plain(floatText(a)), Imperial)
		vb, _, _ := Temperatures.Parse(plain(floatText(b)), Imperial)
		if a < b && va > vb {
			t.Fatalf("%v < %v but %v > %v", a, b, va, vb)
		}
	})
}

// Every symbol that is offered is read, and means what the table says.
func TestSymbolsAreRead(t *testing.T) {
	for name, q := range everything {
		for _, m := range q.dim.units {
			if m.symbol == "" {
				continue
			}
			if got := q.dim.find(m.symbol); got != m {
				t.Errorf("%s: %q is read as %v", name, m.symbol, got)
			}
		}
	}
}

func FuzzParse(f *testing.F) {
	for _, s := range []string{"1,5", "9'2\"", "2 000", "1½", "NaN", "1e999", "18:30", "1:27", "51°30'N", "UTC+5:30", "−3", "1 1/2 in"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, s string) {
		for name, q := range everything {
			for _, sys := range []System{Metric, Imperial} {
				v, known, err := q.Parse(s, sys)
				if math.IsNaN(v) || math.IsInf(v, 0) {
					t.Fatalf("%s: %q is %v", name, s, v)
				}
				if err != nil && (known || v != 0 || err.Error() == "") {
					t.Fatalf("%s: %q is refused and yet %v", name, s, v)
				}
				if !known || q.dim == gearRatios && v < 0 {
					continue
				}
				text := q.FormatFull(v, sys)
				if back, _, err := q.Parse(text, sys); err != nil || back != v {
					t.Fatalf("%s: %q is %v, shown as %q, comes back as %v (%v)", name, s, v, text, back, err)
				}
				if out := q.Format(v, sys); strings.ContainsAny(out, "eE") && strings.Contains(out, "e+") {
					t.Fatalf("%s: %v is shown as %q", name, v, out)
				}
			}
		}
	})
}

func BenchmarkParse(b *testing.B) {
	for b.Loop() {
		Lengths.Parse("9 ft 2 1/2 in", Metric)
	}
}

func BenchmarkFormatFull(b *testing.B) {
	for b.Loop() {
		Lengths.FormatFull(2.8, Imperial)
	}
}

func floatText(v float64) string { return strconv.FormatFloat(v, 'e', -1, 64) }

// A number alone gets the unit that it is meant in, and then means the same in both systems; what means the same already
// stays as it was typed.
func TestWithUnit(t *testing.T) {
	for name, q := range everything {
		for _, sys := range []System{Metric, Imperial} {
			for _, text := range []string{"7", "0", "1,5", "1 ½", "12.25", "−3", "0.001"} {
				meant, _, err := q.Parse(text, sys)
				if err != nil {
					continue
				}
				kept := q.WithUnit(text, sys)
				for _, later := range []System{Metric, Imperial} {
					if got, _, err := q.Parse(kept, later); err != nil || got != meant {
						t.Errorf("%s: %q in system %d is kept as %q, and read in system %d as %v (%v), not %v", name, text, sys, kept, later, got, err, meant)
					}
				}
				if back := q.WithoutUnit(kept, sys); back != text {
					t.Errorf("%s: %q comes back as %q", name, text, back)
				}
			}
		}
	}
	for _, c := range []struct {
		q    Quantity
		text string
		sys  System
		want string
	}{
		{Lengths, "9", Imperial, "9 ft"},
		{Lengths, "9", Metric, "9 m"},
		{Lengths, "2.8 m", Imperial, "2.8 m"},
		{Lengths, "high", Imperial, "high"},
		{Lengths, "", Imperial, ""},
		{Voltages, "12", Imperial, "12"},
		{Temperatures, "20", Metric, "20 °C"},
	} {
		if got := c.q.WithUnit(c.text, c.sys); got != c.want {
			t.Errorf("%q: %q, want %q", c.text, got, c.want)
		}
	}
	if got := Lengths.WithoutUnit("2.8 m", Imperial); got != "2.8 m" {
		t.Errorf("what was typed in metres is shown as %q in a field of feet", got)
	}
}

// From ten pounds up a mass and a load have no decimals, below they have three digits: 0.45359237 kg are one pound. Kilograms keep
// theirs, and so does the working.
func TestWholePounds(t *testing.T) {
	const lb = 0.45359237
	for _, tc := range []struct{ got, want string }{
		{Masses.Format(9.99*lb, Imperial), "9.99 lb"}, {Masses.Format(9.996*lb, Imperial), "10 lb"}, {Masses.Format(10.4*lb, Imperial), "10 lb"}, {Masses.Format(88.2*lb, Imperial), "88 lb"},
		{Masses.Format(99.6*lb, Imperial), "100 lb"}, {Masses.Format(1234*lb, Imperial), "1 230 lb"}, {Masses.Format(40.5, Metric), "40.5 kg"}, {Masses.Format(-88.2*lb, Imperial), Minus + "88 lb"},
		{Loads.Format(88.2*lb*9.80665, Imperial), "88 lb"}, {Loads.Format(40.5*9.80665, Metric), "40.5 kg"}, {Masses.FormatTo(88.2*lb, Imperial, 3, Up), "89 lb"}, {Masses.FormatTo(88.9*lb, Imperial, 3, Down), "88 lb"},
		{Masses.FormatTo(88.2*lb, Imperial, 1, Nearest), "90 lb"}, {Masses.Fine().Format(88.2*lb, Imperial), "88.2 lb"}, {Forces.Format(88.2*lb*9.80665, Imperial), "88.2 lbf"},
	} {
		if got := strings.ReplaceAll(tc.got, Space, " "); got != tc.want {
			t.Errorf("%q, want %q", got, tc.want)
		}
	}
}
