package catalog

import (
	"bytes"
	_ "embed"
	"encoding/json"
	"fmt"
	"io"
	"strings"
	"sync"

	"duskweight/internal/model/sun"
	"duskweight/internal/model/unit"
)

// climates.json: monthly means of thirty places, each worked out from an hourly typical year; the words of its source
// stand in "dataset".
//
//go:embed climates.json
var climatesJSON []byte

// StarterClimate is a place whose sky is known well enough to begin with.
type StarterClimate struct {
	Name    string
	Country string // ISO 3166-1, two letters
	Place   sun.Place
	Coldest unit.Celsius // of the whole typical year
	KT      [12]float64  // clearness by month: irradiation on the flat over that outside the atmosphere
	Source  string
	Yearly  unit.Irradiation // on the flat, in a year
}

// climateRow is a row of climates.json.
type climateRow struct {
	Name    string      `json:"name"`
	Country string      `json:"country"`
	Lat     float64     `json:"lat"`
	Lon     float64     `json:"lon"`
	TZ      float64     `json:"tz_hours"`
	Elev    float64     `json:"elev_m"`
	GHI     [12]float64 `json:"ghi_kwh_m2_day"`
	TMean   [12]float64 `json:"t_mean_c"`
	TMax    [12]float64 `json:"t_daymax_mean_c"`
	TMin    [12]float64 `json:"t_daymin_mean_c"`
	Coldest float64     `json:"t_year_min_c"`
	KT      [12]float64 `json:"kt"`
	KTSd    [12]float64 `json:"kt_sd"`
	KTLag1  float64     `json:"kt_lag1"`
	Dataset string      `json:"dataset"`
}

// starterClimates reads the embedded rows once.
var starterClimates = sync.OnceValue(func() []StarterClimate {
	rows, err := decodeClimates(climatesJSON)
	if err != nil {
		panic("catalog: climates.json: " + err.Error())
	}
	return rows
})

// Climates returns the starter climates, by country and name as they stand in the list.
func Climates() []StarterClimate {
	rows := starterClimates()
	out := make([]StarterClimate, len(rows))
	for i, c := range rows {
		out[i] = c.copied()
	}
	return out
}

// Climate returns the place of a starter climate by its name, ready to stand in a project; ok is false for none.
func Climate(name string) (place sun.Place, ok bool) {
	for _, c := range starterClimates() {
		if strings.EqualFold(c.Name, name) {
			return c.copied().Place, true
		}
	}
	return sun.Place{}, false
}

// copied returns c with monthly means of its own, so that changing a plan changes nothing that ships.
func (c StarterClimate) copied() StarterClimate {
	m := *c.Place.Monthly
	c.Place.Monthly = &m
	return c
}

// decodeClimates reads rows strictly: no unknown field, nothing after the list.
func decodeClimates(b []byte) ([]StarterClimate, error) {
	var rows []climateRow
	d := json.NewDecoder(bytes.NewReader(b))
	d.DisallowUnknownFields()
	if err := d.Decode(&rows); err != nil {
		return nil, err
	}
	if _, err := d.Token(); err != io.EOF {
		return nil, fmt.Errorf("something follows the list")
	}
	var out []StarterClimate
	for _, r := range rows {
		out = append(out, r.climate())
	}
	return out, nil
}

// daysIn are the days of the months of a typical year.
var daysIn = [12]float64{31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31}

// climate converts a row to SI. The spread and the lag of its one typical year are mixed with the usual ones.
func (r climateRow) climate() StarterClimate {
	var m sun.Monthly
	c := StarterClimate{Name: r.Name, Country: r.Country, Coldest: unit.Celsius(r.Coldest), KT: r.KT, Source: r.Dataset + ", monthly means"}
	for i := range 12 {
		m.GHI[i] = unit.Irradiation(r.GHI[i] * 3.6e6)
		m.TMean[i] = unit.Celsius(r.TMean[i])
		m.TMax[i] = unit.Celsius(r.TMax[i])
		m.TMin[i] = unit.Celsius(r.TMin[i])
		c.Yearly += m.GHI[i] * unit.Irradiation(daysIn[i])
	}
	spread, lag := sun.MixOneYear(r.KT, r.KTSd, r.KTLag1, m.TMean, unit.Angle(r.Lat)*unit.Degree, unit.Length(r.Elev))
	m.KTSd, m.KTLag1 = sun.Own(spread), unit.Of(unit.Ratio(lag))
	c.Place = sun.Place{
		Name:      r.Name,
		Latitude:  unit.Of(unit.Angle(r.Lat) * unit.Degree),
		Longitude: unit.Of(unit.Angle(r.Lon) * unit.Degree),
		Elevation: unit.Of(unit.Length(r.Elev)),
		UTCOffset: unit.Of(unit.Duration(r.TZ) * unit.Hour),
		Sky:       sun.SkyMonthly,
		Monthly:   &m,
	}
	return c
}
