package draw

import (
	"bufio"
	"bytes"
	"encoding/xml"
	"fmt"
	"io"
	"math"
	"math/rand"
	"reflect"
	"strings"
	"testing"

	"duskweight/internal/model/lift"
	"duskweight/internal/model/lift/path"
	"duskweight/internal/model/unit"
	"duskweight/internal/say"
)

func of(mm float64) unit.Known[unit.Length] { return unit.Of(unit.Length(mm / 1000)) }

// hoist is a mass on one rope, over the top pulley and round a foot pulley up through a hole to the drum.
func hoist() lift.Hoist {
	return lift.Hoist{
		Mass:   []lift.Piece{{Mass: unit.Of(unit.Mass(240))}},
		Travel: of(3800),
		Rope:   lift.Rope{Diameter: of(8)},
		Reeving: lift.Reeving{RopeParts: unit.Of(unit.Count(1)), LeadSheaves: unit.Of(unit.Count(2)),
			Sheaves: []lift.Sheave{{Diameter: of(90), OnBase: "yes"}, {Diameter: of(120)}}},
		Drum: lift.Drum{Diameter: of(80), Flange: of(140)},
		Structure: lift.Structure{HeadHeight: of(5200), Beam: lift.Beam{Depth: of(160), Span: of(2600)},
			Posts: []lift.Post{{Width: of(100)}, {Width: of(100)}}, RestsOn: "own_posts_on_ground"},
		Base:  lift.Base{Mass: unit.Of(unit.Mass(500)), Width: of(700)},
		Holds: lift.Holds{RoomAbove: of(250)},
	}
}

func near(t *testing.T, what string, got, want, tol float64) {
	t.Helper()
	if math.IsNaN(got) || math.Abs(got-want) > tol {
		t.Errorf("%s = %v, want %v within %v", what, got, want, tol)
	}
}

// checkRope holds the rope against what a rope does: each straight piece touches the wheel that it leaves and the wheel
// that it meets at right angles to the radius, and where it touches it runs the way the wheel turns.
func checkRope(t *testing.T, s Scene) {
	t.Helper()
	for i, l := range s.Legs {
		dx, dy := l.To.X-l.From.X, l.To.Y-l.From.Y
		d := math.Hypot(dx, dy)
		if d < 1e-9 {
			continue
		}
		ends := []struct {
			w Wheel
			p Point
		}{{s.Wheels[i], l.From}}
		if i+1 < len(s.Wheels) {
			ends = append(ends, struct {
				w Wheel
				p Point
			}{s.Wheels[i+1], l.To})
		}
		for _, e := range ends {
			rx, ry := e.p.X-e.w.C.X, e.p.Y-e.w.C.Y
			near(t, e.w.Name+": distance from the centre", math.Hypot(rx, ry), e.w.R, 1e-6*(1+e.w.R))
			near(t, e.w.Name+": right angle", (rx*dx+ry*dy)/(d*e.w.R), 0, 1e-6)
			if turn := rx*dy - ry*dx; turn*e.w.Turn < 0 {
				t.Errorf("%s: the rope runs against the turn of the wheel", e.w.Name)
			}
		}
	}
}

func TestRopeIsTangent(t *testing.T) {
	for _, on := range []string{"", "yes", "no"} {
		for lead := 0; lead <= 5; lead++ {
			for parts := 1; parts <= 7; parts++ {
				for _, angle := range []float64{-1, 0, 0.3, 1} {
					h := hoist()
					h.Reeving.LeadSheaves, h.Reeving.RopeParts = unit.Of(unit.Count(lead)), unit.Of(unit.Count(parts))
					h.Reeving.Sheaves[0].OnBase, h.Reeving.Sheaves[1].OnBase = unit.Answer(on), "yes"
					if angle >= 0 {
						h.Structure.LeadAngle = unit.Of(unit.Angle(angle))
					}
					s := Make(Plan{Hoist: h})
					checkRope(t, s)
					if len(s.Wheels) != lead+parts || len(s.Legs) != len(s.Wheels) {
						t.Fatalf("%d pulleys before and %d ropes at the mass: %d wheels, %d pieces", lead, parts, len(s.Wheels), len(s.Legs))
					}
					// Every rope at the mass hangs straight down from the head on.
					for _, l := range s.Legs[lead:] {
						near(t, "rope at the mass hangs straight", l.To.X, l.From.X, 1e-6)
					}
				}
			}
		}
	}
}

