package store

import (
	"sync"

	"duskweight/internal/model/sun"
)

// seriesKept is how many weather years are kept unpacked: one for each project that is likely to be open.
const seriesKept = 8

// seriesCache holds unpacked weather years by their hash, the newest last. A year with a hash never changes, so that
// what is here is always right.
type seriesCache struct {
	mu     sync.Mutex
	hashes []string
	years  map[string]sun.Series
}

func (c *seriesCache) find(hash string) (sun.Series, bool) {
	c.mu.Lock()
	defer c.mu.Unlock()
	s, ok := c.years[hash]
	return s, ok
}

func (c *seriesCache) keep(hash string, s sun.Series) {
	c.mu.Lock()
	defer c.mu.Unlock()
	if _, ok := c.years[hash]; ok {
		return
	}
	if c.years == nil {
		c.years = map[string]sun.Series{}
	}
	if len(c.hashes) == seriesKept {
		delete(c.years, c.hashes[0])
		c.hashes = c.hashes[1:]
	}
	c.hashes = append(c.hashes, hash)
	c.years[hash] = s
}
