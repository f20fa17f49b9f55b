package crawl_test

import (
	"encoding/csv"
	"encoding/json"
	"html"
	"maps"
	"net/http"
	"reflect"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/go-chi/chi/v5"

	"duskweight/internal/catalog"
	"duskweight/internal/model"
	"duskweight/internal/model/reason"
	"duskweight/internal/model/unit"
	"duskweight/internal/store"
	"duskweight/web/form"
	"duskweight/web/page"
	"duskweight/web/webtest"
)

// The units of one system that a reader of the other does not see. Those that both read are not among them: V, A, Ah, W,
// Wh, kWh, Ω, s, min, h, rpm, % and ° have no second unit in the trade; W/m², kWh/m² and W/(m²·K) are how sunshine and the
// heat of a panel are sold everywhere; mm² is how wire is sold (see unit.WireAreas); V·s/rad, N·m/A and K/W stand in the data
// sheets of motors, whatever the country.
const (
	metricUnits   = `kg|g|t|mm|cm|m|km|µm|N|kN|daN|N·m|mN·m|kN·m|MPa|GPa|kPa|Pa|°C|K|m/s|mm/s|km/h|m²|cm²|m³|cm³|cm⁴|m⁴|l|litres?|kg/m³|kilograms?|tonnes?|metres?|millimetres?|centimetres?|degrees Celsius|g·cm²|kg·cm²|kg·m²|N/mm|N/m`
	imperialUnits = `lb|oz|ft|yd|lbf|ozf|psi|ksi|°F|ft/s|ft/min|mph|ft²|in²|in³|in⁴|ft³|mi|US gal|gal|lbf·ft|lbf·in|ozf·in|oz·in²|lb/ft³|lbf/in|pounds?|feet|foot|inch(?:es)?|degrees Fahrenheit`
)

// stray are the ways in which a unit stands in a text: behind a figure, and alone at the end of a heading ("Mass, kg") or of
// a key ("mass_kg").
type stray struct{ figure, heading *regexp.Regexp }

func strayOf(units string, behind string) stray {
	return stray{
		figure:  regexp.MustCompile(`\d(?:[ \x{a0}](?:` + units + `)` + behind + `)(?:[^\pL\pN²³⁴·/]|$)`),
		heading: regexp.MustCompile(`(?:^|, |\(|, in )(?:` + units + `)\)?$`),
	}
}

// strays are the units that a page in a system does not show. "In" is a word as well: it is an inch only where the space before
// it is the one that stands in front of units.
var strays = map[unit.System]stray{
	unit.Imperial: strayOf(metricUnits, ""),
	unit.Metric:   strayOf(imperialUnits, `|\x{a0}in`),
}

// in are the figures of a text that have a unit of the other system.
func (s stray) in(text string) []string {
	found := s.figure.FindAllString(text, -1)
	if h := s.heading.FindString(text); h != "" {
		found = append(found, h)
	}
	return found
}

// meant is what stands in units of its own on purpose: what was typed, told in both systems; a formula and the title of a book,
// which are quoted; what the user wrote; the choice of the units themselves, and of those that a weather file is in.
var meant = regexp.MustCompile(`(?s)<p class="(?:echo|formula|source)">.*?</p>|<(?:textarea|footer)\b.*?</(?:textarea|footer)>|` +
	`<label><input type="radio" name="units".*?</label>|<select\b[^>]*name="thermo".*?</select>`)

// tradeSizes are names of goods by which they are sold everywhere: shackles and wire by fractions of an inch, motors by the
// millimetres of their can.
var tradeSizes = regexp.MustCompile(`\d/\d+ inch|(?:\d+ to )?\d+ mm (?:toy |servo-type )?(?:motor|can)\b|of a \d+ mm,? (?:servo-type|48 V) motor`)

// soldSizes are sizes of bought parts on the plan sheet, in whole or half millimetres: a rope of 12 mm is sold as such, and no
// shop has one of 15/32 inch.
var soldSizes = regexp.MustCompile(`\d+(?:\.5)?\x{a0}mm\b`)

// textsOf are all texts that a response says: blocks, attributes that are read aloud, pictures, cells of a CSV file, the
// strings of a chart's options.
func textsOf(kind, body string) []string {
	switch {
	case strings.HasPrefix(kind, "text/csv"):
		rows, _ := csv.NewReader(strings.NewReader(body)).ReadAll()
		return slices.Concat(rows...)
	case strings.HasPrefix(kind, "application/json"):
		return jsonTexts(body)
	}
	body = meant.ReplaceAllString(body, "")
	out := append(blocksOf(body), attributesOf(body)...)
	for _, m := range regexp.MustCompile(`<option\b[^>]*>([^<]*)<|<desc>([^<]*)<|data-[a-z-]+="([^"]*)"`).FindAllStringSubmatch(body, -1) {
		out = append(out, html.UnescapeString(m[1]+m[2]+m[3]))
	}
	for _, m := range regexp.MustCompile(`(?s)<script type="application/json"[^>]*>(.*?)</script>`).FindAllStringSubmatch(body, -1) {
		out = append(out, jsonTexts(m[1])...)
	}
	return out
}

