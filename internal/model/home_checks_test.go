package model

import (
	"math"
	"slices"
	"strings"
	"testing"

	"duskweight/internal/model/cell"
	"duskweight/internal/model/load"
	"duskweight/internal/model/panel"
	"duskweight/internal/model/unit"
)

// The checks of line and wiring of a whole variant, against numbers worked out apart from the program in double precision, from
// the equations that stand at each test. 1e-6 is the tolerance at which those numbers were given.
const homeTolerance = 1e-6

func homeNear(t *testing.T, what string, got, want float64) {
	t.Helper()
	if !(math.Abs(got-want) <= homeTolerance*math.Abs(want)) {
		t.Errorf("%s = %.10g, want %.10g", what, got, want)
	}
}

// bareVariant is a variant on a line of 12.8 V whose controller takes nothing.
func bareVariant() Variant {
	return Variant{Controller: panel.Controller{Kind: panel.ControllerTracking, BusVolts: unit.Of[unit.Voltage](12.8), Night: unit.Of[unit.Power](0)}}
}

// behindInverter is one appliance behind the inverter, all day.
func behindInverter(name string, w, surge float64) load.Appliance {
	return load.Appliance{Name: name, Power: unit.Of(unit.Power(w)), Surge: unit.Of(unit.Power(surge)), Count: unit.Of[unit.Count](1),
		From: unit.Of[unit.Duration](0), To: unit.Of[unit.Duration](0), Supply: load.SupplyInverter, Priority: load.PriorityEssential}
}

// checkNamed is the check of an id in a list.
func checkNamed(t *testing.T, list []LineCheck, id string) LineCheck {
	t.Helper()
	i := slices.IndexFunc(list, func(c LineCheck) bool { return c.ID == id })
	if i < 0 {
		t.Fatalf("no check %s", id)
	}
	return list[i]
}

// A kettle of 2 kW on an inverter of 3 kW that idles with 30 W: 30 + (1 + 2/45)·2000 + (1/9)·2000²/3000 = 2267.037 W at the line.
// Cells of 6.4 mΩ and a metre of 25 mm² there and back, copper at 40 °C: 7.88769 mΩ. I = (12.8 − √(12.8² − 4·R·2267.037))/(2R)
// = 202.342 A and V = 12.8 − I·R = 11.20399 V. A fuse of 15 A is used 202.342/15 times, 16.8618 with the quarter of reserve from
// which on it is tight; the inverter leaves at 11.2 V.
func TestKettleOnAWholeLine(t *testing.T) {
	l := load.Load{Appliances: []load.Appliance{behindInverter("Kettle", 2000, 2000)},
		Inverter: load.Inverter{Present: unit.Yes, Rated: unit.Of[unit.Power](3000), Idle: unit.Of[unit.Power](30), Input: unit.Of[unit.Voltage](12.8)}}
	v := bareVariant()
	v.Stores = []Store{{Cells: &cell.Bank{Name: "Battery", Kind: cell.LFP, Capacity: unit.Of(unit.Charge(100 * 3600)), Voltage: unit.Of[unit.Voltage](12.8),
		Fuse: unit.Of[unit.Current](15), CableLength: unit.Of[unit.Length](1), CableArea: unit.Of[unit.Area](25e-6)}}}
	p := Prepare(Project{Load: l}).Evaluate(v).Peak
	homeNear(t, "line", float64(p.Line), 2267.03704)
	if len(p.Banks) != 1 {
		t.Fatalf("%d batteries at the peak", len(p.Banks))
	}
	b := p.Banks[0]
	homeNear(t, "ohm", float64(b.Ohm), 0.00788769141)
	homeNear(t, "current", float64(b.Current), 202.341953)
	homeNear(t, "voltage", float64(b.Voltage), 11.2039891)
	fuse := checkNamed(t, p.Checks, "fuse")
	homeNear(t, "fuse with its reserve", float64(fuse.Use.Val)/fuseNearly, 16.8618294)
	if fuse.Word != GivesWay {
		t.Errorf("the fuse %s", fuse.Word)
	}
	homeNear(t, "cut", float64(checkNamed(t, p.Checks, "low_voltage").Use.Val), 0.999643956) // .875·12.8 V = 11.2 V
}

