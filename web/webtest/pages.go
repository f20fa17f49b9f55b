package webtest

import (
	"bytes"
	"compress/gzip"
	"fmt"
	"net/http"
	"net/url"
	"regexp"
	"strings"
	"testing"

	"duskweight/internal/model"
	"duskweight/internal/model/unit"
	"duskweight/internal/model/water"
	"duskweight/internal/store"
	"duskweight/web"
	"duskweight/web/form"
	"duskweight/web/page"
)

func Stored(t *testing.T, s *web.Site, id int64) store.Saved[model.Variant] {
	t.Helper()
	v, err := s.Store.Variant(t.Context(), id)
	if err != nil {
		t.Fatal(err)
	}
	return v
}

// Create stores a document and gives its project and variants.
func Create(t testing.TB, s *web.Site, name string, doc model.Document) (store.Saved[model.Project], []store.Saved[model.Variant]) {
	t.Helper()
	if ps := model.Check(doc); len(ps) > 0 {
		t.Fatalf("%s: %v", name, ps)
	}
	p, err := s.Store.CreateProject(t.Context(), doc, "made", s.Now())
	if err != nil {
		t.Fatalf("%s: %v", name, err)
	}
	vs, err := s.Store.Variants(t.Context(), p.ID)
	if err != nil {
		t.Fatal(err)
	}
	return p, vs
}

// Pond is the first variant of a document with 10 m³ of water at 12 m in the place of its stores.
func Pond(doc model.Document) model.Document {
	doc.Variants = doc.Variants[:1]
	doc.Variants[0].Origins = nil
	doc.Variants[0].Stores = []model.Store{{Water: &water.Water{Name: "Words", Volume: unit.Of[unit.Volume](10), Head: unit.Of[unit.Length](12), Surface: unit.Of[unit.Area](5),
		Pump: water.Pump{Rated: unit.Of[unit.Power](200)}, Turbine: water.Turbine{Flow: unit.Of[unit.Flow](0.0012)},
		Pipe:    water.Pipe{Length: unit.Of[unit.Length](40), Inner: unit.Of[unit.Length](0.05), Rated: unit.Of[unit.Stress](6e5)},
		Covered: unit.No, Stands: water.OnTower, Lower: water.LowerTank}}}
	return doc
}

// kindPages are the pages that a variant has with a store of a kind, beside the store's own; # is the place of the store.
var kindPages = map[string][]string{
	"cells": {"/sheet/wiring"},
	"water": {"/water/#/drawing.csv"},
	"hoist": {"/hoist/#?part=pulley", "/trials/#", "/motion/#", "/trials/#?part=raises", "/trials/#?all=1", "/trials/#/record", "/hoist/#?depth=bench&all=1", "/hoist/#/pictures", "/hoist/#/motor", "/hoist/#/rows", "/hoist/#/rows?kind=rope", "/hoist/#/rows?kind=stage", "/sheet/wiring", "/sheet/checks"},
}

// PagesOf are the addresses of every page of a project with these variants.
func PagesOf(p store.Saved[model.Project], vs []store.Saved[model.Variant]) []string {
	base := page.ProjectURL(p.ID)
	pages := []string{base, base + "?class=1", base + "?class=1&guess=40", base + "/place", base + "/place?all=1", base + "/place?part=means", base + "/load", base + "/load?all=1", base + "/load?part=appliances%5B0%5D", base + "/compare", base + "/sure", base + "/sure?n=10&parts=yes", base + "/money", base + "/history", base + "/shelf", base + "/shelf?part=batteries%5B0%5D", base + "/shelf/fits"}
	for _, v := range vs {
		at := page.VariantURL(p.ID, v.ID)
		pages = append(pages, at, at+"/takes", at+"/sweep", at+"/cheapest", at+"/cheapest?run=1", at+"/sheet", at+"/sheet?paper=letter", at+"/parts", at+"/parts/market", at+"/parts/making?paper=letter")
		for i, st := range v.Value.Stores {
			kind, n := st.Kind().Key, page.Itoa(i)
			pages = append(pages, page.StoreURL(p.ID, v.ID, i, kind))
			for _, more := range kindPages[kind] {
				pages = append(pages, at+strings.ReplaceAll(more, "#", n))
			}
		}
	}
	return pages
}

var Tags = regexp.MustCompile(`(?s)<(?:script|style|svg)\b.*?</(?:script|style|svg)>|<[^>]*>`)

var broken = regexp.MustCompile(`NaN|[+-]?\bInf\b|%!|<nil>|&lt;nil&gt;|\b(?:stores|panels|variants|appliances|stages|parts|mass)\[\d*\]|0x[0-9a-f]{6,}|\{\{|\[object`)

var controls = regexp.MustCompile(`<(?:input|select|textarea)\b[^>]*>`)

var attr = regexp.MustCompile(`([a-z-]+)="([^"]*)"`)

var styled = regexp.MustCompile(`<[^>]*\s(?:style|on[a-z]+)="`)

