package templates

import (
	"strings"
	"testing"
)

// The sheet of a chain above low voltage opens with that, bears the caution of
// line voltage and says nowhere that its power is limited; at low voltage it
// says none of it.
func TestChainAboveLow(t *testing.T) {
	for _, volts := range []string{"120 V", "60 V", "24 V"} {
		text := textOf(t, changedBook(t, rowShop, `supply = "24 V"`, `supply = "`+volts+`"`), "wiring-row.html")
		above := volts == "120 V"
		for _, want := range []string{"stop This is not low-voltage work: the control supply gives 120 V", "It can kill", "for a licensed electrician, under local codes and the authority having jurisdiction", "leave it off"} {
			if strings.Contains(strings.ToLower(text), strings.ToLower(want)) != above {
				t.Errorf("%s: %q", volts, want)
			}
		}
		for _, not := range []string{"Low-voltage work too is", "Connectors", "its fuse is no larger than", "At the ends", "Pull every crimp"} {
			if strings.Contains(text, not) == above {
				t.Errorf("%s: %q", volts, not)
			}
		}
		if got := strings.Contains(text, "G3 Three ask "); got != above {
			t.Errorf("%s: a device is asked about: %v", volts, got)
		}
		if limited := "its power is limited by that listing"; strings.Contains(text, limited) != (volts == "24 V") {
			t.Errorf("%s: %q", volts, limited)
		}
	}
}

// The connectors of a chain: one at the supply, two at each device on the way,
// one at the end; plugs at both ends of every run.
func TestConnectors(t *testing.T) {
	text := textOf(t, changedBook(t, rowShop), "wiring-row.html")
	for _, want := range []string{"At the supply P1: one of 2 poles", "Through at S1, G1, H1 and G2: two of 2 poles at each.", "End at G3: one of 2 poles.", "10 sockets at supply and devices and 10 plugs on the runs", "keyed so that plus and minus cannot be turned"} {
		if !strings.Contains(text, want) {
			t.Errorf("lacks %q", want)
		}
	}
}

// No more gates are stalled at once than the chain has, and a chain without
// devices has no volts.
func TestStalledAtMost(t *testing.T) {
	text := textOf(t, changedBook(t, rowShop, "moves_together = 2", "moves_together = 50"), "wiring-row.html")
	if !strings.Contains(text, "3 gates stalled at once") || strings.Contains(text, "50 gates") {
		t.Error(text)
	}
	bare := "[[chain]]\nname = \"Bare\"\ncable = \"18 AWG\"\nstops = []\n"
	b := changedBook(t, rowShop, "[[chain]]\n", bare+"[[chain]]\n")
	text = textOf(t, b, "wiring-bare.html")
	if !strings.Contains(text, "No device stands on this chain.") || strings.Contains(text, "stalled") || strings.Contains(text, "Volts at each device") || strings.Contains(text, "Label at both ends") {
		t.Error(text)
	}
	if text = textOf(t, b, "wiring-row.html"); strings.Contains(text, "No device stands on this chain.") {
		t.Error("said of the chain beside it")
	}
}

// A fuse that the supply cannot blow is said; one that it can is not.
func TestIdleFuse(t *testing.T) {
	for power, want := range map[string]bool{"96 W": true, "240 W": false} {
		text := textOf(t, changedBook(t, rowShop, `supply_power = "96 W"`, `supply_power = "`+power+`"`), "wiring-row.html")
		if strings.Contains(text, "The supply gives 4 A: a fuse of 7 A may never blow.") != want {
			t.Errorf("%s: %v", power, want)
		}
	}
}

// A mend of the volts says so where the supply falls short too.
func TestMendsWithSupply(t *testing.T) {
	thin := []string{`cable = "18 AWG"`, `cable = "24 AWG"`}
	const short = "The supply gives too little current as well"
	if text := textOf(t, changedBook(t, rowShop, thin...), "wiring-row.html"); strings.Contains(text, short) || !strings.Contains(text, "What would be enough for the volts") {
		t.Error(text)
	}
	if text := textOf(t, changedBook(t, rowShop, append(thin, `supply_power = "96 W"`, `supply_power = "24 W"`)...), "wiring-row.html"); !strings.Contains(text, short) {
		t.Error(text)
	}
}

// Wire is marked in °C: a US book prints both, a metric one that alone.
func TestWireHeat(t *testing.T) {
	if text := textOf(t, changedBook(t, rowShop, `temperature = "20 C"`, `temperature = "30 C"`), "wiring-row.html"); !strings.Contains(text, "30 °C (86 °F)") {
		t.Error(text)
	}
	if text := textOf(t, changedBook(t, rowShop, "[shop]\n", "[shop]\nunits = \"metric\"\n", `temperature = "20 C"`, `temperature = "30 C"`), "wiring-row.html"); !strings.Contains(text, "30 °C") || strings.Contains(text, "86 °F") {
		t.Error(text)
	}
}
