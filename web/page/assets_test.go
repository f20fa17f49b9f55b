package page

import "testing"

func TestTakesGzip(t *testing.T) {
	for accept, want := range map[string]bool{
		"": false, "gzip": true, "gzip, deflate": true, "br, gzip;q=0.5": true, "gzip;q=0": false, "gzip; q=0.0": false,
		"deflate": false, "xgzip": false, "gzip;q=nonsense": false,
	} {
		if got := takesGzip(accept); got != want {
			t.Errorf("%q: %v, want %v", accept, got, want)
		}
	}
}
