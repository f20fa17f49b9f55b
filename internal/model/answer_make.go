package model

import (
	"duskweight/internal/model/lift"
	"duskweight/internal/model/lift/path"
	"duskweight/internal/model/reason"
	"duskweight/internal/model/sun"
	"duskweight/internal/model/unit"
	"duskweight/internal/say"
)

// Answer turns a result into what other programs read.
func (r Result) Answer() Answer {
	a := Answer{Version: 1, On: dayOrNull(r.Ground.On), Project: r.Ground.Project.Name, Variants: make([]VariantAnswer, len(r.Variants))}
	if r.Ground.Sky != nil {
		a.Sun.GHI = unit.Of(unit.Irradiation(r.Ground.Sky.Year()))
		s := r.Ground.Season()
		a.Sun.Tilt = &TiltAnswer{s.Fixed, s.Two, s.TwoMonths, s.ByMonth, s.PoorestGain}
		if sky := r.Ground.Project.Place.Sky; sky != sun.SkyFile && sky != sun.SkyFiles {
			a.Sun.Seed = &r.Ground.Project.Seed
		}
	}
	a.Sun.WhyNot, a.Sun.Remarks = saidAnswers(r.Ground.WhyNot), saidAnswers(r.Ground.Remarks())
	a.Load = r.Ground.loadAnswer()
	var names []string
	for _, one := range r.Ground.Project.Load.Appliances {
		names = append(names, one.Name)
	}
	for i, v := range r.Variants {
		a.Variants[i] = v.answer()
		a.Variants[i].Peak = v.Peak.answer(names)
	}
	return a
}

// loadAnswer is what the appliances need, as far as it is known without the sun.
func (g Ground) loadAnswer() LoadAnswer {
	year, why := g.Appliances()
	a := LoadAnswer{Appliances: year}
	if y, ok := g.Nights(); ok {
		a.NightMean, a.NightMax = unit.Of(y.MeanNight), unit.Of(y.MaxNight)
	} else {
		why.Tell("place.latitude_rad", say.Words("the nights are not known: their length depends on the latitude"))
	}
	a.WhyNot = saidAnswers(why)
	return a
}

func saidAnswers(ps Problems) []SaidAnswer {
	out := make([]SaidAnswer, len(ps))
	for i, p := range ps {
		out[i] = SaidAnswer{p.Path, p.Say.String()}
	}
	return out
}

func (r VariantResult) answer() VariantAnswer {
	a := VariantAnswer{Name: r.Name, Ready: r.Ready, Because: becauseAnswers(r.Because), Plane: r.Plane, Capital: r.Cost.Capital, Levelised: r.Cost.Levelised,
		Cost: CostAnswer{r.Cost.Low.Capital, r.Cost.High.Capital, r.Cost.Low.Whole, r.Cost.Whole, r.Cost.High.Whole},
		Snow: []*[12]float64{}, Worn: []WornAnswer{}, Shed: []ShedAnswer{}, Waiting: []WaitingAnswer{}, PricedParts: [2]int{r.Cost.Priced, r.Cost.Parts}, Wiring: r.Wiring.answer(), Stores: make([]StoreAnswer, len(r.Stores))}
	if r.Verdict != "" {
		a.Verdict = &r.Verdict
	}
	if y := r.Year; r.YearKnown {
		a.Snow = append(a.Snow, r.Snow...)
		a.Load, a.Bus, a.Direct = unit.Of(y.Load), unit.Of(y.Bus), unit.Of(y.Direct)
		a.Standing = unit.Of(y.Standing.Wanted + y.StoreStanding.Wanted)
		a.Delivered, a.Spilled, a.Unmet = unit.Of(y.Delivered), unit.Of(y.Spilled), unit.Of(y.Unmet)
		a.ServedShare, a.EssentialShare = y.ServedShare, y.EssentialShare
		a.NightsServed, a.Nights = unit.Of(unit.Count(y.NightsServed)), unit.Of(unit.Count(y.Nights))
		a.NightsAnswer, a.Worn = r.nightsAnswer(), r.wornAnswers()
		r.managedAnswer(&a)
	}
	if !r.YearKnown {
		why := r.WhyNoYear.String()
		a.WhyNoYear = &why
	}
	for i, s := range r.Stores {
		a.Stores[i] = s.answer()
	}
	return a
}

func dayOrNull(on reason.Day) *reason.Day {
	if on == "" {
		return nil
	}
	return &on
}

func becauseAnswers(reasons []reason.Reason) []BecauseAnswer {
	out := make([]BecauseAnswer, len(reasons))
	for i, b := range reasons {
		out[i] = BecauseAnswer{b.ID, b.Word, b.Path, b.Say.String(), b.Mend.String(), b.Clears}
	}
	return out
}

func sentences(reasons []reason.Reason) []string {
	out := make([]string, len(reasons))
	for i, b := range reasons {
		out[i] = b.Text().String()
	}
	return out
}

func (s StoreResult) answer() StoreAnswer {
	a := StoreAnswer{Name: s.Name, Kind: s.Kind.Key, Ready: s.Ready, Because: becauseAnswers(s.Because), Capacity: s.Capacity, RoundTrip: s.RoundTrip}
	if y := s.Year; s.InYear {
		a.In, a.Out, a.Loss = unit.Of(y.Taken), unit.Of(y.Delivered), unit.Of(y.Loss)
		a.Change, a.Standing = unit.Of(y.Change), unit.Of(y.Standing)
	}
	s.Part.Answer(&a)
	return a
}

