package weather

import (
	"errors"
	"math"
	"slices"
	"strings"
	"testing"

	"duskweight/internal/model/sun"
	"duskweight/internal/model/unit"
)

// skyOf is a year whose light is k times that outside the air, with half of it diffuse and air of t °C, at 40° north.
func skyOf(k, t float64) ([columns][]float64, *sun.Geometry) {
	g := sun.NewGeometry(unit.Angle(40*math.Pi/180), 0, 0)
	var h [columns][]float64
	for _, c := range []int{ghi, dhi, temp} {
		h[c] = make([]float64, sun.YearHours)
	}
	for i := range h[ghi] {
		h[ghi][i], h[dhi][i], h[temp][i] = k*g.Extra[i], k*g.Extra[i]/2, t
	}
	return h, g
}

// warns reports whether a note with these words is there, and whether it is a warning.
func warns(rep *Report, words string) (there, warning bool) {
	for _, n := range rep.Notes {
		if strings.Contains(n.Say.String(), words) {
			return true, n.Warning
		}
	}
	return false, false
}

// A year under a tenth or over 95 hundredths of the light outside the air is refused, one under 22 or over 80 hundredths is
// asked about: each border has a year on either side.
func TestBrightAndDarkYears(t *testing.T) {
	for _, c := range []struct {
		k               float64
		refused, asking bool
	}{{0, true, false}, {0.099, true, false}, {0.101, false, true}, {0.219, false, true}, {0.221, false, false}, {0.799, false, false}, {0.801, false, true}, {0.949, false, true}, {0.951, true, false}} {
		h, g := skyOf(c.k, 10)
		var rep Report
		err := refuseSky(h, g, &rep)
		if _, asking := warns(&rep, "unusual"); (err != nil) != c.refused || asking != c.asking {
			t.Errorf("%v of the light outside the air: %v, asked about %v", c.k, err, asking)
		}
		if err != nil && c.k > 0.5 && !strings.Contains(err.Error(), unit.Whole(c.k*sumHours(g.Extra)/1000)+unit.Space+"kWh/m² of sun") {
			t.Errorf("the sum of the year is not told: %v", err)
		}
	}
}

func sumHours(v []float64) (sum float64) {
	for _, x := range v {
		sum += x
	}
	return sum
}

// Light while the sun is down: from a fiftieth of all light on it is asked about, from a fifth on refused.
func TestLightAtNight(t *testing.T) {
	for _, c := range []struct {
		share           float64
		asking, refused bool
	}{{0.0199, false, false}, {0.0201, true, false}, {0.199, true, false}, {0.201, false, true}} {
		h, g := skyOf(0.5, 10)
		day, n := sumHours(h[ghi]), 0
		for _, x := range g.Extra {
			if x == 0 {
				n++
			}
		}
		for i, x := range g.Extra { // share = night/(day + night)
			if x == 0 {
				h[ghi][i] = day * c.share / (1 - c.share) / float64(n)
			}
		}
		var rep Report
		err := refuseSky(h, g, &rep)
		if _, asking := warns(&rep, "while the sun is down"); (err != nil) != c.refused || asking != c.asking {
			t.Errorf("%v of the light by night: %v, asked about %v", c.share, err, asking)
		}
	}
}

// What is counted in a year, and from which count on it warns: more than 50 hours over 1.1 times the light outside the air
// and 10 W/m²; sums and means as they are.
func TestJudgeCounts(t *testing.T) {
	for _, n := range []int{0, 50, 51} {
		h, g := skyOf(0.5, 12)
		over := 0
		for i := range h[ghi] {
			if over < n && g.Extra[i] > 100 {
				h[ghi][i] = 1.1*g.Extra[i] + 10.1
				over++
			} else if g.Extra[i] > 100 && i%2 == 0 {
				h[ghi][i] = 1.1*g.Extra[i] + 9.9
			}
		}
		var rep Report
		judge(&h, g, &rep)
		there, warning := warns(&rep, "1.1 times the light outside the air")
		if rep.AboveSky != n || there != (n > 0) || warning != (n > 50) {
			t.Errorf("%d hours over the sky: counted %d, told %v, warned %v", n, rep.AboveSky, there, warning)
		}
		if math.Abs(float64(rep.GHI)-3600*sumHours(h[ghi])) > 1 || math.Abs(float64(rep.DHI)-3600*sumHours(h[dhi])) > 1 || math.Abs(float64(rep.TMean)-12) > 1e-9 {
			t.Errorf("sums %v and %v J/m², mean %v °C", rep.GHI, rep.DHI, rep.TMean)
		}
	}
}

