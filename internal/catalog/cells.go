package catalog

import "duskweight/internal/model/cell"

// CellKinds returns the kinds of cells with their typical values, each with its source, in the order of the list.
func CellKinds() []cell.Kind { return cell.Kinds() }
