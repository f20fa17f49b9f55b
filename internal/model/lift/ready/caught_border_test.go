package ready

import (
	"testing"

	"duskweight/internal/model/lift"
	"duskweight/internal/model/lift/path"
	"duskweight/internal/model/reason"
	"duskweight/internal/model/unit"
)

// A device that catches a free drum (section 2 of the rule book): a brake within a metre and a third of the travel, a catch
// that withstands the torque when it locks, an arrester at up to twice its working load, and nothing that acts at the speed
// of coming down. A pawl that the drum's own turning throws needs √(3·9.80665·0.056) = 1.2836 m/s at a drum of 56 mm.
func TestCaughtBorders(t *testing.T) {
	at := func(x lift.Hold, k path.Catch, travel float64) reason.Word {
		var w Work
		w.Hoist.Travel = unit.Of(unit.Length(travel))
		w.Hoist.Holds.Holds = []lift.Hold{x}
		w.Drive.Winding.RadiusLast = unit.Of[unit.Length](0.056)
		k.Kind = x.Kind
		return caught(w, k).Word
	}
	brake := lift.Hold{Kind: lift.HoldSpringBrake, TripsAt: unit.Of[unit.Speed](0.3)}
	catch := lift.Hold{Kind: lift.HoldOverspeedCatch, TripsAt: unit.Of[unit.Speed](0.3), Torque: unit.Of[unit.Torque](130), TripHow: lift.TripRated}
	arrester := lift.Hold{Kind: lift.HoldLoadArrester, TripsAt: unit.Of[unit.Speed](0.3), Force: unit.Of[unit.Force](3000)}
	plain := func(trips float64) lift.Hold {
		x := catch
		x.TripHow, x.TripsAt = lift.TripPlainPawl, unit.Of(unit.Speed(trips))
		return x
	}
	unsaid := plain(1.28)
	unsaid.TripHow = ""
	geared := plain(0.1)
	geared.TripHow = lift.TripGeared
	open := catch
	open.Torque = unit.Known[unit.Torque]{}
	for _, c := range []struct {
		name   string
		x      lift.Hold
		k      path.Catch
		travel float64
		want   reason.Word
	}{
		{"a metre of fall", brake, path.Catch{Holds: true, Fall: 0.999}, 4.5, reason.Yes},
		{"more than a metre", brake, path.Catch{Holds: true, Fall: 1.001}, 4.5, reason.No},
		{"0.354 m of fall, of 4.5", brake, path.Catch{Holds: true, Fall: 0.354}, 4.5, reason.Yes},
		{"1.104 m of fall, of 4.5", brake, path.Catch{Holds: true, Fall: 1.104}, 4.5, reason.No},
		{"a third of the travel", brake, path.Catch{Holds: true, Fall: 0.499}, 1.5, reason.Yes},
		{"more than a third of the travel", brake, path.Catch{Holds: true, Fall: 0.501}, 1.5, reason.No},
		{"a brake that slips on", brake, path.Catch{Fall: 0.1}, 4.5, reason.No},
		{"a catch of 130 N·m at 130", catch, path.Catch{Holds: true, Torque: 130}, 4.5, reason.Yes},
		{"a catch of 130 N·m at 130.1", catch, path.Catch{Holds: true, Torque: 130.1}, 4.5, reason.No},
		{"a catch of a torque that is not known", open, path.Catch{Holds: true, Torque: 130}, 4.5, reason.NotKnown},
		{"an arrester at twice its working load", arrester, path.Catch{Holds: true, Pull: 6000}, 4.5, reason.Yes},
		{"an arrester at more", arrester, path.Catch{Holds: true, Pull: 6001}, 4.5, reason.No},
		{"a plain pawl, fast enough", plain(1.284), path.Catch{Holds: true}, 4.5, reason.Yes},
		{"a plain pawl, too slow", plain(1.283), path.Catch{Holds: true}, 4.5, reason.NotKnown},
		{"a pawl of a kind that nobody said, too slow", unsaid, path.Catch{Holds: true}, 4.5, reason.NotKnown},
		{"a geared pawl, slow", geared, path.Catch{Holds: true}, 4.5, reason.Yes},
		{"something is missing", brake, path.Catch{Missing: []string{"holds.holds[0].torque_nm"}}, 4.5, reason.NotKnown},
	} {
		if got := at(c.x, c.k, c.travel); got != c.want {
			t.Errorf("%s: %s, want %s", c.name, got, c.want)
		}
	}
}

