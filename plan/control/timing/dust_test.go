package timing

import (
	"testing"

	"dustbook/plan/control"
	"dustbook/plan/shop"
	"dustbook/plan/unit"
)

// The saw makes dust while its current settles, its gates open and the fan
// runs up: 0.1 to 0.3 s, 3.6 s and 3.4 to 5.2 s. Its cut throws 15 cm³ of
// solid wood a second.
func TestDust(t *testing.T) {
	s, _ := yard(t, Air{})
	r := Reckon(s, control.Reckon(s), Air{Chips: map[*shop.Machine]Chips{s.Machines[0]: {Solid: 15e-6, Loose: 60e-6}}})
	d := trigger(t, r, "Saw runs").Dust
	if d == nil || !d.Known() || d.Fan.Name != "Cyclone" || d.Delay != 3.6 || d.Debounce != DebounceOn() {
		t.Fatalf("got %+v", d)
	}
	if unit.Fixed(float64(d.Time.Least), 1) != "7.1" || unit.Fixed(float64(d.Time.Most), 1) != "9.1" {
		t.Errorf("%v", d.Time)
	}
	if !near(float64(d.Solid.Most), float64(d.Time.Most)*15e-6, 1e-5) || !near(float64(d.Loose.Least), float64(d.Time.Least)*60e-6, 1e-5) {
		t.Errorf("%v, %v", d.Solid, d.Loose)
	}
	// a contact is not waited for; no cut, no volume
	d = trigger(t, r, "Planer runs").Dust
	if d.Debounce != (Span{}) || d.Solid != (Bulk{}) || d.Delay != 2.3 {
		t.Errorf("planer: %+v", d)
	}
	// a switch is pressed before the machine
	if d := trigger(t, r, "Lathe switch").Dust; d != nil {
		t.Errorf("lathe: %+v", d)
	}
	// neither a run-up nor a wheel, and a delay that waits for a travel
	_, r = yard(t, Air{}, `wheel_inertia = "2.1 lb ft2"`, "", "travel = \"1 s\"\n", "", `start_delay = "3.6 s"`, "")
	d = trigger(t, r, "Saw runs").Dust
	if d.Known() || missing(d.Missing) != "Saw gate gate.travel, Cyclone collector.run_up" {
		t.Errorf("missing %s: %+v", missing(d.Missing), d)
	}
	_, r = yard(t, Air{}, "starts = \"Cyclone\"\nstart_delay", "start_delay")
	if d := trigger(t, r, "Saw runs").Dust; d != nil {
		t.Errorf("a trigger that starts nothing: %+v", d)
	}
}

// Of two fans that a trigger starts the slower one is waited for.
func TestDustOfTwoFans(t *testing.T) {
	bag := []string{"name = \"Bag unit\"\n", "name = \"Bag unit\"\nrun_up = \"1 s\"\n"}
	for _, starts := range []string{`["Cyclone", "Bag unit"]`, `["Bag unit", "Cyclone"]`} {
		_, r := yard(t, Air{}, append(bag, "starts = \"Cyclone\"\nstart_delay", "starts = "+starts+"\nstart_delay")...)
		if d := trigger(t, r, "Saw runs").Dust; d.Fan.Name != "Cyclone" || !d.Known() {
			t.Errorf("starts %s: waits for %s", starts, d.Fan.Name)
		}
	}
}
