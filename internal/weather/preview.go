package weather

import (
	"errors"
	"io"
	"math"
	"strings"

	"duskweight/internal/model/unit"
)

// previewRows is how many rows a preview shows.
const previewRows = 12

// Preview is what a file looks like before it is read in full, for a page on which the columns are named.
type Preview struct {
	Mapping Mapping  // how it would be read
	Top     []string // the lines above the values, at most 20
	Heads   []string // the names of the columns
	Cells   [][]string
	Rows    []PreviewRow // the same rows as they would be read
	Refused *Refused     // why it cannot be read so; nil when it can, as far as these rows tell
}

// PreviewRow is one row as it would be read; light in W/m² for hourly rows.
type PreviewRow struct {
	Line          int
	When          string // "1 January 01:00", as stamped
	GHI, DHI, DNI unit.Known[unit.Irradiance]
	TAir          unit.Known[unit.Celsius]
}

// Look reads the whole file but only its first rows of values, and says how Read would take them with that hint. A file
// that is no text at all, or too large, is an error as in Read.
func Look(r io.Reader, hint Mapping) (Preview, error) {
	text, err := slurp(r)
	if err != nil {
		return Preview{}, err
	}
	s, err := layOut(text, hint)
	if s == nil {
		return Preview{}, err
	}
	var p Preview
	errors.As(err, &p.Refused)
	if s.order == "" && s.first < len(s.lines) {
		s.order = s.orderOf()
	}
	p.Mapping, p.Heads = s.mapping(), s.heads
	first := max(0, min(s.first, len(s.lines)))
	p.Top = s.lines[:min(first, 20)]
	end := min(first+previewRows, len(s.lines))
	for _, l := range s.lines[first:end] {
		p.Cells = append(p.Cells, fields(l, s.delimiter))
	}
	s.lines = s.lines[:end]
	rows, err := s.rows()
	if p.Refused == nil {
		errors.As(err, &p.Refused)
	}
	for _, x := range rows {
		p.Rows = append(p.Rows, x.preview(s.when.none()))
	}
	return p, nil
}

func (x row) preview(bare bool) PreviewRow {
	p := PreviewRow{Line: x.line}
	if !bare {
		p.When = strings.Replace(label(x.at.ofYear(x.at.month == 2 && x.at.day == 29)), "1 March", dayName(x.at), 1)
	}
	set := func(to *unit.Known[unit.Irradiance], v float64) {
		if !math.IsNaN(v) {
			*to = unit.Of(unit.Irradiance(v))
		}
	}
	set(&p.GHI, x.v[ghi])
	set(&p.DHI, x.v[dhi])
	set(&p.DNI, x.v[dni])
	if !math.IsNaN(x.v[temp]) {
		p.TAir = unit.Of(unit.Celsius(x.v[temp]))
	}
	return p
}

// dayName is 29 February where the stamp says so, for a calendar that has none.
func dayName(m moment) string {
	if m.month == 2 && m.day == 29 {
		return "29 February"
	}
	return "1 March"
}
