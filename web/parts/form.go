package parts

import (
	"duskweight/internal/model"
	"duskweight/internal/model/cost"
	"duskweight/internal/model/unit"
	"duskweight/web/form"
)

// mostParts is how many parts one list takes.
const mostParts = 200

// PartsForm is the buy-and-make list.
func PartsForm() []form.Part[model.Variant] {
	return []form.Part[model.Variant]{
		form.Rows("parts", "Parts", "part", mostParts, func(v *model.Variant) *[]cost.Part { return &v.Parts }, cost.Part{Of: cost.OfStore}, partRow()...),
	}
}

func partRow() []form.Part[cost.Part] {
	type p = cost.Part
	return []form.Part[p]{
		form.Text("name", "Part", func(p *p) *string { return &p.Name }),
		form.Word("get", "Way to get it", func(p *p) *cost.Get { return &p.Get }, form.Hint[p]("")),
		form.Number("price", "Price of one", unit.Prices, func(p *p) *unit.Known[unit.Money] { return &p.Price }, form.Hint[p]("your price; 0 if it costs you nothing")),
		form.Word("bought", "Bought already", func(p *p) *unit.Answer { return &p.Spent }),
		form.Folded("More of this part", "",
			form.Number("price_low", "Lowest price", unit.Prices, func(p *p) *unit.Known[unit.Money] { return &p.Low }, form.Hint[p]("if empty: its price")),
			form.Number("price_high", "Highest price", unit.Prices, func(p *p) *unit.Known[unit.Money] { return &p.High }, form.Hint[p]("if empty: its price")),
			form.Number("count", "How many", unit.Counts, func(p *p) *unit.Known[unit.Count] { return &p.Count }, form.Hint[p]("if empty: 1")),
			form.Word("as", "Use in the plan", func(p *p) *cost.As { return &p.As }),
			form.Text("matters", "Number to look for", func(p *p) *string { return &p.Number }, form.Hint[p]("if the plan gives none")),
			form.Word("of", "Group it belongs to", func(p *p) *cost.PartOf { return &p.Of }),
			form.Number("life_s", "Life", unit.Years, func(p *p) *unit.Known[unit.Duration] { return &p.Life }, form.Hint[p]("if empty: the whole time")),
			form.Word("follows_cells", "Replaced with the battery", func(p *p) *unit.Answer { return &p.Cells }),
			form.Number("upkeep_per_year", "Upkeep a year", unit.Prices, func(p *p) *unit.Known[unit.Money] { return &p.Upkeep }),
			form.Number("print_time_s", "Time to print", unit.Hours, func(p *p) *unit.Known[unit.Duration] { return &p.Print }),
			form.Number("print_mass_kg", "Material to print", unit.SmallMasses, func(p *p) *unit.Known[unit.Mass] { return &p.Grams })),
	}
}
