package water

import (
	"strconv"

	"duskweight/internal/draw"
	"duskweight/internal/model"
	"duskweight/internal/model/source"
	"duskweight/internal/model/unit"
	"duskweight/internal/model/water"
	"duskweight/internal/say"
	"duskweight/web/form"
	"duskweight/web/page"
	"io"
)

// waterView is the answer of one store of water, ready to print.
type waterView struct {
	Headline string
	More     []string
	Facts    []page.FactView
	Against  page.ReasonsView
	First    []string // what the store comes to, in sentences
	Picture  *page.PictureView
	Store    []page.FigureRow
	Year     []page.FigureRow
	Missing  []form.LinkView
	Rocks    string // address of the page that weighs rocks, water and cells
}

func viewOf(r model.VariantResult, i int, sys unit.System, labels map[string]string, here string) waterView {
	st := r.Stores[i]
	v := waterView{Facts: page.FactsOf(r, sys), First: say.All(firstOf(st), sys), Store: storeRows(model.WaterOf(st).Resolved, sys), Year: yearRows(st, sys)}
	v.Headline, v.More = page.HeadlineAndGiven(r, sys)
	if picture, ok := drawing(st, here, sys); ok {
		v.Picture = &picture
	}
	for _, m := range r.Missing {
		if model.Within(m.Path, model.WaterPath(i)) {
			l := page.FieldLink(m.Path, labels, here)
			l.Text += ": " + m.Wants.In(sys)
			v.Missing = append(v.Missing, l)
		}
	}
	return v
}

// firstOf are the sentences that matter, the answer first.
func firstOf(st model.StoreResult) []say.Sentence {
	w := model.WaterOf(st)
	r := w.Resolved
	if !r.WhyNot.IsZero() {
		return []say.Sentence{r.WhyNot}
	}
	whole := float64(r.Stored) / float64(unit.G*r.Design.Head.Val)
	out := []say.Sentence{say.That("A full tank gives %s: %s of water at %s.", say.Energy(unit.Energy(float64(r.Gives)*float64(r.EmptyTime))).To(2), say.Mass(unit.Mass(whole)).To(2), say.Height(r.Design.Head.Val).To(2)),
		say.That("You get back %s of what the pump uses.", say.Share(back(r))),
		say.That("The pump fills the tank in %s of full power. The turbine empties the tank in %s and gives %s.", say.Time(r.FillTime).To(2), say.Time(r.EmptyTime).To(2), say.Power(r.Gives).To(2))}
	if r.PumpSize != nil || r.TurbineSize != nil {
		out = append(out, say.That("We used typical efficiencies of small machines. Yours may be up to half higher or lower. Type those that you know."))
	}
	return out
}

// back is what comes back of what the pump uses.
func back(r water.Resolved) unit.Ratio {
	s := r.Reduce(nil)
	return unit.Ratio(s.RoundTrip(s.DrawMax))
}

func how(formula string, from source.Ref, inputs ...page.PairView) page.HowView {
	return page.HowView{Formula: formula, Inputs: inputs, Source: from.String(), Topic: "water"}
}

// storeRows are the figures of the store itself, each with what stands behind it.
func storeRows(r water.Resolved, sys unit.System) []page.FigureRow {
	if !r.WhyNot.IsZero() {
		return nil
	}
	d := r.Design
	height := func(l unit.Length) string { return unit.Heights.Format(float64(l), sys) }
	share := func(x unit.Ratio) string { return unit.Percents.Format(float64(x), sys) }
	volume, head := page.PairView{Name: "water V", Value: page.Known(d.Volume, unit.BigVolumes, sys)}, page.PairView{Name: "height h", Value: page.Known(d.Head, unit.Heights, sys)}
	flow, pipe := page.PairView{Name: "flow Q", Value: page.Known(d.Turbine.Flow, unit.Flows, sys)}, page.PairView{Name: "pipe", Value: page.Known(d.Pipe.Length, unit.Lengths, sys) + ", " + page.Known(d.Pipe.Inner, unit.SmallLengths, sys)}
	friction := "10.67 · L · Q^1.852 / (150^1.852 · d^4.8704)"
	rows := []page.FigureRow{
		{ID: "stored", Name: "Energy of the lifted water", Value: unit.Energies.Format(float64(r.Stored), sys), How: how("ρ · g · V · h", source.Derivation.Whole(), volume, head)},
		{ID: "pumpflow", Name: "Flow of the pump", Value: unit.Flows.Format(float64(r.PumpFlow), sys), How: how("Q where ρ · g · Q · (h + friction) = efficiency · power", source.Derivation.Whole(), head, page.PairView{Name: "power", Value: page.Known(d.Pump.Rated, unit.Powers, sys)}, page.PairView{Name: "efficiency", Value: share(r.PumpEff)})},
		{ID: "pumplost", Name: "Height lost in the pipe, pump running", Value: height(r.PumpLost), How: how(friction, source.HazenWilliams.Whole(), pipe)},
		{ID: "turbinelost", Name: "Height lost in the pipe, turbine running", Value: height(r.TurbineLost), How: how(friction, source.HazenWilliams.Whole(), flow, pipe)},
		{ID: "gives", Name: "Power of the turbine", Value: unit.Powers.Format(float64(r.Gives), sys), How: how("ρ · g · Q · (h − friction) · efficiency", source.Derivation.Whole(), flow, head, page.PairView{Name: "efficiency", Value: share(r.TurbineEff)})},
		{ID: "least", Name: "Least power of the turbine", Value: unit.Powers.Format(float64(r.Least), sys), How: how("all of it; with a valve 0.3 of it", source.Judgement.Whole())},
		{ID: "pumpeff", Name: "Efficiency of the pump", Value: share(r.PumpEff) + ofClass(r.PumpSize, sys), How: how("yours, or that of a machine of its size", source.Harvey.At("with Thake 2000"))},
		{ID: "turbineeff", Name: "Efficiency of the turbine", Value: share(r.TurbineEff) + ofClass(r.TurbineSize, sys), How: how("yours, or that of a machine of its size", source.Thake.At("with Harvey 1993"))},
	}
	for _, c := range []struct {
		id, name string
		wave     unit.Speed
	}{{"plastic", "Pressure shock in a plastic pipe that shuts at once", water.WavePlastic}, {"other", "Pressure shock in any other pipe", water.WaveOther}} {
		if d.Pipe.Wave.Is {
			c.wave, c.name = d.Pipe.Wave.Val, "Pressure shock in the pipe when it shuts at once"
		}
		p, _ := r.Pressure(c.wave)
		rows = append(rows, page.FigureRow{ID: c.id, Name: c.name, Value: unit.Pressures.Format(float64(p), sys), How: how("ρ · g · h + ρ · c · v", source.Joukowsky.Whole(), head, page.PairView{Name: "wave c", Value: unit.Speeds.Format(float64(c.wave), sys)}, page.PairView{Name: "water v", Value: unit.Speeds.Format(float64(r.Fastest()), sys)})})
		if d.Pipe.Wave.Is {
			break
		}
	}
	if l, ok := r.LeakADay.Value(); ok && l > 0 {
		rows = append(rows, page.FigureRow{ID: "dries", Name: "Share that dries up in a day", Value: share(l), How: how("4 mm a day · surface / water", source.Judgement.Whole(), volume, page.PairView{Name: "surface", Value: page.Known(d.Surface, unit.Areas, sys)})})
	}
	return rows
}

