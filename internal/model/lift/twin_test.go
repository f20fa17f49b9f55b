package lift

import (
	"bytes"
	"encoding/json"
	"math"
	"os/exec"
	"testing"

	"duskweight/internal/model/unit"
)

// twinFigures are the figures of the second calculation; what it could not tell is missing.
type twinFigures map[string]any

// TestTwin holds random designs against a second calculation of the same equations in another language, written on its
// own from the equations' text. Where it bisects, what the program solves in closed form must agree to 1e-9.
func TestTwin(t *testing.T) {
	python, err := exec.LookPath("python3")
	if err != nil {
		t.Skip("python3 is not on this machine: the second calculation of the hoist was NOT compared")
	}
	d := newDice(20)
	designs := make([]Hoist, 2000)
	for i := range designs {
		designs[i] = d.hoist()
		if i%4 == 0 { // the rotor's inertia is bounded by the mass and the size of its motor
			m := &designs[i].Machine
			m.J, m.Mass, m.Diameter = unit.Known[unit.Inertia]{}, unit.Of(unit.Mass(0.2+float64(i)/1000)), unit.Of(unit.Length(0.03+float64(i)/40000))
			m.ShellTurns = []unit.Answer{"", unit.Yes, unit.No}[i/4%3]
		}
	}
	body, err := json.Marshal(designs)
	if err != nil {
		t.Fatal(err)
	}
	cmd := exec.CommandContext(t.Context(), python, "../../../testdata/twin/hoist.py")
	cmd.Stdin = bytes.NewReader(body)
	var complaint bytes.Buffer
	cmd.Stderr = &complaint
	out, err := cmd.Output()
	if err != nil {
		t.Fatalf("the second calculation failed: %v\n%s", err, complaint.String())
	}
	var twins []twinFigures
	if err := json.Unmarshal(out, &twins); err != nil {
		t.Fatal(err)
	}
	seen := map[string]int{}
	for i, h := range designs {
		c := comparison{t: t, i: i, twin: twins[i], seen: seen}
		c.all(h, Compute(h))
		if t.Failed() {
			b, _ := json.Marshal(h)
			t.Fatalf("design %d: %s", i, b)
		}
	}
	t.Log("figures compared:", seen)
	for _, name := range []string{"up_energy", "b_f", "down_energy", "growth", "needs_mass", "open_speed", "burst", "brake_fall", "stall_pull", "overtravel", "rest", "slope", "layers above 1", "winding in steps", "stiff", "a_d", "p_dmin"} {
		if seen[name] < 10 {
			t.Errorf("only %d designs reach %s: the random designs are too tame", seen[name], name)
		}
	}
}

type comparison struct {
	t    *testing.T
	i    int
	twin twinFigures
	seen map[string]int
}

// near compares one figure: relative 1e-9, which leaves a thousandfold of what sums of a hundred terms lose in float64.
func (c comparison) near(name string, got float64) {
	want, ok := c.twin[name].(float64)
	if !ok {
		return
	}
	c.close(name, got, want)
}

func (c comparison) close(name string, got, want float64) {
	c.seen[name]++
	if math.Abs(got-want) > 1e-9*math.Max(math.Abs(want), 1e-6) {
		c.t.Errorf("design %d, %s: got %.15g, the twin has %.15g", c.i, name, got, want)
	}
}

func (c comparison) same(name string, got any) {
	if want, ok := c.twin[name]; ok && want != got {
		c.t.Errorf("design %d, %s: got %v, the twin has %v", c.i, name, got, want)
	}
}

