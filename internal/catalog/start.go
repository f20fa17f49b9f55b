package catalog

import (
	"math"

	"duskweight/internal/model"
	"duskweight/internal/model/cell"
	"duskweight/internal/model/lift"
	"duskweight/internal/model/load"
	"duskweight/internal/model/panel"
	"duskweight/internal/model/sun"
	"duskweight/internal/model/unit"
)

// Answers are the three that a first plan is made from: where, what heavy thing and how high, which lamps for how long.
type Answers struct {
	Name      string // of the project
	Place     sun.Place
	HeavyName string
	Mass      unit.Mass
	Height    unit.Length
	Support   lift.RestsOn // what carries the beam; "" for not known
	Lamps     unit.Count
	LampPower unit.Power
	Hours     unit.Duration // from dusk; 0 or a day and more means the whole night
	Seed      uint64
	Currency  string

	guessed []Guess // see Guess
}

// Start returns a first plan: the lifted mass, and a small battery sized for the same night. Everything that the three
// answers do not give is typical and marked so, or not known; strength is never given a value.
func Start(a Answers) model.Document {
	p := model.Project{Name: a.Name, Currency: a.Currency, Seed: a.Seed, Place: a.Place, Origins: model.Origins{}}
	p.Load.Appliances = []load.Appliance{startLamps(a)}
	p.Load.Night.Own = load.NightSun
	doc := model.Document{Edition: 1, Project: p, Variants: []model.Variant{startMass(a), startBattery(a)}}
	a.markGuesses(&doc)
	return doc
}

func startLamps(a Answers) load.Appliance {
	l := load.Appliance{Name: "Lamps", Power: unit.Of(a.LampPower), Count: unit.Of(a.Lamps), AfterDusk: unit.Yes, Supply: load.SupplyDc, Priority: load.PriorityEssential, Purpose: load.ForLight}
	if a.Hours <= 0 || a.Hours >= 24*unit.Hour {
		l.From, l.To = clock(12, 0), clock(12, 0)
		return l
	}
	l.FromDusk = unit.Of(a.Hours)
	return l
}

// marks collects the origins of one variant.
type marks struct{ o model.Origins }

func (m marks) typical(source string, paths ...string) {
	for _, p := range paths {
		m.o[p] = model.Origin{Kind: model.OriginTypical, Source: source}
	}
}

func startPanels(a Answers, m marks) []panel.Array {
	tilt := unit.Angle(math.Abs(float64(a.Place.Latitude.Val)))
	tilt = min(max(tilt+10*unit.Degree, 15*unit.Degree), 75*unit.Degree) // steeper than the latitude favours the dark months: common practice
	tilt = unit.Angle(math.Round(tilt.Degrees()/5)) * 5 * unit.Degree
	faces := 180 * unit.Degree
	if a.Place.Latitude.Val < 0 {
		faces = 0
	}
	m.typical("a common small panel, facing the midday sun, steeper than the latitude for the dark months: common practice",
		"panels[0].count", "panels[0].panel_w", "panels[0].tilt_rad", "panels[0].azimuth_rad", "controller.standing_w")
	return []panel.Array{{Name: "Panel", Count: unit.Of[unit.Count](1), Power: unit.Of[unit.Power](100), Tilt: unit.Of(tilt), Azimuth: unit.Of(faces)}}
}

func startController() panel.Controller {
	return panel.Controller{Kind: panel.ControllerTracking, Night: unit.Of[unit.Power](0.2)} // 10–20 mA at 12 V: from memory
}

// startBattery is an iron-phosphate battery that holds two of the longest nights asked for, rounded up to a capacity
// that is sold.
func startBattery(a Answers) model.Variant {
	m := marks{model.Origins{}}
	hours := float64(a.Hours) / 3600
	if hours <= 0 || hours > 16 {
		hours = 16
	}
	night := float64(a.Lamps)*float64(a.LampPower)*hours + 0.4*24 // Wh, with what idles
	want := 2 * night / 0.8 / 12.8                                // Ah: two nights at a usable depth of 0.8
	ah := 6.0
	for _, sold := range []float64{6, 12, 20, 30, 50, 100, 200, 300, 500, 1000, 2000, 5000} {
		if ah = sold; sold >= want {
			break
		}
	}
	v := model.Variant{Name: "Battery", Controller: startController(), Origins: m.o}
	v.Panels = startPanels(a, m)
	v.Stores = []model.Store{{Cells: &cell.Bank{Name: "Iron phosphate battery", Role: cell.RoleNight, Kind: cell.LFP,
		Capacity: unit.Of(unit.Charge(ah) * unit.AmpereHour), Voltage: unit.Of[unit.Voltage](12.8)}}}
	m.typical("sized here to hold two of your nights; read the label of the one you have",
		"stores[0].cells.block_capacity_c", "stores[0].cells.block_voltage_v")
	return v
}

