package sun

import (
	"encoding/base64"
	"encoding/binary"
	"encoding/json"
	"errors"
	"fmt"
	"math"

	"duskweight/internal/model/unit"
)

// YearHours is the length of a typical year in hours.
const YearHours = 8760

// Packed is a Series as it travels in the document: three columns, each as base64 of little-endian float64, so that
// every value comes back to the last digit. The ranges are wide: 1361 W/m² is the mean outside the air (Gueymard 2018),
// and clouds can throw more on the flat for a while; the coldest air ever read was −89.2 °C (WMO archive, Vostok 1983).
type Packed struct {
	Name      string                    `json:"name" say:"Name of the file or station"`
	Source    string                    `json:"source" say:"Where it comes from, in the file's own words"`
	Latitude  unit.Angle                `json:"latitude_rad" say:"Latitude, north positive" range:"[-1.5707963267948966,1.5707963267948966]"`
	Longitude unit.Angle                `json:"longitude_rad" say:"Longitude, east positive" range:"[-3.141592653589793,3.141592653589793]"`
	Elevation unit.Length               `json:"elevation_m" say:"Height above the sea" range:"[-500,9000]"`
	UTCOffset unit.Duration             `json:"utc_offset_s" say:"Standard clock time ahead of UTC" range:"[-50400,50400]"`
	Year      unit.Known[unit.Count]    `json:"year" say:"The year that it is, of a real year" range:"[1900,2100]"`
	Typical   unit.Answer               `json:"typical" say:"Is it a typical year, put together from months of several years? If empty: the words of the source decide" enum:"|yes|no"`
	Slip      unit.Known[unit.Duration] `json:"slip_s" say:"How much later the sun of this file runs than the sun of the sky, found when it was read and left unanswered" range:"[-43200,43200]"`
	Hours     int                       `json:"hours" say:"Hours in each column" range:"[8760,8760]"`
	GHI       Column                    `json:"ghi_w_m2" say:"Global radiation on the flat, mean of each hour" range:"[0,2000]"`
	DHI       Column                    `json:"dhi_w_m2" say:"Diffuse radiation on the flat, mean of each hour" range:"[0,2000]"`
	TAir      Column                    `json:"t_air_c" say:"Air temperature, mean of each hour" range:"[-95,65]"`
}

// Pack returns s as it travels. The columns are shared, not copied.
func (s Series) Pack() Packed {
	return Packed{s.Name, s.Source, s.Latitude, s.Longitude, s.Elevation, s.UTCOffset, s.Year, s.Typical, s.Slip, s.Hours, s.GHI, s.DHI, s.TAir}
}

// Unpack returns the series. The columns are shared, not copied. A year that has not 8760 hours in each column is an
// error.
func (p Packed) Unpack() (Series, error) {
	if p.Hours != YearHours {
		return Series{}, fmt.Errorf("hours must be %d; it is %d", YearHours, p.Hours)
	}
	for _, c := range []struct {
		key string
		col Column
	}{{"ghi_w_m2", p.GHI}, {"dhi_w_m2", p.DHI}, {"t_air_c", p.TAir}} {
		if len(c.col) != p.Hours {
			return Series{}, fmt.Errorf("%s must have %d values; it has %d", c.key, p.Hours, len(c.col))
		}
	}
	return Series{p.Name, p.Source, p.Latitude, p.Longitude, p.Elevation, p.UTCOffset, p.Year, p.Typical, p.Slip, p.Hours, p.GHI, p.DHI, p.TAir}, nil
}

// MarshalJSON writes the packed form.
func (s Series) MarshalJSON() ([]byte, error) { return json.Marshal(s.Pack()) }

// UnmarshalJSON reads the packed form.
func (s *Series) UnmarshalJSON(b []byte) error {
	var p Packed
	if err := json.Unmarshal(b, &p); err != nil {
		return err
	}
	whole, err := p.Unpack()
	if err == nil {
		*s = whole
	}
	return err
}

// Column is one packed column of hourly values.
type Column []float64

var errColumn = errors.New("must be base64 of little-endian float64 values")

// MarshalText packs the column. NaN and infinities are errors.
func (c Column) MarshalText() ([]byte, error) {
	raw := make([]byte, 0, 8*len(c))
	for i, x := range c {
		if math.IsNaN(x) || math.IsInf(x, 0) {
			return nil, fmt.Errorf("value %d is not a number", i)
		}
		raw = binary.LittleEndian.AppendUint64(raw, math.Float64bits(x))
	}
	return base64.StdEncoding.AppendEncode(nil, raw), nil
}

// UnmarshalText unpacks the column. NaN and infinities are errors.
func (c *Column) UnmarshalText(text []byte) error {
	raw, err := base64.StdEncoding.Strict().DecodeString(string(text))
	if err != nil || len(raw)%8 != 0 {
		return errColumn
	}
	col := make(Column, len(raw)/8)
	for i := range col {
		col[i] = math.Float64frombits(binary.LittleEndian.Uint64(raw[8*i:]))
		if math.IsNaN(col[i]) || math.IsInf(col[i], 0) {
			return fmt.Errorf("value %d is not a number", i)
		}
	}
	*c = col
	return nil
}
