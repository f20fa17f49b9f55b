package model

import (
	"slices"

	"duskweight/internal/model/lift"
	"duskweight/internal/model/load"
	"duskweight/internal/model/reservoir"
	"duskweight/internal/model/unit"
	"duskweight/internal/model/year"
	"duskweight/internal/say"
)

// Finish says what the year and the night's lamps make of a hoist.
func (r *HoistResult) Finish(y YearView) {
	if r.Direct != nil && r.Direct.Known {
		r.Direct.words()
	}
	if y.Result.YearKnown && len(y.Result.Bus.Arrays) > 0 {
		r.underSun(unit.Power(slices.Max(y.Result.Bus.Power)))
	}
	r.overLamps(y.Ground.Load.MostAtNight())
}

// underSun says whether the panels, at most sun on the line in a usual year, ever give what lifting takes: a hoist is shown
// with the power of its supply, and no store feeds another.
func (r *HoistResult) underSun(sun unit.Power) {
	tank := r.tank
	if tank == nil || tank.Own != nil || sun >= tank.FillMax {
		return
	}
	f := lift.Flag{Path: "raise.feed", Say: say.That("At full speed lifting needs %s. Your panels bring at most %s to the line in a usual year, so the hoist lifts more slowly than stated here.", say.Power(tank.FillMax), say.Power(sun))}
	if sun < tank.FillThreshold {
		f.Bad, f.ID = true, "never_lifts"
		f.Say = say.That("It never lifts under this sun: lifting needs %s on the line, and your panels bring at most %s in a usual year. More gears, a lower voltage or more panels are needed.", say.Power(tank.FillThreshold), say.Power(sun))
	}
	r.Drive.Flags = append(r.Drive.Flags, f)
}

// overfed is how many times the power of all lamps a hoist may give before the page warns: an own judgement.
const overfed = 1.5

// overLamps says whether it gives more power on its way down than all lamps of a night take together, most, W: what hangs on
// the motor has to take all of it.
func (r *HoistResult) overLamps(most float64) {
	lo := r.Drive.Lowering
	if most <= 0 || !lo.Known || !lo.Steady || lo.Short || lo.RunsBack == lift.DownNo || float64(lo.Power) <= overfed*most {
		return
	}
	r.Drive.Flags = append(r.Drive.Flags, lift.Flag{Path: "lower.loads", Say: say.That("On its way down it gives %s for %s, and all lamps of a night use %s. What hangs on the motor must use all of it: lamps for less burn out.",
		say.Power(lo.Power), say.Time(lo.Time).To(2), say.Power(unit.Power(most)))})
}

// Facts adds what one lift of the first hoist comes to.
func (r *HoistResult) Facts(f *Facts, y YearView) {
	f.Lifts = true
	if f.OneLiftOut.Is {
		return
	}
	r.liftFacts(f)
	y.Result.noMass(y.Ground, f, r.tank)
}

// liftFacts adds what one lift gives and takes.
func (h *HoistResult) liftFacts(f *Facts) {
	d := h.Drive
	if d.Lowering.Known {
		f.OneLiftOut = unit.Of(max(0, d.Lowering.EnergyOut))
		if d.Lowering.RunsBack == lift.DownNo || !d.Lowering.Steady {
			f.OneLiftOut = unit.Of[unit.Energy](0)
		}
	}
	if d.Raising.Known {
		f.OneLiftIn = unit.Of(d.Raising.EnergyIn)
		if d.Raising.Stalls || !d.Raising.Starts {
			f.OneLiftIn, f.OneLiftOut = unit.Known[unit.Energy]{}, unit.Of[unit.Energy](0)
		}
	}
	f.fillLift(d.Mass, h.Design.Travel)
	if need, ok := f.nightNeed(); ok {
		f.NightBattery = unit.Of(batteryFor(need))
	}
}

// drawnDaily is what a store that comes down at no less than least gives away in a mean day, J, if it covers whatever the sun
// does not: in each such hour least, or more where more is asked.
func (r *VariantResult) drawnDaily(g Ground, least float64) (sum float64) {
	if !r.YearKnown || least <= 0 {
		return 0
	}
	for h, sun := range r.Bus.Power {
		if lacks := g.Load.Essential[h] + g.Load.Nice[h] + float64(r.StandingPower) - sun; lacks > 0 {
			sum += max(lacks, least) * 3600
		}
	}
	return sum / load.DaysInYear
}

// noMass says why no mass or height carries the night with this drive: it gives less power than the night asks for, however
// large it is; or the sun left over in a mean day does not fill it.
func (r *VariantResult) noMass(g Ground, f *Facts, tank *reservoir.Reservoir) {
	need, ok := f.nightNeed()
	if !ok || tank == nil || !f.OneLiftOut.Is || f.OneLiftOut.Val <= 0 || !f.OneLiftIn.Is {
		return
	}
	asked := g.Load.MostAtNight() + float64(r.StandingPower)
	fill := max(float64(need), r.drawnDaily(g, float64(tank.DrawMin))) * float64(f.OneLiftIn.Val) / float64(f.OneLiftOut.Val)
	switch {
	case float64(tank.DrawMax) < asked*(1-year.Full):
		f.NoMass = say.That("with any mass this drive gives only %s; the night needs up to %s", say.Power(tank.DrawMax).To(2), say.Power(unit.Power(asked)).To(2))
	case f.SurplusDay.Is && fill > float64(f.SurplusDay.Val):
		f.NoMass = say.That("lifting that needs %s a day, and the sun leaves over %s", say.Energy(unit.Energy(fill)).To(2), say.Energy(f.SurplusDay.Val).To(2))
	}
}