// jsonTexts are the strings in a JSON text that are said: values, not keys.
func jsonTexts(body string) (out []string) {
	var v any
	if json.Unmarshal([]byte(body), &v) != nil {
		return nil
	}
	var walk func(v any)
	walk = func(v any) {
		switch v := v.(type) {
		case string:
			out = append(out, v)
		case []any:
			for _, e := range v {
				walk(e)
			}
		case map[string]any:
			for _, e := range v {
				walk(e)
			}
		}
	}
	walk(v)
	return out
}

// unitDocuments are documents whose own words name no unit.
func unitDocuments(t *testing.T) map[string]model.Document {
	sample, huge := catalog.Sample(), numbered(catalog.Sample(), 1e9)
	huge.Variants = huge.Variants[2:] // with everything in it
	docs := map[string]model.Document{"blank rows": pageDocuments(t)["blank rows"], "sample": sample, "huge": huge, "water": webtest.Pond(catalog.Sample()), "first plan": catalog.Start(webtest.ExampleAnswers(t))}
	for _, plan := range webtest.UnsafePlans(t) { // a hoist that is ready, and one that a load test proved
		if name := "hoist, " + plan.Ready; (plan.Ready == "yes" || plan.Ready == "proven") && plan.Doc.Variants[0].HoistAt(0) != nil && docs[name].Variants == nil {
			docs[name] = plan.Doc
		}
	}
	if len(docs) != 7 {
		t.Fatalf("%d documents", len(docs))
	}
	for name, doc := range docs {
		eachText(reflect.ValueOf(&doc), func(v reflect.Value) {
			if _, day := reason.DayOf(v.String()); !day {
				v.SetString("Words")
			}
		}, "")
		for i := range doc.Variants {
			doc.Variants[i].Origins = nil
		}
		docs[name] = doc
	}
	return docs
}

// unseen are the addresses that the walk does not read, each with its reason.
var unseen = map[string]string{
	"/healthz":                               "says that the program answers, and no amount",
	"/projects/{project}/export.json":        "a document is in SI",
	"/settings/copies/{copy}":                "the data file itself",
	"/static/*":                              "no words",
	"/projects/{project}/place/file/reading": "there is none before a large file is read in; it says a share alone",
	"/projects/{project}/place/file":         "there is none before a file is read in; see TestUnitsOfWeather",
}

var linksIn = regexp.MustCompile(`(?:href|src|data-url|data-src)="(/[^"#]*)`)

// mostOfOne is how many addresses of one route are read in one document: parts of a hoist and columns of a table differ in what
// they ask, not in what they say.
const mostOfOne = 6

// mostOf is how many addresses of a route are read in one document. Of a search that takes a second, the first two: a store of
// each kind that a document begins with.
func mostOf(route string) int {
	if strings.HasSuffix(route, "/takes") {
		return 2
	}
	return mostOfOne
}

// unitWalk reads a whole site in one system.
type unitWalk struct {
	t     *testing.T
	h     http.Handler
	sys   unit.System
	told  map[string]bool
	done  map[string]bool
	count map[string]int
	seen  map[string]bool // by route
}

func (w *unitWalk) read(at string, body, kind string) {
	for _, text := range textsOf(kind, body) {
		text = tradeSizes.ReplaceAllString(text, "size")
		if page, _, _ := strings.Cut(at, "?"); strings.HasSuffix(page, "/sheet") {
			text = soldSizes.ReplaceAllString(text, "size")
		}
		if strings.HasPrefix(at, "/help") && bothSystems(text) {
			continue
		}
		found := strays[w.sys].in(text)
		if !strings.HasPrefix(kind, "text/csv") {
			found = append(found, powers.FindAllString(text, -1)...)
		}
		if w.sys == unit.Imperial && !strings.HasPrefix(kind, "text/csv") {
			found = append(found, unhandy(text)...)
		}
		for _, f := range found {
			if key := f + text; !w.told[key] {
				w.told[key] = true
				w.t.Errorf("%s: %q in %q", at, f, form.Clip(text, 220))
			}
		}
	}
}

// powers are numbers with an exponent, which no page and no axis of a picture tells.
var powers = regexp.MustCompile(`(?:^|[^\pL\d#])[−-]?\d+(?:\.\d+)?[eE][+−-]?\d+(?:[^\pL\d]|$)`)

