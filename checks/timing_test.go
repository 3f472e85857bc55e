package checks_test

import (
	"strings"
	"testing"

	"dustbook/checks"
	"dustbook/plan/unit"
)

// Pieces of the driven shop's times that tests replace. Its zone gate takes
// 1.5 s and every other gate 0.9 s, one after the other, by time: half as much
// again is 3.6 s.
const (
	sawDelay   = `start_delay = "4 s"`
	sawRunOn   = `run_on = "12 s"`
	sawTravel  = "travel = \"0.9 s\"\non = \"Saw drop\""
	sawUse     = "name = \"Saw\"\nblower = false\nrestarts = false\ncoast = \"6 s\"\nhours = 2\nstarts = 4\n"
	perHour    = "starts_per_hour = 6\n"
	threePhase = `motor = { power = "5 hp", phase = 3, poles = 2 }`
)

func sawWith(coast, starts string) change {
	return change{sawUse, "name = \"Saw\"\nblower = false\nrestarts = false\n" + coast + "hours = 2\n" + starts}
}

func TestStartDelay(t *testing.T) {
	for _, e := range []expected{
		{"met", nil, "start-delay", "Saw runs", checks.Met, checks.ByGiven, checks.Know, "At 4 s the fan waits for its gates. The slowest gate that opens with it, Saw gate, is open after 3.6 s. No switch proves that Zone gate and Saw gate are open"},
		{"met, just", []change{{sawDelay, `start_delay = "3.6 s"`}}, "start-delay", "Saw runs", checks.Met, checks.ByGiven, checks.Know, "waits for its gates"},
		{"not met, just", []change{{sawDelay, `start_delay = "3.59 s"`}}, "start-delay", "Saw runs", checks.NotMet, checks.ByGiven, checks.Mend, "against a gate that still moves"},
		{"met: two at once", []change{{sawDelay, `start_delay = "2.25 s"`}, {"moves_together = 1", "moves_together = 2"}}, "start-delay", "Saw runs", checks.Met, checks.ByGiven, checks.Know, "Zone gate, is open after 2.25 s"},
		{"advice: open, and sooner than practice", []change{{sawDelay, `start_delay = "0.95 s"`}, {`travel = "1.5 s"`, `travel = "0 s"`}, {sawTravel, strings.Replace(sawTravel, "0.9", "0.6", 1)}}, "start-delay", "Saw runs", checks.Advice, checks.ByGiven, checks.Know, "common practice waits 1 s"},
		{"missing: travel", []change{{sawTravel, `on = "Saw drop"`}}, "start-delay", "Saw runs", checks.NotGiven, checks.ByGiven, checks.Know, "How long Saw gate takes to open is not given."},
		{"missing: travel, and short for sure", []change{{sawTravel, `on = "Saw drop"`}, {sawDelay, `start_delay = "1.4 s"`}}, "start-delay", "Saw runs", checks.NotMet, checks.ByGiven, checks.Mend, "Zone gate, is open after 2.25 s"},
		{"missing: the delay", []change{{sawDelay + "\n", ""}}, "start-delay", "Saw runs", checks.NotGiven, checks.ByGiven, checks.Know, "the plan works with 3.6 s"},
		{"met by a switch: its travel alone", []change{{sawDelay, `start_delay = "2.85 s"`}, {"travel = \"1.5 s\"\n", "travel = \"1.5 s\"\nproves = \"switch\"\n"}}, "start-delay", "Saw runs", checks.Met, checks.ByGiven, checks.Know, "Saw gate, is open after 2.85 s"},
		{"not met by a switch, just", []change{{sawDelay, `start_delay = "2.84 s"`}, {"travel = \"1.5 s\"\n", "travel = \"1.5 s\"\nproves = \"switch\"\n"}}, "start-delay", "Saw runs", checks.NotMet, checks.ByGiven, checks.Mend, "against a gate that still moves"},
		{"a gate with a switch is proved", []change{{"travel = \"1.5 s\"\n", "travel = \"1.5 s\"\nproves = \"switch\"\n"}}, "start-delay", "Saw runs", checks.Met, checks.ByGiven, checks.Know, "No switch proves that Saw gate is open: it goes by time."},
	} {
		t.Run(e.name, func(t *testing.T) { e.hold(t, checks.Run(drivenPlan(t, e.changes...))) })
	}
	noFan := checks.Run(drivenPlan(t, change{sawOpens + "\nstarts = \"Cyclone\"\n", sawOpens + "\n"}))
	if found := append(pick(noFan, "start-delay", "Saw runs"), pick(noFan, "run-on", "Saw runs")...); len(found) != 0 {
		t.Errorf("a trigger that starts no fan: %+v", found)
	}
}

