package load

import (
	"testing"

	"duskweight/internal/model/unit"
)

func device(w, surge float64, from, to unit.Duration, supply string) Appliance {
	a := Appliance{Power: unit.Of(unit.Power(w)), Count: unit.Of[unit.Count](1), From: unit.Of(from * 3600), To: unit.Of(to * 3600), Supply: Supply(supply), Priority: "essential"}
	if surge > 0 {
		a.Surge = unit.Of(unit.Power(surge))
	}
	return a
}

func greatest(l Load) Together {
	down, noon := equinox()
	var most Together
	for _, p := range Hours(l, down, noon).Peaks {
		if p.Run() > most.Run() {
			most = p
		}
	}
	return most
}

// A fridge of 80 W that starts with 480, a screen of 60 and a tool of 100 that starts with 150 run together: 240 W; the
// fridge starts last: 240 + 400 = 640 W. On an inverter with 600 W for a start that is 640/600 = 1.0667.
func TestFridgeStarts(t *testing.T) {
	l := Load{Appliances: []Appliance{device(80, 480, 0, 0, "inverter"), device(60, 60, 18, 22, "inverter"), device(100, 150, 20, 21, "inverter")}}
	p := greatest(l)
	near(t, "running", p.Run(), 240, 1e-9)
	near(t, "starting", p.StartPower(), 640, 1e-9)
	near(t, "of the inverter", p.ACStart()/600, 1.06666667, 1e-8)
	if p.Hour != 20 || p.Starts != 0 || len(p.On) != 3 {
		t.Errorf("%+v", p)
	}
}

// Two that follow each other within one hour are never on together; a minute of overlap is enough. The share of time on does
// not matter. Of two that never run together only the larger counts.
func TestTogetherByTheMinute(t *testing.T) {
	first, second := device(500, 0, 18, 18.5, "dc"), device(700, 0, 18.5, 19, "dc")
	first.Share = unit.Of[unit.Ratio](0.01)
	near(t, "one after the other", greatest(Load{Appliances: []Appliance{first, second}}).Run(), 700, 0)
	first.To = unit.Of[unit.Duration](18.5*3600 + 60)
	near(t, "a minute together", greatest(Load{Appliances: []Appliance{first, second}}).Run(), 1200, 0)
	first.AtOnce, second.AtOnce = "no", "no"
	near(t, "never together", greatest(Load{Appliances: []Appliance{first, second}}).Run(), 700, 0)
	first.AtOnce, second.AtOnce = "", ""
	first.Months, second.Months = []unit.Count{1}, []unit.Count{7}
	near(t, "in other months", greatest(Load{Appliances: []Appliance{first, second}}).Run(), 700, 0)
}

// A start that nobody gave is five times the power for a pump and twice for a fan; power and apparent power differ by the
// power factor.
func TestStartsThatNobodyGave(t *testing.T) {
	pump := device(100, 0, 0, 0, "inverter")
	pump.Purpose, pump.PowerFact = "pump", unit.Of[unit.Ratio](0.5)
	fan := device(40, 0, 0, 0, "dc")
	fan.Purpose = "fan"
	p := greatest(Load{Appliances: []Appliance{pump, fan}})
	near(t, "starting", p.StartPower(), 140+400, 0)
	near(t, "through the inverter", p.ACStart(), 500, 0)
	near(t, "apparent", p.Apparent, 200, 0)
	pump.Purpose = "light"
	near(t, "two fans' worth", greatest(Load{Appliances: []Appliance{pump, fan}}).StartPower(), 140+40, 0)
}
