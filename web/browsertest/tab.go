package browsertest

import (
	"context"
	"fmt"
	"net/netip"
	"net/url"
	"strings"
	"sync"
	"testing"
	"time"

	"github.com/chromedp/cdproto/emulation"
	"github.com/chromedp/cdproto/network"
	"github.com/chromedp/chromedp"
)

// limit is how long one tab may take altogether.
const limit = 3 * time.Minute

// patience is how long a click or a condition is waited for.
const patience = 15 * time.Second

// Look is how a page is looked at. The zero Look is a 1366 × 768 screen, light, scripts on.
type Look struct {
	Width, Height int
	Dark          bool
	Forced        bool // forced colours, as a high-contrast desktop sets them
	NoScripts     bool
	Still         bool // reduced motion
	Print         bool // styles for paper
	Scale         float64
	SlowCPU       float64 // times slower than this machine
}

// Phone is the narrowest screen that every page must fit.
var Phone = Look{Width: 320, Height: 640}

// Tab is one open tab with what was collected since it opened.
type Tab struct {
	t    testing.TB
	ctx  context.Context
	mu   sync.Mutex
	said []Said
	urls []string
}

// Said is one thing the page or the browser complained about.
type Said struct {
	Policy bool   // a violation of the content policy
	Text   string // what was said, with the address it is about
}

// Open opens a tab with that look.
func (b *Browser) Open(t testing.TB, look Look) *Tab {
	t.Helper()
	ctx, end := chromedp.NewContext(b.ctx)
	ctx, cancel := context.WithTimeout(ctx, limit)
	t.Cleanup(func() { cancel(); end() })
	tab := &Tab{t: t, ctx: ctx}
	tab.collect()
	tab.Look(look)
	return tab
}

// collect starts to write down console messages and requests.
func (tab *Tab) collect() {
	tab.t.Helper()
	console := chromedp.Console(tab.ctx)
	go func() {
		for m, err := range console {
			if err != nil {
				return
			}
			if m.Type != chromedp.ConsoleError && m.Type != chromedp.ConsoleException {
				continue
			}
			tab.mu.Lock()
			policy := m.Source == "security" || strings.Contains(m.Text, "Content Security Policy")
			tab.said = append(tab.said, Said{Policy: policy, Text: strings.TrimSpace(m.Text + " " + m.URL)})
			tab.mu.Unlock()
		}
	}()
	err := chromedp.Listen(tab.ctx, func(ev any) {
		if e, ok := ev.(*network.EventRequestWillBeSent); ok {
			tab.mu.Lock()
			tab.urls = append(tab.urls, e.Request.URL)
			tab.mu.Unlock()
		}
	})
	if err == nil {
		_, err = chromedp.Call(tab.ctx, network.Enable, network.EnableParams{})
	}
	tab.check(err)
}

// Look changes the look of the open tab.
func (tab *Tab) Look(look Look) {
	tab.t.Helper()
	w, h := look.Width, look.Height
	if w == 0 {
		w, h = 1366, 768
	}
	scale := look.Scale
	if scale == 0 {
		scale = 1
	}
	feature := func(name string, on bool, yes, no string) *emulation.MediaFeature {
		if on {
			return &emulation.MediaFeature{Name: name, Value: yes}
		}
		return &emulation.MediaFeature{Name: name, Value: no}
	}
	media := emulation.SetEmulatedMediaParams{Features: []*emulation.MediaFeature{
		feature("prefers-color-scheme", look.Dark, "dark", "light"),
		feature("forced-colors", look.Forced, "active", "none"),
		feature("prefers-reduced-motion", look.Still, "reduce", "no-preference"),
	}}
	if look.Print {
		media.Media = "print"
	}
	tab.check(chromedp.Do(tab.ctx, chromedp.EmulateViewport(int64(w), int64(h), chromedp.EmulateScale(scale))))
	_, err := chromedp.Call(tab.ctx, emulation.SetEmulatedMedia, media)
	tab.check(err)
	_, err = chromedp.Call(tab.ctx, emulation.SetScriptExecutionDisabled, emulation.SetScriptExecutionDisabledParams{Value: look.NoScripts})
	tab.check(err)
	if look.SlowCPU > 0 {
		_, err = chromedp.Call(tab.ctx, emulation.SetCPUThrottlingRate, emulation.SetCPUThrottlingRateParams{Rate: look.SlowCPU})
		tab.check(err)
	}
}

func (tab *Tab) check(err error) {
	tab.t.Helper()
	if err != nil {
		tab.t.Fatalf("browser: %v", err)
	}
}

// Context is for chromedp actions that have no method here.
func (tab *Tab) Context() context.Context { return tab.ctx }

// Do runs chromedp actions and fails the test when one fails.
func (tab *Tab) Do(steps ...chromedp.Action[chromedp.Void]) {
	tab.t.Helper()
	tab.check(chromedp.Do(tab.ctx, steps...))
}

// Go loads an address and waits for the page to be loaded.
func (tab *Tab) Go(address string) {
	tab.t.Helper()
	tab.Do(chromedp.Navigate(address))
}

// Click clicks the element and waits for nothing.
func (tab *Tab) Click(css string) {
	tab.t.Helper()
	tab.Do(chromedp.Click(chromedp.CSS(css)))
}