func TestRunOn(t *testing.T) {
	quick := sawWith("coast = \"1 s\"\n", "starts = 4\n")
	long := change{"route = [[10, 5, 2], [10, 5, 8], [10, 8, 8], [8, 10, 8]]\nserves = [\"Saw\"]", "length = \"300 ft\"\nserves = [\"Saw\"]"}
	for _, e := range []expected{
		{"met", nil, "run-on", "Saw runs", checks.Met, checks.ByModel, checks.Know, "At 12 s it is no less than 6 s. The coast of its machine decides that."},
		{"met, just the coast", []change{{sawRunOn, `run_on = "6 s"`}}, "run-on", "Saw runs", checks.Met, checks.ByModel, checks.Know, "no less than 6 s"},
		{"not met: less than the coast", []change{{sawRunOn, `run_on = "5.9 s"`}}, "run-on", "Saw runs", checks.NotMet, checks.ByGiven, checks.Mend, "the fan stops while Saw, which coasts 6 s"},
		{"met: the floor", []change{quick, {sawRunOn, `run_on = "4 s"`}}, "run-on", "Saw runs", checks.Met, checks.ByModel, checks.Know, "the least of common practice"},
		{"advice: less than the floor", []change{quick, {sawRunOn, `run_on = "3.9 s"`}}, "run-on", "Saw runs", checks.Advice, checks.ByModel, checks.Know, "it is less than 4 s"},
		{"a long duct decides", []change{quick, long, {sawRunOn, `run_on = "60 s"`}}, "run-on", "Saw runs", checks.Met, checks.ByModel, checks.Know, "twice what chips take from Saw/cabinet"},
		{"not met: not even the air", []change{quick, long, {sawRunOn, `run_on = "2 s"`}}, "run-on", "Saw runs", checks.NotMet, checks.ByModel, checks.Mend, "not even the air gets from Saw/cabinet"},
		{"missing: coast", []change{sawWith("", "starts = 4\n")}, "run-on", "Saw runs", checks.NotGiven, checks.ByGiven, checks.Know, "How long Saw coasts is not given."},
		{"missing: the run-on", []change{{sawRunOn + "\n", ""}}, "run-on", "Saw runs", checks.NotGiven, checks.ByGiven, checks.Know, "the plan works with 6 s. The coast of its machine decides that. Shops commonly set 5 to 15 s."},
		{"missing: air", []change{{`serves = ["Saw"]`, ""}}, "run-on", "Saw runs", checks.NotGiven, checks.ByGiven, checks.Know, "on the way from Saw/cabinet cannot be told"},
	} {
		t.Run(e.name, func(t *testing.T) { e.hold(t, checks.Run(drivenPlan(t, e.changes...))) })
	}
	// between fair and cautious: the figure's own limit and seven fifths of it
	f := only(t, checks.Run(drivenPlan(t, quick, long, change{sawRunOn, `run_on = "60 s"`})), "run-on", "Saw runs")
	fair := *f.Figures[0].Limit
	for share, state := range map[float64]checks.State{0.999: checks.Advice, 1.001: checks.Thin, 1.399: checks.Thin, 1.401: checks.Met} {
		set := change{sawRunOn, `run_on = "` + unit.Fixed(fair*share, 4) + ` s"`}
		if f := only(t, checks.Run(drivenPlan(t, quick, long, set)), "run-on", "Saw runs"); f.State != state {
			t.Errorf("%v of the least: %s: %s", share, f.State, f.Says)
		}
	}
}

