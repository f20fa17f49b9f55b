package lift

import (
	"fmt"
	"math"
	"testing"

	"duskweight/internal/model/source"
	"duskweight/internal/model/unit"
	"duskweight/internal/say"
	"duskweight/internal/witness"
)

// Works that only checks are taken from.
var (
	sheetEC40    = source.Source{Key: "ec-40", Title: "maxon EC 40 120 W, data sheet, May 2013"}
	sheetEC45    = source.Source{Key: "ec-45-flat", Title: "maxon EC 45 flat 30 W, data sheet"}
	sheetRE65    = source.Source{Key: "re-65", Title: "maxon RE 65, part 353297, parameter list"}
	sheetC21     = source.Source{Key: "c21", Title: "magmotor C21-H-175FX, calculation data sheet 500210265 rev. A"}
	sheetC33     = source.Source{Key: "c33", Title: "magmotor C33-F-200FX, calculation data sheet 500280222 rev. 3"}
	sheetPittman = source.Source{Key: "14203", Title: "Ametek Pittman 14203S010, data sheet"}
	sheet37D     = source.Source{Key: "37d", Title: "Pololu 37D metal gearmotors, data sheet rev. 1.2"}
	instaSpin    = source.Source{Key: "spruhj1", Title: "Texas Instruments SPRUHJ1I, InstaSPIN user's guide"}
	wireRopeMan  = source.Source{Key: "wrtb", Title: "Wire Rope Technical Board, Wire Rope Users Manual, 4th ed."}
	riggersBook  = source.Source{Key: "riggers", Title: "Crosby ratio table of tackles, as in Rigger's Handbook"}
	blockTable   = source.Source{Key: "loads-on-blocks", Title: "Crosby, Loads on Blocks, angle factors"}
	rescueTest   = source.Source{Key: "over-the-edge", Title: "Over The Edge Rescue, test of small pulleys, 2016"}
	beltKit      = source.Source{Key: "onedfrk", Title: "planetary gear stages with 12 and 48 teeth, newsletter example"}
)

const (
	ozin    = 0.0070615518 // N·m in an ounce-force inch
	gcm2    = 1e-7         // kg·m² in a g·cm²
	milli   = 1e-3
	perKrpm = 60 / (2 * math.Pi * 1000) // V·s/rad in a volt for each thousand turns a minute
)

// row is one published value beside what the formula gives; within is relative.
type row struct {
	what      string
	got, want float64
	within    float64
	from      source.Ref
}

func check(t *testing.T, rows []row) {
	t.Helper()
	for _, r := range rows {
		if !(math.Abs(r.got-r.want) <= r.within*math.Abs(r.want)) {
			t.Errorf("%s: got %.6g, published %.6g, within %g (%s)", r.what, r.got, r.want, r.within, r.from)
		}
		witness.Value(t, "drive", r.what, r.want, r.got, r.from)
	}
}

// bestEfficiency is the most that a machine of 1 V and 1 rad/s for each volt reaches, searched over its load.
func bestEfficiency(i0, stall float64) float64 {
	best := 0.0
	for i := i0; i < stall; i += (stall - i0) / 1e5 {
		shaft := (i - i0) * float64(MotorSpeed(1, 0, MotorCurrent(unit.Torque(i-i0), 1, unit.Current(i0)), unit.Resistance(1/stall), 1))
		best = math.Max(best, shaft/i)
	}
	return best
}

// onePulley is the pull that lowers over the pull that raises a load over one pulley.
func onePulley(e float64) float64 {
	up, down := Tensions(1, 1, 1, []float64{e})
	return float64(down[0] / up[0])
}

