package catalog_test

import (
	"encoding/json"
	"math"
	"os"
	"strings"
	"testing"

	"duskweight/internal/catalog"
	"duskweight/internal/model"
	"duskweight/internal/model/load"
	"duskweight/internal/model/unit"
)

// checkRow is a row of the table of presets among the check values.
type checkRow struct {
	Key     string     `json:"key"`
	Power   float64    `json:"power_w"`
	Between [2]float64 `json:"power_range_w"`
	Surge   float64    `json:"surge_w"`
	Start   [2]float64 `json:"surge_over_power"`
	Hours   string     `json:"hours"`
	Share   float64    `json:"share_on"`
	Purpose string     `json:"purpose"`
}

// hoursADay is how long each row is on in a day, by hand from its words in the table: hours times share.
var hoursADay = map[string]float64{
	"from dusk, 5 h": 5, "2 h a day": 2, "3 h a day": 3, "4 h a day": 4, "8 h a day": 8, "all day": 24, "9:00 to 16:00": 7,
	"1 h a day, 9:00 to 16:00": 1, "0.3 h a day, 9:00 to 16:00": 0.3, "1 h with share 0.1": 1, "1 h with share 0.17": 1, "2 h with share 0.1": 2,
}

// Every row of the table of presets is there with its power, its start, its share, its purpose and its hours, and none beside it.
func TestAppliancesAreTheTable(t *testing.T) {
	text, err := os.ReadFile("../../../shared/reference/home-checks.json")
	if err != nil {
		t.Skip("LEFT OUT: ../shared/reference/home-checks.json is not here; the presets were not compared with its table")
	}
	var checks []struct {
		ID       string `json:"id"`
		Expected struct {
			Rows []checkRow `json:"rows"`
		} `json:"expected"`
	}
	if err := json.Unmarshal(text, &checks); err != nil {
		t.Fatal(err)
	}
	var rows []checkRow
	for _, c := range checks {
		if c.ID == "presets" {
			rows = c.Expected.Rows
		}
	}
	if len(rows) == 0 || len(rows) != len(catalog.Appliances()) {
		t.Fatalf("%d rows in the table, %d here", len(rows), len(catalog.Appliances()))
	}
	for _, row := range rows {
		r, ok := catalog.ApplianceOf(row.Key)
		if !ok {
			t.Errorf("%s is not here", row.Key)
			continue
		}
		compareRow(t, row, r)
	}
}

func compareRow(t *testing.T, row checkRow, r catalog.Appliance) {
	p := model.Project{}
	r.Add(&p)
	a := p.Load.Appliances[0]
	near := func(what string, is, want float64) {
		if math.Abs(is-want) > 1e-9*want {
			t.Errorf("%s: %s is %v, in the table %v", row.Key, what, is, want)
		}
	}
	near("power", float64(a.Power.Val), row.Power)
	near("least power", float64(r.Power[1]), row.Between[0])
	near("most power", float64(r.Power[2]), row.Between[1])
	near("start", a.SurgePower(), row.Surge)
	near("least start", float64(r.Surge[1]), row.Start[0])
	near("most start", float64(r.Surge[2]), row.Start[1])
	long := float64(a.FromDusk.Val) / 3600
	if !a.FromDusk.Is {
		long = math.Mod(float64(a.To.Val-a.From.Val)/3600+24, 24)
		if long == 0 {
			long = 24
		}
	}
	on, ok := hoursADay[row.Hours]
	if !ok {
		t.Fatalf("%s: %q is not read yet", row.Key, row.Hours)
	}
	near("time on a day", long*float64(a.Share.Or(1)), on*row.Share)
	if string(a.Purpose) != row.Purpose {
		t.Errorf("%s is for %q, in the table for %q", row.Key, a.Purpose, row.Purpose)
	}
}

// A preset says where each of its numbers comes from, is no medical device, runs at a time that is known, and passes the check.
func TestApplianceIsTypical(t *testing.T) {
	p := model.Project{Name: "x", Seed: 1}
	for i, r := range catalog.Appliances() {
		r.Add(&p)
		a := p.Load.Appliances[i]
		if why, refused := load.Refused(a); refused {
			t.Errorf("%s is refused: %s", r.Name, why)
		}
		if !a.Timed() || a.StopsHarm != "" {
			t.Errorf("%s: time known %v, harm answered %q", r.Name, a.Timed(), a.StopsHarm)
		}
		at := "load.appliances[" + unit.Counts.Format(float64(i), unit.Metric) + "].power_w"
		if o := p.Origins[at]; o.Kind != model.OriginTypical || !strings.Contains(o.Source, "labels") {
			t.Errorf("%s: %q is %+v", r.Name, at, o)
		}
		if a.Share.Is && a.Share.Val <= 0 || a.SurgePower() < float64(a.Power.Val) {
			t.Errorf("%s: share %v, start %v", r.Name, a.Share, a.SurgePower())
		}
	}
	for _, problem := range model.CheckProject(p) {
		if strings.HasPrefix(problem.Path, "load") {
			t.Error(problem)
		}
	}
}