// Two circles of radius 3 and 2, 13 apart, passed on opposite sides: the inner tangent is √(13² − 5²) = 12 long; on the
// same side √(13² − 1²).
func TestTangent(t *testing.T) {
	a, b := Wheel{R: 3, Turn: against}, Wheel{R: 2, C: Point{13, 0}, Turn: with}
	l := Tangent(a, b)
	near(t, "inner tangent", math.Hypot(l.To.X-l.From.X, l.To.Y-l.From.Y), 12, 1e-12)
	b.Turn = against
	l = Tangent(a, b)
	near(t, "outer tangent", math.Hypot(l.To.X-l.From.X, l.To.Y-l.From.Y), math.Sqrt(168), 1e-12)
	b.C.X = 0.5
	if l := Tangent(a, b); l.From != a.C || l.To != b.C {
		t.Error("one wheel inside the other has no tangent")
	}
}

// The drum moves the rope line: hole = drum axis + (D + d)/2, foot pulley = hole + (D_f + d)/2. D = 80, d = 8, D_f = 90:
// 44 and 49 mm. A drum of 200 makes it 104 and leaves the second.
func TestChainFollowsTheDrum(t *testing.T) {
	for _, c := range []struct{ drum, first float64 }{{80, 44}, {200, 104}} {
		h := hoist()
		h.Drum.Diameter = of(c.drum)
		s := Make(Plan{Hoist: h})
		if len(s.Chain) != 3 || s.Chain[1].Name != "hole" || s.Chain[2].Name != "foot pulley" {
			t.Fatalf("chain %v", s.Chain)
		}
		near(t, "drum – hole", s.Chain[1].X-s.Chain[0].X, c.first, 1e-9)
		near(t, "hole – foot pulley", s.Chain[2].X-s.Chain[1].X, 49, 1e-9)
		near(t, "rope goes straight down through the hole", s.Legs[0].From.X, s.Hole.X, 1e-9)
		near(t, "and on to the pulley", s.Legs[0].To.X, s.Hole.X, 1e-9)
		if want := say.Length(unit.Length(c.first / 1000)).String(); s.ChainDims[0].Text != want {
			t.Errorf("written %q, want %q", s.ChainDims[0].Text, want)
		}
	}
	h := hoist()
	h.Reeving.LeadSheaves = unit.Of(unit.Count(1))
	s := Make(Plan{Hoist: h})
	near(t, "drum – rope", s.Chain[1].X-s.Chain[0].X, 44, 1e-9)
}

// What is written is what is drawn.
func TestDimensions(t *testing.T) {
	s := Make(Plan{Hoist: hoist()})
	want := map[string]float64{"travel 3.8\u00a0m": 3800, "room 250\u00a0mm": 250, "top pulley 5.2\u00a0m": 5200, "span 2.6\u00a0m": 2600}
	for _, d := range s.Dims {
		mm, ok := want[d.Text]
		if !ok {
			t.Errorf("not expected: %q", d.Text)
			continue
		}
		delete(want, d.Text)
		got := d.To.X - d.From.X
		if d.Upright {
			got = d.To.Y - d.From.Y
		}
		near(t, d.Text, got, mm, 1e-6)
		if d.Off || !d.Known {
			t.Errorf("%q is marked off or not known", d.Text)
		}
	}
	if len(want) > 0 {
		t.Errorf("not drawn: %v", want)
	}
	near(t, "head", s.Wheels[s.Head].C.Y, 5200, 1e-9)
	near(t, "the mass hangs under its rope", (s.Mass.X0+s.Mass.X1)/2, s.Legs[s.Head].To.X, 1e-6)
}

func TestTravelThatDoesNotFit(t *testing.T) {
	h := hoist()
	h.Travel = of(5100)
	s := Make(Plan{Hoist: h})
	off := 0
	for _, d := range s.Dims {
		if d.Off {
			off++
			if !strings.Contains(d.Text, "5.2\u00a0m") {
				t.Errorf("the user's own number is not written: %q", d.Text)
			}
		}
	}
	if off != 1 || len(s.Notes) != 1 {
		t.Errorf("%d dimensions marked, notes %v", off, s.Notes)
	}
	if low := s.Mass.Y0 - s.Travel; low < -1e-6 {
		t.Errorf("the mass is drawn %v mm under the ground", low)
	}
}

// A number that does not match the drawing is underlined, as drafting has it: from end to end of its letters, just below.
func TestUnderlined(t *testing.T) {
	var out strings.Builder
	w := bufio.NewWriter(&out)
	c := &sheet{pen: &pen{w}, w: 400}
	d := Dim{Text: "5.2 m", Short: "5.2 m", Off: true, Known: true, From: Point{100, 100}, To: Point{300, 100}}
	c.level(d, 120, frame{scale: 1})
	_ = w.Flush()
	long := TextWidth(d.Text, letter)
	want := fmt.Sprintf(`<line x1="%s" y1="118" x2="%s" y2="118"`, num(200-long/2), num(200+long/2))
	if !strings.Contains(out.String(), want) {
		t.Errorf("no %s in %s", want, out.String())
	}
}

