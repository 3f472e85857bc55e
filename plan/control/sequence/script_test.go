package sequence

import (
	"strings"
	"testing"

	"dustbook/plan/control/trace"
)

// named finds a trigger, gate or stop button of a head by name.
func named(t *testing.T, h *trace.Head, name string) int {
	t.Helper()
	for i := range h.Triggers {
		if h.TriggerName(i) == name {
			return i
		}
	}
	for i := range h.Gates {
		if h.Gates[i].Name == name {
			return i
		}
	}
	t.Fatalf("nothing is named %q", name)
	return 0
}

// says holds a story against what was reckoned by hand.
func says(t *testing.T, tr *trace.Trace, want string) {
	t.Helper()
	got := told(tr)
	want = strings.ReplaceAll(strings.TrimLeft(want, "\n"), "\t", "")
	if got != want {
		t.Errorf("the story is\n%s\nwant\n%s", got, want)
	}
}

// One trigger of the example school. The zone gate takes 1.8 s and has a switch:
// 0.5 + 1.8 = 2.3 s. The planer's takes 1.8 s and arrives by time, half of it
// more as the least time-out of a drive: 0.5 + 2.7 = 3.2 s, which is more than
// the start delay. It goes off at 20.5 s; its run-on is 12 s: 32.5 s. The fan is
// taken to coast for 60 s: 92.5 s; then both gates shut in 1.8 s, the one without
// proof in 2.7 s.
func TestOneTrigger(t *testing.T) {
	w := school(t)
	says(t, One(w, Ample{}, named(t, w.Head, "Planer running")), `
		500 Planer running on
		500 Planer running: opens
		500 East zone gate opening
		500 Planer gate opening
		2300 East zone gate open
		3200 Planer gate open, not proven
		3200 Cyclone fan on
		3200 Planer running: served
		20500 Planer running off
		20500 Planer running: runs on
		32500 Planer running: idle
		32500 Cyclone fan coasting
		92500 Cyclone fan off
		92500 Planer gate shutting
		92500 East zone gate shutting
		94300 East zone gate shut
		95200 Planer gate shut, not proven
	`)
}

// Two triggers of one zone that overlap. The jointer's gate takes 1.5 s by time:
// 8.5 + 2.25 = 10.75 s, with the fan running already. The planer lets go at
// 20.5 s and its run-on ends at 32.5 s: its own gate shuts, the zone gate stays.
// The jointer goes off at 8.5 + 20 + 12 = 40.5 s; its run-on is the 7 s that it
// coasts itself.
func TestTwoTriggers(t *testing.T) {
	w := school(t)
	says(t, Two(w, Ample{}, named(t, w.Head, "Planer running"), named(t, w.Head, "Jointer running")), `
		500 Planer running on
		500 Planer running: opens
		500 East zone gate opening
		500 Planer gate opening
		2300 East zone gate open
		3200 Planer gate open, not proven
		3200 Cyclone fan on
		3200 Planer running: served
		8500 Jointer running on
		8500 Jointer running: opens
		8500 Jointer gate opening
		10750 Jointer gate open, not proven
		10750 Jointer running: served
		20500 Planer running off
		20500 Planer running: runs on
		32500 Planer running: idle
		32500 Planer gate shutting
		35200 Planer gate shut, not proven
		40500 Jointer running off
		40500 Jointer running: runs on
		47500 Jointer running: idle
		47500 Cyclone fan coasting
		107500 Cyclone fan off
		107500 Jointer gate shutting
		107500 East zone gate shutting
		109300 East zone gate shut
		109750 Jointer gate shut, not proven
	`)
}

// One gate moves at a time: the zone gate first, 1 s, then the saw's on the same
// way, 1 s, then the one that arrives by time, 1.5 s. The fan of 10 s and that of
// 20 s coast; the small one's gate shuts first, then the others, the zone last.
func TestOneAtATime(t *testing.T) {
	w := pair(t)
	says(t, Run(w, Ample{}, []Event{{0, trace.On, 0}, {10_000, trace.Off, 0}}), `
		0 Saw runs on
		0 Saw runs: opens
		0 Zone opening
		1000 Zone open
		1000 Saw below opening
		2000 Saw below open
		2000 Saw above opening
		3500 Saw above open, not proven
		3500 Big fan on
		3500 Small fan on
		3500 Saw runs: served
		10000 Saw runs off
		10000 Saw runs: runs on
		16000 Saw runs: idle
		16000 Big fan coasting
		16000 Small fan coasting
		26000 Small fan off
		26000 Saw above shutting
		27500 Saw above shut, not proven
		36000 Big fan off
		36000 Saw below shutting
		37000 Saw below shut
		37000 Zone shutting
		38000 Zone shut
	`)
}

