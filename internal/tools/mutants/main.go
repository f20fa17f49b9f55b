// Command mutants asks whether the tests can fail. It changes one number, one comparison or one sign in the program at a
// time, at a place chosen by chance, runs the tests that should see it, and says which changes nobody saw.
//
// No file is changed: the compiler gets the changed file in place of the real one (go test -overlay). First, for half
// of the time, run the tests of the package itself; then, for each change that these let through, those of each package of
// internal that is built on it and comes to the line, and at last, for a minute, those of the same packages that a short run
// leaves out. A change that does not compile does not count. Of a change that no test saw, a person decides whether a test is
// missing or the program is the same with it (where an iteration breaks off).
package main

import (
	"context"
	"flag"
	"fmt"
	"math/rand/v2"
	"os"
	"os/signal"
	"slices"
	"strings"
	"time"
)

func main() {
	if err := run(); err != nil {
		fmt.Fprintln(os.Stderr, "mutants:", err)
		os.Exit(1)
	}
}

func run() error {
	root := flag.String("root", ".", "folder of the program's go.mod")
	count := flag.Int("n", 50, "how many changes to try")
	seed := flag.Uint64("seed", 1, "the same number chooses the same changes")
	limit := flag.Duration("for", 30*time.Minute, "stop after this time")
	in := flag.String("in", strings.Join(rooms, ","), "packages to change, by path below the root; /... for all below")
	at := flag.String("at", "", "only changes whose place begins so, as internal/model/verdict.go:24")
	near := flag.Bool("near", false, "ask the package's own tests alone: quick, and some that survive it are caught elsewhere")
	long := flag.Duration("long", time.Minute, "for each change that the short tests let through, how long those may take that a short run leaves out")
	list := flag.Bool("list", false, "say the changes, run nothing")
	flag.Parse()
	ctx, stop := signal.NotifyContext(context.Background(), os.Interrupt)
	defer stop()
	ctx, cancel := context.WithTimeout(ctx, *limit)
	defer cancel()

	tree, err := load(ctx, *root)
	if err != nil {
		return err
	}
	tree.long = *long
	changes, err := tree.changes(strings.Split(*in, ","))
	if err != nil {
		return err
	}
	r := rand.New(rand.NewPCG(*seed, 0))
	r.Shuffle(len(changes), func(i, j int) { changes[i], changes[j] = changes[j], changes[i] })
	fmt.Printf("%d possible changes; seed %d\n", len(changes), *seed)
	changes = slices.DeleteFunc(changes, func(c change) bool { return !strings.HasPrefix(c.place(), *at) })
	if *list {
		for _, c := range changes[:min(*count, len(changes))] {
			fmt.Println(c)
		}
		return nil
	}
	return tree.tryAll(ctx, changes, *count, *limit/2, *near)
}

// tryAll tries the first n changes that compile, and prints what came of each and at the end the sum. All are tried with the
// tests of their own packages first, for half of the time at most: that is quick. Those that are left go on to the others.
func (t *tree) tryAll(ctx context.Context, changes []change, n int, half time.Duration, near bool) error {
	var left []change
	tried, seen := 0, 0
	tell := func(number int, word string, c change, by string) {
		fmt.Printf("%3d %-8s %s  %s\n", number, word, c, by)
	}
	for begun := time.Now(); tried < n && seen < len(changes) && ctx.Err() == nil && (near || time.Since(begun) < half); seen++ {
		c := changes[seen]
		word, by, err := t.tryNear(ctx, c)
		switch {
		case err != nil:
			return err
		case word == unbuilt || ctx.Err() != nil:
			continue
		case word == survives:
			left = append(left, c)
			word = "left"
		}
		tried++
		tell(tried, word, c, by)
	}
	fmt.Printf("\n%d of %d changes caught by the tests of their own packages\n", tried-len(left), tried)
	var survived, open []change
	for i, c := range left {
		if near || ctx.Err() != nil {
			open = append(open, c)
			continue
		}
		word, by, err := t.tryFar(ctx, c)
		switch {
		case ctx.Err() != nil:
			open = append(open, c)
			continue
		case err != nil:
			return err
		case word == survives:
			survived = append(survived, c)
		}
		tell(i+1, word, c, by)
	}
	fmt.Printf("\n%d of %d changes caught. Survived:\n", tried-len(survived)-len(open), tried)
	for _, c := range survived {
		fmt.Println(c)
	}
	if len(open) > 0 {
		fmt.Println("\nNot asked elsewhere, for the time is over or only their own packages were asked:")
	}
	for _, c := range open {
		fmt.Println(c)
	}
	return nil
}
