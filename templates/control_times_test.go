package templates

import (
	"strings"
	"testing"
)

// yardFile is a shop whose triggers and fan have every time in the file.
const yardFile = "../plan/control/timing/testdata/yard.toml"

func holds(t *testing.T, b *Book, path string, wants, nots []string) {
	t.Helper()
	text := textOf(t, b, path)
	for _, want := range wants {
		if !strings.Contains(text, want) {
			t.Errorf("%s lacks %q:\n%s", path, want, text)
		}
	}
	for _, not := range nots {
		if strings.Contains(text, not) {
			t.Errorf("%s has %q:\n%s", path, not, text)
		}
	}
}

// The table of times: what is set, what it should be, how it stands and why.
func TestTimesOfTriggers(t *testing.T) {
	holds(t, changedBook(t, yardFile), "triggers.html", []string{
		"T1 Saw runs From trigger to fan 3.6 s 3.5 s or more met Until Saw gate is open.",
		"Run-on 12 s 9 s or more met So long its machine coasts.",
		"Threshold 1.5 A between 0.5 A and 3.06 A met It should let go at 1.05 A to 1.28 A.",
		"T2 Planer runs From trigger to fan not given 2.3 s or more not given Until Planer gate is open. Run-on not given 4 s or more not given The least of common practice.",
		"H1 Lathe switch From trigger to fan not given 2 s or more not given Until Zone gate is open. Run-on 5 s 4 s or more, as far as known not given How long it coasts is not given: Lathe.",
		"Shops commonly set a run-on of 5 to 15 s. A sensor lets a current last 0.1 to 0.3 s",
		"makes dust for 7.14 to 9.06 s before Cyclone draws in full. In that time its heaviest usual cut throws up to",
		"It is fed by two legs.", "A clamp meter reads so little poorly.", "around one conductor: two in one clamp cancel",
	}, []string{"Its run-on is not given", "two conductors in one clamp read too little", "Its speed can be set"})
	// a time that is set and wrong keeps its finding under its trigger
	holds(t, changedBook(t, yardFile, `start_delay = "3.6 s"`, `start_delay = "1 s"`, `no_load = "5.1 A"`, `no_load = "3 A"`), "triggers.html", []string{
		"From trigger to fan 1 s 3.5 s or more not met Until Saw gate is open.", "At 1 s the fan starts against a gate that still moves.", "two conductors in one clamp read too little"}, nil)
	// what is missing is named, a long way decides, a fast gate leaves it to practice
	holds(t, changedBook(t, yardFile, "travel = \"1 s\"\n", "", `length = "12 ft"`, `length = "400 ft"`, `travel = "2 s"`, `travel = "0.2 s"`), "triggers.html", []string{
		"From trigger to fan 3.6 s not known yet not given How long it takes to open is not given: Saw gate.",
		"T2 Planer runs From trigger to fan not given 1 s or more not given The least of common practice.",
		"Twice what chips take on the way;",
	}, nil)
	// what the readings say stands for a field that is left out, and a sensor lets go above standby
	holds(t, changedBook(t, yardFile, `standby = "0.2 A"`, `readings = [{ state = "standby", mean = "0.4 A", spread = "0.1 A" }]`, `threshold = "1.5 A"`, `threshold = "0.8 A"`), "triggers.html", []string{
		"With the spindle off 0.6 A, by the readings, their spread taken off Idling 5.1 A",
		"It should let go at 0.68 A or less, and stay above the 0.6 A that are drawn with the spindle off."}, []string{"With the spindle off not given", "It should let go at 0.5"})
	// a trigger that starts no fan has no times but its threshold
	holds(t, changedBook(t, yardFile, "starts = \"Cyclone\"\nstart_delay", "start_delay"), "triggers.html", []string{"T1 Saw runs Threshold 1.5 A between"}, []string{"From trigger to fan 3.6 s", "makes dust for 7"})
}

// A fan's run-up, coasting and starts on the sheet of its collector; what is
// not known has no fact there.
func TestTimesOfAFan(t *testing.T) {
	lathe := []string{"name = \"Lathe\"\nkind = \"lathe\"", "name = \"Lathe\"\nkind = \"lathe\"\nhours = 1\nstarts = 1"}
	b := changedBook(t, yardFile, lathe...)
	holds(t, b, "collector-cyclone.html", []string{
		"Run-up 3.44 to 5.16 s", "Coasting carries no more after 1.13 s, half speed after 5.16 s, turns for 41.7 s or longer: lock it out",
		"Starts an hour at most 1.67 (MG 10), with 80 s of rest between two", "Asked in the busiest hour 3.0 starts, spread evenly", "Let the fan run on for 30 min"}, nil)
	holds(t, b, "collector-bag-unit.html", nil, []string{"Run-up", "Coasting", "Starts an hour at", "Asked in the busiest hour"})
	b = changedBook(t, yardFile, `wheel_inertia = "2.1 lb ft2"`, "wheel_inertia = \"2.1 lb ft2\"\nstarts_per_hour = 6\nrun_up = \"4 s\"")
	holds(t, b, "collector-cyclone.html", []string{"Run-up 4 s by the file; 3.44 to 5.16 s by wheel and motor", "at most 6.00, as the file gives it"}, []string{"Asked in the busiest hour"})
}