func TestStartsPerHour(t *testing.T) {
	motor := `motor = { power = "5 hp" }`
	wheel := func(inertia string) []change {
		return []change{{perHour, "wheel_inertia = \"" + inertia + "\"\n"}, {motor, threePhase}}
	}
	for _, e := range []expected{
		{"met by the maker", nil, "starts-per-hour", "Cyclone", checks.Met, checks.ByGiven, checks.Know, "asks for 2.0 starts, spread evenly, and the motor may make 6.00"},
		{"met by the maker, just", []change{{perHour, "starts_per_hour = 2\n"}}, "starts-per-hour", "Cyclone", checks.Met, checks.ByGiven, checks.Know, "may make 2.00"},
		{"not met by the maker", []change{{perHour, "starts_per_hour = 1\n"}}, "starts-per-hour", "Cyclone", checks.NotMet, checks.ByGiven, checks.Mend, "asks for 2.0 starts"},
		{"met by the table", wheel("2 lb ft2"), "starts-per-hour", "Cyclone", checks.Met, checks.ByRule, checks.Know, "may make 2.85"},
		{"not met by the table", wheel("4 lb ft2"), "starts-per-hour", "Cyclone", checks.NotMet, checks.ByRule, checks.Mend, "may make 1.43"},
		{"not even one", wheel("6 lb ft2"), "starts-per-hour", "Cyclone", checks.NotMet, checks.ByRule, checks.Mend, "may make 0.95"},
		{"missing: the wheel", []change{{perHour, ""}, {motor, threePhase}}, "starts-per-hour", "Cyclone", checks.NotGiven, checks.ByGiven, checks.Know, "collector.wheel_inertia is not given"},
		{"missing: phase, poles and wheel", []change{{perHour, ""}}, "starts-per-hour", "Cyclone", checks.NotGiven, checks.ByGiven, checks.Know, "motor.phase, motor.poles and collector.wheel_inertia are not given"},
		{"missing: single phase", []change{{perHour, ""}, {motor, `motor = { power = "5 hp", phase = 1 }`}}, "starts-per-hour", "Cyclone", checks.NotGiven, checks.ByGiven, checks.Know, "It is single-phase, and no table speaks of those. By common practice a small capacitor-start motor makes 4 to 8;"},
		{"missing: off the table", []change{{perHour, "wheel_inertia = \"2 lb ft2\"\n"}, {motor, `motor = { power = "40 hp", phase = 3, poles = 2 }`}}, "starts-per-hour", "Cyclone", checks.NotGiven, checks.ByGiven, checks.Know, "none of its power and poles"},
		{"missing: the motor", []change{{perHour, ""}, {motor + "\n", ""}}, "starts-per-hour", "Cyclone", checks.NotGiven, checks.ByGiven, checks.Know, "Its motor is not given."},
		{"missing: starts", []change{sawWith("coast = \"6 s\"\n", "")}, "starts-per-hour", "Cyclone", checks.NotGiven, checks.ByGiven, checks.Know, "How often and how long Saw is used is not given"},
	} {
		t.Run(e.name, func(t *testing.T) { e.hold(t, checks.Run(drivenPlan(t, e.changes...))) })
	}
	// the run-on that would hold it, and where none would
	for inertia, do := range map[string]string{"4 lb ft2": "Let the fan run on for 30 min, or leave it on while people work. Whichever machine rests, that holds the limit while starts are spread evenly; 42.2 min hold it whatever anyone does", "6 lb ft2": "Start it once and leave it on"} {
		if f := only(t, checks.Run(drivenPlan(t, wheel(inertia)...)), "starts-per-hour", "Cyclone"); !strings.Contains(f.Do, do) {
			t.Errorf("%s: %s", inertia, f.Do)
		}
	}
	if found := pick(checks.Run(planOf(t)), "starts-per-hour", ""); len(found) != 0 {
		t.Errorf("a fan that is started by hand: %+v", found)
	}
}

