package guide

import (
	"embed"
	"encoding/csv"
	"fmt"
	"strings"

	"duskweight/internal/model/unit"
)

// The tables of what the tests hold against print. Package witness writes them and compares them.
//
//go:embed known/*.csv
var knownFiles embed.FS

// subjects are the tables of the page How we know, in their order, with the words for what they compare.
var subjects = []struct{ file, title, what, printed, ours string }{
	{"whole", "Whole hoists and homes", "Compared", "Published", "Duskweight"},
	{"drive", "Motor, gears and rope", "Compared", "Published", "Duskweight"},
	{"strength", "Strength", "Compared", "Published", "Duskweight"},
	{"sun", "Sun", "Compared", "Published", "Duskweight"},
	{"panel", "Panels", "Compared", "Published", "Duskweight"},
	{"money", "Money", "Compared", "Published", "Duskweight"},
	{"years", "Made years by place", "Place", "Real years", "Share that lies between the made bad and good year"},
}

// knownTable is one of these tables, ready to print.
type knownTable struct {
	Title, What, Printed, Ours string
	Rows                       []knownRow
}

type knownRow struct{ What, Printed, Ours, Source, test string }

// Count says how many values the table compares.
func (k knownTable) Count() string {
	n, of := 0, " values"
	for _, r := range k.Rows {
		n += r.count()
	}
	if k.What == "Place" {
		n, of = len(k.Rows), " places"
	}
	return unit.Rounded(float64(n), 4) + of
}

// count is how many values a row compares: one, or those of a whole table.
func (r knownRow) count() int {
	var n int
	if _, err := fmt.Sscanf(r.Printed, "%d values", &n); err != nil {
		return 1
	}
	return n
}

// readKnown reads the embedded tables.
func readKnown() ([]knownTable, error) {
	var out []knownTable
	for _, s := range subjects {
		text, err := knownFiles.ReadFile("known/" + s.file + ".csv")
		if err != nil {
			return nil, err
		}
		lines, err := csv.NewReader(strings.NewReader(string(text))).ReadAll()
		if err != nil {
			return nil, err
		}
		one := knownTable{Title: s.title, What: s.what, Printed: s.printed, Ours: s.ours}
		for _, l := range lines {
			one.Rows = append(one.Rows, knownRow{test: l[0], What: strings.ToUpper(l[1][:1]) + l[1][1:], Printed: l[2], Ours: l[3], Source: l[4]})
		}
		out = append(out, one)
	}
	return out, nil
}

// knownSummary says how much is compared with how many works.
func knownSummary(tables []knownTable) string {
	values, works := 0, map[string]bool{}
	for _, t := range tables {
		if t.What == "Place" {
			continue
		}
		for _, r := range t.Rows {
			values += r.count()
			works[r.Source] = true
		}
	}
	return fmt.Sprintf("%s values, from %d places in books, papers, standards and data sheets.", unit.Rounded(float64(values), 4), len(works))
}
