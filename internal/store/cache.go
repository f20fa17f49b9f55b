package store

import "sync"

// How much is kept unpacked: the weather files of the projects that are likely to be open, of which one may have twenty,
// and the designs that its pages and the last steps of its history show.
const (
	yearsKept   = 40
	designsKept = 64
)

// designLimit is the longest text of a design that is kept; longer ones are read again each time.
const designLimit = 64 << 10

// cache holds what was unpacked, by what it was unpacked from, the newest last. The same text always means the same, so
// that what is here is always right.
type cache[K comparable, V any] struct {
	mu   sync.Mutex
	keys []K
	vals map[K]V
}

func (c *cache[K, V]) find(k K) (V, bool) {
	c.mu.Lock()
	defer c.mu.Unlock()
	v, ok := c.vals[k]
	return v, ok
}

// keep keeps v, and lets the oldest go where there would be more than most.
func (c *cache[K, V]) keep(k K, v V, most int) {
	c.mu.Lock()
	defer c.mu.Unlock()
	if _, ok := c.vals[k]; ok {
		return
	}
	if c.vals == nil {
		c.vals = map[K]V{}
	}
	if len(c.keys) == most {
		delete(c.vals, c.keys[0])
		c.keys = c.keys[1:]
	}
	c.keys = append(c.keys, k)
	c.vals[k] = v
}
