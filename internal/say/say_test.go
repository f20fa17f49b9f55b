package say

import (
	"encoding/json"
	"math"
	"reflect"
	"strings"
	"testing"

	"duskweight/internal/model/unit"
)

// The worked figures are hand conversions: 1 lb = 0.45359237 kg and 1 ft = 0.3048 m (international yard and pound agreement,
// 1959), °F = 1.8 °C + 32.
func TestInBothSystems(t *testing.T) {
	for _, c := range []struct {
		s                Sentence
		metric, imperial string
	}{
		{That("It weighs %s.", Mass(100)), "It weighs 100 kg.", "It weighs 220 lb."},
		{That("It is pulled with %s.", Weight(980.665)), "It is pulled with 100 kg.", "It is pulled with 220 lb."},
		{That("%s of 100 %.", Share(0.123)), "12 % of 100 %.", "12 % of 100 %."},
		{That("It rises %s.", Height(3.048)), "It rises 3.05 m.", "It rises 10′."},
		{That("A drum of %s.", Length(0.0508)), "A drum of 50.8 mm.", "A drum of 2 in."},
		{That("A beam of %s.", Length(1.524)), "A beam of 1.52 m.", "A beam of 5′."},
		{That("At %s.", Temperature(99.6)), "At 100 °C.", "At 211 °F."},
		{That("It takes %s.", Time(119)), "It takes 119 seconds.", "It takes 119 seconds."},
		{That("It takes %s.", Time(60*60)), "It takes 60 minutes.", "It takes 60 minutes."},
		{That("It lasts %s.", Time(unit.Duration(math.Inf(1)))), "It lasts for ever.", "It lasts for ever."},
		{That("It takes %s.", Time(3*86400)), "It takes 3 days.", "It takes 3 days."},
		{That("It takes %s.", Time(3*3600)), "It takes 3 hours.", "It takes 3 hours."},
		{That("At %s.", Turning(6000*unit.RevPerMinute)), "At 6 000 revolutions a minute.", "At 6 000 revolutions a minute."},
		{That("The soil carries %s.", Stress(99e3)), "The soil carries 99 kPa.", "The soil carries 14.4 psi."},
		{That("The pin carries %s.", Stress(100e3)), "The pin carries 0.1 MPa.", "The pin carries 14.5 psi."},
		{That("%s: %s", "“Ölfass 3 %s”", That("%s left.", 3)), "“Ölfass 3 %s”: 3 left.", "“Ölfass 3 %s”: 3 left."},
		{That("Exactly."), "Exactly.", "Exactly."},
		{Sentence{}, "", ""},
	} {
		plain := strings.NewReplacer(unit.Space, " ")
		if got := plain.Replace(c.s.In(unit.Metric)); got != c.metric {
			t.Errorf("metric: %q, want %q", got, c.metric)
		}
		if got := plain.Replace(c.s.In(unit.Imperial)); got != c.imperial {
			t.Errorf("imperial: %q, want %q", got, c.imperial)
		}
	}
}

// A strength to buy is never less than what is needed, one that is there never more, in the unit that is read.
func TestDirections(t *testing.T) {
	for _, c := range []struct {
		a                Amount
		metric, imperial string
	}{
		{Mass(163.1).Up(), "164 kg", "360 lb"},   // 359.57 lb
		{Mass(163.9).Down(), "163 kg", "361 lb"}, // 361.34 lb
		{Mass(164).Up(), "164 kg", "362 lb"},     // 361.56 lb
		{Mass(0.3).Up(), "0.3 kg", "0.662 lb"},   // 0.66139 lb
		{Mass(0.3).Down(), "0.3 kg", "0.661 lb"},
		{Mass(2*unit.Mass(unit.Pound) + 0), "0.907 kg", "2 lb"},
		{Mass(2 * unit.Mass(unit.Pound)).Up(), "0.908 kg", "2 lb"},
		{Mass(1711.2).To(2).Up(), "1 800 kg", "3 800 lb"},  // 3772.5 lb
		{Temperature(20.2).Up(), "21 °C", "69 °F"},         // 68.36 °F
		{Limit(unit.Lengths, 10).Down(), "10 m", "32′ 9″"}, // 393.70 in, 32 ft 9.70 in
		{Limit(unit.Lengths, 10).Toward(unit.Up), "10 m", "32′ 10″"},
		{Limit(unit.Counts, 12345).Down(), "12 345", "12 345"},
		{Limit(unit.Percents, 1).Down(), "100 %", "100 %"},
	} {
		plain := strings.NewReplacer(unit.Space, " ")
		if got := plain.Replace(c.a.In(unit.Metric)); got != c.metric {
			t.Errorf("metric %q, want %q", got, c.metric)
		}
		if got := plain.Replace(c.a.In(unit.Imperial)); got != c.imperial {
			t.Errorf("imperial %q, want %q", got, c.imperial)
		}
	}
}