// Global less direct less diffuse, 19.9 and 20.1 W/m² apart in every hour with direct light: their root mean square is that
// number, and over 20 it warns. Hours with 200 W/m² direct or less do not count.
func TestClosureAtItsBorder(t *testing.T) {
	for apart, want := range map[float64]bool{19.9: false, 20.1: true} {
		h, g := skyOf(0.5, 10)
		h[dni] = make([]float64, sun.YearHours)
		for i := range h[ghi] {
			h[dni][i], h[dhi][i] = 200, 500 // does not close at all, and must not count
			if g.Up[i] > 0 && i%3 == 0 {
				h[dni][i] = 201
				h[ghi][i] = 201*g.Up[i]*g.Lit[i] + 50 + apart
				h[dhi][i] = 50
			}
		}
		rep := Report{Global: "file", Diffuse: "file"}
		closure(&h, g, &rep)
		if got, _ := warns(&rep, "root mean square"); got != want || math.Abs(float64(rep.Closure.Val)-apart) > 1e-6 {
			t.Errorf("%v apart: %v, warned %v", apart, rep.Closure.Val, got)
		}
		for _, rep := range []Report{{Global: "direct", Diffuse: "file"}, {Global: "file", Diffuse: "direct"}} {
			if closure(&h, g, &rep); rep.Closure.Is {
				t.Errorf("%+v: closes with what was made from it", rep)
			}
		}
	}
}

// A sky of the other half of the Earth is told from 20° of latitude on.
func TestOtherHalfOfTheEarth(t *testing.T) {
	for degrees, want := range map[float64]bool{19.9: false, 20.1: true, -20.1: true, -19.9: false, 60: true} {
		g := sun.NewGeometry(unit.Angle(degrees*math.Pi/180), 0, 0)
		other := sun.NewGeometry(unit.Angle(-degrees*math.Pi/180), 0, 0)
		var h [columns][]float64
		h[ghi] = make([]float64, sun.YearHours)
		for i := range h[ghi] {
			h[ghi][i] = 0.5 * other.Extra[i]
		}
		var rep Report
		halves(&h, g, &rep)
		if got, _ := warns(&rep, "sign of the latitude"); got != want {
			t.Errorf("the sky of %v° under %v°: told %v", -degrees, degrees, got)
		}
		for i := range h[ghi] {
			h[ghi][i] = 0.5 * g.Extra[i]
		}
		rep = Report{}
		if halves(&h, g, &rep); len(rep.Notes) > 0 {
			t.Errorf("its own sky at %v°: %v", degrees, rep.Notes)
		}
		for i := range h[ghi] { // as near to the one as to the other: rain may do that
			h[ghi][i] = 0.25 * (g.Extra[i] + other.Extra[i])
		}
		rep = Report{}
		if halves(&h, g, &rep); len(rep.Notes) > 0 {
			t.Errorf("a sky without seasons at %v°: %v", degrees, rep.Notes)
		}
	}
}

// Light below nought is counted and set to nought; more than 100 such values warn. Diffuse over global light is cut; more
// than 100 such hours warn, more than 1,000 look like columns changed over; a watt more is rounding.
func TestClipAndCut(t *testing.T) {
	for _, n := range []int{0, 100, 101} {
		h, _ := skyOf(0.5, -3)
		for i := range n {
			h[ghi][i] = -2
		}
		var rep Report
		clip(&h, &rep)
		there, warning := warns(&rep, "below zero")
		if rep.Negative != n || there != (n > 0) || warning != (n > 100) || n > 0 && h[ghi][0] != 0 || h[temp][0] != -3 {
			t.Errorf("%d below nought: %d, told %v, warned %v", n, rep.Negative, there, warning)
		}
	}
	for _, n := range []int{0, 100, 101, 1000, 1001} {
		h, g := skyOf(0.5, 10)
		for i := range h[dhi] {
			h[dhi][i] = h[ghi][i] + 0.9
			if i < n {
				h[dhi][i] = h[ghi][i] + 1.1
			}
		}
		var rep Report
		var y year
		y.light(&h, g, &rep)
		_, warning := warns(&rep, "more diffuse than global light")
		changed, _ := warns(&rep, "changed over")
		if rep.DiffuseOver != n || warning != (n > 100) || changed != (n > 1000) || h[dhi][0] != h[ghi][0] {
			t.Errorf("%d hours over: %d, warned %v, changed over %v", n, rep.DiffuseOver, warning, changed)
		}
	}
}

