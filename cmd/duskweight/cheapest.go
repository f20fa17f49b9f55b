package main

import (
	"context"
	"encoding/json"
	"errors"
	"flag"
	"fmt"
	"io"
	"runtime"

	"duskweight/internal/document"
	"duskweight/internal/model"
	"duskweight/internal/model/search"
)

// cheapest prints, for each variant of a document, what its plans cost against their full nights. A refused document prints
// nothing on stdout, and what is wrong on stderr.
func cheapest(ctx context.Context, args []string, stdin io.Reader, stdout, stderr io.Writer) int {
	name, asJSON, ok := cheapestArgs(args)
	if !ok {
		return misused(stderr, "cheapest takes one file, or - for standard input")
	}
	data, err := readDocument(name, stdin)
	if err != nil {
		return done(stderr, err)
	}
	doc, err := document.Decode(data)
	if err == nil {
		err = model.Check(doc).Err()
	}
	if problems, ok := errors.AsType[model.Problems](err); ok {
		return refuse(stderr, problems, asJSON)
	}
	if err != nil {
		return done(stderr, err)
	}
	out, err := cheapestOf(ctx, doc)
	if err != nil {
		return done(stderr, err)
	}
	return done(stderr, say(stdout, "%s\n", out))
}

// cheapestOf searches each variant of a document and prints what was found.
func cheapestOf(ctx context.Context, doc model.Document) ([]byte, error) {
	answer := struct {
		Version  int                     `json:"version"`
		Project  string                  `json:"project"`
		Currency string                  `json:"currency"`
		Variants []search.CheapestAnswer `json:"variants"`
	}{Version: 1, Project: doc.Project.Name, Currency: doc.Project.Currency, Variants: []search.CheapestAnswer{}}
	g := model.Prepare(doc.Project)
	for _, v := range doc.Variants {
		found, err := search.CheapestOf(ctx, g, v, runtime.GOMAXPROCS(0), nil)
		if err != nil {
			return nil, fmt.Errorf("the search was stopped: %w", err)
		}
		answer.Variants = append(answer.Variants, found.Answer(v))
	}
	return json.MarshalIndent(answer, "", "  ")
}

// cheapestArgs takes the flag before and behind the file.
func cheapestArgs(args []string) (name string, asJSON, ok bool) {
	flags := flag.NewFlagSet("cheapest", flag.ContinueOnError)
	flags.SetOutput(io.Discard)
	flags.BoolVar(&asJSON, "json", false, "")
	if flags.Parse(args) != nil || flags.NArg() == 0 {
		return "", false, false
	}
	name = flags.Arg(0)
	if flags.Parse(flags.Args()[1:]) != nil || flags.NArg() > 0 {
		return "", false, false
	}
	return name, asJSON, true
}
