package checks_test

import (
	"regexp"
	"strings"
	"testing"

	"dustbook/checks"
	"dustbook/plan"
	"dustbook/plan/duct"
	"dustbook/plan/unit"
)

// Whole sentences, where one is chosen among several or speaks of several
// things.
func TestSentences(t *testing.T) {
	plasticHose := "serves = [\"Saw\"]\nhose = { length = \"3 ft\" }"
	latheSteel := "size = \"5 in\"\nmaterial = \"spiral steel\"\ngauge = \"24 ga\"\nroute = [[20, 5, 2]"
	sawSteel := "material = \"spiral steel\"\ngauge = \"24 ga\"\nroute = [[10, 5, 2], [10, 5, 8], [10, 8, 8], [8, 10, 8]]\nserves = [\"Saw\"]"
	open := change{`enclosure = "rigid housing"`, `enclosure = "open bag"`}
	grinder := change{"kind = \"lathe\"\nat = [20, 5]\nmakes = \"wood\"", "kind = \"bench grinder\"\nat = [20, 5]"}
	second := change{"[[collector]]", "[[machine]]\nname = \"Welder\"\nkind = \"other\"\nmakes = \"metal\"\nroom = \"Hall\"\nport = { size = \"4 in\", flow = \"100 cfm\" }\n[[collector]]"}
	serves := change{`serves = ["Lathe"]`, `serves = ["Lathe", "Welder"]`}
	zoneUnsaid := change{"name = \"Zone gate\"\non = \"Main\"\ndrive = \"powered\"", "name = \"Zone gate\"\non = \"Main\""}
	offChain := change{"  { device = \"Zone gate\", cable = \"12 ft\" },\n", ""}
	for _, c := range []struct {
		name         string
		plan         func(*testing.T, ...change) *plan.Plan
		changes      []change
		check, about string
		says, do     string // whole; empty where it is not looked at
	}{
		{"air, enough", planOf, nil, "air-captured", "Saw", "", "Nothing. Prove it with a gauge when the system runs."},
		{"air, off the curve", planOf, []change{{`["1200 cfm", "9 inwg"], ["1800 cfm", "3 inwg"]`, `["640 cfm", "11.9 inwg"]`}}, "air-captured", "Saw", "", `First do what the finding "Fan on its curve" says.`},
		{"air, a need of common practice", planOf, []change{{"kind = \"lathe\"\nat = [20, 5]\nmakes = \"wood\"\nport = { size = \"4 in\", flow = \"400 cfm\" }", "kind = \"other\"\nat = [20, 5]\nmakes = \"wood\""}}, "air-captured", "Lathe", "Lathe/port gets 799 cfm where it needs 350, filter due for change. Eight times of ten it is between 753 and 837 cfm. The need is common practice, without a source.", "Put the machine maker's own figure into the file: flow and flow_from."},
		{"dust, a wide hose", planOf, []change{{`serves = ["Saw"]`, "serves = [\"Saw\"]\nhose = { length = \"3 ft\", size = \"9 in\" }"}}, "dust-carried", "Saw", "The hose of Saw drop runs at 1570 of the 3940 fpm its dust needs, filter due for change: dust settles there. Eight times of ten it is between 1450 and 1680 fpm.", ""},
		{"fan, a hump", planOf, []change{{`["0 cfm", "13 inwg"], ["600 cfm", "12 inwg"], ["1200 cfm", "9 inwg"]`, `["0 cfm", "10 inwg"], ["500 cfm", "4 inwg"], ["560 cfm", "9 inwg"], ["1200 cfm", "8 inwg"]`}}, "fan-on-curve", "Cyclone", "", "Open another gate in such a use, so that the fan runs past the hump of its curve, or ask the maker where it surges."},
		{"conducting, the hose", planOf, []change{{`serves = ["Saw"]`, plasticHose}}, "conductive-duct", "Saw drop", "The hose's material is not given, so nobody can tell whether it conducts.", "Add material to the hose."},
		{"conducting, both", planOf, []change{{sawSteel, "route = [[10, 5, 2], [10, 5, 8], [10, 8, 8], [8, 10, 8]]\n" + plasticHose}}, "conductive-duct", "Saw drop", "The materials of duct and hose are not given, so nobody can tell whether they conduct.", "Add material to the duct and to its hose."},
		{"metal, two", planOf, []change{grinder, second, serves}, "metal-on-wood-main", "Cyclone", "Lathe and Welder make metal or sparks on a system that also carries wood (Saw). A spark that reaches the bin or the filter can set it alight.", "Take them off this system now: shut and lock their gates, and give them a collector of their own made for metal."},
		{"flue, no return", planOf, []change{{`exhaust = "outside"`, `exhaust = "returns to room"`}}, "open-flue", "Cyclone", "Which room gets the air back is not given.", "Add returns_to."},
		{"separation, no material", planOf, []change{{latheSteel, "size = \"5 in\"\nroute = [[20, 5, 2]"}, {"[20, 5, 8], [20, 10, 8]]\nserves = [\"Lathe\"]", "[35, 5, 8], [20, 10, 8]]\nserves = [\"Lathe\"]"}}, "garage-separation", "Lathe drop", "It crosses the wall between garage and dwelling, and its material is not given.", "Add material and gauge. Keep the whole system on one side of the wall, or ask the building official before anything is cut."},
		{"bag, no room is drawn", bare, nil, "open-bag-indoors", "Bag", "It has an open bag, and whether it stands indoors is not given.", "Add the rooms with their outlines, or room to the collector."},
		{"bag, no exits and no machine placed", planOf, []change{open, {`rules = "us"`, `rules = "quebec"`}, {"exits = [[0, 5]]\n", ""}, {"kind = \"table saw\"\nat = [10, 5]", "kind = \"table saw\"\nroom = \"Hall\""}, {"kind = \"lathe\"\nat = [20, 5]", "kind = \"lathe\"\nroom = \"Hall\""}}, "open-bag-indoors", "Cyclone", "Its open bag stands indoors. Neither where the machines of its room stand nor where its exits are is given.", "Add at to the machines and exits to the room."},
		{"bag, no machine placed", planOf, []change{open, {`rules = "us"`, `rules = "quebec"`}, {"at = [2, 10]", "at = [25, 10]"}, {"kind = \"table saw\"\nat = [10, 5]", "kind = \"table saw\"\nroom = \"Hall\""}, {"kind = \"lathe\"\nat = [20, 5]", "kind = \"lathe\"\nroom = \"Hall\""}}, "open-bag-indoors", "Cyclone", "Its open bag stands indoors. Where the machines of its room stand is not given.", "Add at to the machines."},
		{"threshold, no current off", drivenPlan, []change{{"standby = \"0.1 A\"\n", ""}}, "threshold", "Saw runs", "The current with the spindle off is not given.", "Read it with a clamp meter around one conductor and add standby, or readings. Whoever opens a box for it is a licensed electrician."},
		{"threshold, both", drivenPlan, []change{{"standby = \"0.1 A\"\n", ""}, {"no_load = \"5.2 A\"\n", ""}, {"name = \"Saw\"\n", "name = \"Saw\"\namps = \"17 A\"\n"}}, "threshold", "Saw runs", "The current with the spindle off and the current idling are not given. The nameplate's amps do not stand in for it: an idling motor draws less, and no rule tells how much less.", ""},
		{"threshold, too low", drivenPlan, []change{{`threshold = "0.7 A"`, `threshold = "0.1 A"`}, {"range = \"0.5 A to 50 A\"\n", ""}}, "threshold", "Saw runs", "At 0.1 A it is not over the 0.1 A that the machine draws with the spindle off: the fan would never stop.", "Set it higher. Common practice puts it between 0.2 A and 3.12 A, best at 0.721 A."},
		{"threshold, far under the range", drivenPlan, []change{{`range = "0.5 A to 50 A"`, `range = "40 A to 50 A"`}}, "threshold", "Saw runs", "The sensor sees 0.7 A where it has to act with 1 turn through it, and its range starts at 40 A.", "Use a sensor with a lower range, or a contact of the starter."},
		{"threshold, by turns", drivenPlan, []change{{`range = "0.5 A to 50 A"`, `range = "4 A to 50 A"`}}, "threshold", "Saw runs", "The sensor sees 0.7 A where it has to act with 1 turn through it, and its range starts at 4 A.", "Loop the conductor 7 times through the sensor, the power locked out, and put turns into the file. The top of the range falls by as much."},
		{"threshold, by the threshold alone", drivenPlan, []change{{`range = "0.5 A to 50 A"`, "range = \"1.5 A to 50 A\"\nturns = 2"}}, "threshold", "Saw runs", "The sensor sees 1.4 A where it has to act with 2 turns through it, and its range starts at 1.5 A.", "Set the threshold between 0.75 A and 3.12 A. The turns stay as they are. Prove it by switching the machine on and off five times."},
		{"threshold, one turn too many", drivenPlan, []change{{`range = "0.5 A to 50 A"`, "range = \"0.5 A to 50 A\"\nturns = 2"}, {"name = \"Saw\"\n", "name = \"Saw\"\namps = \"40 A\"\n"}}, "threshold", "Saw runs", "The sensor sees up to 80 A with 2 turns through it, and its range ends at 50 A.", "Take turns out until 1 goes through the sensor, the power locked out, and put turns into the file."},
		{"threshold, over the range with one turn", drivenPlan, []change{{`range = "0.5 A to 50 A"`, `range = "0.5 A to 5 A"`}}, "threshold", "Saw runs", "The sensor sees up to 5.2 A with 1 turn through it, and its range ends at 5 A.", "Use a sensor with a higher range, or a contact of the starter."},
		{"threshold, so low that it never lets go", drivenPlan, []change{{`threshold = "0.7 A"`, `threshold = "0.51 A"`}, {`standby = "0.1 A"`, `standby = "0.45 A"`}}, "threshold", "Saw runs", "At 0.51 A it lies between 0.45 A with the spindle off and 5.2 A idling, with little margin. Common practice puts it between 0.9 A and 3.12 A, best at 1.53 A. Sensors let go at 0.434 A or less, which is no more than the 0.45 A that stays with the spindle off: the fan may never stop.", "Move it into that range, and prove it by switching the machine on and off five times."},
		{"threshold, it lets go above standby", drivenPlan, []change{{`threshold = "0.7 A"`, `threshold = "0.6 A"`}, {`standby = "0.1 A"`, `standby = "0.45 A"`}}, "threshold", "Saw runs", "At 0.6 A it lies between 0.45 A with the spindle off and 5.2 A idling, with little margin. Common practice puts it between 0.9 A and 3.12 A, best at 1.53 A. Where the sensor lets go stays above 0.45 A, or the fan never stops.", "Move it into that range, and prove it by switching the machine on and off five times."},
		{"threshold, the sensor acts above practice", drivenPlan, []change{{`range = "0.5 A to 50 A"`, `range = "4 A to 50 A"`}, {`threshold = "0.7 A"`, `threshold = "4.5 A"`}}, "threshold", "Saw runs", "At 4.5 A it lies between 0.1 A with the spindle off and 5.2 A idling, with little margin. Common practice puts it between 0.2 A and 3.12 A; with 1 turn through it the sensor acts from 4 A to 50 A.", "Loop the conductor 3 times through the sensor, the power locked out, and put turns into the file. The top of the range falls by as much. Set the threshold between 1.33 A and 3.12 A."},
		{"threshold, two readings of another state", drivenPlan, []change{{`standby = "0.1 A"`, "standby = \"0.1 A\"\nreadings = [{ state = \"cutting\", mean = \"12 A\" }, { state = \"jammed\", mean = \"30 A\" }]"}}, "threshold", "Saw runs", "At 0.7 A it lies between 0.1 A with the spindle off and 5.2 A idling, with the margins of common practice. 2 of the readings are of another state and not used.", ""},
		{"path, two gates forgotten", drivenPlan, []change{{sawOpens, `opens = ["Lathe gate"]`}}, "trigger-path", "Saw runs", "Saw runs against a shut gate: Saw gate and Zone gate on its way to Cyclone are powered, and this trigger does not open them.", "Add Saw gate and Zone gate to opens, wire it so, and prove it with the machine running. Until then leave the machine off."},
		{"path, no duct and no collector", drivenPlan, []change{{`serves = ["Lathe"]`, ""}, {latheOpens + "\nstarts = \"Cyclone\"", latheOpens}}, "trigger-path", "Lathe runs", "No duct serves Lathe/scoop, so there is no path to open.", "Name the port in a duct's serves."},
		{"path, a switch and a gate of which nothing is said", drivenPlan, []change{{"senses = \"contact\"\nmachine = \"Lathe\"", `senses = "hand switch"`}, {sawOpens, `opens = ["Saw gate"]`}, {latheOpens, `opens = ["Lathe gate"]`}, zoneUnsaid, offChain}, "trigger-path", "Lathe runs", "Whether Zone gate on the way of Lathe/scoop moves by power or by hand is not given.", `Add drive = "powered" or "hand" to the gate.`},
		{"path, a second collector", drivenPlan, []change{{"[control]\nsupply", secondFan}, {"kind = \"lathe\"\nat = [20, 5]\nmakes = \"wood\"\nport = { size = \"4 in\", flow = \"400 cfm\" }", "kind = \"lathe\"\nat = [20, 5]\nport = [{ name = \"scoop\", size = \"4 in\" }, { name = \"rear\", size = \"4 in\" }]"}, {`serves = ["Lathe"]`, `serves = ["Lathe/scoop"]`}, {`serves = ["Sander"]`, `serves = ["Lathe/rear"]`}}, "trigger-path", "Lathe runs", "A duct of Lathe leads to Bag, which this trigger does not start.", "Add it to starts, or give that port another duct."},
		{"opens, a relief gate behind a shut one", drivenPlan, []change{{"[[gate]]\nname = \"Lathe gate\"", "[[gate]]\nname = \"Far gate\"\ndrive = \"powered\"\non = \"Lathe drop\"\nat = \"8 ft\"\n[[gate]]\nname = \"Lathe gate\""}, {"name = \"Saw\"\n", "name = \"Saw\"\nalso_open = [\"Lathe gate\"]\n"}, {sawOpens, `opens = ["Saw gate", "Zone gate", "Lathe gate"]`}}, "trigger-opens", "Saw runs", "Far gate stays shut between a relief gate and the collector, so the relief gate gives no air.", "Add Far gate to opens, or choose a relief gate nearer the collector."},
		{"chains, two loose", drivenPlan, []change{{"  { device = \"Saw runs\", cable = \"6 ft\" },\n", ""}, {"  { device = \"Drum eye\", cable = \"30 ft\" },\n", ""}}, "chain-devices", "", "Saw runs and Drum eye stand on no chain.", "Add each as a stop of a chain, with the length of cable from the stop before."},
		{"power, a relay that nothing holds", planOf, []change{{starter, `starter = "plug-in relay"`}, {"[[room]]\nname = \"Hall\"", "[control]\nafter_power_cut = \"starts by itself\"\n[[room]]\nname = \"Hall\""}}, "power-cut", "Cyclone", "Its plug-in relay closes again when the power comes back, and the control does not hold it off.", "Change the control so that it waits for a person, or have an electrician fit a magnetic starter with start and stop buttons. Until then open its disconnect at every power cut, before the power comes back."},
		{"power, a relay that the control holds", planOf, []change{{starter, `starter = "plug-in relay"`}, {"[[room]]\nname = \"Hall\"", "[control]\nafter_power_cut = \"waits for a person\"\n[[room]]\nname = \"Hall\""}}, "power-cut", "Cyclone", "By the file the control keeps it off when the power comes back.", "Prove it with everybody clear: run it, open the disconnect, let it stop, close it. It has to stay off."},
	} {
		t.Run(c.name, func(t *testing.T) {
			f := only(t, checks.Run(c.plan(t, c.changes...)), c.check, c.about)
			if c.says != "" && f.Says != c.says {
				t.Errorf("says\n%s\nwant\n%s", f.Says, c.says)
			}
			if c.do != "" && f.Do != c.do {
				t.Errorf("do\n%s\nwant\n%s", f.Do, c.do)
			}
		})
	}
}

