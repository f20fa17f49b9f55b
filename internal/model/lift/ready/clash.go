package ready

import (
	"math"

	"duskweight/internal/model/lift"
	"duskweight/internal/model/reason"
	"duskweight/internal/model/source"
	"duskweight/internal/model/unit"
	"duskweight/internal/say"
)

// Clash is a place where the hoist does not fit into itself or the room: By is how much is missing, m, at best. A word
// NotKnown says that it may clash, for want of what Path names.
type Clash struct {
	ID   string
	Word reason.Word
	Path string
	By   unit.Length
}

// rigHeight is what splice, thimble, shackle and hook take between mass and rope where nobody measured it (our own judgement).
const rigHeight = 0.2

// The most that a size may be that is not known: the ends of the accepted ranges.
const (
	mostLoad = 20
	mostPad  = 5
	mostRoom = 100
	mostPost = 50
)

// Clashes is the geometry of a hoist, for the drawing and for the rules alike: height under the pulley, posts, rope, width
// between the posts, and the drive beside the mass.
func Clashes(h lift.Hoist) []Clash {
	var out []Clash
	for _, f := range []func(lift.Hoist) (Clash, bool){clashHeight, clashPosts, clashRope, clashWidth, clashDrive} {
		c, ok := f(h)
		if h.Base.Where == "" && c.ID == "geometry_drive" && c.Word == reason.No {
			c.Word, c.Path = reason.NotKnown, "base.where" // it may stand elsewhere
		}
		if ok && c.Word != reason.Yes {
			out = append(out, c)
		}
	}
	return out
}

// size is one length of a clash: between its ends, with its path where it is not known.
type size struct {
	ends reason.Ends
	path string
}

func length(k unit.Known[unit.Length], most float64, path string) size {
	s := size{reason.Between(k, 0, unit.Length(most)), path}
	if k.Is {
		s.path = ""
	}
	return s
}

// tried tries a lack, m, at all corners: it clashes where the lack is more than nothing.
func tried(id, path string, sizes []size, lack func(at []float64) float64) (Clash, bool) {
	const grain = 1e-9
	c := Clash{ID: id, Path: path}
	ends := make([]reason.Ends, len(sizes))
	for i, s := range sizes {
		ends[i] = s.ends
		if s.path != "" {
			c.Path = s.path
		}
	}
	least := math.Inf(1)
	c.Word = reason.Corners(ends, func(at []float64) bool {
		by := lack(at)
		least = min(least, by)
		return by > grain
	})
	if c.Word == reason.No {
		c.Path, c.By = path, unit.Length(least)
	}
	return c, true
}

// headPulley is half the diameter of the top pulley, or of the drum where it stands above the mass.
func headPulley(h lift.Hoist) size {
	k := int(h.Reeving.LeadSheaves.Or(1))
	if k == 0 {
		s := length(h.Drum.Diameter, 1, "drum.diameter_m")
		return size{reason.Ends{Least: s.ends.Least / 2, Most: s.ends.Most / 2}, s.path}
	}
	d := unit.Known[unit.Length]{}
	if k <= len(h.Reeving.Sheaves) {
		d = h.Reeving.Sheaves[k-1].Diameter
	}
	s := length(d, 1, "reeving.sheaves")
	return size{reason.Ends{Least: s.ends.Least / 2, Most: s.ends.Most / 2}, s.path}
}

// rig is what hangs between rope and mass: shackle and splice, and with several ropes the lower block.
func rig(h lift.Hoist) size {
	s := size{reason.Between(unit.Of(h.Site.Rig.Or(rigHeight)), 0, 0), ""}
	if n := h.Reeving.RopeParts.Or(1); n > 1 {
		d := unit.Known[unit.Length]{}
		if k := int(h.Reeving.LeadSheaves.Or(1)); k < len(h.Reeving.Sheaves) {
			d = h.Reeving.Sheaves[k].Diameter
		}
		b := length(d, 1, "reeving.sheaves")
		s = size{reason.Ends{Least: s.ends.Least + b.ends.Least, Most: s.ends.Most + b.ends.Most}, b.path}
	}
	return s
}

