package sun

import (
	"encoding/json"
	"fmt"
	"math"
	"testing"

	"duskweight/internal/model/unit"
)

// The means of six weather files are those that were worked out of the same files in another program: light and air to
// their printed digits, the lag to 0.02. The clearness divides by the light outside the atmosphere, for which that program takes
// an older formula of the sun's declination: up to 3 % near the equinoxes, nearly the same for mean and spread, so that
// their ratio is compared.
func TestMeansOfFiles(t *testing.T) {
	var ref reference
	if err := json.Unmarshal(shared(t, "weather-reference.json"), &ref); err != nil {
		t.Fatal(err)
	}
	var climates []struct {
		Name     string
		Lat, Lon float64
		TZ       float64     `json:"tz_hours"`
		Elev     float64     `json:"elev_m"`
		GHI      [12]float64 `json:"ghi_kwh_m2_day"`
		TMean    [12]float64 `json:"t_mean_c"`
		TMax     [12]float64 `json:"t_daymax_mean_c"`
		TMin     [12]float64 `json:"t_daymin_mean_c"`
		KT       [12]float64 `json:"kt"`
		KTSd     [12]float64 `json:"kt_sd"`
		KTLag1   float64     `json:"kt_lag1"`
	}
	if err := json.Unmarshal(shared(t, "climates.json"), &climates); err != nil {
		t.Fatal(err)
	}
	compared := 0
	for name := range ref.Files {
		w := columns(t, name)
		for _, c := range climates {
			if math.Abs(c.Lat-ref.Files[name].Lat) > 0.02 || math.Abs(c.Lon-ref.Files[name].Lon) > 0.02 {
				continue
			}
			compared++
			w.Latitude, w.Longitude, w.Elevation, w.UTCOffset = deg(c.Lat), deg(c.Lon), unit.Length(c.Elev), unit.Duration(c.TZ*3600)
			m, k, sd, lag := meansOf([]*Series{w})
			for i := range 12 {
				at := fmt.Sprint(c.Name, " month ", i+1, ": ")
				near(t, at+"light", float64(m.GHI[i])/3.6e6, c.GHI[i], 0.006)
				near(t, at+"air", float64(m.TMean[i]), c.TMean[i], 0.06)
				near(t, at+"warmest", float64(m.TMax[i]), c.TMax[i], 0.06)
				near(t, at+"coldest", float64(m.TMin[i]), c.TMin[i], 0.06)
				near(t, at+"clearness", k[i]/c.KT[i], 1, 0.032)
				near(t, at+"spread over clearness", sd[i]/k[i], c.KTSd[i]/c.KT[i], 0.005)
			}
			near(t, c.Name+" lag", lag, c.KTLag1, 0.02)
		}
	}
	if compared < 5 {
		t.Errorf("%d places compared", compared)
	}
}
