package web

import (
	"crypto/sha256"
	"encoding/hex"
	"net/http"

	"duskweight/internal/document"
	"duskweight/internal/model"
	"duskweight/internal/store"
)

// The page Plan sheet: /projects/{project}/variants/{variant}/sheet. One printed page for the yard.

func (s *Site) showSheet(w http.ResponseWriter, r *http.Request) error {
	p, v, sys, err := s.variantIn(r)
	if err != nil {
		return err
	}
	top, err := s.paperTop(p, v)
	if err != nil {
		return err
	}
	view := sheetView{paperTop: top, Back: variantURL(p.ID, v.ID), Letter: r.URL.Query().Get("paper") == "letter"}
	if view.Waits, err = s.refusedEntries(r.Context(), p, v); err != nil {
		return err
	}
	view = sheetOf(view, s.grounds.of(p).Evaluate(v.Value), p.Value, v.Value, sys)
	return s.show(w, r, http.StatusOK, frame{Title: "Plan sheet: " + v.Value.Name, Paper: true}, sheetPage(view))
}

// paperTop is the head of every page that is made for paper: what it is of, and from which numbers it was made.
type paperTop struct {
	Title, Project, Revisions, Stamp, Date string
	Example                                bool // of an invented project
}

func paperNames(p model.Project, v model.Variant) paperTop {
	return paperTop{Title: clip(v.Name, sheetName), Project: clip(p.Name, 60), Example: p.Example == "yes"}
}

func (s *Site) paperTop(p store.Saved[model.Project], v store.Saved[model.Variant]) (paperTop, error) {
	top := paperNames(p.Value, v.Value)
	top.Revisions = "variant revision " + itoa(int(v.Revision)) + " · project revision " + itoa(int(p.Revision))
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
