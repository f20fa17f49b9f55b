package main

import (
	"bytes"
	"database/sql"
	"errors"
	"fmt"
	"io/fs"
	"net"
	"net/http"
	"net/url"
	"os"
	"path/filepath"
	"runtime"
	"strings"
	"testing"
	"time"

	"duskweight/internal/store"
)

// kept makes a data file with the worked example and one copy of it, closed, and returns the folder.
func kept(t *testing.T) string {
	t.Helper()
	data := filepath.Join(home(t), "data")
	s := start(t, "-addr", "127.0.0.1:0", "-data", data, "-no-browser")
	r, err := http.PostForm(s.url+"sample", url.Values{})
	if err != nil || r.StatusCode != http.StatusOK {
		t.Fatal(r, err)
	}
	r.Body.Close()
	s.end(t)
	if code, _, stderr := command(t, "", "backup", "-data", data); code != exitDone {
		t.Fatal(stderr)
	}
	return data
}

// state is every file below a folder with its bytes, its time and its rights.
func state(t *testing.T, folder string) string {
	t.Helper()
	var all strings.Builder
	err := filepath.WalkDir(folder, func(path string, e fs.DirEntry, err error) error {
		if err != nil || e.IsDir() {
			fmt.Fprintln(&all, path)
			return err
		}
		data, err := os.ReadFile(path)
		info, failed := e.Info()
		if errors.Join(err, failed) == nil {
			fmt.Fprintf(&all, "%s %v %v %x\n", path, info.Mode(), info.ModTime(), data)
		}
		return errors.Join(err, failed)
	})
	if err != nil {
		t.Fatal(err)
	}
	return all.String()
}

// examined runs doctor and returns its lines by what they are about. It makes sure that nothing was changed, and that the
// code says whether a line is wrong.
func examined(t *testing.T, data string, args ...string) map[string]string {
	t.Helper()
	return read(t, data, func() (int, string, string) {
		return command(t, "", append([]string{"doctor", "-data", data}, args...)...)
	})
}

func read(t *testing.T, data string, doctor func() (code int, stdout, stderr string)) map[string]string {
	t.Helper()
	root, err := os.Getwd() // home leaves it above all that a test makes
	if err != nil {
		t.Fatal(err)
	}
	before := state(t, root)
	code, stdout, stderr := doctor()
	if stderr != "" {
		t.Errorf("doctor says %q", stderr)
	}
	if state(t, root) != before {
		t.Error("doctor has changed something")
	}
	lines, want := map[string]string{}, exitDone
	for line := range strings.Lines(stdout) {
		word, rest, ok := strings.Cut(strings.TrimSuffix(line, "\n"), "\t")
		about, _, named := strings.Cut(rest, ": ")
		if !ok || !named {
			t.Errorf("%q is no line of doctor", line)
		}
		if strings.TrimSpace(word) == "wrong" {
			want = exitWrong
			if !strings.Contains(rest, " Run: ") {
				t.Errorf("%q names no command", line)
			}
		}
		lines[about] = line
	}
	if code != want {
		t.Errorf("the code is %d, want %d:\n%s", code, want, stdout)
	}
	return lines
}

// finds makes sure that a line is wrong and says all of the words.
func finds(t *testing.T, line string, words ...string) {
	t.Helper()
	for _, w := range append([]string{"wrong\t"}, words...) {
		if !strings.Contains(line, w) {
			t.Errorf("%q is not in %q", w, line)
		}
	}
}

func allWell(t *testing.T, lines map[string]string) {
	t.Helper()
	for _, line := range lines {
		if !strings.HasPrefix(line, "well ") {
			t.Error(line)
		}
	}
}

// mend runs the command that a line ends with.
func mend(t *testing.T, line string) {
	t.Helper()
	_, text, _ := strings.Cut(strings.TrimSpace(line), " Run: duskweight ")
	if text == "" || strings.HasPrefix(text, "serve") || strings.HasPrefix(text, "-") { // a start ends only when it is told to
		t.Fatalf("%q names no command that ends by itself", line)
	}
	if code, stdout, stderr := command(t, "", strings.Fields(text)...); code != exitDone {
		t.Errorf("duskweight %s: %d %s %s", text, code, stdout, stderr)
	}
}

// write puts bytes into a file at a place.
func write(t *testing.T, path string, at int64, data []byte) {
	t.Helper()
	f, err := os.OpenFile(path, os.O_RDWR, 0)
	if err == nil {
		_, err = f.WriteAt(data, at)
		err = errors.Join(err, f.Close())
	}
	if err != nil {
		t.Fatal(err)
	}
}