// The power is cut while a machine runs, and comes back with it running: its
// fan stays off. Gates look for their stops once the fan is taken to stand, 60 s
// after the power came back; the machine goes off and on again, and only then is
// it served.
func TestPowerCut(t *testing.T) {
	w := pair(t)
	says(t, Run(w, Ample{}, []Event{
		{0, trace.On, 3}, {5_000, trace.PowerCut, 0}, {6_000, trace.PowerBack, 0},
		{7_000, trace.On, 1}, {12_000, trace.PowerCut, 0}, {13_000, trace.PowerBack, 0},
		{60_000, trace.Off, 1}, {61_000, trace.On, 1}, {64_000, trace.Confirmed, 3},
	}), `
		0 Switch on
		0 Switch: opens
		0 Saw above opening
		1500 Saw above open, not proven
		1500 Small fan on
		1500 Switch: served
		5000 power cut
		5000 Small fan coasting
		5000 Switch: idle
		6000 power back
		7000 Sander runs on
		7000 Sander runs: waits, homing
		7000 signal on
		12000 power cut
		12000 Sander runs: idle
		12000 signal off
		13000 power back
		13000 Sander runs: waits, seen off
		13000 signal on
		15000 Small fan off
		23000 Saw above homing
		24500 Saw above shut, not proven
		33000 Saw below homing
		34500 Saw below shut
		34500 Sander homing
		36000 Sander shut, not proven
		36000 Drill homing
		37500 Drill shut, not proven
		37500 Zone homing
		39000 Zone shut
		60000 Sander runs off
		60000 Sander runs: idle
		60000 signal off
		61000 Sander runs on
		61000 Sander runs: opens
		61000 Zone opening
		62000 Zone open
		62000 Sander opening
		63000 Sander between
		63000 Sander runs: waits, unseen
		63000 signal on
		64000 Sander confirmed
		64000 Sander open
		64000 Big fan on
		64000 Sander runs: served
		64000 signal off
	`)
}

// A zone gate that sticks has not reached its switch after 1.8 s and half as
// much again: the request waits with the signal, no fan starts, and the gate of
// the machine shuts again. Freed, it opens, and the request is served.
func TestGateSticks(t *testing.T) {
	w := school(t)
	zone, planer := named(t, w.Head, "East zone gate"), named(t, w.Head, "Planer running")
	says(t, Run(w, Ample{}, []Event{{0, trace.GateSticks, zone}, {1_000, trace.On, planer}, {10_000, trace.GateFreed, zone}}), `
		0 East zone gate sticks
		1000 Planer running on
		1000 Planer running: opens
		1000 East zone gate opening
		1000 Planer gate opening
		3700 East zone gate faulted
		3700 Planer gate open, not proven
		3700 Planer running: waits, faulty
		3700 Planer gate shutting
		3700 signal on
		6400 Planer gate shut, not proven
		10000 East zone gate freed
		10000 East zone gate between
		10000 Planer running: opens
		10000 East zone gate opening
		10000 Planer gate opening
		10000 signal off
		11800 East zone gate open
		12700 Planer gate open, not proven
		12700 Cyclone fan on
		12700 Planer running: served
	`)
}

// A closing is held where the planer's dust needs two branches, until the planer
// has run on itself; an opening waits where a fourth branch would leave three
// machines short, and comes when one of them has run on.
func TestAirHoldsGates(t *testing.T) {
	w := school(t)
	saw, planer, jointer, router := named(t, w.Head, "Saw running"), named(t, w.Head, "Planer running"), named(t, w.Head, "Jointer running"), named(t, w.Head, "Router running")
	held := told(Run(w, roughly(w.Head), []Event{{0, trace.On, saw}, {0, trace.On, planer}, {20_000, trace.Off, saw}, {50_000, trace.Off, planer}}))
	if !strings.Contains(held, "30000 Saw running: idle\n50000") {
		t.Errorf("the saw gate is not held for the planer's dust:\n%s", held)
	}
	waits := told(Run(w, roughly(w.Head), []Event{{0, trace.On, saw}, {0, trace.On, planer}, {0, trace.On, jointer}, {10_000, trace.On, router}, {20_000, trace.Off, saw}}))
	for _, line := range []string{"10000 Router running: waits, starves\n10000 signal on\n20000", "30000 Saw running: idle\n30000 Saw gate shutting\n"} {
		if !strings.Contains(waits, line) {
			t.Errorf("the story lacks %q:\n%s", line, waits)
		}
	}
}

// The fan of the school's test limit rests for 30 s: a machine that comes on
// again 5 s after the fan went off waits 25 s, its gates open.
func TestRest(t *testing.T) {
	w := school(t)
	saw := named(t, w.Head, "Saw running")
	got := told(Run(w, Ample{}, []Event{{0, trace.On, saw}, {10_000, trace.Off, saw}, {25_000, trace.On, saw}}))
	for _, line := range []string{"20000 Cyclone fan coasting", "25000 Saw running: waits, limit\n25000 signal on\n50000 Cyclone fan on\n50000 Saw running: served\n50000 signal off"} {
		if !strings.Contains(got, line) {
			t.Errorf("the story lacks %q:\n%s", line, got)
		}
	}
}

// A purge takes the turns one after the other, opens before it shuts, and
// yields to the first machine that comes on.
func TestPurge(t *testing.T) {
	w := school(t)
	purge, saw := named(t, w.Head, "Cyclone purge"), named(t, w.Head, "Saw running")
	got := told(Run(w, Ample{}, []Event{{0, trace.On, purge}, {25_000, trace.On, saw}}))
	for _, line := range []string{
		"2250 Cyclone fan on",
		"17250 East zone gate opening\n17250 Planer gate opening\n",
		"19950 Planer gate open, not proven\n19950 Saw gate shutting",
		"25000 Cyclone purge: runs on\n25000 Saw running: opens\n25000 Saw gate opening\n27250 Saw gate open, not proven\n27250 Saw running: served\n27250 Cyclone purge: idle\n27250 Planer gate shutting\n",
	} {
		if !strings.Contains(got, line) {
			t.Errorf("the story lacks %q:\n%s", line, got)
		}
	}
}
