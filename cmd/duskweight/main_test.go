package main

import (
	"bufio"
	"bytes"
	"context"
	"database/sql"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"net"
	"net/http"
	"net/url"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"duskweight/internal/catalog"
	"duskweight/internal/document"
	"duskweight/internal/store"
)

// home gives a test a home of its own and leaves the working folder in it; nothing may appear there by itself.
func home(t *testing.T) string {
	t.Helper()
	dir := t.TempDir()
	for _, name := range []string{"XDG_DATA_HOME", "DUSKWEIGHT_DATA", "DISPLAY", "WAYLAND_DISPLAY"} {
		t.Setenv(name, "")
	}
	t.Setenv("HOME", dir)
	t.Setenv("AppData", dir)
	t.Chdir(dir)
	return dir
}

func isEmpty(t *testing.T, dir string) {
	t.Helper()
	entries, err := os.ReadDir(dir)
	if err != nil {
		t.Fatal(err)
	}
	for _, e := range entries {
		t.Errorf("%s was written", e.Name())
	}
}

// command runs a command that ends by itself.
func command(t *testing.T, stdin string, args ...string) (code int, stdout, stderr string) {
	t.Helper()
	var out, err bytes.Buffer
	code = run(t.Context(), args, strings.NewReader(stdin), &out, &err)
	return code, out.String(), err.String()
}

// started is a running program.
type started struct {
	url   string
	stop  context.CancelFunc
	ended chan int
}

// start runs the whole program on a free port and waits for its address.
func start(t *testing.T, args ...string) *started {
	t.Helper()
	ctx, stop := context.WithCancel(t.Context())
	out, in := io.Pipe()
	s := &started{stop: stop, ended: make(chan int, 1)}
	go func() {
		code := run(ctx, args, strings.NewReader(""), in, t.Output())
		_ = in.Close()
		s.ended <- code
	}()
	lines := bufio.NewScanner(out)
	for lines.Scan() {
		if rest, ok := strings.CutPrefix(lines.Text(), "Duskweight: "); ok {
			s.url = rest
			break
		}
	}
	go func() { _, _ = io.Copy(io.Discard, out) }()
	if s.url == "" {
		t.Fatal("the program gives no address")
	}
	t.Cleanup(func() { s.end(t) })
	return s
}

// end stops the program and waits for its end.
func (s *started) end(t *testing.T) {
	t.Helper()
	if s.ended == nil {
		return
	}
	s.stop()
	select {
	case code := <-s.ended:
		if code != exitDone {
			t.Errorf("the program ended with %d", code)
		}
	case <-time.After(20 * time.Second):
		t.Error("the program does not end")
	}
	s.ended = nil
}

func get(t *testing.T, url string) string {
	t.Helper()
	r, err := http.Get(url)
	if err != nil {
		t.Fatal(err)
	}
	defer r.Body.Close()
	body, err := io.ReadAll(r.Body)
	if err != nil || r.StatusCode != http.StatusOK {
		t.Fatalf("%s: %d %v", url, r.StatusCode, err)
	}
	return string(body)
}

// The whole program: start, work, end, start again; what was saved is there.
func TestStartWorkAndStartAgain(t *testing.T) {
	data := filepath.Join(home(t), "a folder with ? and #")
	s := start(t, "-addr", "127.0.0.1:0", "-data", data, "-no-browser")
	if body := get(t, s.url); !strings.Contains(body, "Projects") || !strings.Contains(body, "duskweight.db") {
		t.Error("the first page does not name the data file")
	}
	r, err := http.PostForm(s.url+"settings", url.Values{"units": {"imperial"}, "currency": {"EUR"}})
	if err != nil || r.StatusCode != http.StatusOK {
		t.Fatal(r, err)
	}
	r.Body.Close()
	s.end(t)
	s = start(t, "serve", "-addr", "127.0.0.1:0", "-data", data, "-no-browser")
	if body := get(t, s.url+"settings"); !strings.Contains(body, `value="imperial" checked`) {
		t.Error("the settings are lost")
	}
}

