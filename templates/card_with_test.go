package templates

import (
	"strings"
	"testing"

	"dustbook/content"
)

// A card says of every other machine what the table of pairs says of the two.
func TestCardSaysWhoMayRunBeside(t *testing.T) {
	b := newBook(t, string(content.Example()))
	sets := b.Plan.Together()
	said := map[string]bool{}
	for _, m := range b.Plan.Shop.Machines {
		var v cardView
		b.cardWith(&v, m)
		if v.With == "" {
			t.Errorf("%s: nothing is said", m.Name)
		}
		for _, other := range b.Plan.Shop.Machines {
			if other == m {
				continue
			}
			works := sets.Of(m, other).Works
			named := strings.Contains(v.With, other.Name)
			switch {
			case strings.HasPrefix(v.With, "By the plan beside it only"):
				said["only"] = true
				if named != works {
					t.Errorf("%s beside %s works: %v; its card: %s", m.Name, other.Name, works, v.With)
				}
			case works:
				t.Errorf("%s may run beside %s; its card: %s", m.Name, other.Name, v.With)
			default:
				said["nothing"] = true
			}
		}
	}
	if !said["only"] || !said["nothing"] {
		t.Errorf("only these kinds were seen: %v", said)
	}
	one := newBook(t, strings.Replace(string(content.Example()), "people_at_machines = 3", "people_at_machines = 1", 1))
	for _, m := range one.Plan.Shop.Machines {
		var v cardView
		if one.cardWith(&v, m); v.With != "" {
			t.Errorf("one person at a time, and the card says %q", v.With)
		}
	}
}
