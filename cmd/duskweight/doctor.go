package main

import (
	"context"
	"errors"
	"flag"
	"fmt"
	"io"
	"io/fs"
	"net"
	"net/url"
	"os"
	"path/filepath"
	"runtime"
	"strings"
	"time"

	"duskweight/internal/store"
)

// A clock outside of these years is wrong: the first version is of 2026, and a board without a battery for its clock starts
// in 1970. The last year is our own judgement.
const firstYear, lastYear = 2026, 2099

// How much room the disk must have left: going back to a copy writes one of what is there and one of what comes, and the log
// of the change is a third. The room for a small file is our own judgement.
const (
	roomInFiles = 3
	leastRoom   = 64 << 20
)

// answerWait is how long the program that has the file may take to answer.
const answerWait = 2 * time.Second

// finding is one line of doctor: what was looked at, what was found, and where that is wrong what mends it.
type finding struct {
	about, found string
	mend         string // one command; "" where nothing is wrong
}

func well(about, format string, args ...any) finding {
	return finding{about: about, found: fmt.Sprintf(format, args...)}
}

// checkup is what doctor looks at, and with what.
type checkup struct {
	file, data, addr string // data and addr as they were given, "" where they were not
	now              func() time.Time
	room             func(folder string) (bytes int64, known bool)
}

// doctor looks at all that a start needs, and prints a line for each. Nothing is changed.
func doctor(ctx context.Context, args []string, stdout, stderr io.Writer) int {
	c := checkup{now: time.Now, room: store.RoomLeft}
	flags := flag.NewFlagSet("doctor", flag.ContinueOnError)
	flags.SetOutput(io.Discard)
	flags.StringVar(&c.data, "data", "", "")
	flags.StringVar(&c.addr, "addr", "", "")
	if err := flags.Parse(args); err != nil || flags.NArg() > 0 {
		return misused(stderr, "doctor takes only -data FOLDER and -addr ADDRESS")
	}
	err := checkAddr(c.addr)
	if err != nil {
		return misused(stderr, err.Error())
	}
	if c.file, err = dataFile(c.data); err != nil {
		return done(stderr, err)
	}
	code := exitDone
	for _, f := range c.all(ctx) {
		line := "well \t" + f.about + ": " + f.found
		if f.mend != "" {
			code, line = exitWrong, "wrong\t"+f.about+": "+f.found+" Run: "+f.mend
		}
		if err := say(stdout, "%s\n", line); err != nil {
			return done(stderr, err)
		}
	}
	return code
}

// all looks at everything, in the order in which it is mended.
func (c checkup) all(ctx context.Context) []finding {
	if real, err := filepath.EvalSymlinks(c.file); err == nil {
		c.file = real // as a start does: log and copies lie beside that one
	}
	folder, fits := c.folder()
	if !fits { // there can be no file below it
		return []finding{folder, c.clock(time.Time{}), c.address(ctx, nil), browser()}
	}
	busy, locked := store.Running(c.file)
	seen, err := store.Look(ctx, c.file, busy != nil)
	copied, copies := c.copies(ctx, seen, err, busy)
	out := c.looked(seen, err, copied, busy)
	out = append(out, folder, c.disk(seen.Size), c.clock(seen.Newest), copies, c.program(ctx, busy, locked), c.address(ctx, busy))
	return append(out, browser())
}

// run writes a command of ours for the same folder.
func (c checkup) run(verb string, words ...string) string {
	all := []string{"duskweight", verb}
	if c.data != "" {
		all = append(all, "-data", quoted(c.data))
	}
	return strings.Join(append(all, words...), " ")
}

// quoted writes a word so that the shell leaves it as it is.
func quoted(word string) string {
	safe := func(r rune) bool {
		return r >= 'a' && r <= 'z' || r >= 'A' && r <= 'Z' || r >= '0' && r <= '9' || strings.ContainsRune(`/\:._-+@`, r)
	}
	if word != "" && strings.IndexFunc(word, func(r rune) bool { return !safe(r) || r == '\\' && runtime.GOOS != "windows" }) < 0 {
		return word
	}
	if runtime.GOOS == "windows" {
		return `"` + word + `"`
	}
	return "'" + strings.ReplaceAll(word, "'", `'\''`) + "'"
}