// A second start on the same file gives the first one's address and leaves.
func TestSecondStart(t *testing.T) {
	data := home(t)
	s := start(t, "-addr", "127.0.0.1:0", "-data", data, "-no-browser")
	began := time.Now()
	code, stdout, stderr := command(t, "", "-addr", "127.0.0.1:0", "-data", data, "-no-browser")
	if code != exitDone || !strings.Contains(stdout, s.url) || stderr != "" {
		t.Errorf("%d %q %q", code, stdout, stderr)
	}
	if took := time.Since(began); took > 2*time.Second {
		t.Errorf("it took %v", took)
	}
	get(t, s.url)
}

// A taken port moves to the next one, and that is said.
func TestTakenPort(t *testing.T) {
	taken, err := net.Listen("tcp", "127.0.0.1:8807")
	if err == nil {
		defer taken.Close()
	}
	l, note, err := listen(t.Context(), "")
	if err != nil {
		t.Fatal(err)
	}
	defer l.Close()
	if strings.HasSuffix(l.Addr().String(), ":8807") || !strings.Contains(note, "Port 8807 is taken") {
		t.Errorf("%v %q", l.Addr(), note)
	}
	if host, _, _ := net.SplitHostPort(l.Addr().String()); host != "127.0.0.1" {
		t.Errorf("it listens on %s", host)
	}
}

// version says of what it is made: the built-in SQLite names itself, and the file that a start makes has the schema that is said.
func TestVersion(t *testing.T) {
	data := home(t)
	_, stdout, _ := command(t, "", "version")
	start(t, "-addr", "127.0.0.1:0", "-data", data, "-no-browser").end(t)
	db, err := sql.Open("sqlite3", filepath.Join(data, store.FileName))
	if err != nil {
		t.Fatal(err)
	}
	defer db.Close()
	var schema int
	var built string
	if err := db.QueryRow("SELECT user_version, sqlite_version() FROM pragma_user_version").Scan(&schema, &built); err != nil {
		t.Fatal(err)
	}
	for _, want := range []string{fmt.Sprintf("schema %d\n", schema), "SQLite " + built + "\n"} {
		if !strings.Contains(stdout, want) {
			t.Errorf("%q is not in %q", want, stdout)
		}
	}
}

// help, version, where, schema and evaluate write nothing.
func TestCommandsWriteNothing(t *testing.T) {
	dir := home(t)
	sample, err := document.Encode(catalog.Sample())
	if err != nil {
		t.Fatal(err)
	}
	for _, args := range [][]string{{"help"}, {"-h"}, {"--help"}, {"version"}, {"--version"}, {"where"}, {"schema"}, {"evaluate", "-"}} {
		code, stdout, _ := command(t, string(sample), args...)
		if code != exitDone || stdout == "" {
			t.Errorf("%q: %d %q", args, code, stdout)
		}
	}
	isEmpty(t, dir)
	if _, stdout, _ := command(t, "", "where"); !strings.HasPrefix(stdout, dir) || !strings.HasSuffix(stdout, "duskweight.db\n") {
		t.Errorf("where says %q", stdout)
	}
	for _, args := range [][]string{{"schema"}, {"evaluate", "-"}} {
		if _, stdout, _ := command(t, string(sample), args...); !json.Valid([]byte(stdout)) {
			t.Errorf("%q does not print JSON", args)
		}
	}
}

