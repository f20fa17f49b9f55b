package web

import (
	"crypto/sha256"
	"encoding/hex"
	"net/http"

	"duskweight/internal/document"
	"duskweight/internal/model"
)

// The page Plan sheet: /projects/{project}/variants/{variant}/sheet. One printed page for the yard.

func (s *Site) showSheet(w http.ResponseWriter, r *http.Request) error {
	p, v, err := s.variant(r)
	if err != nil {
		return err
	}
	sys, err := s.units(r.Context())
	if err != nil {
		return err
	}
	stamp, err := s.stamp(p.Value, v.Value)
	if err != nil {
		return err
	}
	view := sheetOf(s.grounds.of(p).Evaluate(v.Value), p.Value, v.Value, sys)
	view.Back = variantURL(p.ID, v.ID)
	view.Letter = r.URL.Query().Get("paper") == "letter"
	view.Revisions = "variant revision " + itoa(int(v.Revision)) + " · project revision " + itoa(int(p.Revision))
	view.Stamp, view.Date = stamp, s.Now().Format("2 January 2006")
	return s.show(w, r, http.StatusOK, frame{Title: "Plan sheet: " + v.Value.Name, Paper: true}, sheetPage(view))
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
