package main

import (
	"context"
	"errors"
	"flag"
	"fmt"
	"io"
	"log/slog"
	"os"
	"path/filepath"
	"strconv"
	"time"

	"duskweight/internal/document"
	"duskweight/internal/store"
)

// tendEvery is how often a copy is made while the program runs, when something changed.
const tendEvery = 30 * time.Minute

// guardEvery is how often it is looked at whether the file is still at its place.
const guardEvery = 5 * time.Second

// onceSaid looks as often as it is asked and reports a failure the first time alone.
func onceSaid(look func() error) func(context.Context, time.Time) error {
	said := false
	return func(context.Context, time.Time) error {
		err := look()
		if said {
			return nil
		}
		said = err != nil
		return err
	}
}

// tend looks after the open file at each tick until the context ends, and tells on done that it has ended.
func tend(ctx context.Context, ticks <-chan time.Time, look func(context.Context, time.Time) error, log *slog.Logger) (done <-chan struct{}) {
	ended := make(chan struct{})
	go func() {
		defer close(ended)
		for {
			select {
			case now := <-ticks:
				if err := look(ctx, now); err != nil && ctx.Err() == nil {
					log.Warn("the file with the projects is damaged or missing", "error", err)
				}
			case <-ctx.Done():
				return
			}
		}
	}()
	return ended
}

// fileArgs reads -data and at most so many words behind it, and finds the data file.
func fileArgs(verb string, words int, args []string) (file string, rest []string, err error) {
	var folder string
	flags := flag.NewFlagSet(verb, flag.ContinueOnError)
	flags.SetOutput(io.Discard)
	flags.StringVar(&folder, "data", "", "")
	if err := flags.Parse(args); err != nil || flags.NArg() != words {
		return "", nil, errors.New("not understood")
	}
	file, err = dataFile(folder)
	return file, flags.Args(), err
}

// backup makes a checked copy and prints where it is.
func backup(ctx context.Context, args []string, stdout, stderr io.Writer) int {
	file, _, err := fileArgs("backup", 0, args)
	if err != nil {
		return misused(stderr, "backup takes only -data FOLDER")
	}
	if _, err := os.Stat(file); err != nil {
		return done(stderr, fmt.Errorf("there is nothing to copy yet: %w", err))
	}
	now := time.Now()
	s, err := store.Open(ctx, file, now)
	if err != nil {
		return done(stderr, err)
	}
	b, err := s.Backup(ctx, now)
	if err := errors.Join(err, s.Close()); err != nil {
		return done(stderr, err)
	}
	return done(stderr, say(stdout, "%s\n", b.Path))
}

// copies prints the copies, the newest first: number, time, size, place, how many projects they hold.
func copies(ctx context.Context, args []string, stdout, stderr io.Writer) int {
	file, _, err := fileArgs("copies", 0, args)
	if err != nil {
		return misused(stderr, "copies takes only -data FOLDER")
	}
	all, err := store.Spares(ctx, file)
	if err != nil {
		return done(stderr, err)
	}
	for _, b := range all {
		holds := fmt.Sprint(b.Projects)
		if b.Unsound {
			holds = "cannot be read"
		}
		if err := say(stdout, "%d\t%s\t%d\t%s\t%s\n", b.Number, b.At.Local().Format(time.DateTime), b.Size, b.Path, holds); err != nil {
			return done(stderr, err)
		}
	}
	return exitDone
}

// restore goes back to a copy, by its number or by its file, and says how to take that back.
func restore(ctx context.Context, args []string, stdout, stderr io.Writer) int {
	file, rest, err := fileArgs("restore", 1, args)
	if err != nil {
		return misused(stderr, "restore takes the number of a copy (see: duskweight copies) or a file")
	}
	from, err := copyNamed(file, rest[0])
	if err != nil {
		return done(stderr, err)
	}
	before, aside, err := store.RestoreFile(ctx, file, from, time.Now())
	if err != nil {
		return done(stderr, err)
	}
	if aside != "" {
		return done(stderr, say(stdout, "Gone back to %s\nThe file that lay there is kept: %s\n", from, aside))
	}
	if before.Path == "" { // nothing lay there
		return done(stderr, say(stdout, "Gone back to %s\n", from))
	}
	return done(stderr, say(stdout, "Gone back to %s\nTo undo this: duskweight restore %d\n", from, before.Number))
}

