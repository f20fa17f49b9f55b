package water

import (
	"duskweight/internal/model/pipe"
	"duskweight/internal/model/reason"
	"duskweight/internal/model/source"
	"duskweight/internal/model/unit"
	"duskweight/internal/say"
)

// Check is one thing of a water store that may hurt somebody.
type Check struct {
	ID     string
	Path   string // in the design
	Part   string
	Word   reason.Word
	Use    unit.Known[unit.Ratio]
	Say    say.Sentence
	Mend   say.Sentence
	Clears reason.Clears
	Source source.Ref
}

// The speed of a pressure wave in a plastic pipe and in any other, m/s (from memory).
const (
	WavePlastic unit.Speed = 450
	WaveOther   unit.Speed = 1200
)

// Surge is the pressure in a pipe below a head whose flow stops at once, Pa: that of the standing water, ρ·g·h, and that of the
// shock, ρ·c·Δv (Joukowsky).
func Surge(head unit.Length, v, wave unit.Speed) (static, shock unit.Stress) {
	return unit.Stress(float64(pipe.Density) * unit.G * float64(head)), unit.Stress(float64(pipe.Density) * float64(wave) * float64(v))
}

// Fastest is the speed of the water in the pipe, of the faster of filling and drawing.
func (r Resolved) Fastest() unit.Speed {
	return velocity(max(r.PumpFlow, r.Design.Turbine.Flow.Or(0)), r.Design.Pipe.Inner.Val)
}

// Pressure is what strikes the pipe, Pa, when its flow stops at once and a pressure wave runs at a speed; false where height,
// pipe or flow are not known. The pump's flow counts where it is known.
func (r Resolved) Pressure(wave unit.Speed) (unit.Stress, bool) {
	w := r.Design
	if !w.Head.Is || !w.Pipe.Inner.Is || !w.Turbine.Flow.Is {
		return 0, false
	}
	static, shock := Surge(w.Head.Val, r.Fastest(), wave)
	return static + shock, true
}

// Checks are what may hurt somebody: the pipe that bursts, the tank that comes down, the child that drowns.
func (r Resolved) Checks() []Check {
	return []Check{r.drowning(), r.base(), r.pipe()}
}

// pipe is the pressure in the pipe when its flow stops at once, against the one that stands on it. Of which material a pipe is
// whose wave nobody knows decides: the answer is then not known between both.
func (r Resolved) pipe() Check {
	c := Check{ID: "pipe_pressure", Path: "pipe.rated_pa", Part: "the pipe", Clears: reason.Change, Source: source.Joukowsky.Whole()}
	w := r.Design
	if _, ok := r.Pressure(WaveOther); !ok {
		c.Word, c.Clears, c.Say = reason.NotKnown, reason.Answer, say.Words("How hard the water strikes when the pipe shuts is not known.")
		c.Mend = say.Words("Give the height, the pipe and the flow.")
		return c
	}
	wave := reason.Between(w.Pipe.Wave, WavePlastic, WaveOther)
	at := func(c float64) float64 {
		static, shock := Surge(w.Head.Val, r.Fastest(), unit.Speed(c))
		return float64(static + shock)
	}
	least, most := at(wave.Least), at(wave.Most)
	if !w.Pipe.Rated.Is {
		c.Word, c.Clears = reason.NotKnown, reason.Answer
		c.Say = say.That("When the flow stops at once, %s strike the pipe. What it withstands is not known.", say.Of(unit.Pressures, most).Up())
		c.Mend = say.That("Read the pressure that is printed on the pipe: PN 10 is %s.", say.Of(unit.Pressures, 1e6))
		return c
	}
	rated := float64(w.Pipe.Rated.Val)
	c.Word = reason.Tried(least > rated, most > rated)
	c.Use = unit.Of(unit.Ratio(most / rated))
	c.Say = say.That("When the flow stops at once, up to %s strike a pipe that withstands %s.", say.Of(unit.Pressures, most).Up(), say.Of(unit.Pressures, rated).Down())
	c.Mend = say.Words("Use a stronger or a thicker pipe, and a valve that closes slowly.")
	if c.Word == reason.NotKnown {
		c.Path, c.Clears, c.Use = "pipe.wave_m_s", reason.Answer, unit.Known[unit.Ratio]{}
		c.Mend = say.That("Say how fast a pressure wave runs in it: about %s in plastic, %s in metal.", say.Speed(WavePlastic), say.Speed(WaveOther))
	}
	return c
}

// base is what carries the tank. A tower or a building is not known until an engineer signs for it: no figure here stands for
// that.
func (r Resolved) base() Check {
	c := Check{ID: "tank_base", Path: "stands_on", Part: "what carries the tank", Word: reason.Yes, Clears: reason.Answer, Source: source.Judgement.Whole()}
	load := say.Words("the tank")
	if v, ok := r.Design.Volume.Value(); ok {
		load = say.That("%s of water", say.Mass(unit.Mass(float64(pipe.Density)*float64(v))).To(2).Up())
	}
	switch d := r.Design; {
	case d.Stands == OnGround:
		c.Say = say.That("The ground carries %s.", load)
	case d.Stands != "" && d.Signed.Is && d.Volume.Is && d.Signed.Val >= d.Volume.Val:
		c.Say = say.That("An engineer has signed that this structure carries %s.", load)
	case d.Stands != "" && d.Signed.Is && d.Volume.Is:
		c.Word, c.Path, c.Clears = reason.No, "signed_m3", reason.Person
		c.Say = say.That("The engineer signed for %s of water, and the tank holds %s.", say.Of(unit.BigVolumes, float64(d.Signed.Val)).Down(), say.Of(unit.BigVolumes, float64(d.Volume.Val)).Up())
		c.Mend = say.Words("Fill in less, or let the engineer sign for all of it.")
	case d.Stands == "":
		c.Word, c.Say, c.Mend = reason.NotKnown, say.That("What carries %s is not known.", load), say.Words("Say whether the tank is on the ground, on a tower or on a building.")
	default:
		c.Word, c.Path, c.Clears = reason.NotKnown, "signed_m3", reason.Person
		c.Say = say.That("Nobody has signed that this structure carries %s. A tower or a roof that gives way kills whoever is under it.", load)
		c.Mend = say.Words("Let a structural engineer work it out and sign, or put the tank on the ground of a slope.")
	}
	return c
}

// drowning is open water: a small child drowns in a hand's depth of it.
func (r Resolved) drowning() Check {
	c := Check{ID: "drowning", Path: "covered", Part: "the open water", Word: reason.YesNo(r.Design.Covered, unit.No), Clears: reason.Change, Source: source.CommonPractice.Whole()}
	c.Mend = say.Words("Cover both waters with a lid that a child cannot lift, or fence them and lock the gate.")
	switch c.Word {
	case reason.No:
		c.Say = say.Words("The water is open. Children drown in open water, quietly and within minutes.")
	case reason.NotKnown:
		c.Clears, c.Say = reason.Answer, say.Words("Whether the water is covered is not known. Children drown in open water.")
	default:
		c.Say = say.Words("The water is covered or fenced.")
	}
	return c
}
