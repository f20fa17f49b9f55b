package draw

import (
	"math"
	"math/rand"
	"strings"
	"testing"

	"duskweight/internal/model/unit"
)

func TestAxis(t *testing.T) {
	x := axis{lo: 1, hi: 1000, a: 0, b: 300, log: true}
	near(t, "one decade", x.at(10), 100, 1e-9)
	near(t, "and back", x.value(200), 100, 1e-9)
	if d := x.decades(); len(d) != 4 || d[3] != 1000 {
		t.Errorf("decades %v", d)
	}
	if v := (axis{lo: 0, hi: 150, a: 0, b: 1}).ticks(4); len(v) != 4 || v[3] != 150 {
		t.Errorf("ticks %v", v)
	}
	for v, want := range map[float64]string{0: "0", 0.1: "0.1", 100000: "100\u00a0000", 2.5: "2.5"} {
		if tick(v) != want {
			t.Errorf("%v is written %q", v, tick(v))
		}
	}
}

// A design on the line of its own energy lies on that line: 100 kg at 3 m is 100·9.80665·3 J = 0.817 Wh.
func TestMassHeight(t *testing.T) {
	m := MassAgainstHeight{Mass: unit.Of(unit.Mass(100)), Height: unit.Of(unit.Length(3)),
		Lines: []Energies{{unit.Energy(100 * unit.G * 3), "your night", true}, {unit.Energy(110 * unit.G * 3), "too near to read", false}}}
	var b strings.Builder
	if err := MassHeight(m, &b); err != nil {
		t.Fatal(err)
	}
	sound(t, b.String())
	if !strings.Contains(b.String(), "0.817\u00a0Wh") || strings.Contains(b.String(), ">too near to read<") {
		t.Error(b.String())
	}
	r := rand.New(rand.NewSource(6))
	for range 300 {
		m := MassAgainstHeight{Mass: unit.Of(unit.Mass(math.Pow(10, -6+13*r.Float64()))), Height: unit.Of(unit.Length(math.Pow(10, -6+10*r.Float64())))}
		for range 4 {
			m.Lines = append(m.Lines, Energies{unit.Energy(math.Pow(10, -6+20*r.Float64())), "<x>", r.Intn(2) == 0})
		}
		b.Reset()
		if err := MassHeight(m, &b); err != nil {
			t.Fatal(err)
		}
		sound(t, b.String())
	}
}

func TestNights(t *testing.T) {
	state := make([]int8, 365)
	for i := range state {
		state[i] = Served
	}
	state[0], state[364], state[180] = Dark, PartlyServed, NotCounted
	var b strings.Builder
	if err := Nights(state, &b); err != nil {
		t.Fatal(err)
	}
	sound(t, b.String())
	for _, want := range []string{"362 of 364 nights are full.", ">30/31<", ">28/28<", ">29/29<"} {
		if !strings.Contains(b.String(), want) {
			t.Errorf("no %q", want)
		}
	}
	squares, _, _ := strings.Cut(b.String(), `" fill="`+loadColour+`"/>`) // one path holds a square for each night with light
	if n := strings.Count(squares[strings.LastIndex(squares, `d="`):], "z"); n != 362 {
		t.Errorf("%d full nights drawn", n)
	}
	for _, short := range [][]int8{nil, {9}, make([]int8, 400)} {
		b.Reset()
		if err := Nights(short, &b); err != nil {
			t.Fatal(err)
		}
		sound(t, b.String())
	}
}

func TestDay(t *testing.T) {
	sun, load, stored := make([]float64, 24), make([]float64, 24), make([]float64, 24)
	sun[12], load[20], stored[15] = 150, 20, 36000
	for _, d := range []TypicalDay{
		{Name: "A usual day in March", Sun: sun, Load: load, Stored: stored},
		{Name: "mass", Sun: sun, Load: load, Stored: stored, Look: "mass"},
		{Name: "no store", Sun: sun, Load: load}, {},
		{Name: "broken", Sun: []float64{math.NaN(), math.Inf(1), -5, 1e300}, Load: []float64{1e-300}, Stored: []float64{math.NaN()}},
	} {
		var b strings.Builder
		if err := Day(d, &b); err != nil {
			t.Fatal(err)
		}
		sound(t, b.String())
	}
	got := TypicalDay{Sun: sun, Load: load, Stored: stored}.reading()
	if want := "The sun gives up to 150\u00a0W and 150\u00a0Wh in the day; up to 20\u00a0W and 20\u00a0Wh are needed. At most 10\u00a0Wh are stored."; got != want {
		t.Errorf("%q, want %q", got, want)
	}
}

