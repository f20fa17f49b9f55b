package main

import (
	"context"
	"errors"
	"log/slog"
	"net/http"
	"net/url"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"
)

// setLabel changes something in the data of a running program.
func setLabel(t *testing.T, s *started, label string) {
	t.Helper()
	r, err := http.PostForm(s.url+"settings", url.Values{"units": {"metric"}, "currency": {label}})
	if err != nil {
		t.Fatal(err)
	}
	r.Body.Close()
}

// Copy, list, go back and take that back by commands; refused with a code of its own while the program runs.
func TestBackupAndRestoreByCommand(t *testing.T) {
	data := home(t)
	s := start(t, "-addr", "127.0.0.1:0", "-data", data, "-no-browser")
	setLabel(t, s, "EUR")
	for _, args := range [][]string{{"backup", "-data", data}, {"restore", "-data", data, filepath.Join(data, "duskweight.db")}} {
		if code, stdout, stderr := command(t, "", args...); code != exitBusy || stdout != "" || !strings.Contains(stderr, s.url) {
			t.Errorf("%q while it runs: %d %q %q", args, code, stdout, stderr)
		}
	}
	s.end(t)
	code, stdout, stderr := command(t, "", "backup", "-data", data)
	first := strings.TrimSpace(stdout)
	if _, err := os.Stat(first); code != exitDone || err != nil {
		t.Fatalf("%d %q %q", code, stdout, stderr)
	}
	s = start(t, "-addr", "127.0.0.1:0", "-data", data, "-no-browser")
	setLabel(t, s, "Rs")
	s.end(t)
	label := func() string {
		s := start(t, "-addr", "127.0.0.1:0", "-data", data, "-no-browser")
		defer s.end(t)
		for _, l := range []string{"EUR", "Rs"} {
			if strings.Contains(get(t, s.url+"settings"), `value="`+l+`"`) {
				return l
			}
		}
		return ""
	}
	code, stdout, stderr = command(t, "", "copies", "-data", data)
	if code != exitDone || !strings.HasPrefix(stdout, "1\t") || !strings.Contains(stdout, first) {
		t.Errorf("%d %q %q", code, stdout, stderr)
	}
	code, stdout, stderr = command(t, "", "restore", "-data", data, "1")
	if code != exitDone || !strings.Contains(stdout, "duskweight restore 2") || label() != "EUR" {
		t.Errorf("%d %q %q", code, stdout, stderr)
	}
	if code, _, stderr = command(t, "", "restore", "-data", data, "2"); code != exitDone || label() != "Rs" {
		t.Errorf("taken back: %d %q", code, stderr)
	}
	if code, _, stderr = command(t, "", "restore", "-data", data, first); code != exitDone || label() != "EUR" {
		t.Errorf("by file: %d %q", code, stderr)
	}
	for _, which := range []string{"99", filepath.Join(data, "none.db")} {
		if code, stdout, stderr = command(t, "", "restore", "-data", data, which); code != exitRefused || stdout != "" || stderr == "" {
			t.Errorf("%s: %d %q %q", which, code, stdout, stderr)
		}
	}
}

// A damaged file is set aside and the copy takes its place.
func TestRestoreOfADamagedFile(t *testing.T) {
	data := home(t)
	s := start(t, "-addr", "127.0.0.1:0", "-data", data, "-no-browser")
	setLabel(t, s, "EUR")
	s.end(t)
	_, stdout, _ := command(t, "", "backup", "-data", data)
	if err := os.WriteFile(filepath.Join(data, "duskweight.db"), []byte(strings.Repeat("spoilt ", 1000)), 0o600); err != nil {
		t.Fatal(err)
	}
	code, stdout, stderr := command(t, "", "restore", "-data", data, strings.TrimSpace(stdout))
	if code != exitDone || !strings.Contains(stdout, "set-aside") {
		t.Fatalf("%d %q %q", code, stdout, stderr)
	}
	s = start(t, "-addr", "127.0.0.1:0", "-data", data, "-no-browser")
	if !strings.Contains(get(t, s.url+"settings"), `value="EUR"`) {
		t.Error("the copy is not in its place")
	}
}