// Sheets print three figures: 1 % covers their rounding where two of them are multiplied, 0.6 % one alone.
func TestMachineSheets(t *testing.T) {
	w0 := 10300 * float64(unit.RevPerMinute)
	r := float64(SheetResistance(24, 0, 55))
	k := float64(SheetConstant(24, 0, 0.443, unit.Resistance(r), unit.AngularSpeed(w0)))
	slope := r / (k * k) * 60 / (2 * math.Pi) * milli // turns a minute for a mN·m
	re := 0.365 / (0.123 * 0.123)
	check(t, []row{
		{"best efficiency, 24 V", bestEfficiency(0.443, 55), 0.83, 0.006, sheetEC40.At("5th column")},
		{"best efficiency, 12 V", bestEfficiency(0.886, 89.2), 0.81, 0.006, sheetEC40.At("1st column")},
		{"best efficiency, 36 V", bestEfficiency(0.0554, 5.38), 0.81, 0.006, sheetEC45.At("36 V column")},
		{"resistance, Ω", r, 0.436, 0.01, sheetEC40.At("5th column")},
		{"torque constant, N·m/A", k, 0.0221, 0.01, sheetEC40.At("5th column")},
		{"turns a minute for a volt", 60 / (2 * math.Pi * k), 433, 0.01, sheetEC40.At("5th column")},
		{"turns a minute lost for a mN·m", slope, 8.55, 0.01, sheetEC40.At("5th column")},
		{"time constant, ms", 85 * gcm2 * r / (k * k) * 1000, 7.61, 0.01, sheetEC40.At("5th column")},
		{"stall torque, N·m", k * 55, 1.21, 0.01, sheetEC40.At("5th column")},
		{"stall current, A", 48 / 0.365, 131, 0.01, sheetRE65.Whole()},
		{"turns a minute lost for a mN·m", re * 60 / (2 * math.Pi) * milli, 0.231, 0.01, sheetRE65.Whole()},
		{"time constant, ms", 1340 * gcm2 * re * 1000, 3.25, 0.01, sheetRE65.Whole()},
		// the sheet's nominal speed allows for the warm winding: 2 %
		{"current at 120 mN·m, A", float64(MotorCurrent(0.120, 0.0221, 0.443)), 5.78, 0.02, sheetEC40.At("nominal")},
		{"turns a minute at 120 mN·m", MotorSpeed(24, 0, MotorCurrent(0.120, unit.MachineConstant(k), 0.443), unit.Resistance(r), unit.MachineConstant(k)).RPM(), 9160, 0.02, sheetEC40.At("nominal")},
		{"voltage without load, V", 0.0327*362 + 0.3459*0.3364, 12, 0.01, sheetPittman.Whole()},
		{"resistance of a hot winding, Ω", 0.15 * float64(CopperGrowth(110)), 0.2, 0.005, source.Derivation.At("R25·(1 + 0.00393·85)")},
		{"resistance of a hot winding, Ω", 4.6 * float64(CopperGrowth(105)), 6.02, 0.01, sheetC21.At("R at 105 °C; the sheet uses (234.5 + T)/259.5, 0.5 % apart")},
		{"growth of resistance from 20 to 150 °C", float64(CopperGrowth(155)) - 1, 0.52, 0.02, instaSpin.At("almost 52 %, 130 K warmer")},
		{"greatest power, W", 5 * milli * unit.G * 10000 * float64(unit.RevPerMinute) / 4, 12.8, 0.01, sheet37D.At("5 kg·mm, 10,000 turns a minute")},
	})
}

// The four load points of the two calculation sheets: speed, current, efficiency, power. Without load speed and stall
// torque are the sheets' own (n_0 = U/Ke). Their current is printed to one decimal: 2 %.
func TestMachineLoadPoints(t *testing.T) {
	for _, p := range []struct {
		from                                 source.Source
		ke, i0, stall, oz, rpm, amps, eta, w float64
	}{
		{sheetC21, 13.7, 0.2, 145, 26, 2157, 1.6, 0.718527, 41.472},
		{sheetC21, 13.7, 0.2, 145, 40, 1903, 2.4, 0.662939, 56.2973},
		{sheetC33, 12.1, 0.48, 693, 57, 2731, 4.0, 0.806843, 115.118},
		{sheetC33, 12.1, 0.48, 693, 105, 2524, 6.9, 0.789677, 196.056},
	} {
		k := p.ke * perKrpm
		i := float64(MotorCurrent(unit.Torque(p.oz*ozin), unit.MachineConstant(k), unit.Current(p.i0)))
		// the line through the sheet's own end points is a machine of R = K·U/T_stall without the friction's drop
		r := k * 36 / (p.stall * ozin)
		w := float64(MotorSpeed(36, 0, unit.Current(p.oz*ozin/k), unit.Resistance(r), unit.MachineConstant(k)))
		power := p.oz * ozin * w
		check(t, []row{
			{"speed, turns a minute", unit.AngularSpeed(w).RPM(), p.rpm, 0.001, p.from.Whole()},
			{"current, A", i, p.amps, 0.02, p.from.Whole()},
			{"efficiency", power / (36 * i), p.eta, 0.001, p.from.Whole()},
			{"power, W", power, p.w, 0.001, p.from.Whole()},
		})
	}
}