// execute changes a data file as another program would, and leaves no log.
func execute(t *testing.T, path, statement string) {
	t.Helper()
	db, err := sql.Open("sqlite3", path)
	if err == nil {
		_, err = db.Exec(statement)
		err = errors.Join(err, db.Close())
	}
	if err != nil {
		t.Fatal(err)
	}
}

// A file that is well has a line for each thing that is looked at; without a data file nothing is wrong, and none is made.
func TestDoctorAllWell(t *testing.T) {
	data := kept(t)
	lines := examined(t, data, "-addr", "127.0.0.1:0")
	allWell(t, lines)
	for _, about := range []string{"Data file", "Integrity", "Schema", "Write access", "Last change", "Folder", "Disk", "Clock", "Copies", "Program", "Address", "Browser"} {
		if lines[about] == "" {
			t.Errorf("there is no line about %s", about)
		}
	}
	if !strings.Contains(lines["Schema"], fmt.Sprint("schema ", store.Schema)) || !strings.Contains(lines["Copies"], "1 spare copy") {
		t.Error(lines["Schema"], lines["Copies"])
	}
	none := filepath.Join(filepath.Dir(data), "none", "at all")
	lines = examined(t, none, "-addr", "127.0.0.1:0")
	allWell(t, lines)
	if !strings.Contains(lines["Data file"], "no data file yet") || !strings.Contains(lines["Folder"], "not there yet") {
		t.Error(lines)
	}
}

// A file with zeros in its first page cannot be read; the command that is named brings the projects back. Without a copy the
// projects are rescued.
func TestDoctorDamagedFile(t *testing.T) {
	data := kept(t)
	file := filepath.Join(data, store.FileName)
	write(t, file, 0, make([]byte, 4096))
	line := examined(t, data)["Integrity"]
	finds(t, line, "damaged", "duskweight restore -data "+data+" 1")
	mend(t, line)
	allWell(t, examined(t, data, "-addr", "127.0.0.1:0"))
	write(t, file, 0, make([]byte, 4096))
	if err := os.RemoveAll(filepath.Join(data, "backups")); err != nil {
		t.Fatal(err)
	}
	line = examined(t, data)["Integrity"]
	finds(t, line, "duskweight rescue -data "+data+" rescued")
	mend(t, line)
}

// A page in the middle that is no page any more is found by the check of SQLite, though the file opens.
func TestDoctorDamagedPage(t *testing.T) {
	data := kept(t)
	file := filepath.Join(data, store.FileName)
	execute(t, file, `PRAGMA journal_mode = DELETE`)
	info, err := os.Stat(file)
	if err != nil {
		t.Fatal(err)
	}
	write(t, file, info.Size()/4096/2*4096, bytes.Repeat([]byte{0xff}, 4096))
	finds(t, examined(t, data)["Integrity"], "damaged", "restore")
}

// A file that is gone while its copy is there; and what lies there without being a database.
func TestDoctorMissingFile(t *testing.T) {
	data := kept(t)
	file := filepath.Join(data, store.FileName)
	if err := os.Remove(file); err != nil {
		t.Fatal(err)
	}
	line := examined(t, data)["Data file"]
	finds(t, line, "not at its place", "restore")
	mend(t, line)
	allWell(t, examined(t, data, "-addr", "127.0.0.1:0"))
	if err := errors.Join(os.RemoveAll(filepath.Join(data, "backups")), os.WriteFile(file, []byte(strings.Repeat("a letter ", 99)), 0o600)); err != nil {
		t.Fatal(err)
	}
	line = examined(t, data)["Data file"]
	finds(t, line, "not a database", "duskweight empty")
	mend(t, line)
	allWell(t, examined(t, data, "-addr", "127.0.0.1:0"))
}

// A file of no bytes with the first bytes of a log beside it: it is looked at in a copy, and the spare copies lie beside the
// file itself.
func TestDoctorEmptiedFile(t *testing.T) {
	data := kept(t)
	file := filepath.Join(data, store.FileName)
	if err := errors.Join(os.Truncate(file, 0), os.WriteFile(file+"-wal", []byte{0}, 0o600)); err != nil {
		t.Fatal(err)
	}
	line := examined(t, data)["Data file"]
	finds(t, line, "duskweight restore -data "+data+" 1")
	mend(t, line)
	allWell(t, examined(t, data, "-addr", "127.0.0.1:0"))
}

