package projects

import (
	"strings"
	"testing"

	"duskweight/web/form"
)

func TestFileName(t *testing.T) {
	for name, want := range map[string]string{
		"Orchard workshop": "orchard-workshop", "../../etc/passwd": "etc-passwd", "\"; x=\"": "x", "日本": "project", "": "project",
		strings.Repeat("a", 300): strings.Repeat("a", 60), "a\r\nSet-Cookie: b": "a-set-cookie-b",
	} {
		if got := form.FileName(name); got != want {
			t.Errorf("%q: %q, want %q", name, got, want)
		}
	}
}
