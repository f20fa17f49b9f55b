package model

// RuleNames are the names of all rules.
func RuleNames() []string {
	var out []string
	for _, r := range rules() {
		out = append(out, r.name)
	}
	return out
}
