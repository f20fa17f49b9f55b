package page

import (
	"encoding/json"
	"fmt"
	"math"
	"strconv"

	"github.com/go-echarts/go-echarts/v2/charts"
	"github.com/go-echarts/go-echarts/v2/opts"

	"duskweight/internal/model/unit"
)

// Plot is a picture of lines over one quantity, with one or two scales. Names are words of ours, never typed ones.
type Plot struct {
	Id, Title string
	Say       string // the sentence that reads it; what is missing where there are no lines
	X         string // axis title with its unit
	Y         []string
	Top       []float64 // highest value of each scale; 0 lets the data decide
	Wide      float64   // highest value of x; 0 lets the data decide
	Lines     []PlotLine
	Head      []string
	Rows      [][]string
}

// PlotLine is one line, or marks without a line.
type PlotLine struct {
	Name   string
	Unit   string // of its values
	Color  string // one of the page's colours: "--mass"
	Dash   string // "solid", "dashed", "dotted"
	Mark   string // symbol of marks: "circle", "triangle", "diamond", "rect"; empty draws a line
	Scale  int    // which of the scales of y
	Area   bool   // filled down to nothing
	Points [][2]float64
}

// MostPoints is how many points a line may have.
const MostPoints = 400

// Scaled is how a quantity is drawn and tabled: its scale, and the unit of the numbers.
type Scaled struct {
	unit.Scale
	Unit string
}

func ScaleOf(q unit.Quantity, sys unit.System) Scaled { return Scaled{q.Scale(sys), q.Symbol(sys)} }

// Axis is an axis title with the unit.
func (s Scaled) Axis(name string) string { return name + ", " + s.Unit }

// View makes the chart; csv is the address of its numbers. A plot without lines is its sentence alone.
func (p Plot) View(csv string) (ChartView, error) {
	v := ChartView{ID: p.Id, Title: p.Title, Say: p.Say, Head: p.Head, Rows: p.Rows}
	if len(p.Lines) == 0 {
		return v, nil
	}
	data := make([]json.RawMessage, len(p.Lines))
	line := charts.NewLine()
	line.ChartID = p.Id
	line.SetGlobalOptions(
		charts.WithTooltipOpts(opts.Tooltip{Show: opts.Bool(true), Trigger: "axis"}),
		charts.WithLegendOpts(opts.Legend{Top: "0", Left: "0", ItemWidth: 30}),
		charts.WithGridOpts(opts.Grid{Top: "54", Left: "8", Right: "16", Bottom: "24", ContainLabel: opts.Bool(true)}),
		charts.WithXAxisOpts(opts.XAxis{Type: "value", Name: p.X, NameLocation: "middle", NameGap: 26, Min: 0, Max: p.last(),
			SplitLine: &opts.SplitLine{Show: opts.Bool(false)}, AxisLabel: &opts.AxisLabel{Formatter: "fn:3", HideOverlap: opts.Bool(true), ShowMinLabel: opts.Bool(true), ShowMaxLabel: opts.Bool(false)}}),
	)
	line.YAxisList = line.YAxisList[:0]
	for i, name := range p.Y {
		line.ExtendYAxis(p.yAxis(i, name))
	}
	for i, l := range p.Lines {
		var err error
		if data[i], err = points(l); err != nil {
			return v, fmt.Errorf("%s: %w", p.Id, err)
		}
		line.AddSeries(l.Name, nil, styles(l)...)
	}
	var err error
	v.Option, err = Option(line, func(m map[string]any) { p.patch(m, data) })
	v.CSV = csv
	return v, err
}

func (p Plot) yAxis(i int, name string) opts.YAxis {
	y := opts.YAxis{Type: "value", Name: name, NameLocation: "end", NameGap: 10, SplitLine: &opts.SplitLine{Show: opts.Bool(i == 0)},
		AxisLabel: &opts.AxisLabel{Formatter: "fn:3", HideOverlap: opts.Bool(true), ShowMinLabel: opts.Bool(true), ShowMaxLabel: opts.Bool(true)}}
	if i < len(p.Top) && p.Top[i] > 0 {
		y.Max = roundUp(p.Top[i])
	}
	if p.least(i) >= 0 {
		y.Min = 0
	}
	return y
}

// least is the lowest value on a scale.
func (p Plot) least(scale int) float64 {
	low := math.Inf(1)
	for _, l := range p.Lines {
		for _, at := range l.Points {
			if l.Scale == scale {
				low = math.Min(low, at[1])
			}
		}
	}
	return low
}