func TestTextWidth(t *testing.T) {
	near(t, "letters", TextWidth("Wh", 10), (944+556)/100.0*1.14, 1e-9)
	if s := shorten("a very long name of a thing", 11, 60); TextWidth(s, 11) > 60 || !strings.HasSuffix(s, "…") {
		t.Errorf("%q", s)
	}
}

// Any hours make a sound picture; rows that have no room are drawn together; the reading names the hour with the most.
func TestBurns(t *testing.T) {
	var b strings.Builder
	d := Burns{Name: "21 December"}
	for i := range 40 {
		one := Burn{Name: strings.Repeat("Lamp ", 20)}
		one.Hours[20] = float64(i)
		d.Each = append(d.Each, one)
	}
	d.Each[0].Hours[3], d.Each[1].Hours[4] = math.NaN(), math.Inf(1)
	if err := d.Draw(&b); err != nil {
		t.Fatal(err)
	}
	sound(t, b.String())
	if !strings.Contains(b.String(), "Most at 20:00: 780\u00a0W.") || !strings.Contains(b.String(), ">31 more<") { // 0 + 1 + … + 39
		t.Error(b.String())
	}
	b.Reset()
	if err := (Burns{}).Draw(&b); err != nil {
		t.Fatal(err)
	}
	sound(t, b.String())
}

func TestSunMonths(t *testing.T) {
	flat, panel := [12]float64{}, [12]float64{1, 2, 3, 4, 5, 6, 5, 4, 3, 2, 1, 0.5}
	flat[3], flat[4] = math.NaN(), 7.5
	var b strings.Builder
	if err := SunMonths(flat, panel, &b); err != nil {
		t.Fatal(err)
	}
	sound(t, b.String())
	if !strings.Contains(b.String(), "least in Dec with 0.5\u00a0kWh/m² a day, most in Jun with 6\u00a0kWh/m².") {
		t.Error(b.String())
	}
}

func TestWeek(t *testing.T) {
	for _, d := range []Week{{}, {Global: []float64{0, 500, math.NaN()}, Diffuse: []float64{0, 100, 5}, Air: []float64{-12, 3, math.Inf(1)}}} {
		var b strings.Builder
		if err := d.Draw(&b); err != nil {
			t.Fatal(err)
		}
		sound(t, b.String())
	}
}

// A week's sums, by hand: 7 × 24 hours of 2 W wanted are 336 Wh; 10 hours of it are missing, 20 Wh.
func TestWorstWeek(t *testing.T) {
	d := WorstWeek{Name: "The worst week", Days: []string{"27 Dec", "28", "29", "30", "31", "1 Jan", "2"}}
	for h := range 168 {
		d.Sun, d.Load = append(d.Sun, float64(h%24)), append(d.Load, 2)
		d.Missing, d.Stored = append(d.Missing, 0), append(d.Stored, 7200)
		if h < 10 {
			d.Missing[h] = 2
		}
	}
	var b strings.Builder
	if err := d.Draw(&b); err != nil {
		t.Fatal(err)
	}
	sound(t, b.String())
	for _, want := range []string{"336\u00a0Wh are needed, 20\u00a0Wh of them are missing", ">31<", ">1 Jan<", ">stored<"} {
		if !strings.Contains(b.String(), want) {
			t.Errorf("no %q", want)
		}
	}
	for _, d := range []WorstWeek{{}, {Sun: []float64{math.NaN()}, Load: []float64{1}, Missing: []float64{math.Inf(1)}, Days: []string{"?"}}} {
		b.Reset()
		if err := d.Draw(&b); err != nil {
			t.Fatal(err)
		}
		sound(t, b.String())
	}
}
