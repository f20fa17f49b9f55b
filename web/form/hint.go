package form

import (
	"regexp"
	"strconv"
	"strings"

	"duskweight/internal/model/unit"
)

// ifEmpty begins the clause of a hint that says what an empty field counts as.
const ifEmpty = "if empty: "

var emptyShare = regexp.MustCompile(`^` + ifEmpty + `(\d+(?:\.\d+)?)(,| [^%]|$)`)

// inPercent says the clauses of a hint that name a share as a plain number in per cent, for a field of per cent.
func inPercent(hint string) string {
	clauses := strings.Split(hint, "; ")
	for i, c := range clauses {
		m := emptyShare.FindStringSubmatchIndex(c)
		if m == nil {
			continue
		}
		if share, err := strconv.ParseFloat(c[m[2]:m[3]], 64); err == nil {
			clauses[i] = ifEmpty + unit.Percents.Format(share, unit.Metric) + c[m[3]:]
		}
	}
	return strings.Join(clauses, "; ")
}

// hintFor is what the meaning of a value adds to its label: clauses that only say the label again are left out, and
// "not known counts as 1" is said of the field that the reader sees empty: "if empty: 1".
func hintFor(label, say string) string {
	var keep []string
	for clause := range strings.SplitSeq(say, ";") {
		clause = strings.TrimSpace(clause)
		if before, rest, ok := strings.Cut(clause, ": "); ok && fresh(before, label) == 0 {
			clause = rest
		}
		if rest, ok := strings.CutPrefix(clause, "not known "); ok {
			_, value, _ := strings.Cut(rest, firstVerb(rest))
			clause = ifEmpty + value
		} else if !adds(clause, label) {
			continue
		}
		keep = append(keep, clause)
	}
	return strings.Join(keep, "; ")
}

// firstVerb is the verb with which a clause says what not known counts as; "" where it has none.
func firstVerb(clause string) string {
	for _, v := range []string{"counts as ", "means ", "is "} {
		if strings.HasPrefix(clause, v) {
			return v
		}
	}
	return ""
}

// adds reports whether a clause tells at least three words that the label does not have, or a number.
func adds(clause, label string) bool {
	return strings.ContainsAny(clause, "0123456789") || fresh(clause, label) >= 3
}

// fresh counts the words of a clause that the label does not have.
func fresh(clause, label string) int {
	known, n := strings.ToLower(label), 0
	for _, w := range strings.Fields(strings.ToLower(clause)) {
		w = strings.Trim(w, ".,:?()")
		if len(w) > 3 && !emptyWords[w] && !strings.Contains(known, w[:min(len(w), 5)]) {
			n++
		}
	}
	return n
}

// emptyWords carry no meaning of their own under a label.
var emptyWords = map[string]bool{
	"what": true, "does": true, "with": true, "that": true, "this": true, "there": true, "when": true, "from": true, "where": true, "which": true,
	"have": true, "here": true, "anyone": true, "they": true, "been": true, "kind": true, "such": true, "takes": true, "made": true, "make": true, "name": true,
	"someone": true, "load": true, "number": true, "your": true, "call": true, "once": true,
}
