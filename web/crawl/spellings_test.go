package crawl_test

import (
	"encoding/json"
	"math"
	"net/http"
	"net/url"
	"strings"
	"testing"

	"duskweight/internal/catalog"
	"duskweight/internal/model"
	"duskweight/internal/model/lift"
	"duskweight/internal/model/unit"
	"duskweight/internal/store"
	"duskweight/web"
	"duskweight/web/form"
	"duskweight/web/hoist"
	"duskweight/web/page"
	"duskweight/web/webtest"
)

// spelling is one text typed into one field of the page of a hoist, and what is stored for it, in SI, in each system.
type spelling struct {
	field, text      string
	metric, imperial float64
}

const foot, inch, pound = 0.3048, 0.0254, 0.45359237 // exact: yard and pound agreement of 1959

// same is a text that says the same in both systems.
func same(field, text string, si float64) spelling { return spelling{field, text, si, si} }

// spellings are worked out by hand from the exact definitions of the units. Bare numbers mean the unit of the field.
var spellings = []spelling{
	{"travel_m", "3", 3, 3 * foot}, {"travel_m", "2.8", 2.8, 2.8 * foot}, {"travel_m", "1,5", 1.5, 1.5 * foot}, {"travel_m", "1.5", 1.5, 1.5 * foot},
	{"travel_m", " 2,80 ", 2.8, 2.8 * foot}, {"travel_m", "1½", 1.5, 1.5 * foot}, {"travel_m", "1 1/2", 1.5, 1.5 * foot}, {"travel_m", "5/2", 2.5, 2.5 * foot},
	{"travel_m", ".9", 0.9, 0.9 * foot}, {"travel_m", "2.", math.NaN(), math.NaN()}, {"travel_m", "٣", 3, 3 * foot}, {"travel_m", "+2", 2, 2 * foot},
	same("travel_m", "2.8 m", 2.8), same("travel_m", "2.8m", 2.8), same("travel_m", "2,8 m", 2.8), same("travel_m", "280cm", 2.8), same("travel_m", "2800 mm", 2.8),
	same("travel_m", "2 800 mm", 2.8), same("travel_m", "2'800 mm", 2.8), same("travel_m", "2\u202f800\u00a0mm", 2.8), same("travel_m", "9 ft 2 in", 110*inch), same("travel_m", "9'2\"", 110*inch),
	same("travel_m", "9′ 2″", 110*inch), same("travel_m", "9 feet 2 inches", 110*inch), same("travel_m", "9ft2", 110*inch), same("travel_m", "9 ft 2 1/2 in", 110.5*inch), same("travel_m", "110\"", 110*inch),
	same("travel_m", "3 yd", 3*3*foot), same("travel_m", "2.8 Metres", 2.8), same("travel_m", "2 m 80 cm", 2.8),
	{"mass[0].mass_kg", "38", 38, 38 * pound}, same("mass[0].mass_kg", "38kg", 38), same("mass[0].mass_kg", "1.5 kg", 1.5), same("mass[0].mass_kg", "0,25 t", 250), same("mass[0].mass_kg", "2 000 g", 2),
	same("mass[0].mass_kg", "80 lbs", 80*pound), same("mass[0].mass_kg", "80 lb 8 oz", 80.5*pound), same("mass[0].mass_kg", "80#", 80*pound), same("mass[0].mass_kg", "38 kilos", 38), same("mass[0].mass_kg", "12 st", 168*pound),
	same("mass[0].mass_kg", "1 short ton", 2000*pound), {"mass[0].mass_kg", "2 000", 2000, 2000 * pound}, {"mass[0].mass_kg", "1500.5", 1500.5, 1500.5 * pound},
	{"rope.diameter_m", "5", 0.005, 5 * inch}, same("rope.diameter_m", "8mm", 0.008), same("rope.diameter_m", "0.8 cm", 0.008), same("rope.diameter_m", "5/16\"", 5*inch/16), same("rope.diameter_m", "5/16 in", 5*inch/16),
	{"rope.diameter_m", "3/8", 0.000375, 3 * inch / 8}, {"rope.breaking_load_n", "1500", 1500 * unit.G, 1500 * pound * unit.G}, same("rope.breaking_load_n", "15 kN", 15000), same("rope.breaking_load_n", "15000 N", 15000),
	same("rope.breaking_load_n", "1500 kgf", 1500*unit.G), same("rope.breaking_load_n", "1,5 t", 1500*unit.G), same("rope.breaking_load_n", "3000 lbf", 3000*pound*unit.G), same("rope.breaking_load_n", "1500 daN", 15000),
	same("machine.sheet_voltage_v", "12V", 12), same("machine.sheet_voltage_v", "12 V", 12), same("machine.sheet_voltage_v", "12,8", 12.8), same("machine.sheet_voltage_v", "12 volts", 12), same("machine.sheet_voltage_v", "12000 mV", 12),
	same("machine.sheet_no_load_speed_rad_s", "410 rpm", 410*2*math.Pi/60), same("machine.sheet_no_load_speed_rad_s", "410", 410*2*math.Pi/60), same("machine.sheet_no_load_speed_rad_s", "410 1/min", 410*2*math.Pi/60), same("machine.sheet_no_load_speed_rad_s", "3 rev/s", 3*2*math.Pi),
	same("machine.i0_a", "200 mA", 0.2), same("machine.i0_a", "0.2A", 0.2), same("machine.r_ohm", "350 mΩ", 0.35), same("machine.r_ohm", "0.35 ohm", 0.35), same("machine.r_ohm", "0,35 Ω", 0.35),
	same("machine.sheet_gear_ratio", "27:1", 27), same("machine.sheet_gear_ratio", "1:27", 27), same("machine.sheet_gear_ratio", "27", 27),
	{"machine.max_winding_c", "130", 130, (130 - 32) / 1.8}, same("machine.max_winding_c", "130 °C", 130), same("machine.max_winding_c", "266 °F", 130), same("machine.max_winding_c", "130C", 130), same("machine.max_winding_c", "403.15 K", 130),
	same("reeving.sheave_efficiency", "87 %", 0.87), same("reeving.sheave_efficiency", "87", 0.87), same("reeving.sheave_efficiency", "87 percent", 0.87), same("holds.brake_delay_s", "300 ms", 0.3), same("holds.brake_delay_s", "0,3 s", 0.3),
	same("machine.tau_winding_s", "2 min", 120), same("machine.tau_winding_s", "1 min 30 s", 90), same("machine.tau_winding_s", "1 h", 3600),
	{"holds.holds[0].torque_nm", "110", 110, 110 * pound * unit.G * foot}, same("holds.holds[0].torque_nm", "110 Nm", 110), same("holds.holds[0].torque_nm", "80 ft-lb", 80*pound*unit.G*foot), same("holds.holds[0].torque_nm", "900 kg·cm", 900*unit.G/100),
	same("structure.beam.yield_pa", "235 MPa", 235e6), same("structure.beam.yield_pa", "235 N/mm²", 235e6), same("structure.beam.yield_pa", "36 ksi", 36000*pound*unit.G/(inch*inch)), same("drum.fleet_angle_rad", "1,5°", 1.5*math.Pi/180), same("drum.fleet_angle_rad", "1.5", 1.5*math.Pi/180),
	same("machine.k_vs_rad", "0.0327 Nm/A", 0.0327), same("machine.k_vs_rad", "32.7 mNm/A", 0.0327), same("machine.k_vs_rad", "292 rpm/V", 60/(2*math.Pi*292)), same("machine.j_kg_m2", "210 gcm²", 2.1e-5), same("machine.j_kg_m2", "2.1e-5 kg·m²", 2.1e-5),
	same("reeving.rope_parts", "2", 2), same("reeving.rope_parts", "2 pcs", 2), same("drum.dead_wraps", "3 turns", 3),
}

