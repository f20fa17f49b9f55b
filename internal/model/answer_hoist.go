package model

import (
	"duskweight/internal/model/lift"
	"duskweight/internal/model/lift/path"
	"duskweight/internal/model/unit"
	"duskweight/internal/say"
)

// What a hoist's page says beyond the figures: what is flagged and missing by field, the train, what goes wrong, what it
// may do to people, and behind each check its formula, inputs, cases and sources.

// FlagAnswer is one thing said in words, with the field it is about; bad means do not hang.
type FlagAnswer struct {
	Path string       `json:"path"`
	Say  say.Sentence `json:"say"`
	Bad  bool         `json:"bad"`
}

// MissingAnswer is an input that is not known and what it keeps from being told; the path is inside the hoist.
type MissingAnswer struct {
	Path  string `json:"path"`
	Wants string `json:"wants"`
}

// StageAnswer is one gear stage, the first at the motor; torques are those of the fullest layer of rope.
type StageAnswer struct {
	Ratio    unit.Ratio  `json:"ratio"`
	Forward  unit.Ratio  `json:"efficiency_forward"`
	Backward unit.Ratio  `json:"efficiency_backward"`
	Class    string      `json:"class"`
	OutUp    unit.Torque `json:"out_up_nm"`
	InUp     unit.Torque `json:"in_up_nm"`
	OutDown  unit.Torque `json:"out_down_nm"`
	InDown   unit.Torque `json:"in_down_nm"`
}

// MachineAnswer is the motor's constants and where its numbers contradict each other. brush_drop_v is what the figures are for;
// low and high are told where only a range of it is known, and then high_brush_drop of the hoist has the figures for the high
// end.
type MachineAnswer struct {
	K              unit.Known[unit.MachineConstant] `json:"k_vs_rad"`
	R              unit.Known[unit.Resistance]      `json:"r_ohm"`
	I0             unit.Known[unit.Current]         `json:"i0_a"`
	Brush          unit.Known[unit.Voltage]         `json:"brush_drop_v"`
	BrushLow       unit.Known[unit.Voltage]         `json:"brush_drop_low_v"`
	BrushHigh      unit.Known[unit.Voltage]         `json:"brush_drop_high_v"`
	From           string                           `json:"from"`
	Contradictions []say.Sentence                   `json:"contradictions"`
}

// BrushAnswer is the way up and down with the greatest drop at the motor's brushes.
type BrushAnswer struct {
	Raise RaiseAnswer `json:"raise"`
	Lower LowerAnswer `json:"lower"`
}

// CureAnswer is one way to make loads settle that race.
type CureAnswer struct {
	Say   say.Sentence `json:"say"`
	Burns unit.Power   `json:"burns_w"`
}

// MishapAnswer is what goes wrong, each as speed, force, length or time.
type MishapAnswer struct {
	OpenAcceleration unit.Known[unit.Acceleration] `json:"open_acceleration_m_s2"`
	OpenVoltage      unit.Known[unit.Voltage]      `json:"open_voltage_v"`
	Frictionless     unit.Known[unit.Speed]        `json:"frictionless_speed_m_s"`
	FreeFall         unit.Known[unit.Speed]        `json:"free_fall_speed_m_s"`
	BreaksUpFirst    *bool                         `json:"breaks_up_first"`
	JoinedFor        unit.Known[unit.Duration]     `json:"joined_winding_stands_s"`
	Burst            unit.Known[unit.Force]        `json:"joined_racing_rope_n"`
	BrakeFall        unit.Known[unit.Length]       `json:"brake_fall_m"`
	BrakeSpeed       unit.Known[unit.Speed]        `json:"brake_speed_m_s"`
	Overtravel       unit.Known[unit.Length]       `json:"overtravel_m"`
	StallPull        unit.Known[unit.Force]        `json:"stalled_rope_n"`
	ReflectedMass    unit.Known[unit.Mass]         `json:"reflected_mass_kg"`
	MayOpen          []string                      `json:"may_open"`
	Shunt            bool                          `json:"shunt"`
}

// HazardAnswer is what the hoist can do to people and things.
type HazardAnswer struct {
	DropEnergy  unit.Known[unit.Energy] `json:"drop_energy_j"`
	DropSpeed   unit.Known[unit.Speed]  `json:"drop_speed_m_s"`
	PadForce    unit.Known[unit.Force]  `json:"pad_force_n"`
	KeepOut     unit.Known[unit.Length] `json:"keep_out_m"`
	AtLeast     bool                    `json:"keep_out_at_least"`
	ComesDown   string                  `json:"comes_down_without_power"`
	Questions   []QuestionAnswer        `json:"questions"`
	Cautions    []say.Sentence          `json:"cautions"`
	SwitchOrder []string                `json:"switch_order"`
}

