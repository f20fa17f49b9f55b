package web

import (
	"duskweight/internal/model"
	"duskweight/internal/model/cost"
	"duskweight/internal/model/unit"
)

// mostParts is how many parts one list takes.
const mostParts = 200

// partsForm is the buy-and-make list.
func partsForm() []part[model.Variant] {
	return []part[model.Variant]{
		rows("parts", "Parts", "part", mostParts, func(v *model.Variant) *[]cost.Part { return &v.Parts }, cost.Part{Of: "store"}, partRow()...),
	}
}

func partRow() []part[cost.Part] {
	type p = cost.Part
	return []part[p]{
		text("name", "Part", func(p *p) *string { return &p.Name }),
		word("get", "How to get it", func(p *p) *string { return &p.Get }, hint[p]("")),
		number("price", "Price of one", unit.Prices, func(p *p) *unit.Known[unit.Money] { return &p.Price }, hint[p]("your own; 0 if it costs you nothing")),
		word("bought", "Bought already", func(p *p) *string { return &p.Spent }),
		folded("More of this part", "",
			number("count", "How many", unit.Counts, func(p *p) *unit.Known[unit.Count] { return &p.Count }, hint[p]("empty counts as 1")),
			word("as", "In the plan it is", func(p *p) *string { return &p.As }),
			text("matters", "The number that matters", func(p *p) *string { return &p.Number }, hint[p]("where the plan gives none")),
			word("of", "Belongs to", func(p *p) *string { return &p.Of }),
			number("life_s", "Life", unit.Years, func(p *p) *unit.Known[unit.Duration] { return &p.Life }, hint[p]("empty lasts the whole time")),
			word("follows_cells", "Replaced with the battery", func(p *p) *string { return &p.Cells }),
			number("upkeep_per_year", "Upkeep a year", unit.Prices, func(p *p) *unit.Known[unit.Money] { return &p.Upkeep }),
			number("print_time_s", "Time to print", unit.Hours, func(p *p) *unit.Known[unit.Duration] { return &p.Print }),
			number("print_mass_kg", "Material to print", unit.SmallMasses, func(p *p) *unit.Known[unit.Mass] { return &p.Grams })),
	}
}

// moneyForm is what counts for all variants of a project.
func moneyForm() []part[cost.Terms] {
	type t = cost.Terms
	return []part[t]{
		heading("Years and interest", "The same for every variant.",
			number("horizon_years", "Years that are counted", unit.Counts, func(t *t) *unit.Known[unit.Count] { return &t.Horizon }, hint[t]("empty counts as 20")),
			number("real_rate", "Interest above inflation, a year", unit.Percents, func(t *t) *unit.Known[unit.Ratio] { return &t.Rate }, hint[t]("empty counts as 3 %")),
			number("upkeep_per_year", "Upkeep of the store a year", unit.Prices, func(t *t) *unit.Known[unit.Money] { return &t.Upkeep }, hint[t]("besides the upkeep of single parts"))),
	}
}
