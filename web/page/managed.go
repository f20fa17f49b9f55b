package page

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"duskweight/internal/model"
	"duskweight/internal/model/load"
	"duskweight/internal/model/unit"
	"duskweight/web/form"
)

// ExhaustKills is the caution of every backup that burns fuel.
const ExhaustKills = "Outdoors only: exhaust kills. Run it far from windows and doors, never in a house, a garage or a cellar."

// houseWiring is the caution of every backup.
const houseWiring = "Never feed house wiring through a socket: it kills people who work on the line. A licensed person joins a backup to house wiring, after the local code."

// BackupCautions are the cautions of a variant's backup, the deadliest first; none without one.
func BackupCautions(v model.Variant) (out []string) {
	if v.Backup.Kind == "" {
		return nil
	}
	if v.Backup.Burns() {
		out = append(out, ExhaustKills)
	}
	return append(out, houseWiring)
}

// ManagedSays are the sentences of what helped out, what went off and what waited in a year with new batteries; none where there
// is nothing of it.
func ManagedSays(g model.Ground, v model.Variant, r model.VariantResult, currency string, sys unit.System) (out []string) {
	if !r.YearKnown {
		return nil
	}
	if v.Backup.Runs() {
		out = append(out, backupSays(v.Backup, r, currency, sys))
	}
	for _, l := range r.Year.Shed {
		say := fmt.Sprintf("A low charge never switches off %s.", OffAt(g, l.Below))
		if l.Hours > 0 {
			say = fmt.Sprintf("A low charge switches off %s for %s a year. That is %s less.", OffAt(g, l.Below), Counted(l.Hours, "hour"), unit.BigEnergies.Format(float64(l.Energy), sys))
		}
		out = append(out, say)
	}
	for i, w := range r.Year.Waiting {
		name, asked := OrUnnamed(g.Load.Waiting[i].Name), unit.BigEnergies.Format(float64(w.Asked), sys)
		if w.Days == 0 {
			out = append(out, fmt.Sprintf("%s waits for the sun and gets all of its %s a year.", name, asked))
		} else {
			out = append(out, fmt.Sprintf("%s waits for the sun. It gets %s of the %s it needs a year, and on %s it gets too little.", name, unit.BigEnergies.Format(float64(w.Run), sys), asked, Counted(w.Days, "day")))
		}
	}
	return out
}

// backupSays says what the backup of a year did.
func backupSays(b model.Backup, r model.VariantResult, currency string, sys unit.System) string {
	y, name := r.Year.Backup, backupName(b)
	if y.Hours == 0 {
		return name + " never has to run in an average year."
	}
	say := fmt.Sprintf("%s runs %s a year", name, Counted(y.Hours, "hour"))
	if b.Kind == model.BackupGrid {
		say += " and gives " + unit.BigEnergies.Format(float64(y.Out), sys) + "."
	} else {
		say += " and burns " + litres(y.Fuel, sys) + "."
	}
	if c, ok := b.Cost(y).Value(); ok && c > 0 {
		say += " That costs " + MoneyText(c, currency) + "."
	}
	if s, ok := r.SunShare().Value(); ok {
		say += " " + unit.Percents.Format(float64(s), sys) + " of the energy comes from the sun."
	}
	return say
}

// litres is fuel in words.
func litres(v unit.Volume, sys unit.System) string {
	text := unit.Volumes.Format(float64(v), sys)
	if number, ok := strings.CutSuffix(text, unit.Space+"l"); ok {
		return number + unit.Space + "litres"
	}
	return text
}

// backupName is what a sentence calls a backup.
func backupName(b model.Backup) string {
	switch b.Kind {
	case model.BackupGrid:
		return "The grid"
	case model.BackupCar:
		return "The car"
	}
	return "The generator"
}

// OffAt names what goes off below a charge.
func OffAt(g model.Ground, below float64) string {
	var names []string
	for _, a := range g.Project.Load.Appliances {
		if _, refused := load.Refused(a); !refused && a.ShedBelow.Is && !a.MayWait() && float64(a.ShedBelow.Val) == below {
			names = append(names, OrUnnamed(form.Clip(a.Name, PaperName)))
		}
	}
	return strings.Join(names, ", ")
}

// PoorestMonth is the month with the least sun at the line, 0 for January.
func PoorestMonth(r model.VariantResult) int {
	least, at := 0.0, 0
	for m, day := range r.Year.Typical {
		sum := 0.0
		for _, c := range day {
			sum += float64(c.Bus)
		}
		if m == 0 || sum < least {
			least, at = sum, m
		}
	}
	return at
}

// PoorDay is the day of a month with a tenth of its days below it in sun, counted from 0 in the year.
func PoorDay(r model.VariantResult, month int) int {
	first := FirstDay(month)
	days := make([]int, MonthDays[month])
	for i := range days {
		days[i] = first + i
	}
	sun := func(d int) float64 { return Sum(r.Bus.Power[24*d : 24*d+24]) }
	slices.SortStableFunc(days, func(a, b int) int { return cmp.Compare(sun(a), sun(b)) })
	return days[len(days)/10]
}
