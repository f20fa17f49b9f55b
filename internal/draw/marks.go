package draw

import (
	"math"
	"slices"
	"strings"

	"duskweight/internal/model/reason"
)

// Mark is a place of the side view at which the judge refuses the hoist, and what the judge says of it.
type Mark struct {
	At  Point
	Say string
}

// places are where in the drawing a reason is marked, by its id: what does not fit into itself or the room, a stop that
// does not stop the mass below the pulley, where the mass may fall on somebody, and a drive that does not hold or lift it. A reason that is not here has no place.
var places = map[string]func(*builder, reason.Reason) (Point, bool){
	"geometry_height": (*builder).underPulley,
	"geometry_posts":  (*builder).topOfPosts,
	"geometry_rope":   (*builder).onRope,
	"geometry_width":  (*builder).besideMass,
	"geometry_drive":  (*builder).atDrive,
	"contradiction":   (*builder).atFrame,
	"stops":           (*builder).atHead,
	"overhoist":       (*builder).atHead,
	"keep_out":        (*builder).underMass,
	"floor_below":     (*builder).underMass,
	"people_below":    (*builder).underMass,
	"people_near":     (*builder).underMass,
	"overspeed":       (*builder).inFallZone,
	"free_drum":       (*builder).inFallZone,

	"holds_count":       (*builder).atDrive,
	"holds_drum":        (*builder).atDrive,
	"holds_independent": (*builder).atDrive,
	"holds_auto":        (*builder).atDrive,
	"holds":             (*builder).atDrive,
	"brake_catch":       (*builder).atDrive,
	"lift_stalls":       (*builder).atDrive,
	"never_lifts":       (*builder).atDrive,
	"stays_up":          (*builder).atDrive,
	"races":             (*builder).atDrive,
	"motor_hot":         (*builder).atDrive,
	"bracing":           (*builder).topOfPosts,
}

// marks are the places of the judge's reasons, the worst first, each sentence once. Only what is refused is marked: what is
// not known stands in its list.
func (b *builder) marks() {
	for _, r := range b.p.Because {
		of := places[r.ID]
		if of == nil || r.Word != reason.No {
			continue
		}
		at, there := of(b, r)
		m := Mark{at, r.Say.In(b.p.Units)}
		if there && !slices.ContainsFunc(b.s.Marks, func(o Mark) bool { return o.Say == m.Say }) {
			b.s.Marks = append(b.s.Marks, m)
		}
	}
}

// fallLine is the x of the rope over the mass.
func (b *builder) fallLine() float64 { return (b.s.Mass.X0 + b.s.Mass.X1) / 2 }

func (b *builder) underPulley(reason.Reason) (Point, bool) {
	return Point{b.fallLine(), (b.s.Mass.Y1 + b.s.Wheels[b.s.Head].C.Y) / 2}, true
}

func (b *builder) topOfPosts(reason.Reason) (Point, bool) {
	if len(b.s.Posts) == 0 {
		return Point{}, false
	}
	p := b.s.Posts[len(b.s.Posts)-1]
	return Point{(p.X0 + p.X1) / 2, p.Y1}, true
}

func (b *builder) onRope(reason.Reason) (Point, bool) {
	if len(b.s.Legs) == 0 {
		return Point{}, false
	}
	l := b.s.Legs[0]
	return Point{(l.From.X + l.To.X) / 2, (l.From.Y + l.To.Y) / 2}, true
}

// besideMass is the side of the mass that is nearer to a post.
func (b *builder) besideMass(reason.Reason) (Point, bool) {
	m := b.s.Mass
	at := Point{m.X0, (m.Y0 + m.Y1) / 2}
	if len(b.s.Posts) > 1 && b.s.Posts[1].X0-m.X1 < m.X0-b.s.Posts[0].X1 {
		at.X = m.X1
	}
	return at, true
}

func (b *builder) atDrive(reason.Reason) (Point, bool) { return b.s.Wheels[0].C, true }

func (b *builder) atHead(reason.Reason) (Point, bool) { return b.s.Wheels[b.s.Head].C, true }

// atFrame is the beam, for a contradiction about the frame's height.
func (b *builder) atFrame(r reason.Reason) (Point, bool) {
	return Point{(b.s.Beam.X0 + b.s.Beam.X1) / 2, b.s.Beam.Y0}, strings.HasSuffix(r.Path, "frame_height_m")
}

func (b *builder) underMass(reason.Reason) (Point, bool) { return Point{b.fallLine(), 0}, true }

// inFallZone is the ground under the mass, for a mass that may fall where the fall zone is not closed; else it is the drum,
// which nothing catches.
func (b *builder) inFallZone(r reason.Reason) (Point, bool) {
	if !strings.Contains(r.Path, "site.") {
		return b.atDrive(r)
	}
	return Point{b.fallLine(), 0}, true
}

// markRing is the radius of the ring of a mark.
const markRing = 7.0

// markPoints are the places of the marks on the paper: two at one place stand side by side.
func (c *sheet) markPoints() (out []Point) {
	for _, m := range c.s.Marks {
		x, y := c.f.p(m.At)
		for slices.ContainsFunc(out, func(p Point) bool { return math.Abs(p.X-x) < 3*markRing && math.Abs(p.Y-y) < 2*markRing }) {
			x += 3.4 * markRing
		}
		out = append(out, Point{x, y})
	}
	return out
}

// keepMarks keeps the places of the marks free of letters; they are drawn last, over everything.
func (c *sheet) keepMarks() {
	for _, p := range c.markPoints() {
		c.markRect(p.X-markRing, p.Y-markRing, p.X+markRing, p.Y+markRing)
	}
}

// marksPart draws the marks: a cross in a ring, with the number under which the notes say what is wrong. number gives the number
// of the i-th mark, "" for none.
func (c *sheet) marksPart(number func(i int) string) {
	for i, p := range c.markPoints() {
		c.circle(p.X, p.Y, markRing, attrs{"class", "mark"}, stroke(failColour, wide+0.6, ""))
		for _, s := range []float64{-1, 1} {
			c.line(p.X-3, p.Y-3*s, p.X+3, p.Y+3*s, stroke(failColour, wide+0.6, ""))
		}
		c.text(p.X+markRing+1, p.Y+4, number(i), 11, "", 0, attrs{"fill", failText}, attrs{"class", "bad"})
	}
}
