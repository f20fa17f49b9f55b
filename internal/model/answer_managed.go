package model

import "duskweight/internal/model/unit"

// BackupAnswer is what the backup does in a year with new batteries. energy_j is at the line, used at once (direct_j) and put
// into stores; out_j is what it gives, the loss of charging included.
type BackupAnswer struct {
	Hours  int                    `json:"hours"`
	Starts int                    `json:"starts"`
	Energy unit.Energy            `json:"energy_j"`
	Direct unit.Energy            `json:"direct_j"`
	Out    unit.Energy            `json:"out_j"`
	Fuel   float64                `json:"fuel_l"`
	Cost   unit.Known[unit.Money] `json:"cost"`
}

// ShedAnswer is what a level keeps off in a year; hours are those in which something was wanted meanwhile.
type ShedAnswer struct {
	Below  float64     `json:"below"`
	Hours  int         `json:"hours"`
	Energy unit.Energy `json:"energy_j"`
}

// WaitingAnswer is what a device that waits asks, gets and misses in a year.
type WaitingAnswer struct {
	Name   string      `json:"name"`
	Asked  unit.Energy `json:"asked_j"`
	Run    unit.Energy `json:"run_j"`
	Missed unit.Energy `json:"missed_j"`
}

// managedAnswer prints who went first.
func (r *VariantResult) managedAnswer(a *VariantAnswer) {
	a.SunShare = r.SunShare()
	if b := r.Year.Backup; r.backup.Runs() {
		a.Backup = &BackupAnswer{b.Hours, b.Starts, b.Energy, b.Direct, b.Out, float64(b.Fuel) * 1000, r.backup.Cost(b)}
	}
	for _, l := range r.Year.Shed {
		a.Shed = append(a.Shed, ShedAnswer{l.Below, l.Hours, l.Energy})
	}
	for i, w := range r.Year.Waiting {
		a.Waiting = append(a.Waiting, WaitingAnswer{r.waits[i], w.Asked, w.Run, w.Missed})
	}
}
