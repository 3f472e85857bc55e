package checks_test

import (
	"regexp"
	"strings"
	"testing"

	"dustbook/checks"
	"dustbook/plan/control/timing"
)

// expected is one finding that a shop with changes must raise.
type expected struct {
	name    string
	changes []change
	check   string
	about   string // the thing's name, empty for the shop
	state   checks.State
	by      checks.By
	weight  checks.Weight
	says    string // part of what it says
}

// claims that no finding makes.
var claims = regexp.MustCompile(`(?i)\b(compliant|exempt|safe)\b`)

// only finds the one finding of a check about a thing.
func only(t *testing.T, list []checks.Finding, check, about string) checks.Finding {
	t.Helper()
	var found []checks.Finding
	for _, f := range list {
		if f.Check == check && f.About == about {
			show(f)
			found = append(found, f)
		}
	}
	if len(found) != 1 {
		t.Fatalf("%d findings of %s about %q, want one: %+v", len(found), check, about, found)
	}
	return found[0]
}

func (e expected) hold(t *testing.T, list []checks.Finding) {
	t.Helper()
	f := only(t, list, e.check, e.about)
	if f.State != e.state || f.By != e.by || f.Weight != e.weight {
		t.Errorf("got %s by %s, %s; want %s by %s, %s\n%s", f.State, f.By, f.Weight, e.state, e.by, e.weight, f.Says)
	}
	if !strings.Contains(f.Says, e.says) {
		t.Errorf("says %q, want something with %q", f.Says, e.says)
	}
	if f.Do == "" || f.State == checks.Ask && f.Asks == "" {
		t.Errorf("no advice or no question: %+v", f)
	}
	if claims.MatchString(f.Says + f.Do + f.Asks) {
		t.Errorf("claims: %s %s", f.Says, f.Do)
	}
	if place.MatchString(f.Says + f.Do + f.Asks) {
		t.Errorf("a place is not filled: %s %s %s", f.Says, f.Do, f.Asks)
	}
}

// Pieces of the driven shop that tests replace.
const (
	sawOpens   = `opens = ["Saw gate", "Zone gate"]`
	latheOpens = `opens = ["Lathe gate", "Zone gate"]`
	sawGate    = "name = \"Saw gate\"\ndrive = \"powered\""
)

// secondFan is a collector of its own with a duct and a machine, to stand
// beside the first.
const secondFan = `[[machine]]
name = "Sander"
kind = "drum sander"
at = [25, 15]
restarts = false
blower = false
port = { size = "4 in", flow = "200 cfm" }
[[collector]]
name = "Bag"
at = [28, 15]
inlet = "4 in"
claims = { flow = "900 cfm", suction = "9 inwg" }
starter = "magnetic, three-wire"
exhaust = "outside"
enclosure = "rigid housing"
[[duct]]
name = "Sander drop"
to = "Bag"
size = "4 in"
route = [[25, 15, 3], [25, 15, 8], [28, 15, 8]]
serves = ["Sander"]
[control]
supply`

