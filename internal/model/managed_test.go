package model_test

import (
	"math"
	"strings"
	"testing"

	"duskweight/internal/catalog"
	"duskweight/internal/model"
	"duskweight/internal/model/load"
	"duskweight/internal/model/pipe"
	"duskweight/internal/model/unit"
	"duskweight/internal/model/year"
)

// The head of a pump by day is that of the pump of a tank: its lift and the friction of its pipe.
func TestPumpIsAPump(t *testing.T) {
	for _, q := range []float64{1e-5, 3e-4, 2e-3} {
		p := load.Pump{Lift: unit.Of[unit.Length](17), PipeLength: unit.Of[unit.Length](80), PipeInner: unit.Of[unit.Length](0.04), Flow: unit.Of(unit.Flow(q))}
		want := 17 + float64(pipe.Friction(unit.Flow(q), 80, 0.04))
		if got := float64(p.Head()); math.Abs(got-want) > 1e-12*want {
			t.Errorf("%g m³/s: head %.15g, want %.15g", q, got, want)
		}
	}
}

// What contradicts itself is refused beside its field.
func TestManagedRefusals(t *testing.T) {
	waits := func(change func(*load.Appliance)) func(*model.Document) {
		return func(d *model.Document) {
			a := &d.Project.Load.Appliances[0]
			*a = load.Appliance{Name: "Pump", Count: unit.Of[unit.Count](1), Power: unit.Of[unit.Power](100), DayEnergy: unit.Of[unit.Energy](2 * 100 * 3600), Waits: unit.Yes, From: unit.Of(9 * unit.Hour), To: unit.Of(11 * unit.Hour), Supply: load.SupplyDc, Priority: load.PriorityNice}
			change(a)
		}
	}
	back := func(change func(*model.Backup)) func(*model.Document) {
		return func(d *model.Document) {
			d.Variants[0].Backup = model.Backup{Kind: model.BackupGrid, Rated: unit.Of[unit.Power](100), Start: unit.Of[unit.Ratio](0.2), Stop: unit.Of[unit.Ratio](0.6)}
			change(&d.Variants[0].Backup)
		}
	}
	levels := func(pairs ...[2]float64) func(*model.Document) {
		return func(d *model.Document) {
			for i, p := range pairs {
				a := &d.Project.Load.Appliances[i]
				a.ShedBelow = unit.Of(unit.Ratio(p[0]))
				if p[1] >= 0 {
					a.BackAbove = unit.Of(unit.Ratio(p[1]))
				}
			}
		}
	}
	for _, c := range []struct {
		at     string // empty: fine
		change func(*model.Document)
	}{
		{"", waits(func(*load.Appliance) {})},
		{"project.load.appliances[0].energy_j_day", waits(func(a *load.Appliance) { a.DayEnergy.Val++ })},
		{"project.load.appliances[0].from_s", waits(func(a *load.Appliance) { a.From.Val += 60 })},
		{"project.load.appliances[0].water.m3_day", waits(func(a *load.Appliance) {
			a.DayEnergy = unit.Known[unit.Energy]{}
			a.Water = load.Pump{Daily: unit.Of[unit.Volume](100), Lift: unit.Of[unit.Length](10), PipeLength: unit.Of[unit.Length](10), PipeInner: unit.Of[unit.Length](0.1), Flow: unit.Of[unit.Flow](0.001), Efficiency: unit.Of[unit.Ratio](0.5)}
		})},
		{"", levels([2]float64{0.4, -1}, [2]float64{0.4, 0.5}, [2]float64{0.2, 0.9})},
		{"project.load.appliances[1].back_above", levels([2]float64{0.4, -1}, [2]float64{0.4, 0.6})},
		{"project.load.appliances[0].back_above", levels([2]float64{0.4, 0.4})},
		{"project.load.appliances[0].shed_below", levels([2]float64{1, -1})},
		{"", back(func(*model.Backup) {})},
		{"variants[0].backup.stop_above", back(func(b *model.Backup) { b.Stop.Val = 0.2 })},
		{"variants[0].backup.start_below", back(func(b *model.Backup) { b.Start.Val = 0 })},
		{"variants[0].backup.to_s", back(func(b *model.Backup) { b.To = unit.Of[unit.Duration](100) })},
		{"variants[0].backup.charge_w", back(func(b *model.Backup) { b.Charge = unit.Of[unit.Power](101) })},
		{"", back(func(b *model.Backup) { b.Kind, b.Stop.Val = "", 0.1 })},
	} {
		doc := catalog.Sample()
		c.change(&doc)
		var at []string
		for _, p := range model.Check(doc) {
			at = append(at, p.Path)
		}
		if got := strings.Join(at, " "); got != c.at {
			t.Errorf("refused at %q, want %q", got, c.at)
		}
	}
}

