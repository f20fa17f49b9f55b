package panel

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"duskweight/internal/model/source"
	"duskweight/internal/model/unit"
	"duskweight/internal/say"
	"duskweight/internal/witness"
)

// source.Corless: W(1) is the omega constant; W(e) = 1 exactly; the others to the digits of the tables.
func TestLambert(t *testing.T) {
	for z, want := range map[float64]float64{1: 0.5671432904097838, math.E: 1, 10: 1.7455280027406994, 1e5: 9.2845714286221} {
		near(t, fmt.Sprint("W(", z, ")"), lambert(math.Log(z)), want, 1e-10)
	}
	// the law itself, far beyond where e^l is a number, and down to where w = e^l
	for l := -700.0; l < 1e6; l += 1 + math.Abs(l)/7 {
		w := lambert(l)
		near(t, fmt.Sprint("w + ln w at ", l), w+math.Log(w), l, 1e-12*max(1, math.Abs(l)))
	}
}

func curveOf(t *testing.T, row map[string]string) Curve {
	v := func(name string) float64 { return number(t, row[name]) }
	return Curve{IL: v("IL"), I0: v("I0"), Rs: v("Rs"), Leak: 1 / v("Rsh"), A: v("nNsVth")}
}

// Forty-odd curves: currents to 1 µA, points to the table's last digit (eight digits).
func TestCurveAgainstTable(t *testing.T) {
	power := witness.Table(t, "panel", "most power of a panel", " %", source.DeSoto.Whole().String())
	current := witness.Table(t, "panel", "current of a panel with joined wires", " %", source.DeSoto.Whole().String())
	for _, row := range published(t, "panel_singlediode.csv") {
		v := func(name string) float64 { return number(t, row[name]) }
		name := fmt.Sprintf("%s %s %s W/m² %s °C ", row["module"], row["model"], row["E"], row["Tc"])
		c := curveOf(t, row)
		digits := func(want float64) float64 { return 2e-7 * math.Abs(want) } // the five values have eight digits too
		near(t, name+"short", float64(c.ShortCurrent()), v("i_sc"), 1e-6)
		near(t, name+"open", float64(c.OpenVoltage()), v("v_oc"), digits(v("v_oc")))
		volts, amps := c.Best()
		near(t, name+"best V", float64(volts), v("v_mp"), 2e-6*v("v_mp")) // flat top: position is less sharp than power
		near(t, name+"best I", float64(amps), v("i_mp"), 5e-6*v("i_mp"))
		near(t, name+"best P", float64(volts)*float64(amps), v("p_mp"), digits(v("p_mp")))
		power.SeeShare(v("p_mp"), float64(volts)*float64(amps))
		current.SeeShare(v("i_sc"), float64(c.ShortCurrent()))
		for share, column := range map[float64]string{0.25: "i_at_0.25_voc", 0.5: "i_at_0.5_voc", 0.75: "i_at_0.75_voc", 0.9: "i_at_0.9_voc", 0.97: "i_at_0.97_voc"} {
			volts := share * v("v_oc")
			i := float64(c.Current(unit.Voltage(volts)))
			near(t, name+column, i, v(column), 1e-6+c.slope(volts, i)*5e-7) // the open voltage is printed to 1e-6 V
		}
		near(t, name+"V at half", float64(c.Voltage(unit.Current(v("i_sc")/2))), v("v_at_half_isc"), 1e-6*v("v_oc"))
	}
}

// How the circuit moves with light and temperature: the rows marked desoto.
func TestDiodeAgainstTable(t *testing.T) {
	alpha := map[string]float64{"mod96": 0.004539, "mod_a": 0.003, "mod_tf": 0.000924}
	at := map[string]Diode{}
	rows := published(t, "panel_singlediode.csv")
	for _, row := range rows {
		if row["model"] == "desoto" && number(t, row["E"]) == 1000 && number(t, row["Tc"]) == 25 {
			at[row["module"]] = Diode{Curve: curveOf(t, row), Alpha: alpha[row["module"]]}
		}
	}
	n := 0
	for _, row := range rows {
		if row["model"] != "desoto" {
			continue
		}
		n++
		v := func(name string) float64 { return number(t, row[name]) }
		got := at[row["module"]].At(unit.Irradiance(v("E")), unit.Celsius(v("Tc")))
		name := fmt.Sprintf("%s %s W/m² %s °C ", row["module"], row["E"], row["Tc"])
		for what, pair := range map[string][2]float64{"IL": {got.IL, v("IL")}, "I0": {got.I0, v("I0")}, "Rs": {got.Rs, v("Rs")},
			"Rsh": {1 / got.Leak, v("Rsh")}, "A": {got.A, v("nNsVth")}} {
			near(t, name+what, pair[0]/pair[1], 1, 1e-6)
		}
		volts, amps := got.Best()
		near(t, name+"best P", float64(volts)*float64(amps)/v("p_mp"), 1, 1e-6)
	}
	if n < 20 {
		t.Errorf("only %d rows", n)
	}
	// the first panel loses 0.4845 % of its power a kelvin between 25 and 50 °C
	p := func(tc unit.Celsius) float64 { v, i := at["mod96"].At(1000, tc).Best(); return float64(v) * float64(i) }
	near(t, "slope, % a kelvin", (p(50)/p(25)-1)/25*100, -0.4845, 0.0001)
}

