package page

import (
	"bytes"
	"encoding/json"
	"fmt"
)

// optioner is a chart of go-echarts, of which only the option is used, never the page it would write.
type optioner interface {
	Validate()
	JSON() map[string]any
}

// Option gives a chart's option as JSON, ready for a data block of a page, or an error where a value is NaN or infinite.
// patch sets what the builder cannot say; it may be nil.
func Option(c optioner, patch func(map[string]any)) (json.RawMessage, error) {
	c.Validate()
	b, err := json.Marshal(c.JSON())
	if err != nil {
		return nil, fmt.Errorf("chart option: %w", err)
	}
	m := map[string]any{}
	d := json.NewDecoder(bytes.NewReader(b))
	d.UseNumber()
	if err := d.Decode(&m); err != nil {
		return nil, fmt.Errorf("chart option: %w", err)
	}
	m["useUTC"] = true     // times are the site's own clock, sent as if they were UTC: the same labels in every browser
	m["animation"] = false // a number that changed is there at once, and prints are stable
	m["aria"] = map[string]any{"enabled": true, "label": map[string]any{"enabled": false}, "decal": map[string]any{"show": true}}
	if tip, ok := m["tooltip"].(map[string]any); ok {
		tip["renderMode"] = "richText" // the other mode writes style attributes, which the policy refuses
	}
	if patch != nil {
		patch(m)
	}
	return json.Marshal(m)
}