func TestTriggers(t *testing.T) {
	second := change{"[control]\nsupply", secondFan}
	for _, e := range []expected{
		{"path met", nil, "trigger-path", "Saw runs", checks.Met, checks.ByTopology, checks.Know, "Everything powered on the way from Saw to Cyclone is opened"},
		{"path: the zone gate forgotten", []change{{sawOpens, `opens = ["Saw gate"]`}}, "trigger-path", "Saw runs", checks.NotMet, checks.ByTopology, checks.Stop, "Zone gate on its way to Cyclone is powered"},
		{"path: its own gate forgotten", []change{{latheOpens, `opens = ["Zone gate"]`}}, "trigger-path", "Lathe runs", checks.NotMet, checks.ByTopology, checks.Stop, "Lathe gate on its way"},
		{"path: the other trigger is not touched by it", []change{{latheOpens, `opens = ["Zone gate"]`}}, "trigger-path", "Saw runs", checks.Met, checks.ByTopology, checks.Know, "is opened"},
		{"path: forgotten, but it starts nothing", []change{{latheOpens + "\nstarts = \"Cyclone\"", `opens = ["Zone gate"]`}}, "trigger-path", "Lathe runs", checks.NotMet, checks.ByTopology, checks.Mend, "Lathe gate on its way"},
		{"path: a gate by hand is said and is no stop", []change{{sawOpens, `opens = ["Zone gate"]`}, {sawGate, "name = \"Saw gate\"\ndrive = \"hand\""}}, "trigger-path", "Saw runs", checks.Met, checks.ByTopology, checks.Know, "Saw gate on the way is opened by hand"},
		{"path: drive not given", []change{{sawOpens, `opens = ["Zone gate"]`}, {sawGate, `name = "Saw gate"`}, {"  { device = \"Saw gate\", cable = \"8 ft\" },\n", ""}}, "trigger-path", "Saw runs", checks.NotGiven, checks.ByTopology, checks.Know, "moves by power or by hand is not given"},
		{"opens: drive not given", []change{{sawOpens, `opens = ["Zone gate"]`}, {sawGate, `name = "Saw gate"`}, {"  { device = \"Saw gate\", cable = \"8 ft\" },\n", ""}}, "trigger-opens", "Saw runs", checks.NotGiven, checks.ByTopology, checks.Know, "whether it opens enough"},
		{"devices: drive not given", []change{{sawOpens, `opens = ["Zone gate"]`}, {sawGate, `name = "Saw gate"`}, {"  { device = \"Saw gate\", cable = \"8 ft\" },\n", ""}}, "chain-devices", "", checks.NotGiven, checks.ByTopology, checks.Know, "what is powered has to be wired"},
		{"path: machine not given", []change{{"machine = \"Saw\"\n", ""}}, "trigger-path", "Saw runs", checks.NotGiven, checks.ByTopology, checks.Know, "machine it watches is not given"},
		{"path: collector not given", []change{{latheOpens + "\nstarts = \"Cyclone\"", latheOpens}}, "trigger-path", "Lathe runs", checks.NotGiven, checks.ByTopology, checks.Know, "which collector it starts is not given"},
		{"path: no duct serves it", []change{{`serves = ["Saw"]`, ""}}, "trigger-path", "Saw runs", checks.NotMet, checks.ByTopology, checks.Stop, "to which no duct of Saw leads"},
		{"path: another collector", []change{second, {latheOpens + "\nstarts = \"Cyclone\"", latheOpens + "\nstarts = \"Bag\""}}, "trigger-path", "Lathe runs", checks.NotMet, checks.ByTopology, checks.Stop, "It starts Bag, to which no duct of Lathe leads. Its air goes to Cyclone."},
		{"path: another collector, and a gate forgotten", []change{second, {latheOpens + "\nstarts = \"Cyclone\"", "opens = [\"Zone gate\"]\nstarts = \"Bag\""}}, "trigger-path", "Lathe runs", checks.NotMet, checks.ByTopology, checks.Stop, "Lathe gate on its way to Cyclone is powered"},
		{"path: one collector too many", []change{second, {latheOpens + "\nstarts = \"Cyclone\"", latheOpens + "\nstarts = [\"Cyclone\", \"Bag\"]"}}, "trigger-path", "Lathe runs", checks.NotMet, checks.ByTopology, checks.Stop, "It starts Bag"},
		{"path: a switch of no machine", []change{{"senses = \"contact\"\nmachine = \"Lathe\"", `senses = "hand switch"`}}, "trigger-path", "Lathe runs", checks.Met, checks.ByTopology, checks.Know, "When it is pressed"},
		{"path: a switch of no machine that opens one gate", []change{{"senses = \"contact\"\nmachine = \"Lathe\"", `senses = "hand switch"`}, {latheOpens, `opens = ["Zone gate"]`}}, "trigger-path", "Lathe runs", checks.NotMet, checks.ByTopology, checks.Stop, "No way to Cyclone is whole"},
		{"path: a switch of no machine and no collector", []change{{"senses = \"contact\"\nmachine = \"Lathe\"", `senses = "hand switch"`}, {latheOpens + "\nstarts = \"Cyclone\"", latheOpens}}, "trigger-path", "Lathe runs", checks.NotGiven, checks.ByTopology, checks.Know, "Neither the machine"},
		{"path: a switch on the wrong tree", []change{second, {"senses = \"contact\"\nmachine = \"Lathe\"", `senses = "hand switch"`}, {latheOpens + "\nstarts = \"Cyclone\"", latheOpens + "\nstarts = \"Bag\""}}, "trigger-path", "Lathe runs", checks.NotMet, checks.ByTopology, checks.Stop, "opens no gate on any way to it"},

		{"opens met", nil, "trigger-opens", "Saw runs", checks.Met, checks.ByTopology, checks.Know, "just what the use of Saw needs"},
		{"opens less", []change{{sawOpens, `opens = ["Saw gate"]`}}, "trigger-opens", "Saw runs", checks.NotMet, checks.ByTopology, checks.Mend, "less than the use of Saw needs: Zone gate stays shut"},
		{"opens more", []change{{sawOpens, `opens = ["Saw gate", "Zone gate", "Lathe gate"]`}}, "trigger-opens", "Saw runs", checks.NotMet, checks.ByTopology, checks.Know, "more than the use of Saw needs: Lathe gate"},
		{"opens its relief gate", []change{{sawOpens, `opens = ["Saw gate", "Zone gate", "Lathe gate"]`}, {"name = \"Saw\"\n", "name = \"Saw\"\nalso_open = [\"Lathe gate\"]\n"}}, "trigger-opens", "Saw runs", checks.Met, checks.ByTopology, checks.Know, "just what"},
		{"opens not its relief gate", []change{{"name = \"Saw\"\n", "name = \"Saw\"\nalso_open = [\"Lathe gate\"]\n"}}, "trigger-opens", "Saw runs", checks.NotMet, checks.ByTopology, checks.Mend, "does not open Lathe gate, which Saw wants open"},
		{"opens a gate by hand", []change{{sawGate, "name = \"Saw gate\"\ndrive = \"hand\""}}, "trigger-opens", "Saw runs", checks.NotMet, checks.ByTopology, checks.Mend, "Saw gate, which a person moves"},
		{"opens missing: machine", []change{{"machine = \"Saw\"\n", ""}}, "trigger-opens", "Saw runs", checks.NotGiven, checks.ByTopology, checks.Know, "machine it watches is not given"},

		{"threshold met", nil, "threshold", "Saw runs", checks.Met, checks.ByGiven, checks.Know, "lies between 0.1 A with the spindle off and 5.2 A idling"},
		{"threshold met at the lower margin", []change{{`threshold = "0.7 A"`, `threshold = "0.5 A"`}, {`standby = "0.1 A"`, `standby = "0.25 A"`}}, "threshold", "Saw runs", checks.Met, checks.ByGiven, checks.Know, "with the margins"},
		{"threshold under the lower margin", []change{{`threshold = "0.7 A"`, `threshold = "0.5 A"`}, {`standby = "0.1 A"`, `standby = "0.26 A"`}}, "threshold", "Saw runs", checks.Thin, checks.ByGiven, checks.Know, "little margin"},
		{"threshold met at the upper margin", []change{{`threshold = "0.7 A"`, `threshold = "3.12 A"`}}, "threshold", "Saw runs", checks.Met, checks.ByGiven, checks.Know, "with the margins"},
		{"threshold over the upper margin", []change{{`threshold = "0.7 A"`, `threshold = "3.13 A"`}}, "threshold", "Saw runs", checks.Thin, checks.ByGiven, checks.Know, "between 0.5 A and 3.12 A, best at 0.721 A"},
		{"threshold as high as the idle", []change{{`threshold = "0.7 A"`, `threshold = "5.2 A"`}}, "threshold", "Saw runs", checks.NotMet, checks.ByGiven, checks.Mend, "not under the 5.2 A"},
		{"threshold as low as the standby", []change{{`threshold = "0.7 A"`, `threshold = "0.1 A"`}, {`range = "0.5 A to 50 A"`, ""}}, "threshold", "Saw runs", checks.NotMet, checks.ByGiven, checks.Mend, "not over the 0.1 A"},
		{"threshold: less than three times apart", []change{{`standby = "0.1 A"`, `standby = "0.3 A"`}, {`no_load = "5.2 A"`, `no_load = "0.89 A"`}, {`threshold = "0.7 A"`, `threshold = "0.52 A"`}}, "threshold", "Saw runs", checks.Thin, checks.ByGiven, checks.Know, "less than 3 times apart"},
		{"threshold: three times apart", []change{{`standby = "0.1 A"`, `standby = "0.3 A"`}, {`no_load = "5.2 A"`, `no_load = "1 A"`}, {`threshold = "0.7 A"`, `threshold = "0.6 A"`}}, "threshold", "Saw runs", checks.Met, checks.ByGiven, checks.Know, "with the margins"},
		{"threshold refused: readings meet", []change{{`standby = "0.1 A"`, `readings = [{ state = "standby", mean = "0.4 A", spread = "0.1 A" }, { state = "no load", mean = "1 A", spread = "0.2 A" }]`}, {`no_load = "5.2 A"`, ""}}, "threshold", "Saw runs", checks.NotMet, checks.ByGiven, checks.Mend, "cannot be told apart"},
		{"threshold: readings just apart", []change{{`standby = "0.1 A"`, `readings = [{ state = "standby", mean = "0.4 A", spread = "0.1 A" }, { state = "no load", mean = "1 A", spread = "0.19 A" }]`}, {`no_load = "5.2 A"`, ""}, {`threshold = "0.7 A"`, `threshold = "0.61 A"`}}, "threshold", "Saw runs", checks.Thin, checks.ByGiven, checks.Know, "less than 3 times"},
		{"threshold: a reading of another state", []change{{`standby = "0.1 A"`, `standby = "0.1 A"
readings = [{ state = "cutting", mean = "12 A" }]`}}, "threshold", "Saw runs", checks.Met, checks.ByGiven, checks.Know, "1 of the readings is of another state"},
		{"threshold missing", []change{{`threshold = "0.7 A"`, ""}}, "threshold", "Saw runs", checks.NotGiven, checks.ByGiven, checks.Know, "Its threshold is not given. Common practice puts it between 0.5 A and 3.12 A, best at 0.721 A."},
		{"threshold missing: no load", []change{{"no_load = \"5.2 A\"\n", ""}, {"name = \"Saw\"\n", "name = \"Saw\"\namps = \"17 A\"\n"}}, "threshold", "Saw runs", checks.NotGiven, checks.ByGiven, checks.Know, "The current idling is not given. The nameplate's amps do not stand in for it"},
		{"threshold missing: both", []change{{"no_load = \"5.2 A\"\n", ""}, {"standby = \"0.1 A\"\n", ""}}, "threshold", "Saw runs", checks.NotGiven, checks.ByGiven, checks.Know, "with the spindle off and the current idling are not given"},
		{"threshold under the range", []change{{`range = "0.5 A to 50 A"`, `range = "0.71 A to 50 A"`}}, "threshold", "Saw runs", checks.NotMet, checks.ByGiven, checks.Mend, "sees 0.7 A where it has to act with 1 turn through it, and its range starts at 0.71 A"},
		{"threshold in the range by turns", []change{{`range = "0.5 A to 50 A"`, "range = \"0.71 A to 50 A\"\nturns = 2"}}, "threshold", "Saw runs", checks.Met, checks.ByGiven, checks.Know, "with the margins"},
		{"threshold over the range by turns", []change{{`range = "0.5 A to 50 A"`, "range = \"0.5 A to 50 A\"\nturns = 3"}, {"name = \"Saw\"\n", "name = \"Saw\"\namps = \"17 A\"\n"}}, "threshold", "Saw runs", checks.NotMet, checks.ByGiven, checks.Mend, "sees up to 51 A with 3 turns"},
		{"threshold at the end of the range", []change{{`range = "0.5 A to 50 A"`, "range = \"0.5 A to 51 A\"\nturns = 3"}, {"name = \"Saw\"\n", "name = \"Saw\"\namps = \"17 A\"\n"}}, "threshold", "Saw runs", checks.Met, checks.ByGiven, checks.Know, "with the margins"},
	} {
		t.Run(e.name, func(t *testing.T) { e.hold(t, checks.Run(drivenPlan(t, e.changes...))) })
	}
}