// More than 60 spellings of numbers go through the page of a hoist in both systems of units, as a browser sends them, and
// the stored value is the one that a calculation by hand gives.
func TestSpellings(t *testing.T) {
	if len(spellings) < 60 {
		t.Fatalf("only %d spellings", len(spellings))
	}
	for _, sys := range []unit.System{unit.Metric, unit.Imperial} {
		s, page, vID := spellingPage(t, form.UnitsWords[sys])
		for _, one := range spellings {
			want := one.metric
			if sys == unit.Imperial {
				want = one.imperial
			}
			refused, got := typeOne(t, s, page, vID, one.field, one.text)
			switch {
			case math.IsNaN(want):
				if refused == "" && math.IsNaN(got) {
					t.Errorf("%s %q: nothing is said", one.field, one.text)
				}
			case refused != "":
				t.Errorf("%s in %s: %q is refused: %s", one.field, form.UnitsWords[sys], one.text, refused)
			case math.Abs(got-want) > 2e-15*math.Abs(want): // both are the nearest float64 to the exact value but for one rounding of the hand's product
				t.Errorf("%s in %s: %q is stored as %v, by hand %v", one.field, form.UnitsWords[sys], one.text, got, want)
			}
		}
	}
}

// What can be read in two ways is asked back, never taken: the stored value stays as it was.
func TestAmbiguousIsAskedBack(t *testing.T) {
	for _, word := range form.UnitsWords {
		s, page, vID := spellingPage(t, word)
		for _, one := range [][3]string{
			{"travel_m", "1,500", "1.5 or 1500"}, {"travel_m", "1.500", "1.5 or 1500"}, {"mass[0].mass_kg", "1.500,5", "Do you mean 1500.5?"}, {"mass[0].mass_kg", "1,500.5 kg", "Do you mean 1500.5?"},
			{"mass[0].mass_kg", "2 tons", "three tons"}, {"mass[0].mass_kg", "38 m", "a length"}, {"travel_m", "38 kg", "a mass"}, {"reeving.sheave_efficiency", "0.87", "0.87 % or 87 %"}, {"reeving.sheave_efficiency", "1", "1 % or 100 %"},
			{"machine.sheet_voltage_v", "12 W", "power"}, {"travel_m", "2 3", "two"}, {"travel_m", "2-3 m", "two"}, {"travel_m", "about 3", "not a number"}, {"travel_m", "3 x 2", "digits"}, {"travel_m", "9 ft 14 in", "too much"},
			{"drum.dead_wraps", "2.5", "whole"}, {"machine.r_ohm", "1e-3", "ordinary digits"}, {"machine.sheet_gear_ratio", "3:2", "27:1"}, {"rope.breaking_load_n", "15 kNm", "a torque"}, {"travel_m", "NaN", "not a number"}, {"travel_m", "-1", ""},
		} {
			_, before := typeOne(t, s, page, vID, one[0], "?")
			refused, got := typeOne(t, s, page, vID, one[0], one[1])
			if refused == "" || !strings.Contains(refused, one[2]) {
				t.Errorf("%s in %s: %q gives %v and %q, want %q", one[0], word, one[1], got, refused, one[2])
			}
			if math.IsNaN(before) != math.IsNaN(got) {
				t.Errorf("%s: %q changed what is stored: %v", one[0], one[1], got)
			}
		}
	}
}

