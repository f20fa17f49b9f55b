package webtest

import (
	"strings"

	"golang.org/x/net/html"
	"golang.org/x/net/html/atom"
)

// Said is one text of a page as its reader meets it.
type Said struct {
	Kind string // where it stands: an element ("p", "th", "label", "option", "desc", …) or an attribute ("aria-label", …)
	Text string // with single spaces
}

// saidAlone are the elements whose text is one piece; what stands in others belongs to the piece around it.
var saidAlone = map[string]bool{
	"p": true, "li": true, "td": true, "th": true, "dt": true, "dd": true, "h1": true, "h2": true, "h3": true, "h4": true, "h5": true, "h6": true,
	"label": true, "legend": true, "summary": true, "button": true, "caption": true, "figcaption": true, "small": true, "option": true, "title": true,
	"desc": true, "text": true, "a": true, "div": true, "section": true, "article": true, "header": true, "footer": true, "nav": true, "main": true,
	"aside": true, "form": true, "fieldset": true, "table": true, "tr": true, "ul": true, "ol": true, "dl": true, "details": true, "body": true,
	"head": true, "svg": true, "figure": true, "output": true, "br": true, "g": true, "select": true, "blockquote": true, "pre": true, "tspan": true,
}

// saidIn are the attributes that are read out or shown.
var saidIn = map[string]bool{"aria-label": true, "title": true, "placeholder": true, "alt": true, "aria-description": true, "data-tip": true}

// SaidOn are the texts of a page, in their order: headings, paragraphs, labels, options, cells, what stands in pictures and
// what a screen reader says of them. A text of an element in the middle of a sentence (a link, a strong word) belongs to
// that sentence.
func SaidOn(body string) ([]Said, error) {
	root, err := html.Parse(strings.NewReader(body))
	if err != nil {
		return nil, err
	}
	r := &saidReader{}
	r.walk(root, "body")
	return r.out, nil
}

type saidReader struct {
	out  []Said
	kind string
	text strings.Builder
}

// flush ends the piece that is being read.
func (r *saidReader) flush() {
	if text := strings.Join(strings.Fields(r.text.String()), " "); text != "" {
		r.out = append(r.out, Said{r.kind, text})
	}
	r.text.Reset()
}

func (r *saidReader) walk(n *html.Node, inside string) {
	switch {
	case n.Type == html.TextNode:
		if r.text.Len() == 0 {
			r.kind = inside
		}
		r.text.WriteString(n.Data)
		return
	case n.Type == html.ElementNode && (n.DataAtom == atom.Script || n.DataAtom == atom.Style || n.DataAtom == atom.Template):
		return
	case n.Type == html.ElementNode:
		for _, a := range n.Attr {
			if saidIn[a.Key] && strings.TrimSpace(a.Val) != "" {
				r.out = append(r.out, Said{a.Key, strings.Join(strings.Fields(a.Val), " ")})
			}
		}
	}
	alone := n.Type == html.ElementNode && saidAlone[n.Data]
	// A link inside a sentence is a part of it; a link that is all of its line is a label.
	if alone && n.Data == "a" {
		alone = !amidText(n)
	}
	if alone {
		r.flush()
		inside = n.Data
	}
	for c := n.FirstChild; c != nil; c = c.NextSibling {
		r.walk(c, inside)
	}
	if alone {
		r.flush()
	}
}

// amidText reports whether text stands right beside a node, in the same element.
func amidText(n *html.Node) bool {
	for _, next := range []*html.Node{n.PrevSibling, n.NextSibling} {
		if next != nil && next.Type == html.TextNode && strings.TrimSpace(next.Data) != "" {
			return true
		}
	}
	return false
}