// At most four charges switch something off: the fifth is refused.
func TestFourLevels(t *testing.T) {
	doc := catalog.Sample()
	l := &doc.Project.Load
	for i := range 5 {
		a := l.Appliances[0]
		a.ShedBelow = unit.Of(unit.Ratio(float64(i+1) / 10))
		l.Appliances = append(l.Appliances, a)
	}
	ps := model.Check(doc)
	if len(ps) != 1 || !strings.HasSuffix(ps[0].Path, ".shed_below") {
		t.Errorf("%v", ps)
	}
}

// Fuel by hand. A car idles at .8 litres an hour whatever it gives; a petrol set of 1.8 kW burns .441 litres an hour at a
// quarter; a diesel set of 10 kW burns 0.8415 + 2.46 litres at full power. Money is litres times their price, or the kWh of the
// grid times theirs.
func TestBackupCost(t *testing.T) {
	for _, c := range []struct {
		b    model.Backup
		y    year.BackupYear
		want float64
	}{
		{model.Backup{Kind: model.BackupPetrol, PricePerL: unit.Of[unit.Money](2)}, year.BackupYear{Hours: 3, Fuel: 0.005}, 10},
		{model.Backup{Kind: model.BackupGrid, PricePerKWh: unit.Of[unit.Money](0.3), PricePerL: unit.Of[unit.Money](9)}, year.BackupYear{Hours: 3, Out: 10 * 3.6e6, Fuel: 0}, 3},
	} {
		if got := c.b.Cost(c.y); !got.Is || math.Abs(float64(got.Val)-c.want) > 1e-9 {
			t.Errorf("%s: %v, want %g", c.b.Kind, got, c.want)
		}
	}
	if (model.Backup{Kind: model.BackupPetrol}).Cost(year.BackupYear{Hours: 1}).Is {
		t.Error("fuel without a price has a cost")
	}
	doc := catalog.Sample()
	for kind, want := range map[model.BackupKind][2]float64{model.BackupPetrol: {0.12 * 1.8, 0.5}, model.BackupDiesel: {0.08415 * 1.8, 0.246}, model.BackupCar: {0.8, 0}, model.BackupGrid: {0, 0}} {
		doc.Variants[0].Backup = model.Backup{Kind: kind, Rated: unit.Of[unit.Power](1800), Start: unit.Of[unit.Ratio](0.2), Stop: unit.Of[unit.Ratio](0.6)}
		b := model.Prepare(doc.Project).Managed(doc.Variants[0]).Backup
		if math.Abs(b.Idle-want[0]) > 1e-12 || b.PerKWh != want[1] || b.Charge != 1800 || b.Gain != 0.85 || b.Most != 24 {
			t.Errorf("%s: %+v, want %v litres", kind, b, want)
		}
	}
}

// A generator that may run at any hour and carries everything leaves no night dark, its share is not the sun's, and its fuel is in
// the bill: what a kWh costs is not known until the fuel has a price, and then the fuel of a year stands in each year's upkeep.
func TestBackupCarries(t *testing.T) {
	doc := catalog.Sample()
	doc.Variants = doc.Variants[1:2]
	v := &doc.Variants[0]
	plain := model.Evaluate(doc, "").Variants[0]
	v.Backup = model.Backup{Kind: model.BackupPetrol, Rated: unit.Of[unit.Power](1000), Start: unit.Of[unit.Ratio](0.5), Stop: unit.Of[unit.Ratio](0.9)}
	r := model.Evaluate(doc, "").Variants[0]
	if r.Last.NightsFull != r.Last.Nights || r.Year.Backup.Hours == 0 || r.Year.Backup.Fuel <= 0 {
		t.Fatalf("%d of %d nights full, %d hours", r.Last.NightsFull, r.Last.Nights, r.Year.Backup.Hours)
	}
	if s := r.SunShare(); !s.Is || s.Val >= 1 || plain.SunShare().Val != 1 {
		t.Errorf("the sun's share is %v, without backup %v", s, plain.SunShare())
	}
	if r.Cost.Levelised.Is {
		t.Error("a kWh has a cost while the fuel has no price")
	}
	v.Backup.PricePerL = unit.Of[unit.Money](0)
	free := model.Evaluate(doc, "").Variants[0]
	v.Backup.PricePerL = unit.Of[unit.Money](2)
	paid := model.Evaluate(doc, "").Variants[0]
	if !free.Cost.NPV.Is || !paid.Cost.NPV.Is {
		t.Fatal("what the fuel adds is not known although it has a price")
	}
	n, i := float64(paid.Cost.Horizon), paid.Cost.Rate
	want := float64(r.Year.Backup.Fuel) * 1000 * 2 * (1 - math.Pow(1+i, -n)) / i
	if got := float64(paid.Cost.NPV.Val - free.Cost.NPV.Val); math.Abs(got-want) > 1e-9*want {
		t.Errorf("fuel costs %g over the years, want %g", got, want)
	}
}
