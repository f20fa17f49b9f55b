package draw

import "io"

// SparePart is the kind of a part on a shelf, by the word of its list: "motors", "stages", "drums", "ropes", "pulleys",
// "panels", "batteries"; "" is the place for another one.
type SparePart string

// Draw draws the part small, standing on the lower edge. It is hidden from whoever hears the page: its name stands below.
func (k SparePart) Draw(out io.Writer) error {
	p := newPen(out)
	p.raw(`<svg class="sketch" viewBox="0 0 96 72" aria-hidden="true">`)
	if draw := spareParts[k]; draw != nil {
		draw(p)
	}
	return p.close()
}

var spareParts = map[SparePart]func(*pen){
	"motors": func(p *pen) {
		p.rect(16, 30, 50, 32, attrs{"class", "steel", "rx", "6"})
		for x := 28.0; x <= 52; x += 6 {
			p.line(x, 30, x, 62, attrs{"class", "thin"})
		}
		p.line(66, 46, 86, 46, attrs{"class", "shaft"})
		p.path([]float64{26, 62, 20, 70, 62, 70, 56, 62}, false, attrs{"class", "shaft"})
	},
	"stages": func(p *pen) {
		p.rect(12, 22, 72, 48, attrs{"class", "paper", "rx", "4"})
		p.circle(32, 46, 11, attrs{"class", "steel"})
		p.circle(60, 46, 17, attrs{"class", "steel"})
		p.circle(32, 46, 3, attrs{"class", "thin"})
		p.circle(60, 46, 3, attrs{"class", "thin"})
		p.line(4, 46, 12, 46, attrs{"class", "shaft"})
		p.line(84, 46, 92, 46, attrs{"class", "shaft"})
	},
	"drums": func(p *pen) {
		p.rect(14, 20, 7, 50, attrs{"class", "steel"})
		p.rect(21, 28, 54, 34, attrs{"class", "wood"})
		p.rect(75, 20, 7, 50, attrs{"class", "steel"})
		for x := 28.0; x <= 46; x += 6 {
			p.line(x, 28, x, 62, attrs{"class", "rope"})
		}
		p.line(4, 45, 14, 45, attrs{"class", "shaft"})
		p.line(82, 45, 92, 45, attrs{"class", "shaft"})
	},
	"ropes": func(p *pen) {
		p.rect(16, 18, 6, 52, attrs{"class", "wood"})
		p.rect(22, 26, 50, 36, attrs{"class", "mass"})
		p.rect(72, 18, 6, 52, attrs{"class", "wood"})
		for x := 27.0; x <= 69; x += 6 {
			p.line(x, 26, x, 62, attrs{"class", "rope"})
		}
	},
	"pulleys": func(p *pen) {
		p.path([]float64{43, 12, 48, 6, 54, 11, 48, 18, 48, 26}, false, attrs{"class", "shaft"})
		p.rect(38, 26, 20, 34, attrs{"class", "paper"})
		p.circle(48, 48, 20, attrs{"class", "steel"})
		p.circle(48, 48, 4, attrs{"class", "shaft"})
		p.line(28, 48, 28, 70, attrs{"class", "rope"})
		p.line(68, 48, 68, 70, attrs{"class", "rope"})
	},
	"panels": func(p *pen) {
		p.path([]float64{22, 16, 84, 16, 74, 58, 12, 58}, true, attrs{"class", "sun"})
		p.path([]float64{43, 16, 33, 58}, false, attrs{"class", "thin"})
		p.path([]float64{63, 16, 53, 58}, false, attrs{"class", "thin"})
		p.path([]float64{17, 37, 79, 37}, false, attrs{"class", "thin"})
		p.path([]float64{64, 58, 72, 70}, false, attrs{"class", "shaft"})
		p.path([]float64{26, 58, 22, 70}, false, attrs{"class", "shaft"})
	},
	"batteries": func(p *pen) {
		p.rect(18, 26, 60, 44, attrs{"class", "paper"})
		p.rect(22, 46, 52, 20, attrs{"class", "cell"})
		p.rect(26, 20, 10, 6, attrs{"class", "steel"})
		p.rect(60, 20, 10, 6, attrs{"class", "steel"})
	},
	"": func(p *pen) {
		p.rect(20, 20, 56, 50, attrs{"class", "empty", "rx", "4"})
		p.line(48, 34, 48, 56, attrs{"class", "shaft"})
		p.line(37, 45, 59, 45, attrs{"class", "shaft"})
	},
}
