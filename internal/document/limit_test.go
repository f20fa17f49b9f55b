package document

import (
	"errors"
	"fmt"
	"strings"
	"testing"
	"time"

	"duskweight/internal/model"
)

// TestEndlessProblems: documents that are wrong everywhere are refused soon, and with an end.
func TestEndlessProblems(t *testing.T) {
	var keys strings.Builder
	for i := range 90_000 {
		fmt.Fprintf(&keys, `"latitude_rd%d":0,`, i)
	}
	for name, doc := range map[string]string{
		"unknown keys": `{"duskweight":1,"project":{"place":{` + strings.TrimSuffix(keys.String(), ",") + `}}}`,
		"wrong ranges": `{"duskweight":1,"x":0,"project":{"load":{"appliances":[` + strings.Repeat(`{"power_w":-1},`, 40_000) + `{}]}}}`,
		"wrong types":  `{"duskweight":1,"variants":[` + strings.Repeat(`0,`, 90_000) + `0]}`,
		"long keys":    `{"duskweight":1,"project":{"` + strings.Repeat("k", 1<<20) + `":0}}`,
		"given twice":  `{"duskweight":1,` + strings.Repeat(`"a":0,`, 90_000) + `"a":0}`,
	} {
		began := time.Now()
		_, err := Decode([]byte(doc))
		ps, ok := errors.AsType[model.Problems](err)
		if !ok || len(ps) == 0 || len(ps) > model.MostProblems+1 {
			t.Errorf("%s: %d problems", name, len(ps))
		}
		if took := time.Since(began); took > 5*time.Second { // about a hundred times what it takes: a growth gone wrong
			t.Errorf("%s took %v", name, took)
		}
		t.Logf("%s: %d problems in %v, %d bytes of words", name, len(ps), time.Since(began), len(err.Error()))
	}
}

func BenchmarkDecode(b *testing.B) {
	data, err := Encode(newFiller(3).document())
	if err != nil {
		b.Fatal(err)
	}
	b.SetBytes(int64(len(data)))
	for b.Loop() {
		if _, err := Decode(data); err != nil {
			b.Fatal(err)
		}
	}
}
