package room

import (
	"strings"
	"testing"

	"dustbook/plan/shop"
	"dustbook/plan/unit"
)

// The opening is for the depressurisation that the file chooses; left out, for
// the strictest limit of what burns; where nothing burns there is none.
func TestChosenOpening(t *testing.T) {
	const hall = "opening = \"1.5 sq ft\"\n"
	chosen := strings.Replace(yard, hall, hall+"depressurisation = \"5 Pa\"\n", 1)
	both := strings.Replace(chosen, "outline = [[40,0],[60,0],[60,30],[40,30]]\n", "outline = [[40,0],[60,0],[60,30],[40,30]]\ndepressurisation = \"3 Pa\"\n", 1)
	for _, c := range []struct {
		about, text string
		press       float64
	}{
		{"chosen", chosen, 5},
		{"two rooms of one air", both, 3},
		{"left out", yard, 2},
		{"chosen, nothing burns", strings.Replace(chosen, "open-flue gas", "electric", 1), 5},
		{"left out, nothing burns", strings.Replace(yard, "open-flue gas", "electric", 1), 0},
	} {
		b := reckon(t, c.text, sawRuns).Balances[0]
		if b.Chosen == nil {
			if c.press != 0 {
				t.Errorf("%s: no opening", c.about)
			}
			continue
		}
		// A = Q/(Cd √(2 Δp/ρ)), held against the pressure that drives the flow through it
		if got := float64(b.Chosen.Limit.Press); got != c.press || !near(float64(standard.pressureOf(b.Net, b.Chosen.Area)), c.press, 1e-4) {
			t.Errorf("%s: at %g Pa an area of %g m2", c.about, got, float64(b.Chosen.Area))
		}
	}
}

// Among uses that only blow air into a space the one that blows in most stands
// for it; one that draws air out comes before them.
func TestWorstOfAirBlownIn(t *testing.T) {
	text := strings.Replace(yard, `exhaust = "outside"`, "exhaust = \"returns to room\"\nreturns_to = \"Lean-to\"", 1)
	uses := func(s *shop.Shop) []Use {
		list := sawRuns(s)
		more := list[0]
		more.Name = "Saw, wide open"
		more.Draws = []Draw{{Collector: s.Collectors[0], Flow: flow("900 cfm"), Ends: []End{{s.Machines[0], flow("900 cfm")}}}}
		return append(list, more)
	}
	k := reckon(t, text, uses)
	if b := k.Worst(k.Spaces[1]); b.Use != "Saw, wide open" || b.Net >= 0 {
		t.Errorf("the lean-to: %s, net %g", b.Use, float64(b.Net))
	}
	if b := k.Worst(k.Spaces[0]); b.Use != "Saw, wide open" || b.Net <= 0 {
		t.Errorf("the hall: %s, net %g", b.Use, float64(b.Net))
	}
	for _, c := range []struct {
		a, b float64
		want bool
	}{{1, 2, false}, {2, 1, true}, {0, 1, false}, {-9, 1, false}, {1, -9, true}, {-9, -1, true}, {-1, -9, false}, {-1, 0, true}} {
		if got := worse(unit.Flow(c.a), unit.Flow(c.b)); got != c.want {
			t.Errorf("%g before %g: %v", c.a, c.b, got)
		}
	}
}