func copyNamed(file, name string) (string, error) {
	n, err := strconv.Atoi(name)
	if err != nil {
		return name, nil
	}
	all, err := store.Copies(file)
	if err != nil {
		return "", err
	}
	for _, b := range all {
		if b.Number == n {
			return b.Path, nil
		}
	}
	return "", fmt.Errorf("there is no copy number %d; see: duskweight copies", n)
}

// rescue writes each project that can be read of the data file into a folder, as a document that can be imported, and says
// what cannot be read. It only reads, so that the file may be damaged, and open in a running program.
func rescue(args []string, stdout, stderr io.Writer) int {
	file, rest, err := fileArgs("rescue", 1, args)
	if err != nil {
		return misused(stderr, "rescue takes the folder to write the projects into")
	}
	if _, err := os.Stat(file); err != nil {
		return done(stderr, fmt.Errorf("there is no data file to read: %w", err))
	}
	found, err := store.SalvageFile(file)
	if err == nil {
		err = os.MkdirAll(rest[0], 0o700)
	}
	if err != nil {
		return done(stderr, err)
	}
	when := func(t time.Time) string { return t.Local().Format(time.DateTime) }
	short := 0
	for _, p := range found.Projects {
		data, err := document.Encode(p.Doc)
		if err != nil {
			return done(stderr, err)
		}
		path := filepath.Join(rest[0], fmt.Sprintf("project-%d.json", p.ID))
		if err := writeNew(path, data); err != nil {
			return done(stderr, err)
		}
		if err := say(stdout, "%s\t%s\n", path, p.Doc.Project.Name); err != nil {
			return done(stderr, err)
		}
		for _, f := range p.Short {
			fmt.Fprintln(stderr, f.Say(when))
		}
		short += len(p.Short)
	}
	for _, f := range found.Lost {
		fmt.Fprintln(stderr, f.Say(when))
	}
	if short+len(found.Lost) > 0 {
		return exitRefused
	}
	return exitDone
}

// writeNew writes a file that is not there yet: none is written over.
func writeNew(path string, data []byte) error {
	f, err := os.OpenFile(path, os.O_CREATE|os.O_EXCL|os.O_WRONLY, 0o600)
	if err != nil {
		return err
	}
	_, err = f.Write(data)
	return errors.Join(err, f.Sync(), f.Close())
}

// empty sets a lost data file aside and begins an empty one.
func empty(ctx context.Context, args []string, stdout, stderr io.Writer) int {
	file, _, err := fileArgs("empty", 0, args)
	if err != nil {
		return misused(stderr, "empty takes only -data FOLDER")
	}
	kept, err := store.Open(ctx, file, time.Now())
	lost, ok := errors.AsType[*store.Lost](err)
	if !ok {
		if err == nil {
			err = errors.Join(errors.New("the data file can be opened: nothing was changed"), kept.Close())
		}
		return done(stderr, err)
	}
	held, err := store.OpenRescue(ctx, lost)
	if err != nil {
		return done(stderr, err)
	}
	kept, aside, err := held.Begin(ctx, time.Now())
	if err != nil {
		return done(stderr, errors.Join(err, held.Close()))
	}
	if err := kept.Close(); err != nil {
		return done(stderr, err)
	}
	if aside != "" {
		return done(stderr, say(stdout, "An empty file was begun: %s\nThe file that lay there is kept: %s\n", file, aside))
	}
	return done(stderr, say(stdout, "An empty file was begun: %s\n", file))
}
