package page

import (
	"crypto/sha256"
	"encoding/hex"

	"duskweight/internal/document"
	"duskweight/internal/model"
	"duskweight/internal/model/unit"
	"duskweight/internal/store"
	"duskweight/web/form"
)

// PaperTop is the head of every page that is made for paper: what it is of, and from which numbers it was made.
type PaperTop struct {
	Title, Project, Revisions, Stamp, Date string
	Example                                bool // of an invented project
}

func paperNames(p model.Project, v model.Variant) PaperTop {
	return PaperTop{Title: form.Clip(v.Name, PaperName), Project: form.Clip(p.Name, 60), Example: p.Example == unit.Yes}
}

func (s *Site) PaperTop(p store.Saved[model.Project], v store.Saved[model.Variant]) (PaperTop, error) {
	top := paperNames(p.Value, v.Value)
	top.Revisions = "variant revision " + Itoa(int(v.Revision)) + " · project revision " + Itoa(int(p.Revision))
	top.Date = s.Now().Format("2 January 2006")
	var err error
	top.Stamp, err = s.stamp(p.Value, v.Value)
	return top, err
}

// stamp is a short hash over the document and the program, so that a stale print can be told: two sheets with the same
// stamp were made from the same numbers by the same program.
func (s *Site) stamp(p model.Project, v model.Variant) (string, error) {
	b, err := document.Encode(model.Document{Edition: 1, Project: p, Variants: []model.Variant{v}})
	if err != nil {
		return "", err
	}
	sum := sha256.Sum256(append(b, s.Version...))
	return hex.EncodeToString(sum[:4]), nil
}

const PaperName = 42