var (
	splitPounds = regexp.MustCompile(`[1-9]\d+\.\d+\x{a0}lb\b`)
	copper      = regexp.MustCompile(`([\d.]+)\x{a0}mm²( \(AWG)?`)
	// No length is told in tenths of a foot: from a foot up each has its inches.
	splitFeet = regexp.MustCompile(`\d+\.\d+[ \x{a0}]ft(?:$|[^\pL\pN²³·/])`)
)

// unhandy are the figures of a text in imperial units that no workshop uses: pounds with decimals from ten up, feet with decimals, and
// copper without its gauge, from the thinnest that homes have to AWG 4/0, 107 mm².
func unhandy(text string) (out []string) {
	out = append(splitPounds.FindAllString(text, -1), splitFeet.FindAllString(text, -1)...)
	for _, m := range copper.FindAllStringSubmatch(text, -1) {
		if area, err := strconv.ParseFloat(m[1], 64); err == nil && area >= 0.1 && area <= 107 && m[2] == "" {
			out = append(out, m[0])
		}
	}
	return out
}

// The habits above are seen to be missed, and only then.
func TestUnhandyFinds(t *testing.T) {
	for text, want := range map[string]string{"It weighs 88.2\u00a0lb.": "88.2 lb", "It weighs 8.82\u00a0lb and 88\u00a0lb.": "", "6\u00a0mm² of copper": "6 mm²", "6\u00a0mm² (AWG\u00a08)": "", "20000\u00a0mm²": "", "120\u00a0mm²": "",
		"14.8\u00a0ft": "14.8 ft", "4.5 ft, and": "4.5 ft,", "14′\u00a09-3/16″": "", "1.2\u00a0ft/s": "", "5.4\u00a0ft²": "", "130\u00a0ft": ""} {
		if got := strings.ReplaceAll(strings.Join(unhandy(text), " "), unit.Space, " "); got != want {
			t.Errorf("%q: %q, want %q", text, got, want)
		}
	}
}

// byCalliper are the lengths that are measured with a calliper, or bought by a size: they are told in decimals of an inch. The
// height over the sea is in whole feet.
var byCalliper = regexp.MustCompile(`(?i)rope\.diameter|^ropes.*diameter|shaft|overhang|bearing_span|pin_|key_|hub|module|face_width|elevation|screw|washer|wall_m|hole_m|thickness|engages_in|inner_m|motors?.*\.diameter|machine\.diameter`)

// Each length of every form is told as a tape shows it, where a tape is held to it: 0.3 m are 11.811 in, 13 sixteenths over 11.
func TestLengthsAreTaped(t *testing.T) {
	taped := 0
	everyInput(func(form string, one anyInput) {
		if one.read("0.3 m", unit.Imperial) != nil || one.read("7 lb", unit.Imperial) == nil {
			return // no length
		}
		_ = one.read("0.3 m", unit.Imperial)
		switch told := one.told(unit.Imperial); {
		case told == "11-13/16″":
			taped++
			if byCalliper.MatchString(one.path) {
				t.Errorf("%s: %s is told as %s", form, one.path, told)
			}
		case !byCalliper.MatchString(one.path):
			t.Errorf("%s: %s is told as %s", form, one.path, told)
		}
	})
	if taped < 40 {
		t.Errorf("only %d lengths", taped)
	}
}

// bothSystems reports whether a text of the guide, which is written once for all, has for each figure of one system one of the
// other, or reckons in SI: a product that stands there as it is typed.
func bothSystems(text string) bool {
	metric, imperial := len(strays[unit.Imperial].figure.FindAllString(text, -1)), len(guideImperial.FindAllString(text, -1))
	return metric == imperial || strings.Contains(text, " × ") && strings.Contains(text, " = ")
}

// The guide is read by all: a figure of one system alone is seen, one with the other beside it and a product in SI are not.
func TestBothSystems(t *testing.T) {
	for text, want := range map[string]bool{"First lift it 100 mm over a soft landing.": false, "First lift it 100 mm (4 in) over a soft landing.": true,
		"60 kg (132 lb), up by 3 m": false, "The height holds 60 kg × 9.8 m/s² × 3 m = 1 765 J.": true, "12 Ah and 12.8 V": true} {
		if got := bothSystems(text); got != want {
			t.Errorf("%q: %v", text, got)
		}
	}
}

// guideImperial are the figures of the other system in the guide, where "in" behind a figure is an inch.
var guideImperial = strayOf(imperialUnits, "|[ \\x{a0}]in").figure

func (w *unitWalk) route(method, at string) string {
	c := chi.NewRouteContext()
	path, _, _ := strings.Cut(at, "?")
	if !w.h.(chi.Routes).Match(c, method, path) {
		return ""
	}
	return c.RoutePattern()
}