// allow is the command of the system that lets its user write.
func allow(path string) string {
	if runtime.GOOS == "windows" {
		return "attrib -R " + quoted(path)
	}
	if info, err := os.Stat(path); err == nil && info.IsDir() {
		return "chmod u+rwx " + quoted(path)
	}
	return "chmod u+rw " + quoted(path)
}

// first says what must be done before a command that needs the file for itself.
func first(busy *store.Busy) string {
	if busy == nil {
		return ""
	}
	return " End the running Duskweight first."
}

// back is the command that goes on from a lost file: the newest copy that can be used, else what can be read of the file,
// else an empty file in its place. None of them removes the file that lies there.
func (c checkup) back(lost *store.Lost, copied int) string {
	switch {
	case copied > 0:
		return c.run("restore", fmt.Sprint(copied))
	case lost.How == store.Damaged:
		return c.run("rescue", "rescued")
	}
	return c.run("empty")
}

// looked says what a look at the data file has found. copied is the number of the newest copy that can be used, 0 for none.
func (c checkup) looked(seen store.Seen, err error, copied int, busy *store.Busy) []finding {
	const file, integrity, schema, access, change = "Data file", "Integrity", "Schema", "Write access", "Last change"
	lost, isLost := errors.AsType[*store.Lost](err)
	out := []finding{well(file, "The file %s is there (%s) and can be opened.", c.file, size(seen.Size))}
	switch {
	case isLost && lost.How == store.Damaged:
		out[0] = well(file, "The file %s is there (%s).", c.file, size(seen.Size))
		return append(out, finding{integrity, fmt.Sprintf("The file is damaged: %v.%s", plain(lost.Why), first(busy)), c.back(lost, copied)})
	case isLost:
		return []finding{{file, fmt.Sprintf("%s The place is %s.%s", lost.Say(), c.file, first(busy)), c.back(lost, copied)}}
	case errors.Is(err, fs.ErrPermission):
		return []finding{{file, fmt.Sprintf("The system does not let Duskweight read the file %s.", c.file), allow(c.file)}}
	case err != nil:
		return []finding{{file, fmt.Sprintf("The file %s cannot be looked at: %v. Choose another folder.", c.file, plain(err)), "duskweight serve -data FOLDER"}}
	case !seen.There:
		return []finding{well(file, "There is no data file yet. The first start makes the file %s.", c.file)}
	case seen.Version == 0:
		return []finding{well(file, "The file %s is empty. The next start makes its tables.", c.file)}
	}
	out = append(out, well(integrity, "Every page of the file and the newest state of each project can be read."))
	switch {
	case seen.Version > store.Schema:
		out = append(out, finding{schema, fmt.Sprintf("A newer Duskweight wrote the file (schema %d; this program knows %d). Nothing can be saved. Install the newer Duskweight, then compare the two schema numbers.", seen.Version, store.Schema), "duskweight version"})
	case seen.Version < store.Schema:
		out = append(out, well(schema, "The file has the older schema %d. The next start makes a copy and then brings the file to schema %d.", seen.Version, store.Schema))
	default:
		out = append(out, well(schema, "The file has schema %d, as this program makes it.", seen.Version))
	}
	if seen.Protected {
		out = append(out, finding{access, "The file is write-protected. Nothing can be saved.", allow(c.file)})
	} else {
		out = append(out, well(access, "The system lets Duskweight write to the file."))
	}
	switch {
	case seen.HalfWritten:
		out = append(out, finding{change, "A program was stopped in the middle of a change, and a journal lies beside the file. The next opening takes the half-written change back.", c.run("backup")})
	case seen.Replaced:
		out = append(out, well(change, "The file was replaced while a Duskweight had it open. The log beside it is that of the old file, and the next start sets it aside."))
	case seen.Cut:
		out = append(out, well(change, "The program was cut off the last time. The last changes are in the log beside the file, and the next start reads them."))
	default:
		out = append(out, well(change, "The last change is complete."))
	}
	return out
}