func (c comparison) all(h Hoist, d Drive) {
	for j, x := range d.Tensions {
		c.close("part_up", float64(x.Up), c.twin["part_up"].([]any)[j].(float64))
		c.close("part_down", float64(x.Down), c.twin["part_down"].([]any)[j].(float64))
	}
	if n := c.twin["layers"].(float64); n > 1 {
		c.seen["layers above 1"]++
	}
	c.near("ratio", float64(d.Ratio.Val))
	c.near("c", float64(d.RotorPerMetre.Val))
	c.near("K", float64(d.Machine.K.Val))
	c.near("R", float64(d.Machine.R.Val))
	c.near("torque_up", float64(d.DrumTorqueUp.Val))
	c.near("torque_down", float64(d.DrumTorqueDown.Val))
	c.near("motor_up", float64(d.AtMotorUp.Val))
	c.raising(d)
	c.lowering(d)
	c.near("fall", float64(d.LetGo.Acceleration))
	c.near("open_speed", float64(d.LetGo.OpenSpeed))
	c.near("burst", float64(d.LetGo.BurstForce.Val))
	c.near("brake_fall", float64(d.LetGo.BrakeFall.Val))
	c.near("brake_speed", float64(d.LetGo.BrakeSpeed.Val))
	c.near("stall_pull", float64(d.StallRopePull.Val))
	c.near("overtravel", float64(d.Overtravel.Val))
	c.near("joined_speed", float64(d.LetGo.JoinedSpeed.Val))
	c.heat("heat_up", d.HeatUp)
	c.heat("heat_down", d.HeatDown)
	if r := d.Reservoir; r != nil {
		c.near("capacity", float64(r.Capacity))
		c.near("p_th", float64(r.FillThreshold))
		c.near("p_f", float64(r.FillMax))
		c.near("a_f", r.FillGain)
		c.near("b_f", float64(r.FillLoss))
		c.near("a_d", r.DrawGain)
		c.near("b_d", float64(r.DrawLoss))
		c.near("p_d", float64(r.DrawMax))
		c.near("p_dmin", float64(r.DrawMin))
	}
}

func (c comparison) raising(d Drive) {
	r := d.Raising
	c.same("stalls", r.Stalls)
	c.near("up_current", float64(r.Current))
	c.near("margin", float64(r.Margin))
	c.near("up_rotor", float64(r.Rotor))
	c.near("up_speed", float64(r.Speed))
	c.near("up_time", float64(r.Time))
	c.near("up_energy", float64(r.EnergyIn))
}

func (c comparison) lowering(d Drive) {
	l := d.Lowering
	c.same("runs_back", string(l.RunsBack))
	c.same("steady", l.Steady)
	c.near("needs_mass", float64(l.NeedsMass.Val))
	if l.RunsBack == "no" {
		return
	}
	c.near("motor_down", float64(d.AtMotorDown.Val))
	c.near("down_current", float64(l.Current))
	c.near("down_voltage", float64(l.Voltage))
	c.near("down_rotor", float64(l.Rotor))
	c.near("down_speed", float64(l.Speed))
	c.near("growth", float64(l.Growth.Val))
	if !l.Steady {
		return
	}
	c.near("down_fastest", float64(l.Fastest()))
	c.near("slope", l.Slope)
	c.same("stiff", l.Stiff)
	if l.Stiff {
		c.seen["stiff"]++
	}
	c.near("steady_power", float64(l.SteadyPower))
	c.near("down_power", float64(l.Power))
	c.near("down_time", float64(l.Time))
	c.near("down_energy", float64(l.EnergyOut))
}

func (c comparison) heat(name string, h Heat) {
	want, ok := c.twin[name].(map[string]any)
	if !ok {
		return
	}
	part := comparison{c.t, c.i, want, c.seen}
	part.same("settles", h.Settles)
	if w, ok := want["winding"].(float64); ok && w < 1e6 {
		part.near("winding", float64(h.Winding))
	}
	if w, ok := want["winding_in_steps"].(float64); ok && w < 1e6 { // steps of a fourth-order rule: 1e-6
		c.seen["winding in steps"]++
		if got := float64(h.Winding); math.Abs(got-w) > 1e-6*math.Max(math.Abs(w), 1) {
			c.t.Errorf("design %d, winding of two bodies: got %.10g, in small steps %.10g", c.i, got, w)
		}
	}
	part.near("run", float64(h.Run.Val))
	if rest, ok := want["rest"].(float64); ok && rest > 1e-6 {
		part.near("rest", float64(h.Rest.Val))
	}
}
