package unit

import (
	"math/big"
	"testing"
)

// Three digits behind a comma may be thousands, and so may three behind a point that end in 0: both are asked back, where one to three
// digits stand before them and the first is no 0. Everything else is a decimal.
func TestThousandsAreAskedBack(t *testing.T) {
	for text, want := range map[string]string{ // "": asked back
		"1,500": "", "12,345": "", "999,999": "", "1.500": "", "999.990": "", "1.505": "301/200", "1.050": "", "1234,567": "1234567/1000", "1234.560": "1234560/1000", "0,500": "1/2", "0.500": "1/2", "012,345": "12345/1000",
		",500": "1/2", ".500": "1/2", "1,50": "3/2", "1,5000": "3/2", "12.5": "25/2", "1": "1", "1.5.5": "", "1,5,5": "", "1.234,5": "",
	} {
		c := &scanner{s: text}
		v, err := c.number()
		if (err == nil) != (want != "") {
			t.Errorf("%q: %v, %v", text, v.value, err)
			continue
		}
		if want != "" {
			if w, _ := new(big.Rat).SetString(want); v.value.Cmp(w) != 0 || c.pos != len(text) {
				t.Errorf("%q is %v, want %s; read up to %d", text, v.value, want, c.pos)
			}
		}
	}
}
