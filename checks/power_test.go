package checks_test

import (
	"strings"
	"testing"

	"dustbook/checks"
	"dustbook/plan/unit"
)

func amps(i unit.Current) string { return unit.Amps.Figure(unit.US, i) }

const starter = `starter = "magnetic, three-wire"`

func TestPowerCut(t *testing.T) {
	byItself := change{`after_power_cut = "waits for a person"`, `after_power_cut = "starts by itself"`}
	silent := change{"after_power_cut = \"waits for a person\"\n", ""}
	for _, e := range []expected{
		{"collector met: the control waits", nil, "power-cut", "Cyclone", checks.Met, checks.ByTopology, checks.Know, "until a trigger was seen off"},
		{"collector not met: the control starts it", []change{byItself}, "power-cut", "Cyclone", checks.NotMet, checks.ByTopology, checks.Mend, "The control starts it again by itself"},
		{"collector not met: a plain switch", []change{{starter, `starter = "switch"`}}, "power-cut", "Cyclone", checks.NotMet, checks.ByTopology, checks.Mend, "plain switch"},
		{"collector met: a relay that the control holds", []change{{starter, `starter = "two-wire relay"`}}, "power-cut", "Cyclone", checks.Met, checks.ByTopology, checks.Know, "the control keeps it off"},
		{"collector not met: a relay that the control does not hold", []change{{starter, `starter = "plug-in relay"`}, byItself}, "power-cut", "Cyclone", checks.NotMet, checks.ByTopology, checks.Mend, "starts it again by itself"},
		{"machine not met", []change{{"name = \"Saw\"\nblower = false\nrestarts = false", "name = \"Saw\"\nrestarts = true"}}, "power-cut", "Saw", checks.NotMet, checks.ByTopology, checks.Mend, "starts again by itself"},
		{"missing: what the control does", []change{silent}, "power-cut", "", checks.NotGiven, checks.ByGiven, checks.Know, "Not given: what the control does when the power comes back."},
		{"missing: all of it", []change{silent, {starter + "\n", ""}, {"name = \"Saw\"\nblower = false\nrestarts = false", `name = "Saw"`}}, "power-cut", "", checks.NotGiven, checks.ByGiven, checks.Know, "Not given: whether Saw comes back by itself, what switches Cyclone and what the control does"},
	} {
		t.Run(e.name, func(t *testing.T) { e.hold(t, checks.Run(drivenPlan(t, e.changes...))) })
	}
	// without a control half
	for _, e := range []expected{
		{"alone, met", nil, "power-cut", "Cyclone", checks.Met, checks.ByTopology, checks.Know, "drops out in a power cut and stays out"},
		{"alone, missing", []change{{starter + "\n", ""}}, "power-cut", "", checks.NotGiven, checks.ByGiven, checks.Know, "what switches Cyclone"},
		{"alone, a relay of which nothing else is said", []change{{starter, `starter = "plug-in relay"`}}, "power-cut", "", checks.NotGiven, checks.ByGiven, checks.Know, "what the control does"},
	} {
		t.Run(e.name, func(t *testing.T) { e.hold(t, checks.Run(planOf(t, e.changes...))) })
	}
}

// One finding for each that restarts, and one for all that is not given.
func TestPowerCutCounts(t *testing.T) {
	list := pick(checks.Run(drivenPlan(t, change{"name = \"Saw\"\nblower = false\nrestarts = false", `name = "Saw"`}, change{"name = \"Lathe\"\nblower = false\nrestarts = false", `name = "Lathe"`},
		change{`starter = "magnetic, three-wire"`, `starter = "switch"`})), "power-cut", "")
	if len(list) != 2 {
		t.Errorf("%d findings, want the switch and what is not given: %+v", len(list), list)
	}
	list = pick(checks.Run(drivenPlan(t)), "power-cut", "")
	if len(list) != 1 {
		t.Errorf("%d findings, want one: %+v", len(list), list)
	}
}

