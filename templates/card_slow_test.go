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
			case f.State == checks.Thin && f.Slow != nil:
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

// What to do is taken from the finding and no printed word of it: the hose of a
// stretch is named in the card's own language, and a card whose verdict is
// about its air, or about dust in no one stretch, stays as it is.
func TestSlowOnCardGoesByTheFinding(t *testing.T) {
	b := newBook(t, string(content.Example()))
	b.words = content.WordsIn(content.Spanish)
	var planer *duct.Use
	for _, u := range b.Plan.Air.Uses {
		if u.Name == "Planer" {
			planer = u
		}
	}
	drop := planer.Machines[0].Ports[0].Path()[0]
	for _, c := range []struct {
		name string
		air  checks.State
		dust checks.State
		slow *checks.Slow
		want string
	}{
		{"stretch, thin", checks.Met, checks.Thin, &checks.Slow{Stretch: drop}, "En " + drop.Name() + " el aire puede ir"},
		{"stretch, settles", checks.Met, checks.NotMet, &checks.Slow{Stretch: drop, Settles: true}, "En " + drop.Name() + " el aire va"},
		{"hose, thin", checks.Met, checks.Thin, &checks.Slow{Stretch: drop, Hose: true}, "En la manguera de " + drop.Name() + " el aire puede ir"},
		{"hose, settles", checks.Met, checks.NotMet, &checks.Slow{Stretch: drop, Hose: true, Settles: true}, "En la manguera de " + drop.Name() + " el aire va"},
		{"no one stretch", checks.Met, checks.Thin, nil, "as before"},
		{"its air first", checks.NotMet, checks.NotMet, &checks.Slow{Stretch: drop, Settles: true}, "as before"},
		{"nothing to do", checks.Met, checks.Met, nil, "as before"},
	} {
		b.Findings = []checks.Finding{
			{Check: "air-captured", Kind: kindOf(planer), About: planer.Name, State: c.air, Do: "any words"},
			{Check: "dust-carried", Kind: kindOf(planer), About: planer.Name, State: c.dust, Do: "other words", Slow: c.slow},
		}
		if got := b.slowOnCard(Verdict{Says: "as before"}, planer).Says; !strings.HasPrefix(got, c.want) {
			t.Errorf("%s: %q, not %q", c.name, got, c.want)
		}
	}
}
