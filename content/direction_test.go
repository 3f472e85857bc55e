package content

import (
	"strings"
	"testing"
)

// The controls and how they nest: Unicode Standard Annex 9, 2.1 to 2.7.
func TestSettled(t *testing.T) {
	for _, c := range []struct{ name, want string }{
		{"Planer", "Planer"},
		{"مسوي", "مسوي"},
		{"Plan\u200fer", "Plan\u200fer"}, // a mark opens nothing
		{"Saw\u202eenots", "Saw\u202eenots\u202c"},
		{"a\u202eb\u2067c", "a\u202eb\u2067c\u2069\u202c"},
		{"a\u202eb\u202cc", "a\u202eb\u202cc"},
		{"a\u202cb\u2069", "ab"}, // ends that would close what is around it
		{"a\u2067b\u202cc", "a\u2067bc\u2069"},
	} {
		if got := Settled(c.name); got != c.want {
			t.Errorf("Settled(%+q) = %+q, want %+q", c.name, got, c.want)
		}
	}
}

// A sentence keeps its direction after a name that turns it round.
func TestNamesDoNotTurnASentence(t *testing.T) {
	words := WordsIn(English)
	key := ""
	for _, k := range Keys() {
		if text := words.row(k); len(text) > 4 && text[:3] == "{1}" {
			key = k
			break
		}
	}
	if key == "" {
		t.Fatal("no text begins with what it is about")
	}
	for _, got := range []string{words.Text(key, "A\u202eB"), words.HTML(key, "A\u202eB")} {
		if want := "A\u202eB\u202c"; !strings.Contains(got, want) {
			t.Errorf("%+q does not hold %+q", got, want)
		}
	}
}
