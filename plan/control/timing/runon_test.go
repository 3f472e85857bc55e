package timing

import (
	"testing"

	"dustbook/plan/control"
	"dustbook/plan/unit"
)

// 36 m at 20 m/s: chips take 2.57 s at a fair speed and 3.6 s at a cautious
// one, twice that 5.14 s and 7.2 s.
func TestRunOn(t *testing.T) {
	saw := `coast = "9 s"`
	for _, row := range []struct {
		name, of        string
		changes         []string
		verdict         Verdict
		least, cautious string
	}{
		{"the saw's coast is longest", "Saw runs", nil, Enough, "9.00", "9.00"},
		{"just the coast", "Saw runs", []string{`run_on = "12 s"`, `run_on = "9 s"`}, Enough, "9.00", "9.00"},
		{"less than the coast", "Saw runs", []string{`run_on = "12 s"`, `run_on = "8.9 s"`}, Short, "9.00", "9.00"},
		{"the way is longest", "Saw runs", []string{saw, `coast = "1 s"`}, Enough, "5.14", "7.20"},
		{"between fair and cautious", "Saw runs", []string{saw, `coast = "1 s"`, `run_on = "12 s"`, `run_on = "6 s"`}, Between, "5.14", "7.20"},
		{"just cautious", "Saw runs", []string{saw, `coast = "1 s"`, `run_on = "12 s"`, `run_on = "7.2 s"`}, Enough, "5.14", "7.20"},
		{"less than fair", "Saw runs", []string{saw, `coast = "1 s"`, `run_on = "12 s"`, `run_on = "5.1 s"`}, Short, "5.14", "7.20"},
		{"not set", "Planer runs", nil, NotSet, "5.14", "7.20"},
		{"no coast given", "Saw runs", []string{saw, ""}, Unknown, "5.14", "7.20"},
		{"no coast given, short all the same", "Saw runs", []string{saw, "", `run_on = "12 s"`, `run_on = "5 s"`}, Short, "5.14", "7.20"},
		{"starts nothing", "Saw runs", []string{"starts = \"Cyclone\"\nstart_delay", "start_delay"}, NoFan, "9.00", "9.00"},
	} {
		_, r := blown(t, row.changes...)
		x := trigger(t, r, row.of).RunOn
		if x.Verdict != row.verdict || unit.Fixed(float64(x.Least), 2) != row.least || unit.Fixed(float64(x.Cautious), 2) != row.cautious {
			t.Errorf("%s: %v, %v and %v; want %v, %s and %s", row.name, x.Verdict, x.Least, x.Cautious, row.verdict, row.least, row.cautious)
		}
	}
	if usual := UsualRunOn(); usual != (Span{5, 15}) || !BasisOf("usual run-on least").Mark.Weak() {
		t.Errorf("usual: %v", usual)
	}
}

// The floor of practice stands for a short duct; air that no use could tell
// leaves the run-on open; of several uses the slowest counts.
func TestRunOnAir(t *testing.T) {
	s, _ := yard(t, Air{})
	k := control.Reckon(s)
	r := Reckon(s, k, blowing(s, 2, 20))
	if x := trigger(t, r, "Planer runs").RunOn; x.Least != 4 || x.Floor != 4 || x.Verdict != NotSet || x.Used != 4 {
		t.Errorf("a short duct: %+v", x)
	}
	r = Reckon(s, k, Air{})
	if x := trigger(t, r, "Planer runs").RunOn; x.Verdict != Unknown || len(x.Unsolved) != 1 || x.Transit != nil {
		t.Errorf("no air: %+v", x)
	}
	slow := blowing(s, 36, 10)
	air := blowing(s, 36, 20)
	for i := range slow.Paths {
		slow.Paths[i].Use = "both"
	}
	air.Paths = append(air.Paths, slow.Paths...)
	r = Reckon(s, k, air)
	if x := trigger(t, r, "Planer runs").RunOn; x.Transit.Path.Use != "both" || unit.Fixed(float64(x.Least), 2) != "10.29" {
		t.Errorf("two uses: %+v", x)
	}
	for i := range air.Paths {
		air.Paths[i].Known = air.Paths[i].Use != "both"
	}
	r = Reckon(s, k, air)
	if x := trigger(t, r, "Planer runs").RunOn; x.Transit.Path.Use == "both" || x.Verdict != NotSet {
		t.Errorf("one use off the curve: %+v", x)
	}
}

// Of a machine with two ports the one whose way takes longer counts, whichever
// stands first; a port whose air is not known leaves the rest open.
func TestRunOnOfTwoPorts(t *testing.T) {
	two := []string{`serves = ["Saw"]`, "serves = [\"Saw/cabinet\"]\n[[duct]]\nname = \"Guard drop\"\nto = \"Trunk\"\nsize = \"4 in\"\nlength = \"10 ft\"\nserves = [\"Saw/guard\"]",
		`port = { name = "cabinet", size = "4 in", flow = "350 cfm" }`, `port = [{ name = "cabinet", size = "4 in", flow = "350 cfm" }, { name = "guard", size = "4 in", flow = "100 cfm" }]`,
		`coast = "9 s"`, `coast = "1 s"`}
	s, _ := yard(t, Air{}, two...)
	for slow, want := range []string{"Saw/cabinet", "Saw/guard"} {
		air := blowing(s, 20, 20)
		air.Paths[slow].Legs[0].Length = 36
		x := trigger(t, Reckon(s, control.Reckon(s), air), "Saw runs").RunOn
		if got := x.Transit.Path.Port.Full(); got != want || unit.Fixed(float64(x.Least), 2) != "5.14" {
			t.Errorf("%s decides: %v", got, x.Least)
		}
		air.Paths[1-slow].Known = false
		x = trigger(t, Reckon(s, control.Reckon(s), air), "Saw runs").RunOn
		if x.Verdict != Unknown || len(x.Unsolved) != 1 || x.Least < 5 {
			t.Errorf("one of two: %+v", x)
		}
	}
}
