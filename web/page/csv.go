package page

import (
	"encoding/csv"
	"fmt"
	"math"
	"net/http"
	"strconv"
	"strings"
)

// SheetOfNumbers is a table that other programs read: a head with units, then rows of texts and numbers.
type SheetOfNumbers struct {
	Name string // of the file, without its ending
	Head []string
	Rows [][]any // string, float64 or int; a NaN or an infinite number is an empty cell
}

// SendCSV sends a table as a CSV file: numbers as plain numbers with a decimal point, texts guarded.
func SendCSV(w http.ResponseWriter, t SheetOfNumbers) error {
	var b strings.Builder
	c := csv.NewWriter(&b)
	rows := make([][]string, 0, len(t.Rows)+1)
	head := make([]string, len(t.Head))
	for i, h := range t.Head {
		head[i] = guarded(h)
	}
	rows = append(rows, head)
	for _, row := range t.Rows {
		cells := make([]string, len(row))
		for i, cell := range row {
			cells[i] = CsvCell(cell)
		}
		rows = append(rows, cells)
	}
	if err := c.WriteAll(rows); err != nil {
		return fmt.Errorf("csv: %w", err)
	}
	w.Header().Set("Content-Type", "text/csv; charset=utf-8")
	w.Header().Set("Content-Disposition", `attachment; filename="`+t.Name+`.csv"`)
	_, err := w.Write([]byte(b.String()))
	return err
}

// CsvCell prints one cell.
func CsvCell(cell any) string {
	switch v := cell.(type) {
	case float64:
		if math.IsNaN(v) || math.IsInf(v, 0) {
			return ""
		}
		return strconv.FormatFloat(v, 'g', -1, 64)
	case int:
		return strconv.Itoa(v)
	case string:
		return guarded(v)
	}
	return ""
}

// guarded keeps a text from being read as a formula by a program for tables: one that begins with = + - @, a tab or a
// line end gets an apostrophe in front.
func guarded(text string) string {
	if text != "" && strings.ContainsRune("=+-@\t\r\n", rune(text[0])) {
		return "'" + text
	}
	return text
}
