package store

import (
	"fmt"
	"time"
)

// Kind is what a thing is.
type Kind string

// The kinds of things.
const (
	ProjectKind Kind = "project"
	VariantKind Kind = "variant"
)

// Thing names one thing; ids are never used again.
type Thing struct {
	Kind Kind
	ID   int64
}

// Saved is a thing as it is stored.
type Saved[T any] struct {
	ID       int64
	Project  int64 // the project it belongs to
	Revision int64 // of this thing; a save names the one it was made on
	Place    float64
	At       time.Time
	Said     string // what the last change was
	Deleted  bool
	Value    T
}

// Edit says what a save is.
type Edit struct {
	Revision int64  // the revision that the page showed
	Said     string // what changed, in words: "Drum diameter: 60 mm → 50 mm"

	// Saves of the same field from the same page within a minute are one step of the history. Page is a random name that
	// a page gets when it is made; where Page or Field is empty, each save is a step of its own.
	Page, Field string

	Settles []string // the drafts that this save does away with, by field
}

// Stale is a save that came too late: an ErrStale with both versions. Nothing was saved.
type Stale[T any] struct {
	Current Saved[T] // what is stored
	Yours   T        // what was to be saved
}

// Error says so in words.
func (s *Stale[T]) Error() string {
	if s.Current.Deleted {
		return "it was deleted elsewhere since this page was opened"
	}
	return ErrStale.Error()
}

// Is makes a *Stale an ErrStale.
func (s *Stale[T]) Is(target error) bool { return target == ErrStale }

func notFound(t Thing) error { return fmt.Errorf("%s %d: %w", t.Kind, t.ID, ErrNotFound) }
