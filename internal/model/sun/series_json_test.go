package sun

import (
	"encoding/json"
	"math"
	"reflect"
	"strings"
	"testing"
)

func packedYear() Series {
	s := Series{Name: "n", Source: "s", Latitude: 0.1, Hours: YearHours}
	for h := range YearHours {
		s.GHI = append(s.GHI, float64(h)/3)
		s.DHI = append(s.DHI, math.Sqrt(float64(h)))
		s.TAir = append(s.TAir, -float64(h)*1e-9)
	}
	s.TAir[0] = math.Copysign(0, -1)
	return s
}

// TestSeriesExact brings every value back to the last bit.
func TestSeriesExact(t *testing.T) {
	s := packedYear()
	data, err := json.Marshal(s)
	if err != nil {
		t.Fatal(err)
	}
	var back Series
	if err := json.Unmarshal(data, &back); err != nil {
		t.Fatal(err)
	}
	if !reflect.DeepEqual(s, back) || !math.Signbit(back.TAir[0]) {
		t.Error("the year came back changed")
	}
}

// TestColumnBytes fixes the byte order: 1 and π as IEEE 754 binary64, least byte first
// (1 is 3FF0000000000000, π is 400921FB54442D18), in base64 by RFC 4648.
func TestColumnBytes(t *testing.T) {
	got, err := Column{1, math.Pi}.MarshalText()
	if want := "AAAAAAAA8D8YLURU+yEJQA=="; err != nil || string(got) != want {
		t.Errorf("%s, %v; want %s", got, err, want)
	}
}

func TestSeriesRefused(t *testing.T) {
	data, err := json.Marshal(packedYear())
	if err != nil {
		t.Fatal(err)
	}
	for from, to := range map[string]string{
		`"hours":8760`: `"hours":24`,
		`"ghi_w_m2":"`: `"ghi_w_m2":"AAAAAAAA8D8Y`,
		`"dhi_w_m2":"`: `"dhi_w_m2":"****`,
		`"t_air_c":"`:  `"t_air_c":"AAAAAAAA+H8AAAAAAADwfwAAAAAAAPB/`, // NaN and infinities
	} {
		var s Series
		if err := json.Unmarshal([]byte(strings.Replace(string(data), from, to, 1)), &s); err == nil || s.Hours != 0 {
			t.Errorf("read %s", to)
		}
	}
	if _, err := json.Marshal(Series{GHI: []float64{math.Inf(1)}}); err == nil {
		t.Error("wrote an infinity")
	}
}