func TestSensorLevels(t *testing.T) {
	eye := "senses = \"bin level\"\nhigh = \"80 %\"\n"
	for _, e := range []expected{
		{"met", nil, "sensor-levels", "Drum eye", checks.Met, checks.ByGiven, checks.Know, "is given"},
		{"met: very high alone", []change{{eye, "senses = \"bin level\"\nvery_high = \"80 %\"\n"}}, "sensor-levels", "Drum eye", checks.Met, checks.ByGiven, checks.Know, "is given"},
		{"missing: the bin", []change{{eye, "senses = \"bin level\"\n"}}, "sensor-levels", "Drum eye", checks.NotGiven, checks.ByGiven, checks.Know, "neither high nor very_high"},
		{"missing: the filter", []change{{eye, "senses = \"filter pressure\"\n"}}, "sensor-levels", "Drum eye", checks.NotGiven, checks.ByGiven, checks.Know, "neither high nor very_high"},
		{"met: the filter lights a signal, and holds nothing", []change{{eye, "senses = \"filter pressure\"\nhigh = \"2 inwg\"\n"}}, "sensor-levels", "Drum eye", checks.Met, checks.ByGiven, checks.Know, "keeps the fan from starting"},
		{"met: the filter holds", []change{{eye, "senses = \"filter pressure\"\nvery_high = \"3 inwg\"\n"}}, "sensor-levels", "Drum eye", checks.Met, checks.ByGiven, checks.Know, "is given"},
	} {
		t.Run(e.name, func(t *testing.T) { e.hold(t, checks.Run(drivenPlan(t, e.changes...))) })
	}
	for senses, do := range map[string]string{"bin level": "before the fan starts again", "filter pressure": "the pressure at which its maker", "air quality": "someone has to be told"} {
		if f := only(t, checks.Run(drivenPlan(t, change{eye, "senses = \"" + senses + "\"\n"})), "sensor-levels", "Drum eye"); !strings.Contains(f.Do, do) {
			t.Errorf("%s: %s", senses, f.Do)
		}
	}
	if found := pick(checks.Run(planOf(t)), "sensor-levels", ""); len(found) != 0 {
		t.Errorf("a shop without sensors: %+v", found)
	}
}

// The run-on that a met answer rests on is named, and the advice, done as it is
// printed, is enough: it is rounded up. The saw alone makes 8 starts an hour,
// 450 s apart, the lathe alone 26, and one person is at work.
func TestStartsRestOnTheRunOn(t *testing.T) {
	asks := func(runOn string, perHour string) checks.Finding {
		latheUse := strings.Replace(sawUse, "Saw", "Lathe", 1)
		lathe := change{latheUse, strings.Replace(latheUse, "hours = 2\nstarts = 4\n", "hours = 1\nstarts = 26\n", 1)}
		return only(t, checks.Run(drivenPlan(t, sawWith("coast = \"6 s\"\n", "starts = 16\n"), lathe, change{"starts_per_hour = 6\n", "starts_per_hour = " + perHour + "\n"},
			change{sawRunOn, `run_on = "` + runOn + `"`}, change{`run_on = "14 s"`, `run_on = "` + runOn + `"`})), "starts-per-hour", "Cyclone")
	}
	for _, row := range []struct {
		runOn, perHour string
		state          checks.State
		says, do       string
	}{
		{"140 s", "6", checks.NotMet, "An hour with Saw asks for 8.0 starts, spread evenly: at a run-on of 140 s the fan makes 8 of them, and the motor may make 6.00.", "Let the fan run on for 7.5 min, or leave it on while people work. Whichever machine rests, that holds the limit while starts are spread evenly; 10 min hold it whatever anyone does."},
		{"449 s", "6", checks.NotMet, "An hour with Saw asks", "for 7.5 min"},
		{"450 s", "6", checks.Met, "It rests on the run-on: the busiest hour asks for 26.0 starts, and the motor may make 6.00. At a run-on of 450 s no hour passes that, whichever machines rest, while starts are spread evenly. 10 min would hold the limit whatever anyone does.", "Keep the run-on at 450 s or more on every trigger of this fan"},
		{"600 s", "6", checks.Met, "at 600 s the fan starts no more than 6.00 times an hour, whatever anyone does", "Keep the run-on at 600 s or more"},
		// gaps of 138.46 s: 2.31 min would not do
		{"100 s", "8", checks.NotMet, "An hour with Lathe asks for 26.0 starts", "Let the fan run on for 2.4 min"},
		{"144 s", "8", checks.Met, "At a run-on of 144 s no hour passes that", "Keep the run-on at 144 s or more"},
		{"12 s", "26", checks.Met, "The busiest hour asks for 26.0 starts, spread evenly, and the motor may make 26.00.", "Count the starts"},
	} {
		if f := asks(row.runOn, row.perHour); f.State != row.state || !strings.Contains(f.Says, row.says) || !strings.Contains(f.Do, row.do) {
			t.Errorf("%s, %s an hour: %s\n%s\n%s", row.runOn, row.perHour, f.State, f.Says, f.Do)
		}
	}
}