// bare is a shop with one open bag and nothing else.
func bare(t *testing.T, changes ...change) *plan.Plan {
	t.Helper()
	return changed(t, "[shop]\nname = \"Bare\"\n[[collector]]\nname = \"Bag\"\nat = [2, 2]\ninlet = \"4 in\"\nenclosure = \"open bag\"\nclaims = { flow = \"900 cfm\", suction = \"9 inwg\" }\n", changes)
}

// Two appliances with open flues are both named, in the question too.
func TestEveryFlueIsNamed(t *testing.T) {
	f := only(t, checks.Run(planOf(t, change{"kind = \"electric\"\nroom = \"Hall\"", "kind = \"open-flue oil\"\nroom = \"Hall\"\n[[appliance]]\nkind = \"wood stove\"\nroom = \"Hall\""})), "open-flue", "Cyclone")
	flow := unit.Air.Print(unit.US, unit.Flow(f.Figures[0].Value))
	if want := "It takes up to " + flow + " out of the air that the open-flue oil appliance in Hall and the wood stove in Hall burn. A flue can turn and fill the room with carbon monoxide."; f.Says != want {
		t.Errorf("says %q, want %q", f.Says, want)
	}
	if want := "With Cyclone drawing up to " + flow + " out of the air of the open-flue oil appliance in Hall and the wood stove in Hall: does the flue still draw in the worst case, and how large must the opening for make-up air be?"; f.Asks != want {
		t.Errorf("asks %q, want %q", f.Asks, want)
	}
}

