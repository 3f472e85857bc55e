package control_test

import (
	"testing"

	"dustbook/plan/control"
)

// A trigger that forgets the zone gate leaves its machine's way shut there; a
// gate that a person opens is named and is not forgotten.
func TestWays(t *testing.T) {
	_, k := hall(t)
	saw := answerOf(t, k, "Saw runs")
	if w := saw.Ways[0]; !w.Whole() || gateNames(w.Opened) != "Saw gate" || w.Collector.Name != "Cyclone" {
		t.Errorf("the saw's way: %+v", w)
	}
	jointer := answerOf(t, k, "Jointer runs").Ways[0]
	if !jointer.Whole() || gateNames(jointer.Gates) != "Jointer gate, East zone gate" {
		t.Errorf("the jointer's way: %s", gateNames(jointer.Gates))
	}
	lathe := answerOf(t, k, "Lathe switch").Ways[0]
	if !lathe.Whole() || gateNames(lathe.ByHand) != "Far gate" || gateNames(lathe.Opened) != "East zone gate" {
		t.Errorf("the lathe's way: by hand %s, opened %s", gateNames(lathe.ByHand), gateNames(lathe.Opened))
	}

	_, k = hall(t, `opens = ["Jointer gate", "East zone gate"]`, `opens = ["Jointer gate"]`)
	jointer = answerOf(t, k, "Jointer runs").Ways[0]
	if jointer.Whole() || gateNames(jointer.Forgotten) != "East zone gate" {
		t.Errorf("the zone gate left out: forgotten %q", gateNames(jointer.Forgotten))
	}
	// the same gate with a drive not given cannot be told
	_, k = hall(t, `opens = ["Jointer gate", "East zone gate"]`, `opens = ["East zone gate"]`, `  { device = "Jointer gate", cable = "16 ft" },
`, "", `name = "Jointer gate"
on = "Jointer drop"
at = "4 ft"
drive = "powered"`, `name = "Jointer gate"
on = "Jointer drop"
at = "4 ft"`)
	jointer = answerOf(t, k, "Jointer runs").Ways[0]
	if jointer.Whole() || len(jointer.Forgotten) != 0 || gateNames(jointer.Unknown) != "Jointer gate" {
		t.Errorf("drive not given: forgotten %q, unknown %q", gateNames(jointer.Forgotten), gateNames(jointer.Unknown))
	}
}

// A trigger may start another collector than the one its machine's duct leads
// to.
func TestAnotherCollector(t *testing.T) {
	_, k := hall(t, `opens = ["Saw gate"]
starts = "Cyclone"`, `opens = ["Saw gate"]
starts = "Bag unit"`)
	a := answerOf(t, k, "Saw runs")
	if collectorNames(a.Astray) != "Bag unit" || collectorNames(a.Unstarted) != "Cyclone" {
		t.Errorf("astray %q, not started %q", collectorNames(a.Astray), collectorNames(a.Unstarted))
	}
	_, k = hall(t)
	if a := answerOf(t, k, "Saw runs"); len(a.Astray)+len(a.Unstarted) != 0 {
		t.Errorf("the right collector: astray %q, not started %q", collectorNames(a.Astray), collectorNames(a.Unstarted))
	}
}

