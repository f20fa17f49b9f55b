package sun

import "duskweight/internal/model/unit"

// Place is where the panels stand and how its sky is known.
type Place struct {
	Name      string                    `json:"name" say:"What you call the place"`
	Latitude  unit.Known[unit.Angle]    `json:"latitude_rad" say:"Latitude, north positive" range:"[-1.5707963267948966,1.5707963267948966]"`
	Longitude unit.Known[unit.Angle]    `json:"longitude_rad" say:"Longitude, east positive" range:"[-3.141592653589793,3.141592653589793]"`
	Elevation unit.Known[unit.Length]   `json:"elevation_m" say:"Height above the sea; not known counts as 0" range:"[-500,9000]"`
	UTCOffset unit.Known[unit.Duration] `json:"utc_offset_s" say:"Standard clock time ahead of UTC; not known is taken from the longitude" range:"[-50400,50400]"`
	Sky       SkyKind                   `json:"sky" say:"How the sky is known: monthly means, a described sky, the project's weather file, or all its weather files, each one year" enum:"monthly|described|file|files"`
	Described DescribedSky              `json:"described" say:"How is your sky, in words (rough)" enum:"|desert|dry|mixed|cloudy|very_cloudy"`
	Monthly   *Monthly                  `json:"monthly" say:"Twelve monthly means, January first"`
	Albedo    unit.Known[unit.Ratio]    `json:"albedo" say:"Share of light the ground throws back; not known counts as 0.2" range:"[0,1]"`
	Horizon   []Horizon                 `json:"horizon" say:"Height of the outline by direction; straight lines between the points"`
	RecordLow unit.Known[unit.Celsius]  `json:"record_low_c" say:"Lowest temperature ever measured there" range:"[-70,40]"`
	SnowFall  *[12]unit.Length          `json:"snow_m" say:"Fresh snow of each month, January first" range:"[0,20]"`
	SnowTimes *[12]unit.Count           `json:"snow_events" say:"Snowfalls in each month; not known counts as one snowfall a month, the careful count" range:"[0,31]"`
	Indoor    *Indoor                   `json:"indoor" say:"Temperature at the cells, if not the outside air"`
}

// Monthly is the twelve means that a year is made from.
type Monthly struct {
	GHI    [12]unit.Irradiation       `json:"ghi_j_m2_day" say:"Mean daily global radiation on the flat" range:"[0,5e7]"`
	TMean  [12]unit.Celsius           `json:"t_mean_c" say:"Mean air temperature" range:"[-70,60]"`
	TMax   [12]unit.Celsius           `json:"t_day_max_c" say:"Mean of the daily highest temperature" range:"[-70,70]"`
	TMin   [12]unit.Celsius           `json:"t_day_min_c" say:"Mean of the daily lowest temperature" range:"[-80,60]"`
	KTSd   [12]unit.Known[unit.Ratio] `json:"kt_sd" say:"Spread of the daily clearness within single months, of many years; not known is taken from light, latitude and temperature" range:"[0,0.4]"`
	KTLag1 unit.Known[unit.Ratio]     `json:"kt_lag1" say:"How much a day resembles the day before (lag-one correlation); not known is taken from the light of the year" range:"[-0.9,0.95]"`
}

// Horizon is one point of the skyline.
type Horizon struct {
	Azimuth  unit.Angle `json:"azimuth_rad" say:"Direction, clockwise from north" range:"[0,6.283185307179586]"`
	Altitude unit.Angle `json:"altitude_rad" say:"Height of the skyline there" range:"[0,1.5707963267948966]"`
}

// Indoor is a room temperature that swings over the year: mean + half·cos with its warmest month.
type Indoor struct {
	Mean    unit.Celsius `json:"mean_c" say:"Mean over the year" range:"[-40,60]"`
	Swing   unit.Celsius `json:"swing_k" say:"Half the difference between warmest and coldest month" range:"[0,40]"`
	Warmest unit.Count   `json:"warmest_month" say:"Month when it is warmest, 1 to 12" range:"[1,12]"`
}

// Series is an hourly year, a typical or a real one: 8760 hours in standard clock time, each value the mean of its hour, hour 0 ending
// at 01:00 on 1 January. It travels in the document as three packed columns (document.Packed); here it is plain.
type Series struct {
	Name      string
	Source    string // the file's own words on where it comes from
	Latitude  unit.Angle
	Longitude unit.Angle
	Elevation unit.Length
	UTCOffset unit.Duration
	Year      unit.Known[unit.Count]    // of a real year
	Typical   unit.Answer               // put together from months of several years; "" is read from the file's own words
	Slip      unit.Known[unit.Duration] // how much later its sun runs than the sky's, found on reading and left unanswered
	Hours     int                       // 8760
	GHI       []float64                 // W/m²
	DHI       []float64                 // W/m²
	TAir      []float64                 // °C
}
