package checks_test

import (
	"strings"
	"testing"

	"dustbook/checks"
	"dustbook/plan/source"
)

// bagged makes the whole shop's collector an open bag at a place in the hall:
// the saw stands at [10, 5], the lathe at [20, 5], the exit is at [0, 5].
func bagged(at, rules string, more ...change) []change {
	return append([]change{{`enclosure = "rigid housing"`, `enclosure = "open bag"`}, {`at = [2, 10]`, `at = ` + at}, {`rules = "us"`, `rules = "` + rules + `"`}}, more...)
}

// confirm adds a confirmed figure to a shop.
func confirm(figure, value string) change {
	return change{"[[room]]\nname = \"Hall\"", "[[confirmed]]\nfigure = \"" + figure + "\"\nvalue = \"" + value + "\"\nby = \"fire marshal's letter of 2026-10-02\"\n[[room]]\nname = \"Hall\""}
}

func TestOpenBag(t *testing.T) {
	// 6 m are 19.685 ft; the saw stands 10 ft from the exit's wall
	wide := change{"outline = [[0, 0], [30, 0], [30, 20], [0, 20]]", "outline = [[0, 0], [30, 0], [30, 60], [0, 60]]"}
	large := change{"motor = { power = \"5 hp\" }", "motor = { power = \"5 hp\" }\nclaims = { flow = \"5200 cfm\", suction = \"13 inwg\" }"}
	sander := change{"kind = \"lathe\"", "kind = \"drum sander\""}
	for _, e := range []expected{
		{"met: a closed housing", nil, "open-bag-indoors", "Cyclone", checks.Met, checks.ByTopology, checks.Know, "rigid housing"},
		{"met: outside of every room", bagged("[-6, 10]", "quebec"), "open-bag-indoors", "Cyclone", checks.Met, checks.ByTopology, checks.Know, "outside every room"},
		{"met: far enough for the text read", bagged("[10, 24.7]", "quebec", wide), "open-bag-indoors", "Cyclone", checks.Met, checks.ByRule, checks.Know, "keeps the distance"},
		{"not met: a little nearer", bagged("[10, 24.6]", "quebec", wide), "open-bag-indoors", "Cyclone", checks.NotMet, checks.ByRule, checks.Mend, "from Saw, where the figure is 19.7"},
		{"not met: near the exit", bagged("[2, 10]", "quebec"), "open-bag-indoors", "Cyclone", checks.NotMet, checks.ByRule, checks.Mend, "5.4 ft from the exit of Hall"},
		{"not met: too large", bagged("[10, 25]", "quebec", wide, large), "open-bag-indoors", "Cyclone", checks.NotMet, checks.ByRule, checks.Mend, "moves up to 5200 cfm"},
		{"not met: a sander with feed", bagged("[10, 25]", "quebec", wide, sander), "open-bag-indoors", "Cyclone", checks.NotMet, checks.ByRule, checks.Mend, "it serves Lathe, and a text that was read bars"},
		{"asked: figures from memory", bagged("[10, 25]", "us", wide), "open-bag-indoors", "Cyclone", checks.Ask, checks.ByRule, checks.Know, "20 ft and 5000 cfm"},
		{"asked: figures from memory, and near", bagged("[2, 10]", "us"), "open-bag-indoors", "Cyclone", checks.Ask, checks.ByRule, checks.Mend, "5.4 ft from the exit of Hall, where the figure is 20 ft"},
		{"asked: no rules", bagged("[2, 10]", "none"), "open-bag-indoors", "Cyclone", checks.Ask, checks.ByRule, checks.Mend, "figure is 19.7 ft"},
		{"confirmed: met at the very distance", bagged("[10, 25]", "us", wide, confirm("open-bag-distance", "20 ft"), confirmedOf("open-bag-flow", "5000 cfm")), "open-bag-indoors", "Cyclone", checks.Met, checks.ByRule, checks.Know, "keeps the distance"},
		{"asked: only the distance is confirmed", bagged("[10, 25]", "us", wide, confirm("open-bag-distance", "20 ft")), "open-bag-indoors", "Cyclone", checks.Ask, checks.ByRule, checks.Know, "from memory"},
		{"asked: a sander, and which are barred is from memory", bagged("[10, 25]", "us", wide, change{"kind = \"lathe\"\nat = [20, 5]\nmakes = \"wood\"", "kind = \"disc sander\"\nat = [20, 5]"}, confirm("open-bag-distance", "20 ft"), confirmedOf("open-bag-flow", "5000 cfm")), "open-bag-indoors", "Cyclone", checks.Ask, checks.ByRule, checks.Know, "from memory"},
		{"confirmed: not met", bagged("[10, 24.9]", "us", wide, confirm("open-bag-distance", "20 ft")), "open-bag-indoors", "Cyclone", checks.NotMet, checks.ByRule, checks.Mend, "from Saw, where the figure is 20 ft"},
		{"confirmed: the other way round", bagged("[10, 15.1]", "quebec", wide, confirm("open-bag-distance", "10 ft")), "open-bag-indoors", "Cyclone", checks.Met, checks.ByRule, checks.Know, "10 ft"},
		{"missing: enclosure", []change{{"enclosure = \"rigid housing\"\n", ""}}, "open-bag-indoors", "Cyclone", checks.NotGiven, checks.ByTopology, checks.Know, "rigid housing or an open bag is not given"},
		{"missing: place", []change{{`enclosure = "rigid housing"`, "enclosure = \"open bag\"\nroom = \"Hall\""}, {"at = [2, 10]\n", ""}, {`rules = "us"`, `rules = "quebec"`}}, "open-bag-indoors", "Cyclone", checks.NotGiven, checks.ByRule, checks.Know, "Where in the room it stands is not given"},
		{"missing: room and place", []change{{`enclosure = "rigid housing"`, `enclosure = "open bag"`}, {"at = [2, 10]\n", ""}}, "open-bag-indoors", "Cyclone", checks.NotGiven, checks.ByTopology, checks.Know, "where it stands is not given"},
		{"missing: exits", bagged("[10, 25]", "quebec", wide, change{"exits = [[0, 5]]\n", ""}), "open-bag-indoors", "Cyclone", checks.NotGiven, checks.ByRule, checks.Know, "Where its room's exits are is not given"},
	} {
		t.Run(e.name, func(t *testing.T) { e.hold(t, checks.Run(planOf(t, e.changes...))) })
	}
}

