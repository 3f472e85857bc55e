package templates

import (
	"regexp"
	"strings"
	"testing"

	"dustbook/checks"
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
			circuitRow{Motor: "3 hp", Volts: "230 V", Phase: "single phase", Breaker: "30 A", Wire: "10 AWG", Length: "60 ft", Terminals: "75 °C (167 °F)"}},
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

// Beside each circuit stands what its motor asks for, and what the check says
// of it; where nothing can be told, that stands there.
func TestCircuitsAreHeld(t *testing.T) {
	const untold = "not compared"
	for _, c := range []struct {
		name, fields string
		want         circuitHeld
	}{
		{"holds", "motor = { power = \"3 hp\", volts = \"230 V\", phase = 1 }\ncircuit = { breaker = \"30 A\", wire = \"10 AWG\", length = \"60 ft\" }\n",
			circuitHeld{Current: "17 A", Carry: "21.3 A", Least: "10 AWG", Wire: "10 AWG", Most: "45 A", Breaker: "30 A", Drop: "2.53 V, 1.1 %", State: stateWord(checks.Met)}},
		{"does not hold", "motor = { power = \"2 hp\", volts = \"115 V\", phase = 1 }\ncircuit = { breaker = \"15 A\", wire = \"14 AWG\", terminals = \"75 C\" }\n",
			circuitHeld{Current: "24 A", Carry: "30 A", Least: "10 AWG", Wire: "14 AWG", Most: "60 A", Breaker: "15 A", Drop: untold, State: stateWord(checks.NotMet)}},
		{"metric wire", "motor = { power = \"3 hp\", volts = \"230 V\", phase = 1 }\ncircuit = { breaker = \"30 A\", wire = \"6 mm2\" }\n",
			circuitHeld{Current: "17 A", Carry: "21.3 A", Least: "10 AWG", Wire: "6 mm²", Most: "45 A", Breaker: "30 A", Drop: untold, State: stateWord(checks.Ask)}},
		{"no motor", "circuit = { breaker = \"30 A\" }\n",
			circuitHeld{Current: untold, Carry: untold, Least: untold, Wire: "not given", Most: untold, Breaker: "30 A", Drop: untold, State: stateWord(checks.NotGiven)}},
		{"volts that no table has", "motor = { power = \"3 hp\", volts = \"400 V\", phase = 3 }\ncircuit = { breaker = \"30 A\", wire = \"10 AWG\" }\n",
			circuitHeld{Current: untold, Carry: untold, Least: untold, Wire: "10 AWG", Most: untold, Breaker: "30 A", Drop: untold, State: stateWord(checks.Ask)}},
	} {
		text := fed(t, c.fields)
		if strings.Count(text, "[shop]\n") != 1 || strings.Contains(text, "rules") {
			t.Fatal("the smallest shop names rules")
		}
		b := newBook(t, strings.Replace(text, "[shop]\n", "[shop]\nrules = \"us\"\n", 1))
		collector := b.Plan.Shop.Collectors[0].Name
		c.want.Name, c.want.Path = collector, b.Path("collector", collector)
		if rows := b.circuitsHeld(); len(rows) != 1 || rows[0] != c.want {
			t.Errorf("%s: %+v, want %+v", c.name, rows, c.want)
		}
		page := pageOf(t, b, circuitsPath)
		if fails := strings.Contains(page, "some do not hold"); fails != (c.want.State.Class == "notmet") {
			t.Errorf("%s: the sheet opens with a circuit that does not hold: %v", c.name, fails)
		}
		for _, says := range []string{c.want.Least, c.want.Most, `href="` + b.Path("check", "motor-circuit") + `"`, "no design", "authority having jurisdiction"} {
			if !strings.Contains(page, says) {
				t.Errorf("%s: the sheet does not say %q", c.name, says)
			}
		}
	}
}
