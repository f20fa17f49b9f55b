package main

import (
	"bytes"
	"context"
	"errors"
	"flag"
	"fmt"
	"io"
	"net"
	"net/http"
	"strconv"
	"time"
)

// How long a program that is well may take to answer, and how much of an answer is read: both are our own judgement.
const (
	patience   = 10 * time.Second
	mostAnswer = 4 << 10
)

// alive asks the Duskweight at an address whether a project can be read and saved there, for whoever watches a container:
// an image that holds nothing but the program has no other way to ask. It opens no data file. It prints nothing where all is
// well, else the reason.
func alive(ctx context.Context, args []string, stderr io.Writer) int {
	addr := net.JoinHostPort("127.0.0.1", strconv.Itoa(firstPort))
	flags := flag.NewFlagSet("alive", flag.ContinueOnError)
	flags.SetOutput(io.Discard)
	flags.StringVar(&addr, "addr", addr, "")
	if err := flags.Parse(args); err != nil || flags.NArg() > 0 {
		return misused(stderr, "alive takes only -addr ADDRESS")
	}
	if err := checkAddr(addr); err != nil || addr == "" {
		return misused(stderr, errors.Join(err, errors.New("alive needs an address like 127.0.0.1:8807")).Error())
	}
	ctx, stop := context.WithTimeout(ctx, patience)
	defer stop()
	return done(stderr, health(ctx, addr))
}

// health returns nil where /healthz of the program at an address says that all is well, else the reason that it gives.
func health(ctx context.Context, addr string) (err error) {
	request, err := http.NewRequestWithContext(ctx, http.MethodGet, "http://"+addr+"/healthz", nil)
	if err != nil {
		return err
	}
	// Another program at this address may answer with a link elsewhere: no request leaves this computer.
	client := http.Client{
		Transport:     &http.Transport{DisableKeepAlives: true},
		CheckRedirect: func(*http.Request, []*http.Request) error { return http.ErrUseLastResponse },
	}
	answer, err := client.Do(request)
	if err != nil {
		return err
	}
	defer func() { err = errors.Join(err, answer.Body.Close()) }()
	said, err := io.ReadAll(io.LimitReader(answer.Body, mostAnswer))
	if err != nil {
		return err
	}
	if said = bytes.TrimSpace(said); answer.StatusCode != http.StatusOK || string(said) != "ok" {
		return fmt.Errorf("%s answers %s: %s", addr, answer.Status, said)
	}
	return nil
}