// A confirmed figure stands in the finding as the owner's own, with who said
// so; a figure from memory keeps its mark.
func TestConfirmedFigureIsShown(t *testing.T) {
	f := only(t, checks.Run(planOf(t, bagged("[2, 10]", "us", confirm("open-bag-distance", "20 ft"))...)), "open-bag-indoors", "Cyclone")
	if f.Figures[0].Basis.Mark != source.Given || !strings.Contains(f.Figures[0].Basis.String(), "fire marshal's letter of 2026-10-02") {
		t.Errorf("confirmed: %+v", f.Figures[0])
	}
	f = only(t, checks.Run(planOf(t, bagged("[2, 10]", "us")...)), "open-bag-indoors", "Cyclone")
	if f.Figures[0].Basis.Mark != source.Memory || f.State == checks.NotMet {
		t.Errorf("from memory: %s, %+v", f.State, f.Figures[0])
	}
}

func TestSharedHose(t *testing.T) {
	both := []change{{`serves = ["Saw"]`, `serves = ["Saw", "Lathe"]`}, {`serves = ["Lathe"]`, ""}}
	use := change{"[[gate]]\nname = \"Saw gate\"", "[[use]]\nname = \"Two at once\"\nmachines = [\"Saw\", \"Lathe\"]\n[[gate]]\nname = \"Saw gate\""}
	for _, e := range []expected{
		{"met", both, "shared-hose", "Saw drop", checks.Met, checks.ByTopology, checks.Know, "asks for its hose once"},
		{"not met: a use asks twice", append(both, use), "shared-hose", "Saw drop", checks.NotMet, checks.ByTopology, checks.Mend, "asked for twice in Two at once"},
		{"not met: two ports of one machine", []change{{"makes = \"wood\"\nport = { size = \"4 in\", flow = \"400 cfm\" }\n[[machine]]", "makes = \"wood\"\nport = [{ name = \"a\", size = \"4 in\", flow = \"400 cfm\" }, { name = \"b\", size = \"4 in\", flow = \"100 cfm\" }]\n[[machine]]"},
			{`serves = ["Saw"]`, `serves = ["Saw/a", "Saw/b"]`}}, "shared-hose", "Saw drop", checks.NotMet, checks.ByTopology, checks.Mend, "asked for twice in Saw"},
	} {
		t.Run(e.name, func(t *testing.T) { e.hold(t, checks.Run(planOf(t, e.changes...))) })
	}
	expected{check: "shared-hose", about: "Saw drop", state: checks.NotMet, by: checks.ByTopology, weight: checks.Know, says: "The triggers Saw runs and Lathe runs answer for one hose"}.
		hold(t, checks.Run(drivenPlan(t, both...)))
	// two triggers of one machine ask for it once
	expected{check: "shared-hose", about: "Saw drop", state: checks.Met, by: checks.ByTopology, weight: checks.Know, says: "once"}.
		hold(t, checks.Run(drivenPlan(t, append(both, change{"machine = \"Lathe\"\nopens", "machine = \"Saw\"\nopens"})...)))
	if found := pick(checks.Run(planOf(t)), "shared-hose", ""); len(found) != 0 {
		t.Errorf("no hose is moved: %+v", found)
	}
}

