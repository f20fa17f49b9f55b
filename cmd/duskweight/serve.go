package main

import (
	"context"
	"errors"
	"flag"
	"fmt"
	"io"
	"log/slog"
	"net"
	"net/http"
	"os"
	"path/filepath"
	"slices"
	"strconv"
	"syscall"
	"time"

	"duskweight/internal/store"
	"duskweight/web"
)

// The port that is tried first, and how many after it.
const (
	firstPort = 8807
	morePorts = 20
)

// windowsInUse is what Windows says of a taken port (WSAEADDRINUSE), which is not the constant of that name there.
const windowsInUse = syscall.Errno(10048)

// farewell is how long open requests may take when the program ends.
const farewell = 5 * time.Second

type serveOptions struct {
	addr, data string
	noBrowser  bool
}

// serve opens the data file and serves its pages until the context ends. Where the file is open already, it opens the
// page of the program that has it, and leaves.
func serve(ctx context.Context, args []string, stdout, stderr io.Writer) int {
	var o serveOptions
	flags := flag.NewFlagSet("serve", flag.ContinueOnError)
	flags.SetOutput(io.Discard)
	flags.StringVar(&o.addr, "addr", "", "")
	flags.StringVar(&o.data, "data", "", "")
	flags.BoolVar(&o.noBrowser, "no-browser", false, "")
	if err := flags.Parse(args); err != nil || flags.NArg() > 0 {
		return misused(stderr, "these options are not understood")
	}
	if err := checkAddr(o.addr); err != nil {
		return misused(stderr, err.Error())
	}
	file, err := dataFile(o.data)
	if err != nil {
		return done(stderr, err)
	}
	kept, err := store.Open(ctx, file, time.Now())
	if busy, ok := errors.AsType[*store.Busy](err); ok && busy.Address != "" {
		if err := say(stdout, "Duskweight is open already: %s\n", busy.Address); err != nil {
			return done(stderr, err)
		}
		openBrowser(busy.Address, o.noBrowser)
		return exitDone
	}
	if err != nil {
		return done(stderr, err)
	}
	return done(stderr, errors.Join(serveStore(ctx, kept, o, stdout, stderr), kept.Close()))
}

func serveStore(ctx context.Context, kept *store.Store, o serveOptions, stdout, stderr io.Writer) error {
	l, err := listen(ctx, o.addr, stdout)
	if err != nil {
		return err
	}
	log := slog.New(slog.NewTextHandler(stderr, nil))
	site, err := web.New(web.Config{Store: kept, Now: time.Now, Version: version(), File: kept.Path(), Log: log})
	if err != nil {
		return errors.Join(err, l.Close())
	}
	url := "http://" + l.Addr().String() + "/"
	if err := kept.Announce(url); err != nil {
		return errors.Join(err, l.Close())
	}
	for _, sentence := range slices.Concat(kept.Notices(), []string{kept.ReadOnly()}) {
		if sentence != "" {
			fmt.Fprintln(stderr, sentence)
		}
	}
	if err := say(stdout, "Duskweight: %s\nYour data:  %s\nTo end it, press Ctrl-C here.\n", url, kept.Path()); err != nil {
		return errors.Join(err, l.Close())
	}
	openBrowser(url, o.noBrowser)
	ticker := time.NewTicker(tendEvery)
	defer ticker.Stop()
	tending, stop := context.WithCancel(ctx)
	ended := tend(tending, ticker.C, kept.Tend, log)
	guard := time.NewTicker(guardEvery)
	defer guard.Stop()
	guarded := tend(tending, guard.C, onceSaid(kept.Guard), log)
	err = serveUntil(ctx, site.Server(), l)
	stop()
	<-ended // the file is closed after this
	<-guarded
	return err
}

// serveUntil serves until the context ends, and lets open requests finish.
func serveUntil(ctx context.Context, server *http.Server, l net.Listener) error {
	ended := make(chan error, 1)
	go func() { ended <- server.Serve(l) }()
	select {
	case err := <-ended:
		return err
	case <-ctx.Done():
	}
	last, cancel := context.WithTimeout(context.WithoutCancel(ctx), farewell)
	defer cancel()
	if err := server.Shutdown(last); err != nil {
		return errors.Join(err, server.Close())
	}
	return nil
}

// checkAddr takes only addresses of this computer: whoever reaches the port reads and changes everything.
func checkAddr(addr string) error {
	if addr == "" {
		return nil
	}
	host, port, err := net.SplitHostPort(addr)
	if err != nil {
		return fmt.Errorf("-addr %q: write it like 127.0.0.1:8807", addr)
	}
	if _, err := strconv.ParseUint(port, 10, 16); err != nil {
		return fmt.Errorf("-addr %q: the port is a number from 0 to 65535", addr)
	}
	if host != "127.0.0.1" && host != "::1" && host != "localhost" {
		return fmt.Errorf("-addr %q: the pages are served to this computer only: use 127.0.0.1, ::1 or localhost", addr)
	}
	return nil
}

// listen takes the wanted address, or the first free port from the usual one on, and says so where it is another.
func listen(ctx context.Context, addr string, stdout io.Writer) (net.Listener, error) {
	var config net.ListenConfig
	if addr != "" {
		l, err := config.Listen(ctx, "tcp", addr)
		if err != nil {
			return nil, fmt.Errorf("cannot listen there: %w", err)
		}
		return l, nil
	}
	for port := firstPort; port <= firstPort+morePorts; port++ {
		l, err := config.Listen(ctx, "tcp", net.JoinHostPort("127.0.0.1", strconv.Itoa(port)))
		if errors.Is(err, syscall.EADDRINUSE) || errors.Is(err, windowsInUse) || errors.Is(err, syscall.EACCES) {
			continue
		}
		if err == nil && port != firstPort {
			err = say(stdout, "Port %d is taken by another program. This is port %d.\n", firstPort, port)
		}
		return l, err
	}
	return nil, fmt.Errorf("ports %d to %d are all taken: choose another with -addr 127.0.0.1:PORT", firstPort, firstPort+morePorts)
}

// dataFile is where the data file lies: in the given folder, or where the operating system wants it.
func dataFile(folder string) (string, error) {
	if folder == "" {
		var err error
		if folder, err = store.DataFolder(); err != nil {
			return "", err
		}
	}
	abs, err := filepath.Abs(folder)
	if err != nil {
		return "", err
	}
	return filepath.Join(abs, store.FileName), nil
}

// where prints the place of the data file and whether it is there yet. Nothing is made.
func where(args []string, stdout, stderr io.Writer) int {
	var folder string
	flags := flag.NewFlagSet("where", flag.ContinueOnError)
	flags.SetOutput(io.Discard)
	flags.StringVar(&folder, "data", "", "")
	if err := flags.Parse(args); err != nil || flags.NArg() > 0 {
		return misused(stderr, "where takes only -data FOLDER")
	}
	file, err := dataFile(folder)
	if err != nil {
		return done(stderr, err)
	}
	if _, err := os.Stat(file); err != nil {
		fmt.Fprintln(stderr, "It is not there yet: the first start makes it.")
	}
	return done(stderr, say(stdout, "%s\n", file))
}