// A closed fall zone is as good as its worst answer, and the fence stands outside the circles: of drop and swing where the
// frame is braced, of the whole keep-out where nobody said so.
func TestFallZone(t *testing.T) {
	closed := func() Case {
		var c Case
		c.Hoist.Site = lift.Site{MayFall: unit.Yes, Barrier: lift.BarrierFence, FenceRadius: unit.Of[unit.Length](3), ControlsOutside: unit.Yes,
			FloorBelow: lift.FloorSolidGround, PadDepth: unit.Of[unit.Length](0.15)}
		c.Hoist.Structure.SidePull = unit.Of[unit.Force](588)
		c.Hoist.Drum.DeadWraps = unit.Of[unit.Count](3)
		c.Hazards = path.Hazards{DropCircle: unit.Of[unit.Length](2.5), SwingRadius: unit.Of[unit.Length](3), KeepOut: unit.Of[unit.Length](6)}
		return c
	}
	none := unit.Known[unit.Length]{}
	for _, x := range []struct {
		name   string
		change func(*Case)
		want   reason.Word
		at     string
	}{
		{"closed", func(c *Case) {}, reason.Yes, ""},
		{"nobody says that it may fall", func(c *Case) { c.Hoist.Site.MayFall = "" }, reason.No, "site.may_fall"},
		{"no barrier", func(c *Case) { c.Hoist.Site.Barrier = lift.BarrierNone }, reason.No, "site.barrier"},
		{"a barrier not known", func(c *Case) { c.Hoist.Site.Barrier = "" }, reason.NotKnown, "site.barrier"},
		{"a locked room, no fence", func(c *Case) { c.Hoist.Site.Barrier, c.Hoist.Site.FenceRadius = lift.BarrierLockedRoom, none }, reason.Yes, ""},
		{"a fence inside the swing", func(c *Case) { c.Hoist.Site.FenceRadius = unit.Of[unit.Length](2.99) }, reason.No, "site.fence_radius_m"},
		{"a fence not measured", func(c *Case) { c.Hoist.Site.FenceRadius = none }, reason.NotKnown, "site.fence_radius_m"},
		{"circles that may be larger", func(c *Case) { c.Hazards.AtLeast = true }, reason.NotKnown, "site.fence_radius_m"},
		{"a drop circle not known", func(c *Case) { c.Hazards.DropCircle = none }, reason.NotKnown, "site.fence_radius_m"},
		{"a frame not braced: the keep-out counts", func(c *Case) { c.Hoist.Structure.SidePull = unit.Known[unit.Force]{} }, reason.No, "site.fence_radius_m"},
		{"the same inside a fence of 6 m", func(c *Case) {
			c.Hoist.Structure.SidePull, c.Hoist.Site.FenceRadius = unit.Known[unit.Force]{}, unit.Of[unit.Length](6)
		}, reason.Yes, ""},
		{"controls inside", func(c *Case) { c.Hoist.Site.ControlsOutside = unit.No }, reason.No, "site.controls_outside"},
		{"controls not said", func(c *Case) { c.Hoist.Site.ControlsOutside = "" }, reason.NotKnown, "site.controls_outside"},
		{"a floor over a cellar", func(c *Case) { c.Hoist.Site.FloorBelow = lift.FloorCellar }, reason.No, "site.floor_below"},
		{"a floor not known", func(c *Case) { c.Hoist.Site.FloorBelow = "" }, reason.NotKnown, "site.floor_below"},
		{"a cellar that is emptied and locked", func(c *Case) { c.Hoist.Site.FloorBelow, c.Hoist.Site.BelowSecured = lift.FloorCellar, unit.Yes }, reason.Yes, ""},
		{"no pad", func(c *Case) { c.Hoist.Site.PadDepth = none }, reason.NotKnown, "site.pad_depth_m"},
		{"turns on the drum not known", func(c *Case) { c.Hoist.Drum.DeadWraps = unit.Known[unit.Count]{} }, reason.NotKnown, "drum.dead_wraps"},
		{"a no beside a not known", func(c *Case) { c.Hoist.Site.PadDepth, c.Hoist.Site.ControlsOutside = none, unit.No }, reason.No, "site.controls_outside"},
	} {
		c := closed()
		x.change(&c)
		if got, at := c.fallZone(); got != x.want || at != x.at {
			t.Errorf("%s: %s by %q, want %s by %q", x.name, got, at, x.want, x.at)
		}
	}
}
