package load

import (
	"duskweight/internal/model"
	"duskweight/internal/model/unit"
	"duskweight/internal/say"
	"duskweight/internal/store"
	"duskweight/web/form"
	"duskweight/web/page"
)

// onceView is the card All at once: what may run together, and what carries it, ready to print.
type onceView struct {
	Word   page.CheckView // of the worst check
	Say    []string       // what runs together, and at a start
	Worst  string         // what the worst check says
	Mend   string         // and what to do about it
	Groups []onceGroup
	None   string // why nothing is checked; empty where something is
}

// Checks counts the checks of all groups.
func (v onceView) Checks() (n int) {
	for _, g := range v.Groups {
		n += len(g.Rows)
	}
	return n
}

// onceGroup are the checks of one variant, or those that are the same in every variant.
type onceGroup struct {
	Title string
	Notes []string // the moment in this variant: what flows out of each battery
	Rows  []onceRow
}

// onceRow is one check: what is asked, what is there, and the field that says what is there.
type onceRow struct {
	page.CheckView
	Link form.LinkView
	Mend string
}

// onceNames name the checks by their id.
var onceNames = map[string]string{
	"inverter_run": "Inverter, running", "inverter_start": "Inverter, at a start", "fuse": "Fuse of the battery", "fuse_start": "Fuse of the battery, at a start",
	"battery_cable": "Cable of the battery", "board": "Management board", "low_voltage": "Voltage at the inverter", "lamp_volts": "Cable of a lamp", "breaks_down": "Power of the battery",
	"contacts": "Switch of the motor", "motor_cable": "Wires of the motor",
}

// ofEvery are the checks that are the same in every variant.
var ofEvery = map[string]bool{"inverter_run": true, "inverter_start": true}

// onceOf prints the card. What runs together is the same in every variant; what the line gives is told of each.
func (s *Pages) onceOf(g model.Ground, p store.Saved[model.Project], variants []store.Saved[model.Variant], results []model.VariantResult, sys unit.System) onceView {
	v := onceView{None: "There is no variant yet, and so no fuse, cable or battery to check."}
	var worst *model.LineCheck
	shared := onceGroup{Title: "In every variant"}
	for i, r := range results {
		v.None = ""
		links := s.LinksOf(p, variants[i].Value, variants[i].ID)
		group := onceGroup{Title: page.OrUnnamed(r.Name), Notes: momentOf(g, r, sys)}
		for _, c := range r.AllAtOnce() {
			row := onceRow{page.LineCheckView(c, onceNames[c.ID], sys), links.To(c.Path), r.MendOf(c).In(sys)}
			switch {
			case !ofEvery[c.ID]:
				group.Rows = append(group.Rows, row)
			case i == 0:
				shared.Rows = append(shared.Rows, row)
			}
			if worst == nil || model.WorseCheck(c, *worst) < 0 {
				worst, v.Word, v.Worst, v.Mend = &c, row.CheckView, row.Say, row.Mend
			}
		}
		v.Groups = append(v.Groups, group)
	}
	if len(shared.Rows) > 0 {
		v.Groups = append([]onceGroup{shared}, v.Groups...)
	}
	if len(results) > 0 && worst == nil {
		v.None = "No variant has a battery, a motor on the line or an inverter that this could overload."
	}
	v.Say = say.All(g.PeakOfLoad().SayLoad(g.Project.Load), sys)
	return v
}

// momentOf tells what the line of a variant gives in that moment, and each of its batteries.
func momentOf(g model.Ground, r model.VariantResult, sys unit.System) []string {
	out := say.All(r.Peak.SayLine(), sys)
	for _, b := range r.Peak.Banks {
		out = append(out, b.Say(page.OrUnnamed(r.Stores[b.At].Name)).In(sys))
	}
	return out
}
