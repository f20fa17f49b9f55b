package model

import (
	"slices"

	"duskweight/internal/model/panel"
	"duskweight/internal/model/reason"
	"duskweight/internal/model/unit"
	"duskweight/internal/say"
)

// Device is one thing in the wiring that the rules of electricity check: its rating, and how it was judged. What no rule
// looks at in this plan is no device.
type Device struct {
	Kind    DeviceKind
	At      int             // the store that it belongs to, or the array of panels; -1 for what all share
	Rating  say.Sentence    // what stands on it: "15 A"; nothing where nobody gave it
	Word    reason.Word     // the worst of Because
	Because []reason.Reason // those of the judge that are about it

	ids   []string // of the reasons that can be about it
	paths []string // of the fields that they name
}

// DeviceKind is what a device is.
type DeviceKind string

// The closed list of devices.
const (
	Panels       DeviceKind = "panels"
	StringFuses  DeviceKind = "string_fuses"
	PanelCable   DeviceKind = "panel_cable"
	Charger      DeviceKind = "controller"
	TheLine      DeviceKind = "line"
	Inverter     DeviceKind = "inverter"
	Devices      DeviceKind = "devices"
	Battery      DeviceKind = "battery"
	BatteryFuse  DeviceKind = "battery_fuse"
	BatteryCable DeviceKind = "battery_cable"
	Board        DeviceKind = "board"
	MotorFuse    DeviceKind = "motor_fuse"
	MotorCable   DeviceKind = "motor_cable"
	MotorSwitch  DeviceKind = "motor_switch"
	MotorSupply  DeviceKind = "motor_supply"
	BrakeCoil    DeviceKind = "brake_coil"
	MotorLamps   DeviceKind = "motor_lamps"
	Shunt        DeviceKind = "shunt"
)

// device is one of a kind, the reasons about which name one of the paths.
func device(kind DeviceKind, rating say.Sentence, ids []string, paths ...string) Device {
	return Device{Kind: kind, At: -1, Rating: rating, ids: ids, paths: paths}
}

// ids are those of the reasons that can be about a device.
func ids(all ...string) []string { return all }

// Circuit are the devices of a variant along the current, each with what the judge says of it: panels to line, then each
// store, then inverter and what it feeds.
func (r VariantResult) Circuit(v Variant) []Device {
	out := append(panelDevices(v, r), device(TheLine, say.That("%s", say.Voltage(v.Controller.Line())), ids("volts_touch"), "controller.line_voltage_v"))
	var charge []string
	for i, s := range r.Stores {
		for _, d := range s.Part.Wires().Devices {
			d.At = i
			d.paths = slices.Clone(d.paths)
			for n, p := range d.paths {
				d.paths[n] = Join(s.Kind.Path(i), p)
			}
			out = append(out, d)
		}
		charge = append(charge, Join(s.Kind.Path(i), chargeField))
	}
	for n := range out {
		if out[n].Kind == Charger {
			out[n].paths = append(out[n].paths, charge...)
		}
	}
	out = append(out, loadDevices(r)...)
	for n := range out {
		out[n].judged(r.Because)
	}
	return out
}

// judged keeps of some reasons those about the device.
func (d *Device) judged(because []reason.Reason) {
	d.Word = reason.Yes
	for _, b := range because {
		if d.Asks(b) {
			d.Because = append(d.Because, b)
			d.Word = reason.Worst(d.Word, b.Word)
		}
	}
}

// Asks reports whether a reason is about the device.
func (d Device) Asks(b reason.Reason) bool {
	return slices.Contains(d.ids, b.ID) && slices.ContainsFunc(d.paths, func(p string) bool { return Within(b.Path, p) })
}

// panelDevices are the panels with their fuses and cable, and the controller.
func panelDevices(v Variant, r VariantResult) (out []Device) {
	for _, s := range r.Wiring.Strings {
		a := v.Panels[s.At]
		at := func(kind DeviceKind, rating say.Sentence, ids []string, fields ...string) {
			d := device(kind, rating, ids)
			d.At = s.At
			for _, f := range fields {
				d.paths = append(d.paths, atPanels(s.At, f))
			}
			if kind == StringFuses {
				d.paths = []string{"controller.string_fuses"}
			}
			out = append(out, d)
		}
		cold := say.Sentence{}
		if s.Known {
			cold = say.That("up to %s", say.Voltage(s.ColdWorst).To(3).Up())
		}
		at(Panels, cold, ids("volts_string", "volts_touch", "contradiction"), "sheet", "panel_w", "strings")
		if s.Most > 1 {
			fused := map[unit.Answer]say.Sentence{unit.Yes: say.Words("one each"), unit.No: say.Words("none")}[v.Controller.StringFuses]
			at(StringFuses, fused, ids("strings_fuse"))
		}
		if _, known := a.Short(s.Side); known {
			at(PanelCable, say.That("%s", say.WireArea(a.Lead())), ids("panel_cable"), "cable_area_m2")
		}
	}
	if len(r.Wiring.Strings) == 0 {
		return out
	}
	return append(out, device(Charger, chargerRating(v.Controller), ids("volts_string", "panel_input", "charge_current"), "controller.max_input_v", "controller.max_input_a"))
}

// chargerRating is what a controller withstands of the panels and gives to the line.
func chargerRating(c panel.Controller) say.Sentence {
	var parts []say.Sentence
	if c.Kind == panel.ControllerDirect {
		return say.Words("none: straight on")
	}
	if c.MaxInput.Is {
		parts = append(parts, say.That("%s", say.Voltage(c.MaxInput.Val)))
	}
	if c.MaxCharge.Is {
		parts = append(parts, say.That("%s", say.Current(c.MaxCharge.Val)))
	}
	return say.List(", ", parts...)
}

// loadDevices are the inverter where something runs through it, and the lamps and devices.
func loadDevices(r VariantResult) []Device {
	var out []Device
	if r.Peak.AC > 0 {
		out = append(out, device(Inverter, r.Peak.inverterRating, ids("inverter", "volts_line", "mains_out", "low_voltage"), "load.inverter"))
	}
	if len(r.Peak.Run.On) > 0 || slices.ContainsFunc(r.Because, func(b reason.Reason) bool { return Within(b.Path, "load.appliances") }) {
		out = append(out, device(Devices, say.That("%s at once", say.Power(unit.Power(r.Peak.Run.Run()))), ids("bare_volts", "lamp_volts", "peak_fuse"), "load.appliances", "load.standing"))
	}
	return out
}
