package weather

import (
	"errors"
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"duskweight/internal/model/sun"
	"duskweight/internal/model/unit"
)

// Numbers as files write them: one point, a comma only where it may be one and once, no hexadecimal, nothing without end.
func TestNumbersOfFiles(t *testing.T) {
	for _, c := range []struct {
		text  string
		comma bool
		want  float64
		ok    bool
	}{
		{"12.5", false, 12.5, true}, {" -3 ", false, -3, true}, {"\u22123", false, -3, true}, {"1e3", false, 1000, true}, {"1,5", false, 0, false}, {"1,5", true, 1.5, true},
		{"1,234,5", true, 0, false}, {",5", true, 0.5, true}, {"1.5", true, 1.5, true}, {"", false, 0, false}, {"", true, 0, false}, {"x", false, 0, false}, {"0x10", false, 0, false},
		{"1e999", false, 0, false}, {"--3", false, 0, false}, {"inf", false, 0, false}, {"NaN", false, 0, false}, {"+7", false, 7, true}, {"1.2.3", false, 0, false}, {"1,2.3", true, 0, false},
	} {
		if v, ok := number(c.text, c.comma); ok != c.ok || ok && v != c.want {
			t.Errorf("%q (comma %v): %v, %v", c.text, c.comma, v, ok)
		}
	}
}

// Lines end as they do on three kinds of machines, fields part at their sign but not within quotes, and the sign is told by the
// last lines: one of a semicolon, a tab or a bar goes before a comma, which may stand in numbers.
func TestLinesAndFields(t *testing.T) {
	for text, want := range map[string][]string{"a\nb": {"a", "b"}, "a\r\nb\r\n": {"a", "b"}, "a\rb\r": {"a", "b"}, "a\n\n \n": {"a"}, "": {}, "\n": {}, "a\rb\nc": {"a\rb", "c"}} {
		if got := lines(text); !slices.Equal(got, want) {
			t.Errorf("%q: %q", text, got)
		}
	}
	for _, c := range []struct {
		line string
		by   byte
		want []string
	}{
		{"a, b ,c", ',', []string{"a", "b", "c"}}, {`"a,b",c`, ',', []string{"a,b", "c"}}, {`"say ""hi""",c`, ',', []string{`say "hi"`, "c"}}, {`"a"`, ',', []string{"a"}}, {"", ',', []string{""}},
		{"  a   b ", ' ', []string{"a", "b"}}, {"   ", ' ', []string{""}}, {`"",x`, ',', []string{"", "x"}}, {`a"b,c"d`, ',', []string{"ab,cd"}}, {"a;b,c", ';', []string{"a", "b,c"}},
	} {
		if got := fields(c.line, c.by); !slices.Equal(got, c.want) {
			t.Errorf("%q: %q", c.line, got)
		}
	}
	for _, c := range []struct {
		lines []string
		want  byte
	}{
		{[]string{"1;2,5", "3;4,5"}, ';'}, {[]string{"1,2", "3,4"}, ','}, {[]string{"1\t2,5", "3\t4,5"}, '\t'}, {[]string{"1|2", "3|4"}, '|'}, {[]string{"1 2", "3 4"}, ' '}, {[]string{"1", "2"}, ','}, {nil, ','},
		{[]string{"1,2", "3,4", "5"}, ','}, // two of three lines are most
		{[]string{"1;2", "3,4"}, ','},      // half of them is not most, and the comma is what is taken without a sign
	} {
		if got := delimiterOf(c.lines); got != c.want {
			t.Errorf("%q: %q", c.lines, got)
		}
	}
	// only the last 40 lines decide
	old := append(slices.Repeat([]string{"1;2;3"}, 100), slices.Repeat([]string{"1,2,3"}, 40)...)
	if got := delimiterOf(old); got != ',' {
		t.Errorf("the first lines decide: %q", got)
	}
}

