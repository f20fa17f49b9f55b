package model

import (
	"duskweight/internal/model/reason"
	"duskweight/internal/model/unit"
	"duskweight/internal/say"
)

// WaterAnswer is a store of lifted water for other programs; where it cannot be computed, its figures are null.
type WaterAnswer struct {
	Stored       unit.Known[unit.Energy]   `json:"stored_j"` // ρ·g·V·h
	PumpFlow     unit.Known[unit.Flow]     `json:"pump_flow_m3_s"`
	PumpLost     unit.Known[unit.Length]   `json:"pump_friction_m"`
	PumpEff      unit.Known[unit.Ratio]    `json:"pump_efficiency"` // in use
	PumpUsual    bool                      `json:"pump_efficiency_usual"`
	Net          unit.Known[unit.Length]   `json:"net_head_m"`
	Gives        unit.Known[unit.Power]    `json:"draw_max_w"`
	Least        unit.Known[unit.Power]    `json:"draw_min_w"`
	TurbineEff   unit.Known[unit.Ratio]    `json:"turbine_efficiency"` // in use
	TurbineUsual bool                      `json:"turbine_efficiency_usual"`
	Fill         unit.Known[unit.Duration] `json:"fill_s"`
	Empty        unit.Known[unit.Duration] `json:"empty_s"`
	Dries        unit.Known[unit.Ratio]    `json:"leak_per_day"`
	Frozen       int                       `json:"frozen_h_year"`
	Checks       []WaterCheckAnswer        `json:"checks"`
	WhyNot       *string                   `json:"why_not"` // null where it is a store
}

// WaterCheckAnswer is one check of a store of water.
type WaterCheckAnswer struct {
	ID   string                 `json:"id"`
	Word reason.Word            `json:"word"`
	Use  unit.Known[unit.Ratio] `json:"use"`
	Say  say.Sentence           `json:"say"`
	Mend say.Sentence           `json:"mend"`
}

func (w *WaterResult) answer() WaterAnswer {
	r := w.Resolved
	a := WaterAnswer{Stored: unit.Known[unit.Energy]{Val: r.Stored, Is: r.Stored > 0}, Frozen: w.Frozen, Checks: make([]WaterCheckAnswer, len(w.Checks))}
	for i, c := range w.Checks {
		a.Checks[i] = WaterCheckAnswer{c.ID, c.Word, c.Use, c.Say, c.Mend}
	}
	if !r.WhyNot.IsZero() {
		a.WhyNot = new(r.WhyNot.String())
		return a
	}
	a.PumpFlow, a.PumpLost, a.PumpEff, a.PumpUsual = unit.Of(r.PumpFlow), unit.Of(r.PumpLost), unit.Of(r.PumpEff), r.PumpSize != nil
	a.Net, a.Gives, a.Least = unit.Of(r.Net), unit.Of(r.Gives), unit.Of(r.Least)
	a.TurbineEff, a.TurbineUsual = unit.Of(r.TurbineEff), r.TurbineSize != nil
	a.Fill, a.Empty, a.Dries = unit.Of(r.FillTime), unit.Of(r.EmptyTime), r.LeakADay
	return a
}