// QuestionAnswer is a question that only the user answers.
type QuestionAnswer struct {
	Path   string `json:"path"`
	Ask    string `json:"ask"`
	Answer string `json:"answer"`
	Worse  bool   `json:"worse"`
}

// InputAnswer is one input of a check.
type InputAnswer struct {
	Name  string  `json:"name"`
	Value float64 `json:"value"`
	Unit  string  `json:"unit"`
}

// CaseAnswer is one load case of a check.
type CaseAnswer struct {
	Name     string                 `json:"name"`
	Unit     string                 `json:"unit"`
	Demand   unit.Ratio             `json:"demand"`
	Capacity unit.Ratio             `json:"capacity"`
	Wanted   unit.Ratio             `json:"factor_wanted"`
	Use      unit.Known[unit.Ratio] `json:"use"`
}

func flagAnswers(flags []lift.Flag) []FlagAnswer {
	out := make([]FlagAnswer, len(flags))
	for i, f := range flags {
		out[i] = FlagAnswer{f.Path, f.Say, f.Bad}
	}
	return out
}

func missingAnswers(missing []lift.Missing) []MissingAnswer {
	out := make([]MissingAnswer, len(missing))
	for i, m := range missing {
		out[i] = MissingAnswer(m)
	}
	return out
}

func stageAnswers(stages []lift.StageResult) []StageAnswer {
	out := make([]StageAnswer, len(stages))
	for i, s := range stages {
		out[i] = StageAnswer{s.Ratio, s.Forward, s.Backward, string(s.Class), s.OutUp, s.InUp, s.OutDown, s.InDown}
	}
	return out
}

func machineAnswer(c lift.Constants) MachineAnswer {
	a := MachineAnswer{K: c.K, R: c.R, I0: c.I0, BrushLow: c.BrushLow, BrushHigh: c.BrushHigh, From: string(c.From), Contradictions: some(c.Contradictions)}
	if c.K.Is {
		a.Brush = unit.Of(c.BrushDrop)
	}
	return a
}

func cureAnswers(cures []lift.Cure) []CureAnswer {
	out := make([]CureAnswer, len(cures))
	for i, c := range cures {
		out[i] = CureAnswer{c.Say, c.Burns}
	}
	return out
}

func mishapAnswer(d lift.Drive) MishapAnswer {
	g := d.LetGo
	a := MishapAnswer{JoinedFor: g.JoinedFor, Burst: g.BurstForce, BrakeFall: g.BrakeFall, BrakeSpeed: g.BrakeSpeed,
		Overtravel: d.Overtravel, StallPull: d.StallRopePull, ReflectedMass: d.ReflectedMass, MayOpen: some(d.Lowering.MayOpen), Shunt: d.Lowering.Shunt}
	if g.Known {
		a.OpenAcceleration, a.OpenVoltage = unit.Of(g.Acceleration), unit.Of(g.OpenVoltage)
		a.Frictionless, a.FreeFall, a.BreaksUpFirst = unit.Of(g.Frictionless), unit.Of(g.FreeFall), &g.BreaksUpFirst
	}
	return a
}

func hazardAnswer(z path.Hazards) HazardAnswer {
	a := HazardAnswer{DropEnergy: z.DropEnergy, DropSpeed: z.DropSpeed, PadForce: z.PadForce, KeepOut: z.KeepOut, AtLeast: z.AtLeast,
		ComesDown: z.ComesDown, Questions: []QuestionAnswer{}, Cautions: []say.Sentence{}, SwitchOrder: some(z.SwitchOrder)}
	for _, list := range [][]path.Question{z.Questions, z.Round} {
		for _, q := range list {
			a.Questions = append(a.Questions, QuestionAnswer{q.Path, q.Ask, q.Answer, q.Worse})
		}
	}
	for _, c := range z.Cautions {
		a.Cautions = append(a.Cautions, c.Say)
	}
	return a
}

// behind fills what stands behind a check: how it was reckoned, from what, by which sources.
func (a *CheckAnswer) behind(c path.Check) {
	a.Case, a.Formula, a.Missing = c.Case, c.Formula, some(c.Missing)
	a.Inputs, a.Cases, a.Also = make([]InputAnswer, len(c.Inputs)), make([]CaseAnswer, len(c.Cases)), []string{}
	for i, in := range c.Inputs {
		a.Inputs[i] = InputAnswer{in.Name, in.Value.Val, string(in.Value.In)}
	}
	for i, k := range c.Cases {
		a.Cases[i] = CaseAnswer{k.Name, string(k.Demand.In), unit.Ratio(k.Demand.Val), unit.Ratio(k.Capacity.Val), k.Wanted, k.Use}
	}
	for _, s := range c.Also {
		a.Also = append(a.Also, s.String())
	}
}

// some is a list that is never null.
func some[T any](list []T) []T {
	if list == nil {
		return []T{}
	}
	return list
}
