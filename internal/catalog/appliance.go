package catalog

import (
	"fmt"
	"strings"

	"duskweight/internal/model"
	"duskweight/internal/model/load"
	"duskweight/internal/model/source"
	"duskweight/internal/model/unit"
)

// Appliance is a device that many people own, as it usually is: its power and what it needs at its start with what is usual
// of them, and when it runs.
type Appliance struct {
	From
	Key, Name string
	Power     [3]unit.Power // typical, least and most of what is usual, W
	Surge     [3]unit.Ratio // power at the start over power, the same
	Hours     Hours
	Share     unit.Ratio // of those hours in which it is really on
	Supply    load.Supply
	Priority  load.Priority
	Purpose   load.Purpose
}

// Hours is when an appliance runs: from dusk for a while, or from one time of the clock to another; all day where those are
// the same. Our own judgement, as everybody lives by other hours.
type Hours struct{ Dusk, From, To unit.Duration }

// sizing is where power and surge come from. The hours are our own judgement.
func sizing(note string) From {
	return From{Source: "appliance labels and wattage tables for sizing generators, which agree within a factor of 2, read in secondary copies", Note: note, Label: true}
}

// motor is the same of what a motor drives.
func motor() From {
	f := sizing("")
	f.Source += "; a motor starts with 5 to 8 times its rated current (IEC 60034-12, from memory)"
	return f
}

// evening and between make the hours of a row, watts and times what is usual of its power and its start.
func evening(hours float64) Hours { return Hours{Dusk: unit.Duration(hours) * unit.Hour} }
func between(from, to float64) Hours {
	return Hours{From: unit.Duration(from) * unit.Hour, To: unit.Duration(to) * unit.Hour}
}

func watts(is, low, high unit.Power) [3]unit.Power { return [3]unit.Power{is, low, high} }
func times(is, low, high unit.Ratio) [3]unit.Ratio { return [3]unit.Ratio{is, low, high} }

// Appliances are the rows, those that most people own first.
func Appliances() []Appliance {
	const dc, ac, essential, nice = load.SupplyDc, load.SupplyInverter, load.PriorityEssential, load.PriorityNice
	steady, day := times(1, 1, 1), unit.Ratio(1)
	return []Appliance{
		{sizing(""), "lamp", "Lamp", watts(7, 3, 12), steady, evening(5), day, dc, essential, load.ForLight},
		{sizing(""), "phone", "Phone", watts(10, 5, 18), steady, evening(2), day, dc, essential, load.ForPhone},
		{sizing(""), "laptop", "Laptop", watts(45, 20, 65), steady, evening(4), day, ac, nice, load.ForComputer},
		{sizing(""), "router", "Router", watts(10, 6, 15), steady, Hours{}, day, dc, essential, load.ForRouter},
		{sizing(""), "radio", "Radio", watts(6, 2, 15), steady, evening(4), day, dc, nice, load.ForRadio},
		{motor(), "fan", "Fan", watts(40, 20, 75), times(2, 1.5, 3), evening(8), day, dc, nice, load.ForFan},
		{motor(), "fridge", "Fridge", watts(80, 50, 150), times(6, 3, 10), Hours{}, 0.35, ac, essential, load.ForCooling},
		{motor(), "freezer", "Freezer", watts(100, 70, 200), times(6, 3, 10), Hours{}, 0.4, ac, essential, load.ForCooling},
		{motor(), "pump", "Water pump", watts(500, 200, 1100), times(4, 3, 6), between(9, 16), day, ac, essential, load.ForPump},
		{sizing(""), "kettle", "Kettle", watts(2000, 1500, 3000), steady, between(7, 8), 0.1, ac, nice, load.ForOther},
		{sizing(""), "television", "Television", watts(60, 30, 150), times(1.5, 1, 3), evening(3), day, ac, nice, load.ForOther},
		{sizing(""), "microwave", "Microwave oven", watts(1200, 1000, 1500), times(1.5, 1, 2), between(18, 19), 0.17, ac, nice, load.ForOther},
		{sizing("One hour of it a day, at any time in these hours."), "washing machine, cold", "Washing machine, cold", watts(300, 200, 500), times(3, 2, 4), between(9, 16), 1. / 7, ac, nice, load.ForOther},
		{sizing("It heats for about 0.3 hours a day, at any time in these hours."), "washing machine, heating", "Washing machine, heating", watts(2000, 1800, 2300), times(1.1, 1, 1.5), between(9, 16), 0.3 / 7, ac, nice, load.ForOther},
		{sizing(""), "drill", "Drill", watts(700, 500, 900), times(2, 1.5, 3), between(14, 16), 0.1, ac, nice, load.ForOther},
		{sizing(""), "circular saw", "Circular saw", watts(1300, 1000, 1800), times(3, 2, 4), between(14, 16), 0.1, ac, nice, load.ForOther},
	}
}

// ApplianceOf is the row of that key; false where there is none.
func ApplianceOf(key string) (Appliance, bool) {
	for _, a := range Appliances() {
		if a.Key == key {
			return a, true
		}
	}
	return Appliance{}, false
}

// Add puts one of the row behind the appliances of a project, each of its values marked typical with what is usual of it. What
// harms somebody when it stops stays not answered: the row cannot know it.
func (r Appliance) Add(p *model.Project) {
	a := load.Appliance{Name: r.Name, Power: unit.Of(r.Power[0]), Count: unit.Of(unit.Count(1)), Supply: r.Supply, Priority: r.Priority, Purpose: r.Purpose, AfterDusk: unit.No}
	habit := strings.TrimSpace(r.Name + ": " + source.Judgement.Title + ". " + r.Note)
	marked := map[string]string{"power_w": fmt.Sprintf("%s, usual %v to %v W: %s", r.Name, float64(r.Power[1]), float64(r.Power[2]), r.Source)}
	switch {
	case r.Hours.Dusk > 0:
		a.FromDusk, a.AfterDusk = unit.Of(r.Hours.Dusk), unit.Yes
		marked["from_dusk_s"] = habit
	default:
		a.From, a.To = unit.Of(r.Hours.From), unit.Of(r.Hours.To)
		marked["from_s"], marked["to_s"] = habit, habit
	}
	if r.Share != 1 {
		a.Share = unit.Of(r.Share)
		marked["share_on"] = habit
	}
	if r.Purpose == load.ForCooling {
		a.Heat = unit.Yes
		marked["follows_heat"] = r.Name + ": about twice as long at 32 as at 16 °C (IEC 62552, from memory)"
	}
	if r.Surge[0] != 1 {
		a.Surge = unit.Of(unit.Power(float64(r.Power[0]) * float64(r.Surge[0])))
		marked["surge_w"] = fmt.Sprintf("%s, usual %v to %v times its power: %s", r.Name, float64(r.Surge[1]), float64(r.Surge[2]), r.Source)
	}
	if p.Origins == nil {
		p.Origins = model.Origins{}
	}
	for field, words := range marked {
		p.Origins[fmt.Sprintf("load.appliances[%d].%s", len(p.Load.Appliances), field)] = model.Origin{Kind: model.OriginTypical, Source: words}
	}
	p.Load.Appliances = append(p.Load.Appliances, a)
}
