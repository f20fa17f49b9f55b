package page

import (
	"io"
	"net/http"
	"strings"

	"github.com/go-chi/chi/v5"
)

// Pictures that need no script: SVG of package draw, each with a title and the sentence that reads it.

func SvgOf(d func(io.Writer) error) string {
	var b strings.Builder
	if err := d(&b); err != nil {
		return "" // a strings.Builder takes everything
	}
	return b.String()
}

// SendPicture sends the numbers of the picture that the address names.
func SendPicture(w http.ResponseWriter, r *http.Request, pictures []PictureView) error {
	for _, p := range pictures {
		if p.ID == chi.URLParam(r, "picture") {
			return SendCSV(w, p.Numbers())
		}
	}
	return ErrNotFound
}

// PictureView is an SVG of ours with its title, the sentence that reads it, links to its likes, and its numbers.
type PictureView struct {
	ID, Title, Say, SVG string
	Links               []Tab
	Head                []string
	Rows                [][]string
	CSV                 string                // address of its numbers
	Numbers             func() SheetOfNumbers // what stands there
}
