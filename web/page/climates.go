package page

import (
	"duskweight/internal/catalog"
	"duskweight/web/form"
)

// ClimateOptions lists the starter climates by name.
func ClimateOptions() []form.Option {
	var out []form.Option
	for _, c := range catalog.Climates() {
		out = append(out, form.Option{Value: c.Name, Word: c.Name + ", " + c.Country})
	}
	return out
}
