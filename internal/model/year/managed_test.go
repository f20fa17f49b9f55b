package year

import (
	"encoding/json"
	"math"
	"math/rand/v2"
	"os"
	"slices"
	"testing"

	"duskweight/internal/model/reservoir"
	"duskweight/internal/model/unit"
)

// three is testdata/published/dispatch_72h.json.
type three struct {
	Inputs struct {
		Bus      []float64 `json:"bus_w"`
		Standing float64   `json:"standing_w"`
		Levels   []struct {
			W          []float64
			Shed, Back float64
		}
		Deferrable []struct {
			P        float64
			EDay     float64 `json:"e_day"`
			Frm, To  int
			RunAbove float64 `json:"run_above"`
			Must     bool
			Carry    float64
		}
		Stores []struct{ X, Af, Ad, Pf, Pd, Leak float64 }
		Backup struct {
			P           float64
			PCharge     float64 `json:"p_charge"`
			Eta         float64
			Start, Stop float64
			MaxH        float64 `json:"max_h"`
			Hours       []int
			F0, F1      float64
		}
		StartX []float64 `json:"start_x_j"`
	}
	Expected struct {
		Bus          float64   `json:"bus_j"`
		Direct       float64   `json:"direct_j"`
		BackupDirect float64   `json:"backup_direct_j"`
		BackupLine   float64   `json:"backup_line_j"`
		BackupOut    float64   `json:"backup_out_j"`
		BackupHours  float64   `json:"backup_hours"`
		Fuel         float64   `json:"fuel_l"`
		Taken        []float64 `json:"taken_j"`
		Delivered    []float64 `json:"delivered_j"`
		Spilled      float64   `json:"spilled_j"`
		Wanted       float64   `json:"wanted_j"`
		Unmet        float64   `json:"unmet_j"`
		Shed         float64   `json:"of_it_shed_j"`
		Run          []float64 `json:"deferred_run_j"`
		Missed       []float64 `json:"deferred_missed_j"`
		EndX         []float64 `json:"end_x_j"`
		BackupOn     []int     `json:"backup_on_in_hours"`
		LevelOff     []int     `json:"last_level_off_in_hours"`
		Without      struct {
			Unmet   float64   `json:"unmet_j"`
			Shed    float64   `json:"shed_j"`
			Spilled float64   `json:"spilled_j"`
			EndX    []float64 `json:"end_x_j"`
		} `json:"without_backup"`
	}
}

// input makes the year and its demand of the three days.
func (c three) input() Input {
	in := Input{Bus: c.Inputs.Bus, Managed: &Managed{}}
	n := len(in.Bus)
	in.Standing, in.Essential, in.Nice = make([]float64, n), c.Inputs.Levels[0].W, c.Inputs.Levels[1].W
	for h := range in.Standing {
		in.Standing[h] = c.Inputs.Standing
	}
	l := c.Inputs.Levels[1]
	in.Managed.Levels = []Level{{Below: l.Shed, Back: l.Back, Nice: l.W}}
	for _, a := range c.Inputs.Deferrable {
		in.Managed.Waiting = append(in.Managed.Waiting, Waiting{Power: a.P, Energy: []float64{a.EDay, a.EDay, a.EDay}, From: a.Frm, To: a.To, RunAbove: a.RunAbove, Must: a.Must, Carry: a.Carry, Essential: true})
	}
	b := c.Inputs.Backup
	in.Managed.Backup = &Backup{Rated: b.P, Charge: b.PCharge, Gain: b.Eta, Start: b.Start, Stop: b.Stop, From: b.Hours[0], To: b.Hours[len(b.Hours)-1] + 1, Most: b.MaxH, Idle: b.F0 * b.P / 1000, PerKWh: b.F1}
	for _, s := range c.Inputs.Stores {
		in.Stores = append(in.Stores, reservoir.Reservoir{Capacity: unit.Energy(s.X), FillMax: unit.Power(s.Pf), FillGain: s.Af, DrawMax: unit.Power(s.Pd), DrawGain: s.Ad, Leak: s.Leak})
	}
	return in
}

// once runs one pass from given states.
func once(in Input, start []float64) (w *Workspace, d *Demand, t dealt, rec *record) {
	w, n := &Workspace{}, len(in.Bus)
	d = NewManagedDemand(n, in.Standing, in.Essential, in.Nice, in.Night, in.Managed)
	standing := w.ready(in.Stores, n)
	w.managed.ready(d, n)
	for k, x := range start {
		w.stores[k].x = x
	}
	rec = newRecord(n, len(in.Stores))
	rec.dealt.size(n, len(in.Managed.Waiting))
	return w, d, w.managed.hours(in.Bus, d, standing, w.stores, w.unmet, rec, 0, n), rec
}

