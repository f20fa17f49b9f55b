package model

import (
	"duskweight/internal/model/panel"
	"duskweight/internal/model/reason"
	"duskweight/internal/model/source"
	"duskweight/internal/model/unit"
	"duskweight/internal/say"
)

// charger is the most current, A, that the charger of a backup pushes into a battery of so many volts; limited says that the
// plan names its power. A backup of which nobody says how strong it is pushes whatever there is.
func (b Backup) charger(volts unit.Voltage) (most unit.Current, limited bool) {
	power := b.Charge.Or(b.Rated.Or(boundless))
	return unit.Current(float64(power) * float64(b.Efficiency.Or(usualCharger)) / float64(volts)), b.Charge.Is
}

// backupCharge is a backup whose charger, alone or together with the panels, charges a battery faster than its cells or its
// fuse withstand. Both push at once when it starts by day: neither knows of the other.
func backupCharge(j judgement, c *CellsResult) []reason.Reason {
	b := j.variant.Backup
	if b.Kind == "" {
		return nil
	}
	alone, limited := b.charger(c.Resolved.Voltage)
	if alone <= 0 {
		return nil
	}
	cells := c.chargeMost()
	most, into := cells, say.That("into cells for %s", say.Current(cells).Down())
	if f, ok := c.Design.Fuse.Value(); ok && f < cells {
		most, into = f, say.That("through a fuse of %s", say.Current(f))
	}
	sun := unit.Current(0)
	if w := j.result.Wiring; j.variant.Controller.Kind != panel.ControllerDirect && w.Charge <= most {
		sun = w.Charge // more than that is told of the panels alone
	}
	if alone+sun <= most*(1+1e-9) {
		return nil
	}
	text := say.That("The charger of the backup pushes up to %s %s.", say.Current(alone), into)
	left := most
	if alone <= most*(1+1e-9) {
		text = say.That("Panels and the charger of the backup together push up to %s %s.", say.Current(alone+sun), into)
		left = most - sun
	}
	mend := say.That("Set the charger to at most %s, and write that down as its power into the stores.", say.Power(unit.Power(float64(left)*float64(c.Resolved.Voltage)/float64(b.Efficiency.Or(usualCharger)))).Down())
	if left <= 0 {
		mend = say.That("Use a charger that is off while the panels charge, or a larger battery.")
	}
	if limited {
		return []reason.Reason{must("charge_current", chargeField, source.CommonPractice.Whole(), text, mend)}
	}
	return []reason.Reason{ask("charge_current", chargeField, source.CommonPractice.Whole(), text, say.Join(say.That("Nothing in the plan limits this current."), mend))}
}
