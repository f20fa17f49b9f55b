package crawl_test

import (
	"os"
	"regexp"
	"strings"
	"testing"
)

// verbForms are the forms of verbs that the texts use: those that are a verb wherever they stand, and those that are as often a
// noun ("test", "lift") and count at the head of a clause alone.
type verbForms struct{ anywhere, first map[string]bool }

// readVerbs reads the closed list. A new text with a verb that is not there yet adds it.
func readVerbs(t *testing.T) verbForms {
	t.Helper()
	text, err := os.ReadFile("testdata/verbs.txt")
	if err != nil {
		t.Fatal(err)
	}
	anywhere, first, ok := strings.Cut(string(text), "\nat the head of a clause\n")
	if !ok {
		t.Fatal("testdata/verbs.txt has one list only")
	}
	set := func(words string) map[string]bool {
		all := map[string]bool{}
		for _, w := range strings.Fields(words) {
			all[w] = true
		}
		return all
	}
	return verbForms{set(anywhere), set(first)}
}

var (
	labelHere  = regexp.MustCompile(`^(?:\S+ ){0,6}\S+:`)
	sentenceIn = regexp.MustCompile(`[.?!]\s+`)
	// shortened is what ends with a full stop that ends no sentence: an initial, and the short words of a source.
	shortened = regexp.MustCompile(`(?:^|[\s(])(?:\p{Lu}|ch|eq|al|vol|ed|no|p|pp)\.\s+$`)
)

// verbless are sentences without a verb that stay, each with its reason.
var verbless = map[string]string{
	"From memory, not re-read.": "the grade of a source, as in every list of sources",
}

// without are the sentences of a text that have no verb. A sentence ends with a full stop and has three words or more; what begins
// with a label and a colon is a label with its value (in the guide the colon may stand first, behind a word that is a link); what has an equals sign is an equation.
func (v verbForms) without(text string) (bare []string) {
	text = strings.ReplaceAll(text, "’", "'")
	if !strings.HasSuffix(text, ".") {
		return nil
	}
	from := 0
	ends := sentenceIn.FindAllStringIndex(text, -1)
	for _, end := range append(ends, []int{len(text), len(text)}) {
		s := strings.TrimSpace(text[from:end[1]])
		if end[1] < len(text) && (!capital(text[end[1]:]) || shortened.MatchString(text[from:end[1]])) {
			continue
		}
		from = end[1]
		if strings.HasSuffix(s, ".") && len(strings.Fields(s)) >= 3 && verbless[s] == "" && !strings.HasPrefix(s, ":") && !strings.Contains(s, " = ") && !labelHere.MatchString(s) && !v.in(s) {
			bare = append(bare, s)
		}
	}
	return bare
}

// capital reports whether a text begins a new sentence.
func capital(text string) bool {
	return regexp.MustCompile(`^[“‘(]?(?:\p{Lu}|\d)`).MatchString(text)
}

// atHead are the words behind which "that" and "which" are no part of a clause of a noun: "after that it rests".
var atHead = map[string]bool{"after": true, "at": true, "before": true, "from": true, "with": true, "of": true, "in": true, "on": true, "for": true, "then": true, "and": true, "but": true}

// before are the words behind which a verb of the second list is one: "then lift 10 kg".
var before = map[string]bool{"and": true, "or": true, "then": true, "to": true, "not": true, "only": true, "first": true, "never": true, "when": true, "until": true}

func (v verbForms) in(sentence string) bool {
	const marks = ".,;:()“”‘\"…"
	words := strings.Fields(strings.ToLower(sentence))
	for i, raw := range words {
		w, last, second := strings.Trim(raw, marks), "", ""
		if i > 0 {
			last = words[i-1]
		}
		if i > 1 {
			second = strings.Trim(words[i-2], marks)
		}
		// The verb of a clause that tells more of a noun makes no sentence of the rest: "a switch that locks".
		ofNoun := second != "" && (last == "that" || last == "which" || last == "who") && !atHead[second]
		begins := i == 0 || strings.HasPrefix(raw, "(") || strings.HasSuffix(last, ",") || strings.HasSuffix(last, ";") || strings.HasSuffix(last, ":") || before[last]
		if v.anywhere[w] && !ofNoun || v.first[w] && begins {
			return true
		}
	}
	return false
}

// Every sentence in a paragraph, a point of a list or under a picture has a verb. Notes of the catalog's rows are sources, and what
// the guide has in its lists of sources and of comparisons is none of ours.
func everySentenceHasAVerb(t *testing.T, all []saidAt) {
	t.Helper()
	v, n := readVerbs(t), 0
	for _, one := range all {
		if one.Kind != "p" && one.Kind != "li" && one.Kind != "figcaption" || strings.Contains(one.Page, "/rows") || strings.Contains(one.Page, "?q=") ||
			strings.HasPrefix(one.Page, "/help/sources") || strings.HasPrefix(one.Page, "/help/known") {
			continue
		}
		n++
		for _, s := range v.without(one.Text) {
			t.Errorf("%s %s: no verb of testdata/verbs.txt: %s", one.Doc, one.Page, s)
		}
	}
	if n < 500 {
		t.Errorf("only %d texts were read", n)
	}
}

// The test above finds what it looks for.
func TestVerbsFinds(t *testing.T) {
	v := readVerbs(t)
	for text, want := range map[string]int{
		"The lamps burn for 3.7 hours a night.":                               0,
		"Test the brake first. Then lift 10 kg.":                              0,
		"Not for persons.":                                                    1,
		"Up in 6.2 minutes, with 3.8 Wh. The mass is at rest.":                1,
		"The load test of the brake. A worked example.":                       2,
		"Usual: 1 to 15 m.":                                                   0,
		"The base that slides on the ground":                                  0,
		"It is 1.5 m. high, and the rope isn’t worn.":                         0,
		"A smoke alarm beside it. Battery to the controller.":                 2,
		"A fuse close to it that withstands 10 A.":                            1,
		"The part that gives way is the rope. All that hangs counts.":         0,
		"The factors are those of L. Blank and A. Tarquin, ch. 3.":            0,
		"What it would take is on the page of the variant.":                   0,
		"120 kg × 9.81 m/s² × 4.5 m = 5 300 J, and 5 300 J / 3 600 = 1.5 Wh.": 0,
	} {
		if got := v.without(text); len(got) != want {
			t.Errorf("%q: %q, want %d", text, got, want)
		}
	}
}