func TestNothingKnown(t *testing.T) {
	s := Make(Plan{})
	for _, d := range append(s.Dims, s.ChainDims...) {
		if d.Known || !strings.HasSuffix(d.Text, "?") {
			t.Errorf("a number for what is not known: %+v", d)
		}
	}
	for _, l := range s.Labels {
		if !strings.Contains(l.Text, "?") {
			t.Errorf("a number for what is not known: %q", l.Text)
		}
	}
	checkRope(t, s)
}

func TestFailingIsSaidInWords(t *testing.T) {
	var b bytes.Buffer
	s := Make(Plan{Hoist: hoist(), Checks: []path.Check{{ID: "hanger", Word: path.GivesWay}, {ID: "beam", Word: path.Holds}, {ID: "base_uplift", Word: path.GivesWay}}})
	if err := SVG(s, &b); err != nil {
		t.Fatal(err)
	}
	if want := "✕ Gives way: top pulley or its hook, base."; !strings.Contains(b.String(), want) {
		t.Errorf("no %q", want)
	}
	if reflect.DeepEqual(s.Fails, Make(Plan{}).Fails) {
		t.Error("nothing fails")
	}
}

// A long travel is cut: the order of heights stays, both ends are to one scale, and the whole fits the paper.
func TestCut(t *testing.T) {
	h := hoist()
	h.Travel, h.Structure.HeadHeight = of(40000), unit.Known[unit.Length]{}
	s := Make(Plan{Hoist: h})
	f := s.fit(viewLeft, viewTop, viewW, viewH)
	if f.cutTo <= f.cutFrom {
		t.Fatal("not cut")
	}
	last := math.Inf(1)
	for y := 0.0; y < 42000; y += 10 {
		if p := f.y(y); p > last {
			t.Fatalf("height %v is drawn under the one before", y)
		} else {
			last = p
		}
	}
	near(t, "scale below", f.y(0)-f.y(100), 100*f.scale, 1e-9)
	near(t, "scale above", f.y(s.Mass.Y1-100)-f.y(s.Mass.Y1), 100*f.scale, 1e-9)
	if f.y(s.bounds().Y1) < viewTop-1 {
		t.Error("runs out of the paper")
	}
}

// sound checks a picture: well-formed, named, and nothing that the policy blocks or that is not a number.
func sound(t *testing.T, svg string) {
	t.Helper()
	d := xml.NewDecoder(strings.NewReader(svg))
	named := false
	for {
		tok, err := d.Token()
		if err == io.EOF {
			break
		}
		if err != nil {
			t.Fatalf("not well-formed: %v", err)
		}
		e, ok := tok.(xml.StartElement)
		if !ok {
			continue
		}
		if n := e.Name.Local; n == "style" || n == "script" || n == "image" || n == "foreignObject" {
			t.Fatalf("a %s element", n)
		}
		named = named || e.Name.Local == "title"
		seen := map[string]bool{}
		for _, a := range e.Attr {
			n := a.Name.Local
			named = named || n == "aria-hidden"
			if n == "style" || n == "href" || strings.HasPrefix(n, "on") {
				t.Fatalf("attribute %s=%q", n, a.Value)
			}
			if seen[n] {
				t.Fatalf("attribute %s twice", n)
			}
			seen[n] = true
			if strings.Contains(a.Value, "NaN") || strings.Contains(a.Value, "Inf") || strings.Contains(a.Value, "%!") {
				t.Fatalf("attribute %s=%q", n, a.Value)
			}
		}
	}
	if !named {
		t.Fatal("a picture without a name")
	}
	if strings.Contains(svg, "NaN") || strings.Contains(svg, "+Inf") {
		t.Fatal("a text that is not a number")
	}
}

// fill puts random values within the range of any hoist into every field that takes part.
func fill(r *rand.Rand, h *lift.Hoist) {
	var walk func(v reflect.Value)
	walk = func(v reflect.Value) {
		switch v.Kind() {
		case reflect.Struct:
			if is := v.FieldByName("Is"); is.IsValid() && is.Kind() == reflect.Bool {
				if r.Intn(3) > 0 {
					is.SetBool(true)
					switch val := v.FieldByName("Val"); val.Kind() {
					case reflect.Int:
						val.SetInt(int64(r.Intn(13)))
					default:
						val.SetFloat(math.Pow(10, -6+10*r.Float64()))
					}
				}
				return
			}
			for i := range v.NumField() {
				walk(v.Field(i))
			}
		case reflect.Slice:
			n := r.Intn(4)
			v.Set(reflect.MakeSlice(v.Type(), n, n))
			for i := range n {
				walk(v.Index(i))
			}
		case reflect.String:
			v.SetString([]string{"", "yes", "no", "on_beam", "on_wall", "cantilever", "mass", "beam", "roof_truss", "<&\">"}[r.Intn(10)])
		}
	}
	walk(reflect.ValueOf(h).Elem())
}

