package year

import (
	"bytes"
	"encoding/json"
	"math"
	"math/rand/v2"
	"os/exec"
	"testing"

	"duskweight/internal/model/reservoir"
	"duskweight/internal/model/unit"
)

type object = map[string]any

// twinHome writes a home for the second calculation. What its levels keep off is not in its essential and nice load there.
func twinHome(in Input) object {
	rest := [2][]float64{append([]float64{}, in.Essential...), append([]float64{}, in.Nice...)}
	levels, waiting, stores := []object{}, []object{}, []object{}
	for _, l := range in.Managed.Levels {
		for h := range in.Bus {
			rest[0][h] = positive(rest[0][h] - l.Essential[h])
			rest[1][h] = positive(rest[1][h] - l.Nice[h])
		}
		levels = append(levels, object{"below": l.Below, "back": l.Back, "essential": l.Essential, "nice": l.Nice})
	}
	for _, a := range in.Managed.Waiting {
		waiting = append(waiting, object{"power": a.Power, "energy": a.Energy, "from": a.From, "to": a.To, "run_above": a.RunAbove, "must": a.Must, "carry": a.Carry, "essential": a.Essential})
	}
	standing := 0.0
	for _, s := range in.Stores {
		standing += float64(s.Standing)
		stores = append(stores, object{"X": s.Capacity, "pth": s.FillThreshold, "pf": s.FillMax, "af": s.FillGain, "bf": s.FillLoss,
			"pmin": s.DrawMin, "pd": s.DrawMax, "ad": s.DrawGain, "bd": s.DrawLoss, "leak": s.Leak, "locked": s.Locked, "nofill": s.NoFill})
	}
	out := object{"bus": in.Bus, "standing": standing + in.Standing[0], "essential": rest[0], "nice": rest[1], "levels": levels, "waiting": waiting, "stores": stores, "backup": nil}
	if b := in.Managed.Backup; b != nil {
		out["backup"] = object{"rated": b.Rated, "charge": b.Charge, "gain": b.Gain, "start": b.Start, "stop": b.Stop, "from": b.From, "to": b.To, "most": b.Most, "f0": b.Idle * 1000 / b.Rated, "f1": b.PerKWh}
	}
	return out
}

// twinStore draws a store of the kinds that the second calculation knows: no step, no acceptance that falls, no cap.
func twinStore(r *rand.Rand, n int) reservoir.Reservoir {
	s := reservoir.Reservoir{Capacity: unit.Energy(1e5 + 4e6*r.Float64()), FillMax: unit.Power(20 + 200*r.Float64()), FillGain: 0.5 + 0.5*r.Float64(),
		DrawMax: unit.Power(5 + 100*r.Float64()), DrawGain: 1 + r.Float64(), Standing: unit.Power(2 * r.Float64())}
	if r.IntN(2) == 0 {
		s.Leak, s.DrawMin, s.DrawLoss = 1e-7*r.Float64(), unit.Power(4*r.Float64()), unit.Power(2*r.Float64())
		s.FillThreshold, s.FillLoss = unit.Power(30*r.Float64()), unit.Power(5*r.Float64())
	}
	if r.IntN(3) == 0 {
		s.NoFill, s.Locked = make([]bool, n), make([]float64, n)
		for h := range n {
			s.NoFill[h], s.Locked[h] = r.IntN(6) == 0, 0.8*r.Float64()*float64(r.IntN(2))
		}
	}
	return s
}

// Two hundred random homes come to the same in a second calculation that was written from the text of the rule.
func TestManagedTwin(t *testing.T) {
	python, err := exec.LookPath("python3")
	if err != nil {
		t.Skip("python3 is not on this machine: the second calculation of a managed year was NOT compared")
	}
	var homes []Input
	var cases []object
	for seed := range uint64(200) {
		r := rand.New(rand.NewPCG(seed, 51))
		in := anyYear(r, 24*(4+r.IntN(12)), 0)
		for range r.IntN(3) {
			in.Stores = append(in.Stores, twinStore(r, len(in.Bus)))
		}
		anyManaged(r, &in)
		homes, cases = append(homes, in), append(cases, twinHome(in))
	}
	body, err := json.Marshal(cases)
	if err != nil {
		t.Fatal(err)
	}
	cmd := exec.CommandContext(t.Context(), python, "../../../testdata/twin/dispatch.py")
	cmd.Stdin = bytes.NewReader(body)
	text, err := cmd.Output()
	if err != nil {
		t.Fatal(err)
	}
	var twins []object
	if err := json.Unmarshal(text, &twins); err != nil {
		t.Fatal(err)
	}
	cycles := 0
	for i, in := range homes {
		sameAsTwin(t, i, in, twins[i])
		cycles += one(twins[i]["settled"] == false)
	}
	if cycles == 0 || cycles > 100 {
		t.Errorf("%d of the homes do not settle", cycles)
	}
}

// sameAsTwin compares a home with its second calculation.
func sameAsTwin(t *testing.T, i int, in Input, twin object) {
	t.Helper()
	out := run(in)
	scale := float64(out.Bus + out.Load + out.Backup.Energy) // the energies that pass; rounding is a share of these
	same := func(what string, got, want float64) {
		t.Helper()
		if math.Abs(got-want) > 1e-9*scale {
			t.Errorf("home %d: %s: %.15g, its twin %.15g", i, what, got, want)
		}
	}
	f := func(key string) float64 { return twin[key].(float64) }
	at := func(key string, k int) float64 { return twin[key].([]any)[k].(float64) }
	if out.Settled != twin["settled"] || float64(out.Passes) != f("passes") || float64(out.Backup.Hours) != f("hours") || float64(out.Backup.Starts) != f("starts") {
		t.Errorf("home %d: settled %v in %d, %d hours, %d starts; its twin %v in %g, %g hours, %g starts", i, out.Settled, out.Passes, out.Backup.Hours, out.Backup.Starts, twin["settled"], f("passes"), f("hours"), f("starts"))
	}
	for what, v := range map[string]float64{"direct": float64(out.Direct), "backup_direct": float64(out.Backup.Direct), "charged": float64(out.Backup.Energy - out.Backup.Direct), "out": float64(out.Backup.Out),
		"spilled": float64(out.Spilled), "load": float64(out.Load), "unmet": float64(out.Unmet), "unmet_essential": float64(out.Essential.Unmet), "unmet_nice": float64(out.Nice.Unmet)} {
		same(what, v, f(what))
	}
	if got, want := float64(out.Backup.Fuel)*1000, f("fuel"); math.Abs(got-want) > 1e-9*math.Max(1, want) {
		t.Errorf("home %d: %.12g litres, its twin %.12g", i, got, want)
	}
	for k, l := range out.Shed {
		same("shed", float64(l.Energy), at("shed", k))
		if float64(l.Hours) != at("level_hours", k) {
			t.Errorf("home %d: a level keeps off for %d hours, its twin for %g", i, l.Hours, at("level_hours", k))
		}
	}
	for k, a := range out.Waiting {
		same("asked", float64(a.Asked), at("asked", k))
		same("run", float64(a.Run), at("run", k))
		same("missed", float64(a.Missed), at("missed", k))
	}
	for k, s := range out.Stores {
		same("taken", float64(s.Taken), at("taken", k))
		same("delivered", float64(s.Delivered), at("delivered", k))
		same("end", float64(s.End), at("end", k))
	}
}