func TestStopOnTheWayOut(t *testing.T) {
	for _, e := range []expected{
		{"met", nil, "stop-on-way-out", "Cyclone", checks.Met, checks.ByTopology, checks.Know, "placed by an exit"},
		{"met at the very distance", []change{{"at = [1, 6]", "at = [0, 14.8]"}}, "stop-on-way-out", "Cyclone", checks.Met, checks.ByTopology, checks.Know, "placed by an exit"},
		{"advice: a little farther", []change{{"at = [1, 6]", "at = [0, 14.9]"}}, "stop-on-way-out", "Cyclone", checks.Advice, checks.ByTopology, checks.Mend, "Stop by the door is 9.9 ft from the nearest exit of Hall"},
		{"advice: a machine in another room", []change{{"at = [20, 5]", "at = [40, 5]"}, {"outline = [[30, 0], [50, 0], [50, 20], [30, 20]]", "outline = [[30, 0], [50, 0], [50, 20], [30, 20]]\nexits = [[50, 5]]"}}, "stop-on-way-out", "Cyclone", checks.Advice, checks.ByTopology, checks.Mend, "exit of House"},
		{"missing: no stop for it", []change{{`stops = ["Cyclone"]`, `stops = ["Saw"]`}}, "stop-on-way-out", "Cyclone", checks.NotGiven, checks.ByTopology, checks.Mend, "No stop for it is placed"},
		{"missing: its place", []change{{"at = [1, 6]\n", ""}}, "stop-on-way-out", "Cyclone", checks.NotGiven, checks.ByTopology, checks.Know, "Where its stop stands"},
		{"missing: exits", []change{{"exits = [[0, 5]]\n", ""}}, "stop-on-way-out", "Cyclone", checks.NotGiven, checks.ByTopology, checks.Know, "Where the exits of Hall are"},
		{"missing: a machine's room", []change{{"at = [20, 5]", "at = [20, 45]"}}, "stop-on-way-out", "Cyclone", checks.NotGiven, checks.ByTopology, checks.Know, "Which room Lathe stands in"},
	} {
		t.Run(e.name, func(t *testing.T) { e.hold(t, checks.Run(planOf(t, e.changes...))) })
	}
}

