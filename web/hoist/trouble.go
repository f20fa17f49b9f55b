package hoist

import (
	"fmt"
	"strings"

	"duskweight/internal/model"
	"duskweight/internal/model/lift"
	"duskweight/internal/model/lift/path"
	"duskweight/internal/model/unit"
	"duskweight/web/form"
	"duskweight/web/page"
)

// troubleView is one thing that goes wrong: what it comes to, and what limits it.
type troubleView struct {
	What   string
	Rows   []page.PairView
	Limits string
}

// troublesOf lists what goes wrong, each with its speed, force or energy, in the order in which people meet it.
func troublesOf(h *model.HoistResult, sys unit.System) []troubleView {
	t := trouble{h, sys}
	return []troubleView{t.unplugged(), t.joined(), t.joinedRacing(), t.powerLost(), t.slack(), t.stopMissed(), t.brakeLate(), t.ropeGone()}
}

type trouble struct {
	h   *model.HoistResult
	sys unit.System
}

// check is the first line of what breaks first with this id whose part is meant.
func (t trouble) check(id, part string) (path.Check, bool) {
	for _, c := range t.h.Checks {
		if c.ID == id && c.Part == part {
			return c, true
		}
	}
	return path.Check{}, false
}

// checked is a row that says how a part stands in this case.
func (t trouble) checked(rows []page.PairView, name, id, part string) []page.PairView {
	c, ok := t.check(id, part)
	if !ok {
		return rows
	}
	word := page.CheckWords[c.Word].Word
	if c.Demand.Is && c.Word != path.NotKnown {
		word = page.Amount(c.Demand.Val, c.Demand.In, t.sys) + ": " + word
	}
	return append(rows, page.PairView{Name: name, Value: word})
}

func (t trouble) unplugged() troubleView {
	v := troubleView{What: "Lamps unplugged, or the circuit open"}
	g := t.h.Drive.LetGo
	if !g.Known {
		v.Rows = []page.PairView{{Name: "It runs away", Value: "at a speed that is not known"}}
		v.Limits = "Give mass, gears and motor: then the speed is worked out."
		return v
	}
	v.Rows = []page.PairView{{Name: "The mass arrives at", Value: unit.Speeds.Format(float64(g.OpenSpeed), t.sys)},
		{Name: "Without any friction", Value: unit.Speeds.Format(float64(g.Frictionless), t.sys)},
		{Name: "Motor speed then", Value: unit.RotationSpeeds.Format(float64(g.OpenRotor), t.sys)},
		{Name: "Voltage on the wires then", Value: unit.Voltages.Format(float64(g.OpenVoltage), t.sys)}}
	if g.OpenSpeed <= 0 {
		v.Limits = "Friction holds the mass now. Do not count on that: a knock or warm grease can free it."
		return v
	}
	if g.BreaksUpFirst {
		v.Rows = append(v.Rows, page.PairView{Name: "The motor", Value: "flies apart before that"})
	}
	v.Limits = "Only the rotor's inertia and friction slow it. A brake on the drum ends the fall. A resistor or clamp wired straight to the motor prevents it."
	if u, speed, ok := lift.OnShunt(t.h.Design); ok {
		v.Rows = append(v.Rows, page.PairView{Name: "With the resistor or clamp", Value: fmt.Sprintf("%s at %s", unit.SlowSpeeds.Format(float64(speed), t.sys), unit.Voltages.Format(float64(u), t.sys))})
		v.Limits = "The resistor or clamp on the motor keeps the speed low while the lamps are off. If a wire of the motor itself opens, only friction, inertia and the brake on the drum are left."
	}
	return v
}

func (t trouble) joined() troubleView {
	v := troubleView{What: "Motor wires joined at rest", Limits: "The motor's own resistance. All the energy of the mass becomes heat in its winding. Joined wires are no hold: the mass still comes down."}
	g := t.h.Drive.LetGo
	j, ok := g.JoinedSpeed.Value()
	switch {
	case t.h.Drive.Lowering.RunsBack == lift.DownNo:
		v.Rows = []page.PairView{{Name: "The mass", Value: "stays where it is: it does not come down by itself"}}
		v.Limits = "The gears. They never count as a hold."
		return v
	case !ok:
		v.Rows = []page.PairView{{Name: "The mass creeps at", Value: "not known"}}
		return v
	}
	v.Rows = []page.PairView{{Name: "The mass creeps at", Value: unit.SlowSpeeds.Format(float64(j), t.sys)}, {Name: "Motor speed", Value: unit.RotationSpeeds.Format(float64(g.JoinedRotor), t.sys)}}
	switch {
	case g.JoinedFor.Is:
		v.Rows = append(v.Rows, page.PairView{Name: "The winding withstands that for", Value: form.Lasting(g.JoinedFor.Val)})
	case t.h.Drive.HeatUp.Known || t.h.Drive.HeatDown.Known:
		v.Rows = append(v.Rows, page.PairView{Name: "The winding withstands that for", Value: "as long as you like"})
	}
	return v
}

