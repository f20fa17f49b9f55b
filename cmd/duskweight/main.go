// Command duskweight works out whether a lifted mass or a battery carries a home's night. Without a word behind it, it
// serves its pages on this computer and opens them.
package main

import (
	"context"
	"errors"
	"fmt"
	"io"
	"os"
	"os/signal"
	"syscall"

	"duskweight/internal/document"
	"duskweight/internal/store"
)

func main() {
	ctx, stop := signal.NotifyContext(context.Background(), os.Interrupt, syscall.SIGTERM)
	code := run(ctx, os.Args[1:], os.Stdin, os.Stdout, os.Stderr)
	stop()
	os.Exit(code)
}

// Exit codes, as help says them.
const (
	exitDone    = 0
	exitRefused = 1 // it could not be done, or a document was refused
	exitUsage   = 2 // the command line was not understood
	exitBusy    = 3 // another Duskweight has the data file open
	exitWrong   = 4 // doctor found something wrong
)

const help = `Duskweight plans a store for the night: a lifted mass or a battery. Duskweight plans; it certifies nothing.

  duskweight [serve]          serve the pages on this computer and open them
      -addr 127.0.0.1:8807      where to listen; port 0 takes any free port
      -data FOLDER              where the data file lies (see: duskweight where)
      -no-browser               open no browser
  duskweight evaluate FILE    print the whole result of an exported project as JSON; - reads standard input;
                              with -years 200 also what 200 weather years come to
      --json                    print what is wrong with a document as JSON
  duskweight cheapest FILE    print what each variant costs against its full nights, over other numbers of panels
                              and other sizes of its stores, and the cheapest with enough of them, as JSON
  duskweight schema           print the JSON Schema of the project document
  duskweight where            print where the data file lies
  duskweight doctor           look at the data file, its folder, its copies, the clock, the address and the browser, and
                              print for each what is wrong and the command that mends it; nothing is changed
      -addr 127.0.0.1:8807      the address to look at
  duskweight alive            ask the running program whether it can read and save; ends with 0 where it can, with 1 and
                              the reason where it cannot or does not answer
      -addr 127.0.0.1:8807      where it listens
  duskweight backup           make a checked copy of the data file and print where it is
  duskweight copies           list the copies: number, time, bytes, file, how many projects
  duskweight restore WHICH    go back to a copy: its number or its file; this can be taken back
  duskweight rescue FOLDER    write each project that can be read, of a damaged data file too, into FOLDER
  duskweight empty            begin an empty data file in place of a lost one, which is kept
      -data FOLDER              as above, for where, doctor, backup, copies, restore, rescue and empty
  duskweight version          print the version, and those of the data file, the document and SQLite
  duskweight help             print this

Exit codes: 0 done; 1 not possible, or the document was refused; 2 the command was not understood;
3 the data file is open in another Duskweight; 4 doctor found something wrong. A second serve of the same file opens the page of the first and ends with 0.
`

// run is the whole program. It returns the exit code.
func run(ctx context.Context, args []string, stdin io.Reader, stdout, stderr io.Writer) int {
	verb := "serve"
	if len(args) > 0 && args[0] != "" && args[0][0] != '-' {
		verb, args = args[0], args[1:]
	} else if len(args) > 0 && (args[0] == "-h" || args[0] == "-help" || args[0] == "--help") {
		verb, args = "help", args[1:]
	} else if len(args) > 0 && (args[0] == "-version" || args[0] == "--version") {
		verb, args = "version", args[1:]
	}
	switch verb {
	case "serve":
		return serve(ctx, args, stdout, stderr)
	case "evaluate":
		return evaluate(args, stdin, stdout, stderr)
	case "cheapest":
		return cheapest(ctx, args, stdin, stdout, stderr)
	case "schema":
		return alone(args, stderr, func() error { return printSchema(stdout) })
	case "where":
		return where(args, stdout, stderr)
	case "doctor":
		return doctor(ctx, args, stdout, stderr)
	case "alive":
		return alive(ctx, args, stderr)
	case "backup":
		return backup(ctx, args, stdout, stderr)
	case "copies":
		return copies(ctx, args, stdout, stderr)
	case "restore":
		return restore(ctx, args, stdout, stderr)
	case "rescue":
		return rescue(args, stdout, stderr)
	case "empty":
		return empty(ctx, args, stdout, stderr)
	case "version":
		return alone(args, stderr, func() error {
			return say(stdout, "duskweight %s\ndata file: schema %d\nproject document: edition %d\nSQLite %s\n", version(), store.Schema, document.Edition, store.SQLite())
		})
	case "help":
		return alone(nil, stderr, func() error { return say(stdout, "%s", help) })
	}
	return misused(stderr, fmt.Sprintf("there is no command %q", verb))
}

// alone runs a command that takes no arguments.
func alone(args []string, stderr io.Writer, do func() error) int {
	if len(args) > 0 {
		return misused(stderr, fmt.Sprintf("%q is not understood here", args[0]))
	}
	return done(stderr, do())
}

func done(stderr io.Writer, err error) int {
	if err == nil {
		return exitDone
	}
	fmt.Fprintln(stderr, "duskweight:", err)
	if errors.Is(err, store.ErrBusy) {
		return exitBusy
	}
	return exitRefused
}

func misused(stderr io.Writer, why string) int {
	fmt.Fprintf(stderr, "duskweight: %s; see: duskweight help\n", why)
	return exitUsage
}

// say writes and passes on that it could not: a full disk behind a pipe is a failure.
func say(w io.Writer, format string, args ...any) error {
	_, err := fmt.Fprintf(w, format, args...)
	return err
}
