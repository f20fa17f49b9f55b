package sheet

import (
	"duskweight/internal/model"
	"duskweight/internal/model/unit"
	"duskweight/web/form"
	"duskweight/web/page"
)

// backupSet is the line of the backup among the settings; none without one.
func backupSet(b model.Backup, sys unit.System) []page.PairView {
	if b.Kind == "" {
		return nil
	}
	what := form.WordFor(string(b.Kind)) + ", " + page.Known(b.Rated, unit.Powers, sys)
	if b.Runs() {
		what += ", below " + page.Known(b.Start, unit.Percents, sys) + " to " + page.Known(b.Stop, unit.Percents, sys)
	}
	return []page.PairView{{Name: "Backup", Value: what}}
}

// backupCautions are those of a backup, short; none without one.
func backupCautions(b model.Backup) (out []string) {
	if b.Kind == "" {
		return nil
	}
	if b.Burns() {
		out = append(out, "Backup outdoors only: exhaust kills.")
	}
	return append(out, "Never feed house wiring through a socket: a licensed person joins the backup, after the local code.")
}
