package document_test

import (
	"bytes"
	"encoding/json"
	"math"
	"math/rand/v2"
	"os/exec"
	"testing"

	"duskweight/internal/catalog"
	"duskweight/internal/document"
	"duskweight/internal/model"
	"duskweight/internal/model/cell"
	"duskweight/internal/model/load"
	"duskweight/internal/model/reservoir"
	"duskweight/internal/model/unit"
)

// nightCase is what the second calculation is given; it computes loads, batteries and the year of both itself.
type nightCase struct {
	Load    json.RawMessage        `json:"load"`
	Variant json.RawMessage        `json:"variant"`
	Bus     []float64              `json:"bus"`   // W at the line
	Air     []float64              `json:"air"`   // °C round the batteries
	Night   []int                  `json:"night"` // of each hour
	Masses  []*reservoir.Reservoir `json:"masses"`
}

type nightAnswer struct {
	Nights, Served, Outage               int
	Wanted, Lacking, Missing, Over, Week float64
	Taken, Given, Capacity, Current      []float64
}

// The whole answer of a variant, from its document to its nights, against a second calculation in another language that
// was written from the equations' text: the six kinds of batteries with their values known or typical, one or two of
// them and a lifted mass in any order, loads by the clock. Both end a year that agrees with its start to 1e-9 of a
// capacity, so energies agree to 1e-6 of the year's load.
func TestNightTwin(t *testing.T) {
	python, err := exec.LookPath("python3")
	if err != nil {
		t.Skip("python3 is not on this machine: the second calculation of the nights was NOT compared")
	}
	r := rand.New(rand.NewPCG(7, 11))
	var cases []nightCase
	var results []model.VariantResult
	for len(cases) < 24 {
		p, v := nightPlan(r, len(cases))
		g := model.Prepare(p)
		result := g.Evaluate(v)
		if !result.YearKnown {
			t.Fatalf("case %d: no year: %s", len(cases), result.WhyNoYear)
		}
		cases, results = append(cases, nightCaseOf(t, g, v, result)), append(results, result)
	}
	body, err := json.Marshal(cases)
	if err != nil {
		t.Fatal(err)
	}
	cmd := exec.CommandContext(t.Context(), python, "../../testdata/twin/night.py")
	cmd.Stdin = bytes.NewReader(body)
	var complaint bytes.Buffer
	cmd.Stderr = &complaint
	out, err := cmd.Output()
	if err != nil {
		t.Fatalf("the second calculation failed: %v\n%s", err, complaint.String())
	}
	var twins []nightAnswer
	if err := json.Unmarshal(out, &twins); err != nil {
		t.Fatal(err)
	}
	some := 0
	for i, result := range results {
		sameNights(t, i, result, twins[i])
		if s := result.Year.NightsServed; s > 0 && s < result.Year.Nights {
			some++
		}
	}
	if some < 8 {
		t.Errorf("only %d of the plans carry some of the nights and not all: they are too tame", some)
	}
}

func sameNights(t *testing.T, i int, r model.VariantResult, twin nightAnswer) {
	t.Helper()
	y := r.Year
	if y.Nights != twin.Nights || y.NightsServed != twin.Served || y.LongestOutage.Hours != twin.Outage {
		t.Errorf("case %d: %d of %d nights, %d hours without; the twin has %d of %d, %d", i, y.NightsServed, y.Nights, y.LongestOutage.Hours, twin.Served, twin.Nights, twin.Outage)
	}
	near := func(what string, got, want float64) {
		t.Helper()
		if math.Abs(got-want) > 1e-6*float64(y.Load) {
			t.Errorf("case %d, %s: %.9g, the twin has %.9g", i, what, got, want)
		}
	}
	var wanted, lacking float64
	for _, n := range y.NightLog {
		wanted, lacking = wanted+float64(n.Wanted), lacking+float64(n.Unmet)
	}
	near("wanted at night", wanted, twin.Wanted)
	near("missing at night", lacking, twin.Lacking)
	near("missing", float64(y.Unmet), twin.Missing)
	near("left over", float64(y.Spilled), twin.Over)
	near("worst week", float64(y.WorstWeek.Unmet), twin.Week)
	n, cells := 0, 0
	for _, s := range r.Stores {
		if !s.InYear {
			continue
		}
		near("taken", float64(s.Year.Taken), twin.Taken[n])
		near("given", float64(s.Year.Delivered), twin.Given[n])
		if got, want := float64(s.Reservoir.Capacity), twin.Capacity[n]; math.Abs(got-want) > 1e-6*want {
			t.Errorf("case %d: %s holds %.9g J, in the twin %.9g", i, s.Name, got, want)
		}
		if model.CellsOf(s) != nil {
			if got, want := float64(model.CellsOf(s).Current), twin.Current[cells]; math.Abs(got-want) > 1e-6*want {
				t.Errorf("case %d: %s gives %.9g A, in the twin %.9g", i, s.Name, got, want)
			}
			cells++
		}
		n++
	}
}

