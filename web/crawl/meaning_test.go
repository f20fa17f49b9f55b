package crawl_test

import (
	"regexp"
	"strings"
	"testing"
)

// banned are words and sentences that no page may show, each with what is said instead: one word has one meaning, and no code of
// the document is a word. Our own judgement.
var banned = []struct{ pattern, instead string }{
	{`\b[a-z]{2,}_[a-z]{2,}[_a-z]*`, "a code of the document: words"},
	{`\bfaiman\b`, "by sun and wind"},
	{`\boverhoist\b`, "the upper stop"},
	{`, [A-Z]{2}$`, "a country's name"},
	{`%00|\d[eE][+-]\d`, "a plain number"},
	{`\b[Aa]around\b`, "around"},
	{`\b(is is|the the|a a|of of|to to|are are)\b`, "a word once"},
	{`\b1 (others|more are|nights are|parts are|things are|days are|years are)\b`, "a singular"},
	{`(^|[(“]|[A-Za-z][;:,]? )1 (hours|days|nights|weeks|months|years|minutes|seconds|times|parts|lifts|pieces|blocks|panels|rows|files|turns|variants|projects|things|checks|inputs|ropes|bolts|stages|readings|combinations|plans|pulleys|posts|bags|lamps|devices|values)\b`, "a singular"},
	{`[^.]\.\.(\s|$)`, "one full stop"},
	{`\bwants\b`, "needs"},
	{`\basks for\b|\basked for\b`, "needs"},
	{`\bwhat it stands\b|\bits cable stands\b`, "withstands"},
	{`\blets? (it|the mass) go\b`, "runs away"},
	{`\bIs it going to cook\b`, "does it get too hot"},
	{`\bEmpty counts as\b`, "if empty"},
	{`\bwithout staying longer\b`, "without being stretched for good"},
	{`\bessentially served\b`, "every essential device had power"},
	{`\bProp before hands\b`, "before you touch anything, put the mass on the ground or on a rated prop"},
	{`\bthe motor breaks up first\b`, "flies apart"},
	{`\bnearer to the mass; a mark stops nothing\b`, "a mark does not stop the hoist"},
	{`× too much\b`, "times what it may carry"},
	{`\bwhen the upper stop is missed\b`, "if the mass runs past the upper stop"},
	{`\bhave light to its end\b|\bnights? with light\b`, "full night"},
	{`\b[Ll]abel holds for\b`, "the label's Ah are for a discharge in"},
	{`\bas fast as the night does\b`, "at the night's current"},
	{`\bthe order of its draws\b`, "how strongly this input changes the result"},
	{`\b[Mm]ostly less was wanted\b`, "it cannot give less"},
	{`\bWhat fell stays known\b`, "a recorded fall is kept"},
	{`\bof them may do\b`, "might work"},
	{`\bthe same dice fall\b`, "the same made-up weather"},
	{`\bworn to four fifths\b`, "down to 80 % of its capacity"},
	{`\bMissing less a year\b`, "shortfall avoided a year"},
	{`\breplaced as you told\b`, "your entry"},
	{`\blooks for a mast\b`, "lightning strikes tall things"},
	{`\bWhatever opens\b`, "if this circuit breaks anywhere"},
	{`\bNone would do\b`, "no size is enough"},
	{`\bbring it in\b`, "import"},
	{`\bworked sample\b`, "worked example"},
	{`\bcook(s|ed|ing)?\b`, "gets too hot"},
	{`\b[Rr]aces?\b|\bracing\b`, "runs away"},
	{`\b[Tt]akes? an? (stronger|thicker|thinner|larger|higher|better|longer|softer|deeper)\b`, "use"},
	{`\b[Bb]ack-?up cop(y|ies)\b`, "spare copy"},
	{`\bOf what goes in\b`, "you get back"},
	{`\bHow full over the year\b`, "charge level through the year"},
	{`\bWhat (holds the top pulley|feeds it by day|burns when)\b`, "a noun"},
	{`\bFirst stands?\b`, "ready combinations come first"},
	{`\bA path that nothing can open\b`, "a resistor or clamp is wired straight to the motor"},
	{`\bmay pull\b`, "is allowed"},
	{`\bhowever large it is\b|\bin proportion \d`, "no mass is enough"},
	{`\bIn no year (does|is)\b|\bin no year is\b`, "no night is full in any year"},
	{`\bShare left for drawing\b`, "capacity left at the night's current"},
	{`\bduskweight: is missing\b`, "this file is not a Duskweight project"},
	{`\bwants? a factor\b`, "needs a factor"},
	{`\bHead pulley\b`, "top pulley"},
	{`\b(make|makes) (it|them) yours\b`, "replace or confirm"},
	{`\bin one go\b`, "in one run"},
	{`\bused so\b`, "used like this"},
	{`\bdark spells?\b`, "nights not full, one after the other"},
}

// oneMeaning looks in texts for the words that no page may show. Formulas, addresses and what names a version of the plan are no
// words.
func oneMeaning(t *testing.T, all []saidAt) {
	t.Helper()
	spared := regexp.MustCompile(`[=≤≥√Σ]|://|\.csv|JSON document|^plan [0-9a-f]{8}|plan [0-9a-f]{8}$|^k_mod`)
	var rules []*regexp.Regexp
	for _, b := range banned {
		rules = append(rules, regexp.MustCompile(b.pattern))
	}
	told := map[string]bool{}
	for _, one := range all {
		if spared.MatchString(one.Text) || one.Kind == "code" || one.Kind == "pre" || one.Kind == "csv" || strings.HasPrefix(one.Page, "/help/formulas") {
			continue
		}
		for i, r := range rules {
			if found := r.FindString(one.Text); found != "" && !told[banned[i].pattern+one.Text] {
				told[banned[i].pattern+one.Text] = true
				t.Errorf("%s %s, %s: %q in “%s”; say: %s", one.Doc, one.Page, one.Kind, found, one.Text, banned[i].instead)
			}
		}
	}
}

// The sentences that started the list are found, and good ones are not.
func TestBannedFinds(t *testing.T) {
	find := func(text string) bool {
		for _, b := range banned {
			if regexp.MustCompile(b.pattern).MatchString(text) {
				return true
			}
		}
		return false
	}
	for _, text := range []string{"Take a stronger one.", "A knot wants a factor of 7.", "Is it going to cook?", "The mass races.", "In no year does a single night have light to its end.",
		"First stands what is ready.", "Of what goes in comes back 40 %.", "It pulls 163 kg, may pull 191 kg.", "No mass is enough: in proportion 9710 kg.", "May this battery be used so?"} {
		if !find(text) {
			t.Errorf("%q is not found", text)
		}
	}
	for _, text := range []string{"Use a stronger hook.", "The mass runs away.", "Prices grow in proportion.", "A backup is a generator."} {
		if find(text) {
			t.Errorf("%q is found", text)
		}
	}
}