// roundUp is the next of 1, 1.5, 2, 3, 4, 5, 6, 8 and their tens.
func roundUp(v float64) float64 {
	ten := math.Pow(10, math.Floor(math.Log10(v)))
	for _, k := range []float64{1, 1.5, 2, 3, 4, 5, 6, 8, 10} {
		if k*ten >= v*(1-1e-9) {
			return RoundTo(k*ten, 3)
		}
	}
	return v
}

// last is the greatest value on the x axis.
func (p Plot) last() float64 {
	most := p.Wide
	for _, l := range p.Lines {
		for _, at := range l.Points {
			most = math.Max(most, at[0])
		}
	}
	return RoundTo(most, 3)
}

// styles are colour, dash, marks and scale of a line: each line differs from the others without colour too.
func styles(l PlotLine) []charts.SeriesOpts {
	c := opts.LineChart{ShowSymbol: opts.Bool(l.Mark != ""), Symbol: "none", YAxisIndex: l.Scale}
	width := float32(2.5)
	if l.Mark != "" {
		c.Symbol, c.SymbolSize, width = l.Mark, 13, 0
	}
	out := []charts.SeriesOpts{charts.WithLineChartOpts(c), charts.WithItemStyleOpts(opts.ItemStyle{Color: l.Color, BorderColor: "--ink", BorderWidth: 1}),
		charts.WithLineStyleOpts(opts.LineStyle{Color: l.Color, Type: l.Dash, Width: width})}
	if l.Area {
		out = append(out, charts.WithAreaStyleOpts(opts.AreaStyle{Color: "--sun", Opacity: opts.Float(0.45)}))
	}
	return out
}

// patch sets what the builder cannot say: the points as plain pairs, lines of no width, numbers of the tooltip.
func (p Plot) patch(m map[string]any, data []json.RawMessage) {
	delete(m, "color")
	if legend, ok := m["legend"].(map[string]any); ok { // a line is shown by its dash alone
		var names []any
		for _, l := range p.Lines {
			one := map[string]any{"name": l.Name}
			if l.Mark == "" {
				one["itemStyle"] = map[string]any{"opacity": 0}
			}
			names = append(names, one)
		}
		legend["data"] = names
	}
	series, _ := m["series"].([]any)
	for i, s := range series {
		if one, ok := s.(map[string]any); ok && i < len(data) {
			one["data"] = data[i]
			if style, ok := one["lineStyle"].(map[string]any); ok && p.Lines[i].Mark != "" {
				style["width"] = 0
			}
		}
	}
	if tip, ok := m["tooltip"].(map[string]any); ok {
		tip["valueFormatter"] = "fn:3"
		tip["confine"] = true
	}
	axes, _ := m["yAxis"].([]any)
	for i, a := range axes {
		if one, ok := a.(map[string]any); ok { // the title stands over the axis and reads into the picture
			one["nameTextStyle"] = map[string]any{"align": []string{"left", "right"}[min(i, 1)], "padding": []int{0, 0, 0, 0}}
			one["alignTicks"] = i > 0
		}
	}
	m["aria"].(map[string]any)["decal"] = map[string]any{"show": false} // lines differ by dash and mark
}

// points writes a line's points, four figures each, in as few letters as may be.
func points(l PlotLine) (json.RawMessage, error) {
	if len(l.Points) > MostPoints {
		return nil, fmt.Errorf("%s has %d points, at most %d", l.Name, len(l.Points), MostPoints)
	}
	b := []byte{'['}
	for i, p := range l.Points {
		if i > 0 {
			b = append(b, ',')
		}
		b = append(b, '[')
		for k, v := range p {
			if math.IsNaN(v) || math.IsInf(v, 0) {
				return nil, fmt.Errorf("%s: point %d is no number", l.Name, i)
			}
			if k > 0 {
				b = append(b, ',')
			}
			b = strconv.AppendFloat(b, RoundTo(v, 5), 'g', -1, 64)
		}
		b = append(b, ']')
	}
	return append(b, ']'), nil
}

// RoundTo rounds to so many figures.
func RoundTo(v float64, figures int) float64 {
	out, err := strconv.ParseFloat(strconv.FormatFloat(v, 'g', figures, 64), 64)
	if err != nil {
		return v
	}
	return out
}

// Numbers is the plot as a table for other programs: a row for each point of each line.
func (p Plot) Numbers() SheetOfNumbers {
	t := SheetOfNumbers{Name: p.Id, Head: []string{"line", p.X, "value", "unit"}}
	for _, l := range p.Lines {
		for _, at := range l.Points {
			t.Rows = append(t.Rows, []any{l.Name, at[0], at[1], l.Unit})
		}
	}
	return t
}
