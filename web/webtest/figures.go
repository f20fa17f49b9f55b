package webtest

import (
	"regexp"
	"strings"

	"golang.org/x/net/html"
)

// Figure is a figure with the name that stands beside it, and the page.
type Figure struct{ Name, Value, Unit, Page string }

// oneFigure is a text that is one figure with its unit, and nothing else.
var oneFigure = regexp.MustCompile(`^(?:about )?(−?\d[\d\x{a0} ]*(?:\.\d+)?)[\x{a0} ]?(×|%|[\pL°Ω²³·/]+(?: \pL{1,3}/min)?)$`)

// endFigure is a text that ends in one: "A night needs 57.6 Wh".
var endFigure = regexp.MustCompile(`^(\pL[\pL ,’]+?) (−?\d[\d\x{a0}]*(?:\.\d+)?\x{a0}?(?:×|%|[\pL°Ω²³·/]+))$`)

// FiguresOn are the named figures of a page: a term and its description, a heading and the figure under it, the head of a row and
// its only cell, and a text that ends in a figure.
func FiguresOn(body, at string) (out []Figure, err error) {
	root, err := html.Parse(strings.NewReader(body))
	if err != nil {
		return nil, err
	}
	add := func(name, text string) {
		name = strings.ToLower(strings.Trim(strings.Join(strings.Fields(name), " "), " :≠…"))
		if m := oneFigure.FindStringSubmatch(strings.TrimSpace(text)); m != nil && name != "" {
			out = append(out, Figure{name, strings.NewReplacer("\u00a0", "", " ", "", "−", "-").Replace(m[1]), m[2], at})
		}
	}
	var walk func(n *html.Node)
	walk = func(n *html.Node) {
		if n.Type == html.ElementNode {
			if m := endFigure.FindStringSubmatch(strings.TrimSpace(textIn(n))); m != nil && (n.Data == "title" || n.Data == "p" || n.Data == "li") {
				add(m[1], m[2])
			}
			switch n.Data {
			case "dt":
				if next := after(n); next != nil && next.Data == "dd" {
					add(textIn(n), textIn(next))
				}
			case "h3":
				if next := after(n); next != nil && next.Data == "p" {
					add(textIn(n), textIn(next))
				}
			case "tr":
				var cells []*html.Node
				for c := n.FirstChild; c != nil; c = c.NextSibling {
					if c.Type == html.ElementNode {
						cells = append(cells, c)
					}
				}
				if len(cells) == 2 && cells[0].Data == "th" || len(cells) > 2 && strings.HasSuffix(at, "/compare") {
					for _, c := range cells[1:] {
						add(textIn(cells[0]), textIn(c))
					}
				}
			}
		}
		for c := n.FirstChild; c != nil; c = c.NextSibling {
			walk(c)
		}
	}
	walk(root)
	return out, nil
}

// after is the next element beside a node.
func after(n *html.Node) *html.Node {
	for n = n.NextSibling; n != nil && n.Type != html.ElementNode; n = n.NextSibling {
	}
	return n
}

// textIn is all text in a node but for what is said to screen readers alone.
func textIn(n *html.Node) string {
	if n.Type == html.TextNode {
		return n.Data
	}
	if n.Type == html.ElementNode && (n.Data == "details" || n.Data == "style" || n.Data == "script") {
		return ""
	}
	var b strings.Builder
	for c := n.FirstChild; c != nil; c = c.NextSibling {
		b.WriteString(textIn(c))
	}
	return b.String()
}
