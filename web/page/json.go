package page

import (
	"encoding/json"
	"fmt"
	"net/http"
	"strings"
)

// wantsJSON reports whether one of our scripts asks, which shows the answer itself.
func wantsJSON(r *http.Request) bool {
	return strings.HasPrefix(r.Header.Get("Accept"), "application/json")
}

// WriteJSON answers a script.
func WriteJSON(w http.ResponseWriter, status int, v any) error {
	b, err := json.Marshal(v)
	if err != nil {
		return fmt.Errorf("answer a script: %w", err)
	}
	w.Header().Set("Content-Type", "application/json")
	w.WriteHeader(status)
	_, _ = w.Write(b)
	return nil
}
