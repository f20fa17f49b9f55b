package model

import (
	"fmt"
	"maps"
	"slices"

	"duskweight/internal/model/cell"
	"duskweight/internal/model/panel"
	"duskweight/internal/model/unit"
)

// SparePanel is a panel, or several alike. Where it stands and how it is wired belongs to the variant.
type SparePanel struct {
	Name  string                     `json:"name" say:"What you call it"`
	Count unit.Known[unit.Count]     `json:"count" say:"How many of them; not known counts as 1" range:"[0,100]"`
	Power unit.Known[unit.Power]     `json:"panel_w" say:"Power of one panel on its label (1000 W/m², {25 °C})" range:"(0,2000]"`
	Gamma unit.Known[unit.PerKelvin] `json:"gamma_per_k" say:"Change of power with temperature, negative" range:"[-0.02,0]"`
	Sheet panel.Sheet                `json:"sheet" say:"Data-sheet values for the current–voltage curve"`
}

// SpareCells is a battery or a block of cells, or several alike. How many are joined and how belongs to the variant.
type SpareCells struct {
	Name       string                      `json:"name" say:"What you call it"`
	Count      unit.Known[unit.Count]      `json:"count" say:"How many of them; not known counts as 1" range:"[0,100]"`
	Kind       cell.Chemistry              `json:"kind" say:"Kind of cells" enum:"|flooded_lead|sealed_lead|lfp|nmc|nickel_iron|sodium_ion"`
	Capacity   unit.Known[unit.Charge]     `json:"block_capacity_c" say:"Capacity on its label, in coulombs (1 Ah = 3600 C)" range:"(0,1e9]"`
	RatedHours unit.Known[unit.Duration]   `json:"rated_time_s" say:"The label's discharge time (72000 s for a 20-hour label)" range:"(0,1e6]"`
	Voltage    unit.Known[unit.Voltage]    `json:"block_voltage_v" say:"Nominal voltage on its label" range:"(0,1000]"`
	Internal   unit.Known[unit.Resistance] `json:"internal_ohm" say:"Internal resistance" range:"(0,10]"`
	Board      unit.Answer                 `json:"management_board" say:"Lithium: is there a management board with a cold-charge cut?" enum:"|yes|no"`
	BoardMost  unit.Known[unit.Current]    `json:"board_max_a" say:"Most current that the management board lets through" range:"(0,5000]"`
	Origin     cell.Origin                 `json:"cells_are" say:"New and matched, or second-hand, mixed or unknown" enum:"|new|second_hand|mixed"`
}

// Fields that a part on the shelf and its like in a variant have under the same names.
var (
	panelShared = []string{"panel_w", "gamma_per_k", "sheet"}
	cellsShared = []string{"kind", "block_capacity_c", "rated_time_s", "block_voltage_v", "internal_ohm", "management_board", "board_max_a", "cells_are"}
)

// WithPanels returns the variant with the panels at place k of the shelf as one more group of panels, all of them, with
// their origins. Their tilt and direction are not known: they belong to the place where they will stand.
func (p Project) WithPanels(v Variant, k int) Variant {
	o := p.Shelf.Panels[k]
	a := panel.Array{Name: o.Name, Count: unit.Of(o.Count.Or(1)), Power: o.Power, Gamma: o.Gamma}
	if !blank(o.Sheet) {
		a.Sheet = new(o.Sheet)
	}
	v.Panels = append(slices.Clone(v.Panels), a)
	v.Origins = p.withOrigins(v.Origins, fmt.Sprintf("shelf.panels[%d]", k), fmt.Sprintf("panels[%d]", len(v.Panels)-1), panelShared)
	return v
}

// WithCells returns the variant with one block of the cells at place k of the shelf as one more battery, with its origins. How
// many blocks are joined, in a row or side by side, the user says there.
func (p Project) WithCells(v Variant, k int) Variant {
	o := p.Shelf.Cells[k]
	b := cell.Bank{Name: o.Name, Kind: o.Kind, Capacity: o.Capacity, RatedHours: o.RatedHours, Voltage: o.Voltage, Internal: o.Internal,
		Board: o.Board, BoardMost: o.BoardMost, Origin: o.Origin}
	v.Stores = append(slices.Clone(v.Stores), Store{Cells: &b})
	v.Origins = p.withOrigins(v.Origins, fmt.Sprintf("shelf.batteries[%d]", k), CellsPath(len(v.Stores)-1), cellsShared)
	return v
}

// withOrigins is a copy of origins with those of some fields of a part on the shelf at their new place.
func (p Project) withOrigins(o Origins, from, to string, fields []string) Origins {
	o = maps.Clone(o)
	dropOrigins(o, to)
	for _, f := range fields {
		moveOrigins(p.Origins, from+"."+f, &o, to+"."+f)
	}
	return o
}

// ShelveHome returns the project with the panels and batteries of a variant on its shelf, each with its origins, and how many
// were new. A part that lies there already, or of which nothing is known, is not put there again.
func (p Project) ShelveHome(v Variant) (next Project, n int) {
	p.Origins = maps.Clone(p.Origins)
	s := &p.Shelf
	put := func(path, from string, fields []string) {
		n++
		for _, f := range fields {
			moveOrigins(v.Origins, from+"."+f, &p.Origins, path+"."+f)
		}
	}
	for i, a := range v.Panels {
		o := SparePanel{Power: a.Power, Gamma: a.Gamma}
		if a.Sheet != nil {
			o.Sheet = *a.Sheet
			o.Sheet.Series = unit.Known[unit.Count]{}
		}
		if blank(o) || slices.ContainsFunc(s.Panels, func(q SparePanel) bool { q.Name, q.Count = "", o.Count; return q == o }) {
			continue
		}
		o.Name, o.Count = s.free(orElse(a.Name, "Panel")), a.Count
		o.Count.Val = min(o.Count.Val, mostAlike)
		s.Panels = append(slices.Clone(s.Panels), o)
		put(fmt.Sprintf("shelf.panels[%d]", len(s.Panels)-1), fmt.Sprintf("panels[%d]", i), panelShared)
	}
	for i, st := range v.Stores {
		b := st.Cells
		if b == nil {
			continue
		}
		o := SpareCells{Kind: b.Kind, Capacity: b.Capacity, RatedHours: b.RatedHours, Voltage: b.Voltage, Internal: b.Internal, Board: b.Board, BoardMost: b.BoardMost, Origin: b.Origin}
		if blank(o) || slices.ContainsFunc(s.Cells, func(q SpareCells) bool { q.Name, q.Count = "", o.Count; return q == o }) {
			continue
		}
		o.Name = s.free(orElse(b.Name, "Battery"))
		if blocks := b.Series.Or(1) * b.Parallel.Or(1); blocks > 1 {
			o.Count = unit.Of(min(blocks, mostAlike))
		}
		s.Cells = append(slices.Clone(s.Cells), o)
		put(fmt.Sprintf("shelf.batteries[%d]", len(s.Cells)-1), CellsPath(i), cellsShared)
	}
	return p, n
}

// mostAlike is how many alike one row of the shelf holds, as the range of its count says.
const mostAlike = 100

// HoistParts is how many parts of a hoist lie on the shelf: what can be tried in one.
func (s Shelf) HoistParts() int { return s.Parts() - len(s.Panels) - len(s.Cells) }
