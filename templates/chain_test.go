package templates

import (
	"strings"
	"testing"
)

// rowShop is the chain of three gates whose figures are worked out by hand in
// the tests of the package that reckons chains.
const rowShop = "../plan/control/chain/testdata/row.toml"

// The sheet of a chain opens with its verdict and says what was reckoned.
func TestChainSheet(t *testing.T) {
	for _, c := range []struct {
		name    string
		changes []string
		says    []string
		not     []string
	}{
		{"holds", nil, []string{
			"met At the worst Three gets 22.49 V, and works down to 20 V. That is while Two and Three are stalled at once",
			"lowest 22.49 V", "G3 Three met 22.49 20 2.49 G2 and G3 23.95 49.2", "2 gates stalled at once, held fast",
			"By the file its label names class 2", "Gates stalled at once, on any chain (G1 and G2) 1.96 A", "Asked of the supply, loaded to four fifths 3.01 A", "The supply gives 4 A",
			"This chain may draw, and its fuse has to carry 2.06 A", "7 A (", "Used up first the volts",
			"P1:+ / S1:+", "G2:− / G3:−", "20 contacts to make", "89 N (20 lbf) for a minute", "the device's own instructions first", "authority that enforces them",
		}, []string{"What would be enough", "Assumed", "too little", "What stands against it"}},
		{"short", []string{`cable = "18 AWG"`, `cable = "24 AWG"`}, []string{"not met At the worst Three gets ", "too little", "What would be enough", "Use 20 AWG all along.", "Connect the supply at Two instead", "What stands against it"}, nil},
		{"assumed", []string{"draws = \"10 mA\"\n", "", "moves_together = 2\n", ""}, []string{"thin At the worst", "H1 Switch: 0.05 A (common practice", "1 gate stalled"}, []string{"What would be enough"}},
		{"no volts", []string{"supply = \"24 V\"\n", ""}, []string{"not given The volts of the control supply are not given.", "By the file its label names class 2"}, []string{"lowest 2", "In all"}},
		{"no listing", []string{"supply_listed = \"class 2\"\n", ""}, []string{"Nothing says that its power is limited.", "ask Whether its power is limited is not given"}, nil},
		{"loose", []string{"  { device = \"Two\", cable = \"3 m\" },\n", ""}, []string{"On no chain G2 Two"}, nil},
	} {
		t.Run(c.name, func(t *testing.T) {
			text := textOf(t, changedBook(t, rowShop, c.changes...), "wiring-row.html")
			for _, want := range c.says {
				if !strings.Contains(text, want) {
					t.Errorf("lacks %q:\n%s", want, text)
				}
			}
			for _, not := range c.not {
				if strings.Contains(text, not) {
					t.Errorf("has %q:\n%s", not, text)
				}
			}
		})
	}
}

// A book without a control half has no such sheet, and the sources name the
// tables of chains.
func TestChainSources(t *testing.T) {
	text := textOf(t, changedBook(t, rowShop), "sources-control.html")
	for _, want := range []string{"ull that a crimped joint must stand", "18 AWG, 20 lbf 89 N", "0.75 mm2 26 ohm/km", "resistivity of annealed copper"} {
		if !strings.Contains(text, want) {
			t.Errorf("the sources lack %q", want)
		}
	}
}