func TestJoin(t *testing.T) {
	one, two := That("One."), That("Two weighs %s.", Mass(2))
	if got := Join(Sentence{}, one, Sentence{}, two).String(); got != "One. Two weighs 2\u00a0kg." {
		t.Error(got)
	}
	if !Join().IsZero() || !Join(Sentence{}).IsZero() || !That("").IsZero() || two.IsZero() {
		t.Error("what says nothing is not zero, or the other way round")
	}
	if !one.Is(Join(one)) || one.Is(two) || !(Sentence{}).Or(two).Is(two) || two.Is(That("Two weighs %s.", "2\u00a0kg")) {
		t.Error("sentences are not told apart")
	}
	if got := Plural(1, "night", "nights").String() + Plural(3, "night", "nights").String(); got != "1\u00a0night3\u00a0nights" {
		t.Error(got)
	}
	b, err := json.Marshal(map[string]any{"say": two, "all": []Sentence{one}})
	if err != nil || string(b) != `{"all":["One."],"say":"Two weighs 2`+"\u00a0"+`kg."}` {
		t.Errorf("%s %v", b, err)
	}
}

// A time in the unit that a person would use, worked by hand on either side of each border: 119 s; 120 s are 2 minutes; 119
// minutes; 120 minutes are 2 hours; 47 hours; 48 hours are 2 days.
func TestTime(t *testing.T) {
	for s, want := range map[unit.Duration]string{1: "1 second", 89: "89 seconds", 119: "119 seconds", 120: "2 minutes", 150: "2.5 minutes", 119 * 60: "119 minutes", 7200: "2 hours",
		47 * 3600: "47 hours", 48 * 3600: "2 days", 864000: "10 days"} {
		if got := strings.ReplaceAll(Time(s).String(), unit.Space, " "); got != want {
			t.Errorf("%v s: %q, want %q", s, got, want)
		}
	}
}

// Two results that say the same are the same to a comparison field by field.
func TestEqual(t *testing.T) {
	a, b := That("%s, %s", Time(12), Length(3)), That("%s, %s", Time(12), Length(3))
	if !reflect.DeepEqual(a, b) || reflect.DeepEqual(a, That("%s, %s", Time(12), Length(4))) {
		t.Error("sentences cannot be compared")
	}
}

// The first letter changes and nothing else; a value that begins a sentence stays.
func TestFirstLetter(t *testing.T) {
	if got := That("Über %s.", Mass(3)).Lower().String(); got != "über 3\u00a0kg." {
		t.Error(got)
	}
	if got := Join(That("use %s.", Mass(3)), That("or not.")).Capital().String(); got != "Use 3\u00a0kg. or not." {
		t.Error(got)
	}
	if got := That("%s carries.", "drum").Capital().String(); got != "drum carries." {
		t.Error(got)
	}
	if got := That("%s of %s.", That("It carries %s", Mass(3)), "rope 12").Blank(); got != "It carries … of rope 12." {
		t.Error(got)
	}
}

// What a caller may not do.
func TestMistakes(t *testing.T) {
	for name, wrong := range map[string]func(){
		"a bare number": func() { That("%s", 1.5) },
		"too few":       func() { That("%s %s", "a") },
		"too many":      func() { That("None.", "a") },
		"a quantity":    func() { That("%s", unit.Mass(3)) },
	} {
		func() {
			defer func() {
				if recover() == nil {
					t.Error(name + " is let through")
				}
			}()
			wrong()
		}()
	}
}

// A word of a closed list is a word, whatever its type.
func TestClosedWord(t *testing.T) {
	if got := That("it is %s", unit.Yes).String(); got != "it is yes" {
		t.Errorf("%q", got)
	}
}
