package weather

import (
	"errors"
	"fmt"
	"math"
	"strings"
	"testing"

	"duskweight/internal/model/sun"
	"duskweight/internal/model/unit"
)

// A year in °F whose head does not say so is refused as a question where rows are over what air can have, and asked about
// where they are not. By hand: 68 °F are 20 °C.
func TestFahrenheitForCelsius(t *testing.T) {
	p := place3{52, 5, 0}
	where := "Latitude: 52\nLongitude: 5\nTime zone: 0\n"
	warm, cool := p.rows(60, 0), p.rows(60, 0)
	for i := range warm.t {
		warm.t[i] = math.Round(10*((warm.t[i]+6)*9/5+32)) / 10
		cool.t[i] = math.Round(10*((cool.t[i]-9)*9/5+32)) / 10
	}
	_, _, err := Read(strings.NewReader(where+warm.table("time,ghi,dhi,temp\n", 60, 0)), Mapping{}, nil)
	r, _ := errors.AsType[*Refused](err)
	if r == nil || len(r.Faults) != 1 || r.Best.TemperatureUnit != "F" || !strings.Contains(r.Error(), "Choose its unit or its column") {
		t.Errorf("air over 62: %v", err)
	}
	if s, rep := read(t, where+warm.table("time,ghi,dhi,temp\n", 60, 0), Mapping{TemperatureUnit: "F"}); rep.Asks("air") || math.Abs(float64(rep.TMean)-18) > 0.1 || len(s.TAir) != 8760 {
		t.Errorf("as °F: %v %v", rep.TMean, rep.Notes)
	}
	if _, rep := read(t, where+cool.table("time,ghi,dhi,temp\n", 60, 0), Mapping{}); !rep.Asks("air") || !says(rep, "In °F it would be 3"+unit.Space+"°C") {
		t.Errorf("a cool year in °F: %v", rep.Notes)
	}
	if _, rep := read(t, where+p.rows(60, 0).table("time,ghi,dhi,temp (°F)\n", 60, 0), Mapping{}); !rep.Asks("air") || !says(rep, "In °C it would be 12"+unit.Space+"°C") {
		t.Errorf("a year in °C that says °F: %v", rep.Notes)
	}
	kelvin := p.rows(60, 0)
	for i := range kelvin.t {
		kelvin.t[i] += 273.1
	}
	_, _, err = Read(strings.NewReader(where+kelvin.table("time,ghi,dhi,temp\n", 60, 0)), Mapping{}, nil)
	if r, _ := errors.AsType[*Refused](err); r == nil || r.Best.TemperatureUnit != "K" {
		t.Errorf("kelvin: %v", err)
	}
}

// The mean of the air is asked about beyond what places have: a hair over and under each border at 40°, by hand 34 − 0.45·20 =
// 25 °C and, for °F, 5 − 0.4·20 = −3 °C.
func TestAirAtItsBorder(t *testing.T) {
	for _, c := range []struct {
		mean float64
		unit string
		asks bool
	}{{24.9, "C", false}, {25.1, "C", true}, {-2.9, "F", false}, {-3.1, "F", true}, {-17.9, "C", false}, {-18.1, "C", true}} {
		h, g := skyOf(0.5, c.mean)
		var rep Report
		(&sheet{thermo: c.unit, dew: -1}).doubtAir(h[temp], g, &rep)
		if rep.Asks("air") != c.asks {
			t.Errorf("%v °C from °%s: %v", c.mean, c.unit, rep.Notes)
		}
	}
}

