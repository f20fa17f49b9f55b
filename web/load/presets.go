package load

import (
	"strings"

	"duskweight/internal/catalog"
	"duskweight/internal/draw"
	"duskweight/internal/model"
	"duskweight/internal/model/load"
	"duskweight/internal/model/unit"
	"duskweight/web/form"
	"duskweight/web/page"
)

// presetView is a button that adds an appliance as many people own it.
type presetView struct{ Do, Name, Power, Icon string }

// presetsView are the buttons beside the rows, ready to print.
type presetsView struct {
	First, More []presetView
	Own         string // the button for one that is none of them
	Url         string
	Form        form.FormView
	Large       bool // nothing is there yet
}

// firstPresets is how many stand there at once; the others are folded.
const firstPresets = 10

// presetsOf prints the buttons; on an empty page all of them stand there at once.
func presetsOf(p model.Project, url string, f form.FormView, sys unit.System) presetsView {
	v := presetsView{Own: "add:" + appliances, Url: url, Form: f, Large: len(p.Load.Appliances) == 0}
	for i, r := range catalog.Appliances() {
		one := presetView{page.PressPreset + ":" + r.Key, r.Name, unit.Powers.Format(float64(r.Power[0]), sys), draw.Appliance(iconOfRow(r))}
		if i < firstPresets || v.Large {
			v.First = append(v.First, one)
		} else {
			v.More = append(v.More, one)
		}
	}
	return v
}

// pressPreset adds the appliance whose button was pressed.
func pressPreset(p *model.Project, do string) {
	key, ok := strings.CutPrefix(do, page.PressPreset+":")
	if r, known := catalog.ApplianceOf(key); ok && known && len(p.Load.Appliances) < mostAppliances {
		r.Add(p)
	}
}

// iconOfRow is the key of the drawing of a row.
func iconOfRow(r catalog.Appliance) string {
	if r.Purpose == load.ForOther || r.Key == "freezer" {
		return iconNamed(r.Key)
	}
	return iconOf(load.Appliance{Purpose: r.Purpose})
}

// iconOf is the key of the drawing of an appliance: by its name where that is the name of a row, else by what it is for.
func iconOf(a load.Appliance) string {
	for _, r := range catalog.Appliances() {
		if a.Name == r.Name {
			return iconOfRow(r)
		}
	}
	switch a.Purpose {
	case load.ForLight:
		return "lamp"
	case load.ForCooling:
		return "fridge"
	case load.ForPhone, load.ForComputer, load.ForRouter, load.ForRadio, load.ForFan, load.ForPump:
		return string(a.Purpose)
	}
	return "own"
}

// iconNamed is the drawing of a row that is for nothing in particular.
func iconNamed(key string) string {
	word, _, _ := strings.Cut(key, ",")
	switch word {
	case "washing machine":
		return "washer"
	case "circular saw":
		return "saw"
	}
	return word
}

// ownIcon is the drawing of an appliance that is none of the rows.
var ownIcon = draw.Appliance("own")
