package main

import (
	"errors"
	"fmt"
	"math/rand/v2"
	"net/http"
	"net/url"
	"path/filepath"
	"regexp"
	"strconv"
	"sync"
	"sync/atomic"
	"testing"
	"time"
)

// plans is what one owner of a project knows of it.
type plans struct {
	There    bool
	First    string // the name of the first variant
	Variants int
	Travel   float64
	Label    string // of money, which one of the owners alone changes
	Taken    int    // projects of this owner's name that were taken in
}

// owner changes a project of its own over HTTP, one change after another.
type owner struct {
	n        int
	project  string                // its address
	known    plans                 // as the last acknowledged change left it
	next     plans                 // as the change that is under way leaves it
	kept     plans                 // what it held when it was deleted
	before   *plans                // what an undo of the last change leads to, nil where it was not a saved form
	forms    map[string]url.Values // of the variant's pages, by a field of theirs, as they were read last
	revision int                   // of the variant, 0 where it must be read
	told     *atomic.Int64
	step     int
}

var aDelete = regexp.MustCompile(`action="/projects/\d+/delete"`)

var aTag = regexp.MustCompile(`<[^>]*>`)

var aStep = regexp.MustCompile(`action="/projects/\d+/undo"[^>]*>\s*<input type="hidden" name="seq" value="(\d+)"`)

// read is what stands in the file.
func (o *owner) read(a *apart) (is plans, err error) {
	doc, _, there, err := a.export(o.project)
	if err != nil {
		return is, err
	}
	is.There = there
	if is.Variants = len(doc.Variants); there {
		is.First, is.Travel = doc.Variants[0].Name, doc.Variants[0].Stores[0].Hoist.Travel
	}
	all, err := a.get("/?q=" + url.QueryEscape(o.name()))
	if err != nil {
		return is, err
	}
	is.Taken = len(aDelete.FindAllString(all.body, -1))
	if o.n == 0 {
		got, err := a.get("/settings")
		if err != nil {
			return is, err
		}
		form, err := formAt(got.body, "/settings", "currency")
		if err != nil {
			return is, err
		}
		is.Label = form.Get("currency")
	}
	return is, nil
}

func (o *owner) name() string { return fmt.Sprintf("Taken by %d", o.n) }

// change makes one change of a kind; only 303 counts as acknowledged.
func (o *owner) change(a *apart, kind int) error {
	o.next, o.step = o.known, o.step+1
	variant := o.project + "/variants/" + fmt.Sprint(3*o.n+1)
	var at string
	var form url.Values
	saved := false
	page := func(of, action, field string) (err error) {
		got, err := a.get(of)
		if err == nil {
			form, err = formAt(got.body, action, field)
		}
		at = action
		return err
	}
	sheet := func(of, action, field string) (err error) { // a browser tab that stays open: its form goes on from its own save
		if form, at = o.forms[field], action; form == nil || o.revision == 0 {
			if err = page(of, action, field); err != nil {
				return err
			}
			o.forms[field] = form
			o.revision, err = strconv.Atoi(form.Get("revision"))
		}
		form.Set("revision", strconv.Itoa(o.revision))
		return err
	}
	var err error
	switch {
	case kind == 1: // deleted, and brought back
		if !o.known.There {
			o.next = o.kept
			at, form = o.project+"/restore", url.Values{}
		} else {
			o.kept, o.next = o.known, plans{Label: o.known.Label, Taken: o.known.Taken}
			err = page("/?q=&sort=changed", o.project+"/delete", "revision")
		}
	case !o.known.There:
		return o.change(a, 1)
	case kind == 2 && o.before != nil: // taken back
		got, failed := a.get(o.project + "/history")
		m := aStep.FindStringSubmatch(got.body)
		if failed != nil || m == nil {
			return errors.Join(failed, fmt.Errorf("no step to take back at %s", o.project))
		}
		at, form, o.next = o.project+"/undo", url.Values{"seq": {m[1]}}, *o.before
	case kind == 3 && o.known.Variants < 8: // a variant more
		o.next.Variants++
		at, form = o.project+"/variants", url.Values{"from": {fmt.Sprint(3*o.n + 1)}}
	case kind == 4 && o.known.Taken < 5: // taken in
		_, text, _, failed := a.export(o.project)
		if failed != nil {
			return failed
		}
		doc := regexp.MustCompile(`("project":\s*\{\s*"name":\s*)"[^"]*"`).ReplaceAllString(text, `${1}"`+o.name()+`"`)
		o.next.Taken++
		got, failed := a.upload("/import", "file", "plan.json", doc)
		return o.answered(got, failed, false)
	case kind == 5 && o.n == 0: // a setting
		o.next.Label = fmt.Sprintf("c%d", o.step)
		at, form = "/settings", url.Values{"units": {"metric"}, "currency": {o.next.Label}}
	case kind == 6: // a name
		o.next.First = fmt.Sprintf("Plan %d of %d", o.step, o.n)
		if err = sheet(variant, variant, "name"); err == nil {
			form.Set("name", o.next.First)
		}
		saved = true
	default: // a number
		o.next.Travel = float64(20000+o.step%20000) / 10000 // as its digits are read: one division rounds once
		if err = sheet(variant+"/hoist/0?depth=bench&all=1", variant+"/hoist/0", "stores[0].hoist.travel_m"); err == nil {
			form.Set("stores[0].hoist.travel_m", fmt.Sprintf("%.4f", o.next.Travel))
		}
		saved = true
	}
	if err != nil {
		return err
	}
	form.Set("page", "") // a step of its own
	got, err := a.post(at, form)
	return o.answered(got, err, saved)
}