// ofClass says that an efficiency is typical, and how far it may be off.
func ofClass(s *water.Size, sys unit.System) string {
	if s == nil {
		return ""
	}
	return ", typical (" + page.Span(unit.Percents, float64(s.Least), float64(s.Most), sys) + ")"
}

// yearRows is the year of the store.
func yearRows(st model.StoreResult, sys unit.System) []page.FigureRow {
	if !st.InYear {
		return nil
	}
	y, run := st.Year, source.Derivation.At("the year run hour by hour")
	e := func(x unit.Energy) string { return unit.BigEnergies.Format(float64(x), sys) }
	return []page.FigureRow{
		{ID: "in", Name: "Used by the pump, a year", Value: e(y.Taken), How: how("Σ taken at the line, hour by hour", run)},
		{ID: "out", Name: "Given back, a year", Value: e(y.Delivered), How: how("Σ given at the line, hour by hour", run)},
		{ID: "lost", Name: "Lost, a year", Value: e(y.Loss), How: how("used − given back − change of what is stored", run)},
		{ID: "frozen", Name: "Hours of frost", Value: strconv.Itoa(model.WaterOf(st).Frozen), How: how("hours in which the mean of the last 24 hours of air is below freezing", run)},
	}
}

// drawing is the store to scale; false where height or water are not known.
func drawing(st model.StoreResult, here string, sys unit.System) (page.PictureView, bool) {
	d := model.WaterOf(st).Resolved.Design
	if !d.Head.Is || !d.Volume.Is {
		return page.PictureView{}, false
	}
	w := draw.Water{Volume: d.Volume.Val, Head: d.Head.Val, Surface: d.Surface, Inner: d.Pipe.Inner, Tower: d.Stands == water.OnTower || d.Stands == water.OnBuilding,
		VolumeText: page.Known(d.Volume, unit.BigVolumes, sys), HeadText: page.Known(d.Head, unit.Heights, sys)}
	v := page.PictureView{ID: "drawing", Title: "To scale", Say: "The person is " + say.Height(draw.PersonTall).In(sys) + " tall. " + sizeSay(d, sys), CSV: here + "/drawing.csv", Head: []string{"What", "Value"},
		Rows: [][]string{{"Water in the tank", w.VolumeText}, {"Height over the turbine", w.HeadText}, {"Side of the tank as drawn", unit.Heights.Format(float64(w.Side()), sys)}}}
	v.SVG = page.SvgOf(func(out io.Writer) error { return w.Draw(out) })
	v.Numbers = func() page.SheetOfNumbers {
		length, volume := page.ScaleOf(unit.Lengths, sys), page.ScaleOf(unit.BigVolumes, sys)
		return page.SheetOfNumbers{Name: "lifted-water", Head: []string{volume.Axis("water"), length.Axis("height"), length.Axis("side of the tank")},
			Rows: [][]any{{volume.Of(float64(d.Volume.Val)), length.Of(float64(d.Head.Val)), length.Of(float64(w.Side()))}}}
	}
	return v, true
}

// sizeSay is how the tank is drawn.
func sizeSay(d water.Water, sys unit.System) string {
	if d.Surface.Is {
		return "The tank is drawn with its surface, as a square."
	}
	return "The surface of the water is not known, so the tank is drawn as a cube."
}
