package page

import (
	"slices"
	"sync"
)

// recent keeps the answers that were asked for last, by what was asked. The zero value is ready for use, by many at once.
type recent[K comparable, V any] struct {
	mu   sync.Mutex
	kept []answered[K, V] // the last one asked first
}

type answered[K comparable, V any] struct {
	key   K
	value V
}

// find returns a kept answer and puts it first.
func (r *recent[K, V]) find(key K) (value V, ok bool) {
	r.mu.Lock()
	defer r.mu.Unlock()
	i := slices.IndexFunc(r.kept, func(a answered[K, V]) bool { return a.key == key })
	if i < 0 {
		return value, false
	}
	found := r.kept[i]
	copy(r.kept[1:i+1], r.kept[:i])
	r.kept[0] = found
	return found.value, true
}

// keep puts an answer first, in place of one to the same question; of the others stay as many as make most of them.
func (r *recent[K, V]) keep(key K, value V, most int) {
	r.mu.Lock()
	defer r.mu.Unlock()
	others := slices.DeleteFunc(r.kept, func(a answered[K, V]) bool { return a.key == key })
	r.kept = append([]answered[K, V]{{key, value}}, others[:min(len(others), most-1)]...)
}