// sheetOf prints the sheet that a circuit would have.
func sheetOf(d Diode) Sheet {
	v, i := d.Best()
	const step = 10
	isc := d.ShortCurrent()
	voc := d.OpenVoltage()
	return Sheet{
		Isc: unit.Of(isc), Voc: unit.Of(voc), Imp: unit.Of(i), Vmp: unit.Of(v),
		Alpha: unit.Of(unit.PerKelvin(d.Alpha / float64(isc))),
		Beta:  unit.Of(unit.PerKelvin((float64(d.At(1000, 25+step).OpenVoltage()) - float64(voc)) / step / float64(voc))),
	}
}

// From a circuit to its sheet and back: the five values return, for the table's three panels.
func TestFitReturnsTheCircuit(t *testing.T) {
	alpha := map[string]float64{"mod96": 0.004539, "mod_a": 0.003, "mod_tf": 0.000924}
	for _, row := range published(t, "panel_singlediode.csv") {
		if row["model"] != "desoto" || number(t, row["E"]) != 1000 || number(t, row["Tc"]) != 25 {
			continue
		}
		want := Diode{Curve: curveOf(t, row), Alpha: alpha[row["module"]]}
		got, err := sheetOf(want).Fit()
		if err != nil {
			t.Errorf("%s: %v", row["module"], err)
			continue
		}
		near(t, row["module"]+" A", got.A/want.A, 1, 1e-4)
		near(t, row["module"]+" Rs", got.Rs/want.Rs, 1, 1e-3)
		near(t, row["module"]+" Rsh", want.Leak/got.Leak, 1, 1e-2)
		near(t, row["module"]+" IL", got.IL/want.IL, 1, 1e-4)
		for share := 0.0; share <= 1; share += 0.05 {
			v := unit.Voltage(share) * want.OpenVoltage()
			near(t, row["module"]+" current", float64(got.Current(v)), float64(want.Current(v)), 1e-3*want.IL)
		}
	}
}

// meets tells that a fitted circuit runs through its sheet: to 1 µA, and with its most power at the best point.
func meets(t *testing.T, name string, s Sheet, d Diode) {
	t.Helper()
	near(t, name+" short", float64(d.ShortCurrent()), float64(s.Isc.Val), 1e-6)
	near(t, name+" open", float64(d.Current(s.Voc.Val)), 0, 1e-6)
	near(t, name+" best", float64(d.Current(s.Vmp.Val)), float64(s.Imp.Val), 1e-6)
	v, i := d.Best()
	near(t, name+" most power", float64(v)*float64(i), float64(s.Vmp.Val)*float64(s.Imp.Val), 1e-5*float64(v)*float64(i))
	if d.Rs < 0 || d.Leak < 0 || d.I0 <= 0 || d.A <= 0 {
		t.Errorf("%s: %+v", name, d)
	}
}

func sheetFrom(isc, voc, imp, vmp, alpha, beta float64, cells int) Sheet {
	return Sheet{Isc: unit.Of(unit.Current(isc)), Voc: unit.Of(unit.Voltage(voc)), Imp: unit.Of(unit.Current(imp)), Vmp: unit.Of(unit.Voltage(vmp)),
		Alpha: unit.Of(unit.PerKelvin(alpha)), Beta: unit.Of(unit.PerKelvin(beta)), Cells: unit.Of(unit.Count(cells))}
}

// Sheets as they are printed, of the usual kinds and sizes (typical of their class, from memory): each has a curve.
func TestFitOfUsualSheets(t *testing.T) {
	for name, s := range map[string]Sheet{
		"50 W, 36 cells":           sheetFrom(3.0, 22.0, 2.78, 18.0, 0.0005, -0.0034, 36),
		"100 W, 36 cells":          sheetFrom(5.96, 22.4, 5.56, 18.0, 0.0005, -0.0031, 36),
		"10 W, 36 cells":           sheetFrom(0.62, 21.6, 0.57, 17.6, 0.0006, -0.0036, 36),
		"250 W, 60 cells":          sheetFrom(8.79, 37.6, 8.24, 30.4, 0.0005, -0.0033, 60),
		"330 W, 60 cells mono":     sheetFrom(10.25, 40.9, 9.73, 33.9, 0.00048, -0.0027, 60),
		"410 W, 108 half cells":    sheetFrom(13.9, 37.3, 13.1, 31.3, 0.00045, -0.0025, 108/2),
		"175 W, 72 cells, 1990s":   sheetFrom(5.4, 44.4, 4.95, 35.4, 0.0008, -0.0035, 72),
		"thin film, low fill":      sheetFrom(1.98, 92, 1.66, 68.2, 0.0004, -0.0028, 0),
		"alpha and beta not given": {Isc: unit.Of(unit.Current(5.96)), Voc: unit.Of(unit.Voltage(22.4)), Imp: unit.Of(unit.Current(5.56)), Vmp: unit.Of(unit.Voltage(18.0))},
		"very high fill, 84 %":     sheetFrom(6.5, 45.4, 6.2, 40.0, 0.0005, -0.0024, 66),
	} {
		if s.Cells.Val == 0 {
			s.Cells = unit.Known[unit.Count]{}
		}
		d, err := s.Fit()
		if err != nil {
			t.Errorf("%s: %v", name, err)
			continue
		}
		meets(t, name, s, d)
		v := sheet{voc: float64(s.Voc.Val)}
		t.Logf("%-26s A %.3f Rs %.3f Rsh %.0f, open voltage %.3f %%/K (sheet %.3f)", name, d.A, d.Rs, 1/d.Leak, 100*v.fall(d)/v.voc, 100*float64(s.Beta.Or(typicalBeta)))
	}
}

