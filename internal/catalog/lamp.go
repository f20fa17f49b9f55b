package catalog

import (
	"fmt"

	"duskweight/internal/model/lift"
	"duskweight/internal/model/unit"
)

// Lamp is what can hang on the motor while the mass comes down: the voltage where one begins to light, and the volts
// more for each ampere more.
type Lamp struct {
	From
	Name      string
	Kind      lift.LoadKind // the word of the design: "string", "cell", "clamp", "constant_power"
	Threshold unit.Voltage
	Slope     unit.Resistance
	Diode     unit.Voltage
	Rated     unit.Current // of one; 0: not given
}

// InRows returns the load of parallel rows with series lamps in each row: n·U_0 and n·r_d/rows.
func (l Lamp) InRows(series, rows unit.Count) lift.DCLoad {
	s, p := float64(max(series, 1)), float64(max(rows, 1))
	out := lift.DCLoad{
		Kind: l.Kind, Name: l.Name,
		Threshold: unit.Of(unit.Voltage(s) * l.Threshold),
		Slope:     unit.Of(unit.Resistance(s/p) * l.Slope),
	}
	if l.Diode > 0 {
		out.Diode = unit.Of(l.Diode)
	}
	if l.Rated > 0 {
		out.MaxCurrent = unit.Of(unit.Current(p) * l.Rated)
	}
	return out
}

// Take puts the load in the place of another on the motor's wires; whether it is wired for good stays as it was said.
func (l Lamp) Take(into *lift.DCLoad, series, rows unit.Count) Taken {
	t := Taken{Gone: []string{"resistance_ohm", "power_w", "set_speed_rad_s", "efficiency", "min_voltage_v", "max_voltage_v", "diode_v", "rated_current_a"}}
	kept := into.Permanent
	*into = l.InRows(series, rows)
	into.Permanent = kept
	if series > 1 || rows > 1 {
		into.Name = fmt.Sprintf("%s, %d × %d", l.Name, max(series, 1), max(rows, 1))
	}
	t.Copied = append(t.Copied, "kind", "threshold_v", "slope_ohm")
	if into.Diode.Is {
		t.Copied = append(t.Copied, "diode_v")
	}
	if into.MaxCurrent.Is {
		t.Copied = append(t.Copied, "rated_current_a")
	}
	return t
}

// Lamps returns typical loads for the way down.
func Lamps() []Lamp {
	of := func(note string) From { return typicalOf("a load of this kind", note) }
	return []Lamp{
		{of("100 to 150 lm for each watt."), "White lamp of 1 W (350 mA)", lift.LoadString, 2.75, 0.7, 0, 0.35},
		{of(""), "White lamp of 20 mA", lift.LoadString, 2.8, 13, 0, 0.02},
		{of("20 segments make a metre of a strip with 60 lamps: 0.4 A at 12 V."), "Strip of 12 V, one segment (three lamps and a resistor)", lift.LoadString, 8.1, 195, 0, 0.02},
		{of("0.2 A a metre."), "Strip of 24 V, one segment (six or seven lamps)", lift.LoadString, 16.2, 280, 0, 0},
		{of(""), "Clamp of 14 V with a power transistor", lift.LoadClamp, 14, 0.3, 0, 0},
		{of("A diode keeps it from driving the motor."), "12 V lead battery through a diode", lift.LoadCell, 12.8, 0.035, 0.4, 0},
		{of("A diode keeps it from driving the motor."), "12.8 V iron-phosphate battery through a diode", lift.LoadCell, 13.3, 0.035, 0.4, 0},
	}
}
