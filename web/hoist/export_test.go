package hoist

// What the tests from outside ask for.
const (
	NameAt   = nameAt
	NameKind = nameKind
	NameRead = nameRead
	NameRow  = nameRow
)

var (
	RowTitle = rowTitle
)