// A newer schema: user_version and the steps one further than this program knows, as the next version would leave them. An
// older one is no fault.
func TestDoctorSchema(t *testing.T) {
	data := kept(t)
	file := filepath.Join(data, store.FileName)
	execute(t, file, fmt.Sprintf(`PRAGMA user_version = %d; INSERT INTO goose_db_version (version_id, is_applied) VALUES (%[1]d, 1)`, store.Schema+1))
	finds(t, examined(t, data)["Schema"], "newer Duskweight", fmt.Sprint("schema ", store.Schema+1), "duskweight version")
	old := filepath.Join(filepath.Dir(data), "old")
	text, err := os.ReadFile(filepath.Join(source, "testdata", "schemas", "0001.sql"))
	if err = errors.Join(err, os.MkdirAll(old, 0o700)); err != nil {
		t.Fatal(err)
	}
	execute(t, filepath.Join(old, store.FileName), string(text))
	if lines := examined(t, old); !strings.HasPrefix(lines["Schema"], "well ") || !strings.Contains(lines["Schema"], "older schema 1") {
		t.Error(lines["Schema"])
	}
}

// source is the root of the project: home leaves the working folder.
var source = func() string {
	at, _ := filepath.Abs(filepath.Join("..", ".."))
	return at
}()

// A clock before the newest change, and one of a board that has forgotten the time; so many bytes on the disk as the test says.
func TestDoctorClockAndDisk(t *testing.T) {
	data := kept(t)
	c := checkup{file: filepath.Join(data, store.FileName), data: data, now: time.Now, room: store.RoomLeft}
	line := func(about string) finding {
		t.Helper()
		for _, f := range c.all(t.Context()) {
			if f.about == about {
				return f
			}
		}
		t.Fatalf("there is no line about %s", about)
		return finding{}
	}
	if f := line("Clock"); f.mend != "" {
		t.Error(f)
	}
	c.now = func() time.Time { return time.Now().Add(-time.Hour) }
	if f := line("Clock"); f.mend == "" || !strings.Contains(f.found, "newest change") {
		t.Error(f)
	}
	for _, year := range []int{1970, 2150} {
		c.now = func() time.Time { return time.Date(year, 1, 2, 0, 0, 0, 0, time.UTC) }
		if f := line("Clock"); f.mend == "" || !strings.Contains(f.found, "cannot be right") {
			t.Error(year, f)
		}
	}
	if f := line("Disk"); f.mend != "" && runtime.GOOS == "linux" {
		t.Error(f)
	}
	c.room = func(string) (int64, bool) { return 1 << 20, true }
	if f := line("Disk"); f.mend == "" || !strings.Contains(f.found, "1.0 MiB left") || !strings.Contains(f.found, "64 MiB") {
		t.Error(f)
	}
	if f := c.disk(100 << 20); !strings.Contains(f.found, "300 MiB") { // three times the file
		t.Error(f)
	}
}

// A size in a sentence has two digits, or no decimal.
func TestDoctorSize(t *testing.T) {
	for bytes, want := range map[int64]string{
		0: "0.0 KiB", 4096: "4.0 KiB", 90 << 10: "90 KiB", 999 << 10: "999 KiB", 1000 << 10: "1.0 MiB", 1 << 20: "1.0 MiB",
		1<<20 + 1<<19: "1.5 MiB", 64 << 20: "64 MiB", 1 << 30: "1.0 GiB", 245 << 30: "245 GiB", 3 << 40: "3.0 TiB",
	} {
		if is := size(bytes); is != want {
			t.Errorf("%d bytes are %q, want %q", bytes, is, want)
		}
	}
}

// No copy, and a newest copy with a spoilt page: backup mends both.
func TestDoctorCopies(t *testing.T) {
	data := kept(t)
	copied, err := store.Copies(filepath.Join(data, store.FileName))
	if err != nil || len(copied) != 1 {
		t.Fatal(copied, err)
	}
	write(t, copied[0].Path, copied[0].Size/4096/2*4096, bytes.Repeat([]byte{0xff}, 4096))
	line := examined(t, data)["Copies"]
	finds(t, line, "None of the copies can be used", "duskweight backup")
	mend(t, line)
	if line = examined(t, data)["Copies"]; !strings.Contains(line, "2 spare copies") || !strings.HasPrefix(line, "well ") {
		t.Error(line)
	}
	if err := os.RemoveAll(filepath.Join(data, "backups")); err != nil {
		t.Fatal(err)
	}
	line = examined(t, data)["Copies"]
	finds(t, line, "no spare copy", "duskweight backup")
	mend(t, line)
	allWell(t, examined(t, data, "-addr", "127.0.0.1:0"))
}