// The three days agree with a calculation apart from the program, to 1e-9, with the generator and without.
func TestThreeDays(t *testing.T) {
	text, err := os.ReadFile("../../../testdata/published/dispatch_72h.json")
	if err != nil {
		t.Fatal(err)
	}
	var c three
	if err := json.Unmarshal(text, &c); err != nil {
		t.Fatal(err)
	}
	want := c.Expected
	same := func(what string, got, want float64) {
		t.Helper()
		if math.Abs(got-want) > 1e-9*math.Max(1, math.Abs(want)) { // its own tolerance
			t.Errorf("%s: %.15g, want %.15g", what, got, want)
		}
	}
	in := c.input()
	w, d, got, rec := once(in, c.Inputs.StartX)
	m := &w.managed
	direct, wanted := 0.0, 0.0
	var on, off []int
	for h, b := range in.Bus {
		all := d.total[h] + m.runs[0][h] + m.runs[1][h]
		wanted += all * hour
		direct += min(b, all-rec.dealt.off[1][h]) * hour
		if rec.dealt.direct[h]+rec.dealt.charged[h] > 0 {
			on = append(on, h)
		}
		if rec.dealt.off[1][h] > 0 {
			off = append(off, h)
		}
	}
	same("direct", direct, want.Direct)
	same("wanted", wanted, want.Wanted)
	same("spilled", got.spill*hour, want.Spilled)
	same("missing", got.miss*hour, want.Unmet)
	same("of it shed", m.levels[0].sum.energy*hour, want.Shed)
	same("backup, used at once", got.direct*hour, want.BackupDirect)
	same("backup, at the line", (got.direct+got.charged)*hour, want.BackupLine)
	same("backup, given", got.out*hour, want.BackupOut)
	same("backup, hours", float64(got.hours), want.BackupHours)
	b := BackupYear{Hours: got.hours, Out: joules(got.out * hour)}
	b.burn(&m.backup)
	same("litres", float64(b.Fuel)*1000, want.Fuel)
	same("taken", w.stores[0].sum.taken, want.Taken[0])
	same("delivered", w.stores[0].sum.delivered, want.Delivered[0])
	same("end", w.stores[0].x, want.EndX[0])
	same("pump", m.waiting[0].sum.run, want.Run[0])
	same("pump missed", m.waiting[0].sum.missed, want.Missed[0])
	if !slices.Equal(on, want.BackupOn) {
		t.Errorf("the backup is on in hours %v, want %v", on, want.BackupOn)
	}
	// The level wants something from 18 to 23 o'clock alone: of its hours off, those.
	var seen []int
	for _, h := range want.LevelOff {
		if h%24 >= 18 {
			seen = append(seen, h)
		}
	}
	if !slices.Equal(off, seen) {
		t.Errorf("the level is off in hours %v, want %v", off, seen)
	}

	in.Managed.Backup = nil
	w, _, got, _ = once(in, c.Inputs.StartX)
	same("without backup: missing", got.miss*hour, want.Without.Unmet)
	same("without backup: shed", w.managed.levels[0].sum.energy*hour, want.Without.Shed)
	same("without backup: spilled", got.spill*hour, want.Without.Spilled)
	same("without backup: end", w.stores[0].x, want.Without.EndX[0])
}

// A petrol set of 1,800 W with .12 and .5 litres a kWh: .216 + .5·.45 = .441 litres an hour at a quarter, .216 + .9 = 1.116 at
// its full power.
func TestLitres(t *testing.T) {
	for out, want := range map[float64]float64{450: 0.441, 1800: 1.116} {
		b := BackupYear{Hours: 1, Out: joules(out * hour)}
		b.burn(&Backup{Idle: 0.12 * 1.8, PerKWh: 0.5})
		if got := float64(b.Fuel) * 1000; math.Abs(got-want) > 1e-12 {
			t.Errorf("%g W: %g litres an hour, want %g", out, got, want)
		}
	}
}

