// Command mutants asks whether the tests can fail. It changes one number, one comparison or one sign in the program at a
// time, at a place chosen by chance, runs the tests that should see it, and says which changes nobody saw.
//
// No file is changed: the compiler gets the changed file in place of the real one (go test -overlay). First run the tests
// of the package itself, then, while none has failed, those of each package of internal that is built on it and comes to
// the line; and at last, for a minute, those of the same packages that a short run leaves out. A change that does not
// compile does not count. Of a change that no test saw, a person decides whether a test is missing or the
// program is the same with it (a break-off of an iteration, a place in memory reserved ahead).
package main

import (
	"context"
	"flag"
	"fmt"
	"math/rand/v2"
	"os"
	"os/signal"
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
	tree.near, tree.long = *near, *long
	changes, err := tree.changes(strings.Split(*in, ","))
	if err != nil {
		return err
	}
	r := rand.New(rand.NewPCG(*seed, 0))
	r.Shuffle(len(changes), func(i, j int) { changes[i], changes[j] = changes[j], changes[i] })
	fmt.Printf("%d possible changes; seed %d\n", len(changes), *seed)
	return tree.tryAll(ctx, changes, *count, *at, *list)
}

// tryAll tries the first n changes that compile, and prints each with what came of it and at the end the sum.
func (t *tree) tryAll(ctx context.Context, changes []change, n int, at string, list bool) error {
	var survived []string
	tried := 0
	for _, c := range changes {
		if tried == n || ctx.Err() != nil {
			break
		}
		if !strings.HasPrefix(c.place(), at) {
			continue
		}
		if list {
			tried++
			fmt.Println(c)
			continue
		}
		word, by, err := t.try(ctx, c)
		if err != nil {
			return err
		}
		if word == unbuilt || ctx.Err() != nil {
			continue
		}
		tried++
		fmt.Printf("%3d %-8s %s  %s\n", tried, word, c, by)
		if word == survives {
			survived = append(survived, c.String())
		}
	}
	if list {
		return nil
	}
	if ctx.Err() != nil {
		fmt.Println("stopped: the time is over")
	}
	fmt.Printf("\n%d of %d changes caught. Survived:\n%s\n", tried-len(survived), tried, strings.Join(survived, "\n"))
	return nil
}