// plain is what an error says without the name of its package.
func plain(err error) string {
	return strings.TrimSuffix(strings.Join(strings.Fields(strings.ReplaceAll(err.Error(), "store: ", "")), " "), ".")
}

// size writes a size for a sentence: with two digits, or without a decimal.
func size(bytes int64) string {
	in, units := float64(bytes)/(1<<10), []string{"KiB", "MiB", "GiB", "TiB"}
	for in >= 999.5 && len(units) > 1 {
		in, units = in/(1<<10), units[1:]
	}
	if in < 9.95 {
		return fmt.Sprintf("%.1f %s", in, units[0])
	}
	return fmt.Sprintf("%.0f %s", in, units[0])
}

// standing is the folder of the data file, or the nearest one above it that is there.
func (c checkup) standing() (folder string, there bool) {
	for folder = filepath.Dir(c.file); ; folder = filepath.Dir(folder) {
		if _, err := os.Stat(folder); err == nil || folder == filepath.Dir(folder) {
			return folder, folder == filepath.Dir(c.file)
		}
	}
}

// folder says whether Duskweight can write into the folder of the data file and of the copies, and whether it is one.
func (c checkup) folder() (f finding, fits bool) {
	const about = "Folder"
	folder, there := c.standing()
	info, err := os.Stat(folder)
	if err == nil && !info.IsDir() {
		return finding{about, fmt.Sprintf("%s is a file, so the folder for the data cannot be made. Choose another folder.", folder), "duskweight serve -data FOLDER"}, false
	}
	known := false
	if err == nil {
		known, err = store.FolderWritable(folder)
	}
	switch {
	case err != nil:
		return finding{about, fmt.Sprintf("Duskweight cannot write into the folder %s: %v.", folder, plain(err)), allow(folder)}, true
	case !there:
		return well(about, "The folder %s is not there yet. The first start makes it.", filepath.Dir(c.file)), true
	case !known:
		return well(about, "The folder %s is there. This system shows only at a save whether Duskweight can write into it.", folder), true
	}
	return well(about, "The folder %s is there, and Duskweight can write into it.", folder), true
}

// disk compares the room that is left with the size of the file.
func (c checkup) disk(file int64) finding {
	const about = "Disk"
	folder, _ := c.standing()
	left, known := c.room(folder)
	needs := max(roomInFiles*file, leastRoom)
	switch {
	case !known:
		return well(about, "The system does not say how much room the disk has left.")
	case left < needs:
		return finding{about, fmt.Sprintf("The disk has %s left; saves and copies of this file need %s. Delete other files from this disk, then look again.", size(left), size(needs)), c.run("doctor")}
	}
	return well(about, "The disk has %s left; saves and copies of this file need %s.", size(left), size(needs))
}

// clock compares the clock with the newest change.
func (c checkup) clock(newest time.Time) finding {
	const about = "Clock"
	now := c.now()
	shown := now.Local().Format(time.DateTime)
	switch {
	case now.Year() < firstYear || now.Year() > lastYear:
		return finding{about, fmt.Sprintf("The clock of this computer shows %s, which cannot be right. Set the clock, then look again.", shown), c.run("doctor")}
	case now.Before(newest):
		return finding{about, fmt.Sprintf("The clock of this computer shows %s, but the newest change is of %s. Set the clock, then look again.", shown, newest.Local().Format(time.DateTime)), c.run("doctor")}
	case newest.IsZero():
		return well(about, "The clock of this computer shows %s. There is no change to compare it with.", shown)
	}
	return well(about, "The clock of this computer shows %s, after the newest change of %s.", shown, newest.Local().Format(time.DateTime))
}

