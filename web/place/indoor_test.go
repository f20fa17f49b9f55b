package place

import (
	"net/url"
	"strings"
	"testing"

	"duskweight/internal/catalog"
	"duskweight/internal/document"
	"duskweight/internal/model"
	"duskweight/internal/model/unit"
	"duskweight/internal/say"
	"duskweight/web/form"
)

// A room of 16 °C, 20 °C in July, keeps a battery from the frost of the north: the year has no hour too cold to charge, the
// coldest month is as far below the mean as the warmest is above it, and more nights have light than outside. The words
// about the trade's size name the cold where the cold is the cause.
func TestRoomOfTheBattery(t *testing.T) {
	doc := catalog.Sample()
	place, ok := catalog.Climate("Jyväskylä")
	if !ok {
		t.Fatal("no such climate")
	}
	doc.Project.Place = place
	v := document.Clone(doc.Variants[1])
	bank := v.Stores[0].Cells
	bank.Indoors, bank.Autonomy = "own_room", unit.Of(unit.Ratio(3))
	f := form.Form[model.Project]{Parts: PlaceForm(&doc.Project)}
	room := document.Clone(doc.Project)
	if ps := f.Read(url.Values{"place.indoor.mean_c": {"16"}, "place.indoor.swing_k": {"20 °C"}}, &room, unit.Metric); len(ps) > 0 {
		t.Fatal(ps)
	}
	if in := room.Place.Indoor; in == nil || in.Mean != 16 || in.Swing != 4 || in.Warmest != 7 {
		t.Fatalf("the room: %+v", room.Place.Indoor)
	}
	out, in := model.Prepare(doc.Project).Evaluate(v), model.Prepare(room).Evaluate(v)
	cold, warm := model.CellsOf(out.Stores[0]), model.CellsOf(in.Stores[0])
	if cold.Life.NoFillHours < 1000 || warm.Life.NoFillHours != 0 || in.Year.NightsServed <= out.Year.NightsServed {
		t.Errorf("outside %d h without charging and %d nights, in the room %d h and %d nights", cold.Life.NoFillHours, out.Year.NightsServed, warm.Life.NoFillHours, in.Year.NightsServed)
	}
	if said := say.Join(cold.Differ...).String(); !strings.Contains(said, "too cold or too hot to charge") {
		t.Errorf("outside: %s", said)
	}
	if said := say.Join(warm.Differ...).String(); strings.Contains(said, "to charge") {
		t.Errorf("in the room: %s", said)
	}
	if ps := f.Read(url.Values{"place.indoor.swing_k": {"22"}}, &doc.Project, unit.Metric); len(ps) != 1 || !strings.Contains(ps[0].Say.String(), "mean of the year first") {
		t.Errorf("a warmest month without a mean: %v", ps)
	}
	if ps := f.Read(url.Values{"place.indoor.mean_c": {""}}, &room, unit.Metric); len(ps) > 0 || room.Place.Indoor != nil {
		t.Errorf("emptied: %v, %+v", ps, room.Place.Indoor)
	}
}
