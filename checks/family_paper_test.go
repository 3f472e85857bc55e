package checks_test

import "dustbook/checks"

// examined gives the whole shop another day of its last examination.
func examined(date string) change {
	return change{"kind = \"thorough examination\"\nheld = true\ndate = 2026-08-20", "kind = \"thorough examination\"\nheld = true\ndate = " + date}
}

// paperStates are shops and what the checks of this family find in them.
var paperStates = []stateCase{
	{"drawing met", nil, "drawing-complete", "Cyclone", checks.Met, checks.ByTopology, checks.Know, "every main has a test point"},
	{"drawing not met: no test point", []change{{"[[tap]]\nname = \"Main tap\"\non = \"Main\"\nat = \"9 ft\"\n", ""}}, "drawing-complete", "Cyclone", checks.NotMet, checks.ByTopology, checks.Mend, "Main carries the air of several machines"},
	{"drawing not met: the test point is on a drop", []change{{"name = \"Main tap\"\non = \"Main\"\nat = \"9 ft\"", "name = \"Drop tap\"\non = \"Saw drop\"\nat = \"4 ft\""}}, "drawing-complete", "Cyclone", checks.NotMet, checks.ByTopology, checks.Mend, "Main carries"},
	{"drawing advice: a home", []change{atHome, {"[[tap]]\nname = \"Main tap\"\non = \"Main\"\nat = \"9 ft\"\n", ""}}, "drawing-complete", "Cyclone", checks.Advice, checks.ByTopology, checks.Know, "Main carries"},
	{"drawing missing: a route", []change{{`route = [[20, 5, 2], [20, 5, 8], [20, 10, 8]]`, `length = "12 ft"`}}, "drawing-complete", "Cyclone", checks.NotGiven, checks.ByTopology, checks.Know, "Lathe drop has no route"},
	{"drawing missing: a place", []change{{"kind = \"lathe\"\nat = [20, 5]", "kind = \"lathe\"\nroom = \"Hall\""}}, "drawing-complete", "Cyclone", checks.NotGiven, checks.ByTopology, checks.Know, "Where Lathe stands"},

	{"commissioning met: a report", nil, "commissioning-record", "Cyclone", checks.Met, checks.ByGiven, checks.Know, "in hand: commissioning report"},
	{"commissioning missing", []change{without("commissioning report")}, "commissioning-record", "Cyclone", checks.NotGiven, checks.ByTopology, checks.Know, "No commissioning is on record"},
	{"commissioning missing: the report is not in hand", []change{instead("commissioning report", "kind = \"commissioning report\"\nheld = false")}, "commissioning-record", "Cyclone", checks.NotGiven, checks.ByTopology, checks.Know, "No commissioning is on record"},

	{"test met", []change{californian}, "last-test", "", checks.Met, checks.ByRule, checks.Know, "next is due by 2027-08-20"},
	{"test met on its last day", []change{californian, examined("2025-09-07")}, "last-test", "", checks.Met, checks.ByRule, checks.Know, "due by 2026-09-07"},
	{"test not met a day later", []change{californian, examined("2025-09-06")}, "last-test", "", checks.NotMet, checks.ByRule, checks.Mend, "was due by 2026-09-06"},
	{"test met in Great Britain on its last day", []change{underUK, examined("2025-07-07")}, "last-test", "", checks.Met, checks.ByRule, checks.Know, "due by 2026-09-07"},
	{"test not met in Great Britain", []change{underUK, examined("2025-07-06")}, "last-test", "", checks.NotMet, checks.ByRule, checks.Mend, "due by 2026-09-06"},
	{"test met: due on the last day of a short month", []change{underUK, examined("2025-12-31"), {"date = 2026-09-07", "date = 2027-02-28"}}, "last-test", "", checks.Met, checks.ByRule, checks.Know, "due by 2027-02-28"},
	{"test not met: after the last day of a short month", []change{underUK, examined("2025-12-31"), {"date = 2026-09-07", "date = 2027-03-01"}}, "last-test", "", checks.NotMet, checks.ByRule, checks.Mend, "due by 2027-02-28"},
	{"test asked: a text of a state that the file does not name", nil, "last-test", "", checks.Ask, checks.ByRule, checks.Know, "That is a text of California."},
	{"test asked: no rules", []change{{`rules = "us"`, `rules = "none"`}}, "last-test", "", checks.Ask, checks.ByRule, checks.Know, "text of another place"},
	{"test asked: no rules, and long ago", []change{{`rules = "us"`, `rules = "none"`}, examined("2020-01-01")}, "last-test", "", checks.Ask, checks.ByRule, checks.Mend, "it was due by 2021-01-01"},
	{"test missing: no report", []change{{"kind = \"thorough examination\"", "kind = \"thorough cleaning\""}}, "last-test", "", checks.NotGiven, checks.ByGiven, checks.Know, "No test is on record"},
	{"test missing: the report has no day", []change{{"kind = \"thorough examination\"\nheld = true\ndate = 2026-08-20", "kind = \"thorough examination\"\nheld = true"}}, "last-test", "", checks.NotGiven, checks.ByGiven, checks.Know, "No test is on record"},
	{"test missing: the report is not in hand", []change{{"kind = \"thorough examination\"\nheld = true", "kind = \"thorough examination\"\nheld = false"}}, "last-test", "", checks.NotGiven, checks.ByGiven, checks.Know, "No test is on record"},
	{"test missing: the report is of a later day", []change{examined("2026-09-08")}, "last-test", "", checks.NotGiven, checks.ByGiven, checks.Know, "No test is on record"},
	{"test missing: the book has no day", []change{{"[[revision]]\nmark = \"A\"\ndate = 2026-09-07\nnote = \"First issue\"\n", ""}}, "last-test", "", checks.NotGiven, checks.ByGiven, checks.Know, "stands at no day"},
	{"test missing: setting", []change{noSetting}, "last-test", "", checks.NotGiven, checks.ByGiven, checks.Know, "Whether people are employed"},

	{"papers met", nil, "papers-in-hand", "", checks.Met, checks.ByGiven, checks.Know, "in hand or in this book"},
	{"papers not met", []change{instead("collector's manual", "kind = \"manual\"\nheld = false"), without("log book")}, "papers-in-hand", "", checks.NotMet, checks.ByGiven, checks.Mend, "not in hand: manual of the collector. Nothing is told of these: log book"},
	{"papers missing: nothing is told", []change{without("collector's manual"), without("log book")}, "papers-in-hand", "", checks.NotGiven, checks.ByGiven, checks.Know, "Nothing is told of these: manual of the collector and log book"},
	{"papers met: what a check of its own looks at is left to it", []change{without("training list"), instead("commissioning report", "kind = \"commissioning report\"\nheld = false")}, "papers-in-hand", "", checks.Met, checks.ByGiven, checks.Know, "in hand or in this book"},
	{"papers missing: a school is asked for more", []change{without("risk assessment")}, "papers-in-hand", "", checks.NotGiven, checks.ByGiven, checks.Know, "assessment of what people breathe"},
	{"papers met: a home is asked for less", []change{atHome, without("risk assessment")}, "papers-in-hand", "", checks.Met, checks.ByGiven, checks.Know, "in hand or in this book"},
}

// paperRules are the figures that the checks of this family compare with.
var paperRules = []ruleCase{
	{figure: "test-months", check: "last-test", broken: []change{examined("2020-01-01")}},
}