func nightCaseOf(t *testing.T, g model.Ground, v model.Variant, r model.VariantResult) nightCase {
	t.Helper()
	variant, err := document.EncodeVariant(v)
	if err != nil {
		t.Fatal(err)
	}
	project, err := document.EncodeProject(g.Project)
	if err != nil {
		t.Fatal(err)
	}
	var parts struct {
		Load json.RawMessage `json:"load"`
	}
	if err := json.Unmarshal(project, &parts); err != nil {
		t.Fatal(err)
	}
	c := nightCase{Load: parts.Load, Variant: variant, Bus: r.Bus.Power, Air: g.Sky.TAir, Night: g.Load.NightOf}
	for _, s := range r.Stores {
		if model.HoistOf(s) == nil {
			c.Masses = append(c.Masses, nil)
		} else {
			c.Masses = append(c.Masses, s.Reservoir)
		}
	}
	return c
}

// nightPlan is a plan on the sample's place with loads by the clock and batteries of every kind.
func nightPlan(r *rand.Rand, i int) (model.Project, model.Variant) {
	doc := catalog.Sample()
	p, v := doc.Project, doc.Variants[2]
	hoist := v.Stores[0]
	between := func(a, b float64) float64 { return a + (b-a)*r.Float64() }
	p.Load.Inverter = load.Inverter{Present: unit.Answer([]string{"", "yes", "no"}[r.IntN(3)]), Idle: unit.Of(unit.Power(between(0, 0.5)))}
	p.Load.Standing = []load.Standing{{Name: "sensor", Power: unit.Of(unit.Power(between(0, 0.3)))}}
	p.Load.Appliances = nil
	for k := range 1 + r.IntN(4) {
		a := load.Appliance{Name: "lamp", Power: unit.Of(unit.Power(between(0.5, 9))), Count: unit.Of(unit.Count(1 + r.IntN(3))),
			From: unit.Of(unit.Duration(r.IntN(96)) * unit.Hour / 4), To: unit.Of(unit.Duration(r.IntN(96)) * unit.Hour / 4),
			Supply: load.Supply([]string{"dc", "inverter"}[r.IntN(2)]), Priority: load.Priority([]string{"essential", "nice"}[r.IntN(2)]), Purpose: "light"}
		if k == 0 {
			a.From, a.To, a.Priority = unit.Of(18*unit.Hour), unit.Of(23*unit.Hour), "essential"
		}
		if r.IntN(3) == 0 {
			a.Share = unit.Of(unit.Ratio(between(0.1, 1)))
		}
		if r.IntN(4) == 0 {
			a.Months = []unit.Count{1, 2, 11, 12}
		}
		p.Load.Appliances = append(p.Load.Appliances, a)
	}
	v.Panels[0].Sheet = nil // it would have to make the drawn power
	v.Panels[0].Power = unit.Of(unit.Power(between(15, 120)))
	v.Standing = []load.Standing{{Name: "router", Power: unit.Of(unit.Power(between(0, 0.4)))}}
	v.Stores = nil
	for range 1 + r.IntN(2) {
		v.Stores = append(v.Stores, model.Store{Cells: nightBank(r, nightCells[i%len(nightCells)])})
	}
	if r.IntN(2) == 0 {
		v.Stores = append(v.Stores, hoist)
		r.Shuffle(len(v.Stores), func(a, b int) { v.Stores[a], v.Stores[b] = v.Stores[b], v.Stores[a] })
	}
	return p, v
}

// nightCells are the kinds of cells that the second calculation knows.
var nightCells = []string{"flooded_lead", "sealed_lead", "lfp", "nmc", "nickel_iron", "sodium_ion"}

func nightBank(r *rand.Rand, kind string) *cell.Bank {
	between := func(a, b float64) unit.Known[unit.Ratio] { return unit.Of(unit.Ratio(a + (b-a)*r.Float64())) }
	b := &cell.Bank{Name: kind, Role: "night", Kind: cell.Chemistry(kind), Origin: "new", Capacity: unit.Of(unit.Charge(between(1, 20).Val) * unit.Charge(unit.Hour)),
		Voltage: unit.Of(unit.Voltage(between(6, 13).Val)), Series: unit.Of(unit.Count(1 + r.IntN(2))), Standing: unit.Of(unit.Power(between(0, 0.1).Val))}
	if r.IntN(2) == 0 {
		b.Parallel = unit.Of(unit.Count(1 + r.IntN(3)))
	}
	for _, one := range []struct {
		at   *unit.Known[unit.Ratio]
		a, b float64
	}{{&b.Depth, 0.3, 1}, {&b.RoundTrip, 0.5, 0.98}, {&b.Peukert, 1, 1.4}, {&b.ChargeRate, 0.05, 1}, {&b.DrawRate, 0.05, 1}, {&b.Leak, 0, 0.4}} {
		if r.IntN(2) == 0 {
			*one.at = between(one.a, one.b)
		}
	}
	if r.IntN(3) == 0 {
		b.ChargeEff, b.DrawEff = between(0.7, 1), between(0.7, 1)
	}
	if r.IntN(3) == 0 {
		b.RatedHours = unit.Of(unit.Duration(between(1, 30).Val) * unit.Hour)
	}
	if r.IntN(3) == 0 {
		b.ChargeMin = unit.Of(unit.Celsius(between(-10, 12).Val))
	}
	return b
}