// Windows of the clock: how many of its hours are left with this one.
func TestOpen(t *testing.T) {
	for _, c := range []struct {
		clock, from, to, left int
		is                    bool
	}{
		{9, 9, 16, 7, true}, {15, 9, 16, 1, true}, {16, 9, 16, 0, false}, {8, 9, 16, 0, false},
		{22, 22, 6, 8, true}, {0, 22, 6, 6, true}, {5, 22, 6, 1, true}, {6, 22, 6, 0, false},
		{0, 0, 24, 24, true}, {23, 0, 24, 1, true},
	} {
		is, left := windowOf(c.from, c.to).open(c.clock), left(c.clock, c.to)
		if is != c.is || is && left != c.left {
			t.Errorf("%d in %d–%d: %d left, %v; want %d, %v", c.clock, c.from, c.to, left, is, c.left, c.is)
		}
	}
}

// A window that ends where it begins is the whole day, from midnight to midnight, as energy is asked anew at midnight.
func TestWholeDay(t *testing.T) {
	in := Input{Bus: make([]float64, 24), Managed: &Managed{Waiting: []Waiting{{Power: 100, Energy: []float64{100 * 3600}, From: 7, To: 7, RunAbove: 1, Must: true}}}}
	out := run(Input{Bus: in.Bus, Managed: in.Managed, Keep: true})
	if out.Hourly.Run[0][23] != 100*3600 || float64(out.Waiting[0].Run) != 100*3600 {
		t.Errorf("an hour's energy that must be run before the day ends: %v", out.Hourly.Run[0])
	}
}

// A store for the electronics alone is not looked at: full, it does not keep on what an empty store has switched off.
func TestAside(t *testing.T) {
	in := Input{Bus: make([]float64, 48), Nice: make([]float64, 48), Managed: &Managed{Levels: []Level{{Below: 0.5, Back: 0.6, Nice: make([]float64, 48)}}}}
	for h := range in.Bus {
		in.Bus[h], in.Nice[h], in.Managed.Levels[0].Nice[h] = 0, 1, 1
	}
	lamps := reservoir.Reservoir{Capacity: 10 * 3600, DrawMax: 10, DrawGain: 1, FillGain: 1}
	other := lamps
	other.DrawMax = 0
	// Alone it is at half after five hours and below it after the sixth: 42 of 48 hours off. With the other, it is never below half.
	for aside, want := range map[bool]int{false: 0, true: 42} {
		other.Aside = aside
		w, _, _, _ := once(Input{Bus: in.Bus, Nice: in.Nice, Managed: in.Managed, Stores: []reservoir.Reservoir{lamps, other}}, []float64{10 * 3600, 10 * 3600})
		if got := w.managed.levels[0].sum.hours; got != want {
			t.Errorf("aside %v: off in %d hours, want %d", aside, got, want)
		}
	}
}

// anyManaged draws who goes first in a year: up to four levels, some waiting devices, a backup or none. Of what goes off it
// changes the load of in.
func anyManaged(r *rand.Rand, in *Input) {
	n := len(in.Bus)
	in.Managed = &Managed{}
	for range r.IntN(4) {
		l := Level{Below: 0.05 + 0.8*r.Float64(), Essential: make([]float64, n), Nice: make([]float64, n)}
		l.Back = l.Below + 0.14*r.Float64()
		for h := range n {
			l.Essential[h], l.Nice[h] = 20*r.Float64()*float64(r.IntN(2)), 20*r.Float64()
			in.Essential[h] += l.Essential[h]
			in.Nice[h] += l.Nice[h]
		}
		in.Managed.Levels = append(in.Managed.Levels, l)
	}
	for range r.IntN(4) {
		a := Waiting{Power: 200 * r.Float64(), From: r.IntN(24), To: r.IntN(25), RunAbove: r.Float64(), Must: r.IntN(2) == 0, Carry: math.Round(3 * r.Float64()), Essential: r.IntN(2) == 0}
		for range n/24 + 1 {
			a.Energy = append(a.Energy, 4e6*r.Float64()*float64(r.IntN(4)/3+r.IntN(2)))
		}
		in.Managed.Waiting = append(in.Managed.Waiting, a)
	}
	if r.IntN(4) > 0 {
		b := &Backup{Rated: 300 * r.Float64(), Charge: 200 * r.Float64(), Gain: 0.5 + 0.5*r.Float64(), Start: 0.5 * r.Float64(), From: r.IntN(24), To: r.IntN(24), Most: float64(1 + r.IntN(24)), Idle: r.Float64(), PerKWh: r.Float64()}
		b.Stop = b.Start + (1-b.Start)*r.Float64()
		in.Managed.Backup = b
	}
}

