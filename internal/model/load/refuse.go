package load

import (
	"slices"
	"strings"
	"unicode"

	"duskweight/internal/model/unit"
)

// The sentences of a refusal.
const (
	refuseMedical = "A medical device, or the cold that keeps a medicine good, must not hang on this store: when the store is empty or stuck, someone is harmed. Give it a supply that is made for it."
	refuseAlarm   = "A fire, smoke or gas alarm must not hang on this store: it has to warn when everything else has failed. Give it its own battery."
	refuseAnimals = "Animals whose water, air or warmth stops are harmed, so this must not hang on this store. Give it a supply that does not stop."
	refuseBreath  = "A ventilator that helps someone breathe must not hang on this store: when the store is empty or stuck, someone is harmed. If you mean a fan, write fan."
	refuseOther   = "This must not hang on this store: when it stops, people or things are harmed. Give it a supply that does not stop."
)

// Refused reports whether an appliance is refused as a load of this store, and the reason in one or two sentences. It
// goes by the purpose, and by plain words in the name whatever the purpose says. The list of words is our own
// judgement: it catches the obvious, the question of the purpose catches the rest.
func Refused(a Appliance) (reason string, refused bool) {
	switch a.Purpose {
	case ForMedical:
		return refuseMedical, true
	case ForAlarm:
		return refuseAlarm, true
	case ForAnimals:
		return refuseAnimals, true
	}
	if a.StopsHarm == unit.Yes {
		return refuseOther, true
	}
	words := split(a.Name)
	for _, r := range refusals {
		if slices.Contains(r.fine, a.Purpose) || containsAny(words, r.unless) {
			continue
		}
		for _, phrase := range r.phrases {
			if contains(words, split(phrase)) {
				return r.reason, true
			}
		}
	}
	return "", false
}

// refusals are phrases that refuse, in order; a phrase matches whole words, and a word ending in * matches its
// beginning.
var refusals = []struct {
	reason  string
	phrases []string
	unless  []string  // phrases that make it harmless
	fine    []Purpose // purposes that make it harmless: a lamp beside the animals
}{
	{refuseMedical, []string{
		"cpap*", "bipap*", "apap", "apnea", "apnoea", "oxygen", "concentrator", "nebuli*", "respirator", "breathing",
		"life support", "insulin*", "medicine*", "medication*", "medical*", "vaccine*", "dialysis", "dialyser", "dialyzer",
		"infusion", "feeding pump", "syringe*", "pacemaker", "defibrillator", "aed", "suction pump", "suction machine",
		"patient*", "hospital*", "wheelchair*", "stair lift", "stairlift", "pulse oximeter", "heart monitor", "blood*",
		"iron lung",
	}, nil, nil},
	{refuseBreath, []string{"ventilator*"}, nil, nil},
	{refuseAlarm, []string{
		"smoke detector*", "smoke alarm*", "smoke sensor*", "smoke warn*", "fire alarm*", "fire detector*", "fire pump*", "sprinkler pump*", "gas alarm*",
		"gas detector*", "gas sensor*", "co alarm*", "co detector*", "carbon monoxide", "burglar alarm*", "intruder alarm*", "alarm system*",
		"panic button", "emergency exit*", "exit light*", "alarm", "alarms",
	}, []string{"alarm clock", "clock alarm", "alarm radio", "radio alarm", "clock radio"}, nil},
	{refuseAnimals, []string{
		"aquarium*", "fish tank*", "fishtank*", "fish pond*", "koi", "terrarium*", "vivarium*", "livestock", "cattle", "chick", "chicks", "chicken*", "hen",
		"hens", "poultry", "sheep", "goat*", "pig", "pigs", "horse", "horses", "cow", "cows", "calf", "calves", "animal*", "incubator*", "brooder*", "trough*",
		"electric fence*", "fence charger*", "fence energi*",
	}, nil, []Purpose{ForLight, ForRadio, ForPhone, ForComputer, ForRouter}},
	{refuseOther, []string{"sump pump*", "bilge pump*", "flood pump*"}, nil, nil},
}

// split returns the words of a name in lower case.
func split(name string) []string {
	return strings.FieldsFunc(strings.ToLower(name), func(r rune) bool {
		return !unicode.IsLetter(r) && !unicode.IsDigit(r) && r != '*'
	})
}

// contains reports whether phrase stands in words as neighbours. A word of the phrase ending in * matches a beginning.
func contains(words, phrase []string) bool {
	for i := 0; i+len(phrase) <= len(words); i++ {
		same := true
		for j, p := range phrase {
			if stem, open := strings.CutSuffix(p, "*"); open {
				same = same && strings.HasPrefix(words[i+j], stem)
			} else {
				same = same && words[i+j] == p
			}
		}
		if same {
			return true
		}
	}
	return false
}

func containsAny(words []string, phrases []string) bool {
	return slices.ContainsFunc(phrases, func(p string) bool { return contains(words, split(p)) })
}
