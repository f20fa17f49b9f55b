package browsertest

import (
	"fmt"

	"github.com/chromedp/cdproto/input"
	"github.com/chromedp/chromedp"
)

// Shift sends keys while the shift key is held.
func (tab *Tab) Shift(keys string) {
	tab.t.Helper()
	tab.Do(chromedp.KeyEvent(keys, chromedp.KeyModifiers(chromedp.ModifierShift)))
}

// Draw presses the mouse on one element, draws to another and lets go there.
func (tab *Tab) Draw(from, to string) {
	tab.t.Helper()
	middle := func(css string) (x, y float64) {
		at := fmt.Sprintf("document.querySelector(%q).getBoundingClientRect()", css)
		return tab.Number("(r => r.x + r.width / 2)(" + at + ")"), tab.Number("(r => r.y + r.height / 2)(" + at + ")")
	}
	x0, y0 := middle(from)
	x1, y1 := middle(to)
	tab.Do(chromedp.MouseEvent(input.DispatchMouseEventTypeMouseMoved, x0, y0), chromedp.MouseEvent(input.DispatchMouseEventTypeMousePressed, x0, y0, chromedp.Button("left"), chromedp.ClickCount(1)))
	const steps = 12
	for i := 1; i <= steps; i++ {
		part := float64(i) / steps
		tab.Do(chromedp.MouseEvent(input.DispatchMouseEventTypeMouseMoved, x0+part*(x1-x0), y0+part*(y1-y0), chromedp.Button("left")))
	}
	tab.Do(chromedp.MouseEvent(input.DispatchMouseEventTypeMouseReleased, x1, y1, chromedp.Button("left"), chromedp.ClickCount(1)))
}
