package path

import (
	"fmt"
	"math"

	"duskweight/internal/model/lift"
	"duskweight/internal/model/source"
	"duskweight/internal/model/unit"
	"duskweight/internal/say"
)

// lewisRow is a row of the Lewis form factor Y.
type lewisRow struct{ teeth, y float64 }

// lewisTable is Y for 20° full-depth teeth, Shigley table 14-2 (12, 15, 18, 22, 26, 28 and more read; the rest from
// memory); the last row is the rack.
func lewisTable() []lewisRow {
	return []lewisRow{{12, .245}, {13, .261}, {14, .277}, {15, .290}, {16, .296}, {17, .303}, {18, .309}, {19, .314},
		{20, .322}, {21, .328}, {22, .331}, {24, .337}, {26, .346}, {28, .353}, {30, .359}, {34, .371}, {38, .384},
		{43, .397}, {50, .409}, {60, .422}, {75, .435}, {100, .447}, {150, .460}, {300, .472}, {400, .480}}
}

// LewisY is the form factor of a tooth, straight between the rows of the table; under 12 teeth, where the root is
// undercut, the fit π·(0.154 − 0.912/z) that meets the table at 12 (from memory), never under 0.
func LewisY(teeth float64) float64 {
	rows := lewisTable()
	if teeth < rows[0].teeth {
		return math.Max(0, math.Pi*(0.154-0.912/math.Max(teeth, 1)))
	}
	for i := 1; i < len(rows); i++ {
		a, b := rows[i-1], rows[i]
		if teeth <= b.teeth {
			return a.y + (b.y-a.y)*(teeth-a.teeth)/(b.teeth-a.teeth)
		}
	}
	return rows[len(rows)-1].y
}

// LewisStress is K_v·W/(b·m·Y), Pa.
func LewisStress(kv, force, face, module, y float64) float64 {
	if face*module*y <= 0 {
		return 1e15
	}
	return kv * force / (face * module * y)
}

// velocityFactor is Barth's K_v for a pitch-line speed v in m/s: (6.1 + v)/6.1 for cut teeth, (3.05 + v)/3.05 for cast
// and printed ones (Shigley eq. 14-4, 14-5).
func velocityFactor(material lift.ToothMaterial, v float64) float64 {
	switch material {
	case lift.ToothCastIron, lift.ToothPrinted:
		return (3.05 + v) / 3.05
	}
	return (6.1 + v) / 6.1
}

// toothBorders: metal 3 and 4 on yield; moulded plastic 3 and 6 on tensile strength (10 to 20 MPa of 60); printed 5
// and 10, that is 20 % and 10 % of tensile strength, the endurance of printed plastic. breaks tells strength that
// breaks from strength that yields.
func toothBorders(material lift.ToothMaterial) (wanted, ok float64, breaks bool) {
	switch material {
	case lift.ToothPrinted:
		return 5, 10, true
	case lift.ToothPOM, lift.ToothNylon:
		return 3, 6, true
	case lift.ToothCastIron:
		return 3, 4, true
	}
	return 3, 4, false
}

// layerShare is what the layer direction leaves of a printed tooth's strength: all where the layer plane contains the
// bending, a third across (17 of 51 MPa on one data sheet of PLA). Not known counts as across.
func layerShare(tooth lift.Tooth) float64 {
	if tooth.Material == lift.ToothPrinted && tooth.Layers != lift.LayersInPlane {
		return 17.0 / 51.0
	}
	return 1
}

func gearToothChecks(t *loads) []*Check {
	stages := t.h.Train.Stages
	if len(stages) == 0 {
		if t.d.Ratio.Is {
			return nil // straight on the drum
		}
		l := newLine("gear_tooth", "the gear teeth", "K_v·W/(b·m·Y) ≤ strength / 3 (printed / 5)", source.Shigley.At("eq. 14-7, Lewis"))
		l.miss("train.stages")
		c := l.verdict()
		tell(c, bends, remedy{})
		return []*Check{c}
	}
	var out []*Check
	for i, s := range stages {
		if s.Rated.Is {
			out = append(out, t.ratedStage(i, s))
		}
		if !s.Rated.Is || s.Tooth.Module.Is && !flexible(s) {
			out = append(out, t.toothCheck(i, s))
		}
	}
	return out
}