// from reads an address and all that it leads to.
func (w *unitWalk) from(start ...string) {
	for queue := start; len(queue) > 0; queue = queue[1:] {
		at := html.UnescapeString(queue[0])
		route := w.route("GET", at)
		if w.done[at] || route == "" || unseen[route] != "" || w.count[route] >= mostOf(route) || strings.Contains(at, "n=1000") { // a thousand years say what ten say
			continue
		}
		w.done[at] = true
		w.count[route]++
		got := webtest.Ask(w.h, "GET", at, nil)
		w.seen[route] = w.seen[route] || got.Code < http.StatusBadRequest
		if got.Code != http.StatusOK {
			continue
		}
		body, kind := got.Body.String(), got.Header().Get("Content-Type")
		w.read(at, body, kind)
		if !strings.HasPrefix(kind, "text/html") {
			continue
		}
		for _, m := range linksIn.FindAllStringSubmatch(body, -1) {
			queue = append(queue, m[1])
		}
		w.refusals(at, body)
	}
}

var (
	formBodies = regexp.MustCompile(`(?s)<form\b[^>]*action="([^"]*)"[^>]*>(.*?)</form>`)
	typedInto  = regexp.MustCompile(`<input\b[^>]*type="text"|<textarea`)
)

// refusals sends the editor of a page back with every text wrong in three ways, and reads the answers.
func (w *unitWalk) refusals(at, body string) {
	action, _, _ := strings.Cut(at, "?")
	edits := func(m []string) bool {
		return m[1] == action && strings.Contains(m[2], `name="`+form.NameRevision+`"`) && typedInto.MatchString(m[2]) && !strings.Contains(m[2], `name="`+page.NameAsked+`"`)
	}
	if !slices.ContainsFunc(formBodies.FindAllStringSubmatch(body, -1), edits) {
		return
	}
	for _, wrong := range []string{"987654321", "-98765", "7 furlongs"} {
		sent, fields := webtest.FormAt(w.t, body, action)
		for _, f := range fields {
			if sent.Get(f) != "Words" {
				sent.Set(f, wrong)
			}
		}
		got := webtest.Ask(w.h, "POST", action, sent)
		if got.Code != http.StatusUnprocessableEntity {
			w.t.Errorf("%s: %d for %q in every field", action, got.Code, wrong)
		}
		w.read(action+" refused", strings.ReplaceAll(got.Body.String(), wrong, "7"), "text/html")
	}
}

// withoutLinks are the addresses that no page leads to by a link: those of scripts, and those that lead on.
func withoutLinks(project int64, vs []store.Saved[model.Variant]) []string {
	base := page.ProjectURL(project)
	out := []string{"/", "/start", "/settings", "/shelf", "/verdicts", base + "/sure/said", base + "/variants/said"}
	for i, v := range vs {
		at := page.VariantURL(project, v.ID)
		if i == 0 {
			out = append(out, base+"/sure/many?n=10&v="+page.Itoa(int(v.ID)), base+"/shelf/fits/many?v="+page.Itoa(int(v.ID)), at+"/cheapest/many")
		}
		out = append(out, at+"/hoist", at+"/motion", at+"/trials", at+"/cells", at+"/water", at+"/sure", at+"/trials/0/records.csv")
	}
	return out
}

// Every address, its pictures and tables and what a bad form is answered with: no unit of the other system.
func TestUnitsOfEveryAddress(t *testing.T) {
	t.Parallel()
	for word, sys := range map[string]unit.System{"imperial": unit.Imperial, "metric": unit.Metric} {
		t.Run(word, func(t *testing.T) {
			s := webtest.NewSite(t)
			if err := s.Store.SaveSettings(t.Context(), map[string]string{page.SettingUnits: word}); err != nil {
				t.Fatal(err)
			}
			seen, told := map[string]bool{}, map[string]bool{}
			docs := unitDocuments(t)
			for _, name := range slices.Sorted(maps.Keys(docs)) {
				if sys == unit.Metric && name != "sample" && name != "water" { // imperial units are only ever made by the formatter: one document of each kind shows that
					continue
				}
				p, vs := webtest.Create(t, s, name, docs[name])
				w := &unitWalk{t: t, h: s.Handler(), sys: sys, told: told, done: map[string]bool{}, count: map[string]int{}, seen: seen}
				w.from(append(webtest.PagesOf(p, vs), withoutLinks(p.ID, vs)...)...)
				if err := s.Store.DeleteProject(t.Context(), p.ID, p.Revision, "deleted", s.Now()); err != nil {
					t.Fatal(err)
				}
			}
			_ = chi.Walk(s.Handler().(chi.Routes), func(method, route string, _ http.Handler, _ ...func(http.Handler) http.Handler) error {
				if route = strings.TrimSuffix(route, "/"); method == "GET" && route != "" && !seen[route] && !seen[route+"/"] && unseen[route] == "" {
					t.Errorf("%s was not read", route)
				}
				return nil
			})
		})
	}
}
