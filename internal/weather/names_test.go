package weather

import (
	"fmt"
	"math"
	"strconv"
	"strings"
	"testing"

	"duskweight/internal/model/unit"
)

// Heads of tables as services, loggers and people write them: which columns they name, and in which units. Columns count from
// 1; 0 is none.
func TestNamesOfColumns(t *testing.T) {
	for head, want := range map[string]struct {
		date, ghi, dhi, dni, temp int
		light, degrees            string
	}{
		"time(UTC),T2m,RH,G(h),Gb(n),Gd(h),IR(h),WS10m,WD10m,SP":                                                             {1, 4, 6, 5, 2, "W/m2", "C"},
		"time,temperature_2m (°C),shortwave_radiation (W/m²),direct_normal_irradiance (W/m²),diffuse_radiation (W/m²)":       {1, 3, 5, 4, 2, "W/m2", "C"},
		"datetime,ALLSKY_SFC_SW_DWN,CLRSKY_SFC_SW_DWN,ALLSKY_SFC_SW_DIFF,ALLSKY_SFC_SW_DNI,T2M":                              {1, 2, 4, 5, 6, "W/m2", "C"},
		"PeriodEnd,PeriodStart,Period,AirTemp,Dhi,Dni,Ghi":                                                                   {1, 7, 5, 6, 4, "W/m2", "C"},
		"Timestamp,Dew Point,Air Temperature [°F],Clearsky DHI,Clearsky GHI,GHI_Wm2,DHI_Wm2,DNI_Wm2":                         {1, 6, 7, 8, 3, "W/m2", "F"},
		"valid_time,ssrd [J m**-2],t2m [K]":                                                                                  {1, 2, 0, 0, 3, "J/m2", "K"},
		"Date,Solar Rad. (W/m²),Hi Solar Rad. max (W/m²),Temp Out,Wind Chill":                                                {1, 2, 0, 0, 4, "W/m2", "C"},
		"Date/Time,Global Horizontal Radiation [Wh/m^2],Diffuse Horizontal Radiation [Wh/m^2],Dry Bulb Temperature [°C]":     {1, 2, 3, 0, 4, "Wh/m2", "C"},
		"datetime,soil_temp_c,air_temp_f,solar_radiation_mj_m2":                                                              {1, 4, 0, 0, 3, "MJ/m2", "F"},
		"timestamp,temp_dew,temp_air,ghi_kwh_m2,dhi_kwh_m2":                                                                  {1, 4, 5, 0, 3, "kWh/m2", "C"},
		"fecha,radiación global (W/m²),temperatura del aire":                                                                 {1, 2, 0, 0, 3, "W/m2", "C"},
		"local_time,irradiance_global_horizontal,irradiance_diffuse_horizontal,irradiance_direct_normal,temperature_ambient": {1, 2, 3, 4, 5, "W/m2", "C"},
		"Datetime,Downward shortwave radiation (kJ/m2),Cell temperature,2 m temperature":                                     {1, 2, 0, 0, 4, "kJ/m2", "C"},
		"date,solar energy langley,temperature (F)":                                                                          {1, 2, 0, 0, 3, "cal/cm2", "F"},
	} {
		n := strings.Count(head, ",")
		s := &sheet{dew: -1, lines: []string{head, "2021-01-01 00:00" + strings.Repeat(",1", n), "2021-01-01 01:00" + strings.Repeat(",2", n)}, delimiter: ','}
		if err := s.table(Mapping{}); err != nil {
			t.Fatal(err)
		}
		m := s.mapping()
		none := func(i int) int { return max(i, 0) }
		if m.Date != want.date || m.GHI != want.ghi || none(m.DHI) != want.dhi || none(m.DNI) != want.dni || m.Temperature != want.temp || m.RadiationUnit != want.light || m.TemperatureUnit != want.degrees {
			t.Errorf("%s:\n  date %d, global %d, diffuse %d, direct %d, air %d, %s, %s; want %+v", head, m.Date, m.GHI, m.DHI, m.DNI, m.Temperature, m.RadiationUnit, m.TemperatureUnit, want)
		}
	}
}