// What is no text is told by its first bytes, and what is text is read in three encodings: UTF-8, UTF-16 in both orders, and
// letters of one byte each.
func TestBytesOfFiles(t *testing.T) {
	for head, say := range map[string]string{
		"PK\x03\x04": "zip archive", "\x1f\x8b\x08": "packed", "%PDF-1.7": "PDF", "<!DOCTYPE html>": "web page", "<html>": "web page", " <?xml version": "web page", "\xd0\xcf\x11\xe0": "old spreadsheet",
		"SQLite format 3": "database", "\x89HDF": "database", "a\x00b": "not a text file", " \n": "is empty", "": "is empty",
	} {
		if _, err := slurp(strings.NewReader(head)); err == nil || !strings.Contains(err.Error(), say) {
			t.Errorf("%q: %v, want %q", head, err, say)
		}
	}
	for bytes, want := range map[string]string{
		"\xef\xbb\xbfT °C": "T °C", "\xff\xfeT\x00 \x00\xb0\x00": "T °", "\xfe\xff\x00T\x00 \x00\xb0": "T °", "T \xb0C": "T °C", "T °C": "T °C", "\xff\xfeT\x00x": "T", "\xff\xfe\x3d\xd8\x00\xde": "\U0001F600",
	} {
		if got, err := decode([]byte(bytes)); err != nil || got != want {
			t.Errorf("% x: %q, %v", bytes, got, err)
		}
	}
}

// A line may have 200 signs that part columns and 500 words, one more of either is refused, and each line is counted anew.
func TestWidthOnEitherSide(t *testing.T) {
	for text, refused := range map[string]bool{
		strings.Repeat(",", 200): false, strings.Repeat(",", 201): true, strings.Repeat(",", 150) + "\n" + strings.Repeat(",", 150): false, strings.Repeat(";", 100) + strings.Repeat("|", 101): true,
		strings.Repeat("w ", 500): false, strings.Repeat("w ", 500) + "w": true, strings.Repeat("w ", 400) + "\r" + strings.Repeat("w ", 400): false,
		strings.Repeat("x", 64<<10): false, strings.Repeat("x", 64<<10+1): true,
	} {
		var l width
		if err := l.take([]byte(text)); (err != nil) != refused {
			t.Errorf("%d bytes %.5q…: %v", len(text), text, err)
		}
	}
}

// Half of the fields decide whether a line holds values or names; an empty line holds neither names nor what is no value.
func TestNamesAndValues(t *testing.T) {
	for _, c := range []struct {
		line            string
		values, letters bool
	}{
		{"1,2,3", true, false}, {"a,b,c", false, true}, {"1,a", true, true}, {"1,a,b", false, true}, {"1,2,a", true, false}, {"-1,.5,x,y", true, true}, {"\u22121,y", true, true}, {"°C,1", true, true},
		{"", false, false}, {",,1", false, false}, {",1", true, false}, {"/,*", false, false}, {"Z,z,A,a", false, true}, {"[,@", false, false}, {"{,`", false, false}, {"9,0", true, false}, {"+9,:", true, false},
	} {
		f := fields(c.line, ',')
		if values(f) != c.values || letters(f) != c.letters {
			t.Errorf("%q: values %v, letters %v", c.line, values(f), letters(f))
		}
	}
	for line, want := range map[string]bool{
		"W/m2,°C": true, "W/m²,,-": true, "[Wh/m^2],(°F)": true, "J/cm2,k": true, "utc,hh:mm,W m**-2": true, "%,m/s": false, "GHI,°C": false, "yyyy-mm-dd,W/m2": true, "dd.mm,degC": true, ",": false, "mm/dd,f": true,
	} {
		if got := onlyUnits(fields(line, ',')); got != want {
			t.Errorf("units alone in %q: %v", line, got)
		}
	}
	for name, want := range map[string]string{
		"GHI (W/m²)": "ghi", "G(h)": "gh", "G(h) [W/m2]": "gh", "T (C)": "t", "T (2m)": "t2m", "Time (UTC)": "time", "ghi w/m2": "ghi", "Température °C": "température", "[x]": "x", "dew point, °C": "dewpoint", "(a)": "a", "Date (LST)": "date",
	} {
		if got := bare(name); got != want {
			t.Errorf("%q is bare %q, want %q", name, got, want)
		}
	}
}

