package water

import (
	"duskweight/internal/model"
	"duskweight/internal/model/unit"
	"duskweight/internal/model/water"
	"duskweight/web/form"
	"duskweight/web/page"
)

// Kind is what the pages about all stores need of lifted water.
func Kind() page.Kind {
	return page.Kind{
		Row: model.WaterKind(), Add: "Add water",
		New:    func() model.Store { return model.Store{Water: &water.Water{Name: "Water"}} },
		Inputs: page.InputsOf(func(st model.Store) *water.Water { return st.Water }, usual, WaterForm),
		Idea:   page.IdeaOf{Is: inNumbers},
		Year:   page.YearOf{End: func(model.StoreResult) string { return "water does not wear; pump and turbine do" }, Wasted: wasted},
		Sheet:  page.SheetOf{Order: order, Set: set, Beside: beside},
	}
}

// inNumbers is what a store of water is: its water and its height.
func inNumbers(s model.StoreResult, sys unit.System) (name, numbers string) {
	w := model.WaterOf(s).Resolved.Design
	return page.OrUnnamed(s.Name), page.Clauses(" × ", page.IfKnown(w.Volume, unit.BigVolumes, sys, "%s"), page.IfKnown(w.Head, unit.Heights, sys, "%s"))
}

// usual is what is usual of the numbers, for the guide.
func usual() []page.UsualPage {
	small := &water.Water{Volume: unit.Of[unit.Volume](1), Head: unit.Of[unit.Length](10), Pump: water.Pump{Rated: unit.Of[unit.Power](99)},
		Turbine: water.Turbine{Flow: unit.Of[unit.Flow](0.001)}, Pipe: water.Pipe{Length: unit.Of[unit.Length](20), Inner: unit.Of[unit.Length](0.05)}}
	return []page.UsualPage{{Title: "Lifted water, small machines", Rows: form.UsualsOf(WaterForm(), small)}}
}

// wasted is why it gave back little of what the pump used.
func wasted(s model.StoreResult, _ unit.System) string {
	if w := model.WaterOf(s).Resolved; w.Least == w.Gives {
		return "The flow of its turbine stays as it is, so small devices waste most of it."
	}
	return ""
}

// set is what is set at a store of water.
func set(s model.StoreResult, sys unit.System) []page.PairView {
	w := model.WaterOf(s)
	d := w.Resolved.Design
	rows := []page.PairView{{Name: form.Clip(page.OrUnnamed(s.Name), 40), Value: "gives " + page.Known(s.Capacity, unit.Energies, sys) + " from full"},
		{Name: "Lids or fences at both waters", Value: form.OrNotKnown(form.WordFor(string(d.Covered)))},
		{Name: "Support under the tank", Value: form.OrNotKnown(form.WordFor(string(d.Stands)))},
		{Name: "Pipe withstands", Value: page.Known(d.Pipe.Rated, unit.Pressures, sys)},
		{Name: "Flow of the turbine", Value: page.Known(d.Turbine.Flow, unit.Flows, sys)}}
	if at, ok := w.Resolved.Pressure(d.Pipe.Wave.Or(water.WaveOther)); ok {
		rows = append(rows, page.PairView{Name: "Pressure shock in the pipe when it shuts at once", Value: unit.Pressures.Format(float64(at), sys)})
	}
	return rows
}

// beside is the same in short, on the sheet of a hoist.
func beside(s model.StoreResult, sys unit.System) page.PairView {
	d := model.WaterOf(s).Resolved.Design
	return page.PairView{Name: "Water", Value: form.Clip(page.OrUnnamed(s.Name), 30) + ": pipe for " + page.Known(d.Pipe.Rated, unit.Pressures, sys) + "; covered " + form.OrNotKnown(form.WordFor(string(d.Covered)))}
}

// order is how a store of water is filled the first time and taken down (common practice).
var order = []string{"Before all: lids on, or the fence shut.", "Fill the pipe slowly from below, so that no air stays in it.", "Close every valve slowly: a pipe that shuts at once bursts.",
	"Before frost: empty pipe, pump and turbine."}