// A fridge of 80 W that starts with 480, a lamp of 60 and a drill of 100 that starts with 150 run together: 240 W. The greatest
// start is 240 + 400 = 640 W, of an inverter that gives 600 for a start: 1.0667.
func TestFridgeStartsOnAWholeLine(t *testing.T) {
	l := load.Load{Appliances: []load.Appliance{behindInverter("Fridge", 80, 480), behindInverter("Lamp", 60, 60), behindInverter("Drill", 100, 150)},
		Inverter: load.Inverter{Present: unit.Yes, Rated: unit.Of[unit.Power](1000), Surge: unit.Of[unit.Power](600)}}
	p := Prepare(Project{Load: l}).Evaluate(bareVariant()).Peak
	homeNear(t, "run", p.Run.Run(), 240)
	homeNear(t, "start", float64(p.ACMost), 640)
	start := checkNamed(t, p.Checks, "inverter_start")
	homeNear(t, "use", float64(start.Use.Val), 1.06666667)
	if start.Word != GivesWay {
		t.Errorf("the start %s", start.Word)
	}
}

// strung is a variant with so many panels of a sheet in one string.
func strung(n float64, s panel.Sheet) Variant {
	v := bareVariant()
	s.Series = unit.Of(unit.Count(n))
	v.Panels = []panel.Array{{Name: "Roof", Count: unit.Of(unit.Count(n)), Power: unit.Of[unit.Power](400), Strings: unit.Of[unit.Count](1), Sheet: &s}}
	return v
}

// Three panels of 41 V, −0.27 % a kelvin, where −25 °C was measured: 3·41·(1 + .0027·50) = 139.605 V of 150 is tight, and over
// 60 V. Four would be 1.2409 times what the controller withstands.
func TestStringOnTheColdestMorning(t *testing.T) {
	sheet := panel.Sheet{Voc: unit.Of[unit.Voltage](41), Beta: unit.Of[unit.PerKelvin](-0.0027)}
	p := Project{}
	p.Place.RecordLow = unit.Of[unit.Celsius](-25)
	for _, c := range []struct {
		panels, volts, use float64
		word               string
	}{{3, 139.605, 0.9307, Tight}, {4, 186.14, 1.24093333, GivesWay}} {
		v := strung(c.panels, sheet)
		v.Controller.MaxInput = unit.Of[unit.Voltage](150)
		w := Prepare(p).Evaluate(v).Wiring
		homeNear(t, "cold", float64(w.Strings[0].Cold), c.volts)
		k := checkNamed(t, w.Checks, "volts_string")
		homeNear(t, "use", float64(k.Use.Val), c.use)
		if k.Word != c.word || !w.Over60 {
			t.Errorf("%v panels: %s, over 60 V %v", c.panels, k.Word, w.Over60)
		}
	}
}

// One panel of 17.6 V, −0.35 % a kelvin, at 70 °C: 17.6·(1 − .0035·45) = 14.828 V. Four cells of iron phosphate are full at
// 4·3.6 = 14.4 V, and a controller that tracks needs 1.05 times that, 15.12 V: 1.0197 times what there is. It is about energy
// alone and forbids nothing.
func TestStringOnAHotDay(t *testing.T) {
	v := strung(1, panel.Sheet{Vmp: unit.Of[unit.Voltage](17.6), Beta: unit.Of[unit.PerKelvin](-0.0035)})
	v.Stores = []Store{{Cells: &cell.Bank{Name: "Battery", Kind: cell.LFP, Capacity: unit.Of(unit.Charge(100 * 3600)), Voltage: unit.Of[unit.Voltage](12.8)}}}
	r := Prepare(Project{}).Evaluate(v)
	homeNear(t, "hot", float64(r.Wiring.Strings[0].Hot.Val), 14.828)
	k := checkNamed(t, r.Wiring.Checks, "string_hot")
	homeNear(t, "need", k.Demand, 15.12)
	homeNear(t, "use", float64(k.Use.Val), 1.01969247)
	if k.Word != GivesWay {
		t.Errorf("the string %s", k.Word)
	}
	for _, b := range r.Because {
		if strings.HasPrefix(b.ID, "string_hot") {
			t.Errorf("a hot day forbids: %v", b)
		}
	}
}

// Ten metres of 4 mm² there and back with 8.3 A lose 2·10·8.3·.0185961e-6/4e-6 = .77174 V, 4.385 % of 17.6 V; 3 % are wanted.
func TestPanelCableOfAWholeVariant(t *testing.T) {
	v := strung(1, panel.Sheet{Isc: unit.Of[unit.Current](9), Voc: unit.Of[unit.Voltage](22), Imp: unit.Of[unit.Current](8.3), Vmp: unit.Of[unit.Voltage](17.6)})
	v.Panels[0].CableLen, v.Panels[0].CableArea = unit.Of[unit.Length](10), unit.Of[unit.Area](4e-6)
	w := Prepare(Project{}).Evaluate(v).Wiring
	homeNear(t, "drop", float64(w.Cables[0].Drop), 0.771739918)
	homeNear(t, "share", float64(w.Cables[0].Share), 0.043848859)
	if k := checkNamed(t, w.Checks, "drop"); k.Word != GivesWay {
		t.Errorf("the cable %s", k.Word)
	}
}