// A table without names, and one whose dates have none, find their dates by the values; the place is read out of the middle
// of a line.
func TestTableWithoutNames(t *testing.T) {
	m := makeYear(39.83, -104.65, -7)
	text := "Made pier, lat 39.83 N, lon 104.65 W, UTC-7\n" + m.plain(",x,GHI,DHI,temp\n", ",", 60, func(n int) string { return fmt.Sprintf("%d,%s", n, iso(0)(n)) }, false)
	s, _ := read(t, text, Mapping{UTCOffset: unit.Of(-7 * unit.Hour)})
	m.same(t, s, 1e-9)
	if math.Abs(s.Latitude.Degrees()-39.83) > 1e-9 || math.Abs(s.Longitude.Degrees()+104.65) > 1e-9 {
		t.Errorf("place %v %v", s.Latitude.Degrees(), s.Longitude.Degrees())
	}
	p, err := Look(strings.NewReader(m.plain("", ",", 60, iso(0), false)), Mapping{})
	if err != nil || len(p.Heads) != 4 || p.Mapping.Date != 1 || p.Refused == nil {
		t.Errorf("without names: %+v, %v", p.Mapping, err)
	}
}

// The light of a satellite's picture belongs to the moment that the head says, past each stamp: the hour round it. A made
// year of such moments is read so, within 1 % on planes to the west, with no question left; half an hour more in the head is
// asked about.
func TestIrradianceTimeOffset(t *testing.T) {
	p := place3{45, 8, 1}
	right := p.rows(60, 0)
	var b strings.Builder
	fmt.Fprintf(&b, "Latitude (decimal degrees): %v\nLongitude (decimal degrees): %v\nElevation (m): 250.0\nIrradiance Time Offset (h): 0.1761\n", p.lat, p.lon)
	b.WriteString("time(UTC),T2m,G(h),Gb(n),Gd(h)\n")
	for i := range right.g {
		light, diffuse, direct := p.light(math.Mod(float64(i*60)+0.1761*60+60, yearMinutes)) // one hour ahead of UTC
		fmt.Fprintf(&b, "%s,%v,%.1f,%.1f,%.1f\n", strings.NewReplacer("-", "", " ", ":", ":", "").Replace(iso(0)(i*60)), right.t[i], light, direct, diffuse)
	}
	text := b.String()
	s, rep := read(t, text, Mapping{UTCOffset: unit.Of(unit.Hour)})
	if rep.Asks("slip") || rep.Mapping.Stamp != "middle" || math.Abs(float64(rep.Mapping.Move.Val)-0.1761*3600) > 1e-6 {
		t.Errorf("%+v %v", rep.Mapping, rep.Notes)
	}
	want := s
	want.GHI, want.DHI = right.g, right.d
	a, up := west(s)
	x, y := west(want)
	if math.Abs(a/x-1) > 0.01 || math.Abs(up/y-1) > 0.01 {
		t.Errorf("%+.2f %% and %+.2f %%", 100*(a/x-1), 100*(up/y-1))
	}
	if _, rep := read(t, strings.Replace(text, "0.1761", "0.6761", 1), Mapping{UTCOffset: unit.Of(unit.Hour)}); !rep.Asks("slip") {
		t.Errorf("half an hour more: %v", rep.Notes)
	}
	faults(t, "Slope: 35 deg. (optimum)\n"+text, Mapping{}, "slopes 35°", "slope of 0°")
}

// The name of a column is known by its letters and digits: small ones, those of other languages too, no signs.
func TestLetterOnly(t *testing.T) {
	for name, want := range map[string]string{"Größe (W/m²)": "größewm", "T_air °C": "tairc", "GHI-2 [Wh/m2]": "ghi2whm2", "日射量": "日射量"} {
		if got := letterOnly(name); got != want {
			t.Errorf("%q is %q, want %q", name, got, want)
		}
	}
}

// The latitude of a file is shown with the digits of the file: 39.83°, not 39.829999999999998°.
func TestDegreesKeepTheirDigits(t *testing.T) {
	for _, v := range []float64{39.83, -104.65, 51.15, -33.97, 7.18, 0, 179.999} {
		want := strconv.FormatFloat(v, 'f', -1, 64)
		if got := unit.Longitudes.FormatFull(float64(unit.OfDegrees(v)), unit.Metric); got != strings.ReplaceAll(want, "-", unit.Minus) && got != want {
			t.Errorf("%s is shown as %q", want, got)
		}
	}
}