func TestBlowBack(t *testing.T) {
	saw := change{"name = \"Saw\"\nblower = false", "name = \"Saw\"\nblower = true"}
	for _, e := range []expected{
		{"met: its trigger opens the way", []change{saw}, "blow-back", "Saw", checks.Met, checks.ByTopology, checks.Know, "its own trigger opens Saw gate"},
		{"met: the time is said where it is given", []change{saw, {"travel = \"0.9 s\"\non = \"Saw drop\"", "travel = \"0.8 s\"\non = \"Saw drop\""}}, "blow-back", "Saw", checks.Met, checks.ByTopology, checks.Know, "Until the gate is open, 0.8 s or more,"},
		{"met: a switch opens it first", []change{saw, {"senses = \"current\"", "senses = \"hand switch\""}}, "blow-back", "Saw", checks.Met, checks.ByTopology, checks.Know, "a switch opens"},
		{"not met: the zone gate stays shut", []change{saw, {sawOpens, `opens = ["Saw gate"]`}}, "blow-back", "Saw", checks.NotMet, checks.ByTopology, checks.Mend, "Zone gate can be shut while it runs"},
		{"not met: where it comes out", []change{saw, {sawOpens, `opens = ["Saw gate"]`}}, "blow-back", "Saw", checks.NotMet, checks.ByTopology, checks.Mend, "where a gate is open at Lathe/scoop"},
		{"not met: its own gate, nothing joins before it", []change{saw, {sawOpens, `opens = ["Zone gate"]`}}, "blow-back", "Saw", checks.NotMet, checks.ByTopology, checks.Mend, "Its air could come out at the machine itself."},
		{"not met: a gate by hand", []change{saw, {sawOpens, `opens = ["Zone gate"]`}, {sawGate, "name = \"Saw gate\"\ndrive = \"hand\""}}, "blow-back", "Saw", checks.NotMet, checks.ByTopology, checks.Know, "a person opens it"},
		{"missing: drive", []change{saw, {sawOpens, `opens = ["Zone gate"]`}, {sawGate, `name = "Saw gate"`}, {"  { device = \"Saw gate\", cable = \"8 ft\" },\n", ""}}, "blow-back", "Saw", checks.NotGiven, checks.ByTopology, checks.Know, "what moves Saw gate is not given"},
		{"missing: blower", []change{{"name = \"Saw\"\nblower = false", `name = "Saw"`}, {`kind = "table saw"`, `kind = "planer"`}}, "blow-back", "", checks.NotGiven, checks.ByGiven, checks.Know, "Whether Saw has a blower of its own is not given"},
	} {
		t.Run(e.name, func(t *testing.T) { e.hold(t, checks.Run(drivenPlan(t, e.changes...))) })
	}
	if found := pick(checks.Run(drivenPlan(t)), "blow-back", ""); len(found) != 0 {
		t.Errorf("no machine blows: %+v", found)
	}
	if found := pick(checks.Run(drivenPlan(t, change{"name = \"Saw\"\nblower = false", `name = "Saw"`})), "blow-back", ""); len(found) != 0 {
		t.Errorf("a saw that throws no chips is asked about a blower: %+v", found)
	}
	// without gates on its way, and where nothing is known of a shop by hand
	noGate := []change{{"[[gate]]\nname = \"Saw gate\"\non = \"Saw drop\"\nat = \"4 ft\"\n", ""}, {"name = \"Saw\"\n", "name = \"Saw\"\nblower = true\n"}}
	expected{check: "blow-back", about: "Saw", state: checks.Met, by: checks.ByTopology, weight: checks.Know, says: "no gate stands in the way"}.hold(t, checks.Run(planOf(t, noGate...)))
	if found := pick(checks.Run(planOf(t)), "blow-back", ""); len(found) != 0 {
		t.Errorf("a shop without a control half is asked about blowers: %+v", found)
	}
}

func TestChainDevices(t *testing.T) {
	chain := "[[chain]]\nname = \"Chain\"\ncable = \"18 AWG\"\nstops = ["
	other := change{chain, "[[chain]]\nname = \"Other\"\ncable = \"18 AWG\"\nstops = [{ device = \"Zone gate\", cable = \"4 ft\" }]\n" + chain}
	stops := "  { device = \"Saw runs\", cable = \"6 ft\" },\n  { device = \"Saw gate\", cable = \"8 ft\" },\n  { device = \"Zone gate\", cable = \"12 ft\" },\n  { device = \"Lathe gate\", cable = \"20 ft\" },\n  { device = \"Lathe runs\", cable = \"6 ft\" },\n  { device = \"Drum eye\", cable = \"30 ft\" },\n]"
	for _, e := range []expected{
		{"met", nil, "chain-devices", "", checks.Met, checks.ByTopology, checks.Know, "on one chain, once"},
		{"not met: on two chains", []change{other}, "chain-devices", "Zone gate", checks.NotMet, checks.ByTopology, checks.Mend, "Z1 stands on Other and Chain"},
		{"not met: twice on one", []change{{"  { device = \"Drum eye\"", "  { device = \"Zone gate\", cable = \"2 ft\" },\n  { device = \"Drum eye\""}}, "chain-devices", "Zone gate", checks.NotMet, checks.ByTopology, checks.Mend, "stands twice on Chain"},
		{"not met: a gate by hand on a chain", []change{{sawGate, "name = \"Saw gate\"\ndrive = \"hand\""}}, "chain-devices", "Saw gate", checks.NotMet, checks.ByTopology, checks.Know, "nothing to wire"},
		{"missing: a gate on none", []change{{"  { device = \"Saw gate\", cable = \"8 ft\" },\n", ""}}, "chain-devices", "", checks.NotGiven, checks.ByTopology, checks.Know, "Saw gate stands on no chain."},
		{"missing: a trigger and a sensor on none", []change{{"  { device = \"Saw runs\", cable = \"6 ft\" },\n", ""}, {"  { device = \"Drum eye\", cable = \"30 ft\" },\n", ""}}, "chain-devices", "", checks.NotGiven, checks.ByTopology, checks.Know, "Saw runs and Drum eye stand on no chain."},
		{"missing: no chain at all", []change{{chain + "\n" + stops, ""}}, "chain-devices", "", checks.NotGiven, checks.ByTopology, checks.Know, "No chain is given"},
	} {
		t.Run(e.name, func(t *testing.T) { e.hold(t, checks.Run(drivenPlan(t, e.changes...))) })
	}
	if found := pick(checks.Run(planOf(t)), "chain-devices", ""); len(found) != 0 {
		t.Errorf("nothing to wire: %+v", found)
	}
	// a device on two chains does not count as met beside
	if found := pick(checks.Run(drivenPlan(t, other)), "chain-devices", ""); len(found) != 1 || strings.Contains(found[0].Says, "once") {
		t.Errorf("%+v", found)
	}
}