// The row of values begins under the last line of words; words under the table, blank lines and rows that are short do not count.
// Names stand over a line of units.
func TestWhereTheTableBegins(t *testing.T) {
	for _, c := range []struct {
		lines []string
		first int
		names string
	}{
		{[]string{"a,b", "1,2", "3,4"}, 1, "a|b"}, {[]string{"1,2", "3,4"}, 0, ""}, {[]string{"head", "a,b", "1,2", "3,4", "5,6", "the end"}, 2, "a|b"},
		{[]string{"GHI,T", "W/m2,°C", "1,2", "3,4"}, 2, "GHI [W/m2]|T [°C]"}, {[]string{"GHI,T", "[W/m2],-", "1,2", "3,4"}, 2, "GHI [W/m2]|T"}, {[]string{"x,y", "lonely", "1,2", "3,4"}, 2, "x|y"},
		{[]string{"a,b", "1,2", "", "3,4"}, 1, "a|b"},
	} {
		s := &sheet{lines: c.lines, delimiter: ','}
		s.first = s.firstValues()
		if got := strings.Join(s.names(), "|"); s.first != c.first || got != c.names {
			t.Errorf("%q: the values begin at %d, names %q", c.lines, s.first, got)
		}
	}
	many := append(slices.Repeat([]string{"1,2,3"}, 10), slices.Repeat([]string{"1,2"}, 200)...)
	if n := (&sheet{lines: many, delimiter: ','}).usualFields(); n != 2 {
		t.Errorf("usually %d fields", n)
	}
	if n := (&sheet{lines: []string{"1,2", "1,2,3", "1,2,3"}, delimiter: ','}).usualFields(); n != 3 {
		t.Errorf("usually %d fields", n)
	}
	// a comma proves a decimal comma only where it cannot part thousands or fields
	for _, c := range []struct {
		line string
		by   byte
		want bool
	}{{"1,5;2,5", ';', true}, {"1.5;2.5", ';', false}, {"1,500;2", ';', true}, {`"1,500",2`, ',', false}, {`"1,50",2`, ',', true}, {"1.5;2,5;3,5", ';', true}, {"1.5;2,5", ';', false}, {"1;2", ';', false}} {
		if got := (&sheet{lines: []string{c.line}, delimiter: c.by}).commas(); got != c.want {
			t.Errorf("%q: a decimal comma %v", c.line, got)
		}
	}
}

// Latitudes as people write them, by hand: 39°49′48″ are 39 + 49/60 + 48/3600 = 39.83; S and W turn the sign, and O is west in
// Spanish; a minus and a letter together are none, and neither is a letter of the other direction.
func TestDegreesOfPlaces(t *testing.T) {
	for _, c := range []struct {
		text string
		west byte
		want float64
		ok   bool
	}{
		{"39.83", 'S', 39.83, true}, {"39.83 N", 'S', 39.83, true}, {"33.9S", 'S', -33.9, true}, {"104.65W", 'W', -104.65, true}, {"3.7 O", 'W', -3.7, true}, {"3.7 E", 'W', 3.7, true}, {"3.7 O", 'S', 0, false},
		{"39°49'48\"S", 'S', -39.83, true}, {"39° 30'", 'S', 39.5, true}, {"-39 30", 'S', -39.5, true}, {"39 -30", 'S', 0, false}, {"-33.9 S", 'S', 0, false}, {"12 E", 'S', 0, false}, {"12 N", 'W', 0, false},
		{"1 2 3 4", 'S', 0, false}, {"", 'S', 0, false}, {"N", 'S', 0, false}, {"x", 'S', 0, false}, {"0", 'S', 0, true},
	} {
		if v, ok := new(sheet).degrees(c.text, c.west); ok != c.ok || ok && math.Abs(v-c.want) > 1e-9 {
			t.Errorf("%q: %v, %v", c.text, v, ok)
		}
	}
}