// flexible is a stage without teeth that carry: a belt or a chain, which only its label settles.
func flexible(s lift.Stage) bool { return s.Kind == lift.StageBelt || s.Kind == lift.StageChain }

func stageName(i int, s lift.Stage) string {
	if flexible(s) {
		return fmt.Sprintf("the %s of stage %d, counted from the motor", s.Kind, i+1)
	}
	kind := plain(s.Kind)
	if s.Kind == "" {
		kind = "gear"
	}
	if s.Kind == lift.StageBox {
		kind = "gearbox"
	}
	return fmt.Sprintf("the teeth of %s stage %d, counted from the motor", kind, i+1)
}

// stageTorque is the static torque at the output of stage i while raising, N·m.
func (t *loads) stageTorque(i int) (out, in float64, ok bool) {
	if i >= len(t.d.Stages) || !t.d.DrumTorqueUp.Is {
		return 0, 0, false
	}
	s := t.d.Stages[i]
	return float64(s.OutUp), float64(s.InUp), s.OutUp > 0
}

// stageMissing names what keeps the torques in the train from being known.
func (t *loads) stageMissing() []string {
	_, ok, miss := t.torque()
	if !ok {
		return miss
	}
	miss = nil
	for i, s := range t.h.Train.Stages {
		if !s.Ratio.Is && !s.SunTeeth.Is {
			miss = append(miss, at("train.stages", i, "ratio"))
		}
		if !s.Efficiency.Is && !s.MeshEff.Is && !s.Friction.Is {
			miss = append(miss, at("train.stages", i, "efficiency"))
		}
	}
	return append(miss, "")
}

// ratedStage sets the torque at a bought gear's output against its label; events against twice that, the peak that
// makers of gearboxes usually allow (common practice).
func (t *loads) ratedStage(i int, s lift.Stage) *Check {
	l := newLine("gear_tooth", stageName(i, s), "φ·T ≤ rated torque", source.CommonPractice.At("rated torque of gearboxes"))
	q, _, ok := t.stageTorque(i)
	if !ok {
		l.miss(t.stageMissing()...)
	} else {
		rated := float64(s.Rated.Val)
		l.in("torque at its output, raising", q, unit.NewtonMetres)
		l.in("rated torque", rated, unit.NewtonMetres)
		l.in("factor for jerks φ", t.phi, unit.Pieces)
		l.add("working", unit.NewtonMetres, t.phi*q, rated, 1, 1.25)
		t.addEvents(l, unit.NewtonMetres, q, 2*rated, 1, 1.25)
	}
	c := l.verdict()
	tell(c, turns, change("Use a larger gearbox, a thinner drum, or less mass."))
	return c
}

// toothCheck bends the tooth of the stage's output wheel, pitch diameter m·z, under W = 2·T/(m·z·meshes). A planetary
// stage whose sun is known takes the force between sun and planets, W = 2·T_in/(m·z_sun·meshes); without it the wheel
// counts as the ring, the largest force there can be.
func (t *loads) toothCheck(i int, s lift.Stage) *Check {
	l := newLine("gear_tooth", stageName(i, s), "K_v·W/(b·m·Y) ≤ strength / 3 (printed / 5)", source.Shigley.At("eq. 14-7, Lewis"))
	w := s.Tooth
	bought := s.Kind == lift.StageBox || s.Kind == lift.StageWorm || s.Kind == lift.StageStrainWave || s.Kind == lift.StageCycloid
	if flexible(s) || bought && w == (lift.Tooth{}) { // nobody sees its teeth: its label settles it
		l.miss(at("train.stages", i, "rated_torque_nm"))
		c := l.verdict()
		tell(c, turns, always("Give the rated torque at its output, from its label or its maker."))
		return c
	}
	if w.Material == lift.ToothPrinted {
		l.also(source.EzehSusmel.At("endurance, 10 % of tensile strength"), source.PLASheet.At("strength across the layers"))
	}
	for _, x := range []struct {
		is    bool
		field string
	}{{w.Module.Is, "module_m"}, {w.Teeth.Is, "teeth"}, {w.FaceWidth.Is, "face_width_m"}, {w.Strength.Is, "strength_pa"}, {w.Material != "", "material"}} {
		if !x.is {
			l.miss(at("train.stages", i, "tooth."+x.field))
		}
	}
	q, in, ok := t.stageTorque(i)
	if !ok {
		l.miss(t.stageMissing()...)
	}
	if ok && w.Module.Is && w.Teeth.Is && w.FaceWidth.Is && w.Strength.Is && w.Material != "" {
		t.toothCases(l, i, s, q, in)
	}
	mend := change("Use a wider or coarser gear, one of metal, a thinner drum, or less mass.")
	if bought {
		mend = always("Give the rated torque from its label.").and(mend)
	}
	if s.Kind == lift.StagePlanetary && !s.SunTeeth.Is {
		mend = always("The teeth of the sun are not given, so the force was taken at its largest; give them.").and(mend)
	}
	c := l.verdict()
	tell(c, bends, mend)
	return c
}