// managedBalances checks the balances of a managed year: those of the line, of the backup, of each waiting device.
func managedBalances(in Input, out Result) error {
	f := func(e unit.Energy) float64 { return float64(e) }
	errs := []error{
		closes(f(out.Bus)+f(out.Backup.Energy), f(out.Direct), f(out.Backup.Direct), f(out.Taken), f(out.Spilled)),
		closes(f(out.Load), f(out.Direct), f(out.Backup.Direct), f(out.Delivered), f(out.Unmet)),
		closes(f(out.Load), f(out.StoreStanding.Wanted), f(out.Standing.Wanted), f(out.Essential.Wanted), f(out.Nice.Wanted)),
		closes(f(out.Unmet), f(out.StoreStanding.Unmet), f(out.Standing.Unmet), f(out.Essential.Unmet), f(out.Nice.Unmet)),
		closes(f(out.Backup.Direct), f(out.StoreStanding.Backup), f(out.Standing.Backup), f(out.Essential.Backup), f(out.Nice.Backup)),
	}
	for _, p := range []Part{out.StoreStanding, out.Standing, out.Essential, out.Nice} {
		errs = append(errs, closes(f(out.Load)+f(p.Wanted), f(out.Load), f(p.Direct), f(p.Backup), f(p.Delivered), f(p.Unmet)))
	}
	shed, run := 0.0, 0.0
	for _, l := range out.Shed {
		shed += f(l.Energy)
	}
	for i, a := range out.Waiting {
		errs = append(errs, closes(f(a.Asked), f(a.Run), f(a.Missed), f(a.Change)))
		sum := 0.0
		for _, e := range out.Hourly.Run[i] {
			sum += e
		}
		errs = append(errs, closes(f(a.Run), sum))
		run += f(a.Run)
	}
	for _, s := range out.Stores {
		errs = append(errs, closes(f(s.Change), f(s.Taken), -f(s.Delivered), -f(s.Loss)))
	}
	errs = append(errs, closes(total(out.Hourly.Shed), shed), closes(total(out.Hourly.Unmet), f(out.Unmet)),
		closes(f(out.Load), total(in.Standing)*hour, total(in.Essential)*hour, total(in.Nice)*hour, f(out.StoreStanding.Wanted), run),
		closes(f(out.Backup.Energy), total(out.Hourly.Direct), total(out.Hourly.Charge)))
	for _, err := range errs {
		if err != nil {
			return err
		}
	}
	return nil
}

func total(v []float64) float64 {
	sum := 0.0
	for _, x := range v {
		sum += x
	}
	return sum
}

// Every balance of a managed year closes, whatever the home; and a sweep comes to the same.
func TestManagedBalances(t *testing.T) {
	var w Workspace
	cycles, gave, off := 0, 0, 0
	for seed := range uint64(1500) {
		r := rand.New(rand.NewPCG(seed, 41))
		in := anyYear(r, 24*(3+r.IntN(20))+r.IntN(24), r.IntN(4))
		anyManaged(r, &in)
		out := run(in)
		if err := managedBalances(in, out); err != nil {
			t.Fatalf("seed %d: %v", seed, err)
		}
		b := w.Quick(in.Bus, NewManagedDemand(len(in.Bus), in.Standing, in.Essential, in.Nice, in.Night, in.Managed), in.Stores)
		a := out.Brief()
		for what, v := range map[string][2]unit.Energy{"taken": {a.Taken, b.Taken}, "delivered": {a.Delivered, b.Delivered}, "spilled": {a.Spilled, b.Spilled},
			"unmet": {a.Unmet, b.Unmet}, "nice": {a.UnmetNice, b.UnmetNice}, "essential": {a.UnmetEssential, b.UnmetEssential}, "backup": {a.Backup.Energy, b.Backup.Energy}} {
			// sums in another order over a thousand hours at the most
			if diff := math.Abs(float64(v[0] - v[1])); diff > 1e-12*float64(out.Load+out.Bus+out.Backup.Energy) {
				t.Fatalf("seed %d: %s: quick %.17g, run %.17g", seed, what, float64(v[1]), float64(v[0]))
			}
		}
		if a.Tally.NightsFull != b.Tally.NightsFull || a.NightsServed != b.NightsServed || a.NightsEssential != b.NightsEssential || a.LongestOutage != b.LongestOutage || a.Settled != b.Settled || a.Backup.Hours != b.Backup.Hours {
			t.Fatalf("seed %d: quick %+v, run %+v", seed, b, a)
		}
		cycles, gave = cycles+one(!out.Settled), gave+one(out.Backup.Energy > 0)
		for _, l := range out.Shed {
			off += one(l.Energy > 0)
		}
	}
	if gave < 500 || off < 500 || cycles == 0 {
		t.Errorf("the homes are too tame: a backup gives in %d, a level is off in %d, %d do not settle", gave, off, cycles)
	}
}