// Sheets that contradict themselves are refused with a sentence.
func TestFitRefuses(t *testing.T) {
	for name, s := range map[string]Sheet{
		"current above short": sheetFrom(5, 22, 5.5, 18, 0.0005, -0.003, 36),
		"voltage above open":  sheetFrom(6, 18, 5.5, 22, 0.0005, -0.003, 36),
		"columns exchanged":   sheetFrom(22, 6, 18, 5.5, 0.0005, -0.003, 36),
		"impossible fill":     sheetFrom(6, 20, 5.9, 19.5, 0.0005, -0.003, 36),
		"best point too low":  sheetFrom(6, 22, 2.5, 18, 0.0005, -0.003, 36),
		"sign of beta":        sheetFrom(5.96, 22.4, 5.56, 18, 0.0005, 0.003, 36),
		"beta in volts":       sheetFrom(5.96, 22.4, 5.56, 18, 0.0005, -0.08, 36),
		"wrong cells":         sheetFrom(5.96, 22.4, 5.56, 18, 0.0005, -0.003, 360),
		"nothing known":       {},
	} {
		if d, err := s.Fit(); err == nil {
			t.Errorf("%s: taken as %+v", name, d)
		} else {
			t.Log(err)
		}
	}
}

// Any sheet within the ranges: a curve that meets it or a reason; and no curve makes a number that is none.
func FuzzFit(f *testing.F) {
	f.Add(5.96, 22.4, 0.93, 0.80, 0.0005, -0.0031, 800.0, 25.0, 12.8)
	f.Add(100.0, 1000.0, 0.99, 0.99, 0.01, -0.02, 0.0, -60.0, 1000.0)
	f.Add(1e-6, 1e-3, 0.6, 0.6, -0.01, 0.01, 1400.0, 120.0, -5.0)
	f.Add(9.0, 300.0, 0.9, 0.8, 0.0005, -0.003, 1000.0, -270.0, 0.0)
	f.Fuzz(func(t *testing.T, isc, voc, i, v, alpha, beta, light, temperature, volts float64) {
		if !(isc > 1e-9 && isc <= 100 && voc > 1e-6 && voc <= 1000 && i > 0 && i <= 2 && v > 0 && v <= 2 && math.Abs(alpha) <= 0.01 &&
			beta >= -0.02 && beta <= 0.01 && light >= 0 && light <= 2000 && temperature > -273 && temperature < 300 && math.Abs(volts) <= 2000) {
			t.Skip()
		}
		s := sheetFrom(isc, voc, isc*i, voc*v, alpha, beta, 1)
		s.Cells = unit.Known[unit.Count]{}
		d, err := s.Fit()
		if err != nil {
			if err.Error() == "" {
				t.Fatal("a reason without words")
			}
			return
		}
		c := d.At(unit.Irradiance(light), unit.Celsius(temperature))
		best, amps := c.Best()
		for _, x := range []float64{float64(c.ShortCurrent()), float64(c.OpenVoltage()), float64(best), float64(amps),
			float64(c.Voltage(c.ShortCurrent() / 2)), float64(c.Current(unit.Voltage(min(volts, 2*voc))))} {
			if math.IsNaN(x) || math.IsInf(x, 0) {
				t.Fatalf("%+v: %v", c, x)
			}
		}
	})
}

// A sheet whose values cannot belong together is refused with those values, without a power of ten.
func TestSheetSays(t *testing.T) {
	for want, s := range map[string]Sheet{
		"the current at the best point (9.2 A) must be less than the short-circuit current (9 A)":                            sheetFrom(9, 40, 9.2, 33, 0.0005, -0.003, 60),
		"the voltage at the best point (4 100 V) must be less than the open-circuit voltage (4 000 V)":                       sheetFrom(9, 4000, 8.5, 4100, 0.0005, -0.003, 60),
		"4 cells in series make 10 V from each cell at open circuit; a cell makes 0.5 to 0.8 V. Look at the number of cells": sheetFrom(9, 40, 8.5, 33, 0.0005, -0.003, 4),
	} {
		_, err := s.Fit()
		if got := strings.ReplaceAll(say.Why(err).In(unit.Imperial), unit.Space, " "); got != want {
			t.Errorf("%q, want %q", got, want)
		}
	}
}
