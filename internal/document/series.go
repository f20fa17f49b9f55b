package document

import (
	"duskweight/internal/model/sun"
)

// EncodeSeries writes a weather year alone, compact, as the store keeps it beside its edition.
func EncodeSeries(s sun.Series) ([]byte, error) { return encode(s) }

// DecodeSeries reads a weather year that was written in an edition.
func DecodeSeries(edition int, data []byte) (sun.Series, error) {
	return decodePart[sun.Series](edition, data, func(s step) rewrite { return s.series })
}