// A journal that a stop left is told and left where it is: a header of SQLite's rollback journal (SQLite file format, section
// 3) that names no page and the size that the file has, so that nothing is taken back.
func TestDoctorJournal(t *testing.T) {
	data := kept(t)
	file := filepath.Join(data, store.FileName)
	execute(t, file, `PRAGMA journal_mode = DELETE`)
	info, err := os.Stat(file)
	if err != nil {
		t.Fatal(err)
	}
	pages := uint32(info.Size() / 4096)
	head := make([]byte, 512)
	copy(head, []byte{0xd9, 0xd5, 0x05, 0xf9, 0x20, 0xa1, 0x63, 0xd7})
	copy(head[16:], []byte{byte(pages >> 24), byte(pages >> 16), byte(pages >> 8), byte(pages), 0, 0, 2, 0, 0, 0, 16, 0})
	if err := os.WriteFile(file+"-journal", head, 0o600); err != nil {
		t.Fatal(err)
	}
	line := examined(t, data)["Last change"]
	finds(t, line, "half-written", "duskweight backup")
	mend(t, line)
	allWell(t, examined(t, data, "-addr", "127.0.0.1:0"))
}

// A log that a stop left is read in a copy, with the change in it.
func TestDoctorLog(t *testing.T) {
	data := kept(t)
	file := filepath.Join(data, store.FileName)
	db, err := sql.Open("sqlite3", file+"?_journal_mode=WAL")
	if err != nil {
		t.Fatal(err)
	}
	defer db.Close()
	if _, err := db.Exec(`INSERT INTO setting (name, value) VALUES ('currency', 'EUR')`); err != nil {
		t.Fatal(err)
	}
	cut := filepath.Join(filepath.Dir(data), "cut") // as it lies on the disk while it is open
	for _, side := range []string{"", "-wal"} {
		text, err := os.ReadFile(file + side)
		if err = errors.Join(err, os.MkdirAll(cut, 0o700), os.WriteFile(filepath.Join(cut, store.FileName)+side, text, 0o600)); err != nil {
			t.Fatal(err)
		}
	}
	if line := examined(t, cut)["Last change"]; !strings.Contains(line, "in the log") || !strings.HasPrefix(line, "well ") {
		t.Error(line)
	}
}

// While a Duskweight runs on the data, doctor names its address; a program that holds the lock without an answer is wrong.
func TestDoctorRunning(t *testing.T) {
	data := kept(t)
	s := start(t, "-addr", "127.0.0.1:0", "-data", data, "-no-browser")
	lines := examined(t, data)
	allWell(t, lines)
	if !strings.Contains(lines["Program"], s.url) {
		t.Error(lines["Program"])
	}
	s.end(t)
	l, err := net.Listen("tcp", "127.0.0.1:0")
	if err != nil {
		t.Fatal(err)
	}
	gone := l.Addr().String()
	l.Close()
	opened, err := store.Open(t.Context(), filepath.Join(data, store.FileName), time.Now())
	if err != nil {
		t.Fatal(err)
	}
	defer opened.Close()
	if err := opened.Announce("http://" + gone + "/"); err != nil {
		t.Fatal(err)
	}
	finds(t, examined(t, data)["Program"], "does not answer", gone, fmt.Sprint(os.Getpid()))
}

// A wanted address that another program has is wrong; the usual one is not, for a start takes the next.
func TestDoctorAddress(t *testing.T) {
	data := kept(t)
	l, err := net.Listen("tcp", "127.0.0.1:0")
	if err != nil {
		t.Fatal(err)
	}
	defer l.Close()
	finds(t, examined(t, data, "-addr", l.Addr().String())["Address"], "in use", "duskweight serve -data "+data+" -addr 127.0.0.1:0")
	if usual, err := net.Listen("tcp", "127.0.0.1:8807"); err == nil {
		defer usual.Close()
	}
	if line := examined(t, data)["Address"]; !strings.HasPrefix(line, "well ") || !strings.Contains(line, "Another program uses 127.0.0.1:8807") {
		t.Error(line)
	}
}

// A browser needs a screen and the command that opens one; without either a start prints its address, which is no fault.
func TestDoctorBrowser(t *testing.T) {
	if runtime.GOOS != "linux" {
		t.Skip("the command is another one on this system")
	}
	dir := home(t)
	if f := browser(); !strings.Contains(f.found, "no screen") || f.mend != "" {
		t.Error(f)
	}
	t.Setenv("DISPLAY", ":0")
	t.Setenv("PATH", dir)
	if f := browser(); !strings.Contains(f.found, "xdg-open") || f.mend != "" {
		t.Error(f)
	}
	if err := os.WriteFile(filepath.Join(dir, "xdg-open"), []byte("#!/bin/sh\n"), 0o700); err != nil {
		t.Fatal(err)
	}
	if f := browser(); f.found != "A start opens your browser." {
		t.Error(f)
	}
}

// A file lies where the folder should be.
func TestDoctorFileForFolder(t *testing.T) {
	finds(t, examined(t, filepath.Join(kept(t), store.FileName, "below"))["Folder"], "is a file", "-data FOLDER")
}
