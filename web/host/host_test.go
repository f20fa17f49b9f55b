package host_test

import (
	"encoding/json"
	"os"
	"strconv"
	"strings"
	"testing"

	"duskweight/web/host"
)

// Whatever is taken as our own name is one of the three, and its port a number that a port can be.
func FuzzHost(f *testing.F) {
	text, err := os.ReadFile("../../testdata/hosts/hostile.json")
	var hostile []string
	if err == nil {
		err = json.Unmarshal(text, &hostile)
	}
	if err != nil {
		f.Fatal(err)
	}
	for _, name := range hostile {
		f.Add(name)
		if host.Own(name) {
			f.Errorf("%q is taken as our own", name)
		}
	}
	f.Add("127.0.0.1:8807")
	f.Fuzz(func(t *testing.T, name string) {
		if !host.Own(name) {
			return
		}
		of, port := name, ""
		if i := strings.LastIndexByte(name, ':'); i >= 0 && !strings.HasSuffix(name, "]") {
			of, port = name[:i], name[i+1:]
		}
		if n, err := strconv.Atoi(port); port != "" && (err != nil || n < 1 || n > 65535 || strconv.Itoa(n) != port) {
			t.Errorf("%q: port %q", name, port)
		}
		if of != "localhost" && of != "127.0.0.1" && of != "[::1]" {
			t.Errorf("%q: name %q", name, of)
		}
	})
}