func TestAnyHoist(t *testing.T) {
	r := rand.New(rand.NewSource(5))
	for range 500 {
		var h lift.Hoist
		fill(r, &h)
		p := Plan{Hoist: h, KeepOut: unit.Of(unit.Length(math.Pow(10, -2+5*r.Float64())))}
		for _, id := range []string{"rope", "hanger", "beam", "post", "container", "redirect_sheave", "base_uplift", "shaft"} {
			if r.Intn(2) == 0 {
				p.Checks = append(p.Checks, path.Check{ID: id, Word: path.GivesWay})
			}
		}
		s := Make(p)
		var b strings.Builder
		if err := SVG(s, &b); err != nil {
			t.Fatal(err)
		}
		sound(t, b.String())
		if b.Len() > 80_000 {
			t.Fatalf("%d bytes", b.Len())
		}
	}
}

// The labels of ordinary designs do not lie on one another.
func TestLabelsApart(t *testing.T) {
	for lead := 1; lead <= 3; lead++ {
		for parts := 1; parts <= 3; parts++ {
			h := hoist()
			h.Reeving.LeadSheaves, h.Reeving.RopeParts = unit.Of(unit.Count(lead)), unit.Of(unit.Count(parts))
			var b strings.Builder
			if err := SVG(Make(Plan{Hoist: h, KeepOut: unit.Of(unit.Length(3))}), &b); err != nil {
				t.Fatal(err)
			}
			texts := textBoxes(t, b.String())
			for i := range texts {
				for j := range i {
					if texts[i].meets(texts[j].box) {
						t.Errorf("%d pulleys, %d ropes: %q lies on %q", lead, parts, texts[i].text, texts[j].text)
					}
				}
			}
		}
	}
}

type textBox struct {
	box
	text string
	size float64
}

// textBoxes reads the texts of a picture back, with the paper each takes; turned by 90° or not at all.
func textBoxes(t *testing.T, svg string) []textBox {
	t.Helper()
	var out []textBox
	type text struct {
		X         float64 `xml:"x,attr"`
		Y         float64 `xml:"y,attr"`
		Size      float64 `xml:"font-size,attr"`
		Anchor    string  `xml:"text-anchor,attr"`
		Transform string  `xml:"transform,attr"`
		Text      string  `xml:",chardata"`
	}
	var doc struct {
		Texts []text `xml:"text"`
	}
	if err := xml.Unmarshal([]byte(svg), &doc); err != nil {
		t.Fatal(err)
	}
	for _, x := range doc.Texts {
		w := TextWidth(x.Text, x.Size)
		a := map[string]float64{"": 0, "start": 0, "middle": w / 2, "end": w}[x.Anchor]
		b := box{x.X - a, x.Y - 0.72*x.Size, x.X - a + w, x.Y + 0.1*x.Size}
		if x.Transform != "" {
			b = box{x.X - 0.72*x.Size, x.Y + a - w, x.X + 0.1*x.Size, x.Y + a}
		}
		out = append(out, textBox{b, x.Text, x.Size})
	}
	return out
}

// The drawing is labelled in the reader's units and nothing else changes: 3.8 m are 149.61 in, 12 ft and 5.61 in, that
// is 9.7 sixteenths over 5; 240 kg are 529 lb; 250 mm are 9.843 in, 13.5 sixteenths over 9.
func TestLabelsInFeet(t *testing.T) {
	metric, imperial := Make(Plan{Hoist: hoist()}), Make(Plan{Hoist: hoist(), Units: unit.Imperial})
	said := imperial.Desc
	for _, d := range imperial.Dims {
		said += " " + d.Text
	}
	for _, want := range []string{"A mass of 529\u00a0lb hangs", "travels 12′\u00a05-5/8″", "room 9-13/16″"} {
		if !strings.Contains(said, want) {
			t.Errorf("no %q in %q", want, said)
		}
	}
	if strings.Contains(said, "\u00a0m") || strings.Contains(said, "kg") {
		t.Errorf("metric: %q", said)
	}
	if metric.Travel != imperial.Travel || metric.Wheels[0] != imperial.Wheels[0] {
		t.Error("the labels change the drawing")
	}
}
