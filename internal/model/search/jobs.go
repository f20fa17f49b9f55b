package search

import (
	"context"
	"sync/atomic"

	"golang.org/x/sync/errgroup"
)

// shareJobs shares n jobs among so many workers: whoever is free takes the next, so each job is a matter of its own. job is
// told which worker does it, from 0 on, for room that one worker alone uses. The first error ends it, and so does the end of
// the context.
func shareJobs(ctx context.Context, n, workers int, job func(worker, i int) error) error {
	var next atomic.Int64
	group, ctx := errgroup.WithContext(ctx)
	for w := range min(workers, n) {
		group.Go(func() error {
			for i := int(next.Add(1)) - 1; i < n; i = int(next.Add(1)) - 1 {
				if err := ctx.Err(); err != nil {
					return err
				}
				if err := job(w, i); err != nil {
					return err
				}
			}
			return nil
		})
	}
	return group.Wait()
}