// Follow clicks the element and waits until another page is loaded. A page whose answers are just arriving may move
// under the pointer; then the click is made once more, as a hand would, and the test says so.
func (tab *Tab) Follow(css string) {
	tab.t.Helper()
	tab.String(`window.sameAsBefore = "yes"`)
	err := tab.follow(css)
	if err != nil && tab.ctx.Err() == nil && tab.String(`window.sameAsBefore || "no"`) == "yes" {
		tab.t.Logf("clicked a second time on %s", css)
		err = tab.follow(css)
	}
	if err != nil {
		tab.t.Fatalf("browser: a click on %s leads nowhere: %v", css, err)
	}
}

func (tab *Tab) follow(css string) error {
	ctx, cancel := context.WithTimeout(tab.ctx, patience)
	defer cancel()
	_, err := chromedp.RunResponse(ctx, chromedp.Click(chromedp.CSS(css)))
	return err
}

// Type empties a field and types text into it, as a hand would: what stands there is selected and typed over.
func (tab *Tab) Type(css, text string) {
	tab.t.Helper()
	tab.Do(chromedp.Focus(chromedp.CSS(css)))
	tab.String(`document.activeElement.select(), ""`)
	if text == "" {
		text = "\b"
	}
	tab.Press(text)
}

// Press sends keys to whatever has the focus: "\t" is the tab key, "\r" enter.
func (tab *Tab) Press(keys string) {
	tab.t.Helper()
	tab.Do(chromedp.KeyEvent(keys))
}

// Text returns the visible text of an element.
func (tab *Tab) Text(css string) string {
	tab.t.Helper()
	return get(tab, chromedp.Text(chromedp.CSS(css)))
}

// Value returns what stands in a field.
func (tab *Tab) Value(css string) string {
	tab.t.Helper()
	return get(tab, chromedp.Value(chromedp.CSS(css)))
}

// URL returns the address of the open page.
func (tab *Tab) URL() string {
	tab.t.Helper()
	return get(tab, chromedp.Location())
}

// Number returns the value of a script expression that is a number.
func (tab *Tab) Number(script string) float64 {
	tab.t.Helper()
	return get(tab, chromedp.Evaluate[float64](script, chromedp.EvalAwaitPromise))
}

// String returns the value of a script expression that is a string.
func (tab *Tab) String(script string) string {
	tab.t.Helper()
	return get(tab, chromedp.Evaluate[string](script, chromedp.EvalAwaitPromise))
}

// Wait waits until a script expression is true.
func (tab *Tab) Wait(script string) {
	tab.t.Helper()
	end := time.Now().Add(patience)
	for {
		ok, err := chromedp.Run(tab.ctx, chromedp.Evaluate[bool]("!!("+script+")"))
		if err == nil && ok {
			return
		}
		if time.Now().After(end) {
			tab.t.Fatalf("waited in vain for %s (%v)", script, err)
		}
		time.Sleep(20 * time.Millisecond)
	}
}

func get[T any](tab *Tab, a chromedp.Action[T]) T {
	tab.t.Helper()
	v, err := chromedp.Run(tab.ctx, a)
	tab.check(err)
	return v
}

// Complaints returns the console errors, uncaught exceptions and policy violations so far, without those that contain
// one of the allowed texts (a refused form is status 422, which the browser reports: "status of 422").
func (tab *Tab) Complaints(allowed ...string) (out []Said) {
	time.Sleep(50 * time.Millisecond) // messages come a moment after the page
	tab.mu.Lock()
	defer tab.mu.Unlock()
next:
	for _, s := range tab.said {
		for _, a := range allowed {
			if strings.Contains(s.Text, a) {
				continue next
			}
		}
		out = append(out, s)
	}
	return out
}

// Requests returns the addresses of all requests so far.
func (tab *Tab) Requests() []string {
	tab.mu.Lock()
	defer tab.mu.Unlock()
	return append([]string(nil), tab.urls...)
}

// Outside returns the requests that would leave the machine.
func (tab *Tab) Outside() (out []string) {
	for _, u := range tab.Requests() {
		if !local(u) {
			out = append(out, u)
		}
	}
	return out
}

func local(address string) bool {
	u, err := url.Parse(address)
	if err != nil {
		return false
	}
	switch u.Scheme {
	case "data", "blob", "about":
		return true
	}
	ip, err := netip.ParseAddr(u.Hostname())
	return err == nil && ip.IsLoopback()
}

// Sideways returns by how many pixels the page is wider than the screen: 0 when it fits.
func (tab *Tab) Sideways() int {
	tab.t.Helper()
	return int(tab.Number("Math.max(0, document.documentElement.scrollWidth - document.documentElement.clientWidth)"))
}

// Clean fails the test for each complaint, each request that leaves the machine, and each accessibility finding.
func (tab *Tab) Clean(allowed ...string) {
	tab.t.Helper()
	where := tab.URL()
	for _, s := range tab.Complaints(allowed...) {
		tab.t.Errorf("%s: the console says: %s", where, s.Text)
	}
	for _, u := range tab.Outside() {
		tab.t.Errorf("%s: a request leaves the machine: %s", where, u)
	}
	for _, f := range tab.Axe() {
		tab.t.Errorf("%s: %s", where, f)
	}
}

// String makes a finding readable in a test's output.
func (f Finding) String() string {
	return fmt.Sprintf("%s (%s): %s at %s", f.ID, f.Impact, f.Help, strings.Join(f.Where, " | "))
}