func (t *loads) toothCases(l *line, i int, s lift.Stage, q, in float64) {
	w := s.Tooth
	m, z, face := float64(w.Module.Val), float64(w.Teeth.Val), float64(w.FaceWidth.Val)
	meshes := math.Max(1, float64(w.Meshes.Or(1)))
	force := 2 * q / (m * z * meshes)
	if s.Kind == lift.StagePlanetary && s.SunTeeth.Is && s.Ratio.Or(1) >= 1 {
		force = 2 * math.Max(in, 0) / (m * float64(s.SunTeeth.Val) * meshes)
		if r := t.stageRatio(i); r > 0 {
			force = math.Max(force, 2*q/r/(m*float64(s.SunTeeth.Val)*meshes))
		}
	}
	v, okV := t.pitchSpeed(i, m*z)
	if !okV {
		l.miss(t.stallMissing()...)
	}
	kv := velocityFactor(w.Material, v)
	strength := float64(w.Strength.Val) * layerShare(w)
	stress := LewisStress(1, force, face, m, LewisY(z))
	wanted, okB, breaks := toothBorders(w.Material)
	l.in("torque at its output, raising", q, unit.NewtonMetres)
	l.in("force on a tooth W", force, unit.Newtons)
	l.in("module m", m, unit.Metres)
	l.in("form factor Y", LewisY(z), unit.Pieces)
	l.in("face width b", face, unit.Metres)
	l.in("speed factor K_v", kv, unit.Pieces)
	l.in("strength, layer direction included", strength, unit.Pascals)
	l.in("factor for jerks φ", t.phi, unit.Pieces)
	l.add("at rest", unit.Pascals, stress, strength, wanted, okB)
	l.add("working", unit.Pascals, t.phi*kv*stress, strength, wanted, okB)
	if breaks {
		t.addEvents(l, unit.Pascals, stress, strength, 2, 2.5)
	} else {
		t.addEvents(l, unit.Pascals, stress, strength, 1, 1.25)
	}
}

func (t *loads) stageRatio(i int) float64 {
	if i < len(t.d.Stages) {
		return float64(t.d.Stages[i].Ratio)
	}
	return 0
}

// pitchSpeed is the pitch-line speed of stage i's output wheel of diameter d, m/s, at the faster of raising and
// lowering.
func (t *loads) pitchSpeed(i int, d float64) (float64, bool) {
	rotor, ok := 0.0, false
	if t.d.Raising.Known && !t.d.Raising.Stalls {
		rotor, ok = math.Abs(float64(t.d.Raising.Rotor)), true
	}
	if t.d.Lowering.Known {
		rotor, ok = math.Max(rotor, math.Abs(float64(t.d.Lowering.FastestRotor()))), true
	}
	for j := 0; j <= i && j < len(t.d.Stages); j++ {
		if r := float64(t.d.Stages[j].Ratio); r > 0 {
			rotor /= r
		}
	}
	return rotor * d / 2, (ok || t.d.Raising.Stalls) && finite(rotor)
}