// A place has its limits: 90° of latitude, a turn of longitude, which is counted to both sides of Greenwich, 14 hours of clock,
// and heights from the lowest shore to over the highest station; beyond, a height is a code for missing.
func TestLimitsOfPlaces(t *testing.T) {
	for _, c := range []struct {
		latitude, longitude, hours, height float64
		faults                             int
		east                               float64
		kept                               bool
	}{
		{90, 180, 14, 9000, 0, 180, true}, {90.1, 0, 0, 0, 1, 0, true}, {-90.1, 0, 0, 0, 1, 0, true}, {0, 181, -14, -500, 0, -179, true}, {0, 359, 0, 0, 0, -1, true}, {0, 361, 0, 0, 1, 1, true}, {0, -181, 0, 0, 0, 179, true},
		{0, -361, 0, 0, 1, -1, true}, {0, 0, 14.1, 9001, 1, 0, false}, {0, 0, -14.1, -501, 1, 0, false},
	} {
		s := &sheet{latitude: unit.Of(unit.Angle(c.latitude) * unit.Degree), longitude: unit.Of(unit.Angle(c.longitude) * unit.Degree), offset: unit.Of(unit.Duration(c.hours) * unit.Hour), elevation: unit.Of(unit.Length(c.height))}
		var r Refused
		s.completePlace(&r)
		if len(r.Faults) != c.faults || math.Abs(s.longitude.Val.Degrees()-c.east) > 1e-9 || s.elevation.Is != c.kept {
			t.Errorf("%+v: %d faults, %v° east, height %v", c, len(r.Faults), s.longitude.Val.Degrees(), s.elevation)
		}
	}
}

// Faults are told up to a number, the others counted; what is quoted is cut after 40 letters.
func TestFaultsAreCounted(t *testing.T) {
	var r Refused
	for range most {
		r.add(Fault{Value: strings.Repeat("ä", 41), Head: strings.Repeat("b", 40)})
	}
	if len(r.Faults) != most || r.More != 0 || r.Faults[0].Value != strings.Repeat("ä", 40)+"…" || r.Faults[0].Head != strings.Repeat("b", 40) {
		t.Errorf("%d faults, %d more, %+v", len(r.Faults), r.More, r.Faults[0])
	}
	if r.add(Fault{}); len(r.Faults) != most || r.More != 1 {
		t.Errorf("%d faults, %d more", len(r.Faults), r.More)
	}
	if new(Refused).orNil() != nil || r.orNil() == nil {
		t.Error("no fault is an error, or one is none")
	}
}

// Gaps are filled in a straight line round the circle of the year: between 1 and 4 two missing ones are 2 and 3, and so they are
// over the turn of the year.
func TestBridge(t *testing.T) {
	n := math.NaN()
	for _, c := range [][2][]float64{
		{{1, n, n, 4, 4}, {1, 2, 3, 4, 4}}, {{n, 4, 4, 1, n}, {3, 4, 4, 1, 2}}, {{n, n, 1, 4}, {3, 2, 1, 4}}, {{1, 4, n, n}, {1, 4, 3, 2}}, {{5, n, n}, {5, 5, 5}}, {{1, n, 3, n, 5}, {1, 2, 3, 4, 5}}, {{2, 7}, {2, 7}},
	} {
		v := slices.Clone(c[0])
		bridge(v)
		for i := range v {
			if math.Abs(v[i]-c[1][i]) > 1e-12 {
				t.Errorf("%v becomes %v, want %v", c[0], v, c[1])
				break
			}
		}
	}
}