// clashHeight: travel + load + rig + pad + room above + half the pulley fit under the top pulley.
func clashHeight(h lift.Hoist) (Clash, bool) {
	sizes := []size{length(h.Travel, 1000, "travel_m"), length(h.Site.LoadHeight, mostLoad, "site.load_height_m"), rig(h), length(h.Site.PadDepth, mostPad, "site.pad_depth_m"),
		length(h.Holds.RoomAbove, mostRoom, "holds.room_above_m"), headPulley(h), length(h.Structure.HeadHeight, 1000, "structure.head_height_m")}
	return tried("geometry_height", "travel_m", sizes, func(at []float64) float64 {
		sum := 0.0
		for _, x := range at[:6] {
			sum += x
		}
		return sum - at[6]
	})
}

// clashPosts: own posts reach to the top of the top pulley.
func clashPosts(h lift.Hoist) (Clash, bool) {
	if h.Structure.RestsOn != lift.RestsOnOwnPostsOnGround {
		return Clash{}, false
	}
	shortest := size{reason.Ends{Least: 0, Most: mostPost}, "structure.posts"}
	for i, p := range h.Structure.Posts {
		s := length(p.Height, mostPost, "structure.posts[0].height_m")
		lean := math.Cos(float64(p.Lean.Or(0)))
		s.ends = reason.Ends{Least: s.ends.Least * lean, Most: s.ends.Most * lean}
		if i == 0 || s.ends.Least < shortest.ends.Least {
			shortest = s
		}
	}
	return tried("geometry_posts", "structure.posts[0].height_m", []size{length(h.Structure.HeadHeight, 1000, "structure.head_height_m"), headPulley(h), shortest},
		func(at []float64) float64 { return at[0] + at[1] - at[2] })
}

// clashRope: with the mass on its pad the rope reaches from its far end to the drum, with the turns that stay on and half a
// turn round the pulley.
func clashRope(h lift.Hoist) (Clash, bool) {
	n, k := float64(h.Reeving.RopeParts.Or(1)), h.Reeving.LeadSheaves.Or(1)
	wraps := float64(h.Drum.DeadWraps.Or(0))
	turn := math.Pi * float64(h.Drum.Diameter.Or(0)+h.Rope.Diameter.Or(0))
	lead := reason.Between(h.Structure.LeadAngle, 0, 1.2)
	sizes := []size{length(h.Structure.HeadHeight, 1000, "structure.head_height_m"), length(h.Site.LoadHeight, mostLoad, "site.load_height_m"), rig(h), length(h.Site.PadDepth, mostPad, "site.pad_depth_m"),
		length(h.Base.PullHeight, 20, "base.pull_height_m"), {lead, ""}, length(h.Rope.Length, 10000, "rope.length_m")}
	if !h.Structure.LeadAngle.Is {
		sizes[5].path = "structure.lead_line_angle_rad"
	}
	onGround := k > 0 && (h.Base.Where == lift.BaseOnGround || h.Base.Where == "")
	if !onGround {
		sizes[4], sizes[5] = size{}, size{}
	}
	return tried("geometry_rope", "rope.length_m", sizes, func(at []float64) float64 {
		need := n * math.Max(0, at[0]-at[1]-at[2]-at[3])
		if onGround {
			need += math.Max(0, at[0]-at[4])/math.Cos(at[5]) + 0.5*turn
		}
		return need + wraps*turn - at[6]
	})
}

// swayOutdoors is how far the wind of a day on which the hoist is used leans the rope, rad (our own judgement: 2.5°).
const swayOutdoors = 2.5 * math.Pi / 180

// reach is how far the mass sticks out from the line of the rope: 0.71 of its width, as it turns on the rope, a hand's
// breadth less half, and outdoors its sway (our own judgement).
func reach(width, travel float64, outdoors bool) float64 {
	r := 0.71*width + 0.05
	if outdoors {
		r += travel * math.Tan(swayOutdoors)
	}
	return r
}