func TestEvaluateRefuses(t *testing.T) {
	dir := home(t)
	for name, doc := range map[string]string{
		"not JSON": "hello", "newer": `{"duskweight":99}`, "unknown field": `{"duskweight":1,"colour":"red"}`, "empty": "",
		"no name": `{"duskweight":1,"project":{"name":""}}`,
	} {
		code, stdout, stderr := command(t, doc, "evaluate", "-")
		if code != exitRefused || stdout != "" || !strings.Contains(stderr, ": ") {
			t.Errorf("%s: %d %q %q", name, code, stdout, stderr)
		}
		code, stdout, stderr = command(t, doc, "evaluate", "-", "--json")
		var got struct{ Problems []struct{ Path, Say string } }
		if err := json.Unmarshal([]byte(stderr), &got); err != nil || code != exitRefused || stdout != "" || len(got.Problems) == 0 || got.Problems[0].Path == "" || got.Problems[0].Say == "" {
			t.Errorf("%s: %d %q %q", name, code, stdout, stderr)
		}
	}
	if code, stdout, stderr := command(t, "", "evaluate", filepath.Join(dir, "none.json")); code != exitRefused || stdout != "" || stderr == "" {
		t.Errorf("no file: %d %q %q", code, stdout, stderr)
	}
	if code, _, stderr := command(t, strings.Repeat(" ", documentLimit+1), "evaluate", "-"); code != exitRefused || !strings.Contains(stderr, "8 MiB") {
		t.Errorf("too large: %d %q", code, stderr)
	}
}

func TestMisused(t *testing.T) {
	dir := home(t)
	for _, args := range [][]string{
		{"dance"},
		{"-nonsense"},
		{"serve", "x"},
		{"evaluate"},
		{"evaluate", "a", "b"},
		{"evaluate", "-x", "-"},
		{"schema", "x"},
		{"version", "x"},
		{"where", "x"},
		{"backup", "x"},
		{"alive", "x"},
		{"alive", "-addr", "example.com:80"},
		{"alive", "-addr", ""},
		{"copies", "x"},
		{"doctor", "x"},
		{"doctor", "-addr", "example.com:80"},
		{"restore"},
		{"restore", "1", "2"},
		{"-addr", "0.0.0.0:8807"},
		{"-addr", "192.168.1.2:80"},
		{"-addr", ":8807"},
		{"-addr", "127.0.0.1"},
		{"-addr", "127.0.0.1:x"},
		{"-addr", "127.0.0.1:70000"},
		{"-addr", "example.com:80"},
	} {
		if code, stdout, stderr := command(t, "", args...); code != exitUsage || stdout != "" || stderr == "" {
			t.Errorf("%q: %d %q %q", args, code, stdout, stderr)
		}
	}
	isEmpty(t, dir)
}

// A file that is no database is left as it is: the program says so on its page, and by command it is refused.
func TestForeignFile(t *testing.T) {
	dir := home(t)
	file := filepath.Join(dir, "duskweight.db")
	if err := os.WriteFile(file, []byte("a letter to my aunt, long enough to be taken for something"), 0o600); err != nil {
		t.Fatal(err)
	}
	if code, stdout, stderr := command(t, "", "backup", "-data", dir); code != exitRefused || stdout != "" || !strings.Contains(stderr, "left as it is") {
		t.Errorf("%d %q %q", code, stdout, stderr)
	}
	s := start(t, "-addr", "127.0.0.1:0", "-data", dir, "-no-browser")
	if body := get(t, s.url); !strings.Contains(body, "a file that is not a database") || !strings.Contains(body, "There is no spare copy") {
		t.Error("the page does not say what was found")
	}
	s.end(t)
	if now, err := os.ReadFile(file); err != nil || !strings.HasPrefix(string(now), "a letter") {
		t.Errorf("%q %v", now, err)
	}
}

type fullDisk struct{}

func (fullDisk) Write([]byte) (int, error) { return 0, errors.New("no space left on device") }

func TestOutputThatFails(t *testing.T) {
	var stderr bytes.Buffer
	if code := run(t.Context(), []string{"schema"}, strings.NewReader(""), fullDisk{}, &stderr); code != exitRefused || stderr.Len() == 0 {
		t.Errorf("%d %q", code, stderr.String())
	}
}
