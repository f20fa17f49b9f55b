package page

import (
	"encoding/binary"
	"encoding/csv"
	"encoding/json"
	"math"
	"net/http/httptest"
	"strconv"
	"strings"
	"testing"
)

// FuzzCSV writes any text and any number as a table and reads it as another program would (RFC 4180): every number is the same
// to the last bit, no text begins as a formula does, and a text is the same but for the mark that keeps it from that.
func FuzzCSV(f *testing.F) {
	f.Add("night", "=1+1", math.Float64bits(-0.1), 7)
	f.Add("\"quoted\", and more", "a\r\nb", math.Float64bits(math.NaN()), -1)
	f.Add("-", "\t", uint64(1), 0)
	f.Fuzz(func(t *testing.T, head, text string, bits uint64, whole int) {
		number := math.Float64frombits(bits)
		w := httptest.NewRecorder()
		if err := SendCSV(w, SheetOfNumbers{Name: "any", Head: []string{head, "n", "k"}, Rows: [][]any{{text, number, whole}}}); err != nil {
			t.Fatal(err)
		}
		rows, err := csv.NewReader(w.Body).ReadAll()
		if err != nil || len(rows) != 2 {
			t.Fatalf("%d rows, %v", len(rows), err)
		}
		for i, typed := range []string{head, text} {
			typed = strings.ReplaceAll(typed, "\r\n", "\n") // a reader of CSV does that inside quotation marks
			got := rows[i][0]
			if got != "" && strings.ContainsAny(got[:1], "=+-@\t\r") {
				t.Errorf("%q is read as a formula", got)
			}
			if got != typed && got != "'"+typed {
				t.Errorf("%q came back as %q", typed, got)
			}
		}
		switch back, err := strconv.ParseFloat(rows[1][1], 64); {
		case math.IsNaN(number) || math.IsInf(number, 0):
			if rows[1][1] != "" {
				t.Errorf("no number came back as %q", rows[1][1])
			}
		case err != nil || math.Float64bits(back) != bits:
			t.Errorf("%v came back as %q", number, rows[1][1])
		}
		if back, err := strconv.Atoi(rows[1][2]); err != nil || back != whole {
			t.Errorf("%d came back as %q", whole, rows[1][2])
		}
	})
}

// FuzzPlot draws lines through any points: what the page carries is JSON that ends no data block, with the points to five figures
// in their order; a line with something that is no number, or with too many points, is an error and no picture.
func FuzzPlot(f *testing.F) {
	points := func(vs ...float64) (b []byte) {
		for _, v := range vs {
			b = binary.LittleEndian.AppendUint64(b, math.Float64bits(v))
		}
		return b
	}
	f.Add("Sun", "W", points(0, 1, 1, 123456.789, 2, 5e-324), 0.0)
	f.Add("</script><!--", "\xff", points(-1, -3, math.MaxFloat64, 0), 1e308)
	f.Add("", "", points(1, math.NaN()), -1.0)
	f.Add("many", "h", make([]byte, 16*(MostPoints+1)), 0.0)
	f.Fuzz(func(t *testing.T, name, unit string, data []byte, wide float64) {
		if math.IsNaN(wide) || math.IsInf(wide, 0) || len(data) > 16*(MostPoints+2) {
			t.Skip()
		}
		line := PlotLine{Name: name, Unit: unit, Color: "--mass", Dash: "solid"}
		sound := true
		for ; len(data) >= 16; data = data[16:] {
			at := [2]float64{math.Float64frombits(binary.LittleEndian.Uint64(data)), math.Float64frombits(binary.LittleEndian.Uint64(data[8:]))}
			sound = sound && !math.IsNaN(at[0]-at[0]) && !math.IsNaN(at[1]-at[1])
			line.Points = append(line.Points, at)
		}
		p := Plot{Id: "any", Title: name, X: unit, Y: []string{unit}, Wide: wide, Lines: []PlotLine{line}}
		v, err := p.View("any.csv")
		if fits := sound && len(line.Points) <= MostPoints; fits != (err == nil) {
			t.Fatalf("%d points, sound %v: %v", len(line.Points), sound, err)
		}
		if err != nil {
			return
		}
		if strings.ContainsAny(string(v.Option), "<>") {
			t.Fatalf("it can end its data block: %s", v.Option)
		}
		var is struct {
			Series []struct {
				Name string
				Data [][2]float64
			}
		}
		if err := json.Unmarshal(v.Option, &is); err != nil || len(is.Series) != 1 || len(is.Series[0].Data) != len(line.Points) {
			t.Fatalf("%v: %s", err, v.Option)
		}
		for i, got := range is.Series[0].Data {
			for k, want := range line.Points[i] {
				if off := math.Abs(got[k]/2 - want/2); off > math.Abs(want/2)*0.5e-4 && off > 5e-324 { // five figures: half of the last
					t.Errorf("point %d: %v for %v", i, got, line.Points[i])
				}
			}
		}
		if n := len(p.Numbers().Rows); n != len(line.Points) {
			t.Errorf("%d rows of numbers for %d points", n, len(line.Points))
		}
	})
}