// SoundPage says what is wrong with a page.
func SoundPage(body string) (wrong []string) {
	add := func(format string, args ...any) { wrong = append(wrong, fmt.Sprintf(format, args...)) }
	if n := strings.Count(body, "<h1"); n != 1 {
		add("%d h1", n)
	}
	if title := regexp.MustCompile(`<title>([^<]+)</title>`).FindStringSubmatch(body); title == nil || strings.TrimSpace(title[1]) == "" {
		add("no title")
	}
	for _, text := range []string{Tags.ReplaceAllString(body, " "), strings.Join(regexp.MustCompile(`(?s)<svg\b.*?</svg>`).FindAllString(body, -1), " ")} {
		if at := broken.FindStringIndex(text); at != nil {
			add("%q", strings.Join(strings.Fields(text[max(0, at[0]-60):min(len(text), at[1]+60)]), " "))
		}
	}
	if bad := styled.FindString(body); bad != "" && !strings.Contains(bad, "content=") {
		add("inline: %.80q", bad)
	}
	labels := map[string]bool{}
	for _, m := range regexp.MustCompile(`\sfor="([^"]*)"`).FindAllStringSubmatch(body, -1) {
		labels[m[1]] = true
	}
	for _, at := range controls.FindAllStringIndex(body, -1) {
		c := body[at[0]:at[1]]
		have := map[string]string{}
		for _, m := range attr.FindAllStringSubmatch(c, -1) {
			have[m[1]] = m[2]
		}
		wrapped := strings.LastIndex(body[:at[0]], "<label") > strings.LastIndex(body[:at[0]], "</label>")
		if have["type"] != "hidden" && !wrapped && !labels[have["id"]] && have["aria-label"] == "" && have["aria-labelledby"] == "" {
			add("no label: %.120s", c)
		}
	}
	return wrong
}

var formsIn = regexp.MustCompile(`(?s)<form\b[^>]*action="([^"]*)"[^>]*>(.*?)</form>`)

var selects = regexp.MustCompile(`(?s)<select\b[^>]*name="([^"]*)"[^>]*>(.*?)</select>`)

var chosen = regexp.MustCompile(`<option value="([^"]*)"[^>]* selected`)

var textareas = regexp.MustCompile(`(?s)<textarea\b[^>]*name="([^"]*)"[^>]*>(.*?)</textarea>`)

var textInputs = regexp.MustCompile(`<input\b[^>]*>`)

// FormAt reads the form of a page as a browser would send it, and which of its fields take text.
func FormAt(t testing.TB, body, action string) (sent url.Values, fields []string) {
	t.Helper()
	action, _, _ = strings.Cut(action, "?")
	for _, f := range formsIn.FindAllStringSubmatch(body, -1) {
		at, _, _ := strings.Cut(f[1], "?") // a page of cards names its card
		if at != action || strings.Contains(f[2], `name="asked"`) || !strings.Contains(f[2], `name="`+form.NameRevision+`"`) {
			continue
		}
		sent = url.Values{}
		for _, in := range textInputs.FindAllString(f[2], -1) {
			have := map[string]string{}
			for _, m := range attr.FindAllStringSubmatch(in, -1) {
				have[m[1]] = Unescape(m[2])
			}
			if have["name"] == "" || have["type"] == "checkbox" || have["type"] == "radio" || have["type"] == "submit" {
				continue
			}
			sent.Set(have["name"], have["value"])
			if have["type"] != "hidden" {
				fields = append(fields, have["name"])
			}
		}
		for _, m := range textareas.FindAllStringSubmatch(f[2], -1) {
			sent.Set(Unescape(m[1]), Unescape(m[2]))
			fields = append(fields, Unescape(m[1]))
		}
		for _, m := range selects.FindAllStringSubmatch(f[2], -1) {
			value := ""
			if o := chosen.FindStringSubmatch(m[2]); o != nil {
				value = Unescape(o[1])
			}
			sent.Set(Unescape(m[1]), value)
			fields = append(fields, Unescape(m[1]))
		}
	}
	if len(fields) == 0 {
		t.Fatalf("no form for %s", action)
	}
	return sent, fields
}

func Unescape(s string) string {
	return strings.NewReplacer("&#34;", `"`, "&#39;", "'", "&lt;", "<", "&gt;", ">", "&amp;", "&", "&#43;", "+").Replace(s)
}

// TypedBack says whether a text stands in the page as the value of a field, as templates escape it.
func TypedBack(body, name, text string) bool {
	escaped := strings.NewReplacer("&", "&amp;", `"`, "&#34;", "'", "&#39;", "<", "&lt;", ">", "&gt;").Replace(text)
	at := strings.Index(body, `name="`+name+`"`)
	return at >= 0 && strings.Contains(body[at:min(len(body), at+len(escaped)+2500)], escaped)
}

// Packed is a page as a browser loads it, by gzip.
func Packed(h http.Handler, at string) []byte {
	var small bytes.Buffer
	z := gzip.NewWriter(&small)
	z.Write(Ask(h, http.MethodGet, at, nil).Body.Bytes()) // a buffer takes everything
	z.Close()
	return small.Bytes()
}
