// Package unit holds the quantities that Duskweight computes with. Every quantity is a float64 of its SI unit under a
// name of its own, so that a torque cannot be handed over where a force is wanted. Degrees, watt-hours, millimetres and
// pounds exist only at the edge: constants convert in, methods convert out.
package unit

import "math"

// G is the standard acceleration of free fall, m/s² (3rd CGPM, 1901; ISO 80000-3).
const G = 9.80665

// The quantities, each in its SI unit. Temperatures that are readings are °C.
type (
	Mass              float64 // kg
	Length            float64 // m
	Area              float64 // m²
	Volume            float64 // m³
	Flow              float64 // m³/s
	Angle             float64 // rad
	Speed             float64 // m/s
	Acceleration      float64 // m/s²
	AngularSpeed      float64 // rad/s
	Force             float64 // N
	Torque            float64 // N·m
	Stress            float64 // Pa
	Energy            float64 // J
	Power             float64 // W
	Voltage           float64 // V
	Current           float64 // A
	Charge            float64 // C, that is A·s
	Resistance        float64 // Ω
	MachineConstant   float64 // V·s/rad, the same as N·m/A
	Inertia           float64 // kg·m²
	ThermalResistance float64 // K/W
	HeatLoss          float64 // W/(m²·K)
	HeatLossWind      float64 // W·s/(m³·K)
	Duration          float64 // s
	Celsius           float64 // °C, a reading
	PerKelvin         float64 // 1/K
	Irradiance        float64 // W/m²
	Irradiation       float64 // J/m²
	Stiffness         float64 // N/m
	Density           float64 // kg/m³
	Ratio             float64 // 1
	Money             float64 // in the project's own currency, never converted
	Count             int     // whole pieces
)

// Constants that bring other units in: 25*unit.Millimetre.
const (
	Millimetre       Length       = 1e-3
	Inch             Length       = 0.0254
	Foot             Length       = 0.3048
	Pound            Mass         = 0.45359237
	Tonne            Mass         = 1000
	WattHour         Energy       = 3600
	AmpereHour       Charge       = 3600
	Minute           Duration     = 60
	Hour             Duration     = 3600
	Day              Duration     = 86400
	Degree           Angle        = math.Pi / 180
	RevPerMinute     AngularSpeed = 2 * math.Pi / 60
	Megapascal       Stress       = 1e6
	SquareMillimetre Area         = 1e-6
	PoundForce       Force        = 0.45359237 * G
	PoundForceInch   Torque       = 0.45359237 * G * 0.0254
)

// WattHours returns e in watt-hours.
func (e Energy) WattHours() float64 { return float64(e) / 3600 }

// AmpereHours returns q in ampere-hours.
func (q Charge) AmpereHours() float64 { return float64(q) / 3600 }

// Degrees returns a in degrees.
func (a Angle) Degrees() float64 { return float64(a) * 180 / math.Pi }

// Millimetres returns l in millimetres.
func (l Length) Millimetres() float64 { return float64(l) * 1000 }

// RPM returns w in revolutions a minute.
func (w AngularSpeed) RPM() float64 { return float64(w) * 60 / (2 * math.Pi) }

// Kilograms returns the mass whose weight is f: makers weigh in kilograms.
func (f Force) Kilograms() Mass { return Mass(float64(f) / G) }

// Weight returns the weight of m at standard gravity.
func (m Mass) Weight() Force { return Force(float64(m) * G) }

// Megapascals returns s in MPa, that is N/mm².
func (s Stress) Megapascals() float64 { return float64(s) / 1e6 }
