package cells

import (
	"strings"

	"duskweight/internal/model"
)

// A part is one thing that the battery's current runs through, or the place where the battery is. Its card edits its inputs,
// or leads to the page of the project that asks for them.
type part struct {
	id, name string
	first    []string // inputs that its card shows at once: inside the battery, or in the variant; a list without its row
	needs    []string // inputs without which it is not settled
	page     string   // of the project that asks for its inputs, below its address; empty where the card does
	why      string   // why its inputs stand there
}

// The ids of the parts.
const (
	partPanels     = "panels"
	partPanelCable = "panel_cable"
	partController = "controller"
	partFuse       = "fuse"
	partCable      = "cable"
	partBattery    = "battery"
	partBoard      = "board"
	partPlace      = "place"
	partInverter   = "inverter"
	partLoads      = "loads"
)

// allParts are the parts along the current.
var allParts = []part{
	{id: partPanels, name: "Panels", first: []string{"panels.count", "panels.sheet.panels_in_series", "panels.sheet.voc_v"}, needs: []string{"panels.count", "panels.panel_w"}},
	{id: partPanelCable, name: "Panel cable", first: []string{"panels.cable_length_m", "panels.cable_area_m2"}, needs: []string{"panels.cable_area_m2"}},
	{id: partController, name: "Controller", first: []string{"controller.kind", "controller.max_input_v", "controller.max_charge_a"}},
	{id: partFuse, name: "Fuse", first: []string{"fuse_distance_m", "fuse_a"}, needs: []string{"fuse_a", "fuse_distance_m"}},
	{id: partCable, name: "Battery cable", first: []string{"cable_area_m2", "cable_length_m"}, needs: []string{"cable_area_m2", "cable_length_m"}},
	{id: partBattery, name: "Battery", first: []string{"kind", "block_capacity_c", "block_voltage_v"}, needs: []string{"kind", "block_capacity_c", "block_voltage_v", "cells_are"}},
	{id: partBoard, name: "Board", first: []string{"management_board", "board_max_a"}, needs: []string{"management_board"}},
	{id: partPlace, name: "Place and air", first: []string{"place"}, needs: []string{"place"}},
	{id: partInverter, name: "Inverter", page: "/load?part=inverter#card", why: "One inverter serves every variant of this project, so its inputs are on the page Night load."},
	{id: partLoads, name: "Lamps, devices", page: "/load", why: "Every variant of this project has the same lamps and devices, so they are on the page Night load."},
}

// ownPart is the part that owns an input inside the battery, by its key. What it does not name belongs to the battery.
var ownPart = map[string]string{
	"fuse_a": partFuse, "breaking_a": partFuse, "fuse_distance_m": partFuse, "cable_length_m": partCable, "cable_area_m2": partCable,
	"management_board": partBoard, "board_max_a": partBoard, "place": partPlace, "vent_area_m2": partPlace,
}

// ownerOf is the part that a path of the variant or one behind "load." belongs to; empty where it belongs to none. at is
// the path of the battery; board says whether its cells have a management board.
func ownerOf(path, at string, board bool) string {
	switch {
	case model.Within(path, at):
		id := ownPart[strings.TrimPrefix(path[len(at):], ".")]
		if id == "" || id == partBoard && !board {
			return partBattery
		}
		return id
	case model.Within(path, "panels"):
		if strings.Contains(path, ".cable_") {
			return partPanelCable
		}
		return partPanels
	case model.Within(path, "controller"):
		return partController
	case model.Within(path, "load.inverter"):
		return partInverter
	case model.Within(path, "load"):
		return partLoads
	}
	return ""
}

// devicePart is the part that a device of the wiring is, or belongs to.
var devicePart = map[model.DeviceKind]string{
	model.Panels: partPanels, model.StringFuses: partController, model.PanelCable: partPanelCable, model.Charger: partController, model.TheLine: partController,
	model.Inverter: partInverter, model.Devices: partLoads, model.Battery: partBattery, model.BatteryFuse: partFuse, model.BatteryCable: partCable, model.Board: partBoard,
}

// keyOf is an input as the table of parts names it: without the path of the battery, and without the row of a list.
func keyOf(path, at string) string {
	if model.Within(path, at) {
		return strings.TrimPrefix(path[len(at):], ".")
	}
	before, rest, ok := strings.Cut(path, "[")
	if !ok {
		return path
	}
	_, after, _ := strings.Cut(rest, "]")
	return before + after
}
