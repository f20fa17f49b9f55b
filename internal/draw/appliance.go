package draw

// applianceLines are the lines of the drawing of an appliance on 40 × 40, by its key: ink, and what shines or moves. Our own
// drawings.
var applianceLines = map[string][2]string{
	"lamp":       {"M20 3v7M12 20a8 8 0 0 1 16 0z", "M14 26l-3 6M20 26v8M26 26l3 6"},
	"phone":      {"M15 5h10q2 0 2 2v26q0 2-2 2H15q-2 0-2-2V7q0-2 2-2zM18 31h4M13 10h14", ""},
	"computer":   {"M9 9h22v17H9zM4 31h32l-3-5H7z", ""},
	"router":     {"M5 24h30v9H5zM11 28.500h.1M16 28.500h.1M12 24V9M28 24V9", "M16 13q4-4 8 0M18 17q2-2 4 0"},
	"radio":      {"M5 14h30v19H5zM14 18a5 5 0 1 0 .1 0zM23 20h8M23 26h8M30 14L20 4", ""},
	"fan":        {"M20 4a11 11 0 1 0 .1 0zM20 26v9M13 35h14", "M20 15c-8-3-6-9 0-8 3 2 2 6 0 8zM20 15c6 6 2 10-3 8-3-3 0-6 3-8zM20 15c3-6 9-4 9 0-1 4-6 3-9 0z"},
	"fridge":     {"M11 4h18v31H11zM11 14h18M15 8v3M15 18v6M13 35v2M27 35v2", ""},
	"freezer":    {"M4 13h32v21H4zM4 19h32M18 16h4", "M20 22v9M16.500 24.500l7 4M23.500 24.500l-7 4"},
	"pump":       {"M18 18a8 8 0 1 0 .1 0zM18 18V5h11M8 34h20M4 26h6M18 26l4-4", ""},
	"kettle":     {"M11 33L14 15h12l3 18zM16 15a4 4 0 0 1 8 0M26 19c8-2 8 8 2 9M13 20l-7-3", ""},
	"television": {"M4 8h32v21H4zM14 34h12M20 29v5", ""},
	"microwave":  {"M4 10h32v21H4zM28 10v21M32 15v.1M32 20v.1M30.500 26h3", "M9 18q3-3 6 0t6 0M9 24q3-3 6 0t6 0"},
	"washer":     {"M8 4h24v31H8zM20 14a8 8 0 1 0 .1 0zM8 10h24", "M13 23c4-3 8 3 14-1"},
	"drill":      {"M6 11h18v8H6zM24 13h4v4h-4M28 15h9M9 19l-2 14h7l2-14", ""},
	"saw":        {"M24 12a10 10 0 1 0 .1 0zM24 21.500h.1M5 12h13M8 12q-4 8 3 9M3 33h34", ""},
	"own":        {"M8 8h24v24H8z", "M20 14v12M14 20h12"},
}

// Appliance draws a device by its key; a square with a plus for one that has no drawing.
func Appliance(key string) string {
	lines, ok := applianceLines[key]
	if !ok {
		lines = applianceLines["own"]
	}
	return icon(lines, "glow")
}

// icon is a small drawing on 40 × 40: its ink, then the lines of another class.
func icon(lines [2]string, class string) string {
	return `<svg class="ic" viewBox="0 0 40 40" aria-hidden="true">` + paths(lines, class) + `</svg>`
}

// paths are the two paths of such a drawing; one without lines is left out.
func paths(lines [2]string, class string) (out string) {
	if lines[0] != "" {
		out = `<path d="` + lines[0] + `"/>`
	}
	if lines[1] != "" {
		out += `<path class="` + class + `" d="` + lines[1] + `"/>`
	}
	return out
}