// What [[confirmed]] is to hold is said for a figure and for an answer.
func TestWants(t *testing.T) {
	for _, c := range checks.Find("open-bag-indoors").Confirms() {
		if want := "such as " + c.Kind.Example(); c.Wants() != want {
			t.Errorf("%s wants %q, want %q", c.ID, c.Wants(), want)
		}
	}
	for _, c := range checks.Find("open-flue").Confirms() {
		if c.Wants() != "the answer in words" {
			t.Errorf("%s wants %q", c.ID, c.Wants())
		}
	}
}

// Every flow at which a fan can settle is named, with what it is.
func TestCrossingsAreNamed(t *testing.T) {
	p := planOf(t, change{`["0 cfm", "13 inwg"], ["600 cfm", "12 inwg"], ["1200 cfm", "9 inwg"]`, `["0 cfm", "10 inwg"], ["500 cfm", "4 inwg"], ["560 cfm", "9 inwg"], ["1200 cfm", "8 inwg"]`})
	says := only(t, checks.Run(p), "fan-on-curve", "Cyclone").Says
	form := regexp.MustCompile(`^The fan can settle at several flows, and the stable one of least flow is reckoned with\. ((; )?(Saw|Lathe) \(filter (clean|due for change)\): [0-9]+ cfm \(stable\), [0-9]+ cfm \(unstable\), [0-9]+ cfm \(stable\))+\.$`)
	for _, u := range p.Air.Uses {
		for _, r := range u.Results {
			if several := len(r.Crossings) > 1 && len(u.Machines) > 0; several != strings.Contains(says, u.Name+" ("+map[string]string{duct.Clean: "filter clean", duct.ChangeOut: "filter due for change"}[r.Filter]+")") {
				t.Errorf("%s, %s filter: several crossings %v, says %q", u.Name, r.Filter, several, says)
			}
		}
	}
	if !form.MatchString(says) {
		t.Errorf("says %q", says)
	}
}

// A stop that no confirmation settles is settled by changing the shop alone.
func TestAcceptedStopWithoutConfirmation(t *testing.T) {
	p := drivenPlan(t, change{sawOpens, `opens = ["Saw gate"]`}, accepted("trigger-path", "Saw runs", ""))
	problems := checks.Problems(p)
	if len(problems) != 1 || problems[0].Do != "take the table out: a stop is settled by changing the shop" {
		t.Errorf("%v", problems)
	}
}