// startMotor is a typical motor that a heavy thing of this weight is tried with; values from memory, ± 30 %, but for
// the first, which is read from a published sheet (Pittman 14203, 12 V winding).
type startMotor struct {
	name                       string
	volts, k, r, i0, j, icont  float64
	rth, rthCase, tau, tauCase float64 // winding to case and case to air; without the case winding to air
	tmax, maxRPM               float64
}

var startMotors = [...]startMotor{
	{"Motor of 57 mm, 12 V", 12, 0.0327, 0.346, 0.34, 2.1e-5, 4.6, 8.1, 0, 900, 0, 155, 5000},
	{"Motor of 250 W, 24 V", 24, 0.068, 0.17, 1.8, 2.5e-4, 13, 0.6, 1.2, 60, 1500, float64(unmarked), 4500},
	{"Motor of 500 W, 48 V", 48, 0.150, 0.25, 1.6, 6e-4, 13, 0.4, 0.9, 80, 1800, float64(unmarked), 4000},
}

func startMass(a Answers) model.Variant {
	m := marks{model.Origins{}}
	v := model.Variant{Name: "The heavy thing", Controller: startController(), Origins: m.o}
	v.Panels = startPanels(a, m)
	h := startHoist(a, m)
	v.Stores = []model.Store{{Hoist: &h}}
	return v
}

// startHoist fills in a drive that would lift the thing and let it down again: a drum of eight rope diameters, and the motor
// and gearbox of startDrive.
func startHoist(a Answers, m marks) lift.Hoist {
	d := ropeFor(a.Mass)
	drum := 8 * d
	e := 0.87
	mot, stages, ratio := startDrive(a, e, float64(drum+d)/2)
	slope := math.Round((lampVolts-lampThreshold)/max(lampCurrent(a), mot.i0)*100) / 100

	h := lift.Hoist{Name: a.HeavyName, Units: unit.Of[unit.Count](1), Mass: []lift.Piece{{Name: a.HeavyName, Mass: unit.Of(a.Mass)}}, Travel: unit.Of(a.Height)}
	h.Structure.RestsOn = a.Support
	h.Rope = lift.Rope{Kind: lift.RopePolyester, Diameter: unit.Of(d)}
	h.Reeving = lift.Reeving{RopeParts: unit.Of[unit.Count](1), LeadSheaves: unit.Of[unit.Count](1), Efficiency: unit.Of(unit.Ratio(e)), DeadEnd: lift.DeadEndMass}
	h.Drum = lift.Drum{Diameter: unit.Of(drum), DeadWraps: unit.Of[unit.Count](3)}
	h.Train.Stages = []lift.Stage{startGearbox(stages, ratio)}
	m.typical("a bought gearbox of metal planetary stages, 95 % each: from memory", gearboxPaths("stores[0].hoist.train.stages[0].")...)
	h.Machine = lift.Machine{Name: mot.name, K: unit.Of(unit.MachineConstant(mot.k)), R: unit.Of(unit.Resistance(mot.r)), I0: unit.Of(unit.Current(mot.i0)), J: unit.Of(unit.Inertia(mot.j)),
		MaxCurrent: unit.Of(unit.Current(mot.icont)), MaxSpeed: unit.Of(unit.AngularSpeed(mot.maxRPM) * unit.RevPerMinute), MaxWinding: unit.Of(unit.Celsius(mot.tmax)),
		RthWinding: unit.Of(unit.ThermalResistance(mot.rth)), TauWinding: unit.Of(unit.Duration(mot.tau))}
	if mot.rthCase > 0 {
		h.Machine.RthCase, h.Machine.TauCase = unit.Of(unit.ThermalResistance(mot.rthCase)), unit.Of(unit.Duration(mot.tauCase))
	}
	h.Raise = lift.Raise{Feed: lift.FeedDrive, Voltage: unit.Of(unit.Voltage(mot.volts)), DriveEff: unit.Of[unit.Ratio](0.92)}
	h.Lower = lift.Lower{Loads: []lift.DCLoad{{Kind: lift.LoadString, Name: "Lamps in a row", Threshold: unit.Of[unit.Voltage](lampThreshold), Slope: unit.Of(unit.Resistance(slope))}}}
	p := "stores[0].hoist."
	m.typical("common practice", p+"rope.kind", p+"rope.diameter_m", p+"reeving.rope_parts", p+"reeving.lead_sheaves", p+"reeving.dead_end", p+"drum.dead_wraps", p+"raise.feed")
	m.typical("eight rope diameters: maker's guidance for fibre rope", p+"drum.diameter_m")
	m.typical("small pulley with fibre rope: from memory", p+"reeving.sheave_efficiency")
	m.typical("a motor of this size: from memory, ± 30 %", p+"machine.k_vs_rad", p+"machine.r_ohm", p+"machine.i0_a", p+"machine.j_kg_m2", p+"machine.continuous_current_a",
		p+"machine.max_speed_rad_s", p+"machine.max_winding_c", p+"machine.rth_winding_k_w", p+"machine.tau_winding_s", p+"raise.voltage_v", p+"raise.drive_efficiency")
	if mot.rthCase > 0 {
		m.typical("a motor of this size: from memory, ± 30 %", p+"machine.rth_case_k_w", p+"machine.tau_case_s")
	}
	m.typical("four white lamps in a row, and as many rows as your lamps' power needs: from memory", p+"lower.loads[0].threshold_v", p+"lower.loads[0].slope_ohm")
	return h
}

