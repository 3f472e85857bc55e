package timing

import (
	"testing"

	"dustbook/plan/unit"
)

// The run-on that holds a limit covers all gaps but the longest that are left:
// at it the limit holds, a moment below it no more.
func TestHold(t *testing.T) {
	times := []unit.Time{0, 10, 30, 60, 100} // gaps 10, 20, 30, 40
	for allowed, want := range map[int]unit.Time{1: 40, 2: 30, 3: 20, 4: 10, 5: 0, 9: 0} {
		hold, ok := Hold(times, allowed)
		if !ok || hold != want {
			t.Errorf("%d allowed: %v, want %v", allowed, hold, want)
		}
		if n := Counted(times, hold); n > allowed {
			t.Errorf("%d starts with a run-on of %v, %d allowed", n, hold, allowed)
		}
		if hold > 0 && Counted(times, hold-0.01) <= allowed {
			t.Errorf("less than %v would do for %d", hold, allowed)
		}
	}
	if _, ok := Hold(times, 0); ok {
		t.Error("a run-on with which no start is one")
	}
	if Counted(nil, 5) != 0 {
		t.Error("starts out of none")
	}
}

// One person works: the machine that starts most often fills the hour.
func TestBusiest(t *testing.T) {
	known := []string{"name = \"Lathe\"\nkind = \"lathe\"", "name = \"Lathe\"\nkind = \"lathe\"\nhours = 0.5\nstarts = 5"}
	_, r := yard(t, Air{}, known...)
	x := collector(t, r, "Cyclone").Starts
	// saw 4 in 2 h, planer 3 in 1 h, lathe 5 in half an hour: half an hour of the lathe, half of the planer
	if x.Asked != 6.5 || len(x.Machines) != 3 || x.Machines[0].Hour != 0 || x.Machines[1].Hour != 1.5 || x.Machines[2].Hour != 5 {
		t.Errorf("asked %v: %+v", x.Asked, x.Machines)
	}
	// three at once: everything that fits an hour
	_, r = yard(t, Air{}, append(known, "people_at_machines = 1", "people_at_machines = 3")...)
	if x := collector(t, r, "Cyclone").Starts; x.Asked != 10 {
		t.Errorf("asked %v, want 2 + 3 + 5", x.Asked)
	}
}

// The limit is 1.67 starts an hour by the table: both sides of every verdict.
func TestStartsVerdict(t *testing.T) {
	lathe := "name = \"Lathe\"\nkind = \"lathe\""
	few := []string{lathe, lathe + "\nhours = 1\nstarts = 1", "hours = 2\nstarts = 4", "hours = 2\nstarts = 2", "hours = 1\nstarts = 3", "hours = 1\nstarts = 1"}
	_, r := yard(t, Air{}, few...)
	x := collector(t, r, "Cyclone").Starts
	if x.Verdict != Within || x.Asked != 1 || x.Hold != 0 || !near(float64(x.Sure), 36*60, 0.002) || x.Limit.Rest != 80 {
		t.Errorf("one an hour: %+v", x)
	}
	// the lathe is silent: what is known of the others is over all the same
	_, r = yard(t, Air{})
	x = collector(t, r, "Cyclone").Starts
	if x.Verdict != Over || x.Asked != 3 || x.Counted != 3 || missing(x.Missing) != "Lathe machine.starts, Lathe machine.hours" {
		t.Errorf("three an hour: %+v", x)
	}
	// three starts, 20 min apart, one allowed: the run-on covers both gaps
	if !x.HoldKnown || x.Hold != 1200 || x.RunOn != 4 {
		t.Errorf("hold %v with a run-on of %v", x.Hold, x.RunOn)
	}
	// silent, and what is known is within: nothing can be said
	_, r = yard(t, Air{}, few[2:]...)
	if x := collector(t, r, "Cyclone").Starts; x.Verdict != StartsUnknown {
		t.Errorf("with the lathe silent: %+v", x)
	}
	// a run-on as long as the gaps, on every trigger, holds it
	long := append(few[:2:2], `run_on = "12 s"`, `run_on = "600 s"`, `run_on = "5 s"`, `run_on = "600 s"`, "name = \"Planer runs\"\n", "name = \"Planer runs\"\nrun_on = \"600 s\"\n", "hours = 1\nstarts = 3", "hours = 1\nstarts = 6")
	_, r = yard(t, Air{}, long...)
	if x := collector(t, r, "Cyclone").Starts; x.Verdict != Within || x.Counted != 1 || x.Asked != 6 || x.RunOn != 600 {
		t.Errorf("with a long run-on: %+v", x)
	}
	long[3] = `run_on = "599 s"`
	_, r = yard(t, Air{}, long...)
	if x := collector(t, r, "Cyclone").Starts; x.Verdict != Over || x.Counted != 6 || x.Hold != 600 {
		t.Errorf("with a run-on a second shorter: %+v", x)
	}
	// less than one an hour allowed: no run-on holds it
	_, r = yard(t, Air{}, `wheel_inertia = "2.1 lb ft2"`, `wheel_inertia = "4 lb ft2"`)
	if x := collector(t, r, "Cyclone").Starts; x.Verdict != Over || x.HoldKnown || !near(float64(x.Sure), 3600*4/3.5, 1e-5) {
		t.Errorf("with a heavy wheel: %+v", x)
	}
	// nobody's trigger starts the other
	if x := collector(t, r, "Bag unit").Starts; x.Verdict != ByHand || x.Limit.By != SinglePhase {
		t.Errorf("by hand: %+v", x)
	}
}