// More than is needed, less than is wanted as well, and what a trigger cannot
// move.
func TestMoreAndLess(t *testing.T) {
	_, k := hall(t)
	if a := answerOf(t, k, "Planer runs"); len(a.More)+len(a.Relief)+len(a.Blocked)+len(a.CannotGo) != 0 {
		t.Errorf("the planer with its relief gate: %+v", a)
	}
	_, k = hall(t, `opens = ["Planer gate", "East zone gate", "Saw gate"]`, `opens = ["Planer gate", "East zone gate", "Jointer gate"]`)
	a := answerOf(t, k, "Planer runs")
	if gateNames(a.More) != "Jointer gate" || gateNames(a.Relief) != "Saw gate" {
		t.Errorf("more %q, relief not opened %q", gateNames(a.More), gateNames(a.Relief))
	}
	_, k = hall(t, `opens = ["East zone gate"]`, `opens = ["East zone gate", "Far gate"]`)
	if a := answerOf(t, k, "Lathe switch"); gateNames(a.CannotGo) != "Far gate" || len(a.More) != 0 {
		t.Errorf("a gate by hand: cannot go %q", gateNames(a.CannotGo))
	}
	// a relief gate behind a zone gate that stays shut gives no relief
	_, k = hall(t, `[[machine]]
name = "Saw"
kind = "table saw"`, `[[machine]]
name = "Saw"
also_open = ["Jointer gate"]
kind = "table saw"`, `opens = ["Saw gate"]`, `opens = ["Saw gate", "Jointer gate"]`)
	if a := answerOf(t, k, "Saw runs"); gateNames(a.Blocked) != "East zone gate" || len(a.More) != 0 {
		t.Errorf("relief behind a shut zone gate: blocked by %q, more %q", gateNames(a.Blocked), gateNames(a.More))
	}
}

// A switch of no machine is asked whether any of the ways it opens is whole.
func TestSwitchOfNoMachine(t *testing.T) {
	whole := func(opens string) (ways, sound int) {
		_, k := hall(t, `senses = "hand switch"
machine = "Lathe"
opens = ["East zone gate"]`, `senses = "hand switch"
opens = `+opens)
		for _, w := range answerOf(t, k, "Lathe switch").Ways {
			ways++
			if w.Whole() {
				sound++
			}
		}
		return ways, sound
	}
	if ways, sound := whole(`["East zone gate"]`); ways != 4 || sound != 2 {
		t.Errorf("the zone gate alone: %d ways, %d whole; want 4, 2 through the gate by hand", ways, sound)
	}
	if ways, sound := whole(`["Jointer gate"]`); ways != 1 || sound != 0 {
		t.Errorf("the jointer's gate alone: %d ways, %d whole; want 1 and none", ways, sound)
	}
}

// A blower against a shut gate: which gate, why, and where the air comes out.
func TestBlows(t *testing.T) {
	_, k := hall(t)
	if len(k.Blows) != 1 {
		t.Fatalf("%d ports with a blower, want the planer's", len(k.Blows))
	}
	if b := k.Blows[0]; b.Port.Full() != "Planer/hood" || b.Why != control.Travels {
		t.Errorf("%s: %d", b.Port.Full(), b.Why)
	}
	// the zone gate forgotten: what joins before it is a way out
	_, k = hall(t, `opens = ["Planer gate", "East zone gate", "Saw gate"]`, `opens = ["Planer gate", "Saw gate"]`)
	b := k.Blows[0]
	if b.Gate.Name != "East zone gate" || b.Why != control.Unopened {
		t.Errorf("gate %s, why %d", b.Gate.Name, b.Why)
	}
	out := map[string]string{}
	for _, o := range b.Out {
		out[o.Port.Full()] = gateNames(o.Gates)
	}
	if len(out) != 3 || out["Jointer/hood"] != "Jointer gate" || out["Lathe/scoop"] != "Far gate" || out["Disc/hood"] != "Far gate" {
		t.Errorf("out through %v", out)
	}
	// the machine's own gate by hand: nothing joins before it
	_, k = hall(t, `name = "Planer gate"
on = "Planer drop"
at = "4 ft"
drive = "powered"`, `name = "Planer gate"
on = "Planer drop"
at = "4 ft"
drive = "hand"`)
	if b := k.Blows[0]; b.Gate.Name != "Planer gate" || b.Why != control.HandShut || len(b.Out) != 0 {
		t.Errorf("gate %s, why %d, out %d", b.Gate.Name, b.Why, len(b.Out))
	}
	// a switch opens it before the machine runs
	_, k = hall(t, `senses = "contact"`, `senses = "hand switch"`)
	if b := k.Blows[0]; b.Why != control.OpenFirst {
		t.Errorf("opened by a switch: %d", b.Why)
	}
	if _, k = hall(t, "blower = true", "blower = false"); len(k.Blows) != 0 {
		t.Errorf("no blower: %d", len(k.Blows))
	}
}