func (t trouble) joinedRacing() troubleView {
	v := troubleView{What: "Motor wires joined while it runs away", Limits: "Nothing softens the jerk: all gears and the rope must withstand it. Never join the wires while the mass runs away."}
	f, ok := t.h.Drive.LetGo.BurstForce.Value()
	if !ok {
		v.Rows = []page.PairView{{Name: "Pull of the rope", Value: "not known"}}
		if g := t.h.Drive.LetGo; g.Known && g.OpenSpeed <= 0 {
			v.Rows = []page.PairView{{Name: "The mass", Value: "does not run away"}}
		}
		return v
	}
	v.Rows = []page.PairView{{Name: "Pull of the rope", Value: page.ForceBoth(unit.Of(f), t.sys)}}
	if still, ok := t.h.Drive.RopeDown.Value(); ok && still > 0 {
		v.Rows = append(v.Rows, page.PairView{Name: "Compared with the pull at rest, times", Value: unit.Rounded(float64(f/still), 3)})
	}
	return v
}

func (t trouble) powerLost() troubleView {
	d, z := t.h.Drive, t.h.Hazards
	v := troubleView{What: "Power lost halfway up", Limits: "The brake, if it sets by itself when the power goes. Without such a brake the mass stops, turns back and runs away, as with the lamps unplugged."}
	if e, ok := z.DropEnergy.Value(); ok {
		v.Rows = append(v.Rows, page.PairView{Name: "Energy of the mass halfway up", Value: unit.Energies.Format(float64(e)/2, t.sys)})
	}
	if g := d.LetGo; g.Known && g.Acceleration > 0 {
		v.Rows = append(v.Rows, page.PairView{Name: "From halfway the mass arrives at", Value: unit.Speeds.Format(float64(g.Halfway()), t.sys)})
	}
	v.Rows = append(v.Rows, page.PairView{Name: "Fall before the brake sets, on the way down", Value: page.Known(d.LetGo.BrakeFall, unit.SmallLengths, t.sys)})
	v.Limits += " The way down is then: " + z.ComesDown + "."
	return v
}

func (t trouble) slack() troubleView {
	v := troubleView{What: "Rope slack, then caught", Limits: "A switch that stops the drum when the rope goes slack, and a long, soft rope. Even without slack a sudden load pulls twice as hard."}
	v.Rows = append(v.Rows, page.PairView{Name: "Slack-rope switch", Value: form.OrNotKnown(form.WordFor(string(t.h.Design.Holds.SlackSwitch)))})
	v.Rows = t.checked(v.Rows, "Pull of the rope", "slack", "the rope, if it goes slack and then catches the mass")
	return v
}

func (t trouble) stopMissed() troubleView {
	d := t.h.Drive
	v := troubleView{What: "Upper stop missed", Limits: "The current that the supply gives: the stalled motor pulls with all of it. Use two upper stops by two paths, and leave room above."}
	v.Rows = []page.PairView{{Name: "Travel after the stop", Value: page.Known(d.Overtravel, unit.Widths, t.sys)}, {Name: "Room above the stop", Value: page.Known(t.h.Design.Holds.RoomAbove, unit.Widths, t.sys)},
		{Name: "Pull of the stalled motor", Value: page.ForceBoth(d.StallRopePull, t.sys)}}
	v.Rows = t.checked(v.Rows, "The rope", "overhoist", "the rope, if the mass runs past the upper stop")
	v.Rows = t.checked(v.Rows, "The base", "overhoist", "the base, if the mass runs past the upper stop")
	return v
}

func (t trouble) brakeLate() troubleView {
	d := t.h.Drive
	g := d.LetGo
	v := troubleView{What: "Brake late, or missing", Limits: "The time until the brake sets: fall and jerk grow with it. A missing brake is the same as lamps unplugged."}
	v.Rows = []page.PairView{{Name: "Time until the brake sets", Value: page.Known(t.h.Design.Holds.BrakeDelay, unit.Durations, t.sys)}, {Name: "Fall until then", Value: page.Known(g.BrakeFall, unit.SmallLengths, t.sys)},
		{Name: "Speed when the brake sets", Value: page.Known(g.BrakeSpeed, unit.SlowSpeeds, t.sys)}}
	v.Rows = t.checked(v.Rows, "Pull of the rope when it catches", "brake_catch", "the rope, if the brake catches a mass that runs away")
	if g.Known && g.OpenSpeed > 0 {
		v.Rows = append(v.Rows, page.PairView{Name: "Without a brake the mass arrives at", Value: unit.Speeds.Format(float64(g.OpenSpeed), t.sys)})
	}
	return v
}

func (t trouble) ropeGone() troubleView {
	z := t.h.Hazards
	return troubleView{What: "Rope or drum breaks", Limits: "Nothing stops it. Keep everybody away, and build the soft landing.",
		Rows: []page.PairView{{Name: "The mass hits at", Value: page.Known(z.DropSpeed, unit.Speeds, t.sys)}, {Name: "Energy of the blow", Value: page.Known(z.DropEnergy, unit.Energies, t.sys)},
			{Name: "Like a car at", Value: page.Known(z.CarSpeed, unit.RoadSpeeds, t.sys)}, {Name: "Force on the soft landing", Value: page.ForceBoth(z.PadForce, t.sys)}}}
}

// troubleNames are the first words of each, for the closed fold.
func troubleNames(list []troubleView) string {
	var names []string
	for i, t := range list {
		if i == form.MostBrief {
			return strings.Join(names, ", ") + ", and " + page.Itoa(len(list)-i) + " more"
		}
		names = append(names, strings.ToLower(t.What[:1])+t.What[1:])
	}
	return strings.Join(names, ", ")
}