// spellingPage is the page of a hoist with one row in each list that is typed into.
func spellingPage(t *testing.T, units string) (*web.Site, string, int64) {
	t.Helper()
	s := webtest.NewSite(t)
	if err := s.Store.SaveSettings(t.Context(), map[string]string{page.SettingUnits: units}); err != nil {
		t.Fatal(err)
	}
	h := &lift.Hoist{Name: "Hoist", Mass: make([]lift.Piece, 1)}
	h.Holds.Holds = make([]lift.Hold, 1)
	doc := catalog.Sample()
	doc.Variants = doc.Variants[:1]
	doc.Variants[0].Stores = []model.Store{{Hoist: h}}
	p, vs := webtest.Create(t, s, "spellings", doc)
	return s, page.VariantURL(p.ID, vs[0].ID) + "/hoist/0", vs[0].ID
}

// typeOne types one text into one field as leaving it does, and returns the words of the refusal and what is stored then;
// not known is NaN.
func typeOne(t *testing.T, s *web.Site, here string, id int64, field, text string) (refused string, stored float64) {
	t.Helper()
	v := savedVariant(t, s, id)
	sent := url.Values{form.NameRevision: {page.Itoa(int(v.Revision))}, "stores[0].hoist." + field: {text}}
	w := webtest.Ask(s.Handler(), "POST", here, sent, "Accept", "application/json")
	var got struct{ Problems []form.ProblemView }
	if err := json.Unmarshal(w.Body.Bytes(), &got); err != nil {
		t.Fatalf("%q: %d %v", text, w.Code, err)
	}
	if w.Code != http.StatusOK {
		for _, p := range got.Problems {
			refused += p.Say + " "
		}
	}
	h := savedVariant(t, s, id).Value.Stores[0].Hoist
	in := form.FindInput(hoist.HoistForm(), h, field)
	if x, known := in.Value(h); known {
		return refused, x
	}
	return refused, math.NaN()
}

func savedVariant(t *testing.T, s *web.Site, id int64) store.Saved[model.Variant] {
	t.Helper()
	v, err := s.Store.Variant(t.Context(), id)
	if err != nil {
		t.Fatal(err)
	}
	return v
}
