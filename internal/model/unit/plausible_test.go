package unit

import (
	"math"
	"strings"
	"testing"
)

// The plausible range of each quantity as a person would say it: a value a hundredth inside of either end is plausible, one a
// hundredth outside is asked about. An end that is empty has no border on that side.
func TestPlausibleOnEitherSide(t *testing.T) {
	for _, c := range []struct {
		q      Quantity
		lo, hi string
	}{
		{Lengths, "1 mm", "1 km"}, {SmallLengths, "0.1 mm", "5 m"}, {Elevations, "-430 m", "6 km"}, // the Dead Sea; the highest town is at 5.1 km
		{Masses, "1 g", "100 t"}, {SmallMasses, "0.1 g", "100 kg"}, {Forces, "0.1 N", "1000 kN"}, {Loads, "1 N", "1000 kN"},
		{Torques, "1 mN·m", "10 kN·m"}, {SmallTorques, "0.01 mN·m", "10 N·m"}, {Stresses, "0.1 MPa", "2.5 GPa"}, // wire of the strongest ropes is under it
		{SmallStresses, "0.1 kPa", "1 MPa"}, {Pressures, "0.1 bar", "100 bar"}, {Energies, "1 mWh", "100 kWh"}, {BigEnergies, "1 Wh", "100 MWh"}, {Powers, "1 mW", "20 kW"},
		{Voltages, "10 mV", "1 kV"}, {Currents, "1 mA", "1 kA"}, {Charges, "100 mAh", "2000 Ah"}, {Resistances, "1 mΩ", "10 kΩ"},
		{MachineConstants, "0.1 mV·s/rad", "10 V·s/rad"}, {Inertias, "0.1 g·cm²", "1 kg·m²"}, {ThermalResistances, "0.01 K/W", "100 K/W"},
		{Years, "", "100 years"}, {UTCOffsets, "-12 h", "14 h"}, // the zones that there are
		{Temperatures, "-50 °C", "200 °C"}, {TempSteps, "", "150 K"}, {RotationSpeeds, "0.01 rad/s", "10000 rad/s"}, {Speeds, "0.01 mm/s", "60 m/s"},
		{SlowSpeeds, "0.01 mm/s", "5 m/s"}, {RoadSpeeds, "1 cm/s", "100 m/s"}, {Irradiances, "", "1.4 kW/m²"}, {Irradiations, "", "12 kWh/m²"},
		{YearIrradiations, "300 kWh/m²", "3000 kWh/m²"}, {GearRatios, "1", "10000"}, {Counts, "", "10000"}, {SmallAreas, "0.01 mm²", "100 cm²"},
		{Volumes, "0.1 l", "100 m³"}, {BigVolumes, "10 l", "10000 m³"}, {Flows, "1 ml/s", "1 m³/s"}, {Densities, "10 kg/m³", "20 kg/l"}, {HeatLosses, "5 W/(m²·K)", "100 W/(m²·K)"},
		{HeatLossesWind, "", "20 W·s/(m³·K)"}, {PerKelvins, "-2 %/K", "2 %/K"}, {PerHours, "0.001 /h", "20 /h"},
	} {
		for side, text := range map[float64]string{-1: c.lo, 1: c.hi} {
			if text == "" {
				continue
			}
			end, known, err := c.q.Parse(text, Metric)
			if err != nil || !known {
				t.Fatalf("%s: %v", text, err)
			}
			step := 0.01 * math.Abs(end)
			if in, out := c.q.Plausible(end-side*step), c.q.Plausible(end+side*step); !in || out {
				t.Errorf("%s: a hundredth inside of %s %v, outside %v", c.q.Noun(), text, in, out)
			}
		}
	}
	for _, q := range []Quantity{Durations, Minutes, Hours, Days, Angles, Latitudes, Longitudes, Ratios, Percents, Prices, Areas, Openings, Stiffnesses} {
		if !q.Plausible(-1e9) || !q.Plausible(1e9) {
			t.Errorf("%s has a border", q.Noun())
		}
	}
}

// A third of ten in every quantity's own unit has three digits, as a table on the page has, but for those that need more: a
// height in metres over a kilometre, a battery's volts, a place, a year of sun, a gear ratio; and a road speed, which nobody
// reads to a tenth. What is counted or paid is shown whole.
func TestDigitsOfEveryQuantity(t *testing.T) {
	special := map[string]string{"Elevations": "3.333", "Voltages": "3.333", "Latitudes": "3.3333", "Longitudes": "3.3333", "YearIrradiations": "3.333",
		"GearRatios": "3.333", "RoadSpeeds": "3.3", "Counts": "3.3333333333333", "Prices": "3.3333333333333"}
	quantities := map[string]Quantity{"RoadSpeeds": RoadSpeeds}
	for name, q := range everything {
		quantities[name] = q
	}
	for name, q := range quantities {
		if name == "ClockTimes" || name == "UTCOffsets" { // hours and minutes
			continue
		}
		want := special[name]
		if want == "" {
			want = "3.33"
		}
		si, _ := q.shown[Metric].toSI(factor("10/3"))
		f, _ := si.Float64()
		got := q.Number(f, Metric)
		if len(want) < 8 && got != want || !strings.HasPrefix(got, want) {
			t.Errorf("%s shows a third of ten as %s, want %s", name, got, want)
		}
	}
}

// A text that says a unit stays, one that does not gets it, and both systems then read the same.
func TestWithUnitIsReadAlike(t *testing.T) {
	for _, c := range []struct {
		q    Quantity
		text string
		sys  System
		want string
	}{
		{Masses, "40", Imperial, "40 lb"}, {Masses, "40", Metric, "40 kg"}, {Masses, "40 kg", Imperial, "40 kg"}, {Masses, "many", Metric, "many"}, {Masses, "", Metric, ""},
		{Masses, "0", Metric, "0"}, // nothing is nothing in both
		{Ratios, "0.5", Imperial, "0.5"}, {Temperatures, "77°", Imperial, "77°"},
	} {
		got := c.q.WithUnit(c.text, c.sys)
		if got != c.want {
			t.Errorf("%q under %d becomes %q, want %q", c.text, c.sys, got, c.want)
		}
		if c.text != c.want && c.q.WithoutUnit(got, c.sys) != c.text {
			t.Errorf("%q becomes %q again", got, c.q.WithoutUnit(got, c.sys))
		}
	}
}
