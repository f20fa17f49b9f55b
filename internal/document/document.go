// Package document is the one codec of the project document: for the store, for files, and for `duskweight evaluate`.
// It reads strictly (limits first, then every problem at once, each with its path), writes exactly (every number comes
// back to the last digit), lifts older editions step by step, and describes itself as a JSON Schema. All of this is one
// walk over the types of package model and their tags; there is no second list of fields.
//
// It says whether a document can be read. Whether what it says makes sense is model.Check.
package document

import (
	"bytes"
	"encoding/json"
	"fmt"

	"duskweight/internal/model"
)

// Edition is the edition that this program writes, and the newest that it reads.
const Edition = 1

// Decode reads a document. What is wrong comes back as model.Problems, all of it at once: where something cannot be
// read, the values that could be read are checked for their ranges too, so that one round of mending is enough.
// A missing key means not known, or empty.
func Decode(data []byte) (model.Document, error) {
	var doc model.Document
	tree, err := parse(data)
	if err != nil {
		return doc, err
	}
	if err := upgradeDocument(tree); err != nil {
		return doc, err
	}
	return doc, decodeInto(&doc, tree)
}

// Encode writes a document in this edition, indented, with a line end. A number that is NaN or infinite, and a text
// that is not UTF-8 or not a word of its list, are model.Problems.
func Encode(doc model.Document) ([]byte, error) {
	doc.Edition = Edition
	flat, err := encode(doc)
	if err != nil {
		return nil, err
	}
	var b bytes.Buffer
	if err := json.Indent(&b, flat, "", "  "); err != nil {
		return nil, fmt.Errorf("document: %w", err)
	}
	b.WriteByte('\n')
	return b.Bytes(), nil
}

// EncodeProject writes a project alone, compact, as the store keeps it beside its edition.
func EncodeProject(p model.Project) ([]byte, error) { return encode(p) }

// EncodeVariant writes a variant alone, compact, as the store keeps it beside its edition. What it writes can be read back, and
// is then what Clone gives.
func EncodeVariant(v model.Variant) ([]byte, error) { return encode(v) }

// DecodeProject reads a project that was written in an edition.
func DecodeProject(edition int, data []byte) (model.Project, error) {
	return decodePart[model.Project](edition, data, func(s step) rewrite { return s.project })
}

// DecodeVariant reads a variant that was written in an edition.
func DecodeVariant(edition int, data []byte) (model.Variant, error) {
	return decodePart[model.Variant](edition, data, func(s step) rewrite { return s.variant })
}

func decodePart[T any](edition int, data []byte, of func(step) rewrite) (T, error) {
	var part T
	tree, err := parse(data)
	if err != nil {
		return part, err
	}
	if err := upgradePart(tree, edition, of); err != nil {
		return part, err
	}
	return part, decodeInto(&part, tree)
}
