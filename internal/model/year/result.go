package year

import "duskweight/internal/model/unit"

// Result is what a year comes to. Energies are those of the whole year, at the line, unless said otherwise.
// Two balances close: Bus + Backup.Energy = Direct + Backup.Direct + Taken + Spilled and
// Load = Direct + Backup.Direct + Delivered + Unmet.
type Result struct {
	Settled bool // the year ends as it began; false after Passes runs that did not get there
	Passes  int  // how often the year was run; the last one counts

	Bus       unit.Energy // what the panels brought, to the line and to a store of their own
	Own       unit.Energy // of Bus: straight to a store, beside the line
	Direct    unit.Energy // used in the hour in which it came
	Taken     unit.Energy // put into stores
	Spilled   unit.Energy // sun not used
	Load      unit.Energy // what was wanted: appliances and all that uses power all the time
	Delivered unit.Energy // out of stores
	Unmet     unit.Energy // wanted and not there

	// The four parts of the load, in the order in which they are served.
	StoreStanding Part // what the stores themselves use all the time
	Standing      Part // what project and variant use all the time
	Essential     Part
	Nice          Part

	Stores []StoreYear

	// Of a managed year.
	Backup  BackupYear
	Shed    []LevelYear // by level
	Waiting []WaitYear  // by waiting device

	ServedShare    unit.Known[unit.Ratio] // share of appliance energy that was there; not known when nothing is wanted
	EssentialShare unit.Known[unit.Ratio] // the same, essential appliances only

	Nights          int     // nights that have night hours
	NightsServed    int     // nights in which nothing was missing
	NightsEssential int     // nights in which nothing essential was missing
	NightLog        []Night // by number of the night

	LongestOutage Span // most hours on end with essential load missing; over the turn of the year too
	WorstWeek     Span // the 168 hours on end that miss most

	Typical [12][24]Clock // typical day of each month, by clock hour

	Hourly *Hourly // nil unless asked for
}

// Part is one part of the load: Wanted = Direct + Backup + Delivered + Unmet.
type Part struct {
	Wanted    unit.Energy
	Direct    unit.Energy // straight from the sun
	Backup    unit.Energy // straight from the backup
	Delivered unit.Energy // out of stores
	Unmet     unit.Energy
}

// StoreYear is one store over the year. Taken − Delivered − Loss = Change.
type StoreYear struct {
	Name      string
	Capacity  unit.Energy // own joules
	Start     unit.Energy // own joules, at the first hour
	End       unit.Energy // own joules, after the last
	Taken     unit.Energy // at the line
	Delivered unit.Energy // at the line
	Loss      unit.Energy // FillLoss + DrawLoss + Leaked
	FillLoss  unit.Energy // lost on the way in
	DrawLoss  unit.Energy // lost on the way out, what the least draw exceeds the wish included
	Leaked    unit.Energy // lost by standing
	Change    unit.Energy // End − Start
	Standing  unit.Energy // what it wants at the line all the time; part of the load, not of Loss

	ToStanding   unit.Energy // of Delivered: to what uses power all the time
	ToAppliances unit.Energy // of Delivered: to appliances

	Filled    unit.Energy // own joules put in
	Drawn     unit.Energy // own joules taken out
	HoursFull float64     // hours at full, to the minute in which it became so
	Cycles    float64     // Drawn over Capacity; 0 without capacity
	FillsADay float64     // Filled over Capacity, mean of the days
	MostFills float64     // the same, most in one day
}

// Night is one night.
type Night struct {
	Counted         bool        // it has night hours
	Served          bool        // nothing was missing
	Essential       bool        // nothing essential was missing
	Wanted          unit.Energy // by appliances, in its night hours
	Unmet           unit.Energy
	WantedEssential unit.Energy
	UnmetEssential  unit.Energy
}

// Span is a run of hours. It may go over the turn of the year.
type Span struct {
	From  int // first hour, 0 to 8759
	Hours int // 0: there is none
	Unmet unit.Energy
}

// Clock is a clock hour's means over the days of a month.
type Clock struct {
	Bus, Load, Delivered, Unmet, Spilled unit.Power
	Own                                  unit.Power    // straight to a store, beside the line; not in Bus
	Backup                               unit.Power    // straight from the backup to what is used
	State                                []unit.Energy // by store, own joules at the end of the hour
}

// Surplus is the sun that the hour leaves over after all that is wanted, before any store: what stores take and what nobody
// uses. What is wanted comes from the sun unless a store gives it or nobody does, so it is the mean of the days' own
// surpluses; the surplus of the mean day would be less wherever some days have one and others lack.
func (c Clock) Surplus() unit.Power {
	return max(0, c.Bus+c.Own-(c.Load-c.Delivered-c.Unmet-c.Backup))
}

// Hourly is what happened hour by hour, in joules: by hour, or by store and hour.
type Hourly struct {
	Unmet     []float64
	Spilled   []float64
	Taken     [][]float64 // at the line
	Delivered [][]float64 // at the line
	State     [][]float64 // own joules at the end of the hour

	// Of a managed year; nil of another.
	Direct []float64   // from the backup to what is used
	Charge []float64   // from the backup into the stores, at the line
	Shed   []float64   // kept off by levels; in Unmet too
	Run    [][]float64 // by waiting device: run
	Asks   [][]float64 // by waiting device: that it would have used and waited for instead
}

// Brief is what a sweep over many years or designs needs of a year.
type Brief struct {
	Settled         bool
	Passes          int
	Taken           unit.Energy
	Delivered       unit.Energy
	Spilled         unit.Energy
	Unmet           unit.Energy
	UnmetEssential  unit.Energy
	UnmetNice       unit.Energy
	ServedShare     float64 // of appliance energy; 1 when nothing is wanted
	NightsServed    int
	NightsEssential int
	Tally
	Gaps          Gaps        // of nights that are not full
	LongestOutage int         // hours
	End           unit.Energy // own joules of the first store; 0 without one
	Backup        BackupYear
}
