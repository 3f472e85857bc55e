package timing

import (
	"testing"

	"dustbook/plan/unit"
)

func moves(d Delay) string {
	text := ""
	for _, m := range d.Moves {
		text += m.Gate.Name + " " + unit.Short(float64(m.From)) + "-" + unit.Short(float64(m.Until)) + "; "
	}
	return text
}

// The zone gate's switch tells when it is open; the saw gate goes by time, and
// half its travel of 1 s is added. The zone gate moves first; one at a time the
// second waits for it, two at a time both go at once.
func TestDelayStagger(t *testing.T) {
	_, r := yard(t, Air{})
	d := trigger(t, r, "Saw runs").Delay
	if got := moves(d); got != "Zone gate 0-2; Saw gate 2-3.5; " || d.Least != 3.5 || d.Slowest.Name != "Saw gate" || d.Verdict != Enough || d.Used != 3.6 {
		t.Errorf("one at a time: %s %+v", got, d)
	}
	if len(d.Unproved) != 1 || d.Unproved[0].Name != "Saw gate" {
		t.Errorf("unproved: %v", d.Unproved)
	}
	_, r = yard(t, Air{}, "moves_together = 1", "moves_together = 2")
	d = trigger(t, r, "Saw runs").Delay
	if got := moves(d); got != "Zone gate 0-2; Saw gate 0-1.5; " || d.Least != 2 || d.Slowest.Name != "Zone gate" {
		t.Errorf("two at a time: %s %+v", got, d)
	}
	// of three gates on two movers the third follows the first that is free
	if d = trigger(t, r, "Planer runs").Delay; d.Verdict != NotSet || d.Used != 2 || d.Least != 2 {
		t.Errorf("planer: %+v", d)
	}
}

// Both sides of enough, the floor of practice, and what is missing.
func TestDelayVerdicts(t *testing.T) {
	for _, row := range []struct {
		name, of string
		changes  []string
		verdict  Verdict
		least    unit.Time
	}{
		{"just enough", "Saw runs", []string{`start_delay = "3.6 s"`, `start_delay = "3.5 s"`}, Enough, 3.5},
		{"just short", "Saw runs", []string{`start_delay = "3.6 s"`, `start_delay = "3.49 s"`}, Short, 3.5},
		{"not set", "Saw runs", []string{`start_delay = "3.6 s"`, ""}, NotSet, 3.5},
		{"a travel missing, enough for the rest", "Saw runs", []string{"travel = \"1 s\"\n", ""}, Unknown, 2},
		{"a travel missing, short for sure", "Saw runs", []string{"travel = \"1 s\"\n", "", `start_delay = "3.6 s"`, `start_delay = "1.9 s"`}, Short, 2},
		{"starts nothing", "Saw runs", []string{"starts = \"Cyclone\"\nstart_delay", "start_delay"}, NoFan, 3.5},
		{"fast gates", "Planer runs", []string{`travel = "2 s"`, `travel = "0.4 s"`}, NotSet, 1},
		{"gates by hand are not waited for", "Lathe switch", nil, NotSet, 2},
	} {
		_, r := yard(t, Air{}, row.changes...)
		d := trigger(t, r, row.of).Delay
		if d.Verdict != row.verdict || d.Least != row.least {
			t.Errorf("%s: %v, least %v; want %v, %v", row.name, d.Verdict, d.Least, row.verdict, row.least)
		}
		if (len(d.Missing) > 0) != (len(row.changes) > 1 && row.changes[0] == "travel = \"1 s\"\n") {
			t.Errorf("%s: missing %s", row.name, missing(d.Missing))
		}
	}
}

// Zone gates move first, in the order of the model of the run, and
// a gate that two ways share moves once.
func TestDelayOrder(t *testing.T) {
	_, r := yard(t, Air{}, "[[gate]]\nname = \"Saw gate\"", "[[gate]]\nname = \"Far zone gate\"\non = \"Trunk\"\nat = \"5 ft\"\ndrive = \"powered\"\ntravel = \"1 s\"\n[[gate]]\nname = \"Saw gate\"",
		`opens = ["Saw gate", "Zone gate"]`, `opens = ["Saw gate", "Zone gate", "Far zone gate"]`,
		`serves = ["Saw"]`, "serves = [\"Saw/cabinet\"]\n[[duct]]\nname = \"Guard drop\"\nto = \"Saw drop\"\njoins = \"0 ft\"\nsize = \"4 in\"\nlength = \"10 ft\"\nserves = [\"Saw/guard\"]",
		`port = { name = "cabinet", size = "4 in", flow = "350 cfm" }`, `port = [{ name = "cabinet", size = "4 in", flow = "350 cfm" }, { name = "guard", size = "4 in", flow = "100 cfm" }]`,
		`name = "Lathe drop"`+"\nto = \"Trunk\"", `name = "Lathe drop"`+"\nto = \"Trunk\"\njoins = \"0 ft\"", `name = "Planer drop"`+"\nto = \"Trunk\"", `name = "Planer drop"`+"\nto = \"Trunk\"\njoins = \"0 ft\"", `name = "Saw drop"`+"\nto = \"Trunk\"", `name = "Saw drop"`+"\nto = \"Trunk\"\njoins = \"0 ft\"")
	if got := moves(trigger(t, r, "Saw runs").Delay); got != "Zone gate 0-2; Far zone gate 2-3.5; Saw gate 3.5-5; " {
		t.Error(got)
	}
}

// What proves a gate open decides when it counts as open: a switch or a person
// its travel alone, time half as much again.
func TestArrival(t *testing.T) {
	for _, row := range []struct {
		proves string
		want   unit.Time
	}{{`proves = "time"`, 3.5}, {"", 3.5}, {`proves = "switch"`, 3}, {`proves = "person"`, 3}} {
		_, r := yard(t, Air{}, `proves = "time"`, row.proves)
		if d := trigger(t, r, "Saw runs").Delay; d.Open != row.want {
			t.Errorf("%q: open after %v, want %v", row.proves, d.Open, row.want)
		}
	}
}

// A gate that the machine wants opened as well is waited for, though the
// trigger does not name it; one that a person moves is not.
func TestDelayRelief(t *testing.T) {
	also := func(gate string) string { return "coast = \"9 s\"\nalso_open = [\"" + gate + "\"]" }
	for gate, want := range map[string]unit.Time{"Planer gate": 3.8, "Lathe gate": 3.5, "Saw gate": 3.5} {
		_, r := yard(t, Air{}, `coast = "9 s"`, also(gate))
		if d := trigger(t, r, "Saw runs").Delay; d.Open != want {
			t.Errorf("%s as well: open after %v, want %v", gate, d.Open, want)
		}
	}
}