func (h HoistResult) answer() HoistAnswer {
	d := h.Drive
	a := HoistAnswer{
		Tension: make([]TensionAnswer, len(d.Tensions)), Checks: make([]CheckAnswer, len(h.Checks)),
		RopeUp: d.RopeUp, RopeDown: d.RopeDown, DrumTorqueUp: d.DrumTorqueUp,
		Raise: raiseAnswer(d.Raising), Lower: lowerAnswer(d.Lowering), LetGo: letGoAnswer(d.LetGo),
		Ready: h.Ready, Reasons: sentences(h.Because), Flags: flagAnswers(d.Flags), Missing: missingAnswers(d.Missing), Machine: machineAnswer(d.Machine),
		Stages: stageAnswers(d.Stages), Cures: cureAnswers(d.Lowering.Cures), Mishaps: mishapAnswer(d), Hazards: hazardAnswer(h.Hazards),
	}
	if h.Brush != nil {
		a.HighBrush = &BrushAnswer{raiseAnswer(h.Brush.High.Raising), lowerAnswer(h.Brush.High.Lowering)}
	}
	for i, t := range d.Tensions {
		a.Tension[i] = TensionAnswer{t.Part, t.Up, t.Down}
	}
	for _, heat := range []lift.Heat{d.HeatUp, d.HeatDown} {
		run := heatAnswer(heat)
		a.Heat = append(a.Heat, run)
		if w := a.HeatWorst.Winding; heat.Known && (!w.Is || run.Winding.Val > w.Val) {
			a.HeatWorst = run
		}
	}
	for i, c := range h.Checks {
		a.Checks[i] = checkAnswer(c)
	}
	if h.Direct != nil {
		a.Direct = directAnswer(*h.Direct)
	}
	return a
}

func directAnswer(d Direct) *DirectAnswer {
	a := &DirectAnswer{Points: []DirectPointAnswer{}, Say: say.Join(d.Say...)}
	if !d.Known {
		a.Say = d.WhyNot
		return a
	}
	a.RunCurrent, a.StartCurrent, a.ShortCurrent, a.OpenVoltage = unit.Of(d.Run), unit.Of(d.Start), unit.Of(d.Short), unit.Of(d.Open)
	a.StartLight, a.StallLight = d.StartLight, d.StallLight
	a.ConverterLight, a.ConverterHeight = d.Converter.StartLight, d.Converter.HeightDay
	for _, p := range d.Points {
		a.Points = append(a.Points, DirectPointAnswer{p.Light, p.Turns, p.Volts, p.Current, p.Speed, p.Power})
	}
	if y := d.Year; y != nil {
		a.HeightDay, a.Hours = unit.Of(y.HeightDay), unit.Of(unit.Count(y.Hours))
	}
	return a
}

func raiseAnswer(r lift.Raising) RaiseAnswer {
	a := RaiseAnswer{Say: r.Say}
	if !r.Known {
		return a
	}
	if r.Gearless { // whether it lifts is not known
		return a
	}
	a.Stalls, a.Starts, a.Current = &r.Stalls, &r.Starts, unit.Of(r.Current)
	a.Speed = unit.Of(r.Speed)
	if r.Speed > 0 { // one that stalls never arrives: no time and no energy
		a.Time, a.EnergyIn = unit.Of(r.Time), unit.Of(r.EnergyIn)
	}
	return a
}

func lowerAnswer(l lift.Lowering) LowerAnswer {
	a := LowerAnswer{Say: l.Say}
	if l.RunsBack != "" {
		a.RunsBack, a.Current = &l.RunsBack, unit.Of(l.Current)
	}
	if !l.Known {
		return a
	}
	a.Steady = &l.Steady
	if l.Current <= 0 || !l.Steady { // it does not come down, or at no steady speed: no voltage, no speed, no energy
		return a
	}
	a.Voltage, a.Speed, a.Time = unit.Of(l.Voltage), unit.Of(l.Speed), unit.Of(l.Time)
	a.Power, a.EnergyOut = unit.Of(l.Power), unit.Of(l.EnergyOut)
	a.AtSteady, a.EndSpeed, a.Left = unit.Of(l.SteadyPower), unit.Of(l.EndSpeed), unit.Of(l.Left)
	return a
}

func letGoAnswer(g lift.LetGo) LetGoAnswer {
	if !g.Known {
		return LetGoAnswer{JoinedSpeed: g.JoinedSpeed}
	}
	return LetGoAnswer{unit.Of(g.OpenSpeed), unit.Of(g.OpenRotor), g.JoinedSpeed}
}

func heatAnswer(h lift.Heat) HeatAnswer {
	if !h.Known {
		return HeatAnswer{}
	}
	return HeatAnswer{&h.Of, &h.Settles, unit.Of(h.Winding), h.Run, h.Rest}
}

func checkAnswer(c path.Check) CheckAnswer {
	a := CheckAnswer{ID: c.ID, Part: c.Part, Demand: c.Demand.Known(), Capacity: c.Capacity.Known(), Unit: string(c.Demand.In), FactorHad: c.Had,
		FactorWanted: c.Wanted, Use: c.Use, Word: string(c.Word), Source: c.Source.String(), Say: c.Say}
	a.behind(c)
	return a
}
