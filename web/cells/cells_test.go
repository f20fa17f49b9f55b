package cells

import (
	"strings"
	"testing"

	"duskweight/internal/catalog"
	"duskweight/internal/model"
	"duskweight/internal/model/unit"
)

// Each figure of a battery opens to its formula and its source.
func TestCellFiguresOpen(t *testing.T) {
	doc := catalog.Sample()
	doc.Variants[2].Stores[1].Cells.Autonomy = unit.Of[unit.Ratio](2)
	r := model.Evaluate(doc, "")
	for _, at := range [][2]int{{1, 0}, {2, 1}} {
		v := cellsViewOf(r.Variants[at[0]], at[1], unit.Metric, map[string]string{}, "/x")
		rows := append(append(append(append(v.Year, v.Life...), v.Line...), v.Air...), v.Sizing...)
		if len(v.Line) < 5 || len(v.Sizing) != 6 || len(v.Differ) < 3 {
			t.Errorf("%v: line %d, sizing %d, differ %d", at, len(v.Line), len(v.Sizing), len(v.Differ))
		}
		for _, row := range rows {
			if row.How.Formula == "" || row.How.Source == "" || row.Value == "" {
				t.Errorf("%s: %+v", row.Name, row)
			}
		}
	}
}

// Air by hand, six cells of 7 Ah that make 8 mA of gas for each Ah on boost (sealed lead–acid, IEC 62485-2 table 1):
// 0.05·6·8·7/1000 = 0.0168 m³ = 16.8 l an hour, openings of 28·0.0168 = 0.4704 cm²; both are needs and are rounded up. Cells that make no gas have no such rows.
func TestCellAir(t *testing.T) {
	doc := catalog.Sample()
	lead := doc.Variants[2].Stores[1].Cells
	lead.Kind, lead.Capacity, lead.Voltage = "sealed_lead", unit.Of(7*unit.AmpereHour), unit.Of[unit.Voltage](12)
	r := model.Evaluate(doc, "")
	rows := airRows(model.CellsOf(r.Variants[2].Stores[1]), unit.Metric)
	if len(rows) != 3 || !strings.HasPrefix(rows[0].Value, "17"+unit.Space+"l an hour") || !strings.HasPrefix(rows[2].Value, "0.48"+unit.Space+"cm²") {
		t.Errorf("%+v", rows)
	}
	if rows := airRows(model.CellsOf(r.Variants[1].Stores[0]), unit.Metric); rows != nil {
		t.Errorf("iron phosphate: %+v", rows)
	}
}
