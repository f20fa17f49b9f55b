package search

import (
	"context"

	"duskweight/internal/model"
)

// FitsOf tries all in one go, as the tests want it.
func FitsOf(ctx context.Context, g model.Ground, p model.Project, v model.Variant, i, workers int) (Fits, error) {
	run, err := NewFits(ctx, g, p, v, i, workers)
	if err != nil {
		return Fits{}, err
	}
	if err := run.Until(ctx, mostWorked, workers, nil); err != nil {
		return Fits{}, err
	}
	return run.Fits(), nil
}