// A contact and a switch have no threshold.
func TestOnlyCurrentHasAThreshold(t *testing.T) {
	list := checks.Run(drivenPlan(t))
	if found := pick(list, "threshold", ""); len(found) != 1 {
		t.Errorf("%d findings on thresholds, want one: %+v", len(found), found)
	}
}

// Where a threshold is put by common practice: three pairs worked by hand,
// with the geometric mean; and a mean that the margins bound.
func TestThresholdBand(t *testing.T) {
	for _, c := range []struct{ off, on, low, best, high string }{
		{"0.05 A", "5.1 A", "0.1", "0.505", "3.06"},
		{"0.2 A", "2 A", "0.4", "0.632", "1.2"},
		{"0.02 A", "0.5 A", "0.04", "0.1", "0.3"},
		{"0.5 A", "1 A", "1", "0.6", "0.6"}, // the two margins cross: the upper one holds
	} {
		p := drivenPlan(t, change{`standby = "0.1 A"`, `standby = "` + c.off + `"`}, change{`no_load = "5.2 A"`, `no_load = "` + c.on + `"`})
		low, best, high := timing.SensedBy(p.Shop.Triggers[0]).Band()
		if got := amps(low) + " " + amps(best) + " " + amps(high); got != c.low+" "+c.best+" "+c.high {
			t.Errorf("%s and %s: %s, want %s %s %s", c.off, c.on, got, c.low, c.best, c.high)
		}
	}
}

func TestDrivenShopMeetsEverything(t *testing.T) {
	for _, f := range checks.Run(drivenPlan(t)) {
		if short(f) {
			t.Errorf("%s about %s: %s: %s", f.Check, f.About, f.State, f.Says)
		}
	}
}
