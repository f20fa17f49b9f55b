package variant

import (
	"net/url"
	"slices"
	"testing"

	"duskweight/internal/catalog"
	"duskweight/internal/document"
	"duskweight/internal/model"
	"duskweight/internal/model/panel"
	"duskweight/internal/model/unit"
	"duskweight/web/form"
	"duskweight/web/page"
)

// What is typed of shade and of the controller's curve reaches the year. By hand: half the light taken in every month
// leaves half on the plane; all of it taken in December leaves eleven months; twelve empty fields are no shade at all; a
// controller that gives 48 % at every load gives half of one that gives 96 %, but for the standing draw.
func TestShadeAndCurveFromTheForm(t *testing.T) {
	doc := catalog.Sample()
	g := model.Prepare(doc.Project)
	f := form.Form[model.Variant]{Parts: VariantForm()}
	typed := func(change func(url.Values)) model.Variant {
		v := document.Clone(doc.Variants[1])
		sent := url.Values{}
		change(sent)
		if ps := f.Read(sent, &v, unit.Metric); len(ps) > 0 {
			t.Fatal(ps)
		}
		return v
	}
	shade := func(share string, months ...int) model.Variant {
		return typed(func(v url.Values) {
			for _, m := range months {
				v.Set("panels[0].shade["+page.Itoa(m)+"]", share)
			}
		})
	}
	near := func(what string, got, want float64) {
		if d := got/want - 1; d > 1e-12 || d < -1e-12 { // rounding of 8760 sums
			t.Errorf("%s: %v, want %v", what, got, want)
		}
	}
	all := []int{0, 1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11}
	whole := g.Evaluate(doc.Variants[1])
	near("half the light", float64(g.Evaluate(shade("50", all...)).Plane.Val), float64(whole.Plane.Val)/2)
	december := shade("100 %", 11)
	bus := g.Evaluate(december).Bus.Power
	if sum := slices.Max(bus[334*24:]); sum != 0 || !slices.Equal(bus[:334*24], whole.Bus.Power[:334*24]) {
		t.Errorf("all of December's light taken: %v W in December, or another month changed", sum)
	}
	if again := f.Read(url.Values{"panels[0].shade[11]": {""}}, &december, unit.Metric); len(again) > 0 || december.Panels[0].Shade != nil {
		t.Errorf("emptied: %v, %v", again, december.Panels[0].Shade)
	}
	curve := func(share float64) model.Variant {
		v := document.Clone(doc.Variants[1])
		v.Controller.Curve = []panel.Efficiency{{Load: 1, Efficiency: share}}
		return v
	}
	half := typed(func(v url.Values) {
		v.Set("controller.efficiency_curve"+form.RowsSuffix, "1")
		v.Set("controller.efficiency_curve[0].load", "100")
		v.Set("controller.efficiency_curve[0].efficiency", "48 %")
	})
	if len(half.Controller.Curve) == 1 {
		near("half the efficiency", page.Sum(g.Evaluate(half).Bus.Power), page.Sum(g.Evaluate(curve(0.96)).Bus.Power)/2)
	} else {
		t.Errorf("the curve from the form: %+v", half.Controller.Curve)
	}
}