// A generator under a constant torque of 0.5 N·m, by hand from the machine equations with the constants of RE 65:
// I = 0.5/0.123 − 0.289 = 3.7760 A; into 5 Ω: ω = 3.776·5.365/0.123 = 164.70 rad/s, P = 3.776²·5 = 71.29 W;
// at 12 V: ω = (12 + 3.776·0.365)/0.123 = 108.77, P = 45.31; joined at 0.8 N·m: I = 6.2151, ω = 18.443, 176.1 rpm.
func TestGenerator(t *testing.T) {
	i := GeneratorCurrent(0.5, 0.123, 0.289)
	u := float64(i) * 5
	short := GeneratorSpeed(0, 0, GeneratorCurrent(0.8, 0.123, 0.289), 0.365, 0.123)
	from := source.Derivation.At("constants of RE 65")
	check(t, []row{
		{"current", float64(i), 3.776, 0.0002, from},
		{"speed into 5 Ω", float64(GeneratorSpeed(unit.Voltage(u), 0, i, 0.365, 0.123)), 164.7, 0.0002, from},
		{"power into 5 Ω", u * float64(i), 71.29, 0.0002, from},
		{"speed at 12 V", float64(GeneratorSpeed(12, 0, i, 0.365, 0.123)), 108.77, 0.0002, from},
		{"power at 12 V", 12 * float64(i), 45.31, 0.0002, from},
		{"joined", short.RPM(), 176.1, 0.0002, from},
		{"light that starts a motor, W/m²", float64(StartIrradiance(4.64, 5.9)), 786.4, 0.0001, source.Appelbaum.At("1000·4.64/5.9 by hand")},
	})
}

// Tackles. Ratio tables are printed to two decimals from 1/1.045 (bronze) and 1/1.02 (roller): 0.8 % covers the nominal
// 0.96 and 0.98 of their first row.
func TestTackles(t *testing.T) {
	lead := func(n, k int, e float64) float64 {
		es := make([]float64, k+n-1)
		for i := range es {
			es[i] = e
		}
		up, _ := Tensions(1, n, k, es)
		return float64(up[0])
	}
	rows := []row{
		{"pull of 4 parts, plain bearings", lead(4, 1, 1/1.09), 0.309, 0.002, wireRopeMan.At("p. 88")},
		{"pull of 4 parts and two more pulleys", lead(4, 3, 1/1.09), 0.367, 0.002, wireRopeMan.At("p. 88")},
		{"pull for 6 000 lb, lb", 6000 * lead(4, 3, 1/1.09), 2202, 0.002, wireRopeMan.At("p. 88")},
		{"pull down over pull up, small pulley", 0.1 / 0.12, 0.83, 0.005, rescueTest.At("25 mm pulley, 9 mm rope")},
		{"test of a pulley", onePulley(0.9), 0.81, 1e-12, source.Derivation.At("100 to raise and 81 to lower are an efficiency of √0.81")},
	}
	for n, want := range map[int][2]float64{1: {0.96, 0.98}, 2: {1.87, 1.94}, 3: {2.75, 2.88}, 4: {3.59, 3.81}, 5: {4.39, 4.71}, 6: {5.16, 5.60}, 8: {6.60, 7.32}} {
		rows = append(rows, row{"tackle of " + say.Plural(n, "part", "parts").String() + ", plain bearings", 1 / lead(n, 1, 1/1.045), want[0], 0.008, riggersBook.Whole()},
			row{"tackle of " + say.Plural(n, "part", "parts").String() + ", rolling bearings", 1 / lead(n, 1, 1/1.02), want[1], 0.008, riggersBook.Whole()})
	}
	// 667.1 N in two parts behind one head pulley, 0.96: up 667.1/(0.96 + 0.9216) = 354.54, down 667.1/(1/0.96 + 1/0.9216) = 313.67
	up, down := Tensions(667.1, 2, 1, []float64{0.96, 0.96})
	rows = append(rows, row{"raising", float64(up[0]), 354.54, 1e-4, source.Derivation.Whole()}, row{"lowering", float64(down[0]), 313.67, 1e-4, source.Derivation.Whole()})
	for deg, want := range map[float64]float64{0: 2, 30: 1.93, 45: 1.84, 50: 1.81, 60: 1.73, 100: 1.29, 135: 0.76, 150: 0.52} {
		rows = append(rows, row{fmt.Sprintf("pull on a pulley, rope at %g°", deg), float64(PulleyPull(1, 1, unit.Angle(deg)*unit.Degree)), want, 0.012, blockTable.Whole()})
	}
	check(t, rows)
	if f := PulleyPull(1, 1, math.Pi); f > 1e-12 {
		t.Errorf("a straight rope pulls nothing sideways, got %g", float64(f))
	}
}