// startGearbox is one gearbox with equal stages inside, its efficiency in whole percents. Its rated torque is a strength and stays
// not known.
func startGearbox(stages int, ratio float64) lift.Stage {
	whole := math.Round(100*math.Pow(stageEff, float64(stages))) / 100
	return lift.Stage{Kind: lift.StageBox, Ratio: unit.Of(unit.Ratio(ratio)), Efficiency: unit.Of(unit.Ratio(whole)), InStages: unit.Of(unit.Count(stages))}
}

// gearboxPaths are the values of a gearbox that are guessed.
func gearboxPaths(at string) []string {
	return []string{at + "ratio", at + "efficiency", at + "stages_inside"}
}

// Lamps of the first plan hang on the motor in rows of four white ones: dark below the threshold, at their power at 12.5 V.
const (
	lampThreshold = 11.0 // V, from memory
	lampVolts     = 12.5 // V, from memory
)

// lampCurrent is what all lamps draw at their power, A.
func lampCurrent(a Answers) float64 {
	return float64(a.LampPower) * float64(a.Lamps) / lampVolts
}

const (
	startLoad  = 0.75    // share of the current that the motor stands all day at which it may lift: our own judgement
	startLift  = 10 * 60 // s that a lift may take: our own judgement
	stageEff   = 0.95    // of one planetary stage: from memory
	stageRatio = 5.0     // that one such stage has at most: common practice
)

// startDrive returns the smallest motor that lifts the thing in time and gives the lamps what they draw when it comes down, or
// at least four fifths; else the smallest that lifts it in time. With it comes a gearbox of so many stages inside. e is what the pulley passes
// on, r the rope's distance from the axle, m.
func startDrive(a Answers, e, r float64) (mot startMotor, stages int, ratio float64) {
	up, down := float64(a.Mass)*unit.G/e*r, float64(a.Mass)*unit.G*e*r
	found := false
	for _, m := range startMotors {
		slowest := m.slowest(r, float64(a.Height))
		n, total := m.gears(up, down, slowest, lampCurrent(a))
		feeds := m.gives(down, n, total) >= 0.8*lampCurrent(a) && (!found || m.i0 <= 1.2*lampCurrent(a))
		if total <= slowest && feeds {
			return m, n, total
		}
		if !found {
			mot, stages, ratio, found = m, n, total, total <= slowest
		}
	}
	return mot, stages, ratio
}

// slowest is the ratio with which lifting takes startLift; a motor with more of it draws less and turns a little faster than here.
func (m startMotor) slowest(r, height float64) float64 {
	return (m.volts - startLoad*m.icont*m.r) / m.k * r * startLift / height
}

// gears returns the stages and the ratio with which the motor gives what the lamps draw when the thing comes down; with less
// ratio they would waste the mass, or burn out. Three things bound it: the current of the lift, its time, and the motor's own
// drag, which may eat no more than half.
func (m startMotor) gears(up, down, slowest, lamps float64) (stages int, ratio float64) {
	for stages = 1; ; stages++ {
		n := float64(stages)
		lift := up / (m.k * (startLoad*m.icont - m.i0) * math.Pow(stageEff, n))
		feed := down * math.Pow(2-1/stageEff, n) / (m.k * (max(lamps, m.i0) + m.i0))
		if ratio = max(math.Ceil(lift*10), math.Floor(min(feed, slowest)*10)) / 10; ratio <= math.Pow(stageRatio, n) || stages == 8 {
			return stages, ratio
		}
	}
}

// gives is the current while the thing comes down, A.
func (m startMotor) gives(down float64, stages int, ratio float64) float64 {
	return down*math.Pow(2-1/stageEff, float64(stages))/(ratio*m.k) - m.i0
}

// ropeFor is the diameter a builder would reach for; it says nothing about strength.
func ropeFor(m unit.Mass) unit.Length {
	for _, row := range []struct {
		upTo unit.Mass
		d    unit.Length
	}{{30, 6}, {80, 8}, {150, 10}, {300, 14}, {600, 18}, {1500, 24}} {
		if m <= row.upTo {
			return row.d * unit.Millimetre
		}
	}
	return 32 * unit.Millimetre
}
