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
	"sync/atomic"
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
// page of the program that has it, and leaves. Where the file is lost, it serves the page that says so.
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
	l, note, taken := listen(ctx, o.addr) // first: where nothing can be served, nothing is made
	if taken != nil {
		if _, err := os.Stat(file); err != nil {
			return done(stderr, taken)
		}
	}
	p := &program{log: slog.New(slog.NewTextHandler(stderr, nil))}
	err = p.open(ctx, file)
	if err == nil && taken == nil {
		return done(stderr, errors.Join(p.serve(ctx, l, note, o, stdout, stderr), p.close()))
	}
	err = errors.Join(err, p.close())
	if l != nil {
		err = errors.Join(err, l.Close())
	}
	if busy, ok := errors.AsType[*store.Busy](err); ok && busy.Address != "" {
		if err := say(stdout, "Duskweight is open already: %s\n", busy.Address); err != nil {
			return done(stderr, err)
		}
		openBrowser(busy.Address, o.noBrowser)
		return exitDone
	}
	return done(stderr, errors.Join(err, taken))
}

// program is what one start serves: the site of an open data file, or the page of a lost one until somebody has chosen how
// to go on; the same address answers with the site then.
type program struct {
	log   *slog.Logger
	lost  *store.Rescue // nil where the file could be opened at once
	kept  atomic.Pointer[store.Store]
	pages atomic.Pointer[http.Handler]
}

// open opens the data file, or takes hold of it where it is lost.
func (p *program) open(ctx context.Context, file string) error {
	kept, err := store.Open(ctx, file, time.Now())
	if lost, ok := errors.AsType[*store.Lost](err); ok {
		p.lost, err = store.OpenRescue(ctx, lost)
		return err
	}
	if err == nil {
		p.kept.Store(kept)
	}
	return err
}

func (p *program) close() error {
	var errs []error
	if kept := p.kept.Load(); kept != nil {
		errs = append(errs, kept.Close())
	}
	if p.lost != nil {
		errs = append(errs, p.lost.Close())
	}
	return errors.Join(errs...)
}

// ServeHTTP answers with the pages that there are by then.
func (p *program) ServeHTTP(w http.ResponseWriter, r *http.Request) {
	(*p.pages.Load()).ServeHTTP(w, r)
}

// show makes the pages and shows them from now on.
func (p *program) show(c web.Config) error {
	c.Now, c.Version, c.Log = time.Now, version(), p.log
	site, err := web.New(c)
	if err != nil {
		return err
	}
	pages := site.Handler()
	p.pages.Store(&pages)
	return nil
}

func (p *program) serve(ctx context.Context, l net.Listener, note string, o serveOptions, stdout, stderr io.Writer) error {
	url := "http://" + l.Addr().String() + "/"
	opened := make(chan *store.Store, 1)
	enter := func(kept *store.Store) error {
		p.kept.Store(kept)
		opened <- kept
		return p.show(web.Config{Store: kept, File: kept.Path()})
	}
	var file string
	var err error
	if kept := p.kept.Load(); kept != nil {
		file, err = kept.Path(), errors.Join(enter(kept), kept.Announce(url))
		for _, sentence := range slices.Concat(kept.Notices(), []string{kept.ReadOnly()}) {
			if sentence != "" {
				fmt.Fprintln(stderr, sentence)
			}
		}
	} else {
		file = p.lost.Lost.Path
		err = errors.Join(p.show(web.Config{Lost: p.lost, Opened: enter, File: file}), p.lost.Announce(url))
		fmt.Fprintln(stderr, p.lost.Lost.Say(), "Duskweight has changed nothing. The page says how to go on.")
	}
	if err == nil {
		err = say(stdout, "%sDuskweight: %s\nYour data:  %s\nTo end it, press Ctrl-C here.\n", note, url, file)
	}
	if err != nil {
		return errors.Join(err, l.Close())
	}
	openBrowser(url, o.noBrowser)
	tending, stop := context.WithCancel(ctx)
	ended := make(chan struct{})
	go func() {
		defer close(ended)
		select {
		case kept := <-opened:
			lookAfter(tending, kept, p.log)
		case <-tending.Done():
		}
	}()
	err = serveUntil(ctx, web.Server(p, p.log), l)
	stop()
	<-ended // the file is closed after this
	return err
}

// lookAfter looks after the open file until the context ends.
func lookAfter(ctx context.Context, kept *store.Store, log *slog.Logger) {
	ticker, guard := time.NewTicker(tendEvery), time.NewTicker(guardEvery)
	defer ticker.Stop()
	defer guard.Stop()
	tended := tend(ctx, ticker.C, kept.Tend, log)
	guarded := tend(ctx, guard.C, onceSaid(kept.Guard), log)
	<-tended
	<-guarded
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

// listen takes the wanted address, or the first free port from the usual one on; then the note says that it is another.
func listen(ctx context.Context, addr string) (l net.Listener, note string, err error) {
	var config net.ListenConfig
	if addr != "" {
		l, err := config.Listen(ctx, "tcp", addr)
		if err != nil {
			return nil, "", fmt.Errorf("cannot listen there: %w", err)
		}
		return l, "", nil
	}
	for port := firstPort; port <= firstPort+morePorts; port++ {
		l, err := config.Listen(ctx, "tcp", net.JoinHostPort("127.0.0.1", strconv.Itoa(port)))
		if errors.Is(err, syscall.EADDRINUSE) || errors.Is(err, windowsInUse) || errors.Is(err, syscall.EACCES) {
			continue
		}
		if err == nil && port != firstPort {
			note = fmt.Sprintf("Port %d is taken by another program. This is port %d.\n", firstPort, port)
		}
		return l, note, err
	}
	return nil, "", fmt.Errorf("ports %d to %d are all taken: choose another with -addr 127.0.0.1:PORT", firstPort, firstPort+morePorts)
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