// clashWidth: the mass passes between the posts of its own frame.
func clashWidth(h lift.Hoist) (Clash, bool) {
	b := h.Structure.Beam
	if h.Structure.RestsOn != lift.RestsOnOwnPostsOnGround || b.Support == lift.BeamCantilever || b.Kind == lift.MemberNone {
		return Clash{}, false
	}
	side := length(b.From, 25, "structure.beam.load_from_support_m")
	if !b.From.Is && b.Span.Is {
		side = size{reason.Between(unit.Of(b.Span.Val/2), 0, 0), ""} // the middle
	}
	post := size{}
	if len(h.Structure.Posts) > 0 {
		post = length(h.Structure.Posts[0].Width, 3, "structure.posts[0].width_m")
	}
	out := size{}
	if h.Site.Outdoors != unit.No {
		out = size{reason.Ends{Least: 1, Most: 1}, ""}
		if h.Site.Outdoors == "" {
			out = size{reason.Ends{Least: 0, Most: 1}, "site.outdoors"}
		}
	}
	return tried("geometry_width", "site.load_width_m", []size{length(h.Site.LoadWidth, mostLoad, "site.load_width_m"), side, post, out},
		func(at []float64) float64 {
			return reach(at[0], float64(h.Travel.Or(0)), at[3] > 0) - (at[1] - at[2]/2)
		})
}

// clashDrive: a drive on the ground under one pulley stands beside the mass.
func clashDrive(h lift.Hoist) (Clash, bool) {
	if h.Base.Where != lift.BaseOnGround && h.Base.Where != "" || h.Reeving.LeadSheaves.Or(0) != 1 {
		return Clash{}, false
	}
	lead := size{reason.Between(h.Structure.LeadAngle, 0, 1.2), ""}
	if !h.Structure.LeadAngle.Is {
		lead.path = "structure.lead_line_angle_rad"
	}
	return tried("geometry_drive", "structure.lead_line_angle_rad",
		[]size{length(h.Structure.HeadHeight, 1000, "structure.head_height_m"), length(h.Base.PullHeight, 20, "base.pull_height_m"), lead, length(h.Site.LoadWidth, mostLoad, "site.load_width_m"), length(h.Base.Width, 20, "base.width_m")},
		func(at []float64) float64 {
			return reach(at[3], float64(h.Travel.Or(0)), h.Site.Outdoors != unit.No) + at[4]/2 - (at[0]-at[1])*math.Tan(at[2])
		})
}

// geometry puts the clashes in words.
func geometry(c Case) []reason.Reason {
	var out []reason.Reason
	for _, k := range Clashes(c.Hoist) {
		text, open, mend := clashWords(k)
		r := reason.Reason{ID: k.ID, Word: k.Word, Path: k.Path, Say: text, Mend: say.That("%s", mend), Clears: answerOr(k.Word), Source: source.Derivation.At("geometry of the drawing")}
		if k.Word == reason.NotKnown {
			r.Say = say.That("%s", open)
		}
		out = append(out, r)
	}
	return out
}

func clashWords(k Clash) (wrong say.Sentence, open, mend string) {
	by := say.Taped(k.By).Up()
	switch k.ID {
	case "geometry_height":
		return say.That("The mass does not fit under the pulley: there is %s too little height.", by), "Whether the mass fits under the pulley is not known.", "Use less travel, or a flatter mass."
	case "geometry_posts":
		return say.That("The pulley would be above its posts: they are %s too short.", by), "Whether the posts reach up to the pulley is not known.", "Use longer posts, or hang the pulley lower."
	case "geometry_rope":
		return say.That("The rope is %s too short.", say.Length(k.By).Up()), "Whether the rope is long enough is not known.", "Use a longer rope."
	case "geometry_width":
		return say.That("The mass does not pass between the posts: on one side there is %s too little room.", by), "Whether the mass passes between the posts is not known.", "Use a narrower mass, or posts further apart."
	}
	return say.That("The drive is where the mass comes down: move it %s further out.", by), "Whether the drive is clear of the mass is not known.", "Move the drive further out."
}
