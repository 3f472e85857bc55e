package templates

import (
	"regexp"
	"strings"
	"testing"

	"dustbook/content"
)

// fed is the smallest shop with the circuit of its collector and motor given.
func fed(t *testing.T, fields string) string {
	t.Helper()
	const at = "[[collector]]\n"
	text := string(content.Small())
	if strings.Count(text, at) != 1 || strings.Contains(text, "circuit") || strings.Contains(text, "\nmotor") {
		t.Fatal("the smallest shop has another collector, or a circuit already")
	}
	return strings.Replace(text, at, at+fields, 1)
}

// A collector that moves needs its circuit: where the file gives one, a sheet
// has it in a row, also where nothing is controlled; what the file leaves out
// is said to be not given.
func TestCircuitsHaveARow(t *testing.T) {
	const none = "not given"
	for _, c := range []struct {
		name, fields string
		want         circuitRow
	}{
		{"three-phase, 50 A", "motor = { power = \"5 hp\", volts = \"220 V\", phase = 3 }\ncircuit = { breaker = \"50 A\" }\n",
			circuitRow{Motor: "5 hp", Volts: "220 V", Phase: "three-phase", Breaker: "50 A", Wire: none, Length: none, Terminals: none}},
		{"single phase", "motor = { power = \"3 hp\", volts = \"230 V\", phase = 1 }\ncircuit = { breaker = \"30 A\", wire = \"10 AWG\", length = \"60 ft\", terminals = \"75 C\" }\n",
			circuitRow{Motor: "3 hp", Volts: "230 V", Phase: "single phase", Breaker: "30 A", Wire: "10 AWG", Length: "60 ft", Terminals: "167 °F"}},
		{"wire by its area, no motor", "circuit = { wire = \"6 mm2\" }\n",
			circuitRow{Motor: none, Volts: none, Phase: none, Breaker: none, Wire: "6 mm²", Length: none, Terminals: none}},
		{"the thickest wire", "circuit = { wire = \"4/0 AWG\" }\n",
			circuitRow{Motor: none, Volts: none, Phase: none, Breaker: none, Wire: "4/0 AWG", Length: none, Terminals: none}},
	} {
		b := newBook(t, fed(t, c.fields))
		collector := b.Plan.Shop.Collectors[0].Name
		c.want.Name, c.want.Path = collector, b.Path("collector", collector)
		if rows := b.circuitRows(); len(rows) != 1 || rows[0] != c.want {
			t.Errorf("%s: %+v, want %+v", c.name, rows, c.want)
		}
		page := pageOf(t, b, circuitsPath)
		for _, says := range []string{c.want.Volts, c.want.Phase, c.want.Breaker, c.want.Wire, "licensed electrician", "Dedicated, or shared with"} {
			if !strings.Contains(page, says) {
				t.Errorf("%s: the sheet does not say %q", c.name, says)
			}
		}
	}
}

// circuitLine is a line of a shop file that gives a circuit.
var circuitLine = regexp.MustCompile(`(?m)^circuit = .*\n`)

// unfed is the school without its circuits.
func unfed() string { return circuitLine.ReplaceAllString(string(content.Example()), "") }

// Collectors stand first, then machines; a chain's sheet leads to the circuits.
func TestCircuitsBesideChains(t *testing.T) {
	text := unfed()
	for _, add := range []struct{ at, fields string }{{"[[machine]]\nname = \"Planer\"\n", "circuit = { breaker = \"40 A\" }\n"}, {"[[collector]]\nname = \"Cyclone\"\n", "circuit = { breaker = \"50 A\" }\n"}} {
		if strings.Count(text, add.at) != 1 {
			t.Fatalf("%q does not stand once in the school", add.at)
		}
		text = strings.Replace(text, add.at, add.at+add.fields, 1)
	}
	b := newBook(t, text)
	rows := b.circuitRows()
	if len(rows) != 2 || rows[0].Name != "Cyclone" || rows[1].Name != "Planer" || rows[1].Path == "" {
		t.Errorf("%+v", rows)
	}
	page := pageOf(t, b, circuitsPath)
	for _, c := range b.Plan.Shop.Chains {
		if !strings.Contains(pageOf(t, b, b.Path("chain", c.Name)), `href="`+circuitsPath+`"`) || !strings.Contains(page, `href="`+b.Path("chain", c.Name)+`"`) {
			t.Errorf("%s and the circuits do not lead to each other", c.Name)
		}
	}
}

// A shop without a circuit has no such sheet, and no sheet leads there.
func TestNoCircuitNoSheet(t *testing.T) {
	for _, text := range []string{unfed(), string(content.Small())} {
		if strings.Contains(text, "circuit =") {
			t.Fatal("a shop still gives a circuit")
		}
		b := newBook(t, text)
		for _, s := range b.Sheets {
			if s.Path == circuitsPath || strings.Contains(pageOf(t, b, s.Path), circuitsPath) {
				t.Errorf("%s: a sheet of circuits without one", s.Path)
			}
		}
	}
}
