package webtest

import (
	"net/http"
	"testing"

	"github.com/go-chi/chi/v5"
)

// EveryRoute lists what the router serves, with something in place of the parameters.
func EveryRoute(t *testing.T, h http.Handler) [][2]string {
	t.Helper()
	var out [][2]string
	err := chi.Walk(h.(chi.Routes), func(method, route string, _ http.Handler, _ ...func(http.Handler) http.Handler) error {
		path := ""
		for i := 0; i < len(route); i++ {
			switch route[i] {
			case '{':
				for route[i] != '}' {
					i++
				}
				path += "1"
			case '*':
				path += "app.css"
			default:
				path += string(route[i])
			}
		}
		out = append(out, [2]string{method, path})
		return nil
	})
	if err != nil {
		t.Fatal(err)
	}
	return append(out, [2]string{"GET", "/nothing"}, [2]string{"OPTIONS", "/"}, [2]string{"TRACE", "/"}, [2]string{"PUT", "/settings"}, [2]string{"DELETE", "/projects/1"})
}