// The running program looks after its file at each tick, goes on after a failure, and ends with its context.
func TestTend(t *testing.T) {
	ctx, stop := context.WithCancel(t.Context())
	ticks := make(chan time.Time)
	var log strings.Builder
	var seen []time.Time
	ended := tend(ctx, ticks, func(_ context.Context, now time.Time) error {
		seen = append(seen, now)
		return errors.New("no room")
	}, slog.New(slog.NewTextHandler(&log, nil)))
	ticks <- time.Unix(1, 0)
	ticks <- time.Unix(2, 0)
	stop()
	<-ended
	if len(seen) != 2 || seen[1] != time.Unix(2, 0) || strings.Count(log.String(), "no room") == 0 {
		t.Errorf("%v %q", seen, log.String())
	}
}

// A file that is damaged while the program is not running: the next start says so on its page, which goes back to a copy, and the
// same address then shows the projects. The commands read what can be read, and begin an empty file.
func TestStartOnADamagedFile(t *testing.T) {
	data := home(t)
	file := filepath.Join(data, "duskweight.db")
	s := start(t, "-addr", "127.0.0.1:0", "-data", data, "-no-browser")
	post := func(at string) {
		t.Helper()
		r, err := http.PostForm(s.url+at, url.Values{})
		if err != nil || r.StatusCode != http.StatusOK {
			t.Fatal(r, err)
		}
		r.Body.Close()
	}
	post("sample")
	s.end(t)
	if code, _, stderr := command(t, "", "backup", "-data", data); code != exitDone {
		t.Fatal(stderr)
	}
	spoil := func() {
		t.Helper()
		f, err := os.OpenFile(file, os.O_RDWR, 0)
		if err == nil {
			_, err = f.WriteAt(make([]byte, 4096), 0)
			err = errors.Join(err, f.Close())
		}
		if err != nil {
			t.Fatal(err)
		}
	}
	spoil()
	into := filepath.Join(data, "saved")
	if code, stdout, stderr := command(t, "", "rescue", "-data", data, into); code != exitDone || !strings.Contains(stdout, "project-1.json") {
		t.Errorf("%d %q %q", code, stdout, stderr)
	}
	if code, stdout, stderr := command(t, "", "evaluate", filepath.Join(into, "project-1.json")); code != exitDone || stdout == "" {
		t.Errorf("%d %q", code, stderr)
	}
	if code, _, stderr := command(t, "", "rescue", "-data", data, into); code != exitRefused || !strings.Contains(stderr, "exists") {
		t.Errorf("it wrote over what was there: %d %q", code, stderr)
	}
	s = start(t, "-addr", "127.0.0.1:0", "-data", data, "-no-browser")
	if body := get(t, s.url); !strings.Contains(body, "Your projects cannot be opened") || strings.Contains(body, "Settings</a>") {
		t.Error("the page does not say that the file is lost")
	}
	if code, stdout, stderr := command(t, "", "empty", "-data", data); code != exitBusy || stdout != "" {
		t.Errorf("while it runs: %d %q", code, stderr)
	}
	post("rescue/copies/1/restore")
	if body := get(t, s.url); !strings.Contains(body, "set-aside") || !strings.Contains(body, "/projects/1") {
		t.Error("the projects are not there behind the way back")
	}
	s.end(t)
	if code, stdout, stderr := command(t, "", "empty", "-data", data); code != exitRefused || stdout != "" || !strings.Contains(stderr, "nothing was changed") {
		t.Errorf("a file that is well: %d %q %q", code, stdout, stderr)
	}
	spoil()
	if code, stdout, stderr := command(t, "", "empty", "-data", data); code != exitDone || !strings.Contains(stdout, "set-aside") {
		t.Errorf("%d %q %q", code, stdout, stderr)
	}
	s = start(t, "-addr", "127.0.0.1:0", "-data", data, "-no-browser")
	if body := get(t, s.url); strings.Contains(body, "/projects/1") || strings.Contains(body, "cannot be opened") {
		t.Error("the file that was begun is not empty")
	}
}
