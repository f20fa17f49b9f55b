package draw

// choiceLines are the lines of the drawing of an answer on 40 × 40, by the last word of its input and the answer: ink, and the
// rope. Our own drawings.
var choiceLines = map[string]map[string][2]string{
	"ending": {
		"splice":        {"", "M3 20h20M23 20c4-9 13-8 13 0s-9 9-13 0M9 17l3 6M13 17l3 6M17 17l3 6"},
		"figure_eight":  {"", "M2 20h7c5 0 5-8 10-8s5 8 0 8-5 8 0 8 6-8 11-8c8 0 8 8 0 8s-6-8-11-8"},
		"bowline":       {"", "M2 20h12M14 20c3-8 21-10 22 0s-19 9-22 0M14 14a4 6 0 1 0 .1 0M10 26l5-3"},
		"other_knot":    {"", "M2 20h10c7 0 7 9 13 9s6-12 0-12-8 12-2 12M25 20h13"},
		"swaged":        {"M10 16h11v8H10zM13 16v8M18 16v8", "M2 20h8M21 20c4-9 15-9 15 0s-11 9-15 0"},
		"clips":         {"M8 14v12M13 14v12M18 14v12M6 14h4M11 14h4M16 14h4", "M2 19h20M5 23h17M22 21c3-8 14-8 14 0s-11 8-14 0"},
		"thimble_clamp": {"M12 15h6v10h-6zM24 20c2-5 8-5 8 0s-6 5-8 0", "M2 20h10M18 20c4-10 18-10 18 0s-14 10-18 0"},
	},
	"rope_parts": {
		"1": {"M6 5h28M13 24h14v12H13z", "M20 5v19"},
		"2": {"M6 5h28M13 26h14v10H13zM20 17a4.500 4.500 0 1 0 .1 0M20 26v-4", "M15.500 21.500V5M24.500 21.500V5"},
		"3": {"M6 5h28M13 28h14v8H13zM20 18a5 5 0 1 0 .1 0", "M15 23V5M20 18V5M25 23V5"},
		"4": {"M6 5h28M13 28h14v8H13zM15 19a4 4 0 1 0 .1 0M25 19a4 4 0 1 0 .1 0", "M11 23V5M19 23V5M21 23V5M29 23V5"},
	},
	"lead_sheaves": {
		"0": {"M6 5h28M20 5a5 5 0 1 0 .1 0M20 8v4M18 10h4M13 26h14v9H13z", "M15 10v16"},
		"1": {"M6 4h28M22 6a4 4 0 1 0 .1 0M24 26h11v9H24zM6 29a4 4 0 1 0 .1 0M2 37h12", "M26 10v16M18.500 9L8 30"},
		"2": {"M6 4h28M22 6a4 4 0 1 0 .1 0M24 22h11v9H24zM18 29a3 3 0 1 0 .1 0M5 31a4 4 0 1 0 .1 0M2 39h22", "M26 10v12M18 10v20M18 35L6 34"},
	},
}

// Choice draws an answer of an input; nothing for one that has no drawing.
func Choice(input, answer string) string {
	lines, ok := choiceLines[input][answer]
	if !ok {
		return ""
	}
	return icon(lines, "rope")
}
