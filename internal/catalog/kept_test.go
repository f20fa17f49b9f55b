package catalog_test

import (
	"fmt"
	"maps"
	"slices"
	"strings"
	"testing"

	"duskweight/internal/catalog"
	"duskweight/internal/document"
	"duskweight/internal/model"
	"duskweight/internal/model/lift"
	"duskweight/internal/model/unit"
	"duskweight/internal/witness"
)

// DUSKWEIGHT_CATALOG=write writes the kept texts anew.
const writeCatalog = "DUSKWEIGHT_CATALOG"

// What ships is kept as text: the two worked examples, first plans from a few answers, and every row of the tables. The examples are
// invented and many rows are from memory, so no print can be held against each of their numbers; a plan that somebody began with
// them should still not find other ones tomorrow by a slip of a finger. The test sees a change, to the last digit. Whether a
// number is right, its source says, and the tests beside this one: published rows, laws of rope and steel, and plans that are
// run. After a change on purpose read the difference, with the source at hand, before the new text is committed.
func TestWhatShipsIsKept(t *testing.T) {
	witness.Files(t, writeCatalog, "Read what has changed, with its source.", keptTexts(t))
}

func keptTexts(t *testing.T) map[string]string {
	t.Helper()
	luxembourg, ok := catalog.Climate("Luxembourg")
	if !ok {
		t.Fatal("the climate is gone")
	}
	south := luxembourg
	south.Latitude = unit.Of(-5 * unit.Degree)
	guessed := catalog.Answers{Name: "Guessed", HeavyName: "Sand", Place: luxembourg, Currency: "EUR", Seed: 1}
	for question := range catalog.Guesses() {
		guessed.Guess(question)
	}
	out := map[string]string{}
	for name, doc := range map[string]model.Document{
		"sample.txt": catalog.Sample(), "cabin.txt": catalog.Cabin(), "start_guessed.txt": catalog.Start(guessed),
		"start_toy.txt":   catalog.Start(catalog.Answers{Name: "Small", HeavyName: "A bottle", Place: south, Mass: 5, Height: 1, Lamps: 1, LampPower: 1, Hours: unit.Hour}),
		"start_heavy.txt": catalog.Start(catalog.Answers{Name: "Heavy", HeavyName: "Stones", Place: luxembourg, Mass: 1000, Height: 10, Support: lift.RestsOnRoofTruss, Lamps: 20, LampPower: 10}),
	} {
		data, err := document.Encode(doc)
		if err != nil {
			t.Fatal(err)
		}
		out[name] = known(string(data))
	}
	var rows strings.Builder
	list(&rows, "rope", catalog.Ropes())
	list(&rows, "eyebolt", catalog.Eyebolts())
	list(&rows, "shackle", catalog.Shackles())
	list(&rows, "pulley", catalog.Pulleys())
	list(&rows, "material", catalog.Materials())
	list(&rows, "timber", catalog.TimberClasses())
	list(&rows, "steel", catalog.Steels())
	list(&rows, "tooth", catalog.Teeth())
	list(&rows, "motor", catalog.Motors())
	list(&rows, "stage", catalog.Stages())
	list(&rows, "lamp", catalog.Lamps())
	list(&rows, "appliance", catalog.Appliances())
	list(&rows, "ending", catalog.Endings())
	list(&rows, "wear", catalog.Wears())
	list(&rows, "bag", catalog.Bags())
	for _, question := range slices.Sorted(maps.Keys(catalog.Guesses())) {
		g := catalog.Guesses()[question]
		fmt.Fprintf(&rows, "guess of %s: %v, usual %v to %v, %s\n", question, g.Value, g.Low, g.High, g.Source)
	}
	for _, c := range catalog.Climates() {
		fmt.Fprintf(&rows, "climate %s %s %v %v %v %v %+v\n", c.Name, c.Source, c.Place.Latitude, c.Place.UTCOffset, c.Coldest, c.Yearly, *c.Place.Monthly)
	}
	out["rows.txt"] = rows.String()
	return out
}

// known is a document without what is not known, so that a new input changes nothing of it.
func known(doc string) string {
	var out strings.Builder
	for l := range strings.Lines(doc) {
		l = strings.TrimSuffix(strings.TrimSuffix(l, "\n"), ",")
		if !strings.HasSuffix(l, ": null") && !strings.HasSuffix(l, `: ""`) && !strings.HasSuffix(l, ": []") {
			out.WriteString(l + "\n")
		}
	}
	return out.String()
}

func list[T any](to *strings.Builder, what string, rows []T) {
	for _, r := range rows {
		fmt.Fprintf(to, "%s %+v\n", what, r)
	}
}
