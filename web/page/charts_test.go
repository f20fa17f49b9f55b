package page

import (
	"context"
	"encoding/json"
	"io"
	"math"
	"testing"

	"github.com/a-h/templ"
	"github.com/go-echarts/go-echarts/v2/charts"
	"github.com/go-echarts/go-echarts/v2/opts"
)

// LineOf is a small chart with a title that tries to break out of its data block.
func LineOf(values ...float64) *charts.Line {
	line := charts.NewLine()
	line.SetGlobalOptions(charts.WithTooltipOpts(opts.Tooltip{Show: opts.Bool(true), Trigger: "axis"}), charts.WithTitleOpts(opts.Title{Title: "</script><script>alert(1)</script>"}),
		charts.WithXAxisOpts(opts.XAxis{Name: "hour"}), charts.WithYAxisOpts(opts.YAxis{Name: "power, W"}))
	var points []opts.LineData
	var hours []string
	for i, v := range values {
		points, hours = append(points, opts.LineData{Value: v}), append(hours, Itoa(i))
	}
	line.SetXAxis(hours).AddSeries("sun", points)
	return line
}

func TestOption(t *testing.T) {
	got, err := Option(LineOf(1, 2, 3), func(m map[string]any) { m["patched"] = true })
	if err != nil {
		t.Fatal(err)
	}
	var m map[string]any
	if err := json.Unmarshal(got, &m); err != nil || m["useUTC"] != true || m["animation"] != false || m["patched"] != true {
		t.Errorf("%s %v", got, err)
	}
	if tip, _ := m["tooltip"].(map[string]any); tip["renderMode"] != "richText" {
		t.Errorf("the tooltip would write style attributes: %v", m["tooltip"])
	}
	for _, bad := range []float64{math.NaN(), math.Inf(1), math.Inf(-1)} {
		if got, err := Option(LineOf(1, bad), nil); err == nil {
			t.Errorf("%v is taken: %s", bad, got)
		}
	}
}

// Heading1 is a page of one heading.
func Heading1(title string, body templ.Component) templ.Component {
	return templ.ComponentFunc(func(ctx context.Context, w io.Writer) error {
		if _, err := io.WriteString(w, "<h1>"+title+"</h1>"); err != nil {
			return err
		}
		return body.Render(ctx, w)
	})
}
