package timing

import (
	"os"
	"testing"

	"dustbook/plan/control"
	"dustbook/plan/shop"
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
	// what the lathe does is not known: only what holds whatever anyone does is advised
	if !x.HoldKnown || x.Hold != x.Sure || x.RunOn != 4 {
		t.Errorf("hold %v with a run-on of %v", x.Hold, x.RunOn)
	}
	// silent, and what is known is within: nothing can be said
	_, r = yard(t, Air{}, few[2:]...)
	if x := collector(t, r, "Cyclone").Starts; x.Verdict != StartsUnknown {
		t.Errorf("with the lathe silent: %+v", x)
	}
	// six an hour by the maker: the planer has gaps of 200 s, the saw alone some of
	// 450 s: a run-on as long as those of the busiest hour fails when the planer rests
	wheel := `wheel_inertia = "2.1 lb ft2"`
	long := func(runOn string) []string {
		return append(few[:2:2], wheel, "starts_per_hour = 6", "hours = 2\nstarts = 4", "hours = 2\nstarts = 16", `run_on = "12 s"`, `run_on = "`+runOn+`"`, `run_on = "5 s"`, `run_on = "`+runOn+`"`, "name = \"Planer runs\"\n", "name = \"Planer runs\"\nrun_on = \""+runOn+"\"\n", "hours = 1\nstarts = 3", "hours = 1\nstarts = 18")
	}
	_, r = yard(t, Air{}, long("200 s")...)
	if x := collector(t, r, "Cyclone").Starts; x.Verdict != Over || x.Counted != 8 || x.Asked != 18 || len(x.Worst) != 1 || x.Worst[0].Name != "Saw" || x.WorstAsks != 8 || x.Hold != 450 {
		t.Errorf("with the gaps of the busiest hour: %+v", x)
	}
	_, r = yard(t, Air{}, long("199 s")...)
	if x := collector(t, r, "Cyclone").Starts; x.Verdict != Over || x.Counted != 18 || x.Worst[0].Name != "Planer" || x.Hold != 450 {
		t.Errorf("a second shorter: %+v", x)
	}
	_, r = yard(t, Air{}, long("450 s")...)
	if x := collector(t, r, "Cyclone").Starts; x.Verdict != Within || x.Counted != 1 || x.RunOn != 450 || x.IsSure() || x.Sure != 600 {
		t.Errorf("with the gaps of the quieter hour: %+v", x)
	}
	_, r = yard(t, Air{}, long("449 s")...)
	if x := collector(t, r, "Cyclone").Starts; x.Verdict != Over {
		t.Errorf("a second shorter than that: %+v", x)
	}
	// what holds whatever anyone does needs no starts of the lathe
	_, r = yard(t, Air{}, long("600 s")[2:]...)
	if x := collector(t, r, "Cyclone").Starts; x.Verdict != Within || !x.IsSure() || len(x.Missing) != 2 {
		t.Errorf("whatever anyone does: %+v", x)
	}
	_, r = yard(t, Air{}, long("599 s")[2:]...)
	if x := collector(t, r, "Cyclone").Starts; x.Verdict != StartsUnknown || x.IsSure() {
		t.Errorf("nearly so: %+v", x)
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

// The example school with the starts of every machine and a run-on of 200 s on
// every trigger: in the busiest hour one start finds the fan running from the
// last, and with the mitre saw at rest the gaps are longer than that. Neither
// is within, and what is advised is so, whether the mitre saw works or rests.
func TestSchoolWithAndWithoutItsMitreSaw(t *testing.T) {
	data, err := os.ReadFile("../../../content/example/school.toml")
	if err != nil {
		t.Fatal(err)
	}
	reckon := func(mitre int, runOn unit.Time) Starts {
		s, problems := shop.Read("shop.toml", data)
		if len(problems) > 0 {
			t.Fatal(problems)
		}
		for _, m := range s.Machines {
			if !m.Starts.Known() {
				m.Starts = shop.Field[int]{V: 1, How: shop.Stated}
			}
			if !m.Hours.Known() {
				m.Hours = shop.Field[float64]{V: 1, How: shop.Stated}
			}
			if m.Name == "Mitre saw" {
				m.Starts.V = mitre
			}
		}
		for _, tr := range s.Triggers {
			tr.RunOn = shop.Field[unit.Time]{V: runOn, How: shop.Stated}
		}
		return collector(t, Reckon(s, control.Reckon(s), Air{}), "Cyclone").Starts
	}
	with, without := reckon(20, 200), reckon(0, 200)
	if with.Verdict != Over || without.Verdict != Over || len(with.Missing)+len(without.Missing) > 0 {
		t.Fatalf("a run-on of 200 s: %v with the mitre saw, %v without", with.Verdict, without.Verdict)
	}
	if full := busiest(with.Machines, 3); Counted(full.times(), 200) != 1 {
		t.Errorf("%d starts in the busiest hour: it does not show the fault", Counted(full.times(), 200))
	}
	if with.Hold < without.Hold {
		t.Errorf("%v is advised with the mitre saw, and %v without it", with.Hold, without.Hold)
	}
	for _, mitre := range []int{20, 0} {
		if x := reckon(mitre, with.Hold); x.Verdict != Within {
			t.Errorf("mitre saw %d: the run-on advised is not within: %+v", mitre, x)
		}
		if x := reckon(mitre, without.Hold-1); x.Verdict != Over {
			t.Errorf("mitre saw %d: a second less than advised is: %+v", mitre, x)
		}
	}
}
