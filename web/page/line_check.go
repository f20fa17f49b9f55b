package page

import (
	"duskweight/internal/model"
	"duskweight/internal/model/lift/path"
	"duskweight/internal/model/unit"
)

// LineCheckView prints a check of the line under a name: what is asked and what is there, in its own quantity.
func LineCheckView(c model.LineCheck, name string, sys unit.System) CheckView {
	w := CheckWords[path.Word(c.Word)]
	v := CheckView{ID: c.ID, Part: name, Pulls: "not known", May: "not known", Use: "–", Sign: w.sign, Word: w.Word, Class: w.class, Say: c.Say.In(sys)}
	if c.Demand > 0 {
		v.Pulls = c.Quantity.Format(c.Demand, sys)
	}
	if u, ok := c.Use.Value(); ok {
		v.May = c.Quantity.Format(c.Capacity, sys)
		v.Use, v.Over = UseText(float64(u)), u > 1
		v.Bar = min(float64(u)/1.6, 1)
	}
	return v
}
