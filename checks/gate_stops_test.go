package checks_test

import (
	"testing"

	"dustbook/checks"
)

// The stops of a powered gate: apart, in their order, and the bore clear. The
// tolerance of 2 mm is common practice, no source; the saw's drop is 5 in wide.
func TestGateStops(t *testing.T) {
	stops := func(open, shut string) change {
		return change{"open_stop = \"160 mm\"\nshut_stop = \"4 mm\"\ntravel = \"0.9 s\"\non = \"Saw drop\"", "open_stop = \"" + open + "\"\nshut_stop = \"" + shut + "\"\ntravel = \"0.9 s\"\non = \"Saw drop\""}
	}
	for _, e := range []expected{
		{"met", []change{stops("131 mm", "4 mm")}, "gate-stops", "Saw gate", checks.Met, checks.ByGiven, checks.Know, "opens to 131 mm"},
		{"met: in inches", []change{stops("5 1/8 in", "0.1 in")}, "gate-stops", "Saw gate", checks.Met, checks.ByGiven, checks.Know, "the whole bore"},
		{"met: within the tolerance", []change{stops("125.1 mm", "4 mm")}, "gate-stops", "Saw gate", checks.Met, checks.ByGiven, checks.Know, "the whole bore"},
		{"not met: just outside it", []change{stops("124.9 mm", "4 mm")}, "gate-stops", "Saw gate", checks.NotMet, checks.ByGiven, checks.Mend, "leaves the slide in the bore"},
		{"not met: shut beyond open", []change{stops("4 mm", "131 mm")}, "gate-stops", "Saw gate", checks.NotMet, checks.ByGiven, checks.Mend, "beyond its open stop"},
		{"not met: the same in other units", []change{stops("130 mm", "13 cm")}, "gate-stops", "Saw gate", checks.NotMet, checks.ByGiven, checks.Mend, "beyond its open stop"},
		{"not met: one mark twice", []change{stops("90 degrees", "90 degrees")}, "gate-stops", "Saw gate", checks.NotMet, checks.ByGiven, checks.Mend, "does not move"},
		{"met: counts may fall", []change{stops("900 counts", "2100 counts")}, "gate-stops", "Saw gate", checks.Met, checks.ByGiven, checks.Know, "which differ"},
		{"missing", []change{{"open_stop = \"160 mm\"\nshut_stop = \"4 mm\"\ntravel = \"0.9 s\"\non = \"Saw drop\"", "travel = \"0.9 s\"\non = \"Saw drop\""}}, "gate-stops", "", checks.NotGiven, checks.ByGiven, checks.Know, "The stops of"},
	} {
		t.Run(e.name, func(t *testing.T) { e.hold(t, checks.Run(drivenPlan(t, e.changes...))) })
	}
	if found := pick(checks.Run(planOf(t)), "gate-stops", ""); len(found) != 0 {
		t.Errorf("no gate moves by power: %+v", found)
	}
}
