package main

import (
	"encoding/json"
	"errors"
	"flag"
	"fmt"
	"io"
	"os"
	"time"

	"duskweight/internal/document"
	"duskweight/internal/model"
	"duskweight/internal/model/reason"
)

// documentLimit is the largest document that is read, the same as on the import page.
const documentLimit = 8 << 20

// evaluate prints the result of a document: SI with the unit as key suffix, the same numbers that the pages show. A
// refused document prints nothing on stdout, and what is wrong on stderr.
func evaluate(args []string, stdin io.Reader, stdout, stderr io.Writer) int {
	a, ok := evaluateArgs(args)
	if !ok {
		return misused(stderr, "evaluate takes one file, or - for standard input; -on takes a day such as 2026-11-28")
	}
	data, err := readDocument(a.name, stdin)
	if err != nil {
		return done(stderr, err)
	}
	doc, err := document.Decode(data)
	if err == nil {
		err = model.CheckOn(doc, a.on).Err()
	}
	if problems, ok := errors.AsType[model.Problems](err); ok {
		return refuse(stderr, problems, a.json)
	}
	if err != nil {
		return done(stderr, err)
	}
	out, err := json.MarshalIndent(model.Evaluate(doc, a.on).Answer(), "", "  ")
	if err != nil {
		return done(stderr, fmt.Errorf("the result cannot be written: %w", err))
	}
	return done(stderr, say(stdout, "%s\n", out))
}

// evaluateFlags are the file, how refusals are printed, and the day on which readiness is judged.
type evaluateFlags struct {
	name string
	json bool
	on   reason.Day
}

// evaluateArgs takes flags before and behind the file.
func evaluateArgs(args []string) (a evaluateFlags, ok bool) {
	flags := flag.NewFlagSet("evaluate", flag.ContinueOnError)
	flags.SetOutput(io.Discard)
	flags.BoolVar(&a.json, "json", false, "")
	on := flags.String("on", string(reason.Today(time.Now())), "")
	var names []string
	for {
		if flags.Parse(args) != nil {
			return a, false
		}
		if flags.NArg() == 0 {
			break
		}
		names, args = append(names, flags.Arg(0)), flags.Args()[1:]
	}
	if len(names) != 1 {
		return a, false
	}
	a.name = names[0]
	a.on, ok = reason.DayOf(*on)
	return a, ok
}

func readDocument(name string, stdin io.Reader) ([]byte, error) {
	if name != "-" {
		f, err := os.Open(name)
		if err != nil {
			return nil, err
		}
		defer f.Close()
		stdin = f
	}
	data, err := io.ReadAll(io.LimitReader(stdin, documentLimit+1))
	if err != nil {
		return nil, err
	}
	if len(data) > documentLimit {
		return nil, fmt.Errorf("%s is larger than %d MiB, more than a project document can be", name, documentLimit>>20)
	}
	return data, nil
}

func refuse(stderr io.Writer, problems model.Problems, asJSON bool) int {
	if !asJSON {
		fmt.Fprintln(stderr, problems.Error())
		return exitRefused
	}
	out, err := json.Marshal(struct {
		Problems model.Problems `json:"problems"`
	}{problems})
	if err != nil {
		return done(stderr, err)
	}
	fmt.Fprintf(stderr, "%s\n", out)
	return exitRefused
}

func printSchema(stdout io.Writer) error {
	schema, err := document.Schema()
	if err != nil {
		return err
	}
	return say(stdout, "%s", schema)
}