// A step that meets two hours gives each its part: a row of an hour that begins at half past gives half to each, one of twenty
// minutes that begins ten before the hour gives a sixth of an hour to each; the sum of the year stays, round its end too.
func TestHoursGetTheirParts(t *testing.T) {
	v := make([]float64, sun.YearHours)
	v[0], v[sun.YearHours-1] = 100, 60
	h := hourly(v, 60, 30, nil)
	if h[0] != 50+30 || h[1] != 50 || h[sun.YearHours-1] != 30 {
		t.Errorf("half past: %v, %v … %v", h[0], h[1], h[sun.YearHours-1])
	}
	h = hourly(v, 60, -15, nil)
	if h[sun.YearHours-1] != 25+45 || h[0] != 75 || h[sun.YearHours-2] != 15 {
		t.Errorf("a quarter before: %v, %v, %v", h[sun.YearHours-2], h[sun.YearHours-1], h[0])
	}
	v = make([]float64, 3*sun.YearHours)
	v[2] = 90 // from 40 to 60 minutes, moved by ten
	h = hourly(v, 20, 10, nil)
	if math.Abs(h[0]-15) > 1e-9 || math.Abs(h[1]-15) > 1e-9 {
		t.Errorf("ten before the hour: %v and %v", h[0], h[1])
	}
	h = hourly(v, 20, 0, nil)
	if math.Abs(h[0]-30) > 1e-9 || h[1] != 0 {
		t.Errorf("on the hour: %v and %v", h[0], h[1])
	}
}

// A file of stamps that stand off the beat, or twice, is refused by its lines.
func TestRowsOffTheirPlace(t *testing.T) {
	m := makeYear(harbour, 12, 1)
	l := strings.Split(m.plain("time,GHI,DHI,temperature\n", ",", 60, iso(0), false), "\n")
	for name, change := range map[string]struct {
		to, say string
	}{
		"off the beat": {strings.Replace(l[20], ":00,", ":07,", 1), "off the beat of the others, which come every 60 minutes"}, "twice": {strings.Replace(l[20], l[20][:16], l[19][:16], 1), "for the same time as line 20"},
	} {
		changed := slices.Clone(l)
		changed[20] = change.to
		_, _, err := Read(strings.NewReader(strings.Join(changed, "\n")), here, nil)
		var r *Refused
		if !errors.As(err, &r) || r.Faults[0].Line != 21 || !strings.Contains(fmt.Sprint(r.Faults[0].Reason), change.say) {
			t.Errorf("%s (%q): %v", name, change.to, err)
		}
	}
}

// Rows that are read as daylight saving time say from which day to which, and only those between are an hour earlier: the first day
// is one of them, the second is not, on either half of the Earth.
func TestSummerOfTheHint(t *testing.T) {
	for _, c := range []struct {
		summer [2]int
		in     []int // days of the year
		out    []int
		say    string
	}{{[2]int{87, 304}, []int{87, 200, 303}, []int{86, 304, 1, 365}, "from 28 March to 31 October"}, {[2]int{277, 94}, []int{277, 365, 1, 93}, []int{276, 94, 200}, "from 4 October to 4 April"}} {
		s := &sheet{layout: Table, summer: c.summer, stamp: "start", when: stampColumns{date: 0, time: -1}}
		var rows []row
		for day := 1; day <= 365; day++ {
			for hour := range 24 {
				m := moment{minute: hour * 60}
				m.onDay(day)
				rows = append(rows, row{at: m})
			}
		}
		g, err := s.gridOf(rows)
		if err != nil || !strings.Contains(s.saving, c.say) {
			t.Fatalf("%v, %q", err, s.saving)
		}
		for _, day := range c.in {
			if at := g.begin[(day-1)*24+12]; at != (day-1)*1440+11*60 {
				t.Errorf("noon of day %d begins at minute %d of it", day, at-(day-1)*1440)
			}
		}
		for _, day := range c.out {
			if at := g.begin[(day-1)*24+12]; at != (day-1)*1440+12*60 {
				t.Errorf("noon of day %d begins at minute %d of it", day, at-(day-1)*1440)
			}
		}
	}
}
