package page

import (
	"cmp"

	"duskweight/internal/catalog"
	"duskweight/web/form"
)

// countries are the names of the countries in which starter climates lie, by ISO 3166-1 code.
var countries = map[string]string{
	"AU": "Australia", "BR": "Brazil", "CN": "China", "CU": "Cuba", "ET": "Ethiopia", "FI": "Finland", "FR": "France",
	"GB": "United Kingdom", "GT": "Guatemala", "IN": "India", "IT": "Italy", "KR": "South Korea", "LK": "Sri Lanka",
	"LU": "Luxembourg", "PR": "Puerto Rico", "PT": "Portugal", "SE": "Sweden", "US": "United States", "ZA": "South Africa",
}

// ClimateOptions lists the starter climates by name and country.
func ClimateOptions() []form.Option {
	var out []form.Option
	for _, c := range catalog.Climates() {
		out = append(out, form.Option{Value: c.Name, Word: c.Name + ", " + cmp.Or(countries[c.Country], c.Country)})
	}
	return out
}
