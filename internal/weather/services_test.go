package weather

import (
	"errors"
	"fmt"
	"strings"
	"testing"
	"time"

	"duskweight/internal/model/unit"
)

// A year in UTC of a place far in the west that does not say so has its light by night; the refusal offers the clock under which
// it fits, and with it the file is read as the year that it is.
func TestLightByNightOffersUTC(t *testing.T) {
	m := makeYear(39.83, -104.65, -7)
	text := m.plain("time,GHI,DHI,temperature\n", ",", 60, iso(420), false)
	hint := Mapping{Latitude: unit.Of(39.83 * unit.Degree), Longitude: unit.Of(-104.65 * unit.Degree), UTCOffset: unit.Of(-7 * unit.Hour)}
	_, _, err := Read(strings.NewReader(text), hint, nil)
	r, _ := errors.AsType[*Refused](err)
	if r == nil || r.Best.Stamp != "start" || r.Best.StampZone != unit.Of(unit.Duration(0)) || !strings.Contains(r.Error(), "the rows keep the clock UTC") {
		t.Fatalf("%v", err)
	}
	hint.Stamp, hint.StampZone = r.Best.Stamp, r.Best.StampZone
	s, rep := read(t, text, hint)
	m.same(t, s, 1e-9)
	if rep.Asks("slip") {
		t.Error(rep.Notes)
	}
}

// One year of a place in the west as services, loggers and spreadsheets hand it out, each with its own head and stamps, is read
// as the same year of the same place.
func TestFilesOfServices(t *testing.T) {
	m := makeYear(39.83, -104.65, -7)
	at := func(n int) time.Time { return time.Date(2021, 1, 1, 0, n, 0, 0, time.UTC) } // on the place's clock
	for name, text := range map[string]string{
		"a head of parameters": "-BEGIN HEADER-\nHourly data\nDates (month/day/year): 01/01/2021 through 12/31/2021 in LST\nLocation: Latitude  39.83   Longitude -104.65\nElevation: Average for the region = 1650 meters\nThe value for missing source data is: -999\nParameter(s):\nALLSKY_SFC_SW_DWN     All Sky Surface Shortwave Downward Irradiance (Wh/m^2)\nT2M                   Temperature at 2 Meters (C)\n-END HEADER-\n" +
			m.plain("YEAR,MO,DY,HR,ALLSKY_SFC_SW_DWN,ALLSKY_SFC_SW_DIFF,T2M\n", ",", 60, func(n int) string { return at(n).Format("2006,1,2,") + fmt.Sprint(n/60%24) }, false),
		"a line of names over a line of values, hours that end": "latitude,longitude,elevation,utc_offset_seconds,timezone,timezone_abbreviation\n39.83,-104.65,1650.0,-25200,America/Denver,MST\n\n" +
			m.plain("time,shortwave_radiation (W/m²),diffuse_radiation (W/m²),temperature_2m (°C)\n", ",", 60, func(n int) string { return at(n + 60).Format("2006-01-02T15:04") }, false),
		"seconds since 1970":       "lat: 39.83\nlon: -104.65\nUTC offset: -7\n" + m.plain("timestamp,ghi,dhi,temp_air\n", ",", 60, func(n int) string { return fmt.Sprint(at(n + 420).Unix()) }, false),
		"thousandths since 1970":   "lat: 39.83\nlon: -104.65\nUTC offset: -7\n" + m.plain("time,ghi,dhi,temp_air\n", ",", 60, func(n int) string { return fmt.Sprint(at(n + 420).UnixMilli()) }, false),
		"days of a spreadsheet":    "lat: 39.83\nlon: -104.65\nUTC offset: -7\n" + m.plain("Date,ghi,dhi,temp_air\n", ",", 60, func(n int) string { return fmt.Sprintf("%.6f", 44197+float64(n)/1440) }, false),
		"the day of the year":      "lat: 39.83\nlon: -104.65\nUTC offset: -7\n" + m.plain("year,doy,hour,ghi,dhi,temp_air\n", ",", 60, func(n int) string { return fmt.Sprintf("2021,%d,%d", n/1440+1, n/60%24) }, false),
		"letters for the columns":  "lat: 39.83\nlon: -104.65\nUTC offset: -7\n" + m.plain("m\tdm\th\tG_Gh\tG_Dh\tTa\n", "\t", 60, func(n int) string { return at(n).Format("1\t2\t") + fmt.Sprint(n/60%24+1) }, false),
		"an offset without colon":  "lat: 39.83\nlon: -104.65\nUTC offset: -7\n" + m.plain("time,ghi,dhi,temp_air\n", ",", 60, func(n int) string { return at(n).Format("2006-01-02T15:04:05") + "-0700" }, false),
		"date and time, half-days": "lat: 39.83\nlon: -104.65\nUTC offset: -7\n" + m.plain("Date,Time,GHI,DHI,Temp\n", ",", 60, func(n int) string { return at(n).Format("1/2/2006,3:04:05 PM") }, false),
	} {
		t.Run(name, func(t *testing.T) {
			s, rep := read(t, text, Mapping{})
			m.same(t, s, 1e-9)
			if rep.Asks("slip") || rep.Asks("light") || rep.Asks("air") || s.UTCOffset != -7*3600 || rep.Asks("clock") != strings.Contains(name, "parameters") { // that head says no clock
				t.Errorf("clock %v: %v", s.UTCOffset, rep.Notes)
			}
		})
	}
}
