package model

import "duskweight/internal/model/unit"

// YearsAnswer is what many weather years come to for one variant. A gap is a run of nights that are not full, over the
// turn of the year too; longest_gap_h counts 24 hours for each night of the longest.
type YearsAnswer struct {
	Of         YearsOf      `json:"of"`
	N          int          `json:"n"`
	Basis      YearsBasis   `json:"basis"`
	Nights     Quantiles    `json:"nights"` // full ones, rounded down
	NightShare Quantiles    `json:"night_share"`
	Unmet      Quantiles    `json:"unmet_j"`
	LongestGap Quantiles    `json:"longest_gap_h"`   // rounded up to whole nights
	Gaps       Quantiles    `json:"gaps"`            // rounded up
	Gaps3      Quantiles    `json:"gaps_3"`          // of three nights or more, rounded up
	FirstMonth *int         `json:"first_gap_month"` // month in which the longest gap begins most often, 1 to 12; null without a gap
	Each       []YearAnswer `json:"each"`
}

// YearsOf says whether the years are made from means or are those of weather files.
type YearsOf string

// The kinds of year.
const (
	YearsMade  YearsOf = "made"
	YearsFiles YearsOf = "files"
)

// YearsBasis is what the years are made from, or that they are real.
type YearsBasis string

// What years rest on.
const (
	BasisMeans     YearsBasis = "means"
	BasisDescribed YearsBasis = "described"
	BasisTypical   YearsBasis = "typical"
	BasisReal      YearsBasis = "real"
)

// Quantiles are the values below which one year in ten, half of the years and nine of ten lie, and the two ends
// (source.HyndmanFan.At("definition 7")).
type Quantiles struct {
	P10   float64 `json:"p10"`
	P50   float64 `json:"p50"`
	P90   float64 `json:"p90"`
	Least float64 `json:"least"`
	Most  float64 `json:"most"`
}

// YearAnswer is one of the years.
type YearAnswer struct {
	Year       *int                 `json:"year"` // of a file that says it
	GHI        [12]unit.Irradiation `json:"ghi_j_m2_month"`
	Plane      unit.Irradiation     `json:"plane_j_m2"`
	Nights     int                  `json:"nights"`
	NightShare float64              `json:"night_share"`
	Unmet      unit.Energy          `json:"unmet_j"`
	LongestGap int                  `json:"longest_gap_h"`
	Gaps       int                  `json:"gaps"`
	Gaps3      int                  `json:"gaps_3"`
}