// What a file lacks is worked out: global from direct times the height of the sun and diffuse, diffuse the other way round.
func TestThirdKindOfLight(t *testing.T) {
	full, g := skyOf(0.5, 10)
	direct := make([]float64, sun.YearHours)
	for i := range direct {
		if g.Up[i] > 0 && g.Lit[i] > 0 {
			direct[i] = full[dhi][i] / (g.Up[i] * g.Lit[i]) // the other half of the global light
		}
	}
	for lacks, want := range map[int][]float64{ghi: full[ghi], dhi: full[dhi]} {
		h, _ := skyOf(0.5, 10)
		h[dni] = append([]float64(nil), direct...)
		h[lacks] = nil
		var rep Report
		var y year
		y.light(&h, g, &rep)
		for i := range want {
			if g.Up[i] > 0 && math.Abs(h[lacks][i]-want[i]) > 1e-9*(1+want[i]) {
				t.Fatalf("hour %d: %v, want %v", i, h[lacks][i], want[i])
			}
		}
		if rep.Global == "direct" != (lacks == ghi) || rep.Diffuse == "direct" != (lacks == dhi) {
			t.Errorf("told %q and %q", rep.Global, rep.Diffuse)
		}
	}
}

// A clock that the file gives is asked about over two and a half hours from that of its longitude: 15° are an hour. One that
// it does not give is the nearest whole hour of the longitude.
func TestClockAndLongitude(t *testing.T) {
	for _, c := range []struct {
		degrees, hours, off float64
		asked               bool
	}{{15, 1, 0, false}, {15, 3.49, 2.49, false}, {15, 3.51, 2.51, true}, {-75, -2.51, 2.49, false}, {-75, -7.51, -2.51, true}, {179, -12, 0.0667, false}, {-172.5, 14, 1.5, false}} {
		s := &sheet{longitude: unit.Of(unit.Angle(c.degrees * math.Pi / 180)), offset: unit.Of(unit.Duration(c.hours * 3600))}
		var rep Report
		o := s.clock(&rep)
		asked, _ := warns(&rep, "Is the time zone or the sign of the longitude wrong?")
		if o != c.hours*3600 || asked != c.asked || math.Abs(float64(rep.ZoneOff)/3600-c.off) > 0.001 {
			t.Errorf("%v° and UTC%+v: %v s, %v h off, asked %v", c.degrees, c.hours, o, float64(rep.ZoneOff)/3600, asked)
		}
	}
	for degrees, want := range map[float64]float64{0: 0, 7.4: 0, 7.6: 1, -75: -5, 179: 12, -52.4: -3, -52.6: -4} {
		s := &sheet{longitude: unit.Of(unit.Angle(degrees * math.Pi / 180))}
		var rep Report
		if o := s.clock(&rep); o != want*3600 {
			t.Errorf("%v° gives UTC%+v, want %+v", degrees, o/3600, want)
		}
	}
}

// No sky gives over 1,800 W/m² or under −50: such a value is refused by its line and column, each border on either side.
func TestBeyondEverySky(t *testing.T) {
	m := makeYear(harbour, 12, 1)
	text := m.plain("time,GHI,DHI,temperature\n", ",", 60, iso(0), false)
	l := strings.Split(text, "\n")
	for value, refused := range map[string]bool{"1800": false, "1801": true, "-50": false, "-51": true} {
		f := strings.Split(l[13], ",")
		f[1] = value
		l[13] = strings.Join(f, ",")
		_, _, err := Read(strings.NewReader(strings.Join(l, "\n")), here, nil)
		var r *Refused
		if errors.As(err, &r) != refused {
			t.Errorf("%s W/m²: %v", value, err)
		} else if refused && (r.Faults[0].Line != 14 || r.Faults[0].Column != 2) {
			t.Errorf("%s W/m²: %+v", value, r.Faults[0])
		}
	}
}

// What is asked about the air is asked in the reader's degrees. By hand: 40 °C are 104 °F.
func TestNotesInUnits(t *testing.T) {
	h, g := skyOf(0.5, 40)
	var rep Report
	new(sheet).doubtAir(h[temp], g, &rep)
	for sys, want := range []string{"The air has 40 °C in", "The air has 104 °F in"} {
		if !slices.ContainsFunc(rep.Notes, func(n Note) bool {
			return strings.Contains(strings.ReplaceAll(n.Say.In(unit.System(sys)), unit.Space, " "), want)
		}) {
			t.Errorf("%q is not said in %v", want, rep.Notes)
		}
	}
}
