package main

import (
	"fmt"
	"net/http"
	"net/http/httptest"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"duskweight/internal/store"
)

// alive is content with a program that can save. It is not content with one whose data file was moved away, nor with one
// that has ended.
func TestAlive(t *testing.T) {
	data := filepath.Join(home(t), "data")
	s := start(t, "-addr", "127.0.0.1:0", "-data", data, "-no-browser")
	addr := strings.Trim(strings.TrimPrefix(s.url, "http://"), "/")
	if code, stdout, stderr := command(t, "", "alive", "-addr", addr); code != exitDone || stdout+stderr != "" {
		t.Errorf("a running program: %d %q %q", code, stdout, stderr)
	}
	file := filepath.Join(data, store.FileName)
	if err := os.Rename(file, file+".moved"); err != nil {
		t.Fatal(err)
	}
	if code, _, stderr := command(t, "", "alive", "-addr", addr); code != exitRefused || !strings.Contains(stderr, "503") || !strings.Contains(stderr, "was moved") {
		t.Errorf("a program without its file: %d %q", code, stderr)
	}
	if err := os.Rename(file+".moved", file); err != nil {
		t.Fatal(err)
	}
	s.end(t)
	if code, _, stderr := command(t, "", "alive", "-addr", addr); code != exitRefused || stderr == "" {
		t.Errorf("a program that has ended: %d %q", code, stderr)
	}
}

// Another program at the address is not taken for ours, and where it sends to another address nobody is asked there.
func TestAliveOfAnother(t *testing.T) {
	asked := 0
	elsewhere := httptest.NewServer(http.HandlerFunc(func(w http.ResponseWriter, _ *http.Request) { asked++; fmt.Fprintln(w, "ok") }))
	defer elsewhere.Close()
	for name, answer := range map[string]http.HandlerFunc{
		"a page":           func(w http.ResponseWriter, _ *http.Request) { fmt.Fprintln(w, "<p>ok</p>") },
		"a link elsewhere": func(w http.ResponseWriter, r *http.Request) { http.Redirect(w, r, elsewhere.URL, http.StatusFound) },
		"an error":         func(w http.ResponseWriter, _ *http.Request) { http.Error(w, "ok", http.StatusInternalServerError) },
	} {
		other := httptest.NewServer(answer)
		if code, _, stderr := command(t, "", "alive", "-addr", strings.TrimPrefix(other.URL, "http://")); code != exitRefused || stderr == "" {
			t.Errorf("%s: %d %q", name, code, stderr)
		}
		other.Close()
	}
	if asked != 0 {
		t.Errorf("the other address was asked %d times", asked)
	}
}
