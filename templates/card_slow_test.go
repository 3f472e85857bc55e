package templates

import (
	"strings"
	"testing"

	"dustbook/checks"
	"dustbook/content"
	"dustbook/plan/duct"
)

// A card whose air is too slow, or may be, names the stretch that the check of
// the dust means, in each language of the cards; a card whose verdict is about
// something else names none.
func TestCardNamesTheSlowStretch(t *testing.T) {
	for _, c := range []struct{ language, prefix, thin, settles string }{
		{"en", "", "In {1} the air may be too slow", "In {1} the air is too slow"},
		{"es", "", "En {1} el aire puede ir demasiado lento", "En {1} el aire va demasiado lento"},
		{"both", "es-", "En {1} el aire puede ir demasiado lento", "En {1} el aire va demasiado lento"},
	} {
		b, seen := inLanguage(t, c.language), map[string]int{}
		for _, u := range b.Plan.Air.Uses {
			if u.Kind != duct.OneMachine {
				continue
			}
			f := b.finding("dust-carried", kindOf(u), u.Name)
			page, says, met := pageOf(t, b, c.prefix+b.Path("card", u.Name)), "", b.useVerdict(u)
			switch {
			case f == nil || met.Do != f.Do:
			case f.State == checks.Thin && strings.HasPrefix(f.Do, "Measure"):
				says = c.thin
			case f.State == checks.NotMet:
				says = c.settles
			}
			if says == "" {
				seen["other"]++
				if strings.Contains(page, "the air may be too slow") || strings.Contains(page, "el aire puede ir") || strings.Contains(page, "dust settles there") || strings.Contains(page, "allí se queda polvo") {
					t.Errorf("%s: the card of %s speaks of a slow stretch", c.language, u.Name)
				}
				continue
			}
			seen[says]++
			if strings.Contains(page, "Measure the speed there before you rely on it, and look through the clean-outs") {
				t.Errorf("%s: the card of %s does not say where there is", c.language, u.Name)
			}
			if want := strings.Replace(says, "{1}", f.Figures[0].Name, 1); !strings.Contains(page, want) {
				t.Errorf("%s: the card of %s does not say %q", c.language, u.Name, want)
			}
		}
		if seen[c.thin] == 0 || seen[c.settles] == 0 || seen["other"] == 0 {
			t.Errorf("%s: %v, this test needs cards of each kind", c.language, seen)
		}
	}
}

// The hose of a stretch is named in the card's own language; a finding without
// figures, and one about a stretch that is not on the way, names nothing.
func TestSlowestNamesHoseOrNothing(t *testing.T) {
	b := newBook(t, string(content.Example()))
	b.words = content.WordsIn(content.Spanish)
	var planer, jointer *duct.Use
	for _, u := range b.Plan.Air.Uses {
		switch u.Name {
		case "Planer":
			planer = u
		case "Jointer":
			jointer = u
		}
	}
	says := func(name string) *checks.Finding { return &checks.Finding{Figures: []checks.Figure{{Name: name}}} }
	for _, c := range []struct {
		use  *duct.Use
		f    *checks.Finding
		want string
	}{
		{planer, says("Planer drop"), "Planer drop"},
		{planer, says("The hose of Planer drop"), "la manguera de Planer drop"},
		{jointer, says("Planer drop"), ""},
		{planer, &checks.Finding{}, ""},
	} {
		if got := b.slowest(c.f, c.use); got != c.want {
			t.Errorf("%s, %+v: %q, not %q", c.use.Name, c.f.Figures, got, c.want)
		}
	}
}