func TestFineDustInABin(t *testing.T) {
	sander := change{"kind = \"lathe\"\nat = [20, 5]\nmakes = \"wood\"", "kind = \"disc sander\"\nat = [20, 5]"}
	bin := func(text string) change {
		return change{"bin = { size = \"30 gal\", material = \"steel\" }\nbonded = \"3 ohm\"", text}
	}
	bonded := func(ohms string) change { return change{`bonded = "3 ohm"`, `bonded = "` + ohms + `"`} }
	for _, e := range []expected{
		{"met", []change{sander}, "fine-dust-in-bin", "Cyclone", checks.Met, checks.ByRule, checks.Know, "conducts by what the file says"},
		{"met at the figure for metal", []change{sander, bonded("10 ohm")}, "fine-dust-in-bin", "Cyclone", checks.Met, checks.ByRule, checks.Know, "within the 10 ohm"},
		{"thin: a joint in doubt", []change{sander, bonded("10.1 ohm")}, "fine-dust-in-bin", "Cyclone", checks.Thin, checks.ByRule, checks.Know, "a joint is in doubt"},
		{"thin just below the figure for charge", []change{sander, bonded("0.99 Mohm")}, "fine-dust-in-bin", "Cyclone", checks.Thin, checks.ByRule, checks.Know, "charge drains"},
		{"not met at the figure for charge", []change{sander, bonded("1 Mohm")}, "fine-dust-in-bin", "Cyclone", checks.NotMet, checks.ByRule, checks.Mend, "charge stays on it"},
		{"not met: fifty times the figure", []change{sander, bonded("50 Mohm")}, "fine-dust-in-bin", "Cyclone", checks.NotMet, checks.ByRule, checks.Mend, "is 50 Mohm"},
		{"asked: other rules", []change{sander, bonded("50 Mohm"), {`rules = "us"`, `rules = "uk"`}}, "fine-dust-in-bin", "Cyclone", checks.Ask, checks.ByRule, checks.Mend, "texts that were read elsewhere"},
		{"advice: other rules, a good bond", []change{sander, {`rules = "us"`, `rules = "uk"`}}, "fine-dust-in-bin", "Cyclone", checks.Advice, checks.ByRule, checks.Know, "texts that were read elsewhere"},
		{"advice: a home", []change{sander, bonded("50 Mohm"), {`setting = "school"`, `setting = "home"`}}, "fine-dust-in-bin", "Cyclone", checks.Advice, checks.ByRule, checks.Mend, "charge stays on it"},
		{"thin: plastic", []change{sander, bin(`bin = { size = "5 gal", called = "pail", material = "plastic" }`)}, "fine-dust-in-bin", "Cyclone", checks.Thin, checks.ByTopology, checks.Mend, "a pail of plastic"},
		{"thin: plastic with a wire to earth", []change{sander, bin("bin = { size = \"5 gal\", material = \"plastic\" }\nbonded = \"3 ohm\"")}, "fine-dust-in-bin", "Cyclone", checks.Thin, checks.ByTopology, checks.Mend, "drains only what is near"},
		{"missing: the bond", []change{sander, bin(`bin = { size = "30 gal", material = "galvanized Steel" }`)}, "fine-dust-in-bin", "Cyclone", checks.NotGiven, checks.ByGiven, checks.Know, "resistance to earth is not given"},
		{"missing: material", []change{sander, bin(`bin = "30 gal"`)}, "fine-dust-in-bin", "Cyclone", checks.NotGiven, checks.ByGiven, checks.Know, "what that is made of is not given"},
	} {
		t.Run(e.name, func(t *testing.T) { e.hold(t, checks.Run(planOf(t, e.changes...))) })
	}
	for name, changes := range map[string][]change{"chips alone": {bin(`bin = { size = "5 gal", material = "plastic" }`)}, "no bin": {sander, bin("")}} {
		if found := pick(checks.Run(planOf(t, changes...)), "fine-dust-in-bin", ""); len(found) != 0 {
			t.Errorf("%s: %+v", name, found)
		}
	}
}