// copies counts the copies and reads the newest; it returns the number of the newest copy that can be used, 0 for none.
func (c checkup) copies(ctx context.Context, seen store.Seen, failing error, busy *store.Busy) (usable int, f finding) {
	const about = "Copies"
	anew := c.run("backup")
	if lost, ok := errors.AsType[*store.Lost](failing); ok {
		anew = c.back(lost, 0) // nothing can be copied
	}
	all, err := store.Copies(c.file)
	if err != nil {
		return 0, finding{about, fmt.Sprintf("The copies cannot be listed: %v.", plain(err)), allow(filepath.Join(filepath.Dir(c.file), "backups"))}
	}
	if len(all) == 0 && failing != nil {
		return 0, well(about, "There is no spare copy.")
	}
	if len(all) == 0 && seen.Newest.IsZero() {
		return 0, well(about, "There is no spare copy yet, and no change that needs one.")
	}
	if len(all) == 0 {
		return 0, finding{about, "There is no spare copy of your projects." + first(busy), anew}
	}
	var failed error
	for _, b := range all {
		err := store.Usable(ctx, b.Path)
		if err == nil {
			usable = b.Number
			break
		}
		if failed == nil {
			failed = err
		}
	}
	count := "There is 1 spare copy."
	if len(all) > 1 {
		count = fmt.Sprintf("There are %d spare copies.", len(all))
	}
	newest := fmt.Sprintf("%s The newest is number %d of %s", count, all[0].Number, all[0].At.Local().Format(time.DateTime))
	switch {
	case failed == nil:
		return usable, well(about, "%s, and every page of that copy can be read.", newest)
	case usable > 0:
		if failing != nil {
			anew = c.run("restore", fmt.Sprint(usable))
		}
		return usable, finding{about, fmt.Sprintf("%s, and that copy cannot be used: %v. The newest usable copy is number %d.%s", newest, plain(failed), usable, first(busy)), anew}
	}
	return 0, finding{about, fmt.Sprintf("%s. None of the copies can be used: %v.%s", newest, plain(failed), first(busy)), anew}
}

// program says whether a Duskweight has the data file open, and whether that one answers.
func (c checkup) program(ctx context.Context, busy *store.Busy, err error) finding {
	const about = "Program"
	if err != nil {
		return finding{about, fmt.Sprintf("The lock of the data file cannot be read: %v.", plain(err)), allow(c.file + ".lock")}
	}
	if busy == nil {
		return well(about, "No other Duskweight has the data file open.")
	}
	if busy.Address == "" {
		return well(about, "Another Duskweight command has the data file open at this moment.")
	}
	if at, err := url.Parse(busy.Address); err != nil || !answers(ctx, at.Host) {
		return finding{about, fmt.Sprintf("A Duskweight (process %d) has the data file open, but does not answer at %s. End that process, then start again.", busy.PID, busy.Address), c.run("serve")}
	}
	return well(about, "Duskweight has the data file open and answers at %s", busy.Address)
}

func answers(ctx context.Context, host string) bool {
	d := net.Dialer{Timeout: answerWait}
	conn, err := d.DialContext(ctx, "tcp", host)
	return err == nil && conn.Close() == nil
}

// address takes the address for a moment. The usual one may be taken: a start takes the next free one then.
func (c checkup) address(ctx context.Context, busy *store.Busy) finding {
	const about = "Address"
	if busy != nil && busy.Address != "" {
		return well(about, "A second start opens the page of the running Duskweight and needs no address.")
	}
	l, _, err := listen(ctx, c.addr)
	if err != nil {
		return finding{about, fmt.Sprintf("No address can be used: %v. Port 0 chooses any free port.", plain(err)), c.run("serve", "-addr", "127.0.0.1:0")}
	}
	at := l.Addr().String()
	if err := l.Close(); err != nil {
		return finding{about, fmt.Sprintf("The address %s cannot be released: %v.", at, err), c.run("serve", "-addr", "127.0.0.1:0")}
	}
	usual := fmt.Sprintf("127.0.0.1:%d", firstPort)
	if c.addr == "" && at != usual {
		return well(about, "Another program uses %s. The next start will use %s.", usual, at)
	}
	return well(about, "The address %s is free.", at)
}

// browser says whether a start can open a page. Where it cannot, nothing is wrong: the address is printed.
func browser() finding {
	const about = "Browser"
	if !hasScreen() {
		return well(about, "There is no screen here. A start prints its address; type it into a browser on this computer.")
	}
	if c := showing(""); c.Err != nil {
		return well(about, "The command %s, which opens a browser, is not installed. A start prints its address; type it into your browser.", filepath.Base(c.Path))
	}
	return well(about, "A start opens your browser.")
}
