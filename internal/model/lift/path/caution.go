package path

import "duskweight/internal/model/lift"

// Caution is one short sentence for the page and the sheet.
type Caution struct {
	Group string // "mechanical", "structure", "electrical", "cells"
	Say   string
}

func cautions(h lift.Hoist, d lift.Drive) []Caution { return nil }
