package cost

import "duskweight/internal/model/unit"

// Part is one line of the buy-and-make list.
type Part struct {
	Name   string                    `json:"name" say:"What it is"`
	Number string                    `json:"matters" say:"The one number that matters when buying it"`
	Get    Get                       `json:"get" say:"Have, buy, make or borrow" enum:"|have|buy|make|borrow"`
	Of     PartOf                    `json:"of" say:"What it belongs to: the store, safety, the panels or the load" enum:"store|safety|panel|load"`
	Count  unit.Known[unit.Count]    `json:"count" say:"How many; not known counts as 1" range:"[0,100000]"`
	Price  unit.Known[unit.Money]    `json:"price" say:"Price of one, in the project's currency; nothing ships" range:"[0,1e12]"`
	Low    unit.Known[unit.Money]    `json:"price_low" say:"Lowest price of one that you may find; not known counts as its price" range:"[0,1e12]"`
	High   unit.Known[unit.Money]    `json:"price_high" say:"Highest price of one that you may have to pay; not known counts as its price" range:"[0,1e12]"`
	Life   unit.Known[unit.Duration] `json:"life_s" say:"Life until it is replaced; not known counts as the whole time, and the computed life for cells" range:"(0,1e10]"`
	Cells  unit.Answer               `json:"follows_cells" say:"Replaced when the cells are worn out?" enum:"|yes|no"`
	Print  unit.Known[unit.Duration] `json:"print_time_s" say:"Printed parts: time on the printer" range:"[0,1e8]"`
	Grams  unit.Known[unit.Mass]     `json:"print_mass_kg" say:"Printed parts: material" range:"[0,1000]"`
	Spent  unit.Answer               `json:"bought" say:"Bought already?" enum:"|yes|no"`
	As     As                        `json:"as" say:"Which part of the plan it is; its size or load is then taken from the plan" enum:"|rope|pulley|hanger|container|mass|drum|coupling|gear|motor|drive|beam|post|base_weight|base_board|hold|upper_stop|slack_switch|shunt|changeover|stop_button|prop|landing|fence|gloves|panel|panel_fuse|controller|battery|fuse|cable|smoke_alarm|goggles|tank|pump|turbine|pipe|lid"`
	Upkeep unit.Known[unit.Money]    `json:"upkeep_per_year" say:"Upkeep of it a year; not known counts as none" range:"[0,1e12]"`
}

// Terms are the money questions of a project.
type Terms struct {
	Horizon unit.Known[unit.Count] `json:"horizon_years" say:"Years to count; not known counts as 20" range:"[1,60]"`
	Rate    unit.Known[unit.Ratio] `json:"real_rate" say:"Real interest rate; not known counts as 0.03" range:"[-0.05,0.5]"`
	Upkeep  unit.Known[unit.Money] `json:"upkeep_per_year" say:"Upkeep of the store a year" range:"[0,1e12]"`
}