// caseFastenerChecks: whether all screws are in place is ticked by hand, and the screws withstand the turning of the case in
// shear: τ = 2·T/(circle·number·.75·π·d²/4), .75 for the thread's core (from memory). Bought gears with a rated torque need
// the tick alone.
func caseFastenerChecks(t *loads) []*Check {
	x := t.h.Train
	if len(x.Stages) == 0 && t.d.Ratio.Is {
		return nil
	}
	l := newLine("case_fasteners", "the screws of the gear case", "all in place; 2·T/(circle·n·.75·π·d²/4) ≤ .577·strength/2", source.Derivation.At("equilibrium of the case"))
	mend := always("Look whether every screw is in place, and answer.")
	switch x.CaseScrews {
	case "":
		l.miss("train.case_screws")
	case unit.No:
		l.add("screws missing", unit.Pieces, 1, 0, 1, 1)
		mend = always("The case turns with the load when screws are missing: put all of them in, locked.")
	}
	given := x.CaseScrewSize.Is && x.CaseScrewCount.Is && x.CaseScrewCircle.Is && x.CaseScrewProof.Is
	q, ok, miss := t.torque()
	switch {
	case given && ok:
		d, n, c, proof := float64(x.CaseScrewSize.Val), float64(x.CaseScrewCount.Val), float64(x.CaseScrewCircle.Val), float64(x.CaseScrewProof.Val)
		stress := ScrewShear(q, d, n, c)
		l.in("torque at the drum, raising", q, unit.NewtonMetres)
		l.in("strength of a screw in shear", shearShare*proof, unit.Pascals)
		l.in("factor for jerks φ", t.phi, unit.Pieces)
		l.add("working", unit.Pascals, t.phi*stress, shearShare*proof, 2, 4)
		t.addEvents(l, unit.Pascals, stress, shearShare*proof, 1, 1.25)
	case given:
		l.miss(miss...)
	case x.CaseScrewSize.Is || x.CaseScrewCount.Is || x.CaseScrewCircle.Is || x.CaseScrewProof.Is:
		for _, of := range []struct {
			is   bool
			path string
		}{{x.CaseScrewSize.Is, "diameter_m"}, {x.CaseScrewCount.Is, "count"}, {x.CaseScrewCircle.Is, "circle_m"}, {x.CaseScrewProof.Is, "proof_pa"}} {
			if !of.is {
				l.miss("train.case_screw_" + of.path)
			}
		}
		mend = always("Give size, number, circle and strength of the screws, all four.")
	case x.CaseScrews == unit.Yes && boughtCases(x.Stages):
		l.add("all in place", unit.Pieces, 1, 1, 1, 1)
	case x.CaseScrews == unit.Yes:
		l.miss("train.case_screw_diameter_m", "train.case_screw_count", "train.case_screw_circle_m", "train.case_screw_proof_pa")
		mend = always("Give size, number, circle and strength of the screws, or the rated torque of a bought gearbox.")
	}
	c := l.verdict()
	if given && x.CaseScrews == unit.Yes && c.Word == GivesWay {
		mend = change("Use more or thicker screws, or a larger circle.")
	}
	tell(c, bends, mend)
	if x.CaseScrews == unit.No {
		c.Say = mend.now()
	}
	if c.Demand.In == unit.Pieces && c.Word == Holds {
		c.Say = say.That("You say that every screw is in place. What the case carries is part of the gears' rated torque.")
	}
	return []*Check{c}
}

// boughtCases reports whether no stage needs its case worked out: the rated torque of a bought gearbox holds for its case, and
// belts and chains have none.
func boughtCases(stages []lift.Stage) bool {
	for _, s := range stages {
		if !s.Rated.Is && s.Kind != lift.StageBelt && s.Kind != lift.StageChain {
			return false
		}
	}
	return true
}

// ScrewShear is the shear stress in n screws of diameter d on a circle, Pa.
func ScrewShear(q, d, n, circle float64) float64 {
	if d <= 0 || n <= 0 || circle <= 0 {
		return 1e15
	}
	return 2 * q / (circle * n * 0.75 * math.Pi * d * d / 4)
}