func (o *owner) answered(got reply, err error, saved bool) error {
	if err != nil {
		return err
	}
	if got.code != http.StatusSeeOther {
		return fmt.Errorf("%s: %d, %s", o.project, got.code, aTag.ReplaceAllString(got.body, " "))
	}
	o.told.Add(1)
	if saved || o.next.There && o.before != nil && o.next == *o.before {
		o.revision++ // a save, and an undo of one
	}
	if o.before = nil; saved {
		was := o.known
		o.before = &was
	}
	o.known = o.next
	return nil
}

// TestKillOverHTTP kills the whole program at random times while three owners change their projects over HTTP. After the
// next start each finds its project as its last acknowledged change left it, or as the one that was under way.
func TestKillOverHTTP(t *testing.T) {
	data := filepath.Join(home(t), "data")
	a := startApart(t, data)
	var told atomic.Int64
	var owners []*owner
	for n := range 3 {
		got, err := a.post("/sample", url.Values{"example": {""}})
		if err != nil || got.code != http.StatusSeeOther {
			t.Fatal(got.code, err)
		}
		o := &owner{n: n, project: got.to, told: &told, forms: map[string]url.Values{}}
		if o.known, err = o.read(a); err != nil || !o.known.There || o.known.Travel == 0 {
			t.Fatal(o.known, err)
		}
		owners = append(owners, o)
	}
	r := rand.New(rand.NewPCG(5, 5))
	kills := often(4, 10_000)
	for kill := range kills {
		killed := make(chan struct{})
		time.AfterFunc(time.Duration(50+r.IntN(1000))*time.Millisecond, func() { close(killed); a.cmd.Process.Kill() })
		var wait sync.WaitGroup
		for _, o := range owners {
			kinds := rand.New(rand.NewPCG(uint64(kill), uint64(o.n)))
			wait.Go(func() {
				for {
					err := o.change(a, kinds.IntN(10))
					select {
					case <-killed:
						if err != nil {
							return
						}
						continue // it was faster than the kill
					default:
					}
					if err != nil {
						t.Errorf("kill %d, before it: %v", kill, err)
						return
					}
				}
			})
		}
		wait.Wait()
		a.kill()
		a = startApart(t, data)
		for _, o := range owners {
			is, err := o.read(a)
			if err != nil {
				t.Fatal(err)
			}
			if is != o.known && is != o.next {
				t.Errorf("kill %d, owner %d: there is\n%+v\nacknowledged was\n%+v\nunder way was\n%+v", kill, o.n, is, o.known, o.next)
			}
			o.known, o.before, o.revision = is, nil, 0
		}
		if t.Failed() {
			return
		}
	}
	t.Logf("%d kills, %d acknowledged changes", kills, told.Load())
}