// With nobody who decides anything, a managed year is the plain one.
func TestManagedByNobody(t *testing.T) {
	var w Workspace
	for seed := range uint64(400) {
		r := rand.New(rand.NewPCG(seed, 43))
		in := anyYear(r, 24*(3+r.IntN(20))+r.IntN(24), r.IntN(4))
		want := run(in)
		in.Managed = &Managed{}
		got := run(in)
		scale := float64(want.Load + want.Bus)
		for what, v := range map[string][2]unit.Energy{"bus": {got.Bus, want.Bus}, "direct": {got.Direct, want.Direct}, "taken": {got.Taken, want.Taken}, "spilled": {got.Spilled, want.Spilled},
			"load": {got.Load, want.Load}, "delivered": {got.Delivered, want.Delivered}, "unmet": {got.Unmet, want.Unmet}, "essential": {got.Essential.Unmet, want.Essential.Unmet}} {
			if math.Abs(float64(v[0]-v[1])) > 1e-12*scale {
				t.Fatalf("seed %d: %s: %.17g, plain %.17g", seed, what, float64(v[0]), float64(v[1]))
			}
		}
		for k, s := range want.Stores {
			for h, x := range want.Hourly.State[k] {
				if math.Abs(x-got.Hourly.State[k][h]) > 1e-12*float64(s.Capacity) {
					t.Fatalf("seed %d, store %d, hour %d: %.17g, plain %.17g", seed, k, h, got.Hourly.State[k][h], x)
				}
			}
		}
		a, b := want.Brief(), w.Quick(in.Bus, NewManagedDemand(len(in.Bus), in.Standing, in.Essential, in.Nice, in.Night, in.Managed), in.Stores)
		if a.NightsServed != b.NightsServed || a.Tally.NightsFull != b.Tally.NightsFull || a.Gaps != b.Gaps || a.Settled != b.Settled {
			t.Fatalf("seed %d: %+v, plain %+v", seed, b, a)
		}
	}
}

// A sweep over managed years allocates nothing.
func TestManagedAllocatesNothing(t *testing.T) {
	bus, d, stores := managedBench()
	var w Workspace
	w.Quick(bus, d, stores)
	if n := testing.AllocsPerRun(5, func() { w.Quick(bus, d, stores) }); n > 0 {
		t.Errorf("%g allocations a year", n)
	}
}

// managedBench is a home with a level, a pump that waits, and a generator.
func managedBench() (bus []float64, d *Demand, stores []reservoir.Reservoir) {
	bus, plain := benchYear(1)
	m := &Managed{Levels: []Level{{Below: 0.4, Back: 0.5, Nice: plain.nice}}, Backup: &Backup{Rated: 800, Charge: 300, Gain: 0.85, Start: 0.2, Stop: 0.6, From: 7, To: 22, Most: 6}}
	pump := Waiting{Power: 60, From: 9, To: 16, RunAbove: 0.5, Must: true, Carry: 2}
	for range 365 {
		pump.Energy = append(pump.Energy, 60*3600)
	}
	m.Waiting = []Waiting{pump}
	return bus, NewManagedDemand(Hours, nil, plain.essential, plain.nice, plain.night, m), []reservoir.Reservoir{straightStore()}
}

// One pass over a managed year beside one over the plain year of the same store: the time of a step, and how many times it is.
func BenchmarkManaged(b *testing.B) {
	bus, d, stores := managedBench()
	var w, plain Workspace
	w.ready(stores, Hours)
	w.managed.ready(d, Hours)
	plain.ready(stores, Hours)
	best, of := math.Inf(1), math.Inf(1)
	b.ReportAllocs()
	for b.Loop() {
		best = min(best, timed(func() {
			for h := 0; h < Hours; h += piece {
				w.managed.hours(bus, d, 0, w.stores, w.unmet, nil, h, h+piece)
			}
		}))
		of = min(of, timed(func() {
			for h := 0; h < Hours; h += piece {
				hours(bus, d.total, 0, plain.stores, plain.unmet, nil, h, h+piece)
			}
		}))
	}
	b.ReportMetric(best, "ns/step")
	b.ReportMetric(of, "plain-ns/step")
	b.ReportMetric(best/of, "times")
}
