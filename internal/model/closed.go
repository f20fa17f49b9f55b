package model

// The words of closed lists. The empty word means that the question is open.

// OriginKind is where a value of the plan comes from.
type OriginKind string

// The words of OriginKind.
const (
	OriginTypical  OriginKind = "typical"
	OriginCatalog  OriginKind = "catalog"
	OriginMeasured OriginKind = "measured"
)