// Worms after Shigley's table for f = 0.05 (φ_n = 14.5°), from memory, printed to three figures; planetary, belts and
// classes by hand.
func TestGears(t *testing.T) {
	rows := []row{
		{"efficiency of a planetary stage", float64(PlanetaryForward(0.96, 4)), 0.968, 1e-9, source.VDI2157.At("(1 + 0.96·4)/5")},
		{"efficiency of a planetary stage, back", float64(PlanetaryBackward(0.96, 4)), 5 / (1 + 4/0.96), 1e-12, source.VDI2157.At("5/(1 + 4/0.96)")},
		{"ratio of 12 and 48 teeth", float64(PlanetaryRatio(12, 48)), 5, 1e-12, beltKit.Whole()},
		// square thread: tan λ/tan(λ + ρ) and tan(λ − ρ)/tan λ at λ = 5°, ρ = atan 0.05
		{"efficiency of a worm", float64(WormForward(5*unit.Degree, 0.05, 0)), 0.63355, 2e-5, source.Mott.At("worm gearing")},
		{"efficiency of a worm, back", float64(WormBackward(5*unit.Degree, 0.05, 0)), 0.42663, 2e-5, source.Mott.At("worm gearing")},
		{"first push of 0.8", float64(BreakawayForward(0.8, 1.5)), 1 / 1.375, 1e-12, source.Derivation.At("1/(1 + 1.5/4)")},
		{"first push of 0.8 back", float64(BreakawayBackward(0.75, 1.5)), 0.625, 1e-12, source.Derivation.At("1 − 1.5/4")},
		{"idle torque", float64(StageUp(10, 5, 0.9, 0.1)), 10/4.5 + 0.1, 1e-12, source.Derivation.Whole()},
	}
	for deg, want := range map[float64]float64{1: 25.2, 2.5: 45.7, 5: 62.6, 7.5: 71.3, 10: 76.6, 20: 85.9} {
		rows = append(rows, row{fmt.Sprintf("efficiency of a worm of %g°, %%", deg), 100 * float64(WormForward(unit.Angle(deg)*unit.Degree, 0.05, 14.5*unit.Degree)), want, 0.003, source.Shigley.At("table 13–6, from memory")})
	}
	for f, want := range map[float64]float64{0.9: 0.8889, 0.8: 0.75, 0.7: 0.5714, 0.6: 0.3333, 0.45: -0.2222} {
		rows = append(rows, row{"2 − 1/η", float64(BackwardOf(unit.Ratio(f))), want, 0.0002, source.Derivation.Whole()})
	}
	// stall torque of the geared motor over the bare one, through the ratio: the sheet rounds the bare one to one digit
	for ratio, kgmm := range map[float64][2]float64{18.75: {85, 0.907}, 50: {210, 0.84}, 70: {270, 0.771}, 150: {490, 0.653}} {
		rows = append(rows, row{"efficiency of a gearbox", float64(StageDown(unit.Torque(kgmm[0]), unit.Ratio(ratio), 1, 0)) / 5, kgmm[1], 0.001, sheet37D.Whole()})
	}
	check(t, rows)
	if BackwardOf(0.5) != 0 {
		t.Error("half forward is nothing backward")
	}
	for eta, want := range map[float64]Back{0.44: Locks, 0.45: Uncertain, 0.50: Uncertain, 0.55: Uncertain, 0.56: RunsBack} {
		if got := Class(unit.Ratio(eta)); got != want {
			t.Errorf("class of %g: %q, want %q (%s)", eta, got, want, source.SelfLockFAQ)
		}
	}
}

