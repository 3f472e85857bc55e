package checks_test

import "dustbook/checks"

// boxOf gives the shop a control box of a type.
func boxOf(of string) []change {
	return []change{{"[[stop]]", "[control]\nenclosure_type = \"" + of + "\"\n[[stop]]"}}
}

// spaceOf gives the shop a free depth before its panel, and the fan its volts.
func spaceOf(depth, volts string) []change {
	return []change{
		{"[[stop]]", "[control]\nworking_space = \"" + depth + "\"\n[[stop]]"},
		{`motor = { power = "5 hp" }`, `motor = { power = "5 hp", volts = "` + volts + `", phase = 3 }`},
	}
}

// electricalStates are shops and what the checks of this family find in them.
var electricalStates = []stateCase{
	{"box met", boxOf("12"), "control-box", "", checks.Met, checks.ByRule, checks.Know, "is no listing for places with combustible dust"},
	{"box met: the label's words", boxOf("NEMA type 4x"), "control-box", "", checks.Met, checks.ByRule, checks.Know, "keep out dust that circulates"},
	{"box met: two types", boxOf("3R/12"), "control-box", "", checks.Met, checks.ByRule, checks.Know, "keep out dust that circulates"},
	{"box thin: settling dust only", boxOf("5"), "control-box", "", checks.Thin, checks.ByRule, checks.Know, "not dust that circulates"},
	{"box not met", boxOf("type 1"), "control-box", "", checks.NotMet, checks.ByRule, checks.Mend, "neither"},
	{"box asked: no type of the table", boxOf("3R"), "control-box", "", checks.Ask, checks.ByRule, checks.Know, "given as 3R"},
	{"box asked: another system", boxOf("IP 5 4"), "control-box", "", checks.Ask, checks.ByRule, checks.Know, "given as IP 5 4"},
	{"box asked: no rules", append(boxOf("1"), change{`rules = "us"`, `rules = "none"`}), "control-box", "", checks.Ask, checks.ByRule, checks.Know, "another place"},
	{"box missing", []change{{"[[stop]]", "[control]\nsupply = \"24 V\"\n[[stop]]"}}, "control-box", "", checks.NotGiven, checks.ByGiven, checks.Know, "type of the control box is not given"},

	{"space met at the figure", spaceOf("3 ft", "230 V"), "panel-space", "", checks.Met, checks.ByRule, checks.Know, "3 ft are free before the panel"},
	{"space not met just under it", spaceOf("2.9 ft", "230 V"), "panel-space", "", checks.NotMet, checks.ByRule, checks.Mend, "3 ft are the least"},
	{"space asked: high volts", spaceOf("3.9 ft", "460 V"), "panel-space", "", checks.Ask, checks.ByRule, checks.Know, "up to 4 ft"},
	{"space met at high volts", spaceOf("4 ft", "460 V"), "panel-space", "", checks.Met, checks.ByRule, checks.Know, "4 ft are asked"},
	{"space not met at high volts", spaceOf("2.9 ft", "460 V"), "panel-space", "", checks.NotMet, checks.ByRule, checks.Mend, "3 ft are the least"},
	{"space met at the end of low volts", spaceOf("3 ft", "250 V"), "panel-space", "", checks.Met, checks.ByRule, checks.Know, "3 ft are asked"},
	{"space asked just over low volts", spaceOf("3 ft", "251 V"), "panel-space", "", checks.Ask, checks.ByRule, checks.Know, "feeds motors of 251 V"},
	{"space missing: the volts", []change{{"[[stop]]", "[control]\nworking_space = \"3.5 ft\"\n[[stop]]"}}, "panel-space", "", checks.NotGiven, checks.ByGiven, checks.Know, "the volts of no motor are given"},
	{"space met whatever the volts", []change{{"[[stop]]", "[control]\nworking_space = \"4 ft\"\n[[stop]]"}}, "panel-space", "", checks.Met, checks.ByRule, checks.Know, "4 ft are free before the panel"},
	{"space missing", circuitWith("40 A", "8 AWG"), "panel-space", "", checks.NotGiven, checks.ByGiven, checks.Know, "is not given"},
}

// electricalRules are the figures that the checks of this family compare with.
var electricalRules = []ruleCase{
	{figure: "motor-circuit", check: "motor-circuit", about: "Cyclone", kept: circuitWith("40 A", "8 AWG"), broken: circuitWith("40 A", "14 AWG")},
	{figure: "dust-tight-box", check: "control-box", kept: boxOf("12K"), broken: boxOf("2")},
	{figure: "settling-dust-box", check: "control-box", kept: boxOf("6P"), broken: boxOf("5"), worst: checks.Thin},
	{figure: "open-box", check: "control-box", kept: boxOf("13"), broken: boxOf("1")},
	{figure: "panel-space", check: "panel-space", kept: spaceOf("3.5 ft", "230 V"), broken: spaceOf("2 ft", "230 V"), loose: "3 ft", tight: "3.6 ft"},
	{figure: "panel-space-high", check: "panel-space", kept: spaceOf("4.5 ft", "460 V"), broken: spaceOf("3.2 ft", "460 V"), loose: "4 ft", tight: "4.6 ft", worst: checks.Ask},
}

// circuitWith gives the cyclone's motor a circuit, so short that nothing is lost
// on it.
func circuitWith(breaker, wire string) []change {
	return []change{{`motor = { power = "5 hp" }`, `motor = { power = "5 hp", volts = "230 V", phase = 1, service_factor = 1.15 }
circuit = { breaker = "` + breaker + `", wire = "` + wire + `", length = "10 ft", terminals = "75 C" }`}}
}