// A dew point is told by its afternoons, by its column beside it, and by its name. By hand: a swing of a·cos round 14 o'clock
// of solar noon at 12 gives, between the four hours from 1 to 5 after noon and those from 9 to 5 before it, 1.92·a·0.98.
func TestDewPointForAir(t *testing.T) {
	for swing, asks := range map[float64]bool{0.5: true, 3: false} {
		h, g := skyOf(0.5, 10)
		for i := range h[temp] {
			h[temp][i] += swing * math.Cos(2*math.Pi*float64(i%24-14)/24)
		}
		var rep Report
		(&sheet{thermo: "C", dew: -1}).doubtAir(h[temp], g, &rep)
		if rep.Asks("dew") != asks {
			t.Errorf("a swing of %v: %v", swing, rep.Notes)
		}
	}
	m := makeYear(harbour, 12, 1)
	text := m.energyPlus() // its dew point is 5 °C all year
	l := strings.Split(text, "\n")
	for i := range l[8:] {
		f := strings.Split(l[8+i], ",")
		if len(f) > 8 {
			f[6], f[7] = fmt.Sprint(m.t[i]-6), fmt.Sprint(m.t[i])
			l[8+i] = strings.Join(f, ",")
		}
	}
	if _, rep := read(t, strings.Join(l, "\n"), Mapping{}); !rep.Asks("dew") || !says(rep, "columns changed over") {
		t.Errorf("changed over: %v", rep.Notes)
	}
	if _, rep := read(t, text, Mapping{}); rep.Asks("dew") {
		t.Errorf("as it should be: %v", rep.Notes)
	}
	named := m.plain("time,GHI,DHI,Dew point\n", ",", 60, iso(0), false)
	if _, rep := read(t, named, with(here, func(h *Mapping) { h.Temperature = 4 })); !rep.Asks("dew") || !says(rep, "“Dew point”") {
		t.Errorf("named so: %v", rep.Notes)
	}
}

// A global light without clouds is told by its name and by its even days; with clouds neither is asked.
func TestClearSkyForGlobal(t *testing.T) {
	g := sun.NewGeometry(40*unit.Degree, 12*unit.Degree, unit.Hour)
	clear := makeYear(harbour, 12, 1)
	for i := range clear.g {
		clear.g[i] = math.Round(g.Extra[i] * (0.72 + 0.02*math.Cos(float64(i/24)/58)))
		clear.d[i] = math.Round(clear.g[i] / 6)
	}
	if _, rep := read(t, clear.plain("time,GHI,DHI,temperature\n", ",", 60, iso(0), false), here); !rep.Asks("clear") {
		t.Errorf("even days: %v", rep.Notes)
	}
	real := makeYear(harbour, 12, 1).plain("time,Clearsky GHI,DHI,temperature\n", ",", 60, iso(0), false)
	faults(t, real, here, "is the light of a sky without clouds", "No column of global radiation")
	if _, rep := read(t, real, with(here, func(h *Mapping) { h.GHI = 2 })); !rep.Asks("clear") {
		t.Errorf("named so: %v", rep.Notes)
	}
	both := makeYear(harbour, 12, 1).plain("time,GHI,DHI,temperature,Clearsky GHI\n", ",", 60, iso(0), false)
	if _, rep := read(t, strings.ReplaceAll(both, "\n2021", ",0\n2021"), here); rep.Asks("clear") || rep.Mapping.GHI != 2 {
		t.Errorf("beside the real one: %v", rep.Notes)
	}
}

// A unit that does not fit is asked about, and the ones that do are named: half the light of half-hours in Wh/m² taken for
// W/m², and tenths in MJ. By hand: clear days of 0.7 in W/m² are 0.35 as the half-hours' energies.
func TestUnitOfLightInDoubt(t *testing.T) {
	m := makeYear(harbour, 12, 1)
	half := strings.Replace(m.halfEnergy(), "GHI (Wh/m2),DHI (Wh/m2)", "GHI,DHI", 1)
	if _, rep := read(t, half, here); !rep.Asks("light") || !says(rep, "In Wh/m² of each row it would be") {
		t.Errorf("half-hours: %v", rep.Notes)
	}
	if _, rep := read(t, half, with(here, func(h *Mapping) { h.RadiationUnit = "Wh/m2" })); rep.Asks("light") {
		t.Errorf("told: %v", rep.Notes)
	}
	scaled := func(factor float64) string {
		n := m
		n.g, n.d = nil, nil
		for i := range m.g {
			n.g, n.d = append(n.g, m.g[i]*factor), append(n.d, m.d[i]*factor)
		}
		return n.plain("time,GHI,DHI,temperature\n", ",", 60, iso(0), false)
	}
	for unit, factor := range map[string]float64{"kJ/m2": 3.6, "J/m2": 3600} {
		_, _, err := Read(strings.NewReader(scaled(factor)), here, nil)
		if r, _ := errors.AsType[*Refused](err); r == nil || r.Best.RadiationUnit != unit || len(r.Faults) != 1 {
			t.Errorf("%s: %v", unit, err)
		}
	}
}