// A power screw is a worm unrolled: three starts of 8 mm on 50 mm, μ 0.15, 15 kN, a collar of 65/100 mm. The thread
// alone runs back; the collar holds it.
func ExampleWormForward() {
	const load, mean, pitch, starts, mu = 15000.0, 46.0, 8.0, 3.0, 0.15
	lead := unit.Angle(math.Atan(starts * pitch / (math.Pi * mean)))
	thread := load * mean / 2 * math.Tan(float64(lead)) // without friction, N·mm
	collar := mu * load * (100 + 65) / 4.0
	fmt.Printf("raise %.0f N·mm\n", thread/float64(WormForward(lead, mu, 0))+collar)
	fmt.Printf("lower %.0f N·mm\n", collar-thread*float64(WormBackward(lead, mu, 0)))
	// Output:
	// raise 204644 N·mm
	// lower 87402 N·mm
}

// The drum of the winch handbook: 10 in bare, 20 in flanges, 12 in wide, ½ in rope: 0.2618·12·5·15/0.25 = 942.5 ft. Ten
// layers stand under the flange.
func TestDrumCapacity(t *testing.T) {
	const drum, flange, width, rope = 10 * unit.Inch, 20 * unit.Inch, 12 * unit.Inch, 0.5 * unit.Inch
	full, layers := unit.Length(0), 0
	for r := LayerRadius(drum, rope, RiseTorque, 1); r+rope/2 <= flange/2*(1+1e-9); r = LayerRadius(drum, rope, RiseTorque, layers+1) {
		full += unit.Length(2*math.Pi*float64(Wraps(width, rope))) * r
		layers++
	}
	if layers != 10 {
		t.Errorf("%d layers, want 10", layers)
	}
	check(t, []row{{"rope on a drum, ft", float64(full / unit.Foot), 942.5, 0.0001, source.OceanWinch.Whole()}})
}

// Energy of a mass held up, and stopping, by hand.
func TestPlainMechanics(t *testing.T) {
	lift := func(m unit.Mass, h unit.Length) float64 {
		w := worked()
		w.Mass, w.Travel = []Piece{{Mass: known(m)}}, known(h)
		return Compute(w).RaiseEnergyMech.Val.WattHours()
	}
	from := source.Derivation.At("m·9.80665·h/3600")
	check(t, []row{
		{"a tonne-metre", lift(1000, 1), 2.72407, 1e-5, from},
		{"100 kg, 5 m", lift(100, 5), 1.36204, 1e-5, from},
		{"500 kg, 5 m", lift(500, 5), 6.81017, 1e-5, from},
		{"1 t, 3 m", lift(1000, 3), 8.17221, 1e-5, from},
		{"1 t, 10 m", lift(1000, 10), 27.2407, 1e-5, from},
		{"50 t, 150 m: 20.4 kWh, not MWh", lift(50000, 150) / 1000, 20.43, 1e-3, from},
		{"past the stop", float64(Overtravel(0.05, 0.2, 0.666)), 0.011877, 1e-4, source.Derivation.At("0.05·0.2 + 0.05²/1.332")},
	})
}

// The rope that leaves the base of a hoist with one pulley of 0.85, jerks of 1.25: 1.25/0.85 = 1.47 times the weight.
// Three stages of 15 make 3375, and a train like that is spoken of.
func TestFactsByHand(t *testing.T) {
	up, _ := Tensions(1, 1, 1, []float64{0.85})
	check(t, []row{{"base", 1.25 * float64(up[0]), 1.4706, 1e-4, source.Derivation.Whole()}})
	h := worked()
	s := Stage{Kind: "spur", Ratio: known[unit.Ratio](15), Efficiency: known[unit.Ratio](0.9), IdleTorque: known[unit.Torque](0)}
	h.Train.Stages = []Stage{s, s, s}
	d := Compute(h)
	check(t, []row{{"three stages of 15", float64(d.Ratio.Val), 3375, 1e-12, source.Derivation.Whole()}})
	if !mentions(d, "hardly ever comes down by itself") {
		t.Error("3375:1 is not spoken of")
	}
}
