package main

import (
	"context"
	"encoding/json"
	"errors"
	"flag"
	"fmt"
	"io"
	"os"
	"runtime"
	"time"

	"duskweight/internal/document"
	"duskweight/internal/model"
	"duskweight/internal/model/reason"
	"duskweight/internal/model/search"
)

// documentLimit is the largest document that is read, the same as on the import page.
const documentLimit = 8 << 20

// evaluate prints the result of a document: SI with the unit as key suffix, the same numbers that the pages show. A
// refused document prints nothing on stdout, and what is wrong on stderr.
func evaluate(args []string, stdin io.Reader, stdout, stderr io.Writer) int {
	a, ok := evaluateArgs(args)
	if !ok {
		return misused(stderr, fmt.Sprintf("evaluate takes one file, or - for standard input; -on takes a day such as 2026-11-28, -years a number from 1 to %d", mostYears))
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
	answer := model.Evaluate(doc, a.on).Answer()
	if a.years > 0 {
		if err := manyYears(&answer, doc, a.years); err != nil {
			return done(stderr, err)
		}
	}
	out, err := json.MarshalIndent(answer, "", "  ")
	if err != nil {
		return done(stderr, fmt.Errorf("the result cannot be written: %w", err))
	}
	return done(stderr, say(stdout, "%s\n", out))
}

// mostYears is the most weather years that evaluate runs: more change nothing that the inputs could support.
const mostYears = 10_000

// manyYears runs n weather years of the document's variants and puts what they come to beside each.
func manyYears(answer *model.Answer, doc model.Document, n int) error {
	run := search.NewRun(doc.Project, doc.Variants, false)
	run.Weather = true
	if err := run.Until(context.Background(), n, runtime.GOMAXPROCS(0), nil); err != nil {
		return err
	}
	for i, y := range run.Sure().Answers(doc.Project) {
		answer.Variants[i].Years = y
	}
	return nil
}

// evaluateFlags are the file, how refusals are printed, the day on which readiness is judged, and how many weather years
// are run beside the plan year; 0 is none.
type evaluateFlags struct {
	name  string
	json  bool
	on    reason.Day
	years int
}

// evaluateArgs takes flags before and behind the file.
func evaluateArgs(args []string) (a evaluateFlags, ok bool) {
	flags := flag.NewFlagSet("evaluate", flag.ContinueOnError)
	flags.SetOutput(io.Discard)
	flags.BoolVar(&a.json, "json", false, "")
	flags.IntVar(&a.years, "years", 0, "")
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
	if len(names) != 1 || a.years < 0 || a.years > mostYears {
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
